"""A spec is read once, however many gauges it is graded at."""

from pathlib import Path

import pytest
from cli.running import ROOT

from gaugewright import pipeline, spec
from gaugewright.cli.publishing import Wanted, publish_files
from gaugewright.cli.regauging import regauge_lines
from gaugewright.cli.showing import show_stage
from gaugewright.gauge.model import Gauge

COWL = ROOT / "samples" / "tideline-cowl" / "spec.yaml"
GAUGE = "13 sts, 9 rows / 10 cm"


@pytest.mark.parametrize("ask", ["publish", "show", "regauge", "call"])
def test_a_spec_is_read_once(ask: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    read, load = [], spec.load_spec

    def counted(*given: object, **named: object) -> object:
        read.append(given[0])
        return load(*given, **named)  # type: ignore[arg-type]

    monkeypatch.setattr(spec, "load_spec", counted)
    calls = {
        "publish": lambda: publish_files(Wanted(COWL, pipeline.Edition(own_gauge=GAUGE), [GAUGE], tmp_path, "a4", False, False)),
        "show": lambda: show_stage(COWL, "text", [GAUGE], None),
        "regauge": lambda: regauge_lines(COWL, [GAUGE], (), None, False),
        "call": lambda: pipeline.publish(COWL, tmp_path / "cowl.pdf", gauge=Gauge(13, 100.0, 9, 100.0)),
    }
    calls[ask]()
    assert read == [COWL]
