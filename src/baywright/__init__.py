"""Baywright plans a wall of drawer bays for stackable boxes: fit, drilling, parts and hardware."""

__version__ = "0.1.0"
