#!/bin/sh
# The whole club at once: `build -o FOLDER/`, its names, and that it touches no file whose bytes stay the same.
set -u
cd "$TMPDIR" || exit 1
. "$SETWRIGHT_SRC/tests/shell/expect.sh"

# holds NAME FOLDER FILE...: the folder holds these files and no other, hidden ones included.
holds()
{
    name=$1 folder=$2
    shift 2
    printf '%s\n' "$@" | sort > wanted
    ls -A "$folder" | sort > there
    diff wanted there | sed 's/^/  /'
    cmp -s wanted there
    verdict $? "$name"
}

cat > club.block <<'END_'
units kg
lift squat { kind competition; loads bar; works quads }
athlete ines { max squat 120 kg on 2026-12-01 }
athlete piotr { max squat 160 kg on 2026-12-01 }
group platform { ines, piotr }
checks { off weekly-sets because "one lift is enough here"; off frequency because "likewise"; off muscle-sets because "likewise" }
block base { for platform; weeks 3; day A on mon { squat 4 x 5 at 75% } }
block build { for piotr; starts 2027-03-01; weeks 2; day A on tue { squat 5 x 3 at 80% } }
season winter { for platform; starts 2027-01-04; run base, break 1 week, base }
END_

# Names.
expect 'a folder is made and filled' 0 - "$sw" build -o out/ club.block
holds 'a file for each athlete and block; a block run again has its number' out \
    ines-base.txt ines-base-2.txt piotr-base.txt piotr-base-2.txt piotr-build.txt
