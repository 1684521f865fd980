"""What was found, as plain data for JSON and as text for the terminal."""

from collections.abc import Iterable, Mapping
from typing import Any

from .. import units
from ..catalogue import CHECKS
from ..catalogue.sentences import pipe_size
from ..checks.judge import VERDICTS
from ..design import Design
from ..link import to_link
from ..parts.gas import gas
from ..result import Checked, Result, solve
from ..settings import BY_KEY
from .answer import ANOTHER_WAY, LEAST_SHOWN, NUMBERS, Answer, Offer, as_typed, shown
from .bill import Bought
from .faults import Fault
from .good import BLOWER, CYLINDERS, Mended, Moved, Tried, verdicts
from .hardy import CARD
from .have import Have, choice_name
from .purchase import Opening
from .score import BAFFLE_HOLE_S, BY_TERM, KINDS, PORT_S, TERMS, TOLD, points, that_count
from .shops import Sample, Swing


def _faults(faults: Iterable[Fault], given: Iterable[Fault] = ()) -> list[dict[str, Any]]:
    """Stops first, and of equals what is `given`: until that is cured nothing else helps."""
    both = [(one, True) for one in given] + [(one, False) for one in faults]
    return [
        {
            "check": one.key,
            "label": one.label,
            "verdict": one.verdict,
            "text": given_text(one) if is_given else one.text,
            "change": [{"label": label, "move": move} for label, move in one.cures],
            "given": is_given,
        }
        for one, is_given in sorted(both, key=lambda each: each[0].verdict != "stop")
    ]


def given_text(fault: Fault) -> str:
    """What no burner changes, and what does."""
    moves = " or ".join(f"{label}, {MOVED[move]}" for label, move in fault.cures)
    return f"{fault.text} No purchase cures this{f'; a setting does: {moves}' if moves else ''}."


def score_words(weights: Mapping[str, float]) -> str:
    """The score, in short: what a point is of each kind stands where the weights are set."""
    kinds = [
        term.kind if weights[term.key] == 1 else f"{term.kind} ({weights[term.key]:g} times)"
        for term in TERMS
        if weights[term.key]
    ]
    by_points = f", then by points for {', '.join(kinds)}" if kinds else ""
    return (
        f"Ranked by fewest stops, then fewest cautions{by_points}. Beside the best stand those that are better in "
        "their kind by a twentieth or a day."
    )


NO_FUEL = (
    "No fuel is set, so your line is taken as one of propane. If it holds natural gas, set the fuel (fuel=natural_gas) "
    "first: through a jet for propane that gas can fill the chamber unlit."
)

ONLY_BY_LINE = "Gas from a cylinder is set, but {} always comes by a line: what is set of cylinders does not count."


def gas_words(design: Design) -> str:
    """What is burnt: a gas by its name, a blend by what is in it."""
    return f"your gas ({design.show('fuel_blend')})" if design.fuel_blend else design.show("fuel")


