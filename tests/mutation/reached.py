"""A pytest plugin: writes down which functions of the package the tests reach, as [[path, dotted name], ...] in JSON.

`python -m pytest -p mutation.reached FILE` with REACHED naming what is written. A function traced by its calls only
costs little, and needs no library.
"""

import json
import os
import sys
import threading
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = str(ROOT / "burnercalc") + os.sep
codes = set()


def note(frame, event, argument):
    codes.add(frame.f_code)  # and no look at its lines


def pytest_configure(config):
    threading.settrace(note)
    sys.settrace(note)


def pytest_unconfigure(config):
    sys.settrace(None)
    found = {
        (Path(code.co_filename).relative_to(ROOT).as_posix(), code.co_qualname.partition(".<locals>")[0])
        for code in codes
        if code.co_filename.startswith(PACKAGE)
    }
    Path(os.environ["REACHED"]).write_text(json.dumps(sorted(found)))
