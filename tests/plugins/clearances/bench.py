"""What the checks of these families found."""

from __future__ import annotations

from collections.abc import Mapping

from speclint.testing import DesignFolder, changed_files
from tests.plugins.known_metals import METALS, WITH_METALS


def write(
    workshop: DesignFolder, files: Mapping[str, str], *changes: tuple[str, str, str], settings: str = ""
) -> DesignFolder:
    """Files with some passages changed (file, old, new), and the metals of round figures beside them."""
    texts = changed_files({"metals.toml": METALS, **files}, *changes)
    return workshop.write(texts, settings=WITH_METALS + settings)
