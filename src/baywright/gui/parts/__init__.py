"""The parts to cut: their table, the drawing of the one that is selected, and a table of the work on it."""
