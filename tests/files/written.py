#!/usr/bin/python3
"""What commands that write files do to those files, and what they say.   written.py PROGRAM [COUNT]

Nothing is lost: no input, no file of another's, none half-written whatever signal comes and whoever else writes. What is
done is done once: a command that cannot print its answer still ends with 0 and says so."""
import os
import pathlib
import random
import signal
import subprocess
import sys
import tempfile
import time

FARM = """[farm]
name = "Invented meadow"
[feed.a]
protein = "20 %"
[drinker.d]
volume = "1 gal"
change_every = "6 h"
[[hatch]]
kind = "coturnix"
date = 2027-01-01
chicks = 30
feeding = [{ feed = "a", from = "0 d" }]
until = "40 wk"
drinker = "d"
"""
VISIT = ["--now", "2027-12-31", "--at", "2027-01-03T06:00", "--died", "1"]


class Place:
    """An empty folder with a farm file, and the program run in it."""

    def __init__(self, program, folder):
        self.program, self.folder = program, pathlib.Path(folder)
        (self.folder / "farm.toml").write_text(FARM)
        (self.folder / "big.toml").write_text(FARM + "every = \"1 d\"\ntimes = 60\n")

    def run(self, *words, **more):
        more.setdefault("stdout", subprocess.PIPE)
        return subprocess.run([self.program, *words], cwd=self.folder, stderr=subprocess.PIPE, timeout=120, **more)

    def names(self):
        return sorted(path.name for path in self.folder.iterdir())

    def entries(self):
        return self.run("diary", "export", "farm.toml").stdout.count(b"\n") - 1


def unprintable(place):
    """Each way of not being able to print, for each command that writes."""
    full = open("/dev/full", "w")
    reader, writer = os.pipe()
    os.close(reader)
    csv = "at,hatch,what,amount,unit,note\r\n2027-01-04T06:00,hatch 1,died,1,birds,\r\n"
    (place.folder / "in.csv").write_text(csv)
    for number, out in enumerate((full, writer)):
        place.run("diary", "add", "farm.toml", *VISIT)
        before = place.entries()
        for words, change, said in (
                (["diary", "add", "farm.toml", *VISIT], 1, "the visit is written in farm.diary"),
                (["diary", "undo", "farm.toml"], -1, "the last visit is taken out of farm.diary"),
                (["diary", "undo", "farm.toml", "--json"], -1, "the last visit is taken out of farm.diary"),
                (["diary", "import", "farm.toml", "in.csv"], 1 - number, "in.csv is in farm.diary"),
                (["diary", "export", "farm.toml", "-o", f"out{number}.csv"], 0, f"out{number}.csv is written"),
                (["new", f"new{number}.toml"], 0, f"new{number}.toml is written"),
                (["sheet", "farm.toml", "-o", f"s{number}.html"], 0, f"s{number}.html is written"),
                (["calendar", "farm.toml", "-o", f"c{number}.ics"], 0, f"c{number}.ics is written")):
            ran = place.run(*words, stdout=out)
            expected = f"cropful: {said}; only the answer could not be printed, so do not do it again\n"
            assert (ran.returncode, ran.stderr.decode()) == (0, expected), (words, ran)
            now = place.entries()
            assert now - before == change, (words, before, now)
            before = now
        for name in (f"out{number}.csv", f"new{number}.toml", f"s{number}.html", f"c{number}.ics"):
            assert (place.folder / name).stat().st_size > 0, name
    ran = place.run("plan", "farm.toml", stdout=full)
    assert ran.returncode == 2 and b"cannot be written to standard output" in ran.stderr, ran
    print("what is written is said to be, also where nothing can be printed")


