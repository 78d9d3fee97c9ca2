from .assessment import (
    Assessment as Assessment,
    named as named,
    of_component as of_component,
)
from .check_result import (
    Check as Check,
)
from .check_seen import (
    CheckSeen as CheckSeen,
    checks_of_report as checks_of_report,
    seen as seen,
)
from .code_digest import (
    code_of as code_of,
    packages_of as packages_of,
)
from .concession_watch import (
    changes as changes,
    dated as dated,
    find_check as find_check,
    nothing_to_concede as nothing_to_concede,
    runs_longer as runs_longer,
    used_of as used_of,
    values_changed as values_changed,
)
from .consequences import (
    Consequences as Consequences,
    consequences as consequences,
    spec_with as spec_with,
)
from .design_changes import (
    DesignChanges as DesignChanges,
    ValueChange as ValueChange,
    changed_specs as changed_specs,
    new_and_cleared as new_and_cleared,
)
from .drawings import (
    drawings_checked as drawings_checked,
    drawings_named as drawings_named,
)
from .inputs import (
    Inputs as Inputs,
    context_of as context_of,
)
from .kept_folder import (
    KeptFolder as KeptFolder,
    usual_folder as usual_folder,
)
from .kept_results import (
    KeptResults as KeptResults,
)
from .kept_run import (
    KeptRun as KeptRun,
    RestedOn as RestedOn,
)
from .known_faults import (
    KnownFaults as KnownFaults,
    known_faults as known_faults,
)
from .loop import (
    Touched as Touched,
    assess as assess,
    chosen_rules as chosen_rules,
    find_remedies as find_remedies,
    rules_asked_for as rules_asked_for,
)
from .margin_changes import (
    Cause as Cause,
    MarginChange as MarginChange,
    margin_changes as margin_changes,
)
from .margins import (
    Margin as Margin,
    Margins as Margins,
    Sensitivity as Sensitivity,
    margins as margins,
)
from .old_revisions import (
    made_to_old_revision as made_to_old_revision,
)
from .on_executor import (
    OnExecutor as OnExecutor,
    cluster as cluster,
)
from .once_more import (
    once_more as once_more,
)
from .outcomes import (
    remember as remember,
)
from .parts_alike import (
    Alike as Alike,
    findings_once as findings_once,
    grouped as grouped,
)
from .processes import (
    Processes as Processes,
)
from .remedy import (
    Remedy as Remedy,
    Sought as Sought,
)
from .remedy_search import (
    reworks as reworks,
)
from .renamed_parts import (
    renamed_parts as renamed_parts,
)
from .rule_run import (
    check as check,
    check_component as check_component,
)
from .severity import (
    uses_more as uses_more,
)
from .solving import (
    Bound as Bound,
    Solved as Solved,
    solved as solved,
)
from .stray_temperatures import (
    stray_temperatures as stray_temperatures,
)
from .swings import (
    Swing as Swing,
    swings as swings,
)
from .unfinished import (
    Unfinished as Unfinished,
    still_to_be_drawn as still_to_be_drawn,
)
from .unseen import (
    STATES as STATES,
    HazardSeen as HazardSeen,
    LeftOut as LeftOut,
    State as State,
    Unseen as Unseen,
    counts_hazards as counts_hazards,
    unseen as unseen,
)
from .waiting import (
    Waiting as Waiting,
    Waits as Waits,
    names_not_listed as names_not_listed,
    waiting_for_files as waiting_for_files,
)
from .what_if import (
    MovedMargin as MovedMargin,
    Question as Question,
    Restatement as Restatement,
    WhatIf as WhatIf,
    checked_with as checked_with,
    question as question,
    what_if as what_if,
)
