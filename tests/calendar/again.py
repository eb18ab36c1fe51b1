#!/usr/bin/python3
"""A calendar made again has the UIDs of the first, so that importing it moves events and makes none twice.
again.py PROGRAM"""
import pathlib
import re
import subprocess
import sys
import tempfile

import libical
from farms import farm

PROGRAM = pathlib.Path(sys.argv[1]).resolve()
FARM = farm("Again", (("First", "bobwhite", "2027-04-05"), ("Second", "coturnix", "2027-04-19")), withdrawal="5 d",
            change="2 d", drinker="9 gal", hopper="2 gal")


def fnv1a(data):
    """The 64-bit FNV-1a hash (draft-eastlake-fnv, section 2)."""
    value = 0xCBF29CE484222325
    for octet in data:
        value = (value ^ octet) * 0x100000001B3 % 2**64
    return f"{value:016x}"


def run(folder, *words):
    done = subprocess.run([PROGRAM, *words], cwd=folder, capture_output=True, timeout=120)
    if done.returncode != 0:
        raise SystemExit(f"{words} ended with {done.returncode}: {done.stderr.decode()}")
    return done.stdout


def events(folder, text, *more):
    (folder / "farm.toml").write_text(text)
    read, faults = libical.read(run(folder, "calendar", "farm.toml", "--stamp", "2027-03-01", *more))
    if faults:
        raise SystemExit(faults)
    return read["events"]


def uids(events, what=".*", hatch=""):
    return [e["uid"] for e in events if re.fullmatch(what, e["what"]) and e["summary"].endswith(hatch)]


def other_than_refills(events):
    """Their summaries without prices and bags, by UID."""
    return {e["uid"]: re.sub(r"Buy .* of ", "Buy ", e["summary"]) for e in events if e["what"] not in ("Fill", "Water")}


def findings(folder):
    first = events(folder, FARM)
    if uids(events(folder, FARM)) != uids(first):
        yield "a second run has other UIDs"
    for hatch in ("First", "Second"):
        wanted = [fnv1a("\x1f".join(["Again", hatch, "Fill", "", str(i + 1)]).encode()) + "@cropful"
                  for i in range(len(uids(first, "Fill", hatch)))]
        if not wanted or uids(first, "Fill", hatch) != wanted:
            yield f"the UIDs of {hatch}'s fills are not those of FNV-1a"

    dearer = events(folder, FARM.replace('bag = "50 lb"', 'bag = "50 lb"\nprice = 99.00'))
    if uids(dearer) != uids(first) or dearer == first:
        yield "a price changes UIDs, or nothing at all"
    later = events(folder, FARM.replace("date = 2027-04-05", "date = 2027-04-06"))
    if other_than_refills(later) != other_than_refills(first) or later == first:
        yield "another day of hatch changes UIDs, or nothing at all"

    events(folder, FARM)
    for day in range(8, 28, 2):
        run(folder, "diary", "add", "farm.toml", "--now", "2027-12-31", "--hatch", "First", "--at", f"2027-04-{day:02}T06:00", "--feed",
            f"{0.5 * day} lb")
    learned = events(folder, FARM)
    if other_than_refills(learned) != other_than_refills(first):
        yield "the diary changes UIDs of what is no refill"
    for what in ("Fill", "Water"):
        before, after = uids(first, what, "First"), uids(learned, what, "First")
        if before[:len(after)] != after[:len(before)]:
            yield f"the diary changes UIDs of {what}"
    starts = lambda these: [e["start"] for e in these if e["what"] == "Fill" and e["summary"].endswith("First")]
    if starts(learned)[:4] == starts(first)[:4]:
        yield "the diary moves no fill, so nothing was tried"

    if set(uids(events(folder, FARM.replace('"Again"', '"Other"'), "--no-diary"))) & set(uids(first)):
        yield "two farms share UIDs"
    renamed = events(folder, FARM.replace('"Second"', '"Third"'), "--no-diary")
    if set(uids(renamed, ".*", "Third")) & set(uids(first)) or uids(renamed, ".*", "First") != uids(first, ".*", "First"):
        yield "two hatches share UIDs, or one's depend on another's name"


def main():
    assert fnv1a(b"") == "cbf29ce484222325" and fnv1a(b"foobar") == "85944171f73967e8"  # published test vectors
    with tempfile.TemporaryDirectory() as folder:
        bad = list(findings(pathlib.Path(folder)))
    print("\n".join(bad + [f"{len(bad)} findings"]))
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
