#include "model/club.h"

#include "base/near.h"

static const struct {
    const char *what, *a_what, *declares;
} spaces[SPACE_COUNT] = {
    [SPACE_LIFT] = { "lift", "a lift", "lift %s" },
    [SPACE_SCHEME] = { "scheme", "a scheme", "scheme %s { … }" },
    [SPACE_GYM] = { "gym", "a gym", "gym %s { … }" },
    [SPACE_PERSON] = { "athlete or group", "an athlete or group", "athlete %s { … }" },
    [SPACE_BLOCK] = { "block or template", "a block or template", "template %s { … }" },
    [SPACE_PROGRESSION] = { "progression", "a progression", "progression %s { … }" },
};

enum { COMPARED_MOST = 2000000 }; /* pairs; a second or two */

static struct decl **slot_of(const struct club *club, enum space space, const char *name)
{
    uintptr_t hash = ((uintptr_t)name >> 3) * UINT64_C(0x9E3779B97F4A7C15) + (uintptr_t)space;
    return &club->slots[(hash >> 20) & (uintptr_t)(club->slot_count - 1)];
}

struct decl *names_find(const struct club *club, enum space space, const char *name)
{
    for (struct decl *decl = *slot_of(club, space, name); decl; decl = decl->next)
        if (decl->name == name && decl->space == space)
            return decl;
    return NULL;
}

static void declared_twice(struct club *club, const struct decl *first, struct span at)
{
    struct finding *finding = diag_add(club->findings, KIND_DUPLICATE, at, "%s is declared twice; there can be one %s of a name",
                                       first->name, spaces[first->space].what);
    diag_related(club->findings, finding, first->at, "the first %s is here", first->name);
    diag_help(club->findings, finding, "give one of the two another name, or take it out");
}

static void slots_widen(struct club *club)
{
    enum { FEWEST = 256 };
    club->slot_count = club->slot_count ? 2 * club->slot_count : FEWEST;
    club->slots = NEW_MANY(club->arena, struct decl *, club->slot_count);
    for (int space = 0; space < SPACE_COUNT; space++)
        for (int i = 0; i < club->decls[space].count; i++) {
            struct decl *decl = club->decls[space].at[i], **slot = slot_of(club, (enum space)space, decl->name);
            decl->next = *slot;
            *slot = decl;
        }
}

struct decl *names_declare(struct club *club, enum space space, const char *name, struct span at,
                           const struct node *node, const struct file_unit *file)
{
    struct decl *first = names_find(club, space, name);
    if (first) {
        declared_twice(club, first, at);
        return NULL;
    }
    if (space == SPACE_PERSON && name == club->all) {
        struct finding *finding = diag_add(club->findings, KIND_DUPLICATE, at, "`all` already means every athlete");
        diag_help(club->findings, finding, "choose another name for this athlete or group");
        return NULL;
    }
    if (++club->decl_count > club->slot_count)
        slots_widen(club);
    struct decl *decl = NEW(club->arena, struct decl);
    struct decl **slot = slot_of(club, space, name);
    *decl = (struct decl){ .name = name, .at = at, .node = node, .file = file, .space = space, .next = *slot };
    decl->is_group = node && node->kind == NODE_GROUP_OF;
    *slot = decl;
    vec_add(club->arena, &club->decls[space], decl);
    return decl;
}

static int space_of_node(enum node_kind kind)
{
    switch (kind) {
    case NODE_LIFT: return SPACE_LIFT;
    case NODE_SCHEME: return SPACE_SCHEME;
    case NODE_GYM: return SPACE_GYM;
    case NODE_ATHLETE:
    case NODE_GROUP_OF: return SPACE_PERSON;
    case NODE_BLOCK:
    case NODE_TEMPLATE:
    case NODE_SEASON: return SPACE_BLOCK;
    case NODE_PROGRESSION: return SPACE_PROGRESSION;
    default: return -1;
    }
}

