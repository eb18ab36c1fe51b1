#!/usr/bin/python3
"""Faults of the machine, put in by strace: each call that writes fails in turn, and the program is killed at every so many
calls.   machine.py PROGRAM [CALLS]

After each: a command that ended with 0 has done all of it, one that did not names the file and has done none of it; what a
diary had confirmed is there; a file that was there is whole, the old or the new."""
import json
import pathlib
import shutil
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "diary"))
from barn import Barn  # noqa: E402

NOW = ["--now", "2027-05-01T12:00"]
VISIT = ["diary", "add", "farm.toml", *NOW, "--at", "2027-04-20T06:00", "--died", "3", "--note", "new"]
EDIT = ["diary", "edit", "farm.toml", *NOW, "1", "--note", "mended"]
DONE = ["diary", "done", "farm.toml", "all", "--now", "2027-04-25T07:30"]
IMPORT = ["diary", "import", "farm.toml", "more.csv"]
SHEET = ["sheet", "farm.toml", *NOW, "-o", "out", "--force"]
CALENDAR = ["calendar", "farm.toml", *NOW, "--stamp", "2027-01-01", "-o", "out", "--force"]
NEW = ["new", "fresh.toml"]
# what fails, and as what: a full disk, one that cannot be read, a folder that takes nothing
FAILURES = [("write", "ENOSPC"), ("pwrite64", "ENOSPC"), ("fsync", "EIO"), ("fdatasync", "EIO"), ("ftruncate", "EIO"),
            ("rename", "EACCES"), ("renameat", "EACCES"), ("renameat2", "EACCES"), ("unlink", "EACCES"), ("link", "EACCES"),
            ("linkat", "EACCES"), ("mkdir", "EACCES"), ("fchmod", "EPERM"), ("fchown", "EPERM")]


class Place:
    """A farm whose diary has two entries, made once and copied for each try."""

    def __init__(self, program, folder):
        self.program, self.made, self.folder = program, folder / "made", folder / "tried"
        barn = Barn(program, self.made)
        barn.done("add", *NOW, "--at", "2027-04-10T06:00", "--died", "2", "--note", "one")
        barn.done("add", *NOW, "--at", "2027-04-11T06:00", "--feed", "12 lb", "--note", "two")
        (self.made / "more.csv").write_text(
            "at,hatch,what,amount,unit,note\n2027-04-15T06:00,April,died,1,birds,new\n"
            "2027-04-16T06:00,April,died,1,birds,new\n")
        (self.made / "out").write_text("what was there\n" * 1000)
        self.before = self.entries(self.made)

    def entries(self, folder):
        ran = subprocess.run([self.program, "diary", "show", "farm.toml", "--json"], cwd=folder, capture_output=True)
        assert ran.returncode == 0, f"the diary is not read any more: {ran.stderr.decode()}"
        return [(one["at"], one["what"], one["note"]) for one in json.loads(ran.stdout)["entries"]]

    def run(self, words, fault=None):
        """What is left after a command, and whether the fault was met."""
        shutil.rmtree(self.folder, ignore_errors=True)
        shutil.copytree(self.made, self.folder)
        traced = ["strace", "-qq", "-f", "-o", str(self.folder.parent / "trace"), *fault] if fault else []
        ran = subprocess.run([*traced, self.program, *words], cwd=self.folder, capture_output=True, timeout=60)
        met = fault and any(sign in (self.folder.parent / "trace").read_text(errors="replace")
                            for sign in ("(INJECTED)", "killed by SIGKILL"))
        return ran, met

    def left(self):
        """The diary's entries, and the bytes of what commands write."""
        files = {name: (self.folder / name).read_bytes() if (self.folder / name).exists() else None
                 for name in ("out", "fresh.toml")}
        return self.entries(self.folder), files


def judge(place, words, ran, whole, untouched, what):
    """A fault of this try, or nothing."""
    left = place.left()
    if left not in (whole, untouched):
        return f"{what}: neither done nor left alone: {[len(left[0]), {k: v and len(v) for k, v in left[1].items()}]}"
    if ran.returncode < 0 or ran.returncode == 137:
        return None  # killed: it has said nothing
    if ran.returncode == 0 and left != whole:
        return f"{what}: ended with 0, and is not done"
    said = ran.stderr.decode(errors="replace")
    file = words[words.index("-o") + 1] if "-o" in words else "fresh.toml" if words[0] == "new" else "farm.diary"
    if ran.returncode and left == untouched and file not in said and "standard output" not in said:
        return f"{what}: does not name {file}: {said!r}"
    if "fault of the program itself" in said:
        return f"{what}: {said}"
    return None


def tries(place, words, every):
    """Faults to put in, one after the other, until one is no more met."""
    for call, error in FAILURES:
        for when in range(1, 200):
            yield f"{call} number {when} fails", ["-e", f"trace={call}", "-e", f"inject={call}:error={error}:when={when}"]
    for when in range(every, 100000, every):
        yield f"killed at call {when}", ["-e", "trace=all", "-e", f"inject=all:signal=SIGKILL:when={when}"]


def findings(place, words, every):
    ran, _ = place.run(words)
    assert ran.returncode == 0, ran.stderr.decode()
    whole = place.left()
    shutil.rmtree(place.folder)
    shutil.copytree(place.made, place.folder)
    untouched = place.left()
    assert whole != untouched, words
    count, over = 0, None
    for what, fault in tries(place, words, every):
        sort = fault[1] if "number" in what else "kill"
        if over == sort:
            continue
        ran, met = place.run(words, fault)
        if not met:
            over = sort
            continue
        count += 1
        found = judge(place, words, ran, whole, untouched, f"{' '.join(words[:2])}: {what}")
        if found:
            yield found
    assert count > 5, f"{words}: only {count} faults could be put in"
    print(f"{' '.join(words[:2])}: {count} faults of the machine", flush=True)


def main():
    program = str(pathlib.Path(sys.argv[1]).resolve())
    every = int(sys.argv[2]) if len(sys.argv) > 2 else 50
    with tempfile.TemporaryDirectory() as folder:
        place = Place(program, pathlib.Path(folder))
        found = []
        for words in (VISIT, EDIT, DONE, IMPORT, NEW, CALENDAR, SHEET):
            found += findings(place, words, every)
    print("\n".join([*found, f"{len(found)} findings"]))
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
