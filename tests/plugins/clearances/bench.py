"""What the checks of these families found."""

from __future__ import annotations

from collections.abc import Mapping

from speclint.testing import DesignFolder
from tests.plugins.known_metals import METALS, WITH_METALS


def write(
    workshop: DesignFolder, files: Mapping[str, str], *changes: tuple[str, str, str], settings: str = ""
) -> DesignFolder:
    """Files with some passages changed (file, old, new), and the metals of round figures beside them."""
    texts = {"metals.toml": METALS, **files}
    for file, old, new in changes:
        assert texts[file].count(old) == 1, f"{old!r} stands {texts[file].count(old)} times in {file}"
        texts[file] = texts[file].replace(old, new)
    return workshop.write(texts, settings=WITH_METALS + settings)
