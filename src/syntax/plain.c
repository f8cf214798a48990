#include "syntax/plain.h"

#include "base/name.h"
#include "syntax/classes.h"
#include "syntax/reader.h"

#include "setwright.tab.h"

#include <string.h>

enum { DIGITS_MOST = 3 }; /* before the point and behind it: what has more may be a date or a mistake */

struct notes {
    const char *texts[PLAIN_NODES / 4]; /* behind the ", of groups with five nodes or more */
    int count;
};
struct line {
    const struct plain *plain;
    const char *text; /* of the source, which starts at `base` on the number line */
    uint32_t base;
    struct plain_room *room; /* where the tree is made, */
    struct parse *parse;     /* or the text's own; both NULL: no tree is wanted, only its end, */
    struct notes *notes;     /* and the notes behind its stretches; may be NULL */
    struct node unwanted;
    int count;            /* of nodes */
    bool odd;             /* something stands here that the grammar has to read */
    const char *end;      /* of what was read last */
    const char *at;       /* of what comes next; no blank stands here */
    const char *word_end; /* the same as `at`: no word stands there */
    int word;             /* see word_here */
};

enum { WORD_UNKNOWN = -1 };

static const char *end_of(const struct plain *plain)
{
    return plain->source->text + plain->source->length;
}

/* What comes next is looked at from `at` on. */
static void look_at(struct line *l, const char *at)
{
    l->at = past(at, BLANK);
    l->word_end = is_class(l->at, LETTER) ? past(l->at, LETTER | WITHIN) : l->at;
    l->word = WORD_UNKNOWN;
}

/* The word of the language that comes next, as a token; 0: none. Looked up once. */
static int word_here(struct line *l)
{
    if (l->word == WORD_UNKNOWN) {
        const struct word *word = word_find(&l->plain->words, l->at, (size_t)(l->word_end - l->at));
        l->word = word ? word->token : 0;
    }
    return l->word;
}

static void go_to(struct line *l, const char *end)
{
    l->end = end;
    look_at(l, end);
}

static void pass_word(struct line *l)
{
    go_to(l, l->word_end);
}

static uint32_t place_of(const struct line *l, const char *at)
{
    return l->base + (uint32_t)(at - l->text);
}

/* A node of what was read since `from`. */
static struct node *node(struct line *l, enum node_kind kind, const char *from, struct node *child)
{
    if (l->parse)
        return node_of(l->parse, kind, (struct span){ place_of(l, from), place_of(l, l->end) }, &child, 1);
    l->odd |= ++l->count > PLAIN_NODES;
    if (!l->room || l->odd) {
        l->unwanted.kind = (uint16_t)kind;
        return &l->unwanted;
    }
    struct node *node = &l->room->nodes[l->count - 1];
    *node = (struct node){ .kind = (uint16_t)kind, .at = { place_of(l, from), place_of(l, l->end) }, .child = child };
    return node;
}

static struct node *leaf(struct line *l, enum node_kind kind, const char *from)
{
    return node(l, kind, from, NULL);
}

/* A node of what `read` reads, and of what stands before it since `from`. */
static struct node *part(struct line *l, enum node_kind kind, const char *from, struct node *(*read)(struct line *l))
{
    struct node *child = read(l);
    return node(l, kind, from, child);
}

static const char *kept(const struct line *l, const char *text, const char *end)
{
    return l->room || l->parse ? intern(l->plain->names, text, (size_t)(end - text)) : NULL;
}

/* ---- words and texts ---- */

static struct node *name(struct line *l)
{
    const char *from = l->at, *end = l->word_end;
    bool ascii = end > from && *from != '_' && end[-1] != '-';
    for (const char *at = from; at < end; at++)
        ascii &= (unsigned char)*at < 0x80;
    l->odd |= !ascii || end - from > NAME_LETTERS_MOST || word_here(l);
    go_to(l, end);
    struct node *name = leaf(l, NODE_NAME, from);
    name->text = kept(l, from, end);
    return name;
}

static struct node *text(struct line *l)
{
    const char *from = l->at, *end = *from == '"' ? plain_text_end(from, end_of(l->plain)) : NULL;
    if (!end) {
        l->odd = true;
        return NULL;
    }
    go_to(l, end);
    struct node *text = leaf(l, NODE_STRING, from);
    text->text = kept(l, from + 1, end - 1);
    return text;
}

/* ---- numbers ---- */

