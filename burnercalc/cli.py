"""The command line: `python -m burnercalc sheet|template|export|calendar`. Wrong input exits with 2 and is named."""

import argparse
import json
import sys
from contextlib import suppress
from pathlib import Path

from .design import Design
from .errors import InputError, InputErrors
from .files import FILES, PAPERS, PLANS
from .link import from_link, to_link
from .result import solve
from .settings import BY_KEY, SETTINGS
from .sheet import as_data, as_text

FORMATS = ("svg", "dxf", "csv", "json")


def main(argv=None):
    """Run one command; returns the exit code."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):  # a terminal that lacks a sign such as the 2 of H2O shows a ? for it
            stream.reconfigure(errors="replace")
    arguments = _parser().parse_args(argv)
    try:
        return arguments.run(arguments)
    except (InputError, InputErrors) as refused:
        print(refused, file=sys.stderr)
        return 2
    except BrokenPipeError:  # the reader, such as head, has had enough
        with suppress(BrokenPipeError):
            sys.stdout.close()
        return 0
    except OSError as trouble:
        print(f"{trouble.filename or 'output'}: {trouble.strerror}", file=sys.stderr)
        return 2


def _parser():
    parser = argparse.ArgumentParser(
        prog="burnercalc", description="Design a forced-air, premixed, multi-port gas burner."
    )
    commands = parser.add_subparsers(required=True, metavar="command")
    sheet = _command(commands, "sheet", _sheet, "the design as a text sheet or JSON")
    sheet.add_argument("--json", action="store_true", help="JSON instead of text, SI numbers")
    sheet.add_argument("--pdf", metavar="FILE.pdf", help="the build sheet as a PDF instead of text")
    _paper(sheet)
    template = _command(commands, "template", _template, "templates as a PDF, true to size")
    template.add_argument(
        "--plan",
        choices=(*PLANS, "all"),
        default="template",
        help="which part; template is the drilling of the mould base",
    )
    _paper(template)
    template.add_argument("-o", "--output", required=True, metavar="FILE.pdf")
    export = _command(commands, "export", _export, "plans as SVG or DXF, tables as CSV, the design as JSON")
    export.add_argument("--format", choices=FORMATS, required=True)
    export.add_argument("-o", "--output", default=".", metavar="FOLDER", help="where the files go; default here")
    calendar = _command(commands, "calendar", _calendar, "the days as an iCalendar file; needs start_date")
    calendar.add_argument("-o", "--output", required=True, metavar="FILE.ics")
    return parser


def _paper(command):
    command.add_argument("--paper", choices=PAPERS, default="letter")


def _command(commands, name, run, help):
    known = "settings:\n" + "\n".join(f"  {s.key:<22}{s.label}, default {s.default or 'none'}" for s in SETTINGS)
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


def _design(arguments):
    """The design of the link with the --set texts over it; everything refused is reported together."""
    errors, texts, given = [], {}, set()
    if arguments.link is not None:
        design, ignored = from_link(arguments.link)
        errors += ignored
        texts.update(design.texts)
    for item in arguments.set:
        key, equals, text = item.partition("=")
        if not (equals and key):
            errors.append(
                InputError("--set", item, "must be key=value", f"{key}={BY_KEY[key].default}" if key in BY_KEY else "")
            )
        elif key in given and texts[key] != text:
            errors.append(InputError(key, f"{texts[key]} and {text}", "must be set once"))
        else:
            given.add(key)
            texts[key] = text
    try:
        design = Design.from_texts(texts)
    except InputErrors as refused:
        raise InputErrors(errors + refused.errors) from None
    if errors:
        raise InputErrors(errors)
    return design


def _sheet(arguments):
    design = _design(arguments)
    if arguments.pdf:
        return _write(design, arguments, f"sheet-{arguments.paper}", arguments.pdf)
    result = solve(design)
    if arguments.json:
        plain = "utf" not in (sys.stdout.encoding or "").lower()
        print(json.dumps(as_data(result, arguments.site), indent=1, ensure_ascii=plain))
    else:
        print(as_text(result, arguments.site), end="")
    return 0


def _template(arguments):
    plan = "templates" if arguments.plan == "all" else arguments.plan
    return _write(_design(arguments), arguments, f"{plan}-{arguments.paper}", arguments.output)


def _export(arguments):
    """Every file of one format into a folder; prints their names."""
    design = _design(arguments)
    result, link, folder = solve(design), to_link(design, arguments.site), Path(arguments.output)
    folder.mkdir(parents=True, exist_ok=True)
    for key, (name, _, make) in FILES.items():
        if key.endswith("-" + arguments.format):
            (folder / name).write_bytes(make(result, link))
            print(folder / name)
    return 0


def _calendar(arguments):
    return _write(_design(arguments), arguments, "calendar-ics", arguments.output)


def _write(design, arguments, key, path):
    """One of FILES under a name of the user's choice."""
    _, _, make = FILES[key]
    Path(path).write_bytes(make(solve(design), to_link(design, arguments.site)))
    return 0
