# setwright: a text language for strength-training blocks, and its compiler.
#
#   make            the program, .build/release/setwright
#   make demo       build it, check examples/ and show one training sheet
#   make test       unit and whole-program tests; ONLY=plates runs those with "plates" in their name
#   make check      everything: gcc and clang without a warning, the tests, the tests again under
#                   the sanitizers, coverage of lines and branches, static analysis (installs missing Debian
#                   packages first)
#   make bench      the benchmarks             make golden    rewrite the expected outputs of the tests
#   make mutate     whether the tests notice a rule of the trade that is slightly wrong
#   make fuzz       inputs by chance for each target, TIME=60 seconds each; TARGETS="parser roster" chooses,
#                   FUZZER=afl takes AFL++ instead of clang's own
#   make cluster    the manual's job array on a Slurm of this one machine, for root
#   make install    PREFIX=/usr/local DESTDIR= make uninstall removes what install put there
#   make format     clang-format in place      make analyse   gcc -fanalyzer, clang-tidy and cppcheck over src/
#
# VARIANT=release|gcc|clang|san|cov|fuzz|afl names a build, each in its own folder below BUILD. V=1 shows every command.

VERSION = 0.1.0
PREFIX  = /usr/local
DESTDIR =
BUILD   = .build
VARIANT = release
LINE_FLOOR   = 90
BRANCH_FLOOR = 90
TIME    = 60
FUZZER  = fuzz
DEMO    = $(BUILD)/release/setwright build --athlete ines --block winter-strength --week 1 examples/

build_packages = gcc libc6-dev make bison libyaml-dev libcsv-dev libutf8proc-dev libjansson-dev libcmocka-dev
check_packages = clang git gcovr bc sqlite3 locales parallel python3 python3-yaml python3-jsonschema python3-ruamel.yaml python3-dateutil
bench_packages = flex python3
fuzz_packages  = clang libclang-rt-14-dev llvm python3
afl_packages   = afl++ clang python3
analyse_packages = clang-tidy cppcheck python3
cluster_packages = slurm-wlm munge python3

ifeq ($(MAKELEVEL),0)
MAKEFLAGS += -j2
endif
MAKEFLAGS += --no-print-directory --no-builtin-rules
.DELETE_ON_ERROR:
.SECONDARY:

# Compilers and flags, by variant

ifeq ($(origin CC),default)
CC = gcc
endif
BISON = bison

# Where a machine can fuse a product and a sum, clang would and gcc would not, and floating point would differ.
arithmetic = -ffp-contract=off
warnings = -Wall -Wextra -Wshadow -Wstrict-prototypes -Wmissing-prototypes -Wwrite-strings -Wvla -Wcast-qual
# Level 3 sees sizes that are known only while it runs; an older compiler or C library warns and stays at 2.
fortify  = $(if $(shell echo '\#include <stdio.h>' | \
               $(cc) -O2 -D_FORTIFY_SOURCE=3 -Werror -E - > /dev/null 2>&1 || echo no),2,3)
hardened = -O2 -g -U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=$(level) -fstack-protector-strong -fPIE

cc.release = $(CC)
cc.gcc     = gcc
cc.clang   = clang
cc.san     = gcc
cc.cov     = gcc
cc.fuzz    = clang
cc.afl     = afl-clang-fast

flags.release = $(hardened)
flags.gcc     = $(hardened) -Werror
flags.clang   = $(hardened) -Werror
flags.san     = -O1 -g -fno-omit-frame-pointer -fsanitize=address,undefined -fno-sanitize-recover=all -Werror
flags.cov     = -O0 -g --coverage
flags.fuzz    = -O1 -g -fno-omit-frame-pointer -fsanitize=fuzzer-no-link,address,undefined,float-cast-overflow \
                -fno-sanitize-recover=all
flags.afl     = -O2 -g

