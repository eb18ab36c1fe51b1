#!/usr/bin/python3
"""Calendars read by two general libraries and compared with the plan.
calendars.py PROGRAM RATIONS PACKAGES [--self-test]

libical (C, from Debian) and ical.js (npm, in the folder PACKAGES) must read every file without a fault and alike, and
what they read must be what ../today/deeds.py reads out of `plan --json`: one event for each chore at which anything is
done, every deed in exactly one of them with its amount as far as printing rounds, nothing between 22:00 and 05:00, an
alarm only where something is done that is not done every day, and only at a chore. --self-test spoils sound files and
wants each spoiling noticed."""
import datetime
import hashlib
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

import libical
from farms import FARMS, NAMES
from lines import Words, categories, description_findings

sys.path.append(str(pathlib.Path(__file__).resolve().parent.parent / "today"))
from deeds import ROUTINE, kinds_of, moment, reading  # noqa: E402

TEXT = re.compile(rb"(?:[^\x00-\x08\x0a-\x1f\x7f\\;,]|\\[\\;,nN])*")  # RFC 5545, 3.3.11
STAMP = "2027-03-01T12:34"
MINUTES = (moment(STAMP) - datetime.datetime(2000, 1, 1)) // datetime.timedelta(minutes=1)
NOW = datetime.datetime(2026, 11, 25, 12)  # CROPFUL_NOW of tests/CMakeLists.txt
ALARMS = {"none": None, "0 h": 0, "90 min": 90, "1 d": 1440}


class Question:
    """One question, its calendar and the deeds it must hold."""
    def __init__(self, program, rations, folder, words, kinds):
        self.program, self.folder, self.words = program, folder, words
        self.ics = self.calendar()
        options = dict(zip(words[1::2], words[2::2]))
        since, until = moment(options["--from"]) if "--from" in options else NOW, options.get("--to")
        days = [w for key in ("--from", "--units") if key in options for w in (key, options[key])]
        if words[0].startswith("--"):
            self.deeds = None
            return
        found = reading(program, words[0], rations, days, since, until, folder, kinds)
        found.units = options.get("--units")
        self.words_of, self.deeds, self.chores = Words(found), {}, found.chores
        for deed in found.deeds:
            self.deeds.setdefault(deed.at, []).append(deed)

    def run(self, *words):
        done = subprocess.run([self.program, *words], cwd=self.folder, capture_output=True, timeout=120)
        if done.returncode != 0:
            raise SystemExit(f"{words} ended with {done.returncode}: {done.stderr.decode()}")
        return done.stdout

    def calendar(self, *more):
        return self.run("calendar", *self.words, "--stamp", STAMP, *more)


def octets(data):
    """RFC 5545, 3.1: lines of at most 75 octets that end with CRLF and never break a character."""
    if not data.endswith(b"\r\n") or re.search(rb"[^\r]\n|\r[^\n]", data):
        yield "a line does not end with CRLF"
    for line in data.split(b"\r\n"):
        if len(line) > 75:
            yield f"a line of {len(line)} octets"
        try:
            line.decode()
        except UnicodeDecodeError:
            yield f"a character is broken: {line!r}"
    for line in data.replace(b"\r\n ", b"").split(b"\r\n"):
        name, _, value = line.partition(b":")
        if name in (b"SUMMARY", b"DESCRIPTION", b"NAME") and not TEXT.fullmatch(value):
            yield f"not a TEXT: {line!r}"


def by_ical_js(packages, files):
    """What ical.js reads from each, or None where it refuses."""
    done = subprocess.run(["node", "parse.mjs", *map(str, files)], cwd=packages, capture_output=True, timeout=120)
    if done.returncode == 0:
        return json.loads(done.stdout)
    return [None] if len(files) == 1 else [by_ical_js(packages, [one])[0] for one in files]


def plain(event):
    """An event of ical.js in the form of libical's."""
    at = [moment(words) for words in event["occurrences"]]
    stamp = event["stamp"].replace("-", "").replace(":", "")
    return {**event, "start": moment(event["start"]), "occurrences": at, "stamp": stamp}


