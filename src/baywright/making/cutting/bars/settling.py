"""The least value: a first answer at once, then cheaper choices of bars, cheapest first, until none is left.

A choice of bars is tried in rising order of effort: pieces exchanged between bars; the linear relaxation, which
either refutes the choice, with a certificate that makes the bound higher, or leads down to whole numbers. What a choice
costs that is neither filled nor refuted is the bound that stands; it is taken up again with more effort.
"""

from collections.abc import Callable, Sequence

from baywright.making.cutting.bars.budget import Budget, StoppedError, never
from baywright.making.cutting.bars.certificate import Certificate, by_length, by_number, certificate, whole_prices
from baywright.making.cutting.bars.choice import Cap, Choice, Chosen
from baywright.making.cutting.bars.columns import Columns, cut_of, exact_knapsack
from baywright.making.cutting.bars.dive import Dive
from baywright.making.cutting.bars.exchange import into
from baywright.making.cutting.bars.fitting import Fitting, UndecidedError
from baywright.making.cutting.bars.relaxation import Answer, NoAnswerError, Relaxation
from baywright.making.cutting.bars.task import Cut, Task

FIRST_EFFORT = 20.0
"""Steps of exchanging that a choice of bars gets when it is tried for the first time."""
FITTING = 2.0
"""So many times as many steps it gets of trying everything, where the pieces are few."""
MOST_EXCHANGED = 1_000
"""More pieces are not exchanged; whole numbers in the linear relaxation come first then."""
QUICK_LOOKS = 12
QUICK_EFFORT = 0.3
"""So many choices of bars are looked at quickly first, with so many steps for every piece."""
DIVING = 10.0
"""So many times as many steps it gets of diving."""
MORE_EFFORT = 2.0
"""So many times more when all are taken up again."""
SHORT_COST = 100.0
"""What a piece left out counts against the dearest bar, where prices are looked for."""
NO_PIECE_LEFT = 1e-6


class RefutedError(Exception):
    """A choice of bars was shown not to hold the pieces; what shows it is kept."""


