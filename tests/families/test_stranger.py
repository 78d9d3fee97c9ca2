"""A family from outside, built as a wheel and installed beside speclint's in a fresh environment.

It has two kinds, one of them built on the core's shaft, a table that shafts are given, four rules, a material, a
drawing and a report; nothing of it is imported here.
"""

from __future__ import annotations

import json
import math
import os
import shutil
import subprocess
import sys
import sysconfig
import venv
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import tomli

ROOT = Path(__file__).parents[2]
STRANGER = Path(__file__).parent / "stranger"

SETTINGS = '[works]\nstage = "draft"\nsite_pressure = "1.01325 bar absolute"\n'
AXLE = """\
kind = "crank-axle"
material = "axle-EA1N"
diameter = "190 mm"
throw = "330 mm"
cranks = "balanced"
[wheelsets]
seat = "200.2 mm"
seat_length = "180 mm"
load = "160 kN"
overhang = "100 mm"
"""
WHEEL = """\
kind = "wheel"
material = "axle-EA1N"
bore = "200 mm"
hub = "400 mm"
carried_by = "axle"
"""
FILES = {"axle.toml": AXLE, "wheel.toml": WHEEL}
DUTY = 'kind = "duty"\n[cases.running]\nrotational_speed = "300 1/min"\n'


@dataclass
class Installed:
    """A fresh environment with both distributions."""

    folder: Path

    def run(self, *words: str, inside: Path, module: str = "speclint") -> subprocess.CompletedProcess[str]:
        """Run a program of the environment in a folder."""
        scripts = self.folder / ("Scripts" if os.name == "nt" else "bin")
        surroundings = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
        return subprocess.run(
            [str(scripts / "python"), "-m", module, *words],
            capture_output=True,
            text=True,
            encoding="utf-8",
            env={**surroundings, "PYTHONUTF8": "1"},
            cwd=inside,
            check=False,
        )

    def checks(self, design: Path) -> dict[tuple[str, str], dict[str, Any]]:
        """The checks of a design by component and rule; whatever cannot be read fails the test."""
        document = json.loads(self.run("check", "--as", "json", inside=design).stdout)
        assert document["complaints"] == []
        return {(check["component"], check["rule"]): check for check in document["checks"]}


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Installed:
    """Both wheels built with their own build systems, and installed with nothing else; what they depend on is lent."""
    folder = tmp_path_factory.mktemp("fresh")
    shutil.copytree(STRANGER, folder / "stranger")
    pip = [sys.executable, "-m", "pip", "--disable-pip-version-check"]
    wheels = folder / "wheels"
    for tree in (ROOT, folder / "stranger"):
        _done([*pip, "wheel", "--quiet", "--no-deps", "--wheel-dir", str(wheels), str(tree)])
    venv.create(folder / "env", with_pip=False, symlinks=os.name != "nt")
    python = folder / "env" / ("Scripts" if os.name == "nt" else "bin") / "python"
    files = [str(file) for file in sorted(wheels.glob("*.whl"))]
    assert len(files) == 2
    _done([*pip, "--python", str(python), "install", "--quiet", "--no-deps", "--no-index", *files])
    asked = "import sysconfig; print(sysconfig.get_path('purelib'))"
    own = Path(
        subprocess.run([python, "-c", asked], capture_output=True, text=True, check=True).stdout.strip()
    )
    lent = "\n".join(dict.fromkeys([sysconfig.get_path("purelib"), sysconfig.get_path("platlib")]))
    (own / "lent.pth").write_text(
        lent + "\n", encoding="utf-8"
    )  # after its own, so that its own is found first
    return Installed(folder / "env")


def _done(command: list[str]) -> None:
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def design(folder: Path, files: Mapping[str, str] = FILES, settings: str = SETTINGS) -> Path:
    """Write a design."""
    folder.mkdir(exist_ok=True)
    for name, text in {"speclint.toml": settings, **files}.items():
        (folder / name).write_text(text, encoding="utf-8", newline="\n")
    return folder


def test_it_is_listed_with_its_rules(installed: Installed, tmp_path: Path) -> None:
    done = installed.run("families", inside=tmp_path)
    assert done.returncode == 0, done.stderr
    listed = " ".join(done.stdout.split())
    assert "wheelsets " in listed
    assert "0.3.0, 4 rules (speclint_wheelsets)" in listed


