"""The environment, read once into one frozen record."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

PREFIX = "MATEWELL_"
LOG_LEVELS = ("DEBUG", "INFO", "WARNING", "ERROR", "CRITICAL")
LEAST_BODY_BYTES = 1_024
MOST_BODY_BYTES = 8 * 1_024 * 1_024
LEAST_STALL_SECONDS = 1
MOST_STALL_SECONDS = 120
_BESIDE_THE_PACKAGE = Path(__file__).resolve().parent.parent / "openapi"


class BadSetting(Exception):
    """A setting that the service cannot start with; the text is a plain sentence."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Config:
    """All settings. ``body_stall_seconds`` is how long a read may wait for the next piece of a body."""

    max_body_bytes: int = 262_144
    body_stall_seconds: int = 15
    openapi_dir: Path = _BESIDE_THE_PACKAGE
    log_level: str = "INFO"


def read(environ: Mapping[str, str]) -> Config:
    """Return the settings in ``environ``; what is not set keeps its default."""
    defaults = Config()
    return Config(
        max_body_bytes=_whole(environ, "MAX_BODY_BYTES", defaults.max_body_bytes, LEAST_BODY_BYTES, MOST_BODY_BYTES),
        body_stall_seconds=_whole(
            environ, "BODY_STALL_SECONDS", defaults.body_stall_seconds, LEAST_STALL_SECONDS, MOST_STALL_SECONDS
        ),
        openapi_dir=_folder(environ, "OPENAPI_DIR", defaults.openapi_dir),
        log_level=_word(environ, "LOG_LEVEL", defaults.log_level, LOG_LEVELS),
    )


def _whole(environ: Mapping[str, str], name: str, default: int, least: int, most: int) -> int:
    text = environ.get(PREFIX + name)
    if text is None:
        return default
    if text.isascii() and text.isdigit() and len(text) <= len(str(most)) and least <= int(text) <= most:
        return int(text)
    raise BadSetting(f"{PREFIX}{name} must be a whole number from {least} to {most}, not {text!r}.")


def _word(environ: Mapping[str, str], name: str, default: str, words: tuple[str, ...]) -> str:
    text = environ.get(PREFIX + name, default).upper()
    if text in words:
        return text
    raise BadSetting(f"{PREFIX}{name} must be one of {', '.join(words)}, not {text!r}.")


def _folder(environ: Mapping[str, str], name: str, default: Path) -> Path:
    folder = Path(environ.get(PREFIX + name, default))
    if (folder / "openapi.yaml").is_file():
        return folder
    raise BadSetting(f"{PREFIX}{name} must name a folder that holds openapi.yaml; {str(folder)!r} does not.")
