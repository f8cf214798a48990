#!/bin/sh
# What setwright costs, measured in one run: medians over TURNS turns (9) in which all commands take part one after the
# other, given as ratios to a floor that is built and run beside it.
#
#   start    `check` of a club of 60 lines, against an empty static C program
#   text     10 MB of the language: parsing alone, and `check` of it, against a bare flex scan (-CFar) of the same bytes;
#            as templates nobody trains, and as blocks written out for one lifter, of which 1 MB too, and memory; these
#            write the same lines week by week, as coaches do, so once more with no line of a lift twice
#   plan     12 weeks, 4 days, 7 entries, from a roster to CSV, output discarded, a row each, against a program by hand
#            that writes the same bytes (rows_fast.c) and, second ratio, a plain printf of such rows; peak memory at 100,
#            1,000, 10,000 and 100,000 athletes. Two threads against one, beside two processes that have nothing in
#            common, which is what the machine gives; and a roster in which no two athletes have a max in common. Takes
#            minutes.
#   file     the same 10,000 athletes to a file, on tmpfs where /dev/shm is one
#   growth   how time grows with athletes, weeks, sets, blocks, templates, files, diary entries (growth.py)
#
# SETWRIGHT is the program; libsetwright.a stands beside it. Needs gcc, flex and python3.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
: "${SETWRIGHT:?the program to measure}"
: "${TURNS:=9}"
export LC_ALL=C
built=$(dirname "$SETWRIGHT")
work=$(mktemp -d -t setwright-bench.XXXXXX)
in_memory=$work
trap 'rm -rf "$work" "$in_memory"' EXIT
trap 'exit 1' INT TERM HUP
[ "$(stat -f -c %T /dev/shm 2>/dev/null)" != tmpfs ] || in_memory=$(mktemp -d -p /dev/shm setwright-bench.XXXXXX)
written=$in_memory/written.csv
cd "$work"

cc="gcc -O2 -std=c11 -D_GNU_SOURCE"
$cc -static -o empty "$here/empty.c"
$cc -static -o turns "$here/turns.c"
$cc -o rows "$here/rows.c"
$cc -o make "$here/make.c"
$cc -O3 -o rows_fast "$here/rows_fast.c"
$cc -I"$here/../../src" -o parse "$here/parse.c" "$built/libsetwright.a" -lyaml -lcsv -lutf8proc -lm
flex -CFar -o scan.c "$here/scan.l"
$cc -o scan scan.c

./make small > small.block
./make large 10000000 > large.block
printf 'use "large.block"\n' > main.block # what is only used may hold more than is trained
./make written 1000000 > written-1.block
./make written 10000000 > written-10.block
awk '{ sub(/"$/, " " NR "\"") } 1' written-10.block > written-10-once.block
: > empty.block
for part in 1 2; do
    echo "\"$SETWRIGHT\" build --format csv --part $part/2 100000/club.block > /dev/null &"
done > apart.sh
echo wait >> apart.sh
"$SETWRIGHT" check written-10.block # has nothing to say
counts="100 1000 10000 100000"
for count in $counts; do
    mkdir "$count"
    ./make club > "$count/club.block"
    ./make athletes "$count" > "$count/athletes.csv"
done
mkdir unlike
./make club > unlike/club.block
./make unlike 10000 > unlike/athletes.csv
bytes=$(wc -c < large.block)
rows=$("$SETWRIGHT" build --format csv 100/club.block | wc -l)
rows=$(((rows - 1) / 100)) # an athlete

# A thousand athletes have each max of a lift that any number of them has, unless all are unlike.
for roster in 1000 unlike; do
    "$SETWRIGHT" build --format csv $roster/club.block > expected.csv
    if ! ./rows_fast $roster/athletes.csv | cmp -s - expected.csv; then
        echo "rows_fast.c writes other bytes than setwright: bring its tables up to date" >&2
        exit 1
    fi
done
rm expected.csv

