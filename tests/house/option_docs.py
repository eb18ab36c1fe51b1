#!/usr/bin/python3
"""Every command and every option of every command stands in docs/guide.md.   option_docs.py ROOT PROGRAM"""
import pathlib
import re
import sys

from program_help import commands, options


def main():
    page = pathlib.Path(sys.argv[1]) / "docs/guide.md"
    text = page.read_text() if page.exists() else ""
    program, users = sys.argv[2], {}
    for command in commands(program):
        for words in (f"cropful {command}", *options(program, *command.split())):
            users.setdefault(words, []).append(command)
    missing = [f"docs/guide.md does not mention {words} (of {', '.join(users[words])})"
               for words in sorted(users) if not re.search(rf"(?<![\w-]){words}(?![\w-])", text)]
    print("\n".join(missing + [f"{len(users)} looked at, {len(missing)} findings"]))
    return 1 if missing else 0


if __name__ == "__main__":
    sys.exit(main())
