"""What a page may do, said in the page itself: its own style and its own script, and nothing else.

After Content Security Policy Level 3 (W3C): a style or script counts as the page's own by its SHA-256 digest. Whatever
text might ever slip into the page as markup could then neither run nor fetch anything.
"""

from __future__ import annotations

import base64
import hashlib


def policy_of(style: str, script: str = "", *, loads: bool = False) -> str:
    """The policy of a page with one style and at most one script, each exactly as it stands between its tags.

    Where it ``loads``, that script may load others, as files beside the page; nothing else may.

    The digest of "abc" is that of the example in FIPS 180-4.

    >>> for part in policy_of("abc").split("; "):
    ...     print(part)
    default-src 'none'
    style-src 'sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0='
    base-uri 'none'
    form-action 'none'
    """
    allowed = {"style-src": (style, ""), "script-src": (script, " 'strict-dynamic'" if loads else "")}
    sources = [f"{what} 'sha256-{_digest(text)}'{more}" for what, (text, more) in allowed.items() if text]
    return "; ".join(["default-src 'none'", *sources, "base-uri 'none'", "form-action 'none'"])


def _digest(text: str) -> str:
    return base64.b64encode(hashlib.sha256(text.encode("utf-8")).digest()).decode("ascii")