# The program brings all it needs: looking up and binding libraries took a third of a short run. Where they are not there to be
# brought it is linked as usual, and so are the tests.
alone = $(if $(shell echo 'int main(void) { return 0; }' | \
            $(cc) -static-pie -x c -o $(BUILD)/alone - $(libs) > /dev/null 2>&1 || echo no),-pie,-static-pie)
pie          = -pie
link.release = $(pie) -Wl,-z,relro,-z,now
link.gcc     = $(link.release)
link.clang   = $(link.release)
# One copy of the sanitizers' run time, so that both write where log_path says.
link.san     = -static-libasan -static-libubsan

ifeq ($(flags.$(VARIANT)),)
$(error VARIANT is one of release, gcc, clang, san, cov, fuzz, afl; "$(VARIANT)" is none of them)
endif
cc      = $(cc.$(VARIANT))
level  := $(if $(filter release gcc clang,$(VARIANT)),$(fortify))
Q       = $(if $(V),,@)
say     = @mkdir -p $(@D) $(if $(V),,&& echo "  $1 $@")
define compile
$(call say,compile)
$Q$(cc) -std=c11 $(warnings) $(arithmetic) $(flags.$(VARIANT)) -D_GNU_SOURCE -DSETWRIGHT_VERSION='"$(VERSION)"' \
    -Isrc -I$(gen) $(CPPFLAGS) $(CFLAGS) -MMD -MP -c -o $@ $<
endef
define link
$(call say,link)
$Q$(cc) $(flags.$(VARIANT)) $(CFLAGS) $(link.$(VARIANT)) $(LDFLAGS) -o $@ $(filter %.o %.a,$^)
endef
# jansson: what programs read of us and send us is JSON; escapes, UTF-8 and nesting are its business, not ours.
libs = -lyaml -lcsv -lutf8proc -ljansson -lm

# What there is to build

B     := $(BUILD)/$(VARIANT)
gen   := $(BUILD)/gen
share  = $(DESTDIR)$(PREFIX)/share

