#!/usr/bin/python3
"""Diaries damaged by chance, and made by another hand.   hostile.py PROGRAM [COUNT]

Whatever lies in the file: the program ends within seconds, with 0, 1 or 2, never by a fault of its own; it prints no
number that is none, no amount below nought and nothing a terminal takes for an order; it never says that it wrote into a
diary it cannot read afterwards; and reading leaves every byte as it was."""
import collections
import os
import pathlib
import random
import re
import sqlite3
import subprocess
import sys
import tempfile

from barn import Barn

READING = (["plan"], ["plan", "--json"], ["calendar", "--stamp", "2027-01-01"], ["diary", "show"],
           ["diary", "show", "--json"], ["diary", "export"])
VISIT = ["--now", "2027-12-31", "--at", "2027-04-20T06:00", "--feed", "12 lb"]
ORDERS = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]")
NO_NUMBERS = re.compile(r"(?<![a-z])(nan|inf|infinity)(?![a-z])", re.I)


def run(barn, *words):
    command = [barn.program, *words[:1], *words[1:2] * (words[0] == "diary"), "farm.toml",
               *words[2 if words[0] == "diary" else 1:]]
    return subprocess.run(command, cwd=barn.folder, capture_output=True, timeout=20)


def judge(ran, what):
    assert ran.returncode in (0, 1, 2), (what, ran.returncode, ran.stderr[-300:])
    said = ran.stderr.decode("utf-8", "strict")
    assert "fault of the program itself" not in said, (what, said)
    assert not ORDERS.search(said), (what, said)
    page = ran.stdout.decode("utf-8", "strict").replace("\r\n", "\n")
    assert not ORDERS.search(page), (what, ORDERS.search(page))
    if "export" in what or "show" in what:
        assert not NO_NUMBERS.search(page), (what, page[-400:])
        assert not re.search(r",-\d[^,\n]*,(kg|L|birds),|\"(feed_kg|water_l|birds)\": -", page), (what, page[-400:])


def read_all(barn, name):
    """The statuses of every way of reading; the file stays as it is."""
    diary = barn.folder / "farm.diary"
    before, statuses = diary.read_bytes() if diary.is_file() else None, []
    for words in READING:
        ran = run(barn, *words)
        judge(ran, f"{name}: {' '.join(words)}")
        statuses.append(ran.returncode)
    assert before is None or diary.read_bytes() == before, f"{name}: reading has written"
    return statuses


def write(barn, name):
    """A visit more; where it is said to be written, it is."""
    before = (barn.folder / "farm.diary").read_bytes()
    ran = run(barn, "diary", "add", *VISIT)
    judge(ran, f"{name}: add")
    if ran.returncode == 0:
        shown = run(barn, "diary", "export")
        assert shown.returncode == 0 and b"2027-04-20T06:00,April,topped up" in shown.stdout, (name, ran, shown)
    else:
        assert (barn.folder / "farm.diary").read_bytes() == before, f"{name}: refused, and yet changed"
    return ran.returncode


def damaged(program, folder, count, rng):
    barn = Barn(program, folder)
    for day in range(10, 16):
        barn.done("add", "--now", "2027-12-31", "--at", f"2027-04-{day}T06:00", "--feed", "12 lb", "--note", f"day {day}")
    diary = barn.folder / "farm.diary"
    good, seen = diary.read_bytes(), collections.Counter()
    for size in [*range(1, 600, 67), *range(600, len(good), 997), len(good) - 1]:
        diary.write_bytes(good[:size])
        assert set(read_all(barn, f"{size} bytes")) == {2}, size
        assert write(barn, f"{size} bytes") == 2, size
    for number in range(count):
        data = bytearray(good)
        for _ in range(rng.choice((1, 1, 2, 8))):
            data[rng.randrange(len(data))] = rng.randrange(256)
        diary.write_bytes(data)
        name = f"flipped {number}"
        if number % 3 == 0:
            read_all(barn, name)
        seen[write(barn, name)] += 1
        for more in barn.folder.glob("farm.diary?*"):
            more.unlink()
    assert seen[2] > 0 and seen[0] > 0, seen
    print(f"a diary cut short, and {count} with bytes changed: {seen[2]} refused, {seen[0]} written into and read again")


