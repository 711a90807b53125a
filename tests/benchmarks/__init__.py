"""Speed as ratios in one run; `python -m tests.benchmarks` prints the table. Nothing is asserted by the clock."""
