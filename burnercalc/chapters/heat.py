"""The chamber: where its heat goes, what it needs of the fire, and whether lining and burners stand it."""

from .. import need
from ..physics import chamber, combustion, linings
from ..physics.metals import melt_state, metal
from ..physics.outside import BURN_THRESHOLD_BARE_METAL_K
from ..physics.walls import steady_profile
from ..result import Axis, Chart, Column, Series, Table
from ..units import show

GROUP = "heat"
WALL = (
    "conductivity of each lining over temperature (data/lining_properties.csv: handbook and class data); outside by natural "
    "convection (Churchill and Chu; McAdams) and radiation, emissivity 0.9; edges by shape factors (Langmuir)"
)
OPENING = "radiation through a hole with re-radiating sides (Berman 1965)"
METAL = "heat content of the metals: NASA TP-2002-211556, EN 1993-1-2 for steel, Kopp's rule for alloys"
HEAT_UP = "transient conduction by implicit finite volumes (Patankar 1980), hot face at chamber temperature from the start; dry lining"
BALANCE = "heat balance"
PRACTICE = "common practice, no published source"
TOUCH = "EN ISO 13732-1:2008, bare metal touched for one second"
LARGE = 2.0  # times the need from which a burner counts as much larger than it must be; common practice
FORGING_K = (
    1311.0  # 1900 degF: chambers that run cooler (heat treating) do with less fire for their size; common practice
)

PLACES = (("flue", "flue"), ("wall", "walls"), ("opening", "opening"), ("work", "work"), ("spare", "spare"))
CHAMBER = ("chamber_shape", "chamber_length", "chamber_width", "chamber_height", "chamber_diameter")
SHELL = (*CHAMBER, "lining", "opening_area", "chamber_temperature", "ambient_temperature", "altitude")


def solve(d, r):
    heat, firing = need.chamber_heat(d.value), need.firing(d.value)
    installed_W = r.rate_W * d.burner_count
    balance = chamber.heat_balance(heat, installed_W, r["available_heat"]) if r["available_heat"] is not None else ()
    _losses(d, r, heat)
    _rates(d, r, firing)
    r.answer(
        "firing_per_volume",
        installed_W / heat.volume_m3,
        "power_per_volume",
        "Fire per chamber volume",
        "Gross heat of all burners for one volume of chamber.",
        "firing rate x burners / volume of the chamber",
        ("firing_rate_gross", "burner_count", "chamber_volume"),
        "geometry of the chamber",
    )
    _lining_check(d, r, heat)
    _shell_check(d, r)
    _rate_checks(d, r, firing, installed_W)
    r.add_table(_layers_table(d, heat))
    r.add_table(_balance_table(balance, installed_W))
    r.charts["wall_profile"] = lambda: _wall_chart(d, heat)
    r.charts["heat_balance"] = lambda: _balance_chart(d, balance, installed_W)


def _losses(d, r, heat):
    r.answer(
        "chamber_volume",
        heat.volume_m3,
        "volume",
        "Chamber volume",
        "Inside of the lining.",
        "length x width x height, or length x pi x diameter squared / 4",
        CHAMBER,
        "geometry of the chamber",
    )
    r.answer(
        "wall_loss",
        heat.wall_loss_W,
        "power",
        "Heat through the walls",
        "What the lining lets through once it is hot all through.",
        "conduction through the layers = convection and radiation of the shell, solved for the shell temperature",
        SHELL,
        WALL,
        "memory",
    )
    r.answer(
        "shell_temperature",
        heat.wall.shell_temp_K,
        "temperature",
        "Shell temperature",
        "Outside of the last layer once the lining is hot all through; one value for all sides.",
        "temperature at which the shell gives off what the lining lets through",
        SHELL,
        WALL,
        "memory",
    )
    r.answer(
        "opening_loss",
        heat.opening_loss_W,
        "power",
        "Heat out of the opening",
        "Radiation only; the hot gas that leaves is the flue loss.",
        "share of a black opening that its deep sides let out x area x (chamber temperature^4 - shop temperature^4)",
        ("opening_area", "opening_depth", "chamber_temperature", "ambient_temperature"),
        OPENING,
        "published",
    )
    r.answer(
        "work_heat",
        heat.work_heat_W,
        "power",
        "Heat into the work",
        "What the metal takes up, melting included.",
        "work rate x heat content of the metal between shop and work temperature",
        ("work_metal", "work_rate", "work_temperature", "ambient_temperature"),
        METAL,
        "published",
    )
    r.answer(
        "work_state",
        melt_state(d.work_metal, d.work_temperature),
        "word",
        "Work when it comes out",
        "Solid, melting or liquid at the work temperature.",
        "work temperature against the melting range of the metal",
        ("work_metal", "work_temperature"),
        "melting ranges of handbooks",
        metal(d.work_metal).trust,
    )
    r.answer(
        "stored_heat",
        heat.stored_heat_J,
        "energy",
        "Heat stored in the lining",
        "What the lining holds at the end of the heat-up; it goes to waste when the fire goes out.",
        "heat content of every layer at its temperature after the heat-up time",
        (*SHELL, "heat_up_time"),
        HEAT_UP,
        "memory",
    )


