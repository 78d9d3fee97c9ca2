"""The texts of the guide as pages: headings, code, pictures; markup in a text stays text."""

from __future__ import annotations

import pytest

from speclint.reports.reference.every_page import files_of
from speclint.reports.reference.guide_pages import guide_pages

TEXT = """# First steps

Begin with a *block*.

## The first <check>

```toml
wall = "20 mm" # & more
```

![A wall & its bore](figure:wall)

| key | unit |
| --- | ---- |
| wall | mm |

See [the next](second.html).
"""
DRAWING = '<svg class="drawing own-321" viewBox="0 0 1 1"></svg>'


def drawn(name: str) -> str:
    assert name == "wall"
    return DRAWING


def test_a_text_becomes_a_page_with_its_picture() -> None:
    texts = [("10-first-steps.md", TEXT), ("20-second.md", "# Second\n\nMore.\n")]
    pages = tuple(guide_pages(texts, drawn))
    assert [(page.file, page.title) for page in pages] == [
        ("guide/first-steps.html", "First steps"),
        ("guide/second.html", "Second"),
    ]
    html = files_of(pages)["guide/first-steps.html"]
    assert "<h1>First steps</h1>" in html
    assert '<h2 id="part-1">The first &lt;check&gt;</h2>' in html
    assert "<em>block</em>" in html
    assert "wall = &quot;20 mm&quot; # &amp; more" in html
    assert f'aria-label="drawing: A wall &amp; its bore">{DRAWING}</div></figure>' in html
    assert "<figcaption>A wall &amp; its bore</figcaption>" in html
    assert ".own-321 { --own: 321px; }" in html
    assert "<td>mm</td>" in html
    assert '<a href="second.html">the next</a>' in html
    order = [
        html.index(part) for part in ("<em>block", 'id="part-1"', "<pre>", "<figure", "<td>mm", "the next")
    ]
    assert order == sorted(order)


def test_markup_in_a_text_is_shown_and_not_taken() -> None:
    (page,) = guide_pages([("10-a.md", "# A\n\n<script>alert(1)</script> <b>bold</b>\n")], drawn)
    html = page.content["html"]
    assert "<script>" not in html
    assert "&lt;b&gt;bold" in html


def test_entries_lead_to_the_text_and_to_its_headings() -> None:
    (page,) = guide_pages([("10-first-steps.md", TEXT)], drawn)
    assert [(one.name, one.place) for one in page.entries] == [
        ("First steps", "guide/first-steps.html"),
        ("The first <check>", "guide/first-steps.html#part-1"),
    ]


def test_a_text_without_a_title_is_refused() -> None:
    with pytest.raises(ValueError, match=r"10-a\.md: a text of the guide begins with its title"):
        list(guide_pages([("10-a.md", "No title\n")], drawn))
