"""The cautions: one home, each about one thing, and each says who decides."""

from baywright.model.caution import (
    CAUTIONS,
    COMPUTED,
    FIX_FIRST,
    ON_DRAWINGS,
    WHO_DECIDES,
    Topic,
    cautions_about,
)


def test_there_is_a_caution_about_everything_that_can_hurt() -> None:
    assert {caution.topic for caution in CAUTIONS} == set(Topic)
    everything = " ".join(caution.text for caution in CAUTIONS)
    for word in ("wall", "cables", "pipes", "data sheet", "dust", "riving knife", "23 kg", "licensed", "building code"):
        assert word in everything, word


def test_those_about_a_topic_come_in_their_usual_order() -> None:
    titles = [caution.title for caution in cautions_about(Topic.LIFTING, Topic.WALL)]
    assert titles == ["Tipping", "Cables and pipes", "Lifting"]


def test_what_stands_on_drawings_and_findings_defers_to_those_who_decide() -> None:
    for words in (COMPUTED, WHO_DECIDES, " ".join(ON_DRAWINGS)):
        assert "data sheet" in words
        assert "licensed practice" in words
    assert "before the first loaded drawer is opened" in FIX_FIRST
    assert any("cables and pipes" in line for line in ON_DRAWINGS)
