"""A burner from what lies in the shop: the list, the search beside the page, its designs, mending, and what if."""

import json

import pytest
from browser.conftest import PHONE, READY_MS, open_ready, watch
from browser.hosted import host
from browser.test_accessibility import walk_to
from browser.test_job import field, plain, put, settle, shows

from burnercalc import Design, from_link, solve, worker
from burnercalc.find import make_good, report
from burnercalc.link import beside, to_link

SHOP = {"tube": "3 1/2 x 3 1/2 x 3/16 in, 8 ft", "pins": "9/32 in", "blower": "3 inH2O 80 cfm"}
BAD = "#v=2&blower_shutoff_pressure=0.5inH2O&low_fire=80%25"

REST = (  # of so small a shop every design is looked at soon
    "burner_count=1; firing_rate=100 kBtu/h; low_fire=40 %; body_length=9 in; pattern=staggered; ports_per_row=9; "
    "block_thickness=2-1/2 in; inlet=2; baffle_holes=40; mix_pipe=1-1/2; mix_pipe_length=18 in; cylinder=100; "
    "cylinder_count=2; port_diameter=1/4 in"
)


@pytest.fixture
def context(chromium):
    made = host(chromium.new_context(**PHONE, service_workers="block", accept_downloads=True))
    yield made
    made.close()


@pytest.fixture
def page(context, site):
    made = context.new_page()
    made.set_default_timeout(READY_MS)
    wrong = watch(made, site)
    open_ready(made, site)
    yield made
    assert wrong == []


def open_find(page, **rows):
    page.tap("[data-open=find-box]")
    for kind, text in rows.items():
        page.fill(f"#have-{kind}", text)


def address(page):
    return page.evaluate("() => location.hash")


def reopen(page):
    page.evaluate("""() => {
      if (!document.getElementById("find-box").open) document.querySelector("[data-open=find-box]").click();
    }""")


def bad(design):
    return {key for key, check in solve(design).checks.items() if check.verdict in ("caution", "stop")}


@pytest.fixture(scope="module")
def found(chromium, site):
    """One page with what was found on it, for all that only looks."""
    context = host(chromium.new_context(**PHONE, service_workers="block"))
    page = context.new_page()
    page.set_default_timeout(READY_MS)
    open_ready(page, site)
    open_find(page, **SHOP)
    page.tap("#find-go")
    page.wait_for_selector("#find-list .found")
    yield page
    context.close()


def test_a_search_shows_designs_with_face_numbers_and_price(found):
    cards = found.locator("#find-list .found")
    assert 2 <= cards.count() <= 5
    assert cards.first.locator("h3").inner_text().startswith("Best of all")
    for card in cards.all():
        assert card.locator("img.face").evaluate("each => each.complete && each.naturalWidth > 0")
        for layer in ("body", "window", "port"):  # in their colours, not lines alone
            assert f"class%3D%22{layer}%22%20fill%3D%22%23" in card.locator("img.face").get_attribute("src")
        assert card.locator("dl.four dd").count() == 4
        assert "To spend:" in card.inner_text() and "Limited by:" in card.inner_text()
        assert "lip" in card.inner_text() and "Blower 3 in H\u2082O shut, 80 cfm free; jet #" in card.inner_text()
    assert (
        "1 burner to make." in found.locator("#find-asked").inner_text()
        and not found.locator("#found-for").is_visible()
    )
    said = found.locator("#find-list").inner_text()
    assert "steps judged" in said and ("Nothing else that was looked at" in said) == (cards.count() < 3)


def test_a_found_design_opens_as_one_step_and_is_shared(found):
    reopen(found)
    before = address(found)
    card = found.locator("#find-list .found").first
    card.get_by_role("button", name="Share").click()
    link = found.input_value("#share-link")
    found.locator("#share-box [data-close]").click()
    card.get_by_role("button", name="Open").click()
    found.wait_for_function("before => location.hash !== before", arg=before)
    settle(found)
    opened = address(found)
    found.go_back()  # to what was found, and the design stays
    found.wait_for_selector("#find-list .found:visible")
    found.wait_for_function("opened => location.hash === opened", arg=opened)
    found.locator("#find-box [data-close]").first.click()
    found.wait_for_selector("#find-box", state="hidden")
    found.wait_for_function("link => location.hash.startsWith(link)", arg=link[link.index("#") :])
    # What lies there is mine, so that no cure moves it.
    body = "body_kind,body_width,body_depth,wall"
    assert beside(address(found)) == {
        "mine": f"{body},port_diameter,blower_shutoff_pressure,blower_free_flow,blower_curve"
    }
    design, refused = from_link(address(found))
    assert not refused and abs(design.port_diameter - 9 / 32 * 0.0254) < 1e-9 and not bad(design)
    # The same bill as on the card: what lies there is ticked off the shopping list.
    on_the_list = card.text_content().split(" on the shopping list")[0].rpartition("(")[2]
    found.wait_for_function(
        "sum => document.getElementById('left-words').textContent.startsWith(`Left to buy: ${sum} of`)",
        arg=on_the_list,
    )
    found.click("#undo")
    found.wait_for_function("before => location.hash === before", arg=before)
    settle(found)


