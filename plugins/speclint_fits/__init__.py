"""Fits, pads in frames, machining allowances and dimension chains."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of ``fit.``, ``chain.`` and of the block in its frames."""
    return [
        rules_in("speclint_fits.rules.fits", "fit"),
        rules_in("speclint_fits.rules.form", "fit", "valve-spindle"),
        rules_in("speclint_fits.rules.pads", "locating-face"),
        rules_in("speclint_fits.rules.block_in_frames", "cylinder-block", "locating-face"),
        rules_in("speclint_fits.rules.castings", "casting"),
        rules_in("speclint_fits.rules.chains", "dimension-chain"),
        rules_in("speclint_fits.rules.hot_chains", "dimension-chain"),
        rules_in("speclint_fits.rules.chain_zones", "dimension-chain"),
        rules_in("speclint_fits.rules.angles", "poppet-valve"),
        rules_in("speclint_fits.rules.geometry"),
        rules_in("speclint_fits.rules.zones"),
        rules_in("speclint_fits.rules.holes", "bolted-joint"),
    ]
