#!/usr/bin/python3
"""The files of a room are compiled together, so that nothing may stand in for another thing unseen.

    one_name.py ROOT PROGRAM

The name of a function in an unnamed namespace is its own among its room's other files and headers and the public headers
of this room and those below; that of a class or a constant there among its room's other files. No header names a function
as one of the outer namespace, in fault/, is named."""
import collections
import pathlib
import re
import sys

ROOMS = ["fault", "quantities", "domain", "curves", "rations", "engine", "blends", "store", "readers", "reports", "commands", "page"]
# Functions of a namespace start in the first column.
FUNCTION = re.compile(r"^(?!using|return|class|struct|enum|template|namespace|friend|[ #/}])[\w:<>,\s*&\[\].]*?[\s&*>]"
                      r"([a-z_]\w*)\(")
NAMED = re.compile(r"^(?:constexpr (?:[\w:<>, *]+ )?\*?(\w+)(?:\[\w*\])? ?[={]|(?:class|struct|enum class) (\w+)\b(?!;))")


def functions(lines):
    return {found[1] for line in lines if (found := FUNCTION.match(line))}


def classes_and_constants(lines):
    return {found[1] or found[2] for line in lines if (found := NAMED.match(line))}


def unnamed(file):
    inside, lines = False, []
    for line in file.read_text().splitlines():
        inside = line == "namespace {" or (inside and line != "}  // namespace")
        lines += [line] if inside else []
    return lines


def declared(folder):
    return {name: header.name for header in sorted(folder.rglob("*.hpp"))
            for name in functions(header.read_text().splitlines())}


def main():
    root, bad, looked = pathlib.Path(sys.argv[1]), [], 0
    public = declared(root / "include/cropful/fault")
    outer = set(public)
    for room in ROOMS:
        ours = declared(root / "include/cropful" / room) if room != "fault" else {}
        private = declared(root / "src" / room)
        bad += [f"{header}: {name}() hides the one in fault/" for name, header in (ours | private).items() if name in outer]
        public |= ours
        holders, own = collections.defaultdict(list), collections.defaultdict(list)
        for file in sorted((root / "src" / room).glob("*.cpp")):
            looked += 1
            lines = unnamed(file)
            for name in functions(lines):
                holders[name].append(file.name)
            for name in classes_and_constants(lines):
                own[name].append(file.name)
        for name, files in sorted(holders.items()):
            others = files[1:] + [header for header in (private.get(name), public.get(name)) if header]
            bad += [f"src/{room}/{files[0]}: {name}() is a name taken in {other}" for other in others]
        bad += [f"src/{room}/{first}: {name} is a name taken in {other}" for name, (first, *others) in sorted(own.items())
                for other in others]
    print("\n".join(bad + [f"{looked} looked at, {len(bad)} findings"]))
    return 1 if bad or not looked else 0


if __name__ == "__main__":
    sys.exit(main())
