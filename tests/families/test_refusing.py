"""Each way in which a family is not whole, with the one line that is told of it; refused with exit 3."""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from importlib.metadata import EntryPoint
from itertools import count
from pathlib import Path
from types import ModuleType, SimpleNamespace
from typing import Any, ClassVar

import pytest

from speclint import COMMON_PRACTICE, FigureMaker, Limit, ReportWriter, Rule, RulesIn, family, rules_in
from speclint.commands.command_line import main
from speclint.errors import FamilyError, replace
from speclint.families import find_families, load_families
from speclint.families.rule_declaration import faults_of_declaration
from speclint.families.soundness import faults_of_rule
from speclint.reports import hooks
from speclint.specs import NOT_STATED, Component, ExtraTable, Length, Shaft, Spec, SpecTable
from speclint.testing import SETTINGS, DesignFolder, made_family
from tests.tubes import FILES, Tube, entry_point, stress

_NUMBERS = count(1)  # of the modules made


class Hoops(SpecTable):
    """Keys of the tests' own."""

    pitch: Length = NOT_STATED


def point(name: str = "bad", **stated: Any) -> EntryPoint:
    """An entry point to a module with some names; functions are marked as hooks."""
    return made_family(name, **stated)


def gives(*items: Any) -> Callable[[], Sequence[Any]]:
    """A hook that gives some things."""
    return lambda: items


def limit(**stated: Any) -> Limit:
    """A limit of 1 mm, but for what is stated."""
    usual: dict[str, Any] = {
        "name": "least",
        "default": "1 mm",
        "dimension": "length",
        "source": COMMON_PRACTICE,
    }
    return Limit(**usual | stated)


def module_of(*rules: Any) -> str:
    """A module that holds rules."""
    module = ModuleType(f"rules_{next(_NUMBERS)}")
    vars(module)["RULES"] = rules
    sys.modules[module.__name__] = module
    return module.__name__


def faults(*points: EntryPoint) -> list[str]:
    """Everything that is told of some families."""
    with pytest.raises(FamilyError) as refused:
        assert load_families(points, built_in=hooks).rules is None
    assert refused.value.exit_code == 3
    assert "\n" not in str(refused.value)
    return str(refused.value).split("; family ")


def kind(**stated: Any) -> type[Spec]:
    """A kind with something amiss."""
    names = {"kind": "thing", "called": "thing", "__doc__": "A thing.", "__module__": __name__, **stated}
    return type("Thing", (Component,), names)


def undocumented() -> None:
    pass


def wrong(**stated: Any) -> Rule:
    """The rule of the stress of tubes with something amiss."""
    return replace(stress, **stated)


def table(on: Any, holds: Any) -> ExtraTable:
    """A table that may be none."""
    return ExtraTable(on, holds)


