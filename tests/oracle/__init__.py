"""Witnesses that share no code with the program's engine: they re-measure and re-count."""
