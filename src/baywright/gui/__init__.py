"""The window: views, Qt item models, gestures, theme. The only code that knows Qt; it sends commands and draws results."""
