#!/usr/bin/python3
"""Random diaries written by Python's csv module, read by cropful, written by cropful, read by Python's csv module.
csv_round.py PROGRAM [COUNT]

Amounts in kg, L and birds must come back as the very same numbers, others by NIST HB 44 App. C; cells byte for byte.
Rows come back in the order of UTC; one that does not say how far its clock is from it, by this machine's time zone."""
import csv
import datetime
import io
import math
import os
import random
import sys
import tempfile
import time

from barn import Barn

COLUMNS = ["at", "hatch", "what", "amount", "unit", "note", "utc_offset_min"]
VESSELS = ["topped up", "part filled", "thrown out"]
BIRDS = ["died", "counted", "moved out", "moved in"]
UNITS = {"kg": ("kg", 1), "L": ("L", 1), "lb": ("kg", 0.45359237), "g": ("kg", 0.001), "gal": ("L", 3.785411784),
         "mL": ("L", 0.001), "fl oz": ("L", 3.785411784 / 128)}
HATCHES = ["April", "=SUM(A1:A9)", "+1", "-1", "@x", 'the "best", so far', " blank ", "Wachteln \u00e4\u00df \u9d89"]
PIECES = ["", "well", "=1+1", "+", "-", "@", ",", '"', '""', " ", ";", "'", "\u00e9", "\U0001f426",
          "=cmd|' /C calc'!A0", "two words"]


def number(rng):
    return rng.choice([rng.uniform(0.001, 100), round(rng.uniform(0.1, 50), rng.randint(0, 3)) or 1.0,
                       math.ldexp(rng.random(), -rng.randint(0, 12)) + 1e-4])


def entry(rng):
    """A row as it is written, and (unit, amount, exact) as it must come back."""
    at = f"2027-{rng.randint(5, 9):02}-{rng.randint(1, 28):02}{rng.choice('T ')}{rng.randint(0, 23):02}:" \
         f"{rng.randint(0, 59):02}{rng.choice(['', ':59'])}"
    sort = rng.random()
    if sort < 0.4:
        what, unit, amount = rng.choice(BIRDS), "birds", rng.randint(1, 10**rng.randint(1, 6))
        words, back = str(amount), (unit, amount, True)
    elif sort < 0.5:
        what, unit, words = "found empty", rng.choice(["kg", "L"]), "0"
        back = (unit, 0, True)
    else:
        what, unit, amount = rng.choice(VESSELS), rng.choice(list(UNITS)), number(rng)
        words, (kept, factor) = f"{amount:.{rng.choice([20, 17])}f}", UNITS[unit]
        back = (kept, float(words) * factor, factor == 1)
    note = "".join(rng.choice(PIECES) for _ in range(rng.randint(0, 4)))
    offset = str(rng.randrange(-720, 841, 15)) if rng.random() < 0.2 else ""
    return {"at": at, "hatch": rng.choice(HATCHES), "what": what, "amount": words, "unit": unit, "note": note,
            "utc_offset_min": offset}, back


def offset_of(row):
    """What its clock was ahead of UTC, in minutes."""
    if row["utc_offset_min"]:
        return int(row["utc_offset_min"])
    local = datetime.datetime.fromisoformat(row["at"].replace(" ", "T")[:16]).astimezone()
    return round(local.utcoffset().total_seconds() / 60)


def in_utc(row):
    at = datetime.datetime.fromisoformat(row["at"].replace(" ", "T")[:16])
    return at - datetime.timedelta(minutes=offset_of(row))


def write(rows, rng):
    """The rows in one of the ways in which CSV is written."""
    said = any(row["utc_offset_min"] for row in rows)
    columns = COLUMNS if said or rng.random() < 0.5 else COLUMNS[:-1]
    order = rng.sample(columns, len(columns))
    quoting = rng.choice([csv.QUOTE_MINIMAL, csv.QUOTE_ALL, csv.QUOTE_NONNUMERIC])
    # With QUOTE_MINIMAL Python leaves a carriage return bare where lines do not end with one.
    end = "\r\n" if quoting == csv.QUOTE_MINIMAL else rng.choice(["\r\n", "\n"])
    text = io.StringIO(newline="")
    writer = csv.DictWriter(text, order, extrasaction="ignore", quoting=quoting, lineterminator=end)
    writer.writeheader()
    writer.writerows(rows)
    return rng.choice([b"", b"\xef\xbb\xbf"]) + text.getvalue().encode()


def differences(expected, text):
    rows = list(csv.reader(io.StringIO(text.decode(), newline=""), strict=True))
    if rows[0] != COLUMNS or len(rows) != len(expected) + 1:
        yield f"{rows[0]}, {len(rows) - 1} rows of {len(expected)}"
        return
    for row, (wrote, (unit, amount, exact)) in zip(rows[1:], expected):
        at = wrote["at"].replace(" ", "T")[:16]
        same = row[:3] + row[4:] == [at, wrote["hatch"], wrote["what"], unit, wrote["note"], str(offset_of(wrote))]
        if not same or not math.isclose(float(row[3]), amount, rel_tol=0 if exact else 1e-12):
            yield f"wrote {wrote}, which is {amount} {unit}; got {row}"


def second_round(barn, out, count):
    """What cropful wrote is known to it, and in another diary gives the same again."""
    (barn.folder / "out.csv").write_bytes(out)
    again = barn.done("import", "out.csv").decode()
    if not again.startswith(f"0 entries added, {count} w"):
        yield f"said {again!r} for {count} that are there"
    os.remove(barn.folder / "farm.diary")
    barn.done("import", "out.csv")
    if barn.done("export") != out:
        yield "a second round differs"


def main():
    program, count = sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 300
    memory = "/dev/shm" if os.access("/dev/shm", os.W_OK) else None  # no disk to wait for
    rng, began, lines, bad = random.Random(4180), time.monotonic(), 0, []
    for number_of in range(count):
        with tempfile.TemporaryDirectory(prefix="cropful-csv-", dir=memory) as folder:
            barn = Barn(program, folder, HATCHES)
            entries = [entry(rng) for _ in range(rng.randint(0, 40))]
            lines += len(entries)
            (barn.folder / "in.csv").write_bytes(write([row for row, _ in entries], rng))
            said = barn.done("import", "in.csv").decode()
            out = barn.done("export")
            in_time = sorted(entries, key=lambda e: in_utc(e[0]))
            bad += [f"{number_of}: {d}" for d in differences(in_time, out)]
            bad += [] if f"{len(entries)} entr" in said else [f"{number_of}: said {said!r}"]
            if number_of % 10 == 0:
                bad += [f"{number_of}: {d}" for d in second_round(barn, out, len(entries))]
    print("\n".join(bad[:20] + [f"{count} diaries, {lines} lines, {len(bad)} findings, {time.monotonic() - began:.1f} s"]))
    return 1 if bad or lines == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
