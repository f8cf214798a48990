#include "syntax/words.h"

#include "setwright.tab.h"

#include <string.h>

#define W(text, token, after) { text, sizeof(text) - 1, TOK_##token, after, NULL }
#define X(text, token, after, example) { text, sizeof(text) - 1, TOK_##token, after, example }

/* `after` stands in "after `x` comes …"; the example is a clause or a part of a line
 * (whole statements have theirs in place.c). */
static const struct word words[] = {
    W("add", ADD, "a weight such as 2.5 kg, or `to day A`"),
    W("adjust", ADJUST, "the name of an athlete or a group"),
    W("allow", ALLOW, "the name of a rule"),
    X("amrap", AMRAP, NULL, "3 x amrap at 60 kg at least 8"),
    W("and", AND, "one more of the same"),
    X("as", AS, "`planned`", "as planned rpe 7"),
    X("at", AT, "a load such as rpe 8, 75% or 100 kg", "at rpe 8"),
    W("athlete", ATHLETE, "the athlete's name in one word"),
    W("attempts", ATTEMPTS, "a lift and its three attempts"),
    W("avoid", AVOID, "the name of a lift"),
    X("back-off", BACK_OFF, "a number of sets", "back-off 4 x 5 drop 15%"),
    W("bar", BAR, "the weight of the bar"),
    X("because", BECAUSE, "the reason in quotes", "because \"left shoulder\""),
    W("block", BLOCK, "the block's name in one word"),
    W("bodyweight", BODYWEIGHT, "a weight"),
    X("break", BREAK, "a number of weeks", "break 1 week"),
    X("cap", CAP, "the most it may be, such as rpe 8, 95% or 120 kg", "cap rpe 8"),
    W("checks", CHECKS, "`{` and the house limits"),
    W("collar", COLLAR, "the weight of one collar"),
    W("cue", CUE, "a text in quotes"),
    W("curve", CURVE, "the name of a lift"),
    W("day", DAY, "the day's letter, number or name"),
    W("deload", DELOAD, "the weeks it is for, such as `week 4` or `each 4 weeks`"),
    W("diary", DIARY, "the athlete's name"),
    W("down", DOWN, "by how much"),
    X("drop", DROP, "how far below, such as 15% or 10 kg", "drop 15%"),
    W("dumbbells", DUMBBELLS, "the weights on the rack"),
    X("each", EACH, "`side`, or a number of weeks", "each side"),
    W("easy", EASY, "what then happens: `add`, `hold` or `drop`"),
    W("effort", EFFORT, "the name of a lift"),
    X("every", EVERY, "a time such as 60 s", "every 60 s"),
    W("fixed", FIXED, NULL),
    W("for", FOR, "a name"),
    X("from", FROM, "where it starts from", "from 7 to 8.5"),
    W("full", FULL, "what then happens: `add`, `hold` or `drop`"),
    W("goal", GOAL, "hypertrophy, strength, peak or general"),
    W("group", GROUP, "the group's name in one word"),
    W("gym", GYM, "the gym's name in one word"),
    W("helps", HELPS, "the name of a muscle"),
    W("hold", HOLD, NULL),
    X("in", IN, "the weeks, such as `weeks 1-3`", "in weeks 1-3"),
    W("instead", INSTEAD, "the name of a lift"),
    W("kind", KIND, "competition, variation or accessory"),
    W("language", LANGUAGE, "the number 1"),
    X("least", LEAST, "a number", "at least 8"),
    W("let", LET, "a name with a $ before it"),
    W("level", LEVEL, "error, warning or advice"),
    W("lift", LIFT, "the lift's name in one word"),
    X("like", LIKE, "the name of a lift", "like squat at 90%"),
    W("load", LOAD, "`up`, `down` or `to`"),
    W("loads", LOADS, "bar, dumbbells, stack, bodyweight or free"),
    W("made", MADE, "what then happens: `add`, `hold` or `drop`"),
    W("max", MAX, "the name of a lift"),
    X("means", MEANS, "what she should have said", "effort bench 8 means 7"),
    W("meet", MEET, "the meet's name in quotes"),
    X("minus", MINUS, "a number or a weight", "75% minus 2.5% each week"),
    X("missed", MISSED, NULL, "when missed 2 times drop 10%"),
    W("model", MODEL, "the name of a curve, such as epley"),
    X("most", MOST, "a number", "at most 3"),
    X("note", NOTE, "a text in quotes", "note \"slow on the way down\""),
    X("of", OF, "a lift, `day A` or `bodyweight`", "at 80% of squat"),
    W("off", OFF, "the name of a rule"),
    W("on", ON, "a date such as 2027-01-04, or a day of the week such as mon"),
    W("optional", OPTIONAL, NULL),
    X("or", OR, "the name of another lift", "row or pulldown 3 x 10 at rpe 8"),
    X("pass", PASS, NULL, "wave 72.5 | 80 | 87.5% plus 2% each pass"),
    X("pause", PAUSE, "a time such as 20 s", "pause 20 s"),
    X("planned", PLANNED, NULL, "as planned rpe 7"),
    W("plates", PLATES, "the discs on hand, such as 20 x 4"),
    X("plus", PLUS, "a number or a weight", "75% plus 2.5% each week"),
    X("progression", PROGRESSION, "the progression's name", "progression fill-the-range"),
    W("remove", REMOVE, "`day` and its letter"),
    W("repeat", REPEAT, "`week` and its number"),
    W("reps", REPS, "`up`, `down` or `to`"),
    X("rest", REST, "a time such as 3 min", "rest 3 min"),
    X("rir", RIR, "the repetitions in reserve, such as 2", "at rir 2"),
    W("roster", ROSTER, "the spreadsheet's file name in quotes"),
    W("rotate", ROTATE, "the letters of the days"),
    W("round", ROUND, "nearest, down or up"),
    X("rounds", ROUNDS, NULL, "superset 3 rounds {"),
    X("rpe", RPE, "the effort, such as 8", "at rpe 8"),
    W("run", RUN, "the names of blocks in their order"),
    X("same", SAME, NULL, "at same"),
    W("scheme", SCHEME, "the scheme's name in one word"),
    W("season", SEASON, "the season's name in one word"),
    W("session", SESSION, "the effort of the whole session, such as rpe 7"),
    W("sets", SETS, "`up`, `down` or `to`"),
    X("side", SIDE, NULL, "each side"),
    W("skip", SKIP, "a lift, `day A` or `week 2`"),
    X("skipped", SKIPPED, NULL, "curl skipped because \"elbow\""),
    X("speed", SPEED, "a speed such as 0.45", "until speed 0.45"),
    W("stack", STACK, "the weights of the stack"),
    W("starts", STARTS, "a date such as 2027-01-04"),
    W("superset", SUPERSET, "`{`, a number of rounds, or `for` and a time"),
    W("swap", SWAP, "the name of a lift"),
    W("taper", TAPER, "the weeks it is for, such as `weeks 5-6`"),
    W("template", TEMPLATE, "the template's name in one word"),
    X("tempo", TEMPO, "a tempo in quotes, such as \"31X0\"", "tempo \"31X0\""),
    X("then", THEN, "more sets", "then back-off 4 x 5 drop 15%"),
    W("times", TIMES_WORD, "what then happens: `add`, `hold` or `drop`"),
    W("title", TITLE, "a text in quotes"),
    X("to", TO, "where it ends", "from 7 to 8.5"),
    X("top", TOP, "a number of sets", "top 1 x 1 at rpe 8"),
    X("total", TOTAL, "a number of repetitions", "total 30 at 60 kg"),
    W("units", UNITS, "kg or lb"),
    X("until", UNTIL, "where to stop, such as rpe 9 or speed 0.45", "until rpe 9"),
    W("up", UP, "by how much"),
    W("use", USE, "a file name in quotes"),
    X("warm-up", WARM_UP, "the name of a scheme, or a number of sets", "warm-up 2 x 5 at 40%"),
    X("wave", WAVE, "numbers with bars between them", "wave 72.5 | 80 | 87.5%"),
    W("week", WEEK, "the number of the week"),
    W("weeks", WEEKS, "a number of weeks"),
    W("when", WHEN, "`made`, `easy`, `missed` or `reps full`"),
    X("with", WITH, "a name with a $ before it", "with $top = from 7 to 9"),
    W("works", WORKS, "the name of a muscle"),
    X("x", TIMES, "a number of reps", "3 x 5"),
};

