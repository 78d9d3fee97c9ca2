from .alike import (
    differences as differences,
)
from .assignment import (
    best_worst as best_worst,
    require_solver as require_solver,
)
from .design_as_made import (
    as_made as as_made,
    fitted_parts as fitted_parts,
    made_parts as made_parts,
    made_to as made_to,
)
from .dimensions import (
    DimensionMade as DimensionMade,
    dimensions_of as dimensions_of,
)
from .dossier import (
    PartInDossier as PartInDossier,
    PieceMade as PieceMade,
    dossier as dossier,
)
from .finish import (
    FinishSize as FinishSize,
    finish_sizes as finish_sizes,
)
from .in_steam import (
    InSteam as InSteam,
    duties_in_steam as duties_in_steam,
    in_steam as in_steam,
)
from .inspection import (
    Inspected as Inspected,
    InspectionList as InspectionList,
    checked_for as checked_for,
    inspection_list as inspection_list,
)
from .inspection_points import (
    AskedOnPaper as AskedOnPaper,
    InspectionPoint as InspectionPoint,
    asked_on_paper as asked_on_paper,
    inspection_points as inspection_points,
)
from .inspection_sheet import (
    COLUMNS as COLUMNS,
    SheetRow as SheetRow,
    carries as carries,
    cells as cells,
    other_rows as other_rows,
    ranked_rows as ranked_rows,
    sheet_mapping as sheet_mapping,
)
from .judgement import (
    Change as Change,
    Judged as Judged,
    Pair as Pair,
    PartMade as PartMade,
    Rework as Rework,
)
from .judging import (
    Bench as Bench,
    judge as judge,
)
from .pairing import (
    Paired as Paired,
    Place as Place,
    Tried as Tried,
    bench_of as bench_of,
    margin_of as margin_of,
    pair as pair,
)
from .recording import (
    Recorded as Recorded,
    as_toml as as_toml,
    missing_columns as missing_columns,
    record as record,
)
