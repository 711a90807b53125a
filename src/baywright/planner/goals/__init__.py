"""The goals after fewest bays and lowest run, one after the other, each with its proof."""
