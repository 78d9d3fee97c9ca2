from .allowables import (
    multiple_of_allowable as multiple_of_allowable,
    share_of_strength as share_of_strength,
)
from .galvanic import (
    MIL_STD_1250 as MIL_STD_1250,
    anodic_index as anodic_index,
    potential_difference as potential_difference,
    potential_limit as potential_limit,
)
from .library import (
    material as material,
    names as names,
    read_materials as read_materials,
)
from .model import (
    Material as Material,
)
from .packings import (
    fastest as fastest,
    greatest_pressure as greatest_pressure,
    hottest as hottest,
)
from .problems import (
    MaterialsError as MaterialsError,
)
from .properties import (
    PROPERTIES as PROPERTIES,
)
from .tables import (
    Table as Table,
)
from .weldability import (
    carbon_equivalent as carbon_equivalent,
    preheat_band as preheat_band,
)
