"""Print what the site weighs and how long it takes; run by `build.py bench`. It measures and judges nothing."""

import json
import os
import statistics
import subprocess
import sys
import threading
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
sys.path[:0] = [str(ROOT), str(ROOT / "tests"), str(ROOT / "site" / "make")]

import brotli  # noqa: E402
import runtime  # noqa: E402
from browser import engines  # noqa: E402
from browser.conftest import PHONE, open_ready  # noqa: E402
from playwright.sync_api import sync_playwright  # noqa: E402

import build  # noqa: E402

STARTS = 5
CHANGES = 30
SOLVES = 30
SLOWED = 4  # times, as a phone of five years ago
KEY = "port_diameter"  # the setting that is changed back and forth
TEXTS = ("5/16 in", "3/8 in")  # neither is the example's
BROTLI_CACHE = build.CACHE / "brotli.json"  # sizes by content, because packing takes seconds a file


def row(name, text):
    print(f"{name:44} {text}", flush=True)


def spread(values, unit="ms"):
    """Median and 95th percentile of some times."""
    ordered = sorted(values)
    p95 = ordered[min(len(ordered) - 1, int(0.95 * len(ordered)))]
    return f"median {statistics.median(ordered):.0f} {unit}, p95 {p95:.0f} {unit}, of {len(ordered)}"


def brotli_sizes(paths):
    """Size of each file packed by brotli at quality 9, as a host does it."""
    known = json.loads(BROTLI_CACHE.read_text()) if BROTLI_CACHE.exists() else {}
    sizes = {}
    for path in paths:
        data = path.read_bytes()
        key = build.sha256(data)
        if key not in known:
            known[key] = len(brotli.compress(data, quality=9))
        sizes[path] = known[key]
    BROTLI_CACHE.write_text(json.dumps(known))
    return sizes


def bench_bytes(browser, address):
    """What is fetched from the first request to the first answer."""
    context = browser.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    fetched = []
    page.on("request", lambda request: fetched.append(request.url))
    open_ready(page, address)
    context.close()
    names = {url.removeprefix(address).partition("?")[0] or "index.html" for url in fetched if url.startswith(address)}
    paths = sorted(build.DIST / name for name in names if (build.DIST / name).is_file())
    sizes = brotli_sizes(paths)
    row("files to the first answer", len(paths))
    row("  as they are", f"{sum(path.stat().st_size for path in paths) / 1e6:.2f} MB")
    row("  brotli 9", f"{sum(sizes.values()) / 1e6:.2f} MB")
    for path, size in sorted(sizes.items(), key=lambda item: -item[1])[:8]:
        row(f"    {path.relative_to(build.DIST).as_posix()}", f"{size / 1e6:.3f} MB")


LONG_TASKS = """
  window.longTasks = [];
  new PerformanceObserver((list) => list.getEntries().forEach((entry) => window.longTasks.push(entry.duration)))
    .observe({ type: "longtask", buffered: true });"""


def bench_start(browser, address):
    """First paint, and Python ready, each time in a browser context that has nothing stored."""
    paints, readies, tasks = [], [], []
    for _ in range(STARTS):
        context = browser.new_context(**PHONE, service_workers="block")
        page = context.new_page()
        page.add_init_script(LONG_TASKS)
        open_ready(page, address)
        readies.append(page.evaluate("performance.now()"))
        paints.append(page.evaluate("performance.getEntriesByName('first-contentful-paint')[0].startTime"))
        tasks.append(max(page.evaluate("window.longTasks") or [0]))
        context.close()
    row("first paint", spread(paints))
    row("Python ready", spread(readies))
    row("longest task of the page's thread at start", spread(tasks))


def change_setting(page, text):
    """Change the setting's widget; (time until the face is redrawn, time until every answer is there)."""
    return page.evaluate(
        """async ([key, text]) => {
      const { model } = await import("./models.mjs");
      const root = document.documentElement;
      const circles = model("face-circles").properties.data.change;
      const drawn = () => new Promise((resolve) =>
        requestAnimationFrame(() => setTimeout(() => resolve(performance.now()))));
      const start = performance.now();
      const redrawn = new Promise((resolve) => {
        const once = () => { circles.disconnect(once); resolve(drawn()); };
        circles.connect(once);
      });
      const answered = new Promise((resolve) => {
        let computing = false;
        const watcher = new MutationObserver((records) => {
          if (root.dataset.state !== "ready") computing = true;
          else if (computing || records.length > 1) { watcher.disconnect(); resolve(drawn()); }
        });
        watcher.observe(root, { attributes: true, attributeFilter: ["data-state"] });
      });
      model(key).value = text;
      const late = new Promise((_, reject) =>
        setTimeout(() => reject(new Error(`${key} = ${text} drew nothing`)), 10000));
      return Promise.race([late, Promise.all([redrawn, answered]).then((times) => times.map((time) => time - start))]);
    }""",
        [KEY, text],
    )


