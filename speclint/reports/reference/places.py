"""The places of the reference: the file and the anchor of whatever has one, the same for the same name each time."""

from __future__ import annotations

from speclint.reports.pack.anchors import slug

REFERENCE_FRONT = "index.html"
#: Stands in each file of the reference, by which one of an earlier run is known.
REFERENCE_MARK = "made by speclint reference"
SETTINGS_FILE = "words/settings.html"
CASES_FILE = "words/load-cases.html"
WORDS_FILE = "words/words.html"
FAMILIES_FILE = "families/index.html"
EVERY_COMPONENT = "kinds/every-component.html"


def file_of(folder: str, name: str) -> str:
    """The file of a page by the name of what stands on it."""
    return f"{folder}/{slug(name)}.html"


def anchor(name: str) -> str:
    """The anchor of a name: the name itself where it can stand in a link, else a digest of it.

    >>> anchor("liner.wall-at-last-bore"), anchor("ends.NAME.depth"), anchor("bores[].depth"), anchor("heat flux")
    ('liner.wall-at-last-bore', 'ends.NAME.depth', 'bores.N.depth', 'heat-flux')
    """
    plain = name.replace("[]", ".N").replace(" ", "-")
    return plain if _is_plain(plain) else slug(plain)


def _is_plain(name: str) -> bool:
    return name.isascii() and name.replace(".", "").replace("-", "").replace("_", "").isalnum()


def rule_place(family: str, rule: str) -> str:
    """Where a rule stands."""
    return f"{file_of('rules', family)}#{anchor(rule)}"


def kind_place(kind: str, key: str = "") -> str:
    """Where a kind stands, or one of its keys."""
    return file_of("kinds", kind) + (f"#{anchor(key)}" if key else "")


def list_place(called: str, name: str = "") -> str:
    """Where a list of names stands, or one of its names."""
    return file_of("names", called) + (f"#{anchor(name)}" if name else "")


def case_place(case: str) -> str:
    """Where a load case stands."""
    return f"{CASES_FILE}#{anchor(case)}"


def table_place(package: str, file: str) -> str:
    """Where a table stands that a package has in its folder of data."""
    owner = package.removeprefix("speclint_").removeprefix("speclint.")
    return file_of("tables", f"{owner.replace('_', '-')}.{file.removesuffix('.csv')}")


def material_place(family: str, name: str) -> str:
    """Where a material stands, among those of its family of metals."""
    return f"{file_of('materials', family)}#{anchor(name)}"


def formula_group(module: str) -> str:
    """The group of formulae to which those of a module belong: a family, a package of the handbook, or the facts.

    >>> formula_group("speclint.handbook.bolted_joints.layout"), formula_group("speclint_liners.formulae.walls")
    ('handbook-bolted-joints', 'liners')
    """
    parts = module.split(".")
    if parts[0] == "speclint":
        return "-".join(parts[1:3] if parts[1] == "handbook" else parts[1:2]).replace("_", "-")
    return parts[0].removeprefix("speclint_").replace("_", "-")


def formula_place(module: str, name: str) -> str:
    """Where a formula stands."""
    last = module.rpartition(".")[2]
    return f"{file_of('formulae', formula_group(module))}#{anchor(f'{last}.{name}')}"
