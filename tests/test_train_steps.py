"""The gas train as a table of what is open: where gas comes, whether the relay's coil holds; and the lighting card done
by it, step by step, so that each step can be done and each trial of a valve or a guard can fail."""

import re

import pytest
from designs import solved
from test_lighting_card import IN_HAND

from burnercalc.build_sheet import POWER_OFF, proved, shown_by_fire
from burnercalc.jobs import JOBS

OVEN = {"chamber_length": "36 in", "chamber_width": "24 in", "chamber_height": "24 in", "opening_area": "20 in2"}
COOL = {
    **OVEN,
    "lining": "ifb_23 4 1/2 in, blanket_8lb 2 in",
    "chamber_temperature": "1350 degF",
    "work_temperature": "1300 degF",
    "work_rate": "40 lb/h",
    "firing_rate": "110 kBtu/h",
    "heat_up_time": "3 h",
    "low_fire": "30 %",
}
HOUSE = {"fuel": "natural_gas", "port_diameter": "3/8 in", "ports_per_row": "6", "firing_rate": "110 kBtu/h"}
LIT = {
    "cylinder, stand": {},
    "cylinder, hand": IN_HAND,
    "cylinder, guard": {**COOL, "lit_by": "guard"},
    "tank, guard": {"cylinder": "tank", "lit_by": "guard"},
    "several, guard": {"cylinder_count": "2", "burner_count": "2", "lit_by": "guard"},
    "line, stand": HOUSE,
    "line, hand": {**HOUSE, "lit_by": "hand"},
    "line, guard": {**HOUSE, "lit_by": "guard"},
    "line of propane, stand": {"gas_from": "line"},
    "line of propane, guard": {"gas_from": "line", "lit_by": "guard"},
    "line of 14 in, guard": {**HOUSE, "lit_by": "guard", "line_pressure": "14 inH2O"},
}
COCKS = ("isolating_cock", "cock", "pilot_cock")


class Bench:
    """A train: what stands in its gas line in order, cocks, switches, RESET and PILOT, what burns. `sees` and
    `sees_pilot` are what the sensors of main flame and pilot take for theirs; those of a good guard are its own flame.
    `stuck`: a switch that lets go of nothing, or a valve that stays open.
    """

    def __init__(self, order, guard, sees=("main",), sees_pilot=("pilot",), stuck=()):
        self.order, self.guard, self.sees, self.sees_pilot = order, guard, {*sees}, {*sees_pilot}
        self.stuck = {*stuck}
        self.open, self.pressed, self.burning = set(), set(), set()
        self.power = self.air = self.torch = self.relay = self.trial = self.pilot_valve = self.new = False

    def gas_at(self, key):
        """Whether gas comes as far as that part, by all that stands before it."""
        before = self.order[: self.order.index(key)]
        shut = [one for one in before if one in ("isolating_cock", "cock") and one not in self.open]
        return (
            "source" in self.open and not shut and ("solenoid" not in before or self.relay or "solenoid" in self.stuck)
        )

    @property
    def switches(self):
        """The row that both valves hang on: power, the air switch, on a line the low-gas switch."""
        low = "low_gas_switch" in self.order and "low_gas_switch" not in self.stuck
        return self.power and (self.air or "air" in self.stuck) and (not low or self.gas_at("low_gas_switch"))

    @property
    def to_burner(self):
        return self.gas_at("jet_holder")

    @property
    def to_pilot(self):
        return (
            self.guard
            and self.gas_at("pilot_cock")
            and "pilot_cock" in self.open
            and (self.pilot_valve or "pilot_valve" in self.stuck)
        )

    def seen(self, sensor):
        there = {*self.burning, *(["torch"] if self.torch else [])}
        return "dead" in sensor or bool(sensor & there)

    def settle(self):
        """Gas, flames, sensors and valves go on till none moves any more."""
        for _ in range(20):
            was = (self.relay, self.pilot_valve, self.trial, *sorted(self.burning))
            pilot_seen = self.guard and self.seen(self.sees_pilot)
            self.pilot_valve = (
                self.guard and self.switches and ("PILOT" in self.pressed or (self.pilot_valve and pilot_seen))
            )
            # RESET starts the trial, where there is a pilot while that is seen; a timer ends it, held or not.
            self.trial = self.switches and (self.trial or (self.new and (pilot_seen or not self.guard)))
            self.new, bridged = False, self.trial
            held = self.relay and self.seen(self.sees)
            self.relay = self.switches and (bridged or held)
            lights = {"pilot"} if self.to_pilot and (self.torch or "pilot" in self.burning) else set()
            if self.to_burner and (self.torch or lights or "main" in self.burning):
                lights |= {"main"}
            self.burning = lights
            if was == (self.relay, self.pilot_valve, self.trial, *sorted(self.burning)):
                return self
        raise AssertionError("it chatters")

    def do(self, *keys, opened=True):
        assert all(key == "source" or key in self.order for key in keys)
        self.open = self.open | {*keys} if opened else self.open - {*keys}
        return self.settle()

    def press(self, button):
        self.new = button == "RESET" and button not in self.pressed
        self.pressed.add(button)
        return self.settle()

    def let_go(self, button):
        self.pressed.discard(button)
        return self.settle()

    def wait(self):
        """Until the timers have run out."""
        self.trial = False
        self.pressed.discard("PILOT")
        return self.settle()

    def turn(self, **what):
        for name, value in what.items():
            setattr(self, name, value)
        return self.settle()


