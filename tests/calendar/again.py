#!/usr/bin/python3
"""A calendar made again has the UIDs of the first, and one written over an older one cancels what is no more.
again.py PROGRAM PACKAGES [--self-test]

The UID of an event is that of its chore (FNV-1a), so that importing a new calendar moves deeds between events and makes
no event twice. What an older file holds between now (or --from) and --to and the new plan does not is cancelled (RFC
5546, 3.2.5: STATUS:CANCELLED and a higher SEQUENCE) and nothing else is, as libical and ical.js (in PACKAGES) read it;
a calendar into which both files were imported then holds the new plan, and of the past what it held. --self-test
spoils what was read and wants each spoiling noticed."""
import copy
import datetime
import pathlib
import shutil
import subprocess
import sys
import tempfile

import libical
from calendars import by_ical_js, fingerprint, unlike
from farms import farm

PROGRAM, PACKAGES = (pathlib.Path(word).resolve() for word in sys.argv[1:3])
HATCHES = (("First", "bobwhite", "2027-04-05"), ("Second", "coturnix", "2027-04-19"))
FARM = farm("Again", HATCHES, withdrawal="5 d", change="2 d", drinker="9 gal", hopper="2 gal")
DAY = datetime.timedelta(days=1)
KEPT = ("uid", "start", "summary", "description", "what", "alarms")


def run(folder, *words):
    done = subprocess.run([PROGRAM, *words], cwd=folder, capture_output=True, timeout=120)
    if done.returncode != 0:
        raise SystemExit(f"{words} ended with {done.returncode}: {done.stderr.decode()}")
    return done.stdout


def read(folder, data):
    """Its events as both libraries read them."""
    (folder / "read.ics").write_bytes(data)
    one, faults = libical.read(data)
    other = by_ical_js(PACKAGES, [folder / "read.ics"])[0]
    faults += list(unlike(one, other)) if one and other else ["a library refuses it"]
    if faults:
        raise SystemExit(faults)
    return one["events"]


def events(folder, text, *more):
    (folder / "farm.toml").write_text(text)
    return read(folder, run(folder, "calendar", "farm.toml", "--stamp", "2027-03-01", *more))


def written(folder, text, stamp, *more):
    """The calendar written over the one that is there."""
    (folder / "farm.toml").write_text(text)
    run(folder, "calendar", "farm.toml", "--stamp", stamp, "-o", "farm.ics", "--force", *more)
    return read(folder, (folder / "farm.ics").read_bytes())


def imported(calendar, events):
    """What a program's calendar holds afterwards, by UID (RFC 5546, 2.1.5: the higher SEQUENCE is newer)."""
    held = dict(calendar)
    for event in events:
        known = held.get(event["uid"])
        if known is None or known["sequence"] < event["sequence"]:
            held[event["uid"]] = event
    return {uid: event for uid, event in held.items() if event["status"] != "CANCELLED"}


def plain(events):
    return {event["uid"]: [event[key] for key in KEPT] for event in events}


def over_findings(before, after, fresh, since, until):
    """`after` was written over `before`; `fresh` is the same question where no file was."""
    known, new = {e["uid"]: e for e in before}, {e["uid"]: e for e in fresh}
    gone = {e["uid"] for e in after if e["status"] == "CANCELLED"}
    wanted = {uid for uid, e in known.items() if uid not in new and since <= e["start"] < until}
    if gone != wanted:
        yield f"cancelled: {len(gone)}, no more: {len(wanted)}; in one {[known.get(u) for u in gone ^ wanted][:2]}"
    for event in after:
        old = known.get(event["uid"])
        if old and event["sequence"] <= old["sequence"]:
            yield f"{event['start']}: the SEQUENCE is no higher than in the older file"
        if event["uid"] in gone and (not old or event["start"] != old["start"] or event["alarms"]):
            yield f"{event['start']}: cancelled at another moment, or it still rings"
        if event["status"] not in (None, "CANCELLED"):
            yield f"{event['start']}: {event['status']}"
    if plain(e for e in after if e["uid"] not in gone) != plain(fresh):
        yield "what is not cancelled is not what is written where no file was"
    held = imported(imported({}, before), after)
    left = {uid: e for uid, e in known.items() if not since <= e["start"] < until}
    if plain(held.values()) != {**plain(left.values()), **plain(fresh)}:
        yield "a calendar that took both files does not hold the new plan and the past"


