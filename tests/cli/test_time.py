"""The command `time`: what it says, and every way to go wrong."""

import datetime
import json
import subprocess
import sys
from pathlib import Path

import pytest
from cli.running import ROOT, SCARF, command, environment, invoke, spec_in

from gaugewright.cli.time_lines import days_of
from gaugewright.errors import UserError

JACKET = ROOT / "samples/saltmarsh-jacket/spec.yaml"


def said(*arguments: object) -> str:
    done = invoke("time", *arguments)
    assert done.exit_code == 0, done.output
    return done.output


def test_hours_by_piece_and_size_add_up() -> None:
    lines = said(JACKET).splitlines()
    assert "  body: 11.9 stitches a minute, as timed on the swatch" in lines
    assert "  cuff: 17.9 stitches a minute, from body by the movements in a stitch" in lines
    table = [line.rsplit(maxsplit=9) for line in lines if line.count(":") == 9]
    assert [row[0].split(" (")[0].strip() for row in table] == ["Back", "Right Front", "Left Front", "Sleeve", "Front and Neck Band", "Pocket", "Picking up", "Seams", "Ends", "Washing and laying out", "In all"]
    minutes = [[int(cell.split(":")[0]) * 60 + int(cell.split(":")[1]) for cell in row[1:]] for row in table]
    assert [sum(column) for column in zip(*minutes[:-1], strict=True)] == minutes[-1]


def test_without_a_timed_swatch_the_estimate_is_marked(tmp_path: Path) -> None:
    found = said(spec_in(tmp_path, SCARF))
    assert "rough estimate from published paces" in found and "plain: 14.2 stitches a minute, as published" in found


def test_a_beginner_and_a_pace_of_ones_own() -> None:
    plain, slower, own = (json.loads(said(JACKET, "--json", "--size", "M", *more)) for more in ((), ("--pace", "beginner"), ("--pace", "14", "--pace", "cuff=20")))
    whole = [one["sizes"]["M"]["whole"]["mean"] for one in (plain, slower, own)]
    assert whole[1] == pytest.approx(whole[0] * 4 / 3, rel=1e-3) and whole[2] < whole[0]
    assert {key: round(pace["per_minute"], 2) for key, pace in own["paces"].items()} == {"body": 14.0, "sleeve": 14.0, "cuff": 20.0, "band": 20.0}
    assert said(JACKET, "--pace", "practised") == said(JACKET)


def test_a_day_too_near_is_told_with_what_would_make_it_possible() -> None:
    found = said(JACKET, "--size", "M", "--hours", "3", "--from", "2026-11-25", "--by", "2026-11-28")
    assert "From 2026-11-25 to 2026-11-28, both included: 4 days of 3 hours, 10:20 hours of it work" in found
    assert "licensed advice" in found and "today" not in found
    assert "M: no, not at the expected pace: it takes 12 to 20 hours, about 15½, and there are 10:20" in found
    assert "by then at the expected pace: Back, Right Front, Left Front, 96 % of Sleeve" in found
    assert "at 3 hours a day done on Tuesday 2026-12-01, at the slowest on Wednesday 2026-12-02" in found
    assert "likely with 4½ hours a day, sure with 6 hours" in found
    assert "no smaller size can be done by then either" in found


def test_what_it_names_is_enough() -> None:
    """The same question with the hours, and with the day, that the answer before it named."""
    asked = (JACKET, "--size", "M", "--from", "2026-11-25")
    assert "M: likely" in said(*asked, "--by", "2026-11-28", "--hours", "4.5")
    assert "M: yes" in said(*asked, "--by", "2026-11-28", "--hours", "6")
    assert "M: likely" in said(*asked, "--by", "2026-12-01", "--hours", "3")
    assert "M: yes" in said(*asked, "--by", "2026-12-02", "--hours", "3")


def test_a_smaller_size_that_would_do_is_named() -> None:
    """Five days of four hours are 17½ hours of work; 1X takes 17¼, 2X 18."""
    found = said(JACKET, "--size", "5X", "--hours", "4", "--from", "2026-11-25", "--by", "2026-11-29")
    assert "5 days of 4 hours, 17:30 hours of it work" in found and "a smaller size would do: 1X (likely)" in found


def test_many_hours_a_day_are_cautioned() -> None:
    found = said(JACKET, "--size", "M", "--hours", "9", "--from", "2026-11-25", "--by", "2026-11-29")
    assert "M: yes" in found and "hard on hands" in found


