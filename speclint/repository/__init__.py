"""From the files of a repository to a design: settings, specs, links, duties, register, revisions of git.

Nothing above this package opens a file of the design. May import ``specs``, ``handbook`` and what stands below them.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
