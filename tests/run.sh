#!/bin/sh
# Runs the tests and keeps count over several calls; the Makefile strings them together.
#
#   run.sh start                 forget earlier counts
#   run.sh head TEXT             print a headline
#   run.sh step TEXT COMMAND     headline, then a command that counts only when it fails
#   run.sh units VARIANT         every program built from tests/unit/*_test.c
#   run.sh programs VARIANT      every tests/*.sh and tests/*.py but this one
#   run.sh golden VARIANT        those of them that know SETWRIGHT_GOLDEN, to rewrite what they expect
#   run.sh total                 what failed, then `N passed, N failed`; exits 1 if anything did
#
# A whole-program test gets SETWRIGHT (the program), SETWRIGHT_SRC (top of the tree), SETWRIGHT_VARIANT,
# TMPDIR (its own, removed after it) and LOCPATH (holds de_DE.UTF-8). It prints a line a test, `ok NAME`
# or `not ok NAME`; other lines are remarks, shown when it fails. A program that ends badly, runs no test
# or leaves a sanitizer's report counts as one failure more. ONLY=TEXT runs those with TEXT in their name.
set -eu
cd "$(dirname "$0")/.."
top=$(pwd)
case ${BUILD:=.build} in /*) ;; *) BUILD=$top/$BUILD ;; esac
tally=$BUILD/tally
failures=$BUILD/failures
unset MAKEFLAGS MFLAGS MAKELEVEL LC_ALL LC_CTYPE LC_NUMERIC LC_TIME LC_COLLATE LC_MESSAGES LANGUAGE TZ || :
export LANG=C.UTF-8 LOCPATH="$BUILD/locale" PYTHONDONTWRITEBYTECODE=1 SETWRIGHT_SRC="$top"

headline()
{
    printf '\n== %s\n' "$1"
}

# count NAME PASSED FAILED
count()
{
    echo "$2 $3" >> "$tally"
    if [ "$3" -eq 0 ]; then
        printf '   ok %4d  %s\n' "$2" "$1"
    else
        printf 'FAILED %3d  %s\n' "$3" "$1"
        printf '%s: %d failed\n' "$1" "$3" >> "$failures"
    fi
}

# The sum of the numbers that a pattern finds in the log.
sum()
{
    sed -n "$1" "$log" | awk '{ n += $1 } END { print n + 0 }'
}

# try KIND NAME COMMAND...: runs one test program and counts what its log says.
try()
{
    kind=$1 name="$2 ($SETWRIGHT_VARIANT)"
    shift 2
    case $name in *"${ONLY:-}"*) ;; *) return 0 ;; esac
    mkdir -p "$TMPDIR" "$reports"
    status=0
    timeout 600 "$@" < /dev/null > "$log" 2>&1 || status=$?
    if [ "$kind" = unit ]; then
        passed=$(sum 's/^\[  PASSED  \] \([0-9]*\) test.*/\1/p')
        failed=$(sum 's/^\[  FAILED  \] \([0-9]*\) test.*/\1/p')
    else
        passed=$(grep -c '^ok\>' "$log" || :)
        failed=$(grep -c -E '^(not ok|FAIL)' "$log" || :)
    fi
    cat "$reports"/* >> "$log" 2> /dev/null && status=99
    if [ "$status" -ge 99 ] || { [ "$status" -ne 0 ] && [ "$failed" -eq 0 ]; }; then
        failed=$((failed + 1))
        echo "It ended with status $status (99: a sanitizer's finding, 124: stopped after 600 seconds)." >> "$log"
    elif [ "$passed" -eq 0 ] && [ "$failed" -eq 0 ]; then
        failed=1
        echo "It ran no test." >> "$log"
    fi
    count "$name" "$passed" "$failed"
    [ "$failed" -eq 0 ] || sed 's/^/    /' "$log"
    rm -rf "$TMPDIR" "$reports"
}

# Everything below belongs to one variant. The sanitizers write to files, since a test may expect its
# program to fail and never look at what it said.
variant()
{
    folder=$BUILD/$1
    log=$folder/test.log
    reports=$folder/reports
    SETWRIGHT=$folder/setwright
    export SETWRIGHT SETWRIGHT_VARIANT="$1" TMPDIR="$folder/tmp"
    export ASAN_OPTIONS="detect_leaks=1:exitcode=99:log_path=$reports/report"
    export UBSAN_OPTIONS="print_stacktrace=1:exitcode=99:log_path=$reports/report"
}

units()
{
    for source in tests/unit/*_test.c; do
        [ -e "$source" ] || continue
        unit=${source#tests/}
        unit=${unit%.c}
        try unit "$unit" "$folder/$unit"
    done
}

# The language a script names in its first line.
language()
{
    case $(sed 1q "$1") in *python*) echo /usr/bin/python3 ;; *bash*) echo bash ;; *) echo sh ;; esac
}

programs()
{
    for script in tests/*.sh tests/*.py; do
        case $script in
        tests/run.sh | 'tests/*.sh' | 'tests/*.py') ;;
        *) try program "$script" "$(language "$script")" "$script" ;;
        esac
    done
}

golden()
{
    for script in $(grep -l SETWRIGHT_GOLDEN tests/*.sh tests/*.py 2> /dev/null | grep -v '^tests/run.sh$'); do
        mkdir -p "$TMPDIR"
        SETWRIGHT_GOLDEN=1 "$(language "$script")" "$script"
        rm -rf "$TMPDIR"
    done
}

step()
{
    headline "$1"
    text=$1
    shift
    "$@" || count "$text" 0 1
}

total()
{
    if [ -s "$failures" ]; then
        headline 'failures'
        cat "$failures"
    fi
    awk '{ p += $1; f += $2 } END { printf "\n%d passed, %d failed\n", p, f; exit f > 0 || p == 0 }' "$tally"
}

case $1 in
start) mkdir -p "$BUILD" && : > "$tally" && : > "$failures" ;;
head) headline "$2" ;;
step) shift && step "$@" ;;
units) variant "$2" && headline "unit tests ($2)" && units ;;
programs) variant "$2" && headline "whole-program tests ($2)" && programs ;;
golden) variant "$2" && golden ;;
total) total ;;
esac