def make_live(page):
    """Open the setting's chapter, touch the page, and wait until the widget and the face are live."""
    page.locator(f".chapter:has(#set-{KEY})").evaluate(
        "each => document.querySelector(`#chapters [data-go=${each.id.replace('chapter-', '')}]`).click()"
    )
    page.mouse.move(10, 10)
    page.wait_for_selector(f"#root-{KEY} > div", state="attached")
    page.wait_for_selector("#figure-face[data-live]", state="attached")
    page.wait_for_timeout(2000)  # until what follows the start is over


def bench_changes(browser, address):
    """From a changed widget to the redrawn figure."""
    context = browser.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    open_ready(page, address)
    make_live(page)
    page.evaluate(f"() => {{ {LONG_TASKS.replace(', buffered: true', '')} }}")
    times = [change_setting(page, TEXTS[number % 2]) for number in range(CHANGES)]
    page.wait_for_timeout(200)
    tasks = page.evaluate("window.longTasks")
    row("changed widget to redrawn face", spread([redrawn for redrawn, _ in times]))
    row("changed widget to every answer", spread([answered for _, answered in times]))
    row("tasks over 50 ms of the page's thread", f"{len(tasks)}, longest {max(tasks, default=0):.0f} ms")
    context.close()


def bench_slow_page(browser, address):
    """The page's thread slowed: start, every chapter opened, changes."""
    context = browser.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    page.add_init_script(LONG_TASKS)
    context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    open_ready(page, address)
    paint = page.evaluate("performance.getEntriesByName('first-contentful-paint')[0].startTime")
    longest = {}

    def note(what):
        page.wait_for_timeout(3000)
        longest[what] = max(page.evaluate("window.longTasks.splice(0)"), default=0)

    note("start")
    make_live(page)
    for chapter in page.locator("#chapters [data-go]").all():
        chapter.evaluate("each => each.click()")
        page.wait_for_timeout(3000)
    note("every chapter opened")
    make_live(page)
    times = [change_setting(page, TEXTS[number % 2]) for number in range(CHANGES)]
    note("changes")
    row(f"page slowed {SLOWED} times: first paint", f"{paint:.0f} ms")
    for what, duration in longest.items():
        row(f"  longest task, {what}", f"{duration:.0f} ms")
    row("  changed widget to redrawn face", spread([redrawn for redrawn, _ in times]))
    context.close()


def bench_slow_worker(browser, address):
    """Each computation of the worker stretched."""
    context, page = slowed_page(browser, address)
    times = [change_setting(page, TEXTS[number % 2]) for number in range(CHANGES)]
    row(f"worker slowed {SLOWED} times: changed widget to face", spread([redrawn for redrawn, _ in times]))
    row("  to every answer", spread([answered for _, answered in times]))
    context.close()


def slowed_page(browser, address):
    """A page whose workers take so many times as long for each computation."""
    context = browser.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    text = (build.DIST / "worker.mjs").read_text()
    slowed = text.replace(
        "handle = ours;",
        f"""handle = (asked, ...rest) => {{
      const start = performance.now(), given = ours(asked, ...rest), took = performance.now() - start;
      while (performance.now() < start + {SLOWED} * took);
      return given;
    }};""",
    )
    assert slowed != text
    page.route("**/worker.mjs", lambda route: route.fulfill(content_type="text/javascript", body=slowed))
    open_ready(page, address)
    make_live(page)
    return context, page


SHOPS = {
    "all bought": {},
    "a tube, pins and a blower": {
        "tube": "3 1/2 x 3 1/2 x 3/16 in, 8 ft",
        "pins": "9/32 in",
        "blower": "3 inH2O 80 cfm",
    },
    "metric": {"tube": "100 x 50 x 3 mm, 2 m", "pins": "8 mm"},
}


