#include "api/inner.h"

#include "model/written.h"

#include <stdlib.h>

int setwright_finding_count(const struct setwright *sw)
{
    return findings_total(sw->findings);
}

int setwright_errors(const struct setwright *sw)
{
    return findings_count(sw->findings, LEVEL_ERROR);
}

int setwright_warnings(const struct setwright *sw)
{
    return findings_count(sw->findings, LEVEL_WARNING);
}

static struct setwright_place place_of(struct setwright *sw, struct span at)
{
    struct position first = position_of(sw->sources, at.start), last = position_of(sw->sources, at.end);
    if (!span_is_somewhere(at) || !first.source)
        return (struct setwright_place){ 0 };
    return (struct setwright_place){ first.source->name, first.line, first.column, last.line, last.column, first.byte, last.byte };
}

static const struct setwright_related *related_of(struct setwright *sw, const struct finding *finding, int *count)
{
    VEC(struct setwright_related) list = { 0 };
    for (const struct related *related = finding->related; related; related = related->next) {
        struct setwright_related one = { place_of(sw, related->at), related->says };
        vec_add(sw->arena, &list, one);
    }
    *count = list.count;
    return list.at;
}

static struct setwright_finding finding_of(struct setwright *sw, const struct finding *finding)
{
    const struct setting *setting = &finding->setting;
    struct setwright_finding out = { .level = (enum setwright_level)finding->level, .name = finding->row->name,
                                     .message = finding->message, .help = finding->help, .place = place_of(sw, finding->at),
                                     .block = setting->block, .day = setting->day, .lift = setting->lift,
                                     .week = setting->week, .athletes = finding->athletes, .athlete_count = finding->athlete_count,
                                     .allowed = finding->allowed };
    out.named = finding->athlete_count < SETTING_ATHLETES ? finding->athlete_count : SETTING_ATHLETES;
    out.related = related_of(sw, finding, &out.related_count);
    out.group = sw->model ? written_group(sw->arena, sw->model, setting, finding->at) : NULL;
    return out;
}

struct setwright_finding setwright_finding(struct setwright *sw, int index)
{
    GUARD_WITH(sw, (struct setwright_finding){ 0 });
    if (!sw->heard) {
        sw->heard_count = findings_total(sw->findings);
        sw->heard = findings_sorted(sw->findings);
    }
    return index >= 0 && index < sw->heard_count ? finding_of(sw, sw->heard[index]) : (struct setwright_finding){ 0 };
}

int setwright_allowed_count(struct setwright *sw)
{
    GUARD_WITH(sw, 0);
    if (!sw->allowed)
        sw->allowed = findings_allowed(sw->findings, &sw->allowed_count);
    return sw->allowed_count;
}

struct setwright_finding setwright_allowed(struct setwright *sw, int index)
{
    int count = setwright_allowed_count(sw);
    GUARD_WITH(sw, (struct setwright_finding){ 0 });
    return index >= 0 && index < count ? finding_of(sw, sw->allowed[index]) : (struct setwright_finding){ 0 };
}

enum setwright_status setwright_silence(struct setwright *sw, const bool *silent)
{
    int all, count = findings_total(sw->findings);
    GUARD(sw);
    const struct finding *const *heard = findings_sorted(sw->findings);
    struct finding *const *finding = findings_all(sw->findings, &all);
    for (int i = 0; i < count; i++)
        if (silent[i] && heard[i]->level != LEVEL_ERROR)
            finding[heard[i]->order]->off = true;
    sw->heard = NULL;
    return SETWRIGHT_FINE;
}

/* A stream into memory, which grows while `text` and `length` stay where they are. */
struct memory_file {
    FILE *out;
    char *text;
    size_t length;
};

static void memory_file_drop(void *of)
{
    struct memory_file *file = of;
    if (file->out)
        fclose(file->out);
    free(file->text);
    *file = (struct memory_file){ 0 };
}

enum setwright_status setwright_findings_text(struct setwright *sw, struct setwright_sink sink, struct setwright_style style)
{
    GUARD(sw);
    struct memory_file *file = NEW(sw->work, struct memory_file);
    arena_ends(sw->work, memory_file_drop, file);
    if (!(file->out = open_memstream(&file->text, &file->length)))
        arena_exhausted(sw->work);
    findings_print(sw->findings, file->out, (struct diag_style){ .colour = style.colour, .brief = style.brief, .most = style.most });
    if (fflush(file->out) != 0 || ferror(file->out))
        arena_exhausted(sw->work);
    bool fine = !file->length || sink.write(sink.context, file->text, file->length);
    memory_file_drop(file);
    return fine ? SETWRIGHT_FINE : SETWRIGHT_FILES;
}
