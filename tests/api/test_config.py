"""Settings: defaults, bounds, and a plain sentence for what cannot be."""

from pathlib import Path

import pytest

from service import config
from service.config import BadSetting, Config

ROOT = Path(__file__).resolve().parents[2]


def test_defaults() -> None:
    assert config.read({}) == Config()
    assert Config().max_body_bytes == 262_144


def test_all_settings_are_read() -> None:
    environ = {
        "MATEWELL_MAX_BODY_BYTES": "4096", "MATEWELL_BODY_STALL_SECONDS": "3", "MATEWELL_LOG_LEVEL": "debug",
        "MATEWELL_OPENAPI_DIR": str(ROOT / "openapi"),
    }
    assert config.read(environ) == Config(
        max_body_bytes=4_096, body_stall_seconds=3, log_level="DEBUG", openapi_dir=ROOT / "openapi"
    )


@pytest.mark.parametrize("text", ["1024", "8388608"])
def test_bounds_are_inside(text: str) -> None:
    assert config.read({"MATEWELL_MAX_BODY_BYTES": text}).max_body_bytes == int(text)


@pytest.mark.parametrize(("name", "text"), [
    ("MATEWELL_MAX_BODY_BYTES", "1023"), ("MATEWELL_MAX_BODY_BYTES", "8388609"), ("MATEWELL_MAX_BODY_BYTES", ""),
    ("MATEWELL_MAX_BODY_BYTES", "1e5"), ("MATEWELL_MAX_BODY_BYTES", "-4096"), ("MATEWELL_MAX_BODY_BYTES", "9" * 5_000),
    ("MATEWELL_MAX_BODY_BYTES", "\u0664\u0660\u0669\u0666"),
    ("MATEWELL_BODY_STALL_SECONDS", "0"), ("MATEWELL_BODY_STALL_SECONDS", "soon"),
    ("MATEWELL_LOG_LEVEL", "LOUD"), ("MATEWELL_OPENAPI_DIR", "/no/such/folder"), ("MATEWELL_OPENAPI_DIR", ""),
])
def test_bad_setting_is_a_plain_sentence(name: str, text: str) -> None:
    with pytest.raises(BadSetting, match=rf"^{name} must .*\.$"):
        config.read({name: text})
