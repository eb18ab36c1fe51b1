#!/usr/bin/python3
"""Every answer comes soon and in little memory, or a fault says what is too much.

    costs.py PROGRAM SECONDS MEGABYTES

Each case is a farm that asks for very much, by a slip or by ill will, and a command. It must end within so many seconds
of processor time and with no more than so many megabytes resident. Of a case with words, the command must refuse and
say them; of one without, it must answer."""
import os
import pathlib
import subprocess
import sys
import tempfile
import threading

HEAD = '[farm]\nname = "x"\n[feed.a]\nprotein = "20 %"\nbag = "50 lb"\nprice = 10\n'
FEEDING = 'feeding = [{ feed = "a", from = "0 d" }]\n'


def hatch(more="", kind="bobwhite", date="2027-01-01", chicks=3, until="6 wk"):
    return (f'[[hatch]]\nkind = "{kind}"\ndate = {date}\nchicks = {chicks}\n{FEEDING}until = "{until}"\n' +
            "".join(f"{line}\n" for line in more.split("; ") if line))


def many(count, times, more="", **keys):
    return "".join(hatch(f'name = "h{i}"; every = "1 d"; times = {times}; {more}', **keys) for i in range(count))


BROODER = '[brooder.r]\nholds = 3\nuntil = "6 wk"\n'
VESSELS = '[hopper.h]\nvolume = "1 gal"\n[drinker.d]\nvolume = "1 gal"\nchange_every = "%s"\n'
BOTH = 'hopper = "h"; drinker = "d"'
LONG_SHOP = '[store]\ntrip = 1\nkeeping = "1 per lb"\n'
MANY_FEEDS = "".join(f'[feed.f{i}]\nprotein = "20 %"\nbag = "50 lb"\nprice = 10\n' for i in range(90))
TONIC = '[supplement.t]\nrate = "1 tsp per gal"\nkeeps = "%s"\ndays = %d\n'

# name, the farm file, the command's words, what a refusal says (None: there is an answer)
CASES = [
    ("hatches beyond counting", HEAD + many(50, 200), ["plan"], "at most 900 hatches in a file"),
    ("hatches one by one", HEAD + "".join(hatch(f'name = "h{i}"') for i in range(5000)), ["plan"], "at most 900 hatches"),
    ("as many hatches as may be", HEAD + many(4, 200) + many(1, 100).replace("h0", "g"), ["plan", "--json"], None),
    ("all of them in want of a brooder", HEAD + BROODER + many(4, 200, 'brooder = "r"') +
     many(1, 100, 'brooder = "r"').replace("h0", "g"), ["season"], None),
    ("a few brooders for very many", HEAD + BROODER + "count = 40\n" + many(4, 200, 'brooder = "r"'), ["season"], None),
    ("years of many hatches", HEAD + many(4, 200, until="1826 d"), ["plan"], "days together, and at most 400,000"),
    ("as many days as may be", HEAD + VESSELS % "14 d" + many(1, 200, BOTH, until="1826 d", kind="coturnix"),
     ["season", "--json"], None),
    ("fills, each vessel within its own", HEAD + VESSELS % "2 h" + many(1, 100, BOTH, until="1600 d", kind="coturnix"),
     ["plan", "--json"], "more than 100,000 times in all"),
    ("as many fills as may be", HEAD + VESSELS % "1 d" + many(1, 50, BOTH, until="1800 d", kind="coturnix"),
     ["plan", "--json"], None),
    ("as many fills, on a calendar", HEAD + VESSELS % "1 d" + many(1, 50, BOTH, until="1800 d", kind="coturnix"),
     ["calendar"], None),
    ("as many fills, on sheets", HEAD + VESSELS % "1 d" + many(1, 50, BOTH, until="1800 d", kind="coturnix"),
     ["sheet", "-o", "out.html"], None),
    ("batches by the minute", HEAD + TONIC % ("1 min", 13) + many(1, 30, 'supplement = "t"', until="20 d"),
     ["plan", "--json"], None),
    ("batches by the second", HEAD + TONIC % ("0.01 min", 5) + hatch('supplement = "t"'), ["plan"],
     None),
    ("a hopper of a drop", HEAD + '[hopper.h]\nvolume = "0.001 mL"\n' + hatch('hopper = "h"', chicks=1000000), ["plan"],
     "would be filled more than 20000 times"),
    ("one date in 2195", HEAD + LONG_SHOP + hatch() + hatch('name = "late"', date="2195-01-01"), ["buy", "--plan"],
     "trips are planned for at most 3,653"),
    ("a date in 2195 without a shopping list", HEAD + hatch() + hatch('name = "late"', date="2195-01-01"),
     ["season", "--json"], None),
    ("ten years of shopping", HEAD + LONG_SHOP + hatch(chicks=900, until="1826 d") +
     hatch('name = "late"', date="2031-12-01", chicks=900, until="1826 d"), ["buy", "--plan", "--json"],
     "plan for fewer days, or state fewer feeds"),
    ("ten years of shopping for 90 feeds", HEAD + MANY_FEEDS + LONG_SHOP + "".join(
        hatch(f'name = "h{i}"; every = "36 d"; times = 100', until="40 d").replace(
            FEEDING, f'feeding = [{{ feed = "f{2 * i}", from = "0 d" }}, {{ feed = "f{2 * i + 1}", from = "9 d" }}]\n')
        for i in range(9)), ["buy", "--plan"], "plan for fewer days, or state fewer feeds"),
    ("very many feeds", HEAD + "".join(MANY_FEEDS.replace("feed.f", f"feed.g{i}_") for i in range(12)) + hatch(), ["plan"],
     "at most 1000"),
    ("a list without end", HEAD + hatch().replace(FEEDING, "feeding = [" + '{ feed = "a", from = "0 d" },' * 9000 + "]\n"),
     ["plan"], "items in a list; expected at most 200"),
    ("many removals of many hatches", HEAD + many(4, 200, "removed = [" + ", ".join(
        f'{{ at = "{i} d", birds = 1 }}' for i in range(1, 200)) + "]", chicks=1000, until="200 d"), ["plan"],
     "at most 20,000 removals"),
    ("as many removals as may be", HEAD + many(1, 100, "removed = [" + ", ".join(
        f'{{ at = "{i} d", birds = 1 }}' for i in range(1, 200)) + "]", chicks=1000, until="200 d"), ["plan"], None),
    ("bags of a grain", HEAD.replace("50 lb", "1 mg") + LONG_SHOP + hatch(chicks=900), ["buy", "--plan"], "bags"),
    ("bags of many sizes", HEAD + LONG_SHOP + '[feed.b]\nprotein = "20 %"\nbags = [' + ", ".join(
        f'{{ size = "{i} lb", price = {i} }}' for i in range(1, 31)) + "]\n" + hatch(chicks=900).replace('"a"', '"b"'),
     ["buy", "--plan"], "at most 12 sizes and prices"),
    ("a file of small lists", "x = [" + "[]," * 330000 + "]\n", ["plan"], "unknown key"),
    ("a file of small tables", "x = [" + "{}," * 330000 + "]\n", ["plan"], "unknown key"),
    ("a file of headers", "[[x.y]]\n" * 120000, ["plan"], "unknown key"),
    ("a line without end", "a = " + " " * 900000 + "@", ["plan"], "not TOML"),
    ("too large a file", "#" * 1100000, ["plan"], "more than 1 MB"),
    ("away with a hopper of a drop", None, ["away", "--kind", "bobwhite", "--birds", "1000000", "--age", "9 d", "--date",
     "2027-01-01", "--hopper", "0.0001 mL", "--from", "2027-01-10", "--until", "2027-01-12"],
     "more than 100,000 more would be needed"),
]


