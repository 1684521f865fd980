"""What mends a blower that is too weak: its own check offers it, and those that wait for it."""

from ..constants import INH2O_PA
from ..parts.blower import Blower
from ..parts.hand import MIXTURE_SLIP
from .judge import Cures

MARGIN = 0.20  # pressure to spare at high fire, good from
MOST_BLOWER_PA = 100 * INH2O_PA  # that any blower of a shop has, as far as the setting goes; more is no air of a burner


def beyond(blower: Blower) -> bool:
    return blower.high_Pa > MOST_BLOWER_PA


def blower_cures(blower: Blower, blower_curve: tuple | None, word: str = "stop") -> Cures:
    """What mends a blower too weak for high fire, here and where another check waits for it: what it blows free only
    where its pressure is enough, pipe and ports only where enough is lost in them."""
    far, ends = word == "stop" and beyond(blower), blower.high_m3_s > blower.curve.last_m3_s
    times = (1 - MIXTURE_SLIP) ** 2 if word == "stop" else 1 + MARGIN  # near enough is no stop
    density = blower.air_density_kg_m3
    has_Pa = 0.0 if ends else blower.curve.pressure_Pa(blower.high_m3_s, density)
    blows = blower.whole.pressure_Pa(0.0, density) >= times * blower.high_Pa
    own = (
        (("blower_curve", "choose"),)
        if blower_curve
        else (
            *(() if ends else (("blower_shutoff_pressure", "raise"),)),
            *((("blower_free_flow", "raise"),) if blows else ()),
        )
    )
    resistance, eased = blower.resistance, dict[str, float]()
    eased["mix_pipe"] = resistance.mix_pipe_Pa
    eased["port_diameter"] = resistance.uneven * resistance.passage.ports_at_Pa(resistance.high_m3_s)
    return (
        *(() if far else own),
        *((("blowers", "choose"),) if blower.burners > 1 else ()),
        # No curve gets longer by less resistance.
        *((key, "raise") for key, less_Pa in eased.items() if far or has_Pa >= times * (blower.high_Pa - less_Pa)),
        ("firing_rate", "lower"),
    )
