"""Where the gas comes from: the one place that tells a fixed line from cylinders or a tank of one's own."""

from dataclasses import dataclass

from .gas import Gas


@dataclass(frozen=True)
class GasLine:
    """`there`: gas comes by a line, whose pressure is what it is; else from cylinders or a tank, whose regulator is
    turned. `metered`: that line is the gas company's, with its meter; one of propane or butane has none."""

    there: bool
    metered: bool

    def source(self, cylinder: str, cylinder_count: int) -> str:
        """Where it is shut off behind the burner: line, tank, cylinder or each of several."""
        if self.there or cylinder == "tank":
            return "line" if self.there else "tank"
        return "cylinders" if cylinder_count > 1 else "cylinder"

    def isolated(self, lit_by: str) -> bool:
        """Whether an isolating cock stands first and the firing cock behind the main valve: else with the one cock shut
        the low-gas switch of a line is open, and no pilot has gas, so no guard can be tried. A torch on cylinders needs
        neither."""
        return self.there or lit_by == "guard"


def gas_line(gas_from: str, gas: Gas) -> GasLine:
    """Gas that is not sold liquid comes by no other way."""
    return GasLine(gas.metered or gas_from == "line", gas.metered)
