/* What may stand where: a row each kind of statement. Misplaced ones are findings in words. */
#include "syntax/reader.h"
#include "syntax/words.h"

#include "setwright.tab.h"

#include <string.h>

enum home {
    FILE_ = 1, GYM = 2, LIFT = 4, ATHLETE = 8, GROUP = 16, SCHEME = 32, PROGRESSION = 64, BLOCK = 128, TEMPLATE = 256,
    DELOAD = 512, TAPER = 1024, ADJUST = 2048, WEEKS = 4096, DAY = 8192, SUPERSET = 1 << 14, ENTRY = 1 << 15,
    ADDED = 1 << 16, SEASON = 1 << 17, DIARY = 1 << 18, SESSION = 1 << 19, CHECKS = 1 << 20,
    ALL = (1 << 21) - 1,
    BODIES = ALL & ~FILE_,
    PLANS = BLOCK | TEMPLATE,
    CHANGES = DELOAD | TAPER | ADJUST,
};

static const struct body_row {
    enum node_kind kind;
    int token; /* its header's first word */
    int home;
    const char *name, *place;
} bodies[] = {
    { NODE_FILE, 0, FILE_, "the file", "outside of all { }" },
    { NODE_GYM, TOK_GYM, GYM, "a gym", "in a gym" },
    { NODE_LIFT, TOK_LIFT, LIFT, "a lift", "in a lift" },
    { NODE_ATHLETE, TOK_ATHLETE, ATHLETE, "an athlete", "in an athlete" },
    { NODE_GROUP_OF, TOK_GROUP, GROUP, "a group", "in a group" },
    { NODE_SCHEME, TOK_SCHEME, SCHEME, "a scheme", "in a scheme" },
    { NODE_PROGRESSION, TOK_PROGRESSION, PROGRESSION, "a progression", "in a progression" },
    { NODE_BLOCK, TOK_BLOCK, BLOCK, "a block", "in a block" },
    { NODE_TEMPLATE, TOK_TEMPLATE, TEMPLATE, "a template", "in a template" },
    { NODE_DELOAD, TOK_DELOAD, DELOAD, "a deload", "in a deload" },
    { NODE_TAPER, TOK_TAPER, TAPER, "a taper", "in a taper" },
    { NODE_ADJUST, TOK_ADJUST, ADJUST, "an adjust", "in an adjust" },
    { NODE_WEEKS_GROUP, TOK_WEEKS, WEEKS, "a group of weeks", "in a group of weeks" },
    { NODE_WEEKS_GROUP, TOK_WEEK, WEEKS, "a group of weeks", "in a group of weeks" },
    { NODE_DAY, TOK_DAY, DAY, "a day", "in a day" },
    { NODE_SUPERSET, TOK_SUPERSET, SUPERSET, "a superset", "in a superset" },
    { NODE_ENTRY, TOK_NAME, ENTRY, "a lift's sets", "in a lift's sets" },
    { NODE_ENTRY, TOK_VAR, ENTRY, "a lift's sets", "in a lift's sets" },
    { NODE_ADD_TO, TOK_ADD, ADDED, "an `add to day`", "in an `add to day`" },
    { NODE_SEASON, TOK_SEASON, SEASON, "a season", "in a season" },
    { NODE_DIARY, TOK_DIARY, DIARY, "a diary", "in a diary" },
    { NODE_SESSION, TOK_DATE, SESSION, "a session", "in a session" },
    { NODE_SESSION, TOK_DID, SESSION, "a session", "in a session" },
    { NODE_CHECKS, TOK_CHECKS, CHECKS, "checks", "in checks" },
};

