"""Units against NIST SP 811 and pint's own full registry; tape readings against a tape."""

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st
from rows import rows

from burnercalc import units
from burnercalc.catalogue.sentences import written
from burnercalc.errors import InputError


@pytest.mark.parametrize("row", rows("unit_factors.csv"), ids=lambda row: row["unit"])
def test_factor_of_nist_sp_811(row):
    assert units.to_si(1, row["unit"], row["si_unit"]) == pytest.approx(row["factor"], rel=row["relative"])


FULL = pint.UnitRegistry()
IN_PINT = {"cfm": "foot**3/minute", "cfh": "foot**3/hour", "psi": "psi"}


@pytest.mark.parametrize(
    "dimension", [name for name, (si, _, _) in units.DIMENSIONS.items() if si not in ("1", "", "deg")]
)
def test_factor_of_pints_full_registry(dimension):
    si, *shown = units.DIMENSIONS[dimension]
    for unit in shown:
        expected = FULL.Quantity(1, IN_PINT.get(unit, units._pint_name(unit))).to(units._pint_name(si)).magnitude
        # pint rounds the Btu to 1055.056 J, 1.4e-7 more than NIST SP 811.
        assert units.to_si(1, unit, si) == pytest.approx(expected, rel=2e-7)


@pytest.mark.parametrize(
    "text, inches",
    [
        ("8in", 8),
        ("6 1/2 in", 6.5),
        ("6-1/2in", 6.5),
        ('5/16"', 0.3125),
        ("2 ft 3 in", 27),
        ("2' 6 1/2\"", 30.5),
        ("6½ in", 6.5),
        ("25.4 mm", 1),
        ("0.5in", 0.5),
        (".5 in", 0.5),
        ("1e1 in", 10),
        ("-1/2 in", -0.5),
        ("2.54 cm", 1),
        ("9\u00a0in", 9),
        ("6\u202f1/2\u2009in", 6.5),
        ("6 ½″", 6.5),
        ("6-½ in", 6.5),
        ("6 1⁄2 in", 6.5),
        ("2′ 6½″", 30.5),
        ("2’ 6½”", 30.5),
        ("2' 6''", 30),
        ("2 ft 6", 30),
        ("2ft6-1/2in", 30.5),
        ("−½ in", -0.5),
        ("2 feet", 24),
        ("9 inches", 9),
        ("9 in.", 9),
        ("2.54 centimeters", 1),
    ],
)
def test_reads_a_length_as_it_is_written(text, inches):
    assert units.parse_quantity(text, "length", "body_length") == pytest.approx(inches * 0.0254, rel=1e-14)


@pytest.mark.parametrize(
    "text", ["", "abc", "8", "8 kW", "8 furlongs", "1/0 in", "nan in", "1e999 in", "in", "--3 in", "3 in in", "3 ]"]
)
def test_refuses_what_is_not_a_length(text):
    with pytest.raises(InputError) as caught:
        units.parse_quantity(text, "length", "body_length")
    assert caught.value.field == "body_length"


@pytest.mark.parametrize(
    "text, dimension, value",
    [
        ("70 °F", "temperature", 294.2611111),
        ("−4 ℉", "temperature", 253.15),
        ("20 deg C", "temperature", 293.15),
        ("60°", "angle", 60),
        ("12 in²", "area", 12 * 0.0254**2),
        ("12 in^2", "area", 12 * 0.0254**2),
        ("12 in**2", "area", 12 * 0.0254**2),
        ("12 sq in", "area", 12 * 0.0254**2),
        ("7 in H₂O", "pressure", 7 * 249.08891),
        ("7 in w.c.", "pressure", 7 * 249.08891),
        ('7" WC', "pressure", 7 * 249.08891),
        ("10 lbs / hour", "mass_flow", 10 * 0.45359237 / 3600),
        ("1 kBTU·h/h2", "power", 1055055.85262 / 3600),
        ("100 m3/h", "air_flow", 100 / 3600),
        ("100 ft3/min", "air_flow", 100 * 0.3048**3 / 60),
        ("2 kilowatts", "power", 2000),
    ],
)
def test_reads_units_as_the_trade_writes_them(text, dimension, value):
    assert units.parse_quantity(text, dimension, "x") == pytest.approx(value, rel=1e-8)


def test_a_length_is_called_a_length_whatever_it_is_of():
    """A rack's "8 lb" was told to need a unit of long length."""
    for dimension in (name for name in units.DIMENSIONS if "length" in name):
        with pytest.raises(InputError, match="needs a unit of length, such as"):
            units.parse_quantity("8 lb", dimension, "x")