def order_of(result):
    return [part.key for part in result.part("train").parts if part.stretch == "gas"]


def bench(result, **sensors):
    return Bench(order_of(result), result.design.lit_by == "guard", **sensors)


def rows_of(result):
    return {row[0]: row[1] for row in result.tables["lighting_card"].rows}


def in_order(text, *words):
    """The words stand in the text, one behind the other."""
    at = 0
    for one in words:
        found = text.find(one, at)
        assert found >= 0, (one, text[at:])
        at = found + len(one)


def opened(found, result):
    """What the card has open before the guard is tried, and no more."""
    cocks = [key for key in ("isolating_cock", "pilot_cock") if key in found.order]
    return found.do("source", *cocks)


def purged(result, **sensors):
    found = bench(result, **sensors).turn(power=True, air=True)
    assert not found.to_burner and not found.to_pilot and not found.relay and not found.pilot_valve
    return found


def told_open(result):
    """How the card names what is opened."""
    source = "tank" if result.design.cylinder == "tank" else "cylinder"
    source = "every cylinder" if source == "cylinder" and result.design.cylinder_count > 1 else source
    line, guard = result.part("gas_line").there, result.design.lit_by == "guard"
    named = "isolating cock" if line else f"{source} and isolating cock" if guard else source
    return f"{named} open"


def torch_tried(result, **sensors):
    """Whether the valve is shut again after the trial of the card's row, done as it stands there."""
    words, trial_s = rows_of(result)["Torch first"], result.part("lighting_card").trial_s
    in_order(words, "amper to LIGHT", f"{told_open(result).capitalize()}, firing cock shut", "torch",
             "Try the guard: RESET, held on, opens the valve", f"must snap shut {trial_s:.0f} s after all the same",
             "no gas")  # fmt: skip
    found = opened(purged(result, **sensors).turn(torch=True), result).press("RESET")
    assert found.relay and not found.to_burner and not found.burning  # the step can be done, and no gas comes
    found.wait()
    assert "RESET" in found.pressed
    assert found.switches  # so it is the guard that shut it, and nothing else
    return not found.relay


def pilot_tried(result, **sensors):
    """(shut with no pilot, pilot burning, shut again after the trial with the pilot alone)."""
    words, trial_s = rows_of(result)["Pilot first"], result.part("lighting_card").trial_s
    in_order(words, "amper to LIGHT", f"{told_open(result).capitalize()}, firing cock shut", "the pilot's cock open",
             "RESET: no valve may open", "A lit torch", "then PILOT held: its own valve opens",
             "let go: it must burn on",
             "Not alight in 10 s, or out: pilot's cock shut", "Now RESET: the main valve opens",
             f"must snap shut {trial_s:.0f} s after", "no gas")  # fmt: skip
    found = opened(purged(result, **sensors), result)
    assert not found.to_pilot
    nothing = not found.press("RESET").let_go("RESET").relay
    found.wait()
    assert found.switches
    found.turn(torch=True).press("PILOT")
    lit = found.burning == {"pilot"}
    found.let_go("PILOT").turn(torch=False)
    stays = found.burning == {"pilot"}
    found.press("RESET").let_go("RESET")
    assert found.relay and not found.to_burner  # open, the firing cock holds the gas
    found.wait()
    assert found.switches and found.to_pilot
    return nothing, lit and stays, not found.relay, found


