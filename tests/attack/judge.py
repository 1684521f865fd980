"""Counts what an attack finds: crashes, hangs, and what is wrong or accepted in silence."""

import signal
import threading
import time
from contextlib import contextmanager
from dataclasses import dataclass, field
from random import Random

from playwright.sync_api import TimeoutError as PageHangs

HANG_S = 10.0  # of the processor, however busy the machine: a trial that takes longer hangs

ENOUGH = 50  # findings, after which a target is given up


class Hang(BaseException):
    """Raised by the alarm within a trial; no `except Exception` may swallow it."""


@dataclass
class Tally:
    """One target's score; `found` are lines that say how to see each finding again."""

    target: str
    tried: int = 0
    next: int = 0  # the trial after the last, from which it can go on
    seconds: float = 0.0
    crashes: int = 0
    hangs: int = 0
    wrong: int = 0
    found: list = field(default_factory=list)

    @property
    def clean(self):
        return not (self.crashes or self.hangs or self.wrong)

    def note(self, kind, seed, said):
        self.found.append(f"{self.target} {kind} at seed {seed}: {ascii(said)[:600]}")


@contextmanager
def alarm(seconds):
    if not hasattr(signal, "ITIMER_PROF") or threading.current_thread() is not threading.main_thread():
        yield
        return

    def ring(*_):
        raise Hang

    before = signal.signal(signal.SIGPROF, ring)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


def attack(target, trial, seed, seconds=None, trials=None, first=0):
    """The Tally of `trial(rng)` from the `first` on, each with its own Random, for so many seconds or things tried.

    A trial returns how many things it tried; AssertionError is a wrong or silent answer, any other exception a crash.
    """
    tally, start = Tally(target, next=first), time.perf_counter()
    while (tally.tried < trials if trials is not None else time.perf_counter() - start < seconds) and (
        len(tally.found) < ENOUGH
    ):
        own, tally.next = f"{seed}:{target}:{tally.next}", tally.next + 1
        try:
            with alarm(HANG_S):
                tally.tried += trial(Random(own)) or 1
        except Hang:
            tally.tried, tally.hangs = tally.tried + 1, tally.hangs + 1
            tally.note("hang", own, "")
        except AssertionError as wrong:
            tally.tried, tally.wrong = tally.tried + 1, tally.wrong + 1
            tally.note("wrong", own, str(wrong))
        except PageHangs as hang:
            tally.tried, tally.hangs = tally.tried + 1, tally.hangs + 1
            tally.note("hang", own, str(hang).partition("\n")[0])
        except Exception as crash:
            tally.tried, tally.crashes = tally.tried + 1, tally.crashes + 1
            tally.note("crash", own, f"{type(crash).__name__}: {crash}")
    tally.seconds = time.perf_counter() - start
    return tally
