"""A program on a pseudo-terminal, and what may be seen there."""
import fcntl
import os
import pty
import re
import struct
import subprocess
import termios
import threading

# ECMA-48 (Select Graphic Rendition): bold; bold and red; back to normal. Nothing else is allowed.
BOLD, ALARM, NORMAL = "\x1b[1m", "\x1b[1;31m", "\x1b[0m"
END = b"\0"  # nothing the program writes
ESCAPE = re.compile(r"\x1b\[[0-9;]*m")
FRESH = {"PATH": os.environ["PATH"], "HOME": "/nonexistent", "TZ": "UTC", "TERM": "xterm-256color", "LC_ALL": "C.UTF-8",
         **{name: value for name, value in os.environ.items() if name.endswith("SAN_OPTIONS")}}


def on_terminal(words, columns, folder=None, **environment):
    """What a program writes to a terminal of so many columns; an environment variable that is None is not set.

    Both ends stay open until all is read: what a terminal still holds when its last program goes may be lost."""
    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
    place = {name: value for name, value in {**FRESH, **environment}.items() if value is not None}
    running = subprocess.Popen(words, cwd=folder, env=place, stdin=theirs, stdout=theirs, stderr=subprocess.PIPE)
    seen = []
    reader = threading.Thread(target=lambda: seen.extend(parts_to_end(ours)))
    reader.start()
    complaint = running.stderr.read().decode()
    ended = running.wait(timeout=120)
    os.write(theirs, END)
    reader.join()
    os.close(theirs)
    os.close(ours)
    if ended != 0:
        raise SystemExit(f"{' '.join(words)} ended with {ended}:\n{complaint}")
    return b"".join(seen).removesuffix(END).decode().replace("\r\n", "\n")


def parts_to_end(terminal):
    part = b""
    while not part.endswith(END):
        part = os.read(terminal, 65536)
        yield part


def piped(words, folder=None, **environment):
    place = {name: value for name, value in {**FRESH, **environment}.items() if value is not None}
    return subprocess.run(words, cwd=folder, env=place, stdout=subprocess.PIPE, check=True, timeout=120).stdout.decode()


def stripped(text):
    return ESCAPE.sub("", text)


def findings_of(page, columns):
    """What is wrong with a page in so many columns: wide lines, control characters, other escape sequences."""
    bad = [f"{len(line)} columns of {columns}: {line}" for line in stripped(page).splitlines() if len(line) > columns]
    bad += [f"escape sequence {code!r}" for code in set(ESCAPE.findall(page)) - {BOLD, ALARM, NORMAL}]
    bad += [f"control character {c!r}" for c in sorted(set(stripped(page))) if ord(c) < 32 and c != "\n"]
    bad += [f"colour runs over the end of a line: {line!r}" for line in page.splitlines()
            if "\x1b" in line and ESCAPE.findall(line)[-1] != NORMAL]
    return bad


def days(words):
    """ "10 d 1 h" in days."""
    sizes = {"wk": 7.0, "d": 1.0, "h": 1 / 24, "min": 1 / 1440}
    return sum(float(n) * sizes[unit] for n, unit in re.findall(r"(\d+) (wk|d|h|min)\b", words))


def bars_of(page):
    """(time, length) of each bar of `last`'s picture; a block is 1, a half block 1/2, a # 1."""
    rows = re.findall(r"^  .+?  +((?:\d+ (?:wk|d|h|min) ?)+) +([#\u2588\u258c]+)$", stripped(page), re.M)
    return [(days(time), bar.count("#") + bar.count("\u2588") + bar.count("\u258c") / 2) for time, bar in rows]


def crooked(bars, step):
    """Bars whose length is not in proportion to their time, to one `step`."""
    if len(bars) < 2:
        return ["fewer than two bars"]
    longest = max(bars)
    return [f"{time:.2f} d drawn {length}, longest {longest}" for time, length in bars
            if abs(length - max(step, longest[1] * time / longest[0])) > step]
