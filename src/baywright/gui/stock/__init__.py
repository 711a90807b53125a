"""The tab “Stock”: materials with measured batches, sheets and bars, how the saw cuts, what prices mean."""
