from .command_line import (
    main as main,
)
from .streams import (
    occupy as occupy,
)
