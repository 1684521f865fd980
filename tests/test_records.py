"""Frozen records are dataclasses as the standard library makes them, but for what is compiled."""

import copy
from dataclasses import FrozenInstanceError, dataclass, field, fields, is_dataclass, replace
from functools import cached_property

import pytest

from burnercalc import records


def made_by(decorator):
    @decorator(frozen=True)
    class Point:
        x: float
        y: float = 2.0
        slots: dict = field(default_factory=dict)

        @cached_property
        def far(self):
            return abs(self.x) + abs(self.y)

    @decorator(frozen=True)
    class Place(Point):
        name: str = "here"

    @decorator(frozen=True)
    class One:
        x: float

        def __post_init__(self):
            if self.x < 0:
                raise ValueError("below 0")

    @decorator(frozen=True)
    class Two(One):
        y: float = 1.0

    @decorator(frozen=True, eq=False)
    class Itself:
        x: float

    @decorator(frozen=True)
    class Hashed:
        slots: dict

        def __hash__(self):
            return 7

    return Point, Place, One, Itself, Hashed, Two


OURS, STANDARD = made_by(records.dataclass), made_by(dataclass)


@pytest.mark.parametrize(
    "ask",
    [
        lambda Point, *_: vars(Point(1.0)),
        lambda Point, *_: vars(Point(1.0, slots={"a": 1}, y=3.0)),
        lambda Point, *_: repr(Point(1.0, 2.5)).rpartition(".")[2],
        lambda Point, *_: [(one.name, one.type) for one in fields(Point)],
        lambda Point, *_: is_dataclass(Point) and Point.__dataclass_params__.frozen,
        lambda Point, *_: vars(replace(Point(1.0), y=9.0)),
        lambda Point, *_: Point(1.0).slots is Point(1.0).slots,
        lambda Point, *_: Point(1.0) == Point(1.0, 2.0, {}),
        lambda Point, *_: Point(1.0) == Point(1.5),
        lambda Point, *_: Point(-3.0).far,
        lambda Point, *_: vars(copy.copy(Point(4.0))),
        lambda Point, *_: Point.__match_args__,
        lambda _, Place, *__: vars(Place(1.0, name="there")),
        lambda Point, Place, *_: Point(1.0) == Place(1.0),
        lambda _, __, One, *___: hash(One(1.0)) == hash(One(1.0)) and One(1.0) == One(1.0) != One(2.0),
        lambda _, __, ___, Itself, *____: Itself(1.0) == Itself(1.0),
        lambda *them: hash(them[-2]({})),
    ],
)
def test_as_the_standard_library_has_it(ask):
    assert ask(*OURS) == ask(*STANDARD)


@pytest.mark.parametrize(
    "refused, fault",
    [
        (lambda Point, *_: Point(), TypeError),
        (lambda Point, *_: Point(1.0, z=1.0), TypeError),
        (lambda Point, *_: Point(1.0, 2.0, {}, 4.0), TypeError),
        (lambda Point, *_: Point(1.0, x=1.0), TypeError),
        (lambda Point, *_: hash(Point(1.0)), TypeError),  # a dict among its values
        (lambda Point, *_: setattr(Point(1.0), "x", 2.0), FrozenInstanceError),
        (lambda Point, *_: setattr(Point(1.0), "new", 2.0), FrozenInstanceError),
        (lambda Point, *_: delattr(Point(1.0), "x"), FrozenInstanceError),
        (lambda _, Place, *__: setattr(Place(1.0), "name", "x"), FrozenInstanceError),
        (lambda _, __, One, *___: One(-1.0), ValueError),
        (lambda *them: them[-1](-1.0), ValueError),
    ],
)
def test_refuses_what_the_standard_library_refuses(refused, fault):
    for classes in (OURS, STANDARD):
        with pytest.raises(fault):
            refused(*classes)


def test_only_frozen_ones_are_made():
    with pytest.raises(TypeError):
        records.dataclass(frozen=False)
