"""Inventory tables against a project: what would be taken over, what is refused with which words, and the taking."""

import pytest

from baywright.model.inventory import BoxSize, BoxStatus, Use
from baywright.model.length import LengthUnit
from baywright.model.project import Project
from baywright.storage import inventory, sizes
from baywright.storage.columns import Column
from baywright.storage.inventory import read_inventory
from baywright.storage.matching import Matching, propose_matching
from baywright.storage.preview import CellFault, ImportPreview, StalePreviewError
from baywright.storage.tables import table_from_text
from baywright.storage.trouble import TableError


@pytest.fixture
def metric(project: Project) -> Project:
    return project.replace(unit=LengthUnit.MILLIMETRE)


def preview(text: str, project: Project) -> ImportPreview:
    table = table_from_text(text)
    return read_inventory(table, propose_matching(table, project), project)


def only_fault(text: str, project: Project) -> CellFault:
    """The one fault of a table of one row, of which nothing may be taken over."""
    result = preview(text, project)
    assert result.accepted == ()
    assert result.new_sizes == ()
    (row,) = result.refused
    (fault,) = row.faults
    return fault


def test_a_row_becomes_a_box(metric: Project) -> None:
    text = (
        "Label\tSize\tLoaded mass\tContents\tGroup\tUse\tNote\nRims\teuro  120\t4,5 kg\t26 inch\twheels\toften\tnew\n"
    )
    result = preview(text, metric)
    assert result.refused == ()
    (box,) = result.boxes
    assert box.id == "box-3"
    assert (box.label, box.size_id, box.loaded_mass_kg, box.contents) == ("Rims", "euro-120", 4.5, "26 inch")
    assert (box.group, box.use, box.note) == ("wheels", Use.DAILY, "new")


def test_what_is_not_given(metric: Project) -> None:
    (box,) = preview("Label\tSize\tMass\tUse\nRims\tEuro 120\t\t\n", metric).boxes
    assert (box.loaded_mass_kg, box.contents, box.use) == (None, "", Use.WEEKLY)


def test_the_status_of_a_box_comes_with_it(metric: Project) -> None:
    text = (
        "Label\tSize\tStatus\nA\tEuro 120\twished\nB\tEuro 120\t Kept  elsewhere\nC\tEuro 120\tGewünscht\nD\tEuro 120\t"
    )
    boxes = preview(text, metric).boxes
    assert [box.status for box in boxes] == [
        BoxStatus.WISHED, BoxStatus.ELSEWHERE, BoxStatus.WISHED, BoxStatus.OWNED,
    ]  # fmt: skip


def test_nothing_is_taken_over_before_it_is_applied(metric: Project) -> None:
    result = preview("Label\tWidth\tDepth\tHeight\nRims\t300\t200\t100\nHubs\t300\t200\t100", metric)
    assert len(metric.boxes) == 2
    after = result.apply_to(metric)
    assert [box.label for box in after.boxes] == ["Spokes", "=Chains", "Rims", "Hubs"]
    assert [size.name for size in after.box_sizes] == ["Euro 120", "Euro 170", "300 × 200 × 100 mm"]
    assert after.arrangement == metric.arrangement


def test_a_stale_preview_is_not_applied(metric: Project) -> None:
    result = preview("Label\tSize\nRims\tEuro 120", metric)
    assert result.apply_to(metric.replace(name="other")).name == "other"
    with pytest.raises(StalePreviewError, match="has changed"):
        result.apply_to(result.apply_to(metric))


def test_quantity_makes_several_boxes(metric: Project) -> None:
    result = preview("Qty\tLabel\tSize\n3\tRims\tEuro 120\n\tHubs\tEuro 120\n1\tCogs\tEuro 120", metric)
    assert [(box.id, box.label) for box in result.boxes] == [
        ("box-3", "Rims 1"), ("box-4", "Rims 2"), ("box-5", "Rims 3"), ("box-6", "Hubs"), ("box-7", "Cogs"),
    ]  # fmt: skip


