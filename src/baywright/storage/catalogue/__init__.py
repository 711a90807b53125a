"""Import of a hardware catalogue from a table."""