def asked(design: Design, have: Have | None = None) -> list[str]:
    """What burners are looked for, in sentences: the chamber, the work and the fuel, and how much fire that takes; of a
    line at hand, that nobody has told which gas it holds."""

    def read(key: str) -> str:
        return design.show(key)

    def power(key: str) -> str:
        return units.show(needs[key].value, "power", design.reader)

    needs = solve(design).answers
    round_, works = design.chamber_shape == "cylinder", design.work_rate > 0
    size = f"{read('chamber_diameter')} across, " if round_ else f"{read('chamber_width')} x {read('chamber_height')}, "
    chamber = f"a chamber of {size}{read('chamber_length')} long, {read('chamber_temperature')}"
    work = f"{read('work_rate')} of work at {read('work_temperature')}" if works else "no work"
    making = design.batch_size
    told = [
        f"For {chamber}; {work}; {gas_words(design)}; shop {read('ambient_temperature')}; "
        + (f"{making} burners to make, as set in {BY_KEY['batch_size'].label}." if making > 1 else "1 burner to make.")
    ]
    rate = needs["firing_rate_needed"].value
    if rate is not None:
        parts = [(f"heating up in {read('heat_up_time')} takes", "heat_up_rate"), ("holding it hot", "hold_rate")]
        if works:
            parts.insert(1, ("working", "working_rate"))
        known = [f"{words} {power(key)}" for words, key in parts if needs[key].value is not None]
        heat_up_W = needs["heat_up_rate"].value
        if heat_up_W is not None and heat_up_W > 1.001 * rate:  # what burns well is needed, not what is asked for
            would = f"heating up in {read('heat_up_time')} would take {power('heat_up_rate')}"
            known[0] = f"{would} (more than burns well in so small a chamber)"
        more = rate > 1.001 * max(needs[key].value or 0.0 for _, key in parts)
        rest = "; the rest is for gas that gives off its heat badly" if more else ""
        told.append(f"Fire needed: {power('firing_rate_needed')}; {', '.join(known)}{rest}.")
    if have and have.of("line") and not {"fuel", "fuel_blend"} & {*design.texts, *have.mine}:
        told.append(NO_FUEL)
    from_cylinder = have and "gas_from" in have.mine and design.gas_from == "cylinder"
    if from_cylinder and gas(design.fuel, design.fuel_blend).metered:
        told.append(ONLY_BY_LINE.format(gas_words(design)))
    return told


NO_PURCHASE = (
    "No purchase was found that helps, of one thing or of up to three together. Tried: {}, of each only the likeliest."
)
ON_SCREEN = (
    "The design on screen has fewer faults than any found here. It may use things that are not on your list. Keep it, "
    "and take Make it good for the rest."
)
BOUGHT = "Once it is bought and on the list, find again from that design (--link): then nothing worse is found."
NO_KIND_TO_BUY = "No purchase helps: there is nothing of a kind that is not bought already."
MISSED = "The best of what was looked at; a longer search may find a better one"
FEW = (
    "Nothing else that was looked at is clearly better in a kind, or built another way with no more faults and better "
    "in some number."
)


def numbers(result: Result) -> dict[str, dict[str, Any]]:
    """The four numbers of a design: SI, and as read."""
    return {
        key: {
            "value": result.answers[key].value,
            "unit": result.answers[key].unit,
            "label": result.answers[key].label,
            "text": result.answers[key].brief,
        }
        for key in NUMBERS
    }


def as_data(answer: Answer, have: Have, base: str = "", shops: Mapping[int, Sample] | None = None) -> dict[str, Any]:
    """The whole answer as a JSON-ready dict; `shops`: {place of a design: its sample}."""
    return {
        "score": {"words": score_words(answer.weights), "weights": dict(answer.weights)},
        "have": have.text(),
        "designs": [_offer(offer, base, (shops or {}).get(n)) for n, offer in enumerate(answer.offers)],
        "few": FEW if len(answer.offers) < LEAST_SHOWN else "",
        "given": _faults((), answer.given),
        "in_the_way": _faults(answer.in_the_way, answer.given),
        "no_purchase": no_purchase(answer) if answer.in_the_way and not answer.opening else "",
        "opens": None
        if answer.opening is None
        else {
            "kinds": list(answer.opening.kinds),
            "adds": list(map(list, answer.opening.adds)),
            "head": opening_head(answer),
            "buy": answer.opening.words,
            "price": round(answer.opening.price, 2),
            "said": units.show(answer.opening.price, "price", answer.opening.design.reader),
            "cures": list(answer.opening.cures),
            "helps": list(answer.opening.helps),
            "does": _does(answer.opening),
            "left": _faults(answer.opening.left, answer.given),
            "to_spend": units.show(answer.opening.to_spend, "money", answer.opening.design.reader),
            "whole": _whole(answer.opening),
            "whole_kinds": list(answer.opening.whole.kinds) if answer.opening.whole else [],
            "whole_adds": list(map(list, answer.opening.whole.adds)) if answer.opening.whole else [],
            "whole_settings": dict(answer.opening.whole.design.texts) if answer.opening.whole else None,
            "whole_link": to_link(answer.opening.whole.design, base) if answer.opening.whole else "",
            "link": to_link(answer.opening.design, base),
            "settings": dict(answer.opening.design.texts),
        },
        "complete": answer.complete,
        "missed": "" if answer.complete else MISSED,
        "counts": {
            "judged": answer.counts.nodes,
            "most": answer.counts.most,
            "solved": answer.counts.solves,
            "first_at": answer.first_at,
        },
    }


