#!/usr/bin/python3
"""Calendars read by two general libraries and compared with the plan.   calendars.py PROGRAM RATIONS PACKAGES [--self-test]

libical (C, from Debian) and ical.js (npm, in the folder PACKAGES) must read every file without a fault and alike, and
what they read must be what `plan --json` says: each fill, change of water, batch, change of feed, purchase, withdrawal
and row of the brooder, on its day and at its minute. --self-test spoils sound files and wants each spoiling noticed."""
import datetime
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

import libical
from farms import FARMS, NAMES

DAY = datetime.timedelta(days=1)
TEXT = re.compile(rb"(?:[^\x00-\x08\x0a-\x1f\x7f\\;,]|\\[\\;,nN])*")  # RFC 5545, 3.3.11
STAMP = "2027-03-01T12:34"
MINUTES = (datetime.datetime.fromisoformat(STAMP) - datetime.datetime(2000, 1, 1)) // datetime.timedelta(minutes=1)


class Question:
    """One question, its calendar and the plan it must agree with."""
    def __init__(self, program, folder, words):
        self.program, self.folder, self.words = program, folder, words
        self.plan = json.loads(self.run("plan", *words, "--json"))
        self.ics = self.calendar()

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
        if name in (b"SUMMARY", b"DESCRIPTION", b"CATEGORIES", b"NAME") and not TEXT.fullmatch(value):
            yield f"not a TEXT: {line!r}"


def by_ical_js(packages, files):
    """What ical.js reads from each, or None where it refuses."""
    done = subprocess.run(["node", "parse.mjs", *map(str, files)], cwd=packages, capture_output=True, timeout=120)
    if done.returncode == 0:
        return json.loads(done.stdout)
    return [None] if len(files) == 1 else [by_ical_js(packages, [one])[0] for one in files]


def plain(event):
    """An event of ical.js in the form of libical's."""
    at = [datetime.datetime.fromisoformat(words) for words in event["occurrences"]]
    stamp = event["stamp"].replace("-", "").replace(":", "")
    return {**event, "start": datetime.datetime.fromisoformat(event["start"]), "occurrences": at, "stamp": stamp}


def unlike(one, other):
    """Where two readers differ; lists of occurrences by their ends."""
    if one["name"] != other["name"] or len(one["events"]) != len(other["events"]):
        yield f"readers differ: {one['name']!r}, {len(one['events'])}; {other['name']!r}, {len(other['events'])}"
        return
    for a, b in zip(one["events"], map(plain, other["events"])):
        yield from (f"readers differ in {key} of {a['summary']!r}: {str(a[key])[:90]} {str(b[key])[:90]}"
                    for key in a if a[key] != b.get(key))


def moment(text):
    return datetime.datetime.fromisoformat(text)


def hatched(hatch):
    # a date without an hour is the first chore of its day: that of the first fill listed, or 07:00
    at = moment(hatch["date"])
    fills = [f["at"] for stage in hatch["stages"] for key in ("hoppers", "drinkers") for f in (stage[key] or {"fills": []})["fills"]]
    hour = moment(min(fills)).time() if fills and len(hatch["date"]) == 10 else datetime.time(7)
    return at if len(hatch["date"]) > 10 else datetime.datetime.combine(at.date(), hour)


def at_age(hatch, age_d):
    """To the minute below, as the program writes it."""
    at = hatched(hatch) + datetime.timedelta(days=age_d, microseconds=100)
    return at.replace(second=0, microsecond=0)


def every_time(event):
    """The moments of an event: its occurrences, or the hours that a day of several lists."""
    hours = re.match(r"At ([\d:, and]+)\.\n", event["description"]) if event["what"] in ("Fill", "Water") else None
    listed = re.findall(r"\d\d:\d\d", hours[1]) if hours else []
    if event["what"] == "Mix":
        listed = re.findall(r"^(\d\d:\d\d): ", event["description"], re.M)
    day = event["start"].date()
    return [datetime.datetime.combine(day, datetime.time.fromisoformat(h)) for h in listed] or event["occurrences"]


def times(events, what, hatch):
    """Every moment of a hatch's events of one category, told by the end of their summaries."""
    mine = [e for e in events if e["what"] == what and e["summary"].endswith(f": {hatch['name']}")]
    return sorted(at for event in mine for at in every_time(event))


