/* What the scanner, the grammar and the parser's helpers share: the state of one call of parse_text. Private to syntax/.
 *
 * The way of a word: pieces.c (where it ends) -> scan.c, figures.c, texts.c, foreign.c (what it is) -> reader.c (statement ends, the tokens that depend on
 * the body) -> grammar (grammar/setwright.y) -> build.c (nodes), place.c (what may stand where),
 * complain.c and mistakes.c (messages).
 * Offsets named from/to count from the start of the source; spans are on the number line of base/span.h. */
#ifndef SYNTAX_READER_H
#define SYNTAX_READER_H

#include "base/diag.h"
#include "base/vec.h"
#include "syntax/parse.h"
#include "syntax/plain.h"
#include "syntax/tree.h"
#include "syntax/words.h"

struct list {
    struct node *first, *last;
    bool braces; /* a body: { } was written */
};

struct token {
    int kind;       /* TOK_…; RAW_NEWLINE between scanner and reader */
    struct span at;
    struct node *node; /* of names, numbers, texts, dates; else NULL */
};

enum { RAW_NEWLINE = -1, RAW_SEMICOLON = -2 };

struct open_body {
    struct span at;        /* of the { */
    enum node_kind header; /* what kind of statement opened it; NODE_ERROR: not known */
    bool astray;           /* it opens nothing: the parser never sees it, nor its } */
};

enum { SENT_KEPT = 4 };

struct parse {
    struct arena *arena;
    struct interner *names;
    struct source *source;
    struct findings *findings;
    struct plain *plain; /* the words of the language, and lines that are read by hand */
    int homes[NODE_KIND_COUNT]; /* the bodies a statement may stand in, as place.c numbers them */
    bool quick; /* for a text without a mistake; the first finding ends it */
    bool by_hand; /* so are plain lines */
    bool has_found; /* found() had something to say */
    struct node *root;
    struct node *spare; /* nodes that wait to be used */
    int spare_count;
    VEC(struct comment) comments;

    /* the scanner */
    uint32_t from, to;   /* the text of the token at hand */
    uint32_t run_to;     /* within 70,75,80: where the run of numbers ends */
    struct node *value;  /* of the token at hand */
    struct token last;   /* the scanner's last token: units and x depend on it */
    bool whole_numbers;  /* here 5,4 can only be a list */

    /* the line discipline */
    struct token ahead;
    bool has_ahead;
    bool at_start;      /* the next token starts a statement */
    bool after_missing; /* a } was put in; its end is still to come */
    struct token sent[SENT_KEPT]; /* the last tokens the parser got, in turn: see sent_last */
    unsigned sent_count;
    struct token first;   /* the first token of the statement at hand */
    int words;            /* tokens of the statement so far */
    int parens;
    struct open_body bodies[PARSE_DEPTH_MOST + 1]; /* [0]: the file */
    int depth;
    int surplus;   /* { without } in the whole text; below 0: } without { */
    bool astray;   /* a } closed nothing: what stands after it may be in the wrong body through no fault of its own */

    uint32_t complained; /* start of the last syntax finding */
    uint32_t remarked;   /* start of the last other finding */
    bool broken;         /* the statement at hand has a syntax error: the parser passes over its rest */
};

/* ---- scan.c, figures.c, texts.c: called by the scanner with the text at hand; *take may be lowered (the rest is read again).
 * 0: nothing, go on ---- */
struct span token_span(const struct parse *p, int length); /* the first bytes of the text at hand */
struct node *token_node(struct parse *p, enum node_kind kind, int length);
const char *token_text(struct parse *p, const char *text, int length);
int scan_word(struct parse *p, const char *text, int *take);
int scan_number(struct parse *p, const char *text, int *take);
int scan_date(struct parse *p, const char *text, int *take);
int scan_var(struct parse *p, const char *text, int *take);
int scan_string(struct parse *p, const char *text, int *take);
int scan_plain_string(struct parse *p, const char *text, int *take); /* nothing in it to undo or refuse */
int scan_quoted(struct parse *p, const char *text, int *take); /* in curly or single quotes: a remark, then as meant */
int scan_symbol(struct parse *p, const char *text, int *take);
int scan_stray(struct parse *p, const char *text, int *take);
int scan_control(struct parse *p, const char *text, int *take);
/* Where an open text is taken to end: before the } or the { at the end of its line. */
int open_text_end(const char *text, int length);
void scan_comment(struct parse *p);