def title(offer: Offer) -> str:
    first, *also = offer.kinds
    if len(also) == len(that_count(KINDS, offer.design.chamber_shape)):
        return f"{first}, and of these best in every kind"
    if first == ANOTHER_WAY and offer.differs:
        first = f"{first}: {offer.differs}"
    return f"{first}; of these also {', '.join(also)}" if also else first


def dearest(offer: Offer) -> str:
    """The fewest things that make up more than half of what is to be spent; "" of a list of one or two."""
    half, sum_, said = offer.bill.to_spend / 2, 0.0, []
    if len(offer.buys) < 3:
        return ""
    for one in sorted(offer.buys, key=lambda one: -one.price):
        if sum_ > half:
            break
        sum_ += one.price
        said.append(f"{one.words} {units.show(one.price, 'price', offer.design.reader)}")
    return f"More than half of it: {'; '.join(said)}."


UNTOLD = (
    "Your list has none or too few of this, and it may not be bought, yet it is needed: {}. It is in the sum to spend."
)


def untold(offer: Offer) -> str:
    """What must be bought against the list, each by its kind; "" where nothing must."""
    named = [f"{one.key}: {_thing(one, offer.design.reader)}" for one in offer.untold]
    return UNTOLD.format("; ".join(named)) if named else ""


def _offer(offer: Offer, base: str, shops: Sample | None) -> dict[str, Any]:
    return {
        "best_in": list(offer.kinds),
        "title": title(offer),
        "verdict": offer.verdict,
        "own_verdict": offer.own_verdict,
        "verdict_said": verdict_words(offer),
        "link": offer.link(base),
        "settings": dict(offer.design.texts),
        "mine": list(offer.mine),
        "numbers": numbers(offer.result),
        "sizes": _sizes(offer),
        "feed": _feed(offer),
        "terms": {key: offer.terms[key] for key in BY_TERM},
        "points": offer.points,
        "says": says(offer),
        "to_spend": round(offer.bill.to_spend, 2),
        "on_the_list": round(offer.bill.listed, 2),
        "buy": [
            {"what": one.words, "price": round(one.price, 2), "said": _thing(one, offer.design.reader)}
            | ({} if one.used is None else {"used": round(one.used, 2)})
            for one in offer.buys
        ],
        "train": train_parts(offer),
        "dearest": dearest(offer),
        "untold": [{"kind": one.key, "what": one.words, "price": round(one.price, 2)} for one in offer.untold],
        "untold_said": untold(offer),
        "gives_up": list(offer.gives_up),
        "limited_by": offer.limited_by,
        "not_good": _faults(offer.faults),
        "verdicts": dict(verdicts(offer.result)),
        **({} if shops is None else {"shops": shops_data(shops)}),
    }


def shops_data(sample: Sample) -> dict[str, Any]:
    return {
        "shops": sample.shops,
        "good": sample.good,
        "as_set": {"stops": sample.stops, "cautions": sample.cautions},
        "head": sample.head,
        "worst": sample.worst,
        "just": only_just(sample.good, sample.shops),
        "text": sample.sentence,
        "worse": [
            {"check": one.key, "verdict": one.verdict, "shops": one.shops, "text": one.text} for one in sample.worse
        ],
    }