@pytest.mark.parametrize(
    ("stated", "said"),
    [
        # the module
        (
            {"speclint_api": None},
            'family bad does not say for which interface it is written: put speclint_api = "1" in',
        ),
        (
            {"speclint_api": "2"},
            "family bad is written for interface '2' of families; this speclint has '1': install",
        ),
        (
            {"speclint_api": 1},
            "family bad is written for interface 1 of families; this speclint has '1': install",
        ),
        # hooks
        ({"speclint_ruels": gives()}, 'family bad: speclint_ruels is no hook; write "speclint_rules"'),
        (
            {"speclint_rules": lambda extra: [extra]},
            "family bad cannot be used: speclint_rules takes extra, and a hook is called without arguments",
        ),
        (
            {"speclint_rules": lambda: None},
            "family bad: speclint_rules returned nothing, not a list or a tuple",
        ),
        (
            {"speclint_rules": lambda: "abc"},
            "family bad: speclint_rules returned a str, not a list or a tuple",
        ),
        (
            {"speclint_kinds": lambda: {1: 2}},
            "family bad: speclint_kinds returned a dict, not a list or a tuple",
        ),
        ({"speclint_rules": lambda: 1 / 0}, "family bad: speclint_rules raised ZeroDivisionError: "),
        # what is in them
        (
            {"speclint_rules": gives(undocumented)},
            "speclint_rules: undocumented is a function, not a rule: mark",
        ),
        ({"speclint_kinds": gives(3)}, "speclint_kinds: 3 is a int, not a kind: a subclass of"),
        ({"speclint_kinds": gives(Component)}, "speclint_kinds: Component is a ModelMetaclass, not a kind"),
        ({"speclint_tables": gives(Hoops)}, "speclint_tables: Hoops is a ModelMetaclass, not an ExtraTable"),
        ({"speclint_materials": gives("iron")}, "speclint_materials: 'iron' is a str, not a Material"),
        (
            {"speclint_reports": gives(print)},
            "speclint_reports: print is a builtin_function_or_method, not a ReportW",
        ),
        (
            {"speclint_drawings": gives(print)},
            "speclint_drawings: print is a builtin_function_or_method, not a Figur",
        ),
        # rules
        ({"speclint_rules": gives(wrong(cites=()))}, "the rule tube.stress has no source (cites)"),
        (
            {"speclint_rules": gives(wrong(cites=(COMMON_PRACTICE, "Lamé")))},
            "the rule tube.stress has no source (cites)",
        ),
        (
            {"speclint_rules": gives(wrong(cites=("Lamé",)))},
            "the rule tube.stress has no source (cites)",
        ),
        ({"speclint_rules": gives(wrong(why=" "))}, "the rule tube.stress has no reason (why)"),
        (
            {"speclint_rules": gives(wrong(leaves_out=""))},
            "tube.stress has no scope: nothing is said of what",
        ),
        (
            {"speclint_rules": gives(wrong(title=""))},
            "the rule tube.stress has no statement (title)",
        ),
        (
            {"speclint_rules": gives(wrong(on=()))},
            "the rule tube.stress is on no kind of component (on)",
        ),
        (
            {"speclint_rules": gives(wrong(on=(Hoops,)))},
            "the rule tube.stress is on no kind of component",
        ),
        (
            {"speclint_rules": gives(wrong(on=(Tube, Hoops)))},
            "the rule tube.stress is on no kind of component",
        ),
        (
            {"speclint_rules": gives(wrong(function=undocumented))},
            "the rule tube.stress has no docstring",
        ),
        (
            {"speclint_rules": gives(wrong(against=("brust",)))},
            "the rule tube.stress names brust, which is no hazard; the hazards are burst, leak, ",
        ),
        (
            {"speclint_rules": gives(wrong(against="burst"))},
            'the rule tube.stress names hazards in one text: write ("burst",)',
        ),
        (
            {"speclint_rules": gives(wrong(against_on={"rack": ("rust",)}))},
            "the rule tube.stress names rust, which is no hazard",
        ),
        (
            {"speclint_rules": gives(wrong(name="tube stress"))},
            "the rule tube stress has no name of one word",
        ),
        ({"speclint_rules": gives(wrong(name=""))}, "has no name of one word: subject.what-it-says"),
        (
            {"speclint_rules": gives(wrong(grade="hold"))},
            "states 'hold' as its grade: write a speclint.Grade",
        ),
        (
            {"speclint_rules": gives(wrong(gravest="hold"))},
            "states 'hold' as its gravest: write a speclint.Grade",
        ),
        (
            {"speclint_rules": gives(wrong(edition=0))},
            "states 0 as its edition, which is a whole number from 1",
        ),
        ({"speclint_rules": gives(wrong(edition="2"))}, "states '2' as its edition"),
        ({"speclint_rules": gives(wrong(row=-1))}, "states -1 as its row, which is a whole number from 0"),
        (
            {"speclint_rules": gives(wrong(cases=("runing",)))},
            "names the load case 'runing', which is none; write \"running\"",
        ),
        (
            {"speclint_rules": gives(wrong(cases=tuple("running")))},
            'names load cases in one text: write ("running",)',
        ),
        (
            {"speclint_rules": gives(wrong(cases=("running",)))},
            "has a function that does not take the component, the load case, the sheet, in this order",
        ),
        ({"speclint_rules": gives(wrong(limits=("1 mm",)))}, "has '1 mm' among its limits, which is no"),
        ({"speclint_rules": gives(wrong(limits=(limit(), limit())))}, "has two limits called least"),
        (
            {"speclint_rules": gives(wrong(limits=(limit(default="1 kg"),)))},
            "has a limit least of '1 kg', which cannot be read: \"kg\" is no unit of length",
        ),
        (
            {"speclint_rules": gives(wrong(limits=(limit(default="1 mm ±0.1"),)))},
            "has a limit least of '1 mm ±0.1': a limit has no tolerance",
        ),
        (
            {"speclint_rules": gives(wrong(limits=(limit(dimension="lenght"),)))},
            "has a limit least of '1 mm' in the dimension 'lenght': write a text with its unit, and a dimension",
        ),
        (
            {"speclint_rules": gives(wrong(limits=(limit(default=1.0),)))},
            "has a limit least of 1.0 in the dimension 'length': write a text with its unit",
        ),
        (
            {"speclint_rules": gives(wrong(limits=(limit(source="Shigley"),)))},
            "has a limit least whose source is 'Shigley', not a speclint.Source",
        ),
        (
            {"speclint_rules": gives(wrong(limits=(limit(setting="cnat"),)))},
            "has a limit least that takes the setting 'cnat'; write \"cant\"",
        ),
        (
            {"speclint_rules": gives(wrong(wrong="stressed to {fuond}"))},
            "says what is wrong with {fuond}, which nothing is put in for; there are {found}, {limit}, ",
        ),
        (
            {"speclint_rules": gives(wrong(wrong="stressed to {found"))},
            "says what is wrong in 'stressed to {found', whose braces do not match",
        ),
        # kinds
        ({"speclint_kinds": gives(kind(hazards=("rust",)))}, "the kind Thing names rust, which is no hazard"),
        ({"speclint_kinds": gives(kind(__doc__=None))}, "the kind Thing has no docstring"),
        ({"speclint_kinds": gives(kind(kind="Big Thing"))}, "the kind Thing has no word of its own: kind = "),
        (
            {"speclint_kinds": gives(kind(called=""))},
            "the kind Thing does not say what a report calls it: called =",
        ),
        (
            {"speclint_kinds": gives(kind(__annotations__={"size": Length}))},
            "the kind Thing cannot do without size: every key may be left out, so write = NOT_STATED",
        ),
        (
            {"speclint_kinds": gives(kind(__annotations__={"size": "Nowhere"}, size=NOT_STATED))},
            "the kind Thing has a field whose type cannot be found: name 'Nowhere' is not defined",
        ),
        (
            {"speclint_kinds": gives(kind(__annotations__={"size": float}, size=1.0))},
            "the kind Thing has size of the type float: write a quantity, such as Length or Fraction, of ",
        ),
        (
            {"speclint_kinds": gives(kind(__annotations__={"rods": int}, rods=2))},
            "the kind Thing has rods of the type int: write Word[int] of speclint.specs",
        ),
        (
            {"speclint_kinds": gives(kind(__annotations__={"size": Length}, size="3 mm"))},
            "the kind Thing takes '3 mm' for a size that is not stated: write = NOT_STATED",
        ),
        ({"speclint_kinds": gives(kind(kind="shaft"))}, "family bad: the name shaft is taken by speclint"),
        # tables
        (
            {"speclint_tables": gives(table(Shaft, Shaft))},
            "Shaft is a ModelMetaclass, not a subclass of",
        ),
        (
            {"speclint_tables": gives(table(Shaft, int))},
            "speclint_tables: int is a type, not a subclass of speclint.specs.SpecTable",
        ),
        (
            {"speclint_tables": gives(table(Shaft, 3))},
            "speclint_tables: 3 is a int, not a subclass of speclint.specs.SpecTable",
        ),
        (
            {"speclint_tables": gives(table(int, Hoops))},
            "int is a type, not the kind that a table is added to",
        ),
        (
            {"speclint_tables": gives(table(Shaft, Hoops), table(Component, Hoops))},
            "it adds two tables to a component: a spec has one table [bad]",
        ),
        # names that are taken
        ({"speclint_reports": gives(ReportWriter("json", "", str))}, "the name json is taken by speclint"),
        (
            {"speclint_drawings": gives(FigureMaker("joints", "", list))},
            "the name joints is taken by speclint",
        ),
    ],
)
def test_what_is_not_whole_is_told_in_one_line(stated: dict[str, Any], said: str) -> None:
    assert said in "; family ".join(faults(point(**stated)))


