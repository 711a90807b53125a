"""What changes from how a run stands to how it is planned, and the steps to go."""
