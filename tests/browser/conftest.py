"""A browser for the tests of pages: the distribution's Chromium, driven by Playwright.

Where ``CI`` is set an absent browser fails the tests; elsewhere they are skipped, and say so.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from speclint.reports.pack import REVIEW_FILE
from tests.browser.reader import Reader
from tests.reports.test_pack import drawn_page

if TYPE_CHECKING:
    from playwright.sync_api import Browser

_NAMES = ("chromium", "chromium-browser", "google-chrome")
_ARGUMENTS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


def _absent(why: str) -> None:
    if os.environ.get("CI"):
        pytest.fail(f"{why}, and in CI the pages must be tested")
    pytest.skip(f"{why}: the pages are not tested")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """The browser, started once."""
    found = next((path for name in _NAMES if (path := shutil.which(name))), None)
    if found is None:
        _absent("there is no Chromium")
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        _absent("Playwright is not installed")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=found, headless=True, args=[*_ARGUMENTS])
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def pack(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The review pack of one cylinder of the example, in a folder of its own."""
    path = tmp_path_factory.mktemp("pack") / REVIEW_FILE
    path.write_text(drawn_page(), encoding="utf-8", newline="\n")
    return path


@pytest.fixture
def reader(browser: Browser, pack: Path) -> Iterator[Reader]:
    """The pack opened from its file, without a network; what the page complains of is kept."""
    context = browser.new_context(viewport={"width": 1200, "height": 900}, offline=True)
    reader = Reader(context.new_page(), pack)
    reader.open()
    yield reader
    context.close()