void names_collect(struct club *club)
{
    slots_widen(club);
    for (int i = 0; i < club->loaded.file_count; i++) {
        const struct file_unit *file = &club->loaded.files[i];
        for (const struct node *node = file->tree->root->child; node; node = node->next) {
            int space = space_of_node(node->kind);
            if (space >= 0 && node->child && node->child->kind == NODE_NAME)
                names_declare(club, (enum space)space, node->child->text, node->child->at, node, file);
        }
    }
}

bool names_may_compare(struct club *club, int count)
{
    return (club->compared += count) <= COMPARED_MOST;
}

const char *names_nearest(struct club *club, enum space space, const char *name)
{
    int count = club->decls[space].count;
    if (!names_may_compare(club, count))
        return NULL;
    const char **names = NEW_MANY(club->arena, const char *, count + 1);
    for (int i = 0; i < count; i++)
        names[i] = club->decls[space].at[i]->name;
    return word_nearest(name, names, count);
}

/* A name that stands in another namespace: "winter is a block, not a lift". */
static const char *elsewhere(const struct club *club, enum space space, const char *name)
{
    for (int other = 0; other < SPACE_COUNT; other++)
        if (other != (int)space && names_find(club, (enum space)other, name))
            return spaces[other].a_what;
    return NULL;
}

static void name_unknown(const struct place *place, enum space space, const char *name, struct span at)
{
    struct club *club = place->club;
    model_gather(club->model); /* one who waits may bear it */
    const char *other = elsewhere(club, space, name);
    const char *near = names_nearest(club, space, name);
    struct finding *finding =
        other ? place_finding(place, KIND_UNKNOWN_NAME, at, "%s is the name of %s, and %s is wanted here", name, other,
                              spaces[space].a_what)
              : place_finding(place, KIND_UNKNOWN_NAME, at, "no %s is called %s", spaces[space].what, name);
    if (other && !near) {
        diag_help(club->findings, finding, "write the name of %s here", spaces[space].a_what);
    } else if (near) {
        diag_help(club->findings, finding, "did you mean %s?", near);
        diag_related(club->findings, finding, names_find(club, space, intern(club->interner, near, strlen(near)))->at,
                     "%s is declared here", near);
    } else {
        const char *example = spaces[space].declares;
        const char *hole = strstr(example, "%s");
        diag_help(club->findings, finding, "declare it in one of the files, as `%.*s%s%s`, or `use` the file that does",
                  (int)(hole - example), example, name, hole + 2);
    }
}

struct decl *names_use_in(const struct place *place, enum space space, const struct node *name)
{
    struct decl *decl = names_find(place->club, space, name->text);
    if (decl)
        decl->used = true;
    else
        name_unknown(place, space, name->text, name->at);
    return decl;
}

struct decl *names_use(struct club *club, enum space space, const char *name, struct span at, const struct origin *origin)
{
    struct place place = { .club = club, .origin = origin };
    struct node word = { .kind = NODE_NAME, .at = at, .text = name };
    return names_use_in(&place, space, &word);
}

void origin_show(struct club *club, struct finding *finding, const struct origin *origin)
{
    for (; origin; origin = origin->up)
        diag_related(club->findings, finding, origin->at, "%s", origin->says);
}

int word_index(const char *name, const char *const *words, int count)
{
    for (int i = 0; i < count; i++)
        if (words[i] && !strcmp(words[i], name))
            return i;
    return -1;
}

struct finding *word_unknown(const struct place *place, struct span at, const char *what, const char *name,
                             const char *const *words, int count)
{
    struct club *club = place->club;
    struct finding *finding = place_finding(place, KIND_UNKNOWN_NAME, at, "`%s` is no %s", name, what);
    const char *near = word_nearest(name, words, count);
    if (near) {
        diag_help(club->findings, finding, "did you mean `%s`?", near);
        return finding;
    }
    const char *list = words[0];
    for (int i = 1; i < count; i++)
        list = arena_format(club->arena, "%s%s%s", list, i + 1 < count ? ", " : " or ", words[i]);
    diag_help(club->findings, finding, "write %s", list);
    return finding;
}
