"""Global trade item numbers: any of the four lengths becomes 14 digits; the last digit checks the others."""

from typing import Any

from marshmallow import ValidationError

from service.intake.bounds import GTIN_LENGTHS
from service.intake.fields import Own, Pattern, wrong_kind

_FULL_LENGTH = max(GTIN_LENGTHS)
# Weights 3 and 1 in turn from the right, sum to a multiple of ten: GS1 General Specifications, check digit calculation.
_WEIGHTS = (3, 1)
_BASE = 10
_DIGITS = "|".join(f"[0-9]{{{length}}}" for length in GTIN_LENGTHS)


class Gtin(Own):
    """A trade item number, as text so that no leading zero is lost; kept with 14 digits."""

    def __init__(self, **settings: Any) -> None:
        lengths = ", ".join(str(length) for length in GTIN_LENGTHS[:-1])
        said = f"must be {lengths} or {_FULL_LENGTH} digits"
        super().__init__(validate=Pattern(f"(?:{_DIGITS})", error=said), **settings)

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        if type(value) is not str:
            raise wrong_kind("text of digits", value)
        self.validators[0](value)
        full = value.zfill(_FULL_LENGTH)
        if sum(int(digit) * _WEIGHTS[place % 2] for place, digit in enumerate(full)) % _BASE:
            raise ValidationError("has a last digit that does not check the others; one digit is wrong")
        return full
