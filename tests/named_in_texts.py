"""What the texts name in inline code: each span is a command, an option, a file, Python, a key, a name or a value.

:func:`fault_of` says what is wrong with a span, or nothing. What is none of these must stand in :data:`WORDS`.
"""

from __future__ import annotations

import ast
import builtins
import importlib
import inspect
import re
import shlex
from collections.abc import Callable, Iterator, Mapping
from functools import cache
from typing import Any, NamedTuple

import tomli

from speclint.commands.command_line import COMMANDS
from speclint.commands.new_family import family_files
from speclint.errors import SpeclintError
from speclint.quantities import DIMENSIONS, read
from speclint.reports.reference.guide_figures import GUIDE_FIGURES
from speclint.rules import Grade, Sheet
from speclint.specs import LoadCase
from tests.contracts.test_architecture import exported
from tests.developers import NAME
from tests.known_names import (
    INVENTED,
    ROOT,
    closed_words,
    code_of_core,
    exported_calls,
    files,
    forms,
    keys,
    kinds,
    known,
    limits,
    listed,
    names_of_modules,
    names_of_python,
    names_of_texts,
    options_of,
    options_of_programs,
    parameters,
    paths_of_keys,
    rules,
)

#: Words in code that are of another trade: of git, of the system, of the web and of equations. None may go unused.
WORDS = {
    *(
        "PATH",
        "PYTHONPATH",
        "CI",
        "git replace",
        "style",
        "main",
        "*.dist-info",
        "*.toml",
        ".TOML",
        ".venv\\Scripts",
    ),
    *(
        ".ci-environment\\Scripts",
        "Requires-Dist: speclint>=9",
        "Fields:",
        "…",
        "#",
        "?",
        "wal",
        'wall = "2,9 mm"',
    ),
    *("{each}", "{cylinder}", "{end}", "{found}", "{limit}", "{left}", "{item}", "KIND.KEY", "COMPONENT.KEY"),
    *("absolute", 'cylinder = ["left", "middle", "right"]'),
    *(
        "(greatest)",
        "(least)",
        "temperature of steam-pipe: T = 380 °C",
        "if TYPE_CHECKING:",
        "part.kind",
        "cylinder-liner cylinder-block",
    ),
}
_EQUATIONS = re.compile(r"^\| written \| read as \|\n(?:\|.*\n)+", re.MULTILINE)
_SPAN = re.compile(r"(?<!`)`([^`\n]+(?:\n[^`\n]+)?)`(?!`)")
_FENCED = re.compile(r"^```.*?^```$", re.MULTILINE | re.DOTALL)
_PLACEHOLDER = re.compile(r"[A-Z]+(\.KEY(=(VALUE|\?))?)?…?|\[.*\]|…")


class Span(NamedTuple):
    """Inline code, with the commands that the first cell of its row of a table names."""

    text: str
    commands: tuple[str, ...] = ()


def spans_of(text: str) -> list[Span]:
    """The inline code of a text, outside of its blocks; of the table of equations only what stands elsewhere too."""
    found = []
    for line in _EQUATIONS.sub("", _FENCED.sub("", text)).split("\n\n"):
        for part in line.splitlines() if line.lstrip().startswith("|") else [line]:
            spans = [" ".join(one.split()) for one in _SPAN.findall(part)]
            row = part.startswith("| `speclint ")
            own = tuple(re.findall(r"`speclint (\w+)", part)) if row else ()
            found += [Span(one, own) for one in spans]
    return found


def fault_of(span: Span) -> str:
    """What is wrong with a span; "" where it is what it seems to be."""
    text = span.text.strip('"') if span.text.startswith('"speclint[') else span.text
    if text in WORDS:
        return ""
    for seems, fault in _KINDS:
        if seems(text):
            return fault(Span(text, span.commands))
    return f"{text}: neither a command, an option, a file, Python, a key, a name nor a value"


def _command(span: Span) -> str:
    words = shlex.split(span.text)
    if words[0] != "speclint":  # such as "check --as json"
        words.insert(0, "speclint")
    if words[1] not in COMMANDS:
        return f"{span.text}: there is no command {words[1]}"
    return _options(words[2:], (words[1],), span.text) or _arguments(words[1], words[2:], span.text)


def _arguments(command: str, words: list[str], text: str) -> str:
    """Whether rules, kinds and lists that are named in full are there."""
    named = [word for word in words[:1] if re.fullmatch(r"[a-z][a-z-]*(\.[a-z-]+)?", word)]
    known: Mapping[str, Callable[[], set[str]]] = {"rules": rules, "kinds": kinds, "names": listed}
    if command in known and named and named[0] not in known[command]():
        return f"{text}: {named[0]} is none that speclint {command} knows"
    return ""