static struct node *number(struct line *l)
{
    const char *from = l->at, *end = past(from, DIGIT);
    bool fits = end - from <= DIGITS_MOST;
    if (*end == '.') {
        const char *behind = end + 1;
        end = past(behind, DIGIT);
        fits &= end > behind && end - behind <= DIGITS_MOST;
    }
    go_to(l, end);
    struct node *number = leaf(l, NODE_NUMBER, from);
    l->odd |= !fits || !dec_parse(from, (size_t)(end - from), &number->number);
    return number;
}

static struct node *number_or_band(struct line *l)
{
    const char *from = l->at;
    struct node *low = number(l);
    if (*l->at != '-')
        return low;
    go_to(l, l->at + 1);
    low->next = number(l);
    return node(l, NODE_BAND, from, low);
}

/* NULL: none comes next. */
static const char *unit_here(const struct line *l)
{
    const char *at = l->at;
    switch (l->word_end - at) {
    case 0: return *at == '%' ? "%" : NULL;
    case 1: return *at == 's' ? "s" : *at == 'm' ? "m" : NULL;
    case 2: return at[0] == 'k' && at[1] == 'g' ? "kg" : at[0] == 'l' && at[1] == 'b' ? "lb" : NULL;
    case 3: return at[0] == 'm' && at[1] == 'i' && at[2] == 'n' ? "min" : NULL;
    default: return NULL;
    }
}

static struct node *amount(struct line *l)
{
    const char *from = l->at;
    struct node *plain = number_or_band(l);
    const char *unit = unit_here(l);
    if (!unit)
        return plain;
    go_to(l, l->at + strlen(unit));
    struct node *amount = node(l, NODE_AMOUNT, from, plain);
    amount->text = unit;
    return amount;
}

/* Where a number alone could be kilograms or per cent. */
static struct node *amount_with_unit(struct line *l)
{
    struct node *with = amount(l);
    l->odd |= with->kind != NODE_AMOUNT;
    return with;
}

static struct node *effort(struct line *l, enum node_kind kind, const char *from)
{
    const char *scale = word_here(l) == TOK_RPE ? "rpe" : "rir";
    pass_word(l);
    struct node *effort = part(l, kind, from, amount);
    effort->text = scale;
    return effort;
}

static bool effort_here(struct line *l)
{
    return word_here(l) == TOK_RPE || word_here(l) == TOK_RIR;
}

/* ---- clauses ---- */

static struct node *at_clause(struct line *l, const char *from)
{
    if (effort_here(l))
        return effort(l, NODE_AT_EFFORT, from);
    if (word_here(l) == TOK_SAME) {
        pass_word(l);
        return leaf(l, NODE_AT_SAME, from);
    }
    return part(l, NODE_AT_LOAD, from, amount_with_unit);
}

static struct node *cap(struct line *l, const char *from)
{
    if (!effort_here(l))
        return part(l, NODE_CAP, from, amount_with_unit);
    struct node *most = effort(l, NODE_EFFORT, l->at);
    return node(l, NODE_CAP, from, most);
}

static struct node *each_side(struct line *l, const char *from)
{
    l->odd |= word_here(l) != TOK_SIDE;
    pass_word(l);
    return leaf(l, NODE_EACH_SIDE, from);
}

static struct node *clause(struct line *l)
{
    const char *from = l->at;
    int word = word_here(l);
    pass_word(l);
    switch (word) {
    case TOK_AT: return at_clause(l, from);
    case TOK_CAP: return cap(l, from);
    case TOK_DROP: return part(l, NODE_DROP, from, amount_with_unit);
    case TOK_EACH: return each_side(l, from);
    case TOK_EVERY: return part(l, NODE_EVERY_TIME, from, amount);
    case TOK_NOTE: return part(l, NODE_NOTE, from, text);
    case TOK_OPTIONAL: return leaf(l, NODE_OPTIONAL, from);
    case TOK_PAUSE: return part(l, NODE_PAUSE, from, amount);
    case TOK_PROGRESSION: return part(l, NODE_PROGRESS, from, name);
    case TOK_REST: return part(l, NODE_REST, from, amount);
    case TOK_TEMPO: return part(l, NODE_TEMPO, from, text);
    default: l->odd = true; return NULL;
    }
}

/* ---- set groups ---- */

static const char *role(struct line *l)
{
    const char *role;
    switch (word_here(l)) {
    case TOK_TOP: role = "top"; break;
    case TOK_BACK_OFF: role = "back-off"; break;
    case TOK_WARM_UP: role = "warm-up"; break;
    default: return NULL;
    }
    pass_word(l);
    return role;
}

static void times(struct line *l)
{
    l->odd |= *l->at != 'x' || (is_class(l->at + 1, LETTER | WITHIN) && !is_class(l->at + 1, DIGIT));
    go_to(l, l->at + !l->odd);
}