@pytest.mark.parametrize(
    ("group", "said"),
    [
        (
            lambda: rules_in(module_of(stress), "rack"),
            'the rule tube.stress is on a tube, but rules_in("{module}", …) does not name it: the rule would never be',
        ),
        (
            lambda: rules_in(module_of(stress), "tube", "rack"),
            'names "rack", but no rule in it is on that kind',
        ),
        (
            lambda: rules_in(module_of(stress), "tube", "teub"),
            'names "teub", but no rule in it is on that kind',
        ),
        (
            lambda: rules_in(module_of(wrong(on=(Component,))), "tube"),
            "the rule tube.stress is on every component, but rules_in(",
        ),
        (
            lambda: rules_in(module_of(wrong(why="")), "tube"),
            "the rule tube.stress has no reason (why)",
        ),
        (
            lambda: rules_in(module_of(stress, stress), "tube"),
            "the name tube.stress is taken by another of its own",
        ),
        (lambda: rules_in("no_such_rules", "tube"), "family bad cannot be imported: ModuleNotFoundError"),
        (lambda: rules_in(module_of(print), "tube"), "print is a builtin_function_or_method, not a rule"),
    ],
)
def test_rules_that_wait_are_held_to_the_same_when_they_come(group: Callable[[], RulesIn], said: str) -> None:
    made = group()
    loaded = load_families([point(speclint_rules=gives(made))])
    assert loaded.rules_for({"duty"}) == ()
    with pytest.raises(FamilyError) as refused:
        assert loaded.rules is None
    assert said.format(module=made.module) in str(refused.value)


