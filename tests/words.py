#!/usr/bin/python3
"""Every keyword, format, command, option and finding is in the manual, and has a test.

The tables are read from the program where it shows them (`--help`, `explain`) and from src/ where it does not.
"""
import os
import re
import subprocess
import sys

TOP = os.environ.get("SETWRIGHT_SRC", os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
# syntax/ is tested through its one door, check/ and cmd/ as wholes
UNITS = ("base", "calc", "records", "model", "plan", "emit")
PROGRAM = os.environ.get("SETWRIGHT", os.path.join(TOP, ".build", "release", "setwright"))


def read(*path):
    with open(os.path.join(TOP, *path), encoding="utf-8") as file:
        return file.read()


def out(*words):
    return subprocess.run([PROGRAM, *words], stdout=subprocess.PIPE, encoding="utf-8", check=True).stdout


def code_of(manual):
    """What stands in the manual as code: in fences and between backticks."""
    fences = re.findall(r"^ *```.*?^ *```", manual, re.M | re.S)
    prose = re.sub(r"^ *```.*?^ *```", "", manual, flags=re.M | re.S)
    return "\n".join(fences + re.findall(r"`([^`]+)`", prose))


def stands_in(word, text):
    return re.search(r"(?<![\w-])" + re.escape(word) + r"(?![\w-])", text) is not None


def missing(words, text):
    return [word for word in words if not stands_in(word, text)]


def keywords():
    return re.findall(r'^\s*[WX]\("([^"]+)"', read("src", "syntax", "words.c"), re.M)


def formats():
    return re.findall(r'\.name = "([^"]+)"', read("src", "emit", "formats.c"))


def commands():
    listed = out("--help").split("Commands:")[1].split("\n\n")[0]
    return re.findall(r"^  ([a-z]+) ", listed, re.M)


def options():
    pages = "".join(out(command, "--help") for command in commands())
    return sorted(set(re.findall(r"^.{2,6}(--[a-z-]+)", pages, re.M)))


def findings():
    return re.findall(r"^([a-z-]+) ", out("explain"), re.M)


def rules():
    return re.findall(r'\.name = "([^"]+)"', read("src", "check", "rules.c"))


def tests_text():
    """All that tests say and expect, but for the tables that this test walks."""
    texts = []
    for folder, _, names in os.walk(os.path.join(TOP, "tests")):
        for name in names:
            if name.endswith((".block", ".txt", ".py", ".sh", ".c", ".h")) and name != os.path.basename(__file__):
                with open(os.path.join(folder, name), encoding="utf-8", errors="replace") as file:
                    texts.append(file.read())
    return "\n".join(texts)


def expected_findings():
    """The names that expected outputs carry: [duplicate-name] at the end of a finding's first line."""
    names = set()
    for folder, _, files in os.walk(os.path.join(TOP, "tests", "cases")):
        for name in files:
            if name.endswith(".txt"):
                with open(os.path.join(folder, name), encoding="utf-8", errors="replace") as file:
                    names.update(re.findall(r"\[([a-z-]+)\]$", file.read(), re.M))
    return names


def verdict(faults, name):
    print("%s %s" % ("not ok" if faults else "ok", name))
    if faults:
        print("    without: " + ", ".join(faults))
    return bool(faults)


def main():
    manual, cases = code_of(read("grammar", "LANGUAGE.md")), tests_text()
    failed = False
    for what, table in (("keyword", keywords), ("format", formats), ("command", commands), ("option", options),
                        ("finding", findings)):
        words = table()
        if not words:
            failed |= verdict(["any"], "there is a table of %ss" % what)
        failed |= verdict(missing(words, manual), "every %s is in the manual" % what)
        failed |= verdict(missing(words, cases), "every %s is met in a test" % what)
    syntax = os.path.join("tests", "cases", "syntax")
    blocks = "\n".join(read(syntax, name) for name in os.listdir(os.path.join(TOP, syntax))
                       if name.endswith(".block") and name != "encoding.block")
    failed |= verdict(missing(keywords(), blocks), "every keyword is parsed in tests/cases/syntax")
    plain = [name for name in findings() if name not in rules()]
    failed |= verdict(sorted(set(plain) - expected_findings()),
                      "every finding that is no rule is expected word for word in tests/cases")
    units = os.listdir(os.path.join(TOP, "tests", "unit"))
    there = {name[:-len("_test.c")] for name in units if name.endswith("_test.c")}
    failed |= verdict([name for name in formats() if "as_" + name not in there], "every format has its unit test")
    sources = [name[:-len(".c")] for folder in UNITS for name in os.listdir(os.path.join(TOP, "src", folder))
               if name.endswith(".c")]
    failed |= verdict(sorted(set(sources) - there), "every source up to emit/ has its unit test")
    found = missing(["zzz", "squat"], manual)
    failed |= verdict([] if found == ["zzz"] else ["zzz"], "a word that is nowhere is found")
    return failed


if __name__ == "__main__":
    sys.exit(main())