def unlike(one, other):
    """Where two readers differ; lists of occurrences by their ends."""
    if one["name"] != other["name"] or len(one["events"]) != len(other["events"]):
        yield f"readers differ: {one['name']!r}, {len(one['events'])}; {other['name']!r}, {len(other['events'])}"
        return
    for a, b in zip(one["events"], map(plain, other["events"])):
        yield from (f"readers differ in {key} of {a['summary']!r}: {str(a[key])[:90]} {str(b[key])[:90]}"
                    for key in a if a[key] != b.get(key))


def chores_of(events):
    return [event for event in events if event["what"] != ["notes"]]


def plan_findings(question, events):
    """Events and the deeds of their chores."""
    at_chore, found = question.deeds, chores_of(events)
    starts = [event["start"] for event in found]
    if starts != sorted(at_chore):
        yield f"chores: {len(starts)}, planned {len(at_chore)}; only in one: {sorted(set(starts) ^ set(at_chore))[:4]}"
    for event in found:
        deeds = at_chore.get(event["start"], [])
        if event["start"].time() not in question.chores.hours:
            yield f"{event['start']} is no chore"
        yield from description_findings(question.words_of, deeds, event["description"])
        if set(event["what"]) != categories(deeds):
            yield f"{event['start']}: categories {event['what']}, done {categories(deeds)}"
        new = {deed.hatch for deed in deeds if deed.work not in ROUTINE and deed.hatch}
        missing = [name for name in new if name not in event["summary"]]
        if missing:
            yield f"{event['start']}: {event['summary']!r} does not name {missing}"


def must_ring(deeds):
    return any(deed.work not in ROUTINE for deed in deeds)


def alarm_findings(question, events, before=0):
    """A display where something is done that is not done every day: at the last chore so long before it, and never
    before what must not be early."""
    for event in chores_of(events):
        deeds = question.deeds.get(event["start"], [])
        back = question.chores.last_by(event["start"] - datetime.timedelta(minutes=before or 0))
        rings = event["start"] if any(deed.work == "withdrawal-ends" for deed in deeds) else back
        wanted = [rings] if must_ring(deeds) and before is not None else []
        if [event["start"] + trigger(alarm) for alarm in event["alarms"]] != wanted:
            yield f"{event['start']}: alarms {event['alarms']}, wanted {wanted}"


def trigger(alarm):
    """RFC 5545, 3.3.6: a duration, such as -P1D or -PT90M."""
    found = re.fullmatch(r"(-?)P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+)S)?)?", alarm["trigger"])
    if not found or alarm["action"] != "DISPLAY":
        return datetime.timedelta(days=9999)
    days, hours, minutes, seconds = (int(part or 0) for part in found.groups()[1:])
    length = datetime.timedelta(days=days, hours=hours, minutes=minutes, seconds=seconds)
    return -length if found[1] else length


def fingerprint(*parts):
    """The 64-bit FNV-1a hash (draft-eastlake-fnv, section 2) of parts kept apart by the octet 1F."""
    value = 0xCBF29CE484222325
    for octet in "\x1f".join(parts).encode():
        value = (value ^ octet) * 0x100000001B3 % 2**64
    return f"{value:016x}@cropful"


def form_findings(events, farm=None):
    uids, chores = [e["uid"] for e in events], chores_of(events)
    if len(set(uids)) != len(uids) or not all(uids):
        yield "two events have one UID, or one has none"
    if len({e["start"] for e in chores}) != len(chores):
        yield "two events stand at one chore"
    if len(events) - len(chores) != 1:
        yield f"{len(events) - len(chores)} events of notes"
    for event in events:
        if event["all_day"] or not event["floating"] or len(event["occurrences"]) != 1:
            yield f"{event['summary']}: not one hour that floats"
        if not 5 <= event["start"].hour < 22:
            yield f"{event['summary']} at {event['start']}: nobody is told to do anything from 22:00 to 05:00"
        if event["stamp"] != "20270301T123400Z" or event["sequence"] != MINUTES or event["status"]:
            yield f"{event['summary']}: stamped {event['stamp']}, {event['sequence']}, {event['status']}"
        wanted = fingerprint(farm, "chore", event["start"].isoformat(timespec="minutes")) if farm else None
        if farm and event in chores and event["uid"] != wanted:
            yield f"{event['start']}: the UID is not that of FNV-1a"


