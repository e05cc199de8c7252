"""What the rules on runs share: which run they speak of, in words and as a field of the sheet."""

from service.case.case import RunLoad
from service.rules.rule import Value


def name(run: RunLoad) -> tuple[str, Value]:
    """Return the value that names a run in a message."""
    return ("run", "The lead of this light" if run.at.unit >= 0 else f"Run {int(run.at.detail[0]) + 1}")


def field(run: RunLoad, of: str) -> str:
    """Return a field of a run of the sheet as a pointer."""
    return f"runs/{run.at.detail[0]}/{of}"
