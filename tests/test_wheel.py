"""What a wheel must hold: all that is under version control in its packages, and nothing else."""

from __future__ import annotations

from tests.wheel import declared, misfits, tracked


def test_a_template_or_a_family_left_out_of_the_wheel_is_found() -> None:
    whole = [*tracked(), "speclint-1.dist-info/METADATA"]
    assert list(misfits(whole, tracked())) == []
    template = next(name for name in whole if name.endswith(".html"))
    assert list(misfits([name for name in whole if name != template], tracked())) == [
        f"the wheel lacks {template}"
    ]
    springs = [name for name in whole if name.startswith("speclint_springs/")]
    faults = list(misfits([name for name in whole if name not in springs], tracked()))
    assert faults == [f"the wheel lacks {name}" for name in sorted(springs)]
    assert len(faults) > 5


def test_a_file_that_is_not_the_projects_own_is_found() -> None:
    assert list(misfits([*tracked(), "speclint/notes.txt"], tracked())) == [
        "the wheel has speclint/notes.txt, which is not under version control"
    ]


def test_every_family_is_a_package_of_the_wheel() -> None:
    packages = {name.split("/")[0] for name in tracked()}
    assert packages == {"speclint", *(f"speclint_{family}" for family in declared())}