def _option(span: Span) -> str:
    return _options(shlex.split(span.text), span.commands or tuple(COMMANDS), span.text)


def _options(words: list[str], commands: tuple[str, ...], text: str) -> str:
    """Whether one of the commands has each option, and takes the value beside it."""
    for number, word in enumerate(words):
        if not word.startswith("--"):
            continue
        having = [options_of(one)[word] for one in commands if word in options_of(one)]
        if not having and not _of_a_module(word, text):
            return f"{text}: no option {word} of speclint {' or '.join(sorted(set(commands)))}"
        value = words[number + 1] if number + 1 < len(words) else ""
        choices = [one.choices or (forms() if word == "--as" else None) for one in having]
        closed = having and all(choices) and value and not _PLACEHOLDER.fullmatch(value)
        if closed and not any(value in one for one in choices if one):
            return f"{text}: {word} does not take {value}"
    return ""


def _of_a_module(word: str, text: str) -> bool:
    """Whether an option that stands alone is of a program beside the tests, such as the benchmarks."""
    return text.startswith(word) and f'"{word}"' in options_of_programs()


def _program(span: Span) -> str:
    """``python -m MODULE OPTIONS``: the module is there, and its code knows the options."""
    words = shlex.split(span.text.replace("\\", "/"))
    program = words[0].rpartition("/")[2]
    if program != "python":
        return "" if program in ("mypy", "ruff") else f"{span.text}: no program {program}"
    module, others = words[2], words[3:]
    if module == "speclint":
        return ""
    if module == "pytest":
        own = (ROOT / "tests" / "conftest.py").read_text(encoding="utf-8")
        options = [one for one in others if one.startswith("--") and f'"{one}"' in own]
        known = {*options, *(("-m", *_marks()) if "-m" in others else ())}
        lost = [one for one in others if one not in known and not (ROOT / one).exists()]
        return f"{span.text}: no {lost[0]}" if lost else ""
    if module == "tests.golden":
        return "" if "tests/golden.py" in family_files(NAME) else f"{span.text}: a family has no such module"
    place = ROOT.joinpath(*module.split("."))
    files = [one for one in (place.with_suffix(".py"), place / "__main__.py") if one.exists()]
    if not files:
        return f"{span.text}: no module {module}"
    code = files[0].read_text(encoding="utf-8")
    lost = [one for one in others if one.startswith("--") and f'"{one}"' not in code]
    return f"{span.text}: {module} has no option {lost[0]}" if lost else ""


def _marks() -> list[str]:
    """The marks of tests, each declared as ``NAME: what it means``."""
    return [one.partition(":")[0] for one in _settings()["tool"]["pytest"]["ini_options"]["markers"]]


@cache
def _settings() -> dict[str, Any]:
    return tomli.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))


def _script(span: Span) -> str:
    """``.ci/long PART``: the script is there, and has the part."""
    place, *parts = span.text.split()
    if not (ROOT / place).exists():
        return f"{span.text}: no file {place}"
    lost = [one for one in parts if f"{one})" not in (ROOT / place).read_text(encoding="utf-8")]
    return f"{span.text}: {place} has no part {lost[0]}" if lost else ""


def _install(span: Span) -> str:
    """``pip install speclint[EXTRA]``: the extra is there."""
    project = _settings()["project"]
    (extra,) = re.findall(r"\[(\w+)\]$", span.text)
    return "" if extra in project["optional-dependencies"] else f"{span.text}: there is no extra {extra}"


def _file(span: Span) -> str:
    name = span.text.rstrip("/").replace("handbook.", "handbook/").removesuffix("*").rstrip("/_")
    return (
        ""
        if name in files() or any(one.startswith(f"{name}_") for one in files())
        else f"{span.text}: no such file"
    )


def _import(span: Span) -> str:
    """A dotted name of a package: it leads somewhere."""
    name = span.text.removesuffix(".*")
    if name.startswith(f"speclint_{NAME}"):
        return "" if f"{name.replace('.', '/')}" in files() else f"{span.text}: a family has no such module"
    module, _, last = name.rpartition(".")
    try:
        importlib.import_module(name)
    except ImportError:
        try:
            return "" if hasattr(importlib.import_module(module), last) else f"{module} has no {last}"
        except ImportError:
            return f"{span.text}: there is no module {module}"
    return ""


