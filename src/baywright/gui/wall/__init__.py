"""The tab “Wall and bays”: zones of the wall, the ceiling's slope, wishes for single bays, the order of the goals."""