/* ---- pieces.c ---- */
int scanner_next(struct parse *p); /* the next token of the text; 0 at its end */

/* ---- setwright.y; the quick one has no look-ahead correction, which only what is expected in place of an error needs ---- */
int sw_parse(struct parse *p);
int sw_quick_parse(struct parse *p);
static inline bool parse_is_lost(const struct parse *p)
{
    return p->quick && p->has_found;
}

/* ---- foreign.c: characters that are no letters; *take as above ---- */
int scan_foreign(struct parse *p, const char *text, int *take);
struct node *name_node(struct parse *p, enum node_kind kind, const char *text, int *take);
void foreign_encoding(struct parse *p); /* bytes that are no UTF-8: one finding a file */

/* ---- reader.c ---- */
/* The last token the parser got, or one of the two before it; a mere 0 before the first. */
static inline const struct token *sent_last(const struct parse *p, unsigned before)
{
    return &p->sent[(p->sent_count - before) % SENT_KEPT];
}
/* A finding; no syntax finding of the parser's is added at the same place. */
struct finding *found(struct parse *p, enum kind kind, struct span at, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
void remark(struct parse *p, enum kind kind, struct span at, const char *message, const char *help);
struct token reader_next(struct parse *p);
struct span span_of(const struct parse *p, uint32_t from, uint32_t to);
const char *text_of(struct parse *p, struct span at); /* as written */

/* ---- build.c ---- */
struct list list_of(struct node *node);
struct list list_add(struct list list, struct node *node);
struct list list_join(struct list a, struct list b);
struct node *node_of(struct parse *p, enum node_kind kind, struct span at, struct node *const parts[], size_t count);
struct node *node_add(struct node *node, struct node *part);
struct node *node_before(struct parse *p, struct node *node, struct span at, struct node *first, struct node *second);
struct node *node_body(struct parse *p, struct node *node, struct list body);
struct node *node_text(struct node *node, const char *text);
struct node *node_flag(struct node *node, int flag);
struct node *node_at(struct node *node, struct span at);
struct node *node_parens(struct parse *p, struct node *value, struct span at); /* ( and ) around a value: a LIST at least */
struct node *node_word(struct parse *p, struct span at); /* a word of the language that serves as a name */
struct list plates_unit(struct list plates, const char *unit); /* a unit after the last count is that of the last disc */
struct node *unit_wanted(struct parse *p, struct node *value, const char *word); /* at, drop, cap, load: finding `unit` */
struct node *change_value(struct parse *p, const char *what, struct node *value);

/* ---- place.c ---- */
const char *body_name(enum node_kind header);      /* "a gym" */
const char *body_place(enum node_kind header);     /* "in a gym"; of the file "outside of all { }" */
enum node_kind body_of(int first_token);           /* which body a statement that starts so opens; NODE_ERROR: none */
bool body_takes_names(enum node_kind header);      /* statements may start with a name of the coach's own */
const char *const *body_words(struct parse *p, enum node_kind header, int *count); /* the words its statements start with */
bool body_has_word(struct parse *p, enum node_kind header, const char *word);
const char *statement_example(enum node_kind header, const char *word); /* NULL: none there starts so; word NULL: with a name */
void places_index(struct parse *p); /* fills p->homes */
void places_check(struct parse *p, struct node *parent, struct node *children);

/* ---- complain.c ---- */
void complain(struct parse *p, int token, struct span at, const int *wanted, int count);
bool complain_start(struct parse *p, struct token *token); /* a misspelt first word: says so and mends it; false: not one */

#endif
