#include "model/resolve.h"

#include "base/near.h"
#include "model/club.h"

static void top_level_curve(struct club *club)
{
    const struct node *first = NULL;
    for (int i = 0; i < club->loaded.file_count; i++) {
        const struct node *root = club->loaded.files[i].tree->root;
        for (const struct node *node = node_child(root, NODE_MODEL); node; node = node_next(node, NODE_MODEL)) {
            struct place place = { .club = club };
            const struct curve_row *row = curve_named_by(&place, node->child);
            if (first && row && row != club->curve) {
                struct finding *finding = diag_add(club->findings, KIND_REPEATED, node->at, "another `model` line for all files");
                diag_related(club->findings, finding, first->at, "the first one is here");
                diag_help(club->findings, finding, "keep one at the top level; a block or an athlete may have its own");
            }
            if (!first)
                first = node, club->curve = row;
        }
    }
}

static void make_all(struct club *club)
{
    VEC(const struct lift *) lifts = { 0 };
    VEC(const struct gym *) gyms = { 0 };
    for (int i = 0; i < club->decls[SPACE_LIFT].count; i++)
        vec_add(club->arena, &lifts, lift_of(club, club->decls[SPACE_LIFT].at[i]));
    for (int i = 0; i < club->decls[SPACE_LIFT].count; i++)
        lift_instead(club, club->decls[SPACE_LIFT].at[i]);
    for (int i = 0; i < club->decls[SPACE_GYM].count; i++)
        vec_add(club->arena, &gyms, gym_of(club, club->decls[SPACE_GYM].at[i]));
    for (int i = 0; i < club->decls[SPACE_PROGRESSION].count; i++)
        progression_of(club, club->decls[SPACE_PROGRESSION].at[i]);
    people_make_all(club);
    diaries_make(club);
    struct model *model = club->model;
    model->lifts = lifts.at, model->lift_count = lifts.count;
    model->gyms = gyms.at, model->gym_count = gyms.count;
}

/* ---- bars and stacks by name ---- */

static void ladders_named(struct club *club, const struct lift *lift, const char **names, int *count)
{
    for (int i = 0; i < club->model->gym_count; i++) {
        const struct gym *gym = club->model->gyms[i];
        const struct named_ladder *ladders = lift->loads == LOADS_BAR ? gym->bars : gym->stacks;
        int ladder_count = lift->loads == LOADS_BAR ? gym->bar_count : gym->stack_count;
        for (int j = 0; j < ladder_count; j++)
            if (ladders[j].name)
                names[(*count)++] = ladders[j].name;
    }
}

static int ladders_most(const struct club *club)
{
    int most = 0;
    for (int i = 0; i < club->model->gym_count; i++)
        most += club->model->gyms[i]->bar_count + club->model->gyms[i]->stack_count;
    return most;
}

/* All bars of all gyms beside 0, all stacks beside 1. */
static struct numbers all_ladders(struct club *club)
{
    struct numbers names = { .arena = club->arena };
    for (int i = 0; i < club->model->gym_count; i++) {
        const struct gym *gym = club->model->gyms[i];
        for (int j = 0; j < gym->bar_count; j++)
            numbers_give(&names, gym->bars[j].name, 0);
        for (int j = 0; j < gym->stack_count; j++)
            numbers_give(&names, gym->stacks[j].name, 1);
    }
    return names;
}

static void say_no_equipment(struct club *club, const struct lift *lift)
{
    int most = ladders_most(club), count = 0;
    const char **names = NEW_MANY(club->arena, const char *, most + 1);
    if (names_may_compare(club, most))
        ladders_named(club, lift, names, &count);
    const char *what = lift->loads == LOADS_BAR ? "bar" : "stack", *near = word_nearest(lift->equipment, names, count);
    struct finding *finding = diag_add(club->findings, KIND_UNKNOWN_NAME, lift->equipment_at, "no gym has a %s called %s", what, lift->equipment);
    if (near)
        diag_help(club->findings, finding, "did you mean %s?", near);
    else
        diag_help(club->findings, finding, "add it to a gym: `%s %s %s`", what, lift->equipment, lift->loads == LOADS_BAR ? "25 kg" : "5 to 100 step 5 kg");
}

