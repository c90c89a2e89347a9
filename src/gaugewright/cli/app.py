"""The commands: thin, each a call of the pipeline and a few words about what came of it."""

import atexit
import gc
import os
import sys
from pathlib import Path
from typing import Annotated

import typer

from gaugewright.cli.outcome import guarded, say
from gaugewright.cli.words import Paper, Terms, split_sizes

app = typer.Typer(
    no_args_is_help=True, add_completion=False, rich_markup_mode=None, pretty_exceptions_enable=False,
    help="Turns one spec file into a graded, multi-size written crochet pattern.",
)

SpecFile = Annotated[Path, typer.Argument(metavar="SPEC", help="The spec file.")]
GaugeTexts = Annotated[list[str], typer.Option("--gauge", help='Another gauge: "8 sts, 6.5 rows / 10 cm"; for one fabric: body="8 sts, 6.5 rows / 10 cm".')]
NO_GAUGE: list[str] = []
Templates = Annotated[Path | None, typer.Option("--templates", help="A folder of your own templates, searched first.")]


@app.command()
def publish(
    spec: SpecFile,
    size: Annotated[str, typer.Option("--size", help="Print these sizes' numbers only, such as L or S,M.")] = "",
    gauge: GaugeTexts = NO_GAUGE,
    out: Annotated[Path | None, typer.Option("--out", help="A folder, or a file that ends in .pdf; beside the spec unless given.")] = None,
    paper: Annotated[Paper, typer.Option("--paper", help="The size of paper.")] = Paper.a4,
    terms: Annotated[Terms | None, typer.Option("--terms", help="US or UK terms; the spec's unless given.")] = None,
    text: Annotated[bool, typer.Option("--text", help="Write the pattern as plain text too.")] = False,
    svg: Annotated[bool, typer.Option("--svg", help="Write each drawing as SVG too.")] = False,
    sheet: Annotated[bool, typer.Option("--sheet", help="Write a sheet for test makers to fill in too, as a file of its own.")] = False,
    templates: Templates = None,
) -> None:
    """Grade, check and write the pattern as a PDF."""
    from gaugewright.cli.gauge_option import gauges_text
    from gaugewright.cli.publishing import Wanted, publish_files
    from gaugewright.pipeline import Edition

    edition = Edition(split_sizes(size), terms.value if terms else None, gauges_text(gauge), templates)
    guarded(lambda: publish_files(Wanted(spec, edition, gauge, out, paper.value, text, svg, sheet)))


@app.command()
def check(
    spec: SpecFile,
    gauge: GaugeTexts = NO_GAUGE,
    as_json: Annotated[bool, typer.Option("--json", help="Write the results as JSON.")] = False,
    templates: Templates = None,
) -> None:
    """Run every check and list what each found."""
    from gaugewright.cli.checking import check_spec, check_spec_as_json

    guarded(lambda: check_spec_as_json(spec, gauge, templates) if as_json else check_spec(spec, gauge, templates))


@app.command()
def show(
    spec: SpecFile,
    stage: Annotated[str, typer.Argument(metavar="STAGE", help="design, targets, plans, rows, yarn or text.")],
    gauge: GaugeTexts = NO_GAUGE,
    templates: Templates = None,
) -> None:
    """Show what one stage made of the spec."""
    from gaugewright.cli.showing import show_stage

    guarded(lambda: show_stage(spec, stage, gauge, templates))


@app.command()
def swatch(
    readings: Annotated[Path, typer.Argument(metavar="READINGS", help="The file of a swatch's readings.")],
    spec: Annotated[Path | None, typer.Option("--for", help="The spec whose pattern the swatch is for.")] = None,
    into: Annotated[Path | None, typer.Option("--into", help="A spec whose swatch is changed to these readings; a copy of it is kept.")] = None,
    fabric: Annotated[str, typer.Option("--fabric", help="Which fabric of the spec was swatched.")] = "",
    as_json: Annotated[bool, typer.Option("--json", help="Write the results as JSON.")] = False,
    templates: Templates = None,
) -> None:
    """Read a swatch: its gauge, the range, what it means."""
    from gaugewright.cli.swatching import swatch_into, swatch_lines

    guarded(lambda: swatch_into(readings, into, fabric, templates) if into else swatch_lines(readings, spec, fabric, templates, as_json))


