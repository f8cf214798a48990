/* Plain lines of the same words are alike wherever they stand: coaches write most of a week again in the next. Their
 * entries share the groups of the first, whose places count from each group's start (group_place). Where a note is a group's last
 * word each entry has its own (group_note).
 *
 * Not within a day: there, who looks at a group wants to know which of two it is. */
#include "model/club.h"
#include "syntax/known.h"

struct kept_entry {
    const struct stretch *words;
    int day;            /* the last that has it */
    struct entry entry; /* as in the last line of these words; its own place counts from its start too */
    struct group_own *next; /* room for those of another line */
};

static const char *words_of(const struct place *place, const struct node *node)
{
    const struct source *source = place->file->tree->source;
    return source->text + (node->at.start - source->base);
}

static void slots_make(struct club *club)
{
    uint32_t bytes = 0;
    for (int i = 0; i < club->loaded.file_count; i++)
        bytes += club->loaded.files[i].tree->source->length;
    club->kept_count = known_slots(bytes);
    club->kept = NEW_MANY(club->model->arena, struct kept_entry *, club->kept_count);
}

static struct kept_entry **slot_of(struct club *club, const struct stretch *words)
{
    if (!club->kept)
        slots_make(club);
    return &club->kept[words->hash & (club->kept_count - 1)];
}

/* ---- what each entry has of its own ---- */

/* What an entry has of its own whose words begin at `words`. Groups that stand behind a note of another length move with it.
 * Returns whether it is what the known one has. */
static bool own_make(const struct entry *known, const char *words, struct group_own *out)
{
    uint32_t moved = 0; /* modulo 2^32: it may be less than nothing */
    bool same = true;
    for (int i = 0; i < known->group_count; i++) {
        struct group_own own = known->own[i];
        size_t length = group_note_length(&own, &known->groups[i]);
        own.start += moved;
        own.end += moved;
        const char *note = words + (own.start + known->groups[i].at.end);
        if (own.note && (strncmp(note, own.note, length) != 0 || note[length] != '"')) {
            own.note = note;
            own.end = (uint32_t)(strchr(note, '"') + 1 - words);
            moved = own.end - known->own[i].end;
            same = false;
        }
        out[i] = own;
    }
    return same;
}

bool kept_find(const struct place *place, const struct node *line, struct entry *out)
{
    struct club *club = place->club;
    if (!(line->flags & FLAG_PLAIN) || !club->day)
        return false;
    struct kept_entry *kept = *slot_of(club, line->stretch);
    if (!kept || kept->day == club->day || kept->entry.origin != place->origin || !known_alike(kept->words, line->stretch))
        return false;
    kept->day = club->day;
    if (!own_make(&kept->entry, words_of(place, line), kept->next)) {
        kept->entry.own = kept->next;
        kept->next = NEW_MANY(club->model->arena, struct group_own, kept->entry.group_count);
    }
    *out = kept->entry;
    out->at.start += line->at.start;
    out->at.end += line->at.start;
    return true;
}

/* ---- what the first one has of all ---- */

static void move_back(struct span *at, uint32_t start)
{
    if (span_is_somewhere(*at))
        *at = (struct span){ at->start - start, at->end - start };
}

/* Every place that a plain line's group may have. A note of the entry's own stands behind all of them: it ends the group, which as a
 * place of its own ends where that note's text begins. */
static struct group_own share(const struct place *place, struct group *group, const struct node *node, const struct node *line)
{
    const struct node *note = group_last_note(node);
    uint32_t start = group->at.start;
    struct group_own own = { start - line->at.start, group->at.end - line->at.start, note ? words_of(place, note) + 1 : NULL };
    struct span *places[] = { &group->at, &group->load_at, &group->sets.at, &group->reps.at, &group->load.at };
    if (note) {
        group->at.end = note->at.start + 1;
        group->notes = NULL;
    }
    for (size_t i = 0; i < sizeof places / sizeof *places; i++)
        move_back(places[i], start);
    if (group->more) {
        struct group_more *more = NEW(place->club->arena, struct group_more);
        *more = *group->more;
        move_back(&more->progression_at, start);
        move_back(&more->cap.at, start);
        group->more = more;
    }
    group->shared = true;
    return own;
}

void kept_add(const struct place *place, const struct node *line, const struct node *opened, struct entry *entry, struct group *groups)
{
    struct club *club = place->club;
    if (!(line->flags & FLAG_PLAIN) || !club->day || club->arena != club->model->arena)
        return;
    struct group_own *own = NEW_MANY(club->arena, struct group_own, entry->group_count);
    const struct node *group = node_child(opened, NODE_GROUP);
    for (int i = 0; i < entry->group_count; i++, group = node_next(group, NODE_GROUP))
        own[i] = share(place, &groups[i], group, line);
    entry->own = own;
    struct kept_entry **slot = slot_of(club, line->stretch);
    if (!*slot)
        *slot = NEW(club->model->arena, struct kept_entry);
    **slot = (struct kept_entry){ .words = line->stretch, .day = club->day, .entry = *entry };
    (*slot)->next = NEW_MANY(club->arena, struct group_own, entry->group_count);
    move_back(&(*slot)->entry.at, line->at.start);
}
