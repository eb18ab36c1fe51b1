#!/usr/bin/python3
"""Examples, manual page and completions.   manual.py PROGRAM RATIONS BUILD; manual.py --self-test

Read by groff, bash, zsh and fish themselves; which commands and flags there are is read from --help."""
import pathlib
import re
import shlex
import shutil
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "house"))
from program_help import ask, commands, options  # noqa: E402

INSTALLED = {"bin/cropful": None, "share/man/man1/cropful.1": ["man"],
             "share/bash-completion/completions/cropful": ["completion", "bash"],
             "share/zsh/site-functions/_cropful": ["completion", "zsh"],
             "share/fish/vendor_completions.d/cropful.fish": ["completion", "fish"]}
# Whether the page for telephones is built or not, its example takes the parts of a transcript.
STAND_IN = ["--parts", str(pathlib.Path(__file__).resolve().parents[1] / "golden/page-written/parts")]


def run(*words, **more):
    return subprocess.run(words, capture_output=True, text=True, timeout=120, **more)


def example_of(page):
    """The example a help ends with, folded or not."""
    found = re.findall(r"^Example: (cropful .*(?:\n  .*)*)\Z", page.rstrip("\n"), re.M)
    return " ".join(found[0].split()) if len(found) == 1 else None


def difference(what, found, wanted):
    lost, more = sorted(set(wanted) - set(found)), sorted(set(found) - set(wanted))
    return [f"{what}: {name} is missing" for name in lost] + [f"{what}: {name} is too much" for name in more]


def sections_of(page):
    """Flags by command in a manual page as groff sets it."""
    listed = page.partition("\nCOMMANDS\n")[2].partition("\nEXIT STATUS\n")[0]
    parts = re.split(r"^ {3}(cropful .*)$", listed, flags=re.M)
    item = re.compile(r"^ {7}(?:-\w, )?(--[a-z][a-z-]*)(?= |$)", re.M)  # descriptions are indented further
    return {name.removeprefix("cropful "): set(item.findall(text)) for name, text in zip(parts[1::2], parts[2::2])}


def self_test():
    assert example_of("a\n\nExample: cropful x\n  y\n") == "cropful x y" and example_of("Example: x\n") is None
    assert difference("a", ["--x"], ["--x", "--y"]) == ["a: --y is missing"]
    assert difference("a", ["--x", "--z"], ["--x"]) == ["a: --z is too much"]
    page = "\nCOMMANDS\n   cropful plan\n       about\n"
    page += "       --all  every\n       -h, --help\n              --this\nEXIT STATUS\n"
    assert sections_of(page) == {"plan": {"--all", "--help"}}
    assert roff_complaints(".TH A 1\n.SH NAME\n.nosuchmacro\n") and not roff_complaints(".TH A 1\n.SH NAME\na\n")
    assert run("bash", "-n", "-c", "if").returncode != 0
    print("spoiled pages are noticed")


def roff_complaints(page):
    return run("groff", "-man", "-Tutf8", "-ww", input=page).stderr


