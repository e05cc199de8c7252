"""What a running service has at hand for every journey."""

from dataclasses import dataclass

from service.catalogue.edition import Edition


@dataclass(frozen=True, slots=True)
class Shelf:
    """The edition of the catalogue that checks use."""

    edition: Edition