def test_a_found_design_is_compared(found):
    reopen(found)
    found.locator("#find-list .found").last.get_by_role("button", name="Compare").click()
    found.wait_for_selector("#compare-box[open] #compare-answers tr")
    assert found.locator("#compare-name").inner_text() != "Kept"
    card = found.locator("#find-list .found").last.text_content()
    sum_ = card.split(" on the shopping list")[0].rpartition("(")[2]
    assert sum_ in found.locator("#compare-answers tr", has_text="Left to buy").inner_text()
    assert found.locator("#compare-than").inner_text() == "On the page"
    found.locator("#compare-box [data-close]").click()
    # Two of those that are found, neither on the page.
    assert found.locator("#find-list .found").first.get_by_role("button", name="Beside the first").count() == 0
    found.locator("#find-list .found").last.get_by_role("button", name="Beside the first").click()
    found.wait_for_selector("#compare-box[open]")
    assert found.locator("#compare-than").inner_text() == "Best of all"
    lengths = found.locator("#compare-settings tr", has_text="Body length").locator("td").all_text_contents()
    cards = found.locator("#find-list .found").all()
    assert all(f"{length} long" in card.text_content() for length, card in zip(lengths, (cards[0], cards[-1])))
    found.locator("#compare-box [data-close]").click()


def test_what_is_wrong_is_named_row_by_row_and_nothing_is_lost(page):
    open_find(page, tube="4 x 4 x 3/16 in, 1/2 in", blower="80 cfm", mine="rows=99; nails=3")
    page.tap("#weights > summary")
    page.fill("#weight-money", "-1")
    page.tap("#find-go")
    for kind, word in {"tube": "lips", "blower": "pressure", "mine": "nails"}.items():
        words = page.locator(f".have[data-kind={kind}] .refused")
        words.wait_for()
        assert word in words.inner_text()
    assert "1 to 40" in page.locator("#find-status").inner_text()
    assert page.locator("#weights .refused").inner_text().split("\n")[0] == "It must be a number from 0 to 100. Take 0"
    assert page.input_value("#have-blower") == "80 cfm"
    assert page.evaluate("() => document.activeElement.id") == "have-tube"


def test_what_is_mine_and_at_odds_with_the_list_is_let_go_by_a_button(page, site):
    """Sizes that opening a found design has marked bind no later search; those that somebody marked do."""
    open_ready(page, f"{site}#v=2&body_width=3-1/2in&body_depth=3-1/2in&mine=rows,body_width,body_depth")
    open_find(page, tube="4 x 4 x 3/16 in", mine=f"{REST}; blower_shutoff_pressure=4 inH2O; blower_free_flow=60 cfm")
    page.tap("#find-go")
    let_go = page.get_by_role("button", name="Mine no longer: look again")
    let_go.wait_for()
    assert "at hand is only 4 in" in page.locator("#find-status").inner_text()
    let_go.tap()
    page.wait_for_selector("#find-list .found:visible")
    page.wait_for_function("() => location.hash.endsWith('&mine=rows')")
    assert all(
        "tube 4 in x 4 in" in card and "5 rows" in card for card in page.locator("#find-list .found").all_inner_texts()
    )
    # Opening one marks the tube; with another in the list it is looked for all the same.
    page.locator("#find-list .found").first.get_by_role("button", name="Open", exact=True).tap()
    page.wait_for_function("() => location.hash.includes('mine=') && location.hash.includes('wall')")
    reopen(page)
    page.evaluate("document.getElementById('have').open = true")
    page.fill("#have-tube", "3 1/2 x 3 1/2 x 3/16 in")
    page.tap("#find-go")
    page.wait_for_function(
        "() => document.querySelector('#find-list .found:not([hidden])')?.innerText.includes('tube 3 1/2')"
    )
    assert "5 rows" in page.locator("#find-list .found").first.inner_text()