def test_rules_that_wait_may_name_a_kind_that_theirs_are_built_on() -> None:
    class Bent(Tube):
        """A bent tube."""

        kind: ClassVar[str] = "bent-tube"

    group = rules_in(module_of(wrong(on=(Bent,))), "tube")
    assert len(load_families([point(speclint_rules=gives(group))]).rules) == 1


def test_a_function_named_as_a_hook_must_be_marked() -> None:
    one = point()
    vars(sys.modules[one.value])["speclint_rules"] = lambda: [stress]
    assert faults(one) == [
        "family bad: speclint_rules is not marked with @speclint.family, so it would never be called"
    ]


def test_a_misspelt_hook_that_is_not_marked_either_is_told() -> None:
    """It would never be called, and a family that brings nothing reads as a pass."""
    one = point()
    vars(sys.modules[one.value])["speclint_ruels"] = lambda: [stress]
    said = 'family bad: speclint_ruels is no hook; write "speclint_rules", marked with @speclint.family'
    assert faults(one) == [said]


def test_a_hook_that_this_core_lacks_may_be_marked_optional() -> None:
    one = point()
    vars(sys.modules[one.value])["speclint_weather"] = family(optionalhook=True)(lambda: ["rain"])
    assert [found.name for found in load_families([one]).families] == ["bad"]


