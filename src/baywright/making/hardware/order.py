"""The hardware order: everything that the run needs besides boards, with the items and packs to buy.

Laws: every count follows from the parts and the schedule, so order and cutting list cannot disagree; items and packs
come from the owner's catalogue where it has them, and what is set by hand beats what is worked out.
"""

from baywright.making.drawers import Kinds
from baywright.making.frame import Frame
from baywright.making.hardware.coatings import finish_needs, glue_needs
from baywright.making.hardware.edging import edging_needs
from baywright.making.hardware.fittings import foot_needs, pin_needs, wall_needs
from baywright.making.hardware.joints import connector_needs, joint_needs
from baywright.making.hardware.need import Need
from baywright.making.hardware.packing import packed
from baywright.making.hardware.runners import runner_needs, system_screw_needs
from baywright.making.hardware.screws import screw_needs
from baywright.making.loads import Loads
from baywright.model.making import HardwareItem, Part
from baywright.model.project import Project
from baywright.workings import Workings


def hardware_order(
    project: Project, workings: Workings, frame: Frame, parts: list[Part], loads: Loads, kinds: Kinds
) -> tuple[list[HardwareItem], list[str]]:
    """Every line of the order, and what to say of them; lines of which nothing is needed are left out."""
    return packed(hardware_needs(project, workings, frame, parts, loads, kinds), project.hardware)


def hardware_needs(
    project: Project, workings: Workings, frame: Frame, parts: list[Part], loads: Loads, kinds: Kinds
) -> list[Need]:
    """What is needed, before anything is chosen for it."""
    return [
        *runner_needs(project, workings, loads, kinds),
        *system_screw_needs(project, workings, kinds),
        *screw_needs(project, workings, frame, parts, kinds),
        *joint_needs(project, workings, frame, parts),
        *connector_needs(frame),
        *pin_needs(project, workings),
        *foot_needs(project, frame, parts),
        *wall_needs(project, parts),
        *edging_needs(project, parts),
        *glue_needs(project, workings, frame, parts),
        *finish_needs(parts),
    ]
