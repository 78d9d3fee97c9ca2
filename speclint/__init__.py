"""speclint checks component specs of a steam locomotive against the rules of the trade.

What a family imports: ``rule``, ``rules_in``, ``Rule``, ``RulesIn``, ``Grade``, ``Limit``, ``Sheet``, ``Judgement``,
``formula``, ``require``, ``family`` (the hook marker), ``Source``, ``COMMON_PRACTICE``, ``FIRST_PRINCIPLES``,
``ReportWriter``, ``Course`` (what runs beside a scan); the kinds from :mod:`speclint.specs`, the tables and formulae
from :mod:`speclint.handbook`.
"""

from __future__ import annotations

from speclint.courses import Course
from speclint.errors import NotKnown, OutOfRange
from speclint.formula import formula, require
from speclint.hookspecs import family
from speclint.judgement import Judgement
from speclint.report_writers import ReportWriter
from speclint.rules import Grade, Limit, Rule, RulesIn, rule, rules_in
from speclint.sheet import Sheet
from speclint.sources import COMMON_PRACTICE, FIRST_PRINCIPLES, Source

__all__ = [
    "COMMON_PRACTICE",
    "FIRST_PRINCIPLES",
    "Course",
    "Grade",
    "Judgement",
    "Limit",
    "NotKnown",
    "OutOfRange",
    "ReportWriter",
    "Rule",
    "RulesIn",
    "Sheet",
    "Source",
    "family",
    "formula",
    "require",
    "rule",
    "rules_in",
]
