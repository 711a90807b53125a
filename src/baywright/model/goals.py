"""What a plan is good for. Bays and rows always come first; the owner may put the others in another order."""

from enum import StrEnum


class Goal(StrEnum):
    """What a plan is judged by once every limit is kept."""

    BAYS = "bays"
    """Fewest bays."""
    ROWS = "rows"
    """Lowest run, in hole rows of the uprights."""
    MOVES = "moves"
    """Fewest boxes that change their bay or row, against where they stand."""
    RESCREWS = "rescrews"
    """Fewest runner pairs that must be taken off and screwed on at another row or bay."""
    HANDLING = "handling"
    """Easiest handling: mass, use and height."""
    GROUPS = "groups"
    """Groups together: how many bays more than one each group is spread over, summed."""
    FREE_PIECE = "free_piece"
    """The largest stretch of free rows in one bay; here more is better."""


FIRST_GOALS = (Goal.BAYS, Goal.ROWS)
"""Goals whose order is fixed."""
USUAL_ORDER = (Goal.MOVES, Goal.RESCREWS, Goal.HANDLING, Goal.GROUPS, Goal.FREE_PIECE)
"""The usual order of the others."""
MORE_IS_BETTER = frozenset({Goal.FREE_PIECE})