/* A bar or stack that no gym has is a slip of the pen; one that some gym lacks is met where it is trained. */
static void equipment_check(struct club *club)
{
    struct numbers names = all_ladders(club);
    for (int i = 0; i < club->model->lift_count && club->model->gym_count; i++) {
        const struct lift *lift = club->model->lifts[i];
        if (lift->equipment && span_is_somewhere(lift->equipment_at) && !sources_find(club->sources, lift->equipment_at.start)->library &&
            numbers_known(&names, lift->equipment, lift->loads != LOADS_BAR) < 0)
            say_no_equipment(club, lift);
    }
}

/* ---- blocks, and their variants for athletes with values of their own ---- */

struct block_decl {
    struct decl *decl;
    const struct season *season;
    int run;
    const struct block *plain;
    struct numbers variant_numbers; /* of athletes with `let` lines */
    VEC(const struct block *) variants;
};

struct block_list {
    VEC(struct block_decl) decls;
    VEC(const struct block *) blocks;
};

static void block_add(struct club *club, struct block_list *list, struct decl *decl, const struct season *season, int run)
{
    struct block_decl made = { .decl = decl, .season = season, .run = run, .variant_numbers.arena = club->arena,
                               .plain = block_make(club, decl, NULL, NULL, season, run) };
    if (!made.plain)
        return;
    vec_add(club->arena, &list->decls, made);
    vec_add(club->arena, &list->blocks, made.plain);
}

static void runs_index(struct club *club)
{
    club->run_decls.arena = club->run_for.arena = club->arena;
    for (int i = 0; i < club->seasons.count; i++)
        for (int j = 0; j < club->seasons.at[i]->run_count; j++) {
            const struct season *season = club->seasons.at[i];
            if (!season->runs[j].decl)
                continue;
            numbers_give(&club->run_decls, season->runs[j].decl, 0);
            for (int k = 0; k < season->people->count; k++)
                numbers_give(&club->run_for, season->runs[j].decl, (uint64_t)season->people->at[k]->order);
        }
}

static bool is_run(const struct club *club, const struct decl *decl)
{
    return numbers_known(&club->run_decls, decl, 0) >= 0;
}

static void blocks_make(struct club *club)
{
    struct block_list list = { 0 };
    for (int i = 0; i < club->decls[SPACE_BLOCK].count; i++) {
        struct decl *decl = club->decls[SPACE_BLOCK].at[i];
        const struct season *season = decl->node->kind == NODE_SEASON ? season_of(decl) : NULL;
        if (decl->node->kind == NODE_BLOCK && !is_run(club, decl))
            block_add(club, &list, decl, NULL, 0);
        for (int run = 0; season && run < season->run_count; run++)
            if (season->runs[run].decl)
                block_add(club, &list, season->runs[run].decl, season, run);
    }
    club->blocks = list.decls.at;
    club->model->blocks = list.blocks.at;
    club->model->block_count = list.blocks.count;
    club->model->seasons = club->seasons.at;
    club->model->season_count = club->seasons.count;
}

bool season_is_for(const struct club *club, const struct decl *block, const struct athlete *athlete)
{
    return numbers_known(&club->run_for, block, (uint64_t)athlete->order) >= 0;
}

/* Athletes in the `for` of a block that seasons run, and in none of those. */
static void say_not_built(struct club *club)
{
    for (int i = 0; i < club->decls[SPACE_BLOCK].count; i++) {
        struct decl *decl = club->decls[SPACE_BLOCK].at[i];
        const struct node *people = decl->node->kind == NODE_BLOCK && is_run(club, decl) ? node_child(decl->node, NODE_FOR) : NULL;
        const struct people *list = people ? people_list(club, people->child, NULL) : NULL;
        for (int j = 0; list && j < list->count; j++) {
            if (season_is_for(club, decl, list->at[j]))
                continue;
            struct finding *finding = diag_add(club->findings, KIND_NOT_BUILT, people->child->at, "%s is in this block but in no season that runs it, and gets no sheet",
                                               list->at[j]->name);
            diag_setting(club->findings, finding, (struct setting){ .block = decl->name });
            diag_help(club->findings, finding, "add the name to the season's `for`, or take it out here");
        }
    }
}

