"""The kinds of value a spec's fields hold, each with its reading and its refusals.

A refusal carries our problem name, a hint, and the column within the text; `messages.py` gives it
its place in the file. `Refers` marks fields that name something: `walk.py` finds them.
"""

import datetime
import re
from dataclasses import dataclass
from typing import Annotated, Any, NamedTuple, get_args

from pydantic import AfterValidator, BeforeValidator, Discriminator, PlainValidator, StringConstraints, WithJsonSchema
from pydantic_core import PydanticCustomError

from gaugewright.formulas import Call, FormulaError, dimension_of, parse_formula
from gaugewright.spec.gauge_text import GaugeError, WrittenGauge, parse_gauge
from gaugewright.spec.money import Money, MoneyError, parse_money
from gaugewright.spec.vocabulary import Fit
from gaugewright.units import Dimension, UnitError, parse_length, parse_mass, parse_quantity


class WrittenLength(NamedTuple):
    """A length in mm, and as the maker wrote it."""

    mm: float
    text: str


class WrittenMass(NamedTuple):
    """A mass in grams, and as the maker wrote it."""

    grams: float
    text: str


@dataclass(frozen=True, slots=True)
class Refers:
    """Marks a field whose text names something of this kind."""

    kind: str


def refuse(
    name: str, message: str, hint: str = "", column: int = -1, path: tuple[str | int, ...] = ()
) -> PydanticCustomError:
    """A refusal for pydantic to carry; `path` leads from the value refused to the place meant."""
    return PydanticCustomError(
        "gaugewright", "{message}", {"name": name, "message": message, "hint": hint, "column": column, "path": path}
    )


def as_written(value: Any) -> Any:
    """A number as its maker wrote it: `1.10` and `08` are names here, not numbers."""
    return getattr(value, "written", value)


def many(value: Any) -> Any:
    """A list as a tuple."""
    return tuple(value) if isinstance(value, list) else value


def one_or_many(value: Any) -> Any:
    """One or a list, as a tuple."""
    return tuple(value) if isinstance(value, list) else value if value is None else (value,)


def by_shape(value: Any) -> str:
    """Which choice of a field is meant; the marks are no keys, so paths in the file pass over them."""
    return "<table>" if isinstance(value, dict) else "<list>" if isinstance(value, list) else "<text>"


Shape = Discriminator(by_shape)
Many = BeforeValidator(many)
OneOrMany = BeforeValidator(one_or_many)
Text = Annotated[str, BeforeValidator(as_written), StringConstraints(min_length=1, max_length=4000)]


def _number_or_text(value: Any, wanted: str, example: str) -> str:
    if isinstance(value, bool) or not isinstance(value, (str, int, float)):
        found = {dict: "keys with values", list: "a list", type(None): "nothing"}.get(type(value), str(value).lower())
        raise refuse("wrong-kind", f"{wanted} is expected, not {found}", f"write {wanted} such as {example}")
    return str(as_written(value))


def _length(value: Any) -> WrittenLength:
    text = _number_or_text(value, "a length", "20 cm")
    try:
        return WrittenLength(parse_length(text), text)
    except UnitError as fault:
        raise refuse(_unit_problem(fault), fault.message, fault.hint, fault.column) from None


def _positive_length(value: Any) -> WrittenLength:
    length = _length(value)
    if length.mm <= 0:
        raise refuse(
            "not-positive",
            f"{length.text} is no length to work: more than nothing is expected",
            "write the length you measured, such as 10 cm",
        )
    return length


def _positive_mass(value: Any) -> WrittenMass:
    text = _number_or_text(value, "a mass", "100 g")
    try:
        mass = WrittenMass(parse_mass(text), text)
    except UnitError as fault:
        raise refuse(_unit_problem(fault), fault.message, fault.hint, fault.column) from None
    if mass.grams <= 0:
        raise refuse(
            "not-positive", f"{text} weighs nothing: more is expected", "write the mass you weighed, such as 41 g"
        )
    return mass


def _unit_problem(fault: UnitError) -> str:
    return "number-without-unit" if "has no unit" in fault.message else "wrong-unit"


def _tool(value: Any) -> WrittenLength | str:
    return "hands" if value == "hands" else _positive_length(value)


