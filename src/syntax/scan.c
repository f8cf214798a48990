/* What the scanner's pieces of text are: words, units, x, signs. Each *take may be lowered; the rest is read again. */
#include "base/hidden.h"
#include "base/name.h"
#include "syntax/reader.h"
#include "syntax/words.h"

#include "setwright.tab.h"

#include <ctype.h>
#include <string.h>

struct span token_span(const struct parse *p, int length)
{
    return span_of(p, p->from, p->from + (uint32_t)length);
}

struct node *token_node(struct parse *p, enum node_kind kind, int length)
{
    return node_of(p, kind, token_span(p, length), NULL, 0);
}

const char *token_text(struct parse *p, const char *text, int length)
{
    return arena_copy(p->arena, text, (size_t)length);
}

/* ---- units ---- */

#define U(text, token) { text, sizeof(text) - 1, TOK_##token }

static const struct {
    const char *text;
    size_t length;
    int token;
} units[] = {
    U("kg", KG),      U("lb", LB),      U("s", SECONDS), U("min", MINUTES), U("m", METRES),
    U("step", STEP),  U("steps", STEP), U("days", DAYS), U("day", DAYS),
};

static const struct {
    const char *wrong, *right;
} wrong_units[] = {
    { "kgs", "kg" },      { "kilo", "kg" },      { "kilos", "kg" },     { "kilogram", "kg" }, { "kilograms", "kg" },
    { "lbs", "lb" },      { "pound", "lb" },     { "pounds", "lb" },    { "sec", "s" },       { "secs", "s" },
    { "second", "s" },    { "seconds", "s" },    { "mins", "min" },     { "minute", "min" },  { "minutes", "min" },
    { "metre", "m" },     { "metres", "m" },     { "meter", "m" },      { "meters", "m" },    { "mtr", "m" },
    { "percent", "%" },   { "per-cent", "%" },   { "pct", "%" },        { "kg.", "kg" },
};

enum { UNITS = sizeof units / sizeof *units, WRONG_UNITS = sizeof wrong_units / sizeof *wrong_units };

/* Whether a text of at least the unit's length starts with it. */
static bool starts_with_unit(const char *text, int unit)
{
    return *text == *units[unit].text && !memcmp(text, units[unit].text, units[unit].length);
}

static int unit_find(const char *text, size_t length)
{
    for (int i = 0; i < UNITS; i++)
        if (units[i].length == length && starts_with_unit(text, i))
            return units[i].token;
    return length == 1 && *text == '%' ? TOK_PERCENT : 0;
}

static int unit_mend(struct parse *p, const char *text, int length)
{
    const char *right = NULL;
    for (int i = 0; i < UNITS && !right; i++)
        if (units[i].length == (size_t)length && !strncasecmp(units[i].text, text, (size_t)length))
            right = units[i].text;
    for (int i = 0; i < WRONG_UNITS && !right; i++)
        if (strlen(wrong_units[i].wrong) == (size_t)length
            && !strncasecmp(wrong_units[i].wrong, text, (size_t)length))
            right = wrong_units[i].right;
    if (!right)
        return 0;
    struct finding *finding =
        found(p, KIND_UNIT, token_span(p, length), "`%s` is no unit here", token_text(p, text, length));
    diag_help(p->findings, finding, "write `%s`: the units are kg, lb, %%, s, min and m", right);
    return unit_find(right, strlen(right));
}

/* ---- x, also glued: 4x5, 3x8-12, 4xamrap ---- */

static bool is_times(const char *text, int length)
{
    return length == 1 || isdigit((unsigned char)text[1]) || (length == 6 && !strncmp(text + 1, "amrap", 5));
}

static bool after_number(const struct parse *p)
{
    int kind = p->last.kind;
    return kind == TOK_NUMBER || kind == TOK_VAR;
}

static bool after_amount(const struct parse *p)
{
    int kind = p->last.kind;
    return after_number(p) || kind == TOK_RIGHT || kind == TOK_PERCENT || kind == TOK_BODYWEIGHT
           || (kind >= TOK_KG && kind <= TOK_METRES);
}

static int times_find(struct parse *p, const char *text, int *take)
{
    if ((*text != 'x' && *text != 'X') || !is_times(text, *take) || !after_amount(p))
        return 0;
    *take = 1;
    if (*text == 'X' && !p->broken) {
        struct finding *finding = found(p, KIND_SYNTAX, token_span(p, 1), "`X` is written in small letters");
        diag_help(p->findings, finding, "write `x`, such as 3 x 5");
    }
    return TOK_TIMES;
}

/* kgx5, s-90s: a unit with x or a dash glued behind it. */
static int unit_glued(const char *text, int *take)
{
    for (int i = 0; i < UNITS; i++) {
        int length = (int)units[i].length;
        if (length >= *take || !starts_with_unit(text, i))
            continue;
        const char *rest = text + length;
        int left = *take - length;
        if ((*rest == 'x' && is_times(rest, left)) || (*rest == '-' && left > 1 && isdigit((unsigned char)rest[1]))) {
            *take = length;
            return units[i].token;
        }
    }
    return 0;
}