LOOSE = "create table entry(id integer primary key, visit, at, hatch, deed, amount, unit, note)"
#The table of the first form, letter for letter : diaries written then must be readable for ever.
FIRST = """CREATE TABLE entry (
    id INTEGER PRIMARY KEY,
    visit INTEGER NOT NULL CHECK (visit > 0),
    at TEXT NOT NULL CHECK (at GLOB '2[01][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]'),
    hatch TEXT NOT NULL CHECK (hatch <> ''),
    deed TEXT NOT NULL CHECK (deed IN ('topped up', 'part filled', 'thrown out', 'found empty',
                                       'died', 'counted', 'moved out', 'moved in')),
    amount REAL NOT NULL CHECK (amount >= 0 AND amount <= 1e6),
    unit TEXT NOT NULL CHECK (unit IN ('kg', 'L', 'birds')),
    note TEXT NOT NULL,
    CHECK ((unit = 'birds') = (deed IN ('died', 'counted', 'moved out', 'moved in'))),
    CHECK (deed <> 'found empty' OR amount = 0)
) STRICT"""
ROW = ["2027-04-10T06:00", "April", "topped up", 5.0, "kg", ""]


def made(barn, statements, form=1):
    diary = barn.folder / "farm.diary"
    diary.unlink(missing_ok=True)
    database = sqlite3.connect(diary)
    database.execute("pragma application_id = 0x63726f70")
    database.execute(f"pragma user_version = {form}")
    database.execute("pragma ignore_check_constraints = on")
    for statement in statements:
        database.execute(*statement) if isinstance(statement, tuple) else database.execute(statement)
    database.commit()
    database.close()


def by_another_hand(program, folder):
    barn = Barn(program, folder)
    insert = "insert into entry values (?, ?, ?, ?, ?, ?, ?, ?)"
    good = (insert, (1, 1, *ROW))
    made(barn, [FIRST, good])
    assert set(read_all(barn, "the first form")) == {0}
    assert write(barn, "the first form") == 0
    assert (barn.folder / "farm.diary.form-1").exists()
    (barn.folder / "farm.diary.form-1").unlink()
    changes = [(3, -5.0), (3, float("inf")), (3, 1e300), (4, "L "), (4, "birds"), (2, "died"), (2, "found empty"),
               (2, "sang"), (0, "2027-04-10T06:00\x1b]0;x\x07"), (0, "2027-13-10T06:00"), (0, "2027-04-10"), (1, "")]
    for place, value in changes:
        row = list(ROW)
        row[place] = value
        made(barn, [FIRST, (insert, (1, 1, *row))])
        assert set(read_all(barn, f"{place}: {value!r}")) == {2}, (place, value)
        assert write(barn, f"{place}: {value!r}") == 2, (place, value)
    for numbers in ((1, 9223372036854775807), (9223372036854775807, 1), (-1, 1), (1, -1)):
        made(barn, [FIRST, (insert, (*numbers, *ROW))])
        assert write(barn, f"numbers {numbers}") == 2, numbers
    made(barn, [FIRST, "insert into entry values (1, 1, '2027-04-10T06:00', cast(x'" + "80" * 80 +
                "' as text), 'died', 1.0, 'birds', '')"])
    assert set(read_all(barn, "a name that is no UTF-8")) == {2}
    endless = ("create view entry as with recursive c(x) as (select 1 union all select x + 1 from c) select x id, 1 visit, "
               "'2027-04-10T06:00' at, 'April' hatch, 'died' deed, 1.0 amount, 'birds' unit, 'n' note from c")
    trigger = "create trigger t after insert on entry begin delete from entry; end"
    for name, statements in (("a loose table", [LOOSE, good]), ("an endless view", [endless]),
                             ("a trigger", [FIRST, good, trigger]), ("a table more", [FIRST, good, "create table x (y)"]),
                             ("an index", [FIRST, good, "create index i on entry (at)"])):
        made(barn, statements)
        assert set(read_all(barn, name)) == {2}, name
        assert write(barn, name) == 2, name
    made(barn, [FIRST, good], form=7)
    assert set(read_all(barn, "a newer form")) == {2}
    diary = barn.folder / "farm.diary"
    for make in (lambda: os.mkfifo(diary), lambda: os.mkdir(diary), lambda: os.symlink("/dev/zero", diary),
                 lambda: os.symlink("farm.toml", diary)):
        diary.unlink()
        make()
        assert set(read_all(barn, "no ordinary file")) == {2}
        assert run(barn, "diary", "add", *VISIT).returncode == 2
        if diary.is_dir():
            diary.rmdir()
            diary.touch()
    print("made by another hand: nothing of it believed")


def main():
    program, count = sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 300
    with tempfile.TemporaryDirectory(prefix="cropful-hostile-") as folder:
        by_another_hand(program, pathlib.Path(folder) / "hand")
        damaged(program, pathlib.Path(folder) / "damaged", count, random.Random(int(os.environ.get("SEED", "5"))))


if __name__ == "__main__":
    main()
