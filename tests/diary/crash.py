#!/usr/bin/python3
"""A diary loses nothing it has confirmed: its writers are killed, its disk is full, many write at once.
crash.py PROGRAM [ROUNDS]

A visit here is four entries at a minute of its own. After every mishap each confirmed visit must be there, whole, in
order, and no half of another."""
import os
import pathlib
import random
import resource
import shutil
import signal
import subprocess
import sys
import tempfile
import threading
import time

from barn import Barn

DEEDS = ["found empty", "topped up", "died", "counted"]
VISIT = ["--now", "2199-12-31", "--empty", "feed", "--feed", "12 lb", "--died", "2", "--counted", "200"]
LOOP = 'for m in "$@"; do "$0" diary add farm.toml --at "$m" --note "$m" ' + " ".join(
    f'"{word}"' for word in VISIT) + ' >&2 || exit; echo "$m"; done'
IMPORTED = 3000
LONGEST = 0.2  # seconds until a kill: several visits, with and without sanitizers


def minute(i):
    return f"2027-{4 + i // 36000:02}-{6 + i // 1440 % 25:02}T{i // 60 % 24:02}:{i % 60:02}"


def visits(entries):
    """The minutes of the visits, each of which must be whole; the imported lines are left out."""
    ours = [e for e in entries if e["note"] != "imported"]
    found = []
    for i in range(0, len(ours), len(DEEDS)):
        group = ours[i:i + len(DEEDS)]
        at = group[0]["at"]
        whole = [e["what"] for e in group] == DEEDS and {e["at"] for e in group} == {at} and group[0]["note"] == at
        assert whole, f"half a visit: {group}"
        found.append(at)
    assert found == sorted(set(found)), "visits out of order or twice"
    return found


def check(barn, confirmed, possible=()):
    """All that is confirmed is there, and nothing but that and what was being written."""
    found = visits(barn.entries())
    lost, strange = set(confirmed) - set(found), set(found) - set(confirmed) - set(possible)
    assert not lost and not strange, f"lost {sorted(lost)}, not asked for {sorted(strange)}"
    return found


def kill_soon(process, journal, rng):
    """Kills a process and its children at a random moment, at every other time soon after a write has begun."""
    until = time.monotonic() + rng.uniform(0.001, LONGEST)
    aimed = rng.random() < 0.7
    while time.monotonic() < until or aimed:
        if process.poll() is not None or (aimed and os.path.exists(journal)):
            break
        if aimed and time.monotonic() > until + 0.5:
            break
    time.sleep(rng.uniform(0, 0.003) if aimed else 0)
    try:
        os.killpg(process.pid, signal.SIGKILL)
    except ProcessLookupError:
        pass
    return process.communicate()[0].decode().split()


def start(barn, command):
    return subprocess.Popen(command, cwd=barn.folder, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
                            start_new_session=True)


def kill_adding(barn, first, rng):
    """One round: (minutes confirmed, minutes that may have been written)."""
    minutes = [minute(i) for i in range(first, first + 40)]
    confirmed = kill_soon(start(barn, ["sh", "-c", LOOP, barn.program, *minutes]), barn.folder / "farm.diary-journal", rng)
    return confirmed, minutes[len(confirmed):len(confirmed) + 1]


def kill_importing(barn, rng):
    """One round; whether the import was written."""
    said = kill_soon(start(barn, barn.command("import", "big.csv")), barn.folder / "farm.diary-journal", rng)
    count = sum(e["note"] == "imported" for e in barn.entries())
    assert count == IMPORTED or (count == 0 and not said), f"{count} of {IMPORTED} lines imported; said {said}"
    if count:
        barn.done("undo")
        assert not any(e["note"] == "imported" for e in barn.entries()), "an import that undo left"
    return count > 0


def kills(program, folder, rounds, rng):
    barn = Barn(program, folder)
    lines = [f"2028-01-{1 + i % 28:02}T{i // 28 % 24:02}:00,April,died,1,birds,imported\r\n" for i in range(IMPORTED)]
    (barn.folder / "big.csv").write_text("at,hatch,what,amount,unit,note\r\n" + "".join(lines))
    confirmed, first, hot, imported, imports = [], 0, 0, 0, 0
    for number in range(rounds):
        if number % 4 == 3:
            imports += 1
            imported += kill_importing(barn, rng)
            check(barn, confirmed)
            continue
        done, possible = kill_adding(barn, first, rng)
        hot += (barn.folder / "farm.diary-journal").exists()
        confirmed = check(barn, confirmed + done, possible)
        first += len(done) + 1
    barn.done("add", "--at", minute(first), "--note", minute(first), *VISIT)
    check(barn, confirmed + [minute(first)])
    assert barn.files() == ["big.csv", "farm.diary", "farm.toml"], barn.files()
    print(f"{rounds} kills, {hot} of them within a write; {len(confirmed)} visits kept; {imports} imports killed, "
          f"{imported} of them after they were written")


