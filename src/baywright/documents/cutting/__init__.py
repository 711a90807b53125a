"""Drawings for the saw: what is cut from each sheet and each bar, and in which order."""