def test_its_rules_and_those_of_the_shaft_are_applied(installed: Installed, tmp_path: Path) -> None:
    """The crank axle is a shaft: the core's own rule of shafts is on it, and asks for what its spec leaves out."""
    found = installed.checks(design(tmp_path))
    assert found["axle", "shaft.torsion"]["outcome"] == "not assessed"
    assert found["axle", "shaft.torsion"]["missing"] == ["bending_moment is not stated in axle.toml"]
    # by hand: M = 160 kN × 0.1 m/2 = 8 kN m; Z = π 200.2³/32 = 787 757 mm³; 10.1554 MPa of 0.2 × 320 = 64 MPa
    assert found["axle", "axle.bending"]["utilisation"] == pytest.approx(10.1554 / 64, rel=1e-4)
    assert found["wheel", "wheel.hub"]["utilisation"] == pytest.approx(1.6 / 2)


def test_a_press_fit_worked_by_hand(installed: Installed, tmp_path: Path) -> None:
    """Solid axle in a hub of one modulus, after Lamé: p = δ E/(D (1 − ν_a + (D_h² + D²)/(D_h² − D²) + ν_w))."""
    check = installed.checks(design(tmp_path))["wheel", "wheel.grip"]
    of = {step["symbol"]: step["value"] for step in check["steps"]}
    E, D, D_h = of["E_a"] * 1e6, 0.2002, 0.4
    assert of["E_w"] == of["E_a"]
    assert 190e9 < E < 220e9
    p = 0.2e-3 * E / (D * (1 - of["ν_a"] + (D_h**2 + D**2) / (D_h**2 - D**2) + of["ν_w"]))
    held = 0.1 * p * math.pi * D * 0.18
    assert check["found"] == {"value": pytest.approx(held, rel=1e-6), "unit": "N"}
    assert check["utilisation"] == pytest.approx(2 * 160e3 / held, rel=1e-6)


@pytest.mark.parametrize(
    ("rule", "component", "file", "stated", "at", "beyond"),
    [
        # by hand: 1.6 × 200 mm
        ("wheel.hub", "wheel", "wheel.toml", "400 mm", "320 mm", "319.9 mm"),
        # by hand: F = 2/0.1 m × 64 MPa × 787 757 mm³ = 1008.3 kN
        ("axle.bending", "axle", "axle.toml", "160 kN", "1008 kN", "1009 kN"),
        # by hand: m = 0.2 × 160 kN/(0.33 m × (31.416 rad/s)²) = 98.25 kg
        ("axle.balance", "axle", "axle.toml", '"balanced"', '"unbalanced"\nunbalanced = "98 kg"', "99 kg"),
        # a grip of 0.1 π 200.2 mm 180 mm p: with E between 190 and 220 GPa, from 805 to 932 kN, of which half
        ("wheel.grip", "wheel", "axle.toml", "160 kN", "400 kN", "470 kN"),
    ],
)
def test_each_rule_from_both_sides_of_its_limit(
    installed: Installed,
    tmp_path: Path,
    rule: str,
    component: str,
    file: str,
    stated: str,
    at: str,
    beyond: str,
) -> None:
    files = {**FILES, "duty.toml": DUTY, "axle.toml": 'duty = "duty"\n' + AXLE}
    assert files[file].count(stated) == 1
    sound = {**files, file: files[file].replace(stated, at)}
    assert installed.checks(design(tmp_path, sound))[component, rule]["outcome"] == "conforms"
    broken = sound[file].replace("98 kg", beyond) if "98 kg" in at else files[file].replace(stated, beyond)
    assert (
        installed.checks(design(tmp_path, {**files, file: broken}))[component, rule]["outcome"] == "finding"
    )


def test_a_balanced_axle_needs_no_duty_and_another_does(installed: Installed, tmp_path: Path) -> None:
    assert installed.checks(design(tmp_path))["axle", "axle.balance"]["outcome"] == "not applicable"
    wild = AXLE.replace('"balanced"', '"unbalanced"')
    check = installed.checks(design(tmp_path, {**FILES, "axle.toml": wild}))["axle", "axle.balance"]
    assert check["outcome"] == "not assessed"
    assert "duty is not stated" in check["says"]


