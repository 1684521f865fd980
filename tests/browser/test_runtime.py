"""The worker and the service worker by themselves, without the page."""

import json
import shutil
import sys
import threading
from urllib.parse import urlsplit

import pytest
from browser.conftest import watch

import build

sys.path.insert(0, str(build.ROOT / "site" / "make"))
import assemble

START = """() => new Promise((resolve) => {
  const worker = new Worker("./worker.mjs", { type: "module" });
  window.worker = worker;
  window.messages = [];
  worker.onmessage = ({ data }) => {
    window.messages.push(data);
    if (data.name === "ready" || data.kind === "failed") resolve(window.messages);
  };
  setTimeout(() => resolve([...window.messages, { kind: "nothing within a minute" }]), 60000);
})"""
ASK = """(requests) => new Promise((resolve) => {
  const replies = [];
  window.worker.onmessage = ({ data }) => {
    if (data.id === undefined) return; // a stage, or what it is at
    replies.push(data);
    if (replies.length === requests.length) resolve(replies);
  };
  for (const request of requests) window.worker.postMessage(request);
})"""
REGISTER = """() => navigator.serviceWorker.register("./sw.mjs").then((registration) => new Promise((resolve) => {
  const worker = registration.installing ?? registration.waiting ?? registration.active;
  const look = () => ["activated", "redundant"].includes(worker.state) && resolve(worker.state);
  worker.addEventListener("statechange", look);
  look();
}))"""
KEPT = """async () => {
  const kept = [];
  for (const name of await caches.keys()) {
    for (const request of await (await caches.open(name)).keys()) kept.push(new URL(request.url).pathname.slice(1));
  }
  return kept.sort();
}"""
BARE = "manifest.webmanifest"  # any file of the site that is no page: it runs nothing by itself


@pytest.fixture
def bare(chromium, site):
    """A page at the site's address that holds none of the site's own code."""
    context = chromium.new_context(service_workers="block")
    page = context.new_page()
    page.goto(site + BARE)
    yield page
    context.close()


def stages(messages):
    return [message.get("name") or message for message in messages]


def test_worker_starts_and_answers(bare, site):
    wrong = watch(bare, site)
    assert stages(bare.evaluate(START)) == ["loadRuntime", "loadPackage", "selfCheck", "ready"]
    check = json.loads((build.DIST / "selfcheck.json").read_text())
    (reply,) = bare.evaluate(ASK, [{"id": 7, **check["request"]}])
    assert reply["id"] == 7
    assert reply["ok"] is True
    # The browser looks for an icon because the bare page names none.
    assert [line for line in wrong if "favicon.ico" not in line] == []


def test_only_the_newest_waiting_solve_is_computed(bare):
    bare.evaluate(START)
    request = json.loads((build.DIST / "selfcheck.json").read_text())["request"]
    replies = bare.evaluate(ASK, [{**request, "kind": "solve", "id": number} for number in range(6)])
    dropped = [reply["id"] for reply in replies if reply.get("dropped")]
    # All six are sent in one turn; the first may be taken up before the second arrives.
    assert dropped in ([0, 1, 2, 3, 4], [1, 2, 3, 4])
    assert replies[-1]["id"] == 5 and replies[-1]["ok"] is True


@pytest.mark.parametrize(
    "pattern, stage",
    [
        ("**/pyodide.asm.wasm", "loadRuntime"),
        ("**/python_stdlib.zip", "loadRuntime"),
        ("**/pint-*.whl", "loadPackage"),
        ("**/burnercalc-*.whl", "loadPackage"),
        ("**/selfcheck.json", "selfCheck"),
    ],
)
def test_worker_says_where_and_why_it_cannot_start(bare, pattern, stage):
    bare.route(pattern, lambda route: route.fulfill(status=404, body="gone"))
    *_, last = bare.evaluate(START)
    assert (last["kind"], last["stage"]) == ("failed", stage)
    assert last["text"].strip()


def test_worker_refuses_a_wheel_that_is_not_as_locked(bare):
    bare.route(
        "**/segno-*.whl",
        lambda route: route.fulfill(body=next((build.DIST / "pyodide").glob("pydyf-*.whl")).read_bytes()),
    )
    *_, last = bare.evaluate(START)
    assert (last["kind"], last["stage"]) == ("failed", "loadPackage")


