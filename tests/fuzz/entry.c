/* One input for the target, whoever brings it. Time is the processor's, so a busy machine is no hang. */
#include "target.h"

#include <stdio.h>
#include <stdlib.h>
#include <sys/prctl.h>
#include <time.h>

enum { SECONDS_MOST = 1 };

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length)
{
    /* The sanitizers give memory back late, so that every large page would be a new one. */
    prctl(PR_SET_THP_DISABLE, 1L, 0L, 0L, 0L);
    clock_t start = clock();
    target_run((const char *)bytes, length);
    clock_t taken = clock() - start;
    if (taken > SECONDS_MOST * CLOCKS_PER_SEC) {
        fprintf(stderr, "too slow: %.1f s for %zu bytes\n", (double)taken / CLOCKS_PER_SEC, length);
        abort();
    }
    return 0;
}