def test_a_family_may_add_a_table_to_each_of_two_kinds_that_share_nothing() -> None:
    """A shaft is no tube, so that each has one table of the family."""
    loaded = load_families(
        [entry_point("tubes"), point("own", speclint_tables=gives(table(Shaft, Hoops), table(Tube, Hoops)))]
    )
    assert "own" in loaded.kinds["shaft"].model_fields
    assert "own" in loaded.kinds["tube"].model_fields


def test_a_rule_of_one_load_case_is_whole() -> None:
    def function(_part: object, _case: object, _sheet: object) -> None:
        """Made for one test."""

    assert list(faults_of_declaration(wrong(cases=("running",), function=function))) == []


@pytest.mark.parametrize(("stripped", "faults"), [(0, 1), (1, 1), (2, 0), (3, 0)])
def test_a_docstring_is_asked_for_where_the_interpreter_keeps_them(
    monkeypatch: pytest.MonkeyPatch, stripped: int, faults: int
) -> None:
    """Python strips docstrings from -OO on; -O keeps them."""
    monkeypatch.setattr(
        "speclint.families.soundness.sys", SimpleNamespace(flags=SimpleNamespace(optimize=stripped))
    )
    assert len(list(faults_of_rule(wrong(function=lambda _part, _sheet: None)))) == faults


@pytest.mark.parametrize("name", ["links", "diameter", "Wheels", "a.b"])
def test_a_table_is_named_for_its_family(name: str) -> None:
    (said,) = faults(point(name, speclint_tables=gives(table(Shaft, Hoops))))
    assert said.startswith(f"family {name}: ")
    assert "table" in said


def test_a_table_on_every_component_is_refused_where_a_kind_has_that_key() -> None:
    loaded = load_families([point("diameter", speclint_tables=gives(table(Component, Hoops)))])
    with pytest.raises(FamilyError, match='family diameter: a shaft has "diameter" already'):
        loaded.kinds["shaft"]


# How it reaches a user


def test_a_command_refuses_with_one_line_and_exit_3(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    points = [entry_point("tubes"), point(speclint_api="2")]
    monkeypatch.setattr("speclint.families.loading.installed", lambda: points)
    monkeypatch.chdir(DesignFolder(tmp_path, load_families([])).write(FILES).root)
    for words in (["check"], ["rules"], ["kinds"], ["families"], ["gate"], ["sheet", "tube"], ["register"]):
        assert main(words) == 3, words
        told = capsys.readouterr()
        assert "family bad is written for interface '2'" in (told.out + told.err), words


def test_a_family_that_is_not_whole_can_be_left_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    points = [entry_point("tubes"), point(speclint_api="2")]
    monkeypatch.setattr("speclint.families.loading.installed", lambda: points)
    settings = SETTINGS + '[families]\nleave_out = ["bad"]\n'
    monkeypatch.chdir(DesignFolder(tmp_path, load_families([])).write(FILES, settings=settings).root)
    for words in (["check"], ["rules"], ["kinds"], ["families"], ["gate"], ["register"]):
        assert main(words) in (0, 1), words
        told = capsys.readouterr()
        assert told.err == ""
    assert find_families(points).without(["bad"]).sound().left_out == ("bad",)


def test_listing_the_families_checks_every_rule(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """Rules that wait for their kind are imported and held to the same by ``families`` and by the gate."""
    late = point(speclint_rules=gives(rules_in(module_of(wrong(name="tube.late", why="")), "tube")))
    monkeypatch.setattr("speclint.families.loading.installed", lambda: [late])
    monkeypatch.chdir(DesignFolder(tmp_path, load_families([])).write({"duty.toml": FILES["duty.toml"]}).root)
    assert main(["families"]) == 3
    assert "the rule tube.late has no reason (why)" in capsys.readouterr().err
    assert main(["gate"]) == 3
    assert "the rule tube.late has no reason (why)" in " ".join(capsys.readouterr().out.split())
