/* The house's own rules: `checks` and `allow` as written; and what is declared but used nowhere. */
#include "model/club.h"

/* ---- checks ---- */

static void check_number(const struct place *place, const struct node *value, struct check_number *out)
{
    bool effort = value->kind == NODE_EFFORT;
    if (!number_of(place, value, effort ? &want_effort : &want_any, &out->amount, &out->unit))
        return;
    out->is_effort = effort;
    if (effort && value->text && !strcmp(value->text, "rir"))
        out->amount.e10 = 10 * DEC_ONE - out->amount.e10;
    if (value->kind == NODE_AMOUNT && value->text && out->unit == UNIT_NONE)
        out->word = value->text;
}

/* In `8 to 16 sets` and in `rpe 3 to 4` what stands with one number holds for both. */
static void check_share(struct check_number *bare, const struct check_number *from)
{
    if (!bare->word && bare->unit == UNIT_NONE && !bare->is_effort)
        bare->word = from->word, bare->unit = from->unit, bare->is_effort = from->is_effort;
}

static void check_numbers(const struct place *place, const struct node *value, struct check_line *line)
{
    line->value_at = value->at;
    for (; value; value = value->next) {
        line->value_at = span_join(line->value_at, value->at);
        if (line->numbers++ < 2)
            check_number(place, value, line->numbers == 1 ? &line->first : &line->second);
    }
    if (line->says == CHECK_TO) {
        check_share(&line->first, &line->second);
        check_share(&line->second, &line->first);
    }
}

static bool check_limit(const struct place *place, const struct node *node, struct check_line *line)
{
    const struct node *rule = node->child, *next = rule->next;
    *line = (struct check_line){ .rule = rule->text, .at = node->at, .rule_at = rule->at };
    line->says = !strcmp(node->text, "at least") ? CHECK_AT_LEAST : !strcmp(node->text, "at most") ? CHECK_AT_MOST
               : !strcmp(node->text, "to")       ? CHECK_TO
                                                 : CHECK_LEVEL;
    /* `level advice` has a name too: the subject is the name that another node follows. */
    if (next && next->kind == NODE_NAME && next->next) {
        line->subject = next->text;
        line->subject_at = next->at;
        next = next->next;
    }
    if (!next)
        return false;
    if (line->says == CHECK_LEVEL) {
        line->level = next->text;
        line->value_at = next->at;
    } else {
        check_numbers(place, next, line);
    }
    return true;
}

static bool check_off(const struct place *place, const struct node *node, struct check_line *line)
{
    const struct node *because = node_child(node, NODE_BECAUSE);
    *line = (struct check_line){ .says = CHECK_OFF, .rule = node->child->text, .at = node->at, .rule_at = node->child->at };
    if (because)
        line->because = text_behind(place, because->child);
    if (line->because)
        return true;
    if (!because)
        diag_help(place->club->findings, place_finding(place, KIND_MISSING, node->at, "a rule is switched off with a reason"),
                  "write `off %s because \"tests are in spring\"`, with your own reason", line->rule);
    return false;
}

int checks_of(const struct place *place, const struct node *checks, const struct check_line **out)
{
    VEC(struct check_line) lines = { 0 };
    for (const struct node *node = checks->child; node; node = node->next) {
        struct check_line line;
        if (node->kind == NODE_LIMIT ? check_limit(place, node, &line) : node->kind == NODE_OFF && check_off(place, node, &line))
            vec_add(place->club->arena, &lines, line);
    }
    *out = lines.at;
    return lines.count;
}

/* ---- allow ---- */

static void allow_add(struct club *club, const struct node *node, const struct node *around)
{
    struct place place = { .club = club };
    const struct node *because = node_child(node, NODE_BECAUSE);
    struct allow_line line = { .rule = node->child->text, .at = node->at, .rule_at = node->child->at, .scope = around->at, .id = club->allows.count };
    if (because)
        line.because = text_behind(&place, because->child);
    if (!because) {
        struct finding *finding = diag_add(club->findings, KIND_MISSING, node->at, "an exception is allowed with a reason");
        diag_help(club->findings, finding, "write `allow %s because \"first block back\"`, with your own reason", line.rule);
    }
    if (!line.because)
        return;
    vec_add(club->arena, &club->allows, line);
    vec_add(club->arena, &club->allow_nodes, node);
}

static void allows_in(struct club *club, const struct node *node)
{
    for (const struct node *child = node->child; child; child = child->next) {
        if (child->kind == NODE_ALLOW)
            allow_add(club, child, node);
        else if (child->child)
            allows_in(club, child);
    }
}

void allows_collect(struct club *club)
{
    for (int i = 0; i < club->loaded.file_count; i++)
        allows_in(club, club->loaded.files[i].tree->root);
}

const struct allow_line *allow_of(struct club *club, const struct node *allow)
{
    for (int i = 0; i < club->allow_nodes.count; i++)
        if (club->allow_nodes.at[i] == allow)
            return &club->allows.at[i];
    return NULL;
}

/* ---- lets in use ---- */

void let_use(struct club *club, const struct node *let)
{
    club->used_lets.arena = club->model->arena;
    numbers_give(&club->used_lets, let, 0);
}

bool let_is_used(const struct club *club, const struct node *let)
{
    return numbers_known(&club->used_lets, let, 0) >= 0;
}

/* ---- unused ---- */

struct unused_list {
    VEC(struct unused) list;
};

static void unused_lets(struct club *club, const struct node *node, struct unused_list *out)
{
    for (const struct node *child = node->child; child; child = child->next) {
        if (child->kind != NODE_LET) {
            unused_lets(club, child, out);
        } else if (!let_is_used(club, child)) {
            struct unused unused = { "let", child->child->text, child->child->at, true };
            vec_add(club->arena, &out->list, unused);
        }
    }
}

static const char *declared_as(const struct decl *decl)
{
    switch (decl->space) {
    case SPACE_LIFT: return "lift";
    case SPACE_SCHEME: return "scheme";
    case SPACE_GYM: return "gym";
    case SPACE_PROGRESSION: return "progression";
    case SPACE_BLOCK: return decl->node->kind == NODE_TEMPLATE ? "template" : NULL;
    default: return NULL;
    }
}

static void unused_names(struct club *club, struct unused_list *out)
{
    for (int space = 0; space < SPACE_COUNT; space++)
        for (int i = 0; i < club->decls[space].count; i++) {
            const struct decl *decl = club->decls[space].at[i];
            if (decl->used || !decl->node || !decl->file->tree->source->named || !declared_as(decl))
                continue;
            struct unused unused = { declared_as(decl), decl->name, decl->at, false };
            vec_add(club->arena, &out->list, unused);
        }
}

void house_make(struct club *club)
{
    VEC(struct check_line) checks = { 0 };
    struct unused_list unused = { 0 };
    for (int i = 0; i < club->loaded.file_count; i++) {
        const struct file_unit *file = &club->loaded.files[i];
        struct place place = { .club = club, .file = file };
        for (const struct node *node = node_child(file->tree->root, NODE_CHECKS); node; node = node_next(node, NODE_CHECKS)) {
            const struct check_line *lines;
            int count = checks_of(&place, node, &lines);
            for (int j = 0; j < count; j++)
                vec_add(club->arena, &checks, lines[j]);
        }
        if (file->tree->source->named)
            unused_lets(club, file->tree->root, &unused);
    }
    unused_names(club, &unused);
    club->model->checks = checks.at, club->model->check_count = checks.count;
    club->model->allows = club->allows.at, club->model->allow_count = club->allows.count;
    club->model->unused = unused.list.at, club->model->unused_count = unused.list.count;
}
