"""The text of an entry of the register that is signed."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from typing import Any


def statement_of(content: Mapping[str, Any]) -> bytes:
    """What an entry says, in one layout whatever that of the file: JSON with its keys in order."""
    import json  # only where something is signed

    plain = {
        name: str(value) if isinstance(value, dt.date) else value  # a tuple is written as a list
        for name, value in content.items()
    }
    return json.dumps(plain, ensure_ascii=False, sort_keys=True, indent=1).encode("utf-8") + b"\n"
