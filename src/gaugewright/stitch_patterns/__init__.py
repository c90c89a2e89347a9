"""Stitch patterns: rows of a repeat, read, worked and held to what they say.

In: texts such as `1 sc, *ch 1, sk 1, 1 sc*`. Out: their nodes (`parser.py`), what a row makes of the row before
(`working.py`), and whether a pattern's rows follow one another at any number of repeats (`pattern.py`).
"""
