"""The standing attack: `build.py attack [--minutes N] [--seed S]`. Exit code 1 when anything is found."""

import argparse
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

from attack import (  # noqa: E402
    agree,
    assets,
    beside,
    designs,
    kills,
    links,
    offers,
    opened,
    parts,
    requests,
    storage,
    tabs,
    texts,
    updates,
    worker,
)
from attack.judge import attack  # noqa: E402

# Each target with its share of the time.
TARGETS = {
    "texts": (texts.trial, 3),
    "agree": (agree.trial, 2),
    "links": (links.trial, 2),
    "beside": (beside.trial, 2),
    "offers": (offers.trial, 2),
    "parts": (parts.trial, 2),
    "designs": (designs.trial, 4),
    "requests": (requests.trial, 2),
    "opened": (opened.trial, 1),
    "kills": (kills.trial, 2),
    "storage": (storage.trial, 1),
    "tabs": (tabs.trial, 1),
    "assets": (assets.trial, 3),
    "updates": (updates.trial, 2),
    "worker": (worker.trial, 1),
}


def main(argv=None):
    parser = argparse.ArgumentParser(prog="attack", description="Attack package and page with seeded random input.")
    parser.add_argument("--minutes", type=float, default=1.0, help="how long, all targets together; default 1")
    parser.add_argument("--seed", default="1", help="same seed, same attack; default 1")
    parser.add_argument("--only", nargs="+", choices=TARGETS, default=list(TARGETS), help="targets; default all")
    parser.add_argument("--trials", type=int, help="things tried a target instead of --minutes")
    parser.add_argument("--first", type=int, default=0, help="the trial to begin with, to go on or to see one again")
    given = parser.parse_args(argv)
    if not (0 < given.minutes < 1e5 and given.first >= 0 and (given.trials is None or given.trials > 0)):
        parser.error("--minutes and --trials must be above 0, --first 0 or more")
    shares = sum(TARGETS[name][1] for name in given.only)
    print(f"{'target':<9}{'tried':>9}{'seconds':>9}{'an hour':>9}{'crashes':>8}{'hangs':>6}{'wrong':>6}{'next':>8}")
    clean = True
    for name in given.only:
        trial, share = TARGETS[name]
        seconds = 60 * given.minutes * share / shares
        tally = attack(name, trial, given.seed, seconds, given.trials, given.first)
        hourly = round(3600 * tally.tried / tally.seconds)
        print(
            f"{name:<9}{tally.tried:>9}{tally.seconds:>9.1f}{hourly:>9}{tally.crashes:>8}{tally.hangs:>6}"
            f"{tally.wrong:>6}{tally.next:>8}",
            flush=True,
        )
        for line in tally.found[:10]:
            print("   ", line)
        clean &= tally.clean
    return 0 if clean else 1


if __name__ == "__main__":
    sys.exit(main())
