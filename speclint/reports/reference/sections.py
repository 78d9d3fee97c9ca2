"""The sections of the reference, in the order of the contents, each with what it is."""

from __future__ import annotations

FRONT = "Front page"
GUIDE = "Guide"
RULES = "Rules"
FORMULAE = "Formulae"
KINDS = "Kinds"
WORDS = "Words"
MATERIALS = "Materials"
TABLES = "Tables"
NAMES = "Names"
FAMILIES = "Families"

#: What stands in each section.
SAYS = {
    GUIDE: "How to work with it, from the first spec to a check of every change.",
    RULES: "What each rule says and why, with limits, formulae, sources and an example.",
    FORMULAE: "Each equation with its symbols, units, range and source.",
    KINDS: "What a spec of each kind may state, key by key.",
    WORDS: "Load cases, settings of a repository, grades and hazards.",
    MATERIALS: "Each property with its range and source.",
    TABLES: "The data that formulae and rules look up, with source and edition.",
    NAMES: "What may be written where a key takes a name.",
    FAMILIES: "The bodies of rules that are loaded, and what each brings.",
}
