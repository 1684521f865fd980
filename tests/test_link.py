"""Links: short, readable, and they open whatever happens to them."""

from pathlib import Path
from urllib.parse import quote_plus

import pytest
from hypothesis import given
from hypothesis import strategies as st

from burnercalc.design import Design
from burnercalc.errors import InputErrors
from burnercalc.link import EARLIER_DEFAULTS, LONGEST_HAVE, VERSION, beside, from_link, to_link
from burnercalc.result import solve
from burnercalc.settings import BY_KEY, SETTINGS


def test_defaults_make_the_shortest_link():
    assert to_link(Design.from_texts({}), "https://example.org/burner/") == "https://example.org/burner/#v=2"


def test_a_link_is_readable():
    design = Design.from_texts({"body_length": "6 1/2 in", "port_diameter": '5/16"', "firing_rate": "80 kBtu/h"})
    assert to_link(design) == "#v=2&body_length=6-1/2in&port_diameter=5/16in&firing_rate=80kBtu/h"


# Links as they were made by v=1; they open in every later version.
KEPT = [
    (
        "#v=1&body_length=6-1/2in&body_width=3in&body_depth=3in&wall=1/4in&setback=1/2in&port_diameter=5/16in&rows=3&ports_per_row=6",
        {"body_length": 0.1651, "rows": 3, "port_diameter": 0.0079375},
    ),
    (
        "?v=1&units=mm&fuel=natural_gas&firing_rate=25kW&ambient_temperature=5degC",
        {"units": "mm", "firing_rate": 25000.0, "ambient_temperature": 278.15},
    ),
    ("v=1&inlet=1-1/2&pattern=straight&altitude=5000ft", {"inlet": "1-1/2", "altitude": 1524.0}),
    ("#v=1&waste_allowance=0.2%25&cylinder_fill=50%25", {"waste_allowance": 0.002, "cylinder_fill": 0.5}),
]


@pytest.mark.parametrize("link, values", KEPT)
def test_links_made_earlier_open(link, values):
    design, ignored = from_link(link)
    assert not ignored
    for key, value in values.items():
        assert design.value(key) == (pytest.approx(value) if isinstance(value, float) else value)


@pytest.mark.parametrize("said", ["", "&rows=4", "&equivalence_ratio=0.9"])
def test_a_link_of_version_1_means_its_own_defaults(said):
    """What it leaves out stood at these when it was made."""
    design, ignored = from_link("#v=1" + said)
    assert not ignored
    assert design.value("equivalence_ratio") == (0.9 if "0.9" in said else 1.0)
    assert design.value("cylinder_count") == 1
    assert from_link(to_link(design)) == (design, [])


def test_a_metric_link_of_version_1_means_the_burner_of_an_inch_shop():
    """Its face and gas, in which today's metric shop differs."""
    design, ignored = from_link("#v=1&units=mm")
    own = {"port_diameter": "1/4 in", "rows": "5", "ports_per_row": "9", "setback": "5/8 in", "edge_margin": "1/4 in"}
    own |= {"block_thickness": "2 1/2 in", "gas_pressure": "5 psi"}
    assert not ignored and {key: design.text(key) for key in own} == own
    assert solve(design).part("face").port_count == 43


@pytest.mark.parametrize("text", ["", "wide", "-4"])
def test_what_is_refused_in_a_link_of_version_1_stands_at_its_own_default(text):
    design, ignored = from_link(f"#v=1&equivalence_ratio={text}&rows=4")
    assert [error.field for error in ignored] == ["equivalence_ratio"]
    assert (design.value("equivalence_ratio"), design.rows) == (1.0, 4)
    assert from_link(f"#v=2&equivalence_ratio={text}")[0].value("equivalence_ratio") == 0.93


def test_a_text_with_two_faults_costs_no_default_of_its_version():
    design, ignored = from_link("#v=1&lining=clay 1 in, mud 2 in")
    assert [error.field for error in ignored] == ["lining"] * 2
    assert design.text("lining") == EARLIER_DEFAULTS["1"]["lining"]