def _rates(d, r, firing):
    def rate(name):
        return firing and getattr(firing, name)

    r.answer(
        "hold_rate",
        rate("hold_rate_W"),
        "power",
        "Firing rate to hold",
        "Gross, all burners: keeps the empty chamber hot.",
        "(heat through the walls + heat out of the opening) / available heat",
        ("wall_loss", "opening_loss", "available_heat"),
        BALANCE,
        "memory",
    )
    r.answer(
        "working_rate",
        rate("working_rate_W"),
        "power",
        "Firing rate to work",
        "Gross, all burners: keeps it hot while work goes through.",
        "(heat through the walls + heat out of the opening + heat into the work) / available heat",
        ("wall_loss", "opening_loss", "work_heat", "available_heat"),
        BALANCE,
        "memory",
    )
    r.answer(
        "heat_up_rate",
        rate("heat_up_rate_W"),
        "power",
        "Firing rate to heat up",
        "Gross, all burners: mean over the heat-up time, from cold, no work inside.",
        "(heat that enters the lining / heat-up time + heat out of the opening) / available heat at chamber temperature",
        ("stored_heat", "heat_up_time", "opening_loss", "available_heat"),
        HEAT_UP,
        "memory",
    )
    r.answer(
        "firing_rate_needed",
        rate("firing_rate_needed_W"),
        "power",
        "Firing rate needed",
        "Gross, all burners: the larger of working and heating up.",
        "larger of firing rate to work and firing rate to heat up",
        ("working_rate", "heat_up_rate"),
        BALANCE,
        "memory",
    )
    r.answer(
        "firing_rate_from",
        "chamber" if d.firing_rate == "auto" else "setting",
        "word",
        "Firing rate taken from",
        "Chamber: the burner is designed for its share of the firing rate needed. Setting: for the firing rate as set.",
        "firing rate auto, or a number",
        ("firing_rate",),
        "definition",
    )
    r.answer(
        "thermal_efficiency",
        rate("thermal_efficiency"),
        "fraction",
        "Thermal efficiency",
        "Share of the gross heat that ends in the work while the chamber works.",
        "heat into the work / firing rate to work",
        ("work_heat", "working_rate"),
        BALANCE,
        "memory",
    )
    r.answer(
        "fuel_per_hour",
        firing and combustion.gas_flow_kg_s(r.fuel, firing.working_rate_W),
        "mass_flow",
        "Gas while working",
        "Weight of gas that all burners use in an hour of work.",
        "firing rate to work / gross heating value by weight",
        ("working_rate", "gross_heating_value_mass"),
        BALANCE,
        "memory",
    )


def _lining_check(d, r, heat):
    hot_sides = heat.wall.temps_K[:-1]
    over = linings.layers_above_limit(d.lining, hot_sides)
    # The layer that is most over its limit, or else nearest to it.
    worst = max(range(len(hot_sides)), key=lambda n: hot_sides[n] - linings.material(d.lining[n][0]).limit_K)
    layer = linings.material(d.lining[worst][0])
    hot, limit = (show(temp, "temperature", d.units) for temp in (hot_sides[worst], layer.limit_K))
    r.check(
        "lining_limit",
        "stop" if over else "good",
        hot_sides[worst],
        layer.limit_K,
        "temperature",
        "Lining against its limit",
        f"Layer {worst + 1} ({layer.name}) gets {hot} on its hot side, above its limit of {limit}: it shrinks, cracks or melts. Put more "
        "or a better insulating layer before it, choose a material with a higher limit, or run cooler."
        if over
        else f"Every layer stays below its service limit; nearest is layer {worst + 1} ({layer.name}): {hot} of {limit}.",
        "service limits of lining classes (data/linings.csv)",
        "memory",
        (("lining", "choose"), ("chamber_temperature", "lower")),
    )


