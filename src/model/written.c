#include "model/written.h"

#include <string.h>

/* The place of the group that has `at`; nowhere: none has. */
static struct span group_in_day(const struct day *day, struct span at)
{
    for (int e = 0; e < day->entry_count; e++)
        for (int g = 0; g < day->entries[e].group_count; g++) {
            const struct group *group = &day->entries[e].groups[g];
            struct span place = group_place(&day->entries[e], group, group->at);
            if (place.start <= at.start && at.end <= place.end)
                return place;
        }
    return (struct span){ 0 };
}

static struct span group_find(const struct model *model, const struct setting *setting, struct span at)
{
    struct span group = { 0 };
    for (int b = 0; b < model->block_count && !span_is_somewhere(group); b++)
        if (!strcmp(model->blocks[b]->name, setting->block))
            for (int d = 0; d < model->blocks[b]->day_count && !span_is_somewhere(group); d++)
                group = group_in_day(&model->blocks[b]->days[d], at);
    return group;
}

static bool is_blank(char c)
{
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

const char *written_group(struct arena *arena, const struct model *model, const struct setting *setting, struct span at)
{
    if (!setting->block || !setting->lift || !span_is_somewhere(at))
        return NULL;
    struct span group = group_find(model, setting, at);
    const struct source *source = span_is_somewhere(group) ? sources_find(model->sources, group.start) : NULL;
    if (!source)
        return NULL;
    char *words = arena_copy(arena, source->text + (group.start - source->base), group.end - group.start), *to = words;
    for (const char *from = words; *from; from++)
        if (!is_blank(*from))
            *to++ = *from;
        else if (!is_blank(from[1]))
            *to++ = ' ';
    *to = 0;
    return words;
}
