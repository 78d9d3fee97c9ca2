"""A dimension chain: a gap, and the dimensions of several specs that make it."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.dimension import Dimension
from speclint.specs.fields import NOT_STATED, Factor, Length, LinkTo, Position, Word
from speclint.specs.freedom import GIVEN
from speclint.specs.geometry import AtMost, Conditions
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.taking_over import OWN_PLACE


class ChainLink(Dimension):
    """One dimension of a chain: that of the part ``of``, read there by its key, or stated here as its size.

    Fields:
        direction: whether an increase of it widens or narrows the gap
        lever: the share of it that acts on the gap, such as 0.5 of a width; all of it where left out
        spread: distribution of parts between the limits; left out, normal about the middle
        measured: its size as measured on the job, which then replaces the drawn one
        grows_with: the part with which it expands, where that is not the one that states it
        reach: distance from the face over which an error of its orientation, or of a projected zone, grows; left out,
            the length of that zone
        temperature: name under which the duty states the temperature of this length, where it is not its part's
    """

    direction: Word[Literal["widens", "narrows"]] = NOT_STATED
    lever: Factor = NOT_STATED
    spread: Word[Literal["normal", "uniform"]] = NOT_STATED
    measured: Annotated[Position, Span("10 µm", "20 m"), GIVEN] = NOT_STATED
    grows_with: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    reach: Annotated[Length, Span("2 mm", "10 m")] = NOT_STATED
    temperature: Word[str] = NOT_STATED


class DimensionChain(Component):
    """A gap between parts, and the links that make it.

    Fields:
        chain: its links by name; each may live in another spec
        closes: the size, in another spec, that the gap is, such as "clearance" of a tappet
        least: least gap required cold; negative for an interference
        greatest: greatest gap allowed cold
        least_hot: least gap required with every part at its temperature
        greatest_hot: greatest gap allowed with every part at its temperature
        wanted_yield: share of chains that must come out within these limits
        last: name of the link that the fitter machines when the others have been measured
    """

    kind: ClassVar[str] = "dimension-chain"
    called: ClassVar[str] = "dimension chain"
    of_metal: ClassVar[bool] = False
    geometry: ClassVar[Conditions] = (AtMost("least", "greatest"), AtMost("least_hot", "greatest_hot"))

    chain: dict[str, ChainLink] = {}
    closes: Dimension = Dimension.unstated()
    least: Annotated[Position, Span("10 µm", "40 mm")] = NOT_STATED
    greatest: Annotated[Position, Span("10 µm", "40 mm")] = NOT_STATED
    least_hot: Annotated[Position, Span("10 µm", "40 mm")] = NOT_STATED
    greatest_hot: Annotated[Position, Span("10 µm", "40 mm")] = NOT_STATED
    wanted_yield: Annotated[Factor, Span("10 %", "100 %"), GIVEN] = NOT_STATED
    last: Annotated[Word[str], NamedIn("chain")] = NOT_STATED
