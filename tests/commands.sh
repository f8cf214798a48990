#!/bin/sh
# The command line: exit statuses, help, narrowing, and outputs that are whole or not there at all.
set -u
cd "$TMPDIR" || exit 1
. "$SETWRIGHT_SRC/tests/shell/expect.sh"

cat > club.block <<'END'
units kg
lift squat { loads bar }
athlete ines { max squat 120 kg on 2026-12-01 }
athlete piotr { max squat 160 kg on 2026-12-01 }
group platform { ines, piotr }
END
cat > fine.block <<'END'
use "club.block"
block base { for platform; starts 2027-01-04; weeks 3; day A on mon { squat 3 x 5 at 75% } }
block build { for piotr; starts 2027-01-25; weeks 2; day B on tue { squat 5 x 3 at 80% } }
END
cat > warned.block <<'END'
use "club.block"
block base { for ines; starts 2027-01-04; weeks 3; deload week 4; day A on mon { squat 3 x 5 at 75% } }
END
cat > faulty.block <<'END'
use "club.block"
block base { for ines; starts 2027-01-04; weeks 3; day A on mon { sqaut 3 x 5 at 75% } }
END
cat > later.block <<'END'
language 2
use "club.block"
END
cat > lost.block <<'END'
use "gone.block"
block base { for ines; starts 2027-01-04; weeks 3; day A on mon { squat 3 5 at 75% } }
END

# Exit statuses.
expect 'no command is wrong usage' 2 'COMMAND' "$sw"
expect 'a file without a fault' 0 - "$sw" check fine.block
expect 'a warning is no error' 0 '[weeks]' "$sw" check warned.block
expect 'a warning under --strict is one' 1 '[weeks]' "$sw" check --strict warned.block
expect 'an error' 1 '[unknown-name]' "$sw" check faulty.block
expect 'nothing is built from errors' 1 'nothing was built' "$sw" build faulty.block
[ ! -s printed ]
verdict $? 'and nothing is printed'
expect 'nothing is built from warnings under --strict' 1 '[weeks]' "$sw" build --strict warned.block
expect 'a file that is not there' 3 'gone.block: no such file' "$sw" check gone.block
expect 'a used file that is not there, beside other errors' 3 '[syntax]' "$sw" check lost.block
expect 'a later language is a limit' 4 '[limit]' "$sw" check later.block
sed 's/base/other/' faulty.block > other.block
expect 'several files' 1 'other.block:2:' "$sw" check fine.block club.block other.block
expect 'a file named twice' 0 - "$sw" check fine.block fine.block ./fine.block

# Help and version, everywhere.
expect '--help' 0 - "$sw" --help
grep -q 'Commands:' printed
verdict $? 'lists the commands'
sed -n '/^Commands:/,/^$/s/^  \([a-z]\{2,\}\) .*/\1/p' printed > commands
for command in $(cat commands); do
    expect "$command --help" 0 - "$sw" "$command" --help
    grep -q "setwright $command" printed && grep -q '^Examples:' printed
    verdict $? "$command --help shows examples"
    expect "$command -h after other words" 0 - "$sw" "$command" gone.block -h
    expect "help $command" 0 - "$sw" help "$command"
    expect "$command --version" 0 - "$sw" "$command" --version
    grep -q '^setwright [0-9.]*$' printed
    verdict $? "$command --version names a version"
    expect "$command with an option that is not there" 2 '--no-such' "$sw" "$command" --no-such fine.block
done
[ "$(wc -l < commands)" -ge 5 ]
verdict $? 'the list of commands was read'
expect '--version' 0 - "$sw" --version

