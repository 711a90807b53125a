"""A canary: a binding of Qt that loses references to None aborts the program after some thousand calls."""

import sys

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGraphicsRectItem
from pytestqt.qtbot import QtBot

from baywright.app.session import Session
from baywright.gui.inventory.model import BoxTable

CALLS = 5_000


def lost_by(call: object) -> int:
    """How many references to None are lost by many calls."""
    assert callable(call)
    before = sys.getrefcount(None)
    for _ in range(CALLS):
        call()
    return before - sys.getrefcount(None)


def test_moving_an_item_loses_no_reference(qtbot: QtBot) -> None:
    item = QGraphicsRectItem()
    assert lost_by(lambda: item.setPos(1.0, 2.0)) < CALLS // 10


def test_asking_a_model_loses_no_reference(qtbot: QtBot, session: Session) -> None:
    table = BoxTable(session)
    index = table.index(0, 0)
    assert lost_by(lambda: index.data(Qt.ItemDataRole.DecorationRole)) < CALLS // 10
    assert lost_by(lambda: table.data(index, Qt.ItemDataRole.DecorationRole)) < CALLS // 10
