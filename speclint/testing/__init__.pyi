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
from .trial import (
    Trial as Trial,
    TrialBench as TrialBench,
    trial_of as trial_of,
)
