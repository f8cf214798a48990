/* The line discipline: where statements end, which body a statement stands in, and the tokens that depend on it. */
#include "syntax/reader.h"
#include "syntax/words.h"

#include "setwright.tab.h"

#include <string.h>

struct span span_of(const struct parse *p, uint32_t from, uint32_t to)
{
    return (struct span){ p->source->base + from, p->source->base + to };
}

const char *text_of(struct parse *p, struct span at)
{
    return intern(p->names, p->source->text + (at.start - p->source->base), at.end - at.start);
}

struct finding *found(struct parse *p, enum kind kind, struct span at, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    struct finding *finding = diag_vadd(p->findings, kind, at, format, args);
    va_end(args);
    p->has_found = true;
    if (kind == KIND_SYNTAX)
        p->complained = at.start;
    else
        p->remarked = at.start;
    return finding;
}

void remark(struct parse *p, enum kind kind, struct span at, const char *message, const char *help)
{
    diag_help(p->findings, found(p, kind, at, "%s", message), "%s", help);
}

/* After these, digits with a comma between them can only be a list of whole numbers. */
static void watch_numbers(struct parse *p, int kind)
{
    switch (kind) {
    case TOK_NUMBER:
    case TOK_DASH:
        return;
    case TOK_COMMA: /* behind it the next kind of disc stands, with its weight */
        p->whole_numbers &= p->first.kind != TOK_PLATES;
        return;
    case TOK_TIMES:
        p->whole_numbers = p->first.kind == TOK_DID || p->first.kind == TOK_PLATES;
        return;
    default:
        p->whole_numbers = kind == TOK_WEEK || kind == TOK_WEEKS || kind == TOK_DAY || kind == TOK_ROTATE;
    }
}

static struct token raw_next(struct parse *p)
{
    if (p->has_ahead) {
        p->has_ahead = false;
        return p->ahead;
    }
    struct token token = { .kind = scanner_next(p) };
    token.at = span_of(p, p->from, p->to);
    token.node = p->value;
    if (token.node)
        token.node->at = token.at;
    p->last = token;
    watch_numbers(p, token.kind);
    return token;
}

static void raw_back(struct parse *p, struct token token)
{
    p->ahead = token;
    p->has_ahead = true;
}

static struct token send(struct parse *p, struct token token)
{
    p->sent[++p->sent_count % SENT_KEPT] = token;
    p->words++;
    if (token.kind == TOK_END || token.kind == TOK_OPEN) {
        p->at_start = true;
        p->broken = false;
    }
    p->broken |= token.kind == TOK_SW_error;
    return token;
}

static bool end_is_due(const struct parse *p)
{
    return !p->at_start;
}

/* An end that no character stands for lies just behind the token before it. */
static struct token send_end(struct parse *p)
{
    uint32_t behind = sent_last(p, 0)->at.end;
    p->parens = 0;
    return send(p, (struct token){ .kind = TOK_END, .at = { behind, behind } });
}

static bool line_goes_on(const struct parse *p)
{
    return p->parens > 0 || !end_is_due(p) || sent_last(p, 0)->kind == TOK_COMMA || sent_last(p, 0)->kind == TOK_BAR_SIGN;
}

/* Between ( and ) stand numbers, units and the few words of series. */
static bool is_series_word(const char *text, size_t length)
{
    static const char *const words[] = { "from", "to", "plus", "minus", "each", "week", "weeks", "wave", "pass", "kg", "lb",
                                         "s", "min", "m", "x", "rpe", "rir", "amrap" };
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (strlen(words[i]) == length && !strncmp(words[i], text, length))
            return true;
    return false;
}

/* A ( that meets a brace, a text, a statement's end, another ( or another word before its ) has none. */
static bool paren_closes(const struct parse *p)
{
    const char *at = p->source->text + p->to;
    while (*at && !strchr("(){};\"#", *at)) {
        bool starts_word = strchr(" \t\r\n", at[-1]) != NULL;
        size_t length = strspn(at, "abcdefghijklmnopqrstuvwxyz-_");
        if (starts_word && length > 0 && !is_series_word(at, length))
            return false;
        at += length + (length == 0);
    }
    return *at == ')';
}

static struct token take_left(struct parse *p, struct token token)
{
    p->parens = 1;
    if (paren_closes(p))
        return send(p, token);
    p->parens = 0;
    remark(p, KIND_SYNTAX, token.at, "this ( has no ) behind it", "close it where the numbers end, such as (4 | 2) x 3");
    token.kind = TOK_SW_error;
    return send(p, token);
}

