"""The window: views, Qt item models, gestures, theme. Alone in knowing Qt; sends commands and draws results."""
