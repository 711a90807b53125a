"""The same jobs without a window. Never imports Qt."""