def bench_find(browser, address):
    """A burner from what lies in the shop, in the slowed second worker: from the press to the first and to all."""
    for name, shop in SHOPS.items():
        context, page = slowed_page(browser, address)
        page.evaluate("() => document.querySelector('[data-open=find-box]').click()")
        for kind, text in shop.items():
            page.fill(f"#have-{kind}", text)
        page.wait_for_timeout(8000)  # the second Python starts while somebody types
        first, whole = page.evaluate("""() => new Promise((resolve) => {
          const start = performance.now();
          let first = null;
          const since = () => performance.now() - start;
          const place = (id) => document.getElementById(id);
          const watch = (id, hear) => new MutationObserver(hear).observe(place(id), { childList: true });
          watch("find-first", () => { first ??= since(); });
          watch("find-list", () => resolve([first ?? since(), since()]));
          document.getElementById("find-go").click();
        })""")
        # What is told on the way comes before the stretching.
        row(f"find, {name}: first good design, all", f"{SLOWED * first / 1e3:.1f} s, {whole / 1e3:.1f} s")
        context.close()
    context, page = slowed_page(browser, address)
    usual = [change_setting(page, TEXTS[number % 2])[1] for number in range(CHANGES)]
    page.evaluate("""() => {
      document.querySelector("[data-open=find-box]").click();
      document.getElementById("find-go").click();
      document.getElementById("find-box").close();
    }""")
    page.wait_for_timeout(3000)
    meanwhile = [change_setting(page, TEXTS[number % 2])[1] for number in range(CHANGES)]
    running = page.evaluate("() => !document.getElementById('find-stop').hidden")
    row("  a change, usually", spread(usual))
    row(f"  a change while it searches{'' if running else ' (it ended before the last)'}", spread(meanwhile))
    context.close()


def bench_parts():
    """Each part of a solve in CPython and in Pyodide (in Node), side by side."""
    here = Path(__file__).parent
    commands = {
        "CPython": [sys.executable, here / "bench_parts.py"],
        "Pyodide": [runtime.node_path(), here / "bench_parts.mjs", build.DIST],
    }
    found = {
        name: json.loads(
            subprocess.run(
                command,
                cwd=ROOT,
                check=True,
                capture_output=True,
                text=True,
                env={**os.environ, "PYTHONPATH": str(ROOT)},
            ).stdout.splitlines()[-1]
        )
        for name, command in commands.items()
    }
    row(f"medians: CPython {sys.version.split()[0]} | Pyodide {runtime.PYODIDE} in Node", "")
    for part in found["CPython"]:
        row(f"  {part}", " | ".join(f"{statistics.median(found[name][part]):8.2f} ms" for name in commands))


def bench_solve_pyodide(browser, address, request):
    """Through the worker, so the way there and back counts."""
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    page.goto(address + "manifest.webmanifest")
    times = page.evaluate(
        """([request, times]) => new Promise((resolve, reject) => {
      const worker = new Worker("./worker.mjs", { type: "module" });
      const taken = [];
      let start = 0;
      const ask = () => { start = performance.now(); worker.postMessage({ id: taken.length, ...request }); };
      worker.onmessage = ({ data }) => {
        if (data.kind === "failed") return reject(new Error(data.text));
        if (data.name === "ready") return ask();
        if (data.id === undefined) return;
        taken.push(performance.now() - start);
        if (taken.length === times) resolve(taken); else ask();
      };
    })""",
        [request, SOLVES],
    )
    row("solve in Pyodide, there and back", spread(times))
    context.close()


def main():
    server = build.server()
    threading.Thread(target=server.serve_forever, daemon=True).start()
    address = f"http://127.0.0.1:{server.server_port}/"
    request = json.loads((build.DIST / "selfcheck.json").read_text())["request"]
    start = time.perf_counter()
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=engines.chromium(), args=engines.CHROMIUM_ARGUMENTS)
        row("browser", f"Chromium {browser.version}, phone viewport, localhost, nothing throttled")
        bench_bytes(browser, address)
        bench_start(browser, address)
        bench_changes(browser, address)
        bench_slow_page(browser, address)
        bench_slow_worker(browser, address)
        bench_find(browser, address)
        bench_solve_pyodide(browser, address, request)
        browser.close()
    bench_parts()
    row("the bench itself", f"{time.perf_counter() - start:.0f} s")
    server.shutdown()


if __name__ == "__main__":
    main()
