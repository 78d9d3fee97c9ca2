"""What a component states of its drawing as a document: the file that it is in, and to whom it was issued."""

import datetime as dt
import re
from pathlib import PurePosixPath, PureWindowsPath
from typing import Annotated, Any

from msgspec import Struct
from pydantic import GetCoreSchemaHandler
from pydantic_core import CoreSchema, core_schema

from speclint.specs.fields import NOT_STATED, Remark, Stated, Word
from speclint.specs.spans import refusal
from speclint.specs.spec import SpecTable

_EXAMPLE = 'its path in the repository: "drawings/CN-C-1211.svg"'


class FileWithin(Struct, frozen=True):
    """Annotation of a word that names a file of the design repository, by its path from there.

    The path is written with forward slashes and leads nowhere else, on any system. Whether the file is there is told
    where it is looked for.
    """

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        as_word = {"type": "word", "wanted": str}  # for its JSON Schema
        return core_schema.no_info_after_validator_function(self.checked, handler(source), metadata=as_word)

    def checked(self, value: Any) -> Any:
        """The value, where its path stays within the repository, or where none is stated.

        :raises PydanticCustomError: for any other, with what to write instead.
        """
        if isinstance(value, Stated) and (wrong := wrong_path(value.value)):
            raise refusal(wrong, _EXAMPLE)
        return value


def wrong_path(path: str) -> str:
    """What is wrong with a path that is to lead from the repository to one of its files; "" where nothing is.

    >>> wrong_path("drawings/rod.svg"), wrong_path("../rod.svg")
    ('', 'this file lies outside the design repository')
    """
    if any(not sign.isprintable() for sign in path):
        return "the path of a file has no signs that cannot be printed"
    plain = PurePosixPath(path)
    if plain.is_absolute() or PureWindowsPath(path).drive or ".." in path.replace("\\", "/").split("/"):
        return "this file lies outside the design repository"
    if "\\" in path:
        return "the path of a file is written with forward slashes"
    if str(plain) != path or not plain.name:
        return "this is not the plain path of a file"
    return ""


#: What joins the pieces of a number: hyphens, dashes, a minus, strokes either way, an underscore.
_JOINT = re.compile(r"[-\u2010-\u2014\u2212/\\_]")
#: A joint beside a letter, with another letter or a digit on its other side.
_AT_LETTERS = re.compile(r"(?<=[^\W\d_])-(?=[^\W_])|(?<=\d)-(?=[^\W\d_])")


def as_filed(words: str) -> str:
    """A number or a name as it is compared: however it is spaced, in small or large letters.

    A hyphen, a stroke and an underscore are one; beside a letter they are as good as a space.

    >>> {as_filed(one) for one in ("CN-C 1203 ", "cn-c-1203", "CN C 1203", "CN C-1203", "CN/C/1203", "CN_C_1203")}
    {'cnc1203'}
    >>> as_filed("C-1") == as_filed("C-10")
    False
    >>> as_filed("1-23") == as_filed("12-3"), as_filed("1/23") == as_filed("1-23")
    (False, True)
    """
    return _AT_LETTERS.sub("", _JOINT.sub("-", "".join(words.split()).casefold()))


#: A word before the number of an item, and the noughts that fill it up.
_BEFORE_ITEM = re.compile(
    r"^(?:item|position|pos|row|mark|part|detail|teil)?\.?(?:number|no|nr)?[.:]?0*(?=\d)"
)


def as_item(words: str) -> str:
    """The item of a drawing as it is compared: its number without the word and the noughts before it.

    >>> {as_item(one) for one in ("1", "01", "Item 1", "item no. 1", "Pos. 1")}
    {'1'}
    >>> as_item("10"), as_item("1a"), as_item("A01"), as_item("0")
    ('10', '1a', 'a01', '0')
    """
    return _BEFORE_ITEM.sub("", as_filed(words))


class DayGone(Struct, frozen=True):
    """Annotation of a day on which something was done: today at the latest."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        as_word = {"type": "word", "wanted": dt.date}  # for its JSON Schema
        return core_schema.no_info_after_validator_function(self.checked, handler(source), metadata=as_word)

    def checked(self, value: Any) -> Any:
        """The value, where its day is not still to come, or where none is stated.

        :raises PydanticCustomError: for a day after today.
        """
        if isinstance(value, Stated) and value.value > dt.date.today():
            raise refusal(
                "this day is still to come", "the day on which it was done, or nothing before it is"
            )
        return value


class Issue(SpecTable):
    """One issue of the drawing.

    Fields:
        to: who got it: a shop, a foundry, a firm
        on: the day on which it was issued
        revision: the revision of the drawing that was issued
    """

    to: Word[str] = NOT_STATED
    on: Annotated[Word[dt.date], DayGone()] = NOT_STATED
    revision: Remark = NOT_STATED
