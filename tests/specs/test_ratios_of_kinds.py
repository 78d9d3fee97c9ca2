"""Coefficients that no part of an engine has: refused with the span of their own key."""

from __future__ import annotations

import pytest

from speclint.repository.reading import load_specs
from speclint.testing import DesignFolder


@pytest.mark.parametrize(
    ("kind", "key", "value", "taken"),
    [
        ("poppet-valve", "loss_coefficient", "0", False),
        ("poppet-valve", "loss_coefficient", "0.09", False),
        ("poppet-valve", "loss_coefficient", "0.1", True),
        ("poppet-valve", "loss_coefficient", "100", True),
        ("poppet-valve", "loss_coefficient", "101", False),
        ("poppet-valve", "clearance_share", "0", False),
        ("poppet-valve", "clearance_share", "8.5", False),
        ("poppet-valve", "clearance_share", "8.5 %", True),
        ("poppet-valve", "compression_share", "5", False),
        ("poppet-valve", "compression_share", "5 %", True),
        ("poppet-valve", "shutting_ratio", "0", False),
        ("poppet-valve", "shutting_ratio", "1.9", True),
        ("blast-nozzle", "discharge_coefficient", "9.5", False),
        ("blast-nozzle", "discharge_coefficient", "0.95", True),
        ("blast-nozzle", "discharge_coefficient", "1", True),
        ("blast-nozzle", "discharge_coefficient", "1.01", False),  # nothing passes more than an ideal stream
        ("poppet-valve", "discharge_coefficient", "1", True),
        ("poppet-valve", "discharge_coefficient", "1.01", False),
        ("poppet-valve", "port_discharge_coefficient", "1", True),
        ("poppet-valve", "port_discharge_coefficient", "1.01", False),
        ("steam-passage", "discharge_coefficient", "6", False),
        ("steam-passage", "discharge_coefficient", "0.6", True),
        ("steam-passage", "discharge_coefficient", "1", True),
        ("steam-passage", "discharge_coefficient", "1.01", False),
        ("frame-fastening", "friction", "1.2", False),
        ("frame-fastening", "friction", "0.12", True),
        ("frame-fastening", "greatest_friction", "15", False),
        ("frame-fastening", "greatest_friction", "15 %", True),
        ("bolted-joint", "friction", "2", False),
        ("bolted-joint", "friction", "0.2", True),
        ("bolted-joint", "tightening.torque_coefficient", "0.016", False),
        ("bolted-joint", "tightening.torque_coefficient", "1.6", False),
        ("bolted-joint", "tightening.torque_coefficient", "0.16", True),
        ("fit", "friction", "1.4", False),
        ("fit", "friction", "0.10..0.14", True),
        ("valve-seat", "friction", "0.001", False),
        ("valve-seat", "friction", "0.10..0.14", True),
        ("rocker", "inertia", "0.0000025 kg·m²", False),
        ("rocker", "inertia", "0.0025 kg·m²", True),
        ("dimension-chain", "chain.box.lever", "0", False),  # a link that does not act is none
        ("dimension-chain", "chain.box.lever", "0.5", True),
        ("dimension-chain", "wanted_yield", "99", False),
        ("dimension-chain", "wanted_yield", "1 %", False),
        ("dimension-chain", "wanted_yield", "99 %", True),
        ("weldment", "joints.seam.examined", "100", False),  # per cent left out
        ("weldment", "joints.seam.examined", "0 %", True),
        ("weldment", "joints.seam.examined", "100 %", True),
        ("steam-pipe", "bend_thinning", "0 %", False),  # no bend keeps its outside
        ("steam-pipe", "bend_thinning", "15", False),
        ("steam-pipe", "bend_thinning", "15 %", True),
        ("partition", "bridges", "1.2", False),
        ("partition", "bridges", "0", True),
        ("partition", "bridges", "0.01", True),
        ("partition", "emissivity", "0", False),
        ("partition", "emissivity", "1.5", False),
        ("partition", "emissivity", "0.8", True),
        ("lagging", "emissivity", "9", False),
        ("lagging", "emissivity", "0.9", True),
        ("steam-passage", "floor.fall", "50", False),  # of 1 in 50
        ("steam-passage", "floor.fall", "0", True),
        ("steam-passage", "floor.fall", "0.02", True),
        ("locating-face", "slot_stiffness", "7500000 N/m", False),
        ("locating-face", "slot_stiffness", "7500000 N/mm", True),
        ("cylinder-block", "pads.back.stiffness", "1500000 N/m", False),
        ("cylinder-block", "pads.back.stiffness", "1500000 N/mm", True),
        ("locating-face", "friction", "1.5", False),
        ("locating-face", "friction", "0.15", True),
    ],
)
def test_a_coefficient_lies_where_those_of_the_trade_do(
    workshop: DesignFolder, kind: str, key: str, value: str, taken: bool
) -> None:
    root = workshop.write({"part.toml": f'kind = "{kind}"\nid = "part"\n{key} = "{value}"\n'}).root
    (loaded,) = load_specs(root / "part.toml", "part.toml", workshop.loaded.kinds)
    told = [str(one) for one in loaded.complaints]
    assert taken == (not told)
    assert all(key in one and f'read "{value}"' in one for one in told)
