"""Two tabs on the same designs: nothing that somebody kept is lost but by a deletion that can be undone."""

from attack.kills import KEEP, SAID, SHOWN
from attack.site import KEPT, opened, type_in, visitor

from burnercalc.design import Design
from burnercalc.link import to_link

STEPS = 4  # a trial
LISTED = "() => document.getElementById('designs-box').open && document.querySelectorAll('#design-list li').length"


def trial(rng):
    with visitor() as (context, address):
        tabs = [opened(context, address) for _ in range(2)]
        at_one_moment, asleep = rng.random() < 0.5, rng.random() < 0.7
        for tab in tabs:
            if asleep:  # a tab that hears late of what the other has changed
                tab.evaluate("() => { BroadcastChannel.prototype.postMessage = () => {}; }")
            tab.on("dialog", lambda dialog: dialog.accept(f"named {rng.randint(0, 10**9)}"))
            if at_one_moment:  # both tabs live in the same millisecond
                tab.evaluate("() => { Date.now = () => 1790000000000; }")
        for tab in tabs:
            keep(tab, rng, f"{rng.randint(0, 10**9)}")
        assert len(kept(tabs[0])) == len(tabs), f"two tabs kept a design each: {kept(tabs[0])}"
        for _ in range(STEPS):
            step(rng.choice(tabs), rng, tabs)
    return STEPS


def keep(tab, rng, name):
    """Keep what is on the page under a name, and wait for it."""
    text = f"{rng.randint(13, 30)} in"
    type_in(tab, "chamber_length", text)
    tab.wait_for_function(SHOWN, arg=to_link(Design.from_texts({"chamber_length": text})))
    tab.evaluate(KEEP, name)
    tab.wait_for_function(SAID)


def kept(tab):
    return {record["key"]: record for record in tab.evaluate(KEPT)}


def settled(tab, before, wanted):
    """What is kept once a step has been taken."""
    for _ in range(500):
        now = kept(tab)
        if wanted(now):
            return now
        tab.wait_for_timeout(10)
    raise AssertionError(f"from {before} to {now}")


def step(tab, rng, tabs):
    """One tab does something with its list while the other may have changed what is kept since it was listed."""
    open_list(tab)
    other = tabs[1 - tabs.index(tab)]
    before = kept(tab)
    rows = tab.locator("#design-list li")
    row = rows.nth(rng.randrange(rows.count()))
    name = row.locator("b").text_content()
    if rng.random() < 0.7:  # the list is of before this
        same = [record for record in before.values() if record["name"] == name]
        if same:
            close_list(other)
            keep(other, rng, name)
            before = kept(tab)
    links = sorted(record["link"] for record in before.values())
    act = rng.choice(("Rename", "Delete", "Duplicate"))
    row.get_by_role("button", name=act, exact=True).click()
    if act == "Rename":
        after = settled(
            tab, before, lambda now: {r["name"] for r in now.values()} != {r["name"] for r in before.values()}
        )
        assert sorted(record["link"] for record in after.values()) == links, f"renamed: {before} to {after}"
    elif act == "Duplicate":
        after = settled(tab, before, lambda now: len(now) == len(before) + 1)
        assert all(after[key] == record for key, record in before.items()), f"copied: {before} to {after}"
    else:
        after = settled(tab, before, lambda now: len(now) == len(before) - 1)
        assert all(before[key] == record for key, record in after.items()), f"deleted: {before} to {after}"
        tab.click("#undelete")
        again = settled(tab, before, lambda now: len(now) == len(before))
        assert again == before, f"brought back: {before} to {again}"
    close_list(tab)


def open_list(tab):
    if not tab.locator("#designs-box").evaluate("box => box.open"):
        tab.click("#designs")
    tab.wait_for_function(LISTED)


def close_list(tab):
    if tab.locator("#designs-box").evaluate("box => box.open"):
        tab.click("#designs-box [data-close]")
