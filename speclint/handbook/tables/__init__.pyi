from .csv_files import (
    Row as Row,
    entries as entries,
    number as number,
    row as row,
    rows as rows,
    said_of_table as said_of_table,
)
from .interpolation import (
    between as between,
    on_lines as on_lines,
)
from .published_works import (
    ASME_APPENDIX_2 as ASME_APPENDIX_2,
    BHAVIKATTI as BHAVIKATTI,
    BORESI as BORESI,
    CENGEL_HEAT as CENGEL_HEAT,
    JINDAL as JINDAL,
    JOEL as JOEL,
    JOHNSON_CONTACT as JOHNSON_CONTACT,
    KAZIMI as KAZIMI,
    KHURMI as KHURMI,
    LINEHAM as LINEHAM,
    PETERSON as PETERSON,
    POCKET_BOOK as POCKET_BOOK,
    ROARK as ROARK,
    SARKAR as SARKAR,
    SHIGLEY as SHIGLEY,
    SINGH as SINGH,
    VDI_2230 as VDI_2230,
    WENTZELL as WENTZELL,
)
from .reading import (
    Reading as Reading,
)
