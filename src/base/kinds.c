#include "base/kinds.h"

#include <string.h>

/* clang-format off */
static const struct kind_row rows[KIND_COUNT] = {
    [KIND_NONE] = { "", LEVEL_ERROR, "", "" },
    [KIND_SYNTAX] = {
        "syntax", LEVEL_ERROR, "a word or sign stands where the language has no place for it",
        "A line that cannot be read: a word is misspelt, a part is missing, or a brace is open.\n"
        "\n"
        "    squat 4 5 at 80%\n"
        "\n"
        "Sets and reps are written with an x between them:\n"
        "\n"
        "    squat 4 x 5 at 80%\n"
        "\n"
        "The rest of the file is still read, so that all such places show at once.\n" },
    [KIND_TEXT] = {
        "text", LEVEL_ERROR, "a character or text in quotes that cannot stand as it is",
        "A sign that a word processor put in (curly quotes, a long dash, a hard space), bytes that are\n"
        "no UTF-8, or a text in quotes that is not closed on its line. A warning where a text or a remark\n"
        "holds a character that cannot be seen: one that turns the direction of writing or has no width.\n"
        "\n"
        "    title \xE2\x80\x9CWinter base\xE2\x80\x9D\n"
        "\n"
        "Type straight quotes and the plain hyphen:\n"
        "\n"
        "    title \"Winter base\"\n" },
    [KIND_NUMBER] = {
        "number", LEVEL_ERROR, "a number that cannot be read: a decimal comma, too many decimals, too large",
        "Decimals are written with a point. A comma separates sets, so 72,5 could also be two loads.\n"
        "\n"
        "    squat 3 x 5 at 72,5%\n"
        "\n"
        "Write the point:\n"
        "\n"
        "    squat 3 x 5 at 72.5%\n"
        "\n"
        "A number has at most ten decimals and stays below 900 million; a weight in lb has at most two\n"
        "decimals.\n" },
    [KIND_UNIT] = {
        "unit", LEVEL_ERROR, "a load without kg, lb or %, or a unit that does not belong there",
        "After at, drop and load a bare number could be kilograms or a forgotten per cent.\n"
        "\n"
        "    squat 3 x 5 at 80\n"
        "\n"
        "Say which:\n"
        "\n"
        "    squat 3 x 5 at 80%\n" },
    [KIND_DATE] = {
        "date", LEVEL_ERROR, "a date or weekday that does not exist or does not fit its place",
        "A date that is not in the calendar, one in another order than year-month-day, or one that\n"
        "cannot stand where it does: a season without a meet starts on a Monday.\n"
        "\n"
        "    starts 2027-02-29\n"
        "\n"
        "2027 has no 29 February:\n"
        "\n"
        "    starts 2027-03-01\n" },
    [KIND_LIMIT] = {
        "limit", LEVEL_ERROR, "something is larger than setwright can hold",
        "A limit of setwright itself and no mistake in training: braces nested very deep, files of very\n"
        "many megabytes, a gym of very many different weights, a later language.\n"
        "\n"
        "    language 2\n"
        "\n"
        "Say it as this setwright knows it, or use a newer one:\n"
        "\n"
        "    language 1\n" },
    [KIND_FILE] = {
        "file", LEVEL_ERROR, "a file cannot be read",
        "The file is missing, is a folder, is too large, or may not be read. It was named on the command\n"
        "line, or after use or roster: then its path is seen from the folder of the file that names it.\n"
        "\n"
        "    use \"gim.block\"\n"
        "\n"
        "Name a file that is there:\n"
        "\n"
        "    use \"gym.block\"\n" },
    [KIND_USE] = {
        "use", LEVEL_ERROR, "a used file lies outside the folders in play, or is no file of blocks",
        "The path after use is relative to the file it stands in, and stays within the working folder or\n"
        "the folder of a file named on the command line. std/ is the library that comes with setwright.\n"
        "\n"
        "    use \"../../../gym.block\"\n"
        "\n"
        "Move the file into the club's folder and name it from there:\n"
        "\n"
        "    use \"gym.block\"\n" },
    [KIND_ROSTER] = {
        "roster", LEVEL_ERROR, "a row or column of an athletes' spreadsheet cannot be understood",
        "The first row of a roster names the columns; every other row is one max of one athlete.\n"
        "\n"
        "    athlete,lift,max,unit\n"
        "    ines,squat,a lot,kg\n"
        "\n"
        "Put a number in the cell, or leave it empty:\n"
        "\n"
        "    athlete,lift,max,unit\n"
        "    ines,squat,120,kg\n" },
    [KIND_SHEET] = {
        "sheet", LEVEL_ERROR, "a row of a filled-in sheet cannot be understood, or no longer fits the plan",
        "`setwright collect` takes back the CSV that `build --format csv` wrote, with what was done under\n"
        "done_load, done_reps and done_rpe. Every row with something under them has to be a row of the plan.\n"
        "\n"
        "    lift,sets,load,done_load,done_reps\n"
        "    squat,4,90,,five\n"
        "\n"
        "Write numbers, one for all sets or one a set, and leave the other cells as they were printed:\n"
        "\n"
        "    lift,sets,load,done_load,done_reps\n"
        "    squat,4,90,,5 5 5 4\n"
        "\n"
        "If the plan has changed since the sheet was printed, print it anew or write the diary by hand.\n" },
    [KIND_UNKNOWN_NAME] = {
        "unknown-name", LEVEL_ERROR, "a name is used and declared nowhere",
        "A lift, scheme, gym, athlete, block or progression that no file declares. Often it is spelt\n"
        "another way, or its file is not used.\n"
        "\n"
        "    lift squat\n"
        "    block base { for all; starts 2027-01-04; weeks 1; day A { sqat 3 x 5 at rpe 7 } }\n"
        "\n"
        "Spell it as it is declared:\n"
        "\n"
        "    lift squat\n"
        "    block base { for all; starts 2027-01-04; weeks 1; day A { squat 3 x 5 at rpe 7 } }\n" },
    [KIND_DUPLICATE] = {
        "duplicate-name", LEVEL_ERROR, "a name is declared twice",
        "Two declarations of one name, in one file or in two that are read together. Both places show.\n"
        "Athletes and groups share their names, and so do blocks, templates and seasons; 'all' is taken.\n"
        "\n"
        "    lift squat { loads bar }\n"
        "    lift squat { works quads }\n"
        "\n"
        "Put all about it into one, or give the second a name of its own:\n"
        "\n"
        "    lift squat { loads bar; works quads }\n" },
    [KIND_CYCLE] = {
        "cycle", LEVEL_ERROR, "names lead back to themselves",
        "A lift that is like a lift that is like the first, or templates and groups that contain each\n"
        "other.\n"
        "\n"
        "    lift squat like pause-squat at 110%\n"
        "    lift pause-squat like squat at 90%\n"
        "\n"
        "One of them has to stand on its own:\n"
        "\n"
        "    lift squat\n"
        "    lift pause-squat like squat at 90%\n" },
    [KIND_MISSING] = {
        "missing", LEVEL_ERROR, "something is not said that has to be",
        "A block outside a season needs for, starts and weeks; a season without a meet needs starts.\n"
        "\n"
        "    block base { for ines; weeks 4; day A { squat 3 x 5 at rpe 7 } }\n"
        "\n"
        "Add what the finding names:\n"
        "\n"
        "    block base { for ines; starts 2027-01-04; weeks 4; day A { squat 3 x 5 at rpe 7 } }\n" },
    [KIND_REPEATED] = {
        "repeated", LEVEL_ERROR, "something is said twice that can be said once",
        "A clause stands twice in a set group, or a line twice in a body, so that it is open which counts.\n"
        "\n"
        "    squat 3 x 5 at 75% rest 3 min rest 2 min\n"
        "\n"
        "Keep one of the two:\n"
        "\n"
        "    squat 3 x 5 at 75% rest 3 min\n" },
    [KIND_MISPLACED] = {
        "misplaced", LEVEL_ERROR, "a line or clause stands where it means nothing",
        "The words are right, but not here: at least belongs to amrap, until to a band of sets, and starts\n"
        "stands outside a block that is in a season.\n"
        "\n"
        "    squat 3 x 5 at 75% at least 5\n"
        "\n"
        "Take it out, or write what it belongs to:\n"
        "\n"
        "    squat 3 x amrap at 75% at least 5\n" },
    [KIND_RANGE] = {
        "range", LEVEL_ERROR, "a value lies outside what it can be",
        "An effort over 10, no sets at all, a range that runs backwards.\n"
        "\n"
        "    squat 3 x 5 at rpe 11\n"
        "\n"
        "Efforts are 0 to 10 in halves; sets, reps and weeks are at least 1:\n"
        "\n"
        "    squat 3 x 5 at rpe 9\n" },
    [KIND_WEEKS] = {
        "weeks", LEVEL_WARNING, "weeks that the block does not have",
        "A deload, a change or a list speaks of weeks after the block's last. They are left out.\n"
        "\n"
        "    weeks 4\n"
        "    deload week 5\n"
        "\n"
        "Name a week of the block, or make it longer:\n"
        "\n"
        "    weeks 5\n"
        "    deload week 5\n" },
    [KIND_UNTOUCHED] = {
        "untouched", LEVEL_WARNING, "a change that changes nothing",
        "A deload, taper or adjust line meets no set that it could change. load acts on sets given by load\n"
        "or per cent, rpe on sets given by effort; warm-ups are never changed.\n"
        "\n"
        "    deload week 4 { rpe down 2 }\n"
        "    day A { squat 3 x 5 at 75% }\n"
        "\n"
        "Use the change that fits the sets:\n"
        "\n"
        "    deload week 4 { load down 10% }\n"
        "    day A { squat 3 x 5 at 75% }\n" },
    [KIND_LIST_LENGTH] = {
        "list-length", LEVEL_ERROR, "a comma list is not as long as its sets",
        "A comma list gives a value to each set of the week.\n"
        "\n"
        "    squat 4 x 5 at 70, 75, 80%\n"
        "\n"
        "Give as many values as sets; for a value a week write bars, 70 | 75 | 80%:\n"
        "\n"
        "    squat 3 x 5 at 70, 75, 80%\n" },
    [KIND_UNKNOWN_LET] = {
        "unknown-let", LEVEL_ERROR, "a $name has no value",
        "A $name is used for which no let is in reach: not the athlete's own, nor with, entry, scheme, day,\n"
        "block or template.\n"
        "\n"
        "    squat top 1 x 1 at rpe $top\n"
        "\n"
        "Give it a value in the day, the block, or where the scheme is used:\n"
        "\n"
        "    let $top = from 7 to 8.5\n"
        "    squat top 1 x 1 at rpe $top\n" },
    [KIND_PROGRESSION] = {
        "progression", LEVEL_ERROR, "a progression cannot work on these sets",
        "A progression carries one load from session to session, so its sets start from one load or one\n"
        "per cent, not from an effort or a series.\n"
        "\n"
        "    row 3 x 8-12 at rpe 7 progression fill-the-range\n"
        "\n"
        "Say where it starts:\n"
        "\n"
        "    row 3 x 8-12 at 50 kg progression fill-the-range\n" },
    [KIND_MISSING_MAX] = {
        "missing-max", LEVEL_ERROR, "a per cent of a max that the athlete does not have",
        "at S% needs a max of the lift, tested, worked out from a set, or lent by the lift it is like, dated\n"
        "on or before the week's first day.\n"
        "\n"
        "    athlete ines\n"
        "    ...\n"
        "    squat 3 x 5 at 75%\n"
        "\n"
        "Give her a max, or write the sets by effort:\n"
        "\n"
        "    athlete ines { max squat 120 kg on 2026-11-28 }\n"
        "    ...\n"
        "    squat 3 x 5 at 75%\n" },
    [KIND_MISSING_BODYWEIGHT] = {
        "missing-bodyweight", LEVEL_ERROR, "a load that needs a bodyweight the athlete does not have",
        "A lift that loads bodyweight, or a per cent of bodyweight, is worked out from what the athlete\n"
        "weighs.\n"
        "\n"
        "    athlete ines { max pull-up bodyweight plus 15 kg }\n"
        "\n"
        "Add the line:\n"
        "\n"
        "    athlete ines { bodyweight 61.8 kg on 2026-12-01; max pull-up bodyweight plus 15 kg }\n" },
    [KIND_OPEN_LOAD] = {
        "open-load", LEVEL_ERROR, "what gives no load: amrap at an effort, or a day that does not train the lift",
        "An effort gives a load only together with a number of reps, and amrap has none: the set ends when\n"
        "no further rep goes up. And `of day B` needs a day B that trains the lift in the same week.\n"
        "\n"
        "    squat 1 x amrap at rpe 9\n"
        "\n"
        "Say the load:\n"
        "\n"
        "    squat 1 x amrap at 80%\n" },
    [KIND_NO_TOP] = {
        "no-top", LEVEL_ERROR, "a drop or 'at same' with no group before it",
        "drop starts from the nearest top group before it in the entry, or else from the group before it; at\n"
        "same repeats the group before it.\n"
        "\n"
        "    squat { back-off 4 x 5 drop 15% }\n"
        "\n"
        "Write the group it hangs on first:\n"
        "\n"
        "    squat { top 1 x 1 at rpe 8; back-off 4 x 5 drop 15% }\n" },
    [KIND_IMPOSSIBLE_SET] = {
        "impossible-set", LEVEL_ERROR, "more reps than the athlete's max allows at this load",
        "The load and reps together are above rpe 10 on the repetition curve, after caps. A single above the\n"
        "max is a warning: it may be meant as a record.\n"
        "\n"
        "    squat 3 x 8 at 90%\n"
        "\n"
        "Ask for fewer reps or less load:\n"
        "\n"
        "    squat 3 x 3 at 90%\n" },
    [KIND_UNDER_BAR] = {
        "under-bar", LEVEL_WARNING, "a load lighter than the empty bar",
        "The load comes out under the bar with its collars, so the sheet says the empty bar.\n"
        "\n"
        "    athlete tomas { max bench 35 kg }\n"
        "    ...\n"
        "    bench 3 x 5 at 50%\n"
        "\n"
        "Use a lighter bar or another lift, or ask for more:\n"
        "\n"
        "    bench 3 x 5 at 75%\n" },
    [KIND_AVOIDED_LIFT] = {
        "avoided-lift", LEVEL_ERROR, "a lift that the athlete avoids is planned for her",
        "avoid without use leaves open what she does instead.\n"
        "\n"
        "    athlete ines { avoid overhead-press because \"left shoulder\" }\n"
        "\n"
        "Name the lift that stands in, or swap it in an adjust:\n"
        "\n"
        "    athlete ines { avoid overhead-press use landmine-press because \"left shoulder\" }\n" },
    [KIND_OVERLAP] = {
        "overlap", LEVEL_ERROR, "two statements claim the same place",
        "Two groups of weeks, deloads or changes meet in one week, so that it is open which holds.\n"
        "\n"
        "    deload week 4\n"
        "    taper weeks 4-5 { sets to 60 | 40% }\n"
        "\n"
        "Let each week belong to one:\n"
        "\n"
        "    deload week 3\n"
        "    taper weeks 4-5 { sets to 60 | 40% }\n" },
    [KIND_DIARY] = {
        "diary", LEVEL_ERROR, "an entry of a diary that cannot be meant as it stands",
        "Two entries for one session, a load without a unit that is lighter than the empty bar, or a\n"
        "diary for a group: each lifter has a diary of their own.\n"
        "\n"
        "    diary ines { 2027-01-04 A { squat 5 x 5 } }\n"
        "\n"
        "5 kg were hardly meant; in a diary the load comes first:\n"
        "\n"
        "    diary ines { 2027-01-04 A { squat 90 kg x 5, 5, 5, 5, 5 rpe 7 } }\n" },
    [KIND_UNMATCHED_DIARY] = {
        "unmatched-diary", LEVEL_WARNING, "an entry of a diary that fits no session of the plan, or only in part",
        "A session belongs to the week of its date and to the day of its label. What fits nothing feeds the\n"
        "running max and nothing else.\n"
        "\n"
        "    diary ines { 2027-01-04 E { squat 90 kg x 5 rpe 7 } }\n"
        "\n"
        "The block has days A and B:\n"
        "\n"
        "    diary ines { 2027-01-04 A { squat 90 kg x 5 rpe 7 } }\n" },
    [KIND_SEASON] = {
        "season", LEVEL_ERROR, "a season and its blocks, meets or dates do not fit each other",
        "A season counts its blocks back from the last meet, or on from a Monday. A block in it takes its\n"
        "start from the season, and is for the season's athletes or more. One that starts on a Wednesday:\n"
        "\n"
        "    season spring { for ines; starts 2027-01-06; run winter-base }\n"
        "\n"
        "Write the Monday before or after it:\n"
        "\n"
        "    season spring { for ines; starts 2027-01-04; run winter-base }\n" },
    [KIND_MEET_DAY] = {
        "meet-day", LEVEL_ADVICE, "training that falls on a meet or after it in its week",
        "A day on the date of a meet or later in its week is left out of the plan; one without a date stays,\n"
        "for the athlete to fit in before the meet. In a block with such a day:\n"
        "\n"
        "    day C on sat { squat 3 x 3 at rpe 6 }\n"
        "\n"
        "Say what you want in the meet's week yourself, and nothing has to be left out:\n"
        "\n"
        "    taper week 5 { skip day C; sets to 40% }\n" },
    [KIND_NOT_BUILT] = {
        "not-built", LEVEL_ADVICE, "an athlete of a block whom no season that runs it is for",
        "A block that seasons run is built for the athletes of those seasons. One who stands in its `for`\n"
        "line alone gets no sheet:\n"
        "\n"
        "    block peak { for ines, oskar; weeks 4; … }\n"
        "    season spring { for ines; meet \"Lakeside Open\" on 2027-04-17; run peak }\n"
        "\n"
        "Add her to the season, or take her out of the block:\n"
        "\n"
        "    season spring { for ines, oskar; meet \"Lakeside Open\" on 2027-04-17; run peak }\n" },
};
/* clang-format on */

const struct kind_row *kind_row(enum kind kind)
{
    return &rows[kind < KIND_COUNT ? kind : KIND_NONE];
}

enum kind kind_find(const char *name)
{
    for (int i = KIND_NONE + 1; i < KIND_COUNT; i++)
        if (strcmp(rows[i].name, name) == 0)
            return (enum kind)i;
    return KIND_NONE;
}

const char *level_name(enum level level)
{
    static const char *const names[] = { "error", "warning", "advice" };
    return names[level];
}