/* Each begins with a byte that goes on with no other. */
static int letters_in(const char *text, int length)
{
    int count = 0;
    for (int i = 0; i < length; i++)
        count += ((unsigned char)text[i] & 0xC0) != 0x80;
    return count;
}

int scan_word(struct parse *p, const char *text, int *take)
{
    int token = times_find(p, text, take);
    if (!token && after_number(p))
        token = unit_glued(text, take);
    if (!token && (after_number(p) || (after_amount(p) && *take == 4)))
        token = unit_find(text, (size_t)*take);
    if (token)
        return token;
    const struct word *word = word_find(&p->plain->words, text, (size_t)*take);
    if (word)
        return word->token;
    token = p->last.kind == TOK_NUMBER ? unit_mend(p, text, *take) : 0;
    if (token)
        return token;
    if (*take > NAME_LETTERS_MOST && letters_in(text, *take) > NAME_LETTERS_MOST) {
        diag_help(p->findings, found(p, KIND_TEXT, token_span(p, *take), "this word is longer than %d characters", NAME_LETTERS_MOST),
                  "use a shorter name; a title can say the rest");
        return TOK_SW_error;
    }
    if ((unsigned char)*text >= 0x80 && (token = scan_foreign(p, text, take)) != TOK_NAME)
        return token;
    int whole = *take;
    p->value = name_node(p, NODE_NAME, text, take);
    if (*take == whole && !strncmp(p->value->text, text, (size_t)whole)) /* as written: it has been looked for */
        return TOK_NAME;
    word = word_find(&p->plain->words, p->value->text, strlen(p->value->text));
    return word ? word->token : TOK_NAME;
}

int scan_var(struct parse *p, const char *text, int *take)
{
    int length = *take - 1;
    while (length > 1 && text[length] == '-')
        length--;
    p->from++;
    p->value = name_node(p, NODE_VAR, text + 1, &length);
    p->from--;
    *take = length + 1;
    return TOK_VAR;
}

/* ---- signs ---- */

int scan_symbol(struct parse *p, const char *text, int *take)
{
    static const struct {
        char sign;
        int token;
    } signs[] = {
        { '-', TOK_DASH },  { '+', TOK_PLUS_SIGN },   { '=', TOK_EQUALS }, { '|', TOK_BAR_SIGN }, { ',', TOK_COMMA },
        { '(', TOK_LEFT },  { ')', TOK_RIGHT },       { '{', TOK_OPEN },   { '}', TOK_CLOSE },    { '%', TOK_PERCENT },
        { ';', RAW_SEMICOLON },
    };
    (void)p;
    (void)take;
    for (size_t i = 0; i < sizeof signs / sizeof *signs; i++)
        if (signs[i].sign == *text)
            return signs[i].token;
    return TOK_SW_error;
}

int scan_stray(struct parse *p, const char *text, int *take)
{
    static const struct {
        char sign;
        int token; /* what is meant, and read on with */
        const char *help;
    } signs[] = {
        { '@', TOK_AT, "write `at`, such as 3 x 5 at rpe 8" },
        { '*', TOK_TIMES, "write `x`, such as 3 x 5" },
        { '&', TOK_AND, "write `and`, or a comma" },
        { ':', 0, "leave it away" },
        { '.', TOK_SW_error, "numbers are written like 72.5, and nothing else takes a point" },
        { '/', TOK_SW_error, "for sets that differ write (8, 6, 4); a remark starts with #" },
        { '[', TOK_SW_error, "write ( ) around numbers and { } around statements" },
        { ']', TOK_SW_error, "write ( ) around numbers and { } around statements" },
        { '\\', TOK_SW_error, "a line goes on after a comma, after |, and inside ( )" },
        { '$', TOK_SW_error, "a name stands right behind the $, such as $top" },
        { '<', TOK_SW_error, "write at least, at most, or a range such as 8-12" },
        { '>', TOK_SW_error, "write at least, at most, or a range such as 8-12" },
        { '~', TOK_SW_error, "write a range such as 8-12" },
    };
    int token = TOK_SW_error;
    const char *help = "take it away; if it is part of a text, put the text in quotes";
    (void)take;
    for (size_t i = 0; i < sizeof signs / sizeof *signs; i++)
        if (signs[i].sign == *text) {
            token = signs[i].token;
            help = signs[i].help;
        }
    if (*text == ':' && p->last.kind == TOK_NUMBER)
        token = TOK_SW_error;
    if (!p->broken)
        diag_help(p->findings, found(p, KIND_TEXT, token_span(p, 1), "`%c` means nothing here", *text), "%s", help);
    return token;
}

int scan_control(struct parse *p, const char *text, int *take)
{
    diag_help(p->findings,
              found(p, KIND_TEXT, token_span(p, *take), "the control character \\x%02x stands here", (unsigned char)*text),
              "take it away; it cannot be seen in most editors");
    return TOK_SW_error;
}

void scan_comment(struct parse *p)
{
    struct comment comment = { .at = span_of(p, p->from, p->to) };
    vec_add(p->arena, &p->comments, comment);
    hidden_say(p->findings, p->source->text + p->from, p->to - p->from, p->source->base + p->from, "remark");
}
