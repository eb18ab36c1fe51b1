#!/usr/bin/python3
"""An independent check of `cropful plan --json` on random farms.

    random_farms.py PROGRAM RATIONS_DIR [--farms 200] [--seed 1] [--keep]
    random_farms.py --self-test [RATIONS_DIR]

Every farm is written as TOML text with its quantities in mixed units (farm_text.py), given to PROGRAM, and worked out a
second time with SciPy from that same text and the tables in RATIONS_DIR (flock.py, verdict.py).  Nothing is taken from
the C++ sources.
"""

import argparse
import collections
import datetime as dt
import json
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time
import tomllib

import numpy as np
from scipy.integrate import quad  # noqa: F401  (for those who go by this file's model)

sys.dont_write_bytecode = True
from farm_text import farm_text, must_occur  # noqa: E402
from flock import Curve, Demand, Hatch, Kind, Rations, as_datetime  # noqa: E402, F401
from quantities import UNITS, value  # noqa: E402, F401
from verdict import compare  # noqa: E402

WINDOWS = 20              # farms asked a second time, with --from and --to
START = "start"


def some_window(rng, farm, rations):
    """Two moments, or one and None, between which some hatch has birds."""
    h = Hatch(farm, farm["hatch"][int(rng.integers(len(farm["hatch"])))], rations)
    day = h.date.replace(hour=0, minute=0)
    first = int(rng.integers(1, int(h.until) - 1))
    last = first + int(rng.integers(2, 60))
    begins, ends = (day + dt.timedelta(days=n, minutes=15 * int(rng.integers(96))) for n in (first, last))
    return [(begins, ends), (begins, None), (None, ends)][int(rng.choice(3, p=[0.4, 0.2, 0.4]))]


def ask(program, path, window):
    """The words of a question about a farm."""
    begins, ends = window
    words = ["--from", START if begins is None else begins.isoformat(timespec="minutes")]
    if ends is not None:
        words += ["--to", ends.isoformat(timespec="minutes")]
    return [program, "plan", str(path), "--json", *words], " ".join(words)


def run(program, rations_dir, farms, seed, keep):
    rations = Rations(rations_dir)
    if len(rations.kinds) < 5:
        print(f"only {len(rations.kinds)} kinds of bird below {rations_dir}; five are expected")
        return 1
    rng, window_rng = np.random.default_rng(seed), np.random.default_rng([seed, 1])
    folder = pathlib.Path(tempfile.mkdtemp(prefix="random-farms-"))
    seen = collections.Counter()
    passed = failed = numbers = windows = 0
    worst = (0.0, "nothing compared")
    own = in_program = 0.0
    for n in range(1, farms + 1):
        started = time.perf_counter()
        offered, met = collections.Counter(), collections.Counter()
        text = farm_text(rng, n, rations, offered)
        path = folder / f"farm-{n:03d}.toml"
        path.write_text(text + "\n")
        farm = tomllib.loads(text)
        own += time.perf_counter() - started

        faults = []
        asked = [(None, None)] + ([some_window(window_rng, farm, rations)] if n <= WINDOWS else [])
        for window in asked:
            command, words = ask(program, path, window)
            cut = window != (None, None)
            where = f"({words}) " if cut else ""
            started = time.perf_counter()
            try:
                done = subprocess.run(command, capture_output=True, text=True, timeout=60)
            except subprocess.TimeoutExpired:
                done = None
                faults.append(f"{where}the program ran for more than 60 s")
            except OSError as e:
                print(f"cannot run {program}: {e}")
                print(f"0 passed, {farms} failed")
                shutil.rmtree(folder)
                return 1
            in_program += time.perf_counter() - started

            started = time.perf_counter()
            if done and done.returncode != 0:
                faults.append(f"{where}exit {done.returncode}: {(done.stderr or done.stdout).strip()[:600]}")
            elif done:
                (folder / f"farm-{n:03d}{'-window' if cut else ''}.json").write_text(done.stdout)
                try:
                    report = compare(farm, rations, json.loads(done.stdout), met, window)
                    faults += [where + f for f in report.faults]
                    numbers += report.numbers
                    windows += cut
                    if report.worst[0] > worst[0]:
                        worst = (report.worst[0], f"farm {n}, {where}{report.worst[1]}")
                except json.JSONDecodeError as e:
                    faults.append(f"{where}the answer is not JSON: {e}")
                except (KeyError, IndexError, TypeError, AttributeError) as e:
                    faults.append(f"{where}the answer lacks or misshapes something: {type(e).__name__} {e}")
            own += time.perf_counter() - started
        seen.update(offered)
        seen.update(met)

        if faults:
            failed += 1
            if failed <= 20:
                print(f"FAIL farm {n}: {path}")
                for line in faults[:6]:
                    print(f"    {line}")
                if len(faults) > 6:
                    print(f"    and {len(faults) - 6} more")
            elif failed == 21:
                print("(further failures are counted, not printed)")
        else:
            passed += 1

    missing = [m for m in must_occur(rations) if not seen[m]]
    if missing:
        print("never met, so not checked: " + ", ".join(missing))
        if farms < 100:
            print(f"({farms} farms may be too few for every kind of thing to turn up; 200 is the usual number)")
            missing.clear()
    if not windows:
        missing.append("windows")
        print("no answer for a window was compared, which is a failure")
    print(f"{numbers} numbers compared in all lives and {windows} windows, over {seen['fills']} fills; "
          f"{seen['roots found']} empty times found by brentq; "
          f"{seen['bag counts left to rounding']} bag counts and {seen['houses left to rounding']} counts of houses left to rounding")
    print(f"worst relative difference {worst[0]:.3g} ({worst[1]})")
    print(f"time: {own:.1f} s here, {in_program:.1f} s in the program")
    if passed + failed == 0 or numbers == 0:
        print("nothing was compared, which is a failure")
        failed = max(failed, 1)
    if failed or keep:
        print(f"farms and answers are kept in {folder}")
    else:
        shutil.rmtree(folder)
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or missing or not passed else 0


def main():
    p = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    p.add_argument("program", nargs="?")
    p.add_argument("rations_dir", nargs="?")
    p.add_argument("--farms", type=int, default=200)
    p.add_argument("--seed", type=int, default=1)
    p.add_argument("--keep", action="store_true", help="keep the farms and answers even when all pass")
    p.add_argument("--self-test", action="store_true", help="check this file's own model, without the program")
    a = p.parse_args()
    if a.self_test:
        from self_test import self_test
        return self_test(a.rations_dir or a.program)
    if not a.program or not a.rations_dir:
        p.error("PROGRAM and RATIONS_DIR are needed (or --self-test)")
    return run(a.program, a.rations_dir, a.farms, a.seed, a.keep)


if __name__ == "__main__":
    sys.exit(main())
