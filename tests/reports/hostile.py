"""Text that a spec may hold by accident or malice, and the marks by which a report would betray that it obeyed."""

from __future__ import annotations

#: One of each sort: markup, script, terminal control, writing direction, spreadsheet formula, links, length.
TEXTS = {
    "markup": '<b onmouseover="x()">bold</b><script>alert(1)</script>&amp;',
    "markdown": "**bold** [here](https://example.invalid) `code` | cell @someone #12 ~~no~~",
    "control": "red \x1b[31mink\x07 and \x9b2J",
    "direction": "CN-\u202e1021-C\u2066 \u200bend",
    "formula": "=HYPERLINK(1)+A2",
    "braces": "{0} [place](1) }} {{",
    "long": "W" * 3000,
    "sentinels": "]]>--></style></title>",
}


def quoted(text: str) -> str:
    """The text as a TOML string."""
    escaped = "".join(
        f"\\u{ord(letter):04x}" if ord(letter) < 32 or ord(letter) > 126 or letter in '"\\' else letter
        for letter in text
    )
    return f'"{escaped}"'
