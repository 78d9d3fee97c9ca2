"""A design office made for one test: tubes with a finding, reviewers with keys, and a git repository."""

from __future__ import annotations

import datetime as dt
import os
import subprocess
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, cast

from speclint.errors import replace
from speclint.families import Loaded
from speclint.register import Acceptance, Decision, Standing, concede, judge, sign_entry, stand_of
from speclint.repository import Concession, Register, Settings, read_register
from speclint.testing import DesignFolder
from tests.tubes import DUTY, RACK, TUBE

SETTINGS = """\
[works]
stage = "for-review"

[concessions]
signed = []

[reviewers."M. Coyle"]
competent_for = ["tubes"]
role = "chief draughtsman"
signs_as = "m.coyle"

[reviewers."B. Thorne"]
competent_for = ["boilers"]
role = "boiler inspector"
signs_as = "b.thorne"

[reviewers."A. Render"]
competent_for = ["tubes"]
role = "designer"

[limits."tube.stress"]
allowable = { value = "100 MPa", grounds = "as tubes of the works always had it", accepted_by = "M. Coyle" }
"""
SIGNED = SETTINGS.replace("signed = []", 'signed = ["hold"]')

#: At 45 bar the mean hoop stress is 4.5 MPa × 100.5/(104.5 − 100.5) = 113.1 MPa against 100 MPa: a hold.
OVERLOADED = TUBE.replace("30 bar gauge", "45 bar gauge") + 'prepared_by = "A. Render"\n'
FILES = {"duty.toml": DUTY, "rack.toml": RACK, "tube.toml": OVERLOADED}
TODAY = dt.date.today()


def days(number: int) -> dt.date:
    """The day so many days from today."""
    return TODAY + dt.timedelta(days=number)


ACCEPTED = Acceptance("tube", "tube.stress", "M. Coyle", "carried at 113 MPa in service for years", days(200))


@dataclass
class Office:
    """A design whose findings are conceded."""

    shop: DesignFolder
    keys: Path = field(default_factory=Path)

    def concede(
        self, *, today: dt.date = TODAY, key: Path | None = None, against: str | None = None, **other: Any
    ) -> Concession:
        """Accept the hold on the tube, or something else said in ``other``."""
        return concede(replace(ACCEPTED, **other), self.shop.root, self.shop.loaded, today, key, against)[0]

    def sign(self, number: str, key: Path, *, today: dt.date = TODAY) -> Concession:
        """Sign an entry."""
        return cast("Concession", sign_entry(number, self.shop.root, self.shop.loaded, today, key)[0])

    def stands(self, *, today: dt.date = TODAY) -> list[Standing]:
        """How the entries of the register stand."""
        return list(stand_of(self.shop.root, self.shop.loaded, today)[1])

    def only(self, *, today: dt.date = TODAY) -> Standing:
        """How the only entry stands."""
        (standing,) = self.stands(today=today)
        return standing

    def register(self) -> Register:
        """The register as it is read."""
        return read_register(self.shop.root, Settings())

    def text(self) -> str:
        """The register as it is written."""
        return (self.shop.root / "register.toml").read_bytes().decode("utf-8")

    def key_of(self, signer: str) -> Path:
        """A key made now, and its owner's entry in the file of signers."""
        key = self.keys / f"key of {signer}"
        if not key.exists():
            command = ["ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-C", "", "-f", str(key)]
            subprocess.run(command, check=True, capture_output=True)
            public = key.with_name(f"{key.name}.pub").read_text(encoding="utf-8")
            with (self.shop.root / "allowed_signers").open("a", encoding="utf-8", newline="\n") as file:
                file.write(f'{signer} namespaces="speclint-concession" {public}')
        return key


def git(folder: Path, *words: str) -> str:
    """Run git in a folder, as a person without settings of their own."""
    environment = {name: value for name, value in os.environ.items() if not name.startswith("GIT_")}
    environment |= {"GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_SYSTEM": os.devnull}
    for role in ("AUTHOR", "COMMITTER"):
        environment |= {f"GIT_{role}_NAME": "A. Render", f"GIT_{role}_EMAIL": "a.render@works.example"}
    done = subprocess.run(
        ["git", *words], cwd=folder, env=environment, capture_output=True, check=True, encoding="utf-8"
    )
    return done.stdout


def decide(
    office: Office,
    *paths: str,
    against: str | None = None,
    today: dt.date = TODAY,
    load: Callable[[], Loaded] | None = None,
) -> Decision:
    """What the gate decides on a repository, or on some paths in it."""
    places = [office.shop.root / path for path in paths] or [office.shop.root]
    return judge(places, load or (lambda: office.shop.loaded), today, against)


def said(decision: Decision) -> str:
    """Every reason of a decision with its details."""
    return " | ".join(f"{reason.says} ({'; '.join(reason.details)})" for reason in decision.reasons)


def committed(office: Office) -> Office:
    """The office's repository as the main branch has it."""
    root = office.shop.root
    if not (root / ".git").exists():
        git(root, "init", "--quiet", "--initial-branch=main")
    git(root, "add", ".")
    git(root, "commit", "--quiet", "-m", "as it was")
    return office
