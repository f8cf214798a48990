/* Letters of any script, and the characters out of phones and word processors that are none: each named, with what to type. */
#include "base/name.h"
#include "syntax/reader.h"

#include "setwright.tab.h"

#include <string.h>
#include <utf8proc.h>

enum shape { LETTER, INNER, BLANK, HIDDEN, DASH, QUOTE, OTHER, BROKEN };

struct letter {
    enum shape shape;
    int32_t point;
    int width;
};

static enum shape shape_of(int32_t point)
{
    if (point < 0x80)
        return point == '-' || (point >= '0' && point <= '9') ? INNER : LETTER;
    if (point == 0x2212)
        return DASH;
    if (point == 0x00ab || point == 0x00bb)
        return QUOTE;
    switch (utf8proc_category(point)) {
    case UTF8PROC_CATEGORY_LU: case UTF8PROC_CATEGORY_LL: case UTF8PROC_CATEGORY_LT:
    case UTF8PROC_CATEGORY_LM: case UTF8PROC_CATEGORY_LO:
        return LETTER;
    case UTF8PROC_CATEGORY_MN: case UTF8PROC_CATEGORY_MC: case UTF8PROC_CATEGORY_ME:
        return INNER;
    case UTF8PROC_CATEGORY_ZS: case UTF8PROC_CATEGORY_ZL: case UTF8PROC_CATEGORY_ZP:
        return BLANK;
    case UTF8PROC_CATEGORY_CF:
        return HIDDEN;
    case UTF8PROC_CATEGORY_PD:
        return DASH;
    case UTF8PROC_CATEGORY_PI: case UTF8PROC_CATEGORY_PF:
        return QUOTE;
    default:
        return OTHER;
    }
}

/* A byte that is no UTF-8 is taken for a letter: the whole file's encoding is reported once, elsewhere. */
static struct letter letter_at(const char *text, int length)
{
    struct letter letter = { BROKEN, 0xfffd, 1 };
    utf8proc_int32_t point;
    utf8proc_ssize_t width = utf8proc_iterate((const utf8proc_uint8_t *)text, length, &point);
    if (width > 0)
        letter = (struct letter){ shape_of(point), point, (int)width };
    return letter;
}

static const struct foreign {
    int32_t from, to;
    const char *name; /* NULL: the character itself is shown */
    const char *means;
    int token;
} foreigns[] = {
    { 0x00ad, 0x00ad, "a hidden soft hyphen", NULL, 0 },
    { 0x00bc, 0x00bc, NULL, "0.25", TOK_NUMBER },
    { 0x00bd, 0x00bd, NULL, "0.5", TOK_NUMBER },
    { 0x00be, 0x00be, NULL, "0.75", TOK_NUMBER },
    { 0x061c, 0x061c, "a hidden right-to-left mark", NULL, 0 },
    { 0x2010, 0x2011, NULL, "-", TOK_DASH },
    { 0x2012, 0x2015, NULL, "-", TOK_DASH },
    { 0x2212, 0x2212, NULL, "-", TOK_DASH },
    { 0x2026, 0x2026, NULL, NULL, TOK_SW_error },
    { 0x200b, 0x200d, "a hidden zero-width character", NULL, 0 },
    { 0x200e, 0x200f, "a hidden right-to-left mark", NULL, 0 },
    { 0x202a, 0x202e, "a hidden right-to-left mark", NULL, 0 },
    { 0x2060, 0x2064, "a hidden zero-width character", NULL, 0 },
    { 0x2066, 0x2069, "a hidden right-to-left mark", NULL, 0 },
    { 0x2715, 0x2716, NULL, "x", TOK_TIMES },
    { 0xfeff, 0xfeff, "a hidden byte-order mark", NULL, 0 },
    { 0xff05, 0xff05, NULL, "%", TOK_PERCENT },
    { 0xff08, 0xff08, NULL, "(", TOK_LEFT },
    { 0xff09, 0xff09, NULL, ")", TOK_RIGHT },
    { 0xff0b, 0xff0b, NULL, "+", TOK_PLUS_SIGN },
    { 0xff0c, 0xff0c, NULL, ",", TOK_COMMA },
    { 0xff0d, 0xff0d, NULL, "-", TOK_DASH },
    { 0xff1b, 0xff1b, NULL, ";", RAW_SEMICOLON },
    { 0xff1d, 0xff1d, NULL, "=", TOK_EQUALS },
    { 0xff5b, 0xff5b, NULL, "{", TOK_OPEN },
    { 0xff5c, 0xff5c, NULL, "|", TOK_BAR_SIGN },
    { 0xff5d, 0xff5d, NULL, "}", TOK_CLOSE },
};

