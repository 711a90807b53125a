"""The bay grid editor: the run's front elevation to scale, in which boxes are moved from drawer to drawer.

Laws: one result in (the session's document and workings), one picture out; refreshing and selecting never edit; every
edit is one command; whatever a drag does can be done by keyboard or menu too.
"""