def tornado_data(swings: Iterable[Swing], system: str = "in") -> list[dict[str, Any]]:
    return [
        {
            "number": one.number,
            "over": one.tolerance,
            "low": one.at_low,
            "as_set": one.as_set,
            "high": one.at_high,
            "texts": [number_text(one.number, value, system) for value in (one.at_low, one.as_set, one.at_high)],
        }
        for one in swings
    ]


def as_text(answer: Answer, base: str = "", shops: Mapping[int, Sample] | None = None) -> str:
    """The designs in order, each in a few lines."""
    lines = [score_words(answer.weights), ""]
    for n, offer in enumerate(answer.offers):
        lines.append(f"{n + 1}  {title(offer).upper()}: {verdict_words(offer)}, {points_words(offer, answer.weights)}")
        lines.append(f"   {_sizes(offer)}")
        lines.append(f"   {_feed(offer)}")
        lines.append("   " + "; ".join(f"{one['label']} {one['text']}" for one in numbers(offer.result).values()))
        lines.append("   " + "; ".join(says(offer)))
        lines.append("   buy: " + ("; ".join(_thing(one, offer.design.reader) for one in offer.buys) or "nothing"))
        if dear := dearest(offer):
            lines.append("   " + dear[0].lower() + dear[1:])
        if offer.untold:
            lines.append("   " + untold(offer))
        if offer.gives_up:
            lines.append("   gives up: " + "; ".join(offer.gives_up))
        if offer.limited_by and not offer.faults:
            lines.append("   limited by: " + offer.limited_by)
        lines += [f"   {fault.verdict.upper()} {fault.text}" for fault in offer.faults]
        if shops and n in shops:
            lines.append("   " + shops[n].sentence)
        lines += ["   " + offer.link(base), ""]
    if len(answer.offers) < LEAST_SHOWN:
        lines.append(FEW)
    if answer.given:
        lines.append("What no burner changes:")
        lines += [f"   {fault.verdict.upper()} {given_text(fault)}" for fault in answer.given]
    if answer.in_the_way:
        none = "No design from this shop" if answer.complete else "None of the designs looked at"
        lines.append(f"{none} passes every check. In the way of the best:")
        lines += [f"   {fault.verdict.upper()} {fault.text}" for fault in answer.in_the_way]
        lines += _opening_lines(answer, base)
    proven = "Every design of this shop was looked at or bounded" if answer.complete else MISSED
    whole = "1 design" if answer.counts.solves == 1 else f"{answer.counts.solves} designs"
    lines.append(f"{proven}: {answer.counts.nodes} of {answer.counts.most} steps judged, {whole} solved whole.")
    return "\n".join(lines) + "\n"


def points_words(offer: Offer, weights: Mapping[str, float]) -> str:
    """The points, and how many of them are for faults: that is what designs with as many of them differ in."""
    missed = points({"missed": offer.terms["missed"]}, weights)
    of_them = f", {missed:.2f} of them for what is past its limit" if missed >= 0.005 else ""
    return f"{offer.points:.2f} points{of_them}"


def verdict_words(offer: Offer) -> str:
    """The worst word on a design, and whose it is."""
    if offer.verdict == offer.own_verdict:
        return offer.verdict
    own = {fault.key for fault in offer.faults}
    given = [check.label for check in offer.result.ranked() if check.fault and check.key not in own]
    return f"burner {offer.own_verdict}; no burner changes {', '.join(given)}: {offer.verdict}"


def on_screen(design: Design, answer: Answer) -> str:
    """That the design which the search was asked from has fewer faults than the best found, which may use other things
    than it; "" where it has not."""
    if not answer.in_the_way:
        return ""
    ours, best = (
        [check.verdict for check in result.checks.values()] for result in (solve(design), answer.offers[0].result)
    )
    lacking = len(answer.offers[0].bill.lacking)
    fewer = (ours.count("stop"), ours.count("caution")) < (best.count("stop") + lacking, best.count("caution"))
    return ON_SCREEN if fewer else ""