# Words that are not known.
expect 'a misspelt option' 2 'did you mean --format?' "$sw" build --formt csv fine.block
expect 'a misspelt option with its value' 2 'did you mean --format?' "$sw" build --formt=csv fine.block
expect 'an option with a value that is not there' 2 '--output needs a value' "$sw" build -o '' fine.block
expect 'an option whose value is empty' 2 '--accept needs a value' "$sw" check --accept= fine.block
expect 'another option whose value is empty' 2 '--write-accept needs a value' "$sw" check --write-accept= fine.block
expect 'a misspelt command' 2 'did you mean check?' "$sw" chek fine.block
expect 'a command far from all' 2 'setwright --help' "$sw" frobnicate
expect 'a file without its command' 2 'fine.block' "$sw" fine.block
expect 'a letter that is no option' 2 '-x' "$sw" build -xa ines fine.block
expect 'half an option that could be two' 2 '--f' "$sw" build --f csv fine.block
expect 'help of a command that is not there' 2 'did you mean check?' "$sw" help chek
expect 'an option of another command' 2 '--week' "$sw" check --week 2 fine.block
expect 'an option without its value' 2 'needs a value' "$sw" build fine.block --athlete
expect 'a value for an option that takes none' 2 '--strict' "$sw" check --strict=yes fine.block
expect 'no files' 2 'which files?' "$sw" check
expect 'a misspelt athlete' 2 'did you mean ines?' "$sw" build --athlete inez fine.block
expect 'an athlete far from all' 2 'no athlete or group is called somebody' "$sw" build --athlete somebody fine.block
expect 'a misspelt block' 2 'did you mean base?' "$sw" build --block bsae fine.block
expect 'a week that no block has' 2 '9' "$sw" build --week 9 fine.block
expect 'week nought' 2 '--week' "$sw" build --week 0 fine.block
expect 'a week that is no number' 2 '--week' "$sw" build --week one fine.block
expect 'weeks backwards' 2 '--week' "$sw" build --week 3-2 fine.block
expect 'a date that is not in the calendar' 2 '2027-02-30' "$sw" build --from 2027-02-30 fine.block
expect 'a date in another order' 2 '2027-01-04' "$sw" build --to 4.1.2027 fine.block
expect 'a misspelt format' 2 'csvv' "$sw" build --format csvv fine.block
expect 'a misspelt finding' 2 'did you mean missing-max?' "$sw" explain missing-maxx
expect 'a misspelt library file' 2 'did you mean strength?' "$sw" templates strenght
expect 'why needs to know what' 2 'one athlete' "$sw" why fine.block
expect 'why of a lift that is not there' 2 'did you mean squat?' "$sw" why -a ines -w 1 -l sqaut fine.block
expect 'why of a week without it' 2 'does not train squat in week 9' "$sw" why -a ines -w 9 -l squat fine.block
expect 'why of a day without it' 2 'on day C' "$sw" why -a ines -w 1 -d C -l squat fine.block

# Narrowing.
rows()
{
    sed 1d printed | wc -l
}
expect 'everything' 0 - "$sw" build -f csv fine.block
[ "$(rows)" -eq 8 ] # 2 athletes x 3 weeks and 1 x 2
verdict $? 'eight rows'
expect 'one athlete' 0 - "$sw" build -f csv --athlete ines fine.block
[ "$(rows)" -eq 3 ]
verdict $? 'her three rows'
expect 'a group' 0 - "$sw" build -f csv --athlete platform fine.block
[ "$(rows)" -eq 8 ]
verdict $? 'means its members'
expect 'two athletes by two options' 0 - "$sw" build -f csv -a ines -a piotr fine.block
[ "$(rows)" -eq 8 ]
verdict $? 'both of them'
expect 'one block' 0 - "$sw" build -f csv --block build fine.block
[ "$(rows)" -eq 2 ]
verdict $? 'its two rows'
expect 'weeks' 0 - "$sw" build -f csv --week 2-3 fine.block
[ "$(rows)" -eq 5 ]
verdict $? 'five rows'
expect 'dates, both of them inside' 0 - "$sw" build -f csv --from 2027-01-11 --to 2027-01-26 fine.block
[ "$(rows)" -eq 5 ] # 11 and 18 January for both, 26 January for piotr
verdict $? 'five rows as well'
expect 'options after files' 0 - "$sw" build fine.block -f csv --athlete ines --week 1
[ "$(rows)" -eq 1 ]
verdict $? 'count as before'
expect 'a file whose name starts with a dash, after --' 3 '-x.block: no such file' "$sw" check -- -x.block

