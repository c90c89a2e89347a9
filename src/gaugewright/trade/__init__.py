"""What the trade has agreed on: stitches and their names, chains, hooks, yarn, paper, care.

In: a stitch, a size, a fibre. Out: the published fact about it, with its source. The figures
stand in `data/`; the modules only look up, word and compute. Import the module you need:

`stitches` stitch facts; `terms` US and UK abbreviations and words; `foundation` starting
chains; `hooks` hook labels; `yarn_weights`, `levels`, `paper` the standard lists; `care` and
`cautions` what the finished thing must be treated, and used, with.
"""
