"""The distribution problem in bare numbers and the ways to solve it: bounds, first tries, flows, prices."""
