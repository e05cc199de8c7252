"""Editions from files: the bundled one, and files with faults in several places."""

import json
from pathlib import Path

import pytest

from service.catalogue import bundled
from service.intake.faults import Faults
from service.intake.specs import read_spec, spec_of

FAN = {"category": "fan", "amps": 0.2}


def test_bundled_edition_loads_and_every_part_comes_back() -> None:
    edition = bundled.load()
    assert edition.name == "demo-1"
    assert edition.digest == bundled.load().digest
    for entry in edition.entries:
        assert edition.by_id[entry.id] is entry
        assert read_spec(spec_of(entry.part)) == entry.part, entry.id


def test_all_faults_of_all_files_at_once(tmp_path: Path) -> None:
    fan = {"id": "fan-1", "maker": "Orrel", "spec": FAN}
    broken = [fan, {"id": "Fan 2", "maker": "Orrel", "spec": FAN | {"amps": "1"}}, {"id": "c", "spec": FAN}]
    (tmp_path / "a.json").write_text(json.dumps(broken))
    (tmp_path / "b.json").write_text(json.dumps([fan | {"gtin": "12345671"}, fan]))
    (tmp_path / "c.json").write_text("[")
    with pytest.raises(Faults) as caught:
        bundled.load(tmp_path)
    assert [fault.pointer for fault in caught.value.faults] == [
        "a.json#/1/id", "a.json#/1/spec/amps", "a.json#/2/maker", "b.json#/0/gtin", "b.json#/1/id", "c.json#"
    ]
    assert dict(caught.value.faults)["b.json#/1/id"] == "is taken by the entry at a.json#/0 already"


def test_empty_folder_is_no_edition(tmp_path: Path) -> None:
    with pytest.raises(Faults, match="holds no entries"):
        bundled.load(tmp_path)
