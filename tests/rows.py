"""Read a reference file of expected values; a missing file is a failing test."""

import csv
from pathlib import Path

HERE = Path(__file__).parent / "reference"


def rows(name):
    """List of dicts of tests/reference/<name>; numbers as float; `#` lines are the sources and are skipped."""
    lines = [
        line for line in (HERE / name).read_text(encoding="utf-8").splitlines() if line and not line.startswith("#")
    ]

    def cell(text):
        try:
            return float(text)
        except ValueError:
            return text.strip()

    found = [{key: cell(value or "") for key, value in row.items()} for row in csv.DictReader(lines)]
    assert found, f"{name} holds no rows"
    return found
