"""The tab “Where to”: every place that a box could go, best first, with what it changes; and why not elsewhere."""
