"""The house itself: parts say what they touch, words are declared once, all is worked out on demand, in any order."""

import ast
import dataclasses
import functools
import inspect
import itertools
import random
import re
import typing
from collections import Counter
from pathlib import Path

import pytest
from designs import FAR_APART

from burnercalc import Design, catalogue, checks, solve, views
from burnercalc.burner import Burner, needs
from burnercalc.catalogue import forms
from burnercalc.catalogue.sentences import Said, said, slots_of, written
from burnercalc.checks.judge import FAULTS, VERDICTS, Judged, judge, ladder
from burnercalc.parts import PARTS
from burnercalc.rooms import ROOMS
from burnercalc.settings import BY_KEY, SETTINGS
from burnercalc.sources import TRUST, Source

ROOT = Path(__file__).parent.parent
KINDS = ("ANSWERS", "CHECKS", "TABLES", "CHARTS", "DRAWINGS")


def annotations(function):
    return typing.get_type_hints(function)


# Parts


@pytest.mark.parametrize("name", PARTS)
def test_a_part_says_what_it_may_touch(name):
    """Each argument is a setting or a part, a part with its record's type; the record is frozen and typed."""
    assert name not in BY_KEY
    function, hints = PARTS[name], annotations(PARTS[name])
    assert function.__name__ == name and function.__module__ == f"burnercalc.parts.{name}"
    record = hints["return"]
    assert dataclasses.is_dataclass(record) and record.__dataclass_params__.frozen
    assert record.__module__ == function.__module__
    for argument in needs(function):
        assert argument in BY_KEY or argument in PARTS, f"{name} takes {argument}"
        assert argument in hints, f"{argument} of {name} has no type"
        if argument in PARTS:
            assert hints[argument] is annotations(PARTS[argument])["return"]


def test_parts_stand_on_each_other_without_a_circle():
    done = set()
    while len(done) < len(PARTS):
        ready = {name for name in PARTS if {n for n in needs(PARTS[name]) if n in PARTS} <= done} - done
        assert ready, set(PARTS) - done
        done |= ready


@pytest.mark.parametrize("registry", [checks.CHECKS, views.TABLES, views.CHARTS, views.DRAWINGS])
def test_verdicts_and_views_say_what_they_may_touch(registry):
    for key, function in registry.items():
        for argument in needs(function):
            assert (
                argument in PARTS
                or argument in BY_KEY
                or argument in ("say", "text_mm", "numbers", "few", "wide", "burns", "stopped")
            ), (
                key,
                argument,
            )
            assert argument in annotations(function), (key, argument)
            if argument in PARTS:
                assert annotations(function)[argument] is annotations(PARTS[argument])["return"]


def test_records_cannot_be_written_to():
    result = solve(Design.from_texts({}))
    for name in ("round", "design", "answers", "parts"):
        with pytest.raises(AttributeError):
            setattr(result, name, True)
    with pytest.raises(AttributeError):
        result.parts.round = True
    with pytest.raises(dataclasses.FrozenInstanceError):
        result.part("face").port_count = 1
    with pytest.raises(TypeError):
        result.answers["port_count"] = 1


# The catalogue


def test_each_key_is_declared_once_in_a_room():
    for kind in KINDS:
        declared = getattr(catalogue, kind)
        assert all(key == one.key and one.room in ROOMS for key, one in declared.items())
    assert {setting.room for setting in SETTINGS} == set(ROOMS)
    assert not set(catalogue.ANSWERS) & set(BY_KEY)
    # A chart, a setting and a drawing that is shown are each an id on the page.
    ids = [*BY_KEY, *catalogue.CHARTS, "face", "section"]
    assert len(ids) == len(set(ids)) and not set(catalogue.CHARTS) & set(catalogue.DRAWINGS)


def test_every_answer_is_an_attribute_of_its_part():
    for answer in catalogue.ANSWERS.values():
        part, attribute = answer.at.split(".")
        record = annotations(PARTS[part])["return"]
        assert attribute in {field.name for field in dataclasses.fields(record)} | set(dir(record)), answer.at


def test_inputs_are_settings_and_answers():
    for answer in catalogue.ANSWERS.values():
        unknown = set(answer.inputs) - set(BY_KEY) - set(catalogue.ANSWERS)
        assert not unknown and answer.inputs and answer.key not in answer.inputs, (answer.key, unknown)
        assert len(set(answer.inputs)) == len(answer.inputs)


