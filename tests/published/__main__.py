"""Print how many checks hold our code to a published number, by document and by how the number was read."""

import sys
from collections import Counter

from tests.published.counted import rows


def main() -> None:
    """Print the count."""
    checks = rows()
    by_document = Counter(row.document for row in checks)
    by_how = Counter(number.how for row in checks for number in row.numbers)
    lines = [f"{count:4}  {document}" for document, count in sorted(by_document.items())]
    lines += [f"{count:4}  {how}" for how, count in sorted(by_how.items())]
    sys.stdout.write("\n".join([*lines, f"{len(checks):4}  in all"]) + "\n")


if __name__ == "__main__":
    main()
