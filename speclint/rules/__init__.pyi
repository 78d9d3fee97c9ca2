from .actual import (
    SENTENCE_WORDS as SENTENCE_WORDS,
    actual as actual,
)
from .agreement import (
    Fact as Fact,
    Must as Must,
    Pair as Pair,
    Worked as Worked,
    agreement as agreement,
    worked as worked,
)
from .asked import (
    Asked as Asked,
)
from .box import (
    over_box as over_box,
)
from .compared import (
    Compared as Compared,
    OverBox as OverBox,
)
from .consulted import (
    OF_THE_DRAWING as OF_THE_DRAWING,
    Consulted as Consulted,
    class_in_full as class_in_full,
)
from .context import (
    Context as Context,
)
from .corners import (
    Corner as Corner,
)
from .course import (
    Course as Course,
    Series as Series,
)
from .definition import (
    Limit as Limit,
    Rule as Rule,
    RulesIn as RulesIn,
    rule as rule,
    rules_in as rules_in,
)
from .enclosure import (
    Enclosure as Enclosure,
    NotEnclosed as NotEnclosed,
    Undecided as Undecided,
)
from .filling import (
    Gravity as Gravity,
    ToFill as ToFill,
    filled_once as filled_once,
)
from .grade import (
    Grade as Grade,
)
from .judgement import (
    ROUNDING as ROUNDING,
    Amount as Amount,
    Judgement as Judgement,
    NotApplicable as NotApplicable,
    NotAssessed as NotAssessed,
    NotCovered as NotCovered,
    RuleEnded as RuleEnded,
    StatedPlace as StatedPlace,
    Unlisted as Unlisted,
    Unread as Unread,
    Unstated as Unstated,
)
from .limit_settings import (
    read_limits as read_limits,
)
from .many import (
    Many as Many,
    NotTogether as NotTogether,
)
from .many_corners import (
    at_corners as at_corners,
)
from .other_check import (
    OtherCheck as OtherCheck,
)
from .places import (
    KnownRanges as KnownRanges,
    ManyPlaces as ManyPlaces,
    Place as Place,
)
from .placing import (
    PlaceSeen as PlaceSeen,
)
from .record import (
    Record as Record,
    in_words as in_words,
)
from .scan import (
    greatest_place as greatest_place,
)
from .sheet import (
    Sheet as Sheet,
)
from .slopes import (
    Slopes as Slopes,
    alternatives as alternatives,
    asked_slopes as asked_slopes,
)
from .steps import (
    Step as Step,
)
from .twins import (
    twins_put_away as twins_put_away,
)
