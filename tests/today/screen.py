#!/usr/bin/python3
"""What fits a grower's screen and a calendar, against the bars of the issue.   screen.py PROGRAM RATIONS [--every N]

`today` on rations/farms/saltgrass.toml fits 24 lines of 80 columns on the days of most deeds, or with --every N at
05:00 and at 14:00 of every Nth day from the first on which a house is made ready to the last on which birds are there;
and it names every number that `today --json` gives once. A calendar of 8 monthly hatches over a year holds at most 900
events, none between 22:00 and 05:00, as the standard's own words are counted."""
import collections
import datetime as dt
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

from deeds import ask, moment

LINES, COLUMNS, EVENTS = 24, 80, 900
HOURS = (5, 14)
BUSIEST = 4  # days: of each a page is two plans, seconds of work
SALTGRASS = "saltgrass.toml"


def run(program, *words, folder=None):
    environment = {**os.environ, "COLUMNS": str(COLUMNS)}
    done = subprocess.run([program, *map(str, words)], cwd=folder, capture_output=True, text=True, env=environment,
                          timeout=120)
    if done.returncode not in (0, 1):
        raise SystemExit(f"{words} ended with {done.returncode}: {done.stderr}")
    return done.stdout if done.returncode == 0 else ""


def numbers_in(text):
    """The numbers that stand before the deeds of a page: "1-3, 7" is four."""
    for line in text.split("\n"):
        found = re.match(r" {1,8}(\d[\d, -]*)  \S", line)
        for part in re.split(r", ?", found[1].strip()) if found else []:
            first, _, last = part.partition("-")
            yield from range(int(first), int(last or first) + 1)


def page_findings(text, at):
    lines = text.rstrip("\n").split("\n")
    if len(lines) > LINES:
        yield f"{at}: {len(lines)} lines"
    wide = [line for line in lines if len(line) > COLUMNS]
    if wide:
        yield f"{at}: {len(wide[0])} columns in {wide[0]!r}"


def every_day(program, folder, step):
    """From the first house that is made ready to the last birds."""
    plan = ask(program, "plan", SALTGRASS, "--from", "start", folder=folder)
    season = ask(program, "season", SALTGRASS, "--from", "start", folder=folder)
    day = min(moment(stay["from"]) for stay in season["brooders"]) - dt.timedelta(days=2)
    ends = max(moment(h["date"]) + dt.timedelta(days=h["feeds"][-1]["to_d"]) for h in plan["hatches"])
    while day.date() <= ends.date():
        yield from (day.replace(hour=hour, minute=0) for hour in HOURS)
        day += dt.timedelta(days=step)


def busiest(program, folder):
    """The mornings of the days of most deeds, and an afternoon."""
    deeds = collections.Counter()
    for event in ask(program, "calendar", SALTGRASS, folder=folder)["events"]:
        day = moment(event["at"]).replace(hour=HOURS[0], minute=0)
        deeds[day] += sum(not deed.startswith("look/") for deed in event["deeds"])
    days = [day for day, _ in deeds.most_common(BUSIEST)]
    return [*days, days[0].replace(hour=HOURS[1])]


def pages(program, folder, moments):
    """Findings of the pages at some moments, how many there were, and the lines of the longest."""
    found, shown, longest = [], 0, 0
    for at in moments:
        now = at.isoformat(timespec="minutes")
        text = run(program, "today", SALTGRASS, "--now", now, folder=folder)
        found += page_findings(text, now)
        if shown == 0:
            found += number_findings(text, ask(program, "today", SALTGRASS, "--now", now, folder=folder), now)
        shown, longest = shown + bool(text), max(longest, len(text.rstrip("\n").split("\n")))
    return found, shown, longest


def number_findings(text, today, at):
    """The page's numbers are those of its JSON, each once."""
    wanted = collections.Counter(deed["n"] for chore in today["chores"] for deed in chore["deeds"])
    coming = text.split("\nCOMING")[0]
    if collections.Counter(numbers_in(coming)) != wanted:
        yield f"{at}: numbers {sorted(numbers_in(coming))}, in JSON {sorted(wanted)}"


def monthly(text):
    """Eight hatches a month apart, of the first hatch of the farm and its houses."""
    head, first = text.split("[[hatch]]")[:2]
    head = re.sub(r"(\[house\.\w+\][^\[]*?count = )\d+", r"\g<1>40", head)
    first = re.sub(r"name = .*", 'name = "Monthly"', first, count=1)
    return head + "[[hatch]]" + first.rstrip() + '\nevery = "30 d"\ntimes = 8\n'


def calendar_findings(program, folder):
    text = monthly((pathlib.Path(folder) / SALTGRASS).read_text())
    (pathlib.Path(folder) / "monthly.toml").write_text(text)
    data = run(program, "calendar", "monthly.toml", "--stamp", "2027-01-01", "--to", "2028-04-01", folder=folder)
    starts = re.findall(r"^DTSTART:(\d{8}T\d{6})\r?$", data, re.M)
    found, days = [], {start[:8] for start in starts}
    if not 300 < len(starts) <= EVENTS or data.count("BEGIN:VEVENT") != len(starts) or "RRULE" in data:
        found.append(f"{len(starts)} events of 8 monthly hatches")
    if len(days) < 300:
        found.append(f"{len(days)} days with events: too few to be a year")
    found += [f"an event at {start}" for start in starts if not 5 <= int(start[9:11]) < 22]
    return found, len(starts)


def main():
    program, rations = (pathlib.Path(word).resolve() for word in sys.argv[1:3])
    every = int(sys.argv[4]) if sys.argv[3:4] == ["--every"] else None
    with tempfile.TemporaryDirectory() as folder:
        shutil.copy(rations / "farms" / SALTGRASS, folder)
        moments = every_day(program, folder, every) if every else busiest(program, folder)
        bad, shown, longest = pages(program, folder, moments)
        found, events = calendar_findings(program, folder)
        bad += found
    print("\n".join(bad[:40] + [f"{shown} pages of at most {longest} lines, {events} events, {len(bad)} findings"]))
    return 1 if bad or shown < BUSIEST else 0


if __name__ == "__main__":
    sys.exit(main())
