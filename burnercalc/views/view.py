"""What tables, charts and drawings hand over, and how they get at their declared words."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from ..catalogue.sentences import from_cylinder, written
from ..units import show


@dataclass(frozen=True)
class Rows:
    """Rows of a table, SI values, one for each declared column; `case` chooses its title."""

    rows: tuple[tuple[Any, ...], ...]
    case: str = ""
    slots: dict[str, Any] = field(default_factory=dict)


@dataclass(frozen=True)
class Plot:
    """Data of a chart: ranges of both axes, (xs, ys) or (xs, low ys, high ys) of each series, the design's mark."""

    x: tuple[float, float]
    y: tuple[float, float]
    series: dict[str, tuple[Any, ...]]
    mark: tuple[Any, ...] = ()
    case: str = "shows"
    slots: dict[str, Any] = field(default_factory=dict)


@dataclass(frozen=True)
class Shapes:
    """Shapes of a drawing in mm; `case` chooses title and description."""

    shapes: tuple[Any, ...]
    case: str = ""
    slots: dict[str, Any] = field(default_factory=dict)


@dataclass(frozen=True)
class Say:
    """The declared words of one table or drawing, in the reader's units: say("saw", size=0.06) fills the slots."""

    words: Any
    unit_system: str
    on_a_line: Callable[[], bool] = from_cylinder

    def __call__(self, key: str, /, **slots: Any) -> str:
        return written(self.words[key], slots, self.unit_system, self.on_a_line)

    def length(self, value_m: float) -> str:
        """A length for a dimension line: 2 3/8" or 60.3."""
        return show(value_m, "length", self.unit_system).replace(" in", '"').replace(" mm", "")

    def bore(self, value_m: float) -> str:
        """The size of a hole: 3/16", where no mark of a tape is that 0.197", or 5."""
        return show(value_m, "bore", self.unit_system).replace(" in", '"').replace(" mm", "")
