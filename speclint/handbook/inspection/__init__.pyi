from .conformity import (
    DECISIONS as DECISIONS,
    ISO_14253_1 as ISO_14253_1,
    ISO_TR_14253_6 as ISO_TR_14253_6,
    Conformity as Conformity,
    Decision as Decision,
    conformity as conformity,
    guard_band as guard_band,
)
from .form import (
    ovality as ovality,
    taper as taper,
)
from .uncertainty import (
    GREATEST_SHARE as GREATEST_SHARE,
    USUAL_SHARE as USUAL_SHARE,
    accepted_between as accepted_between,
    greatest_uncertainty as greatest_uncertainty,
)
