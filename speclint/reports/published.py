"""The JSON Schemas of reports, published with the package."""

from __future__ import annotations


def published_schema(name: str) -> str:
    """The JSON Schema of a report by its name, such as ``speclint.pairs/1``."""
    from importlib.resources import files

    return (files("speclint.reports") / f"{name.replace('/', '-')}.schema.json").read_text(encoding="utf-8")
