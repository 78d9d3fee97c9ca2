"""Texts that name somebody or something: a person, a document, a place. A word for none names nothing."""

from dataclasses import dataclass
from typing import Any

from pydantic import GetCoreSchemaHandler
from pydantic_core import CoreSchema, core_schema

from speclint.specs.fields import Stated
from speclint.specs.spans import refusal

#: What is written where there is none or none is decided, as drawing offices write it: letters and digits alone.
_NONE = frozenset(
    {"", "none", "nil", "no", "nobody", "nothing", "nowhere", "na", "not applicable", "not required"}
    | {"not decided", "not known", "unknown", "tba", "tbc", "tbd", "later", "pending"}
)


def names_nothing(text: str) -> bool:
    """Whether a text names nothing: a mark, a word for none, or what is still to be decided.

    >>> [names_nothing(one) for one in ("none", "-", "N/A", "To be named", "WPQR 41", "nothing but oil")]
    [True, True, True, True, False, False]
    """
    letters = (one for one in text.lower() if one.isalnum() or one.isspace())
    words = " ".join("".join(letters).split())
    return words in _NONE or words.startswith("to be ")


@dataclass(frozen=True, slots=True)
class Naming:
    """Annotation of a text by which a part has what a rule asks for, such as the number of a procedure."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        as_word = {"type": "word", "wanted": str}  # for its JSON Schema
        return core_schema.no_info_after_validator_function(self.checked, handler(source), metadata=as_word)

    def checked(self, value: Any) -> Any:
        """The value, where it names something, or where none is stated.

        :raises PydanticCustomError: for a word for none, with what to write instead.
        """
        if isinstance(value, Stated) and names_nothing(value.value):
            raise refusal(
                "this text names nothing",
                "the name, the number or the words, or leave the key out until they are known",
            )
        return value


#: Marks a text that names somebody or something: ``Annotated[Word[str], NAMES]``.
NAMES = Naming()
