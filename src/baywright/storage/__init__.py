"""Project files, atomic writing, and the import of inventories. Reads and writes files; knows nothing of the window."""
