"""Advice: the pipeline called from above, and its results compared.

In: a spec and what a maker has in hand (a swatch's readings). Out: plain data; `cli/` turns it into words.
"""
