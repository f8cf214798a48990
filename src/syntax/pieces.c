/* Text to raw tokens: where a piece of text ends. What it is, scan.c, figures.c, texts.c and foreign.c say, and may
 * give the end of a piece back. Offsets are counted here. */
#include "syntax/classes.h"
#include "syntax/reader.h"

#include "setwright.tab.h"

const uint8_t byte_classes[256] = {
    [0x00 ... 0x08] = CONTROL | UNPLAIN, ['\t'] = BLANK, ['\n'] = LINE_END | UNPLAIN, ['\v'] = BLANK, ['\f'] = BLANK,
    ['\r'] = LINE_END | UNPLAIN, [0x0e ... 0x1f] = CONTROL | UNPLAIN, [' '] = BLANK, ['"'] = UNPLAIN, ['%'] = SIGN,
    ['('] = SIGN, [')'] = SIGN, ['+'] = SIGN, [','] = SIGN, ['-'] = SIGN | WITHIN, ['0' ... '9'] = DIGIT | WITHIN,
    [';'] = SIGN, ['='] = SIGN, ['A' ... 'Z'] = LETTER, ['\\'] = UNPLAIN, ['_'] = LETTER, ['a' ... 'z'] = LETTER,
    ['{'] = SIGN, ['|'] = SIGN, ['}'] = SIGN, [0x7f] = CONTROL | UNPLAIN, [0x80 ... 0xff] = LETTER | UNPLAIN,
};

/* ---- what reaches to the end of its line, or to a quote ---- */

static const char *line_end(const char *at, const char *end)
{
    while (at < end && !is_class(at, LINE_END))
        at++;
    return at;
}

/* From the " on; a \ takes the next character with it. */
static const char *text_end(const char *at, const char *end)
{
    for (at++; at < end && !is_class(at, LINE_END); at++) {
        if (*at == '"')
            return at + 1;
        if (*at == '\\' && at + 1 < end && !is_class(at + 1, LINE_END))
            at++;
    }
    return at;
}

/* An opening quote out of a word processor. */
static bool is_curly(const char *at)
{
    const unsigned char *byte = (const unsigned char *)at;
    if (byte[0] == 0xc2)
        return byte[1] == 0xab || byte[1] == 0xbb;
    return byte[0] == 0xe2 && byte[1] == 0x80 &&
           ((byte[2] >= 0x98 && byte[2] <= 0x9f) || byte[2] == 0xb9 || byte[2] == 0xba);
}

/* Whether the next eight bytes are all printable ASCII, and none of them a " or a \: else some high bit comes out. */
static bool eight_plain(const char *at)
{
    const uint64_t each = UINT64_MAX / 255; /* a 1 in each byte */
    uint64_t eight;
    memcpy(&eight, at, sizeof eight);
    uint64_t controls = (eight - each * ' ') | (eight + each), quotes = (eight ^ each * '"') - each, slashes = (eight ^ each * '\\') - each;
    return !((eight | controls | quotes | slashes) & each << 7);
}

/* Most texts are plain: nothing stands in them that has to be undone or refused. */
const char *plain_text_end(const char *at, const char *end)
{
    at++;
    while (end - at >= 8 && eight_plain(at))
        at += 8;
    while (!is_class(at, UNPLAIN))
        at++;
    return *at == '"' ? at + 1 : NULL;
}

/* ---- figures ---- */

static const char *number_end(const char *at)
{
    at = past(at, DIGIT);
    return *at == '.' && is_class(at + 1, DIGIT) ? past(at + 1, DIGIT) : at;
}

/* Numbers with commas and nothing else between them; within such a run its end is known. */
static const char *run_end(const struct parse *p, const char *at)
{
    at = number_end(at);
    while (p->from >= p->run_to && *at == ',' && is_class(at + 1, DIGIT))
        at = number_end(at + 1);
    return at;
}

/* 04.01.2027, and what else has two points or more; 4/1/2027. Without such signs the end of the first digits. */
static const char *parted_end(const char *at, char sign, int most)
{
    const char *first = past(at, DIGIT);
    int signs = 0;
    for (at = first; signs < most && *at == sign && is_class(at + 1, DIGIT); signs++)
        at = past(at + 1, DIGIT);
    return signs < 2 ? first : at;
}

