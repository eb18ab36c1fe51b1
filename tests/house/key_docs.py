#!/usr/bin/python3
"""Every key the farm reader asks for stands in docs/files.md, as code or in a heading.   key_docs.py ROOT"""
import pathlib
import re
import sys

ASKED = re.compile(r"\b(?:need|maybe|need_table|maybe_table|tables|array)\(\s*\"(\w+)\"")
CODE = re.compile(r"```.*?```|`[^`]*`|^#+ .*?$", re.S | re.M)


def main():
    root = pathlib.Path(sys.argv[1])
    reader = "".join(f.read_text() for f in sorted(root.glob("src/readers/farm*.cpp")))
    page = root / "docs/files.md"
    code = " ".join(CODE.findall(page.read_text() if page.exists() else ""))
    keys = set(ASKED.findall(reader))
    missing = sorted(k for k in keys if not re.search(rf"\b{k}\b", code))
    print("\n".join([f"docs/files.md does not explain {k}" for k in missing]
                    + [f"{len(keys)} looked at, {len(missing)} findings"]))
    return 1 if missing or not keys else 0


if __name__ == "__main__":
    sys.exit(main())