def test_units_of_headings_go_before_the_unit_of_the_project(project: Project) -> None:
    text = 'Label\tWidth (cm)\tDepth\tHeight [mm]\tWeight (lb)\nRims\t40\t15 3/4\t3"\t10\nHubs\t40\t15 3/4\t76.2\t1 kg'
    result = preview(text, project)  # a project in inches
    assert [(size.width_mm, size.depth_mm, size.height_mm) for size in result.new_sizes] == [(400.0, 400.05, 76.2)]
    assert [box.loaded_mass_kg for box in result.boxes] == [4.5359237, 1.0]


def test_equal_measures_are_one_size_whatever_its_name(metric: Project) -> None:
    text = "Label\tSize\tW\tD\tH\nA\t\t400\t300\t120\nB\tLow\t400\t300\t120\nC\tDeep\t400\t600\t120\nD\tdeep\t\t\t"
    result = preview(text, metric)
    assert [box.size_id for box in result.boxes] == ["euro-120", "euro-120", "deep", "deep"]
    assert [size.name for size in result.new_sizes] == ["Deep"]


def test_a_size_of_a_refused_row_is_not_kept(metric: Project) -> None:
    result = preview("Label\tSize\tW\tD\tH\tkg\nA\tDeep\t400\t600\t120\theavy\nB\tDeep\t\t\t\t1", metric)
    assert [row.number for row in result.refused] == [2, 3]
    assert result.new_sizes == ()


def test_without_a_column_of_labels(metric: Project) -> None:
    result = preview("Size\tContents\nEuro 120\t26 inch rims\nmany\nEuro 120\t", metric)
    assert [box.label for box in result.boxes] == ["26 inch rims", "Box 4"]


def test_without_headings(metric: Project) -> None:
    table = table_from_text("Rims\t300\t200\t100\nHubs\t300\t200\t100").with_headings(False)
    columns = {Column.LABEL: 0, Column.WIDTH: 1, Column.DEPTH: 2, Column.HEIGHT: 3}
    result = read_inventory(table, Matching(columns), metric)
    assert [(row.number, row.boxes[0].label) for row in result.accepted] == [(1, "Rims"), (2, "Hubs")]


@pytest.mark.parametrize(
    ("text", "cell", "why", "mend"),
    [
        ("Label\tSize\n\tEuro 120", "A2", "no label", "Write what the box is called."),
        ("Label\tSize\nRims\t", "B2", "no size", "Write the name of its size"),
        ("Label\tSize\nRims\tHuge", "B2", "no box size “Huge”", "first, or give its width, depth and height as well."),
        ("Label\tW\tD\tH\nRims\t400\t\t120", "C2", "the depth of the box is missing", "Give the depth."),
        (
            "Label\tW\tD\tH\nRims\t400\t\t",
            "C2",
            "the depth and height of the box are missing",
            "Give the depth and height.",
        ),
        ("Label\tW\tD\tH\nRims\twide\t300\t120", "B2", "“wide” is not a length", "Write for example 396"),
        ("Label\tW\tD\tH\nRims\t2,940\t300\t120", "B2", "can be read as", "Write 2940 or 2.94."),
        ("Label\tW\tD\tH\nRims\t-1\t300\t120", "B2", "is negative", ""),
        ("Label\tW\tD\tH\nRims\t400\t300\t5", "D2", "5 must be at least 10", "10 to 3000 mm"),
        ("Label\tW\tD\tH\nRims\t400\t300\t5 m", "D2", "5000 must be at most 3,000", "10 to 3000 mm"),
        ("Label\tSize\tH\nRims\tEuro 120\t170", "C2", "“Euro 120” has the height 120 mm, not 170 mm", "another name"),
        ("Label\tSize\tMass\nRims\tEuro 120\theavy", "C2", "“heavy” is not a mass", "Write for example 4.5"),
        ("Label\tSize\tMass\nRims\tEuro 120\t1001", "C2", "1001 must be at most 1,000", "Correct the mass."),
        ("Label\tSize\tUse\nRims\tEuro 120\tblue", "C2", "“blue” does not say how often", "daily, weekly or seldom"),
        (
            "Label\tSize\tStatus\nRims\tEuro 120\tworn",
            "C2",
            "“worn” does not say whether",
            "owned, wished or elsewhere",
        ),
        ("Label\tSize\tQty\nRims\tEuro 120\t0", "C2", "“0” is not a number of boxes", "whole number from 1 to 1000"),
        ("Label\tSize\tQty\nRims\tEuro 120\t2.5", "C2", "“2.5” is not a number of boxes", "whole number"),
        ("Label\tSize\tQty\nRims\tEuro 120\tmany", "C2", "“many” is not a number of boxes", "whole number"),
        ("Label\tSize\tQty\nRims\tEuro 120\t1,000", "C2", "can be read as", "Write 1000 or 1.0."),
        (f"Label\tSize\n{'x' * 201}\tEuro 120", "A2", "too long: at most 200 characters", "Shorten the text."),
        (f"Label\tSize\tNote\nRims\tEuro 120\t{'x' * 2001}", "C2", "at most 2,000 characters", "Shorten the text."),
    ],
)
def test_refused_with_cell_reason_and_remedy(metric: Project, text: str, cell: str, why: str, mend: str) -> None:
    fault = only_fault(text, metric)
    assert fault.cell == cell
    assert fault.text == text.split("\n")[1].split("\t")[ord(cell[0]) - ord("A")]
    assert why in fault.why
    assert mend in fault.mend
    assert not fault.why.endswith(".")