/* 2027-1-4: the start itself where it is none. */
static const char *iso_end(const char *start)
{
    const char *at = past(start, DIGIT);
    if (at - start != 4)
        return start;
    for (int part = 0; part < 2; part++) {
        if (*at != '-' || !is_class(at + 1, DIGIT))
            return start;
        at += is_class(at + 2, DIGIT) ? 3 : 2;
    }
    return at;
}

static const char *date_end(const char *at)
{
    const char *points = parted_end(at, '.', INT32_MAX), *slashes = parted_end(at, '/', 2), *iso = iso_end(at);
    const char *longest = points > slashes ? points : slashes;
    return iso > longest ? iso : longest;
}

/* ---- a piece ---- */

/* Lets `scan` say what the piece is; what it leaves of it is read again. */
static int take(struct parse *p, int (*scan)(struct parse *p, const char *text, int *take), const char *text,
                const char *end)
{
    int length = (int)(end - text);
    p->to = p->from + (uint32_t)length;
    int token = scan(p, text, &length);
    if (length < end - text)
        arena_search(p->arena, end - text - length);
    p->to = p->from + (uint32_t)length;
    return token;
}

static int take_letters(struct parse *p, const char *text, const char *end)
{
    const char *word = past(text, LETTER | WITHIN);
    if (is_curly(text) && line_end(text, end) > word)
        return take(p, scan_quoted, text, line_end(text, end));
    return take(p, scan_word, text, word);
}

static int take_figures(struct parse *p, const char *text)
{
    const char *run = run_end(p, text), *date = date_end(text);
    return date > run ? take(p, scan_date, text, date) : take(p, scan_number, text, run);
}

static int take_controls(struct parse *p, const char *text, const char *end)
{
    const char *at = text;
    while (at < end && is_class(at, CONTROL))
        at++;
    return take(p, scan_control, text, at);
}

static int take_newline(struct parse *p, const char *text)
{
    p->to = p->from + (*text == '\r' && text[1] == '\n' ? 2 : 1);
    return RAW_NEWLINE;
}

static int take_comment(struct parse *p, const char *text, const char *end)
{
    p->to = p->from + (uint32_t)(line_end(text, end) - text);
    scan_comment(p);
    return 0;
}

/* What starts with a sign of its own. */
static int take_other(struct parse *p, const char *text, const char *end)
{
    const char *plain;
    switch (*text) {
    case '"':
        if ((plain = plain_text_end(text, end)))
            return take(p, scan_plain_string, text, plain);
        return take(p, scan_string, text, text_end(text, end));
    case '\'':
        return take(p, scan_quoted, text, line_end(text, end));
    case '#':
        return take_comment(p, text, end);
    case '$':
        if (is_class(text + 1, LETTER))
            return take(p, scan_var, text, past(text + 1, LETTER | WITHIN));
        break;
    case '.':
        if (is_class(text + 1, DIGIT))
            return take(p, scan_number, text, past(text + 1, DIGIT));
        break;
    }
    return take(p, scan_stray, text, text + 1);
}

static int take_piece(struct parse *p, const char *text, const char *end)
{
    switch (byte_classes[(unsigned char)*text] & ~UNPLAIN) {
    case LETTER:
        return take_letters(p, text, end);
    case DIGIT | WITHIN:
        return take_figures(p, text);
    case SIGN:
    case SIGN | WITHIN:
        return take(p, scan_symbol, text, text + 1);
    case LINE_END:
        return take_newline(p, text);
    case CONTROL:
        return take_controls(p, text, end);
    default:
        return take_other(p, text, end);
    }
}

int scanner_next(struct parse *p)
{
    const char *start = p->source->text, *end = start + p->source->length;
    int token = 0;
    p->value = NULL;
    while (!token) {
        const char *text = past(start + p->to, BLANK);
        p->from = p->to = (uint32_t)(text - start);
        if (text == end)
            return 0;
        token = take_piece(p, text, end);
    }
    return token;
}
