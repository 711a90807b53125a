"""What is said when planning ends: what happened, and nothing that is not so."""

import pytest

from baywright.gui.progress import ending_message
from baywright.model.plan import PlanResult, PlanStatus


@pytest.mark.parametrize(("changed", "says"), [(True, "Undo takes it back"), (False, "nothing was changed")])
def test_undo_is_offered_only_where_something_changed(changed: bool, says: str) -> None:
    message, _ = ending_message(PlanResult(status=PlanStatus.PROVED_BEST), stale=False, changed=changed)
    assert says in message


def test_a_void_answer_says_that_it_was_dropped() -> None:
    message, _ = ending_message(PlanResult(status=PlanStatus.PROVED_BEST), stale=True, changed=False)
    assert "dropped" in message


def test_what_a_plan_rests_on_is_told_with_it() -> None:
    result = PlanResult(status=PlanStatus.PROVED_BEST, remarks=("1 box has no mass entered.",))
    message, _ = ending_message(result, stale=False, changed=True)
    assert message.endswith("1 box has no mass entered.")


def test_a_search_that_ended_by_itself_is_not_said_to_have_been_stopped() -> None:
    result = PlanResult(status=PlanStatus.STOPPED, remarks=("Neither a plan nor a proof was found.",))
    message, _ = ending_message(result, stale=False, changed=False)
    assert message == "Neither a plan nor a proof was found. Nothing was changed."
    by_hand, _ = ending_message(PlanResult(status=PlanStatus.STOPPED), stale=False, changed=False)
    assert "was stopped" in by_hand
