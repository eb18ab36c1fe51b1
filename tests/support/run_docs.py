#!/usr/bin/python3
"""Runs the examples of README.md and docs/*.md and compares what they print.   run_docs.py PROGRAM ROOT

In a ```console block a line `$ command` is run by bash and the lines under it, if any, must be its output; a line of
three dots stands for any lines. In a ```sh block every line is a command that must end with 0. Each page runs in a
folder of its own with build/cropful, rations and the page's farm files. Commands that fetch, build or test the project
itself are not run here, but the files of the project they name must exist."""
import difflib
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

BLOCK = re.compile(r"^```(console|sh)\n(.*?)^```$", re.M | re.S)
NOT_RUN = re.compile(r"(git clone|cd|sh \.ci/\w+|cmake|ctest|(sudo )?apt(-get)?|cpack|clang-format|"
                     r"(/usr/bin/)?python3 tests/\S+|bash tests/\S+)( |$)")
OWN_FILE = re.compile(r"(?<![\w/.-])(?:tests|\.ci|\.cmake|docs)/[\w./-]+")


def steps(kind, block):
    """(command, expected output or None) for each command of a block."""
    found = []
    for line in block.replace("\\\n", "").splitlines():
        if kind == "sh":
            command = line.split(" #")[0].strip()
            if command and not command.startswith("#"):
                found.append([command, None])
        elif line.startswith("$ "):
            found.append([line[2:], None])
        elif found:
            found[-1][1] = (found[-1][1] or "") + line + "\n"
    return found


def matches(expected, actual):
    lines = [".*" if line == "..." else re.escape(line) + "\n" for line in expected.splitlines()]
    return re.fullmatch("".join(lines), actual, re.S) is not None


def self_check():
    assert steps("console", "$ a \\\n b\nc\n$ d\n") == [["a  b", "c\n"], ["d", None]]
    assert steps("sh", "# note\na b # note\n") == [["a b", None]]
    assert matches("a\n...\nz\n", "a\nb\nc\nz\n") and matches("a\n", "a\n")
    assert not matches("a\n", "a\nb\n") and not matches("a\n...\nz\n", "a\nb\n") and not matches("a.\n", "ab\n")


def try_step(command, expected, folder):
    """What is wrong with one example, or None."""
    place = {**os.environ, "PATH": f"{folder}/build:{os.environ['PATH']}", "LC_ALL": "C.UTF-8"}
    done = subprocess.run(["bash", "-c", command], cwd=folder, env=place, text=True, timeout=120,
                          stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
    if expected is None and done.returncode != 0:
        return f"ended with {done.returncode}:\n{done.stdout}"
    if done.returncode > 2:
        return f"crashed ({done.returncode}):\n{done.stdout}"
    if expected is not None and not matches(expected, done.stdout):
        return "".join(difflib.unified_diff(expected.splitlines(True), done.stdout.splitlines(True), "page", "printed"))
    return None


def run_page(page, program, root, folder):
    """(number of commands run, findings) of one page."""
    (folder / "build").mkdir()
    (folder / "build/cropful").symlink_to(program)
    shutil.copytree(root / "rations", folder / "rations")
    ran, found = 0, []
    for kind, block in BLOCK.findall(page.read_text()):
        for command, expected in steps(kind, block):
            if NOT_RUN.match(command):
                missing = [f for f in OWN_FILE.findall(command) if not (root / f).exists()]
                found += [f"{page.name}: $ {command}\nnames {f}, which is not there" for f in missing]
                continue
            ran += 1
            wrong = try_step(command, expected, folder)
            found += [f"{page.name}: $ {command}\n{wrong}"] if wrong else []
    return ran, found


def main():
    self_check()
    program, root = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve()
    pages = [root / "README.md", *sorted((root / "docs").rglob("*.md"))]
    total, bad = 0, []
    for page in pages:
        with tempfile.TemporaryDirectory() as folder:
            ran, found = run_page(page, program, root, pathlib.Path(folder))
        total, bad = total + ran, bad + found
    print("\n".join(bad + [f"{len(pages)} pages, {total} commands run, {len(bad)} findings"]))
    return 1 if bad or total == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
