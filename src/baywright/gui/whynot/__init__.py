"""What is wrong and why no plan is possible: a panel with every trouble and what would help, a strip with the first."""
