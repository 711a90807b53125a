"""The command line's words: sub-commands, options, help. Parsing only."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from baywright import __version__
from baywright.app.importing import CatalogueColumn, Column
from baywright.cli.matching import field_reader
from baywright.model.catalogue import HardwareKind

if TYPE_CHECKING:
    # argparse has no public name for what add_subparsers returns, and the private one takes no parameter at run time.
    _Commands = argparse._SubParsersAction[argparse.ArgumentParser]

EXIT_CODES = """\
exit codes:
    0  done
    1  the answer is no: no plan keeps every limit, the arrangement breaks one, a check is over its limit, a box can
       go nowhere, an import refuses rows, or a part cannot be cut
    2  the command line cannot be understood, or names columns or boxes that are not there
    3  a file cannot be read
    4  a file cannot be written
    5  a defect of the program
  130  stopped from the keyboard
  141  whoever read the output went away

Results go to the standard output, messages to the standard error.
"""

EXAMPLES = """\
examples:
  baywright                                  open the window
  baywright open --demo                      open the window on the demo
  baywright plan shop.baywright --save       plan, and keep the plan in the file
  baywright replan shop.baywright --save     plan anew with the fewest changes, and say what to do, step by step
  baywright where shop.baywright Pumps       say where a box could go, and what each place would change
  baywright options shop.baywright           list the shapes that the run could have
  baywright options shop.baywright --use 2 --save
  baywright built shop.baywright 1 2         mark bays as built; re-plans leave them as they are
  baywright workbook shop.baywright -o order.xlsx
  baywright drawings shop.baywright -o parts.pdf
  baywright cut shop.baywright               lay the parts out on sheets and bars, and list the cuts
  baywright schedule shop.baywright --csv > drawers.csv
  baywright result shop.baywright -o result.json
  baywright import shop.baywright boxes.csv  show what an import would take over
  baywright import shop.baywright boxes.xlsx --sheet Boxes --match label=Name --match mass=4 --accept
  baywright catalogue shop.baywright shop.csv --accept
  baywright check shop.baywright             say what is wrong with the arrangement
  baywright safety shop.baywright            say whether it is strong, stable and kind to the back
