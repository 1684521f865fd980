"""Where figures and formulas come from: each source once, with how sure it is. Joined by `&`, the weakest decides."""

from dataclasses import dataclass

# From the surest to the least sure. "calculated": arithmetic or geometry from the settings, exact to them.
TRUST = ("calculated", "published", "memory", "common practice")


@dataclass(frozen=True)
class Source:
    """One source: its words, and one of TRUST. `a & b` is both; no surer than the less sure of the two."""

    text: str
    trust: str

    def __post_init__(self) -> None:
        assert self.trust in TRUST, self.trust

    def __and__(self, other: "Source") -> "Source":
        return Source(f"{self.text}; {other.text}", max(self.trust, other.trust, key=TRUST.index))

    def __str__(self) -> str:
        """The words and how sure they are, the latter once."""
        sure = "from memory" if self.trust == "memory" else self.trust
        return self.text if sure in self.text else f"{self.text} ({sure})"


PRACTICE = Source("common practice, no published source", "common practice")
LIMITS = Source("limits are common practice", "common practice")
DEFINITION = Source("definition", "calculated")
ARITHMETIC = Source("arithmetic", "calculated")
CONTINUITY = Source("continuity, ideal gas", "calculated")
FLASHBACK = Source(
    "Putnam and Jensen 1949 group, fixed to the methane figure of Lewis and von Elbe, from memory; preheat: Hausen "
    "1943",
    "memory",
)
DAMKOEHLER = Source("Damkoehler 1940, constants from memory", "memory")
LIFT = Source("Reed, Combust. Flame 11 (1967) 177", "memory")
EQUILIBRIUM = Source("chemical equilibrium, NASA polynomials (NASA TM-4513) by the method of NASA RP-1311", "published")
FREEZING = EQUILIBRIUM & Source("composition frozen below 1700 K (common practice)", "common practice")
CO_LIMIT = Source("mass balance", "calculated") & Source(
    "NIOSH REL (criteria document 1972); beside it Directive (EU) 2017/164", "published"
)
ZONE = Source(
    "one well-stirred zone of burned gas between its walls (Hottel and Sarofim 1967); emissivity of the gas by gray "
    "gases (Smith, Shen and Friedman 1982); gas to wall 20, 40 or 80 W/m²K (common practice)",
    "common practice",
)
ZONE_HEAT_UP = ZONE & Source("transient conduction by implicit finite volumes (Patankar 1980); dry lining", "memory")
RAOULT = Source("Raoult's law and simple distillation (Rayleigh); vapour pressures by CoolProp", "published")
