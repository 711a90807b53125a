"""The tab “Hardware”: the order line by line with what is set by hand, and the catalogue that it chooses from."""
