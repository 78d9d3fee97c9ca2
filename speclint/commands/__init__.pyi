from .command_line import (
    main as main,
)
