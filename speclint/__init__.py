"""speclint checks component specs of a steam locomotive against the rules of the trade.

What a family of rules imports: ``rule``, ``Rule``, ``Grade``, ``Limit``, ``Sheet``, ``Judgement``, ``formula``,
``family`` (the hook marker), ``Source``, ``COMMON_PRACTICE``, ``FIRST_PRINCIPLES``, ``ReportWriter``; the kinds
from :mod:`speclint.specs` and the tables and formulae from :mod:`speclint.handbook`.
"""

from __future__ import annotations

from speclint.formula import formula, require
from speclint.hookspecs import family
from speclint.judgement import Judgement
from speclint.reports import ReportWriter
from speclint.rules import Grade, Limit, Rule, rule
from speclint.sheet import Sheet
from speclint.sources import COMMON_PRACTICE, FIRST_PRINCIPLES, Source

__all__ = [
    "COMMON_PRACTICE",
    "FIRST_PRINCIPLES",
    "Grade",
    "Judgement",
    "Limit",
    "ReportWriter",
    "Rule",
    "Sheet",
    "Source",
    "family",
    "formula",
    "require",
    "rule",
]
