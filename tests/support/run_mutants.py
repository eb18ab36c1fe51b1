#!/usr/bin/python3
"""Spoils the program on purpose, one small edit at a time, and fails when the tests do not notice.

    run_mutants.py ROOT [--only WORDS] [--from N] [--tests REGEX ...] [--build DIR]

Each [[mutant]] of tests/mutants/mutants.toml is made in a copy of the project, which is then built and tested; the
recordings (golden, docs) are left out, so that only figures known from elsewhere count. Run before a release."""
import argparse
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import time
import tomllib

PARTS = ["CMakeLists.txt", ".cmake", "include", "src", "rations", "tests", "README.md", "LICENSE"]
# The quick ones first: most edits are noticed by them.
TESTS = [r"^(unit\..*|tables)$", "^(laws|faults|needs_only|csv_tables|diary_csv|calendar_again)$",
         "^(scipy|seasons|trips|blends|calendars|learning_bands|learning_kalman)$"]


def run(*command, timeout=1800):
    done = subprocess.run(command, text=True, timeout=timeout, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
    return done.returncode, done.stdout


class Copy:
    """A copy of the project with a build of its own."""

    def __init__(self, root, folder, tests):
        self.source, self.build, self.tests = folder / "source", folder / "build", tests
        self.source.mkdir(parents=True)
        for part in PARTS:
            if (root / part).is_dir():
                shutil.copytree(root / part, self.source / part)
            elif (root / part).exists():
                shutil.copy(root / part, self.source / part)
        status, said = run("cmake", "-S", self.source, "-B", self.build, "-G", "Ninja", "-D", "CMAKE_BUILD_TYPE=Debug",
                           "-D", "CMAKE_CXX_FLAGS_DEBUG=-O1", "-D", "CROPFUL_TESTS=ON")
        if status != 0:
            raise SystemExit(said)

    def verdict(self):
        """"green", or who noticed: the compiler, with its reason, or the first test that failed."""
        status, said = run("cmake", "--build", self.build)
        if status != 0:
            reason = re.search(r"error: (.*)", said)
            return f"the compiler ({reason[1] if reason else 'no reason'})"
        for tests in self.tests:
            status, said = run("ctest", "--test-dir", self.build, "-R", tests, "-j2", "--stop-on-failure",
                               "--no-tests=error", "--timeout", "600")
            if status != 0:
                failed = re.search(r"^\s*\d+ - (\S+) \(", said, re.M)
                return failed[1] if failed else "ctest"
        return "green"


def edited(text, mutant):
    if text.count(mutant["old"]) != 1 or mutant["old"] == mutant["new"]:
        raise SystemExit(f"{mutant['file']}: {mutant['old']!r} stands there {text.count(mutant['old'])} times, not once")
    return text.replace(mutant["old"], mutant["new"])


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("root", type=pathlib.Path)
    parser.add_argument("--only", default="", help="mutants whose file or edit holds these words")
    parser.add_argument("--from", dest="first", type=int, default=1, help="the number of the first mutant")
    parser.add_argument("--tests", nargs="+", default=TESTS, help="names of tests, run in this order")
    parser.add_argument("--build", type=pathlib.Path, help="an empty or absent folder to work in")
    options = parser.parse_args()
    mutants = tomllib.loads((options.root / "tests/mutants/mutants.toml").read_text())["mutant"]
    for mutant in mutants:
        edited((options.root / mutant["file"]).read_text(), mutant)
    mutants = [(n, m) for n, m in enumerate(mutants, 1) if options.only in str(m) and n >= options.first]

    with tempfile.TemporaryDirectory() as scratch:
        copy = Copy(options.root.resolve(), options.build or pathlib.Path(scratch), options.tests)
        if (before := copy.verdict()) != "green":
            raise SystemExit(f"the tests are not green before any edit: {before}")
        survived = 0
        for number, mutant in mutants:
            file, start = copy.source / mutant["file"], time.monotonic()
            text = file.read_text()
            file.write_text(edited(text, mutant))
            noticed = copy.verdict()
            file.write_text(text)
            survived += noticed == "green"
            print(f"{number} {'SURVIVED' if noticed == 'green' else 'noticed by ' + noticed}: {mutant['file']}: "
                  f"{mutant['old']} -> {mutant['new']} ({time.monotonic() - start:.0f} s)", flush=True)
    print(f"{len(mutants)} mutants, {survived} survived")
    return 1 if survived or not mutants else 0


if __name__ == "__main__":
    sys.exit(main())
