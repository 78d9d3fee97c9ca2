from .equation import (
    expect_equation as expect_equation,
)
from .formulae import (
    formulae_in as formulae_in,
)
