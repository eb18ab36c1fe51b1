"""What the program says of itself."""
import re
import subprocess


def ask(program, *words):
    done = subprocess.run([program, *words], capture_output=True, text=True, timeout=60)
    if done.returncode != 0:
        raise SystemExit(f"{' '.join(words)} ended with {done.returncode}:\n{done.stderr}")
    return done.stdout


def commands(program):
    """Names of the commands, from the list under the heading that ends in `ommands:`."""
    section = re.search(r"^.*ommands:\n((?:[ \t].*\n|\n)+)", ask(program, "--help"), re.M)
    found = re.findall(r"^ {2}([a-z]\w*)", section.group(1), re.M) if section else []
    if not found:
        raise SystemExit("--help lists no command")
    return found


def options(program, *words):
    """Long options in the help of a command."""
    return set(re.findall(r"^\s+(?:-\w,\s*)?(--[a-z][a-z-]*)", ask(program, *words, "--help"), re.M))