def no_purchase(answer: Answer) -> str:
    return NO_PURCHASE.format(", ".join(answer.tried)) if answer.tried else NO_KIND_TO_BUY


def opening_head(answer: Answer) -> str:
    """What stands before the purchase."""
    assert answer.opening is not None
    if len(answer.opening.kinds) > 1:
        return "No single purchase of those tried helps as much as these together:"
    stopped = any(fault.verdict == "stop" for fault in (*answer.opening.left, *answer.given))
    return "No single purchase makes it fit to light; most mends" if stopped else "The smallest purchase that helps:"


def _opening_lines(answer: Answer, base: str) -> list[str]:
    opening = answer.opening
    if not opening:
        return [f"{no_purchase(answer)} Say `buy: all` to see what fits then."]
    words = _thing(Bought("", opening.words, opening.price), opening.design.reader)
    left = _faults(opening.left, answer.given)
    spent = units.show(opening.to_spend, "money", opening.design.reader)
    lines = [f"{opening_head(answer)} {words}.{_does(opening)} To spend in all then: {spent}."]
    lines += ["   " + to_link(opening.design, base), BOUGHT]
    if left:
        lines.append("Left in the design that was tried with it (to find the best one, add it to the list):")
        lines += [f"   {one['verdict'].upper()} {one['text']}" for one in left]
    if opening.whole:
        lines.append(f"The smallest found that leaves no fault of the burner: {_whole(opening)}.")
        lines.append("   " + to_link(opening.whole.design, base))
    return lines


def _whole(opening: Opening) -> str:
    """The smallest purchase that leaves nothing, where another leaves something; else ""."""
    if not opening.whole:
        return ""
    return _thing(Bought("", opening.whole.words, opening.whole.price), opening.design.reader)


def _does(opening: Opening) -> str:
    """What a purchase cures, and what it only makes milder."""
    said = (("cures", opening.cures), ("helps, but does not cure", opening.helps))
    return "".join(f" It {verb}: {', '.join(labels)}." for verb, labels in said if labels)


def _thing(one: Bought, system: str) -> str:
    less = one.used is not None and one.used < one.price - 0.005
    used = f" ({units.show(one.used, 'price', system)} worth of it is used up, the rest is left over)" if less else ""
    return f"{one.words} {units.show(one.price, 'price', system)}{used}" if one.price else one.words


def train_parts(offer: Offer) -> list[str]:
    """What is to be bought of the gas and air train, whose three sums the card tells, part by part."""
    burner, design = offer.result.parts, offer.design
    entries = burner.part("cost").entries(burner.part("train"), design.batch_size)
    rows = zip(entries, offer.result.tables["shopping"].rows)
    found = [
        (one, row, int(max(0, one.count - offer.bill.own.get(one.key, 0)))) for one, row in rows if one.part is not None
    ]
    return [
        f"{left} x {row[0]}, {row[1]} {units.show(one.price * left / one.count, 'price', design.reader)}"
        for one, row, left in found
        if left > 0 and one.price
    ]


def says(offer: Offer) -> list[str]:
    """Money and hours of all that are made, and the rest of what it is ranked by."""
    batch, result = offer.design.batch_size, offer.result
    all_of_them = f" for all {batch} made at once" if batch > 1 else ""
    said = {key: shown(BY_TERM[key], offer.terms[key]) for key in that_count(TOLD, result.design.chamber_shape)}
    spent, listed = (
        units.show(each, "money", offer.design.reader) for each in (offer.terms["money"], offer.bill.listed)
    )
    besides = [_thing(one, offer.design.reader) for one in offer.buys if not one.key and one.price]
    split = f" ({listed} on the shopping list, besides {', '.join(besides)})" if besides else ""
    said["money"] = f"{spent} to spend{all_of_them}{split}"
    set_h = result["hours_per_burner"] / 3600
    said["work"] += f"{all_of_them} ({set_h:.3g} h a burner by your hours, {PORT_S / 60:.0f} min a port, "
    said["work"] += f"{BAFFLE_HOLE_S / 60:.0f} min a hole of the baffle)"
    return list(said.values())


