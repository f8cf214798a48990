#!/usr/bin/python3
"""Who may include whom in src/: folders follow the data from base to cmd; no edge leads upward or in a circle."""
import os
import re
import sys

ALLOWED = {
    "base": set(),
    "calc": {"base"},
    "syntax": {"base"},
    "records": {"base"},
    "model": {"base", "calc", "syntax", "records"},
    "plan": {"base", "calc", "model"},
    "check": {"base", "calc", "model", "plan"},
    "emit": {"base", "model", "plan"},
    "api": {"base", "records", "model", "plan", "check", "emit"},
}
TOP = {"setwright.h": set(), "main.c": {"cmd"}}
MADE = {"setwright.tab.h"}  # bison's, for syntax/ alone
ONLY_FOR = {"model/club.h": "model", "plan/work.h": "plan", "api/inner.h": "api", "api/match.h": "api"}  # inner headers say so at their head
INCLUDE = re.compile(r'^\s*#\s*include\s*"([^"]+)"', re.M)


def sources(root):
    for folder, _, names in sorted(os.walk(root)):
        for name in sorted(names):
            if name.endswith((".c", ".h")):
                yield os.path.relpath(os.path.join(folder, name), root)


def allowed_for(path):
    folder = os.path.dirname(path).split("/")[0]
    if not folder:
        return folder, TOP.get(path)
    if folder == "cmd":
        return folder, set(ALLOWED) | {"cmd"}
    return folder, ALLOWED[folder] | {folder} if folder in ALLOWED else None


def judge(path, target, present):
    """What is wrong with path including target; None when nothing is."""
    folder, allowed = allowed_for(path)
    if allowed is None:
        return "no rule says what this folder or file may include"
    if target in MADE:
        return None if folder == "syntax" else "the parser's own header is for syntax/ alone"
    if target not in present:
        return "is no header of src/, written from src/"
    into = os.path.dirname(target).split("/")[0]
    if not into:
        known = target == "setwright.h" and folder in ("", "api", "cmd")
        return None if known else "only api/, cmd/ and the top know the library's header"
    if target in ONLY_FOR and folder != ONLY_FOR[target]:
        return "is an inner header of %s/" % ONLY_FOR[target]
    return None if into in allowed else "%s/ may not include %s/" % (folder or "src", into)


def circle(edges):
    """A circle among headers, or None."""
    done, open_ = set(), []

    def visit(node):
        if node in open_:
            return open_[open_.index(node):] + [node]
        if node in done:
            return None
        open_.append(node)
        for target in edges.get(node, ()):
            found = visit(target)
            if found:
                return found
        done.add(open_.pop())
        return None

    for node in sorted(edges):
        found = visit(node)
        if found:
            return found
    return None


def read(root):
    return {path: INCLUDE.findall(open(os.path.join(root, path), encoding="utf-8").read()) for path in sources(root)}


def faults_of(edges):
    return ["%s: \"%s\" %s" % (path, target, fault)
            for path, targets in edges.items() for target in targets
            for fault in [judge(path, target, edges)] if fault]


def verdict(fault, name):
    print("%s %s" % ("not ok" if fault else "ok", name))
    for line in fault or ():
        print("    " + line)
    return bool(fault)


def main():
    edges = read(os.path.join(os.environ.get("SETWRIGHT_SRC", "."), "src"))
    failed = verdict(faults_of(edges), "every include in src/ is an edge that is allowed")
    found = circle(edges)
    failed |= verdict([" -> ".join(found)] if found else None, "no circle of headers")
    # the test itself: each of these must be told apart from what is allowed
    present = dict(edges, **{"check/rule.h": [], "cmd/command.h": [], "api/inner.h": []})
    upward = [("base/dec.c", "calc/curve.h"), ("model/names.c", "plan/plan.h"), ("emit/out.c", "check/rule.h"),
              ("plan/sets.c", "syntax/words.h"), ("check/run.c", "emit/out.h"), ("api/build.c", "cmd/command.h"), ("cmd/build.c", "api/inner.h"),
              ("plan/sets.c", "model/club.h"), ("base/dec.c", "dec.h"), ("model/load.c", "setwright.tab.h"),
              ("plan/sets.c", "setwright.h"), ("main.c", "plan/plan.h")]
    missed = ["%s: \"%s\" would pass" % edge for edge in upward if not judge(edge[0], edge[1], present)]
    failed |= verdict(missed, "an edge that is not allowed is found")
    found = circle({"a.h": ["b.h"], "b.h": ["a.h"]})
    failed |= verdict(None if found else ["a.h -> b.h -> a.h would pass"], "a circle is found")
    return failed


if __name__ == "__main__":
    sys.exit(main())
