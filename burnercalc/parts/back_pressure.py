"""What pushes the flue gas of all burners out of the opening: pressure in the chamber over that of the shop."""

from dataclasses import dataclass

from ..constants import INH2O_PA
from ..physics import back_pressure as physics
from ..physics.band import Band
from ..physics.chamber_walls import upright_wall_m2
from ..physics.thermo import gas_density_kg_m3, mixture_mass_kg
from .firing import Firing
from .flame import Flame
from .mixture import Mixture
from .reached import Reached
from .shop import Shop
from .zone import Zone

BLOWS_PA = 25.0  # 0.1 in of water: from here a chamber blows out of every joint; common practice
NO_LESS_SPARED = 0.01  # of it: where what is set leaves no more, no opening makes up for it
# From here flame leaves a joint at 36 m/s, at a tenth of the air's density: no joint is tight to that. Common practice.
TORCHES_PA = 0.5 * INH2O_PA
MOST_PA = 20 * INH2O_PA  # an opening that takes more is as good as closed: no blower of a shop pushes so hard
TOLD = 1.005  # what is told in three figures may be less by half a step of the last
LEAST_M2 = 1e-6  # a square millimetre is closed


@dataclass(frozen=True)
class BackPressure:
    """At high fire. `opening_Pa` is None for a chamber as good as closed; 0 without a flame.

    The band is of how hot the gas leaves and of the opening's discharge. `enough_m2`: opening that keeps all of it
    below BLOWS_PA with what is set besides, as it is told in three figures and with the fire that follows the chamber;
    None where that alone is (nearly) more.
    """

    opening_Pa: Band | None
    enough_m2: float | None

    def no_way_out(self, as_set_Pa):
        """Whether it is as good as closed, or flame stands out of every joint, with what is set besides."""
        return self.opening_Pa is None or self.opening_Pa.high + as_set_Pa > TORCHES_PA


def back_pressure(
    firing: Firing,
    flame: Flame,
    mixture: Mixture,
    reached: Reached,
    shop: Shop,
    zone: Zone,
    firing_rate: float | str,
    burner_count: int,
    opening_area: float,
    opening_depth: float,
    chamber_back_pressure: float,
    chamber_temperature: float,
    chamber_shape: str,
    chamber_length: float,
    chamber_width: float,
    chamber_height: float,
    chamber_diameter: float,
) -> BackPressure:
    if flame.flue is None:
        return BackPressure(Band(0.0, 0.0, 0.0) if opening_area >= LEAST_M2 else None, None)
    # A flame no hotter than the walls leaves at their temperature: it cannot heat them.
    gas_K = reached.gas_K or Band(*(chamber_temperature,) * 3)
    amounts = flame.flue.amounts_mol
    molar_kg = mixture_mass_kg(amounts) / sum(amount for _, amount in amounts)
    flow_kg_s = firing.gas_kg_s * burner_count * (1 + mixture.air_to_gas_mass)

    def way(temp_K, off):
        density = gas_density_kg_m3(molar_kg, temp_K, shop.pressure_Pa)
        return {"flow_kg_s": flow_kg_s, "depth_m": opening_depth, "density_kg_m3": density, "discharge_off": off}

    off = physics.DISCHARGE_OFF
    ends = tuple(zip(gas_K, (off, 0.0, -off)))
    opening_Pa = (
        Band(*(physics.orifice_Pa(area_m2=opening_area, **way(*end)) for end in ends))
        if opening_area >= LEAST_M2
        else None
    )
    spared_Pa = BLOWS_PA - chamber_back_pressure
    enough_m2 = None
    if spared_Pa > NO_LESS_SPARED * BLOWS_PA:
        enough_m2 = TOLD * physics.opening_for_pressure_m2(pressure_Pa=spared_Pa, **way(*ends[-1]))
        if firing_rate == "auto" and LEAST_M2 <= opening_area < enough_m2:
            enough_m2 = _followed_m2(enough_m2, opening_area, zone)
    wall_m2 = upright_wall_m2(
        box=chamber_shape == "box",
        length_m=chamber_length,
        width_m=chamber_width,
        height_m=chamber_height,
        diameter_m=chamber_diameter,
    )
    if enough_m2 is not None and enough_m2 > wall_m2:
        enough_m2 = None
    return BackPressure(opening_Pa if opening_Pa and opening_Pa.value <= MOST_PA else None, enough_m2)


def _followed_m2(enough_m2: float, opening_area: float, zone: Zone) -> float | None:
    """Opening that is enough for a fire that grows with what leaves by it; None where it grows as fast.

    The pressure rests on rate over opening A, the rate on the losses of wall w and opening o A / A0, with o as it is
    at A0: A = a (w + o A / A0) / (w + o), with a what is enough for the fire as it is.
    """
    held = zone.hold[1]
    if held is None:
        return enough_m2
    both_W = held.wall_loss_W + held.opening_loss_W
    left_W = both_W - held.opening_loss_W * enough_m2 / opening_area
    return enough_m2 * held.wall_loss_W / left_W if left_W > 0 else None