def refused(barn, reason, **more):
    """An add that cannot be written says so, and changes nothing."""
    before = barn.entries()
    note = "n" * 30000  # several pages of the file
    ran = barn.run("add", "--at", minute(900), *VISIT, "--note", note, **more)
    said = ran.stderr.decode()
    assert ran.returncode == 2 and not ran.stdout, (ran.returncode, said)
    assert said.count("\n") == 1 and "farm.diary: nothing was written: " + reason in said, said
    assert barn.entries() == before


def limit(size, ignored=True):
    def set_limit():
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN if ignored else signal.SIG_DFL)
        resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))
    return {"preexec_fn": set_limit, "restore_signals": False}


def small_files(program, folder):
    """No file may grow beyond a size: that of the diary, and one too small for a journal."""
    barn = Barn(program, folder)
    barn.done("add", "--at", minute(0), "--note", minute(0), *VISIT)
    for size in (os.path.getsize(barn.folder / "farm.diary"), 100):
        refused(barn, "the disk does not read or take it", **limit(size))
        killed = barn.run("add", "--at", minute(900), *VISIT, "--note", "n" * 30000, **limit(size, ignored=False))
        assert killed.returncode == -signal.SIGXFSZ, killed.returncode
        check(barn, [minute(0)])
    barn.done("add", "--at", minute(1), "--note", minute(1), *VISIT)
    check(barn, [minute(0), minute(1)])
    assert barn.files() == ["farm.diary", "farm.toml"], barn.files()
    print("files that may not grow: refused, nothing lost")


def mount(folder, *options):
    return subprocess.run(["mount", "-t", "tmpfs", *options, "tmpfs", folder], capture_output=True).returncode == 0


def full_disk(program, folder):
    os.mkdir(folder)
    if os.geteuid() != 0 or not mount(folder, "-o", "size=256k"):
        print("a full disk: not tried, since none can be mounted here")
        return
    try:
        barn = Barn(program, folder)
        barn.done("add", "--at", minute(0), "--note", minute(0), *VISIT)
        filler = barn.folder / "filler"
        with open(filler, "wb", buffering=0) as file:
            try:
                while True:
                    file.write(b"x" * 1024)
            except OSError:
                pass
        refused(barn, "the disk is full")
        filler.unlink()
        barn.done("add", "--at", minute(1), "--note", minute(1), *VISIT)
        assert mount(folder, "-o", "remount,ro")
        refused(barn, "")
        check(barn, [minute(0), minute(1)])
        print("a full disk, and one that may only be read: refused, nothing lost")
    finally:
        subprocess.run(["umount", folder], check=True)


def together(program, folder, writers, each):
    """Writers at once, from the making of the file on, while another process reads."""
    barn, faults, writing = Barn(program, folder), [], threading.Event()

    def write(number):
        for i in range(each):
            m = minute(number * each + i)
            ran = barn.run("add", "--at", m, "--note", m, *VISIT)
            if ran.returncode != 0:
                faults.append(ran.stderr.decode())

    def read():
        while not writing.is_set():
            try:
                visits(barn.entries())
            except (AssertionError, SystemExit) as fault:
                faults.append(str(fault))
            time.sleep(0.02)

    threads = [threading.Thread(target=write, args=(n,)) for n in range(writers)]
    reader = threading.Thread(target=read)
    for thread in [reader, *threads]:
        thread.start()
    for thread in threads:
        thread.join()
    writing.set()
    reader.join()
    assert not faults, faults
    check(barn, [minute(i) for i in range(writers * each)])
    assert barn.files() == ["farm.diary", "farm.toml"], barn.files()
    print(f"{writers} writers at once, {each} visits each: all there")


def main():
    program, rounds = sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 60
    seed = int(os.environ.get("SEED", "1"))
    began = time.monotonic()
    top = pathlib.Path(tempfile.mkdtemp(prefix="cropful-crash-"))
    try:
        kills(program, top / "kills", rounds, random.Random(seed))
        small_files(program, top / "small")
        full_disk(program, top / "full")
        together(program, top / "two", 2, 8)
        together(program, top / "eight", 8, 3)
    finally:
        shutil.rmtree(top)
    print(f"{time.monotonic() - began:.1f} s")


if __name__ == "__main__":
    main()
