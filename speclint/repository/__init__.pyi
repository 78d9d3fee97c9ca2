from .basis import (
    Basis as Basis,
)
from .basis_changes import (
    FilesInFolder as FilesInFolder,
    changes_of_basis as changes_of_basis,
    changes_of_duties as changes_of_duties,
    removed_specs as removed_specs,
    touched_specs as touched_specs,
)
from .cells import (
    CellError as CellError,
    Schema as Schema,
)
from .change import (
    Change as Change,
    component_and_key as component_and_key,
    steps_of_key as steps_of_key,
)
from .changes import (
    Changes as Changes,
)
from .component_called import (
    component_called as component_called,
    no_component_called as no_component_called,
)
from .concession import (
    Concession as Concession,
    Register as Register,
    find_concession as find_concession,
)
from .design import (
    Design as Design,
)
from .digests import (
    State as State,
    digest as digest,
    digest_of_spec as digest_of_spec,
)
from .drafted_design import (
    DraftedDesign as DraftedDesign,
    Reorder as Reorder,
)
from .drawing_changes import (
    drawn_otherwise as drawn_otherwise,
)
from .drawing_files import (
    DrawingFiles as DrawingFiles,
    FileState as FileState,
    InFolder as InFolder,
    Source as Source,
)
from .drawing_reading import (
    DrawingReading as DrawingReading,
)
from .drawing_state import (
    DrawingState as DrawingState,
    drawing_state as drawing_state,
)
from .drawings_in_git import (
    InGit as InGit,
)
from .edited_design import (
    EditedDesign as EditedDesign,
)
from .file_replacement import (
    replace_file as replace_file,
)
from .folder import (
    chosen as chosen,
    find_root as find_root,
)
from .kept_index import (
    Remembered as Remembered,
)
from .likeness import (
    look as look,
)
from .made_parts import (
    day_fault as day_fault,
)
from .misfits import (
    misfits_of as misfits_of,
)
from .opening import (
    Repository as Repository,
    families_left_out as families_left_out,
    open_repository as open_repository,
)
from .other_specs import (
    with_specs as with_specs,
)
from .output_target import (
    refuse_target as refuse_target,
    write_output as write_output,
)
from .parts_from_table import (
    NewSpec as NewSpec,
    PartsOfTable as PartsOfTable,
    Place as Place,
    parts_of_table as parts_of_table,
    written_folder as written_folder,
)
from .parts_to_table import (
    TableOfParts as TableOfParts,
    csv_text as csv_text,
    spreadsheet as spreadsheet,
    table_of_parts as table_of_parts,
)
from .programs import (
    find_program as find_program,
)
from .reading import (
    ids_stated as ids_stated,
)
from .register_file import (
    read_register as read_register,
)
from .regular_files import (
    LARGEST_REGISTER as LARGEST_REGISTER,
    not_regular as not_regular,
    read_regular as read_regular,
    text_read_again as text_read_again,
)
from .restated_text import (
    restated_text as restated_text,
)
from .revisions import (
    Snapshot as Snapshot,
    at_revision as at_revision,
    ignored_files as ignored_files,
    lay_out as lay_out,
    staged as staged,
    staged_changes as staged_changes,
)
from .root_folder import (
    FILE_NAME as FILE_NAME,
    root_above as root_above,
)
from .scratch_folder import (
    scratch_folder as scratch_folder,
)
from .settings import (
    MeasuredSetting as MeasuredSetting,
    SettingName as SettingName,
    Settings as Settings,
    load_settings as load_settings,
)
from .settings_tables import (
    Reviewer as Reviewer,
)
from .shop_tables import (
    Layout as Layout,
    RefusedRow as RefusedRow,
    ShopRow as ShopRow,
    ShopTable as ShopTable,
    read_shop_table as read_shop_table,
)
from .spec_files import (
    PassedOver as PassedOver,
    passed_over as passed_over,
    spec_files as spec_files,
)
from .table_mappings import (
    PartsMapping as PartsMapping,
    TableMapping as TableMapping,
    read_mapping as read_mapping,
    read_parts_mapping as read_parts_mapping,
)
from .toml_files import (
    is_toml as is_toml,
    toml_files as toml_files,
)
from .toml_writing import (
    inline as inline,
    key_text as key_text,
)
from .unknown_names import (
    Known as Known,
    ids_named as ids_named,
    names_for as names_for,
)
from .work_tree import (
    WorkTree as WorkTree,
    work_tree as work_tree,
)
from .working_copy import (
    copy_repository as copy_repository,
)