def _sizes(offer: Offer) -> str:
    d = offer.design

    def show(key: str) -> str:
        return as_typed(d, key)

    inlet, mix_pipe = (pipe_size(size, d.reader) for size in (d.inlet, d.mix_pipe))
    even = d.pattern == "straight" and d.body_kind != "pipe"
    # Never `4 in a row`, which reads as inches.
    pattern = f"{d.rows} rows{' of' if even else ', the longest of'} {d.ports_per_row}, {show('pattern')}"
    if d.rows == 1 and d.body_kind != "pipe":
        pattern = f"one row of {d.ports_per_row}"
    width, depth, wall, length = map(show, ("body_width", "body_depth", "wall", "body_length"))
    match d.body_kind:
        case "pipe":
            body = f"round pipe {width} x {wall}, {depth} long"
        case "plates":  # never `plates 3 in x 3 in`
            body = f"a box welded of {wall} plate, {width} x {depth} outside, {length} long"
        case _:
            body = f"{show('body_kind')} {width} x {depth} x {wall}, {length} long"
    return (
        f"{d.burner_count} burner{'s' if d.burner_count > 1 else ''}, {body}; lip {show('setback')}; "
        f"ports {show('port_diameter')}, {pattern}; block {show('block_thickness')}; inlet {inlet}, mix pipe {mix_pipe}"
    )


def _feed(offer: Offer) -> str:
    """Blower, jet and gas: what feeds it."""
    d, jet = offer.design, offer.result.part("jet")

    def show(key: str) -> str:
        return as_typed(d, key)

    air = f"{show('blower_shutoff_pressure')} shut, {show('blower_free_flow')} free"
    if d.text("blower_curve"):
        air = f"of the curve {show('blower_curve')}"
    drill = f"jet {jet.drill_name}, " if jet.drill_name else ""
    # Through the drill that is sold high fire takes another pressure than what was set.
    needs = offer.result.answers["jet_gas_pressure"]
    pressure = show("gas_pressure") if needs.value is None else units.show(needs.value, needs.dimension, d.reader)
    told = f"blower {air}; {drill}gas at {pressure}"
    if offer.result.part("gas_line").there:
        return f"{told} from a line of {gas_words(d)} that holds {show('line_pressure')}"
    many = d.cylinder_count > 1
    name = choice_name("cylinder", d.cylinder, d.reader)
    if d.cylinder == "tank":
        return f"{told} from {f'{d.cylinder_count} lying tanks' if many else 'a lying tank'}"
    return f"{told} from {f'{d.cylinder_count} cylinders' if many else 'a cylinder'} of {name}"


def mended_data(mended: Mended, base: str = "") -> dict[str, Any]:
    return {
        "head": head(mended),
        "changes": [
            {
                "setting": one.key,
                "label": one.label,
                "before": one.before,
                "after": one.after,
                "mends": [
                    {"check": kept.key, "label": kept.label, "verdict": kept.verdict, "to_spare": kept.spare}
                    for kept in one.mends
                ],
                "price": None if one.price is None else round(one.price, 2),
                "says": change_said(one, mended),
            }
            for one in mended.changes
        ],
        "held": held_said(mended),
        "just": only_just(mended.held.good, mended.held.shops) if mended.held else "",
        "in_way": list(mended.in_way),
        "in_way_said": in_way_said(mended),
        "mended": [{**fault, "then": then(fault["check"], mended)} for fault in _faults(mended.mended)],
        "worse": [
            {"check": check.key, "label": check.label, "was": was, "then": check.verdict}
            for check, was in worse(mended)
        ],
        "left": _faults(mended.left),
        "tried": {
            fault.key: [tried_text(one) for one in mended.tried if one.fault == fault.label] for fault in mended.left
        },
        "before": dict(verdicts(mended.before)),
        "after": dict(verdicts(mended.after)),
        "link": mended.link(base),
        "settings": dict(mended.after.design.texts),
    }


