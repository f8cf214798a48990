#!/bin/sh
# Fuzzes each target with AFL++ for a while: afl.sh PROGRAMS WORK SECONDS [TARGET…], for the Makefile; run.sh is the same with
# libFuzzer. What was learnt stays in WORK/afl. Inputs that crash or hang go to WORK/found, and fail.
set -u
programs=$1 work=$2 seconds=$3
shift 3
here=$(dirname "$0")
[ $# -gt 0 ] || set -- $(/usr/bin/python3 "$here/seeds.py")
mkdir -p "$work/found" "$work/afl"
"$programs/dictionary" > "$work/words.dict" || exit 1
# The machine is left as it is: its governor, where its crashes go, which core does what.
export AFL_NO_UI=1 AFL_SKIP_CPUFREQ=1 AFL_I_DONT_CARE_ABOUT_MISSING_CRASHES=1 AFL_NO_AFFINITY=1 AFL_AUTORESUME=1
failed=0
for target; do
    out=$work/afl/$target
    rm -rf "$work/seeds/$target"
    /usr/bin/python3 "$here/seeds.py" "$target" "$work/seeds/$target" || exit 1
    # Inputs that are kept were defects once; they are as good a start as any.
    [ ! -d "$here/kept/$target" ] || cp "$here/kept/$target"/* "$work/seeds/$target/"
    afl-fuzz -V "$seconds" -t 10000 -G 8192 -i "$work/seeds/$target" -o "$out" -x "$work/words.dict" \
        -- "$programs/${target}_target" > "$work/afl/$target.log" 2>&1
    status=$?
    runs=$(sed -n 's/^execs_done *: *//p' "$out/default/fuzzer_stats" 2> /dev/null)
    bad=$(find "$out/default/crashes" "$out/default/hangs" -name 'id*' 2> /dev/null)
    for input in $bad; do
        cp "$input" "$work/found/$target-$(sha1sum < "$input" | cut -c1-40)"
    done
    if [ "$status" -eq 0 ] && [ -z "$bad" ]; then
        echo "   ok  $target: ${runs:-0} inputs in $seconds s"
    else
        echo "FAILED $target, see $work/afl/$target.log and $work/found"
        failed=1
    fi
done
exit "$failed"