def test_a_purchase_is_let_be_bought_and_looked_for_again_by_one_button(page):
    """The list had to be unfolded, the field found, the purchase typed and the button scrolled to."""
    open_find(page, tube="4 x 4 x 3/16 in", blower="0.5 inH2O 5 cfm", mine=f"{REST}; rows=5")
    assert not page.is_checked("#buy-blower")
    page.tap("#find-go")
    let_buy = page.get_by_role("button", name="Let it be bought, and look again")
    let_buy.wait_for()
    said, card = page.locator("#find-list").inner_text(), page.locator("#find-list .found").first.inner_text()
    assert "To spend in all then: " in said and "Blower: stop." in said
    assert "Blower: stop." not in card and "In the way: what is told above" in card  # once is enough
    # It is looked for from the design that the purchase was tried with.
    page.evaluate("""() => {
      const kept = JSON.parse(sessionStorage.getItem("burnercalc-found"));
      kept.reply.opens.settings.price_blower = "77";
      sessionStorage.setItem("burnercalc-found", JSON.stringify(kept));
    }""")
    page.reload()
    page.wait_for_selector("html[data-state=ready]")
    reopen(page)
    let_buy.tap()
    page.wait_for_function("() => document.getElementById('find-status').textContent.endsWith(' found.')")
    assert page.is_checked("#buy-blower")
    assert "Good" in page.locator("#find-list .found").first.inner_text().splitlines()
    found = page.evaluate("() => JSON.parse(sessionStorage.getItem('burnercalc-found')).reply.designs")
    assert {one["settings"]["price_blower"] for one in found} == {"77"}


def test_opening_a_found_design_says_what_it_marks_and_lets_go_of_it(page):
    open_find(page, tube="4 x 4 x 3/16 in", mine=f"{REST}; rows=5")
    page.uncheck("#buy-regulator")
    page.tap("#find-go")
    page.wait_for_selector("#find-list .found :text('Against your list')")
    assert "yet it is needed: regulator: " in page.locator("#find-list .found").first.inner_text()
    page.locator("#find-list .found").first.get_by_role("button", name="Open", exact=True).tap()
    page.wait_for_selector("#bars :text('Sizes of what you have are marked as mine now')")
    page.wait_for_function("() => location.hash.includes('mine=') && location.hash.includes('wall')")
    page.locator("#bars").get_by_role("button", name="Mine no longer").tap()
    page.wait_for_function("() => !location.hash.includes('mine=')")
    assert not page.locator("#bars :text('marked as mine')").count()


def test_under_each_purchase_stands_the_button_that_opens_its_design(page):
    """Under what leaves no fault stood the button that opened the design of the cheaper purchase, with its caution."""
    open_find(page, tube="4 x 4 x 3/16 in", blower="0.5 inH2O 5 cfm", mine=f"{REST}; rows=5")
    page.tap("#find-go")
    page.get_by_role("button", name="Open that design").wait_for()
    page.evaluate("""() => {
      const kept = JSON.parse(sessionStorage.getItem("burnercalc-found")), { opens } = kept.reply;
      opens.settings = { rows: "4" };
      opens.left = kept.reply.in_the_way;
      Object.assign(opens, { whole: "a larger blower 99.00", whole_kinds: ["blower"], whole_settings: { rows: "3" } });
      opens.adds = [["tube", "5 in x 5 in x 3/16 in, 9 in"]];
      sessionStorage.setItem("burnercalc-found", JSON.stringify(kept));
    }""")
    for name, rows in (("Open the design without a fault of its own", "3"), ("Open that design", "4")):
        page.reload()
        page.wait_for_selector("html[data-state=ready]")
        reopen(page)
        press = page.get_by_role("button", name=name)
        press.wait_for()
        stands = page.locator("#find-list > p:not(#found-other)").all_inner_texts()
        assert "The design on screen has fewer faults" in stands[1]
        whole = next(at for at, words in enumerate(stands) if "leaves no fault of the burner: a larger blower" in words)
        assert (
            "Open the design without a fault of its own" in stands[whole] and "Left in that design" in stands[whole - 1]
        )
        # Only the first could be bought by a button; a longer tube, which is no kind that is sold, by none.
        assert "Let it be bought, and look again" in stands[whole]
        assert sum("Put it on my list, and look again" in words for words in stands[:whole]) == 1
        press.tap()
        page.wait_for_selector("html[data-state=ready]")
        page.wait_for_function("rows => location.hash.includes(`rows=${rows}`)", arg=rows)


