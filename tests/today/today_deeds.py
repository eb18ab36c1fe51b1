#!/usr/bin/python3
"""`today` against the deeds of the plan, and ticks in the diary.
today_deeds.py PROGRAM RATIONS [--farms N] [--self-test]

On random farms (barns.py) at random moments `today --json` must list what deeds.py reads anew out of `plan --json
--now` of the same moment: every deed of the next 24 hours with its houses, amount, end and reason, nothing else, and
nothing from 22:00 to 05:00; with a diary also what was due and is not written. On one farm in twenty deeds are ticked
(DESIGN 8): numbers hold for the day, the diary holds what was ticked or typed, `undo` takes it back, ticks teach
nothing. --self-test spoils answers and wants each spoiling noticed."""
import argparse
import copy
import csv
import datetime as dt
import io
import pathlib
import random
import subprocess
import sys
import tempfile

import ticks
from barns import Barn
from deeds import ask, kinds_of, moment, reading

DAY = dt.timedelta(days=1)
SEED = 8_000
NEEDS_TICK = ("move", "ready", "clean", "remove", "warmth", "withdrawal-ends", "change-feed", "stir")
WHY = {"look": {"every-chore"}, "top-up": {"runs-out", "too-small"}, "change-water": {"water-is-due", "too-small"},
       "stir": {"course"}, "change-feed": {"of-age", "too-small"}, "warmth": {"of-age"}, "move": {"of-age", "hatching"},
       "ready": {"birds-come"}, "clean": {"birds-left"}, "remove": {"planned", "last-day"},
       "withdrawal-ends": {"withdrawal"}, "fetch": {"needed"}}


def listed(today):
    return [{**deed, "at": moment(chore["at"])} for chore in today["chores"] for deed in chore["deeds"]]


def key(deed):
    return (deed["deed"], deed["hatch"] or "", deed["house"] or "", tuple(deed["numbers"]), deed["vessel"] or "",
            deed["what"] or "")


def keys(deed):
    """What a deed of the plan may be called."""
    what = "" if deed.work in ("clean", "ready", "look", "warmth") else deed.what
    return [(work, deed.hatch, deed.house, deed.numbers, deed.vessel, what)
            for work in (deed.work, *(w for w in deed.works if w in WHY))]


def close(a, b, share=1e-9):
    return a is not None and b is not None and abs(a - b) <= share * max(1e-9, abs(b))


def wrong(said, deed):
    """What `today` says otherwise than the plan."""
    if deed.work in ("top-up", "change-water", "change-feed", "stir", "fetch") and deed.amount is not None:
        unit = "amount_kg" if deed.what and deed.work != "stir" else "amount_l"
        if not close(said.get(unit), deed.amount):
            yield f"{unit} {said.get(unit)}, planned {deed.amount}"
    if deed.birds is not None and not close(said.get("birds"), deed.birds, 0.01):
        yield f"birds {said.get('birds')}, planned {deed.birds}"
    count = deed.packs or deed.vessels or (deed.houses if deed.house else None)
    if said.get("count") != count:
        yield f"count {said.get('count')}, planned {count}"
    if deed.until and deed.work != "fetch":
        ends = said["until"] and moment(said["until"])
        if not ends or abs(ends - deed.until) > dt.timedelta(minutes=1):
            yield f"until {said['until']}, planned {deed.until}"
    if said["why"] not in WHY[said["deed"]]:
        yield f"why {said['why']}"
    if not said["words"]:
        yield "no words"


def differences(today, now, ahead, overdue):
    """Between what `today` lists and what it must list: of the day ahead, and overdue (a list of deeds)."""
    found, wanted = listed(today), list(ahead) + list(overdue)
    numbers = [deed["n"] for deed in found]
    if len(set(numbers)) != len(numbers) or any(n < 1 for n in numbers):
        yield f"numbers {numbers}"
    if (today["now"], today["until"]) != tuple(m.isoformat(timespec="minutes") for m in (now, now + DAY)):
        yield f"from {today['now']} to {today['until']}"
    if [deed["at"] for deed in found] != sorted(deed["at"] for deed in found):
        yield "the chores are not in order of time"
    for said in found:
        if not 5 <= said["at"].hour < 22:
            yield f"{said['words']!r} at {said['at']}"
        late = said["overdue"]
        same = [deed for deed in wanted if key(said) in keys(deed) and (deed in overdue) == late and
                (deed.at == said["at"] or late and said["at"] <= deed.at)]
        if not same:
            yield f"nothing in the plan asks at {said['at']}{' (overdue)' * late} for {key(said)}: {said['words']!r}"
            continue
        wanted.remove(same[0])
        yield from (f"{said['at']} {said['words']!r}: {words}" for words in wrong(said, same[0]))
    yield from (f"not said: {deed.at} {deed.said()}" for deed in wanted)


