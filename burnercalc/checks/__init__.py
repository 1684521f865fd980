"""What is judged: one function for each declared check, of settings and parts, that returns a Judged or None."""

from .. import catalogue
from . import face, feed, fire, heat, make

MODULES = {"heat": heat, "face": face, "feed": feed, "make": make, "fire": fire}
CHECKS = {key: getattr(MODULES[check.room], f"{key}_check") for key, check in catalogue.CHECKS.items()}
# Of some faults, the settings of their cures that alone bring a stop: a function beside the check's.
SPOILS = {
    key: getattr(MODULES[check.room], f"{key}_spoils")
    for key, check in catalogue.CHECKS.items()
    if hasattr(MODULES[check.room], f"{key}_spoils")
}