def test_the_list_is_kept_and_travels_as_a_file(page, tmp_path):
    open_find(page, **SHOP, mine="rows=4")
    assert not page.is_checked("#buy-tube") and page.is_checked("#buy-pipe")
    page.check("#buy-plate")
    with page.expect_download() as saved:
        page.tap("#have-export")
    text = saved.value.path().read_text(encoding="utf-8")
    assert "pins: 9/32 in" in text and "mine: rows=4" in text and "plate" in text.split("buy:")[1].split("\n")[0]
    page.reload()
    settle(page)
    page.tap("[data-open=find-box]")
    page.wait_for_function("() => document.getElementById('have-pins').value === '9/32 in'")
    assert page.is_checked("#buy-plate") and not page.is_checked("#buy-tube")
    page.fill("#have-pins", "")  # what went off by itself comes back by itself, after a reload too
    page.fill("#have-tube", "")
    assert page.is_checked("#buy-pins") and page.is_checked("#buy-tube") and page.is_checked("#buy-plate")
    page.fill("#have-pins", SHOP["pins"])
    page.fill("#have-tube", SHOP["tube"])
    other = tmp_path / "shop.json"
    other.write_text(json.dumps({"tube": ["4 x 4 x 3/16 in", "3 x 3 x 1/8 in"], "nails": "3"}), encoding="utf-8")
    page.set_input_files("#have-import", str(other))
    page.get_by_role("button", name="Use it all the same").click()
    page.wait_for_function("() => document.getElementById('have-tube').value.includes(';')")
    assert "nails" in page.locator("#find-status").inner_text() and page.input_value("#have-pins") == ""
    page.get_by_role("button", name="Bring mine back").click()
    page.wait_for_function("() => document.getElementById('have-pins').value === '9/32 in'")


TOLD = "#bars .bar.of-list"


def load(page, path, text):
    path.write_text(text, encoding="utf-8")
    page.set_input_files("#have-import", str(path))


def test_what_is_said_of_the_list_is_the_newest_answer_and_goes_with_the_next_edit(page, tmp_path):
    """Bring mine back stood over two refused files and another dialog, and threw away what was typed since."""
    open_find(page, **SHOP)
    load(page, tmp_path / "good.txt", "pins: 1/4 in\n")
    back = page.get_by_role("button", name="Bring mine back")
    back.wait_for()
    load(page, tmp_path / "bad.txt", "nothing of the kind")
    page.locator(TOLD, has_text="bad.txt is no list").wait_for()
    assert not back.is_visible() and "Yours stays as it is." in page.inner_text(TOLD)
    load(page, tmp_path / "good.txt", "pins: 5/16 in\n")
    back.wait_for()
    page.tap("#find-box [data-close]")
    page.tap("#share")
    assert not page.locator(TOLD).is_visible()
    page.tap("#share-box [data-close]")
    page.tap("[data-open=find-box]")
    assert back.is_visible()
    page.fill("#have-pins", "3/8 in")
    assert page.locator(TOLD).count() == 0 and page.input_value("#have-pins") == "3/8 in"


def test_a_file_with_faults_names_them_all_and_is_taken_only_when_told(page, tmp_path):
    """It took the place of a good list, and one of its two faults was named."""
    faulty = "pins: eight\ntube: -100 x 50 mm\nblower: 3 inH2O 80 cfm\n"
    open_find(page, **SHOP)
    kept = page.evaluate("() => localStorage.getItem('burnercalc-have')")
    load(page, tmp_path / "odd.txt", faulty)
    page.locator(TOLD, has_text="odd.txt").wait_for()
    said = page.inner_text(TOLD)
    assert "2 faults, so yours stays as it is" in said and "pins: eight" in said and "tube: -100 x 50 mm" in said
    assert page.evaluate("() => localStorage.getItem('burnercalc-have')") == kept
    page.get_by_role("button", name="Use it all the same").click()
    page.wait_for_function("() => document.getElementById('have-pins').value === 'eight'")
    assert page.locator("#have .refused:visible").count() == 2
    page.get_by_role("button", name="Bring mine back").click()
    page.wait_for_function("kept => localStorage.getItem('burnercalc-have') === kept", arg=kept)