static const struct foreign *foreign_find(int32_t point)
{
    for (size_t i = 0; i < sizeof foreigns / sizeof *foreigns; i++)
        if (point >= foreigns[i].from && point <= foreigns[i].to)
            return &foreigns[i];
    return NULL;
}

static const char *shown(struct parse *p, const char *text, struct letter letter)
{
    const struct foreign *row = foreign_find(letter.point);
    if (row && row->name)
        return arena_format(p->arena, "%s (U+%04X)", row->name, (unsigned)letter.point);
    if (letter.shape == HIDDEN || letter.point < 0xa0)
        return arena_format(p->arena, "a hidden character (U+%04X)", (unsigned)letter.point);
    return arena_format(p->arena, "the character %.*s (U+%04X)", letter.width, text, (unsigned)letter.point);
}

static void tell(struct parse *p, int from, int to, const char *says, const char *help)
{
    struct finding *finding =
        found(p, KIND_TEXT, span_of(p, p->from + (uint32_t)from, p->from + (uint32_t)to), "%s", says);
    diag_help(p->findings, finding, "%s", help);
}

/* Digits of full width, as some keyboards write them. */
static int wide_digits(struct parse *p, const char *text, int *take)
{
    char digits[16];
    int count = 0, at = 0;
    while (at < *take && count < 9) {
        struct letter letter = letter_at(text + at, *take - at);
        if (letter.point < 0xff10 || letter.point > 0xff19)
            break;
        digits[count++] = (char)('0' + letter.point - 0xff10);
        at += letter.width;
    }
    digits[count] = '\0';
    *take = at;
    tell(p, 0, at, arena_format(p->arena, "%.*s is written in wide digits", at, text),
         arena_format(p->arena, "type plain digits: %s", digits));
    p->value = node_of(p, NODE_NUMBER, span_of(p, p->from, p->from + (uint32_t)at), NULL, 0);
    dec_parse(digits, (size_t)count, &p->value->number);
    return TOK_NUMBER;
}

static int half(struct parse *p, const char *text, struct letter letter, const struct foreign *row)
{
    bool glued = p->last.kind == TOK_NUMBER && p->last.at.end == p->source->base + p->from;
    const char *whole = glued ? text_of(p, p->last.at) : "";
    tell(p, 0, letter.width, arena_format(p->arena, "the fraction %.*s cannot be read", letter.width, text),
         arena_format(p->arena, "write it with a point: %s%s", whole, row->means + (glued ? 1 : 0)));
    if (glued)
        return 0;
    p->value = node_of(p, NODE_NUMBER, span_of(p, p->from, p->to), NULL, 0);
    dec_parse(row->means, strlen(row->means), &p->value->number);
    return TOK_NUMBER;
}

/* The run of like characters at the start; returns its length. */
static int run_of(const char *text, int length, enum shape shape)
{
    int at = 0;
    while (at < length) {
        struct letter letter = letter_at(text + at, length - at);
        if (letter.shape != shape || (unsigned char)text[at] < 0x80 || letter.point == 0xd7)
            break;
        at += letter.width;
    }
    return at;
}

static int foreign_sign(struct parse *p, const char *text, int *take, struct letter letter)
{
    const struct foreign *row = foreign_find(letter.point);
    if (row && row->token == TOK_NUMBER) {
        *take = letter.width;
        return half(p, text, letter, row);
    }
    if (row && row->means) {
        *take = letter.width;
        tell(p, 0, *take, arena_format(p->arena, "%s is not the plain %s", shown(p, text, letter), row->means),
             arena_format(p->arena, "type %s", row->means));
        return row->token;
    }
    *take = run_of(text, *take, letter.shape);
    if (*take < letter.width)
        *take = letter.width;
    tell(p, 0, *take, arena_format(p->arena, "%s means nothing here", shown(p, text, letter)),
         letter.shape == HIDDEN ? "delete it: it cannot be seen" : "take it away; if it is part of a text, put the text in quotes");
    return letter.shape == HIDDEN ? 0 : TOK_SW_error;
}

/* TOK_NAME: it starts with a letter after all. */
int scan_foreign(struct parse *p, const char *text, int *take)
{
    struct letter letter = letter_at(text, *take);
    if (letter.shape == BROKEN)
        return TOK_NAME;
    if (letter.point == 0xd7) {
        *take = letter.width;
        return TOK_TIMES;
    }
    if (letter.point == 0x0445 && *take == letter.width && p->last.kind == TOK_NUMBER) {
        tell(p, 0, *take, "this х is a Cyrillic letter, not an x", "type a plain x, such as 3 x 5");
        return TOK_TIMES;
    }
    if (letter.point >= 0xff10 && letter.point <= 0xff19)
        return wide_digits(p, text, take);
    if (letter.shape == LETTER)
        return TOK_NAME;
    if (letter.shape == BLANK) {
        *take = run_of(text, *take, BLANK);
        return 0;
    }
    return foreign_sign(p, text, take, letter);
}

