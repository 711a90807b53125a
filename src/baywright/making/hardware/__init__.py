"""The hardware order: what a run needs besides boards, which items of the catalogue serve, and the packs to buy."""