@app.command()
def regauge(
    spec: SpecFile,
    gauge: GaugeTexts = NO_GAUGE,
    size: Annotated[str, typer.Option("--size", help="These sizes only, such as L or S,M; with --worked the one begun.")] = "",
    piece: Annotated[str, typer.Option("--piece", help="The piece you are in the middle of, with --worked.")] = "",
    worked: Annotated[str, typer.Option("--worked", help='What is worked of it: "12 rows, 14 sts, measures 46 cm wide, 24 cm high".')] = "",
    as_json: Annotated[bool, typer.Option("--json", help="Write the results as JSON.")] = False,
    templates: Templates = None,
) -> None:
    """Say what another gauge changes, or whose numbers to follow."""
    if bool(piece) != bool(worked) or bool(worked) == bool(gauge):
        raise typer.BadParameter("give --gauge, or --piece and --worked together")
    if worked:
        from gaugewright.cli.midway_lines import midway_lines

        guarded(lambda: midway_lines(spec, piece, worked, size.strip(), templates, as_json))
    else:
        from gaugewright.cli.regauging import regauge_lines

        guarded(lambda: regauge_lines(spec, gauge, split_sizes(size), templates, as_json))


@app.command()
def fit(
    spec: SpecFile,
    body: Annotated[Path, typer.Option("--body", help="A file of people's measurements; it is only read.")],
    person: Annotated[str, typer.Option("--person", help="One of the people in it.")] = "",
    own: Annotated[bool, typer.Option("--own", help="Publish a size for this one body; its measures are printed, its name isn't.")] = False,
    own_lengths: Annotated[bool, typer.Option("--own-lengths", help="Publish the size found, with this body's own lengths and the size's girths.")] = False,
    out: Annotated[Path | None, typer.Option("--out", help="With --own or --own-lengths, a folder, or a file that ends in .pdf; beside the spec unless given.")] = None,
    as_json: Annotated[bool, typer.Option("--json", help="Write the results as JSON.")] = False,
    templates: Templates = None,
) -> None:
    """Find the size for a body: its ease, what to change."""
    from gaugewright.cli.fitting import fit_lines, publish_own

    if own and own_lengths:
        raise typer.BadParameter("give --own for all of a body, or --own-lengths for its lengths alone")
    guarded(lambda: publish_own(spec, body, person, out, templates, own_lengths) if own or own_lengths else fit_lines(spec, body, person, templates, as_json))


@app.command()
def bodies(
    spec: SpecFile,
    ease: Annotated[list[str] | None, typer.Option("--ease", help="Limits of ease of a measure in cm, such as upper_arm=2..12.")] = None,
    as_json: Annotated[bool, typer.Option("--json", help="Write the results as JSON.")] = False,
    templates: Templates = None,
) -> None:
    """Show what share of surveyed bodies each size fits."""
    from gaugewright.cli.bodies import bodies_lines

    guarded(lambda: bodies_lines(spec, ease or [], templates, as_json))


@app.command()
def returns(
    spec: SpecFile,
    files: Annotated[list[Path] | None, typer.Argument(metavar="[RETURN]...", help="Test makers' files, or folders of them; they are only read.")] = None,
    blank: Annotated[Path | None, typer.Option("--blank", help="Write an empty file for a maker to fill in; never over another.")] = None,
    size: Annotated[str, typer.Option("--size", help="With --blank, the size that the file is for.")] = "",
    gauge: GaugeTexts = NO_GAUGE,
    as_json: Annotated[bool, typer.Option("--json", help="Write the results as JSON.")] = False,
    templates: Templates = None,
) -> None:
    """Compare what test makers made with what the pattern predicts."""
    if bool(files) == bool(blank) or size and not blank:
        raise typer.BadParameter("give test makers' files or folders, or --blank with the file to write")
    from gaugewright.cli.returns import returns_lines, write_blank

    guarded(lambda: write_blank(spec, blank, size.strip(), gauge, templates) if blank else returns_lines(spec, files or [], gauge, templates, as_json))


@app.command()
def yarn(
    spec: SpecFile,
    size: Annotated[str, typer.Option("--size", help="This size only.")] = "",
    have: Annotated[list[str] | None, typer.Option("--have", help='Yarn in hand: oat=5 (balls), kelp="350 g" or slate="200 yd".')] = None,
    used: Annotated[list[str] | None, typer.Option("--used", help='A finished piece and what it weighs, as often as pieces are finished: "back=310 g".')] = None,
    as_json: Annotated[bool, typer.Option("--json", help="Write the results as JSON.")] = False,
    templates: Templates = None,
) -> None:
    """Say how much yarn, and whether the yarn in hand does."""
    from gaugewright.cli.yarn_lines import yarn_lines

    guarded(lambda: yarn_lines(spec, size.strip(), have or [], used or [], templates, as_json))


