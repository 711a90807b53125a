"""Drawings of single parts: outline, holes, grooves, mortises and edges to scale, with every measure in figures."""
