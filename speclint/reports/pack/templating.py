"""The templates of pages and the files beside them: one environment for every package that has some."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from speclint.reports.pack.anchors import source_anchor
from speclint.reports.printable import visible

if TYPE_CHECKING:
    from jinja2 import Environment, Template

#: The package whose templates the pages of all others may include.
_SHARED = "speclint.reports.pack"


def template(name: str, package: str = _SHARED) -> Template:
    """A template of a package; it may include those of the review pack by their names."""
    return environment(package).get_template(name)


@cache
def file_text(name: str, package: str = _SHARED) -> str:
    """A style or a script that stands among the templates of a package."""
    return (files(package) / "templates" / name).read_text(encoding="utf-8")


@cache
def environment(package: str = _SHARED) -> Environment:
    """Markup is escaped, a name that is not there is refused, and every text is made visible."""
    from jinja2 import ChoiceLoader, Environment, PackageLoader, StrictUndefined

    packages = dict.fromkeys((package, _SHARED))
    found = Environment(
        loader=ChoiceLoader([PackageLoader(one, "templates") for one in packages]),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=lambda value: visible(value) if type(value) is str else value,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    found.globals["source_anchor"] = source_anchor
    return found