class Search:
    """The cuts of least value so far, and the bound. With a `cap`, all bars together cost no more than it says."""

    def __init__(
        self, task: Task, seed: int, told: Callable[[Sequence[Cut], int], None], cap: Cap | None = None
    ) -> None:
        self.cuts: list[Cut] = []
        self.bound = 0
        self._task = task
        self._seed = seed
        self._told = told
        self._value = 0
        self._choice = Choice(task, cap)
        self._relaxation: Relaxation | None = None
        self._knows_costs = False
        self._budget = Budget(None, never)

    def run(self, given: Sequence[Cut], budget: Budget) -> None:
        """Search from some cuts on until everything is proved, the effort is spent, or the caller wants to stop."""
        self._budget = budget
        self._take(given)
        try:
            self._settle()
        except StoppedError:
            self.bound = min(self.bound, self._value)

    def _take(self, cuts: Sequence[Cut]) -> None:
        """Keep cuts that count less than the best so far."""
        task = self._task
        short = sum(n * cost for n, cost in zip(task.left_over(cuts), task.short_costs, strict=True))
        value = task.cost(cuts) + short
        if not self.cuts or value < self._value:
            self.cuts, self._value = list(cuts), value
            self._told(self.cuts, min(self.bound, value))

    def _settle(self) -> None:
        """Try the choices of bars that cost less than the best cuts, cheapest first, until there is none."""
        for each in (by_length(self._task), *by_number(self._task)):
            self._choice.learn(each)
        self._raise_bound()
        self._look_quickly()
        round_, effort = 0, FIRST_EFFORT
        while True:
            chosen = self._choice.cheapest(self._budget, self._value, proof=False)
            if chosen is not None and chosen.bars:
                self._try(chosen, effort, round_)
                continue
            was_left = self._choice.try_again()
            if chosen is None and not was_left:
                self.bound = self._value
                return
            round_, effort = round_ + 1, effort * MORE_EFFORT
            self._budget.spend(1)

    def _look_quickly(self) -> None:
        """Only exchange pieces, on the cheapest choices until one does: a good answer before the longer work."""
        for _ in range(QUICK_LOOKS if sum(self._task.counts) <= MOST_EXCHANGED else 0):
            chosen = self._choice.cheapest(self._budget, self._value, proof=False)
            if chosen is None or not chosen.bars:
                break
            needs = [count - n for count, n in zip(self._task.counts, chosen.short, strict=True)]
            cuts = self._exchanged(needs, chosen.bars, min(FIRST_EFFORT, QUICK_EFFORT * sum(needs)), 0)
            if cuts is not None:
                self._take(cuts)
                break
            self._choice.leave(chosen)
        self._choice.try_again()

    def _raise_bound(self) -> None:
        cheapest = self._choice.cheapest(self._budget, self._value, proof=True)
        self.bound = max(self.bound, self._value if cheapest is None else cheapest.bound)

    def _try(self, chosen: Chosen, effort: float, round_: int) -> None:
        """Fill the chosen bars, or refute the choice, or leave it for later."""
        needs = [count - n for count, n in zip(self._task.counts, chosen.short, strict=True)]
        cuts = self._exchanged(needs, chosen.bars, effort, round_) if round_ else None
        if cuts is None:
            try:
                cuts = self._worked_out(needs, chosen, effort, round_)
            except NoAnswerError:
                self._relaxation = None
            except RefutedError:
                self._raise_bound()
                return
        if cuts is None:
            self._choice.leave(chosen)
        else:
            self._take(cuts)

    def _worked_out(self, needs: Sequence[int], chosen: Chosen, effort: float, round_: int) -> list[Cut] | None:
        """The pieces in the chosen bars by the longer ways; raises `RefutedError` where they are shown not to go in."""
        relaxation = self._relaxation or self._begin()
        against = self._certificate_against(relaxation, needs, chosen)
        if against is not None:
            self._choice.learn(against)
            if not self._knows_costs and len(self._task.kinds) > 1:
                self._learn_from_costs(relaxation)
            raise RefutedError
        try:
            cuts = Fitting(self._task, FITTING * effort, self._budget).cuts(needs, chosen.bars)
        except UndecidedError:
            return self._dived(relaxation, needs, chosen.bars, effort, round_)
        if cuts is None:
            self._choice.refute(chosen)
            raise RefutedError
        return cuts

    def _begin(self) -> Relaxation:
        """The linear relaxation, with the best cuts so far as its first fillings."""
        self._relaxation = Relaxation(self._task)
        for cut in self.cuts:
            self._relaxation.add(cut)
        return self._relaxation

    def _exchanged(self, needs: Sequence[int], bars: Sequence[int], effort: float, round_: int) -> list[Cut] | None:
        task = self._task
        if sum(needs) > MOST_EXCHANGED:
            return None
        pieces = [length for length, need in zip(task.lengths, needs, strict=True) for _ in range(need)]
        kinds = sorted((kind for kind, n in enumerate(bars) for _ in range(n)), reverse=True)
        rooms = [task.kinds[kind].length for kind in kinds]
        filled = into(pieces, rooms, effort, self._seed + round_, self._budget)
        if filled is None:
            return None
        return [cut_of(task, kind, held) for kind, held in zip(kinds, filled, strict=True) if held]

    def _dived(
        self, relaxation: Relaxation, needs: Sequence[int], bars: Sequence[int], effort: float, round_: int
    ) -> list[Cut] | None:
        """One dive, and further ones for as long as the effort lasts."""
        dive = Dive(self._task, relaxation, self._budget)
        end, turn = self._budget.spent + DIVING * effort, 0
        while True:
            cuts = dive.run(bars, needs, self._seed + 1_000 * round_ + turn)
            turn += 1
            if cuts is not None or self._budget.spent >= end:
                return cuts

    def _learn_from_costs(self, relaxation: Relaxation) -> None:
        """The certificate that the cost of bars gives, whatever bars are taken."""
        task = self._task
        dearest = max(1, *(kind.cost for kind in task.kinds))
        costs = [kind.cost / dearest for kind in task.kinds]
        relaxation.aim(costs, [SHORT_COST] * len(task.lengths))
        limits = [kind.available for kind in task.kinds]
        relaxation.ask(task.counts, limits)
        answer = Columns(task, relaxation, costs).settle(task.counts, limits, self._budget, lambda _: False)
        self._choice.learn(self._certificate(answer))
        self._knows_costs = True

    def _certificate_against(self, relaxation: Relaxation, needs: Sequence[int], chosen: Chosen) -> Certificate | None:
        """What refutes a choice of bars; None where the relaxation fills it."""
        task = self._task
        nothing = [0.0] * len(task.kinds)
        relaxation.aim(nothing, [length / task.longest_bar for length in task.lengths])
        relaxation.ask(needs, chosen.bars)
        answer = Columns(task, relaxation, nothing).settle(
            needs, chosen.bars, self._budget, lambda answer: answer.value < NO_PIECE_LEFT
        )
        if answer.value < NO_PIECE_LEFT:
            return None
        found = self._certificate(answer)
        return None if found.allows(chosen.bars, chosen.short) else found

    def _certificate(self, answer: Answer) -> Certificate:
        knapsack = exact_knapsack(self._task, self._task.counts)
        return certificate(self._task, knapsack, whole_prices(answer.prices), self._budget)
