import pytest
from fluids.atmosphere import ATMOSPHERE_1976

from burnercalc.errors import InputError
from burnercalc.physics.atmosphere import air_density_kg_m3, pressure_at_altitude_Pa, standard_temp_K


@pytest.mark.parametrize("altitude_m", [-500, 0, 100, 304.8, 1524, 2438.4, 3000, 5000, 10999])
def test_agrees_with_the_1976_standard_atmosphere_of_fluids(altitude_m):
    expected = ATMOSPHERE_1976(altitude_m)
    pressure = pressure_at_altitude_Pa(altitude_m)
    temperature = standard_temp_K(altitude_m)
    assert temperature == pytest.approx(expected.T, rel=1e-6)
    assert pressure == pytest.approx(expected.P, rel=1e-6)
    # Our R is the SI value, that of the standard is 8.31432: 2e-5 apart.
    assert air_density_kg_m3(temperature, pressure) == pytest.approx(expected.rho, rel=5e-5)


@pytest.mark.parametrize(
    "feet,ratio",
    [
        (0, 1.0),
        (1000, 0.9711),
        (2000, 0.9428),
        (3000, 0.9151),
        (4000, 0.8881),
        (5000, 0.8617),
        (6000, 0.8359),
        (7000, 0.8107),
        (8000, 0.7861),
    ],
)
def test_density_ratio_table_of_the_standard(feet, ratio):
    z = feet * 0.3048
    got = air_density_kg_m3(standard_temp_K(z), pressure_at_altitude_Pa(z)) / air_density_kg_m3(288.15, 101325)
    assert got == pytest.approx(ratio, abs=0.00005 + 1e-9)  # printed to four digits


def test_pressure_at_5000_feet():
    assert pressure_at_altitude_Pa(1524) / 101325 == pytest.approx(0.8321, abs=0.00005)


@pytest.mark.parametrize("altitude", [-501, 11001, float("nan")])
def test_refuses_heights_outside_the_first_layer(altitude):
    with pytest.raises(InputError) as caught:
        pressure_at_altitude_Pa(altitude)
    assert caught.value.field == "altitude"