echo "setwright $("$SETWRIGHT" --version | cut -d' ' -f2), medians of $TURNS turns in rotation"
processor=$(sed -n 's/^model name[^:]*: *//p' /proc/cpuinfo | sed 1q)
memory=$(($(getconf _PHYS_PAGES) / 1024 * $(getconf PAGESIZE) / 1024))
echo "machine: $(uname -srm), $(getconf _NPROCESSORS_ONLN) cores, $processor, $memory MiB"
echo "compiler: $(gcc --version | sed 1q)"
echo "inputs: $(wc -l < small.block) lines; $bytes bytes; $rows rows an athlete"
echo

# NAME AGAINST TIMES UNITS COMMAND
{
    printf 'start: an empty program\t-\t40\t1\t./empty\n'
    printf 'start: check, 60 lines\tstart: an empty program\t40\t1\t%s check small.block\n' "$SETWRIGHT"
    printf 'text: flex, a byte\t-\t1\t%d\t./scan large.block\n' "$bytes"
    printf 'text: parse, a byte\ttext: flex, a byte\t1\t%d\t./parse large.block\n' "$bytes"
    printf 'text: check, a byte\ttext: flex, a byte\t1\t%d\t%s check main.block\n' "$bytes" "$SETWRIGHT"
    printf 'text: check, empty\t-\t1\t1\t%s check empty.block\n' "$SETWRIGHT"
    for size in 1 10 10-once; do
        part=$(wc -c < written-$size.block)
        flex="text: flex, $size MB written out"
        printf '%s\t-\t1\t%d\t./scan written-%s.block\n' "$flex" "$part" "$size"
        printf 'text: parse, %s MB written out\t%s\t1\t%d\t./parse written-%s.block\n' "$size" "$flex" "$part" "$size"
        printf 'text: check, %s MB written out\t%s\t1\t%d\t%s check written-%s.block\n' "$size" "$flex" "$part" "$SETWRIGHT" "$size"
    done
    fast='plan: hand-optimised, a row'
    printf '%s\t-\t1\t%d\t./rows_fast 10000/athletes.csv\n' "$fast" $((10000 * rows))
    printf 'plan: printf, a row\t%s\t1\t%d\t./rows %d\n' "$fast" $((1000 * rows)) $((1000 * rows))
    for count in $counts; do
        printf 'plan: %d athletes, a row\t%s;plan: printf, a row\t1\t%d\t%s build --format csv %d/club.block\n' \
            "$count" "$fast" $((count * rows)) "$SETWRIGHT" "$count"
    done
    printf 'plan: hand-optimised, 100000\t%s\t1\t%d\t./rows_fast 100000/athletes.csv\n' "$fast" $((100000 * rows))
    printf 'plan: 100000 athletes, 2 threads\tplan: 100000 athletes, a row\t1\t%d\t%s build --format csv --threads 2 %s\n' \
        $((100000 * rows)) "$SETWRIGHT" 100000/club.block
    printf 'plan: 100000 athletes, 2 parts\tplan: 100000 athletes, a row\t1\t%d\t/bin/sh apart.sh\n' $((100000 * rows))
    printf 'plan: hand-optimised, unlike\t%s\t1\t%d\t./rows_fast unlike/athletes.csv\n' "$fast" $((10000 * rows))
    printf 'plan: 10000 unlike, a row\tplan: hand-optimised, unlike;%s\t1\t%d\t%s build --format csv %s\n' \
        "$fast" $((10000 * rows)) "$SETWRIGHT" unlike/club.block
    printf 'file: hand-optimised, a row\t-\t1\t%d\t./rows_fast 10000/athletes.csv > %s\n' $((10000 * rows)) "$written"
    printf 'file: 10000 athletes, a row\tfile: hand-optimised, a row\t1\t%d\t%s build --format csv 10000/club.block > %s\n' \
        $((10000 * rows)) "$SETWRIGHT" "$written"
} > plan
./turns "$TURNS" < plan
echo
TURNS=5 python3 "$here/growth.py"
