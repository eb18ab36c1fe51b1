"""The messages of faults in the sources, and which of them no test expects."""
import re

LITERAL = re.compile(r'R"\((.*?)\)"|"((?:[^"\\\n]|\\.)*)"|\'(?:[^\'\\]|\\.)\'', re.S)
THROWN = re.compile(r"\b(?:throw\b|refuse\(|refuse_both\()")
STATEMENT = re.compile(r'(?:R"\(.*?\)"|"(?:[^"\\\n]|\\.)*"|\'(?:[^\'\\]|\\.)\'|[^;"\'])*', re.S)
COMMENT = re.compile(r'((?:R"\(.*?\)"|"(?:[^"\\\n]|\\.)*"|\'(?:[^\'\\]|\\.)\'))|//[^\n]*', re.S)
EXPECT = re.compile(r"# expect: \d+: (.+)")
SHORTEST = 12        # of a message; what is shorter is a joint between parts
SHORTEST_SHARE = 8   # of a part of a message that stands for all of it

# Messages no user can provoke, each with the reason.
EXEMPT = {
    "0 <= low <= central <= high": "the reader of rations refuses such a row first",
    "d lies before the hatch": "no age read from a file or a flag is below 0",
    "Clp ended without a verdict, status": "a fault of the solver, not of the user",
    "a style sheet with a character that HTML reads as its own": "the one style sheet is the program's own",
    "an elastic program is always possible": "every row may give way, so Clp always finds a mix",
    "a signal came; nothing is left behind": "the signal ends the program before it can say so",
    "no way to shop was found among the many there are: plan for fewer days, or state fewer feeds":
        "the search stops only after more ways than a test has time for",
    ", cannot be made": "a copy fails only where nothing can be written, which is said before",
    "at most 18 h": "of a diary that somebody else has written: tests/diary/hostile.py",
    "min from UTC": "of a diary that somebody else has written: tests/diary/hostile.py",
    "one from 1 on, as cropful counts entries and visits": "the same",
    "it is damaged (": "the same, and tests/unit/readers/diary_form_test.cpp",
    "); put back a copy of it, or move it away to begin anew": "the same",
    "no way to print \"": "a template and its arguments are the program's own: house.sentences, unit.reports",
    "ArgumentMismatch": "a name of the parsing library, never shown",
}


def literals(text):
    found = [raw or plain.replace('\\"', '"').replace("\\\\", "\\") for raw, plain in LITERAL.findall(text)]
    return [" ".join(words.split()) for words in found]


def messages_of(text, whole):
    """The string literals of statements that throw; of all of the text when `whole`."""
    text = re.sub(r"#include[^\n]*", "", COMMENT.sub(lambda m: m[1] or "", text))
    parts = [text] if whole else [STATEMENT.match(text, m.start())[0] for m in THROWN.finditer(text)]
    return {words for part in parts for words in literals(part) if len(words) >= SHORTEST}


def is_expected(message, expectations):
    return any(message in words or (len(words) >= SHORTEST_SHARE and words in message) for words in expectations)


def other_expectations(root):
    """What tests/faults and tests/unit expect."""
    found = []
    for file in (root / "tests/faults").glob("*.toml"):
        found += EXPECT.findall(file.read_text(errors="replace").partition("\n")[0])
    for file in (root / "tests/unit").rglob("*.cpp"):
        found += literals(file.read_text())
    return [" ".join(words.split()) for words in found]


def uncovered(root, gallery):
    """(number of messages, findings). Only the gallery speaks for what the commands themselves say."""
    count, found, seen = 0, [], set()
    everything = gallery + other_expectations(root)
    for file in sorted(root.glob("src/**/*.[ch]pp")) + sorted(root.glob("include/**/*.hpp")):
        name = str(file.relative_to(root))
        ours = gallery if "/commands/" in name or name == "src/main.cpp" else everything
        for message in sorted(messages_of(file.read_text(), name.endswith("parse_faults.cpp"))):
            count += 1
            seen.add(message)
            if is_expected(message, ours) == (message in EXEMPT):
                fault = "no longer to be exempt" if message in EXEMPT else "never expected"
                found.append(f"{name}: {fault}: {message}")
    found += [f"exempt, but not in the sources: {message}" for message in EXEMPT if message not in seen]
    return count, found


def self_check():
    code = 'a("not thrown here"); // throw "nor is this one"\n'
    code += 'throw X(n + ": a; \\"b\\" long one", \';\', \'"\', "the second long");'
    assert messages_of(code, False) == {': a; "b" long one', "the second long"}
    assert messages_of(code, True) == {"not thrown here", ': a; "b" long one', "the second long"}
    assert messages_of('#include "a/long/name.hpp"\nwanted.refuse(R"(a "raw" word)");', False) == {'a "raw" word'}
    assert is_expected("says nothing without", ["--a says nothing without --b"])
    assert is_expected("at most 5 years: 1826 d", ["at most 5 years"])
    assert not is_expected("at most 5 years: 1826 d", ["at most", "no more than 5 years"])
