from .assessment import (
    Assessment as Assessment,
    assess as assess,
    chosen_rules as chosen_rules,
    of_component as of_component,
)
from .check_result import (
    Check as Check,
)
from .processes import (
    Hands as Hands,
)
from .remedy import (
    Remedy as Remedy,
)
from .rule_run import (
    check as check,
    check_component as check_component,
)
