#include "emit/lines.h"

#include "emit/visible.h"

struct lines lines_new(struct out *out, struct arena *arena)
{
    return (struct lines){ .out = out, .word = out_scratch(arena), .width = LINE_COLUMNS };
}

void line_begin(struct lines *lines, int at, const char *label, int indent)
{
    out_chars(lines->out, ' ', *label ? at : 0);
    out_text(lines->out, label);
    lines->column = *label ? at + (int)strlen(label) : 0;
    lines->indent = indent;
    lines->stop = indent;
}

/* No blanks at a line's end: a title or a cue may bring them. */
void line_end(struct lines *lines)
{
    while (lines->out->used && lines->out->at[lines->out->used - 1] == ' ')
        lines->out->used--;
    out_char(lines->out, '\n');
    lines->column = 0;
    lines->stop = lines->indent;
}

void line_stop(struct lines *lines, int column)
{
    lines->stop = column;
}

/* Whether a piece has been written on this line, the label aside. */
static bool line_is_begun(const struct lines *lines)
{
    return lines->column > lines->indent;
}

static void pad_to(struct lines *lines, int column)
{
    out_chars(lines->out, ' ', column - lines->column);
    if (lines->column < column)
        lines->column = column;
}

static void piece_put(struct lines *lines, const char *bytes, size_t length, int columns)
{
    out_bytes(lines->out, bytes, length);
    lines->column += columns;
    lines->stop = 0;
}

/* A piece longer than a line is broken where the line is full. */
static void piece_break(struct lines *lines, const char *bytes, size_t length)
{
    for (size_t at = 0; at < length;) {
        size_t size = character_size(bytes + at, length - at);
        int columns = columns_of(bytes + at, size);
        if (lines->column + columns > lines->width) {
            line_end(lines);
            pad_to(lines, lines->indent);
        }
        piece_put(lines, bytes + at, size, columns);
        at += size;
    }
}

void line_piece(struct lines *lines, int gap, const char *bytes, size_t length)
{
    int columns = columns_of(bytes, length);
    int start = line_is_begun(lines) ? lines->column + gap : lines->indent;
    if (start < lines->stop)
        start = lines->stop;
    if (start + columns > lines->width && line_is_begun(lines)) {
        line_end(lines);
        start = lines->indent;
    }
    pad_to(lines, start);
    if (start + columns > lines->width)
        piece_break(lines, bytes, length);
    else
        piece_put(lines, bytes, length, columns);
}

void line_say(struct lines *lines, int gap, const char *text)
{
    line_piece(lines, gap, text, strlen(text));
}

void line_words(struct lines *lines, int gap, const char *text)
{
    line_bytes(lines, gap, text, strlen(text));
}

void line_bytes(struct lines *lines, int gap, const char *words, size_t count)
{
    out_clear(&lines->word);
    visible_add(&lines->word, words, count, VISIBLE_BREAKS);
    const char *bytes = lines->word.at;
    size_t length = lines->word.used, at = 0;
    bool first = true, broken = false;
    while (at < length) {
        size_t end = at;
        while (end < length && !strchr(" \t\n", bytes[end]))
            end++;
        if (end > at) {
            if (broken && line_is_begun(lines))
                line_end(lines);
            line_piece(lines, first ? gap : 1, bytes + at, end - at);
            first = broken = false;
        }
        broken |= end < length && bytes[end] == '\n';
        at = end + 1;
    }
}

void lines_rule(struct lines *lines, char c)
{
    out_chars(lines->out, c, lines->width);
    line_end(lines);
}

void lines_sides(struct lines *lines, const char *left, const char *right)
{
    out_clear(&lines->word);
    visible_add(&lines->word, left, strlen(left), VISIBLE_ONE_LINE);
    size_t middle = lines->word.used;
    visible_add(&lines->word, right, strlen(right), VISIBLE_ONE_LINE);
    int right_columns = columns_of(lines->word.at + middle, lines->word.used - middle);
    int left_columns = columns_of(lines->word.at, middle);
    line_begin(lines, 0, "", 0);
    if (left_columns + 2 + right_columns > lines->width) {
        line_words(lines, 0, left);
        line_end(lines);
        line_words(lines, 0, right);
    } else {
        line_piece(lines, 0, lines->word.at, middle);
        line_stop(lines, lines->width - right_columns);
        if (right_columns > 0)
            line_piece(lines, 2, lines->word.at + middle, lines->word.used - middle);
    }
    line_end(lines);
}
