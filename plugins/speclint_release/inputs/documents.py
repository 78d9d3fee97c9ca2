"""Inspection documents, and what each type of them rests on."""

from __future__ import annotations

#: Inspection documents that rest on tests of the very metal delivered, EN 10204.
OF_THE_METAL = ("3.1", "3.2")
#: What is said of another: its figures are those of no test, or of other metal of the kind.
BY_NO_TEST = "inspection document {} rests on no test of the metal delivered: 3.1 or 3.2 does"
