"""The hardware order: everything that the run needs besides boards, with the items and packs to buy.

Laws: every count follows from the parts with their holes and from the schedule, so order, drawings and cutting list
cannot disagree; items and packs
come from the owner's catalogue where it has them, and what is set by hand beats what is worked out.
"""

from collections.abc import Sequence

from baywright.making.drawers import Kinds
from baywright.making.frame import Frame
from baywright.making.hardware.coatings import finish_needs, glue_needs
from baywright.making.hardware.edging import edging_needs
from baywright.making.hardware.fittings import foot_needs, pin_needs, wall_needs
from baywright.making.hardware.joints import joint_needs
from baywright.making.hardware.packing import packed
from baywright.making.hardware.runners import runner_needs, system_screw_needs
from baywright.making.hardware.screws import screw_needs
from baywright.making.loads import Loads
from baywright.making.machining.upright import Fixings
from baywright.model.making import HardwareItem, Part
from baywright.model.project import Project
from baywright.workings import Workings


def hardware_order(
    project: Project, workings: Workings, frame: Frame, parts: Sequence[Part], worked: Sequence[Part], loads: Loads,
    kinds: Kinds, fixings: Fixings,
) -> tuple[list[HardwareItem], list[str]]:  # fmt: skip
    """Every line of the order, and what to say of them; lines of which nothing is needed are left out.

    `worked` are the parts with their holes and joints, from which fasteners are counted; `fixings` say which holes of
    the uprights' rows the runners use.
    """
    needs = [
        *runner_needs(project, workings, loads, kinds),
        *system_screw_needs(project, fixings, worked),
        *screw_needs(project, worked),
        *joint_needs(frame, worked),
        *pin_needs(project, workings),
        *foot_needs(project, frame, parts),
        *wall_needs(project, parts, worked),
        *edging_needs(project, parts),
        *glue_needs(project, workings, frame, parts),
        *finish_needs(parts),
    ]
    return packed(needs, project.hardware)