static const struct place_row {
    enum node_kind kind;
    int homes;
    const char *word;    /* that it starts with; NULL: a name or a number */
    const char *example; /* the statement, for help */
} places[] = {
    { NODE_TITLE, BODIES, "title", "title \"Winter base\"" },
    { NODE_NOTE, BODIES, "note", "note \"short rests\"" },
    { NODE_LET, ATHLETE | SCHEME | PLANS | WEEKS | DAY | ENTRY | SUPERSET, "let", "let $top = from 7 to 8.5" },
    { NODE_ALLOW, PLANS | WEEKS | DAY | SUPERSET | ENTRY | SEASON | SESSION, "allow", "allow top-reps because \"first block back\"" },
    { NODE_LANGUAGE, FILE_, "language", "language 1" },
    { NODE_UNITS, FILE_, "units", "units kg" },
    { NODE_USE, FILE_, "use", "use \"gym.block\"" },
    { NODE_ROSTER, FILE_, "roster", "roster \"athletes.csv\"" },
    { NODE_GYM, FILE_, "gym", "gym boathouse { bar 20 kg }" },
    { NODE_GYM_REF, ATHLETE | DAY | SEASON, "gym", "gym boathouse" },
    { NODE_BAR, GYM, "bar", "bar 20 kg" },
    { NODE_COLLAR, GYM, "collar", "collar 2.5 kg" },
    { NODE_PLATES, GYM, "plates", "plates 20 x 4, 10 x 4, 5 x 4, 2.5 x 4 kg" },
    { NODE_DUMBBELLS, GYM, "dumbbells", "dumbbells 2.5 to 20 step 2.5 kg" },
    { NODE_STACK, GYM, "stack", "stack 5 to 120 step 5 kg" },
    { NODE_ROUND, GYM, "round", "round nearest" },
    { NODE_LIFT, FILE_, "lift", "lift squat { kind competition; loads bar }" },
    { NODE_KIND, LIFT, "kind", "kind competition" },
    { NODE_LOADS, LIFT, "loads", "loads bar" },
    { NODE_WORKS, LIFT, "works", "works quads, glutes" },
    { NODE_HELPS, LIFT, "helps", "helps trunk" },
    { NODE_INSTEAD, LIFT, "instead", "instead leg-press, split-squat" },
    { NODE_CUE, LIFT, "cue", "cue \"Drive up fast\"" },
    { NODE_ATHLETE, FILE_, "athlete", "athlete ines { max squat 120 kg on 2026-11-28 }" },
    { NODE_BODYWEIGHT_LINE, ATHLETE | DIARY, "bodyweight", "bodyweight 61.8 kg on 2026-12-01" },
    { NODE_MAX, ATHLETE, "max", "max squat 120 kg on 2026-11-28" },
    { NODE_CURVE, ATHLETE, "curve", "curve squat 8 reps at 77%" },
    { NODE_EFFORT_LINE, ATHLETE, "effort", "effort bench 8 means 7" },
    { NODE_AVOID, ATHLETE, "avoid", "avoid overhead-press use landmine-press because \"left shoulder\"" },
    { NODE_GROUP_OF, FILE_, "group", "group novices { ines, tomas }" },
    { NODE_PEOPLE, GROUP, NULL, "ines, tomas" },
    { NODE_SCHEME, FILE_, "scheme", "scheme ramp { warm-up 1 x 5 at 40% }" },
    { NODE_PROGRESSION, FILE_, "progression", "progression steady { when made add 2.5 kg }" },
    { NODE_WHEN, PROGRESSION, "when", "when made add 2.5 kg" },
    { NODE_BLOCK, FILE_, "block", "block winter-base { for ines; starts 2027-01-04; weeks 5 }" },
    { NODE_TEMPLATE, FILE_, "template", "template base { weeks 5 }" },
    { NODE_GOAL, PLANS, "goal", "goal strength" },
    { NODE_FOR, PLANS | SEASON, "for", "for novices, piotr" },
    { NODE_STARTS, PLANS | SEASON, "starts", "starts 2027-01-04" },
    { NODE_LENGTH, PLANS, "weeks", "weeks 5" },
    { NODE_DELOAD, PLANS, "deload", "deload week 5 { sets to 50%; rpe down 2 }" },
    { NODE_TAPER, PLANS, "taper", "taper weeks 5-6 { sets to 60 | 40% }" },
    { NODE_WARM_UP, PLANS, "warm-up", "warm-up ramp for squat, bench" },
    { NODE_MAX_TO, PLANS, "max", "max to 90%" },
    { NODE_MAX_FIXED, PLANS, "max", "max fixed" },
    { NODE_REMOVE, PLANS, "remove", "remove day D" },
    { NODE_ROTATE, PLANS | WEEKS, "rotate", "rotate A, B on mon, wed, fri" },
    { NODE_WEEKS_GROUP, PLANS | WEEKS, "weeks", "weeks 1-3 { day B on thu { deadlift 3 x 5 at 75% } }" },
    { NODE_WEEKS_GROUP, PLANS | WEEKS, "week", "week 4 { day B on thu { deadlift 3 x 5 at 75% } }" },
    { NODE_ADJUST, PLANS, "adjust", "adjust ines in weeks 2-4 { cap squat rpe 8 }" },
    { NODE_DAY, PLANS | WEEKS, "day", "day A on mon { squat 3 x 5 at rpe 7 }" },
    { NODE_SUPERSET, DAY | ADDED, "superset", "superset 2 rounds { curl 1 x 10-15 at rpe 8 }" },
    { NODE_OPTIONAL, DAY, "optional", "optional" },
    { NODE_ENTRY, DAY | SUPERSET | ADDED, NULL, "squat 3 x 5 at rpe 7" },
    { NODE_GROUP, SCHEME | ENTRY, NULL, "top 1 x 1 at rpe 8" },
    { NODE_USE_SCHEME, ENTRY, NULL, "heavy-single with $top = from 7 to 9" },
    { NODE_CHANGE, CHANGES, "sets", "sets down 1 for bench" },
    { NODE_CHANGE, CHANGES, "reps", "reps up 1" },
    { NODE_CHANGE, CHANGES, "rpe", "rpe down 2" },
    { NODE_CHANGE, CHANGES, "load", "load down 10%" },
    { NODE_SWAP, CHANGES, "swap", "swap deadlift with block-pull" },
    { NODE_SKIP_LIFT, CHANGES, "skip", "skip curl" },
    { NODE_SKIP_DAY, CHANGES, "skip", "skip day D" },
    { NODE_CAP_CHANGE, CHANGES, "cap", "cap squat rpe 8" },
    { NODE_SKIP_WEEK, ADJUST, "skip", "skip week 2" },
    { NODE_REPEAT_WEEK, ADJUST, "repeat", "repeat week 3" },
    { NODE_ADD_TO, ADJUST, "add", "add to day A { curl 3 x 10 at rpe 8 }" },
    { NODE_SEASON, FILE_, "season", "season spring { for ines; run winter-base, peak }" },
    { NODE_MEET, SEASON, "meet", "meet \"Lakeside Open\" on 2027-04-17" },
    { NODE_RUN, SEASON, "run", "run winter-base, break 1 week, peak" },
    { NODE_ATTEMPTS, SEASON, "attempts", "attempts squat 91%, 96%, 101%" },
    { NODE_DIARY, FILE_, "diary", "diary ines { 2027-01-04 A { squat 90 kg x 5, 5 rpe 7 } }" },
    { NODE_SESSION, DIARY, NULL, "2027-01-04 A { squat 90 kg x 5, 5 rpe 7 }" },
    { NODE_MISSED, DIARY, NULL, "2027-01-07 B missed because \"travelling\"" },
    { NODE_DONE, SESSION, NULL, "squat 90 kg x 5, 5, 5 rpe 7" },
    { NODE_SESSION_EFFORT, SESSION, "session", "session rpe 7 for 80 min" },
    { NODE_CHECKS, FILE_ | PLANS, "checks", "checks { top-reps at most 3 }" },
    { NODE_LIMIT, CHECKS, NULL, "top-reps at most 3" },
    { NODE_MODEL, FILE_ | ATHLETE | PLANS, "model", "model epley" },
    { NODE_OFF, CHECKS, "off", "off stale-max because \"tests are in spring\"" },
};

