"""The project document and the results as frozen values; lengths; ids; validation. Imports nothing of the program."""
