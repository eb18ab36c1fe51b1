#!/usr/bin/python3
"""No line of a page in tests/golden is wider than 80 columns.   page_width.py ROOT PROGRAM

A page is what a command prints for people: not JSON, not CSV, and not the list of options, which CLI11 lays out."""
import pathlib
import sys

WIDTH, OTHER = 80, ("--json", "--csv", "export", "--help", "new")


def main():
    bad, looked = [], 0
    for expected in sorted(pathlib.Path(sys.argv[1]).glob("tests/golden/*/expected")):
        words = (expected.parent / "args").read_text().split()
        if not words or any(w in OTHER for w in words):
            continue
        looked += 1
        page = expected.read_text().partition("--- stdout\n")[2].partition("--- stderr\n")[0]
        bad += [f"{expected.parent.name}: {len(line)} columns: {line}" for line in page.splitlines()
                if len(line) > WIDTH and not line.startswith("$ ")]
    print("\n".join(bad + [f"{looked} looked at, {len(bad)} findings"]))
    return 1 if bad or not looked else 0


if __name__ == "__main__":
    sys.exit(main())