# Outputs.
left_over()
{
    find . -name '*.tmp' | grep -q . && return 1
    return 0
}
expect 'to a file' 0 - "$sw" build -f csv -o plan.csv fine.block
"$sw" build -f csv fine.block | cmp -s - plan.csv
verdict $? 'has what standard output would have'
expect 'onto it again' 0 - "$sw" build -f csv --week 1 -o plan.csv fine.block
[ "$(wc -l < plan.csv)" -eq 4 ]
verdict $? 'replaces it'
expect 'to a folder that is not there yet' 0 - "$sw" build -o sheets/ fine.block
[ "$(ls sheets | tr '\n' ' ')" = 'ines-base.txt piotr-base.txt piotr-build.txt ' ]
verdict $? 'a file for each athlete and block'
expect 'to a folder without the stroke' 0 - "$sw" build -f yaml -o sheets fine.block
[ -s sheets/ines-base.yaml ]
verdict $? 'goes into it'
expect 'to a full disk' 3 '/dev/full: the disk is full' "$sw" build -o /dev/full fine.block
expect 'standard output on a full disk' 3 'the disk is full' sh -c '"$1" build fine.block > /dev/full' sh "$sw"
for words in --help --version 'check --help' explain templates 'explain missing-max'; do
    expect "$words on a full disk" 3 'standard output' sh -c "\"\$1\" $words > /dev/full" sh "$sw"
done
expect 'into a folder that is not there' 3 'no such folder' "$sw" build -o none/plan.txt fine.block
expect 'a folder in a folder that is not there' 3 'none/sheets/: no such folder' "$sw" build -o none/sheets/ fine.block
expect 'a file as a folder' 3 'fine.block/: it is a file' "$sw" build -o fine.block/ fine.block
expect 'below a file' 3 'fine.block/plan.txt' "$sw" build -o fine.block/plan.txt fine.block
expect 'to no name' 2 'needs a value' "$sw" build -o '' fine.block
mkdir -p closed && chmod 555 closed
closed=closed
[ "$(id -u)" -ne 0 ] || closed=/proc # root may write anywhere else
expect 'into a folder that takes no files' 3 "$closed/plan.txt: " "$sw" build -o "$closed/plan.txt" fine.block
expect 'a folder below it' 3 "$closed/sheets/: " "$sw" build -o "$closed/sheets/" fine.block
chmod 755 closed

cp club.block club.copy
ln -sf club.block link.block
for target in fine.block ./fine.block club.block link.block; do
    expect "onto $target, a file that was read" 2 'files that were read' "$sw" build -o "$target" fine.block
done
cmp -s club.block club.copy
verdict $? 'leaves it as it was'
cat > roster.block <<'END'
use "club.block"
roster "into/hanna-base.csv"
block base { for hanna; starts 2027-01-04; weeks 3; day A on mon { squat 3 x 5 at 75% } }
END
mkdir into
echo 'athlete,lift,max
hanna,squat,80' > into/hanna-base.csv
cp into/hanna-base.csv roster.copy
expect 'onto a roster' 2 'files that were read' "$sw" build -f csv -o into/hanna-base.csv roster.block
expect 'onto a roster, through its folder' 2 'files that were read' "$sw" build -f csv -o into/ roster.block
cmp -s into/hanna-base.csv roster.copy
verdict $? 'leaves the roster as it was'

# Too large for what the disk gives: the earlier file stays, nothing unfinished stays beside it.
cat > long.block <<'END'
use "club.block"
block base { for platform; starts 2027-01-04; weeks 200; day A on mon, wed, fri { squat 3 x 5 at 75% } }
END
echo earlier > big.csv
expect 'a disk that fills up' 3 'big.csv: ' sh -c 'trap "" XFSZ; ulimit -f 8; exec "$1" build -f csv -o big.csv long.block' sh "$sw"
[ "$(cat big.csv)" = earlier ] && left_over
verdict $? 'leaves the earlier file and nothing half-written'
expect 'errors' 1 'nothing was built' "$sw" build -o big.csv faulty.block
[ "$(cat big.csv)" = earlier ] && left_over
verdict $? 'leave the earlier file too'