def test_each_room_opens_with_a_few_answers():
    """Where one is shown in another's place, they are one."""
    others = {answer.instead for answer in catalogue.ANSWERS.values()}
    for room in ROOMS:
        first = [answer.key for answer in catalogue.ANSWERS.values() if answer.room == room and answer.near == "first"]
        first = [key for key in first if key not in others]
        assert 3 <= len(first) <= 6, (room, first)


def _sources(value):
    if isinstance(value, Source):
        yield value
    elif dataclasses.is_dataclass(value):
        for field in dataclasses.fields(value):
            yield from _sources(getattr(value, field.name))


def test_a_source_has_one_trust():
    said_so = {}
    for kind in KINDS:
        for declared in getattr(catalogue, kind).values():
            for source in _sources(declared):
                assert source.trust in TRUST
                assert said_so.setdefault(source.text, source.trust) == source.trust, source.text


def test_a_source_is_declared_once():
    """No two modules write the same words of a source; what two rooms use stands in sources.py."""
    written = Counter()
    for path in [*(ROOT / "burnercalc" / "catalogue").glob("*.py"), ROOT / "burnercalc" / "sources.py"]:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if (
                isinstance(node, ast.Call)
                and ast.unparse(node.func) == "Source"
                and isinstance(node.args[0], ast.Constant)
            ):
                written[node.args[0].value] += 1
    assert len(written) > 50 and [text for text, times in written.items() if times > 1] == []


UNITS_IN_NAMES = {"length": "m", "long_length": "m", "drill_length": "m", "area": "m2", "volume": "m3", "mass": "kg",
                  "mass_flow": "kg_s", "time": "s", "speed": "m_s", "air_flow": "m3_s", "gas_flow": "m3_s",
                  "power": "W", "power_per_area": "W_m2",
                  "power_per_volume": "W_m3", "energy": "J", "energy_per_volume": "J_m3",
                  "energy_per_mass": "J_kg", "temperature": "K", "pressure": "Pa", "gas_pressure": "Pa",
                  "rate": "1_s"}  # fmt: skip


def test_the_dimension_of_an_answer_is_that_of_its_field():
    """The unit at the end of the field's name is the one its dimension is shown from."""
    for answer in catalogue.ANSWERS.values():
        if answer.dimension in UNITS_IN_NAMES:
            assert answer.at.endswith(f"_{UNITS_IN_NAMES[answer.dimension]}"), (answer.key, answer.at)


# Names of vessels and tables that parts look up in data/.
LOOKED_UP = {" lb", "EU IOELV", "EU short term", "NIOSH REL", "NIOSH ceiling", "not choked"}


@pytest.mark.parametrize("folder", ["parts", "checks"])
def test_no_words_for_people_where_things_are_worked_out(folder):
    """No text with a blank between letters, docstrings apart: what people read is declared in the catalogue."""
    for path in (ROOT / "burnercalc" / folder).glob("*.py"):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        docs = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
        plain = [node for node in ast.walk(tree) if isinstance(node, ast.Constant) and id(node) not in docs]
        texts = {node.value for node in plain if isinstance(node.value, str)}
        found = {text for text in texts if re.search(r"[A-Za-z,.] [A-Za-z{]|^ [a-z]", text)}
        assert found <= LOOKED_UP, (path.name, found)


def test_joined_sources_are_no_surer_than_the_less_sure():
    one, other = Source("a book", "published"), Source("a habit", "common practice")
    assert (one & other).trust == (other & one).trust == "common practice"
    assert (
        str(one) == "a book (published)" and str(Source("a habit, common practice", "common practice")).count("(") == 0
    )


def test_cures_are_settings():
    for check in catalogue.CHECKS.values():
        assert all(setting in BY_KEY for setting, _ in check.cures), check.key


# Sentences


def test_slots_are_typed_and_in_the_readers_units():
    sentence = "{rate:power 2} at {pressure:gas_pressure}, {share:percent 1} over {times:.1f} times {name}"
    slots = {"rate": 29307.1, "pressure": 1743.6, "share": 0.0314, "times": 2.44, "name": "x"}
    assert written(sentence, slots, "in", lambda: True) == "100 kBtu/h at 7.00 in H₂O, 3.1 % over 2.4 times x"
    assert written(sentence, slots, "mm", lambda: True) == "29 kW at 17.4 mbar, 3.1 % over 2.4 times x"
    assert written(sentence, slots, "in") == "100 kBtu/h at 0.253 psi, 3.1 % over 2.4 times x"
    assert slots_of("{rate:power 2} of {name}") == {("rate", "power 2"), ("name", "")}
    with pytest.raises(KeyError):
        written("{nothing:power}", {}, "in")


