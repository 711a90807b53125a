"""Findings about strength, stability and safety. Pure functions from a document to findings."""

from baywright.checks.handling import lifting_indices
from baywright.checks.inspect import inspect

__all__ = ["inspect", "lifting_indices"]