enum { WORDS = sizeof words / sizeof *words };

int word_count(void)
{
    return WORDS;
}

const struct word *word_at(int index)
{
    return &words[index];
}

/* The length and three letters tell nearly all words apart. */
static unsigned slot_of(const char *text, size_t length)
{
    unsigned hash = (unsigned)length;
    hash = 31 * hash + (unsigned char)text[0];
    hash = 31 * hash + (unsigned char)text[length / 2];
    hash = 31 * hash + (unsigned char)text[length - 1];
    return hash % WORD_SLOTS;
}

struct word_index words_index(void)
{
    struct word_index index = { { 0 } };
    for (int i = 0; i < WORDS; i++) {
        unsigned slot = slot_of(words[i].text, words[i].length);
        while (index.slots[slot])
            slot = (slot + 1) % WORD_SLOTS;
        index.slots[slot] = (uint8_t)(i + 1);
    }
    return index;
}

const struct word *word_find(const struct word_index *index, const char *text, size_t length)
{
    if (!length)
        return NULL;
    for (unsigned slot = slot_of(text, length); index->slots[slot]; slot = (slot + 1) % WORD_SLOTS) {
        const struct word *word = &words[index->slots[slot] - 1];
        if (word->length == length && !memcmp(word->text, text, length))
            return word;
    }
    return NULL;
}

const struct word *word_of(int token)
{
    for (int i = 0; i < WORDS; i++)
        if (words[i].token == token)
            return &words[i];
    return NULL;
}
