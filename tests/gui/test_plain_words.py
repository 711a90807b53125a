"""What a person typed is shown as typed: a label that looks like markup is no markup in any message."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget

from baywright.gui.elevation.footing import FootLine
from baywright.gui.fields.field import Refusal
from baywright.gui.messages import MessageBar, Tone
from baywright.gui.whynot.strip import ProblemStrip
from tests.gui.desk import Desk, OpenDesk, workshop

LABEL = "<b>Bolts</b> <img src='x.png'>"


def _marked_up(desk: Desk, holder: type[QWidget]) -> list[QLabel]:
    """Labels inside widgets of a kind that hold the text and would take it for markup."""
    found: list[QWidget] = desk.window.findChildren(holder)
    assert found
    labels = [part for widget in found for part in (widget, *widget.findChildren(QLabel))]
    shown = [part for part in labels if isinstance(part, QLabel) and "<b>" in part.text()]
    return [label for label in shown if label.textFormat() != Qt.TextFormat.PlainText]


@pytest.mark.parametrize("holder", [MessageBar, ProblemStrip, FootLine, Refusal])
def test_no_message_takes_a_label_for_markup(open_desk: OpenDesk, holder: type[QWidget]) -> None:
    project = workshop()
    heavy = project.boxes[0].replace(label=LABEL, loaded_mass_kg=500)
    desk = open_desk(project.replace(boxes=(heavy, *project.boxes[1:])))
    desk.session.request_plan()
    desk.window.tell(f"“{LABEL}” is too heavy.", Tone.TROUBLE)
    assert LABEL in desk.message
    for foot in desk.window.findChildren(FootLine):
        foot.tell(f"“{LABEL}” cannot stand here.", True)
    for refusal in desk.window.findChildren(Refusal):
        refusal.show_message(f"“{LABEL}” is not a length.")
    assert _marked_up(desk, holder) == []