class Program:
    def __init__(self, path, rations):
        self.path, self.rations, self.names = str(path), rations, commands(str(path))

    def farm_folder(self, folder, command):
        """The demo farms, and what the examples name: farm.toml with a diary, and its entries as CSV."""
        for farm in (self.rations / "farms").glob("*.toml"):
            shutil.copy(farm, folder)
        steps = ["new farm.toml", "diary add farm.toml --now 2027-12-31 --at 2027-04-11T06:00 --died 1",
                 "diary export farm.toml -o diary.csv"]
        for step in {"": [], "new": [], "diary export": steps[:2]}.get(command, steps):
            subprocess.run([self.path, *shlex.split(step)], cwd=folder, check=True, stdout=subprocess.PIPE)

    def examples(self):
        bad = []
        for command in ["", *self.names]:
            example = example_of(ask(self.path, *command.split(), "--help"))
            if example is None or not example.startswith(f"cropful {command}".rstrip()):
                bad.append(f"{command or 'cropful'} --help ends with no example of it")
                continue
            with tempfile.TemporaryDirectory() as folder:
                self.farm_folder(folder, command)
                done = run(self.path, *shlex.split(example)[1:], *(STAND_IN if command == "page" else []), cwd=folder)
            if done.returncode != 0:
                bad.append(f"{example}: ended with {done.returncode}: {done.stderr}")
        return bad

    def man(self):
        page = ask(self.path, "man")
        complaints = roff_complaints(page)
        bad = [f"groff: {complaints}"] if complaints else []
        shown = run("groff", "-man", "-Tascii", "-rLL=100n", "-P-c", "-P-b", "-P-u", "-P-o", input=page).stdout
        sections = sections_of(shown)
        bad += difference("man page", sections, self.names)
        for name in set(sections) & set(self.names):
            bad += difference(f"man page, {name}", sections[name], options(self.path, *name.split()))
        return bad

    def bash_completes(self, folder, *words):
        script = ('source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _cropful; '
                  'printf "%s\\n" "${COMPREPLY[@]}"')
        done = run("bash", "-c", script, "bash", f"{folder}/script.bash", *words, cwd=folder)
        return set(done.stdout.split("\n")) - {""} if not done.stderr else {done.stderr}

    def bash(self, folder):
        (folder / "script.bash").write_text(ask(self.path, "completion", "bash"))
        kinds = {kind.stem for kind in (self.rations / "birds").glob("*.toml")}
        files = {"a farm.toml", "b.toml"}
        top = {name for name in self.names if " " not in name}
        diary = {name.removeprefix("diary ") for name in self.names if name.startswith("diary ")}
        # what is typed, the word at the cursor last; "" where it is empty
        cases = [([""], top), (["pl"], {"plan"}), (["diary", ""], diary), (["plan", "--kind", ""], kinds),
                 (["last", "--kind", "ph"], {"pheasant"}), (["last", "--kind", "=", "ph"], {"pheasant"}),
                 (["last", "--kind", "="], kinds), (["plan", "--units", ""], {"us", "metric", "uk"}),
                 (["plan", "--age", ""], set()), (["plan", ""], files | {"script.bash", "rations"}),
                 (["buy", "a"], {"a farm.toml"}), (["diary", "show", "b"], {"b.toml"}),
                 (["plan", "--rations", ""], {"rations"}), (["completion", ""], {"bash", "zsh", "fish"}),
                 (["blend", "--laying", "b"], {"b.toml"}), (["table", "bob"], {"bobwhite"})]
        cases += [([*name.split(), "--"], options(self.path, *name.split())) for name in self.names]
        bad = []
        for words, wanted in cases:
            bad += difference(f"bash, {' '.join(words)}", self.bash_completes(folder, "cropful", *words), wanted)
        refused = run("bash", "-n", f"{folder}/script.bash").returncode != 0
        return bad + (["bash -n refuses the script"] if refused else [])

    def zsh(self, folder):
        script = ask(self.path, "completion", "zsh")
        (folder / "_cropful").write_text(script)
        bad = []
        for words in (["zsh", "-f", "-n", f"{folder}/_cropful"],
                      ["zsh", "-f", "-c", f"autoload -U compinit; compinit -D -u; source {folder}/_cropful; "
                                          "[[ $_comps[cropful] == _cropful ]]"]):
            done = run(*words)
            if done.returncode != 0 or done.stderr:
                bad.append(f"{' '.join(words)}: ended with {done.returncode}: {done.stderr}")
        lines = dict(re.findall(r"^ +\('cropful ([a-z ]+)'\) flags=\((.*?)\) known=", script, re.M))
        for name in self.names:
            bad += difference(f"zsh, {name}", re.findall(r"'(--[a-z-]+):", lines.get(name, "")),
                              options(self.path, *name.split()))
        return bad

    def fish_completes(self, folder, line):
        done = run("fish", "--no-config", "-c", f'source {folder}/cropful.fish; complete -C "{line}"', cwd=folder)
        return {one.split("\t")[0] for one in done.stdout.splitlines()} if not done.stderr else {done.stderr}

    def fish(self, folder):
        (folder / "cropful.fish").write_text(ask(self.path, "completion", "fish"))
        refused = run("fish", "--no-config", "-n", f"{folder}/cropful.fish").returncode != 0
        bad = ["fish -n refuses the script"] if refused else []
        for name in self.names:
            bad += difference(f"fish, {name}", self.fish_completes(folder, f"cropful {name} --"),
                              options(self.path, *name.split()))
        bad += difference("fish, top", self.fish_completes(folder, "cropful "), [n for n in self.names if " " not in n])
        return bad + difference("fish, --kind", self.fish_completes(folder, "cropful last --kind ph"), ["pheasant"])

    def installed(self, build):
        bad = []
        with tempfile.TemporaryDirectory() as prefix:
            done = run("cmake", "--install", build, "--prefix", prefix)
            if done.returncode != 0:
                return [f"cmake --install: {done.stderr}"]
            for place, words in INSTALLED.items():
                file = pathlib.Path(prefix) / place
                if not file.exists():
                    bad.append(f"{place} is not installed")
                elif words and file.read_text() != ask(self.path, *words):
                    bad.append(f"{place} is not what the program says of itself")
        return bad


def main():
    if sys.argv[1] == "--self-test":
        return self_test()
    program = Program(pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]))
    with tempfile.TemporaryDirectory() as place:
        folder = pathlib.Path(place)
        (folder / "rations").mkdir()
        for name in ("a farm.toml", "b.toml"):
            (folder / name).touch()
        bad = program.examples() + program.man() + program.bash(folder) + program.zsh(folder) + program.fish(folder)
    bad += program.installed(sys.argv[3])
    print("\n".join(bad + [f"{len(program.names)} commands, {len(bad)} findings"]))
    return 1 if bad or not program.names else 0


if __name__ == "__main__":
    sys.exit(main())