enum { BODY_ROWS = sizeof bodies / sizeof *bodies, PLACES = sizeof places / sizeof *places };

static const struct body_row *body_row(enum node_kind kind)
{
    for (int i = 0; i < BODY_ROWS; i++)
        if (bodies[i].kind == kind)
            return &bodies[i];
    return NULL;
}

const char *body_name(enum node_kind header)
{
    const struct body_row *row = body_row(header);
    return row ? row->name : "what it opens";
}

const char *body_place(enum node_kind header)
{
    const struct body_row *row = body_row(header);
    return row ? row->place : "here";
}

enum node_kind body_of(int first_token)
{
    for (int i = 1; i < BODY_ROWS; i++)
        if (bodies[i].token == first_token)
            return bodies[i].kind;
    return NODE_ERROR;
}

static int home_of(enum node_kind header)
{
    const struct body_row *row = body_row(header);
    return row ? row->home : ALL;
}

bool body_takes_names(enum node_kind header)
{
    return home_of(header) & (DAY | SUPERSET | ENTRY | ADDED | SCHEME | SESSION | CHECKS | GROUP);
}

/* Set groups start with words that are no statements of their own. */
static const char *const roles[] = { "top", "back-off", "warm-up", "total" };

enum { ROLES = sizeof roles / sizeof *roles };

const char *const *body_words(struct parse *p, enum node_kind header, int *count)
{
    const char **words = NEW_MANY(p->arena, const char *, PLACES + ROLES);
    int home = home_of(header);
    *count = 0;
    for (int i = 0; i < PLACES; i++)
        if (places[i].word && (places[i].homes & home) && (!*count || strcmp(places[i].word, words[*count - 1])))
            words[(*count)++] = places[i].word;
    for (int i = 0; i < ROLES && (home & (ENTRY | SCHEME)); i++)
        words[(*count)++] = roles[i];
    return words;
}

bool body_has_word(struct parse *p, enum node_kind header, const char *word)
{
    int count;
    const char *const *words = body_words(p, header, &count);
    for (int i = 0; i < count; i++)
        if (!strcmp(words[i], word))
            return true;
    return false;
}

