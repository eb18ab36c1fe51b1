#!/usr/bin/python3
"""Shows the program every faulty farm file and checks what it says.   run_faults.py PROGRAM FOLDER [LEAST]

The first line of each file is `# expect: <line>: <words>`; line 0 means the fault has no line. `plan FILE` (`blend FILE`
for blend-*.toml) must end with 2, say nothing on stdout, and name the file, the line and the words on stderr."""
import pathlib
import re
import subprocess
import sys

EXPECT = re.compile(r"# expect: (\d+): (.+)")
SANITIZER = re.compile(r"Sanitizer|runtime error:")


def findings(name, first_line, status, out, err):
    expect = EXPECT.fullmatch(first_line)
    if not expect:
        return [f"first line is not `# expect: <line>: <words>` but {first_line!r}"]
    line, words = expect.groups()
    said = " ".join(err.split())
    found = []
    if status != 2:
        found.append(f"ended with {status}, expected 2")
    if out:
        found.append(f"wrote to stdout: {out[:80]!r}")
    if name not in said:
        found.append("does not name the file")
    if line != "0" and f":{line}:" not in said:
        found.append(f"does not say :{line}:")
    if words not in said:
        found.append(f"does not say {words!r}")
    if SANITIZER.search(err):
        found.append("sanitizer report")
    return found


def self_check():
    sound = ("x.toml", "# expect: 3: a mass", 2, "", "cropful: x.toml:3: bag: found x; expected a mass\n")
    assert findings(*sound) == []
    for place, value in ((1, "bag"), (1, "# expect: 4: a mass"), (1, "# expect: 3: a volume"), (2, 0), (3, "plan"),
                         (0, "y.toml"), (4, sound[4] + "x.cpp:1: runtime error: shift\n"), (4, "")):
        assert findings(*sound[:place], value, *sound[place + 1:]), f"spoiled by {value!r} but not noticed"


def main():
    self_check()
    program, folder = sys.argv[1], pathlib.Path(sys.argv[2])
    least = int(sys.argv[3]) if len(sys.argv) > 3 else 40
    files = sorted(folder.glob("*.toml"))
    bad = 0
    for file in files:
        command = "blend" if file.name.startswith("blend-") else "plan"
        done = subprocess.run([program, command, file.name], cwd=folder, capture_output=True, text=True, timeout=60)
        first_line = file.read_text(errors="replace").partition("\n")[0]
        found = findings(file.name, first_line, done.returncode, done.stdout, done.stderr)
        if found:
            bad += 1
            print(f"{file.name}: {'; '.join(found)}\n    {first_line}\n    {done.stderr.strip()[:400]}")
    print(f"{len(files)} faulty files, {bad} not answered as expected")
    if len(files) < least:
        print(f"fewer than {least} files")
    return 1 if bad or len(files) < least else 0


if __name__ == "__main__":
    sys.exit(main())
