#include "syntax/parse.h"

#include "syntax/reader.h"

/* The byte behind a text that starts with the " at `from`. */
static uint32_t text_end(const char *text, uint32_t from, uint32_t length)
{
    uint32_t at = from + 1;
    while (at < length && text[at] != '"' && text[at] != '\n')
        at += text[at] == '\\' && at + 1 < length && text[at + 1] != '\n' ? 2 : 1;
    if (at < length && text[at] == '"')
        return at + 1;
    return from + (uint32_t)open_text_end(text + from, (int)((at < length ? at : length) - from));
}

/* How many more { than } the text holds, texts and remarks left out. */
static int surplus_of(const char *text, uint32_t length)
{
    int surplus = 0;
    for (uint32_t i = 0; i < length; i++) {
        switch (text[i]) {
        case '{':
            surplus++;
            break;
        case '}':
            surplus--;
            break;
        case '#':
            while (i + 1 < length && text[i + 1] != '\n')
                i++;
            break;
        case '"':
            i = text_end(text, i, length) - 1;
            break;
        default:
            break;
        }
    }
    return surplus;
}

/* A text in UTF-16 has a mark that is no UTF-8, or a NUL in nearly every second byte. */
static bool is_utf16(const struct source *source)
{
    uint32_t seen = source->length < 64 ? source->length : 64, nuls = 0;
    for (uint32_t i = 0; i < seen; i++)
        nuls += source->text[i] == '\0';
    return seen >= 8 && nuls * 3 > seen;
}

static struct parse *parse_new(struct arena *arena, struct interner *interner, struct source *source, struct findings *findings)
{
    struct parse *p = NEW(arena, struct parse);
    *p = (struct parse){ .arena = arena, .names = interner, .source = source, .findings = findings, .at_start = true };
    p->bodies[0].header = NODE_FILE;
    p->plain = NEW(arena, struct plain);
    *p->plain = plain_of(source, interner);
    places_index(p);
    return p;
}

static bool parse_quickly(struct parse *p, bool by_hand)
{
    p->quick = true;
    p->by_hand = by_hand;
    foreign_encoding(p);
    sw_quick_parse(p);
    return !p->has_found && findings_total(p->findings) == 0;
}

static void parse_carefully(struct parse *p)
{
    p->surplus = surplus_of(p->source->text, p->source->length);
    foreign_encoding(p);
    sw_parse(p);
}

/* A text without a mistake is most of them, and needs less than half of the care. Where the quick way has something to
 * say, it is thrown away, and the careful way says it. */
static struct parse *parse_source(struct arena *arena, struct interner *interner, struct source *source, struct findings *findings, bool by_hand)
{
    struct parse *p = parse_new(arena, interner, source, findings_new(arena, NULL));
    if (!is_utf16(source) && parse_quickly(p, by_hand))
        return p;
    p = parse_new(arena, interner, source, findings);
    if (is_utf16(source))
        diag_help(findings, found(p, KIND_TEXT, span_of(p, 0, 1), "this file is saved as UTF-16, not as UTF-8"),
                  "save it as UTF-8 in your editor");
    else
        parse_carefully(p);
    return p;
}

static struct tree *parse(struct arena *arena, struct interner *interner, struct source *source, struct findings *findings, bool by_hand)
{
    struct parse *p = parse_source(arena, interner, source, findings, by_hand);
    struct tree *tree = NEW(arena, struct tree);
    tree->source = source;
    tree->plain = p->plain;
    tree->root = p->root ? p->root : node_of(p, NODE_FILE, span_of(p, 0, source->length), NULL, 0);
    tree->comments = p->comments.at;
    tree->comment_count = p->comments.count;
    return tree;
}

struct tree *parse_text(struct arena *arena, struct interner *interner, struct source *source, struct findings *findings)
{
    return parse(arena, interner, source, findings, true);
}

struct tree *parse_text_by_grammar(struct arena *arena, struct interner *interner, struct source *source, struct findings *findings)
{
    return parse(arena, interner, source, findings, false);
}