def again_findings(folder):
    first = events(folder, FARM)
    uids = [e["uid"] for e in first]
    if [e["uid"] for e in events(folder, FARM)] != uids:
        yield "a second run has other UIDs"
    wanted = [fingerprint("Again", "notes", "")]
    wanted += [fingerprint("Again", "chore", e["start"].isoformat(timespec="minutes")) for e in first[1:]]
    if uids != wanted:
        yield "the UIDs are not those of FNV-1a"
    dearer = events(folder, FARM.replace('bag = "50 lb"', 'bag = "50 lb"\nprice = 99.00'))
    if [e["uid"] for e in dearer] != uids:
        yield "a price changes UIDs"
    later = events(folder, FARM.replace("date = 2027-04-05", "date = 2027-04-06"))
    chicks = {e["uid"]: e["start"] for these in (first, later) for e in these if "chicks come" in e["description"]}
    if {at.date().isoformat() for at in chicks.values()} != {"2027-04-05", "2027-04-06", "2027-04-19"}:
        yield f"the chicks come at {sorted(chicks.values())}"
    both = plain(first).keys() & plain(later).keys()
    if not any(plain(first)[uid] != plain(later)[uid] for uid in both):
        yield "no deed moved from one event to another"
    if any(plain(first)[uid][1] != plain(later)[uid][1] for uid in both - {uids[0]}):
        yield "an event moved, and not its deeds"
    if set(uids) & {e["uid"] for e in events(folder, FARM.replace('"Again"', '"Other"'))}:
        yield "two farms share UIDs"


def cases(folder):
    """Files written over older ones: (before, after, fresh, since, until)."""
    at, far = datetime.datetime.fromisoformat, datetime.datetime(2200, 1, 1)
    alone = farm("Again", HATCHES[:1], withdrawal="5 d", change="2 d", drinker="9 gal", hopper="2 gal")
    longer = alone.replace('until = "9 wk"', 'until = "7 wk"')
    before = written(folder, FARM, "2027-03-01")
    moved = FARM.replace("date = 2027-04-05", "date = 2027-04-08")
    now = ["--now", "2027-03-10T09:00"]
    yield before, written(folder, moved, "2027-03-10", *now), events(folder, moved, *now), at("2027-03-10T09:00"), far
    before = written(folder, FARM, "2027-03-11")
    now = ["--now", "2027-05-20T12:00"]
    yield before, written(folder, alone, "2027-05-20", *now), events(folder, alone, *now), at("2027-05-20T12:00"), far
    before = read(folder, (folder / "farm.ics").read_bytes())     # some of it is cancelled already
    yield before, written(folder, longer, "2027-05-21", *now), events(folder, longer, *now), at("2027-05-20T12:00"), far
    (folder / "farm.ics").unlink()
    before = written(folder, FARM, "2027-03-01")
    days = ["--from", "2027-04-20", "--to", "2027-05-04"]
    yield before, written(folder, longer, "2027-03-02", *days), events(folder, longer, *days), \
        at("2027-04-20"), at("2027-05-04T07:00")


def spoilt(after, before):
    """What was read of a calendar written over another, spoilt in one place each."""
    gone = next(i for i, e in enumerate(after) if e["status"])
    kept = next(i for i, e in enumerate(after) if not e["status"] and e["uid"] in {b["uid"] for b in before} and i > 0)
    for name, place, change in (
            ("an event that is no more stays", gone, {"status": None}),
            ("one that is goes", kept, {"status": "CANCELLED"}),
            ("a SEQUENCE that is no higher", gone, {"sequence": 1}), ("that of one that stays", kept, {"sequence": 1}),
            ("a cancelled one elsewhere", gone, {"start": after[gone]["start"] + DAY}),
            ("a cancelled one that rings", gone, {"alarms": [{"action": "DISPLAY", "trigger": "PT0S"}]}),
            ("another description", kept, {"description": "x"}), ("tentative", kept, {"status": "TENTATIVE"})):
        events = copy.deepcopy(after)
        events[place].update(change)
        yield name, events
    yield "a cancelled event left out", after[:gone] + after[gone + 1:]


def main():
    assert fingerprint("foobar") == "85944171f73967e8@cropful"  # a published test vector
    shutil.copy(pathlib.Path(__file__).parent / "parse.mjs", PACKAGES)
    with tempfile.TemporaryDirectory() as name:
        folder, bad, cancelled = pathlib.Path(name), [], 0
        bad += list(again_findings(folder))
        for number, case in enumerate(cases(folder)):
            bad += [f"case {number + 1}: {one}" for one in over_findings(*case)]
            cancelled += sum(e["status"] == "CANCELLED" for e in case[1])
            if number == 1 and "--self-test" in sys.argv:
                for words, events_read in spoilt(case[1], case[0]):
                    if not list(over_findings(case[0], events_read, *case[2:])):
                        bad.append(f"not noticed: {words}")
    print("\n".join(bad + [f"{cancelled} events cancelled, {len(bad)} findings"]))
    return 1 if bad or not cancelled else 0


if __name__ == "__main__":
    sys.exit(main())