@pytest.mark.parametrize("name", LIT)
def test_each_step_of_the_lighting_card_can_be_done(name):
    """From every cock shut to high fire, to the flame's going out, to shut down: gas comes where the card says, and
    nowhere before."""
    r = solved(**LIT[name])
    rows, guard = rows_of(r), r.design.lit_by == "guard"
    assert "every gas cock shut" in rows["Before"] and rows["Purge"].startswith("Gas shut")
    hiss = f"First {r.part('lighting_card').hiss_s:.0f} s"
    if guard:
        *tried, found = pilot_tried(r)
        assert tried == [True, True, True]
        found.press("RESET").let_go("RESET")
    else:
        assert torch_tried(r)
        found = opened(purged(r).turn(torch=True), r)
        found.press("RESET").let_go("RESET")
    in_order(rows[hiss], f"RESET, which gives {r.part('lighting_card').trial_s:.0f} s", "Snap the firing cock open")
    assert not found.to_burner
    found.do("cock")
    assert found.to_burner and "main" in found.burning
    found.let_go("RESET")
    found.wait()
    assert found.burning >= {"main"} and found.relay  # and goes on by itself
    for out in ({"power": False}, {"air": False}):  # both valves shut, and a hand alone opens them again
        other = bench(r).turn(power=True, air=True, torch=not guard)
        other.open, other.relay, other.pilot_valve, other.burning = found.open, True, guard, {*found.burning}
        assert other.settle().relay
        other.turn(**out, torch=False)
        assert not other.relay and not other.pilot_valve and not other.burning
        assert not other.turn(power=True, air=True).relay and not other.pilot_valve
    down = rows["Shut down"]
    several = r.design.burner_count > 1
    cocks = "at every burner's firing cock first" if several else "at the firing cock first"
    in_order(down, cocks, "the valve must follow 1 s after the flame", "Then")
    if not guard:
        found.turn(torch=False)
    found.do("cock", opened=False)
    assert "main" not in found.burning and not found.relay
    if r.part("gas_line").isolated(r.design.lit_by):
        assert found.switches  # the guard shut it, and no switch did
        assert "isolating cock" in down.split("Then", 1)[1]
    if guard:
        in_order(down, "the pilot's cock, and its valve must follow", "isolating cock")
        assert found.to_pilot and found.burning == {"pilot"}
        found.do("pilot_cock", opened=False)
        assert not found.pilot_valve and not found.burning and found.switches


@pytest.mark.parametrize("name", LIT)
def test_each_trial_of_the_card_can_fail(name):
    """A guard whose main sensor sees torch or pilot, or is stuck; a pilot's sensor that is stuck: each is found by a
    trial before gas, and by the valve that does not follow when it is shut down."""
    r = solved(**LIT[name])
    if r.design.lit_by == "guard":
        assert pilot_tried(r, sees=("main", "pilot"))[:3] == (True, True, False)
        assert pilot_tried(r, sees=("dead",))[2] is False
        assert pilot_tried(r, sees_pilot=("dead",))[0] is False
    else:
        assert torch_tried(r, sees=("main", "torch")) is False
        assert torch_tried(r, sees=("dead",)) is False
    keeper = "pilot" if r.design.lit_by == "guard" else "torch"
    for sees in (("main", keeper), ("dead",)):
        found = bench(r, sees=sees)
        found.open = {"source", *(key for key in COCKS if key in found.order)}
        found.power = found.air = found.relay = True
        found.pilot_valve = keeper == "pilot"
        found.torch, found.burning = keeper == "torch", {"main", keeper} - {"torch"}
        assert found.settle().relay and "main" in found.burning
        found.do("cock", opened=False)
        assert "main" not in found.burning and found.relay  # it does not follow: found out


def test_what_stood_before_proved_nothing():
    """The one cock before low-gas switch and pilot: shut, a guard that sees the torch passes, and no pilot has gas."""
    line = ["cock", "trap", "low_gas_switch", "solenoid", "reset", "flame_guard", "needle", "jet_holder"]
    found = Bench(line, False, sees=("main", "torch")).turn(power=True, air=True, torch=True).do("source")
    assert not found.press("RESET").let_go("RESET").relay and not found.switches
    for first in (["cock", "trap", "low_gas_switch"], ["cock", "filter"]):
        order = [*first, "pilot_cock", "pilot_valve", "pilot", "solenoid", "needle", "jet_holder"]
        found = Bench(order, True).turn(power=True, air=True, torch=True).do("source", "pilot_cock").press("PILOT")
        assert not found.to_pilot


