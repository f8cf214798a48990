#!/bin/sh
# What is released defends itself: seen by readelf in the program, and in the commands that compile it.
set -u
cd "$SETWRIGHT_SRC" || exit 1
. "$SETWRIGHT_SRC/tests/shell/expect.sh"

# has NAME PATTERN TEXT: a line of the text matches.
has()
{
    printf '%s\n' "$3" | grep -q -E -e "$2"
    verdict $? "$1"
}

commands=$(make -n V=1 VARIANT=release BUILD="$TMPDIR/none" "$TMPDIR/none/release/src/main.o" 2> /dev/null)
has 'buffers are checked, by size as it runs where the compiler can' '-D_FORTIFY_SOURCE=[23] .*src/main\.c' "$commands"
has 'the stack is guarded' '-fstack-protector-strong .*src/main\.c' "$commands"

# The sanitizers and coverage have builds of their own; the others are compiled and linked as the release is.
case $SETWRIGHT_VARIANT in release | gcc | clang)
    dynamic=$(readelf -dW "$SETWRIGHT") segments=$(readelf -lW "$SETWRIGHT") symbols=$(readelf -sW "$SETWRIGHT")
    has 'it loads anywhere' 'FLAGS_1.* PIE' "$dynamic"
    has 'its tables are bound at the start' '(FLAGS).*BIND_NOW' "$dynamic"
    has 'and then read-only' 'GNU_RELRO' "$segments"
    has 'its stack runs no code' 'GNU_STACK .* RW +0x' "$segments"
    has 'the guard of the stack is linked' '__stack_chk_fail' "$symbols"
    has 'the checked functions are linked' '__(mem|str|v?s?n?printf)[a-z]*_chk' "$symbols" ;;
esac
exit $status
