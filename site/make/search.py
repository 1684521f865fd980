"""What the page's search knows: all that can be set, read, looked at or printed, and what else it is called."""

from pathlib import Path

from taken import SHOWN_DRAWINGS, TAKEN

from burnercalc import catalogue, units
from burnercalc.catalogue.train import PARTS
from burnercalc.catalogue.trouble import SIGNS
from burnercalc.jobs import JOBS
from burnercalc.settings import SETTINGS

CALLED = Path(__file__).parent / "called.txt"
# A table whose title is written for each design.
TITLES = {"base_drilling": "Hole table of the mould's base"}

TOOLS = (
    (
        *("find-box", "tool", "start", "Find a burner from what I have"),
        "shop stock tube pins blower scrap search suggest choose for me which burner optimise",
        "Designs from the tube, pins, blower and gas that lie there, ranked.",
    ),
    (
        *("good-box", "tool", "start", "Make it good"),
        "fix mend repair cure all checks faults improve",
        "Few changes that turn the checks good.",
    ),
    (
        *("shops-box", "tool", "start", "What if pins, blower or day are a little off"),
        "tolerance sensitivity tornado robust what if margin sample shops like yours",
        "How the four numbers move, and in how many shops the design stays good.",
    ),
)


def called():
    """{id on the page: what else people call it}; an id that stands twice is a slip."""
    lines = [line for line in CALLED.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    found = dict(line.split(": ", 1) for line in lines)
    assert len(found) == len(lines)
    return found


def title(declared):
    """The title of a table, chart or drawing; of several cases the first."""
    if declared.key in TITLES:
        return TITLES[declared.key]
    return declared.title if isinstance(declared.title, str) else next(iter(declared.title.values()))


def written(table):
    """What stands in a table: its columns, and the sentences of its cells."""
    return " ".join([*(column.label for column in table.columns), *table.words.values()])


def papers():
    """{key of a file's kind: (heading it stands under, its name)}; a drawing that is also paper is named once."""
    found = {}
    for heading, rows in TAKEN:
        for name, key, _ in rows:
            found.setdefault(key, (heading, name))
    return found


def entries():
    """[[id on the page, what it is, room, name, other names, sentence]]; of equal finds the first one comes first."""
    tables, charts = catalogue.TABLES.values(), catalogue.CHARTS.values()
    found = [list(tool) for tool in TOOLS]
    found += [[f"job-{job.key}", "job", "start", job.name, "", units.in_both_measures(job.sentence)] for job in JOBS]
    found += [[f"set-{s.key}", "setting", s.room, s.label, "", units.in_both_measures(s.help)] for s in SETTINGS]
    found += [
        [f"answer-{a.key}", "number", a.room, a.label, "", units.in_both_measures(a.meaning)]
        for a in catalogue.ANSWERS.values()
    ]
    found += [[f"check-{c.key}", "check", c.room, c.label, "", ""] for c in catalogue.CHECKS.values()]
    found += [[f"table-{t.key}", "table", t.room, title(t), "", written(t)] for t in tables]
    found += [[f"figure-{c.key}", "chart", c.room, title(c), "", ""] for c in charts]
    found += [
        [f"figure-{d.key}", "drawing", d.room, title(d), "", ""] for d in map(catalogue.DRAWINGS.get, SHOWN_DRAWINGS)
    ]
    found += [[f"paper-{key}", "paper", "", name, "", heading] for key, (heading, name) in papers().items()]
    found += [
        [f"part-{key}", "part", "feed", name[0].upper() + name[1:], "", why] for key, (name, _, why) in PARTS.items()
    ]
    found += [[f"sign-{key}", "sign", "fire", sign, "", do] for key, (sign, do, _, _) in SIGNS.items()]
    other = called()
    unknown = other.keys() - {entry[0] for entry in found}
    assert not unknown, sorted(unknown)
    return [[*entry[:4], entry[4] or other.get(entry[0], ""), entry[5]] for entry in found]
