#!/bin/sh
# The Makefile's promises: plain words when something is missing, and an install that uninstall undoes.
set -u
cd "$SETWRIGHT_SRC" || exit 1
. "$SETWRIGHT_SRC/tests/shell/expect.sh"

said=$(make -s BISON=no-such-bison BUILD="$TMPDIR/none" all 2>&1) && missed=1 || missed=0
case $said in *"'no-such-bison' is missing. On Debian: apt-get install no-such-bison"*) ;; *) missed=1 ;; esac
verdict $missed "a missing program is named"

said=$(make -s BISON=no-such-bison BUILD="$TMPDIR/none" all 2>&1) && missed=1 || missed=0
case $said in *"'no-such-bison' is missing"*) ;; *) missed=1 ;; esac
verdict $missed "another one too"

# Neither root nor sudo: a machine with only the tools that the search for packages takes.
mkdir -p "$TMPDIR/bin" "$TMPDIR/none"
for tool in sh mkdir grep make; do ln -sf "$(command -v $tool)" "$TMPDIR/bin/$tool"; done
printf '#!/bin/sh\necho 1000\n' > "$TMPDIR/bin/id"
printf '#!/bin/sh\n[ "$4" != bison ] && echo install ok installed\n' > "$TMPDIR/bin/dpkg-query"
chmod +x "$TMPDIR/bin/id" "$TMPDIR/bin/dpkg-query"
said=$(PATH=$TMPDIR/bin make -s BUILD="$TMPDIR/none" build-packages 2>&1) && missed=1 || missed=0
case $said in *"packages are missing: bison. They can be installed by root or with sudo"*) ;; *) missed=1 ;; esac
verdict $missed "packages that cannot be installed are named"

# The program that is tested here, put in place without building it again.
mkdir -p "$TMPDIR/there"
build=${SETWRIGHT%/*/setwright}
build=${build#"$SETWRIGHT_SRC"/}
make -s VARIANT="$SETWRIGHT_VARIANT" BUILD="$build" DESTDIR="$TMPDIR/there" PREFIX=/usr install > /dev/null
(cd / && "$TMPDIR/there/usr/bin/setwright" --version) > /dev/null
verdict $? "the installed program runs from another folder"
[ -s "$TMPDIR/there/usr/include/setwright.h" ] && [ -s "$TMPDIR/there/usr/lib/libsetwright.a" ] &&
    [ -s "$TMPDIR/there/usr/share/doc/setwright/LANGUAGE.md" ] &&
    diff -r stdlib-templates "$TMPDIR/there/usr/share/setwright/std" > /dev/null
verdict $? "the header, the library, the manual and std/ are installed"
make -s VARIANT="$SETWRIGHT_VARIANT" BUILD="$build" DESTDIR="$TMPDIR/there" PREFIX=/usr uninstall
[ -z "$(find "$TMPDIR/there" ! -type d)" ] && [ ! -e "$TMPDIR/there/usr/share/setwright" ]
verdict $? "uninstall leaves no file"
exit $status
