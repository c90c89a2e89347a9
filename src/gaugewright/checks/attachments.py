"""Pieces sewn onto others: does each lie on the piece it is sewn to?"""

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.wording import by_size, cm, count_of, problem
from gaugewright.design.model import Attachment
from gaugewright.errors import Problem
from gaugewright.grading.outline_model import row_nearest


def check_attached(subject: Subject) -> Found:
    """Nothing sewn on begins below the piece under it, ends above it, or reaches past its other edge."""
    problems = [one for attached in subject.design.attachments for one in _beyond(subject, attached)]
    return Found(tuple(problems), f"{count_of(len(subject.design.attachments), 'piece')} sewn on" if subject.design.attachments else "nothing is sewn on")


def _beyond(subject: Subject, one: Attachment) -> list[Problem]:
    """What reaches beyond, a row or a stitch aside; the width is that of the rows at its base and its top."""
    high: list[tuple[str, str]] = []
    wide: list[tuple[str, str]] = []
    for size in subject.sizes:
        env = subject.grading.environments[size]
        under, over = (subject.grading.pieces[key][size] for key in (one.to, one.piece))
        fabrics = {fabric.key: fabric.gauge for fabric in subject.design.fabrics}
        up, inset, heights = env.length(one.up), env.length(one.inset), under.outline.heights
        tall, across = over.outline.heights[-1], max(fabrics[row.fabric].width_of(row.across) for row in over.main.rows)
        if up < 0 or up + tall > heights[-1] + fabrics[under.main.rows[-1].fabric].row_height:
            high.append((size, f"{cm(up)} to {cm(up + tall)} of {cm(heights[-1])}"))
        for height in (up, up + tall):
            row = under.main.rows[min(max(row_nearest(heights, height), 1), len(under.main.rows)) - 1]
            gauge = fabrics[row.fabric]
            if inset < 0 or inset + across > gauge.width_of(row.across + 1):
                wide.append((size, f"{cm(inset)} to {cm(inset + across)} of {cm(gauge.width_of(row.across))}"))
                break
    told = ((high, "upwards", one.up.origin, "up"), (wide, "across", one.inset.origin, "in"))
    return [
        problem("attached-outside", f"{one.piece} lies partly beside {one.to}: {way} it takes {by_size(found)}", origin, f"change `{key}`, or make {one.piece} smaller", [size for size, _ in found])
        for found, way, origin, key in told if found
    ]
