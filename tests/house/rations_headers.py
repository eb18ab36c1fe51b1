#!/usr/bin/python3
"""Every table in rations/ that carries a figure states its source and standing, itself or in a table around it;
every demo farm says that it is invented.   rations_headers.py ROOT"""
import pathlib
import re
import sys
import tomllib

STANDINGS = {"published", "derived", "common practice", "from memory", "invented"}
ABOUT_THE_SOURCE = {"source", "standing", "title", "also", "note", "caution", "words", "meaning", "says"}


def is_figure(value):
    if isinstance(value, list):
        return any(is_figure(item) for item in value if not isinstance(item, dict))
    if isinstance(value, str):
        return re.match(r"[\d.]", value) is not None
    return not isinstance(value, (bool, dict))


def findings(table, name, source=None, standing=None):
    """Names of the tables that fall short, from `table` down."""
    source, standing = table.get("source", source), table.get("standing", standing)
    if any(is_figure(v) for k, v in table.items() if k not in ABOUT_THE_SOURCE):
        if not source:
            yield f"{name}: no source"
        if standing not in STANDINGS:
            yield f"{name}: standing is {standing!r}"
    for key, value in table.items():
        inner = value if isinstance(value, list) else [value]
        for item in inner:
            if isinstance(item, dict):
                yield from findings(item, f"{name} [{key}]", source, standing)


def main():
    root = pathlib.Path(sys.argv[1]) / "rations"
    files = sorted(root.rglob("*.toml"))
    bad = []
    for file in files:
        text = file.read_text()
        name = str(file.relative_to(root))
        if name.startswith("farms/"):
            tomllib.loads(text)
            bad += [] if re.search(r"^[^\n]*#[^\n]*\binvented\b", text, re.M) else [f"{name}: does not say invented"]
        else:
            bad += findings(tomllib.loads(text), name)
    print("\n".join(bad + [f"{len(files)} looked at, {len(bad)} findings"]))
    return 1 if bad or not files else 0


if __name__ == "__main__":
    sys.exit(main())
