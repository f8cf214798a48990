# For the whole-program tests in sh, which read it with `.`: verdicts, and a command held to what it says.
status=0
sw=$SETWRIGHT
verdict()
{
    if [ "$1" -eq 0 ]; then echo "ok $2"; else echo "not ok $2"; status=1; fi
}

# expect NAME STATUS WORDS COMMAND...: runs it, what it prints going to the file `printed`; WORDS must be in what it says on
# standard error, `-` wants silence.
expect()
{
    name=$1 want=$2 words=$3
    shift 3
    got=0
    "$@" > printed 2> err < /dev/null || got=$?
    missed=0
    [ "$got" -eq "$want" ] || missed=1
    if [ "$words" = - ]; then
        [ ! -s err ] || missed=1
    else
        grep -q -F -e "$words" err || missed=1
    fi
    [ "$missed" -eq 0 ] || { echo "  status $got, wanted $want; words wanted: $words"; sed 's/^/  /' err | head -5; }
    verdict "$missed" "$name"
}
