/* Any bytes as a training sheet that comes back filled in. */
#include "reading.h"
#include "target.h"

#include "records/filled.h"

void target_run(const char *bytes, size_t length)
{
    struct reading r = { 0 };
    if (setjmp(r.out_of_memory) || !reading_begin(&r, "any.csv", bytes, length))
        abort();
    struct filled filled = filled_read(r.arena, r.interner, r.source, r.findings);
    for (int i = 0; i < filled.count; i++)
        for (int column = 0; column < FILLED_COLUMNS; column++)
            if (filled.rows[i].cells[column].text)
                filled_same(&filled.rows[i], (enum filled_column)column, "72.5");
    reading_end(&r);
}
