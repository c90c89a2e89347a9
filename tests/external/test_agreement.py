"""What stands out over several test makers: the statistic against a library."""

import random

import pytest
from scipy import stats

from external.sources import source
from gaugewright.advice.agreement import agreements, chance_beyond, holm


@source("library", "scipy.stats.t: the chance of Student's t beyond a value, both ways")
def test_the_chance_of_a_mean() -> None:
    for freedom in range(1, 41):
        for t in (0.0, 0.1, 1.0, 2.3, 5.0, 14.0, 60.0, -2.3):
            assert chance_beyond(t, freedom) == pytest.approx(2 * stats.t.sf(abs(t), freedom), abs=1e-12)


@source("library", "scipy.stats.ttest_1samp: the t test of one mean, with its range")
def test_the_agreement_of_makers() -> None:
    draw = random.Random(7)
    for number in (3, 4, 6, 12):
        shares = [draw.gauss(0.03, 0.02) for _ in range(number)]
        found = agreements({"bust": shares}, {"bust": 0.0})["bust"]
        theirs = stats.ttest_1samp(shares, 0.0)
        span = theirs.confidence_interval(0.95)
        assert (found.mean, found.chance) == (pytest.approx(sum(shares) / number), pytest.approx(theirs.pvalue))
        assert (found.low, found.high) == (pytest.approx(span.low, abs=2e-5), pytest.approx(span.high, abs=2e-5))  # t is tabled to three places


@source("memory", "S. Holm, 'A simple sequentially rejective multiple test procedure', Scandinavian Journal of Statistics 6, 1979: of three chances the least is taken three times, the next twice")
def test_many_things_looked_at() -> None:
    assert holm({"a": 0.01, "b": 0.04, "c": 0.03}) == {"a": pytest.approx(0.03), "c": pytest.approx(0.06), "b": pytest.approx(0.06)}
    assert holm({"a": 0.6, "b": 0.7}) == {"a": 1.0, "b": 1.0}
