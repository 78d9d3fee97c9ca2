"""The command blocks of README.md, DEVELOPERS.md and the guide, and the lines of them that no test can run."""

from __future__ import annotations

import re
from collections.abc import Mapping

#: Lines of command blocks that a test does not run, each with the reason. Each must still stand in a text.
NOT_RUN: Mapping[str, str] = {
    'python3 -m venv .venv && .venv/bin/pip install ".[pack]" && .venv/bin/speclint check example_specs': (
        "installs from an index: .ci/run runs it as it stands, in a clean checkout"
    ),
    '.venv/bin/pip install -e ".[pack,test]" && .venv/bin/python -m pytest -n auto': (
        "installs from an index and runs all tests: .ci/run runs it as it stands"
    ),
    "cd speclint-pipework": "enters the folder that the line before wrote",
    'python -m pip install -e ".[test]"': "installs from an index",
    "python -m pytest": "tests/commands/test_new_family.py runs it in a family just written",
    "python -m mypy": "tests/commands/test_new_family.py runs it in a family just written",
    "python3 -m venv .ci-environment": "makes an environment: .ci/run makes one so",
    ".ci-environment/bin/python -m pip install speclint": "installs from an index",
}
_FENCED = re.compile(r"^```(\w*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
_INDENTED = re.compile(r"(?<=\n\n)(?:    [^\n]+\n)+(?=\n)")


def fenced(text: str) -> list[tuple[str, str]]:
    """The blocks of a text, each with its language."""
    return _FENCED.findall(text)


def commands_of(text: str) -> list[str]:
    """Every line of the blocks ``sh`` of a text, in order."""
    return [line for language, inside in fenced(text) if language == "sh" for line in inside.splitlines()]


def languages_of(text: str) -> set[str]:
    """The languages of the blocks of a text."""
    return {language for language, _ in fenced(text)}


def block_of(text: str, language: str) -> str:
    """The only block of a language in a text."""
    (inside,) = [inside for named, inside in fenced(text) if named == language]
    return inside


def indented_of(text: str) -> list[list[str]]:
    """The lines of each block that is set in by four spaces, outside of the fenced ones."""
    return [
        [line.strip() for line in block.splitlines()] for block in _INDENTED.findall(_FENCED.sub("", text))
    ]
