"""Frozen dataclasses that share their methods; only how one is made is written out and compiled class by class.

All that the standard decorator writes out was half of the time that the package takes to load in a browser. Fields,
defaults, `replace` and what is frozen are as ever, and so is how a class is written.
"""

from dataclasses import MISSING, FrozenInstanceError, fields
from dataclasses import dataclass as standard
from operator import attrgetter
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
else:

    def dataclass(*, frozen: bool, eq: bool = True):
        """As dataclasses.dataclass, frozen only."""
        if not frozen:
            raise TypeError("for what is not frozen there is dataclasses.dataclass")
        return lambda cls: _frozen(cls, eq)


def _frozen(cls, eq):
    below = any(hasattr(base, "__dataclass_params__") for base in cls.__mro__[1:])
    standard(init=False, repr=False, eq=False, frozen=below)(cls)  # a frozen one stands on frozen ones only
    cls.__dataclass_params__.frozen = True
    shared = {"__init__": _init(cls), "__repr__": _repr, "__setattr__": _refuse, "__delattr__": _refuse}
    if eq:
        names = tuple(field.name for field in fields(cls))
        cls._values = property(
            attrgetter(*names) if len(names) > 1 else lambda self: tuple(map(self.__getattribute__, names))
        )
        shared |= {"__eq__": _eq, "__hash__": _hash}
    for name, method in shared.items():
        if name not in cls.__dict__ or method is _refuse:
            setattr(cls, name, method)
    return cls


def _init(cls):
    """The one method that is written out: a class of many fields is made quickly only so."""
    scope, takes, does = {"_set": object.__setattr__}, ["self"], []
    for field in fields(cls):
        name = field.name
        if field.default_factory is not MISSING:
            scope |= {f"_{name}": MISSING, f"_make_{name}": field.default_factory}
            does.append(f" if {name} is _{name}: {name} = _make_{name}()")
        elif field.default is not MISSING:
            scope[f"_{name}"] = field.default
        takes.append(f"{name}=_{name}" if f"_{name}" in scope else name)
        does.append(f" _set(self, {name!r}, {name})")
    if hasattr(cls, "__post_init__"):
        does.append(" self.__post_init__()")
    exec("\n".join([f"def __init__({', '.join(takes)}):", *does, " pass"]), scope)
    return scope["__init__"]


def _repr(self):
    shown = (f"{field.name}={getattr(self, field.name)!r}" for field in fields(self))
    return f"{type(self).__qualname__}({', '.join(shown)})"


def _refuse(self, name, value=None):
    raise FrozenInstanceError(f"{name} of {type(self).__qualname__} cannot be changed")


def _eq(self, other):
    return self._values == other._values if other.__class__ is self.__class__ else NotImplemented


def _hash(self):
    return hash(self._values)
