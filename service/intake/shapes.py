"""Fields that hold other fields: records, lists of them, and maps that a record keeps as sorted pairs."""

from collections.abc import Callable, Mapping
from dataclasses import MISSING, is_dataclass
from dataclasses import fields as fields_of
from typing import Any, ClassVar

from marshmallow import RAISE, Schema, ValidationError, post_load, validate

from service.intake.faults import NO_SUCH_FIELD, Key
from service.intake.fields import Own, Whole, Word, nested, wrong_kind

Messages = dict[Any, Any]
CATEGORY = "category"
_NOTHING = object()


def no_faults(made: Any) -> Messages:
    """Find nothing: the check of a record whose fields stand each for itself."""
    return {}


class RecordSchema(Schema):
    """A schema that makes a record; ``check`` returns the faults between its fields, by field."""

    class Meta:
        """Refuse fields that are not stated."""

        unknown = RAISE

    error_messages: ClassVar[dict[str, str]] = {"unknown": NO_SUCH_FIELD, "type": "must be an object"}  # type: ignore[misc]
    make: ClassVar[Callable[..., Any]]
    check: ClassVar[Callable[[Any], Messages]]

    def __init__(self) -> None:
        super().__init__()
        self.defaults = _defaults(type(self).make)
        self.due = frozenset(field.data_key or name for name, field in self.fields.items() if field.required)

    def read(self, data: dict[str, Any]) -> Any:
        """Return the record; what ``load`` does, sparing its look at each field that is not there if none is due."""
        return self.load(data, partial=True if self.due <= data.keys() else None)

    @post_load
    def to_record(self, data: dict[str, Any], **kwargs: Any) -> Any:
        """Make the record and hold its fields against each other."""
        data.pop(CATEGORY, None)
        made = type(self).make(**data)
        messages = type(self).check(made)
        if messages:
            raise nested(messages)
        return made

    def outside(self, record: Any) -> dict[str, Any]:
        """Return a record in its outside shape, without what only repeats a default."""
        shape = {}
        for attribute, field in self.fields.items():
            value = getattr(record, attribute)
            if value != self.defaults.get(attribute, _NOTHING):
                shape[field.data_key or attribute] = field.outside(value) if isinstance(field, Own) else value
        return shape


def schema(
    name: str, make: Callable[..., Any], stated: Mapping[str, Own], check: Callable[[Any], Messages] = no_faults
) -> RecordSchema:
    """Return the one instance of a schema that makes records with ``make`` from the fields stated."""
    members = {**stated, "make": staticmethod(make), "check": staticmethod(check)}
    made: RecordSchema = type(name, (RecordSchema,), members)()
    return made


def _defaults(make: Callable[..., Any]) -> dict[str, Any]:
    """Return the defaults of a record's fields."""
    if not is_dataclass(make):
        return dict(getattr(make, "_field_defaults", {}))
    found = {}
    for field in fields_of(make):
        if field.default is not MISSING:
            found[field.name] = field.default
        elif field.default_factory is not MISSING:
            found[field.name] = field.default_factory()
    return found


class One(Own):
    """A record of its own."""

    def __init__(self, of: RecordSchema, **settings: Any) -> None:
        super().__init__(**settings)
        self.schema = of

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> Any:
        if type(value) is not dict:
            raise wrong_kind("an object", value)
        return self.schema.read(value)

    def outside(self, value: Any) -> Any:
        """Return the record in its outside shape."""
        return self.schema.outside(value)


class Many(Own):
    """A list, kept as a tuple; all faults of all items are found."""

    def __init__(self, inner: Own, most: int, least: int = 0, **settings: Any) -> None:
        allowed = f"exactly {most}" if least == most else f"from {least} to {most}"
        length = validate.Length(least, most, error=f"must list {allowed}")
        super().__init__(validate=length, **settings)
        self.inner = inner

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> Any:
        if type(value) is not list:
            raise wrong_kind("a list", value)
        super().judge(value)
        read: list[Any] = []
        wrong: Messages = {}
        for index, item in enumerate(value):
            try:
                read.append(self.inner.deserialize(item))
            except ValidationError as refused:
                wrong[index] = refused.messages
        if wrong:
            raise nested(wrong)
        return tuple(read)

    def judge(self, read: Any) -> None:
        """Do nothing: the length was judged before the items were read."""

    def outside(self, value: Any) -> Any:
        """Return the list in its outside shape."""
        return [self.inner.outside(item) for item in value]


class Unlike(Many):
    """A list in which nothing stands twice."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> Any:
        read = super()._deserialize(value, attr, data)
        twice = repeated(read)
        if twice:
            raise nested({index: ["stands in the list already"] for index in twice})
        return read


class Only(Many):
    """A list of exactly one item, kept as that item."""

    def __init__(self, inner: Own, **settings: Any) -> None:
        super().__init__(inner, most=1, least=1, **settings)

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> Any:
        return super()._deserialize(value, attr, data)[0]

    def outside(self, value: Any) -> Any:
        """Return the item in a list."""
        return [self.inner.outside(value)]


class Pairs(Own):
    """An object whose keys are chosen by the sender, kept as pairs in order of the keys."""

    def __init__(self, keys: Own, values: Own, most: int, **settings: Any) -> None:
        size = validate.Length(0, most, error="must have from {min} to {max} entries")
        super().__init__(validate=size, **settings)
        self.keys = keys
        self.values = values
        self.order = {word: rank for rank, word in enumerate(keys.words)} if isinstance(keys, Word) else None

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> Any:
        if type(value) is not dict:
            raise wrong_kind("an object", value)
        super().judge(value)
        pairs: list[tuple[Any, Any]] = []
        wrong: Messages = {}
        for key, item in value.items():
            try:
                pairs.append((self.key(key), self.values.deserialize(item)))
            except ValidationError as refused:
                wrong[Key(key)] = refused.messages
        if wrong:
            raise nested(wrong)
        order = self.order
        return tuple(sorted(pairs, key=lambda pair: order[pair[0]] if order else pair[0]))

    def judge(self, read: Any) -> None:
        """Do nothing: the size was judged before the entries were read."""

    def key(self, key: str) -> Any:
        """Return a key as the record keeps it, or refuse it."""
        try:
            return self.keys.deserialize(key)
        except ValidationError as refused:
            raise ValidationError([f"is no key here: the key {said}" for said in refused.messages]) from None

    def outside(self, value: Any) -> Any:
        """Return the pairs as an object."""
        return {str(key): self.values.outside(item) for key, item in value}


class CountKey(Whole):
    """A whole number written as the key of an object: digits, no sign and no leading zero."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> int:
        if not (value.isascii() and value.isdigit() and len(value) <= len(str(self.high)) and value[0] != "0"):
            raise ValidationError(f"must be a whole number from {self.low} to {self.high}, without leading zeros")
        return int(value)


def repeated(items: tuple[Any, ...]) -> list[int]:
    """Return the places of items that stand further forward already."""
    seen: set[Any] = set()
    places = []
    for index, item in enumerate(items):
        if item in seen:
            places.append(index)
        seen.add(item)
    return places
