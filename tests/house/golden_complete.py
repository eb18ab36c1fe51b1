#!/usr/bin/python3
"""Every command and every exit status has a transcript in tests/golden.   golden_complete.py ROOT PROGRAM"""
import pathlib
import sys

from program_help import commands


def main():
    folder, program = pathlib.Path(sys.argv[1]) / "tests/golden", sys.argv[2]
    cases = sorted(folder.glob("*/args"))
    tried = [line for a in cases for line in a.read_text().splitlines()]
    ends = {e.read_text().partition("\n")[0] for e in folder.glob("*/expected")}
    bad = [f"{a.parent.name} has no expected" for a in cases if not (a.parent / "expected").exists()]
    bad += [f"no transcript of {c}" for c in commands(program)
            if not any(line == c or line.startswith(c + " ") for line in tried)]
    bad += [f"no transcript ends with {e}" for e in ("exit 0", "exit 1", "exit 2") if e not in ends]
    print("\n".join(bad + [f"{len(cases)} looked at, {len(bad)} findings"]))
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
