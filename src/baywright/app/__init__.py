"""The session: commands, undo history, background jobs, change notices; files through ports. Knows no Qt."""
