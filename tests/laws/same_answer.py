#!/usr/bin/python3
"""The same question has the same answer, to the byte, in another process, folder, time zone and state of memory.

    same_answer.py PROGRAM RATIONS"""
import os
import pathlib
import subprocess
import sys
import tempfile

FARM = "saltgrass.toml"
ASKED = [["plan", FARM, "--json"], ["plan", FARM], ["away", FARM, "--from", "2027-04-20", "--until", "2027-04-24", "--json"],
         ["last", FARM, "--on", "2027-04-20", "--json"], ["buy", FARM, "--plan", "--json"], ["season", FARM, "--json"],
         ["sheet", FARM], ["calendar", FARM, "--stamp", "2027-01-01"], ["blend", "mixing.toml", "--json"]]
BARNS = [{"MALLOC_PERTURB_": "0", "TZ": "UTC", "LC_ALL": "C.UTF-8"},
         {"MALLOC_PERTURB_": "170", "TZ": "Asia/Kolkata", "LC_ALL": "C.UTF-8", "COLUMNS": "40", "UNUSED": "x" * 4001}]


def answer(program, farms, words, barn):
    with tempfile.TemporaryDirectory() as folder:
        for farm in farms:
            (pathlib.Path(folder) / farm.name).write_bytes(farm.read_bytes())
        done = subprocess.run([program, *words], cwd=folder, env={**os.environ, **barn}, capture_output=True, timeout=120)
        return done.returncode, done.stdout


def main():
    program, farms = str(pathlib.Path(sys.argv[1]).resolve()), sorted(pathlib.Path(sys.argv[2]).glob("farms/*.toml"))
    bad = []
    for words in ASKED:
        (status, once), again = (answer(program, farms, words, barn) for barn in BARNS)
        if status != 0 or not once:
            bad.append(f"{' '.join(words)}: ended with {status}")
        elif (status, once) != again:
            bad.append(f"{' '.join(words)}: another answer in another process")
    print("\n".join(bad + [f"{len(ASKED)} questions asked twice, {len(bad)} findings"]))
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