def test_defaults_of_earlier_versions_are_in_order_and_can_be_read():
    assert [*EARLIER_DEFAULTS, VERSION] == [str(n + 1) for n in range(len(EARLIER_DEFAULTS) + 1)]
    for version in EARLIER_DEFAULTS:
        assert from_link(f"#v={version}")[1] == []


def test_a_link_of_two_versions_back_is_completed_from_both(monkeypatch):
    earlier = {"1": {"rows": "3"}, "2": {"rows": "4", "ports_per_row": "7"}}
    monkeypatch.setattr("burnercalc.link.EARLIER_DEFAULTS", earlier)
    monkeypatch.setattr("burnercalc.link.VERSION", "3")
    opened = {v: from_link(f"#v={v}")[0] for v in "123"}
    assert [(d.rows, d.ports_per_row) for d in opened.values()] == [(3, 7), (4, 7), (5, 9)]


def test_the_page_knows_the_link_of_its_own_example():
    own = Path(__file__).parents[1] / "site" / "browser" / "own.mjs"
    assert f'EXAMPLE = "{to_link(Design.from_texts({}))}"' in own.read_text(encoding="utf-8")


# Texts that would read otherwise, or not at all, without the spaces in them; value in SI, worked out by hand.
SPACED = [
    ("heat_up_time", "1 1/2 h", 5400.0),
    ("opening_area", "12 1/2 in2", 12.5 * 0.0254**2),
    ("firing_rate", "60 1/2 kBtu/h", 17730.8),
    ("body_length", "1 ft 3 1/2 in", 15.5 * 0.0254),
    ("lining", "ifb_23 2 in", (("ifb_23", 0.0508),)),
    ("fuel_blend", "C3H8 1", (("C3H8", 1.0),)),
    ("nipple_stock", "36 in 40", ((0.9144, 40.0),)),
    ("stock_lengths", "20 ft", pytest.approx((6.096,))),
    ("jet_drill", "1/16 in", "1/16 in"),
]


@pytest.mark.parametrize("key, text, value", SPACED)
def test_spaces_that_count_survive_the_link(key, text, value):
    design, ignored = from_link(to_link(Design.from_texts({key: text})))
    assert not ignored
    assert design.value(key) == (pytest.approx(value, rel=1e-6) if isinstance(value, float) else value)


def test_words_that_are_no_link_and_settings_given_twice_are_named():
    assert [error.field for error in from_link("a horse shoe")[1]] == ["a horse shoe"]
    design, ignored = from_link("#v=2&rows=3&rows=4")
    assert (design.rows, [error.field for error in ignored]) == (4, ["rows"])
    assert from_link("https://example.org/burner/") == (Design.from_texts(), [])


def test_a_decimal_comma_is_read_as_on_the_page():
    """100,5 mm was left out, and the example's chamber called good in its place; what may be thousands still is."""
    design, ignored = from_link("#v=2&units=mm&chamber_width=100,5mm&low_fire=40,5%25")
    assert ignored == [] and (design.chamber_width, design.low_fire) == (pytest.approx(0.1005), pytest.approx(0.405))
    assert to_link(design) == "#v=2&units=mm&chamber_width=100.5mm&low_fire=40.5%25"
    assert [error.field for error in from_link("#v=2&chamber_width=1,500mm")[1]] == ["chamber_width"]


def test_says_what_it_ignored_and_shows_nothing_from_it():
    design, ignored = from_link("#v=2&rows=4&grate=3&body_depth=-4in&fuel=coal")
    assert {error.field for error in ignored} == {"grate", "body_depth", "fuel"}
    assert design == Design.from_texts({"rows": "4"})


def test_settings_at_odds_are_dropped_and_named():
    design, ignored = from_link("#v=2&body_width=1.5in&setback=1in&rows=3")
    assert [error.field for error in ignored] == ["body_width"]  # with three rows no setback would do for it
    assert design.rows == 3 and design.setback == 0.0254


