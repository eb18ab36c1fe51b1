"""What the program says of itself."""
import functools
import re
import subprocess


@functools.cache
def ask(program, *words):
    done = subprocess.run([program, *words], capture_output=True, text=True, timeout=60)
    if done.returncode != 0:
        raise SystemExit(f"{' '.join(words)} ended with {done.returncode}:\n{done.stderr}")
    return done.stdout


def listed(program, *words):
    """Names of the commands a help lists, under the heading that ends in `ommands:`."""
    section = re.search(r"^.*ommands:\n((?:[ \t].*\n|\n)+)", ask(program, *words, "--help"), re.M)
    return re.findall(r"^ {2}([a-z]\w*)", section.group(1), re.M) if section else []


def commands(program, *words):
    """Every command, those of a command with its name before: "plan", "diary", "diary add"."""
    found = []
    for name in listed(program, *words):
        found += [" ".join([*words, name]), *commands(program, *words, name)]
    if not found and not words:
        raise SystemExit("--help lists no command")
    return found


def options(program, *words):
    """Long options in the help of a command."""
    return set(re.findall(r"^\s+(?:-\w,\s*)?(--[a-z][a-z-]*)", ask(program, *words, "--help"), re.M))