sources   := $(sort $(shell find src -name '*.c'))
tests     := $(sort $(wildcard tests/unit/*_test.c))
blocks    := $(sort $(wildcard stdlib-templates/*.block))
parser    := $(gen)/setwright.tab.c $(gen)/setwright.tab.h $(gen)/setwright-quick.tab.c
library   := $(patsubst src/%.c,$B/src/%.o,$(filter-out src/main.c,$(sources))) \
             $(patsubst %,$B/gen/%.o,setwright.tab setwright-quick.tab library)
test_objects  := $(tests:%.c=$B/%.o)
test_programs := $(tests:tests/%.c=$B/%)
targets       := $(sort $(wildcard tests/fuzz/*_target.c))
fuzz_programs := $(targets:tests/%.c=$B/%)
# What runs a target over its inputs: the library of a fuzzer, or a program of our own that reads files.
driver        := $(if $(filter fuzz afl,$(VARIANT)),entry,entry files)
driver        := $(driver:%=$B/tests/fuzz/%.o)
fuzz_objects  := $(targets:%.c=$B/%.o) $(driver) $B/tests/fuzz/dictionary.o
link_targets.fuzz = -fsanitize=fuzzer
link_targets.afl  = -fsanitize=fuzzer
fuzzer.fuzz = run
fuzzer.afl  = afl

.PHONY: all units targets objects tools demo test check bench cluster mutate fuzz analyse golden format install uninstall clean
.PHONY: build-packages check-packages bench-packages cluster-packages fuzz-packages analyse-packages
all: $B/setwright
units: $(test_programs) targets
targets: $(fuzz_programs) $B/fuzz/dictionary
objects: $B/src/main.o $(library) $(test_objects) $(fuzz_objects)

$B/setwright: pie = $(alone)
$B/setwright: $B/src/main.o $B/libsetwright.a
	$(link) $(libs)

$B/libsetwright.a: $(library) $B/library.list
	$(call say,archive)
	$Qrm -f $@ && $(AR) rcsD $@ $(library)

$(test_programs): $B/%: $B/tests/%.o $B/libsetwright.a
	$(link) -lcmocka $(libs)

$(fuzz_programs): $B/%: $B/tests/%.o $(driver) $B/libsetwright.a
	$(link) $(link_targets.$(VARIANT)) $(libs)

$B/fuzz/dictionary: $B/tests/fuzz/dictionary.o $B/libsetwright.a
	$(link) $(libs)

$B/src/%.o: src/%.c
	$(compile)
$B/tests/%.o: tests/%.c
	$(compile)
$B/gen/%.o: $(gen)/%.c
	$(compile)

# The first build has no .d files yet, so the headers that are made come before every object.
$B/src/main.o $(library) $(test_objects) $(fuzz_objects): $B/flags.list | tools $(parser)

# Two parsers of one grammar, see src/syntax/parse.c: look-ahead correction makes what is expected in place of an error true.
careful = -Dparse.lac=full -Dparse.lac.es-capacity-initial='"1000"'
$(parser) &: grammar/setwright.y | tools
	$(call say,bison)
	$Q$(BISON) -Wall -Wdangling-alias -Wcounterexamples -Werror -H $(careful) -o $(gen)/setwright.tab.c $<
	$Q$(BISON) -Fapi.prefix={sw_quick_} -o $(gen)/setwright-quick.tab.c $<

# The shipped library as bytes, so that the program runs from anywhere.
$(gen)/library.c: $(blocks) $(gen)/blocks.list
	@{ echo '#include "model/library.h"'; n=0; \
	for f in $(blocks); do \
	    echo "static const char text_$$n[] = {"; od -An -v -td1 $$f | sed 's/\([-0-9]\{1,\}\)/\1,/g'; echo '0};'; \
	    n=$$((n + 1)); \
	done; n=0; \
	echo 'const struct library_file library_files[] = {'; \
	for f in $(blocks); do \
	    echo "    { \"std/$${f##*/}\", text_$$n, sizeof text_$$n - 1 },"; n=$$((n + 1)); \
	done; \
	printf '    { 0 }\n};\nconst size_t library_count = %d;\n' $$n; } > $@

# A .list file holds what it is named for and is new only when that has changed: other flags
# compile everything anew, a file taken away does not linger in the library.
define keep
@mkdir -p $(@D)
@echo '$(subst ','\'',$(strip $1))' | cmp -s - $@ || echo '$(subst ','\'',$(strip $1))' > $@
endef
.PHONY: always
$B/flags.list: always
	$(call keep,$(cc) $(flags.$(VARIANT)) $(warnings) $(arithmetic) $(CPPFLAGS) $(CFLAGS) $(link.$(VARIANT)) $(LDFLAGS) $(VERSION))
$B/library.list: always
	$(call keep,$(sources))
$(gen)/blocks.list: always
	$(call keep,$(blocks))

-include $(wildcard $(patsubst %.o,%.d,$B/src/main.o $(library) $(test_objects) $(fuzz_objects)))

# What the machine must have

tools:
	@for t in $(firstword $(cc)) $(BISON); do command -v $$t > /dev/null && continue; \
	    echo "setwright cannot be built: the program '$$t' is missing. On Debian: apt-get install $${t##*/}" >&2; \
	    exit 1; done
	@for h in yaml csv utf8proc jansson; do [ -e $(BUILD)/have-$$h ] && continue; mkdir -p $(BUILD); \
	    if echo "#include <$$h.h>" | $(cc) $(CPPFLAGS) -E - > /dev/null 2>&1; then : > $(BUILD)/have-$$h; else \
	    echo "setwright cannot be built: the header '$$h.h' is missing. On Debian: apt-get install lib$$h-dev" >&2; \
	    exit 1; fi; done

# Installs the packages in $1 that are missing; elsewhere than on Debian `tools` says what is.
define get_packages
@command -v dpkg-query > /dev/null || exit 0; \
missing=; for p in $1; do \
    dpkg-query -W -f '$${Status}' $$p 2> /dev/null | grep -q ' installed$$' || missing="$$missing $$p"; done; \