def run(command, folder):
    """(status, what it said, seconds of processor time, megabytes)"""
    with open(folder / "out", "wb") as out, open(folder / "err", "wb") as err:
        child = subprocess.Popen(command, cwd=folder, stdin=subprocess.DEVNULL, stdout=out, stderr=err)
        killer = threading.Timer(300, child.kill)
        killer.start()
        _, status, used = os.wait4(child.pid, 0)
        killer.cancel()
    child.returncode = 0
    said = (folder / "err").read_text(errors="replace")
    return os.waitstatus_to_exitcode(status), said, used.ru_utime + used.ru_stime, used.ru_maxrss / 1000


def wrong(program, case, seconds, megabytes, folder):
    name, farm, words, refusal = case
    command = [program, *words]
    if farm is not None:
        (folder / "farm.toml").write_text(farm)
        command.insert(2, "farm.toml")
    status, said, took, held = run(command, folder)
    print(f"{name}: {took:.1f} s, {held:.0f} MB, exit {status} {said.strip()[:150] if refusal else ''}", flush=True)
    found = []
    if took > seconds:
        found.append(f"took {took:.1f} s")
    if held > megabytes:
        found.append(f"held {held:.0f} MB")
    if "Sanitizer" in said or "runtime error" in said:
        found.append(said[:500])
    if status != 0 if refusal is None else status not in (1, 2) or refusal not in " ".join(said.split()):
        found.append(f"exit {status}: {said.strip()[:300]}")
    return [f"{name}: {one}" for one in found]


def pipes(program, folder):
    """A pipe that nobody writes into, and a folder, are refused at once."""
    os.mkfifo(folder / "pipe")
    (folder / "folder").mkdir()
    found = []
    for place in ("pipe", "folder"):
        for words in (["plan", place], ["blend", place], ["diary", "show", place]):
            try:
                done = subprocess.run([program, *words], cwd=folder, capture_output=True, text=True, timeout=60)
            except subprocess.TimeoutExpired:
                found.append(f"{' '.join(words)}: waits for ever")
                continue
            if done.returncode != 2 or place not in done.stderr:
                found.append(f"{' '.join(words)}: exit {done.returncode}: {done.stderr[:200]}")
    return found


def main():
    program, seconds, megabytes = str(pathlib.Path(sys.argv[1]).resolve()), float(sys.argv[2]), float(sys.argv[3])
    only = sys.argv[4:]
    found = []
    for case in CASES:
        if only and case[0] not in only:
            continue
        with tempfile.TemporaryDirectory() as folder:
            found += wrong(program, case, seconds, megabytes, pathlib.Path(folder))
    with tempfile.TemporaryDirectory() as folder:
        found += pipes(program, pathlib.Path(folder))
    print("\n".join(["", *found, f"{len(CASES)} cases, {len(found)} findings"]))
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
