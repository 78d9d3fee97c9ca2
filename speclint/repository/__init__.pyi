from .basis_changes import (
    changes_of_basis as changes_of_basis,
)
from .changes import (
    Changes as Changes,
)
from .concession import (
    Concession as Concession,
    Register as Register,
    find_concession as find_concession,
)
from .design import (
    Design as Design,
)
from .folder import (
    find_root as find_root,
    spec_files as spec_files,
)
from .opening import (
    Repository as Repository,
    families_left_out as families_left_out,
    open_repository as open_repository,
)
from .programs import (
    find_program as find_program,
)
from .register_file import (
    ENTRY as ENTRY,
    read_register as read_register,
)
from .revisions import (
    at_revision as at_revision,
    lay_out as lay_out,
    staged as staged,
    staged_changes as staged_changes,
)
from .settings import (
    FILE_NAME as FILE_NAME,
    Reviewer as Reviewer,
    Settings as Settings,
    load_settings as load_settings,
)