def _shell_check(d, r):
    shell, limit = r["shell_temperature"], BURN_THRESHOLD_BARE_METAL_K[1.0]
    hot, touch = show(shell, "temperature", d.units), show(limit, "temperature", d.units)
    r.check(
        "shell_touch",
        "good" if shell <= limit else "caution",
        shell,
        limit,
        "temperature",
        "Shell to the touch",
        f"The shell gets {hot}, below the {touch} that burn skin at a touch."
        if shell <= limit
        else f"The shell gets {hot}; above {touch} bare metal burns skin at a touch. Guard it, keep hose, cable and anything that burns away "
        "from it, or line it thicker.",
        TOUCH,
        "memory",
        (("lining", "choose"),),
    )


def _rate_checks(d, r, firing, installed_W):
    def power(watt):
        return show(watt, "power", d.units)

    temp, time = show(d.chamber_temperature, "temperature", d.units), show(d.heat_up_time, "time", d.units)
    lower_temp, change_rate, more = (
        ("chamber_temperature", "lower"),
        ("firing_rate", "raise"),
        ("burner_count", "raise"),
    )
    burners = "the burner" if d.burner_count == 1 else f"the {d.burner_count} burners"
    if firing is None:
        cannot = f"No firing rate brings the chamber to {temp}: the flame leaves nothing in it."
        r.check(
            "rate_for_need",
            "stop",
            None,
            installed_W,
            "power",
            "Firing rate against the need",
            cannot,
            BALANCE,
            "calculated",
            (lower_temp, ("equivalence_ratio", "choose")),
        )
        r.check(
            "heat_up_reach",
            "stop",
            None,
            chamber.FIRING_PER_VOLUME_HIGH_W_M3,
            "power_per_volume",
            "Heat-up",
            cannot,
            BALANCE,
            "calculated",
            (lower_temp, ("equivalence_ratio", "choose")),
        )
    else:
        needed = firing.firing_rate_needed_W
        each = "" if d.burner_count == 1 else f", {power(needed / d.burner_count)} for each of {d.burner_count} burners"
        why = (
            f"heating up in {time}" if firing.decided_by == "heat-up" else "working"
        ) + f" takes {power(needed)}{each}"
        short = installed_W < needed * (1 - 1e-9)
        verdict = "good" if not short else "stop" if installed_W < firing.hold_rate_W else "caution"
        if d.firing_rate == "auto":
            text = f"The firing rate is taken from the chamber: {why}. Working takes {power(firing.working_rate_W)}."
        elif not short:
            text = f"{power(installed_W)} is enough: {why}." + (
                ""
                if installed_W <= LARGE * needed
                else " It is far more than that; auto would take the rate from the chamber."
            )
        elif verdict == "stop":
            text = (
                f"{power(installed_W)} cannot even hold the empty chamber at {temp}, which takes {power(firing.hold_rate_W)}: raise the "
                "firing rate or use more burners, lower the chamber temperature, close the opening or line it thicker."
            )
        else:
            text = f"{power(installed_W)} is too little: {why}. Raise the firing rate or use more burners, or " + (
                "allow more time." if firing.decided_by == "heat-up" else "put less work through."
            )
        eased = (
            (lower_temp, ("opening_area", "lower"), ("lining", "choose"))
            if verdict == "stop"
            else (("heat_up_time", "raise"), lower_temp)
            if firing.decided_by == "heat-up"
            else (("work_rate", "lower"), lower_temp)
        )
        r.check(
            "rate_for_need",
            verdict,
            installed_W,
            needed,
            "power",
            "Firing rate against the need",
            text,
            BALANCE,
            "calculated",
            (change_rate, more, *eased),
        )
        _heat_up_check(d, r, firing, time)

    low, high = chamber.FIRING_PER_VOLUME_LOW_W_M3, chamber.FIRING_PER_VOLUME_HIGH_W_M3
    value = r["firing_per_volume"]
    low_text, high_text = (show(x, "power_per_volume", d.units, 2) for x in (low, high))
    text = show(value, "power_per_volume", d.units)
    cool = d.chamber_temperature < FORGING_K
    verdict, auto = "good" if value <= high and (low <= value or cool) else "caution", d.firing_rate == "auto"
    if verdict == "good":
        told = (
            f" Less is right below a forging heat of {show(FORGING_K, 'temperature', d.units)}." if value < low else ""
        )
        changes = ()
    elif value < low:
        told = (
            f" So little fire from {burners} may not reach a forging heat: "
            + ("ask for a shorter heat-up" if auto else "raise the firing rate")
            + " or make the chamber smaller."
        )
        changes = (("heat_up_time", "lower"),) if auto else (change_rate, ("burner_count", "raise"))
    else:
        told = (
            f" So much fire from {burners} burns out of the door: "
            + ("allow more time to heat up, use a lighter lining" if auto else "lower the firing rate")
            + " or make the chamber larger."
        )
        changes = ((("heat_up_time", "raise"), ("lining", "choose")) if auto else (("firing_rate", "lower"),)) + (
            ("chamber_length", "raise"),
        )
    r.check(
        "firing_per_volume",
        verdict,
        value,
        low if value < low else high,
        "power_per_volume",
        "Fire for the chamber's size",
        f"{text} of chamber; {low_text} to {high_text} is usual in small forges and furnaces.{told}",
        PRACTICE,
        "common practice",
        changes,
    )


