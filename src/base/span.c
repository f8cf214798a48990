#include "base/span.h"

#include "base/vec.h"

#include <utf8proc.h>

/* A source remembers the pool so that its line table can be built when first asked for. `source` stays first. */
struct held {
    struct source source;
    struct arena *arena;
    uint32_t counted_line, counted_byte, counted; /* the last place looked up: its line, byte in the text, characters before it */
};

struct sources {
    struct arena *arena;
    VEC(struct held *) all;
    uint64_t next; /* offset of the next file's first byte */
};

struct sources *sources_new(struct arena *arena)
{
    struct sources *sources = NEW(arena, struct sources);
    sources->arena = arena;
    sources->next = 1;
    return sources;
}

static size_t mark_length(const char *bytes, size_t length)
{
    return length >= 3 && memcmp(bytes, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
}

static bool is_room_for(const struct sources *sources, size_t length)
{
    return length < UINT32_MAX - sources->next;
}

struct source *sources_keep(struct sources *sources, const char *name, const char *bytes, size_t length)
{
    size_t mark = mark_length(bytes, length);
    if (!is_room_for(sources, length - mark))
        return NULL;
    struct held *held = NEW(sources->arena, struct held);
    held->arena = sources->arena;
    held->source.name = arena_copy(sources->arena, name, strlen(name));
    held->source.text = bytes + mark;
    held->source.base = (uint32_t)sources->next;
    held->source.length = (uint32_t)(length - mark);
    sources->next += length - mark + 1; /* the end of a file is a place of its own */
    vec_add(sources->arena, &sources->all, held);
    return &held->source;
}

struct source *sources_add(struct sources *sources, const char *name, const char *bytes, size_t length)
{
    if (!is_room_for(sources, length - mark_length(bytes, length)))
        return NULL;
    return sources_keep(sources, name, arena_copy(sources->arena, bytes, length), length);
}

struct source *sources_find(const struct sources *sources, uint32_t offset)
{
    if (offset == 0 || offset >= sources->next)
        return NULL;
    int low = 0, high = sources->all.count;
    while (high - low > 1) {
        int middle = low + (high - low) / 2;
        if (sources->all.at[middle]->source.base <= offset)
            low = middle;
        else
            high = middle;
    }
    return &sources->all.at[low]->source;
}

int sources_count(const struct sources *sources)
{
    return sources->all.count;
}

struct source *sources_at(const struct sources *sources, int index)
{
    return &sources->all.at[index]->source;
}

static void lines_build(struct source *source)
{
    if (source->lines)
        return;
    uint32_t count = 1;
    for (uint32_t i = 0; i < source->length; i++)
        count += source->text[i] == '\n';
    source->lines = NEW_MANY(((struct held *)source)->arena, uint32_t, count);
    source->line_count = 1;
    for (uint32_t i = 0; i < source->length; i++)
        if (source->text[i] == '\n')
            source->lines[source->line_count++] = i + 1;
}

/* The line, from 0, that holds a byte. */
static uint32_t line_of(struct source *source, uint32_t byte)
{
    lines_build(source);
    uint32_t low = 0, high = source->line_count;
    while (high - low > 1) {
        uint32_t middle = low + (high - low) / 2;
        if (source->lines[middle] <= byte)
            low = middle;
        else
            high = middle;
    }
    return low;
}

/* A byte that is no UTF-8 counts as one character. */
static uint32_t characters_in(const char *text, uint32_t length)
{
    uint32_t count = 0;
    for (uint32_t at = 0; at < length; count++) {
        utf8proc_int32_t code;
        utf8proc_ssize_t size =
            utf8proc_iterate((const utf8proc_uint8_t *)text + at, (utf8proc_ssize_t)(length - at), &code);
        at += size > 0 ? (uint32_t)size : 1;
    }
    return count;
}

struct position position_of(struct sources *sources, uint32_t offset)
{
    struct source *source = sources_find(sources, offset);
    if (!source)
        return (struct position){ 0 };
    uint32_t byte = offset - source->base;
    uint32_t line = line_of(source, byte), start = source->lines[line], before = 0;
    /* Findings come in order, so many on one long line are counted through once. */
    struct held *held = (struct held *)source;
    if (held->counted && held->counted_line == line && held->counted_byte <= byte)
        start = held->counted_byte, before = held->counted;
    held->counted = before + characters_in(source->text + start, byte - start);
    held->counted_line = line, held->counted_byte = byte;
    return (struct position){ source, line + 1, held->counted + 1, byte };
}

const char *source_line(struct source *source, uint32_t line, uint32_t *length)
{
    lines_build(source);
    *length = 0;
    if (line < 1 || line > source->line_count)
        return "";
    uint32_t start = source->lines[line - 1];
    uint32_t end = line < source->line_count ? source->lines[line] - 1 : source->length;
    if (end > start && line < source->line_count && source->text[end - 1] == '\r')
        end--;
    *length = end - start;
    return source->text + start;
}
