"""The list of box sizes, and the dialog for a new one."""
