"""Fields of our own: strict about types, worded by us, and able to put a record's value back into its outside shape.

Validators are marshmallow's (Range, Length, OneOf, Regexp), so that a converter can read bounds and words off a field.
"""

import re
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from marshmallow import ValidationError, fields, missing, validate

from service.intake.bounds import LEAST_COUNT, LONGEST_OTHER, LONGEST_WORD, MOST_COUNT
from service.intake.faults import NO_SUCH_FIELD, Key
from service.parts.figures import Range, exactly
from service.parts.words import OTHER_PREFIX

_KINDS = {bool: "true or false", int: "a number", float: "a number", str: "text", list: "a list", dict: "an object"}
_CONTROL = r"\x00-\x1f\x7f-\x9f"
_PRINTED = f"[^{_CONTROL}]"


def kind_of(value: object) -> str:
    """Return what a JSON value is, in words."""
    return _KINDS.get(type(value), "null")


def wrong_kind(due: str, value: object) -> ValidationError:
    """Return the fault of a value of the wrong kind."""
    return ValidationError(f"must be {due}, not {kind_of(value)}")


def nested(messages: Mapping[Any, Any]) -> ValidationError:
    """Return faults of things inside a value, by key."""
    return ValidationError(dict(messages))


def between(low: float, high: float) -> validate.Range:
    """Return a validator of a number from ``low`` to ``high``, both allowed."""
    return validate.Range(low, high, error="must be from {min} to {max}")


class Pattern(validate.Regexp):
    """A regular expression that the whole text must match."""

    def __call__(self, value: Any) -> Any:
        """Return the text, or refuse it."""
        if self.regex.fullmatch(value) is None:
            raise ValidationError(str(self.error))
        return value


class Own(fields.Field[Any]):
    """Base of our fields. ``outside`` turns a record's value back into JSON."""

    default_error_messages: ClassVar[dict[str, str]] = {  # type: ignore[misc, assignment]
        "required": "must be given",
        "null": "must not be null; leave out what is not known",
    }

    def deserialize(self, value: Any, attr: str | None = None, data: Any = None, **kwargs: Any) -> Any:
        """Do what marshmallow does, without a new chain of validators each time."""
        if value is missing:
            if self.required:
                raise self.make_error("required")
            return self.load_default
        if value is None:
            if self.allow_none:
                return None
            raise self.make_error("null")
        read = self._deserialize(value, attr, data)
        self.judge(read)
        return read

    def judge(self, read: Any) -> None:
        """Hold what was read against the validators."""
        for check in self.validators:
            check(read)

    def outside(self, value: Any) -> Any:
        """Return the JSON form of a value of a record."""
        return value


