"""A blend of gases in words, as plate and cards name it: the trade's names, the largest share first."""

from collections.abc import Iterable

NAMES = {
    "CH4": "methane",
    "C2H6": "ethane",
    "C3H6": "propylene",
    "C3H8": "propane",
    "C4H10": "butane",
    "iC4H10": "isobutane",
    "N2": "nitrogen",
    "CO2": "carbon dioxide",
}


def shares(composition: Iterable[tuple[str, float]]) -> str:
    """Mole percent of each, to three digits: propane 40, butane 40, isobutane 20."""
    ordered = sorted(composition, key=lambda one: -one[1])
    return ", ".join(f"{NAMES[species]} {100 * share:.3g}" for species, share in ordered)