const char *statement_example(enum node_kind header, const char *word)
{
    int home = home_of(header);
    for (int i = 0; i < PLACES; i++)
        if ((places[i].homes & home) && (word ? places[i].word && !strcmp(places[i].word, word) : !places[i].word))
            return places[i].example;
    return NULL;
}

static const struct place_row *place_row(enum node_kind kind)
{
    for (int i = 0; i < PLACES; i++)
        if (places[i].kind == kind)
            return &places[i];
    return NULL;
}

/* "a block, a template or a season" */
static const char *homes_text(struct parse *p, int homes)
{
    const char *text = NULL, *last = NULL;
    if (homes == BODIES)
        return "within the { } of what it is for";
    for (int i = 0; i < BODY_ROWS; i++) {
        if (!(bodies[i].home & homes) || (last && !strcmp(last, bodies[i].name)))
            continue;
        if (last)
            text = text ? arena_format(p->arena, "%s, %s", text, last) : last;
        last = bodies[i].name;
    }
    return arena_format(p->arena, "in %s%s%s", text ? text : "", text ? " or " : "", last);
}

/* "in a block" */
static const char *first_home(int homes)
{
    int i = 0;
    while (!(bodies[i].home & homes))
        i++;
    return bodies[i].place;
}

/* What a misplaced statement is called, and the words of it that are pointed at. */
static const char *statement_name(struct parse *p, const struct node *child, const struct place_row *row, struct span *at)
{
    *at = child->at;
    if (row->word) {
        at->end = at->start + (uint32_t)strcspn(p->source->text + (at->start - p->source->base), " \t\r\n{}();\"#");
        return arena_format(p->arena, "`%s`", text_of(p, *at));
    }
    switch (child->kind) {
    case NODE_GROUP:
        return "a set group without its lift";
    case NODE_ENTRY:
        *at = child->child->at;
        return arena_format(p->arena, "`%s` with its sets", text_of(p, *at));
    case NODE_USE_SCHEME:
        *at = child->child->at;
        return arena_format(p->arena, "`%s`", text_of(p, *at));
    default:
        at->end = at->start + (uint32_t)strcspn(p->source->text + (at->start - p->source->base), " \t\r\n{}();\"#");
        return arena_format(p->arena, "`%s`", text_of(p, *at));
    }
}

/* A name that starts a statement and is nearly a word of this body. */
static bool is_misspelt(struct parse *p, const struct node *parent, const struct node *child, struct span at)
{
    if (child->kind != NODE_ENTRY && child->kind != NODE_USE_SCHEME)
        return false;
    int count;
    const char *const *words = body_words(p, parent->kind, &count);
    const char *near = word_nearest(text_of(p, at), words, count);
    if (!near)
        return false;
    remark(p, KIND_SYNTAX, at, arena_format(p->arena, "there is no `%s` %s", text_of(p, at), body_place(parent->kind)),
           arena_format(p->arena, "did you mean `%s`?", near));
    return true;
}

void places_index(struct parse *p)
{
    for (int i = 0; i < PLACES; i++)
        p->homes[places[i].kind] |= places[i].homes;
}

static void misplaced(struct parse *p, const struct node *parent, const struct node *child, int home)
{
    const struct place_row *row = place_row(child->kind);
    int homes = p->homes[child->kind];
    struct span at;
    const char *name = statement_name(p, child, row, &at);
    if (is_misspelt(p, parent, child, at))
        return;
    if (child->kind == NODE_USE_SCHEME && (home & (DAY | SUPERSET | ADDED))) {
        remark(p, KIND_SYNTAX, at, arena_format(p->arena, "%s has no sets", name),
               arena_format(p->arena, "write them behind the lift, such as %s 3 x 5 at rpe 7", text_of(p, at)));
        return;
    }
    bool outside = (homes & FILE_) != 0;
    remark(p, KIND_MISPLACED, at,
           arena_format(p->arena, "%s stands %s, not %s", name, outside ? body_place(NODE_FILE) : homes_text(p, homes),
                        body_place(parent->kind)),
           arena_format(p->arena, "%s it reads like this: %s", outside ? "there" : first_home(homes), row->example));
}

void places_check(struct parse *p, struct node *parent, struct node *children)
{
    int home = home_of(parent->kind);
    bool lenient = parent->kind == NODE_ERROR || (p->astray && parent->kind == NODE_FILE);
    for (struct node *child = children; child; child = child->next) {
        if (child->kind == NODE_GYM && !(child->flags & FLAG_BODY) && !(home & FILE_))
            child->kind = NODE_GYM_REF;
        if (!lenient && p->homes[child->kind] && !(p->homes[child->kind] & home))
            misplaced(p, parent, child, home);
    }
}
