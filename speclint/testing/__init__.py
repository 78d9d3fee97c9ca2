"""For the tests of families: designs made from text, what a check must say, contracts, dimensions, golden results.

May import everything but ``commands``; nothing else imports it.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
