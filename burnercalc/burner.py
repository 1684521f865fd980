"""The parts of one burner, each made when first asked for, from the settings and parts that its function names."""

from collections.abc import Callable, Mapping
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
        value    function key -> SI value of a setting, such as `design.value`
        before   another Burner; a part that would be made of the very same things is taken from there
        store    parts of any number of burners, from which one that would be made of the very same things is taken,
                 and where each that is made is put; in place of `before`
        given    parts that are not worked out, but as given
    """

    __slots__ = ("_kept", "_made", "_store", "_value")

    def __init__(
        self,
        value: Callable[[str], Any],
        before: "Burner | None" = None,
        store: dict[Any, Any] | None = None,
        given: Mapping[str, Any] | None = None,
    ) -> None:
        self._value, self._store = value, store
        # name -> what it was made of, the record
        self._made: dict[str, tuple[dict[str, Any], Any]] = {name: ({}, one) for name, one in (given or {}).items()}
        self._kept: dict[str, tuple[dict[str, Any], Any]] = {} if before is None else {**before._kept, **before._made}

    def part(self, name: str) -> Any:
        """The record of a part, or the value of a setting."""
        made = self._made.get(name)
        if made is None:
            if name not in PARTS:
                return self._value(name)
            given = self._given(needs(PARTS[name]), {})
            made = self._made[name] = given, self._same_as_before(name, given)
        return made[1]

    def _given(self, names: tuple[str, ...], given: Mapping[str, Any]) -> dict[str, Any]:
        """The records and values of these names, those `given` as they are: asked so often that calls count."""
        made, value, found = self._made, self._value, {}
        for name in names:
            if name in given:
                found[name] = given[name]
            elif (one := made.get(name)) is not None:
                found[name] = one[1]
            else:
                found[name] = self.part(name) if name in PARTS else value(name)
        return found

    def _same_as_before(self, name: str, given: dict[str, Any]) -> Any:
        if self._store is not None:
            # A store holds all parts that its keys name by id, so none of these is another that took its place.
            key = (name, *[id(value) if one in PARTS else value for one, value in given.items()])
            if (stored := self._store.get(key)) is None:
                stored = self._store[key] = PARTS[name](**given)
            return stored
        before, record = self._kept.get(name, ({}, None))
        same = record is not None and all(
            given[one] is before[one] if one in PARTS else given[one] == before[one] for one in given
        )
        return record if same else PARTS[name](**given)

    def part_with(self, name: str, **given: Any) -> Any:
        """A part with some settings or parts other than the burner's; parts must be made by a burner of the same store,
        or last as long as it."""
        return self._same_as_before(name, self._given(needs(PARTS[name]), given))

    def off(self, settings: Mapping[str, Any], parts: Mapping[str, Any]) -> "Burner":
        """The burner with other settings and with parts as given; what neither touches is taken from here."""
        given = {name: one for name, (of, one) in self._made.items() if not of}
        return Burner(
            lambda key: settings[key] if key in settings else self._value(key),
            None if self._store is not None else self,
            self._store,
            {**given, **parts},
        )

    def further(self, value: Callable[[str], Any], moved: frozenset[str]) -> "Burner":
        """The burner with other values of some settings; `moved`: the parts that rest on them, given ones apart."""
        other = Burner(value, store=self._store)
        other._made = {name: made for name, made in self._made.items() if name not in moved}
        return other

    def made(self) -> frozenset[str]:
        """Names of the parts that have been asked for so far."""
        return frozenset(self._made)

    def call(self, function: Callable[..., Any], **given: Any) -> Any:
        """What a function of settings and parts returns for this burner; `given`: further arguments that it takes."""
        return function(**self._given(needs(function), given))