@app.command()
def shop(
    spec: SpecFile,
    file: Annotated[Path | None, typer.Argument(metavar="[FILE]", help="A shopping file: shops with their prices, what is made; the spec's own prices unless given.")] = None,
    size: Annotated[list[str] | None, typer.Option("--size", help="A size that is made, in place of those in the file; again for another, or twice for two.")] = None,
    card: Annotated[Path | None, typer.Option("--card", help="Write a shopping card of one page, a name that ends in .pdf.")] = None,
    paper: Annotated[Paper, typer.Option("--paper", help="The size of paper.")] = Paper.a4,
    as_json: Annotated[bool, typer.Option("--json", help="Write the results as JSON.")] = False,
    templates: Templates = None,
) -> None:
    """Find the cheapest way to buy the yarn; write a shopping card."""
    from gaugewright.cli.shopping import Trip, shop_lines

    sizes = tuple(one for text in size or [] for one in split_sizes(text))
    guarded(lambda: shop_lines(Trip(spec, file, sizes, card, paper.value, templates, as_json)))


@app.command()
def time(
    spec: SpecFile,
    size: Annotated[str, typer.Option("--size", help="These sizes only, such as L or S,M.")] = "",
    pace: Annotated[list[str] | None, typer.Option("--pace", help="Whose: beginner, practised, or stitches a minute of your own as 14 or body=14.")] = None,
    hours: Annotated[float, typer.Option("--hours", help="Hours you have a day, pauses included.")] = 2.0,
    by: Annotated[str, typer.Option("--by", help="The day by which it must be done, as 2026-11-28.")] = "",
    begin: Annotated[str, typer.Option("--from", help="The first day; today unless given.")] = "",
    gauge: GaugeTexts = NO_GAUGE,
    as_json: Annotated[bool, typer.Option("--json", help="Write the results as JSON.")] = False,
    templates: Templates = None,
) -> None:
    """Say how many hours it takes, and whether by a day."""
    from gaugewright.cli.time_lines import Asked, time_lines

    asked = Asked(spec, gauge, split_sizes(size), pace or [], hours, by, begin)
    guarded(lambda: time_lines(asked, templates, as_json))


@app.command()
def candidates(
    spec: SpecFile,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="The file of yarns to compare.")],
    size: Annotated[str, typer.Option("--size", help="These sizes only, such as L or S,M.")] = "",
    pdf: Annotated[bool, typer.Option("--pdf", help="Write a PDF, and its plot as SVG.")] = False,
    out: Annotated[Path | None, typer.Option("--out", help="With --pdf, a folder, or a file that ends in .pdf; beside FILE unless given.")] = None,
    as_json: Annotated[bool, typer.Option("--json", help="Write the results as JSON.")] = False,
    templates: Templates = None,
) -> None:
    """Compare yarns for a pattern: gauge, balls, cost, wear."""
    from gaugewright.cli.comparing import candidates_lines

    guarded(lambda: candidates_lines(spec, file, split_sizes(size), templates, as_json, pdf, out))


@app.command()
def schema() -> None:
    """Write the JSON schema of spec files, for editors."""
    import json

    from gaugewright.spec import json_schema

    guarded(lambda: say(json.dumps(json_schema(), indent=2, ensure_ascii=False)))


def _version(wanted: bool) -> None:
    if wanted:
        from gaugewright import __version__

        say(f"gaugewright {__version__}")
        raise typer.Exit()


@app.callback()
def common(version: Annotated[bool, typer.Option("--version", callback=_version, is_eager=True, help="Show the version.")] = False) -> None:
    """Turns one spec file into a graded, multi-size written crochet pattern."""


def main() -> None:
    """Runs the command line; exit 70 and what to send for anything that is our own fault.

    One pattern fits into memory many times over, so no time is spent on collecting garbage: neither
    on the way nor, which costs most, all at once at the end. Nor is any spent on asking every installed package
    whether it is a plugin of pydantic's: the models take none.
    """
    from gaugewright.cli.outcome import own_fault, speak_any_terminal

    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    gc.disable()
    atexit.register(gc.freeze)
    speak_any_terminal()
    try:
        app()
    except Exception as fault:
        own_fault(fault)
        sys.exit(70)