@pytest.mark.parametrize("name", LIT)
def test_the_order_of_the_train(name):
    """Isolating cock, low-gas switch, pilot's tee, main valve, firing cock, needle, jet; a torch on cylinders has one
    cock, for there it proves its guard as it is."""
    r = solved(**LIT[name])
    order, line, guard = order_of(r), r.part("gas_line").there, r.design.lit_by == "guard"
    wanted = ["isolating_cock"] * (line or guard) + ["cock"] * (not line and not guard)
    wanted += ["trap" if line else "filter"] + ["low_gas_switch"] * line
    wanted += ["pilot_cock"] * guard + ["pilot_regulator"] * (guard and not line)
    wanted += ["pilot_valve", "pilot"] * guard + ["solenoid", "reset", "flame_guard"]
    wanted += ["cock"] * (line or guard) + ["needle", "check_valve"]
    known = {*wanted, *COCKS, "pilot_regulator", "pilot_valve", "pilot", "trap", "filter", "low_gas_switch"}
    assert [key for key in order if key in known] == wanted


def test_a_pilot_has_a_regulator_where_there_is_more_than_it_takes():
    """Half a psi is the most that appliances take (memory): a cylinder's regulator gives ten times that, a line of
    7 or 14 in H2O does not, one of 2 psi does."""
    high = {"fuel": "natural_gas", "gas_pressure": "2 psi", "line_pressure": "3 psi", "lit_by": "guard"}
    for texts, out in (({"lit_by": "guard"}, "11 in H₂O out"), (high, "7 in H₂O out"), (LIT["line, guard"], None)):
        r = solved(**texts)
        rows = {part.key: row for part, row in zip(r.part("train").parts, r.tables["gas_train"].rows)}
        assert ("pilot_regulator" in rows) is (out is not None)
        assert (r["regulator_pressure"] > 14 * 249.089) is (out is not None)
        if out:
            size = rows["pilot_regulator"][3]
            assert out in size and "or as the pilot is marked" in size
    metric = solved(lit_by="guard", units="mm")
    rows = {part.key: row for part, row in zip(metric.part("train").parts, metric.tables["gas_train"].rows)}
    assert "37 mbar out" in rows["pilot_regulator"][3]


@pytest.mark.parametrize("name", [name for name in LIT if "guard" in name])
def test_the_guard_and_the_pilot_are_listed_as_the_card_uses_them(name):
    """One sensor must see the pilot, which the list forbade; it watches as long as gas flows, which the list ended at
    the glow; and burnt gas at a pilot's air holes puts it out."""
    r = solved(**LIT[name])
    why = {part.key: row[7] for part, row in zip(r.part("train").parts, r.tables["gas_train"].rows)}
    guard, pilot = why["flame_guard"], why["pilot"]
    in_order(guard, "One sensor sees the pilot", "The other, at the port farthest off", "neither pilot nor neighbour",
             "as long as gas flows")  # fmt: skip
    assert "walls glow" not in guard and "torch" not in guard
    assert "air holes stay outside" in pilot and "air holes outside" in rows_of(r)["Pilot first"]
    in_order(why["reset"], "RESET bridges the main sensor", "only while the other sees the pilot",
             "PILOT bridges for 10 s at most")  # fmt: skip


@pytest.mark.parametrize("name", LIT)
def test_the_seconds_of_a_trial_are_enough_to_light_and_no_more_than_is_counted(name):
    """RESET, a second to snap the cock, the mixture's way to the face, half a second to see it: within the guard's
    trial, of a timer that is sold, which is what the check of the trial counts as let in."""
    card = solved(**LIT[name]).part("lighting_card")
    assert 1.0 + card.arrives_s + 0.5 <= card.trial_s + 1e-9
    assert card.let_in == pytest.approx(card.trial_s / card.fills_s)