static struct arena *emptied(struct arena *owner, struct arena *inner)
{
    if (!inner)
        return arena_within(owner);
    arena_reset(inner);
    return inner;
}

/* Templates and schemes that nothing uses are read too, so that a mistake in them does not wait for its first use. Nobody
 * trains them: what is made of each is dropped before the next. */
static void unused_make(struct club *club)
{
    struct arena *kept = club->arena, *apart = NULL;
    for (int i = 0; i < club->decls[SPACE_BLOCK].count; i++) {
        struct decl *decl = club->decls[SPACE_BLOCK].at[i];
        if (decl->node->kind != NODE_TEMPLATE || decl->used || decl->file->tree->source->library)
            continue;
        club->arena = apart = emptied(kept, apart);
        block_make(club, decl, NULL, NULL, NULL, 0);
    }
    for (int i = 0; i < club->decls[SPACE_SCHEME].count; i++) {
        struct decl *decl = club->decls[SPACE_SCHEME].at[i];
        const struct group *groups;
        struct place place = { .club = club, .file = decl->file, .lenient = true };
        struct node name = { .kind = NODE_NAME, .at = decl->at, .text = decl->name };
        if (decl->used || decl->file->tree->source->library)
            continue;
        club->arena = apart = emptied(kept, apart);
        groups_of_scheme(&place, &name, NULL, false, &groups), decl->used = false;
    }
    if (apart)
        arena_reset(apart);
    club->arena = kept;
}

const struct block *model_block_for(const struct model *model, int index, const struct athlete *athlete)
{
    struct block_decl *made = &model->club->blocks[index];
    if (!athlete || !athlete->let_count)
        return made->plain;
    int at = numbers_give(&made->variant_numbers, athlete, 0);
    if (at == made->variants.count)
        vec_add(model->arena, &made->variants, block_make(model->club, made->decl, athlete, made->plain, made->season, made->run));
    return made->variants.at[at];
}

struct model *model_resolve(struct arena *arena, struct interner *interner, struct sources *sources,
                            struct findings *findings, struct loaded loaded)
{
    struct club *club = NEW(arena, struct club);
    struct model *model = NEW(arena, struct model);
    *club = (struct club){ .arena = arena, .interner = interner, .sources = sources, .findings = findings, .loaded = loaded,
                           .model = model, .all = intern(interner, "all", 3), .passing = arena_within(arena) };
    *model = (struct model){ .arena = arena, .interner = interner, .sources = sources, .findings = findings, .club = club };
    names_collect(club);
    top_level_curve(club);
    model->curve = club->curve;
    allows_collect(club);
    make_all(club);
    equipment_check(club);
    seasons_make(club);
    runs_index(club);
    blocks_make(club);
    say_not_built(club);
    unused_make(club);
    for (int i = 0; i < model->block_count; i++)
        for (int j = 0; j < model->blocks[i]->people->count; j++)
            model_block_for(model, i, model->blocks[i]->people->at[j]);
    house_make(club);
    return model;
}

/* ---- names asked for from outside ---- */

const struct people *model_people(const struct model *model, const char *name)
{
    const char *known = intern(model->interner, name, strlen(name));
    if (known != model->club->all && !names_find(model->club, SPACE_PERSON, known))
        return NULL;
    struct node word = { .kind = NODE_NAME, .text = known }, names = { .kind = NODE_PEOPLE, .child = &word };
    return people_list(model->club, &names, NULL);
}

const struct athlete *model_athlete(const struct model *model, const char *name)
{
    const struct decl *decl = names_find(model->club, SPACE_PERSON, intern(model->interner, name, strlen(name)));
    return decl && !decl->is_group ? decl->made : NULL;
}

const char *model_nearest_person(const struct model *model, const char *name)
{
    return names_nearest(model->club, SPACE_PERSON, name);
}

const struct lift *model_lift(const struct model *model, const char *name)
{
    struct decl *decl = names_find(model->club, SPACE_LIFT, intern(model->interner, name, strlen(name)));
    return decl ? lift_of(model->club, decl) : NULL;
}

const char *model_nearest_lift(const struct model *model, const char *name)
{
    return names_nearest(model->club, SPACE_LIFT, name);
}
