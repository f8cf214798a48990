/* A whole club from the bytes, through the library as a program that embeds it: read, check, and written in each format and
 * sheet. A line `# file NAME` begins another file, which the others may use; what stands before the first is any.block. */
#include "target.h"

#include "setwright.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { FILES_MOST = 12, NAME_MOST = 64, FINDINGS_MOST = 30, PAIR_WEEKS_MOST = 60, QUESTIONS_MOST = 3 };

struct file {
    char name[NAME_MOST];
    const char *bytes;
    size_t length;
};
struct club {
    struct file files[FILES_MOST];
    int count;
};

static const char *read_file(void *context, const char *path, size_t *length, const char **why)
{
    const struct club *club = context;
    for (int i = 0; i < club->count; i++)
        if (!strcmp(club->files[i].name, path)) {
            *length = club->files[i].length;
            return club->files[i].bytes;
        }
    *why = "no such file";
    return NULL;
}

/* The length of a line `# file NAME`, its end included, with the name in `file`; 0 where none begins. */
static size_t file_line(const char *at, const char *end, struct file *file)
{
    static const char mark[] = "# file ";
    const size_t before = sizeof mark - 1;
    if ((size_t)(end - at) < before || memcmp(at, mark, before) != 0)
        return 0;
    const char *stop = memchr(at, '\n', (size_t)(end - at));
    size_t line = stop ? (size_t)(stop - at) : (size_t)(end - at);
    snprintf(file->name, sizeof file->name, "%.*s", (int)(line - before), at + before);
    return line + (stop != NULL);
}

static void split(struct club *club, const char *bytes, size_t length)
{
    const char *end = bytes + length, *at = bytes;
    *club = (struct club){ .files = { { "any.block", bytes, 0 } }, .count = 1 };
    while (at < end) {
        struct file next = { 0 };
        size_t line = club->count < FILES_MOST ? file_line(at, end, &next) : 0;
        if (line) {
            next.bytes = at += line;
            club->files[club->count++] = next;
            continue;
        }
        const char *stop = memchr(at, '\n', (size_t)(end - at));
        at = stop ? stop + 1 : end;
        struct file *now = &club->files[club->count - 1];
        now->length = (size_t)(at - now->bytes);
    }
}

static int blocks_of(const struct club *club, const char **paths)
{
    int count = 0;
    for (int i = 0; i < club->count; i++) {
        size_t length = strlen(club->files[i].name);
        if (length > 6 && !strcmp(club->files[i].name + length - 6, ".block"))
            paths[count++] = club->files[i].name;
    }
    return count;
}

/* Sums what is written, so that two outputs can be compared without keeping them (FNV-1a). */
static bool sum(void *context, const char *bytes, size_t length)
{
    uint64_t *sum = context;
    for (size_t i = 0; i < length; i++)
        *sum = (*sum ^ (unsigned char)bytes[i]) * UINT64_C(1099511628211);
    return true;
}

static void findings(struct setwright *sw)
{
    uint64_t said = 0;
    setwright_findings_text(sw, (struct setwright_sink){ sum, &said },
                            (struct setwright_style){ .most = FINDINGS_MOST });
    for (int i = 0; i < setwright_finding_count(sw) && i < FINDINGS_MOST; i++) {
        struct setwright_finding finding = setwright_finding(sw, i);
        const struct setwright_place *place = &finding.place;
        if (!finding.message ||
            (place->file && (place->line < 1 || place->column < 1 || place->end_byte < place->byte)))
            abort();
    }
    for (int i = 0; i < setwright_allowed_count(sw); i++)
        if (!setwright_allowed(sw, i).allowed)
            abort();
}

static uint64_t written(struct setwright *sw, const char *format, const struct setwright_choice *choice)
{
    uint64_t bytes = 0;
    enum setwright_status status = setwright_build(sw, format, choice, (struct setwright_sink){ sum, &bytes });
    if (status == SETWRIGHT_FILES || (status == SETWRIGHT_USAGE && !setwright_problem(sw)))
        abort();
    return bytes;
}

static bool count_pair(void *context, const char *athlete, const char *block)
{
    int *pairs = context;
    ++*pairs;
    return athlete && block;
}

struct asked {
    struct setwright *sw;
    char cells[QUESTIONS_MOST][4][256]; /* athlete, block, day, lift */
    int weeks[QUESTIONS_MOST], count;
};

static bool note_row(void *context, const char *const *cells)
{
    static const int wanted[4] = { 0, 1, 4, 6 };
    struct asked *asked = context;
    for (int i = 0; i < 4; i++)
        snprintf(asked->cells[asked->count][i], sizeof asked->cells[0][0], "%s", cells[wanted[i]]);
    asked->weeks[asked->count] = atoi(cells[2]);
    return ++asked->count < QUESTIONS_MOST;
}

static void why(struct setwright *sw, const struct setwright_choice *choice)
{
    struct asked asked = { .sw = sw };
    uint64_t said = 0;
    setwright_walk(sw, choice, note_row, &asked);
    for (int i = 0; i < asked.count; i++) {
        char(*cells)[256] = asked.cells[i];
        struct setwright_question question = { cells[0], cells[1], cells[2], cells[3], asked.weeks[i] };
        setwright_why(sw, &question, (struct setwright_sink){ sum, &said });
    }
}

/* Built in one go, lifters who are alike share what was written of them: the bytes are those of each one's own plan. */
static void in_one_go(struct club *club, const char *const *paths, int count, const struct setwright_choice *choice, uint64_t bytes)
{
    struct setwright *sw = setwright_new((struct setwright_reader){ read_file, club, false });
    uint64_t again = 0;
    if (!sw)
        abort();
    setwright_load(sw, paths, count);
    enum setwright_status status = setwright_build_checked(sw, "csv", choice, (struct setwright_sink){ sum, &again });
    if (status != SETWRIGHT_LIMIT && (status != SETWRIGHT_FINE || again != bytes))
        abort();
    setwright_free(sw);
}

/* Long blocks for many are written for their first weeks only: it is the same code, and a second is soon gone. */
static void outputs(struct setwright *sw, struct club *club, const char *const *paths, int count)
{
    struct setwright_choice choice = { 0 };
    int pairs = 0;
    uint64_t said = 0;
    setwright_pairs(sw, &choice, count_pair, &pairs);
    if (pairs && setwright_weeks(sw, &choice) > PAIR_WEEKS_MOST / pairs)
        choice.last_week = 2;
    const char *ending, *says, *format, *sheet;
    for (int i = 0; (format = setwright_format_name(i, &ending, &says)); i++)
        written(sw, format, &choice);
    for (int i = 0; (sheet = setwright_sheet_name(i, &says)); i++) {
        choice.sheet = sheet;
        written(sw, "text", &choice);
    }
    choice.sheet = NULL;
    uint64_t table = written(sw, "csv", &choice);
    if (table != written(sw, "csv", &choice))
        abort();
    if (pairs)
        in_one_go(club, paths, count, &choice, table);
    setwright_calendar(sw, &choice, (struct setwright_sink){ sum, &said });
    why(sw, &choice);
}

void target_run(const char *bytes, size_t length)
{
    struct club club;
    const char *paths[FILES_MOST];
    split(&club, bytes, length);
    struct setwright *sw = setwright_new((struct setwright_reader){ read_file, &club, false });
    if (!sw)
        abort();
    int count = blocks_of(&club, paths);
    setwright_load(sw, paths, count);
    enum setwright_status status = setwright_check(sw);
    findings(sw);
    if (status == SETWRIGHT_FINE)
        outputs(sw, &club, paths, count);
    setwright_free(sw);
}