def _heat_up_check(d, r, firing, time):
    most, per_volume = chamber.FIRING_PER_VOLUME_HIGH_W_M3, firing.heat_up_rate_W / r["chamber_volume"]
    quick = d.heat_up_time < chamber.SHORTEST_HEAT_UP_S
    verdict = "stop" if per_volume > most else "caution" if quick else "good"
    text = {
        "good": f"Heating up in {time} is within what so large a chamber can burn.",
        "caution": f"Heating up in {time} cracks dense lining; {show(chamber.SHORTEST_HEAT_UP_S, 'time', d.units)} or more is usual.",
        "stop": f"Heating up in {time} is out of reach: it asks for {show(per_volume, 'power_per_volume', d.units)} of chamber, and no "
        f"more than {show(most, 'power_per_volume', d.units, 2)} burns well in one. Allow more time, or use a lighter lining.",
    }[verdict]
    r.check(
        "heat_up_reach",
        verdict,
        per_volume,
        most,
        "power_per_volume",
        "Heat-up",
        text,
        PRACTICE,
        "common practice",
        (("heat_up_time", "raise"), ("lining", "choose")),
    )


def _layers_table(d, heat):
    temps = heat.wall.temps_K
    rows = tuple(
        (n + 1, linings.material(key).name, thickness, temps[n], temps[n + 1], linings.material(key).limit_K)
        for n, (key, thickness) in enumerate(d.lining)
    )
    return Table(
        "lining_layers",
        "Lining from the hot face out, hot all through",
        (
            Column("layer", "Layer", "count"),
            Column("material", "Material", "word"),
            Column("thickness", "Thickness", "length"),
            Column("hot_side", "Hot side", "temperature"),
            Column("cold_side", "Cold side", "temperature"),
            Column("limit", "Service limit", "temperature"),
        ),
        rows,
        WALL,
    )


def _balance_table(balance, installed_W):
    rows = tuple((dict(PLACES)[name], watt, watt / installed_W) for name, watt in balance)
    return Table(
        "heat_balance",
        "Where the heat goes while the chamber works, at the firing rate of all burners",
        (Column("place", "Into", "word"), Column("heat", "Heat", "power"), Column("share", "Share", "fraction")),
        rows,
        BALANCE,
    )


def _balance_chart(d, balance, installed_W):
    watts = tuple(watt for _, watt in balance)
    spare = dict(balance).get("spare", 0.0)
    total = show(installed_W, "power", d.units)
    sentence = (
        f"No flame was found, so nothing is known of where the {total} go."
        if not balance
        else (
            f"Of {total}, {show(watts[0], 'power', d.units)} leaves with the flue gas; "
            + (
                f"{show(spare, 'power', d.units)} is to spare, for heating up or to be turned down."
                if spare >= 0
                else f"{show(-spare, 'power', d.units)} is missing, so the chamber stays cooler than wanted."
            )
        )
    )
    return Chart(
        "heat_balance",
        "Where the heat goes",
        Axis("", "count", 0.4, len(PLACES) + 0.6, tuple((n, label) for n, (_, label) in enumerate(PLACES, 1))),
        Axis("heat", "power", min(0.0, *watts) * 1.1 if watts else 0.0, max(watts) * 1.1 if watts else installed_W),
        (Series("heat", "while the chamber works", tuple(range(1, len(watts) + 1)), watts, "bars"),),
        (),
        sentence,
    )


def _wall_chart(d, heat):
    layers = tuple((linings.material(key), thickness) for key, thickness in d.lining)
    depths, temps = steady_profile(need.wall(d.value), layers, heat.wall)
    warm = heat.heat_up
    time = show(d.heat_up_time, "time", d.units)
    return Chart(
        "wall_profile",
        "Temperature through the wall",
        Axis("depth below the hot face", "length", 0.0, depths[-1]),
        Axis("temperature", "temperature", d.ambient_temperature, d.chamber_temperature + 20),
        (
            Series("heat_up", "after the heat-up time", warm.depths_m, warm.temps_K, verdict="caution"),
            Series("steady", "hot all through", depths, temps),
        ),
        (),
        f"After {time} the shell has {show(warm.temps_K[-1], 'temperature', d.units)}; hot all through it has "
        f"{show(heat.wall.shell_temp_K, 'temperature', d.units)}.",
    )
