/* Syntax errors in a coach's words: what stands here, what is wanted here, and an example from that place. */
#include "syntax/complain.h"
#include "syntax/words.h"

#include "setwright.tab.h"

#include <ctype.h>
#include <string.h>

bool wants(const struct complaint *c, int token)
{
    for (int i = 0; i < c->count; i++)
        if (c->wanted[i] == token)
            return true;
    return false;
}

void say(struct parse *p, struct span at, const char *message, const char *help)
{
    remark(p, KIND_SYNTAX, at, message, help);
}

const char *quoted(struct parse *p, struct token token)
{
    return arena_format(p->arena, "`%s`", text_of(p, token.at));
}

/* ---- words that are nearly right ---- */

static const char *in_small(struct parse *p, const char *text)
{
    char *small = arena_copy(p->arena, text, strlen(text));
    for (char *at = small; *at; at++)
        *at = (char)tolower((unsigned char)*at);
    return small;
}

/* A word of the list in other letters, or one nearly spelt so: says so. NULL: neither. `start`: it starts a line of this body. */
static const char *nearly(struct parse *p, struct span at, const char *const *words, int count, const struct open_body *start)
{
    const char *text = text_of(p, at), *small = in_small(p, text);
    for (int i = 0; i < count; i++)
        if (!strcmp(words[i], small) && strcmp(small, text)) {
            say(p, at, arena_format(p->arena, "`%s` is written in small letters", text),
                arena_format(p->arena, "write `%s`", small));
            return words[i];
        }
    const char *near = word_nearest(small, words, count);
    if (near)
        say(p, at,
            start ? arena_format(p->arena, "there is no `%s` %s", text, body_place(start->header))
                  : arena_format(p->arena, "`%s` is no word that fits here", text),
            arena_format(p->arena, "did you mean `%s`?", near));
    return near;
}

bool complain_start(struct parse *p, struct token *token)
{
    int count;
    enum node_kind body = p->bodies[p->depth].header;
    const char *const *words = body_words(p, body, &count);
    const char *near = nearly(p, token->at, words, count, &p->bodies[p->depth]);
    if (!near)
        return false;
    token->kind = word_find(&p->plain->words, near, strlen(near))->token;
    token->node = NULL;
    return true;
}

/* The words that could stand here: of what the grammar takes, and at a statement's start of what this body takes. */
static const char *const *wanted_words(const struct complaint *c, int *count)
{
    if (c->first)
        return body_words(c->p, c->body, count);
    const char **words = NEW_MANY(c->p->arena, const char *, c->count + 1);
    *count = 0;
    for (int i = 0; i < c->count; i++) {
        const struct word *word = word_of(c->wanted[i]);
        if (word)
            words[(*count)++] = word->text;
        else if (c->wanted[i] == TOK_STEP || c->wanted[i] == TOK_DAYS)
            words[(*count)++] = c->wanted[i] == TOK_STEP ? "step" : "days";
    }
    return words;
}

/* round for rounds, set for sets: a word of the language, but not the one that stands here. */
static bool other_number(const struct complaint *c, const char *const *words, int count)
{
    const char *text = text_of(c->p, c->here.at);
    size_t length = strlen(text);
    for (int i = 0; i < count && word_of(c->here.kind); i++)
        if (length > 3 && !strncmp(words[i], text, length) && !strcmp(words[i] + length, "s"))
            return true;
    return false;
}

static bool wrong_spelling(const struct complaint *c)
{
    int count;
    const char *const *words = wanted_words(c, &count);
    if (c->here.kind != TOK_NAME && !(c->first && word_of(c->here.kind)) && !other_number(c, words, count))
        return false;
    return nearly(c->p, c->here.at, words, count, NULL) != NULL;
}

/* titel "x", squat tpo 1 x 1, skip weak 2: the name before was meant to be a word. */
static bool wrong_before(const struct complaint *c)
{
    static const struct {
        int first; /* word of the statement */
        int behind; /* the token before the name; 0: any, when the name is the third word at most */
        const char *words[8];
    } rows[] = {
        { TOK_NAME, 0, { "top", "back-off", "warm-up", "total", "or", "with", "then" } },
        { 0, TOK_THEN, { "top", "back-off", "warm-up", "total" } },
        { TOK_SKIP, TOK_SKIP, { "week", "weeks", "day" } },
        { TOK_RUN, TOK_RUN, { "break" } },
        { TOK_RUN, TOK_COMMA, { "break" } },
    };
    bool starts = c->p->words == 2;
    int count = 0;
    const char *const *words = NULL;
    if (c->before.kind != TOK_NAME && !(starts && (c->before.kind == TOK_DID || c->before.kind == TOK_RULE)))
        return false;
    if (starts)
        words = body_words(c->p, c->body, &count);
    for (size_t i = 0; i < sizeof rows / sizeof *rows && !words; i++) {
        if ((rows[i].first && rows[i].first != c->p->first.kind)
            || (rows[i].behind ? rows[i].behind != c->earlier.kind : c->p->words != 3))
            continue;
        words = rows[i].words;
        while (words[count])
            count++;
    }
    if (!words)
        return false;
    return nearly(c->p, c->before.at, words, count, starts ? &c->p->bodies[c->p->depth] : NULL) != NULL;
}

