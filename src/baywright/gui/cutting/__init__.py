"""The tab “Cutting”: layouts of sheets and bars, the chosen one drawn to scale, its cuts in order, what it costs."""
