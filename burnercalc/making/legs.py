"""The two legs from the tee to the inlets: whether their fittings go between, and how long their nipples are."""

from ..constants import INCH_M
from ..tables import find, read_table
from .stock import METRES
from .train import reducers


def _size_m(pipe, what):
    return find("fitting_lengths", "nps", pipe, "inlet")[what] * INCH_M


def middle_to_end_m(pipe):
    """From the middle of an elbow or a straight tee of a nominal size to its end [m].

    Source: fitting_lengths.csv
    Checked by: tests/test_making_legs.py
    """
    return _size_m(pipe, "end_in")


def close_nipple_m(pipe):
    """The shortest nipple that is sold of a nominal size: thread from both ends [m].

    Source: fitting_lengths.csv
    Checked by: tests/test_making_legs.py
    """
    return _size_m(pipe, "close_in")


def sold_nipple_m(pipe, length_m, unit):
    """The nipple of a nominal size that is sold by `unit` whose length is nearest to one [m]; the close one is always.

    Source: nipples.csv; fitting_lengths.csv
    Checked by: tests/test_making_legs.py
    """
    close = close_nipple_m(pipe)
    sold = [row["length"] * METRES[unit] for row in read_table("nipples") if row["unit"] == unit]
    return min((close, *(one for one in sold if one > close)), key=lambda one: abs(one - length_m))


def thread_m(pipe):
    """How far a pipe of a nominal size goes into a fitting when it is tight [m].

    Source: fitting_lengths.csv
    Checked by: tests/test_making_legs.py
    """
    return _size_m(pipe, "thread_in")


def gap_m(pipe):
    """Left between two fittings on a close nipple [m] = nipple - 2 threads.

    Source: geometry
    Checked by: tests/test_making_legs.py
    """
    return close_nipple_m(pipe) - 2 * thread_m(pipe)


def union_m(pipe):
    """What a union on a close nipple adds to a run [m] = union + gap.

    Source: geometry
    Checked by: tests/test_making_legs.py
    """
    return _size_m(pipe, "union_in") + gap_m(pipe)


def least_leg_m(*, mix_pipe, inlet):
    """Least from the middle of the tee to the middle of the elbow, all fittings between on close nipples [m].

        end of the tee + gap + sum of (reducer + gap) + end of the elbow

    Arguments: mix_pipe, inlet nominal sizes
    Source: geometry; fitting_lengths.csv
    Checked by: tests/test_making_legs.py
    """
    steps = reducers(mix_pipe, inlet)
    larger = (max(step, key=lambda one: _size_m(one, "end_in")) for step in steps)
    joints = (mix_pipe, *(to for _, to in steps))
    return (
        middle_to_end_m(mix_pipe)
        + sum(_size_m(pipe, "reducer_in") for pipe in larger)
        + sum(gap_m(pipe) for pipe in joints)
        + middle_to_end_m(inlet)
    )