def test_what_was_found_from_another_list_says_so(found):
    """After a refused list the designs of the one before stood there as if of this one."""
    reopen(found)
    other = found.locator("#found-other")
    assert not other.is_visible()
    found.evaluate("() => { document.getElementById('have').open = true; }")
    found.fill("#have-cylinder", "11 kg")
    assert other.is_visible()
    found.locator("#find-go").click()
    found.wait_for_selector("#have .refused:visible")
    assert found.locator("#find-list .found").first.is_visible() and other.is_visible()
    found.fill("#have-cylinder", "")
    assert not other.is_visible()


def test_what_was_found_stays_for_a_reload_and_for_a_weight_that_is_refused(found, site):
    reopen(found)
    cards = found.locator("#find-list").text_content()
    found.evaluate("() => { document.getElementById('weights').open = true; }")
    found.fill("#weight-money", "1e9")
    found.locator("#find-go").click()
    offer = found.get_by_role("button", name="Take 100")
    offer.wait_for()
    assert found.locator("#find-list .found").first.is_visible()
    assert found.locator("#find-list").text_content() == cards
    offer.click()
    assert found.input_value("#weight-money") == "100" and found.locator("#weights .refused").count() == 0
    found.reload()
    settle(found)
    reopen(found)
    found.wait_for_selector("#find-list .found")
    assert found.locator("#find-list").text_content() == cards
    assert "before the page was loaded anew" in found.locator("#find-status").inner_text()


def test_a_notice_covers_no_button_of_a_dialog(page):
    put(page, "rows", "3")  # one's own, so that what a link brings is told of
    page.evaluate("link => { location.hash = link; }", BAD)
    page.wait_for_selector("#told .bar")  # Shared design; yours is kept
    settle(page)
    page.evaluate("() => document.querySelector('[data-open=good-box]').click()")
    page.wait_for_selector("#good-take:visible")
    assert not page.locator("dialog .bar").count()  # it stands in the page, and no *Back to mine* beside what is taken
    page.evaluate("() => import('./bars.mjs').then(({ tell }) => tell('slow', 'Still computing.', ['Stop', () => {}]))")
    page.wait_for_selector("#good-box #bars .bar:visible")
    title, line = (page.locator(f"#good-box {part}").bounding_box() for part in ("h2", "#bars"))
    assert title["y"] + title["height"] <= line["y"]
    assert page.locator("#good-take").evaluate("""take => {
      const { left, top, width, height } = take.getBoundingClientRect();
      return [0.1, 0.5, 0.9].every((y) => document.elementFromPoint(left + width / 2, top + y * height) === take);
    }""")


def test_what_is_mine_goes_with_the_design_and_no_cure_moves_it(page, site):
    page.goto(site + BAD)
    shows(page, plain(BAD))
    field(page, "blower_shutoff_pressure")
    page.tap("#set-blower_shutoff_pressure .name")
    page.tap("#set-blower_shutoff_pressure .mine")
    page.wait_for_function("() => location.hash.includes('mine=blower_shutoff_pressure')")
    settle(page)
    assert page.locator("#set-blower_shutoff_pressure").get_attribute("data-mine") is not None
    page.evaluate("() => { for (const line of document.querySelectorAll('details.worst')) line.open = true; }")
    offers = page.locator("#chapter-feed .worst .cures").inner_text()
    assert "Marked as mine, so not tried:" in offers and "Blower pressure, shut: mine no longer" in offers
    assert "raise blower pressure" not in offers.lower()
    page.reload()
    settle(page)
    assert page.locator("#set-blower_shutoff_pressure").get_attribute("data-mine") is not None
    page.click("#share")
    page.uncheck("#share-mine")
    page.wait_for_function("() => !document.getElementById('share-link').value.includes('mine')")
    page.locator("#share-box [data-close]").click()
    page.evaluate("() => { for (const line of document.querySelectorAll('details.worst')) line.open = true; }")
    page.locator("#chapter-feed .worst .cures").get_by_role("button", name="mine no longer").first.tap()
    page.wait_for_function("() => !location.hash.includes('mine')")
    settle(page)
    assert "Marked as mine" not in page.locator("#chapter-feed .worst .cures").inner_text()


