"""The table of boxes: edited in place, filtered, sorted, pasted into."""
