"""The widths of the screens that a page is looked at on."""

from __future__ import annotations

import pytest

#: In CSS pixels: a telephone, where the most breaks, and each in .ci/long an upright screen and a desk.
SCREENS = [390, *(pytest.param(width, marks=pytest.mark.long) for width in (1024, 1440))]
