"""Which tests are tried on the mutants of a package: those nearest to it, since thousands run any line of the core.

A mutant that only a test elsewhere would catch counts as not caught: what a package does is to be shown by its own.
"""

from __future__ import annotations

from pathlib import Path

from tests.mutation.mutants import package_of

#: Seconds of tests that are tried on one mutant, the nearest and the quickest first.
CAP = 30.0

#: Tests beside those in the folder of the package's own name, and its doctests.
_BESIDE: dict[str, tuple[str, ...]] = {
    "speclint/handbook": ("tests/published",),
    "speclint/equations": ("tests/contracts/test_equations.py", "tests/testing"),
    "speclint/facts": ("tests/plugins",),
    "speclint/rules": (
        "tests/checking/test_corners.py",
        "tests/checking/test_proof.py",
        "tests/checking/test_proof_of_scans.py",
        "tests/checking/test_rule_run.py",
        "tests/checking/test_unstated_case.py",
        "tests/families/test_tables.py",
        "tests/plugins/springs",
    ),
    "speclint/checking": (
        "tests/commands/test_nothing_checked.py",
        "tests/made/test_judging.py",
        "tests/made/test_two_sizes.py",
        "tests/rules/test_agreement.py",
        "tests/rules/test_sheets_reworked.py",
        "tests/plugins/events/test_worked_cases.py",
        "tests/plugins/release/test_concessions.py",
        "tests/plugins/release/test_known_faults.py",
        "tests/plugins/springs",
        "tests/register/test_drawing_readings.py",
        "tests/register/test_standing.py",
        "tests/register/test_two_states.py",
        "tests/repository/test_changes_of_parts_alike.py",
        "tests/reports/test_remedies_shown.py",
    ),
    "speclint/commands": (
        "tests/checking/test_margins.py",
        "tests/checking/test_unseen.py",
        "tests/checking/test_what_if.py",
        "tests/families/test_mishaps.py",
        "tests/register/test_start.py",
        "tests/register/test_withdrawals.py",
        "tests/reports/test_comparison.py",
        "tests/reports/test_pack_changed.py",
        "tests/reports/test_units_of_works.py",
        "tests/specs/test_templates.py",
    ),
    "speclint/repository": (
        "tests/commands/test_names.py",
        "tests/commands/test_nothing_checked.py",
        "tests/editing/test_assistance.py",
        "tests/families/test_leaving_out.py",
        "tests/register/test_basis.py",
        "tests/register/test_changes.py",
        "tests/register/test_drawing_readings.py",
        "tests/register/test_entering.py",
        "tests/register/test_gate.py",
        "tests/register/test_revisions.py",
        "tests/register/test_settings.py",
        "tests/register/test_staged.py",
        "tests/register/test_two_states.py",
        "tests/specs/test_drawing.py",
    ),
    "speclint/specs": (
        "tests/repository",
        "tests/plugins/springs",
        "tests/plugins/release/test_steamings.py",
    ),
    "speclint/errors": ("tests/repository/test_reading.py", "tests/quantities"),
    "speclint/families": ("tests/testing/test_families.py", "tests/commands/test_names.py"),
    "speclint/reports": (
        "tests/checking/test_margins.py",
        "tests/checking/test_unseen.py",
        "tests/checking/test_what_if.py",
        "tests/commands/test_as_made.py",
        "tests/commands/test_asked_of_checks.py",
        "tests/commands/test_dossier.py",
        "tests/commands/test_inspect.py",
        "tests/commands/test_names.py",
        "tests/commands/test_old_keys.py",
        "tests/commands/test_pair.py",
        "tests/commands/test_record.py",
        "tests/register/test_gate.py",
        "tests/register/test_standing.py",
        "tests/register/test_drawing_readings.py",
    ),
    "speclint/made": (
        "tests/commands/test_record.py",
        "tests/commands/test_as_made.py",
        "tests/commands/test_dossier.py",
        "tests/commands/test_inspect.py",
        "tests/commands/test_pair.py",
        "tests/register/test_drawing_readings.py",
        "tests/reports/test_dossier.py",
        "tests/reports/test_worn_and_in_steam.py",
    ),
}
#: Packages that read an assessment and have no part in it: their tests on the whole example are tried too, and it is
#: assessed once, before the mutants.
_READS_EXAMPLE = frozenset({"speclint/reports"})
#: Files that take longer than the cap by themselves, or start programs, in which no mutant is.
_NEVER = frozenset(
    {
        "tests/register/test_road.py",
        "tests/checking/test_time_limit.py",
        "tests/checking/test_safe_start.py",
        "tests/published/test_steam_cycle.py",
    }
)


def packages(root: Path) -> list[str]:
    """Every package that has modules of its own below ``speclint`` and ``plugins``."""
    files = (*root.glob("speclint/*/**/*.py"), *root.glob("plugins/*/**/*.py"))
    return sorted({package_of(file.relative_to(root).as_posix()) for file in files})


def modules(root: Path, package: str) -> list[str]:
    """The files of a package."""
    return [file.relative_to(root).as_posix() for file in sorted((root / package).rglob("*.py"))]


def tests(root: Path, package: str) -> list[str]:
    """Files of tests, and modules with doctests, that are tried on a package."""
    folder = package.removeprefix("speclint/").replace("plugins/speclint_", "plugins/")
    found: set[Path] = set()
    for place in (f"tests/{folder}", *_BESIDE.get(package, ())):
        found.update([root / place] if place.endswith(".py") else (root / place).rglob("test_*.py"))
    found.update(
        file for file in (root / package).rglob("*.py") if ">>> " in file.read_text(encoding="utf-8")
    )
    names = sorted(file.relative_to(root).as_posix() for file in found if file.exists())
    return [
        name
        for name in names
        if name not in _NEVER and (reads_example(package) or not _checks_example(root / name))
    ]


def reads_example(package: str) -> bool:
    """Whether the whole example is assessed for the tests of a package before its mutants are tried."""
    return package in _READS_EXAMPLE


def _checks_example(file: Path) -> bool:
    """Whether it takes the whole example as assessed: by results that are kept, so without the mutant."""
    return "\nfrom tests.example import" in file.read_text(encoding="utf-8")