static struct node *amrap_or_amount(struct line *l)
{
    const char *from = l->at;
    if (word_here(l) != TOK_AMRAP)
        return amount(l);
    pass_word(l);
    return leaf(l, NODE_AMRAP, from);
}

static struct node *group(struct line *l)
{
    const char *from = l->at, *as = role(l);
    struct node *first = part(l, NODE_COUNT, l->at, number_or_band), *last;
    times(l);
    if (l->odd)
        return NULL;
    first->next = last = part(l, NODE_REPS, l->at, amrap_or_amount);
    const char *note = NULL; /* the text of its last clause, if that is one */
    int notes = 0;
    while (!l->odd && l->word_end > l->at && word_here(l) != TOK_THEN) {
        note = word_here(l) == TOK_NOTE ? past(l->word_end, BLANK) + 1 : NULL;
        notes += note != NULL;
        last->next = clause(l);
        last = l->odd ? last : last->next;
    }
    if (l->notes && !l->odd && note && notes == 1)
        l->notes->texts[l->notes->count++] = note;
    struct node *group = node(l, NODE_GROUP, from, first);
    group->text = as;
    return group;
}

/* ---- the line ---- */

static struct node *lifts(struct line *l)
{
    const char *from = l->at;
    struct node *first = name(l), *last = first;
    while (!l->odd && word_here(l) == TOK_OR) {
        pass_word(l);
        last = last->next = name(l);
    }
    return node(l, NODE_LIFTS, from, first);
}

static bool is_word(const char *at, const char *word)
{
    while (*word)
        if (*at++ != *word++)
            return false;
    return !is_class(at, LETTER | WITHIN);
}

/* A NUL stands behind the text; within it the scanner says what it thinks of one. */
static bool is_ended(const char *at)
{
    return is_class(at, LINE_END) || *at == '#' || *at == ';' || *at == '}' || !*at;
}

enum behind { BEHIND_END, BEHIND_THEN, BEHIND_OTHER };

/* What stands behind a group: the end of the line; or a `then`, behind which `at` is put, here or on the next line that is written
 * on; or what the grammar has to read, such as a remark between. */
static enum behind what_is_behind(const char **at)
{
    bool remark = false;
    const char *here = past(*at, BLANK), *next = past(here, LINE_END | BLANK);
    for (; *next == '#'; next = past(next, BLANK | LINE_END)) {
        remark = true;
        while (*next && !is_class(next, LINE_END))
            next++;
    }
    if (!is_word(next, "then"))
        return is_ended(here) && *next != '{' ? BEHIND_END : BEHIND_OTHER;
    *at = next + strlen("then");
    return remark ? BEHIND_OTHER : BEHIND_THEN;
}

static struct node *entry(struct line *l)
{
    const char *from = l->at;
    struct node *first = lifts(l), *last = first;
    enum behind behind;
    do {
        if (!l->odd)
            last->next = group(l);
        if (l->odd)
            return NULL;
        last = last->next;
        const char *at = l->at;
        behind = what_is_behind(&at);
        look_at(l, at);
    } while (behind == BEHIND_THEN);
    struct node *entry = node(l, NODE_ENTRY, from, first);
    return l->odd || behind != BEHIND_END ? NULL : entry;
}

static struct line line_at(const struct plain *plain, const char *words, struct plain_room *room)
{
    struct line line = { .plain = plain, .text = plain->source->text, .base = plain->source->base, .room = room };
    look_at(&line, words);
    return line;
}

const struct node *plain_read(const struct plain *plain, uint32_t from, struct plain_room *room)
{
    struct line line = line_at(plain, plain->source->text + from, room);
    return entry(&line);
}

/* Behind the " of the text that starts with `note`; NULL: the text is not plain. Mostly it is the one that stood there before. */
static const char *note_end(struct stretch *stretch, const char *note, const char *text_end)
{
    if (stretch->note && stretch->note_length <= text_end - note && !memcmp(stretch->note, note, stretch->note_length))
        return note + stretch->note_length;
    const char *end = plain_text_end(note - 1, text_end);
    if (end)
        stretch->note = note, stretch->note_length = (uint32_t)(end - note);
    return end;
}

