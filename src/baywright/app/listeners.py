"""Those who are told of every notice, in the order in which they came."""

from collections.abc import Callable

from baywright.app.notices import Notice


class Listeners:
    """Who listens. A listener may end its own listening, or another's, while it is being told."""

    def __init__(self) -> None:
        self._listeners: list[Callable[[Notice], None]] = []

    def subscribe(self, listener: Callable[[Notice], None]) -> Callable[[], None]:
        """Has `listener` told of every notice from now on; returns the call that ends it."""
        self._listeners.append(listener)
        return lambda: self._listeners.remove(listener) if listener in self._listeners else None

    def tell(self, notice: Notice) -> None:
        """Tells all listeners."""
        for listener in tuple(self._listeners):
            listener(notice)