grep -q 'Mon 4 January 2027' out/ines-base.txt && ! grep -q 'Mon 1 February 2027' out/ines-base.txt
verdict $? 'the first time is in the first file'
grep -q 'Mon 1 February 2027' out/ines-base-2.txt && ! grep -q 'Mon 4 January 2027' out/ines-base-2.txt
verdict $? 'the second time is in the second file'
"$sw" build club.block > all.txt
cat out/*-b[au]*.txt | tr -d '\f' | sort > a
tr -d '\f' < all.txt | sort > b
cmp -s a b
verdict $? 'the files are together what is built in one'
expect 'later dates alone' 0 - "$sw" build --from 2027-02-01 --athlete ines -o late/ club.block
holds 'keep the number of the run' late ines-base-2.txt
cmp -s out/ines-base-2.txt late/ines-base-2.txt
verdict $? 'and the bytes'
for form in csv yaml; do
    expect "$form files" 0 - "$sw" build --format $form -o "$form/" club.block
    holds "names of $form files" $form ines-base.$form ines-base-2.$form piotr-base.$form piotr-base-2.$form piotr-build.$form
done
[ "$(cat csv/*.csv | grep -c squat)" = "$("$sw" build --format csv club.block | grep -c squat)" ]
verdict $? 'every row is in one of the csv files'

# Weeks.
expect 'a file a week' 0 - "$sw" build --per week --athlete ines -o weeks/ club.block
holds 'names with the week in them' weeks ines-base-week-01.txt ines-base-week-02.txt ines-base-week-03.txt \
    ines-base-2-week-01.txt ines-base-2-week-02.txt ines-base-2-week-03.txt
"$sw" build --athlete piotr --block build --week 2 club.block > one.txt
expect 'of a chosen week' 0 - "$sw" build --per week --week 2-9 --athlete piotr --block build -o week2/ club.block
holds 'only this one' week2 piotr-build-week-02.txt
cmp -s one.txt week2/piotr-build-week-02.txt
verdict $? 'which is what --week 2 prints'
expect 'dates choose weeks' 0 - "$sw" build --per week --from 2027-01-11 --to 2027-02-06 --athlete ines -o dated/ club.block
holds 'those with a day between them' dated ines-base-week-02.txt ines-base-week-03.txt ines-base-2-week-01.txt
expect '--per week on standard output' 2 '-o sheets/' "$sw" build --per week club.block
expect '--per something' 2 'block (the default) or week' "$sw" build --per day -o x/ club.block
expect '--per block is the default' 0 - "$sw" build --per block -o out/ club.block

# Other sheets.
expect 'the group sheet' 0 - "$sw" build --sheet group -o group/ club.block
holds 'is a file for each block' group base.txt base-2.txt build.txt
expect 'the group sheet by week' 0 - "$sw" build --sheet group --per week --block build -o groups/ club.block
holds 'is a file for each week of it' groups build-week-01.txt build-week-02.txt
expect 'the coach sheet' 0 - "$sw" build --sheet coach -o coach/ club.block
holds 'is one file' coach coach.txt
expect 'the coach sheet is not cut' 2 'leave --per out' "$sw" build --sheet coach --per week -o x/ club.block
expect 'a meet sheet where nobody has a meet' 2 'no such sheet' "$sw" build --sheet meet -o x/ club.block
sed 's/starts 2027-01-04; run/meet "Lakeside Open" on 2027-02-20; attempts squat 91%, 96%, 101%; run/' club.block > met.block
expect 'the meet sheet' 0 - "$sw" build --sheet meet -o meet/ met.block
holds 'is a file for each athlete and the block that ends on the meet' meet ines-base-2-meet.txt piotr-base-2-meet.txt
expect 'a sheet that is not there' 2 'did you mean group?' "$sw" build --sheet grup -o x/ club.block
expect 'a sheet that is text only' 2 'leave --format out' "$sw" build --sheet group --format csv -o x/ club.block
[ ! -e x ]
verdict $? 'none of these made its folder'

# Names that meet.
printf '%s\n' 'lift squat; athlete a; athlete a-b' 'block b-c { for a; starts 2027-01-04; weeks 1; day A { squat 3 x 5 at 50 kg } }' \
    'block c { for a-b; starts 2027-01-04; weeks 1; day A { squat 3 x 5 at 50 kg } }' > twins.block
expect 'two sheets of one name' 2 'the name of two sheets, of a in b-c and of a-b in c' "$sw" build -o x/ twins.block
[ ! -e x ]
verdict $? 'are not written'

# Bytes that stay the same: neither time nor inode changes.
stat -c '%n %i %y %z' out/* > before
echo 'from the spring' > out/gone-block.txt
expect 'built again' 0 - "$sw" build -o out/ club.block
stat -c '%n %i %y %z' out/*-b[au]* > after
cmp -s before after
verdict $? 'nothing is touched'
sed 's/80%/82.5%/' club.block > changed.block
ln out/piotr-build.txt old.txt
expect 'built after a change' 0 - "$sw" build -o out/ changed.block
stat -c '%n %i %y %z' out/*-b[au]* | diff before - | grep -c '^>' > count
[ "$(cat count)" = 1 ] && ! cmp -s old.txt out/piotr-build.txt
verdict $? 'one file is new'
[ "$(cat out/gone-block.txt)" = 'from the spring' ]
verdict $? 'a file that was not written here stays'
"$sw" build --format csv -o one.csv club.block && stat -c '%i %y %z' one.csv > before && "$sw" build --format csv -o one.csv club.block
stat -c '%i %y %z' one.csv | cmp -s before -
verdict $? 'a single file is not touched either'
if command -v git > /dev/null; then
    (cd out && git init -q . && git add -A && git -c user.name=t -c user.email=t@localhost commit -q -m 1)
    "$sw" build -o out/ club.block
    [ "$(git -C out status --short)" = ' M piotr-build.txt' ]
    verdict $? 'git shows the one that changed'
    rm -rf out/.git
fi

# All or nothing.
mkdir -p half/piotr-build.txt
expect 'one name is taken by a folder' 3 'half/piotr-build.txt' "$sw" build -o half/ club.block
holds 'nothing was written' half piotr-build.txt
expect 'a folder in a folder that is not there' 3 'no such folder' "$sw" build -o none/such/ club.block
: > file
expect 'a file where the folder should be' 3 'file' "$sw" build -o file/ club.block
mkdir own && cp club.block own/ines-base.txt
expect 'an output that is an input' 2 'one of the files that were read' "$sw" build -o own/ own/ines-base.txt
cmp -s club.block own/ines-base.txt
verdict $? 'which stays'
holds 'alone' own ines-base.txt
sed 's/squat 4 x 5/sqaut 4 x 5/' club.block > faulty.block
expect 'files with an error' 1 'nothing was built' "$sw" build -o fresh/ faulty.block
[ ! -e fresh ]
verdict $? 'make no folder'
# Root may write anywhere, so somebody else tries.
mkdir shut && cp club.block shut-club.block && chmod 555 shut && chmod 755 . && chmod 644 shut-club.block
as=
[ "$(id -u)" != 0 ] || as='setpriv --reuid=65534 --regid=65534 --clear-groups'
if [ -z "$as" ] || $as "$sw" check "$TMPDIR/shut-club.block" > /dev/null 2>&1; then
    expect 'a folder that can only be read' 3 'no permission' $as "$sw" build -o shut/ "$TMPDIR/shut-club.block"
    [ -z "$(ls -A shut)" ]
    verdict $? 'stays empty'
fi

# Progress: on a terminal alone, and only after a second. The file comes through a pipe, slowly.
cat > slowly.py <<'END_'
import os, pty, sys, threading, time
program, pause = sys.argv[1], float(sys.argv[2])
os.mkfifo('pipe')
def feed():
    with open('pipe', 'w') as pipe:
        time.sleep(pause)
        pipe.write(open('club.block').read())
threading.Thread(target=feed, daemon=True).start()
child, terminal = pty.fork()
if not child:
    os.execv(program, [program, 'build', '--per', 'week', '-o', 'slow/', 'pipe'])
said = b''
try:
    while True:
        got = os.read(terminal, 4096)
        if not got:
            break
        said += got
except OSError:  # Linux: the other end is closed
    pass
os.waitpid(child, 0)
os.remove('pipe')
sys.stdout.buffer.write(said)
END_
python3 slowly.py "$sw" 1.3 > said
grep -q 'sheets: [0-9]* of 14' said
verdict $? 'a slow build shows how far it is'
tail -c 4 said | od -An -c | tr -d ' \n' | grep -q -F '\r033[K'
verdict $? 'and takes the line away'
python3 slowly.py "$sw" 0 > said
[ ! -s said ]
verdict $? 'a quick one is silent'
exit $status
