"""A farm file and its diary in a folder of their own, asked through the command line; and what the checks of this
folder found."""
import datetime as dt
import json
import pathlib
import subprocess
import sys

TESTS = pathlib.Path(__file__).resolve().parent.parent
sys.path[:0] = [str(TESTS / "learning"), str(TESTS / "scipy")]


class Barn:
    def __init__(self, program, folder, text):
        self.program, self.farm = program, pathlib.Path(folder) / "farm.toml"
        self.farm.write_text(text)

    def run(self, *words):
        """What is printed; words may hold moments."""
        words = [w.isoformat(timespec="minutes") if isinstance(w, dt.datetime) else str(w) for w in words]
        done = subprocess.run([self.program, *words], capture_output=True, text=True)
        if done.returncode:
            raise SystemExit(f"{' '.join(words)}: {done.stderr}\n{self.farm.read_text()}")
        return done.stdout

    def ask(self, *words):
        return json.loads(self.run(*words, "--json"))

    def write(self, rows):
        """Lines `at,hatch,what,amount,unit,` into the diary."""
        csv = self.farm.parent / "visits.csv"
        csv.write_text("at,hatch,what,amount,unit,note\n" + "\n".join(rows) + "\n")
        assert self.ask("diary", "import", self.farm, csv)["added"] == len(rows)


def moment(text):
    return dt.datetime.fromisoformat(text)


def days(later, sooner):
    return (later - sooner) / dt.timedelta(days=1)


def ended(findings, missed, words, show=30):
    """Prints what was found and gives the exit status."""
    for line in findings[:show]:
        print("FAIL", line)
    for line in missed:
        print("FAIL not noticed:", line)
    print(words)
    return 1 if findings or missed else 0