class Trial:
    """A random farm in a folder of its own, asked at a moment."""

    def __init__(self, program, rations, kinds, seed, folder):
        self.program, self.rations, self.kinds = program, rations, kinds
        self.rng, self.barn = random.Random(-seed), Barn(seed)
        self.now, self.folder = self.barn.moment(), pathlib.Path(folder)
        self.file = self.folder / "farm.toml"
        self.file.write_text(self.barn.text)
        for diary in self.folder.glob("farm.diary*"):
            diary.unlink()

    def ask(self, command, *words):
        return ask(self.program, command, self.file, *words)

    def run(self, *words):
        """Exit status and what is printed."""
        done = subprocess.run([self.program, *map(str, words)], capture_output=True, text=True, timeout=120)
        return done.returncode, done.stdout + done.stderr

    def today(self, now, *words):
        return self.ask("today", "--now", now.isoformat(timespec="minutes"), *words)

    def deeds(self, now, since, until):
        words = ["--now", now.isoformat(timespec="minutes")]
        found = reading(self.program, self.file, self.rations, words, since, until, kinds=self.kinds)
        return found.deeds if found else None

    def exported(self):
        """The rows of the diary, through Python's csv."""
        status, text = self.run("diary", "export", self.file)
        return list(csv.DictReader(io.StringIO(text))) if status == 0 else []

    def learned(self):
        return ask(self.program, "diary", "show", self.file)["learned"]

    def write_a_visit(self, at):
        """What somebody saw in the evening: vessels full, or a death."""
        for name, date, long in self.barn.hatches:
            if not date < at.date() < date + dt.timedelta(days=long - 1):
                continue
            words = ["diary", "add", self.file, "--hatch", name, "--at", at.isoformat(timespec="minutes"),
                     "--now", at.isoformat(timespec="minutes")]
            for more in (["--feed", "10 g"], ["--water", "20 mL"], ["--died", "1"]):
                if self.rng.random() < 0.7:
                    self.run(*words, *more)     # refused where the hatch has no such vessel


def plain_findings(trial, keep):
    """Without a diary: everything before now is taken as done."""
    today, ahead = trial.today(trial.now), trial.deeds(trial.now, trial.now, trial.now + DAY)
    if today is None or ahead is None:
        if today is not ahead:
            yield f"an answer from {'plan' if ahead else 'today'} alone"
        return
    keep.append((today, trial.now, ahead))
    yield from differences(today, trial.now, ahead, [])


def diary_findings(trial):
    """A visit in the evening before, nothing written since."""
    morning = dt.datetime.combine(trial.now.date(), dt.time())
    trial.write_a_visit(morning - dt.timedelta(hours=5))
    if not trial.exported():
        return
    today, ahead = trial.today(trial.now), trial.deeds(trial.now, trial.now - 3 * DAY, trial.now + DAY)
    missed = trial.deeds(morning, morning, trial.now)
    if today is None or ahead is None:
        return
    late = [deed for deed in ahead if deed.at < trial.now and deed.vessel]
    late += [deed for deed in missed or [] if deed.work in NEEDS_TICK and not deed.vessel]
    yield from differences(today, trial.now, [deed for deed in ahead if deed.at >= trial.now], late)


def spoilt(today):
    """What `today` said, spoilt in one place each."""
    places = [(i, j) for i, chore in enumerate(today["chores"]) for j in range(len(chore["deeds"]))]
    for i, j in places:
        deed = today["chores"][i]["deeds"][j]
        changes = [("deed", "ready" if deed["deed"] == "look" else "look"), ("hatch", "Nobody"), ("overdue", True),
                   ("numbers", [*deed["numbers"], 99]), ("count", 77), ("why", "mood"), ("words", "")]
        changes += [(unit, deed[unit] * 1.001) for unit in ("amount_kg", "amount_l") if deed.get(unit)]
        changes += [("until", "2030-01-01T06:00")] if deed["until"] and deed["deed"] != "fetch" else []
        changes += [("n", places and today["chores"][0]["deeds"][0]["n"])] if (i, j) != (0, 0) else [("n", 0)]
        for name, value in changes:
            answer = copy.deepcopy(today)
            answer["chores"][i]["deeds"][j][name] = value
            yield f"{name} of {deed['id']}", answer
        answer = copy.deepcopy(today)
        del answer["chores"][i]["deeds"][j]
        yield f"without {deed['id']}", answer
    for i, chore in enumerate(today["chores"]):
        answer = copy.deepcopy(today)
        answer["chores"][i]["at"] = chore["at"][:11] + "23:00"
        yield f"at night {chore['at']}", answer


def self_test(kept):
    """Of the answers in which nothing was found, spoilings that are not noticed."""
    tried = 0
    for today, now, ahead in kept[:25]:
        if list(differences(today, now, ahead, [])):
            continue
        for words, answer in spoilt(today):
            tried += 1
            if not list(differences(answer, now, ahead, [])):
                yield f"not noticed: {words}"
    if tried < 100:
        yield f"{tried} spoilings only"


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("program", type=lambda word: pathlib.Path(word).resolve())
    parser.add_argument("rations")
    parser.add_argument("--farms", type=int, default=40)
    parser.add_argument("--first", type=int, default=SEED, help="number of the first farm")
    parser.add_argument("--self-test", action="store_true")
    options = parser.parse_args()
    kinds, bad, kept, ticked = kinds_of(options.rations), [], [], 0
    with tempfile.TemporaryDirectory() as folder:
        for number in range(options.first, options.first + options.farms):
            trial = Trial(options.program, options.rations, kinds, number, folder)
            found = list(plain_findings(trial, kept))
            if number % 4 == 0 and not options.self_test:
                found += [f"with a diary: {one}" for one in diary_findings(trial)]
            if number % 20 == 0 and not options.self_test:
                trial = Trial(options.program, options.rations, kinds, number, folder)
                done = ticks.findings(trial, listed)
                ticked += done.tried
                found += [f"ticks: {one}" for one in done.found]
            bad += [f"farm {number}, {trial.now}: {one}" for one in found]
    if options.self_test:
        bad = list(self_test(kept))
    said = sum(len(listed(today)) for today, _, _ in kept)
    print("\n".join(bad[:80] + [f"{len(kept)} answers, {said} deeds, {ticked} ticks, {len(bad)} findings"]))
    return 1 if bad or not said else 0


if __name__ == "__main__":
    sys.exit(main())
