"""Write answers.json: what every answer of 24 designs is, to the last digit.

    python tests/reference/make_answers.py

Run it only when answers are meant to move; say in CHANGELOG.md which, how far and why. The designs stay.
"""

import json
import sys
from pathlib import Path

FILE = Path(__file__).with_name("answers.json")
sys.path.insert(0, str(FILE.parents[2]))

from burnercalc import Design, solve  # noqa: E402


def answers(texts):
    """{key: value, or [low, value, high]} of a design."""
    result = solve(Design.from_texts(texts))
    return {
        answer.key: [answer.band[0], answer.value, answer.band[1]] if answer.band else answer.value
        for answer in sorted(result.answers.values(), key=lambda answer: answer.key)
    }


if __name__ == "__main__":
    designs = json.loads(FILE.read_text(encoding="utf-8"))
    for design in designs.values():
        design["answers"] = answers(design["settings"])
    FILE.write_text(json.dumps(designs, indent=0, ensure_ascii=False) + "\n", encoding="utf-8")