@pytest.mark.parametrize("name", LIT)
def test_record_and_operating_card_try_the_same(name):
    """With which cock shut, what must happen; and the power's trial where the valve can be open for it."""
    r = solved(**LIT[name])
    guard, line = r.design.lit_by == "guard", r.part("gas_line").there
    record = shown_by_fire(r)
    plate = " ".join(shape.text for shape in r.drawings["operating_card"].shapes if hasattr(shape, "text"))
    assert record[0].startswith("Firing cock shut, RESET: no pilot, nothing" if guard else "Firing cock shut, torch")
    assert "valve shuts in 1 s" in record[-1]
    assert POWER_OFF in record and "low-gas switch" in plate if line else "low-gas switch" not in plate
    if guard:
        assert f": off after {r.part('lighting_card').trial_s:.0f} s" in record[0]
        in_order(plate, "Firing cock shut", "isolating cock and pilot's cock open", "A lit torch at the pilot",
                 "then PILOT held, 10 s at most", "RESET", "snap the firing cock open")  # fmt: skip
    else:
        in_order(plate, f"{told_open(r)}, RESET, at once snap the firing cock open")
        assert f"RESET held, off after {r.part('lighting_card').trial_s:.0f} s" in record[0]
    several = r.design.burner_count > 1
    cocks = "every firing cock" if several else "the firing cock"
    in_order(plate, f"Stop: snap the gas shut at {cocks}, then",
             *(["the pilot's cock"] if guard else []), "isolating cock" if line or guard else "cylinder")  # fmt: skip
    assert "the guard, firing cock shut, as the lighting card has it" in plate
    words = " ".join((*rows_of(r).values(), plate))
    assert not re.search(
        r"burner's cock|(?<!firing )(?<!every gas )(?<!pilot's )(?<!small gauge's )\bcock (?:open|shut)(?=[:;.])", words
    )


def held(result, stuck=(), air=True, line=True):
    """What opens before any flame, the firing cock shut, with the button of the record held."""
    found = bench(result, stuck=stuck).turn(power=True, air=air).do("source")
    if "isolating_cock" in found.order and line:
        found.do("isolating_cock")
    (told,) = (one for one in proved(result) if one.startswith("Firing cock shut, blower alone off"))
    button = re.search(r"([A-Z]+): no valve", told)[1]
    found.press(button)
    return found.relay or found.pilot_valve


@pytest.mark.parametrize("name", LIT)
def test_each_switch_is_proved_by_the_valve_that_it_drops(name):
    """That an air switch opens says not that the valve hangs on it, and the power's trial takes blower and relay
    together. RESET opens nothing without a pilot, with or without air: there it is PILOT. A line's low-gas switch was
    named nowhere."""
    r = solved(**LIT[name])
    assert held(r) and not held(r, air=False) and held(r, stuck=("air",), air=False)
    line = r.part("gas_line").there
    told = [one for one in proved(r) if "Isolating cock shut, no pressure" in one]
    assert len(told) == line
    if line:
        assert not held(r, line=False) and held(r, stuck=("low_gas_switch",), line=False)


@pytest.mark.parametrize("name", LIT)
def test_a_valve_that_sticks_open_is_found(name):
    """By ear alone, with the firing cock shut: no gas comes to the jet whether the valve sticks or not. At the jet, no
    button held, and at a flame with the power off it is found."""
    r = solved(**LIT[name])
    (seat,) = (one for one in proved(r) if "bubble at" in one)
    assert seat.startswith("Cocks open, no") and "no bubble" in seat
    guard = r.design.lit_by == "guard"
    for stuck in ((), ("solenoid",), *((("pilot_valve",),) if guard else ())):
        found = opened(bench(r, stuck=stuck).turn(power=True, air=True), r)
        assert not found.to_burner or "cock" not in found.order[: found.order.index("jet_holder")]
        found.do("cock")
        assert (found.to_burner, found.to_pilot or False) == ("solenoid" in stuck, "pilot_valve" in stuck)
        assert ("pilot" in seat) is guard
        lit = bench(r, stuck=stuck).turn(power=True, air=True)
        lit.open = {"source", *(key for key in COCKS if key in lit.order)}
        lit.relay, lit.pilot_valve, lit.burning = True, guard, {"main", *(["pilot"] if guard else [])}
        assert "main" in lit.settle().burning
        assert bool(lit.turn(power=False).burning) is bool(stuck)
    assert POWER_OFF in shown_by_fire(r)


def words_of(result):
    """(lighting card's rows, operating card) in words."""
    shapes = result.drawings["operating_card"].shapes
    return rows_of(result), " ".join(shape.text for shape in shapes if hasattr(shape, "text"))


