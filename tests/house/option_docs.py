#!/usr/bin/python3
"""Every command and every option of every command stands in docs/guide.md.   option_docs.py ROOT PROGRAM"""
import pathlib
import re
import sys

from program_help import commands, options


def main():
    page = pathlib.Path(sys.argv[1]) / "docs/guide.md"
    text = page.read_text() if page.exists() else ""
    program, looked, missing = sys.argv[2], 0, []
    for command in commands(program):
        wanted = {f"cropful {command}", *options(program, command)}
        looked += len(wanted)
        missing += [f"docs/guide.md does not mention {w} (cropful {command})"
                    for w in sorted(wanted) if not re.search(rf"(?<![\w-]){w}(?![\w-])", text)]
    print("\n".join(missing + [f"{looked} looked at, {len(missing)} findings"]))
    return 1 if missing or looked == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
