#include "emit/entry_lines.h"

#include "emit/instead.h"
#include "emit/set_lines.h"
#include "emit/visible.h"

enum { CUE_GAP = 3 };

void words_line(struct lines *lines, int indent, const char *before, const char *text, const char *after)
{
    line_begin(lines, 0, "", indent);
    line_words(lines, 0, before);
    line_words(lines, *before ? 1 : 0, text);
    line_words(lines, *after ? 1 : 0, after);
    line_end(lines);
}

void notes_lines(struct lines *lines, int indent, const char *const *notes, int count)
{
    for (int i = 0; i < count; i++)
        words_line(lines, indent, "Note:", notes[i], "");
}

const char *phrase_end(struct out *say)
{
    out_char(say, '\0');
    return say->at;
}

/* The cue stands beside the title where it fits whole; else it gets lines of its own further down. */
static bool cue_beside(struct sheet *sheet, const char *cue)
{
    struct out *say = &sheet->say;
    if (!cue || strchr(cue, '\n'))
        return false;
    out_clear(say);
    out_text(say, "Cue: ");
    visible_add(say, cue, strlen(cue), VISIBLE_ONE_LINE);
    if (sheet->lines.column + CUE_GAP + columns_of(say->at, say->used) > sheet->lines.width)
        return false;
    line_piece(&sheet->lines, CUE_GAP, say->at, say->used);
    return true;
}

/* Whether the cue has been said. */
static bool title_line(struct sheet *sheet, const struct plan_entry *entry, const char *number)
{
    struct lines *lines = &sheet->lines;
    line_begin(lines, 0, number, SHEET_LABEL);
    line_words(lines, 1, lift_words(entry->lift));
    if (entry_more(entry->entry)->title) {
        line_say(lines, 1, "-");
        line_words(lines, 1, entry_more(entry->entry)->title);
    }
    bool said = cue_beside(sheet, entry->lift->cue);
    line_end(lines);
    return said;
}

/* Words of the coach between words of ours: "Instead of Overhead press (left shoulder)". */
static void swap_line(struct sheet *sheet, const struct plan_entry *entry)
{
    struct out *say = &sheet->say;
    if (!entry->instead_of)
        return;
    out_clear(say);
    out_text(say, lift_words(entry->instead_of));
    if (entry->because) {
        out_text(say, " (");
        out_text(say, entry->because);
        out_char(say, ')');
    }
    words_line(&sheet->lines, SHEET_LABEL, "Instead of", phrase_end(say), "");
}

static void choice_line(struct sheet *sheet, const struct plan_entry *entry)
{
    struct out *say = &sheet->say;
    if (entry->choice_count == 0)
        return;
    out_clear(say);
    for (int i = 0; i < entry->choice_count; i++) {
        out_text(say, i == 0 ? "" : ", or ");
        out_text(say, lift_words(entry->choices[i]));
    }
    out_text(say, ", as you choose; the loads here are for ");
    out_text(say, lift_words(entry->lift));
    words_line(&sheet->lines, SHEET_LABEL, "Or", phrase_end(say), "");
}

/* In small print: what her gym has and she does not avoid. */
static void instead_line(struct sheet *sheet, const struct row *row)
{
    struct out *say = &sheet->say;
    const struct lift *lift;
    out_clear(say);
    for (int at = 0; (lift = instead_next(row->plan->athlete, row->day->gym, row->entry, &at));) {
        out_text(say, say->used ? ", or " : "");
        out_text(say, lift_words(lift));
    }
    if (!say->used)
        return;
    out_char(say, ')');
    words_line(&sheet->lines, SHEET_LABEL, "(Instead, at the same effort:", phrase_end(say), "");
}

void entry_lines(struct sheet *sheet, const struct row *row, const char *number)
{
    const struct plan_entry *entry = row->entry;
    struct lines *lines = &sheet->lines;
    bool cue_said = title_line(sheet, entry, number);
    swap_line(sheet, entry);
    choice_line(sheet, entry);
    instead_line(sheet, row);
    if (entry->lift->cue && !cue_said)
        words_line(lines, SHEET_LABEL, "Cue:", entry->lift->cue, "");
    notes_lines(lines, SHEET_LABEL, entry->lift->notes, entry->lift->note_count);
    notes_lines(lines, SHEET_LABEL, entry_more(entry->entry)->notes, entry_more(entry->entry)->note_count);
    notes_lines(lines, SHEET_LABEL, entry->notes, entry->note_count);
    set_lines(sheet, *row);
}

/* Supersets */

/* "1.", or "2b." within a superset. */
void number_write(char to[32], int number, int part)
{
    int length = dec_write(to, dec_int(number));
    if (part >= 0)
        to[length++] = (char)('a' + part % 26);
    to[length++] = '.';
    to[length] = '\0';
}

static void say_superset(struct out *say, const struct plan_entry *entry)
{
    out_text(say, "Superset");
    if (entry->superset_minutes > 0) {
        out_text(say, " for ");
        out_int(say, entry->superset_minutes);
        out_text(say, " min: a set of each in turn, over and over. Rounds: ____");
        return;
    }
    if (entry->rounds > 0) {
        out_text(say, ", ");
        say_count(say, entry->rounds, "round", "rounds");
    }
    out_text(say, ": a set of each in turn, and round again");
}

void superset_line(struct sheet *sheet, const struct plan_entry *first, int number)
{
    char text[32];
    number_write(text, number, -1);
    out_clear(&sheet->say);
    say_superset(&sheet->say, first);
    line_begin(&sheet->lines, 0, text, SHEET_LABEL);
    line_words(&sheet->lines, 1, phrase_end(&sheet->say));
    line_end(&sheet->lines);
}