def test_a_shaft_of_the_core_carries_its_table_too(installed: Installed, tmp_path: Path) -> None:
    shaft = AXLE.replace('"crank-axle"', '"shaft"').replace('throw = "330 mm"\ncranks = "balanced"\n', "")
    found = installed.checks(design(tmp_path, {"axle.toml": shaft, "wheel.toml": WHEEL}))
    assert found["axle", "axle.bending"]["outcome"] == "conforms"
    assert found["wheel", "wheel.grip"]["outcome"] == "conforms"
    assert ("axle", "axle.balance") not in found
    plain = shaft.partition("[wheelsets]")[0]
    found = installed.checks(design(tmp_path, {"axle.toml": plain, "wheel.toml": WHEEL}))
    assert found["axle", "axle.bending"]["outcome"] == "not applicable"
    assert found["wheel", "wheel.grip"]["missing"] == ["wheelsets.seat is not stated in axle.toml"]


@pytest.mark.parametrize("kind", ["shaft", "crank-axle"])
def test_its_table_stands_in_schema_template_and_page(
    installed: Installed, tmp_path: Path, kind: str
) -> None:
    schema = json.loads(installed.run("kinds", kind, "--as", "schema", inside=tmp_path).stdout)
    table = schema["properties"]["wheelsets"]
    assert table["description"].startswith("read by the family wheelsets; What a shaft states")
    spec = {"kind": kind, "wheelsets": {"seat": "200 mm"}}
    jsonschema.validate(spec, schema)
    with pytest.raises(jsonschema.ValidationError, match="'saet' was unexpected"):
        jsonschema.validate({**spec, "wheelsets": {"saet": "200 mm"}}, schema)
    template = installed.run("kinds", kind, "--as", "template", inside=tmp_path).stdout
    filled = tomli.loads(
        "\n".join(
            line[1:] if line[1:2] not in ("", " ") and line[0] == "#" else line
            for line in template.splitlines()
        )
    )
    assert set(filled["wheelsets"]) == {"seat", "seat_length", "load", "overhang"}
    page = installed.run("kinds", kind, inside=tmp_path).stdout
    assert "wheelsets.overhang" in page
    assert "read by the family wheelsets" in " ".join(page.split())


def test_a_key_of_its_table_is_typed(installed: Installed, tmp_path: Path) -> None:
    wrong = AXLE.replace('seat = "200.2 mm"', 'saet = "200.2 mm"').replace("160 kN", "160 mm")
    said = installed.run("check", inside=design(tmp_path, {**FILES, "axle.toml": wrong}))
    assert said.returncode == 2
    text = " ".join(said.stdout.split())
    assert 'axle.toml:7 wheelsets.saet "saet" is no key of [wheelsets] read "200.2 mm" write "seat"' in text
    assert "axle.toml:9 wheelsets.load" in text


def test_its_own_spans_and_geometry_are_asked_for_and_printed(installed: Installed, tmp_path: Path) -> None:
    axle = AXLE.replace('seat = "200.2 mm"', 'seat = "200.2 m"')
    wheel = WHEEL.replace('hub = "400 mm"', 'hub = "190 mm"')
    said = installed.run("check", inside=design(tmp_path, {"axle.toml": axle, "wheel.toml": wheel}))
    assert said.returncode == 2
    text = " ".join(said.stdout.split())
    assert "200.2 m is outside what parts of this trade have, 40 mm to 400 mm: is 200.2 mm meant?" in text
    assert "wheel.toml:3 bore bore must be less than hub, which is 190 mm" in text
    page = " ".join(installed.run("kinds", "wheel", inside=tmp_path).stdout.split())
    assert "must hold bore is less than hub" in page
    assert "40 mm to 400 mm" in " ".join(installed.run("kinds", "crank-axle", inside=tmp_path).stdout.split())


def test_left_out_it_is_named_and_its_table_is_not_passed_over(installed: Installed, tmp_path: Path) -> None:
    settings = SETTINGS + '[families]\nleave_out = ["wheelsets"]\n'
    shaft = {"axle.toml": 'kind = "shaft"\n[wheelsets]\nseat = "200 mm"\n'}
    said = installed.run("check", inside=design(tmp_path, shaft, settings))
    text = " ".join(said.stdout.split())
    assert said.returncode == 2
    assert "LEFT OUT by speclint.toml: the family wheelsets; none of its rules was applied." in text
    assert (
        "axle.toml:2 wheelsets [wheelsets] is read by the family wheelsets, which speclint.toml leaves out"
        in text
    )


