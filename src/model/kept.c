/* Plain lines of the same words are alike wherever they stand: coaches write most of a week again in the next. Their
 * entries share the groups of the first, whose places count from the entry's start (group_place).
 *
 * Not within a day: there, who looks at a group wants to know which of two it is. */
#include "model/club.h"
#include "syntax/plain.h"

struct kept_entry {
    const char *words;
    uint32_t length;
    int day;            /* the last that has it */
    struct entry entry; /* its own place counts from its start too */
};

static const char *words_of(const struct place *place, const struct node *line, uint32_t *length)
{
    const struct source *source = place->file->tree->source;
    *length = line->at.end - line->at.start;
    return source->text + (line->at.start - source->base);
}

static void slots_make(struct club *club)
{
    uint32_t bytes = 0;
    for (int i = 0; i < club->loaded.file_count; i++)
        bytes += club->loaded.files[i].tree->source->length;
    club->kept_count = plain_slots(bytes);
    club->kept = NEW_MANY(club->model->arena, struct kept_entry *, club->kept_count);
}

static struct kept_entry **slot_of(struct club *club, const char *words, uint32_t length)
{
    if (!club->kept)
        slots_make(club);
    return &club->kept[bytes_hash(words, length) & (club->kept_count - 1)];
}

bool kept_find(const struct place *place, const struct node *line, struct entry *out)
{
    struct club *club = place->club;
    uint32_t length;
    if (!(line->flags & FLAG_PLAIN) || !club->day)
        return false;
    const char *words = words_of(place, line, &length);
    struct kept_entry *kept = *slot_of(club, words, length);
    if (!kept || kept->length != length || kept->day == club->day || kept->entry.origin != place->origin ||
        memcmp(kept->words, words, length) != 0)
        return false;
    kept->day = club->day;
    *out = kept->entry;
    out->at.start += line->at.start;
    out->at.end += line->at.start;
    return true;
}

static void move_back(struct span *at, uint32_t start)
{
    if (span_is_somewhere(*at))
        *at = (struct span){ at->start - start, at->end - start };
}

/* Every place that a plain line's group may have. */
static void share(struct club *club, struct group *group, uint32_t start)
{
    struct span *places[] = { &group->at, &group->load_at, &group->sets.at, &group->reps.at, &group->load.at };
    for (size_t i = 0; i < sizeof places / sizeof *places; i++)
        move_back(places[i], start);
    if (group->more) {
        struct group_more *more = NEW(club->arena, struct group_more);
        *more = *group->more;
        move_back(&more->progression_at, start);
        move_back(&more->cap.at, start);
        group->more = more;
    }
    group->shared = true;
}

void kept_add(const struct place *place, const struct node *line, const struct entry *entry, struct group *groups)
{
    struct club *club = place->club;
    if (!(line->flags & FLAG_PLAIN) || !club->day || club->arena != club->model->arena)
        return;
    struct kept_entry kept = { .day = club->day, .entry = *entry };
    kept.words = words_of(place, line, &kept.length);
    move_back(&kept.entry.at, line->at.start);
    for (int i = 0; i < entry->group_count; i++)
        share(club, &groups[i], line->at.start);
    struct kept_entry **slot = slot_of(club, kept.words, kept.length);
    if (!*slot)
        *slot = NEW(club->model->arena, struct kept_entry);
    **slot = kept;
}
