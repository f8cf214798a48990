#include "base/diag.h"

#include "base/excerpt.h"
#include "base/vec.h"

#include <stdlib.h>
#include <string.h>

struct findings {
    struct arena *arena;
    struct sources *sources;
    VEC(struct finding *) all;
    const struct finding **sorted;
    int sorted_room;
    struct finding **slots; /* hash set on kind and span, at most half full */
    uint32_t room;          /* a power of two */
    int said;               /* repeats counted */
};

struct findings *findings_new(struct arena *arena, struct sources *sources)
{
    struct findings *findings = NEW(arena, struct findings);
    *findings = (struct findings){ .arena = arena, .sources = sources, .room = 64 };
    findings->slots = NEW_MANY(arena, struct finding *, findings->room);
    return findings;
}

/* Collecting */

/* Without a place only the sentence tells two mistakes apart. */
static bool is_repeat(const struct finding *finding, const struct kind_row *row, struct span at, const char *message)
{
    return finding->row == row && finding->at.start == at.start && finding->at.end == at.end &&
           (span_is_somewhere(at) || strcmp(finding->message, message) == 0);
}

static struct finding **slot_find(struct findings *findings, const struct kind_row *row, struct span at, const char *message)
{
    uint64_t hash = (uint64_t)at.start << 32 | at.end; /* of the place alone: few kinds meet in one */
    hash *= UINT64_C(0x9E3779B97F4A7C15);              /* 2^64 over the golden ratio: Knuth, multiplicative hashing */
    uint32_t i = (uint32_t)(hash >> 32) & (findings->room - 1);
    while (findings->slots[i] && !is_repeat(findings->slots[i], row, at, message))
        i = (i + 1) & (findings->room - 1);
    return &findings->slots[i];
}

static void slots_grow(struct findings *findings)
{
    findings->room *= 2;
    findings->slots = NEW_MANY(findings->arena, struct finding *, findings->room);
    for (int i = 0; i < findings->all.count; i++) {
        struct finding *finding = findings->all.at[i];
        if (finding->kind == KIND_RULE)
            continue;
        *slot_find(findings, finding->row, finding->at, finding->message) = finding;
    }
}

static struct finding *add(struct findings *findings, enum kind kind, const struct kind_row *row, enum level level,
                           struct span at, const char *format, va_list args)
{
    const char *message = span_is_somewhere(at) ? NULL : arena_vformat(findings->arena, format, args);
    struct finding **slot = slot_find(findings, row, at, message);
    findings->said++;
    if (*slot) {
        (*slot)->times++;
        return *slot;
    }
    struct finding *finding = NEW(findings->arena, struct finding);
    *finding = (struct finding){
        .kind = kind,
        .row = row,
        .level = level,
        .at = at,
        .message = message ? message : arena_vformat(findings->arena, format, args),
        .times = 1,
        .order = findings->all.count,
    };
    *slot = finding;
    vec_add(findings->arena, &findings->all, finding);
    if ((uint32_t)findings->all.count * 2 > findings->room)
        slots_grow(findings);
    return finding;
}

struct finding *diag_vadd(struct findings *findings, enum kind kind, struct span at, const char *format, va_list args)
{
    return add(findings, kind, kind_row(kind), kind_row(kind)->level, at, format, args);
}

struct finding *diag_add_rule(struct findings *findings, const struct kind_row *row, enum level level, struct span at,
                              const char *format, ...)
{
    va_list args;
    va_start(args, format);
    const char *message = arena_vformat(findings->arena, format, args);
    va_end(args);
    struct finding *finding = NEW(findings->arena, struct finding);
    *finding = (struct finding){ .kind = KIND_RULE, .row = row, .level = level, .at = at, .message = message, .times = 1, .order = findings->all.count };
    vec_add(findings->arena, &findings->all, finding);
    return finding;
}

struct finding *diag_add(struct findings *findings, enum kind kind, struct span at, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    struct finding *finding = diag_vadd(findings, kind, at, format, args);
    va_end(args);
    return finding;
}

void diag_level(struct findings *findings, struct finding *finding, enum level level)
{
    (void)findings;
    if (finding->times == 1 || level < finding->level) /* of several levels at one place the gravest holds */
        finding->level = level;
}

void diag_help(struct findings *findings, struct finding *finding, const char *format, ...)
{
    if (finding->times > 1)
        return;
    va_list args;
    va_start(args, format);
    finding->help = arena_vformat(findings->arena, format, args);
    va_end(args);
}

