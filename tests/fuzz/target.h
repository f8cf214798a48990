/* What a fuzzed target is: one function, given bytes by chance.
 *
 * tests/fuzz/x_target.c is the target x, and seeds.py says in a row what it starts from; nothing else names it. It is
 * linked with entry.c, which libFuzzer and AFL++ call, or, without either, with files.c, which runs it over files.
 * A target fails by crashing, by a sanitizer's report, or by taking more than a second of the processor. */
#ifndef TESTS_FUZZ_TARGET_H
#define TESTS_FUZZ_TARGET_H

#include <stddef.h>
#include <stdint.h>

void target_run(const char *bytes, size_t length); /* the bytes are the caller's and end without a NUL */

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length); /* the name that libFuzzer and AFL++ look for */

#endif