def test_its_report_and_its_drawing(installed: Installed, tmp_path: Path) -> None:
    folder = design(tmp_path)
    listed = installed.run("check", "--as", "wheel-list", inside=folder).stdout.splitlines()
    assert listed[0] == "Wheels"
    assert "wheel: wheel.hub conforms 0.80" in listed
    done = installed.run("review", "--to", "pack", inside=folder)
    assert done.returncode in (0, 1), done.stderr
    page = (folder / "pack" / "review.html").read_text(encoding="utf-8")
    assert '<figure class="item drawn" id="axle-axle"' in page
    assert "axle: the axle and its seats" in page
    assert page.count("<td>200.2 mm") >= 1


def test_helpers_find_the_same(installed: Installed, tmp_path: Path) -> None:
    """A kind with an added table travels between processes: alone and with a helper, the report is the same."""
    files = {f"axle-{number:02}.toml": AXLE for number in range(4)}
    folder = design(tmp_path, files)
    program = tmp_path / "spread.py"
    program.write_text(
        "from pathlib import Path\n"
        "from speclint.checking import Processes, assess\n"
        "from speclint.families import load_families\n"
        "from speclint.reports.json_report import write\n"
        "if __name__ == '__main__':\n"
        "    alone = assess([Path('.')], load_families())\n"
        "    with Processes(helpers=1, enough=1, start='spawn') as helpers:\n"
        "        spread = assess([Path('.')], load_families(), processes=helpers)\n"
        "    print(len(alone.checks), write(alone) == write(spread))\n",
        encoding="utf-8",
    )
    done = installed.run(inside=folder, module="spread")
    assert done.stdout.split()[1:] == ["True"], done.stderr
    assert int(done.stdout.split()[0]) > 40


#: What a writer of families runs for the contracts that every rule and formula keeps.
CONTRACTS = """
from speclint.equations import described
from speclint.testing import *
for rule in installed_families().rules:
    if rule.family == "wheelsets":
        expect_rule(rule)
        print(rule.name)
for formula in formulae_in("speclint_wheelsets"):
    expect_formula(formula)
    expect_equation(formula)
    if not described(formula).empirical:
        expect_dimensions(formula)
    print(formula.__name__)
"""


def test_it_keeps_the_contracts_of_every_family(installed: Installed, tmp_path: Path) -> None:
    """What must hold for each rule and formula, run where the stranger is installed."""
    (tmp_path / "contracts.py").write_text(CONTRACTS, encoding="utf-8")
    done = installed.run(inside=tmp_path, module="contracts")
    assert done.returncode == 0, done.stdout + done.stderr
    tried = done.stdout.split()
    for name in ("wheel.grip", "wheel.hub", "axle.bending", "axle.balance"):
        assert name in tried
    for name in ("hub_ratio", "journal_moment", "centrifugal"):
        assert name in tried


def test_an_older_speclint_would_be_asked_for_in_its_metadata(installed: Installed, tmp_path: Path) -> None:
    """The wheel's metadata edited to ask for another speclint: refused in one line, exit 3."""
    (file,) = installed.folder.rglob("speclint_wheelsets-0.3.0.dist-info/METADATA")
    text = file.read_text(encoding="utf-8")
    assert "Requires-Dist: speclint>=0.1\n" in text
    file.write_text(text.replace("speclint>=0.1", "speclint>=9"), encoding="utf-8", newline="\n")
    try:
        refused = installed.run("check", inside=design(tmp_path))
        left_out = SETTINGS + '[families]\nleave_out = ["wheelsets"]\n'
        without = installed.run("check", inside=design(tmp_path, {}, left_out))
    finally:
        file.write_text(text, encoding="utf-8", newline="\n")
    assert refused.returncode == 3
    assert refused.stderr == (
        'speclint: family wheelsets (speclint-wheelsets) asks for "speclint>=9"; this is speclint 0.1.0\n'
    )
    assert without.returncode == 2  # the design's own specs of its kinds, which nothing reads now
