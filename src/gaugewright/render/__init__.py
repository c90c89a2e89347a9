"""The renderers: a `Document` or a `Drawing` in, text or bytes out.

They see `instructions.nodes` and `drawings.primitives` only, never the spec or the design, and
they write no files.
"""
