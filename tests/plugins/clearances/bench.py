"""What the checks of these families found."""

from __future__ import annotations

from collections.abc import Mapping

from speclint.checking import Check
from tests.plugins.known_metals import METALS, WITH_METALS
from tests.workshop import Workshop


def write(
    workshop: Workshop, files: Mapping[str, str], *changes: tuple[str, str, str], settings: str = ""
) -> Workshop:
    """Files with some passages changed (file, old, new), and the metals of round figures beside them."""
    texts = {"metals.toml": METALS, **files}
    for file, old, new in changes:
        assert texts[file].count(old) == 1, f"{old!r} stands {texts[file].count(old)} times in {file}"
        texts[file] = texts[file].replace(old, new)
    return workshop.write(texts, settings=WITH_METALS + settings)


def found(check: Check) -> float:
    """The value that was judged."""
    assert check.judgement is not None
    assert check.judgement.found is not None
    return check.judgement.found.value


def limit(check: Check) -> float:
    """The limit that it was judged by."""
    assert check.judgement is not None
    assert check.judgement.limit is not None
    return check.judgement.limit.value


def step(check: Check, symbol: str) -> float:
    """The last value of a symbol on the sheet."""
    values = [one.value for one in check.steps if one.symbol == symbol]
    assert values, symbol
    assert isinstance(values[-1], float)
    return values[-1]
