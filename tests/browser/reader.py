"""Someone who reads the pack: opens it, filters, follows links, looks at the drawings."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from playwright.sync_api import Page

#: Pairs of texts of one drawing that overlap, and texts that leave their drawing, in pixels.
_OVERLAPS = """() => {
  const wrong = [];
  for (const drawing of document.querySelectorAll("svg.drawing")) {
    const frame = drawing.getBoundingClientRect();
    const name = drawing.closest("figure").id;
    const texts = [...drawing.querySelectorAll("text")]
      .map((text) => [text.textContent, text.getBoundingClientRect()]);
    texts.forEach(([said, box], index) => {
      const beside = box.left < frame.left - 1 || box.right > frame.right + 1;
      if (beside || box.top < frame.top - 1 || box.bottom > frame.bottom + 1)
        wrong.push(`${name}: "${said}" is cut`);
      for (const [other, next] of texts.slice(index + 1)) {
        const wide = Math.min(box.right, next.right) - Math.max(box.left, next.left);
        const high = Math.min(box.bottom, next.bottom) - Math.max(box.top, next.top);
        if (wide > 1 && high > 0.25 * Math.min(box.height, next.height))
          wrong.push(`${name}: "${said}" over "${other}"`);
      }
    });
  }
  return wrong;
}"""
_READY = "html[data-ready=yes]"


class Reader:
    """A page with what it complained of."""

    def __init__(self, page: Page, path: Path) -> None:
        self.page, self._path = page, path
        self.complaints: list[str] = []
        self.asked_for: list[str] = []
        page.on("console", self._console)
        page.on("pageerror", lambda error: self.complaints.append(str(error)))
        page.on("request", lambda request: self.asked_for.append(request.url))

    def _console(self, message: Any) -> None:
        if message.type in ("error", "warning"):
            self.complaints.append(message.text)

    def open(self, place: str = "") -> None:
        """Open the file, at a place where one is named, and wait until its sheets are unpacked."""
        self.page.goto(f"{self._path.as_uri()}{place}")
        self.page.wait_for_selector(_READY)

    def overlaps(self) -> list[str]:
        """Texts of drawings that overlap or are cut."""
        return list(self.page.evaluate(_OVERLAPS))

    def shown(self, what: str) -> int:
        """How many things of a sort are on the page and not hidden."""
        script = (
            "(what) => [...document.querySelectorAll(what)].filter((one) => !one.closest('[hidden]')).length"
        )
        return int(self.page.evaluate(script, what))