def head(mended: Mended) -> str:
    """What becomes of all faults, in a sentence; a note is no fault, but nor is it good."""
    noted = any(check.verdict == "note" for check in mended.after.checks.values())
    if not mended.changes:
        if mended.left:
            return "No change was found that helps."
        return "Nothing to change: " + ("there are notes, but no fault." if noted else "every check is good.")
    if mended.left:
        in_all, milder = len(mended.mended) + len(mended.left), sum(_was(one, mended) == "stop" for one in mended.left)
        half = f", {milder} stop{'s become cautions' if milder > 1 else ' becomes a caution'}" if milder else ""
        rest = "; the others stay" if milder < len(mended.left) else ""
        return f"{len(mended.mended)} of {in_all} faults go{half}{rest}."
    return "All faults go; notes stay." if noted else "All checks turn good."


def _was(left: Fault, mended: Mended) -> str:
    """The verdict of a fault that is left, where it was worse; else nothing."""
    was = mended.before.checks.get(left.key)
    return was.verdict if was is not None and was.verdict == "stop" != left.verdict else ""


def mended_text(mended: Mended, base: str = "") -> str:
    lines = [head(mended)]
    for one in mended.changes:
        said = "; ".join(change_said(one, mended))
        lines.append(f"{one.label}: {one.before} -> {one.after}" + (f" ({said})" if said else ""))
    lines += [held_said(mended)] if mended.held else []
    lines += [f"mended, then {then(each.key, mended)}: {each.verdict.upper()} {each.text}" for each in mended.mended]
    lines += [f"worse, {was} before: {check.verdict.upper()} {check.text}" for check, was in worse(mended)]
    for fault in mended.left:
        was = _was(fault, mended)
        lines.append(f"left{f', {was} before' if was else ''}: {fault.verdict.upper()} {fault.text}")
        lines += [f"   {tried_text(one)}" for one in mended.tried if one.fault == fault.label]
    lines += [in_way_said(mended)] if mended.in_way else []
    return "\n".join([*lines, mended.link(base)]) + "\n"


def change_said(one: Moved, mended: Mended) -> list[str]:
    """What is to be bought for a change, and what other changes would spoil without it."""
    said, bought = [], one.key in BLOWER
    if one.price is not None:
        cost = f"costs {units.show(one.price, 'price', mended.after.design.reader)}"
        cost += "" if bought or one.key in CYLINDERS else " more"
        said.append(f"another blower to buy, {cost}" if bought else cost)
    elif bought:
        dear = any(each.key in BLOWER and each.price is not None for each in mended.changes)
        said.append("of the same other blower" if dear else "another blower to buy")
    needed = [kept.label for kept in one.mends if kept.key not in {fault.key for fault in mended.mended}]
    said += [f"at fault without it: {', '.join(needed)}"] if needed else []
    if one.less is not None and mended.held is not None:
        text, good = one.less
        rather = f"at {text}" if text else "without it"
        said.append(f"for shops a little off: {rather}, {good} of {mended.held.shops} would be good")
    return said


def in_way_said(mended: Mended) -> str:
    """What is mine and keeps a fault that stays from being mended."""
    if not mended.in_way:
        return ""
    marked = ", ".join(BY_KEY[key].label.lower() for key in mended.in_way)
    could = ", ".join(fault.label.lower() for fault in mended.could)
    return f"Marked as mine and in the way: {marked}. Not marked so, this can be mended: {could}."


def only_just(good: int, shops: int) -> str:
    """What is said in place of Good of a design that fewer than half the shops make good; else ""."""
    return f"Good, but only just: in {good} of {shops} shops a little off." if 2 * good < shops else ""


