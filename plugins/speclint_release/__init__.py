"""Rules of what must be documented before drawings go to a shop."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import RulesIn, family, rules_in

#: The interface between the core and families for which this one is written.
speclint_api = "1"


@family
def speclint_rules() -> Sequence[RulesIn]:
    """The rules of the family."""
    return [
        rules_in("speclint_release.rules"),
        rules_in("speclint_release.rules.blocks", "cylinder-block"),
        rules_in("speclint_release.rules.days_of_record", "made-part"),
        rules_in("speclint_release.rules.extents", "weldment"),
        rules_in("speclint_release.rules.faults_listed", "engine"),
        rules_in("speclint_release.rules.fitted_hot", "made-part"),
        rules_in("speclint_release.rules.iron_relieved", "made-part"),
        rules_in("speclint_release.rules.known_faults", "known-fault"),
        rules_in(
            "speclint_release.rules.limits_stated",
            *("bolted-joint", "compression-spring", "cylinder-block", "cylinder-liner", "piston"),
            *("piston-rod", "poppet-valve", "tappet", "valve-seat"),
        ),
        rules_in("speclint_release.rules.made_analysis", "made-part"),
        rules_in("speclint_release.rules.made_certificates", "made-part"),
        rules_in("speclint_release.rules.made_documents", "made-part"),
        rules_in("speclint_release.rules.made_examinations", "made-part"),
        rules_in("speclint_release.rules.made_metal", "made-part"),
        rules_in("speclint_release.rules.made_sizes", "made-part"),
        rules_in("speclint_release.rules.made_tests", "made-part"),
        rules_in("speclint_release.rules.made_to_drawing", "made-part"),
        rules_in("speclint_release.rules.made_witnesses", "made-part"),
        rules_in("speclint_release.rules.order_of_record", "made-part"),
        rules_in("speclint_release.rules.steamings", "made-part"),
        rules_in("speclint_release.rules.worn_parts", "made-part"),
    ]
