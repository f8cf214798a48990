#!/usr/bin/env python3
"""Mistakes that a coach makes, and what `setwright check` says to each.

A case is tests/cases/findings/NAME.block whose first line is `# exit N`; NAME.txt is its exact standard error. Other files
there (club.block, rosters) are what cases use. Because the .txt is written by the program, the places are stated a second
time by a person, in comments of the case, one line for each finding in the order printed:

    # at: sqaut           the words of the source that are marked, from the first to the last mark
    # note: squat         the words marked at a second place of the finding before it
    # says: `for`         words that the finding before it must contain, in its message or its help
    # args: --strict      further words of the command line

An `# at:` with nothing after it is a place in an empty file. SETWRIGHT_GOLDEN=1 rewrites the .txt files."""
import os
import re
import subprocess
import sys

SOURCE = os.environ.get("SETWRIGHT_SRC", os.getcwd())
PROGRAM = os.environ.get("SETWRIGHT", os.path.join(SOURCE, ".build/release/setwright"))
GOLDEN = os.environ.get("SETWRIGHT_GOLDEN") == "1"
FOLDER = os.path.join(SOURCE, "tests/cases/findings")
HEAD = re.compile(r"^([^\s:][^:]*):(\d+):(\d+): (error|warning|advice|note): (.*)$")
failed = 0


def verdict(name, wrong):
    global failed
    for line in wrong:
        print("  " + line)
    print(("not ok " if wrong else "ok ") + name)
    failed += bool(wrong)


def read(path):
    with open(path, encoding="utf-8-sig", newline="") as file:
        return file.read()


def comments(text):
    """What the comments at the top of a case state: the exit status, the arguments, the findings in order."""
    status, args, findings = None, [], []
    for line in text.splitlines():
        match = re.match(r"# (exit|args|at|note|says):? ?(.*)$", line)
        if not match:
            break
        word, rest = match.groups()
        if word == "exit":
            status = int(rest)
        elif word == "args":
            args = rest.split()
        elif word == "at":
            findings.append({"at": rest, "notes": [], "says": []})
        else:
            findings[-1]["notes" if word == "note" else "says"].append(rest)
    return status, args, findings


def marked(lines, index, file, line, column):
    """The source text under the marks of the excerpt that follows a head line."""
    for row in lines[index + 1:index + 4]:
        marks = re.match(r"^\s*\|\s*(\^+)", row)
        if marks:
            source = read(os.path.join(FOLDER, file)).splitlines()
            text = source[line - 1] if line <= len(source) else ""
            return text[column - 1:column - 1 + len(marks.group(1))]
    return None


def printed(text):
    """The findings as printed, in the form of comments()."""
    findings, lines = [], text.splitlines()
    for index, row in enumerate(lines):
        head = HEAD.match(row)
        if head:
            file, line, column, level, message = head.groups()
            words = marked(lines, index, file, int(line), int(column))
            if level != "note":
                findings.append({"at": words, "notes": [], "message": message})
            elif findings:
                findings[-1]["notes"].append(words)
        elif row.startswith("  help: ") and findings:
            findings[-1]["message"] += "\n" + row
    return findings


def places(stated, found):
    wrong = []
    if len(stated) != len(found):
        wrong.append(f"{len(found)} findings, and {len(stated)} are stated")
    for want, got in zip(stated, found):
        if want["at"] != (got["at"] or ""):
            wrong.append(f"marks {got['at']!r}, stated is {want['at']!r}: {got['message'].splitlines()[0]}")
        if sorted(want["notes"]) != sorted(got["notes"]):
            wrong.append(f"second places {got['notes']}, stated are {want['notes']}: {got['message'].splitlines()[0]}")
        wrong += [f"does not say {words!r}: {got['message']}" for words in want["says"] if words not in got["message"]]
    return wrong


def check(name):
    status, args, stated = comments(read(os.path.join(FOLDER, name)))
    run = subprocess.run([PROGRAM, "check", *args, name], cwd=FOLDER, capture_output=True, timeout=60, check=False)
    text, golden = run.stderr.decode("utf-8"), os.path.join(FOLDER, name[:-len(".block")] + ".txt")
    wrong = places(stated, printed(text))
    if run.returncode != status:
        wrong.append(f"exit {run.returncode}, stated is {status}")
    if run.stdout:
        wrong.append("something on standard output")
    if GOLDEN and not wrong:
        with open(golden, "w", encoding="utf-8", newline="") as file:
            file.write(text)
    if not os.path.exists(golden):
        wrong.append("there is no " + os.path.basename(golden))
    elif read(golden) != text:
        wrong.append("other words than in " + os.path.basename(golden) + ":")
        wrong += ["    " + line for line in text.splitlines()]
    return wrong


def cases():
    names = sorted(name for name in os.listdir(FOLDER) if name.endswith(".block"))
    return [name for name in names if re.match(r"# exit \d", read(os.path.join(FOLDER, name)))]


def stray(names):
    """Files in the folder that no case names."""
    text = "".join(read(os.path.join(FOLDER, name)) for name in os.listdir(FOLDER) if name.endswith(".block"))
    known = set(names) | {name[:-len(".block")] + ".txt" for name in names}
    return [f"{name} belongs to no case" for name in sorted(os.listdir(FOLDER))
            if name not in known and f'"{name}' not in text]


def unmet():
    """Kinds of findings that no case shows; the rules of the trade have cases of their own."""
    kinds = re.findall(r'\[KIND_\w+\] = \{\s*"([a-z-]+)"', read(os.path.join(SOURCE, "src/base/kinds.c")))
    collected = os.path.join(SOURCE, "tests/cases/collect")  # sheets have cases of their own: tests/collect.py
    shown = "".join(read(os.path.join(folder, name)) for folder in (FOLDER, collected) for name in os.listdir(folder)
                    if name.endswith(".txt"))
    return ["no kinds were found"] * (not kinds) + [f"no case shows [{kind}]" for kind in kinds if f"[{kind}]\n" not in shown]


def main():
    names = cases()
    for name in names:
        verdict(name, check(name))
    verdict("no file without a case", stray(names))
    verdict("no kind of finding without a case", unmet())
    sys.exit(failed > 0)


main()