def test_the_first_day_is_today_unless_given() -> None:
    day = datetime.date.today() + datetime.timedelta(days=200)
    found = said(JACKET, "--size", "XS", "--by", day.isoformat())
    assert "(today)" in found and "XS: yes" in found


def test_as_json() -> None:
    found = json.loads(said(JACKET, "--json", "--size", "XS,M", "--hours", "3", "--from", "2026-11-25", "--by", "2026-11-28"))
    assert found["days"] == {"from": "2026-11-25", "by": "2026-11-28", "number": 4, "hours_a_day": 3.0, "hours_of_work": pytest.approx(4 * 155 / 60)}
    assert [(one["size"], one["verdict"]) for one in found["answers"]] == [("XS", "no"), ("M", "no")]
    assert list(found["sizes"]) == ["XS", "M"]
    one = found["sizes"]["M"]
    assert one["whole"]["mean"] == pytest.approx(sum(piece["time"]["mean"] for piece in one["pieces"]) + one["finish"]["mean"])
    assert json.loads(said(JACKET, "--json"))["days"] is None


def test_another_gauge_has_other_hours() -> None:
    own, finer = (json.loads(said(JACKET, "--json", "--size", "M", *more)) for more in ((), ("--gauge", "10 sts, 8 rows / 10 cm")))
    assert finer["sizes"]["M"]["whole"]["mean"] > own["sizes"]["M"]["whole"]["mean"]


@pytest.mark.parametrize(
    ("arguments", "name", "hint"),
    [
        (("--hours", "25"), "hours-a-day", "--hours 2"),
        (("--hours", "0"), "hours-a-day", "--hours 2"),
        (("--hours", "nan"), "hours-a-day", "--hours 2"),
        (("--by", "Saturday"), "date-text", "2026-11-25"),
        (("--by", "2026-02-30"), "date-text", "2026-11-25"),
        (("--from", "25.11.2026"), "date-text", "2026-11-25"),
        (("--by", "2020-01-01"), "date-past", "a day to come"),
        (("--from", "2026-11-25", "--by", "2026-11-24"), "date-past", "a day to come"),
        (("--pace", "fast"), "bad-pace", "--pace 14"),
        (("--pace", "0"), "bad-pace", "--pace 14"),
        (("--pace", "beginner", "--pace", "practised"), "bad-pace", "one of them"),
        (("--pace", "14", "--pace", "body=15"), "bad-pace", "one pace"),
        (("--pace", "171"), "pace-beyond-record", "--pace 14"),
        (("--pace", "0.1"), "pace-too-slow", "--pace 14"),
        (("--pace", "sock=14"), "unknown-fabric", "body, sleeve, cuff, band"),
        (("--size", "M+"), "size-not-made", "XS"),
    ],
)
def test_what_cant_be_asked(arguments: tuple[str, ...], name: str, hint: str) -> None:
    done = invoke("time", JACKET, *arguments)
    assert done.exit_code == 1 and f"{name}: " in done.stderr and hint in done.stderr


def test_a_slip_in_the_spec_is_placed(tmp_path: Path) -> None:
    text = SCARF.replace('gauge: "9 sts, 7 rows / 10 cm"', "swatch: {stitches: 9, rows: 7, width: 10 cm, height: 10 cm, timed: {stitches: 200, minutes: 1}}")
    line = next(one for one in text.splitlines() if "timed" in one)
    done = command("time", spec_in(tmp_path, text), folder=tmp_path)
    assert done.returncode == 1 and f":6:{line.index('1}') + 1}: pace-beyond-record" in done.stderr and "Traceback" not in done.stderr


def test_today_is_the_callers() -> None:
    """Nothing but the command looks at the calendar."""
    today = datetime.date(2030, 5, 6)
    found = days_of(2.0, "", "2030-05-06", today)
    assert found is not None and found.number == 1
    with pytest.raises(UserError):
        days_of(2.0, "", "2030-05-05", today)


def test_a_plain_publish_of_an_untimed_spec_counts_no_hours(tmp_path: Path) -> None:
    script = "import sys; from gaugewright import pipeline; from pathlib import Path\npipeline.publish(Path(sys.argv[1]), Path(sys.argv[2]))\nprint([name for name in sys.modules if 'gaugewright.hours' in name or name.endswith('work_times')])"
    done = subprocess.run([sys.executable, "-c", script, str(spec_in(tmp_path, SCARF)), str(tmp_path / "scarf.pdf")], capture_output=True, text=True, env=environment(), check=False)
    assert done.stdout.strip() == "[]", done.stderr