def findings(question, data, packages, folder):
    file = pathlib.Path(folder) / "check.ics"
    file.write_bytes(data)
    found = list(octets(data))
    one, faults = libical.read(data)
    other = by_ical_js(packages, [file])[0]
    found += faults + ([] if other else ["ical.js refuses it"])
    if one and other:
        name = question.words_of.reading.farm["farm"]["name"] if question.deeds else None
        found += [*unlike(one, other), *form_findings(one["events"], name)]
        if question.deeds is not None:
            found += [*plan_findings(question, one["events"]), *alarm_findings(question, one["events"])]
            if one["name"] != name:
                found.append(f"the farm is called {one['name']!r}")
    return found, one


def withdrawal_findings(name, read):
    """Grower is fed from 3 to 6 weeks in the farms of farms.py; 5 d later is 22 May for a hatch of 5 April,
    at the first chore of that day."""
    over = [e for e in read["events"] if "withdrawal over" in e["what"]]
    wanted = [datetime.datetime(2027, 5, 22, 7)] if name == "withdrawal.toml" else []
    if [e["start"] for e in over] != wanted:
        yield f"withdrawals end {[e['start'] for e in over]}, not {wanted}"
    for event in over:
        words = " ".join(event["description"].split())
        wanted = ("not before now: 5 d withdrawal of", "label, your veterinarian and local law decide.")
        if not all(one in words for one in wanted):
            yield f"a withdrawal says {words!r}"


def flags_findings(question):
    for flag, minutes in ALARMS.items():
        read, _ = libical.read(question.calendar("--alarm", flag))
        yield from (f"--alarm {flag!r}: {one}" for one in alarm_findings(question, read["events"], minutes))
    if hashlib.sha256(question.calendar()).digest() != hashlib.sha256(question.ics).digest():
        yield "the same question gave another file"


def main():
    program, rations, packages = (pathlib.Path(word).resolve() for word in sys.argv[1:4])
    shutil.copy(pathlib.Path(__file__).parent / "parse.mjs", packages)
    bad, events, kinds = [], 0, kinds_of(rations)
    with tempfile.TemporaryDirectory() as folder:
        for name, text in FARMS.items():
            (pathlib.Path(folder) / f"{name}.toml").write_text(text, newline="")
        if "--self-test" in sys.argv:
            from spoilings import self_test
            return self_test(lambda name: Question(program, rations, folder, [name], kinds), findings, packages, folder)
        names = ("saltgrass", "backyard", "larkmead", "trips")
        demo = {name: str(rations / "farms" / f"{name}.toml") for name in names}
        questions = [[demo["saltgrass"]], [demo["backyard"]], [demo["larkmead"]], [demo["trips"]],
                     [demo["larkmead"], "--from", "2027-05-12T06:00", "--to", "2027-06-20"],
                     [demo["backyard"], "--units", "us"], *([f"{name}.toml"] for name in FARMS),
                     ["--kind", "bobwhite", "--chicks", "90", "--date", "2027-04-05", "--until", "8 wk", "--hopper",
                      "12 L", "--drinker", "1 gal", "--rate", "1 tsp per gal", "--days", "3"]]
        for words in questions:
            question = Question(program, rations, folder, words, kinds)
            found, read = findings(question, question.ics, packages, folder)
            if read and words[0].removesuffix(".toml") in FARMS:
                found += withdrawal_findings(words[0], read)
            if words == ["withdrawal.toml"]:
                found += flags_findings(question)
            events += len(read["events"]) if read else 0
            bad += [f"{words}: {one}" for one in found]
    print("\n".join(bad[:40] + [f"{len(questions)} calendars, {events} events, {len(bad)} findings"]))
    return 1 if bad or not events else 0


if __name__ == "__main__":
    sys.exit(main())
