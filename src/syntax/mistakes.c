/* Mistakes that have a message of their own. */
#include "syntax/complain.h"
#include "syntax/words.h"

#include "setwright.tab.h"

#include <string.h>

static bool is_unit(int token)
{
    return token == TOK_PERCENT || (token >= TOK_KG && token <= TOK_METRES);
}

bool stray_paren(const struct complaint *c)
{
    if (c->here.kind != TOK_RIGHT)
        return false;
    say(c->p, c->here.at, "this ) has no ( before it", "take it away, or put a ( where the numbers start");
    return true;
}

/* lift bar, day on: a word of the language where a name of the coach's own is wanted. */
bool reserved_word(const struct complaint *c)
{
    static const struct {
        int before;
        const char *what, *ending;
    } rows[] = {
        { TOK_LIFT, "a lift", "lift" },     { TOK_GYM, "a gym", "gym" },          { TOK_SCHEME, "a scheme", "sets" },
        { TOK_DAY, "a day", "day" },        { TOK_BLOCK, "a block", "block" },    { TOK_TEMPLATE, "a template", "plan" },
        { TOK_SEASON, "a season", "season" }, { TOK_PROGRESSION, "a progression", "steps" },
        { TOK_SWAP, "a lift", "lift" },     { TOK_MAX, "a lift", "lift" },        { TOK_WITH, "a lift", "lift" },
        { TOK_LIKE, "a lift", "lift" },     { TOK_OR, "a lift", "lift" },         { TOK_AVOID, "a lift", "lift" },
        { TOK_RUN, "a block", "block" },    { TOK_FROM, "a template", "plan" },   { TOK_WORKS, "a muscle", "muscle" },
        { TOK_SKIP, "a lift", "lift" },     { TOK_CURVE, "a lift", "lift" },      { TOK_EFFORT, "a lift", "lift" },
        { TOK_HELPS, "a muscle", "muscle" }, { TOK_OF, "a lift", "lift" },        { TOK_ATTEMPTS, "a lift", "lift" },
        { TOK_INSTEAD, "a lift", "lift" },
    };
    const struct word *word = word_of(c->here.kind);
    if (!word || !wants(c, TOK_NAME))
        return false;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        if (rows[i].before == c->before.kind) {
            say(c->p, c->here.at,
                arena_format(c->p->arena, "`%s` is a word of the language and cannot name %s", word->text, rows[i].what),
                arena_format(c->p->arena, "write another name, such as %s-%s", word->text, rows[i].ending));
            return true;
        }
    return false;
}

/* 3 x 5 rpe 8, 3 x 5 75% */
bool missing_at(const struct complaint *c)
{
    static const int loads[] = { TOK_RPE, TOK_RIR, TOK_NUMBER, TOK_SAME, TOK_BODYWEIGHT, TOK_VAR };
    if (!wants(c, TOK_AT) || !wants(c, TOK_REST))
        return false;
    for (size_t i = 0; i < sizeof loads / sizeof *loads; i++)
        if (loads[i] == c->here.kind) {
            say(c->p, c->here.at, arena_format(c->p->arena, "`at` is missing before `%s`", text_of(c->p, c->here.at)),
                "write the load like this: 3 x 5 at rpe 8, at 75% or at 100 kg");
            return true;
        }
    return false;
}

/* What was done has its effort without at: bench 50 kg x 5 at rpe 7 in a diary or a max. */
bool done_at(const struct complaint *c)
{
    if (c->here.kind != TOK_AT || c->first || !wants(c, TOK_RPE))
        return false;
    say(c->p, c->here.at, "what was done has its effort without `at`",
        c->p->first.kind == TOK_MAX ? "write it like this: max bench from 57.5 kg x 5 rpe 8"
                                    : "write it like this: squat 90 kg x 5, 5, 5 rpe 7");
    return true;
}