def test_worker_refuses_numbers_that_differ_from_the_pages(bare):
    check = json.loads((build.DIST / "selfcheck.json").read_text())
    key, _ = next(iter(check["reply"].items()))
    check["reply"][key] = "something else"
    bare.route("**/selfcheck.json", lambda route: route.fulfill(json=check))
    *_, last = bare.evaluate(START)
    assert (last["kind"], last["stage"]) == ("failed", "selfCheck")
    assert key in last["text"] and "something else" in last["text"]


def test_every_module_of_the_package_imports_in_the_browser(bare, site):
    """Nothing that the package needs may be missing from the shortened standard library."""
    modules = sorted(
        ".".join(path.relative_to(build.ROOT).with_suffix("").parts).removesuffix(".__init__")
        for path in (build.ROOT / "burnercalc").rglob("*.py")
        if path.name != "__main__.py"
    )
    failed = bare.evaluate(
        """async (modules) => {
      const { loadPyodide } = await import("./pyodide/pyodide.mjs");
      const python = await loadPyodide();
      await python.loadPackage("burnercalc", { messageCallback: () => {} });
      const failed = [];
      for (const name of modules) {
        try { python.pyimport(name); } catch (error) { failed.push(`${name}: ${error.message}`); }
      }
      return failed;
    }""",
        modules,
    )
    assert failed == []


# The service worker


def listening(folder):
    server = build.server(folder=folder)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    return server, f"http://127.0.0.1:{server.server_port}/"


def site_files():
    return sorted(
        path.relative_to(build.DIST).as_posix()
        for path in build.DIST.rglob("*")
        if path.is_file() and not path.relative_to(build.DIST).as_posix().startswith(assemble.NOT_KEPT)
    )


def test_site_opens_without_a_server(phone_context, site):
    server, address = listening(build.DIST)
    page = phone_context.new_page()
    page.goto(address + BARE)
    assert page.evaluate(REGISTER) == "activated"
    assert page.evaluate(KEPT) == site_files()
    server.shutdown()
    server.server_close()
    page.goto(address + BARE)
    assert stages(page.evaluate(START)) == ["loadRuntime", "loadPackage", "selfCheck", "ready"]
    for query in ("", "?v=2&rows=4", "index.html?v=2"):
        response = page.goto(address + query)
        assert response.status == 200 and response.from_service_worker
        assert response.text() == (build.DIST / "index.html").read_text()


@pytest.mark.parametrize(
    "spoil", [lambda file: file.unlink(), lambda file: file.write_text("of another build")], ids=["missing", "changed"]
)
def test_nothing_is_kept_unless_all_is(phone_context, site, tmp_path, spoil):
    shutil.copytree(build.DIST, tmp_path / "dist")
    spoil(tmp_path / "dist" / "figure.css")
    server, address = listening(tmp_path / "dist")
    page = phone_context.new_page()
    page.goto(address + BARE)
    assert page.evaluate(REGISTER) == "redundant"
    assert page.evaluate(KEPT) == []
    server.shutdown()
    server.server_close()


def test_an_old_version_stays_until_its_pages_are_closed(phone_context, site, tmp_path):
    folder = tmp_path / "dist"
    shutil.copytree(build.DIST, folder)
    server, address = listening(folder)
    first = phone_context.new_page()
    first.goto(address + BARE)
    assert first.evaluate(REGISTER) == "activated"
    before = first.evaluate("() => caches.keys()")
    worker = folder / "sw.mjs"
    text = worker.read_text()
    version = before[0].rsplit(" ", 1)[1]
    worker.write_text(text.replace(version, "0" * 16))
    first.evaluate("""() => navigator.serviceWorker.getRegistration().then(async (registration) => {
      await registration.update();
      const next = registration.installing ?? registration.waiting;
      const changed = () => new Promise((done) => next.addEventListener("statechange", done, { once: true }));
      if (next.state !== "installed") await changed();
    })""")
    both = first.evaluate("() => caches.keys()")
    assert before[0] in both and len(both) == 2
    first.close()
    second = phone_context.new_page()
    second.goto(address + BARE)
    for _ in range(600):  # activation follows the closing of the last page, soon but not at once
        kept = second.evaluate("() => caches.keys()")
        if len(kept) == 1:
            break
        second.wait_for_timeout(100)
    assert [name.rsplit(" ", 1)[1] for name in kept] == ["0" * 16]
    assert urlsplit(address).netloc in kept[0]
    server.shutdown()
    server.server_close()