def inputs(place):
    """Neither the farm file, nor its diary, nor a file of --rations is written over, by any name."""
    tables = place.folder / "tables" / "birds"
    tables.mkdir(parents=True)
    kind = place.run("table", "coturnix", "--json").stdout
    (tables / "other.txt").write_bytes(kind)
    os.link(place.folder / "farm.toml", place.folder / "hard.html")
    place.run("diary", "add", "farm.toml", *VISIT)
    before = {name: (place.folder / name).read_bytes() for name in ("farm.toml", "farm.diary")}
    for command in ("sheet", "calendar"):
        for name in ("farm.toml", "./farm.toml", "hard.html", "farm.diary", str(place.folder / "farm.diary"),
                     "farm.diary-journal", "tables/../farm.toml"):
            ran = place.run(command, "farm.toml", "-o", name, "--force")
            assert ran.returncode == 2 and b"is left as it is; choose another name" in ran.stderr, (name, ran)
    (place.folder / "farm.diary").unlink()
    for words in (["sheet", "farm.toml", "-o", "farm.diary"], ["diary", "export", "farm.toml", "-o", "farm.diary"],
                  ["calendar", "farm.toml", "-o", str(place.folder / "farm.diary")]):
        ran = place.run(*words)
        assert ran.returncode == 2 and b"is the diary of the farm" in ran.stderr, ran
    assert not (place.folder / "farm.diary").exists()
    assert (place.folder / "farm.toml").read_bytes() == before["farm.toml"]
    print("no input is written over")


def signals(place, count, rng):
    """The old file or the new one, and nothing beside it, whenever a signal comes."""
    out = place.folder / "x.ics"
    words = [place.program, "calendar", "big.toml", "-o", "x.ics", "--force", "--stamp", "2027-01-01"]
    began = time.monotonic()
    subprocess.run(words, cwd=place.folder, stdout=subprocess.DEVNULL, check=True)
    whole, takes, names, ends = out.read_bytes(), time.monotonic() - began, place.names(), {}
    for number in range(count):
        out.write_text("OLD")
        sent = rng.choice((signal.SIGINT, signal.SIGTERM, signal.SIGHUP))
        process = subprocess.Popen(words, cwd=place.folder, stdout=subprocess.DEVNULL)
        until = time.monotonic() + 1.2 * takes
        while process.poll() is None and not any(n.endswith(".part") for n in os.listdir(place.folder)):
            if time.monotonic() > until:
                break
        process.send_signal(sent)
        status = process.wait()
        assert out.read_bytes() in (b"OLD", whole), f"{sent}: a file of {out.stat().st_size} bytes"
        assert place.names() == names, (sent, set(place.names()) - set(names))
        assert status in (0, -sent), status
        ends[out.read_bytes() == whole] = ends.get(out.read_bytes() == whole, 0) + 1
    print(f"{count} signals: {ends.get(False, 0)} left the old file, {ends.get(True, 0)} the new one, none a part")


def writers(place, count, rng):
    """Two at once: a file of one of them, whole; without --force one of them is refused."""
    (place.folder / "b.toml").write_text(FARM.replace("Invented", "Other"))
    commands = [[place.program, "calendar", f, "-o", "z.ics", "--stamp", "2027-01-01"] for f in ("farm.toml", "b.toml")]
    wholes = [place.run(*c[1:3], "--stamp", "2027-01-01").stdout for c in commands]
    assert wholes[0] != wholes[1]
    for number in range(count):
        (place.folder / "z.ics").unlink(missing_ok=True)
        force = ["--force"] if number % 2 else []
        both = []
        for command in rng.sample(commands, 2):
            both.append(subprocess.Popen(command + force, cwd=place.folder, stdout=subprocess.DEVNULL,
                                         stderr=subprocess.PIPE))
            time.sleep(rng.uniform(0, 0.003))
        for process in both:
            process.communicate()
        statuses = sorted(process.returncode for process in both)
        assert (place.folder / "z.ics").read_bytes() in wholes, "two files in one"
        assert statuses == ([0, 0] if force else [0, 2]), statuses
        assert not [n for n in place.names() if n.endswith(".part")], place.names()
    print(f"{count} pairs of writers: each file is one's, whole")


def main():
    program, count = str(pathlib.Path(sys.argv[1]).resolve()), int(sys.argv[2]) if len(sys.argv) > 2 else 40
    rng = random.Random(1187)
    for check in (unprintable, inputs, lambda p: signals(p, count, rng), lambda p: writers(p, count, rng)):
        with tempfile.TemporaryDirectory(prefix="cropful-written-") as folder:
            check(Place(program, folder))


if __name__ == "__main__":
    main()
