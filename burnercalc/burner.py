"""The parts of one burner, each made when first asked for, from the settings and parts that its function names."""

from collections.abc import Callable
from functools import cache
from inspect import signature
from typing import Any

from .parts import PARTS


@cache
def needs(function: Callable[..., Any]) -> tuple[str, ...]:
    """Names of a function's arguments: settings, parts, and what the caller gives."""
    return tuple(signature(function).parameters)


class Burner:
    """Everything worked out about one design, on demand.

    Arguments:
        value   function key -> SI value of a setting, such as `design.value`
    """

    def __init__(self, value: Callable[[str], Any]) -> None:
        self._value = value
        self._made: dict[str, Any] = {}

    def part(self, name: str) -> Any:
        """The record of a part; KeyError for a name that is neither a part nor a setting."""
        if name not in PARTS:
            return self._value(name)
        if name not in self._made:
            self._made[name] = self.call(PARTS[name])
        return self._made[name]

    def call(self, function: Callable[..., Any], **given: Any) -> Any:
        """What a function of settings and parts returns for this burner; `given` are further arguments of it."""
        return function(**{name: given[name] if name in given else self.part(name) for name in needs(function)})
