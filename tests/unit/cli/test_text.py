"""The planner's answer as plain text."""

from baywright.cli.text import plan_text
from baywright.model.plan import PlanResult, PlanStatus


def test_only_a_search_that_was_stopped_is_said_to_be() -> None:
    assert plan_text(PlanResult(status=PlanStatus.STOPPED)) == "Stopped before a plan was found."
    ended = PlanResult(status=PlanStatus.STOPPED, remarks=("Neither a plan nor a proof was found.",))
    assert plan_text(ended) == "Neither a plan nor a proof was found."