def test_two_numbers_that_differ_are_not_said_alike():
    """5.0 is not more than 5.0: as many digits as show which of them is more, and no more where they are the same."""
    said = functools.partial(written, unit_system="in", apart=True)
    assert said("{a:.1f} is more than {b:.1f}", {"a": 5.01, "b": 5.0}) == "5.01 is more than 5.00"
    assert said("{a:.1f} is more than {b:.1f}", {"a": 5.0, "b": 5.0}) == "5.0 is more than 5.0"
    assert said("{a:percent} of {b:percent}", {"a": 0.2504, "b": 0.25}) == "25.04 % of 25.00 %"
    lengths = {"a": 0.3070 * 0.0254, "b": 0.3125 * 0.0254}
    assert said("{a:length}, {b:length}", lengths) == "just under 5/16 in, 5/16 in"
    assert written("{a:length}, {b:length}", lengths, "in") == "5/16 in, 5/16 in"
    assert written("{a:length}, {b:length}", lengths, "mm", apart=True) == "7.8 mm, 7.94 mm"
    hot = {"a": 633.1822, "b": 633.15}
    assert said("{a:temperature} over {b:temperature}", hot) == "680.1 °F over 680.0 °F"
    assert said("{a:power 2}, {b:power 3}", {"a": 29307.1, "b": 29000.0}) == "100 kBtu/h, 99.0 kBtu/h"


def sentences(kind, declared):
    """Every declared sentence with cases: {(kind, key, field, case): sentence}."""
    for field in dataclasses.fields(declared):
        words = getattr(declared, field.name)
        if field.name in ("cases", "words", "title", "description"):
            for case, sentence in (words if not isinstance(words, str) else {"": words}).items():
                yield (kind, declared.key, field.name, case), sentence


def apart(ours, theirs):
    """Where two catalogues do not say the same things: keys that only one has, and sentences whose slots differ."""
    mine, other = ({key: slots_of(text) for kind in KINDS for one in book[kind].values()
                    for key, text in sentences(kind, one)} for book in (ours, theirs))  # fmt: skip
    return sorted(key for key in mine.keys() | other.keys() if mine.get(key) != other.get(key))


def test_a_second_language_would_have_to_agree():
    """The same keys and slots; a translation that drops a case or misspells a slot is found."""
    book = {kind: dict(getattr(catalogue, kind)) for kind in KINDS}
    assert apart(book, book) == []
    key, check = next((key, check) for key, check in book["CHECKS"].items() if "{" in check.cases.get("good", ""))
    wrong = {**check.cases, "good": check.cases["good"].replace("{", "{x")}
    other = {**book, "CHECKS": {**book["CHECKS"], key: dataclasses.replace(check, cases=wrong)}}
    assert apart(book, other) == [("CHECKS", key, "cases", "good")]
    less = {name: text for name, text in check.cases.items() if name != "good"}
    other = {**book, "CHECKS": {**book["CHECKS"], key: dataclasses.replace(check, cases=less)}}
    assert apart(book, other) == [("CHECKS", key, "cases", "good")]


def test_texts_are_whole_sentences():
    for check in catalogue.CHECKS.values():
        for case, sentence in check.cases.items():
            assert sentence[0].isupper() or sentence[0] == "{", (check.key, case)
            assert sentence.endswith("."), (check.key, case)


@pytest.mark.parametrize("name", FAR_APART)
def test_no_word_but_values_depends_on_the_design(name):
    """What is declared is the very declaration of the catalogue; slots filled, nothing left open."""
    result = solve(Design.from_texts(FAR_APART[name]))
    for kind in ("answers", "checks", "tables", "charts"):
        for key, thing in getattr(result, kind).items():
            assert thing.declared is getattr(catalogue, kind.upper())[key]
    said_here = [check.text for check in result.checks.values()]
    said_here += [chart.sentence for chart in result.charts.values()]
    said_here += [answer.value for answer in result.answers.values() if isinstance(answer.value, str)]
    assert not [text for text in said_here if "{" in text or "}" in text or "None" in text or not text.strip()]


