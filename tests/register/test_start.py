"""What a plain check does not load: it starts as fast as it did before there was a register."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tests.register.office import FILES

PROGRAM = """
import sys
from speclint.commands import main
main(["check", sys.argv[1]])
names = ("repository.register_file", "repository.revisions", "repository.changes", "checking.concession_watch",
         "register.standing", "register.opened", "register.entering", "register.signing", "register.signatures",
         "register.staged", "register.gate")
found = [name for name in names if f"speclint.{name}" in sys.modules]
print("LOADED", *found, *(name for name in ("tomlkit", "subprocess") if name in sys.modules))
"""


@pytest.mark.parametrize(
    ("register", "loaded"),
    [
        (None, []),
        ("", ["repository.register_file"]),
    ],
)
def test_only_a_repository_with_a_register_loads_what_reads_it(
    tmp_path: Path, register: str | None, loaded: list[str]
) -> None:
    (tmp_path / "speclint.toml").write_text("", encoding="utf-8")
    if register is not None:
        (tmp_path / "register.toml").write_text(register, encoding="utf-8")
    command = [sys.executable, "-c", PROGRAM, str(tmp_path)]
    for remark in (
        "",
        "# looked at again\n",
    ):  # the first reads what each installed distribution needs, which is kept
        (tmp_path / "duty.toml").write_text(FILES["duty.toml"] + remark, encoding="utf-8")
        done = subprocess.run(command, capture_output=True, check=True, encoding="utf-8")
    assert done.stdout.splitlines()[-1].split() == ["LOADED", *loaded]