/* bodyweight + 15 kg */
bool sign_for_word(const struct complaint *c)
{
    bool plus = c->here.kind == TOK_PLUS_SIGN && wants(c, TOK_PLUS);
    if (!plus && !(c->here.kind == TOK_DASH && wants(c, TOK_MINUS)))
        return false;
    say(c->p, c->here.at, arena_format(c->p->arena, "%s stands for a word here", quoted(c->p, c->here)),
        plus ? "write `plus`" : "write `minus`");
    return true;
}

/* max squat 120 kg 2026-11-28, day A mon, curl skipped "elbow" */
bool missing_word(const struct complaint *c)
{
    const char *text = text_of(c->p, c->here.at), *word = NULL, *help = NULL;
    if (wants(c, TOK_ON) && (c->here.kind == TOK_DATE || (c->here.kind == TOK_NAME && weekday_find(text)))) {
        word = "on";
        help = text;
    } else if (wants(c, TOK_BECAUSE) && c->here.kind == TOK_STRING) {
        word = "because";
        help = text;
    } else if (c->p->first.kind == TOK_ADJUST && wants(c, TOK_IN) && (c->here.kind == TOK_WEEKS || c->here.kind == TOK_WEEK)) {
        word = "in";
        help = "weeks 2-4";
    }
    if (!word)
        return false;
    say(c->p, c->here.at, arena_format(c->p->arena, "`%s` is missing before %s", word, quoted(c->p, c->here)),
        arena_format(c->p->arena, "write %s %s", word, help));
    return true;
}

/* adjust in weeks 2-4, where `in` was read as somebody's name */
bool adjust_nobody(const struct complaint *c)
{
    if (c->p->first.kind != TOK_ADJUST || c->before.kind != TOK_IN || c->p->words != 3)
        return false;
    say(c->p, c->before.at, "`adjust` does not say for whom", "write it like this: adjust ines in weeks 2-4 { cap squat rpe 8 }");
    return true;
}

/* monday { … } in a diary */
bool session_without_date(const struct complaint *c)
{
    if (c->p->first.kind != TOK_DID || c->here.kind != TOK_OPEN)
        return false;
    say(c->p, c->p->first.at, arena_format(c->p->arena, "a session starts with its date, not with %s", quoted(c->p, c->p->first)),
        "write it like this: 2027-01-04 A { squat 90 kg x 5, 5 rpe 7 }");
    return true;
}

/* squat row 3 x 5 */
bool two_lifts(const struct complaint *c)
{
    if (c->p->first.kind != TOK_NAME || c->before.kind != TOK_NAME || c->p->words != 3 || !wants(c, TOK_WITH)
        || !body_takes_names(c->body))
        return false;
    const char *first = text_of(c->p, c->p->first.at), *second = text_of(c->p, c->before.at);
    say(c->p, c->before.at, arena_format(c->p->arena, "`%s` stands where the sets of `%s` belong", second, first),
        arena_format(c->p->arena, "write %s 3 x 5, or for a choice of lifts %s or %s 3 x 5", first, first, second));
    return true;
}

/* weeks 1-3 without what happens in them */
bool weeks_without_days(const struct complaint *c)
{
    bool weeks = c->p->first.kind == TOK_WEEKS || c->p->first.kind == TOK_WEEK;
    if (!weeks || c->here.kind != TOK_END || !wants(c, TOK_OPEN))
        return false;
    say(c->p, c->here.at, "several weeks are followed by { and their days",
        "write weeks 1-3 { day B on thu { deadlift 3 x 5 at 75% } }, or one number for how long the block is: weeks 5");
    return true;
}

