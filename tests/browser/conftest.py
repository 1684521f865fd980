"""Fixtures for the browser tests: the site on localhost, Chromium, and a phone that must stay quiet and at home."""

import os
import threading

import pytest
from browser import engines
from playwright.sync_api import sync_playwright

import build

PHONE = {"viewport": {"width": 412, "height": 915}, "device_scale_factor": 2.625, "is_mobile": True, "has_touch": True}
COMPILED_ONCE = (
    "--js-flags=--no-wasm-tier-up --no-wasm-dynamic-tiering"  # no page here lives long enough for better code
)
READY_MS = 60_000  # a limit for a hung start, not a speed that is tested


@pytest.fixture(scope="session")
def site():
    """Address of dist/, served on localhost."""
    build.build()
    server = build.server()
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()


@pytest.fixture(scope="session")
def chromium():
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=engines.shell(), args=[*engines.CHROMIUM_ARGUMENTS, COMPILED_ONCE]
        )
        yield browser
        browser.close()


def watch(page, site):
    """List of what a page must not do: log an error, raise one, or ask another host; it fills as the page runs."""
    wrong = []
    page.on(
        "console",
        lambda message: (
            message.type == "error" and wrong.append(f"console: {message.text} ({message.location['url']})")
        ),
    )
    page.on("pageerror", lambda error: wrong.append(f"error: {error}"))
    page.on(
        "request",
        lambda request: (
            request.url.startswith((site, "blob:" + site, "data:")) or wrong.append(f"request to {request.url}")
        ),
    )
    return wrong


@pytest.fixture
def phone_context(chromium):
    context = chromium.new_context(**PHONE, accept_downloads=True)
    yield context
    context.close()


@pytest.fixture
def phone(phone_context, site):
    """A page of phone size, not opened yet; the test fails if it logs an error or asks another host."""
    page = phone_context.new_page()
    page.set_default_timeout(READY_MS)
    wrong = watch(page, site)
    yield page
    assert wrong == []


def open_ready(page, address):
    """Open the page and wait until Python has answered."""
    page.goto(address)
    page.wait_for_selector("html[data-state=ready]", state="attached", timeout=READY_MS)
    return page


def pytest_collection_modifyitems(items):
    """Browser tests last: the quick ones report first."""
    here = os.path.dirname(__file__)
    items.sort(key=lambda item: str(item.path).startswith(here))
