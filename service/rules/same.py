"""Whether two printed names of a socket, a form factor or a memory type mean the same."""


def same(one: str, other: str) -> bool:
    """Say whether two names are equal but for case, spaces, hyphens and underscores."""
    return plain(one) == plain(other)


def plain(name: str) -> str:
    """Return a name without what makers write differently."""
    return "".join(letter for letter in name.casefold() if letter not in " -_")
