"""The command line: `python -m burnercalc sheet|template|...`. Wrong use exits with 2 and is named."""

import argparse
import json
import re
import sys
import tempfile
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any, NoReturn

from .catalogue import TABLES
from .design import Design, following, units_of
from .errors import InputError, InputErrors, printable, require, together
from .files import FILES, PAPERS, PLANS, table_csv
from .find import find, make_good, report, sample, tornado
from .find.begun import begun
from .find.cannot import question
from .find.have import Have, gathered
from .find.score import weights_of
from .find.search import BUDGET
from .find.shops import SHOPS
from .jobs import refitted
from .link import LONGEST_HAVE, accepted, beside, from_link, holds_a_design, read_beside, to_link
from .result import solve
from .settings import BY_KEY, SETTINGS
from .sheet import as_data, as_text, table_text
from .units import DIMENSIONS, dotted

FORMATS = ("svg", "dxf", "csv", "json")
LONGEST_PROGRESS = 79  # characters of the line that tells of it
STEPS_A_LINE = 250  # of a search, where each line that tells of it stays
LONGEST_SITE = 1000  # characters; a QR code with the link must hold them
WIDEST = max(len(setting.key) for setting in SETTINGS)


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):  # a terminal that lacks a sign such as the 2 of H2O shows a ? for it
            stream.reconfigure(errors="replace")
    arguments = _parser().parse_args(argv)
    try:
        code: int = arguments.run(arguments)
        if sys.stdout:
            sys.stdout.flush()
        return code
    except (InputError, InputErrors) as refused:
        print(refused, file=sys.stderr)
        return 2
    except BrokenPipeError:  # the reader, such as head, has had enough
        _let_go()
        return 0
    except OSError as trouble:
        _let_go()
        print(printable(f"{trouble.filename or 'output'}: {trouble.strerror}"), file=sys.stderr)
        return 2


def _let_go() -> None:
    """Close an output that takes nothing more, so that Python does not try once more at its end."""
    try:
        sys.stdout.flush()
    except OSError:
        with suppress(OSError):
            sys.stdout.close()


class _Parser(argparse.ArgumentParser):
    """A parser that says what is wrong in one line."""

    def error(self, message: str) -> NoReturn:
        said = printable(" ".join(message.split()))
        self.exit(2, f"{self.prog}: {said} ({self.prog} --help tells more)\n")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(prog="burnercalc", description="Design a forced-air, premixed, multi-port gas burner.")
    commands = parser.add_subparsers(required=True, metavar="command")
    sheet = _command(commands, "sheet", _sheet, "the design as a text sheet or JSON")
    form = sheet.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="JSON instead of text, SI numbers")
    form.add_argument("--pdf", metavar="FILE.pdf", help="the build sheet as a PDF instead of text")
    form.add_argument("--all", action="store_true", help="every setting, answer and check, not the first ones alone")
    _paper(sheet)
    _force(sheet)
    template = _command(commands, "template", _template, "templates as a PDF, true to size")
    template.add_argument(
        "--plan",
        choices=(*PLANS, "all"),
        default="template",
        help="which part; template is the drilling of the mould base, all is every one but the mould, whose boards are "
        "cut by their list",
    )
    _paper(template)
    template.add_argument("-o", "--output", required=True, metavar="FILE.pdf")
    _force(template)
    card = _command(commands, "card", _card, "the lighting card as a PDF, to hang up beside the burner")
    _paper(card)
    card.add_argument("-o", "--output", required=True, metavar="FILE.pdf")
    _force(card)
    goes_with = _command(commands, "traveller", _traveller, "pages that go with each burner through the shop, as a PDF")
    _paper(goes_with)
    goes_with.add_argument("-o", "--output", required=True, metavar="FILE.pdf")
    _force(goes_with)
    plates = _command(commands, "plates", _plates, "data plate and operating card as a PDF, true to size")
    _paper(plates)
    plates.add_argument("-o", "--output", required=True, metavar="FILE.pdf")
    _force(plates)
    shopping = _command(commands, "shopping", _shopping, "what to buy, and what one costs that is sold, as a PDF")
    _paper(shopping)
    shopping.add_argument("-o", "--output", required=True, metavar="FILE.pdf")
    _force(shopping)
    table = _command(commands, "table", _table, "one table of the design, such as selling_lines or quantity_breaks")
    table.add_argument("--name", choices=tuple(TABLES), required=True, metavar="KEY", help=", ".join(TABLES))
    form = table.add_mutually_exclusive_group()
    form.add_argument("--csv", action="store_true", help="CSV instead of text, SI numbers")
    form.add_argument("--json", action="store_true", help="JSON instead of text, SI numbers")
    export = _command(commands, "export", _export, "plans as SVG or DXF, tables as CSV, the design as JSON")
    export.add_argument("--format", choices=FORMATS, required=True)
    export.add_argument("-o", "--output", default=".", metavar="FOLDER", help="where the files go; default here")
    _force(export)
    calendar = _command(commands, "calendar", _calendar, "the days as an iCalendar file; needs start_date")
    calendar.add_argument("-o", "--output", required=True, metavar="FILE.ics")
    _force(calendar)
    finding = _command(commands, "find", _find, "designs from what lies in the shop; what --set gives is kept")
    finding.add_argument("--have", metavar="FILE", help="what is at hand, a line a kind; see the README")
    finding.add_argument("--weight", nargs="+", action="extend", default=[], metavar="term=number", help="of the score")
    finding.add_argument(
        "--budget",
        type=_budget,
        default=BUDGET,
        metavar="N",
        help="steps at most, each stage its share of them; the answer says how many it took",
    )
    finding.add_argument("--shops", action="store_true", help="sample 100 shops like yours for each design")
    finding.add_argument("--json", action="store_true", help="JSON instead of text")
    good = _command(commands, "good", _good, "few, small changes that turn the checks good, as far as some are found")
    good.add_argument("--mine", nargs="+", action="extend", default=[], metavar="key", help="settings that stay")
    good.add_argument("--json", action="store_true", help="JSON instead of text")
    shops = _command(commands, "shops", _shops, "what if: the design over the tolerances of a shop")
    shops.add_argument("--json", action="store_true", help="JSON instead of text")
    return parser


