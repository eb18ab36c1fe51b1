#!/usr/bin/python3
"""Pages on a pseudo-terminal: width, colour, bars.   terminal.py PROGRAM RATIONS; terminal.py --self-test

What is expected comes from outside: the size the terminal is given (TIOCSWINSZ), https://no-color.org (NO_COLOR, when
present and not empty, whatever its value), TERM=dumb (terminfo), POSIX on COLUMNS, and ECMA-48 for escape sequences."""
import difflib
import pathlib
import re
import sys
import tempfile

from screen import ALARM, BOLD, bars_of, crooked, findings_of, on_terminal, piped, stripped

WIDEST = 100
PAGES = ["plan salt.toml", "plan back.toml --all --sources", "buy salt.toml", "last salt.toml --on 2027-05-14T05:00",
         "away salt.toml --from 2027-05-14T05:00 --until 2027-05-17", "check salt.toml", "mix salt.toml",
         "blend --protein 18% --of corn=8.9% --of soybean=44.4%", "diary show salt.toml", "table", "table bobwhite",
         "table pheasant --units metric", "table japanese-quail", "table units", "table drugs", "table limits",
         "table forms", "table ingredients", "table spoons", "--help", "plan --help", "diary --help", "diary add --help"]
LOUD = {"Saltgrass Bend": "LOOK NOW", "April bobwhites": "SHORT run", "May bobwhites": "ALARM! OVER"}
DATA = ["plan salt.toml --json", "table kinds --json", "new -", "man", "completion bash"]


def self_test():
    assert findings_of("a" * 41 + "\n", 40) and not findings_of("a" * 40 + "\n", 40)
    assert not findings_of(f"{BOLD}{'a' * 40}\x1b[0m\n", 40)
    assert findings_of("\x1b[32mgreen\x1b[0m\n", 40) and findings_of("a\x1cb\n", 40)
    assert findings_of(f"{ALARM}never ends\n", 40)
    even = "  hatch  tube  2 d  ####\n  hatch  bell  1 d 12 h  ###\n"
    assert bars_of(even) == [(2.0, 4), (1.5, 3)] and not crooked(bars_of(even), 1)
    assert crooked(bars_of(even.replace("####", "#######")), 1) and crooked(bars_of("nothing\n"), 1)
    print("spoiled pages are noticed")


class Sitting:
    """One folder with demo farms, and what is wrong in it."""

    def __init__(self, program, folder):
        self.program, self.folder, self.bad, self.looked = program, folder, [], 0

    def words(self, line):
        return [self.program, *line.split()]

    def see(self, line, columns, **environment):
        return on_terminal(self.words(line), columns, self.folder, **environment)

    def expect(self, right, what):
        self.looked += 1
        if not right:
            self.bad.append(what)

    def widths(self, line):
        for columns in (40, 80, 120):
            page, plain = self.see(line, columns), self.see(line, columns, NO_COLOR="1")
            for wrong in findings_of(page, min(columns, WIDEST)):
                self.bad.append(f"{line} at {columns}: {wrong}")
            self.expect(stripped(page) == plain, f"{line} at {columns}: colour changes the text:\n" + "\n".join(
                difflib.unified_diff(plain.splitlines(), stripped(page).splitlines(), "plain", "in colour", lineterm="")))
            self.expect("\x1b" not in plain, f"{line} at {columns}: colour with NO_COLOR")
        text = piped(self.words(line), self.folder)
        self.expect(not findings_of(text, 80) and "\x1b" not in text, f"{line}, piped: colour or a wide line")

    def colours(self):
        line = "plan salt.toml"
        page = self.see(line, 80)
        self.expect(BOLD + "WATCH" in page and ALARM + "!" in page, "no colour on a terminal")
        for name, value, there in (("NO_COLOR", "0", False), ("NO_COLOR", "", True), ("TERM", "dumb", False),
                                   ("TERM", None, False), ("TERM", "linux", True)):
            self.expect(("\x1b" in self.see(line, 80, **{name: value})) == there, f"colour with {name}={value}")
        self.expect("\x1b" not in self.see(line + " --color never", 80), "colour with --color never")
        self.expect("\x1b" in self.see(line + " --color always", 80, NO_COLOR="1"), "no colour with --color always")
        self.expect("\x1b" in piped(self.words(line + " --color always"), self.folder), "no colour when asked for")
        for data in DATA:
            self.expect(self.see(data, 40) == piped(self.words(data), self.folder), f"{data} differs on a terminal")

    def names(self):
        """What a user has called SHORT or ALARM is no warning: as many words are red as under other names."""
        red = re.compile(re.escape(ALARM) + r"(.*?)\x1b\[0m")
        for line in [page for page in PAGES if "salt.toml" in page]:
            usual, loud = (red.findall(self.see(line.replace("salt", farm), 100)) for farm in ("salt", "loud"))
            self.expect(usual == loud, f"{line}: red with warnings for names: {loud}")

    def columns(self):
        line = "plan salt.toml"
        self.expect(self.see(line, 80, COLUMNS="57") == self.see(line, 57), "COLUMNS does not go before the terminal")
        self.expect(self.see(line, 12) == self.see(line, 40), "narrower than 40")
        self.expect(self.see(line, 0) == self.see(line, 80), "a terminal that does not say its width has not 80")
        self.expect(piped(self.words(line), self.folder, COLUMNS="57") == piped(self.words(line), self.folder),
                    "COLUMNS changes what is piped")

    def bars(self):
        line = "last salt.toml --on 2027-05-14T05:00"
        for locale, step in (("C", 1), ("de_DE.UTF-8", 0.5)):
            page = self.see(line, 80, LC_ALL=locale)
            self.bad += [f"{locale}: {wrong}" for wrong in crooked(bars_of(page), step)]
            self.expect(bars_of(page) == sorted(bars_of(page)), f"{locale}: the first to be seen to is not the first")
            self.expect(page.isascii() == (locale == "C"), f"{locale}: other signs than this locale has")
        plan = self.see("plan salt.toml", 120, LC_ALL="C")
        self.expect("##" in plan and "##" not in piped(self.words("plan salt.toml"), self.folder), "bars of plan")


def main():
    if sys.argv[1] == "--self-test":
        return self_test()
    program, rations = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2])
    with tempfile.TemporaryDirectory() as folder:
        for name, farm in (("salt", "saltgrass"), ("back", "backyard")):
            (pathlib.Path(folder) / f"{name}.toml").write_text((rations / f"farms/{farm}.toml").read_text())
        sitting = Sitting(str(program), folder)
        for line in PAGES:
            sitting.widths(line)
        text = (pathlib.Path(folder) / "salt.toml").read_text()
        for name, loud in LOUD.items():
            assert text.count(f'"{name}"') > 0, name
            text = text.replace(f'"{name}"', f'"{loud}"')
        (pathlib.Path(folder) / "loud.toml").write_text(text)
        sitting.colours()
        sitting.names()
        sitting.columns()
        sitting.bars()
    print("\n".join(sitting.bad + [f"{len(PAGES)} pages, {sitting.looked} looked at, {len(sitting.bad)} findings"]))
    return 1 if sitting.bad or not sitting.looked else 0


if __name__ == "__main__":
    sys.exit(main())
