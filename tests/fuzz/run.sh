#!/bin/sh
# Fuzzes each target for a while: run.sh PROGRAMS WORK SECONDS [TARGET…], for the Makefile.
#
# PROGRAMS holds x_target for each target x, and dictionary. WORK keeps what was learnt from one run to the next: seeds,
# corpus and log of each target. An input that crashes, leaks, hangs, or trips a sanitizer goes to WORK/found, and fails.
set -u
programs=$1 work=$2 seconds=$3
shift 3
here=$(dirname "$0")
[ $# -gt 0 ] || set -- $(/usr/bin/python3 "$here/seeds.py")
mkdir -p "$work/found"
"$programs/dictionary" > "$work/words.dict" || exit 1
# Ten seconds by the clock are for what never ends; entry.c looks for the second of the processor.
options="-timeout=10 -rss_limit_mb=2048 -malloc_limit_mb=1024 -max_len=8192 -print_final_stats=1 -dict=$work/words.dict"
export UBSAN_OPTIONS=print_stacktrace=1
failed=0
for target; do
    mkdir -p "$work/corpus/$target"
    rm -rf "$work/seeds/$target"
    /usr/bin/python3 "$here/seeds.py" "$target" "$work/seeds/$target" || exit 1
    kept=$here/kept/$target
    [ -d "$kept" ] || kept=
    "$programs/${target}_target" $options -max_total_time="$seconds" -artifact_prefix="$work/found/$target-" \
        "$work/corpus/$target" "$work/seeds/$target" $kept > "$work/$target.log" 2>&1
    status=$?
    runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$work/$target.log")
    if [ "$status" -eq 0 ]; then
        echo "   ok  $target: ${runs:-0} inputs in $seconds s"
    else
        echo "FAILED $target, see $work/$target.log:"
        grep -E -A 12 '^(==|.*runtime error|too slow|[^ ]*Assert)|SUMMARY|Test unit written' "$work/$target.log" | head -60
        failed=1
    fi
done
exit "$failed"
