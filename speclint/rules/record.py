"""What a sheet writes down while a rule runs at the governing corner: its steps, and what they rest on."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from speclint.equations import described
from speclint.errors import NOWHERE, Location
from speclint.handbook.tables import Reading
from speclint.quantities import Measure, amount, si_unit, substituted, unit_in
from speclint.rules.course import Series
from speclint.rules.definition import Limit
from speclint.rules.likeness import Renaming
from speclint.rules.steps import Step, Steps, value_in_words
from speclint.specs import Stated, is_own_place

if TYPE_CHECKING:
    from speclint.repository import Design
    from speclint.rules.placing import PlaceSeen

#: Shown of a result whose inputs stand beside it.
_WORKED = "worked from what is taken here"
#: Shown where only whether something is stated affects the result.
STATED = "stated"


class Record:
    """The written record of one sheet.

    ``basis`` is exactly what a concession would be based on, ``rests_on`` the same in words. ``varying`` are the names
    of values that differ between load cases, ``places`` those that a rule looked at.
    """

    def __init__(self, design: Design, component: str) -> None:
        self._design, self._component = design, component
        self.system = design.settings.units
        self.written = Steps()
        self._words: set[tuple[str, object, Location]] = set()
        self.basis: dict[str, str] = {}
        self.rests_on: dict[str, str] = {}
        self.varying: set[str] = set()
        self.labels: dict[object, str] = {}
        self._figures: dict[object, tuple[str, str]] = {}
        self._amounts: dict[object, tuple[float, str, str]] = {}
        self.renaming = Renaming(design.files.keys())
        self.renaming.part(component)
        #: The basis with every name of a part and of a place replaced by a number.
        self.alike: dict[tuple[str, str], None] = {}
        self.assumed: list[Location] = []
        #: The places that a rule looked at and that state nothing, each once, in the order of its questions.
        self.silent: dict[str, None] = {}
        self.places: list[PlaceSeen] = []
        #: The places that calculations aside of this sheet took.
        self.aside: set[Location] = set()

    @property
    def steps(self) -> list[Step]:
        """The steps that are written down, in their order."""
        return self.written.all

    def note(
        self,
        name: str,
        value: str,
        words: str = "",
        shown: str = "",
        *,
        at: Location | None = None,
        alike: str | None = None,
    ) -> None:
        """Add something that the result rests on: exactly, and in words with the value as a report shows it.

        ``at`` is the place that ends the name, and ``alike`` the value with names replaced, where it holds names.
        """
        self._note_alike(name, value if alike is None else alike, at)
        while self.basis.get(name, value) != value:  # the same name for another value
            name += "′"
        self.basis[name] = value
        words, shown = words or name, shown or value
        known = self.rests_on.get(words, shown)
        if STATED in (known, shown):  # the value itself says more than that there is one
            shown = shown if known == STATED else known
        while self.rests_on.get(words, shown) not in (shown, STATED):
            words += "′"
        self.rests_on[words] = shown

    def _note_alike(self, name: str, value: str, at: Location | None) -> None:
        renaming = self.renaming
        if at is not None and at.file:
            owner = self._design.owner(at)
            plain = name.removesuffix(at.key).rstrip().removesuffix(owner)
            name = f"{renaming.text(plain)}{renaming.part(owner)} {renaming.key(at.key)}"
        else:
            name = renaming.text(name)
        self.alike[name, value] = None

    def is_own_place(self, where: Location) -> bool:
        """Whether a word is the name of a place that each part states for itself."""
        spec = self._design.specs.get(self._design.owner(where))
        return spec is not None and is_own_place(type(spec), where.key)

    def place(self, where: Location, otherwise: str = "") -> str:
        """A place as its component and key, which stays the same when a file is moved."""
        return f"{self._design.owner(where)} {where.key or otherwise}".strip()

    def taken(self, key: object, symbol: str, name: str, measure: Measure, value: float) -> None:
        """Write down a quantity taken from a spec, and the side of its limits that was used."""
        words = name or self.label(measure.where)
        self.labels[key] = words
        self.note(
            f"taken {(place := self.place(measure.where, symbol))}",
            measure.worked or f"{measure.low!r} {measure.high!r} {measure.datum}".rstrip(),
            place,
            stated_as(measure),
            at=measure.where,
        )
        if measure.provenance == "assumed":
            self.assumed.append(measure.where)
        unit = si_unit(measure.dimension)
        self._amounts[key] = (value, unit, unit_in(self.system, unit, measure.unit))
        self.quantity(symbol, words, measure, value)

    def quantity(self, symbol: str, words: str, measure: Measure, value: float) -> None:
        """Write down a figure of a stated quantity: its value, its width or its nominal."""
        unit = si_unit(measure.dimension)
        origin = "" if measure.provenance == "drawing" else measure.provenance
        note = "; ".join(part for part in (measure.text, origin, measure.note) if part)
        where, stated = measure.where, measure.nominal
        written = unit_in(self.system, unit, measure.unit)
        step = Step("taken", symbol, words, value, unit, "", "", None, where, note, written, stated)
        self.written.add(step)

    def word(self, name: str, value: object, where: Location = NOWHERE) -> None:
        """Write down a word, a count without symbol, or a yes or no."""
        if isinstance(value, str | bool | int) and (name, value, where) not in self._words:
            self._words.add((name, value, where))
            self.written.add(Step("read", "", name, value, where=where))

    def counted(self, symbol: str, name: str, value: int, stated: int, where: Location) -> None:
        """Write down a whole number."""
        words = name or self.label(where)
        self.written.add(Step("counted", symbol, words, float(value), where=where, stated=float(stated)))

    def looked_up(self, key: object, symbol: str, words: str, reading: Reading, value: float) -> None:
        """Write down a figure of a table, with its band and its source."""
        self.labels[key] = words
        self._figures[key] = (reading.what, symbol)
        written = unit_in(self.system, reading.unit)
        self._amounts[key] = (value, reading.unit, written)
        low, high = (amount(end, reading.unit) for end in (reading.low, reading.high))
        band = "" if reading.low == reading.high else f"{low} to {high}"
        self.varying.add(f"{words} {symbol}")
        self.note(
            f"look-up {words} {symbol}",
            _WORKED if reading.worked else f"{reading.low!r} {reading.high!r}",
            f"{words} {symbol}",
            _WORKED if reading.worked else band or amount(reading.low, reading.unit),
        )
        self.written.add(
            Step(
                "looked up",
                symbol,
                reading.what,
                value,
                reading.unit,
                source=reading.source,
                note=self._band(reading) if band else "",
                written_in=written,
                long=reading.worked,
            )
        )

    def said(self, value: float, unit: str, written_in: str = "") -> str:
        """A value with its unit, in those that the works chose."""
        return amount(value, unit, unit_in(self.system, unit, written_in))

    def _band(self, reading: Reading) -> str:
        return f"{self.said(reading.low, reading.unit)} to {self.said(reading.high, reading.unit)}"

    def limit(self, symbol: str, declared: Limit, measure: Measure, *, own: bool) -> None:
        """Write down a limit, and whether the repository set it."""
        note = f"set to {measure.text} in speclint.toml; the rule's own is {declared.default}" if own else ""
        if own and measure.note:
            note = f"{note}; {measure.note}"
        unit = si_unit(declared.dimension)
        words = declared.says or declared.name.replace("_", " ")
        self.note(f"limit {declared.name}", repr(measure.nominal), shown=measure.text)
        found, source = measure.nominal, declared.source
        # A rule's own limit is in the units of the work that it cites, the design in those of its specs.
        as_here = self.system if own or self.system != "as written" else "metric"
        written = unit_in(as_here, unit, measure.unit)
        if not own and measure.unit and written != measure.unit:
            note = f"stated as {declared.default}"
        self.written.add(
            Step("limit", symbol, words, found, unit, source=source, note=note, written_in=written)
        )

    def worked(
        self, symbol: str, formula: Callable[..., float], arguments: Mapping[str, float], value: float
    ) -> None:
        """Write down a formula with its numbers and its result."""
        about = described(formula)
        units = about.units
        filled = tuple((name, given, units[name]) for name, given in arguments.items() if name in units)
        numbers = {name: self.said(given, unit) for name, given, unit in filled}
        name = (formula.__doc__ or "").strip().split("\n")[0].rstrip(".")
        put_in = substituted(about.equation, numbers)
        source = about.cites[0] if about.cites else None
        self.written.add(
            Step(
                "worked",
                symbol,
                name,
                value,
                about.unit,
                about.equation,
                put_in,
                source,
                written_in=unit_in(self.system, about.unit),
                filled=filled,
            )
        )

    def scanned(
        self, symbol: str, name: str, place: float, unit: str, note: str, series: tuple[Series, ...] = ()
    ) -> None:
        """Write down the worst place that a scan found, and the series along it."""
        written = unit_in(self.system, unit)
        self.written.add(
            Step("scanned", symbol, name, place, unit, note=note, written_in=written, series=series)
        )

    def stated_at(self, where: Location, value: float | None = None) -> str:
        """A place as a finding on two drawings names it: what it is, its value, file and line, and the drawing.

        ``value`` is the one meant of several that were taken there, such as both limits of a size, or what was worked
        from one of them; else the last.
        """
        spec = self._design.specs.get(self._design.owner(where))
        drawing = (
            " revision ".join(
                str(one.value) for one in (spec.drawing, spec.revision) if isinstance(one, Stated)
            )
            if spec
            else ""
        )
        on_drawing = f", drawing {drawing}" if drawing else ", no drawing number"
        line = f"{where.file}:{where.line}" if where.line else where.file
        return f"{self.named_at(where, value)} ({line}{on_drawing})"

    def named_at(self, where: Location, value: float | None = None) -> str:
        """A place without its file and drawing: what it is, of which component, and its value."""
        step = self.written.meant(where, value)
        link = self.basis.get(f"link {self.place(where)}", "")
        shown = value_in_words(step) if step else link and f'"{link}"'
        return f"{self.label(where)} {shown}".replace("  ", " ").rstrip()

    def takes_at(self, where: Location, value: float) -> bool:
        """Whether a value was taken at a place as it stands there, and not worked from what does."""
        return any(one.value == value for one in self.written.at(where))

    def side(self, key: object, *, high: bool) -> str:
        """An input that decides, with the value at its side: ``bore 480.063 mm (greatest)``."""
        shown = f" {amount(*self._amounts[key])}" if key in self._amounts else ""
        return f"{self.named(key)}{shown} ({'greatest' if high else 'least'})"

    def named(self, key: object) -> str:
        """What was taken, by its label; of several with one label each by its part, or by what its table calls it.

        Two figures of one metal are told apart by their symbols.
        """
        words = self.labels[key]
        alike = [one for one, label in self.labels.items() if label == words]
        if len(alike) < 2:
            return words
        if key in self._figures:
            what, symbol = self._figures[key]
            return (
                what
                if sum(self._figures.get(one, ("",))[0] == what for one in alike) == 1
                else f"{words} {symbol}"
            )
        part = key[2] if isinstance(key, tuple) and len(key) == 4 else ""
        return f"{words} of {part}" if part else words

    def label(self, where: Location) -> str:
        """The name of a place: its key in words, and its component where that is another one."""
        words = in_words(where.key)
        if not where.file or where.key.startswith("cases."):
            return words
        owner = self._design.owner(where)
        return words if owner == self._component else f"{words} of {owner}"


def stated_as(measure: Measure) -> str:
    """A quantity as its spec has it, with the limits that a table gives it.

    >>> from speclint.quantities.measure import read
    >>> stated_as(read("500 mm H8", "length")), stated_as(read("16 bar gauge", "fluid pressure"))
    ('500 mm H8 (500 mm to 500.097 mm)', '16 bar gauge')
    """
    if measure.text and not measure.tolerance_class:
        return measure.text
    unit = si_unit(measure.dimension)
    low, high = (amount(end, unit, measure.unit) for end in (measure.low, measure.high))
    band = low if low == high else f"{low} to {high}"
    return f"{measure.text} ({band})" if measure.text else band


def in_words(key: str) -> str:
    """A key as words, its last part first.

    >>> in_words("cases.running.live_pressure"), in_words("cases.running.temperatures.liner-left")
    ('live pressure', 'temperature of liner-left')
    >>> in_words("bores.main.diameter")
    'diameter, bores main'
    """
    parts = key.split(".")
    if parts[0] == "cases" and len(parts) > 2:
        parts = [f"temperature of {parts[3]}"] if parts[2] == "temperatures" and len(parts) > 3 else parts[2:]
    *tables, last = (part.replace("_", " ") for part in parts)
    return f"{last}, {' '.join(tables)}" if tables else last
