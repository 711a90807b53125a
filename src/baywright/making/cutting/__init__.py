"""Cutting layouts: rectangles out of boards and offcuts (`sheets`), lengths out of bars (`bars`)."""