def _fit_or_length(value: Any) -> WrittenLength | str:
    if isinstance(value, str) and value.strip()[:1].isalpha():
        if value.strip() in get_args(Fit):
            return value.strip()
        raise refuse(
            "unknown-word",
            f"{value!r} is not a fit",
            f"write a length such as 20 cm, or one of: {', '.join(get_args(Fit))}",
        )
    return _length(value)


def percentage(value: Any, example: str) -> tuple[float, str]:
    """A percentage as written, 20 or "20 %", in percent, and its text; whoever asks sets its limits."""
    text = _number_or_text(value, "a percentage", example)
    try:
        amount, dimension = parse_quantity(text)
    except UnitError as fault:
        raise refuse("wrong-unit", fault.message, fault.hint, fault.column) from None
    if dimension != "number":
        raise refuse("wrong-unit", f"{text} is no percentage", f"write a percentage such as {example}")
    return amount * (100 if "%" in text else 1), text


def _percent(value: Any) -> float:
    percent, text = percentage(value, "20 %")
    if not 0 < percent <= 1000:
        raise refuse("not-positive", f"{text} is not a percentage above 0", "write a percentage such as 20 %")
    return percent


def _price(value: Any) -> Money:
    text = _number_or_text(value, "a price", "7.40 EUR")
    try:
        return parse_money(text)
    except MoneyError as fault:
        raise refuse("price-text", fault.message, fault.hint, fault.column) from None


def _gauge(value: Any) -> WrittenGauge:
    text = _number_or_text(value, "a gauge", "8 sts, 7 rows / 10 cm")
    try:
        return parse_gauge(text)
    except GaugeError as fault:
        raise refuse(fault.name, fault.message, fault.hint, fault.column) from None


def whole_count(value: Any) -> int:
    if not isinstance(value, int) and re.fullmatch(r"[0-9]{16,}", str(as_written(value))):
        raise refuse("out-of-range", "this number is larger than anybody counts", "write a whole number such as 2, with no unit")
    if isinstance(value, bool) or not isinstance(value, int):
        raise refuse(
            "wrong-kind",
            f"a whole number is expected, not {str(value).lower() if isinstance(value, bool) else as_written(value)}",
            "write a whole number such as 2, with no unit",
        )
    if value < 1:
        raise refuse(
            "not-positive", f"{int(value)} is too few: at least 1 is expected", "write how many there are, at least 1"
        )
    return int(value)


def call_dimension(call: Call) -> Dimension | None:
    """All calls give lengths; `in_rows` also wants one."""
    if call.function == "in_rows" and call.arguments:
        found = dimension_of(call.arguments[0], lambda _: "length", call_dimension)
        if found != "length":
            raise FormulaError(
                f"in_rows() wants a length first, not a {found}",
                call.arguments[0].column,
                "write in_rows(4 cm, and the fabric)",
            )
    return "length"


def _change(value: Any) -> int:
    if isinstance(value, bool) or not isinstance(value, int):
        raise refuse("wrong-kind", f"a whole number is expected, not {str(value).lower() if isinstance(value, bool) else as_written(value)}", "write stitches gained such as 2, or lost such as -2")
    if value == 0:
        raise refuse("not-positive", "a taper that changes 0 stitches is even", "write stitches gained such as 2, or lost such as -2, or use `even`")
    return int(value)


def _formula(value: Any, wanted: tuple[Dimension, ...], example: str) -> str:
    what = "a length" if wanted == ("length",) else "a length or a percentage"
    text = _number_or_text(value, what, example)
    if isinstance(value, (int, float)):
        unit = example.split()[-1]
        raise refuse("number-without-unit", f"{text} has no unit: {what} is expected", f"write {text} {unit}")
    try:
        found = dimension_of(parse_formula(text), lambda _: "length", call_dimension)
    except FormulaError as fault:
        raise refuse("formula", fault.message, fault.hint, fault.column) from None
    if found not in wanted:
        name = "number-without-unit" if found == "number" else "formula"
        raise refuse(name, f"this comes to a {found}, but {what} is expected", f"give it a unit, as in {example}", 0)
    return text


def length_formula(value: Any) -> str:
    return _formula(value, ("length",), "20 cm")


def _length_or_rest(value: Any) -> str:
    return "rest" if value == "rest" else length_formula(value)


def _share(value: Any) -> str:
    return "rest" if value == "rest" else _formula(value, ("length", "number"), "35 %")


