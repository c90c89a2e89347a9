"""Reading bodies from the charts, the survey and the lists."""

import pytest

from gaugewright.errors import UserError
from gaugewright.measurements import MEASURES, TABLES, body, credit, how_to_measure, size_labels


def test_each_table_has_its_sizes_in_order() -> None:
    assert size_labels("men") == ("S", "M", "L", "XL", "XXL")
    assert size_labels("child") == ("2", "4", "6", "8", "10", "12", "14", "16")
    assert size_labels("baby")[0] == "3 months"


def test_a_range_is_read_where_asked() -> None:
    read = {where: body("women", "XS", where).values["bust"].mm for where in ("lower", "middle", "upper")}
    assert read == {"lower": 711.2, "middle": 736.6, "upper": 762.0}
    bust = body("women", "XS", "lower").values["bust"]
    assert (bust.low_mm, bust.high_mm) == (711.2, 762.0)


def test_upper_end_unless_asked() -> None:
    assert body("women", "M") == body("women", "M", "upper")


def test_memory_is_not_confirmed() -> None:
    values = body("women", "M").values
    assert values["bust"].confirmed
    assert not values["hip"].confirmed
    assert "memory" in values["hip"].note


@pytest.mark.parametrize("table", ["men", "child", "baby"])
def test_chest_is_bust_outside_the_womens_chart(table: str) -> None:
    values = body(table, size_labels(table)[0]).values
    assert values["bust"] == values["chest"]


def test_women_have_no_chest_since_that_is_another_place_on_the_body() -> None:
    assert "chest" not in body("women", "M").values


def test_the_survey_fills_what_the_chart_lacks_and_nothing_else() -> None:
    values = body("women", "M").values
    assert {"wrist", "neck", "hand", "head"} <= set(values)
    assert "survey" in values["wrist"].source
    assert "survey" not in values["upper_arm"].source
    assert values["wrist"].spread_mm == pytest.approx(6.66)


def test_the_survey_is_held_at_its_edge_and_says_so() -> None:
    inside, edge = body("women", "1X").values["wrist"], body("women", "3X").values["wrist"]
    assert "held" not in inside.note
    assert "held at a chest of 126.6 cm, the largest surveyed" in edge.note
    assert edge.mm == body("women", "5X").values["wrist"].mm


def test_a_survey_range_follows_the_chart_range() -> None:
    wrist = body("men", "M", "middle").values["wrist"]
    assert wrist.low_mm < wrist.mm < wrist.high_mm


def test_children_have_heads_and_hands_but_no_wrist() -> None:
    values = body("child", "6").values
    assert values["head"].confirmed and "Crochet Kitten" in values["head"].source
    assert (values["hand"].low_mm, values["hand"].high_mm) == pytest.approx((139.7, 152.4))
    assert body("child", "6", "lower").values["hand"].mm == pytest.approx(139.7)
    assert "wrist" not in values


@pytest.mark.parametrize("table", TABLES)
def test_every_measure_of_every_size_is_a_known_one(table: str) -> None:
    for label in size_labels(table):
        values = body(table, label).values
        assert set(values) <= MEASURES
        assert all(v.source and v.low_mm <= v.mm <= v.high_mm for v in values.values())


def test_every_measure_is_explained() -> None:
    assert all(how_to_measure(measure) for measure in MEASURES)
    assert how_to_measure("antler") == ""


def test_the_publisher_is_credited() -> None:
    assert all("YarnStandards.com" in credit(table) for table in TABLES)


def test_an_unknown_size_names_the_sizes_there_are() -> None:
    with pytest.raises(UserError) as caught:
        body("women", "6X")
    assert caught.value.name == "unknown-size"
    assert "5X" in caught.value.hint


def test_an_unknown_table_names_the_tables_there_are() -> None:
    with pytest.raises(UserError) as caught:
        size_labels("dogs")
    assert caught.value.name == "unknown-size-table"
    assert "women" in caught.value.hint