def hatch_findings(hatch, events, brooding):
    at = lambda rows: sorted(moment(row.get("do_at", row["at"])) for row in rows)
    fills = [f for s in hatch["stages"] for f in (s["hoppers"] or {"fills": []})["fills"]]
    hoppers, chores = at(fills), {moment(f["at"]): moment(f.get("do_at", f["at"])) for f in fills}
    changes = [chores.get(age, age) for age in (at_age(hatch, feed["from_d"]) for feed in hatch["feeds"][1:])]
    batches = at(hatch["mix"]["batches"]) if hatch["mix"] else []
    drinkers = at([f for s in hatch["stages"] for f in (s["drinkers"] or {"fills": []})["fills"]]) if hatch["drinkers"] else []
    first = hatch["feeds"][0]["from_d"]
    wanted = {"Feed": changes, "Fill": [t for t in hoppers if t not in changes], "Mix": batches,
              "Water": [t for t in drinkers if t not in batches], "Hatch": [hatched(hatch)] if first == 0 else [],
              "Brooder": [at_age(hatch, d) for d in brooding if first <= d < hatch["feeds"][-1]["to_d"]]}
    for what, moments in wanted.items():
        found = times(events, what, hatch)
        if found != moments:
            yield f"{what} of {hatch['name']!r}: {len(found)}, planned {len(moments)}; " \
                  f"only in one: {sorted(set(found) ^ set(moments))[:4]}"


def purchases(plan):
    """The day before each feed with something to buy is needed; so a supplement's first batch, and the first house
    that bedding or disinfectant readies. A plan that begins among birds asks for nothing on a day that has been."""
    begun = [at_age(h, h["feeds"][0]["from_d"]) for h in plan["hatches"] if h["feeds"][0]["from_d"] > 0]
    earliest = min(begun).replace(hour=0, minute=0) if begun else datetime.datetime.min
    day = lambda needed: max(moment(needed).replace(hour=0, minute=0) - DAY, earliest)
    for feed in plan["buy"]:
        more = feed["put_in_kg"] + feed["stays_behind_kg"] + feed["spare_kg"] - feed["on_hand_kg"] > 0
        if feed["bags_p95"] if feed["bags_p95"] is not None else more:
            yield day(feed["first_needed"])
    for bought in plan["supplements"]:
        yield day(min(b["at"] for h in plan["hatches"] for m in h["mixes"]
                      if m["supplement"] == bought["supplement"] for b in m["batches"]))
    for one in plan["bedding"] + plan["disinfectant"]:
        yield day(one["first_needed"])


def plan_findings(question, events):
    plan, kinds = question.plan, {}
    for hatch in plan["hatches"]:
        kind = hatch["kind"]
        if kind not in kinds:
            rows = json.loads(question.run("table", kind, "--json"))["brooding"]["rows"]
            kinds[kind] = [row["first_day"] - 1 for row in rows]
        yield from hatch_findings(hatch, events, kinds[kind])
    bought = sorted(e["start"] for e in events if e["what"] == "Buy")
    if bought != sorted(purchases(plan)):
        yield f"Buy: {bought}, planned {sorted(purchases(plan))}"


def form_findings(events):
    uids = [e["uid"] for e in events]
    if len(set(uids)) != len(uids) or not all(uids):
        yield "two events have one UID, or one has none"
    for event in events:
        midnight = event["start"].time() == datetime.time()
        if event["all_day"] != midnight or not event["floating"]:
            yield f"{event['summary']}: a whole day is one at midnight, and hours float"
        if event["stamp"] != "20270301T123400Z" or event["sequence"] != MINUTES:
            yield f"{event['summary']}: stamped {event['stamp']}, {event['sequence']}"
        before = "PT0S" if event["what"] == "Withdrawal" else "-PT2H"  # never before what must not be early
        if event["alarms"] != [{"action": "DISPLAY", "trigger": before}]:
            yield f"{event['summary']}: alarms {event['alarms']}"


def findings(question, data, packages, folder):
    file = pathlib.Path(folder) / "check.ics"
    file.write_bytes(data)
    found = list(octets(data))
    one, faults = libical.read(data)
    other = by_ical_js(packages, [file])[0]
    found += faults + ([] if other else ["ical.js refuses it"])
    if one and other:
        found += [*unlike(one, other), *form_findings(one["events"]), *plan_findings(question, one["events"])]
    return found, one


def names_findings(question, read):
    """Names of farm and hatches come back as they were written."""
    farm, hatch = NAMES
    if read["name"] != farm:
        yield f"the farm is called {read['name']!r}"
    if not any(e["summary"] == "Hatch: " + hatch for e in read["events"]):
        yield f"no hatch {hatch!r}"


def withdrawal_findings(name, read):
    """Grower is fed from 3 to 6 weeks in the farms of farms.py; 5 d later is 22 May for a hatch of 5 April,
    at the first chore of that day."""
    over = [e for e in read["events"] if e["what"] == "Withdrawal"]
    wanted = [datetime.datetime(2027, 5, 22, 7)] if name == "withdrawal.toml" else []
    if [e["start"] for e in over] != wanted:
        yield f"withdrawals end {[e['start'] for e in over]}, not {wanted}"
    for event in over:
        words = " ".join((event["summary"] + " " + event["description"]).split())
        if not words.startswith("Not before") or not words.endswith("label, your veterinarian and local law decide."):
            yield f"a withdrawal says {words!r}"


