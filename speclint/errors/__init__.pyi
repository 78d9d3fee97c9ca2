from .complaint import (
    Complaint as Complaint,
    nearest as nearest,
    nearest_few as nearest_few,
    one_of as one_of,
    shortened as shortened,
)
from .exceptions import (
    DesignError as DesignError,
    FamilyError as FamilyError,
    NotKnown as NotKnown,
    OutOfRange as OutOfRange,
    OutputError as OutputError,
    QuantityError as QuantityError,
    ReaderLeft as ReaderLeft,
    RevisionError as RevisionError,
    SettingsError as SettingsError,
    SigningError as SigningError,
    SpeclintError as SpeclintError,
    StreamError as StreamError,
    TableError as TableError,
)
from .in_words import (
    in_words as in_words,
    raised_at as raised_at,
)
from .location import (
    NOWHERE as NOWHERE,
    Location as Location,
)
from .records import (
    compared_names as compared_names,
    field_names as field_names,
    is_record as is_record,
    made_of_its_fields as made_of_its_fields,
    replace as replace,
)
from .toml_lines import (
    Path as Path,
    locate as locate,
)
from .toml_reading import (
    LARGEST_POWER as LARGEST_POWER,
    TomlError as TomlError,
    read_toml_text as read_toml_text,
)