# What used to be read as another number, or to run for ever, and what is offered instead.
NOT_A_LENGTH = {
    "1'000 m": "1000 m",
    "1,000 m": "1000 m or 1.000 m",
    "1 000 m": "1000 m",
    "1,05 in": "1.05 in",
    "1,05": "1.05 in or 1.05 mm",
    "1'000": "1000 in or 1000 mm",
    "4 ft 8 ft": "4 ft",
    "4 ft -8 in": "4 ft 8 in",
    "4'-8\"": '4 ft 8"',
    "4 ft 12 in": "4 ft",
    "9 +- 1 in": "9 in or 9 mm",
    "9 1 in": "9 in or 9 mm",
    "9 in!": "9 in",
    "9\x00in": "9in",
    "9 in\u202e": "9 in",
    "9 in😀": "9 in",
    "9 -1/2 in": "9 in or 9 mm",
    "1 1/2 0 in": "1 1/2 in or 1 1/2 mm",
    "6½2 in": "6 1/2 in or 6 1/2 mm",
    "½½ in": "1/2 in or 1/2 mm",
    "6 3/2 in": "",
    "9 IN": "9 in",
    "9in*9**9**9": "9 in or 9 mm",
    "9 in/0": "9 in or 9 mm",
    "9 in*in/in*in/in": "9 in or 9 mm",
    "٩ in": "",
    "(" * 150: "",
    "9" * 5000: "",
    "9 " + "i" * 40000: "",
}


@pytest.mark.parametrize("text", NOT_A_LENGTH, ids=lambda text: ascii(text[:20]))
def test_refuses_what_could_mean_something_else(text):
    with pytest.raises(InputError) as caught:
        units.parse_quantity(text, "length", "body_length")
    assert caught.value.nearest == NOT_A_LENGTH[text]
    assert len(str(caught.value)) < 600 and str(caught.value).isprintable()


@pytest.mark.parametrize("text, dimension", [("9 1", "ratio"), ("5 1", "count"), ("95 %", "money"), ("5 %", "count")])
def test_a_plain_number_stands_alone(text, dimension):
    with pytest.raises(InputError, match="plain number"):
        units.parse_quantity(text, dimension, "x")


def test_no_text_reaches_the_evaluator(monkeypatch):
    seen = []
    registry = units._registry()

    class Watched:
        def Quantity(self, value, unit):
            seen.append(unit)
            return registry.Quantity(value, unit)

    monkeypatch.setattr(units, "_registry", Watched)
    for unit in (
        "in*9**9**9",
        "in/0",
        "__import__('os')",
        "in in",
        "in*in*in*in*in",
        "kBtu//h",
        "m**9",
        "in+in",
        "1/s2",
    ):
        with pytest.raises(InputError):
            units.parse_quantity(f"9 {unit}", "area", "x")
    assert set(seen) <= {"in", "kBtu", "in**2"}  # of what is offered instead


def test_every_unit_shown_is_known():
    for si, *shown in units.DIMENSIONS.values():
        for unit in shown:
            if si not in ("1", "") and unit != "1/s":
                assert units.known_unit(unit) in (unit, "deg")
                assert units.to_si(1, units.known_unit(unit), si) == units.to_si(1, unit, si)


def test_a_bare_fraction_is_refused_where_no_sign_stands_beside_it():
    with pytest.raises(InputError) as caught:
        units.parse_quantity("0.2", "fraction", "x")
    assert caught.value.nearest == "20 % or 0.2 %"
    assert units.parse_quantity("0.2", "fraction", "x", "in") == units.parse_quantity("0.2 %", "fraction", "x") == 0.002


def test_offers_units_for_a_bare_number():
    with pytest.raises(InputError, match="8 in or 8 mm"):
        units.parse_quantity("8", "length", "body_length")
    assert units.parse_quantity("8", "length", "body_length", bare_units="mm") == 0.008


@pytest.mark.parametrize(
    "inches, text", [(2.375, "2 3/8"), (0.3125, "5/16"), (3, "3"), (0, "0"), (-0.5, "-1/2"), (0.999, "1")]
)
def test_tape(inches, text):
    assert units.tape(inches) == text