class Flag(Own):
    """true or false, nothing else."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> bool:
        if value is True or value is False:
            return bool(value)
        raise wrong_kind("true or false", value)


class Number(Own):
    """A number from ``low`` to ``high``, kept as a float so that 25 and 25.0 are one."""

    def __init__(self, low: float, high: float, **settings: Any) -> None:
        super().__init__(validate=between(low, high), **settings)
        self.low, self.high = low, high

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> float:
        if type(value) is float or type(value) is int:
            return value + 0.0
        raise wrong_kind("a number", value)

    def outside(self, value: float) -> float:
        """Return a whole number without a point."""
        return int(value) if value == int(value) else value


class Printed(Number):
    """A number of a short list: what may be printed on a part."""

    def __init__(self, printed: tuple[float, ...], **settings: Any) -> None:
        super().__init__(printed[0], printed[-1], **settings)
        words = ", ".join(f"{number:g}" for number in printed)
        self.validators = [validate.OneOf(printed, error=f"must be one of {words}")]


class Whole(Own):
    """A whole number from ``low`` to ``high``; 25.0 is one."""

    def __init__(self, low: int = LEAST_COUNT, high: int = MOST_COUNT, **settings: Any) -> None:
        super().__init__(validate=between(low, high), **settings)
        self.low, self.high = low, high

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> int:
        if type(value) is int:
            return value
        if type(value) is not float:
            raise wrong_kind("a whole number", value)
        if not value.is_integer():
            raise ValidationError("must be a whole number")
        return int(value)


class PrintedWhole(Whole):
    """A whole number of a short list."""

    def __init__(self, printed: tuple[int, ...], **settings: Any) -> None:
        super().__init__(printed[0], printed[-1], **settings)
        words = ", ".join(str(number) for number in printed)
        self.validators = [validate.OneOf(printed, error=f"must be one of {words}")]


class Figure(Number):
    """A number, or ``{"low": number, "high": number}``: a load that is known between two ends."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> Any:
        if type(value) is float or type(value) is int:
            super().judge(value)
            return exactly(value + 0.0)
        if type(value) is not dict:
            raise wrong_kind("a number, or an object of low and high", value)
        wrong = {Key(key): [NO_SUCH_FIELD] for key in value if key not in Range._fields}
        wrong |= {Key(end): said for end in Range._fields if (said := self._faults_of(value.get(end, missing)))}
        if not wrong and value["low"] > value["high"]:
            wrong = {Key("low"): ["must not be above high"]}
        if wrong:
            raise nested(wrong)
        return Range(value["low"] + 0.0, value["high"] + 0.0)

    def judge(self, read: Any) -> None:
        """Do nothing: each end was held against the bounds while it was read."""

    def _faults_of(self, end: Any) -> list[str]:
        if end is missing:
            return [str(self.error_messages["required"])]
        try:
            super().judge(super()._deserialize(end, None, None))
        except ValidationError as refused:
            return [str(said) for said in refused.messages]
        return []

    def outside(self, value: Any) -> Any:
        """Return one number when both ends are equal."""
        low, high = super().outside(value.low), super().outside(value.high)
        return low if low == high else {"low": low, "high": high}


class Text(Own):
    """Text of one line, without control characters."""

    def __init__(self, longest: int, least: int = 1, **settings: Any) -> None:
        length = validate.Length(least, longest, error="must have from {min} to {max} characters")
        line = Pattern(f"{_PRINTED}*", error="must not hold line breaks or other control characters")
        super().__init__(validate=[length, line], **settings)

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        if type(value) is str:
            return value
        raise wrong_kind("text", value)


class Code(Text):
    """A short name of the trade, such as a form factor or a socket; capitals and outer spaces make no difference."""

    def __init__(self, longest: int = LONGEST_WORD, **settings: Any) -> None:
        super().__init__(longest, **settings)

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        return super()._deserialize(value, attr, data).strip().lower()


class Word(Own):
    """One word of a list."""

    def __init__(self, words: Iterable[str], **settings: Any) -> None:
        self.words = tuple(words)
        known = ", ".join(self.words)
        super().__init__(validate=validate.OneOf(self.words, error=f"must be one of {known}"), **settings)

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        if type(value) is str:
            return value
        raise wrong_kind("text", value)


class Connector(Own):
    """A connector of a list, or ``other:`` and a text for one that is not in it."""

    def __init__(self, words: Iterable[str], **settings: Any) -> None:
        self.words = tuple(words)
        known, other = "|".join(map(re.escape, self.words)), f"{OTHER_PREFIX}{_PRINTED}{{1,{LONGEST_OTHER}}}"
        said = f"must be one of {', '.join(self.words)}, or {OTHER_PREFIX} with up to {LONGEST_OTHER} characters"
        super().__init__(validate=Pattern(f"(?:{known}|{other})", error=said), **settings)
        self._known = frozenset(self.words)

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        if type(value) is str:
            return value
        raise wrong_kind("text", value)

    def judge(self, read: Any) -> None:
        """Take a listed connector at once."""
        if read not in self._known:
            super().judge(read)
