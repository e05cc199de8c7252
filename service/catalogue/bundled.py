"""The demo edition that comes with the package: one file of entries for each category."""

from importlib.resources import files
from importlib.resources.abc import Traversable

from service.catalogue.edition import Edition, edition_of, taken_twice
from service.intake.body import read_json
from service.intake.entries import StatedEntry, read_entries
from service.intake.faults import Fault, Faults, Unreadable

NAME = "demo-1"
_FOLDER = "demo"
_ENDING = ".json"


def load(folder: Traversable | None = None, name: str = NAME) -> Edition:
    """Return the edition in a folder of JSON files, or raise ``Faults``; a pointer there is ``file#/index/field``."""
    placed: list[tuple[str, StatedEntry]] = []
    faults: list[Fault] = []
    for file in _files(files(__package__) / _FOLDER if folder is None else folder):
        read, wrong = _read(file)
        placed += read
        faults += wrong
    faults += taken_twice(placed)
    if not placed and not faults:
        faults.append(Fault("", "holds no entries: the files of the edition are missing"))
    if faults:
        raise Faults(faults)
    return edition_of(name, (stated for _, stated in placed))


def _files(folder: Traversable) -> list[Traversable]:
    if not folder.is_dir():
        return []
    return sorted((file for file in folder.iterdir() if file.name.endswith(_ENDING)), key=lambda file: file.name)


def _read(file: Traversable) -> tuple[list[tuple[str, StatedEntry]], list[Fault]]:
    """Return the good entries of a file with their pointers, and the faults of the rest."""
    at = f"{file.name}#"
    try:
        data = read_json(file.read_bytes())
    except Unreadable as unreadable:
        return [], [Fault(at, str(unreadable))]
    good, faults = read_entries(data, at)
    return [(f"{at}/{index}", stated) for index, stated in good], faults