GOOD = {"rows": "4", "fuel": "butane", "waste_allowance": "20 %", "body_length": "10 in", "blower_free_flow": "90 cfm"}


@pytest.mark.parametrize(
    "bad",
    [
        "body_width=wide",
        "cylinder_fill=0.5",
        "edge_margin=3in",
        "pattern=rings",
        "lining=bricks",
        "body_kind=pipe",
        "wall=9",
    ],
)
@pytest.mark.parametrize("first", [True, False])
def test_a_refused_text_costs_no_other_setting(bad, first):
    good = "&".join(f"{key}={quote_plus(text)}" for key, text in GOOD.items())
    design, ignored = from_link(f"#v=2&{bad}&{good}" if first else f"#v=2&{good}&{bad}")
    assert design == Design.from_texts(GOOD)
    assert bad.partition("=")[0] in {error.field for error in ignored}


def test_of_settings_at_odds_only_what_must_goes():
    # A pipe of four inches may not be dropped for the one pattern that does not suit it.
    link = "#v=2&body_kind=pipe&body_length=4in&pattern=hexagonal&inlet_position=end&rows=3&ports_per_row=5"
    design, ignored = from_link(link)
    assert [error.field for error in ignored] == ["inlet_position"]
    assert (design.body_kind, design.pattern, design.rows) == ("pipe", "hexagonal", 3)


def test_what_comes_back_may_let_another_come_back():
    # So wide a margin goes while the body is a pipe; the pipe goes for its pattern; then the margin may come back.
    design, ignored = from_link("#v=2&rows=1&body_length=60in&body_kind=pipe&edge_margin=6in")
    assert [error.field for error in ignored] == ["body_kind"]
    assert design == Design.from_texts({"rows": "1", "body_length": "60 in", "edge_margin": "6 in"})


@pytest.mark.parametrize(
    "link", ["http:/ [%=&rows=4", "print:scale_x=1&rows=4", "https://example.org/burner/rows=4&rows=4"]
)
def test_an_address_that_is_broken_loses_no_setting_in_silence(link):
    design, ignored = from_link(link)
    assert design.rows == 4 and len(ignored) == 1


def test_a_sign_at_the_end_belongs_to_the_text():
    assert [error.field for error in from_link("v=2&gas_pressure=6 psi?")[1]] == ["gas_pressure"]


def test_a_bare_fraction_in_a_link_is_named_with_both_readings():
    design, ignored = from_link("#v=2&waste_allowance=0.2&rows=4")
    assert [(error.field, error.nearest) for error in ignored] == [("waste_allowance", "20 % or 0.2 %")]
    assert design == Design.from_texts({"rows": "4"})


def test_what_is_said_of_a_link_is_bounded():
    for link in (
        "#v=2&" + "x" * 549_000 + "=1",
        "#v=2&" + "&".join(f"k{n}=1" for n in range(9000)),
        "#rows=" + "9" * 90_000,
    ):
        _, ignored = from_link(link)
        assert 1 <= len(ignored) <= 21 and sum(len(str(error)) for error in ignored) < 5000


@pytest.mark.parametrize("sign", ["a", "½", "😀", "\n", "%"])
def test_the_longest_list_of_any_sign_goes_in_a_link(sign):
    design = Design.from_texts({"rows": "4"})
    link = to_link(design, "https://example.org/", {"have": sign * LONGEST_HAVE, "mine": "rows"})
    assert from_link(link) == (design, []) and beside(link) == {"have": sign * LONGEST_HAVE, "mine": "rows"}
    with pytest.raises(InputErrors):
        to_link(design, "", {"have": sign * (LONGEST_HAVE + 1)})


