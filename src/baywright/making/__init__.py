"""From an arrangement to what is cut, bought and fitted. Pure functions."""