def _budget(text: str) -> int:
    if not (re.fullmatch("[0-9]{3,6}", text) and 100 <= int(text) <= 100_000):
        raise argparse.ArgumentTypeError("must be a whole number from 100 to 100000")
    return int(text)


def _paper(command: argparse.ArgumentParser) -> None:
    command.add_argument("--paper", choices=PAPERS, default="letter")


def _force(command: argparse.ArgumentParser) -> None:
    command.add_argument("--force", action="store_true", help="write over files that are there already")


def _command(commands: Any, name: str, run: Callable[[argparse.Namespace], int], help: str) -> Any:
    known = "settings:\n" + "\n".join(
        f"  {s.key:<{WIDEST}}  {s.label}, default {s.default or 'none'}" for s in SETTINGS
    )
    command = commands.add_parser(
        name, help=help, description=help, epilog=known, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    command.add_argument("--link", help="start from a shared link")
    command.add_argument(
        "--set",
        action="extend",
        nargs="+",
        default=[],
        metavar="key=value",
        help="change a setting, e.g. --set body_length=9in rows=4",
    )
    command.add_argument("--site", default="", metavar="URL", help="address of the page, put before the link")
    command.set_defaults(run=run)
    return command


def _design(arguments: argparse.Namespace) -> Design:
    """The design of the link with the --set texts over it; everything refused is reported together."""
    texts, errors = _texts(arguments)
    site = arguments.site
    if not (len(site) <= LONGEST_SITE and site.isascii() and site.isprintable() and not set(site) & set("#<> ")):
        errors.append(InputError("--site", site, "must be an address without # and blanks", "https://example.org/"))
    try:
        design = Design.from_texts(texts)
    except InputErrors as refused:
        raise InputErrors(errors + refused.errors) from None
    if errors:
        raise InputErrors(errors)
    _tell_what_goes_with(arguments, texts, design)
    return design


def _tell_what_goes_with(arguments: argparse.Namespace, texts: dict[str, str], design: Design) -> None:
    """What the page sets too for another fuel, or gas from elsewhere; here nothing is set that nobody typed, but it is
    told."""
    tape: dict[str, str] = {key: texts[key] for key in ("units", "sizes") if key in texts}
    before = tape if arguments.link is None else from_link(arguments.link)[0].texts
    was = Design.from_texts(before)
    changed = [key for key in ("fuel", "gas_from") if was.value(key) != design.value(key)]
    if not changed or not sys.stderr:
        return
    supply = design.show(changed[0])
    mine = "" if arguments.link is None else beside(arguments.link).get("mine", "")
    refit = Design.from_texts(refitted(before, texts, mine))
    also = {
        one.key: refit.text(one.key)
        for one in SETTINGS
        if refit.counts(one.key) and refit.value(one.key) != design.value(one.key)
    }
    if also:
        typed = " ".join(f'{key}="{text}"' if " " in text else f"{key}={text}" for key, text in also.items())
        print(printable(f"For {supply} the page sets these too: --set {typed}"), file=sys.stderr)
    typed_here = {item.partition("=")[0] for item in arguments.set}
    if changed == ["gas_from"] and (moved := design.moved_from(was.read_in(design.units), typed_here)):
        print(printable(f"For {supply} these changed too: {'; '.join(moved)}"), file=sys.stderr)


def _texts(arguments: argparse.Namespace) -> tuple[dict[str, str], list[InputError]]:
    """({key: text} of the link with --set over it, what of them is no setting's text)."""
    errors: list[InputError] = []
    texts: dict[str, str] = {}
    if arguments.link is not None:
        design, errors = from_link(arguments.link)
        if not errors and not holds_a_design(arguments.link):
            errors = [InputError("link", arguments.link, "must end in # and the settings of a design", "#v=2")]
        texts.update(design.texts)
    given, said = _equals("--set", arguments.set, {setting.key: setting.default for setting in SETTINGS})
    given = {key: dotted(text) if _number(key) else text for key, text in given.items()}
    mine = "" if arguments.link is None else beside(arguments.link).get("mine", "")
    return following(texts, given, mine), errors + said


def _number(key: str) -> bool:
    """A setting that is one number, in which a comma parts nothing."""
    return key in BY_KEY and BY_KEY[key].dimension in DIMENSIONS


def _equals(option: str, items: Sequence[str], usual: Mapping[str, object]) -> tuple[dict[str, str], list[InputError]]:
    """({key: text} of `key=text` items, those that are none or are given twice)."""
    found: dict[str, str] = {}
    errors = []
    for item in items:
        key, equals, text = item.partition("=")
        if not (equals and key):
            nearest = f"{key}={usual[key]}" if key in usual else ""
            errors.append(InputError(option, item, "must be key=value", nearest))
        elif found.setdefault(key, text) != text:
            errors.append(InputError(key, f"{found[key]} and {text}", "must be set once"))
    return found, errors


def _sheet(arguments: argparse.Namespace) -> int:
    design = _design(arguments)
    if arguments.pdf is not None:
        return _write(design, arguments, f"sheet-{arguments.paper}", arguments.pdf)
    result = solve(design)
    if arguments.json:
        plain = "utf" not in (getattr(sys.stdout, "encoding", None) or "").lower()
        print(json.dumps(as_data(result, arguments.site), indent=1, ensure_ascii=plain))
    else:
        print(as_text(result, arguments.site, arguments.all), end="")
    return 0


def _template(arguments: argparse.Namespace) -> int:
    plan = "templates" if arguments.plan == "all" else arguments.plan
    return _write(_design(arguments), arguments, f"{plan}-{arguments.paper}", arguments.output)


def _card(arguments: argparse.Namespace) -> int:
    return _write(_design(arguments), arguments, f"lighting-card-{arguments.paper}", arguments.output)


def _traveller(arguments: argparse.Namespace) -> int:
    return _write(_design(arguments), arguments, f"traveller-{arguments.paper}", arguments.output)


def _shopping(arguments: argparse.Namespace) -> int:
    return _write(_design(arguments), arguments, f"shopping-{arguments.paper}", arguments.output)


def _table(arguments: argparse.Namespace) -> int:
    """One table of the result, also what stands on no sheet."""
    design = _design(arguments)
    table = solve(design).tables[arguments.name]
    if arguments.json:
        data = {"title": table.title, "columns": [c.key for c in table.columns], "rows": [list(r) for r in table.rows]}
        print(json.dumps(data, indent=1))
    elif arguments.csv:
        print(table_csv(table).decode(), end="")
    else:
        print(table_text(table, design.reader), end="")
    return 0


def _plates(arguments: argparse.Namespace) -> int:
    return _write(_design(arguments), arguments, f"plates-{arguments.paper}", arguments.output)


def _export(arguments: argparse.Namespace) -> int:
    """Every file of one format into a folder; prints their names."""
    design = _design(arguments)
    result, link, folder = solve(design), to_link(design, arguments.site), Path(arguments.output)
    files = {
        folder / name: make(result, link)
        for key, (name, _, make) in FILES.items()
        if key.endswith("-" + arguments.format)
    }
    folder.mkdir(parents=True, exist_ok=True)
    save(files, arguments.force)
    print(*files, sep="\n")
    return 0


def _calendar(arguments: argparse.Namespace) -> int:
    return _write(_design(arguments), arguments, "calendar-ics", arguments.output)


def _write(design: Design, arguments: argparse.Namespace, key: str, path: str) -> int:
    """One of FILES under a name of the user's choice."""
    _, _, make = FILES[key]
    save({Path(path): make(solve(design), to_link(design, arguments.site))}, arguments.force)
    return 0


def _find(arguments: argparse.Namespace) -> int:
    """Designs from what is at hand; what --set gives is mine."""

    def kept() -> list[str]:
        beside = _beside(arguments).get("mine", "").split(",")
        return list(dict.fromkeys([*(item.partition("=")[0] for item in arguments.set), *filter(None, beside)]))

    def shop() -> tuple[Have, list[InputError]]:
        try:
            return gathered(_have_text(arguments), units_of(_texts(arguments)[0]))
        except (InputError, InputErrors) as refused:
            return Have({}, frozenset()), refused.errors

    (design, have), weights = together(
        lambda: question(lambda: _design(arguments), lambda: accepted(_texts(arguments)[0]), kept, shop),
        lambda: _weights(arguments.weight),
    )
    told = _progress()
    answer = find(design, have, weights, arguments.budget, told)
    if told and sys.stderr.isatty():
        print("\r" + " " * LONGEST_PROGRESS, end="\r", file=sys.stderr, flush=True)
    shops = {}
    for n, offer in enumerate(answer.offers if arguments.shops else ()):
        if sys.stderr:
            print(f"design {n + 1} of {len(answer.offers)} in {SHOPS} shops", file=sys.stderr, flush=True)
        shops[n] = sample(offer.design)
    asked = report.asked(begun(design, have.mine), have)
    if arguments.json:
        print(json.dumps({"asked": asked, **report.as_data(answer, have, arguments.site, shops)}, indent=1))
    else:
        print("\n".join(asked))
        print(report.as_text(answer, arguments.site, shops), end="")
    return 0


def _progress() -> Callable[[int, int, str], None] | None:
    """Tells somebody who waits how far a search has come: on one line of a terminal, else a line now and then."""
    if not sys.stderr:
        return None
    steps, start, end = (50, "\r", "") if sys.stderr.isatty() else (STEPS_A_LINE, "", "\n")

    def tell(done: int, most: int, so_far: str) -> None:
        if done % steps == 0:
            told = f"{done} of about {most} looked at; {so_far}"
            print(start + told.ljust(LONGEST_PROGRESS if start else 0), end=end, file=sys.stderr, flush=True)

    return tell


def _weights(items: Sequence[str]) -> dict[str, float]:
    given, errors = _equals("--weight", items, weights_of({}))
    if errors:
        raise InputErrors(errors)
    return weights_of(given)


def _beside(arguments: argparse.Namespace) -> dict[str, str]:
    """What the link carries beside the design."""
    return beside(arguments.link) if arguments.link is not None else {}


def _have_text(arguments: argparse.Namespace) -> str:
    """The text of --have, else of the link's list; of one that is too long no more than shows that it is."""
    path = arguments.have
    if path is None:
        return _beside(arguments).get("have", "")
    try:
        with sys.stdin.buffer if path == "-" else open(path, "rb") as file:
            text = file.read(4 * LONGEST_HAVE + 4)
        return text.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise InputError("have", path, "must be a text file (UTF-8)") from None


def _good(arguments: argparse.Namespace) -> int:
    """What mends the design."""
    design, mine = together(lambda: _design(arguments), lambda: _mine(arguments.mine))
    mended = make_good(design, [*_beside(arguments).get("mine", "").split(","), *mine])
    if arguments.json:
        print(json.dumps(report.mended_data(mended, arguments.site), indent=1))
    else:
        print(report.mended_text(mended, arguments.site), end="")
    return 0


def _mine(named: Sequence[str]) -> list[str]:
    mine, faults = read_beside("mine", ",".join(named))
    if faults:
        raise InputErrors(faults)
    return mine.split(",")


def _shops(arguments: argparse.Namespace) -> int:
    """The seeded sample of shops, and the tornado."""
    design = _design(arguments)
    found, swings = sample(design), tornado(design)
    if arguments.json:
        print(
            json.dumps(
                {"sample": report.shops_data(found), "tornado": report.tornado_data(swings, design.reader)}, indent=1
            )
        )
    else:
        print(report.shops_text(found, swings, design.reader), end="")
    return 0


def save(files: Mapping[Path, bytes], force: bool = False) -> None:
    """Write {path: bytes}: each whole or not at all, and none when one is there already, unless by force.

    Each is written beside its place and then moved there. What is no ordinary file, such as /dev/stdout, is written to
    as it is.
    """
    for path in files:
        require(force or not path.is_file(), "file", path, "is there already; --force writes over it")
    for path, data in files.items():
        try:
            if path.exists() and not path.is_file():
                path.write_bytes(data)
                continue
            target = path.resolve()
            with tempfile.TemporaryDirectory(prefix=".burnercalc-", dir=target.parent) as made:
                part = Path(made) / target.name
                part.write_bytes(data)
                part.replace(target)
        except OSError as trouble:
            raise OSError(trouble.errno, trouble.strerror, str(path)) from None
