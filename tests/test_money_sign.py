"""Money is shown with the reader's own sign, on the page, the sheet and paper; no figure changes with it."""

import json

import pytest
from pdf_reader import pages

from burnercalc import Design, solve, worker
from burnercalc.errors import InputErrors
from burnercalc.files import FILES
from burnercalc.link import from_link, to_link
from burnercalc.settings import BY_KEY
from burnercalc.sheet import shown


@pytest.fixture(scope="module")
def plain():
    return solve(Design())


@pytest.fixture(scope="module", params=["$", "€", "kr", "CHF"])
def signed(request):
    return request.param, solve(Design.from_texts({"money_sign": request.param}))


def with_sign(sign, figure):
    loss = "-" if figure.startswith("-") else ""  # of one that costs more than a bought one
    return f"{loss}{sign}{figure.removeprefix('-')}" if sign in "$€" else f"{figure} {sign}"


def test_every_figure_of_money_has_the_sign_and_stays_what_it_was(plain, signed):
    sign, result = signed
    money = [a for a in result.answers.values() if a.dimension in ("money", "price")]
    assert len(money) > 12
    for answer in money:
        before = plain.answers[answer.key]
        assert answer.value == before.value
        assert shown(answer, result.design.reader) == with_sign(sign, shown(before, "in")), answer.key
    for key in ("make_or_buy", "worth_selling"):
        assert result[key].count(sign) >= 2
        assert result[key].replace(sign if sign in "$€" else f" {sign}", "") == plain[key]
    assert result.design.show("price_steel") == with_sign(sign, "2.00") + "/lb"
    assert result.design.show("price_bag") == with_sign(sign, "95.00")


def test_it_travels_in_a_link_and_the_default_is_as_before(plain, signed):
    sign, result = signed
    link = to_link(result.design)
    design, ignored = from_link(link)
    assert ignored == [] and design == result.design and design.money_sign == sign and design.units == "in"
    assert to_link(plain.design) == "#v=2" and plain.design.money_sign is None
    assert from_link("#v=1&rows=4")[0].money_sign is None


def test_page_and_paper_show_it(signed):
    sign, result = signed
    reply = json.loads(worker.handle(json.dumps({"kind": "solve", "settings": {"money_sign": sign}})))
    assert reply["fields"]["price_bag"]["unit"] == sign and reply["fields"]["price_bag"]["text"] == "95"
    assert all(sign in row[-1] for row in reply["tables"]["shopping"]["rows"] if row[-1] != "none")
    left = json.loads(worker.handle(json.dumps({"kind": "left", "settings": {"money_sign": sign}, "got": []})))
    assert left["words"].count(sign) == 4
    text = " ".join(page.text for page in pages(FILES["shopping-a4"][2](result, "")))
    assert text.count(sign) > 20


@pytest.mark.parametrize(
    "text, offered, why",
    [
        ("abcde", "$", "at most 4"),
        ("5", "$", "letters"),
        ("=x", "$", "letters"),
        ("<b>", "$", "letters"),
        ("$1", "$", "letters"),
        (".kr", "$", "letters"),
        ("\u4e2d", "$", "cannot write"),
        ("z\u0142", "zl", "cannot write"),
        ("K\u010d", "Kc", "cannot write"),
        ("\u20b9", "Rs", "cannot write"),
        ("\u200bkr", "kr", "holds U+200B, which"),
        *((unit, "$", "unit of measure") for unit in ("psi", "mm", "kg", "lb", "m", "bar", "degC")),
    ],
)
def test_what_is_no_sign_is_refused_by_the_rule_it_breaks(text, offered, why):
    with pytest.raises(InputErrors) as refused:
        Design.from_texts({"money_sign": text})
    (error,) = refused.value.errors
    assert (error.field, error.nearest) == ("money_sign", offered) and why in error.rule


@pytest.mark.parametrize("text", ["R", "K", "L", "Ft", "zl", "Kc", "Rs", "Fr.", "kr", "\u00a5"])
def test_signs_of_money_that_paper_has_are_taken(text):
    assert Design.from_texts({"money_sign": text}).money_sign == text


@pytest.mark.parametrize("sign", ["", "kr"])
def test_two_designs_compared_say_whose_money_a_bare_figure_is(sign):
    """`To buy for a burner` stood beside 1197, and `Left to buy` too."""
    own = {"money_sign": sign} if sign else {}
    other = {**own, "rows": "4", "price_blower": "900", "batch_size": "2"}
    asked = {"kind": "compare", "settings": own, "other": other}
    reply = json.loads(worker.handle(json.dumps(asked)))
    rows = [row for kind in ("settings", "answers", "others") for row in reply[kind]]
    named = ("To buy for a burner", "Left to buy", BY_KEY["price_blower"].label)
    money = [row for row in rows if row["label"].startswith(named)]
    assert len(money) > 2
    for row in money:
        assert row["label"].endswith(", in your money") == (not sign) and ("kr" in row["other"]) == bool(sign), row
