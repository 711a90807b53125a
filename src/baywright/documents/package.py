"""The finished workbook file: the same bytes for the same document, and values beside its formulas.

Laws: nothing in the file tells when or where it was written; every formula cell holds the engine's value, or writing
fails; cells, styles and pictures are as openpyxl wrote them.
"""

import io
import re
import zipfile
from collections.abc import Mapping
from xml.sax.saxutils import escape

_FIXED_TIME = (2000, 1, 1, 0, 0, 0)
_FIXED_STAMP = "2000-01-01T00:00:00Z"
_STAMPS = re.compile(rb"(<dcterms:(created|modified)[^>]*>)[^<]*(</dcterms:)")
_FORMULA = re.compile(rb'(<c r="([A-Z]+[0-9]+)"[^>]*><f>[^<]*</f>)(?:<v ?/>|<v></v>)')
_CORE = "docProps/core.xml"


def finished(data: bytes, values: Mapping[str, Mapping[str, float | str]]) -> bytes:
    """The workbook `data` with fixed dates and, by archive member and cell, the `values` of its formulas."""
    target = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as source, zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as archive:
        for name in source.namelist():
            content = source.read(name)
            if name == _CORE:
                content = _STAMPS.sub(rb"\g<1>" + _FIXED_STAMP.encode() + rb"\g<3>", content)
            if name in values:
                content = _with_values(content, values[name])
            member = zipfile.ZipInfo(name, _FIXED_TIME)
            member.compress_type = zipfile.ZIP_DEFLATED
            member.external_attr = 0o644 << 16
            archive.writestr(member, content)
    return target.getvalue()


def _with_values(content: bytes, values: Mapping[str, float | str]) -> bytes:
    left = dict(values)

    def beside(match: re.Match[bytes]) -> bytes:
        value = left.pop(match[2].decode())
        if isinstance(value, str):  # a formula whose value is a text is a cell of another kind
            return match[1].replace(b"<c ", b'<c t="str" ', 1) + f"<v>{escape(value)}</v>".encode()
        return match[1] + f"<v>{value!r}</v>".encode()

    written = _FORMULA.sub(beside, content)
    if left:
        raise ValueError(f"These formula cells got no value: {', '.join(sorted(left))}.")
    return written
