"""The kinds of single changes that can make everything fit, each with its steps from small to large."""
