"""Every derived dimension, declared once: its value, its working in words, its live formula for a spreadsheet."""