def test_a_job_says_what_stays_mine_and_begins_without_it_when_told(page, site):
    page.goto(f"{site}#v=2&port_diameter=1/4in&mine=port_diameter")
    shows(page, "#v=2&port_diameter=1/4in&mine=port_diameter")
    page.locator("#job-heat_treat").tap()
    page.wait_for_selector("#bars :text('Marked as mine, so left as it was: port diameter.')")
    assert "mine=port_diameter" in address(page)
    page.locator("#bars").get_by_role("button", name="Mine no longer").tap()
    free = json.loads(worker.handle(json.dumps({"kind": "job", "settings": {}, "job": "heat_treat"})))["link"]
    shows(page, plain(free))


def test_make_it_good_shows_before_and_after_and_is_one_step(page, site):
    page.goto(site + BAD)
    page.wait_for_function("bad => location.hash !== bad", arg=BAD)  # written in the page's order: it is shown
    settle(page)
    before = address(page)
    page.evaluate("() => document.querySelector('#chapters [data-go=start]').click()")
    page.tap("[data-open=good-box]")
    page.wait_for_selector("#good-found .changes")
    assert address(page) == before
    mended = make_good(from_link(BAD)[0])
    said = page.inner_text("#good-found")
    assert mended.mended and all(said.count(f"{fault.label}:") == 1 for fault in mended.mended)
    assert "another blower to buy" in said
    assert all(report.then(fault.key, mended) in said for fault in mended.mended)
    shown = page.locator("#good-found .changes").first.inner_text()
    assert mended.changes and all(change.label in shown and change.after in shown for change in mended.changes)
    first = mended.changes[0]  # does not suit: it stays as it is, and what else mends is looked for
    page.get_by_role("button", name=f"Mine: leave it: {first.label}").tap()
    mended = make_good(from_link(BAD)[0], [first.key])
    page.wait_for_selector(f"#good-found .changes >> text={mended.changes[0].label}: ")
    before = address(page)
    assert before.endswith(f"mine={first.key}") and f"{first.label}: " not in page.inner_text("#good-found .changes")
    page.tap("#good-take")
    page.wait_for_function("before => location.hash !== before", arg=before)
    settle(page)
    assert from_link(address(page))[0] == mended.after.design
    # What it holds is told once more where it stands, with the way back.
    told = page.locator("#bars .bar", has_text="changed.")
    assert mended.held and report.held_said(mended) in told.inner_text()
    told.get_by_role("button", name="Undo").tap()
    page.wait_for_function("before => location.hash === before", arg=before)


JUST = (  # two burners on a small blower: mended, and at fault in most shops a little off
    "#v=2&units=mm&body_length=300mm&body_width=50mm&body_depth=100mm&wall=3mm&setback=11mm&port_diameter=8mm&rows=1"
    "&ports_per_row=17&edge_margin=6mm&block_thickness=65mm&grip=13mm&inlet=1&chamber_width=100mm&chamber_height=100mm"
    "&lining=dense_castable+18.75+mm,+ifb_26+64+mm,+blanket_8lb+25+mm&opening_depth=115mm&heat_up_time=55min"
    "&burner_count=2&firing_rate=auto&low_fire=60%25&blower_shutoff_pressure=0.3kPa&blower_free_flow=100m3/h&mix_pipe=2"
    "&mix_pipe_length=550mm&baffle_holes=25&baffle_hole_diameter=9.5mm&gas_pressure=350mbar&cylinder=20"
    "&cylinder_count=1"
)


def test_a_design_that_only_just_passes_says_so_in_its_line_once_the_notice_is_shut(page, site):
    """Close the notice, and a green Good alone was left."""
    mended = make_good(from_link(JUST)[0])
    assert not mended.left and mended.held
    words = report.only_just(mended.held.good, mended.held.shops)
    page.goto(site + JUST)
    shows(page, to_link(from_link(JUST)[0]))
    page.tap("[data-open=good-box]")
    page.wait_for_selector("#good-found .changes")
    page.tap("#good-take")
    page.wait_for_function(
        "words => document.querySelector('#chapter-start .worst .words').textContent === words", arg=words
    )
    page.locator("#bars .bar", has_text="changed.").get_by_role("button", name="Undo").tap()
    page.wait_for_function(
        "words => document.querySelector('#chapter-start .worst .words').textContent !== words", arg=words
    )
    page.tap("#redo")
    page.wait_for_function(
        "words => document.querySelector('#chapter-start .worst .words').textContent === words", arg=words
    )


