"""How many bays, which box where, and why not. Pure functions: the same document gives the same plan."""
