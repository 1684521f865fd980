"""What is shown in the room Air and gas: one function a table or chart, named <key>_table or <key>_chart."""

from math import ceil, floor, log10

from ..catalogue.sentences import measured
from ..parts.blower import Blower
from ..parts.body import Body
from ..parts.face import Face
from ..parts.firing import Firing
from ..parts.gas_line import GasLine
from ..parts.gauges import Gauges
from ..parts.jet import Jet
from ..parts.shares import Shares
from ..parts.stream import Stream
from ..physics import combustion
from ..units import conversion, shown_unit
from .view import Plot

CARD_RATIOS = (0.65, 1.4)  # equivalence ratios that the regulator's card spans
CARD_STEPS = 8  # about so many rows of it
POINTS = 40  # of a curve


def port_flows_table(body: Body, face: Face, stream: Stream, shares: Shares) -> tuple:
    """Places from the lower left corner of the body."""
    mean = stream.mixture_m3_s / face.port_count
    return tuple(
        (number, x + body.length_m / 2, y + body.width_m / 2, share, share * mean)
        for number, ((x, y), share) in enumerate(zip(face.ports, shares.ports), 1)
    )


def jet_drills_table(jet: Jet, firing: Firing, gauges: Gauges, equivalence_ratio: float) -> tuple:
    """Pressures as the gauge shows them."""
    rows = []
    for drill in jet.near:
        rate = jet.rate_through_W(drill.diameter_m, jet.gauge_Pa)
        needed = gauges.shown_Pa(jet.needed_Pa(firing.rate_W, drill.diameter_m))
        rows.append(
            (drill.family, drill.name, drill.diameter_m, rate, equivalence_ratio * rate / firing.rate_W, needed)
        )
    return tuple(rows)


def regulator_card_table(jet: Jet, gas_line: GasLine, firing: Firing, equivalence_ratio: float, units: str) -> tuple:
    rows = []
    for gauge in _card_pressures(jet, gas_line, firing, equivalence_ratio, units):
        rate = jet.rate_through_W(jet.drill.diameter_m, gauge)
        phi = equivalence_ratio * rate / firing.rate_W
        rows.append((gauge, rate, phi, combustion.atmosphere(phi)))
    return tuple(rows)


def _card_pressures(jet, gas_line, firing, equivalence_ratio, units):
    """Round gauge pressures as the regulator's dial shows them, over the mixtures that burn well."""
    if jet.drill is None:
        return []
    scale, _ = conversion(shown_unit(measured("gas_pressure", lambda: gas_line.there), units), "Pa")
    low, high = (
        jet.needed_Pa(firing.rate_W * phi / equivalence_ratio, jet.drill.diameter_m) / scale for phi in CARD_RATIOS
    )
    step = _round_step((high - low) / CARD_STEPS)
    return [step * i * scale for i in range(ceil(low / step), int(high / step) + 1)]


def _round_step(value):
    """The nearest of 1, 2, 5 x 10^n at or below a number."""
    power = 10 ** floor(log10(value))
    return max(step for step in (1, 2, 5) if step * power <= value * (1 + 1e-9)) * power


def flow_by_column_chart(shares: Shares) -> Plot:
    count = len(shares.columns)
    return Plot(
        x=(0, count + 1),
        y=(0, max(1.2, 1.1 * max(shares.columns))),
        series={"shares": (tuple(range(1, count + 1)), shares.columns), "fair": ((0, count + 1), (1, 1))},
        slots={"spread": shares.spread},
    )


def blower_and_burner_chart(blower: Blower) -> Plot:
    last, high, low = blower.curve.last_m3_s, blower.high_m3_s, blower.low_m3_s
    most = 1.05 * max(last, high)
    flows = (*(last * i / POINTS for i in range(POINTS)), last)
    pressures = tuple(blower.curve.pressure_Pa(flow, blower.air_density_kg_m3) for flow in flows)
    top = 1.2 * max(max(pressures), blower.high_Pa)
    asked = tuple(most * i / POINTS for i in range(POINTS + 1))
    shown = [(flow, need) for flow in asked if (need := blower.needed_Pa(flow)) <= top]
    return Plot(
        x=(0, most),
        y=(0, top),
        series={
            "blower": (flows, pressures),
            "burner": (tuple(flow for flow, _ in shown), tuple(need for _, need in shown)),
            "fires": ((low, high), (blower.needed_Pa(low), blower.high_Pa)),
        },
        mark=(blower.flow_m3_s, blower.pressure_Pa),
        case="shows" if blower.burners == 1 else "shared",
        slots={"air": blower.flow_m3_s, "pressure": blower.pressure_Pa, "high": high, "burners": blower.burners},
    )


def jet_card_chart(jet: Jet, gas_line: GasLine, firing: Firing, equivalence_ratio: float, units: str) -> Plot:
    card = regulator_card_table(jet, gas_line, firing, equivalence_ratio, units)
    pressures, rates = tuple(row[0] for row in card), tuple(row[1] for row in card)
    return Plot(
        x=(0, max(pressures, default=jet.gauge_Pa)),
        y=(0, 1.1 * max((*rates, firing.rate_W))),
        series={"rate": (pressures, rates)},
        mark=(jet.high_Pa, firing.rate_W) if jet.drill else (),
        case="shows" if jet.drill else "none",
        slots={"at": jet.read_Pa},
    )
