"""The generated tables of README.md: commands, settings and answers as the package declares them.

build.py docs      rewrites them, with the project's own Python
"""

from pathlib import Path

from burnercalc import catalogue, cli
from burnercalc.grammars import example
from burnercalc.physics.linings import material_keys
from burnercalc.rooms import ROOMS
from burnercalc.settings import SETTINGS
from burnercalc.units import in_both_measures, si_unit_of

README = Path(__file__).resolve().parents[2] / "README.md"


def table(headings, rows):
    """A table in Markdown; what would be read as markup is spelled out."""

    def line(cells):
        return "| " + " | ".join(str(cell).replace("<", "&lt;").replace("|", "\\|") or " " for cell in cells) + " |"

    return "\n".join([line(headings), "|" + " --- |" * len(headings), *map(line, rows)])


def folded(summary, *parts):
    return "\n\n".join([f"<details><summary>{summary}</summary>", *parts, "</details>"])


def code(text):
    return f"`{text}`" if text else ""


def allowed(setting):
    """What a setting takes, in words."""
    if setting.choices:
        return ", ".join(code(value) for value, _ in setting.choices)
    if setting.dimension == "lining":
        return f"{code(example('lining', 'in'))}; materials: " + ", ".join(map(code, material_keys()))
    span = f"{setting.low} to {setting.high}" if setting.low and setting.high else ""
    return " or ".join(filter(None, [span, *map(code, setting.words)])) or "text"


def commands():
    """A row for each command, as its own parser knows it."""
    _, chosen = cli._parser()._actions
    rows = []
    for name, parser in chosen.choices.items():
        own = [action for action in parser._actions if action.dest not in ("help", "link", "set", "site")]
        rows.append((code(name), parser.description, ", ".join(code(option(action)) for action in own)))
    return table(("command", "gives", "takes"), rows)


def option(action):
    """An option as it is typed."""
    word = "" if action.nargs == 0 else action.metavar or "/".join(action.choices)
    return f"{action.option_strings[0]} {word}".strip()


def settings():
    parts = []
    for room, title in ROOMS.items():
        rows = [
            (code(s.key), s.label, allowed(s), code(s.default) or "empty", in_both_measures(s.help))
            for s in SETTINGS
            if s.room == room
        ]
        parts += [f"**{title}**", table(("key", "label", "takes", "default", "help"), rows)]
    return folded(f"All {len(SETTINGS)} settings", *parts)


def answers():
    parts = []
    for room, title in ROOMS.items():
        rows = [
            (
                code(a.key),
                a.label,
                "" if si_unit_of(a.dimension) == "1" else si_unit_of(a.dimension),
                in_both_measures(a.meaning),
            )
            for a in catalogue.ANSWERS.values()
            if a.room == room
        ]
        parts += [f"**{title}**", table(("key", "label", "unit", "meaning"), rows)]
    return folded(f"All {len(catalogue.ANSWERS)} answers", *parts)


TABLES = {"commands": commands, "settings": settings, "answers": answers}


def renewed(text):
    """The README with what stands between its markers made again."""
    for name, make in TABLES.items():
        begin, end = f"<!-- {name}: made by build.py docs -->", f"<!-- end of {name} -->"
        before, rest = text.split(begin)
        _, after = rest.split(end)
        text = f"{before}{begin}\n\n{make()}\n\n{end}{after}"
    return text


if __name__ == "__main__":
    README.write_text(renewed(README.read_text(encoding="utf-8")), encoding="utf-8")