def test_a_reset_that_is_tied_down_holds_no_valve_open():
    """Without a timer it held it open over a fire that is out; and the relay that is bought has one."""
    for held in (True, False):
        found = opened(purged(solved()).turn(torch=True), solved()).press("RESET").do("cock")
        if not held:
            found.let_go("RESET")
        found.wait()
        assert found.to_burner
        found.turn(torch=False).burning = set()
        assert not found.settle().to_burner
    row = next(row for row in solved().tables["gas_train"].rows if row[2].startswith("lock-out relay"))
    assert "timer" in row[3] and "for its timer's seconds, however long it is held" in row[7]


def test_what_burners_share_is_shut_last():
    """One burner's firing cock and then the cylinders of all fades the others out, and they run back."""
    for texts in (LIT["several, guard"], {"burner_count": "2"}, {"burner_count": "2", "blowers": "each"}):
        card, plate = words_of(solved(**texts))
        in_order(card["Shut down"], "at every burner's firing cock first", "Then", "cylinder")
        in_order(plate, "Stop: snap the gas shut at every firing cock, then", "cylinder")
    card, plate = words_of(solved())
    assert "every burner" not in card["Shut down"] and "every firing cock" not in plate


STRAIGHT = {
    **{job.key: job for job in JOBS}["heat_treat"].texts("in", "propane"),
    "chamber_temperature": "1000 degF",
    "work_temperature": "900 degF",
}


def test_the_operating_card_of_a_chamber_that_never_glows_waits_for_no_glow():
    """It said to stay at LIGHT until the walls glow where the lighting card says at most ten minutes: the two agree."""
    for texts in (STRAIGHT, LIT["cylinder, guard"], {}):
        r = solved(**texts)
        card, plate = words_of(r)
        assert ("until the walls glow" in plate) is r.part("lighting").glows
        assert ("10 min at LIGHT at most" in card["It burns"]) is not r.part("lighting").glows
    card, plate = words_of(solved(**STRAIGHT))
    in_order(plate, "4. 10 min at LIGHT at most", "straight up to HIGH gas first")


def test_gas_that_is_turned_down_first_makes_nothing_richer():
    """From 3.3 psi down to 3.1 the mixture is leaner between the valves; from 0.85 up to 5 it is richer."""
    told = rows_of(solved(**STRAIGHT))["High fire"]
    light, high = (getattr(solved(**STRAIGHT).part("fires"), fire).gas_Pa for fire in ("light", "high"))
    assert high < light and "GAS FIRST" in told and "richer" not in told
    assert "GAS FIRST" in rows_of(solved())["High fire"] and "richer for a moment" in rows_of(solved())["High fire"]


@pytest.mark.parametrize("name", LIT)
def test_the_guard_watches_as_long_as_gas_flows_on_every_card(name):
    """It was read as off above the heat that lights gas again; at shut-down the valve must still follow the flame."""
    told = rows_of(solved(**LIT[name]))["Attend"]
    assert told.startswith("The flame guard watches as long as gas flows")
    assert "watches till" not in told


def test_no_burner_stands_without_air_in_the_burnt_gas_of_another():
    """With a blower each no paper had them all on before the first is lit; and the next burner began with a purge, "no
    flame in the chamber", while the first burned."""
    for lit_by, first in (("guard", "Pilot first"), ("stand", "Torch first")):
        for blowers in ("each", "one"):
            card, plate = words_of(solved(burner_count="2", blowers=blowers, lit_by=lit_by))
            next_one = card["The next burner"]
            every = "Every blower on" if blowers == "each" else "Blower on"
            assert first in card and f"rom '{first}' on, no purge" in next_one
            assert card[first].startswith("Every damper to LIGHT, till all burn. ")
            assert next_one.startswith("One blower feeds all. ") is (blowers == "one")
            assert f"{every}, every damper" in card["Purge"] and f"{every}, every damper open" in card["Shut down"]
            assert f"{every}, all dampers at LIGHT before the first burner is lit" in plate
            assert f"{every}, every damper" in plate
    card, plate = words_of(solved())
    assert "very damper" not in card["Purge"] + card["Shut down"] + plate


def test_the_first_guard_is_tried_once_the_second_burns():
    """While it is lit no other burns, so that only the later ones could be tried."""
    for lit_by in ("guard", "stand"):
        told = rows_of(solved(burner_count="2", lit_by=lit_by))["The next burner"]
        in_order(told, "When all burn, each guard again, one by one", "its firing cock shut, RESET")  # fmt: skip