/* for ines piotr */
bool missing_comma(const struct complaint *c)
{
    bool name = c->here.kind == TOK_NAME && (c->before.kind == TOK_NAME || c->before.kind == TOK_MEMBER || word_of(c->before.kind));
    bool number = c->here.kind == TOK_NUMBER && (c->before.kind == TOK_NUMBER || is_unit(c->before.kind));
    if (!wants(c, TOK_COMMA) || (!name && !number))
        return false;
    say(c->p, c->here.at, arena_format(c->p->arena, "a comma is missing before %s", quoted(c->p, c->here)),
        arena_format(c->p->arena, "write %s, %s", text_of(c->p, c->before.at), text_of(c->p, c->here.at)));
    return true;
}

/* top-reps most 3 */
bool limit_at(const struct complaint *c)
{
    if (c->p->first.kind != TOK_RULE || (c->here.kind != TOK_MOST && c->here.kind != TOK_LEAST))
        return false;
    say(c->p, c->here.at, arena_format(c->p->arena, "`at` is missing before %s", quoted(c->p, c->here)),
        "write the limit like this: top-reps at most 3");
    return true;
}

/* 3 x 8, 6, 4 and 4 | 2 x 3 */
bool missing_parens(const struct complaint *c)
{
    if (c->here.kind != TOK_COMMA && c->here.kind != TOK_BAR_SIGN)
        return false;
    char sign = c->here.kind == TOK_COMMA ? ',' : '|';
    if (wants(c, TOK_REST) && c->earlier.kind == TOK_TIMES)
        say(c->p, c->here.at, "several numbers of reps stand in ( )",
            sign == ',' ? "write them like this: 3 x (8, 6, 4)" : "write them like this: 4 x (6 | 4 | 2)");
    else if (wants(c, TOK_TIMES) && !wants(c, TOK_COMMA))
        say(c->p, c->here.at, "several numbers of sets stand in ( )", "write them like this: (4 | 2) x 3");
    else
        return false;
    return true;
}

/* day A { … } day B { … } on one line */
bool behind_body(const struct complaint *c)
{
    if (c->before.kind != TOK_CLOSE || c->here.kind == TOK_END)
        return false;
    say(c->p, c->here.at, arena_format(c->p->arena, "behind a } a new line starts before %s", quoted(c->p, c->here)),
        "put it on a line of its own, or a ; before it");
    return true;
}

/* A clause on a line of its own, or a word that starts nothing here. */
bool wrong_start(const struct complaint *c)
{
    struct parse *p = c->p;
    int count;
    const char *const *words = body_words(p, c->body, &count);
    const struct word *word = word_of(c->here.kind);
    if (!c->first || c->here.kind == TOK_END)
        return false;
    if (word && word->example && body_takes_names(c->body)) {
        say(p, c->here.at, arena_format(p->arena, "`%s` cannot start a line", word->text),
            arena_format(p->arena, "it belongs behind what it is for, on the same line: %s", word->example));
        return true;
    }
    const char *list = "";
    for (int i = 0; i < count; i++)
        list = arena_format(p->arena, "%s%s%s", list, i ? ", " : "", words[i]);
    if (body_takes_names(c->body))
        list = arena_format(p->arena, "%s, or a line such as %s", list, statement_example(c->body, NULL));
    say(p, c->here.at, arena_format(p->arena, "no line %s starts with %s", body_place(c->body), quoted(p, c->here)),
        arena_format(p->arena, "here stand %s", list));
    return true;
}

/* foo 20 kg in a gym: the first word is none of this body's, and none is near. */
bool unknown_start(const struct complaint *c)
{
    struct parse *p = c->p;
    int count;
    const char *const *words = body_words(p, c->body, &count);
    if (p->first.kind != TOK_NAME || body_takes_names(c->body) || c->body == NODE_ERROR)
        return false;
    const char *list = "";
    for (int i = 0; i < count; i++)
        list = arena_format(p->arena, "%s%s%s", list, i ? ", " : "", words[i]);
    say(p, p->first.at, arena_format(p->arena, "there is no %s %s", quoted(p, p->first), body_place(c->body)),
        arena_format(p->arena, "here stand %s", list));
    return true;
}
