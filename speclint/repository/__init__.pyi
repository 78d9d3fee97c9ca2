from .changes import (
    Touched as Touched,
)
from .design import (
    Design as Design,
)
from .folder import (
    find_root as find_root,
    load_design as load_design,
    spec_files as spec_files,
)
from .reading import (
    read_toml as read_toml,
)
from .register_file import (
    Concession as Concession,
    ENTRY as ENTRY,
    Register as Register,
    find_concession as find_concession,
    read_register as read_register,
)
from .revisions import (
    Snapshot as Snapshot,
    at_revision as at_revision,
    staged as staged,
    staged_changes as staged_changes,
)
from .settings import (
    FILE_NAME as FILE_NAME,
    Reviewer as Reviewer,
    Settings as Settings,
    load_settings as load_settings,
)