/* Braces deeper than anybody writes: one finding, and all within is passed over. */
static void pass_over(struct parse *p, struct token open)
{
    remark(p, KIND_LIMIT, open.at, arena_format(p->arena, "braces stand more than %d deep here", (int)PARSE_DEPTH_MOST),
           "close some of the { before it");
    for (int depth = 1; depth > 0;) {
        struct token token = raw_next(p);
        depth += token.kind == TOK_OPEN;
        depth -= token.kind == TOK_CLOSE;
        if (!token.kind) {
            raw_back(p, token);
            return;
        }
    }
}

/* A { that opens nothing, such as the second of {{: told once a run, and passed over with its }. */
static void stray_open(struct parse *p, struct token open)
{
    if (!p->bodies[p->depth].astray || p->bodies[p->depth].at.end != open.at.start)
        remark(p, KIND_SYNTAX, open.at, "this { opens nothing", "take it away, or write before it what it is for");
    enum node_kind header = p->bodies[p->depth].header;
    p->bodies[++p->depth] = (struct open_body){ open.at, header, true };
}

static struct token take_open(struct parse *p, struct token token)
{
    if (p->depth == PARSE_DEPTH_MOST) {
        pass_over(p, token);
        p->at_start = false;
        token.kind = TOK_SW_error;
        return send(p, token);
    }
    p->depth++;
    p->bodies[p->depth] = (struct open_body){ token.at, body_of(p->first.kind), false };
    p->parens = 0;
    return send(p, token);
}

static void stray_close(struct parse *p, struct token token)
{
    p->astray = true;
    remark(p, KIND_SYNTAX, token.at, "this } closes nothing", "take it away, or look for a { that is missing before it");
}

static void never_closed(struct parse *p)
{
    remark(p, KIND_SYNTAX, p->bodies[p->depth].at, "this { is never closed",
           arena_format(p->arena, "put a } at the end of %s", body_name(p->bodies[p->depth].header)));
}

static struct token send_close(struct parse *p, struct token token)
{
    p->depth--;
    token.kind = TOK_CLOSE;
    p->at_start = false;
    return send(p, token);
}

/* The text holds more { than }, and this word can't stand in the body at hand but in one around it: the } went missing here. */
static bool close_is_missing(struct parse *p, const struct token *token)
{
    const struct word *word = p->surplus > 0 ? word_of(token->kind) : NULL;
    if (!word || p->depth == 0 || p->bodies[p->depth].header == NODE_ERROR
        || p->bodies[p->depth].header == NODE_GROUP_OF || body_has_word(p, p->bodies[p->depth].header, word->text))
        return false;
    for (int outer = p->depth - 1; outer >= 0; outer--)
        if (body_has_word(p, p->bodies[outer].header, word->text))
            return true;
    return false;
}

/* In a group a word of the language is a member's name, but for `title "…"` and `note "…"`. */
static bool is_member(struct parse *p, const struct token *token)
{
    if (token->kind == TOK_NAME)
        return true;
    if (token->kind != TOK_TITLE && token->kind != TOK_NOTE)
        return word_of(token->kind) != NULL;
    struct token next = raw_next(p);
    raw_back(p, next);
    return next.kind != TOK_STRING && next.kind != TOK_VAR;
}

static bool take_list(struct token *token, struct list list)
{
    if (list.first)
        *token = (struct token){ TOK_PLAIN, span_join(list.first->at, list.last->at), list.first };
    return list.first != NULL;
}

/* Lifts with their sets on lines that follow each other. */
static bool take_lines(struct parse *p, struct token *token)
{
    struct list entries = { 0 };
    const struct stretch *last;
    uint32_t from = token->at.start - p->source->base;
    for (uint32_t end; from && (end = plain_find(p->arena, p->plain, from, &last)); from = plain_next(p->plain, end)) {
        struct node *entry = node_flag(node_of(p, NODE_ENTRY, span_of(p, from, end), NULL, 0), FLAG_PLAIN);
        entry->stretch = last;
        entries = list_join(entries, (struct list){ .first = entry, .last = entry });
    }
    return take_list(token, entries);
}

/* Days that follow each other. */
static bool take_days(struct parse *p, struct token *token)
{
    struct list days = { 0 };
    uint32_t from = p->depth < PARSE_DEPTH_MOST ? token->at.start - p->source->base : 0;
    for (struct node *day; from && (day = plain_day(p, from)); from = plain_next_day(p->plain, day->at.end - p->source->base))
        days = list_join(days, (struct list){ .first = day, .last = day });
    return take_list(token, days);
}

