"""The commands, by what they edit."""
