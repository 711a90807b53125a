"""Baywright plans a wall of drawer bays for stackable boxes: fit, drilling, parts and hardware, without a network."""

__version__ = "0.1.0"
