#include "base/excerpt.h"

#include <string.h>
#include <utf8proc.h>

struct glyph {
    char text[12];
    int length;
    int width;      /* columns on the screen */
    uint32_t bytes; /* of the file */
};

bool character_is_harmless(int32_t code)
{
    switch (utf8proc_category(code)) {
    case UTF8PROC_CATEGORY_CC:
    case UTF8PROC_CATEGORY_ZL:
    case UTF8PROC_CATEGORY_ZP:
    case UTF8PROC_CATEGORY_CS:
        return false;
    case UTF8PROC_CATEGORY_CF:
        return code == 0x200C || code == 0x200D;
    default:
        return true;
    }
}

/* Most of all text, and what it takes is known. */
static bool is_plain(char byte)
{
    return byte >= ' ' && byte <= '~';
}

static struct glyph glyph_read(const char *text, uint32_t length)
{
    struct glyph glyph = { .bytes = 1 };
    if (is_plain(*text))
        return (struct glyph){ .text = { *text }, .bytes = 1, .length = 1, .width = 1 };
    utf8proc_int32_t code = -1;
    utf8proc_ssize_t size = utf8proc_iterate((const utf8proc_uint8_t *)text, (utf8proc_ssize_t)length, &code);
    if (size > 0)
        glyph.bytes = (uint32_t)size;
    if (size > 0 && character_is_harmless(code)) {
        memcpy(glyph.text, text, glyph.bytes);
        glyph.length = (int)glyph.bytes;
        glyph.width = utf8proc_charwidth(code);
        return glyph;
    }
    bool is_byte = size <= 0 || code < 0x80;
    unsigned shown = is_byte ? (unsigned char)*text : (unsigned)code;
    glyph.length = snprintf(glyph.text, sizeof glyph.text, is_byte ? "\\x%02x" : "\\u%04x", shown);
    glyph.width = glyph.length;
    return glyph;
}

/* A byte becomes four characters at most. */
char *safe_text(struct arena *arena, const char *text)
{
    uint32_t length = (uint32_t)strlen(text);
    char *safe = arena_alloc(arena, 4 * (size_t)length + 1), *to = safe;
    for (uint32_t at = 0; at < length;) {
        struct glyph glyph = glyph_read(text + at, length - at);
        memcpy(to, glyph.text, (size_t)glyph.length);
        to += glyph.length;
        at += glyph.bytes;
    }
    return safe;
}

void safe_print(FILE *out, const char *text)
{
    uint32_t length = (uint32_t)strlen(text);
    for (uint32_t at = 0; at < length;) {
        uint32_t plain = at;
        while (plain < length && is_plain(text[plain]))
            plain++;
        fwrite(text + at, 1, plain - at, out);
        if ((at = plain) == length)
            break;
        struct glyph glyph = glyph_read(text + at, length - at);
        fwrite(glyph.text, 1, (size_t)glyph.length, out);
        at += glyph.bytes;
    }
}

/* A line that is too long shows a stretch around the mark: bytes before it, bytes in all. */
enum { LEAD = 60, STRETCH = 160, TAB = 8 };

struct excerpt {
    const char *text;
    uint32_t length;
    uint32_t mark_start, mark_end; /* bytes in the text */
    bool cut_before, cut_after;
};

static bool is_inside_character(char byte)
{
    return ((unsigned char)byte & 0xC0) == 0x80;
}

static void excerpt_cut(struct excerpt *excerpt)
{
    if (excerpt->length <= STRETCH)
        return;
    if (excerpt->mark_start > LEAD) {
        uint32_t skip = excerpt->mark_start - LEAD;
        while (skip < excerpt->mark_start && is_inside_character(excerpt->text[skip]))
            skip++;
        excerpt->text += skip;
        excerpt->length -= skip;
        excerpt->mark_start -= skip;
        excerpt->mark_end -= skip;
        excerpt->cut_before = true;
    }
    if (excerpt->length > STRETCH) {
        uint32_t end = STRETCH;
        while (end < excerpt->length && is_inside_character(excerpt->text[end]))
            end++;
        excerpt->cut_after = end < excerpt->length;
        excerpt->length = end;
        excerpt->mark_end = excerpt->mark_end < end ? excerpt->mark_end : end;
    }
}

static struct excerpt excerpt_of(struct sources *sources, struct span at, struct position from)
{
    struct excerpt excerpt = { 0 };
    struct source *source = sources_find(sources, at.start);
    excerpt.text = source_line(source, from.line, &excerpt.length);
    excerpt.mark_start = from.byte - (uint32_t)(excerpt.text - source->text);
    if (excerpt.mark_start > excerpt.length)
        excerpt.mark_start = excerpt.length;
    excerpt.mark_end = excerpt.mark_start + (at.end - at.start);
    if (excerpt.mark_end > excerpt.length)
        excerpt.mark_end = excerpt.length;
    excerpt_cut(&excerpt);
    return excerpt;
}

/* Returns the column where the text begins, from 0. */
static int print_line(FILE *out, const struct excerpt *excerpt, uint32_t number)
{
    int column = fprintf(out, "%5u |", (unsigned)number) + 1;
    if (excerpt->length)
        fputc(' ', out);
    if (excerpt->cut_before)
        fputs("...", out);
    for (uint32_t at = 0; at < excerpt->length;) {
        struct glyph glyph = glyph_read(excerpt->text + at, excerpt->length - at);
        if (excerpt->text[at] == '\t')
            fputc('\t', out);
        else
            fwrite(glyph.text, 1, (size_t)glyph.length, out);
        at += glyph.bytes;
    }
    fputs(excerpt->cut_after ? "...\n" : "\n", out);
    return column;
}

static void print_many(FILE *out, char c, int count)
{
    for (int i = 0; i < count; i++)
        fputc(c, out);
}

/* A mark under a tab takes one column; the tab then goes on to its stop, unless it is but one column wide. */
static int print_tab(FILE *out, bool marked, bool last, int column)
{
    int width = TAB - column % TAB;
    if (marked)
        fputc('^', out);
    if (!marked || (width > 1 && !last))
        fputc('\t', out);
    return width;
}

static void print_marks(FILE *out, const struct excerpt *excerpt, int column)
{
    bool any = false;
    print_many(out, ' ', column - 2);
    fputs("| ", out);
    if (excerpt->cut_before)
        column += fprintf(out, "   ");
    for (uint32_t at = 0; at < excerpt->mark_end;) {
        struct glyph glyph = glyph_read(excerpt->text + at, excerpt->length - at);
        bool marked = at + glyph.bytes > excerpt->mark_start;
        if (excerpt->text[at] == '\t')
            glyph.width = print_tab(out, marked, at + 1 == excerpt->mark_end, column);
        else
            print_many(out, marked ? '^' : ' ', glyph.width);
        any |= marked && glyph.width > 0;
        column += glyph.width;
        at += glyph.bytes;
    }
    if (!any)
        fputc('^', out);
}

void excerpt_print(struct sources *sources, struct span at, FILE *out, const char *colour)
{
    struct position from = position_of(sources, at.start);
    if (!from.source)
        return;
    struct excerpt excerpt = excerpt_of(sources, at, from);
    int column = print_line(out, &excerpt, from.line);
    fputs(colour, out);
    print_marks(out, &excerpt, column);
    fputs(*colour ? "\x1b[0m\n" : "\n", out);
}