def test_a_word_of_the_trade_keeps_its_genitive_on_its_line(page):
    """ "Mix pipe" stood at the end of a line and "'s tap" on the next."""
    kept = page.evaluate("""async () => {
      const place = document.createElement("p");
      place.textContent = "Read it at the mix pipe's tap.";
      return (await import("./glossary.mjs")).explain(place).querySelector(".kept")?.textContent;
    }""")
    assert kept == "mix pipe's"


def test_make_it_good_tells_what_it_is_at(page, site):
    told = []
    reply = worker.handle(json.dumps({"kind": "good", "settings": from_link(JUST)[0].texts}), told.append)
    said = [json.loads(each) for each in told]
    assert json.loads(reply)["ok"] and said and all(each["done"] <= each["most"] for each in said)
    assert {each["so_far"] for each in said} >= {"looking for changes", "built in shops a little off"}


def test_what_if_counts_shops_and_draws_swings(context, page):
    held = []
    first = lambda route: '"kind":"shops"' in route.request.post_data and not held
    context.route("**/ask", lambda route: held.append(route) if first(route) else route.fallback())
    page.tap("[data-open=shops-box]")
    press = page.locator("#shops-box .run button")
    page.wait_for_selector("#shops-box progress:visible")
    press.click()
    assert page.inner_text("#shops-status") == "Stopped." and press.inner_text() == "Start again"
    press.click()
    page.wait_for_selector("#shops-found .swings")
    assert not press.is_visible() and not page.locator("#shops-box progress").is_visible()
    fire = page.inner_text(".lead .big")  # the swings are about the fire that the first screen tells
    assert page.locator("#shops-found h3").first.inner_text() == f"Fire at the gas pressure told: {fire}"
    assert "of 100 shops like yours" in page.locator("#shops-found").inner_text()
    assert page.locator("#shops-found h3").count() == 4


def test_a_list_in_a_link_is_taken_or_offered(page, site):
    link = to_link(Design(), beside={"have": "pins: 5/16 in\n", "mine": "rows"})
    assert beside(link) == {"have": "pins: 5/16 in\n", "mine": "rows"}
    page.goto(site + link)
    settle(page)
    page.tap("[data-open=find-box]")
    page.wait_for_function("() => document.getElementById('have-pins').value === '5/16 in'")
    page.fill("#have-pins", "3/8 in")
    page.tap("#find-box [data-close]")
    page.evaluate("link => { location.hash = link; }", link + "&rows=3")
    page.get_by_role("button", name="Keep mine").click()
    page.tap("[data-open=find-box]")
    assert page.input_value("#have-pins") == "3/8 in"


KEPT = "() => localStorage.getItem('burnercalc-have')"


def test_a_list_that_was_replaced_by_a_links_comes_back_whole(context, page, site):
    open_find(page, tube=SHOP["tube"], blower=SHOP["blower"])
    kept = page.evaluate(KEPT)
    other = context.new_page()  # another visit: the dialog was not opened in it
    open_ready(other, site + to_link(Design(), beside={"have": "pins: 1/4 in\n"}))
    other.get_by_role("button", name="Use that list").click()
    other.get_by_role("button", name="Bring mine back").click()
    other.wait_for_function("kept => localStorage.getItem('burnercalc-have') === kept", arg=kept)


def test_two_tabs_write_one_list(context, page, site):
    other = context.new_page()
    open_ready(other, site)
    open_find(page)
    open_find(other)
    page.fill("#have-tube", SHOP["tube"])
    other.wait_for_function("text => document.getElementById('have-tube').value === text", arg=SHOP["tube"])
    other.fill("#have-pins", SHOP["pins"])
    assert SHOP["tube"] in other.evaluate(KEPT) and SHOP["pins"] in other.evaluate(KEPT)


def test_a_list_that_cannot_be_kept_stays_while_the_page_is_open(page):
    page.evaluate(
        "() => { Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }; }"
    )
    open_find(page, tube=SHOP["tube"])
    assert "does not let the page keep" in page.locator("#find-status").inner_text()
    page.tap("#find-box [data-close]")
    page.tap("[data-open=find-box]")
    assert page.input_value("#have-tube") == SHOP["tube"]


