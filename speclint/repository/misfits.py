"""Parts that do not fit in the part that they are linked to, as their kinds declare it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from speclint.errors import Complaint
from speclint.quantities import Measure, amount
from speclint.specs import FitsIn, Link, Spec, Stated

_EPSILON = 1e-9  # relative: values that are equal as written are equal
_NAMED = re.compile(r"\{(\w+)\}")


def misfits(specs: Mapping[str, Spec]) -> Iterator[Complaint]:
    """A complaint for each dimension that is greater, at the best of its limits, than its host's."""
    for spec in specs.values():
        yield from misfits_of(spec, specs)


def misfits_of(spec: Spec, specs: Mapping[str, Spec]) -> Iterator[Complaint]:
    """The same for one spec."""
    for fit in spec.hosts:
        own, host = getattr(spec, fit.key), _host(spec, fit, specs)
        if not isinstance(own, Measure) or host is None:
            continue
        room = host.high * fit.times
        if own.low > room * (1 + _EPSILON):
            said = f"{fit.key} does not go into that of {host.where}, which is {host.text}"
            write = f"no more than {amount(room, 'm', host.unit)}, or the other dimension as it is"
            yield Complaint(own.where, said, f'"{own.text}"', write)


def _host(spec: Spec, fit: FitsIn, specs: Mapping[str, Spec]) -> Measure | None:
    """The dimension of the other part; None where the link, the part or the dimension is not there."""
    link = getattr(spec, fit.link)
    found = specs.get(link.id) if isinstance(link, Link) else None
    if found is None:
        return None
    named = {key: getattr(spec, key) for key in _NAMED.findall(fit.of)}
    if not all(isinstance(word, Stated) for word in named.values()):
        return None
    key = fit.of.format(**{name: word.value for name, word in named.items()})
    try:
        measure = found.under(key)
    except LookupError:
        return None
    return measure if isinstance(measure, Measure) else None