/* A character within a name: kept, mended with a remark, dropped with a remark, or the name's end. */
static bool name_goes_on(struct parse *p, const char *text, int at, int length, char **to, bool *told)
{
    struct letter letter = letter_at(text + at, length - at);
    struct letter next = letter_at(text + at + letter.width, length - at - letter.width);
    bool within = at > 0 && at + letter.width < length && (next.shape == LETTER || next.shape == INNER);
    const char *help = NULL;
    switch (letter.shape) {
    case LETTER:
    case INNER:
        memcpy(*to, text + at, (size_t)letter.width);
        *to += letter.width;
        return true;
    case BROKEN:
        *to = stpcpy(*to, "\xef\xbf\xbd");
        return true;
    case HIDDEN:
        help = "delete it: it cannot be seen";
        break;
    case DASH:
        if (!within)
            return false;
        *(*to)++ = '-';
        help = "type a plain -";
        break;
    case QUOTE:
        if (!within)
            return false;
        help = "a name is made of letters, digits, - and _";
        break;
    default:
        return false;
    }
    if (!*told)
        tell(p, at, at + letter.width, arena_format(p->arena, "%s stands in this name", shown(p, text + at, letter)), help);
    *told = true;
    return true;
}

/* Without a foreign letter or a mistake a name is what stands in the text. */
static bool is_plain_ascii(const char *text, int length)
{
    for (int i = 0; i < length; i++)
        if ((unsigned char)text[i] >= 0x80)
            return false;
    return *text != '_' && text[length - 1] != '-';
}

struct node *name_node(struct parse *p, enum node_kind kind, const char *text, int *take)
{
    if (is_plain_ascii(text, *take))
        return node_text(token_node(p, kind, *take), intern(p->names, text, (size_t)*take));
    char *name = arena_alloc(p->arena, 3 * (size_t)*take + 1), *to = name;
    bool told = false;
    int at = 0, length = *take;
    while (at < *take && name_goes_on(p, text, at, *take, &to, &told))
        at += letter_at(text + at, *take - at).width;
    *take = at;
    if (*text == '_' && !told)
        tell(p, 0, at, "a name starts with a letter, not with _", at > 1 ? arena_format(p->arena, "write %.*s", length - 1, text + 1) : "write a name");
    else if (text[at - 1] == '-' && !told)
        tell(p, 0, at, arena_format(p->arena, "the name %.*s ends in -", at, text), "a name ends in a letter or a digit");
    struct node *node = node_of(p, kind, span_of(p, p->from, p->from + (uint32_t)at), NULL, 0);
    return node_text(node, name_composed(p->arena, p->names, name, (size_t)(to - name)));
}

/* The byte from `at` on that is no ASCII, or `length`: many bytes at a time where they are. */
static uint32_t past_ascii(const char *text, uint32_t at, uint32_t length)
{
    for (uint64_t eights[4]; length - at >= sizeof eights; at += sizeof eights) {
        memcpy(eights, text + at, sizeof eights);
        if ((eights[0] | eights[1] | eights[2] | eights[3]) & UINT64_C(0x8080808080808080))
            break;
    }
    while (at < length && (unsigned char)text[at] < 0x80)
        at++;
    return at;
}

/* The file is saved in another encoding: one mistake, however many letters it hits. */
void foreign_encoding(struct parse *p)
{
    const char *text = p->source->text;
    uint32_t length = p->source->length, first = 0, first_width = 0, places = 0;
    for (uint32_t at = past_ascii(text, 0, length); at < length; at = past_ascii(text, at, length)) {
        utf8proc_int32_t point;
        utf8proc_ssize_t width = utf8proc_iterate((const utf8proc_uint8_t *)text + at, (utf8proc_ssize_t)(length - at), &point);
        if (width > 0) {
            at += (uint32_t)width;
            continue;
        }
        uint32_t from = at;
        while (at < length && (unsigned char)text[at] >= 0x80
               && utf8proc_iterate((const utf8proc_uint8_t *)text + at, (utf8proc_ssize_t)(length - at), &point) < 1)
            at++;
        if (!places++) {
            first = from;
            first_width = at - from;
        }
    }
    if (!places)
        return;
    const char *more = places == 1 ? "" : arena_format(p->arena, ", nor are %u more places in this file", (unsigned)places - 1);
    struct finding *finding = found(p, KIND_TEXT, span_of(p, first, first + first_width),
                                       "the byte \\x%02x is no UTF-8%s", (unsigned char)text[first], more);
    diag_help(p->findings, finding, "save the file as UTF-8 in your editor");
}