@pytest.mark.parametrize("text", ["", "\0\1\2", '{"kind": "burner designs", "designs": []}', "x" * 30_000])
def test_a_file_that_is_no_list_leaves_the_list(page, tmp_path, text):
    open_find(page, tube=SHOP["tube"])
    kept = page.evaluate(KEPT)
    (tmp_path / "odd.txt").write_text(text)
    page.set_input_files("#have-import", str(tmp_path / "odd.txt"))
    page.locator(TOLD, has_text="is no list").wait_for()
    assert page.evaluate(KEPT) == kept and page.input_value("#have-tube") == SHOP["tube"]


@pytest.mark.parametrize(
    "address", ["#rows=4&ports_per_row=7", "?rows=4&ports_per_row=7", "?rows=4&ports_per_row=7&v=2#face"]
)
def test_a_link_without_a_version_opens_too(page, site, address):
    page.goto("about:blank")
    open_ready(page, site + address)
    assert "rows=4" in page.evaluate("() => location.hash") and "ports_per_row=7" in page.evaluate(
        "() => location.hash"
    )


def test_the_search_finds_the_tools(page):
    page.click("[data-open=search-box]")
    page.fill("#search-for", "what i have")
    page.locator('[data-find="find-box"]').click()
    assert page.locator("#find-box").is_visible()


def test_a_search_is_stopped_and_the_page_answers_meanwhile(context, site):
    """The search's question is held back, so that both can be tried while it runs."""
    held = []
    context.route(
        "**/ask", lambda route: held.append(route) if '"kind":"find"' in route.request.post_data else route.fallback()
    )
    page = context.new_page()
    page.set_default_timeout(READY_MS)
    open_ready(page, site)
    open_find(page, **SHOP)
    page.tap("#find-go")
    page.wait_for_selector("#find-stop:visible")
    page.tap("#find-box [data-close]")
    put(page, "rows", "3")
    assert address(page) == "#v=2&rows=3" and held
    page.evaluate("() => document.querySelector('[data-open=find-box]').click()")
    page.tap("#find-stop")
    page.wait_for_function("() => document.getElementById('find-status').textContent === 'Stopped.'")
    assert page.is_enabled("#find-go")
    page.close()


FOCUSED = "() => document.activeElement.id || document.activeElement.textContent"


def test_a_burner_is_found_and_opened_by_keyboard_alone(chromium, site):
    """Tab, Enter and Escape only, and each stop of the way shows where it is."""
    context = host(chromium.new_context(viewport={"width": 1000, "height": 900}, service_workers="block"))
    page = context.new_page()
    page.set_default_timeout(READY_MS)
    open_ready(page, site)
    walk_to(page, lambda at: at["words"] == "Find one")
    page.keyboard.press("Enter")
    page.wait_for_selector("#find-box[open]")
    assert page.evaluate("() => document.activeElement.closest('#find-box') !== null")
    for kind, text in SHOP.items():
        walk_to(page, lambda at: at["id"] == f"have-{kind}")
        page.keyboard.type(text)
    walk_to(page, lambda at: at["id"] == "find-go")
    page.keyboard.press("Enter")
    page.wait_for_selector("#find-list .found")
    assert page.evaluate(FOCUSED).startswith("Best of all")
    walk_to(page, lambda at: at["words"] == "Compare", most=12)  # words of the trade, each once, are stops too
    page.keyboard.press("Enter")
    page.wait_for_selector("#compare-box[open] #compare-answers tr")
    page.keyboard.press("Escape")
    page.wait_for_selector("#compare-box:not([open])", state="attached")
    assert page.evaluate(FOCUSED) == "Compare"  # back where it was, in the list of what was found
    before = address(page)
    walk_to(page, lambda at: at["words"] == "Open", "Shift+Tab", most=2)
    page.keyboard.press("Enter")
    page.wait_for_function("before => location.hash !== before", arg=before)
    assert not page.locator("#find-box").is_visible() and page.evaluate(FOCUSED) == "Find one"
    settle(page)
    page.keyboard.press("Enter")  # the list stands as it was
    assert page.input_value("#have-pins") == SHOP["pins"] and page.locator("#find-list .found").count() >= 2
    page.keyboard.press("Escape")
    assert not page.locator("#find-box").is_visible() and page.evaluate(FOCUSED) == "Find one"
    context.close()


def test_another_design_shuts_what_a_dialog_says_of_the_one_before(page):
    page.tap("[data-open=good-box]")
    page.wait_for_selector("#good-box[open]")
    page.evaluate("() => { location.hash = '#v=2&rows=3'; }")
    page.wait_for_selector("#good-box", state="hidden")
