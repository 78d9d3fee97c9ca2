"""speclint checks component specs of a steam locomotive against the rules of the trade.

What a family imports: ``rule``, ``rules_in``, ``Rule``, ``RulesIn``, ``Grade``, ``Limit``, ``Sheet``, ``Judgement``,
``formula``, ``require``, ``family`` (the hook marker), ``Source``, ``COMMON_PRACTICE``, ``FIRST_PRINCIPLES``,
``ReportWriter`` and ``FigureMaker`` with the ``Assessment`` and each ``Check`` that they read, ``Course`` (what runs
beside a scan), ``replace`` (a copy of a judgement or of other data with some of it changed); the kinds from
:mod:`speclint.specs`, the tables and formulae from the packages of :mod:`speclint.handbook`, the units of formulae
from :mod:`speclint.equations`, and what reports and drawings are made of from :mod:`speclint.reports`. ``API`` is the
version of all this.
"""

from __future__ import annotations

import sys

if getattr(sys, "argv", [])[:1] == ["-m"] and sys.orig_argv[-len(sys.argv)].endswith("speclint"):
    # python -m speclint has put the current folder, which may be a design repository, before all others
    sys.path[:] = sys.path[not sys.flags.safe_path :]

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
