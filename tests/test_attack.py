"""A short slice of the standing attack, the same each time; at length it runs as `build.py attack`."""

import time

import pytest
from attack.judge import attack
from attack.run import TARGETS, main


@pytest.mark.parametrize(
    "target, trials",
    [("texts", 5000), ("agree", 200), ("links", 40), ("offers", 400), ("designs", 2000), ("requests", 60)],
)
def test_finds_nothing(target, trials):
    tally = attack(target, TARGETS[target][0], seed="slice", trials=trials)
    assert tally.clean and tally.tried >= trials, "\n".join(tally.found)


def test_tells_crash_hang_and_wrong_answer(monkeypatch):
    monkeypatch.setattr("attack.judge.HANG_S", 0.05)

    def trial(rng):
        kind = rng.randrange(4)
        if kind == 0:
            raise ZeroDivisionError
        if kind == 1:
            time.sleep(5)
        assert kind != 2, "wrong"
        return 1

    tally = attack("all", trial, seed=1, trials=40)
    assert tally.crashes and tally.hangs and tally.wrong and not tally.clean
    assert tally.crashes + tally.hangs + tally.wrong == len(tally.found) < tally.tried == 40


def test_ends_with_1_when_something_is_found(monkeypatch, capsys):
    assert main(["--only", "texts", "--trials", "100"]) == 0
    monkeypatch.setitem(TARGETS, "texts", (lambda rng: 1 / 0, 1))
    assert main(["--only", "texts", "--trials", "3"]) == 1
    assert "ZeroDivisionError" in capsys.readouterr().out


NEVER = ["9in*9**9**9", "9 in/0", "(" * 150, "9 " + "i" * 40000, "1'000 m", "9 1 in", "9 in!", "9\x00in", "9 -1/2 in"]


@pytest.mark.parametrize("text", NEVER, ids=lambda text: ascii(text[:20]))
def test_what_broke_it_once_is_refused_at_every_entrance(text):
    from attack import agree

    agree.judge("body_length", text, slow=True)
    assert agree.python({"body_length": text}) is agree.page({"body_length": text}) is None
