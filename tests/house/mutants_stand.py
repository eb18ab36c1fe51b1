#!/usr/bin/python3
"""Each wrong edit of tests/mutants/mutants.toml still stands: its `old` once in its file, its `new` something else.

    mutants_stand.py ROOT PROGRAM

And every room of src has some."""
import pathlib
import sys
import tomllib

EXEMPT = {"fault"}  # a message and its place: golden pages and the gallery judge them


def main():
    root, bad = pathlib.Path(sys.argv[1]), []
    mutants = tomllib.loads((root / "tests/mutants/mutants.toml").read_text())["mutant"]
    for mutant in mutants:
        file = root / mutant["file"]
        stands = file.read_text().count(mutant["old"]) if file.exists() else 0
        if stands != 1:
            bad.append(f"{mutant['file']}: {mutant['old']!r} stands there {stands} times, not once")
        if mutant["old"] == mutant["new"]:
            bad.append(f"{mutant['file']}: {mutant['old']!r} is no edit")
    covered = {"/".join(pathlib.Path(mutant["file"]).parts[-2:-1]) for mutant in mutants}
    rooms = {room.name for room in (root / "src").glob("*/") if room.is_dir()}
    bad += [f"no wrong edit in the room {room}" for room in sorted(rooms - covered - EXEMPT)]
    print("\n".join(bad + [f"{len(mutants)} looked at, {len(bad)} findings"]))
    return 1 if bad or not mutants else 0


if __name__ == "__main__":
    sys.exit(main())
