"""What speclint.toml says of concessions, signers and reviewers, and every refusal of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.repository import load_settings
from speclint.testing import DesignFolder
from tests.tubes import FILES, tubes

SETTINGS = """
[concessions]
file = "records/concessions.toml"
signed = ["hold", "nonconformity"]
ending_soon = 60
[signers]
file = "records/signers"
[reviewers."M. Coyle"]
competent_for = ["tubes"]
role = "chief draughtsman"
signs_as = "m.coyle"
"""


def test_where_the_register_is_and_who_reviews(tmp_path: Path) -> None:
    (tmp_path / "speclint.toml").write_text(SETTINGS, encoding="utf-8")
    settings, complaints = load_settings(tmp_path)
    assert settings is not None
    assert complaints == ()
    assert settings.register_file == "records/concessions.toml"
    assert settings.signers_file == "records/signers"
    assert settings.concessions.signed == ("hold", "nonconformity")
    assert settings.ending_soon == 60
    assert settings.reviewers["M. Coyle"].competent_for == ("tubes",)


def test_what_is_not_stated(tmp_path: Path) -> None:
    (tmp_path / "speclint.toml").write_text("", encoding="utf-8")
    settings, _ = load_settings(tmp_path)
    assert settings is not None
    assert (settings.register_file, settings.signers_file, settings.ending_soon) == (
        "register.toml",
        "allowed_signers",
        30,
    )
    assert not settings.reviewers


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('[concessions]\nfile = "../register.toml"\n', "lies outside the repository"),
        ('[signers]\nfile = "/etc/signers"\n', "lies outside the repository"),
        ('[concessions]\nsigned = ["holds"]\n', 'this is not a grade; read "holds"; write "hold"'),
        ('[concessions]\nfiel = "x"\n', '"fiel" is no key of [concessions]'),
        ("[concessions]\nending_soon = '30 d'\n", "not a whole number"),
        ('[reviewers."M. Coyle"]\ncompetent = []\n', '"competent" is no key of [reviewers.M. Coyle]'),
    ],
)
def test_settings_that_cannot_be_used(tmp_path: Path, text: str, said: str) -> None:
    (tmp_path / "speclint.toml").write_text(text, encoding="utf-8")
    _, complaints = load_settings(tmp_path)
    assert said in str(complaints[0])


def test_the_register_is_no_spec(tmp_path: Path) -> None:
    shop = (
        DesignFolder(tmp_path, tubes())
        .write(FILES)
        .write({"register.toml": "", "duty.toml": FILES["duty.toml"]})
    )
    assert shop.assess().complaints == ()
