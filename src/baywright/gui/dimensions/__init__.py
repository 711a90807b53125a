"""The dimension panel: what the owner sets, what is worked out from it, and how."""
