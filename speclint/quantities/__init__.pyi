from . import (
    units as units,
)
from .measure import (
    PROVENANCES as PROVENANCES,
    Measure as Measure,
    Provenance as Provenance,
    Sign as Sign,
    example as example,
    read as read,
)
from .mirroring import (
    negated as negated,
    round_the_axis as round_the_axis,
)
from .patterns import (
    pattern_of as pattern_of,
)
from .rewriting import (
    Written as Written,
)
from .tolerance_classes import (
    classes_of_grade as classes_of_grade,
    deviations as deviations,
)
from .unit_systems import (
    System as System,
    amount_in as amount_in,
    beside as beside,
    lengths_in as lengths_in,
    unit_in as unit_in,
)
from .unit_table import (
    DIMENSIONS as DIMENSIONS,
)
from .units import (
    comparable as comparable,
    si_unit as si_unit,
)
from .writing import (
    amount as amount,
    amounts_apart as amounts_apart,
    as_written as as_written,
    displayed as displayed,
    number as number,
    sides as sides,
    substituted as substituted,
)
