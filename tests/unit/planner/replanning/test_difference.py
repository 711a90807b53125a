"""The difference between two arrangements, and its steps as a person reads them."""

from baywright.model.arrangement import Arrangement, Placement
from baywright.model.difference import Place, RunnerMove, StepKind
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.project import Built, Project
from baywright.planner.replanning.difference import difference

SIZE = BoxSize(id="euro-120", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120, most_abreast=2)
LABELS = {"pumps": "Pumps", "tubes": "Tubes", "bells": "Bells"}


def workshop(places: dict[str, tuple[int, int]], **statuses: BoxStatus) -> Project:
    """Pumps, tubes and bells; those with a place stand there."""
    return Project(
        box_sizes=(SIZE,),
        boxes=tuple(
            Box(id=i, label=label, size_id=SIZE.id, status=statuses.get(i, BoxStatus.OWNED))
            for i, label in LABELS.items()
        ),
        arrangement=Arrangement(
            bay_count=3,
            upright_rows=33,
            placements=tuple(Placement(box_id=i, bay=bay, row=row) for i, (bay, row) in places.items()),
        ),
    )


def texts(before: Project, after: Project) -> list[str]:
    return [step.text for step in difference(before, after).steps]


def test_a_box_moves_into_the_place_of_one_that_leaves() -> None:
    before, after = workshop({"pumps": (0, 3), "tubes": (2, 8)}), workshop({"pumps": (2, 8)})
    found = difference(before, after)
    assert [(m.box_id, m.before, m.after) for m in found.moves] == [("pumps", Place(bay=0, row=3), Place(bay=2, row=8))]
    assert [m.box_id for m in found.gone_boxes] == ["tubes"]
    assert found.idle_drawers == (Place(bay=0, row=3),)
    assert [step.text for step in found.steps] == [
        "Take “Tubes” out of bay 3 row 9; it leaves the run.",
        "Move “Pumps” from bay 1 row 4 to bay 3 row 9.",
        "Take the drawer and its runners off bay 1 row 4; they are no longer needed there.",
    ]


def test_boxes_that_trade_places_need_the_bench_once() -> None:
    before, after = workshop({"pumps": (0, 3), "tubes": (2, 8)}), workshop({"pumps": (2, 8), "tubes": (0, 3)})
    assert texts(before, after) == [
        "Set “Pumps” from bay 1 row 4 aside on the bench.",
        "Move “Tubes” from bay 3 row 9 to bay 1 row 4.",
        "Put “Pumps” from the bench into bay 3 row 9.",
    ]


def test_a_box_whose_runners_go_with_it_waits_on_the_bench() -> None:
    before, after = workshop({"pumps": (0, 3)}), workshop({"pumps": (0, 5)})
    assert difference(before, after).runners == (RunnerMove(before=Place(bay=0, row=3), after=Place(bay=0, row=5)),)
    assert texts(before, after) == [
        "Set “Pumps” from bay 1 row 4 aside on the bench.",
        "Take the drawer and its runners off bay 1 row 4 and screw them on at bay 1 row 6.",
        "Put “Pumps” from the bench into bay 1 row 6.",
    ]


def test_a_new_box_gets_a_drawer_that_is_cut_first() -> None:
    assert texts(workshop({"pumps": (0, 3)}), workshop({"pumps": (0, 3), "bells": (1, 1)})) == [
        "Cut and join the parts of a new drawer.",
        "Screw new runners on at bay 2 row 2 and hang a new drawer.",
        "Put “Bells” into bay 2 row 2.",
    ]


def test_room_kept_for_a_wish_is_no_drawer_until_the_box_is_there() -> None:
    wished = workshop({"pumps": (0, 3), "bells": (1, 1)}, bells=BoxStatus.WISHED)
    bought = workshop({"pumps": (0, 3), "bells": (1, 1)})
    assert difference(workshop({"pumps": (0, 3)}), wished).is_empty
    found = difference(wished, bought)
    assert (found.new_drawers, [m.box_id for m in found.new_boxes]) == ((Place(bay=1, row=1),), ["bells"])


def test_a_box_kept_elsewhere_from_now_on_leaves_its_drawer_behind() -> None:
    before = workshop({"pumps": (0, 3), "bells": (1, 1)}, bells=BoxStatus.ELSEWHERE)
    found = difference(before, workshop({"pumps": (0, 3)}, bells=BoxStatus.ELSEWHERE))
    assert ([m.box_id for m in found.gone_boxes], found.idle_drawers) == (["bells"], (Place(bay=1, row=1),))