/* Goes from stretch to stretch; NULL: one is not known, or what stands behind the last is no end of the line. */
static const struct stretch *known_line(const struct plain *plain, const char *words, const char **end)
{
    const char *text_end = end_of(plain);
    struct stretch *stretch = NULL;
    for (*end = words; (stretch = known_find(&plain->known, stretch, *end, (size_t)(text_end - *end)));) {
        *end += stretch->length;
        if (stretch->noted)
            *end = note_end(stretch, *end, text_end);
        const char *at = *end;
        enum behind behind = at ? what_is_behind(&at) : BEHIND_OTHER;
        if (behind != BEHIND_THEN)
            return behind == BEHIND_END ? stretch : NULL;
    }
    return NULL;
}

/* The stretches of a line that was read to its end. */
static const struct stretch *stretches_of(struct arena *arena, struct plain *plain, const char *words, const struct line *line)
{
    const char *text_end = end_of(plain);
    const struct stretch *last = NULL;
    for (int i = 0; i < line->notes->count; i++) {
        const char *note = line->notes->texts[i];
        last = known_give(arena, &plain->known, last, words, (size_t)(text_end - words), (uint32_t)(note - words), true);
        words = plain_text_end(note - 1, text_end);
    }
    if (words == line->end)
        return last;
    return known_give(arena, &plain->known, last, words, (size_t)(text_end - words), (uint32_t)(line->end - words), false);
}

uint32_t plain_find(struct arena *arena, struct plain *plain, uint32_t from, const struct stretch **last)
{
    const char *words = plain->source->text + from, *end;
    if ((*last = known_line(plain, words, &end)))
        return (uint32_t)(end - plain->source->text);
    struct notes notes = { .count = 0 };
    struct line line = line_at(plain, words, NULL);
    line.notes = &notes;
    if (!entry(&line))
        return 0;
    *last = stretches_of(arena, plain, words, &line);
    return (uint32_t)(line.end - plain->source->text);
}

uint32_t plain_next(const struct plain *plain, uint32_t from)
{
    const char *text = plain->source->text, *end = past(text + from, BLANK), *at = past(end, BLANK | LINE_END);
    return at > end && is_class(at, LETTER) ? (uint32_t)(at - text) : 0;
}

uint32_t plain_next_day(const struct plain *plain, uint32_t from)
{
    uint32_t next = plain_next(plain, from);
    return next && is_word(plain->source->text + next, "day") ? next : 0;
}

/* ---- a day of nothing else ---- */

static struct node *weekdays(struct line *l)
{
    pass_word(l);
    const char *from = l->at;
    struct node *first = name(l), *last = first;
    while (*l->at == ',') {
        go_to(l, l->at + 1);
        last = last->next = name(l);
    }
    return node(l, NODE_WEEKDAYS, from, first);
}

static struct node *day_header(struct line *l, const char *from)
{
    pass_word(l);
    struct node *label = is_class(l->at, DIGIT) ? number(l) : name(l);
    if (word_here(l) == TOK_ON)
        label->next = weekdays(l);
    l->odd |= *l->at != '{';
    go_to(l, l->at + !l->odd);
    return node(l, NODE_DAY, from, label);
}

static struct node *words_of_day(struct line *l, enum node_kind kind, const char *from)
{
    pass_word(l);
    struct node *words = part(l, kind, from, text);
    l->odd |= !is_ended(l->at);
    return words;
}

static struct node *statement_of_day(struct line *l)
{
    const char *from = l->at;
    if (is_word(from, "title"))
        return words_of_day(l, NODE_TITLE, from);
    if (is_word(from, "note"))
        return words_of_day(l, NODE_NOTE, from);
    const struct stretch *last = NULL;
    uint32_t end = is_class(from, LETTER) ? plain_find(l->parse->arena, l->parse->plain, (uint32_t)(from - l->text), &last) : 0;
    l->odd |= !end;
    go_to(l, l->text + end);
    struct node *entry = node_flag(leaf(l, NODE_ENTRY, from), FLAG_PLAIN);
    entry->stretch = last;
    return entry;
}

static void pass_ends(struct line *l)
{
    const char *at = past(l->at, BLANK | LINE_END);
    while (*at == ';')
        at = past(at + 1, BLANK | LINE_END);
    look_at(l, at);
}

struct node *plain_day(struct parse *p, uint32_t from)
{
    struct line line = line_at(p->plain, p->source->text + from, NULL);
    line.parse = p;
    struct node *day = day_header(&line, line.at);
    struct list body = { 0 };
    for (pass_ends(&line); !line.odd && *line.at != '}'; pass_ends(&line))
        body = list_join(body, list_of(statement_of_day(&line)));
    if (line.odd)
        return NULL;
    body.braces = true;
    go_to(&line, line.at + 1);
    return node_body(p, node_at(day, (struct span){ day->at.start, place_of(&line, line.end) }), body);
}
