"""Findings about strength, stability and safety. Pure functions from a document to findings."""
