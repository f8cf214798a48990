#include "base/csv.h"

#include "base/vec.h"

#include <csv.h>

/* Writing */

size_t csv_cell(char *to, const char *text, size_t length)
{
    bool formula = length > 0 && memchr("=+-@\t\r\n", text[0], 7) != NULL;
    bool quoted = false;
    for (size_t i = 0; i < length; i++)
        quoted |= text[i] == ',' || text[i] == '"' || text[i] == '\r' || text[i] == '\n';
    char *at = to;
    if (quoted)
        *at++ = '"';
    if (formula)
        *at++ = '\'';
    for (size_t i = 0; i < length; i++) {
        if (text[i] == '"')
            *at++ = '"';
        *at++ = text[i];
    }
    if (quoted)
        *at++ = '"';
    return (size_t)(at - to);
}

/* Reading. A line without a quote is cells between delimiters, and needs no more than to be cut there; the others, and what they
 * go on into, are libcsv's. It says what a cell holds but not where it stood, so what may close a cell is fed as a byte by
 * itself: a cell ends where that byte is. */

struct reader {
    struct arena *arena;
    const char *bytes;
    size_t at;      /* the byte being fed */
    size_t begun;   /* first byte after the last separator */
    size_t quote;   /* the first that is not before `at`; the length: none */
    VEC(struct csv_cell) cells; /* of the row so far; the storage is used again */
    char *cut;                  /* a line being cut, and its room; used again too */
    size_t cut_room;
    const struct csv_taker *taker;
    bool stopped, row_ended;
};

static bool is_blank(char c)
{
    return c == ' ' || c == '\t';
}

static bool is_line_end(char c)
{
    return c == '\r' || c == '\n';
}

/* What stands in the line from `start` to `end`, as `line` has it too. */
static void cut_cell(struct reader *reader, char *line, size_t begun, size_t start, size_t end)
{
    while (start < end && is_blank(reader->bytes[start]))
        start++;
    while (end > start && is_blank(reader->bytes[end - 1]))
        end--;
    line[end - begun] = 0;
    struct csv_cell cell = { line + (start - begun), end - start, start, end };
    vec_add(reader->arena, &reader->cells, cell);
}

/* `reader->at` is where it ends; the text has room for a NUL behind it. */
static void cell_add(struct reader *reader, char *text, size_t length)
{
    size_t start = reader->begun, end = reader->at;
    reader->begun = reader->at + 1;
    while (start < end && (is_blank(reader->bytes[start]) || is_line_end(reader->bytes[start])))
        start++;
    while (end > start && is_blank(reader->bytes[end - 1]))
        end--;
    while (length > 0 && is_blank(text[length - 1]))
        length--;
    for (; length > 0 && is_blank(*text); length--)
        text++;
    text[length] = 0;
    struct csv_cell cell = { text, length, start, end };
    vec_add(reader->arena, &reader->cells, cell);
}

static void on_cell(void *value, size_t length, void *context)
{
    struct reader *reader = context;
    cell_add(reader, arena_copy(reader->arena, value, length), length);
}

static void row_end(struct reader *reader)
{
    bool empty = true;
    for (int i = 0; i < reader->cells.count && empty; i++)
        empty = !reader->cells.at[i].length;
    if (!empty && !reader->stopped) {
        struct csv_row row = { reader->cells.at, reader->cells.count };
        reader->stopped = !reader->taker->row(reader->taker->context, &row);
    }
    reader->cells.count = 0;
}

static void on_row(int ended_by, void *context)
{
    (void)ended_by;
    struct reader *reader = context;
    row_end(reader);
    reader->row_ended = true;
}

char csv_delimiter(const char *bytes, size_t length)
{
    int commas = 0, semicolons = 0;
    bool quoted = false;
    for (size_t i = 0; i < length && (quoted || !is_line_end(bytes[i])); i++) {
        quoted ^= bytes[i] == '"';
        commas += !quoted && bytes[i] == ',';
        semicolons += !quoted && bytes[i] == ';';
    }
    return semicolons > commas ? ';' : ',';
}

/* The first byte of the cell being read. */
static size_t cell_start(const struct reader *reader, size_t length)
{
    size_t at = reader->begun;
    while (at < length && (is_blank(reader->bytes[at]) || is_line_end(reader->bytes[at])))
        at++;
    return at;
}