@pytest.mark.parametrize(
    "link, named",
    [
        ("&have=" + "a" * (LONGEST_HAVE + 1), ["have"]),
        ("&mine=rowz", ["mine"]),
        ("&v=2", []),
        ("&v=1&v=2", ["v", "v"]),
        ("&mine=rows&mine=inlet", ["mine"]),
        ("&have=a&have=b", ["have"]),
        ("&mine=rowz&mine=inlet&have=a&have=b", ["mine", "have"]),
        ("&mine=inlet,%20rows,,&have=", []),
    ],
)
def test_what_goes_beside_is_read_or_named(link, named):
    design, ignored = from_link("#v=2&rows=4" + link)
    assert design == Design.from_texts({"rows": "4"}) and [error.field for error in ignored] == named


def test_what_could_not_be_read_back_makes_no_link():
    for key, text in (("mine", "rowz"), ("have", "\ud800"), ("anvil", "1")):
        with pytest.raises(InputErrors):
            to_link(Design(), "", {key: text})


@pytest.mark.parametrize("link", ["http://[", "http://[::1", "//\uff0f", "#", "?", "", "https://example.org/?#"])
def test_addresses_that_are_none_are_no_crash(link):
    assert from_link(link)[0] == Design.from_texts()


def test_a_later_version_is_read_with_a_word():
    _, ignored = from_link("#v=3&rows=3")
    assert [error.field for error in ignored] == ["v"]


@given(st.text(max_size=60))
def test_any_text_opens(text):
    design, _ = from_link(text)
    assert isinstance(design, Design)


@given(st.dictionaries(st.sampled_from([s.key for s in SETTINGS]), st.text(max_size=12), max_size=6))
def test_any_values_open_to_a_design_without_them(texts):
    from urllib.parse import urlencode

    design, ignored = from_link("#v=2&" + urlencode(texts))
    named = {error.field for error in ignored} | {other for error in ignored for other in error.others}
    for key, text in texts.items():
        if key not in named:
            try:
                accepted = Design.from_texts({**design.texts, key: text})
            except InputErrors:
                continue
            assert design.value(key) == accepted.value(key)


lengths = st.integers(1, 64 * 20).map(lambda n: f"{n // 64} {n % 64}/64 in" if n % 64 else f"{n // 64} in")


@given(
    st.fixed_dictionaries(
        {},
        optional={
            "body_length": lengths,
            "body_width": lengths,
            "edge_margin": lengths,
            "rows": st.integers(1, 12).map(str),
            "equivalence_ratio": st.floats(0.5, 1.6).map(str),
            "units": st.sampled_from(["in", "mm"]),
        },
    )
)
def test_round_trip(texts):
    try:
        design = Design.from_texts(texts)
    except InputErrors:
        return
    again, ignored = from_link(to_link(design))
    assert not ignored and again == design and again.texts.keys() == design.texts.keys()
    assert to_link(again) == to_link(design)


def with_what_it_needs(texts):
    """A design with these texts and, where they are at odds with the defaults, the values that its refusals offer."""
    for _ in range(6):
        try:
            return Design.from_texts(texts)
        except InputErrors as refused:
            fixed = next(iter(texts))
            texts = {**texts, **{e.field: e.nearest for e in refused.errors if e.field != fixed}}
            if any(e.field == fixed for e in refused.errors):
                texts |= (
                    {"body_kind": "pipe", "pattern": "rings"} if fixed == "pattern" else {"block_thickness": "1 in"}
                )
    pytest.fail(f"offers lead nowhere: {texts}")


def test_every_setting_survives_a_link():
    for setting in SETTINGS:
        if setting.choices:
            other = next(value for value, _ in setting.choices if value != setting.default)
            design = with_what_it_needs({setting.key: other})
            assert from_link(to_link(design))[0].value(setting.key) == other
    assert BY_KEY


def test_shop_sizes_that_are_refused_leave_a_link_of_version_1_what_it_meant():
    plain, _ = from_link("#v=1&units=mm")
    odd, said = from_link("#v=1&units=mm&sizes=wide")
    assert odd == plain and [error.field for error in said] == ["sizes"]