[ -n "$$missing" ] || exit 0; \
if [ "$$(id -u)" = 0 ]; then root=; \
elif command -v sudo > /dev/null; then root=sudo; \
else echo "These Debian packages are missing:$$missing. They can be installed by root or with sudo," \
    "and there is neither here. Ask whoever looks after this machine." >&2; exit 1; fi; \
echo "Installing$$missing"; \
apt="$$root env DEBIAN_FRONTEND=noninteractive apt-get -qq -o DPkg::Lock::Timeout=300"; \
{ $$apt update && $$apt install -y --no-install-recommends $$missing; } > $(BUILD)/packages.log 2>&1 || { \
    cat $(BUILD)/packages.log >&2; echo "These Debian packages could not be installed:$$missing" >&2; exit 1; }
endef
build-packages: ; @mkdir -p $(BUILD)
	$(call get_packages,$(build_packages))
check-packages: ; @mkdir -p $(BUILD)
	$(call get_packages,$(build_packages) $(check_packages))
bench-packages: ; @mkdir -p $(BUILD)
	$(call get_packages,$(build_packages) $(bench_packages))
fuzz-packages: ; @mkdir -p $(BUILD)
	$(call get_packages,$(build_packages) $($(FUZZER)_packages))
cluster-packages: ; @mkdir -p $(BUILD)
	$(call get_packages,$(build_packages) $(cluster_packages))
analyse-packages: ; @mkdir -p $(BUILD)
	$(call get_packages,$(build_packages) $(analyse_packages))

# A language with decimal commas, for the tests that prove it changes nothing; see LOCPATH in tests/run.sh.
$(BUILD)/locale/de_DE.UTF-8: | check-packages
	@mkdir -p $(@D)
	@rm -rf $@.part && localedef --no-archive -i de_DE -f UTF-8 $(abspath $@.part) && mv $@.part $@

# Trying it

run = BUILD=$(BUILD) tests/run.sh
demo: build-packages
	@$(MAKE) VARIANT=release all
	$(BUILD)/release/setwright check examples/
	$(DEMO)

test: $(BUILD)/locale/de_DE.UTF-8
	@$(MAKE) -k VARIANT=gcc all units
	@$(run) start && $(run) units gcc && $(run) programs gcc && $(run) total

# `step` and the test runs go on after a failure and keep count; `total` lists and fails.
check: $(BUILD)/locale/de_DE.UTF-8
	@$(run) start
	@$(run) head 'gcc, no warning'
	@$(MAKE) -k VARIANT=gcc all units
	@$(run) step 'clang, no warning' $(MAKE) -k VARIANT=clang objects
	@$(run) units gcc
	@$(run) programs gcc
	@$(run) step 'address and undefined-behaviour sanitizers' $(MAKE) VARIANT=san all units
	@$(run) units san
	@$(run) programs san
	@rm -rf $(BUILD)/cov
	@$(run) step 'coverage build' $(MAKE) VARIANT=cov all units
	@$(run) units cov
	@$(run) programs cov
	@$(run) step 'coverage of src/: lines at least $(LINE_FLOOR) %, branches at least $(BRANCH_FLOOR) %' \
	    gcovr -r . --filter src/ --branches --print-summary --fail-under-line $(LINE_FLOOR) \
	    --fail-under-branch $(BRANCH_FLOOR) --object-directory $(BUILD)/cov $(BUILD)/cov/src
	@$(run) step 'static analysis: gcc -fanalyzer, clang-tidy, cppcheck' $(MAKE) -s analyse
	@$(run) total

cluster: cluster-packages
	@$(MAKE) VARIANT=release all
	SETWRIGHT=$(abspath $(BUILD))/release/setwright SETWRIGHT_SRC=$(CURDIR) tests/cluster/slurm.sh

