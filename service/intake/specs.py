"""The specs of all categories: a spec to a record, a record back to its spec, and the schemas by name."""

from typing import Any

from marshmallow import ValidationError

from service.intake import specs_common, specs_devices, specs_supply
from service.intake.faults import Faults, from_messages
from service.intake.fields import Own, wrong_kind
from service.intake.shapes import CATEGORY, RecordSchema
from service.parts.records import CATEGORIES, Part


def _by_category() -> dict[str, RecordSchema]:
    """Return the one schema of each category of part."""
    stated = (*vars(specs_common).values(), *vars(specs_supply).values(), *vars(specs_devices).values())
    tagged = {
        one.fields[CATEGORY].words[0]: one  # type: ignore[attr-defined]  # the tag is always a Word
        for one in stated if isinstance(one, RecordSchema) and CATEGORY in one.fields
    }
    return {kind.category: tagged[kind.category] for kind in CATEGORIES}


BY_CATEGORY = _by_category()
_KNOWN = ", ".join(BY_CATEGORY)


class Spec(Own):
    """A spec, by its category."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> Any:
        if type(value) is not dict:
            raise wrong_kind("an object", value)
        word = value.get(CATEGORY)
        known = BY_CATEGORY.get(word) if type(word) is str else None
        if known is not None:
            return known.read(value)
        said = "must be given" if CATEGORY not in value else f"must be one of {_KNOWN}"
        raise ValidationError({CATEGORY: [said]})

    def outside(self, value: Any) -> Any:
        """Return the spec of a part."""
        return spec_of(value)


_SPEC = Spec(required=True)


def read_spec(spec: object, at: str = "") -> Part:
    """Return the part that a decoded spec describes, or raise ``Faults`` with pointers that begin with ``at``."""
    try:
        part: Part = _SPEC.deserialize(spec)
    except ValidationError as refused:
        raise Faults(from_messages(refused.messages, at)) from None
    return part


def spec_of(part: Part) -> dict[str, Any]:
    """Return the spec that ``read_spec`` reads as this very part; what is at its default is left out."""
    return BY_CATEGORY[part.category].outside(part)
