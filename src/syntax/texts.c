/* Texts in quotes: straight ones, those out of a word processor, and those that never end. */
#include "base/hidden.h"
#include "syntax/reader.h"

#include "setwright.tab.h"

#include <string.h>

/* The text between the quotes, escapes undone; tells of the first escape and control character that mean nothing. */
static int text_token(struct parse *p, const char *text, int from, int to)
{
    char *undone = arena_alloc(p->arena, (size_t)(to - from) + 1), *end = undone;
    bool told = false;
    hidden_say(p->findings, text + from, (uint32_t)(to - from), p->source->base + p->from + (uint32_t)from, "text");
    for (int i = from; i < to; i++) {
        unsigned char byte = (unsigned char)text[i];
        if ((byte < ' ' && byte != '\t') || byte == 0x7f) {
            if (!told)
                diag_help(p->findings,
                          found(p, KIND_TEXT, span_of(p, p->from + (uint32_t)i, p->from + (uint32_t)i + 1),
                                   "the control character \\x%02x stands in this text", byte),
                          "take it away; it cannot be seen in most editors");
            told = true;
            continue;
        }
        if (byte != '\\' || i + 1 == to) {
            *end++ = text[i];
            continue;
        }
        char next = text[++i];
        if (next != 'n' && next != '"' && next != '\\' && !told) {
            told = true;
            diag_help(p->findings,
                      found(p, KIND_TEXT, span_of(p, p->from + (uint32_t)i - 1, p->from + (uint32_t)i),
                               "a \\ in a text stands before \", \\ or n alone"),
                      "write \\\\ for a \\ itself");
        }
        *end++ = (char)(next == 'n' ? '\n' : next);
    }
    p->value = node_text(token_node(p, NODE_STRING, to), intern(p->names, undone, (size_t)(end - undone)));
    return TOK_STRING;
}

int open_text_end(const char *text, int length)
{
    static const char after[] = " \t};";
    int end = length;
    while (end > 1 && memchr(after, text[end - 1], sizeof after - 1))
        end--;
    return end == length && end > 1 && text[end - 1] == '{' ? end - 1 : end;
}

/* The next closing quote out of a word processor; 0: none. */
static int curly_at(const char *text, int from, int length, int *width)
{
    for (int i = from; i + 1 < length; i++) {
        const unsigned char *at = (const unsigned char *)text + i;
        if (at[0] == 0xc2 && (at[1] == 0xab || at[1] == 0xbb))
            return *width = 2, i;
        if (i + 2 < length && at[0] == 0xe2 && at[1] == 0x80
            && ((at[2] >= 0x98 && at[2] <= 0x9f) || at[2] == 0xb9 || at[2] == 0xba))
            return *width = 3, i;
    }
    return 0;
}

int scan_plain_string(struct parse *p, const char *text, int *take)
{
    p->value = node_text(token_node(p, NODE_STRING, *take), intern(p->names, text + 1, (size_t)*take - 2));
    return TOK_STRING;
}

int scan_string(struct parse *p, const char *text, int *take)
{
    int length = *take, width = 0;
    bool escaped = false;
    for (int i = length - 2; i > 0 && text[i] == '\\'; i--)
        escaped = !escaped;
    if (length > 1 && text[length - 1] == '"' && !escaped)
        return text_token(p, text, 1, length - 1);
    int curly = curly_at(text, 1, length, &width);
    if (curly) {
        diag_help(p->findings,
                  found(p, KIND_TEXT, span_of(p, p->from + (uint32_t)curly, p->from + (uint32_t)(curly + width)),
                           "this text ends in the curly quote %s", token_text(p, text + curly, width)),
                  "type a straight quote: \"");
        *take = curly + width;
        return text_token(p, text, 1, curly);
    }
    diag_help(p->findings, found(p, KIND_TEXT, token_span(p, 1), "this text has no \" at its end"),
              "put a \" where it ends, on the same line");
    *take = open_text_end(text, length);
    return text_token(p, text, 1, *take);
}

int scan_quoted(struct parse *p, const char *text, int *take)
{
    bool single = *text == '\'';
    int width = 0, open = single ? 1 : (unsigned char)*text == 0xc2 ? 2 : 3;
    int close = 0;
    const char *straight = memchr(text + open, single ? '\'' : '"', (size_t)(*take - open));
    if (!single)
        close = curly_at(text, open, *take, &width);
    if (straight && (!close || straight - text < close)) {
        close = (int)(straight - text);
        width = 1;
    }
    if (!close)
        close = open_text_end(text, *take), width = 0;
    const char *inside = token_text(p, text + open, close - open);
    struct finding *finding = single
        ? found(p, KIND_TEXT, token_span(p, open), "a text stands in double quotes, not in single ones")
        : found(p, KIND_TEXT, token_span(p, open), "this text starts with the quote %s out of a word processor",
                   token_text(p, text, open));
    diag_help(p->findings, finding, "type straight double quotes: \"%s\"", inside);
    *take = close + width;
    return text_token(p, text, open, close);
}
