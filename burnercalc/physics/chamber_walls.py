"""Shape of a lined wall: how it resists heat at each depth below the hot face, and its outside faces.

Where two layers meet, heat can spread along the wall or not. If it spreads freely, each layer counts as a wall of its
own, with its own edges and corners: that lets through too much. If it cannot, the layers share the paths that the
whole wall would have: that lets through too little. The mean of the two is used. Such bounds: H. G. Elrod, J. Heat
Transfer 96 (1974) 65. Published, recalled. tests/test_walls_3d.py compares with walls in three dimensions.
"""

from dataclasses import dataclass
from functools import cache
from math import log, pi

from ..errors import require

# Conduction shape factors of a right-angled edge (per length) and corner (per thickness) of a wall of even thickness:
# Langmuir, Adams and Meikle, Trans. Am. Electrochem. Soc. 24 (1913) 53; Incropera, table 4.1. Published, recalled.
EDGE_FACTOR = 0.54
CORNER_FACTOR = 0.15


@dataclass(frozen=True)
class Wall:
    """A wall from the hot face out.

    Attributes:
        flat_area_m2   flat hot-face area, openings taken off       [m2]
        edge_m         length of the inside edges                   [m]
        corners        number of inside corners                     [-]
        radius_m       inside radius of a cylindrical part          [m]   0 when there is none
        length_m       length of that part                          [m]
        outside        function of total thickness_m -> tuple of (facing, size_m, area_m2), see outside.convection_W_m2K
        grown          function of depth_m -> the Wall whose hot face lies at that depth
        rims           edges that run round an end of a cylinder and get longer with depth   [-]
    """

    flat_area_m2: float
    edge_m: float
    corners: int
    radius_m: float
    length_m: float
    outside: object
    grown: object
    rims: int = 0

    def conductance_m(self, depth_m):
        """Shape factor between the hot face and depth `depth_m` above 0 [m]: heat flow = k * shape factor * difference.

        S = A/x + 0.54 edges + 0.15 corners x + 2 pi length / ln(1 + x/r)
        """
        s = self.flat_area_m2 / depth_m + EDGE_FACTOR * self.edge_m + CORNER_FACTOR * self.corners * depth_m
        if self.radius_m:
            s += 2 * pi * self.length_m / log(1 + depth_m / self.radius_m)
        return s

    def resistance_1_m(self, depth_m):
        """Inverse of conductance_m, 0 at the hot face."""
        return 1 / self.conductance_m(depth_m) if depth_m else 0.0

    def area_m2(self, depth_m):
        """Area that carries the heat at depth `depth_m` [m2]: the slope of depth over resistance."""
        x = depth_m
        if x == 0:
            return self.flat_area_m2 + 2 * pi * self.radius_m * self.length_m
        fall = self.flat_area_m2 / x**2 - CORNER_FACTOR * self.corners
        if self.radius_m:
            fall += 2 * pi * self.length_m / (log(1 + x / self.radius_m) ** 2 * (self.radius_m + x))
        return self.conductance_m(x) ** 2 / fall

    def layer_resistance_1_m(self, low_m):
        """Function of a depth: resistance from `low_m`, the hot side of a layer, to it, without conductivity [1/m]."""
        start, layer = self.resistance_1_m(low_m), self.grown(low_m)

        def resistance_1_m(depth_m):
            if not depth_m > low_m:
                return 0.0
            kept = 1 / (self.resistance_1_m(depth_m) - start)
            spread = layer.conductance_m(depth_m - low_m)
            return 2 / (kept + spread)

        return resistance_1_m

    def solid_m3(self, depth_m):
        """Volume of lining from the hot face to a depth, edges and corners with it [m3]."""
        x = depth_m
        edges = self.edge_m + pi * self.rims * x
        round_part = pi * self.length_m * x * (2 * self.radius_m + x)
        return self.flat_area_m2 * x + edges * x**2 + self.corners * x**3 + round_part

    def thickest_m(self):
        """Thickness up to which the corner factor may be used here [m]; beyond it the wall is more like a sphere."""
        return 0.7 * (self.flat_area_m2 / (CORNER_FACTOR * self.corners)) ** 0.5 if self.corners else 1e6


