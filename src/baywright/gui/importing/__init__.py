"""The dialog that takes boxes over from a table: matching of columns, preview, and only then the taking over."""