def parsed(text: str) -> ast.AST | None:
    """A span as Python, with dots in the place of what is left out; None if it is none."""
    text = text.removeprefix("@").removeprefix("raise ").replace("…", "...")
    text = re.sub(r"(?<=[(,]) ?\.\.\.(?=[,)])", "*_", text)
    text = f"x {text}" if text.startswith("= ") else f"{text} pass" if text.startswith("class ") else text
    text = text.replace("pass", ": pass") if text.startswith("class ") else text
    text = f"{text}None" if re.fullmatch(r"\w+=", text) else text
    try:
        return ast.parse(text)
    except SyntaxError:
        return None


def _python(span: Span) -> str:
    tree = parsed(span.text)
    assert tree is not None
    faults = [fault for node in ast.walk(tree) for fault in _of_node(node)]
    return f"{span.text}: {faults[0]}" if faults else ""


def _of_node(node: ast.AST) -> Iterator[str]:
    """What of a piece of Python is not there: names that are called or read, attributes, and words of calls."""
    if isinstance(node, ast.Call):
        yield from _call(node)
    elif isinstance(node, ast.Attribute):
        owner = _OWNERS.get(node.value.id) if isinstance(node.value, ast.Name) else None
        if not (_has(owner, node.attr) if owner else node.attr in _attributes()):
            yield f"nothing has {node.attr}"
    elif isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load) and not _is_known(node.id):
        yield f"there is no {node.id}"


#: What pages call the values of these classes.
_OWNERS: Mapping[str, type] = {"sheet": Sheet, "case": LoadCase, "Grade": Grade}


def _has(owner: type, name: str) -> bool:
    return name in {*dir(owner), *getattr(owner, "model_fields", {})}


def _decorator(span: Span) -> str:
    """``@name``: authors of families import it from speclint, tests of published works from theirs."""
    name = re.findall(r"\w+", span.text)[0]
    proofs = "".join(path.read_text(encoding="utf-8") for path in (ROOT / "tests/published").glob("*.py"))
    if name not in exported("speclint") and f"def {name}(" not in proofs:
        return f"{span.text}: there is no decorator {name}"
    return _python(span._replace(text=span.text[1:])) if "(" in span.text else ""


@cache
def _attributes() -> set[str]:
    return names_of_python() | keys() | names_of_modules()


def _is_known(name: str) -> bool:
    return name in ("_", "x") or len(name) == 1 or name in names_of_python() | keys() | parameters()


def _call(node: ast.Call) -> Iterator[str]:
    """The words of a call are parameters of what is called, or it takes any."""
    name = (
        node.func.attr
        if isinstance(node.func, ast.Attribute)
        else node.func.id
        if isinstance(node.func, ast.Name)
        else ""
    )
    on_sheet = getattr(Sheet, name, None)
    ours = [one for one in (on_sheet, exported_calls().get(name)) if one is not None]
    if not ours:
        if not hasattr(builtins, name) and name not in names_of_modules():
            yield f"nothing is called {name}"
        return
    for word in (one.arg for one in node.keywords if one.arg):
        if not any(_takes(one, word) for one in ours):
            yield f"{name} takes no {word}"


def _takes(called: Any, word: str) -> bool:
    try:
        parameters = inspect.signature(called).parameters.values()
    except (TypeError, ValueError):
        return False
    return any(one.name == word or one.kind is inspect.Parameter.VAR_KEYWORD for one in parameters)


def _toml(span: Span) -> str:
    known = keys() | kinds() | INVENTED if not span.text.startswith("{") else {"x", "value", "from", "note"}
    lost = [key for key in keys_in(tomli.loads(_as_toml(span.text))) if key not in known]
    return f"{span.text}: there is no key {lost[0]}" if lost else ""


def _as_toml(text: str) -> str:
    return re.sub(r"^(\[\w+\]) (\w+)$", r"\1\n\2 = 1", f"x = {text}" if text.startswith("{") else text)


#: Tables whose entries have names that are chosen: by a designer, a shop or another spec.
FREE = {
    *(
        "measured",
        "steamings",
        "reviewers",
        "limits",
        "temperatures",
        "cases",
        "for",
        "each",
        "columns",
        "units",
    ),
    *("dimensions", "every"),
}


def keys_in(table: Mapping[str, Any], free: bool = False) -> Iterator[str]:
    """The keys of a table and of those in it, but for names that are chosen; limits are looked up by their rules."""
    for key, inside in table.items():
        if not free and key not in FREE:
            yield key
        if key == "limits":
            assert all(rule in rules() and set(named) <= limits() for rule, named in inside.items()), inside
        elif isinstance(inside, dict):
            yield from keys_in(inside, key in FREE and not free)