def flat_wall(*, area_m2, height_m, facing="vertical"):
    """A flat wall with no edges, `height_m` the size for convection (height, or area over perimeter) [m]."""
    require(area_m2 > 0, "area_m2", area_m2, "must be above 0")
    return Wall(
        area_m2,
        0.0,
        0,
        0.0,
        0.0,
        lambda thickness_m: ((facing, height_m, area_m2),),
        lambda depth_m: flat_wall(area_m2=area_m2, height_m=height_m, facing=facing),
    )


def upright_wall_m2(*, box, length_m, width_m, height_m, diameter_m):
    """The largest that an opening fits into: an upright wall of a box, an end of a cylinder that lies [m2]."""
    return height_m * max(length_m, width_m) if box else pi / 4 * diameter_m**2


def box_chamber(*, length_m, width_m, height_m, opening_area_m2=0.0):
    """All six walls of a box, inside sizes; heat through edges and corners by their shape factors.

    Raises: InputError for chamber_length, chamber_width, chamber_height or opening_area
    """
    for field, value in (("chamber_length", length_m), ("chamber_width", width_m), ("chamber_height", height_m)):
        require(0 < value < 100, field, value, "must be above 0 and below 100 m")
    area = box_area_m2(length_m, width_m, height_m)
    widest = max(length_m * width_m, length_m * height_m, width_m * height_m)
    require(
        0 <= opening_area_m2 <= widest,
        "opening_area",
        f"{opening_area_m2:g} m2",
        f"must be 0 or more and fit into the largest wall, {widest:g} m2",
        f"{widest:g} m2",
    )

    def outside(t):
        long, wide, high = length_m + 2 * t, width_m + 2 * t, height_m + 2 * t
        top = long * wide
        flat = top / (2 * (long + wide))
        return (("vertical", high, 2 * (long + wide) * high - opening_area_m2), ("up", flat, top), ("down", flat, top))

    @cache
    def grown(t):
        return box_chamber(
            length_m=length_m + 2 * t,
            width_m=width_m + 2 * t,
            height_m=height_m + 2 * t,
            opening_area_m2=opening_area_m2,
        )

    return Wall(area - opening_area_m2, 4 * (length_m + width_m + height_m), 8, 0.0, 0.0, outside, grown)


def cylinder_chamber(*, diameter_m, length_m, opening_area_m2=0.0):
    """A horizontal cylinder with two flat ends, inside sizes; the rims count as edges.

    Raises: InputError for chamber_diameter, chamber_length or opening_area
    """
    for field, value in (("chamber_length", length_m), ("chamber_diameter", diameter_m)):
        require(0 < value < 100, field, value, "must be above 0 and below 100 m")
    end = pi * diameter_m**2 / 4
    require(
        0 <= opening_area_m2 <= end,
        "opening_area",
        f"{opening_area_m2:g} m2",
        f"must be 0 or more and fit into one end, {end:g} m2",
        f"{end:g} m2",
    )

    def outside(t):
        d, long = diameter_m + 2 * t, length_m + 2 * t
        return (("cylinder", d, pi * d * long), ("vertical", d, pi * d**2 / 2 - opening_area_m2))

    @cache
    def grown(t):
        return cylinder_chamber(
            diameter_m=diameter_m + 2 * t, length_m=length_m + 2 * t, opening_area_m2=opening_area_m2
        )

    return Wall(2 * end - opening_area_m2, 2 * pi * diameter_m, 0, diameter_m / 2, length_m, outside, grown, rims=2)


def box_area_m2(length_m, width_m, height_m):
    """Inside surface of a box [m2]."""
    return 2 * (length_m * width_m + length_m * height_m + width_m * height_m)


def cylinder_area_m2(diameter_m, length_m):
    """Inside surface of a cylinder with both ends [m2]."""
    return pi * diameter_m * length_m + pi * diameter_m**2 / 2