# The ladder


@pytest.mark.parametrize(
    "value, good, stop, verdict",
    [(5, 5, 2, "good"), (4.9, 5, 2, "caution"), (2, 5, 2, "caution"), (1.9, 5, 2, "stop"), (2, 2, 5, "good"),
     (2.1, 2, 5, "caution"), (5, 2, 5, "caution"), (5.1, 2, 5, "stop"), (-9, 0, float("-inf"), "caution"),
     (9, 0, float("inf"), "caution"), (0, 0, 0, "good"), (-1, 0, 0, "stop")],
)  # fmt: skip
def test_the_ladder(value, good, stop, verdict):
    assert ladder(value, good=good, stop=stop) == verdict


@pytest.mark.parametrize("value, word", [(2, "good"), (2.1, "note"), (5, "note"), (5.1, "caution"), (9, "caution"),
                                         (9.1, "stop")])  # fmt: skip
def test_a_note_lies_between_good_and_caution(value, word):
    assert ladder(value, good=2, note=5, stop=9) == word == ladder(-value, good=-2, note=-5, stop=-9)


def test_a_note_is_no_fault_and_what_hurts_is_told_first():
    result = solve(Design.from_texts({"low_fire": "8 %", "corner_drill": "1 in", "body_width": "3 7/8 in"}))
    told = [(VERDICTS.index(check.verdict), -forms.HARMS.index(check.declared.harm)) for check in result.ranked()]
    assert told == sorted(told, reverse=True) and len(told) == len(result.told)
    first = result.ranked()[0]
    assert (first.verdict, first.declared.harm) == (result.worst, "danger") == ("stop", "danger")
    assert {check.verdict for check in result.checks.values()} == set(VERDICTS)
    for check in result.checks.values():
        assert check.fault == (check.verdict in FAULTS)


def test_notes_alone_leave_a_design_good(monkeypatch):
    result = solve(Design.from_texts({}))
    for key, check in result.checks.items():
        if check.fault:
            monkeypatch.setitem(checks.CHECKS, key, lambda: None)
    result = solve(result.design)
    assert result.checks["shell_touch"].verdict == "note" and result.worst == "good"


def test_within_the_slack_of_a_limit_counts_as_at_it():
    assert ladder(5 - 1e-10, good=5, stop=2, slack=1e-9) == "good"
    assert ladder(2 - 1e-10, good=5, stop=2, slack=1e-9) == "caution"
    assert ladder(5 - 1e-8, good=5, stop=2, slack=1e-9) == "caution"
    assert ladder(2 + 1e-10, good=2, stop=5, slack=1e-9) == "good"


def test_judging_names_the_sentence_and_fills_its_slots():
    assert judge(3, good=5, stop=2, missing=2) == Judged("caution", 3, 5, ("caution",), {"missing": 2})
    assert judge(6, good=5, stop=2, case=("enough", "more")).cases == ("enough", "more")


# On demand, in any order


def test_one_drawing_makes_only_what_it_needs():
    design = Design.from_texts({"firing_rate": "100 kBtu/h"})
    result = solve(design)
    assert result.drawings["template"].shapes
    assert result.parts.made() == {"body", "face", "mould", "pins", "steel", "plenum", "baffle_sheet"}
    result = solve(design)
    assert result["port_area"] > 0 and result.parts.made() == {"face"}
    result = solve(design)
    assert result.checks["curing_air"].verdict and result.parts.made() == {"shop"}


def everything(result, order):
    """{(kind, key): what it says}, looked at in an order of one's own."""
    found = {}
    for kind, key in order:
        thing = getattr(result, kind).get(key)
        match kind:
            case "answers":
                found[kind, key] = thing.value, thing.band
            case "checks":
                found[kind, key] = thing and (thing.verdict, thing.value, thing.text, thing.changes)
            case "tables":
                found[kind, key] = thing.title, thing.rows
            case "charts":
                found[kind, key] = thing.sentence, thing.plot
            case "drawings":
                found[kind, key] = thing.title, thing.description, thing.shapes
    return found