def _word(span: Span) -> str:
    """A key, a dotted path of keys, or a name that something has."""
    text = span.text
    if text in known() or (text.endswith(".") and any(rule.startswith(text) for rule in rules())):
        return ""
    return _dotted(text) if "." in text else f"{text}: there is no {text}"


def _dotted(text: str) -> str:
    """A path of keys, an attribute of a class, or a name of a module."""
    first, _, rest = text.partition(".")
    if first in ("os", "sys"):
        there = hasattr(importlib.import_module(first), rest)
    elif first in _OWNERS:
        there = _has(_OWNERS[first], rest)
    elif first[:1].isupper():
        there = any(
            re.search(rf"^class {first}\b.*?^    (def )?{rest}\b", code, re.M | re.S)
            for code in code_of_core()
        )
    else:
        path = [one for one in text.split(".") if not one.isdigit()]
        there = text in "".join(family_files(NAME).values()) or any(
            key[-len(path) :] == path for key in paths_of_keys()
        )
    return "" if there else f"{text}: {first} has no {rest}"


def _value(span: Span) -> str:
    """A text in quotes: a quantity, or a word of a closed list."""
    text = span.text.strip('"')
    if text in closed_words() or text in names_of_texts() or re.match(r"[a-z-]+ [+−-] [\d.]", text):
        return ""
    for dimension in (*DIMENSIONS, "temperature", "fluid pressure"):
        try:
            read(text, dimension)
        except SpeclintError:
            continue
        return ""
    return f"{span.text}: neither a quantity nor a word that something takes"


def _head(span: Span) -> str:
    """The head of a column: a key with the unit of its bare numbers."""
    key = span.text.partition(" (")[0]
    return "" if key in keys() else f"{span.text}: there is no key {key}"


def _page(span: Span) -> str:
    """A page of the reference, whose folder code of speclint names; or a picture of the guide, which is drawn."""
    if picture := re.fullmatch(r"!\[\w+\]\(figure:([\w-]+)\)", span.text):
        return "" if picture[1].isupper() or picture[1] in GUIDE_FIGURES else f"no drawing {picture[1]}"
    folder = span.text.partition("/")[0]
    return "" if any(f'"{folder}"' in code for code in code_of_core()) else f"{span.text}: no folder {folder}"


def _is_toml(text: str) -> bool:
    if not re.match(r"\[[\w.\", -]+\]( \w+)?$|\{ |[\w.-]+ = [\"\[{\dtf]", text):
        return False
    try:
        tomli.loads(_as_toml(text))
    except tomli.TOMLDecodeError:
        return False
    return True


_SUFFIX = re.compile(
    r"^[\w./*-]*(/|\.(py|pyi|toml|csv|json|yaml|sh|md))$|^[\w.-]+(/[\w.-]+)+$|^plugins/speclint_\*$"
)
_KINDS: tuple[tuple[Callable[[str], bool], Callable[[Span], str]], ...] = (
    (lambda text: text.startswith("speclint ") or (text.split()[0] in COMMANDS and "--" in text), _command),
    (lambda text: text.startswith("--"), _option),
    (lambda text: text.startswith("@"), _decorator),
    (lambda text: bool(re.match(r"(\.venv/bin/)?(python -m|mypy|ruff) ?|\.venv/bin/", text)), _program),
    (lambda text: text.startswith(".ci/"), _script),
    (lambda text: bool(re.match(r"(pip install )?speclint\[", text)), _install),
    (lambda text: bool(re.match(r"!\[|[\w/-]+\.html(#|$)", text)), _page),
    (lambda text: bool(_SUFFIX.match(text)), _file),
    (lambda text: bool(re.fullmatch(r"speclint(_\w+)?(\.\w+)+(\.\*)?", text)), _import),
    (_is_toml, _toml),
    (lambda text: bool(re.fullmatch(r"\w+ \([^)]+\)", text)), _head),
    (lambda text: bool(re.fullmatch(r'"[^"]*"', text)), _value),
    (
        lambda text: bool(re.fullmatch(r"[\w.-]+…?", text)),
        lambda span: _word(span._replace(text=span.text.rstrip("…"))),
    ),
    (lambda text: text in DIMENSIONS or text in ("fluid pressure", "temperature difference"), lambda _: ""),
    (lambda text: parsed(text) is not None, _python),
)