/* What is read by hand, whole statements as one token; the scanner goes on behind it. */
static bool take_plain(struct parse *p, enum node_kind body, struct token *token)
{
    bool lines = body == NODE_DAY || body == NODE_SUPERSET || body == NODE_ADD_TO;
    bool days = body == NODE_BLOCK || body == NODE_TEMPLATE || body == NODE_WEEKS_GROUP;
    if (!p->by_hand || !(lines && token->kind == TOK_NAME ? take_lines(p, token) : days && token->kind == TOK_DAY && take_days(p, token)))
        return false;
    p->to = token->at.end - p->source->base;
    p->last = *token;
    return true;
}

static void take_start(struct parse *p, struct token *token)
{
    enum node_kind body = p->bodies[p->depth].header;
    bool name = token->kind == TOK_NAME;
    if (take_plain(p, body, token)) {
        /* whole statements, whatever they start with */
    } else if ((body == NODE_SESSION || body == NODE_DIARY) && (name || token->kind == TOK_VAR)) {
        token->kind = TOK_DID;
    } else if (body == NODE_CHECKS && name) {
        token->kind = TOK_RULE;
    } else if (body == NODE_GROUP_OF && is_member(p, token)) {
        if (!name)
            token->node = node_word(p, token->at);
        token->kind = TOK_MEMBER;
    } else if (name && !body_takes_names(body)) {
        complain_start(p, token);
    }
    p->first = *token;
    p->words = 0;
    p->at_start = false;
}

static struct token take_file_end(struct parse *p, struct token token)
{
    raw_back(p, token);
    if (end_is_due(p))
        return send_end(p);
    while (p->depth > 0 && p->bodies[p->depth].astray)
        p->depth--;
    if (p->depth > 0) {
        never_closed(p);
        return send_close(p, token);
    }
    p->has_ahead = false;
    token.kind = 0;
    return token;
}

/* The } of a { that opens nothing; where } are too few it is the other {'s. */
static bool closes_stray(struct parse *p)
{
    if (!p->bodies[p->depth].astray)
        return false;
    p->depth--;
    return p->surplus-- <= 0;
}

static struct token take_close(struct parse *p, struct token token)
{
    if (end_is_due(p)) {
        raw_back(p, token);
        return send_end(p);
    }
    return send_close(p, token);
}

/* A newline: an end, unless the line goes on. */
static bool newline_ends(struct parse *p)
{
    if (line_goes_on(p))
        return false;
    struct token next;
    do
        next = raw_next(p);
    while (next.kind == RAW_NEWLINE);
    raw_back(p, next);
    return next.kind != TOK_THEN && (next.kind != TOK_OPEN || sent_last(p, 0)->kind == TOK_CLOSE);
}

static struct token take_word(struct parse *p, struct token token)
{
    if (p->at_start) {
        if (close_is_missing(p, &token)) {
            never_closed(p);
            p->surplus--;
            raw_back(p, token);
            p->after_missing = true;
            return send_close(p, (struct token){ .at = { token.at.start, token.at.start } });
        }
        take_start(p, &token);
    }
    if (token.kind == TOK_RIGHT && p->parens > 0)
        p->parens--;
    return send(p, token);
}

struct token reader_next(struct parse *p)
{
    if (p->after_missing) {
        p->after_missing = false;
        return send_end(p);
    }
    for (;;) {
        struct token token = raw_next(p);
        switch (token.kind) {
        case RAW_NEWLINE:
            if (newline_ends(p))
                return send_end(p);
            break;
        case RAW_SEMICOLON:
            if (end_is_due(p))
                return send_end(p);
            break;
        case TOK_CLOSE:
            if (closes_stray(p))
                break;
            if (p->depth > 0)
                return take_close(p, token);
            stray_close(p, token);
            if (end_is_due(p))
                return send_end(p);
            break;
        case TOK_OPEN:
            if (sent_last(p, 0)->kind == TOK_CLOSE && end_is_due(p)) {
                raw_back(p, token);
                return send_end(p);
            }
            if (p->at_start && p->depth < PARSE_DEPTH_MOST) {
                stray_open(p, token);
                break;
            }
            return take_open(p, token);
        case TOK_LEFT:
            if (p->at_start)
                take_start(p, &token);
            return take_left(p, token);
        case 0:
            return take_file_end(p, token);
        default:
            return take_word(p, token);
        }
    }
}