def flags_findings(question):
    for flag, alarms in (("none", []), ("0 h", ["PT0S"]), ("90 min", ["-PT90M"]), ("1 d", ["-P1D"])):
        read, _ = libical.read(question.calendar("--alarm", flag))
        said = {a["trigger"] for e in read["events"] for a in e["alarms"]}
        if said != set(alarms):
            yield f"--alarm {flag!r}: {said}"
    if question.calendar() != question.ics:
        yield "the same question gave another file"


def replaced(old, new, count=1):
    return lambda data: re.sub(old, new, data, count=count, flags=re.S)


SPOILINGS = {
    "a line feed alone": replaced(rb"\r\n", b"\n"),
    "an unfolded line": replaced(rb"\r\n ", b"", 0),
    "a broken character": lambda data: data.replace("\U0001f425".encode(), "\U0001f425".encode()[:2] + b"\r\n " +
                                                    "\U0001f425".encode()[2:], 1),
    "an end left out": replaced(rb"END:VEVENT\r\n", b""),
    "no UID": replaced(rb"UID:[^\r]*\r\n", b""),
    "one UID twice": lambda data: data.replace(*re.findall(rb"UID:\w+", data)[1::-1], 1),
    "no DTSTAMP": replaced(rb"DTSTAMP:[^\r]*\r\n", b""),
    "a moment that is none": replaced(rb"DTSTART:\d{8}T", b"DTSTART:20271399T"),
    "a minute later": replaced(rb"(DTSTART:\d{8}T\d\d)\d\d(\d\d\r\nSUMMARY:Hatch)", rb"\g<1>59\2"),
    "hours in UTC": replaced(rb"(DTSTART:\d{8}T\d{6})", rb"\1Z"),
    "a recurrence fewer": replaced(rb";COUNT=(\d)", rb";COUNT=1\1"),
    "another rhythm": replaced(rb"INTERVAL=\d", b"INTERVAL=7"),
    "a rhythm that is none": replaced(rb"FREQ=DAILY", b"FREQ=OFTEN"),
    "an event left out": replaced(rb"BEGIN:VEVENT(?:(?!END:VEVENT).)*CATEGORIES:Fill.*?END:VEVENT\r\n", b""),
    "a bare comma": replaced(rb"(SUMMARY:Hatch: [^\r]*)\\,", rb"\1,"),
    "no alarm": replaced(rb"BEGIN:VALARM.*?END:VALARM\r\n", b""),
    "another alarm": replaced(rb"-PT2H", b"-PT3H"),
    "another name": replaced(rb"SUMMARY:Hatch: A", b"SUMMARY:Hatch: B"),
}


def self_test(question, packages, folder):
    """What is not noticed of the spoilings."""
    for name, spoil in SPOILINGS.items():
        spoilt = spoil(question.ics)
        if spoilt == question.ics:
            yield f"nothing to spoil: {name}"
            continue
        found, read = findings(question, spoilt, packages, folder)
        if not found and not (read and list(names_findings(question, read))):
            yield f"not noticed: {name}"


def main():
    program, rations, packages = (pathlib.Path(word).resolve() for word in sys.argv[1:4])
    shutil.copy(pathlib.Path(__file__).parent / "parse.mjs", packages)
    bad, events = [], 0
    with tempfile.TemporaryDirectory() as folder:
        for name, text in FARMS.items():
            (pathlib.Path(folder) / f"{name}.toml").write_text(text, newline="")
        if "--self-test" in sys.argv:
            bad = list(self_test(Question(program, folder, ["names.toml"]), packages, folder))
            print("\n".join(bad + [f"{len(SPOILINGS)} spoilings, {len(bad)} not noticed"]))
            return 1 if bad else 0
        demo = [str(rations / "farms" / f"{name}.toml") for name in ("saltgrass", "backyard")]
        questions = [[demo[0]], [demo[1]], [demo[0], "--from", "2027-05-12T06:00", "--to", "2027-06-20"],
                     [demo[0], "--units", "metric"], *([f"{name}.toml"] for name in FARMS),
                     ["--kind", "bobwhite", "--chicks", "90", "--date", "2027-04-05", "--until", "8 wk", "--hopper",
                      "12 L", "--drinker", "1 gal", "--rate", "1 tsp per gal", "--days", "3"]]
        for words in questions:
            question = Question(program, folder, words)
            found, read = findings(question, question.ics, packages, folder)
            if words == ["names.toml"]:
                found += names_findings(question, read)
            if read and words[0].removesuffix(".toml") in FARMS:
                found += withdrawal_findings(words[0], read)
            if words == questions[0]:
                found += flags_findings(question)
            events += len(read["events"]) if read else 0
            bad += [f"{words}: {one}" for one in found]
    print("\n".join(bad[:40] + [f"{len(questions)} calendars, {events} events, {len(bad)} findings"]))
    return 1 if bad or not events else 0


if __name__ == "__main__":
    sys.exit(main())