def held_said(mended: Mended) -> str:
    """How it does in a few shops a little off; "" where that was not looked at."""
    if mended.held is None:
        return ""
    held = mended.held
    just = "It only just passes. " if only_just(held.good, held.shops) else ""
    tried = f"Built in {held.shops} shops drawn by chance, each a little off in pins, jet, blower, mixture and day"
    said = f"{just}{tried}: good in {held.good}."
    spoilt = ", ".join(f"{_in_shops(key)} in {count}" for key, count in held.spoilt if key in CHECKS)
    return f"{said} At fault in the rest: {spoilt}." if spoilt else said


def _in_shops(key: str) -> str:
    return "Lighting card, made once," if key == CARD else CHECKS[key].label


def then(key: str, mended: Mended) -> str:
    """What a mended check says, and how far inside its limit it is."""
    check = mended.after.checks.get(key)
    kept = next((kept for one in mended.changes for kept in one.mends if kept.key == key), None)
    if check is None:
        return "gone"
    if kept is None or kept.spare is None or check.verdict != "good":
        return check.verdict
    if mended.held is not None and (spoilt := dict(mended.held.spoilt).get(key)):
        return f"good, but at fault in {spoilt} of {mended.held.shops} shops a little off"
    if key == "blower" and check.value is not None:
        return f"good, {1 + check.value:.3g} times its need"
    if kept.spare > 1:
        return "good, well inside its limit"
    return "good, just enough" if kept.spare < 0.005 else f"good, {100 * kept.spare:.0f} % inside its limit"


def worse(mended: Mended) -> list[tuple[Checked, str]]:
    """Checks that say a worse word than before, were it only a note, and what they said, the worst first."""
    before = {key: check.verdict for key, check in mended.before.checks.items()}
    return [
        (check, before[check.key])
        for check in mended.after.ranked()
        if check.key in before and VERDICTS.index(check.verdict) > VERDICTS.index(before[check.key])
    ]


WHY = {
    "mine": "yours, so it stays",
    "asked": "what you asked for, so it stays",
    "place": "what the place gives, so it stays",
    "auto": "follows the rest of the design by itself",
    "end": "goes no further",
    "short": "not enough by itself",
    "loses": "mends it only by losing more heat, which burns more gas",
    "spoils": "mends it, but then something else is wrong ({})",
}
MOVED = {"raise": "more", "lower": "less", "choose": "another"}


def tried_text(one: Tried) -> str:
    """A cure that is no way, and why."""
    return f"{one.label}, {MOVED[one.move]}: {WHY[one.why].format(', '.join(one.spoils))}."


def shops_text(sample: Sample, swings: Iterable[Swing], system: str = "in") -> str:
    """The sample in a sentence and its faults, then each number over each tolerance, the longest swing first."""
    lines = [sample.sentence]
    lines += [f"   {one.verdict.upper()} in {one.shops}; one of them: {one.text}" for one in sample.worse]
    number = ""
    for one in swings:
        if one.number != number:
            number = one.number
            lines += ["", f"{number}: {number_text(number, one.as_set, system)}"]
        low, as_set, high = (number_text(number, value, system) for value in (one.at_low, one.as_set, one.at_high))
        between = f"between {low} and {high}" if {low, high} != {as_set} else "moves it by nothing to speak of"
        lines.append(f"   {one.tolerance:<28}{between}")
    return "\n".join(lines) + "\n"


def number_text(number: str, value: float | None, system: str = "in") -> str:
    """One of the four numbers of the tornado, in words."""
    if value is None:
        return "none"
    match number:
        case "fire at its gas pressure":
            return units.show(value, "power", system)
        case "turndown":
            return f"{value:.1f} to 1"
        case "blower against its need":
            return f"{value:.1f} times"
    return f"{100 * value:.1f} %"