@pytest.mark.parametrize("name", ["default", "round", "house gas, metric"])
def test_no_order_of_looking_changes_anything(name):
    design = Design.from_texts(FAR_APART[name])
    order = [(kind.lower(), key) for kind in KINDS for key in getattr(catalogue, kind)]
    straight = everything(solve(design), order)
    assert len(straight) == len(order)
    for seed in range(3):
        mixed = random.Random(seed).sample(order, len(order))
        assert everything(solve(design), mixed) == straight


@pytest.mark.parametrize("one, other", list(itertools.pairwise(ROOMS)))
def test_two_rooms_can_change_places(one, other):
    """The catalogue collected with two neighbours swapped holds the same declarations; only their order is another."""
    names = list(ROOMS)
    at = names.index(one)
    names[at], names[at + 1] = other, one
    for kind in KINDS[:-1]:
        swapped = catalogue._collected(kind, tuple(names))
        assert swapped == getattr(catalogue, kind)


def test_parts_can_change_places_in_their_list():
    design = Design.from_texts({})
    plain = {answer.key: answer.value for answer in solve(design).answers.values()}
    burner = Burner(design.value)
    for name in reversed(PARTS):
        burner.part(name)
    result = solve(design)
    result.parts._made.update(burner._made)
    assert {answer.key: answer.value for answer in result.answers.values()} == plain


def test_only_parts_that_something_moved_are_made_anew():
    first = solve(Design.from_texts({}))
    everything_in = {name: first.part(name) for name in PARTS}
    second = solve(Design.from_texts({"port_diameter": "5/16 in"}), first)
    kept = {name for name in PARTS if second.part(name) is everything_in[name]}
    assert {"shop", "gas", "chamber", "need", "firing", "mixture"} <= kept
    assert not kept & {"face", "steel", "plenum", "shares", "holding", "blower", "block", "cost"}
    larger = solve(Design.from_texts({"port_diameter": "17/64 in"}), first)
    assert larger.part("schedule") is first.part("schedule")  # led to low fire as well
    third = solve(Design.from_texts({"port_diameter": "5/16 in"}), second)
    assert all(third.part(name) is second.part(name) for name in PARTS)


def test_what_is_taken_over_is_what_would_be_made():
    """Through far-apart designs in turn, each with the one before at hand."""
    before = None
    for texts in FAR_APART.values():
        design = Design.from_texts(texts)
        before = solve(design, before)
        fresh = solve(design)
        assert {key: (a.value, a.band) for key, a in before.answers.items()} == {
            key: (a.value, a.band) for key, a in fresh.answers.items()
        }
        assert [c.text for c in before.checks.values()] == [c.text for c in fresh.checks.values()]


def test_an_answer_that_is_not_finite_is_our_fault(monkeypatch):
    def broken(body_kind: str) -> object:
        return dataclasses.make_dataclass("Broken", ["port_count"])(float("nan"))

    monkeypatch.setitem(PARTS, "face", broken)
    with pytest.raises(ArithmeticError, match="port_count"):
        solve(Design.from_texts({}))["port_count"]


def test_words_of_parts_are_cases():
    assert said("one", rate=1) == Said("one", {"rate": 1})
    assert inspect.isclass(forms.Answer) and VERDICTS == ("good", "note", "caution", "stop")


def test_an_answer_is_no_surer_than_what_goes_into_it():
    """Walked here input by input; the package walks from the answer down."""
    for texts in ({"firing_rate": "auto"}, {"firing_rate": "90 kBtu/h"}):
        result, auto = solve(Design.from_texts(texts)), texts["firing_rate"] == "auto"
        for key, answer in result.answers.items():
            own = TRUST.index(catalogue.ANSWERS[key].source.trust)
            below = [
                TRUST.index(result.answers[name].trust)
                for name in answer.inputs
                if name in result.answers and (auto or name not in catalogue.ANSWERS[key].if_auto)
            ]
            assert TRUST.index(answer.trust) == max([own, *below]), key
            assert answer.weakest.source.trust == answer.trust


def test_a_rate_that_is_typed_is_surer_than_one_from_the_chamber():
    typed, auto = (
        solve(Design.from_texts({"firing_rate": rate})).answers["gas_flow"] for rate in ("90 kBtu/h", "auto")
    )
    assert (typed.trust, typed.weakest.key) == ("published", "gas_flow")
    assert (auto.trust, auto.weakest.key) == ("common practice", "firing_rate_needed")
