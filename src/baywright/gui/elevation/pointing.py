"""Choosing boards of the run in the picture: by a click on one, or from board to board by key.

Laws: choosing edits nothing; the chosen parts are the window's, so they stand out wherever they are; while a re-plan is
on offer nothing can be pointed at, because the picture may be another one than the parts.
"""

from collections.abc import Callable, Iterable

from PySide6.QtCore import QObject, QPointF, Signal

from baywright.app.session import Session
from baywright.gui.elevation.canvas import Canvas
from baywright.gui.elevation.layout import Layout
from baywright.gui.elevation.parts import part_at, parts_in_reach, shown_part
from baywright.gui.wording import count_words
from baywright.model.construction import Fronts
from baywright.model.making import Manufacture, Part

MOST_AT_ONCE = 40
"""What is made of more boxes than this is not worked out while the window waits."""


class PartPointer(QObject):
    """Holds the chosen parts of one elevation and shows them on its canvas."""

    parts_selected = Signal(object)
    """The person chose the parts with these numbers (a tuple; empty for none)."""

    def __init__(
        self,
        session: Session,
        canvas: Canvas,
        layout: Callable[[], Layout],
        is_free: Callable[[], bool],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._session, self._canvas, self._layout, self._is_free = session, canvas, layout, is_free
        self._chosen: tuple[str, ...] = ()
        canvas.ground_pressed.connect(self._on_ground_pressed)

    @property
    def chosen(self) -> tuple[str, ...]:
        """The numbers of the chosen parts."""
        return self._chosen

    @property
    def _made_now(self) -> Manufacture | None:
        """What is made, as far as it is known: for many boxes it is worked out beside the window, which then tells."""
        is_small = len(self._session.project.boxes) <= MOST_AT_ONCE
        return self._session.manufacture if is_small else self._session.derived.known_manufacture

    @property
    def _parts(self) -> tuple[Part, ...]:
        made = self._session.manufacture
        return made.parts if made is not None else ()

    @property
    def words(self) -> str:
        """What is chosen, in words; empty for nothing."""
        made = self._made_now if self._chosen else None
        chosen = [part for part in made.parts if part.number in self._chosen] if made is not None else []
        if not chosen:
            return ""
        first = chosen[0]
        more = f", and {count_words(len(chosen) - 1, 'part')} more" if len(chosen) > 1 else ""
        return f"Part {first.number}: {first.name}, {count_words(first.quantity, 'piece')}{more}"

    def select(self, numbers: Iterable[str]) -> None:
        """Choose exactly these parts, without telling that the person did so."""
        self._chosen = tuple(numbers)
        self.update()

    def update(self) -> None:
        """Show the chosen parts, and the front panels if drawers have any, where they are now."""
        layout = self._layout()
        self._show_fronts()
        if not self._chosen or layout.frame is None or not self._is_free():
            self._canvas.show_parts(())
            return
        wanted = set(self._chosen)
        frame, drawers, made = layout.frame, layout.drawers, self._made_now
        fronts = made.fronts if made is not None else ()
        chosen = (part for part in (made.parts if made is not None else ()) if part.number in wanted)
        self._canvas.show_parts(shown_part(part, frame, drawers, fronts) for part in chosen)

    def _show_fronts(self) -> None:
        made = None
        if self._is_free() and self._session.project.construction.drawers.fronts is not Fronts.NONE:
            made = self._made_now
        self._canvas.show_fronts(made.fronts if made is not None else ())

    def step(self, by: int) -> None:
        """Choose the next board of the run, or the one before."""
        frame = self._layout().frame
        if frame is None or not self._is_free():
            return
        numbers = [part.number for part in parts_in_reach(self._parts, frame)]
        if not numbers:
            return
        here = numbers.index(self._chosen[0]) if self._chosen and self._chosen[0] in numbers else None
        there = (0 if by > 0 else -1) if here is None else (here + by) % len(numbers)
        self._choose((numbers[there],))

    def _on_ground_pressed(self, place: QPointF) -> None:
        frame = self._layout().frame
        if frame is None or not self._is_free():
            return
        part = part_at(place.x(), place.y(), self._parts, frame)
        if part is not None or self._chosen:
            self._choose((part.number,) if part is not None else ())

    def _choose(self, numbers: tuple[str, ...]) -> None:
        self.select(numbers)
        self.parts_selected.emit(numbers)
