"""Lengths as people type and read them; inside the program a length is always millimetres as float.

Laws: one inch is exactly 25.4 mm; parsing is exact rational arithmetic and rounds once, to the nearest float;
`parse_length(format_exact(x, unit), unit) == x` to within 1e-9 mm for every finite x.
"""
