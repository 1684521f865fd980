"""What all tests share: properties are never judged by a clock, and CI draws the same examples each time.

At a desk the examples are random, so that they go on finding things; what they find becomes an @example or a test.
Runs side by side (`build.py test`) share the files: each takes the next one that no other has begun.
"""

import gc
import itertools
import os
from pathlib import Path

from hypothesis import settings

gc.set_threshold(50_000, 20, 100)  # tests keep thousands of results; looking through them took a seventh of the time

settings.register_profile("desk", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True)
settings.load_profile("ci" if os.environ.get("CI") else "desk")


def pytest_addoption(parser):
    parser.addoption("--begun", type=Path, help="folder in which runs side by side note the files that they begin")


def pytest_runtestloop(session):
    """Pytest's own loop over the files that this run takes."""
    if not session.config.option.begun or session.testsfailed:
        return None
    taken = not_begun(session.config.option.begun, session.items)
    item = next(taken, None)
    while item:
        following = next(taken, None)
        item.config.hook.pytest_runtest_protocol(item=item, nextitem=following)
        item = following
    return True


def not_begun(folder, items):
    for file, of_file in itertools.groupby(items, lambda item: item.nodeid.partition("::")[0]):
        try:
            (folder / file.replace("/", " ")).touch(exist_ok=False)
        except FileExistsError:
            continue
        yield from of_file
