"""For authors of families: contracts that their formulae can be held to.

May import every other package of speclint; none imports it.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
