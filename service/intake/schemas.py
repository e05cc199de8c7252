"""All schemas by the name that the API document gives them."""

from service.intake import readings, runs, sheet, specs_common, specs_devices, specs_supply, wiring
from service.intake.shapes import RecordSchema

_MODULES = (sheet, wiring, runs, readings, specs_supply, specs_common, specs_devices)


def schemas() -> dict[str, RecordSchema]:
    """Return the one instance of each schema: categories in PascalCase, and what they and sheets are made of."""
    found = [one for module in _MODULES for one in vars(module).values() if isinstance(one, RecordSchema)]
    return {type(one).__name__: one for one in found}
