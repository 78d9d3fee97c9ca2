"""What speclint.toml says of concessions, signers and reviewers, and every refusal of it."""

from __future__ import annotations

from pathlib import Path
from typing import get_args

import pytest

from speclint.repository import Settings, load_settings
from speclint.repository.settings import SettingName, inside
from speclint.testing import DesignFolder
from tests.tubes import FILES, tubes

SETTINGS = """
[concessions]
file = "records/concessions.toml"
signed = ["hold", "nonconformity"]
ending_soon = 60
longest = 12
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
    assert settings.longest_concession == 12
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
    assert settings.longest_concession == 30
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


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('[works]\nsite_pressure = "1 bar gauge"\n', "the site pressure is an absolute pressure"),
        (
            '[works]\nsite_pressure = "0.6 bar absolute"\n',
            'no altitude is stated; read "0.6 bar absolute"; write the altitude of the site beside it',
        ),
        ('[works]\nsite_pressure = "0.845 bar absolute"\n', "more than 1000 m above the sea"),
        ('[works]\nsite_pressure = "1.105 bar absolute"\n', "lies round no railway"),
        ('[works]\nsite_pressure = "0.6 bar absolute"\naltitude = "500 m"\n', "has 0.955 bar at 500 m"),
        ('[works]\nsite_pressure = "0.849 bar absolute"\naltitude = "1000 m"\n', "0.899 bar at 1000 m"),
        ('[works]\nsite_pressure = "0.948 bar absolute"\naltitude = "1000 m"\n', "0.899 bar at 1000 m"),
        ('[works]\nsite_pressure = "0.853..0.9 bar absolute"\naltitude = "1000 m"\n', "0.899 bar at 1000 m"),
        ('[works]\nsite_pressure = "0.9..0.945 bar absolute"\naltitude = "1000 m"\n', "0.899 bar at 1000 m"),
        (
            '[families]\nrequired = ["fits"]\nleave_out = ["fits"]\n',
            'a family that is required cannot be left out; read "fits"',
        ),
        ("[families]\nseconds_per_rule = 0\n", "a rule is given from 1 to 3600 seconds; read 0; write 60"),
        ("[families]\nseconds_per_rule = 3601\n", "a rule is given from 1 to 3600 seconds; read 3601"),
        ('[made]\ngauge_share = "20.1 %"\n', "a gauge may take up to a fifth of the tolerance"),
        ('[made]\ngauge_share = "0 %"\n', ""),
        ('[made]\ngauge_share = "10 % ±1"\n', ""),
        (
            '[railway]\nsteepest = "0.025 ±0.001"\n',
            'a setting has no tolerance of its own; read "0.025 ±0.001"',
        ),
        ('[railway]\ncant = "120 mm ±1"\n', 'write "120 mm"'),
        ('[signers]\nfile = "a/../../b"\n', "lies outside the repository"),
    ],
)
def test_settings_that_cannot_be_meant(tmp_path: Path, text: str, said: str) -> None:
    (tmp_path / "speclint.toml").write_text(text, encoding="utf-8")
    _, (complaint,) = load_settings(tmp_path)
    assert complaint.where.file == "speclint.toml"
    assert said in str(complaint)


@pytest.mark.parametrize(
    "works",
    [
        'site_pressure = "0.855 bar absolute"',
        'site_pressure = "1.095 bar absolute"',
        'site_pressure = "0.858 bar absolute"\naltitude = "1000 m"',
        'site_pressure = "0.939 bar absolute"\naltitude = "1000 m"',
        'site_pressure = "0.855..0.943 bar absolute"\naltitude = "1000 m"',
        'site_pressure = "0.6 bar absolute"\naltitude = "4200 m"',
        'site_pressure = "1.06 bar absolute"\naltitude = "-390 m"',
        'altitude = "3000 m"',
    ],
)
def test_air_that_lies_round_a_railway(tmp_path: Path, works: str) -> None:
    """At 1000 m ISO 2533 prints 0.89876 bar: 5 % to either side are 0.8538 and 0.9437 bar; at 4200 m some 0.600 bar."""
    (tmp_path / "speclint.toml").write_text(f"[works]\n{works}\n", encoding="utf-8")
    _, complaints = load_settings(tmp_path)
    assert complaints == ()


def test_settings_at_the_ends_of_what_may_be_meant(tmp_path: Path) -> None:
    text = '[families]\nseconds_per_rule = {}\n[made]\ngauge_share = "{}"\n'
    for seconds, share, of in ((1, "20 %", 0.2), (3600, "0.1 %", 0.001)):
        (tmp_path / "speclint.toml").write_text(text.format(seconds, share), encoding="utf-8")
        settings, complaints = load_settings(tmp_path)
        assert settings is not None
        assert complaints == ()
        assert (settings.seconds_per_rule, settings.gauge_share) == (seconds, pytest.approx(of))


def test_what_settings_stand_for_where_they_are_stated_and_where_not(tmp_path: Path) -> None:
    text = (
        '[works]\nsite_pressure = "0.95 bar absolute"\nstage = "released"\nunits = "imperial"\nexit_at = "hold"\n'
        '[railway]\nsteepest = "0.025"\ncant = "120 mm"\n'
        "[made]\ncertificate_strengths = true\n"
        '[drawings]\ngeneral_angles = "f"\ngeneral_geometry = "K"\n'
    )
    (tmp_path / "speclint.toml").write_text(text, encoding="utf-8")
    stated, complaints = load_settings(tmp_path)
    assert stated is not None, complaints
    assert (stated.site_pressure, stated.stage, stated.units, stated.exit_at) == (
        pytest.approx(0.95e5),
        "released",
        "imperial",
        "hold",
    )
    grade, cant = stated.measured("steepest grade"), stated.measured("cant")
    assert grade is not None
    assert cant is not None
    assert (grade.nominal, cant.nominal) == (0.025, pytest.approx(0.12))
    assert (stated.certificate_strengths, stated.general_angles, stated.general_geometry) == (True, "f", "K")
    none = Settings()
    assert (none.site_pressure, none.stage, none.units, none.exit_at) == (
        101325.0,
        "draft",
        "as written",
        "nonconformity",
    )
    assert (none.measured("steepest grade"), none.measured("cant")) == (None, None)
    assert (none.certificate_strengths, none.general_angles, none.general_geometry) == (False, "m", "")
    assert (none.gauge_share, none.seconds_per_rule, none.decision) == (0.1, 60, "guard band of U")


def test_what_a_rule_may_ask_for_is_said_as_text(tmp_path: Path) -> None:
    text = (
        '[works]\nsite_pressure = "95000 Pa absolute"\nstage = "released"\n'
        '[local_codes]\npressure = ["A", "B"]\nrailway = ["C"]\n'
        '[made]\ndecision = "simple acceptance"\n'
        '[drawings]\ngeneral_angles = "f"\ngeneral_geometry = "K"\n'
    )
    (tmp_path / "speclint.toml").write_text(text, encoding="utf-8")
    settings, complaints = load_settings(tmp_path)
    assert complaints == ()
    assert settings is not None
    names: tuple[SettingName, ...] = get_args(SettingName)
    assert {name: settings.said(name) for name in names} == {
        "stage": "released",
        "pressure codes": "A, B",
        "railway codes": "C",
        "site pressure": "95000.0",
        "decision": "simple acceptance",
        "general angles": "f",
        "general geometry": "K",
    }
    assert Settings().said("railway codes") == ""


def test_a_family_that_is_required_is_not_left_out(tmp_path: Path) -> None:
    text = '[families]\nrequired = ["b"]\nleave_out = ["c", "b", "a"]\n'
    (tmp_path / "speclint.toml").write_text(text, encoding="utf-8")
    settings, (complaint,) = load_settings(tmp_path)
    assert settings is not None
    assert settings.families.left_out == ("a", "c")
    assert str(complaint) == (
        'speclint.toml:1 families.leave_out: a family that is required cannot be left out; read "b"; '
        'write "b" in only one of required and leave_out'
    )


def test_every_fault_of_the_settings_is_told_in_their_order_with_its_line(tmp_path: Path) -> None:
    text = (
        '[signers]\nfile = "../signers"\n'
        '[railway]\ncant = "120 mm ±1"\nsteepest = "0.025 ±0.001"\n'
        '[concessions]\nsigned = ["holds", "hold", "querry"]\nfile = "/r.toml"\n'
        '[works]\nsite_pressure = "1 bar gauge"\n'
    )
    (tmp_path / "speclint.toml").write_text(text, encoding="utf-8")
    settings, complaints = load_settings(tmp_path)
    assert settings is not None
    assert settings.where.line == 1
    assert [str(one.where) for one in complaints] == [
        "speclint.toml:2 signers.file",
        "speclint.toml:4 railway.cant",
        "speclint.toml:5 railway.steepest",
        "speclint.toml:6 concessions.signed",
        "speclint.toml:6 concessions.signed",
        "speclint.toml:8 concessions.file",
        "speclint.toml:10 works.site_pressure",
    ]
    assert [one.write for one in complaints] == [
        "a file in it",
        '"120 mm"',
        '"0.025"',
        '"hold"',
        '"query"',
        "a file in it",
        '"1.01325 bar absolute"',
    ]


def test_every_fault_of_the_form_is_told_in_their_order(tmp_path: Path) -> None:
    text = '[works]\nstge = "draft"\nstage = "ready"\n[made]\ngauge_share = "5 mm"\n'
    (tmp_path / "speclint.toml").write_text(text, encoding="utf-8")
    settings, complaints = load_settings(tmp_path)
    assert settings is None
    assert [one.where.line for one in complaints] == [2, 3, 5]


@pytest.mark.parametrize(
    ("share", "fault"), [("20 %", False), ("20.1 %", True), ("0.1 %", False), ("10 % ±1", True)]
)
def test_how_much_a_gauge_may_take(tmp_path: Path, share: str, fault: bool) -> None:
    (tmp_path / "speclint.toml").write_text(f'[made]\ngauge_share = "{share}"\n', encoding="utf-8")
    _, complaints = load_settings(tmp_path)
    said = f'a gauge may take up to a fifth of the tolerance, or it decides too little; read "{share}"; '
    assert [str(one) for one in complaints] == (
        [f'speclint.toml:2 made.gauge_share: {said}write "10 %", and "20 %" at the most'] if fault else []
    )


@pytest.mark.parametrize(
    ("file", "stays"),
    [
        ("a.toml", True),
        ("a/b.toml", True),
        ("..a/b", True),
        ("../a", False),
        ("a/../../b", False),
        ("/a", False),
    ],
)
def test_a_file_that_the_settings_name_lies_inside(file: str, stays: bool) -> None:
    assert inside(file) is stays
