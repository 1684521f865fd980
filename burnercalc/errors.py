"""What can go wrong with an input, and how it is said.

Every refusal names the setting, the value, the rule and the nearest value that works; several are reported at once.
"""

from collections.abc import Callable, Iterable
from typing import Any

MOST_SAID = 20  # refusals of what is not known
A_DAY = "2026-03-02"  # offered for what is no day; whoever knows today offers that (worker)


class InputError(ValueError):
    """One value that breaks one rule.

    Attributes:
        field     key of the setting or name of the argument
        value     the value as given (text or number)
        rule      what must hold, a phrase that starts with "must", "needs" or "is not"
        nearest   a value that works, as the user would type it; "" when there is none to offer
        others    keys of further settings that the rule weighs against this one
        said      the value as it is shown: "nothing" when empty, shortened when endless, odd signs by number
    """

    def __init__(self, field: str, value: object, rule: str, nearest: str = "", others: tuple[str, ...] = ()) -> None:
        self.field, self.value, self.rule, self.nearest, self.others = _said(field, 60), value, rule, nearest, others
        self.said = _said(value, 120) or "nothing"
        super().__init__(
            f"{self.field} = {self.said}: {rule}" + (f"; nearest that works: {nearest}" if nearest else "")
        )

    @property
    def errors(self) -> list["InputError"]:
        """Itself alone, as InputErrors has all of its refusals."""
        return [self]


def _said(value: object, most: int) -> str:
    text = f"{value:g}" if isinstance(value, float) else str(value)
    text = printable(" ".join(text[: 4 * most].split()))
    return text if len(text) <= most else text[:most] + "..."


def printable(text: str) -> str:
    """A text in which every sign that nobody sees, or that turns the rest round, stands as its number: U+202E."""
    return "".join(sign if sign.isprintable() else f"U+{ord(sign):04X}" for sign in text)


class InputErrors(ValueError):
    """All the refusals of one design together; `errors` is a list of InputError."""

    def __init__(self, errors: Iterable[InputError]) -> None:
        self.errors = list(errors)
        super().__init__("\n".join(str(error) for error in self.errors))


def require(holds: object, field: str, value: object, rule: str, nearest: str = "") -> None:
    """Raise InputError unless `holds`; written as what must hold, so that NaN is refused too."""
    if not holds:
        raise InputError(field, value, rule, nearest)


def few(errors: list[InputError], field: str) -> list[InputError]:
    """The first of many refusals, and how many more there are."""
    more = len(errors) - MOST_SAID
    return errors if more <= 0 else [*errors[:MOST_SAID], InputError(field, f"{more} more", "is not known either")]


def together(*readers: Callable[[], Any]) -> list[Any]:
    """What each reader returns, or an InputErrors of all that they refuse."""
    found, errors = [], []
    for reader in readers:
        try:
            found.append(reader())
        except (InputError, InputErrors) as refused:
            errors += refused.errors
    if errors:
        raise InputErrors(errors)
    return found
