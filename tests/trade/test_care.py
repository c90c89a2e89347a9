"""Care of a mix, and the cautions that go with it."""

from gaugewright.trade.care import BAND_WINS, care_lines
from gaugewright.trade.cautions import cautions


def test_each_treatment_is_the_gentlest_of_the_mix() -> None:
    mix = care_lines(["cotton", "wool", "acrylic"]).lines
    assert mix[0] == care_lines(["wool"]).lines[0]
    assert mix[1] == "Do not bleach."
    assert mix[2] == "Dry flat; do not tumble dry."
    assert mix[3] == care_lines(["acrylic"]).lines[3]
    assert mix[-1] == BAND_WINS


def test_the_order_of_fibres_does_not_matter() -> None:
    assert care_lines(["wool", "acrylic"]) == care_lines(["acrylic", "wool"])


def test_one_fibre_keeps_its_own_treatment() -> None:
    assert care_lines(["cotton"]).lines[0] == "Machine wash at 40 °C."
    assert care_lines(["Merino"]).lines == care_lines(["wool"]).lines


def test_treated_wool_is_not_plain_wool() -> None:
    assert "30 °C" in care_lines(["superwash wool"]).lines[0]


def test_an_unknown_fibre_is_named_and_the_band_rules() -> None:
    care = care_lines(["wool", "moonbeam"])
    assert care.unknown == ("moonbeam",)
    assert care.lines == care_lines(["wool"]).lines
    assert care_lines([]).lines == ("Follow the ball band.",)


def keys(*args: object, **kwargs: bool) -> list[str]:
    return [c.key for c in cautions(*args, **kwargs)]  # type: ignore[arg-type]


def test_an_adults_garment_has_few() -> None:
    assert keys("women", ["M"], ["acrylic"]) == ["hands", "local-rules"]
    assert keys("men", ["M"], ["wool", "acrylic"]) == ["skin", "hands", "local-rules"]


def test_childrens_sizes_bring_cords_and_sleep() -> None:
    found = keys("child", ["6", "8"], ["acrylic"])
    assert found[:2] == ["cords", "sleepwear"]
    assert "small-parts" not in found


def test_small_parts_for_those_under_three() -> None:
    assert "small-parts" in keys("child", ["2", "4"], ["acrylic"])
    assert "small-parts" in keys("baby", ["24 months"], ["acrylic"])


def test_no_caution_asks_for_what_another_warns_of() -> None:
    """A toddler's cord isn't to be replaced by the buttons that the next caution keeps away from it."""
    texts = {caution.key: caution.text.lower() for caution in cautions("child", ["2"], ["wool"])}
    assert "button" in texts["small-parts"] and "button" not in texts["cords"]


def test_brushed_plant_fibre_flares_and_brushed_wool_does_not() -> None:
    assert "flame" in keys("women", ["M"], ["cotton", "acrylic"], raised=True)
    assert "flame" not in keys("women", ["M"], ["wool"], raised=True)
    assert "flame" not in keys("women", ["M"], ["cotton"])


def test_unspun_yarn_sheds() -> None:
    assert "shedding" in keys("women", ["M"], ["wool"], unspun=True)


def test_local_rules_close_every_list_and_each_has_a_source() -> None:
    for table in ("women", "men", "child", "baby"):
        found = cautions(table, ["2"], ["mohair"], raised=True, unspun=True)
        assert found[-1].key == "local-rules" and "licensed advice" in found[-1].text
        assert all(c.source for c in found)


def test_cautions_carry_no_figures() -> None:
    """Limits differ by country, and every figure on a page must have a witness."""
    for table in ("women", "child", "baby"):
        for caution in cautions(table, ["2"], ["wool", "cotton"], raised=True, unspun=True):
            assert not any(mark.isdigit() for mark in caution.text)