void diag_related(struct findings *findings, struct finding *finding, struct span at, const char *format, ...)
{
    if (finding->times > 1)
        return;
    va_list args;
    va_start(args, format);
    struct related *related = NEW(findings->arena, struct related);
    *related = (struct related){ .at = at, .says = arena_vformat(findings->arena, format, args) };
    va_end(args);
    struct related **last = &finding->related;
    while (*last)
        last = &(*last)->next;
    *last = related;
}

static void athlete_remember(struct findings *findings, struct finding *finding, const char *name)
{
    enum { ROOM = 512 }; /* longer than any name */
    if (!finding->last_athlete)
        finding->last_athlete = arena_alloc(findings->arena, ROOM);
    snprintf(finding->last_athlete, ROOM, "%s", name);
}

void diag_setting(struct findings *findings, struct finding *finding, struct setting setting)
{
    bool is_first = finding->times == 1, is_last = setting.athlete && finding->last_athlete && !strcmp(setting.athlete, finding->last_athlete);
    const char *name = setting.athlete && (is_first || finding->athlete_count < SETTING_ATHLETES)
                           ? arena_copy(findings->arena, setting.athlete, strlen(setting.athlete)) : setting.athlete;
    if (is_first)
        finding->setting = setting, finding->setting.athlete = name;
    if (!setting.athlete || is_last)
        return;
    if (finding->athlete_count < SETTING_ATHLETES)
        finding->athletes[finding->athlete_count] = name;
    finding->athlete_count++;
    athlete_remember(findings, finding, setting.athlete);
}

static bool is_heard(const struct finding *finding)
{
    return !finding->off && !finding->allowed;
}

int findings_count(const struct findings *findings, enum level level)
{
    int count = 0;
    for (int i = 0; i < findings->all.count; i++)
        count += is_heard(findings->all.at[i]) && findings->all.at[i]->level == level;
    return count;
}

int findings_said(const struct findings *findings)
{
    return findings->said;
}

int findings_total(const struct findings *findings)
{
    int count = 0;
    for (int i = 0; i < findings->all.count; i++)
        count += is_heard(findings->all.at[i]);
    return count;
}

struct finding *const *findings_all(struct findings *findings, int *count)
{
    *count = findings->all.count;
    return findings->all.at;
}

bool findings_erred_after(const struct findings *findings, int count)
{
    for (int i = count; i < findings->all.count; i++)
        if (findings->all.at[i]->level == LEVEL_ERROR)
            return true;
    return false;
}

bool findings_has_kind(const struct findings *findings, enum kind kind)
{
    for (int i = 0; i < findings->all.count; i++)
        if (findings->all.at[i]->kind == kind)
            return true;
    return false;
}

/* Offsets run through the files in order of reading, so one number sorts by file and place. */
static int compare_places(const void *left, const void *right)
{
    const struct finding *a = *(const struct finding *const *)left, *b = *(const struct finding *const *)right;
    if (a->at.start != b->at.start)
        return a->at.start < b->at.start ? -1 : 1;
    return a->order < b->order ? -1 : a->order > b->order;
}

const struct finding *const *findings_sorted(struct findings *findings)
{
    int heard = 0;
    if (!findings->sorted || findings->sorted_room < findings->all.count) {
        findings->sorted_room = findings->all.room;
        findings->sorted = NEW_MANY(findings->arena, const struct finding *, findings->sorted_room + 1);
    }
    for (int i = 0; i < findings->all.count; i++)
        if (is_heard(findings->all.at[i]))
            findings->sorted[heard++] = findings->all.at[i];
    if (heard)
        qsort(findings->sorted, (size_t)heard, sizeof *findings->sorted, compare_places);
    return findings->sorted;
}

const struct finding *const *findings_allowed(struct findings *findings, int *count)
{
    VEC(const struct finding *) allowed = { 0 };
    for (int i = 0; i < findings->all.count; i++)
        if (findings->all.at[i]->allowed && !findings->all.at[i]->off)
            vec_add(findings->arena, &allowed, findings->all.at[i]);
    if (allowed.count)
        qsort(allowed.at, (size_t)allowed.count, sizeof *allowed.at, compare_places);
    *count = allowed.count;
    return allowed.at;
}

/* Printing */

static const char *const level_colours[] = { "\x1b[1;31m", "\x1b[1;35m", "\x1b[1;36m" };