def test_a_drawer_that_two_boxes_share_counts_once_and_says_where_each_stands() -> None:
    placements = (
        Placement(box_id="pumps", bay=0, row=3),
        Placement(box_id="tubes", bay=0, row=3, abreast=1),
    )
    shared = workshop({}).replace(arrangement=Arrangement(bay_count=1, upright_rows=33, placements=placements))
    found = difference(workshop({}), shared)
    assert found.new_drawers == (Place(bay=0, row=3),)
    assert [step.text for step in found.steps][2:] == [
        "Put “Pumps” into bay 1 row 4, first from the left.",
        "Put “Tubes” into bay 1 row 4, second from the left.",
    ]
    assert difference(shared, workshop({"pumps": (0, 3)})).idle_drawers == ()


def test_a_bay_made_wider_needs_another_drawer_and_the_box_steps_aside() -> None:
    before = workshop({"pumps": (0, 3)})
    after = before.replace(arrangement=before.arrangement.replace(box_widths_mm=(600.0, 396.0, 396.0)))
    found = difference(before, after)
    place = Place(bay=0, row=3)
    assert (found.moves, found.runners, found.new_drawers, found.idle_drawers) == ((), (), (place,), (place,))
    kinds = [step.kind for step in found.steps]
    assert kinds == [StepKind.CUT, StepKind.SET_ASIDE, StepKind.REMOVE, StepKind.HANG, StepKind.PUT]


def built(project: Project, bays: tuple[int, ...] = (0, 1)) -> Project:
    return project.replace(built=Built(bays=bays, project=project))


def test_against_holes_that_are_no_longer_those_of_the_document_nothing_is_asked() -> None:
    before = workshop({"pumps": (0, 3)})
    moved = built(before).replace(arrangement=workshop({"pumps": (0, 5)}).arrangement)
    assert difference(before, moved).steps
    rows = moved.construction.hole_rows
    for changed in (
        moved.replace(construction=moved.construction.replace(hole_rows=rows.replace(pitch_mm=25))),
        moved.replace(arrangement=moved.arrangement.replace(upright_rows=30)),
        moved.replace(arrangement=workshop({"pumps": (0, 33)}).arrangement),
        moved.replace(arrangement=Arrangement(bay_count=1, upright_rows=33)),
    ):
        found = difference(before, changed)
        assert (found.runners, found.new_drawers, found.steps) == ((), (), ())
        assert found.remarks
    told = difference(
        before, moved.replace(construction=moved.construction.replace(hole_rows=rows.replace(pitch_mm=25)))
    )
    assert "of 32 mm; the document says 25 mm" in told.remarks[0]


def test_other_changes_under_a_bay_that_stands_are_told_and_its_holes_used() -> None:
    before = workshop({"pumps": (0, 3)})
    moved = built(before).replace(arrangement=workshop({"pumps": (0, 5)}).arrangement)
    drawers = moved.construction.drawers.replace(side_height_mm=70)
    found = difference(before, moved.replace(construction=moved.construction.replace(drawers=drawers)))
    assert found.new_drawers == (Place(bay=0, row=5),)
    assert found.remarks == (
        "Drawer side height: 60 mm as built, 70 mm in the document. Set it back, make new drawers, or forget what is "
        "built.",
    )


def test_a_bay_that_is_not_built_yet_may_have_other_rows() -> None:
    before = workshop({"pumps": (0, 3)})
    after = built(before, bays=(0,)).replace(arrangement=workshop({"pumps": (0, 3), "bells": (2, 33)}).arrangement)
    found = difference(before, after)
    assert found.new_drawers == (Place(bay=2, row=33),)
    assert [step.text for step in found.steps][:2] == [
        "Cut and join the parts of a new drawer.",
        "Put up bays 2 and 3.",
    ]


def test_a_box_that_was_planned_for_a_bay_that_does_not_stand_yet_has_not_moved_but_needs_its_drawer() -> None:
    plan = workshop({"pumps": (0, 3), "tubes": (1, 3)})
    found = difference(plan, built(plan, bays=(0,)))
    assert (found.moves, found.new_boxes) == ((), ())
    assert found.new_drawers == (Place(bay=1, row=3),)
    assert [step.kind for step in found.steps] == [StepKind.CUT, StepKind.PUT_UP, StepKind.HANG, StepKind.PUT]
