#!/bin/sh
# A new folder: whole or not there at all, never over what exists, and without a finding for any template.
set -u
cd "$TMPDIR" || exit 1
. "$SETWRIGHT_SRC/tests/shell/expect.sh"

inside='.gitignore README.md athletes.block first.block gym.block '
files()
{
    ls -A "$1" | LC_ALL=C sort | tr '\n' ' '
}

# A folder with all it needs.
expect 'a new folder' 0 - "$sw" new --starts 2027-01-04 club
[ "$(files club)" = "$inside" ]
verdict $? 'has its five files'
grep -q 'setwright check club/' printed && grep -q 'Monday 2027-01-04' printed
verdict $? 'and says what to try'
expect 'is checked at once' 0 - "$sw" check --fail-on advice club
[ "$(wc -l < club/README.md)" -eq 10 ]
verdict $? 'a README of ten lines'
ls -A | grep -q '^club\.'
[ $? -eq 1 ]
verdict $? 'nothing else is left'
expect 'builds' 0 - "$sw" build -f csv club
[ "$(cut -d, -f1,2 printed | sort -u | tr '\n' ' ')" = 'athlete,block mara,first pavel,first ' ]
verdict $? 'for two athletes'
cut -d, -f4 printed | sort | sed -n 1p | grep -q '^2027-01-05$' # the template's first day is a Tuesday
verdict $? 'from the week that was asked for'
grep -o 'setwright [a-z][^`]*' club/README.md > said
sed 's/ | less//' said | while read -r _ words; do
    (cd club && "$sw" $words > ../out 2> ../err < /dev/null) || exit 1
done
verdict $? 'the commands in its README run'
[ -s club/sheets/mara-first.txt ] && grep -q -x sheets/ club/.gitignore
verdict $? 'sheets that were built are not for git'

# Any template of the library.
"$sw" templates | sed -n 's/^  template \([a-z-]*\),.*/\1/p' > templates
[ "$(wc -l < templates)" -ge 12 ]
verdict $? 'the list of templates was read'
while read -r template; do
    expect "new with $template" 0 - "$sw" new --starts 2027-03-01 "of-$template/" "$template"
    expect "no word about it" 0 - "$sw" check --fail-on advice "of-$template"
    grep -q "^block first from $template {" "of-$template/first.block"
    verdict $? 'built on it'
done < templates
"$sw" new --starts 2027-03-01 again/ hypertrophy > out && diff -r again of-hypertrophy
verdict $? 'the same bytes every time'

# The Monday after today, by another program's calendar; asked on both sides, should midnight be near.
before=$(date -d 'next Monday' +%F)
"$sw" new today > out
after=$(date -d 'next Monday' +%F)
grep -q -e "^  starts $before\$" -e "^  starts $after\$" today/first.block
verdict $? 'the first block starts on the next Monday'

# Nothing is written over, and nothing half.
echo mine > club/first.block
expect 'a folder that is there' 2 'club is there already' "$sw" new club
expect 'with a stroke' 2 'club is there already' "$sw" new club/
[ "$(cat club/first.block)" = mine ]
verdict $? 'stays as it was'
mkdir empty && ln -s nowhere dangling
expect 'an empty folder' 2 'empty is there already' "$sw" new empty
expect 'a file' 2 'out is there already' "$sw" new out
expect 'a link that leads nowhere' 2 'dangling is there already' "$sw" new dangling
expect 'here' 2 'is there already' "$sw" new .
expect 'in a folder that is not there' 3 'nothing was made' "$sw" new none/club
[ ! -e none ]
verdict $? 'makes no folder above it'
mkdir closed && chmod 555 closed
closed=closed
[ "$(id -u)" -ne 0 ] || closed=/proc # root may write anywhere else
expect 'where nothing can be made' 3 'nothing was made' "$sw" new "$closed/club"
chmod 755 closed
# A limit on the size of files stops it in the middle: the third file is longer than one block of 512 bytes.
(trap '' XFSZ; ulimit -f 1; "$sw" new half > out 2> err)
[ $? -eq 3 ] && grep -q 'nothing was made' err && [ -z "$(ls -d half* 2> /dev/null)" ]
verdict $? 'a disk that is full in the middle'

# Words that are not known.
expect 'no folder' 2 'setwright new club' "$sw" new
expect 'a name of nothing' 2 'setwright new club' "$sw" new ''
expect 'too many words' 2 'setwright new club' "$sw" new one strength two
expect 'a misspelt template' 2 'did you mean strength?' "$sw" new other strenght
expect 'a part of the library' 2 'no template is called gyms' "$sw" new other gyms
expect 'a Tuesday' 2 '2027-01-05 is a Tuesday; a block starts on a Monday, such as 2027-01-04 or 2027-01-11' "$sw" new --starts 2027-01-05 other
expect 'a date in another order' 2 'such as 2027-01-04' "$sw" new --starts 4.1.2027 other
expect 'a date that is not in the calendar' 2 '2027-02-30' "$sw" new --starts 2027-02-30 other
expect 'the first day of the calendar' 2 'not enough days' "$sw" new --starts 0001-01-01 other
expect 'the last Monday of the calendar' 2 'not enough days' "$sw" new --starts 9999-12-27 other
[ ! -e other ]
verdict $? 'none of these makes a folder'
exit $status