def _name_key(value: str) -> str:
    if re.fullmatch(r"[A-Za-z][A-Za-z0-9_]*", value):
        return value
    plain = re.sub(r"[^A-Za-z0-9]+", "_", value).strip("_")
    better = plain if re.match(r"[A-Za-z]", plain) else f"n_{plain}".rstrip("_")
    raise refuse(
        "bad-name", f"{value!r} can't be a name: letters, digits and _ are expected, a letter first", f"write {better}"
    )


def _colour(value: str) -> str:
    if re.fullmatch(r"#[0-9A-Fa-f]{6}", value):
        return value.lower()
    raise refuse(
        "colour-text", f"{value!r} is not a colour: six hex digits are expected", 'write it as "#d9c9a8", in quotes'
    )


def _date(value: str) -> str:
    try:
        if re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", value):
            return datetime.date.fromisoformat(value).isoformat()
    except ValueError:
        pass
    raise refuse("date-text", f"{value!r} is not a date", "write year-month-day, such as 2026-11-25")


def _schema(kind: str, *examples: str, **more: Any) -> WithJsonSchema:
    return WithJsonSchema({"type": kind, **({"examples": list(examples)} if examples else {}), **more})


_LENGTH_PATTERN = r"^\s*[-+−]?\s*[0-9½¼¾⅓⅔⅛⅜⅝⅞.][0-9½¼¾⅓⅔⅛⅜⅝⅞./ ]*\s*[A-Za-z]+\s*$"
Length = Annotated[
    WrittenLength, PlainValidator(_positive_length), _schema("string", "20.5 cm", "16 1/2 in", pattern=_LENGTH_PATTERN)
]
SignedLength = Annotated[
    WrittenLength, PlainValidator(_length), _schema("string", "20 cm", "-5 cm", pattern=_LENGTH_PATTERN)
]
Mass = Annotated[
    WrittenMass, PlainValidator(_positive_mass), _schema("string", "100 g", "3.5 oz", pattern=_LENGTH_PATTERN)
]
Tool = Annotated[WrittenLength | str, PlainValidator(_tool), _schema("string", "10 mm", "hands")]
FitOrLength = Annotated[WrittenLength | str, PlainValidator(_fit_or_length), _schema("string", "20 cm", "loose")]
Percent = Annotated[
    float, PlainValidator(_percent), WithJsonSchema({"type": ["number", "string"], "examples": [70, "20 %"]})
]
Price = Annotated[
    Money, PlainValidator(_price), _schema("string", "7.40 EUR", pattern=r"^\s*[0-9]+(\.[0-9]+)? *[A-Z]{3}\s*$")
]
GaugeText = Annotated[WrittenGauge, PlainValidator(_gauge), _schema("string", "8 sts, 6.5 rows / 10 cm")]
Count = Annotated[int, PlainValidator(whole_count), WithJsonSchema({"type": "integer", "minimum": 1})]
Change = Annotated[int, PlainValidator(_change), WithJsonSchema({"type": "integer", "not": {"const": 0}})]
FORMULA = Refers("formula")
FormulaText = Annotated[str, PlainValidator(length_formula), FORMULA, _schema("string", "body.bust / 2 + 10 cm")]
LengthOrRest = Annotated[str, PlainValidator(_length_or_rest), FORMULA, _schema("string", "16 cm", "rest")]
Share = Annotated[str, PlainValidator(_share), FORMULA, _schema("string", "35 %", "rest")]
NameKey = Annotated[str, AfterValidator(_name_key)]
Colour = Annotated[Text, AfterValidator(_colour), _schema("string", "#d9c9a8", pattern="^#[0-9A-Fa-f]{6}$")]
Date = Annotated[Text, AfterValidator(_date), _schema("string", "2026-11-25", format="date")]

YarnName = Annotated[Text, Refers("yarn")]
FabricName = Annotated[Text, Refers("fabric")]
PieceName = Annotated[Text, Refers("piece")]
BandsName = Annotated[Text, Refers("bands")]
StripesName = Annotated[Text, Refers("stripes")]
EdgeName = Annotated[Text, Refers("edge")]
StitchPatternName = Annotated[Text, Refers("stitch pattern")]
MeasureName = Annotated[Text, Refers("measure")]
