/* The writers that the table of formats names; see format.h for what each function does. Each keeps its state and its
 * buffer in the arena given to begin. */
#ifndef EMIT_FORMATS_H
#define EMIT_FORMATS_H

#include "emit/format.h"

#define WRITER(name) \
    struct writer *name##_begin(struct arena *arena, struct sink sink, const struct format_options *options); \
    bool name##_athlete(struct writer *writer, const struct athlete *athlete); \
    bool name##_plan(struct writer *writer, const struct plan *plan); \
    bool name##_pause(struct writer *writer); \
    bool name##_end(struct writer *writer)

WRITER(text);
WRITER(csv);
WRITER(yaml);

#undef WRITER

bool text_knows(const struct writer *writer, const struct alike *alike);
bool text_again(struct writer *writer, const struct athlete *athlete, const struct alike *alike);
bool csv_knows(const struct writer *writer, const struct alike *alike);
bool csv_again(struct writer *writer, const struct athlete *athlete, const struct alike *alike);

#endif
