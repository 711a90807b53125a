"""What is done to the parts after they are cut: hole rows, runner fixings, grooves, joints, shaped edges."""

from baywright.making.machining.counting import fixing_counts, hole_counts, joint_counts, runner_holes, screw_uses
from baywright.making.machining.upright import Fixings
from baywright.making.machining.workshop import Machined, machined

__all__ = [
    "Fixings",
    "Machined",
    "fixing_counts",
    "hole_counts",
    "joint_counts",
    "machined",
    "runner_holes",
    "screw_uses",
]
