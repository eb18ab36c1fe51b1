#!/usr/bin/python3
"""Provokes every fault a user can meet and checks what is said.   run_gallery.py PROGRAM FILE

FILE holds cases: `$ cropful WORDS`, `exit N`, then one line for each passage stderr must hold, up to an empty line.
Before the `$`, a case may ask for
    file NAME ... end                 a file with the lines between
    file NAME like SOURCE ... end     a file of this project, with changes `OLD => NEW`, one a line
    folder NAME, link NAME TARGET     an empty folder, a symbolic link
    before WORDS                      the program run with these first, which must end well
    disk BYTES                        no file may grow past so many
A case runs in an empty folder of its own; ` >PLACE` at the end of its command is a redirection of stdout. Then every
message in the sources must be expected by a case, a unit test or a file of tests/faults (see messages.py)."""
import os
import pathlib
import re
import resource
import shlex
import signal
import subprocess
import sys
import tempfile
import textwrap

import messages

LEAST = 60
ROOT = pathlib.Path(__file__).resolve().parents[2]
SANITIZER = re.compile(r"Sanitizer|runtime error:")
CASE = re.compile(r"(?P<setting>(?:(?:file .*\n(?:.*\n)*?end|folder .*|link .*|before .*|disk .*)\n)*)"
                  r"\$ cropful(?P<words>.*?)(?P<redirection> >\S+)?\nexit (?P<status>\d)\n(?P<expect>(?:.+\n)+)")
SETTING = re.compile(r"(file) (\S+)(?: like (\S+))?\n((?:.*\n)*?)end\n|(folder|link|disk) (\S+)(?: (\S+))?\n")
BEFORE = re.compile(r"^before (.+)$", re.M)
DISK = re.compile(r"^disk (\d+)$", re.M)
FILLER = re.compile(r"(?:\n|#.*\n)*")


def cases_of(text):
    """The cases as matches; says where a text is no list of cases."""
    found, at = [], FILLER.match(text).end()
    while at < len(text):
        case = CASE.match(text, at)
        if not case:
            raise SystemExit(f"line {text.count(chr(10), 0, at) + 1}: no case starts here")
        found.append(case)
        at = FILLER.match(text, case.end()).end()
    return found


def changed(text, changes):
    for change in changes.splitlines():
        old, _, new = change.partition(" => ")
        if old not in text:
            raise SystemExit(f"nothing to change in the file: {old}")
        text = text.replace(old, new, 1)
    return text


def set_up(setting, folder):
    for kind, name, source, lines, other, place, target in SETTING.findall(setting):
        path = folder / (name or place)
        if other == "disk":
            continue
        path.parent.mkdir(parents=True, exist_ok=True)
        if kind:
            path.write_text(changed((ROOT / source).read_text(), lines) if source else lines)
        elif other == "folder":
            path.mkdir()
        else:
            path.symlink_to(target)


def small_disk(bytes_held):
    """For a process to come: files end at so many bytes, which is an error and no signal."""
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (bytes_held, bytes_held))


def run(program, case, folder):
    command = [program, *shlex.split(case["words"])]
    if case["redirection"]:
        command = ["sh", "-c", 'exec "$0" "$@"' + case["redirection"], *command]
    for words in BEFORE.findall(case["setting"]):
        subprocess.run([program, *shlex.split(words)], cwd=folder, check=True, stdout=subprocess.DEVNULL, timeout=60)
    place, disk = {**os.environ, "LC_ALL": "C.UTF-8"}, DISK.search(case["setting"])
    return subprocess.run(command, cwd=folder, env=place, stdin=subprocess.DEVNULL, capture_output=True, encoding="utf-8",
                          errors="replace", timeout=60,
                          preexec_fn=(lambda: small_disk(int(disk[1]))) if disk else None)


def findings(case, status, out, err):
    said = " ".join(err.split())
    found = [f"does not say: {words}" for words in case["expect"].splitlines() if words not in said]
    if case["status"] == "0":
        found.append("exit 0 is no fault")
    if str(status) != case["status"]:
        found.append(f"ended with {status}")
    if out:
        found.append(f"wrote to stdout: {out[:80]!r}")
    if case["words"].strip() and not (err.startswith("cropful: ") and err.count("\n") == 1 and err.endswith("\n")):
        found.append("stderr is not one line that starts with `cropful: `")
    if SANITIZER.search(err):
        found.append("sanitizer report")
    return found


def self_check():
    sample = "# a\n\nfile x\n1\n\nend\nlink y z\n$ cropful a >&-\nexit 2\nb c\n\n$ cropful d\nexit 1\ne\n"
    first, second = cases_of(sample)
    assert (first["words"], first["redirection"], first["expect"]) == (" a", " >&-", "b c\n"), first.groups()
    assert [s[1] or s[5] for s in SETTING.findall(first["setting"])] == ["x", "y"] and second["status"] == "1"
    sound = (2, "", "cropful: b c\n")
    assert findings(first, *sound) == []
    for place, value in ((0, 1), (1, "x"), (2, "cropful: b\n"), (2, "b c\n"), (2, "cropful: b c"),
                         (2, "cropful: b\nc\n"), (2, "cropful: b c; runtime error: shift\n")):
        assert findings(first, *sound[:place], value, *sound[place + 1:]), f"spoiled by {value!r} but not noticed"
    messages.self_check()


def main():
    self_check()
    program, text = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2]).read_text()
    cases, bad = cases_of(text), 0
    for case in cases:
        with tempfile.TemporaryDirectory() as folder:
            set_up(case["setting"], pathlib.Path(folder))
            done = run(program, case, folder)
        found = findings(case, done.returncode, done.stdout, done.stderr)
        if found:
            bad += 1
            print(f"$ cropful{case['words']}")
            print(textwrap.indent("\n".join(found + ["stderr: " + done.stderr.strip()[:400]]), "    "))
    count, uncovered = messages.uncovered(ROOT, [line for case in cases for line in case["expect"].splitlines()])
    print("\n".join(uncovered))
    print(f"{len(cases)} faults, {bad} not answered as expected; {count} messages, {len(uncovered)} findings")
    if len(cases) < LEAST:
        print(f"fewer than {LEAST} faults")
    return 1 if bad or uncovered or len(cases) < LEAST else 0


if __name__ == "__main__":
    sys.exit(main())
