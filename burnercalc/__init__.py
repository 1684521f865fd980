"""burnercalc: design a forced-air, premixed, multi-port gas burner, from the chamber to the first fire."""

from .design import Design
from .errors import InputError, InputErrors
from .link import from_link, to_link
from .result import Result, solve

__version__ = "1.0.0"
__all__ = ["Design", "InputError", "InputErrors", "Result", "from_link", "solve", "to_link"]
