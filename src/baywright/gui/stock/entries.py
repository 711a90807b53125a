"""Which values of the stock and the prices are set as fields: how the saw cuts, what is kept, what prices mean."""

from baywright.gui.dimensions.entry import FormEntry, choice, flag, length, text
from baywright.gui.fields.kinds import PercentKind

_R = "stock.rules."
STAGES: tuple[tuple[object, str], ...] = (
    (None, "as often as it serves"),
    (2, "at most 2 stages"),
    (3, "at most 3 stages"),
)

RULES: tuple[FormEntry, ...] = (
    length(_R + "kerf_mm", "Kerf of the saw", "What the blade takes; read it on the blade."),
    length(_R + "trim_mm", "Trimmed off a sheet", "Cut off all round a sheet before it is divided; 0 for none."),
    choice(_R + "stages", "Direction of cutting changes", "Some panel saws allow only two or three stages.", STAGES),
    length(_R + "rest_length_mm", "Rest worth keeping, longer side", "Least longer side of a rest that is kept."),
    length(_R + "rest_width_mm", "Rest worth keeping, shorter side", "Least shorter side of a rest that is kept."),
    flag(
        _R + "full_width_first",
        "Rather a rest over the whole width",
        "Of rests, one over the whole width of its sheet is liked better than a larger one that is not.",
    ),
    length(_R + "bar_kerf_mm", "Kerf where bars are cut", "What the blade takes of a bar."),
    length(_R + "bar_rest_mm", "Rest of a bar worth keeping", "Least length of a rest of a bar that is kept."),
    flag(
        _R + "rails_from_bars",
        "Braces and rails are cut from bars",
        "Else they are cut from sheets like the other boards.",
    ),
)

PRICES: tuple[FormEntry, ...] = (
    text(
        "pricing.currency",
        "Currency",
        "Three letters, such as EUR, GBP or CHF. The prices keep their numbers: convert them yourself.",
        may_be_empty=False,
    ),
    FormEntry("pricing.vat_percent", "Value added tax", "In per cent; 0 where none is reckoned.", PercentKind()),
    flag(
        "pricing.prices_include_vat",
        "Prices have the tax in them",
        "Tick it where the prices that you type include the value added tax.",
    ),
)