bench: bench-packages
	@$(MAKE) VARIANT=release all
	SETWRIGHT=$(abspath $(BUILD))/release/setwright sh tests/bench/run.sh

# Each comparison and limit of the trade's rules made slightly wrong in turn; takes a while. PART=1/2 is half of it.
mutate: check-packages
	/usr/bin/python3 tests/mutation/mutate.py $(PART)

# What is learnt stays in $(BUILD)/fuzz (or afl) for the next time; what breaks a target is in its folder found.
fuzz: fuzz-packages
	@$(MAKE) VARIANT=$(FUZZER) targets
	sh tests/fuzz/$(fuzzer.$(FUZZER)).sh $(BUILD)/$(FUZZER)/fuzz $(BUILD)/$(FUZZER) $(TIME) $(TARGETS)

golden: $(BUILD)/locale/de_DE.UTF-8
	@$(MAKE) VARIANT=release all
	@$(run) golden release

has = @command -v $1 > /dev/null || { echo "The program '$1' is missing. On Debian: apt-get install $1" >&2; exit 1; }
format:
	$(call has,clang-format)
	find src tests -name '*.c' -exec clang-format -i {} +   # headers are laid out by hand

# What three readers of the source say, a file each, so that only what has changed is read anew; known.txt has the rest. A file gets
# its name when its reader has ended: one that was broken off has said nothing.
analysis := $(BUILD)/analysis
said     := $(sources:%.c=$(analysis)/%.gcc) $(sources:%.c=$(analysis)/%.tidy) $(analysis)/cppcheck
dialect   = -std=c11 -D_GNU_SOURCE -DSETWRIGHT_VERSION='"$(VERSION)"' -Isrc -I$(gen)
$(said): $(shell find src -name '*.h') .clang-tidy | $(parser)
$(analysis)/%.gcc: %.c
	$(call say,analyse)
	$Qgcc $(dialect) -O1 -fanalyzer -c -o /dev/null $< 2> $@.new || { cat $@.new; exit 1; }
	$Qmv $@.new $@
$(analysis)/%.tidy: %.c
	$(call say,analyse)
	$Qclang-tidy --quiet $< -- $(dialect) > $@.new 2> $@.err || { cat $@.new $@.err; exit 1; }
	$Qmv $@.new $@
$(analysis)/cppcheck: $(sources)
	$(call say,analyse)
	$Qcppcheck --quiet --enable=warning,performance,portability --suppress=missingIncludeSystem \
	    --template='{file}:{line}:{column}: warning: {message} [{id}]' --template-location=' ' \
	    --std=c11 $(filter-out -std=c11,$(dialect)) src 2> $@.new
	$Qmv $@.new $@
analyse: analyse-packages
	@$(MAKE) -s $(said)
	$Q/usr/bin/python3 tests/analysis/known.py $(said)

# Into the system and out of it

install: all
	install -D $B/setwright $(DESTDIR)$(PREFIX)/bin/setwright
	install -D -m 644 $B/libsetwright.a $(DESTDIR)$(PREFIX)/lib/libsetwright.a
	install -D -m 644 src/setwright.h $(DESTDIR)$(PREFIX)/include/setwright.h
	install -D -m 644 grammar/LANGUAGE.md $(share)/doc/setwright/LANGUAGE.md
	install -d $(share)/setwright/std
	install -m 644 $(blocks) $(share)/setwright/std

uninstall:
	rm -f $(DESTDIR)$(PREFIX)/bin/setwright $(DESTDIR)$(PREFIX)/lib/libsetwright.a
	rm -f $(DESTDIR)$(PREFIX)/include/setwright.h $(share)/doc/setwright/LANGUAGE.md
	rm -f $(blocks:stdlib-templates/%=$(share)/setwright/std/%)
	rmdir $(share)/setwright/std $(share)/setwright $(share)/doc/setwright 2> /dev/null || :

clean:
	rm -rf $(BUILD)