struct printer {
    struct findings *findings;
    FILE *out;
    struct diag_style style;
};

static const char *ink(const struct printer *printer, const char *escape)
{
    return printer->style.colour ? escape : "";
}

/* FILE:LINE:COLUMN: LEVEL: message */
static void print_head(const struct printer *printer, struct span at, const char *level, const char *colour,
                       const char *message)
{
    FILE *out = printer->out;
    struct position from = position_of(printer->findings->sources, at.start);
    fputs(ink(printer, "\x1b[1m"), out);
    safe_print(out, from.source ? from.source->name : "setwright");
    if (from.source)
        fprintf(out, ":%u:%u", (unsigned)from.line, (unsigned)from.column);
    fprintf(out, ":%s %s%s:%s ", ink(printer, "\x1b[0m"), ink(printer, colour), level, ink(printer, "\x1b[0m"));
    safe_print(out, message);
}

/* One part of "block winter-base, week 3, day A, squat"; `count` says how many stand before it. */
static void print_part(FILE *out, int *count, const char *word, const char *name)
{
    if (!name)
        return;
    fputs((*count)++ ? ", " : "  in ", out);
    fputs(word, out);
    safe_print(out, name);
}

static void print_athletes(FILE *out, const struct finding *finding)
{
    for (int i = 0; i < finding->athlete_count && i < SETTING_ATHLETES; i++) {
        if (i)
            fputs(i + 1 == finding->athlete_count ? " and " : ", ", out);
        safe_print(out, finding->athletes[i]);
    }
    if (finding->athlete_count > SETTING_ATHLETES)
        fprintf(out, " and %d more", finding->athlete_count - SETTING_ATHLETES);
}

static void print_setting(FILE *out, const struct finding *finding)
{
    const struct setting *setting = &finding->setting;
    int count = 0;
    char week[16];
    snprintf(week, sizeof week, "%d", setting->week);
    print_part(out, &count, "block ", setting->block);
    print_part(out, &count, "week ", setting->week ? week : NULL);
    print_part(out, &count, "day ", setting->day);
    print_part(out, &count, "", setting->lift);
    if (finding->athlete_count) {
        fputs(count++ ? " for " : "  for ", out);
        print_athletes(out, finding);
    }
    if (count)
        fputc('\n', out);
}

static void print_finding(const struct printer *printer, const struct finding *finding)
{
    FILE *out = printer->out;
    const char *colour = level_colours[finding->level];
    print_head(printer, finding->at, level_name(finding->level), colour, finding->message);
    fprintf(out, " [%s]\n", finding->row->name);
    if (printer->style.brief)
        return;
    excerpt_print(printer->findings->sources, finding->at, out, ink(printer, colour));
    print_setting(out, finding);
    if (finding->help) {
        fputs("  help: ", out);
        safe_print(out, finding->help);
        fputc('\n', out);
    }
    for (const struct related *related = finding->related; related; related = related->next) {
        print_head(printer, related->at, "note", "\x1b[1m", related->says);
        fputc('\n', out);
        excerpt_print(printer->findings->sources, related->at, out, ink(printer, "\x1b[1m"));
    }
}

void findings_print(struct findings *findings, FILE *out, struct diag_style style)
{
    const struct printer printer = { findings, out, style };
    const struct finding *const *sorted = findings_sorted(findings);
    int total = findings_total(findings), shown = style.most && style.most < total ? style.most : total;
    /* Where not all fit, no error gives way to a warning: what stops the coach is shown first. */
    int room = shown, left[LEVEL_ADVICE + 1];
    for (int level = LEVEL_ERROR; level <= LEVEL_ADVICE; level++) {
        int count = findings_count(findings, (enum level)level);
        left[level] = count < room ? count : room;
        room -= left[level];
    }
    for (int i = 0; i < total; i++)
        if (left[sorted[i]->level]-- > 0)
            print_finding(&printer, sorted[i]);
    if (shown < total)
        fprintf(out, "setwright: %d findings, of which the first %d are shown\n", total, shown);
}

void diag_say(FILE *err, const char *format, ...)
{
    enum { MESSAGE_MOST = 16 * 1024 }; /* three paths; without memory there must still be words */
    char message[MESSAGE_MOST];
    va_list args;
    va_start(args, format);
    vsnprintf(message, sizeof message, format, args);
    va_end(args);
    fputs("setwright: ", err);
    safe_print(err, message);
    fputc('\n', err);
}