def test_a_measure_without_a_column_is_told_without_a_cell(metric: Project) -> None:
    result = preview("Label\tSize\tHeight\nRims\tEuro 120\t\nHubs\t\t120", metric)
    assert len(result.boxes) == 1
    (fault,) = result.refused[0].faults
    assert (fault.cell, fault.heading, fault.text) == ("", "", "")
    assert fault.why == "the width and depth of the box are missing"


def test_all_faults_of_a_row_are_told(metric: Project) -> None:
    (row,) = preview("Label\tW\tD\tH\tkg\tUse\n\ta\tb\t120\tc\td?", metric).refused
    assert [fault.cell for fault in row.faults] == ["B2", "C2", "A2", "E2", "F2"]


def test_the_row_that_defined_a_size_is_named(metric: Project) -> None:
    result = preview("Label\tSize\tW\tD\tH\nA\tDeep\t400\t600\t120\nB\tDeep\t400\t500\t120", metric)
    assert "the depth 600 mm since row 2, not 500 mm" in result.refused[0].faults[0].why


def test_boxes_that_seem_to_be_there_already_are_remarked(metric: Project) -> None:
    result = preview("Label\tSize\nSpokes\tEuro 120\nSpokes\tEuro 170\nRims\tEuro 120", metric)
    assert len(result.boxes) == 3
    assert result.remarks == ("1 of these boxes have a label and size that are in the inventory already.",)


def test_a_full_project_takes_no_more(metric: Project, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(inventory, "MOST_BOXES", 4)
    result = preview("Label\tSize\tQty\nA\tEuro 120\t1\nB\tEuro 120\t2\nC\tEuro 120\t1", metric)
    assert [box.label for box in result.boxes] == ["A", "C"]
    assert "at most 4 boxes" in result.refused[0].faults[0].why
    monkeypatch.setattr(sizes, "MOST_BOX_SIZES", 2)
    assert "at most 2 box sizes" in only_fault("Label\tW\tD\tH\nA\t1 m\t1 m\t1 m", metric).why


def test_matchings_that_lead_nowhere(metric: Project) -> None:
    table = table_from_text("Label\tWidth\tDepth\nRims\t400\t300")
    with pytest.raises(TableError, match="No column gives the size"):
        read_inventory(table, propose_matching(table, metric), metric)
    with pytest.raises(TableError, match="There is no column number 8 for “size”; the pasted text has 3"):
        read_inventory(table, Matching({Column.SIZE: 7}), metric)


def test_two_names_alike_but_for_capitals_mean_the_first_size(metric: Project) -> None:
    twin = BoxSize(id="twin", name="EURO 120", width_mm=100, depth_mm=100, height_mm=100)
    crowded = metric.replace(box_sizes=(*metric.box_sizes, twin))
    (box,) = preview("Label\tSize\nRims\teuro 120", crowded).boxes
    assert box.size_id == "euro-120"
