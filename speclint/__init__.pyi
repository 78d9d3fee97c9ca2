from .checking import Assessment as Assessment, Check as Check
from .equations import (
    COMMON_PRACTICE as COMMON_PRACTICE,
    FIRST_PRINCIPLES as FIRST_PRINCIPLES,
    Source as Source,
    formula as formula,
    require as require,
)
from .errors import NotKnown as NotKnown, OutOfRange as OutOfRange, replace as replace
from .families import (
    API as API,
    FigureMaker as FigureMaker,
    ReportWriter as ReportWriter,
    family as family,
)
from .rules import (
    Course as Course,
    Grade as Grade,
    Gravity as Gravity,
    Judgement as Judgement,
    Limit as Limit,
    Must as Must,
    Pair as Pair,
    Rule as Rule,
    RulesIn as RulesIn,
    Sheet as Sheet,
    ToFill as ToFill,
    Worked as Worked,
    agreement as agreement,
    filled_once as filled_once,
    rule as rule,
    rules_in as rules_in,
    worked as worked,
)
