"""Findings about strength, stability and safety. Pure functions from a document to findings."""

from baywright.checks.inspect import inspect

__all__ = ["inspect"]
