#include "records/learning.h"

enum {
    NAMES_MOST = 64,   /* of lifts or gyms in a plain roster */
    PASSED_A_SLOT = 64 /* names made to fall on one place of the table would be looked through for hours */
};

struct name_list {
    VEC(struct roster_cell) list;
};

struct learning {
    struct arena *arena, *scratch;
    bool plain;
    uint32_t *slots;        /* a hash set of the places where lifters' names first stand; 0: free */
    int slot_count, passed; /* slots passed in looking, since there are so many */
    VEC(uint32_t) places;
    struct name_list lifts, gyms;
};

struct learning *learning_new(struct arena *arena, struct arena *scratch, const struct source *source)
{
    struct learning *learning = NEW(scratch, struct learning);
    *learning =
        (struct learning){ .arena = arena, .scratch = scratch, .plain = !memchr(source->text, '"', source->length) };
    return learning;
}

static void names_learn(struct learning *learning, struct name_list *known, const struct roster_cell *name)
{
    for (int i = 0; i < known->list.count; i++)
        if (known->list.at[i].text == name->text)
            return;
    learning->plain &= known->list.count < NAMES_MOST;
    if (learning->plain)
        vec_add(learning->scratch, &known->list, *name);
}

size_t name_length(const char *name)
{
    return strcspn(name, ",; \t\r\n");
}

static bool slots_are_few(const struct learning *learning, int lifters)
{
    return 8 * (int64_t)lifters >= 7 * (int64_t)learning->slot_count;
}

static uint32_t *slot_of(struct learning *learning, const struct table *table, const char *name, size_t length)
{
    uint32_t at = (uint32_t)bytes_hash(name, length) & (uint32_t)(learning->slot_count - 1);
    for (; learning->slots[at]; at = (at + 1) & (uint32_t)(learning->slot_count - 1)) {
        const char *there = table_text(table, learning->slots[at]);
        if (!strncmp(name, there, length) && name_length(there) == length)
            break;
        learning->passed++;
    }
    return &learning->slots[at];
}

/* How many lifters there are in all, if the rest of the table is like what was read. */
static int lifters_expected(const struct learning *learning, const struct table *table)
{
    int met = learning->places.count;
    return met ? (int)((uint64_t)met * table->source->length / learning->places.at[met - 1]) + 1 : 0;
}

/* Once some were met, there is room for all at once: what is outgrown is left in memory. */
static void learning_widen(struct learning *learning, const struct table *table)
{
    enum { FEWEST = 1024 };
    uint32_t *old = learning->slots;
    int old_count = learning->slot_count, expected = lifters_expected(learning, table);
    learning->slot_count = FEWEST;
    learning->passed = 0;
    while (learning->slot_count <= old_count || slots_are_few(learning, expected))
        learning->slot_count *= 2;
    if (learning->places.room < expected) {
        learning->places.room = expected;
        learning->places.at =
            arena_grown(learning->arena, learning->places.at, sizeof(uint32_t) * (size_t)learning->places.count,
                        sizeof(uint32_t) * (size_t)expected);
    }
    learning->slots = NEW_MANY(learning->scratch, uint32_t, learning->slot_count);
    for (int i = 0; i < old_count; i++) {
        const char *name = old[i] ? table_text(table, old[i]) : NULL;
        if (name)
            *slot_of(learning, table, name, name_length(name)) = old[i];
    }
}

/* The first row of a lifter, or of one whose rows stand apart. */
static void lifter_learn(struct learning *learning, const struct table *table, const struct roster_row *made)
{
    if (slots_are_few(learning, learning->places.count))
        learning_widen(learning, table);
    uint32_t *slot = slot_of(learning, table, table_text(table, made->athlete.at.start),
                             made->athlete.at.end - made->athlete.at.start);
    learning->plain &= !*slot && learning->passed < PASSED_A_SLOT * learning->slot_count;
    *slot = made->athlete.at.start;
    vec_add(learning->arena, &learning->places, made->athlete.at.start - table->source->base);
}

void learning_row(struct learning *learning, const struct table *table, const struct roster_row *row, bool is_next)
{
    if (!learning->plain)
        return;
    learning->plain = !row->group.text && text_is_ascii(row->athlete.text, strlen(row->athlete.text)) &&
                      dec_is_multiple(row->max, (struct dec){ DEC_ONE / 100 });
    if (row->lift.text)
        names_learn(learning, &learning->lifts, &row->lift);
    if (row->gym.text)
        names_learn(learning, &learning->gyms, &row->gym);
    if (learning->plain && is_next)
        lifter_learn(learning, table, row);
}

static struct roster_names names_kept(struct arena *arena, const struct name_list *known)
{
    struct roster_cell *kept = NEW_MANY(arena, struct roster_cell, known->list.count + 1);
    for (int i = 0; i < known->list.count; i++)
        kept[i] = known->list.at[i];
    return (struct roster_names){ kept, known->list.count };
}

void learning_end(const struct learning *learning, struct roster *roster)
{
    roster->is_plain = learning->plain;
    if (!learning->plain)
        return;
    roster->places = learning->places.at, roster->lifter_count = learning->places.count;
    roster->lifts = names_kept(learning->arena, &learning->lifts);
    roster->gyms = names_kept(learning->arena, &learning->gyms);
}
