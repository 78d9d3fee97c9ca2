"""Bytes from the letters in which a page keeps its sheets: five digits of base 85 for each four bytes."""

from __future__ import annotations

#: From ( to ~ but for < and >, which could end the element.
DIGITS = [chr(code) for code in range(40, 127) if chr(code) not in "<>"]


def from_letters(letters: str) -> bytes:
    """Digit by digit; what is missing of the last five stands for the greatest digit, and its bytes are left out."""
    found = bytearray()
    for at in range(0, len(letters), 5):
        group = letters[at : at + 5]
        word = 0
        for letter in group.ljust(5, "~"):
            word = word * 85 + DIGITS.index(letter)
        found += word.to_bytes(4, "big")[: len(group) - 1]
    return bytes(found)
