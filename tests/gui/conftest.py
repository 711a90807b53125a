"""The tests of the window run without a screen, on Qt's offscreen platform."""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
