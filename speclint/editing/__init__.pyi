from .server import (
    serve as serve,
)
