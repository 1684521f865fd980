import pytest

from burnercalc.errors import InputError
from burnercalc.physics import flame_limits as fl
from burnercalc.physics.burning_velocity import species_burning_velocity_m_s
from burnercalc.tables import by_key


# NFPA 497 limits as equivalence ratio (reference 1.2, calc from 9.547, 23.866 and 31.026 volumes of air).
@pytest.mark.parametrize("species, lean, rich", [("CH4", 0.50, 1.68), ("C3H8", 0.51, 2.51), ("C4H10", 0.60, 2.88)])
def test_limits_as_equivalence_ratios(species, lean, rich):
    assert fl.flammable_equivalence_ratios(((species, 1.0),)) == pytest.approx((lean, rich), abs=6e-3)


# NFPA 497 (2008) and IEC 60079-20-1 (2010), read back against the library chemicals.
@pytest.mark.parametrize(
    "species, limits, lower, upper",
    [("CH4", "nfpa", 0.05, 0.15), ("C3H8", "iec", 0.017, 0.109), ("C4H10", "nfpa", 0.019, 0.085)],
)
def test_limits_of_pure_gases(species, limits, lower, upper):
    assert fl.flammable_fraction(((species, 1.0),), limits) == pytest.approx((lower, upper), rel=1e-9)


def test_le_chatelier_of_half_and_half():
    # 1/(0.5/5.0 + 0.5/2.1) = 2.958 % by hand
    assert fl.flammable_fraction((("CH4", 0.5), ("C3H8", 0.5)))[0] == pytest.approx(0.02958, rel=1e-3)


def inert_at_the_nose(species, inert):
    """Inert gas in the whole mixture where the limits of this fuel meet, found from the limits alone."""
    low, high = 0.0, 60.0
    for _ in range(60):
        ratio = (low + high) / 2
        lower, upper = fl.flammable_fraction(((species, 1 / (1 + ratio)), (inert, ratio / (1 + ratio))))
        low, high = (ratio, high) if lower < upper else (low, ratio)
    return upper * ratio / (1 + ratio)


# Zabetakis, Bulletin 627 (1965), and Coward and Jones, Bulletin 503 (1952), as remembered: inert gas that puts out
# every mixture, in % of it.
@pytest.mark.parametrize(
    "species, inert, expected",
    [("CH4", "N2", 37), ("CH4", "CO2", 23), ("C3H8", "N2", 43), ("C3H8", "CO2", 30), ("C4H10", "N2", 41),
     ("C4H10", "CO2", 28)],
)  # fmt: skip
def test_so_much_inert_gas_puts_out_every_mixture(species, inert, expected):
    assert 100 * inert_at_the_nose(species, inert) == pytest.approx(expected, abs=2.5)


def test_digester_gas_burns_up_to_a_fifth_of_the_mixture():
    """60 of methane to 40 of carbon dioxide by hand: nose at 7.25 % of methane and 23.5 % inert; r = 2/3."""
    lower, upper = fl.flammable_fraction((("CH4", 0.6), ("CO2", 0.4)))
    assert upper == pytest.approx(0.15 / (1 + 2 / 3 * (15 - 7.25) / 23.53) / 0.6, rel=2e-3)
    assert lower == pytest.approx(0.05 / (1 - 2 / 3 * (7.25 - 5) / 23.53) / 0.6, rel=2e-3)
    lean, rich = fl.flammable_equivalence_ratios((("CH4", 0.6), ("CO2", 0.4)))
    assert 0.5 < lean < 0.6 and 1.4 < rich < 1.6  # 1.9 if inert gas only took up room


def test_little_inert_gas_moves_the_limits_little():
    pure = fl.flammable_fraction((("C3H8", 1.0),))
    assert fl.flammable_fraction((("C3H8", 0.999999), ("N2", 1e-6))) == pytest.approx(pure, rel=1e-4)


def test_nothing_burns_of_a_gas_that_is_nearly_all_inert():
    lower, upper = fl.flammable_fraction((("CH4", 0.1), ("N2", 0.9)))
    assert lower > upper


# Diffusivity of the stoichiometric mixture at 298 K from Cantera transport; plates from NACA 1300 (memory).
@pytest.mark.parametrize("species, alpha", [("CH4", 22.31e-6), ("C3H8", 20.54e-6)])
def test_forty_thicknesses_give_the_remembered_quenching_distance(species, alpha):
    got = fl.quenching_plate_distance_m(species_burning_velocity_m_s(species, 1.0), alpha)
    expected = by_key("quenching", "species")[species]["plate_stoichiometric_mm"] / 1000
    assert got.value == pytest.approx(expected, rel=0.10)


def test_quarter_inch_port_does_not_stop_a_flame():
    # Reference 1.2 (b): quenching tube diameters are 2.9 to 5 mm.
    got = fl.quenching_port_diameter_m(species_burning_velocity_m_s("C3H8", 1.0), 20.54e-6)
    assert 0.0025 < got.low < got.value < got.high < 0.00635


def test_cross_lighting_gap_is_the_table():
    assert fl.cross_light_gap_m("C3H8") == pytest.approx((0.008, 0.010))
    assert fl.cross_light_gap_m("CH4") == pytest.approx((0.006, 0.008))


def test_refuses_and_names_what_is_known():
    with pytest.raises(InputError):
        fl.flammable_fraction((("CH4", 1.0),), "old")
    with pytest.raises(InputError):
        fl.flammable_fraction((("N2", 1.0),))
    with pytest.raises(InputError, match="C3H8"):
        fl.cross_light_gap_m("H2")


@pytest.mark.parametrize(
    "composition, expected_C",
    [
        ((("C3H8", 1.0),), 450),
        ((("C4H10", 1.0),), 288),  # NFPA's, 84 K below IEC's
        ((("CH4", 0.949), ("C2H6", 0.025), ("C3H8", 0.002), ("N2", 0.016), ("CO2", 0.008)), 600),
        ((("CH4", 0.6), ("C3H8", 0.4)), 450),
        ((("C3H8", 0.94), ("C4H10", 0.06)), 288),
        ((("C3H8", 0.96), ("C4H10", 0.04)), 450),
        ((("C2H6", 0.5), ("CO2", 0.5)), 472),
    ],
)
def test_auto_ignition_is_that_of_the_easiest_gas(composition, expected_C):
    found = fl.auto_ignition_temp_K(composition)
    assert found == pytest.approx(expected_C + 273.15)
    assert fl.wetted_limit_K(found) == pytest.approx(0.8 * expected_C + 273.15)


def test_no_auto_ignition_without_a_gas_that_burns():
    with pytest.raises(InputError, match="gas that burns"):
        fl.auto_ignition_temp_K((("N2", 1.0),))


def test_auto_ignition_is_as_the_library_has_it():
    chemicals = pytest.importorskip("chemicals")
    from burnercalc.tables import read_table

    cas = {
        "CH4": "74-82-8", "C2H6": "74-84-0", "C3H6": "115-07-1", "C3H8": "74-98-6", "C4H10": "106-97-8",
        "iC4H10": "75-28-5",
    }  # fmt: skip
    for row in read_table("auto_ignition"):
        for key, method in (("nfpa_C", "NFPA 497 (2008)"), ("iec_C", "IEC 60079-20-1 (2010)")):
            assert row[key] + 273.15 == pytest.approx(chemicals.T_autoignition(cas[row["species"]], method=method))
