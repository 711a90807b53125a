"""Results in, bytes out: the workbook and the drawings in it. openpyxl and matplotlib live here."""
