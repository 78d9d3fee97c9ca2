from .brought import (
    Brought as Brought,
)
from .figure_maker import (
    FigureMaker as FigureMaker,
)
from .guard import (
    FamilyFailed as FamilyFailed,
    Guard as Guard,
    call as call,
    end_process as end_process,
)
from .hooks import (
    family as family,
)
from .interface import (
    API as API,
)
from .loaded import (
    Family as Family,
    Loaded as Loaded,
)
from .loading import (
    find_families as find_families,
    load_families as load_families,
    require as require,
)
from .name_lists import (
    NameLists as NameLists,
)
from .names import (
    Name as Name,
    NameList as NameList,
)
from .report_writer import (
    ReportWriter as ReportWriter,
)
from .rule_examples import (
    RuleExample as RuleExample,
    rule_examples as rule_examples,
)
