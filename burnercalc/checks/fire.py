"""The verdicts of the room Fire: one function a check, named <key>_check."""

from ..making.days import COLD_TEMP_K, FREEZE_TEMP_K
from ..parts.shop import Shop
from .judge import Judged, ladder, verdict


def curing_air_check(shop: Shop, damp_air: str) -> Judged:
    damp = damp_air == "yes"
    word = ladder(shop.temp_K, good=COLD_TEMP_K, stop=FREEZE_TEMP_K)
    case = {"good": "damp" if damp else "good", "caution": "cold", "stop": "frost"}[word]
    cures = () if word == "good" else (("ambient_temperature", "raise"),)
    return verdict(
        "caution" if case == "damp" else word,
        shop.temp_K,
        COLD_TEMP_K,
        case=case,
        cures=cures + ((("damp_air", "choose"),) if damp else ()),
        air=shop.temp_K,
        frost=FREEZE_TEMP_K,
    )
