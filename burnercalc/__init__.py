"""burnercalc: design a forced-air, premixed, multi-port gas burner, from the chamber to the first fire."""

__version__ = "1.0.0"