/* A cell that began with a quote went wrong at that quote: what follows it may be lines away. */
static void tell_quote(const struct reader *reader, size_t length, const char **why, size_t *at)
{
    size_t start = cell_start(reader, length);
    bool opened = start < length && reader->bytes[start] == '"';
    *why = opened ? "the quote that opens here is not closed at the end of its cell" : "a quote stands inside a cell";
    *at = opened ? start : reader->at;
}

/* The line that begins here, with room for a NUL behind it. */
static char *line_copy(struct reader *reader, size_t length)
{
    if (length >= reader->cut_room)
        reader->cut = arena_alloc(reader->arena, reader->cut_room = 2 * length + 1);
    return memcpy(reader->cut, reader->bytes + reader->at, length);
}

static size_t next_of(const struct reader *reader, char c, size_t length)
{
    const char *found = memchr(reader->bytes + reader->at, c, length - reader->at);
    return found ? (size_t)(found - reader->bytes) : length;
}

static void line_take(struct reader *reader, size_t begun, size_t end, char delimiter)
{
    const struct csv_taker *taker = reader->taker;
    if (taker->line && taker->line(taker->context, begun, end))
        return;
    char *line = line_copy(reader, end - begun);
    for (size_t cell = begun, past; cell <= end; cell = past + 1) {
        const char *next = memchr(reader->bytes + cell, delimiter, end - cell);
        past = next ? (size_t)(next - reader->bytes) : end;
        cut_cell(reader, line, begun, cell, past);
    }
    row_end(reader);
}

/* From the first byte of a row to past its last; false: there is a quote in it. */
static bool cut_line(struct reader *reader, size_t length, char delimiter)
{
    size_t begun = reader->at, end = next_of(reader, '\r', next_of(reader, '\n', length));
    if (reader->quote < begun)
        reader->quote = next_of(reader, '"', length);
    if (reader->quote < end)
        return false;
    if (end > begun) /* an empty line is no row */
        line_take(reader, begun, end, delimiter);
    reader->at = reader->begun = end + (end < length);
    return true;
}

/* Whether no cell can begin or end with it. */
static bool is_inner(char c, char delimiter)
{
    return c != delimiter && c != '"' && !is_blank(c) && !is_line_end(c);
}

static bool feed(struct reader *reader, struct csv_parser *parser, size_t length, const char **why, size_t *at)
{
    char delimiter = (char)csv_get_delim(parser);
    for (size_t next; reader->at < length && !reader->stopped; reader->at = next) {
        if (reader->row_ended && cut_line(reader, length, delimiter)) {
            next = reader->at;
            continue;
        }
        reader->row_ended = false;
        next = reader->at + 1;
        while (is_inner(reader->bytes[reader->at], delimiter) && next < length && is_inner(reader->bytes[next], delimiter))
            next++;
        size_t count = next - reader->at, taken = csv_parse(parser, reader->bytes + reader->at, count, on_cell, on_row, reader);
        if (taken != count) {
            reader->at += taken;
            break;
        }
    }
    bool whole = reader->at == length && !reader->stopped && csv_fini(parser, on_cell, on_row, reader) == 0;
    if (whole || reader->stopped)
        return true;
    tell_quote(reader, length, why, at);
    if (csv_error(parser) == CSV_ENOMEM)
        arena_exhausted(reader->arena);
    return false;
}

static void parser_drop(void *parser)
{
    csv_free(parser); /* forgets its memory, so that a second time is nothing */
}

bool csv_read(struct arena *arena, const char *bytes, size_t length, const struct csv_taker *taker, const char **why, size_t *at)
{
    struct reader reader = { .arena = arena, .bytes = bytes, .row_ended = true, .taker = taker };
    if (length >= 3 && memcmp(bytes, "\xEF\xBB\xBF", 3) == 0)
        reader.at = reader.begun = 3;
    struct csv_parser *parser = NEW(arena, struct csv_parser);
    arena_ends(arena, parser_drop, parser);
    if (csv_init(parser, CSV_STRICT | CSV_STRICT_FINI) != 0)
        arena_exhausted(arena);
    reader.quote = next_of(&reader, '"', length);
    csv_set_delim(parser, (unsigned char)csv_delimiter(bytes, length));
    bool fine = feed(&reader, parser, length, why, at);
    csv_free(parser);
    return fine;
}

void csv_read_again(struct arena *arena, const char *bytes, size_t from, size_t past, char delimiter, const struct csv_taker *taker)
{
    struct reader reader = { .arena = arena, .bytes = bytes, .at = from, .begun = from, .quote = past, .taker = taker };
    while (reader.at < past && !reader.stopped)
        cut_line(&reader, past, delimiter);
}
