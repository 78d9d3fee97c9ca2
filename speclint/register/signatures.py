"""Signatures of concessions, made and verified by OpenSSH's ``ssh-keygen -Y``.

A signature covers the content of one entry, in a namespace of its own, so that a signature made for
something else never counts. Git has no part in it: what its configuration names for signing is never read.
Who may sign with which key is in a file of allowed signers, whose form is that of ssh-keygen(1), section
ALLOWED SIGNERS.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.errors import SigningError
from speclint.repository import find_program, replace_file, scratch_folder

if TYPE_CHECKING:
    import subprocess

NAMESPACE = "speclint-concession"
_PROGRAM = "ssh-keygen"
_PATIENCE = 60  # seconds; a verification reads two small files and needs no network
#: Variables by which ssh-keygen would start a program or load a library: a verification needs none of them.
_NOT_TO_VERIFY = (
    "SSH_ASKPASS",
    "SSH_ASKPASS_REQUIRE",
    "SSH_SK_PROVIDER",
    "SSH_SK_HELPER",
    "SSH_PKCS11_HELPER",
)


def sign(statement: bytes, key: Path) -> str:
    """The armoured signature of a statement by a private key, or by the agent's key of a public one.

    ssh-keygen itself asks for the passphrase of a key that has one.

    :raises SigningError: where ssh-keygen is absent or refuses.
    """
    if not key.is_file():
        raise SigningError(f"{key}: there is no such key")
    command = [_program(), "-Y", "sign", "-f", str(key.absolute()), "-n", NAMESPACE]
    done = _run(command, statement)
    text = done.stdout.decode("utf-8", "replace").replace("\r\n", "\n")
    if done.returncode or "BEGIN SSH SIGNATURE" not in text:
        raise SigningError(f"{key}: ssh-keygen would not sign: {_said(done) or 'it gave no reason'}")
    return text


def fault_of(statement: bytes, signature: str, signer: str, signers: Path) -> str:
    """Why a signature is not valid for a statement, in words; "" when it does.

    :raises SigningError: where ssh-keygen is absent: then no signature can be verified.
    """
    program = _program()
    if not signers.is_file():
        return f"the file of signers, {signers.name}, is not there"
    with scratch_folder() as folder:
        file = folder / "signature"
        replace_file(file, signature.encode("utf-8"))
        command = [
            program,
            "-Y",
            "verify",
            "-f",
            str(signers.absolute()),
            "-I",
            signer,
            "-n",
            NAMESPACE,
            "-s",
            str(file),
        ]
        environment = {name: value for name, value in os.environ.items() if name not in _NOT_TO_VERIFY}
        done = _run(command, statement, Path(folder), environment, _PATIENCE)
    if done.returncode == 0:
        return ""
    return f"the signature is not {signer}'s of this entry as it stands ({_said(done) or 'ssh-keygen refuses it'})"


def _program() -> str:
    found = find_program(_PROGRAM)
    if found is None:
        raise SigningError(
            "ssh-keygen is not on the path: signatures need OpenSSH 8.1 or later (its client programs)"
        )
    return found


def _run(
    command: list[str],
    statement: bytes,
    folder: Path | None = None,
    environment: Mapping[str, str] | None = None,
    patience: int | None = None,
) -> subprocess.CompletedProcess[bytes]:
    import subprocess  # not at the top: a plain check verifies no signature

    try:
        return subprocess.run(
            command,
            input=statement,
            capture_output=True,
            cwd=folder,
            env=environment,
            timeout=patience,
            check=False,
        )
    except (OSError, subprocess.TimeoutExpired) as problem:
        raise SigningError(f"ssh-keygen could not be run: {problem}") from problem


def _said(done: subprocess.CompletedProcess[bytes]) -> str:
    """What ssh-keygen said, in one line."""
    said = (done.stderr + b"\n" + done.stdout).decode("utf-8", "replace").splitlines()
    return "; ".join(line.strip().rstrip(".") for line in said if line.strip() and "BEGIN" not in line)