/* ---- the general sentence ---- */

static const char *stands_here(const struct complaint *c)
{
    switch (c->here.kind) {
    case 0:
        return "but the file ends";
    case TOK_END:
        return "but the line ends";
    case TOK_STRING:
        return "not a text in quotes";
    case TOK_OPEN:
        return "not {";
    default:
        return arena_format(c->p->arena, "not %s", quoted(c->p, c->here));
    }
}

static const char *token_phrase(struct parse *p, int token)
{
    static const struct {
        int token;
        const char *phrase;
    } rows[] = {
        { TOK_NAME, "a name" },     { TOK_VAR, "a $name" },   { TOK_STRING, "a text in quotes" },
        { TOK_NUMBER, "a number" }, { TOK_DATE, "a date" },   { TOK_OPEN, "{" },
        { TOK_EQUALS, "=" },        { TOK_KG, "kg" },         { TOK_LB, "lb" },
        { TOK_END, "the end of the line" }, { TOK_COMMA, "a comma" }, { TOK_PERCENT, "%" },
        { TOK_SECONDS, "s" }, { TOK_MINUTES, "min" }, { TOK_METRES, "m" }, { TOK_RIGHT, ")" }, { TOK_STEP, "`step`" },
        { TOK_DASH, "-" }, { TOK_BAR_SIGN, "|" }, { TOK_PLUS_SIGN, "+" }, { TOK_LEFT, "(" }, { TOK_DAYS, "days" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        if (rows[i].token == token)
            return rows[i].phrase;
    const struct word *word = word_of(token);
    return word ? arena_format(p->arena, "`%s`", word->text) : NULL;
}

/* Up to four things that could stand here; signs that only make what is there longer are left out. */
static const char *wanted_list(const struct complaint *c)
{
    static const int lengthening[] = { TOK_DASH, TOK_COMMA, TOK_BAR_SIGN, TOK_PLUS_SIGN, TOK_MINUTES, TOK_METRES, TOK_LB,
                                       TOK_KG, TOK_SECONDS, TOK_PERCENT, TOK_PLUS, TOK_MINUS, TOK_LEFT };
    const char *list = NULL, *last = NULL;
    int count = 0, all = (int)(sizeof lengthening / sizeof *lengthening), signs = 0;
    for (int i = 0; i < c->count; i++)
        for (int j = 0; j < all; j++)
            signs += c->wanted[i] == lengthening[j];
    bool more = signs < c->count;
    for (int i = 0; i < c->count; i++) {
        bool longer = c->wanted[i] == TOK_VAR && c->count > 1;
        for (size_t j = 0; j < sizeof lengthening / sizeof *lengthening; j++)
            longer |= c->wanted[i] == lengthening[j] && more;
        const char *phrase = longer ? NULL : token_phrase(c->p, c->wanted[i]);
        if (!phrase)
            continue;
        if (last)
            list = list ? arena_format(c->p->arena, "%s, %s", list, last) : last;
        last = phrase;
        count++;
    }
    if (!last || count > 4)
        return NULL;
    return list ? arena_format(c->p->arena, "%s or %s", list, last) : last;
}

/* Where the word before alone does not say what is wanted. */
static const struct {
    int first, before;
    const char *phrase;
    int body; /* 0: any */
} special[] = {
    { TOK_MAX, TOK_MAX, "`to` and a number of per cent, or `fixed`", NODE_BLOCK },
    { TOK_MAX, TOK_MAX, "`to` and a number of per cent, or `fixed`", NODE_TEMPLATE },
    { TOK_DELOAD, TOK_EACH, "a number of weeks", 0 },
    { TOK_DID, TOK_DID, "the load that was lifted, `bodyweight`, `as planned` or `skipped`", 0 },
    { TOK_RULE, TOK_RULE, "its limit, such as at most 3", 0 },
    { TOK_RULE, TOK_NUMBER, "`to` and the upper limit", 0 },
    { TOK_DELOAD, TOK_WEEK, "the number of the week", 0 }, { TOK_DELOAD, TOK_WEEKS, "the numbers of the weeks", 0 },
    { TOK_TAPER, TOK_WEEK, "the number of the week", 0 },  { TOK_TAPER, TOK_WEEKS, "the numbers of the weeks", 0 },
    { TOK_ADJUST, TOK_WEEKS, "the numbers of the weeks", 0 }, { TOK_ADJUST, TOK_FROM, "a date such as 2027-01-11", 0 },
    { TOK_ADJUST, TOK_TO, "a date such as 2027-01-31", 0 },
    { TOK_BLOCK, TOK_FROM, "the name of a template", 0 },  { TOK_TEMPLATE, TOK_FROM, "the name of a template", 0 },
    { TOK_SETS, TOK_TO, "a number of sets, or per cent of them", 0 }, { TOK_LOAD, TOK_TO, "per cent of the load, or a weight", 0 },
    { TOK_MAX, TOK_FROM, "the set it is worked out from", 0 }, { TOK_MAX, TOK_TO, "a number of per cent", 0 },
    { TOK_CURVE, TOK_AT, "a number of per cent", 0 },      { TOK_LIFT, TOK_AT, "a number of per cent", 0 },
    { TOK_PLATES, TOK_TIMES, "the number of discs", 0 },   { TOK_SWAP, TOK_WITH, "the lift to do instead", 0 },
    { TOK_RPE, TOK_RPE, "`up`, `down` or `to`", 0 },       { TOK_MEET, TOK_ON, "a date such as 2027-04-17", 0 },
    { TOK_MAX, TOK_ON, "a date such as 2026-11-28", 0 },   { TOK_BODYWEIGHT, TOK_ON, "a date such as 2026-11-28", 0 },
    { TOK_DAY, TOK_ON, "a day of the week, such as mon", 0 }, { TOK_ROTATE, TOK_ON, "days of the week, such as mon, thu", 0 },
    { TOK_SUPERSET, TOK_FOR, "a time such as 12 min", 0 }, { TOK_SESSION, TOK_FOR, "a time such as 80 min", 0 },
    { TOK_RULE, TOK_TO, "the upper limit", 0 },            { TOK_RULE, TOK_AT, "`least` or `most`", 0 },
    { TOK_DUMBBELLS, TOK_TO, "the heaviest", 0 },          { TOK_STACK, TOK_TO, "the heaviest", 0 },
};

static const char *wanted_phrase(const struct complaint *c)
{
    const struct word *word = word_of(c->before.kind);
    for (size_t i = 0; i < sizeof special / sizeof *special; i++)
        if (special[i].first == c->p->first.kind && special[i].before == c->before.kind
            && (!special[i].body || special[i].body == (int)c->body))
            return special[i].phrase;
    if (word && word->after)
        return word->after;
    const char *list = wanted_list(c);
    if (list && !strcmp(list, "`each`"))
        return "`each week`, or in a wave `each pass`";
    if (list && strcmp(list, "the end of the line"))
        return list;
    if (wants(c, TOK_AT) && wants(c, TOK_REST))
        return "a clause such as at rpe 8 or rest 3 min";
    if (wants(c, TOK_TIMES) && (!wants(c, TOK_END) || c->here.kind == TOK_END))
        return "`x` and a number of reps";
    if (wants(c, TOK_TOP) && wants(c, TOK_OPEN))
        return "the sets, such as 3 x 5";
    return NULL;
}

static const char *example(const struct complaint *c)
{
    const struct word *word = word_of(c->before.kind), *first = word_of(c->p->first.kind);
    const char *statement = statement_example(c->body, first ? first->text : NULL);
    bool clause = word && word->example;
    if (c->p->first.kind == TOK_DID && c->before.kind == TOK_TIMES) /* what was done is written the other way round: load x reps */
        return "squat 90 kg x 5, 5, 5 rpe 7";
    if (clause && (c->p->first.kind == TOK_NAME || !first || !statement))
        return word->example;
    if (!statement)
        statement = statement_example(NODE_FILE, first ? first->text : NULL);
    return statement ? statement : "squat 3 x 5 at rpe 7";
}

static void general(const struct complaint *c)
{
    struct parse *p = c->p;
    const char *phrase = wanted_phrase(c);
    if (phrase && c->before.kind != TOK_END && c->before.kind != TOK_OPEN)
        say(p, c->here.at,
            arena_format(p->arena, "after %s must come %s, %s", quoted(p, c->before), phrase, stands_here(c)),
            arena_format(p->arena, "write it like this: %s", example(c)));
    else if (c->here.kind == TOK_END || !c->here.kind)
        say(p, c->here.at, "the line ends before it is complete", arena_format(p->arena, "write it like this: %s", example(c)));
    else
        say(p, c->here.at, arena_format(p->arena, "%s does not belong here: the line is complete before it", quoted(p, c->here)),
            arena_format(p->arena, "put it on a line of its own, or write it like this: %s", example(c)));
}

void complain(struct parse *p, int token, struct span at, const int *wanted, int count)
{
    static bool (*const ways[])(const struct complaint *c) = {
        stray_paren,  behind_body,   done_at,       limit_at,       sign_for_word,  session_without_date,
        adjust_nobody, missing_word, weeks_without_days, missing_parens, reserved_word, wrong_spelling,
        wrong_before, two_lifts,     unknown_start, wrong_start,    missing_comma,  missing_at,
    };
    struct complaint c = { .p = p, .here = { .kind = token, .at = at }, .before = *sent_last(p, 1), .earlier = *sent_last(p, 2),
                           .wanted = wanted, .count = count };
    p->parens = 0;
    p->broken = true;
    if (p->complained == at.start || p->remarked == at.start)
        return;
    c.body = p->bodies[p->depth - (token == TOK_OPEN && p->depth > 0)].header;
    c.first = p->words == 1 && token != TOK_END;
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++)
        if (ways[i](&c))
            return;
    general(&c);
}
