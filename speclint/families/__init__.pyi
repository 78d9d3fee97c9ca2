from .hooks import (
    family as family,
)
from .loading import (
    Loaded as Loaded,
    load_families as load_families,
    require as require,
)
from .report_writer import (
    ReportWriter as ReportWriter,
)
