"""The panel of options: the shapes of the run that a builder can choose from, in pictures and as a table."""
