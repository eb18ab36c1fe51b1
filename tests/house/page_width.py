#!/usr/bin/python3
"""No line of a page in tests/golden, nor of any command's help, is wider than 80 columns.   page_width.py ROOT PROGRAM

A page is what a command prints for people: not JSON, not CSV, not a new farm file."""
import pathlib
import sys

from program_help import ask, commands

WIDTH, OTHER = 80, ("--json", "--csv", "export", "new")


def helps(program):
    """Name and text of the help of the program and of each of its commands."""
    for name in ["", *commands(program)]:
        yield f"{name} --help".strip(), ask(program, *name.split(), "--help")


def pages(root):
    """Name and text of each recorded page."""
    for expected in sorted(root.glob("tests/golden/*/expected")):
        words = (expected.parent / "args").read_text().split()
        if words and not any(w in OTHER for w in words):
            yield expected.parent.name, expected.read_text().partition("--- stdout\n")[2].partition("--- stderr\n")[0]


def main():
    looked = [*pages(pathlib.Path(sys.argv[1])), *helps(sys.argv[2])]
    bad = [f"{name}: {len(line)} columns: {line}" for name, page in looked for line in page.splitlines()
           if len(line) > WIDTH and not line.startswith("$ ")]
    print("\n".join(bad + [f"{len(looked)} looked at, {len(bad)} findings"]))
    return 1 if bad or not looked else 0


if __name__ == "__main__":
    sys.exit(main())
