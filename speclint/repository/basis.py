"""The design basis: what a design is judged by besides its own parts, to judge a change by that of before it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.errors import replace
from speclint.repository.design import Design
from speclint.repository.settings import Settings
from speclint.specs import Component, Duty, Link, NotStated, Spec

if TYPE_CHECKING:
    from speclint.handbook.materials import Material


class Basis(Struct, frozen=True):
    """Settings with their limits, the materials of the repository's own, and the duties, as they once were."""

    settings: Settings
    materials: Mapping[str, Material]
    design: Design

    def applied_to(self, design: Design) -> Design:
        """A design with these duties in place of its own; each component that there was has the duty it had."""
        duties = {name: spec for name, spec in self.design.specs.items() if isinstance(spec, Duty)}
        specs = {name: self._with_its_duty(spec) for name, spec in design.specs.items()}
        return replace(
            design,
            specs={**specs, **duties},
            files={**design.files, **{name: self.design.files[name] for name in duties}},
        )

    def gives_other_duties(self, design: Design) -> bool:
        """Whether a component of a design had another duty, or had one where it now has none."""
        return any(self._with_its_duty(spec) is not spec for spec in design.specs.values())

    def _with_its_duty(self, spec: Spec) -> Spec:
        if not isinstance(spec, Component):
            return spec
        was = self.design.specs.get(spec.id)
        if not isinstance(was, Component) or _id_of(was.duty) == _id_of(spec.duty):
            return spec
        return spec.model_copy(update={"duty": was.duty})


def _id_of(link: Link[Duty] | NotStated) -> str:
    return link.id if isinstance(link, Link) else ""