# A reader that goes away.
gone()
{
    { "$sw" "$@" 2> err; echo $? > code; } | head -1 > first
    [ "$(cat code)" -eq 3 ] && [ ! -s err ] && [ -s first ]
}
gone build -f csv long.block
verdict $? 'build | head -1 ends quietly with 3'
gone build long.block
verdict $? 'the sheets too'
gone build -f yaml long.block
verdict $? 'and yaml'
{ sleep 1; "$sw" --help 2> err; echo $? > code; } | :
[ "$(cat code)" -eq 3 ] && [ ! -s err ]
verdict $? '--help to nobody ends quietly with 3'
expect 'standard output that is closed' 3 'standard output' sh -c '"$1" build fine.block >&-' sh "$sw"

# Files that are none, or strange ones.
mkdir empty odd odd/dir.block
expect 'a folder without a .block file' 3 'no .block file' "$sw" check empty
expect 'a folder that is not there' 3 'nowhere/: ' "$sw" check nowhere/
expect 'a folder named as a file' 3 'it is a folder' "$sw" check odd
cp fine.block club.block empty/
expect 'a folder of files' 0 - "$sw" check empty/
expect 'the same without the stroke' 0 - "$sw" check empty
: > nothing.block
expect 'an empty file' 0 - "$sw" check nothing.block
expect 'builds nothing' 0 - "$sw" build nothing.block
printf '# only a remark' > remark.block
expect 'a file without an end of line' 0 - "$sw" check remark.block
printf '\357\273\277use "club.block"\r\nathlete hanna { max squat 80 kg on 2026-12-01 }\r\n' > marked.block
expect 'a byte-order mark and CR LF' 0 - "$sw" check marked.block
printf 'lift squat\nlift be\000nch\n' > nul.block
expect 'a NUL byte' 1 'nul.block:2:8: error' "$sw" check nul.block
head -c 3000 /dev/zero > zeros.block
expect 'NUL bytes alone' 1 'zeros.block:1:1: error' "$sw" check zeros.block
printf 'lift squ\351t\n' > latin.block
expect 'another encoding' 1 'latin.block:1:9: error' "$sw" check latin.block
printf '\377\376l\000i\000f\000t\000' > wide.block
expect 'two bytes a letter' 1 'wide.block:1:1: error' "$sw" check wide.block
printf 'lift squat\033[31m\n' > escape.block
expect 'control characters' 1 '\x1b' "$sw" check escape.block
grep -q "$(printf '\033')" err
[ $? -eq 1 ]
verdict $? 'are not written raw'
head -c 10000000 /dev/zero | tr '\000' '{' > braces.block
expect 'ten megabytes of braces' 4 'braces.block:1:' timeout 60 "$sw" check braces.block
[ "$(wc -l < err)" -lt 20 ] && [ "$(wc -c < err)" -lt 4000 ]
verdict $? 'in few words'
head -c 10000000 /dev/zero | tr '\000' 'a' > word.block
expect 'a word of ten megabytes' 1 'word.block:1:1: error' timeout 60 "$sw" check word.block
[ "$(wc -c < err)" -lt 8000 ]
verdict $? 'in few words as well'
expect 'a device' 3 '/dev/zero: ' timeout 20 "$sw" check /dev/zero
ln -sf round.block round.block
expect 'a link to itself' 3 'circle' "$sw" check round.block

# Colour only on terminals, and what is said does not depend on where it goes.
"$sw" check faulty.block 2> plain
NO_COLOR=1 "$sw" check faulty.block 2> without
NO_COLOR='' "$sw" check faulty.block 2> blank
cmp -s plain without && cmp -s plain blank && ! grep -q "$(printf '\033')" plain
verdict $? 'no colour in a file'
LC_ALL=de_DE.UTF-8 TZ=Asia/Tokyo "$sw" build fine.block > there
"$sw" build fine.block > here
cmp -s here there
verdict $? 'the same bytes under another language and time zone'
exit $status
