"""Signatures by the real ssh-keygen: what counts, what does not, and what is said where it is absent."""

from __future__ import annotations

import subprocess
from dataclasses import fields
from pathlib import Path
from typing import Any

import pytest

from speclint.errors import DesignError, SigningError, replace
from speclint.register.signatures import NAMESPACE, fault_of, sign
from speclint.repository import Concession
from tests.register.office import SIGNED, TODAY, Office, days

STATEMENT = b"what was accepted\n"


@pytest.fixture
def signers(office: Office) -> Path:
    return office.shop.root / "allowed_signers"


def test_a_good_signature_has_no_fault(office: Office, signers: Path) -> None:
    signature = sign(STATEMENT, office.key_of("m.coyle"))
    assert signature.startswith("-----BEGIN SSH SIGNATURE-----\n")
    assert fault_of(STATEMENT, signature, "m.coyle", signers) == ""


def test_what_does_not_count(office: Office, signers: Path) -> None:
    key, other = office.key_of("m.coyle"), office.key_of("b.thorne")
    signature = sign(STATEMENT, key)
    assert "m.coyle's of this entry" in fault_of(STATEMENT + b" ", signature, "m.coyle", signers)
    assert "b.thorne's of this entry" in fault_of(STATEMENT, signature, "b.thorne", signers)
    assert fault_of(STATEMENT, sign(STATEMENT, other), "m.coyle", signers)
    assert fault_of(STATEMENT, "no signature", "m.coyle", signers)
    assert fault_of(STATEMENT, "", "m.coyle", signers)
    assert fault_of(STATEMENT, signature, "m.coyle", signers.with_name("none")) == (
        "the file of signers, none, is not there"
    )


def test_a_signature_made_for_something_else_does_not_count(office: Office, signers: Path) -> None:
    key = office.key_of("m.coyle")
    command = ["ssh-keygen", "-Y", "sign", "-f", str(key), "-n", "git"]
    done = subprocess.run(command, input=STATEMENT, capture_output=True, check=True)
    everywhere = signers.read_text(encoding="utf-8").replace(f'namespaces="{NAMESPACE}" ', "")
    signers.write_text(everywhere, encoding="utf-8")
    assert fault_of(STATEMENT, done.stdout.decode(), "m.coyle", signers)
    assert fault_of(STATEMENT, sign(STATEMENT, key), "m.coyle", signers) == ""


def test_a_key_that_is_not_there_or_is_none(tmp_path: Path) -> None:
    with pytest.raises(SigningError, match="there is no such key"):
        sign(STATEMENT, tmp_path / "key")
    (tmp_path / "key").write_text("not a key", encoding="utf-8")
    with pytest.raises(SigningError, match="ssh-keygen would not sign"):
        sign(STATEMENT, tmp_path / "key")


def test_the_key_of_another_is_refused_when_signing(office: Office) -> None:
    key = office.key_of("b.thorne")
    office.key_of("m.coyle")
    with pytest.raises(SigningError, match=r"does not sign for M\. Coyle"):
        office.concede(key=key)
    assert not (office.shop.root / "register.toml").exists()
    office.concede()
    before = office.text()
    with pytest.raises(SigningError, match=r"does not sign for M\. Coyle"):
        office.sign("C-001", key)
    assert office.text() == before


def test_a_lapsed_entry_is_not_signed(office: Office) -> None:
    office.concede()
    office.shop.replace("tube.toml", "45 bar", "45.5 bar")
    with pytest.raises(
        DesignError, match=r"C-001 is lapsed: tube pressure was 45 bar gauge, is 45\.5 bar gauge"
    ):
        office.sign("C-001", office.key_of("m.coyle"))
    with pytest.raises(
        DesignError, match="no concession has the number C-002; write one that is not signed yet: C-001"
    ):
        office.sign("C-002", office.key_of("m.coyle"))


def test_a_reviewer_without_a_name_to_sign_under(office: Office) -> None:
    office.shop.write({}, settings=SIGNED.replace('signs_as = "m.coyle"\n', ""))
    with pytest.raises(SigningError, match=r"does not say under what name M\. Coyle signs"):
        office.concede(key=office.key_of("m.coyle"))


def test_where_ssh_keygen_is_absent_nothing_counts_and_it_says_so(
    office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    office.concede(key=office.key_of("m.coyle"))
    key = office.key_of("m.coyle")
    monkeypatch.setenv("PATH", "")
    assert "ssh-keygen is not on the path" in office.only().reasons[0]
    assert office.only().state == "not signed"
    with pytest.raises(SigningError, match="ssh-keygen is not on the path"):
        sign(STATEMENT, key)


def test_ssh_keygen_that_hangs_is_a_fault(
    office: Office, signers: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    signature = sign(STATEMENT, office.key_of("m.coyle"))

    def never(*_: object, **__: object) -> None:
        raise subprocess.TimeoutExpired("ssh-keygen", 60)

    monkeypatch.setattr(subprocess, "run", never)
    with pytest.raises(SigningError, match="could not be run"):
        fault_of(STATEMENT, signature, "m.coyle", signers)


def test_the_statement_is_the_content_and_nothing_else() -> None:
    """Every field changes it; the signature and the place in the file do not."""
    entry = Concession(
        *("C-001", "tube", "tube.stress", 1, "finding", "hold", "x", "1.1", "0", "M. Coyle", "chief"),
        *(TODAY, days(1), "grounds", "CN-1", {"a": "1"}, "signature"),
    )
    entry = replace(
        entry, also_on=("second",), alike="what both rest on"
    )  # for one part alone neither is in it
    other: dict[str, Any] = {"edition": 2, "date": days(-1), "until": days(2), "rests_on": {"a": "2"}}
    for field in fields(entry):
        changed = replace(entry, **{field.name: other.get(field.name, "other")})
        assert (changed.statement() == entry.statement()) is (field.name in ("signature", "where")), (
            field.name
        )
