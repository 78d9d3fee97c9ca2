"""What an editor shows while a spec is written: complaints and findings, completions, what stands under the cursor.

Nothing here knows the protocol by which an editor asks, but for the module ``server``.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
