from . import (
    hooks as hooks,
    listings as listings,
    sheet_markdown as sheet_markdown,
    sheet_page as sheet_page,
    terminal_page as terminal_page,
)
from .comparison_data import (
    comparison_data as comparison_data,
    comparison_schema as comparison_schema,
)
from .comparison_markdown import (
    comparison_markdown as comparison_markdown,
)
from .comparison_page import (
    comparison_page as comparison_page,
)
from .consequences_listing import (
    consequences_data as consequences_data,
    consequences_page as consequences_page,
)
from .dossier import (
    dossier_data as dossier_data,
    dossier_exit_code as dossier_exit_code,
    dossier_markdown as dossier_markdown,
)
from .gate_verdict import (
    gate_data as gate_data,
    gate_page as gate_page,
)
from .inspection_listing import (
    inspection_data as inspection_data,
    inspection_page as inspection_page,
)
from .inspection_tables import (
    inspection_csv as inspection_csv,
    inspection_markdown as inspection_markdown,
)
from .json_report import (
    schema as schema,
)
from .made_parts import (
    called_part as called_part,
    counted as counted,
    made_data as made_data,
    made_exit_code as made_exit_code,
    made_markdown as made_markdown,
    made_page as made_page,
    made_schema as made_schema,
)
from .margins_listing import (
    margins_csv as margins_csv,
    margins_data as margins_data,
    margins_page as margins_page,
    margins_schema as margins_schema,
)
from .names_listing import (
    lists_page as lists_page,
    names_data as names_data,
    names_page as names_page,
)
from .pack import (
    REVIEW_FILE as REVIEW_FILE,
    begin_drawing as begin_drawing,
    dossier_html as dossier_html,
    inspection_document as inspection_document,
    review_page as review_page,
    sheet_document as sheet_document,
)
from .pack.bars import (
    Bar as Bar,
    chart as chart,
)
from .pack.curves import (
    Courses as Courses,
    courses_of as courses_of,
)
from .pack.drawn_units import (
    unit_named as unit_named,
)
from .pack.figures import (
    Figure as Figure,
    compared as compared,
    followed as followed,
    known_of as known_of,
    millimetres as millimetres,
    said as said,
    specs_of as specs_of,
    taken_again as taken_again,
    word as word,
)
from .pack.labels import (
    Labels as Labels,
)
from .pack.paper import (
    Paper as Paper,
    Point as Point,
    axis_marks as axis_marks,
    hatched as hatched,
    niced as niced,
    ticks as ticks,
    title_at as title_at,
)
from .pack.plot import (
    Plot as Plot,
)
from .pack.printed import (
    DrawnAgain as DrawnAgain,
    OnSheet as OnSheet,
    Printed as Printed,
    Quantity as Quantity,
    Words as Words,
    along as along,
    argument as argument,
    joined as joined,
    judged as judged,
    of_step as of_step,
    on_sheet as on_sheet,
    quoted as quoted,
    shown as shown,
    stated as stated,
    words as words,
    worked as worked,
)
from .pack.title_page import (
    files_read as files_read,
)
from .page import (
    Page as Page,
    put as put,
)
from .pairing import (
    pairs_data as pairs_data,
    pairs_exit_code as pairs_exit_code,
    pairs_markdown as pairs_markdown,
    pairs_page as pairs_page,
)
from .phrases import (
    count as count,
    share_of_limit as share_of_limit,
)
from .printable import (
    json_text as json_text,
    visible as visible,
)
from .published import published_schema as published_schema
from .reading_listing import (
    reading_slip as reading_slip,
)
from .reference import (
    REFERENCE_FRONT as REFERENCE_FRONT,
    REFERENCE_MARK as REFERENCE_MARK,
    reference_files as reference_files,
)
from .register_listing import (
    exit_code as exit_code,
    register_data as register_data,
    register_page as register_page,
    slip as slip,
)
from .staged_findings import (
    staged_page as staged_page,
)
from .terminal import (
    speak_utf8 as speak_utf8,
    takes_styles as takes_styles,
    width_of as width_of,
)
from .unseen_listing import (
    hazards_said as hazards_said,
    unseen_data as unseen_data,
    unseen_page as unseen_page,
)
from .what_if import (
    what_if_data as what_if_data,
    what_if_page as what_if_page,
    what_if_schema as what_if_schema,
)
