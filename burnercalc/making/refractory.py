"""The refractory block: volume, dry mass, water, bags, and mixes two hands can place."""

import math
from dataclasses import dataclass

from ..constants import INCH_M, POUND_KG
from ..errors import InputError, require
from ..tables import read_table
from .stock import NOISE_M, mm

GRAINS_M = (1e-3, 3e-3, 5e-3)  # top grain of mixes as sold: common practice
LB_FT3_KG_M3 = POUND_KG / (12 * INCH_M) ** 3


@dataclass(frozen=True)
class Castable:
    """A refractory class: density as placed, water by mass of dry mix, service limit, time it stays workable."""

    name: str
    label: str
    density_kg_m3: float
    density_low_kg_m3: float
    density_high_kg_m3: float
    water_low: float
    water_high: float
    service_temp_K: float
    working_time_s: float
    mixes_with_water: bool
    source: str

    @property
    def water(self):
        """Water to start with, by mass of dry mix: the middle of the band."""
        return (self.water_low + self.water_high) / 2


def castable_names():
    """Names of the classes in castables.csv, in file order."""
    return tuple(row["name"] for row in read_table("castables"))


def castable(name):
    """The Castable of a generic class, middle of the density band, lower service limit; InputError lists the names.

    Source: castables.csv (memory and common practice, tagged there)
    Checked by: tests/test_making_refractory.py
    """
    for row in read_table("castables"):
        if row["name"] == name:
            low, high = row["density_low_lb_ft3"] * LB_FT3_KG_M3, row["density_high_lb_ft3"] * LB_FT3_KG_M3
            return Castable(
                name,
                row["label"],
                (low + high) / 2,
                low,
                high,
                row["water_low_pct"] / 100,
                row["water_high_pct"] / 100,
                (row["service_low_F"] + 459.67) / 1.8,
                row["working_time_min"] * 60,
                row["mixes_with_water"] == "yes",
                row["source"],
            )
    raise InputError(
        "castable", name, "is not in the table; known: " + ", ".join(castable_names()) + ", own", "dense_castable"
    )


def own_castable(*, density_kg_m3, water_low, water_high, service_temp_K, working_time_s):
    """The user's own refractory, from the data sheet on the bag.

    Arguments:
        density_kg_m3           dry, as placed [kg/m3] 300 .. 4000
        water_low, water_high   water by mass of dry mix [-] 0 .. 1, low <= high
        service_temp_K          service limit [K]
        working_time_s          time it stays workable [s] > 0
    Raises: InputError for castable_density, castable_water, castable_service, working_time
    """
    require(
        300 <= density_kg_m3 <= 4000,
        "castable_density",
        f"{density_kg_m3:g} kg/m3",
        "must be 300 to 4000 kg/m3",
        "2320 kg/m3",
    )
    require(
        0 <= water_low <= water_high + NOISE_M <= 1 + NOISE_M,
        "castable_water",
        f"{water_low:g} to {water_high:g}",
        "must be a band within 0 to 1 of the dry mass",
        "0.09 to 0.11",
    )
    require(
        800 <= service_temp_K <= 2500, "castable_service", f"{service_temp_K:g} K", "must be 800 to 2500 K", "1922 K"
    )
    require(
        0 < working_time_s <= 86400,
        "working_time",
        f"{working_time_s:g} s",
        "must be above 0 and within a day",
        "30 min",
    )
    return Castable(
        "own",
        "own refractory, from its data sheet",
        density_kg_m3,
        density_kg_m3,
        density_kg_m3,
        water_low,
        water_high,
        service_temp_K,
        working_time_s,
        water_high > 0,
        "user's own data sheet",
    )


CLOSEST_PACKING = math.pi / math.sqrt(12)  # share of a plane that equal circles can cover: Thue 1890 (published)


def ports_kept_out(*, port_count, port_diameter_m, window_area_m2):
    """How many whole ports keep refractory out of the window.

        n = min(n, pi/sqrt(12) * A_window / (pi/4*d**2))

    Arguments: port_count n [-]; port_diameter_m d [m]; window_area_m2 A_window [m2]
    Returns: float [-]; less than n only where ports overlap, which keep out less than their sum
    Source: closest packing of equal circles, Thue 1890 (published)
    Checked by: tests/test_making_refractory.py (ports that touch in rows of sixes)
    """
    return min(port_count, CLOSEST_PACKING * window_area_m2 / (math.pi / 4 * port_diameter_m**2))


