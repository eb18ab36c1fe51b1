#!/usr/bin/python3
"""What the engine and the blends say by id has words in reports/, and these ask only for arguments that are given.

    sentences.py ROOT

An id is a text after `.id =` in src/engine or src/blends; a sentence is a row {"id", "words"} or {"id/form", "words"} of
src/reports/*_sentences.cpp or *_notes.cpp. Each field of a sentence, and each part of its form, is a text in a file that
has its id."""
import collections
import pathlib
import re
import sys

TEXT = r'"((?:[^"\\]|\\.)*)"'
ROW = re.compile(rf"\{{\s*{TEXT}\s*,\s*((?:{TEXT}\s*)+)\}}")
ALWAYS = {"hatches", "defer", "do_not_give"}  # what caution_words adds


def ids_of(source):
    for found in re.finditer(r"\.id\s*=\s*([^,;}]*)", source):
        yield from re.findall(TEXT, found[1])


def main():
    root, bad = pathlib.Path(sys.argv[1]), []
    given = collections.defaultdict(set)  # the texts of all files with an id
    for file in sorted([*root.glob("src/engine/*.cpp"), *root.glob("src/blends/*.cpp")]):
        source = file.read_text()
        for one in ids_of(source):
            given[one] |= set(re.findall(TEXT, source))
    said = set()
    for file in sorted([*root.glob("src/reports/*_sentences.cpp"), *root.glob("src/reports/*_notes.cpp")]):
        for row in ROW.finditer(file.read_text()):
            one, _, form = row[1].partition("/")
            said.add(one)
            if one not in given:
                bad.append(f"{file.name}: nothing says {one}")
                continue
            parts = form.split(", ") if form else []
            texts = {text.removeprefix(", ") for text in given[one]}
            bad += [f"{file.name}: {one} is given no form {part}" for part in parts if part not in texts]
            fields = set(re.findall(r"\{(\w+)[:}]", "".join(re.findall(TEXT, row[2])))) - ALWAYS
            bad += [f"{file.name}: {one} is given no {field}" for field in sorted(fields - given[one])]
    bad += [f"{one} has no words" for one in sorted(set(given) - said)]
    print("\n".join(bad + [f"{len(said)} looked at, {len(bad)} findings"]))
    return 1 if bad or not said else 0


if __name__ == "__main__":
    sys.exit(main())