"""


def make_parser() -> argparse.ArgumentParser:
    """The parser of the whole command line."""
    parser = argparse.ArgumentParser(
        prog="baywright",
        description="Plans a wall of drawer bays for stackable boxes. Without a sub-command it opens the window.",
        epilog=f"{EXAMPLES}\n{EXIT_CODES}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"Baywright {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", title="sub-commands")
    _add_open(commands)
    _add_plan(commands)
    _add_replan(commands)
    _add_where(commands)
    _add_built(commands)
    _add_options(commands)
    _add_workbook(commands)
    _add_schedule(commands)
    _add_cut(commands)
    _add_drawings(commands)
    _add_result(commands)
    _add_check(commands)
    _add_import(commands)
    _add_catalogue(commands)
    return parser


def _command(commands: _Commands, name: str, help_text: str, description: str = "") -> argparse.ArgumentParser:
    return commands.add_parser(
        name,
        help=help_text,
        description=description or f"{help_text[0].upper()}{help_text[1:]}.",
        epilog=EXIT_CODES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )


def _file(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", type=Path, metavar="FILE", help="the project file (.baywright)")


def _add_open(commands: _Commands) -> None:
    parser = _command(commands, "open", "open the window on a project")
    what = parser.add_mutually_exclusive_group()
    what.add_argument("file", nargs="?", type=Path, metavar="FILE", help="the project file; none begins a new project")
    what.add_argument("--demo", action="store_true", help="open the demo, a community bicycle workshop")


def _add_plan(commands: _Commands) -> None:
    parser = _command(
        commands,
        "plan",
        "plan a project and print the plan",
        "Plan a project: fewest bays, then the lowest run, then the easiest handling; print the plan and its proof.\n"
        "Locked boxes stay where they are. Without --save no file is changed. Where nothing fits, the limits that\n"
        "clash are named, and single changes that help, with numbers; --repair makes one of them and plans again.",
    )
    _file(parser)
    _save(parser)
    parser.add_argument(
        "--repair", type=int, metavar="NUMBER", help="where there is no plan, make the change of that number first"
    )


def _save(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--save",
        nargs="?",
        type=Path,
        const=Path(),
        metavar="OUT",
        help="keep the plan in the project file, or in OUT",
    )


def _add_replan(commands: _Commands) -> None:
    parser = _command(
        commands,
        "replan",
        "plan anew with the fewest changes and print what to do",
        "Plan a project anew, against what is marked as built or else against its present arrangement: fewest boxes\n"
        "moved, fewest runners screwed on elsewhere, as the goals are ordered. Print the plan and its proof, what\n"
        "changes, and the steps in an order that can be followed. Without --save no file is changed.",
    )
    _file(parser)
    _save(parser)


def _add_where(commands: _Commands) -> None:
    parser = _command(
        commands,
        "where",
        "say where a box could go",
        "Print every place where a box could go with the others as they stand, best first, and what each place would\n"
        "change of every goal.",
    )
    _file(parser)
    parser.add_argument("box", metavar="BOX", help="the box, by its label or id")
    parser.add_argument("--most", type=int, default=20, metavar="N", help="print at most so many places (default: 20)")
    parser.add_argument("--why-not", action="store_true", help="also print why it cannot go to the other places")


def _add_options(commands: _Commands) -> None:
    parser = _command(
        commands,
        "options",
        "list the shapes that the run could have",
        "List the shapes of the run that hold every box and that no other one beats: every number of bays with the\n"
        "lowest run, shared and own uprights, less overhang of the top where that gains something. The numbers of\n"
        "bays and rows that are fixed in the file are set free for that. Without --save no file is changed.",
    )
    _file(parser)
    parser.add_argument("--use", type=int, metavar="NUMBER", help="put the run in the shape of that number, and fix it")
    _save(parser)


def _add_built(commands: _Commands) -> None:
    parser = _command(
        commands,
        "built",
        "mark bays as built, and print the work that is left",
        "Mark bays as cut, drilled and put up just as the file has them now, and save. Bays that stand already still\n"
        "do; what is in their drawers is taken over anew. Then print the work from what stands to the arrangement.\n"
        "Without a bay nothing is marked.",
    )
    _file(parser)
    what = parser.add_mutually_exclusive_group()
    what.add_argument(
        "bays", nargs="*", type=int, default=[], metavar="BAY", help="numbers of bays, from 1 at the left"
    )
    what.add_argument("--all", action="store_true", help="mark all bays")
    what.add_argument("--forget", action="store_true", help="forget that anything is built")


def _add_workbook(commands: _Commands) -> None:
    parser = _command(
        commands,
        "workbook",
        "write the ordering workbook (XLSX)",
        "Write the ordering workbook of the arrangement in the file; a project without one is planned first.",
    )
    source = parser.add_mutually_exclusive_group(required=True)
    source.add_argument("file", nargs="?", type=Path, metavar="FILE", help="the project file (.baywright)")
    source.add_argument("--demo", action="store_true", help="plan the demo and write its workbook")
    parser.add_argument(
        "-o", "--output", type=Path, metavar="OUT", help="the workbook, or a folder for it (default: beside FILE)"
    )


def _add_schedule(commands: _Commands) -> None:
    parser = _command(
        commands,
        "schedule",
        "print which box goes in which drawer at which row",
        "Print the drawer schedule of the arrangement in the file; a project without one is planned first.",
    )
    _file(parser)
    parser.add_argument("--csv", action="store_true", help="as comma-separated values, lengths in mm")


def _add_cut(commands: _Commands) -> None:
    parser = _command(
        commands,
        "cut",
        "lay the parts out on sheets and bars, and list the cuts",
        "Lay the parts of the run out on the sheets and bars in stock, owned ones first where that saves, at least\n"
        "cost; print every layout, its cuts in order with the fence's measures, the rests worth keeping and what to\n"
        "buy. A project without an arrangement is planned first. Without --save no file is changed; with it the most\n"
        "stages and, where --keep-rests is given, the rests are kept in the file.",
    )
    _file(parser)
    parser.add_argument("--json", action="store_true", help="print the cutting plan as JSON")
    parser.add_argument(
        "--stages", type=int, choices=(2, 3), metavar="N", help="let the direction of cutting change at most so often"
    )
    parser.add_argument(
        "--keep-rests",
        nargs="*",
        metavar="NUMBER",
        help="put the rests of these sheets and bars (C1 L2; without a number: all) into the stock, and take what was "
        "owned and cut out of it",
    )
    _save(parser)


def _add_drawings(commands: _Commands) -> None:
    parser = _command(
        commands,
        "drawings",
        "write the drawings of the parts, the book of cuts, or labels",
        "Write a PDF file with a page for every part: outline to scale, holes, grooves, mortises and edges with all\n"
        "measures, and how to read them; or the book of cuts, or labels for the pieces. A project without an\n"
        "arrangement is planned first; its file is not changed.",
    )
    _file(parser)
    parser.add_argument(
        "--paper",
        choices=("drawings", "cuts", "labels"),
        default="drawings",
        help="which paper: drawings of the parts (the usual one), the book of cuts, labels for the pieces",
    )
    parser.add_argument("--out", "-o", type=Path, metavar="FILE", help="where to; without it beside the project file")


def _add_result(commands: _Commands) -> None:
    parser = _command(
        commands,
        "result",
        "write the complete result as JSON",
        "Write project, plan, report, dimensions, parts, hardware and schedule as JSON.\n"
        "A project without an arrangement, or with --plan every project, is planned first.",
    )
    _file(parser)
    parser.add_argument("-o", "--output", type=Path, metavar="OUT", help="the file (default: standard output)")
    parser.add_argument("--plan", action="store_true", help="plan anew, so that the result holds the proof")
    _command(commands, "result-schema", "print the JSON schema of the complete result")


def _add_check(commands: _Commands) -> None:
    parser = _command(commands, "check", "say what is wrong with the arrangement as it stands in the file")
    _file(parser)
    parser = _command(
        commands, "safety", "say what the checks of sag, loads, tipping, lifting, access and tolerances found"
    )
    _file(parser)


def _add_import(commands: _Commands) -> None:
    parser = _command(
        commands,
        "import",
        "import an inventory from CSV or XLSX",
        "Show which boxes an import would take over and which rows it refuses, and why.\n"
        "Nothing is taken over without --accept; with it the accepted rows are, the refused ones never.\n\n"
        f"Fields: {', '.join(Column)}.\n"
        "A box needs a size: the name of one in the project, or width, depth and height. Bare numbers are in the unit\n"
        "that the heading names (“Height (cm)”), else in the project's, masses in kg. A row with a quantity makes\n"
        "several boxes. Columns are matched by their headings; --match settles what that leaves open.",
    )
    _table(parser, field_reader(Column))


def _add_catalogue(commands: _Commands) -> None:
    parser = _command(
        commands,
        "catalogue",
        "import a hardware catalogue from CSV or XLSX",
        "Show which items an import would add to the catalogue or change in it, and which rows it refuses, and why.\n"
        "Nothing is taken over without --accept; with it the accepted rows are, the refused ones never.\n\n"
        f"Fields: {', '.join(CatalogueColumn)}.\n"
        f"Kinds: {', '.join(HardwareKind)}.\n"
        "An item needs a kind and a name. One that is there already (the same kind, name, pack and supplier) is\n"
        "changed by what its row says and keeps the rest. Prices are of a pack, in the project's currency.",
    )
    _table(parser, field_reader(CatalogueColumn))


def _table(parser: argparse.ArgumentParser, field_and_column: Callable[[str], object]) -> None:
    """The arguments of an import from a table."""
    _file(parser)
    parser.add_argument("table", type=Path, metavar="TABLE", help="the CSV or XLSX file")
    parser.add_argument("--sheet", metavar="NAME", help="the sheet of an XLSX file (default: the first)")
    parser.add_argument(
        "--match",
        action="append",
        default=[],
        type=field_and_column,
        metavar="FIELD=COLUMN",
        help="read a field from a column, by its heading, letter or number, or from none (-); repeatable",
    )
    parser.add_argument(
        "--headings",
        action=argparse.BooleanOptionalAction,
        help="whether the first row holds headings (default: as it seems)",
    )
    parser.add_argument("--accept", action="store_true", help="take over what is shown as accepted, and save")
