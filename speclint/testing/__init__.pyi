from .answers import (
    expect_answer as expect_answer,
)
from .checks import (
    expect_conforms as expect_conforms,
    expect_finding as expect_finding,
    expect_limit as expect_limit,
    expect_not_applicable as expect_not_applicable,
    expect_not_assessed as expect_not_assessed,
    expect_query as expect_query,
    found as found,
    limit as limit,
    on_sheet as on_sheet,
)
from .contracts import (
    expect_declared_kinds as expect_declared_kinds,
    expect_formula as expect_formula,
    expect_rule as expect_rule,
)
from .declared_properties import (
    DIRECTIONS as DIRECTIONS,
    PROPERTIES as PROPERTIES,
    Declared as Declared,
    Direction as Direction,
    Property as Property,
    declared_properties as declared_properties,
)
from .design import (
    SETTINGS as SETTINGS,
    DesignFolder as DesignFolder,
    changed as changed,
    changed_files as changed_files,
    without_key as without_key,
)
from .dimensions import (
    expect_dimensions as expect_dimensions,
)
from .equation import (
    expect_equation as expect_equation,
)
from .families import (
    installed_families as installed_families,
    load_family as load_family,
    made_family as made_family,
)
from .formulae import (
    formulae_in as formulae_in,
)
from .golden import (
    expect_golden as expect_golden,
    write_golden as write_golden,
)
from .properties import (
    expect_never_better_with as expect_never_better_with,
    expect_order_changes_nothing as expect_order_changes_nothing,
    expect_power_of_size as expect_power_of_size,
    expect_properties as expect_properties,
    expect_same_in_other_units as expect_same_in_other_units,
    expect_stating_hides_nothing as expect_stating_hides_nothing,
    expect_tighter_is_no_worse as expect_tighter_is_no_worse,
)
from .replacing import (
    functions_replaced as functions_replaced,
)
from .trial import (
    Trial as Trial,
    TrialBench as TrialBench,
    trial_of as trial_of,
)
