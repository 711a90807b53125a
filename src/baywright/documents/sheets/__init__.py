"""The sheets of the ordering workbook, one module each, and what they share: cells, columns, the page."""
