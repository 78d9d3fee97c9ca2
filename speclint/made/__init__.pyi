from .dimensions import (
    DimensionMade as DimensionMade,
    dimensions_of as dimensions_of,
)