@pytest.mark.parametrize(
    "value, dimension, system, text",
    [
        (1800, "time", "in", "30 min"),
        (3600, "time", "mm", "1 h"),
        (172800, "time", "in", "48 h"),
        (60.0, "angle", "in", "60°"),
        (864000.0, "time", "in", "10 days"),
        (441.134, "price", "in", "441.13"),
        (441.134, "money", "in", "441"),
        (4.634, "money", "in", "4.63"),
        (1777.6, "temperature", "in", "2740 °F"),
        (0.00653, "mass", "mm", "6.53 g"),
        (0.0283495, "mass", "in", "1.00 oz"),  # an ounce is a sixteenth of 0.45359237 kg
        (0.1, "mass", "mm", "0.1 kg"),
        (422.04, "rough_temperature", "in", "300 °F"),
        (422.04, "rough_temperature", "mm", "150 °C"),
        (477.59, "rough_temperature", "mm", "200 °C"),
        (338.7, "rough_temperature", "mm", "65 °C"),
        (1700.0, "rough_temperature", "mm", "1430 °C"),
        (0.0, "money", "in", "0.00"),
        (5.74e-4, "gas_share", "in", "574 ppm"),
        (2.51e-3, "gas_share", "in", "2510 ppm"),
        (8.52e-3, "gas_share", "in", "0.852 %"),
        (0.0566, "gas_share", "in", "5.66 %"),
        (0.0, "gas_share", "in", "0 %"),
        (0.0002, "length", "in", "1/64 in"),
        (0.0065, "length", "in", "1/4 in"),
        (0.05, "fraction", "mm", "5 %"),
        (0.327e-2, "fraction", "in", "0.33 %"),
        (0.099, "fraction", "in", "9.9 %"),
        (1.314, "fraction", "in", "131 %"),
        (0.998, "mixture", "in", "1.00"),
        (0.968, "mixture", "in", "0.97"),
        (7.03, "ratio", "in", "7.0"),
        (132.5, "pressure", "in", "0.53 in H₂O"),
        (3110.0, "pressure", "in", "12.5 in H₂O"),
        (775.0, "line_pressure", "mm", "7.75 mbar"),
        (44000.0, "power", "mm", "44 kW"),
        (44004.0, "power", "mm", "44.0 kW"),
        (5e-3, "bore", "in", "0.197 in"),  # 3/16 in is 0.188: a ninth less area
        (6.35e-3, "bore", "in", "1/4 in"),
        (6.35e-3, "bore", "mm", "6.35 mm"),
        (1.95e-3, "drill_length", "in", "0.0768 in"),
        (1.95e-3, "drill_length", "mm", "1.95 mm"),
        (0.0, "time", "in", "0 min"),
    ],
)
def test_numbers_are_shown_with_the_digits_they_have(value, dimension, system, text):
    assert units.show(value, dimension, system) == text


@given(st.integers(1, 64 * 60))
def test_tape_reads_back(sixty_fourths):
    length = sixty_fourths / 64 * 0.0254
    assert units.parse_quantity(units.show(length, "length", "in", exact=True), "length", "x") == pytest.approx(
        length, rel=1e-12
    )


@given(
    st.floats(1e-4, 10),
    st.sampled_from(sorted(set(units.DIMENSIONS) - {"word", "count"})),
    st.sampled_from(["in", "mm"]),
)
def test_exact_text_reads_back(value, dimension, system):
    if dimension == "temperature":
        value *= 100
    text = units.show(value, dimension, system, exact=True)
    assert units.parse_quantity(text, dimension, "x") == pytest.approx(value, rel=1e-8, abs=1e-10)


@pytest.mark.parametrize(
    "value, digits, text", [(12345.6, 3, "12300"), (0.012345, 3, "0.0123"), (9.999, 3, "10.0"), (0, 3, "0")]
)
def test_significant(value, digits, text):
    assert units.significant(value, digits) == text


@pytest.mark.parametrize(
    "value, text", [(1.19, "1.2"), (9.96, "10"), (10.0, "10"), (10.1, "more than 10"), (10163.0, "more than 10")]
)
def test_how_many_times_is_told_up_to_what_matters(value, text):
    """A blower of 10163 times its need and one of eleven times are both strong enough; files keep the figure."""
    assert units.show(value, "times", "in") == units.show(value, "times", "mm") == text
    assert float(units.show(value, "times", "in", exact=True)) == value
    filled = written("{share:percent 0} of it", {"share": value}, "in")
    assert filled == (f"{100 * value:.0f} % of it" if value <= 10 else "more than 1000 % of it")