def block_volume_m3(
    *,
    mould_area_m2,
    body_area_m2,
    inside_area_m2,
    window_area_m2,
    wall_m,
    grip_m,
    block_thickness_m,
    port_count,
    port_diameter_m,
):
    """Volume of the block as cast.

        V = A_mould*(T - g) + (A_mould - A_body)*g + A_window*w + A_inside*(g - w) - n*pi/4*d**2*T

    Arguments:
        mould_area_m2      A_mould, inside of the mould [m2], at least the body's
        body_area_m2       A_body, outside of the body across the face [m2]
        inside_area_m2     A_inside, clear inside of the body across the face [m2]
        window_area_m2     A_window [m2]
        wall_m             w, thickness of the face [m]; grip_m g [m] >= wall; block_thickness_m T [m] >= grip
        port_count, port_diameter_m   n, d [-], [m]
    Returns: float [m3]
    Raises: InputError for mould_clearance, grip, block_thickness, setback, port_diameter
    Assumes: the mix rises beside the body as high as inside it
    Source: geometry
    Checked by: tests/test_making_refractory.py (mould less body, counted the other way round; hand example)
    """
    require(wall_m > 0, "wall", mm(wall_m), "must be above 0")
    require(
        wall_m - NOISE_M <= grip_m < math.inf,
        "grip",
        mm(grip_m),
        "must be at least the wall, or nothing holds the block",
        mm(3 * wall_m),
    )
    require(
        grip_m - NOISE_M <= block_thickness_m < math.inf,
        "block_thickness",
        mm(block_thickness_m),
        "must be at least the grip",
        mm(4 * grip_m),
    )
    require(
        mould_area_m2 >= body_area_m2 * (1 - 1e-9),
        "mould_clearance",
        f"{mould_area_m2:.4g} m2",
        "must let the body into the mould",
        "3 mm",
    )
    require(
        0 < window_area_m2 <= inside_area_m2 * (1 + 1e-6) <= body_area_m2,
        "setback",
        f"{window_area_m2:.4g} m2",
        "must leave a window no larger than the body's inside",
    )
    ports_area = port_count * math.pi / 4 * port_diameter_m**2
    require(
        0 <= ports_area < window_area_m2,
        "port_diameter",
        mm(port_diameter_m),
        "must leave refractory between the ports",
    )
    outside = mould_area_m2 * (block_thickness_m - grip_m)
    around = max(0.0, mould_area_m2 - body_area_m2) * grip_m
    window, inside, ports = window_area_m2 * wall_m, inside_area_m2 * (grip_m - wall_m), ports_area * block_thickness_m
    return outside + around + window + inside - ports


@dataclass(frozen=True)
class Batch:
    """What to weigh out: dry mix (waste included), water with its band, bags, and mixes of dry_per_mix_kg each."""

    dry_kg: float
    water_kg: float
    water_low_kg: float
    water_high_kg: float
    bags: int
    mixes: int
    dry_per_mix_kg: float
    water_per_mix_kg: float


def grain_m(narrowest_m):
    """Coarsest grain, as mixes are sold, that two of lie side by side in the narrowest place; else the finest [m].

    Source: common practice; sold to 1, 3 and 5 mm
    Checked by: tests/test_making_refractory.py
    """
    return max((grain for grain in GRAINS_M if 2 * grain <= narrowest_m), default=GRAINS_M[0])


def batch(*, volume_m3, material, waste=0.10, bag_mass_kg=24.95, placing_rate_kg_s=0.01, burners=1):
    """Dry mass, water, bags, and how many mixes keep each within the working time.

        dry = V*rho*(1 + waste)*burners;  water = dry * water fraction
        mixes = ceil(dry / (placing rate * working time))

    Arguments:
        volume_m3           V, one block [m3] > 0
        material            Castable
        waste               allowance [-] 0 .. 1; 0.10 common practice
        bag_mass_kg         one bag [kg]; 55 lb common practice
        placing_rate_kg_s   what one person mixes and places [kg/s]; 0.01 = 0.6 kg a minute, an example: time your own
        burners             blocks cast from the same bags >= 1
    Returns: Batch
    Raises: InputError for waste, bag_mass, placing_rate, batch_size
    Source: arithmetic; 8 x 6 x 3 in at 145 lb/ft3 = 12.08 lb with 1.21 lb of water (reference.md 7.2)
    Checked by: tests/test_making_refractory.py
    """
    require(volume_m3 > 0, "block_thickness", f"{volume_m3:g} m3", "must give a block with volume")
    require(0 <= waste <= 1, "waste", waste, "must be 0 to 1", "0.1")
    require(0 < bag_mass_kg < math.inf, "bag_mass", f"{bag_mass_kg:g} kg", "must be above 0", "25 kg")
    require(
        0 < placing_rate_kg_s < math.inf, "placing_rate", f"{placing_rate_kg_s:g} kg/s", "must be above 0", "0.01 kg/s"
    )
    require(burners >= 1, "batch_size", burners, "must be 1 or more", "1")
    dry = volume_m3 * material.density_kg_m3 * (1 + waste) * burners
    bags = math.ceil(dry / bag_mass_kg - 1e-9)
    mixes = math.ceil(dry / (placing_rate_kg_s * material.working_time_s) - 1e-9)
    return Batch(
        dry,
        dry * material.water,
        dry * material.water_low,
        dry * material.water_high,
        bags,
        mixes,
        dry / mixes,
        dry * material.water / mixes,
    )
