"""What a person can choose from: shapes of the run, and places for a box."""
