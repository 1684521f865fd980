"""Broken designs: what is offered is accepted, with the rest as it is; where nothing is offered, nothing would do."""

from attack.hostile import good, hostile

from burnercalc.design import Design, read
from burnercalc.errors import InputErrors
from burnercalc.settings import BY_KEY, SETTINGS

# Settings that rules weigh against each other are drawn most.
FACE = (
    "body_kind",
    "body_length",
    "body_width",
    "body_depth",
    "wall",
    "setback",
    "corner_radius",
    "grip",
    "edge_margin",
)
TIED = (
    *FACE,
    *(
        "port_diameter",
        "rows",
        "ports_per_row",
        "pattern",
        "block_thickness",
        "inlet",
        "inlet_position",
        "corner_drill",
    ),
    *("stock_lengths", "cap_gap", "nipple_stock", "inlet_length", "mould_board", "mould_base", "pin_depth", "units"),
    *("castable_water_low", "castable_water_high", "port_position_tolerance", "baffle_holes", "baffle_hole_diameter"),
    *("baffle_bend_angle", "cylinder", "tank_length", "tank_diameter", "opening_area", "lining", "chamber_shape"),
    *("chamber_length", "chamber_width", "chamber_height", "chamber_diameter", "work_temperature", "work_metal"),
    *("chamber_temperature", "aspirated_throat", "aspirated_jet", "firing_rate", "burner_count", "equivalence_ratio"),
)
TRIED = 40  # texts of a setting that are tried where nothing is offered


def trial(rng):
    keys = rng.sample(TIED, rng.randint(1, 6)) + [s.key for s in rng.sample(SETTINGS, rng.randint(0, 2))]
    texts = {key: (good if rng.random() < 0.85 else hostile)(rng, BY_KEY[key]) for key in keys}
    return judge(rng, texts)


def judge(rng, texts):
    try:
        Design.from_texts(texts)
    except InputErrors as refused:
        errors = refused.errors
    else:
        return 1
    before = _fields(read(texts)[2])
    for error in errors:
        setting = BY_KEY[error.field]
        for offer in error.nearest.split(" or ") if error.nearest else ():
            wrong = _worse(texts, setting.key, offer, before)
            assert not wrong, f"{setting.key}: {offer!r} is offered but {wrong}: {texts}"
        if not error.nearest:
            for text in [setting.default, *(good(rng, setting) for _ in range(TRIED))]:
                if text:
                    assert _worse(texts, setting.key, text, before), f"{setting.key}: {text!r} would do: {texts}"
    return len(errors)


def _worse(texts, key, text, before):
    """What the design breaks with this text that it did not break before: nothing may be at the setting itself."""
    after = read({**texts, key: text})[2]
    return [str(error) for error in after if error.field == key] or sorted(_fields(after) - before)


def _fields(errors):
    return {error.field for error in errors}
