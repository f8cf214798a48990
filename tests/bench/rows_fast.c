/* The yardstick: writes the very bytes that `setwright build --format csv` writes for `make club` and a roster of
 * `make athletes` or `make unlike`, as fast as a program by hand can that does nothing else. It knows nothing of the
 * language: what the block says stands in the tables below. What hangs on no max is made into text once. Loads are
 * worked out for every athlete anew, in loops that turn into vectors, and their texts come out of tables. Copies have a
 * fixed width and may reach past the end of a text, for the next begins there. Memory is constant.
 *
 *   rows_fast ROSTER
 *
 * Maxes may be 40 to 300 kg, in hundredths: no load then meets an end of the gym or a cap, and no warm-up comes to
 * rpe 1. Names may have up to 16 bytes. At anything else in a roster it ends with 2. */
#include <fcntl.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* ---- what the block says ---- */

enum { WEEKS = 12, DAYS = 4, LIFTS = 3 };
enum lift { SQUAT, BENCH, DEADLIFT };

static const char *const lift_names[LIFTS] = { "squat", "bench", "deadlift" };

static const struct day_plan {
    char label;
    int weekday; /* days after Monday */
    enum lift first, second;
} day_plans[DAYS] = {
    { 'A', 0, SQUAT, BENCH }, { 'B', 1, DEADLIFT, BENCH }, { 'C', 3, BENCH, SQUAT }, { 'D', 4, SQUAT, DEADLIFT }
};

/* A deload halves the sets, upwards, and takes 2 off each effort and a tenth off each load. */
static const struct week_kind {
    int work_sets, row_sets, press_sets, curl_sets, plank_sets;
    const char *row_load, *press_rpe, *curl_rpe;
} usual = { 4, 3, 3, 2, 3, "50,kg,15", "7-8", "8" }, deload = { 2, 2, 2, 1, 2, "45,kg,10+2.5", "5-6", "6" };

static const struct week_plan {
    const struct week_kind *kind;
    int top_halves;  /* rpe of the top set, in halves */
    int work_tenths; /* of a per cent of the max */
    int back_off_sets, pulldown_load;
} week_plans[WEEKS] = {
    { &usual, 12, 700, 4, 40 }, { &usual, 13, 710, 4, 45 }, { &usual, 13, 720, 5, 50 }, { &deload, 9, 648, 3, 45 },
    { &usual, 14, 730, 5, 50 }, { &usual, 15, 740, 5, 50 }, { &usual, 15, 750, 5, 50 }, { &deload, 11, 675, 3, 45 },
    { &usual, 16, 760, 5, 50 }, { &usual, 16, 770, 5, 50 }, { &usual, 17, 780, 5, 50 }, { &deload, 13, 702, 3, 45 },
};

/* Loads are counted in steps above the empty bar; the gym can make each of them. */
#define BAR 20
#define STEP 2.5
#define MAX_LEAST 40
#define MAX_MOST 300
enum { LOADS = 110 };

static void end(const char *why)
{
    fprintf(stderr, "rows_fast: %s\n", why);
    exit(2);
}

/* ---- texts, made once ---- */

enum { NUMBER = 8, LOAD = 48, ROW = 64, LONG_ROW = 96, NAME = 16 };

/* Texts of each width, their length in the last byte. */
struct number {
    char bytes[NUMBER];
};

struct load {
    char bytes[LOAD];
};

struct row {
    char bytes[ROW];
};

struct long_row {
    char bytes[LONG_ROW];
};

/* The rows of a day from behind the name on; the first four up to the first number that hangs on a max. */
struct day {
    struct row warm_up, top, back_off, work, rows, pulldown, curl, plank;
    struct long_row last_row, press;
};

static struct day days[WEEKS * DAYS];
static struct number per_cents[1001];           /* by tenths */
static struct number efforts[41];               /* by quarters of rpe, rounded down */
static struct load plain[LOADS], rested[LOADS]; /* by steps: to the end of the row; back-offs have a rest there */

__attribute__((format(printf, 3, 4))) static void text_make(char *to, int width, const char *format, ...)
{
    va_list values;
    va_start(values, format);
    int length = vsnprintf(to, (size_t)width, format, values);
    va_end(values);
    if (length < 0 || length >= width)
        end("a text is too long");
    to[width - 1] = (char)length;
}

#define TEXT(to, ...) text_make((to)->bytes, sizeof(to)->bytes, __VA_ARGS__)

static void numbers_make(void)
{
    for (int i = 0; i <= 1000; i++)
        TEXT(&per_cents[i], "%g,", i / 10.0);
    for (int i = 0; i <= 40; i++)
        if (i < 4)
            TEXT(&efforts[i], "<1,");
        else
            TEXT(&efforts[i], "%g,", (i + 1) / 2 / 2.0); /* to the half; a quarter goes up */
}

/* The heaviest first: of these discs that takes the fewest, too. */
static void discs_write(char *to, int steps)
{
    static const struct disc {
        const char *name;
        int steps, count; /* what a pair comes to; pairs */
    } discs[] = { { "25", 20, 4 }, { "20", 16, 1 }, { "15", 12, 1 },  { "10", 8, 1 },
                  { "5", 4, 1 },   { "2.5", 2, 1 }, { "1.25", 1, 1 }, { 0 } };
    const char *begin = to;
    for (const struct disc *disc = discs; disc->name; disc++)
        for (int left = disc->count; left && steps >= disc->steps; left--, steps -= disc->steps)
            to += sprintf(to, "%s%s", to > begin ? "+" : "", disc->name);
}

static void loads_make(void)
{
    for (int i = 0; i < LOADS; i++) {
        char side[ROW] = "";
        discs_write(side, i);
        TEXT(&plain[i], "%g,kg,%s,,,,,,\n", BAR + STEP * i, side);
        TEXT(&rested[i], "%g,kg,%s,180,,,,,\n", BAR + STEP * i, side);
    }
}

/* What all rows of a day begin with. The block starts on 4 January 2027. */
static void day_head(char to[ROW], int week, const struct day_plan *plan)
{
    static const int month_days[] = { 31, 28, 31 };
    int month = 0, day = 3 + 7 * week + plan->weekday;
    for (; day >= month_days[month]; month++)
        day -= month_days[month];
    snprintf(to, ROW, ",winter,%d,2027-%02d-%02d,%c", week + 1, month + 1, day + 1, plan->label);
}

static void day_make(struct day *day, int number, const struct day_plan *plan)
{
    const struct week_plan *week = &week_plans[number];
    const struct week_kind *kind = week->kind;
    const char *first = lift_names[plan->first], *second = lift_names[plan->second];
    char head[ROW];
    day_head(head, number, plan);
    TEXT(&day->warm_up, "%s,1,%s,warm-up,1,5,5,<1,", head, first);
    TEXT(&day->top, "%s,2,%s,top,1,1,1,%g,", head, first, week->top_halves / 2.0);
    TEXT(&day->back_off, "%s,3,%s,back-off,%d,5,5,", head, first, week->back_off_sets);
    TEXT(&day->work, "%s,4,%s,work,%d,4,4,", head, second, kind->work_sets);
    TEXT(&day->rows, "%s,5,row,work,%d,8,12,,,%s,,,,,,\n", head, kind->row_sets, kind->row_load);
    TEXT(&day->last_row, "%s,6,row,work,1,12,12,,,%s,,,,,,\n", head, kind->row_load);
    TEXT(&day->press, "%s,7,press,work,%d,10,10,%s,,,,,,,elbows under the wrists,,,\n", head, kind->press_sets,
         kind->press_rpe);
    TEXT(&day->pulldown, "%s,8,pulldown,work,%d,10,10,,,%d,kg,,,,,,,\n", head, kind->press_sets, week->pulldown_load);
    TEXT(&day->curl, "%s,9,curl,work,%d,12,15,%s,,,,,,,,,,\n", head, kind->curl_sets, kind->curl_rpe);
    TEXT(&day->plank, "%s,10,plank,work,%d,30 s,30 s,,,,,,60,,,,,\n", head, kind->plank_sets);
}

static void days_make(void)
{
    for (int week = 0; week < WEEKS; week++)
        for (int i = 0; i < DAYS; i++)
            day_make(&days[week * DAYS + i], week, &day_plans[i]);
}

/* ---- loads ---- */

/* What is cut to a whole number below is one, or at least 4e-6 away from one: loads are max x share / 2.5 kg with maxes
 * in hundredths and shares in 72nds or thousandths, the rest are quotients by at most 30,000 hundredths. Doubles err by
 * some 1e-13 here, so a nudge in between makes the cut exact. */
#define NUDGE 1e-7

/* What hangs on the load of a top set, by its steps. */
static struct below_top {
    int warm_up, back_off; /* in steps */
} below_top[LOADS];

/* A lift's rows of one week: loads in steps, per cents in tenths, efforts in quarters. */
struct numbers {
    int top[WEEKS], warm_up[WEEKS], back_off[WEEKS], work[WEEKS];
    int top_tenths[WEEKS], warm_up_tenths[WEEKS], back_off_tenths[WEEKS], work_tenths[WEEKS];
    int back_off_quarters[WEEKS], work_quarters[WEEKS];
};

static double top_steps[WEEKS], work_steps[WEEKS]; /* the load a kilogram of max, in steps */

/* The nearest load to one of so many steps from nothing; of two as near the lighter. For no less than the bar. */
static inline int nearest(double steps)
{
    return (int)(steps - BAR / STEP + 0.5 - NUDGE);
}

static void shares_make(void)
{
    for (int i = 0; i < WEEKS; i++) {
        /* A single at rpe S is 11 - S repetitions, n, and those are (37 - n) / 36 of the max. */
        top_steps[i] = (52 + week_plans[i].top_halves) / (72 * STEP);
        work_steps[i] = week_plans[i].work_tenths / (1000 * STEP);
    }
    for (int i = 0; i < LOADS; i++) {
        double steps = BAR / STEP + i, half = steps / 2;
        below_top[i].warm_up = half < BAR / STEP ? 0 : nearest(half);
        below_top[i].back_off = steps * 0.85 < BAR / STEP ? 0 : nearest(steps * 0.85);
    }
}

static void tenths_work_out(int *tenths, const int *steps, double a_kilo)
{
    for (int i = 0; i < WEEKS; i++)
        tenths[i] = (int)((BAR + STEP * steps[i]) * a_kilo + (0.5 + NUDGE));
}

/* The effort is reps + 10 - n, where a share p of the max allows n = 37 - 36 p repetitions from 3/4 on, and 30 / p - 30
 * below. The lower of the two efforts is the right one: they meet at 3/4, and the second is lower just below that. */
static void quarters_work_out(int *quarters, const int *steps, int reps, double max)
{
    for (int i = 0; i < WEEKS; i++) {
        double load = BAR + STEP * steps[i];
        double heavy = load * (144 / max) + 4 * (reps - 27), light = 4 * (reps + 40) - 120 * max / load;
        double lower = heavy < light ? heavy : light;
        quarters[i] = (int)((lower > 0 ? lower : 0) + NUDGE);
    }
}

static void lift_work_out(struct numbers *of, double max)
{
    for (int i = 0; i < WEEKS; i++) {
        of->top[i] = nearest(max * top_steps[i]);
        of->work[i] = nearest(max * work_steps[i]);
    }
    for (int i = 0; i < WEEKS; i++) {
        of->warm_up[i] = below_top[of->top[i]].warm_up;
        of->back_off[i] = below_top[of->top[i]].back_off;
    }
    tenths_work_out(of->top_tenths, of->top, 1000 / max);
    tenths_work_out(of->warm_up_tenths, of->warm_up, 1000 / max);
    tenths_work_out(of->back_off_tenths, of->back_off, 1000 / max);
    tenths_work_out(of->work_tenths, of->work, 1000 / max);
    quarters_work_out(of->back_off_quarters, of->back_off, 5, max);
    quarters_work_out(of->work_quarters, of->work, 4, max);
}

/* ---- rows ---- */

struct athlete {
    char name[NAME];
    size_t length;
    struct numbers lifts[LIFTS];
};

static inline char *put(char *to, const char *text, size_t width)
{
    memcpy(to, text, width);
    return to + text[width - 1];
}

static inline char *name_put(char *to, const struct athlete *athlete)
{
    memcpy(to, athlete->name, NAME);
    return to + athlete->length;
}

#define PUT(to, text) put(to, (text).bytes, sizeof(text).bytes)
#define ROW_PUT(to, text) PUT(name_put(to, athlete), text)

static char *first_write(char *to, const struct day *day, const struct athlete *athlete, const struct numbers *of,
                         int week)
{
    to = ROW_PUT(to, day->warm_up);
    to = PUT(to, per_cents[of->warm_up_tenths[week]]);
    to = PUT(to, plain[of->warm_up[week]]);
    to = ROW_PUT(to, day->top);
    to = PUT(to, per_cents[of->top_tenths[week]]);
    to = PUT(to, plain[of->top[week]]);
    to = ROW_PUT(to, day->back_off);
    to = PUT(to, efforts[of->back_off_quarters[week]]);
    to = PUT(to, per_cents[of->back_off_tenths[week]]);
    return PUT(to, rested[of->back_off[week]]);
}

static char *second_write(char *to, const struct day *day, const struct athlete *athlete, const struct numbers *of,
                          int week)
{
    to = ROW_PUT(to, day->work);
    to = PUT(to, efforts[of->work_quarters[week]]);
    to = PUT(to, per_cents[of->work_tenths[week]]);
    return PUT(to, plain[of->work[week]]);
}

static char *others_write(char *to, const struct day *day, const struct athlete *athlete)
{
    to = ROW_PUT(to, day->rows);
    to = ROW_PUT(to, day->last_row);
    to = ROW_PUT(to, day->press);
    to = ROW_PUT(to, day->pulldown);
    to = ROW_PUT(to, day->curl);
    return ROW_PUT(to, day->plank);
}

static char *athlete_write(char *to, const struct athlete *athlete)
{
    const struct day *day = days;
    for (int week = 0; week < WEEKS; week++)
        for (int i = 0; i < DAYS; i++, day++) {
            to = first_write(to, day, athlete, &athlete->lifts[day_plans[i].first], week);
            to = second_write(to, day, athlete, &athlete->lifts[day_plans[i].second], week);
            to = others_write(to, day, athlete);
        }
    return to;
}

/* ---- roster in, rows out ---- */

enum { ROSTER = 1 << 16, LINE_MOST = 128, ROWS = 1 << 18 };
enum { ATHLETE_MOST = WEEKS * DAYS * 10 * 160 }; /* ten rows a day, more bytes than any has */

struct roster {
    int file;
    char *at, *past;
    char bytes[ROSTER + 1]; /* a 0 behind what is read */
};

/* Three lines whole from `at` on, if there are so many. */
static void roster_fill(struct roster *roster)
{
    size_t left = (size_t)(roster->past - roster->at);
    if (left >= LIFTS * LINE_MOST)
        return;
    memmove(roster->bytes, roster->at, left);
    roster->at = roster->bytes;
    for (ssize_t got = 1; got > 0 && left < LIFTS * LINE_MOST; left += (size_t)got)
        if ((got = read(roster->file, roster->bytes + left, ROSTER - left)) < 0)
            end("the roster cannot be read");
    roster->past = roster->bytes + left;
    *roster->past = 0;
}

static void roster_expect(struct roster *roster, const char *text, size_t length)
{
    if (strncmp(roster->at, text, length))
        end("the roster is not one of `make`");
    roster->at += length;
}

static double roster_max(struct roster *roster)
{
    int whole = 0, hundredths = 0, scale = 10;
    char *at = roster->at;
    for (; *at >= '0' && *at <= '9' && whole <= MAX_MOST; at++)
        whole = 10 * whole + *at - '0';
    if (*at == '.')
        for (at++; *at >= '0' && *at <= '9' && scale; at++, scale /= 10)
            hundredths += scale * (*at - '0');
    int max = 100 * whole + hundredths;
    if (max < 100 * MAX_LEAST || max > 100 * MAX_MOST)
        end("a max is out of range");
    roster->at = at;
    return max / 100.0;
}

/* The name of the next athlete; false: there is none. */
static bool roster_name(struct roster *roster, struct athlete *athlete)
{
    roster_fill(roster);
    if (roster->at == roster->past)
        return false;
    const char *comma = memchr(roster->at, ',', NAME + 1);
    if (!comma)
        end("a name is too long");
    athlete->length = (size_t)(comma - roster->at);
    memcpy(athlete->name, roster->at, athlete->length);
    return true;
}

static void roster_lift(struct roster *roster, struct athlete *athlete, enum lift lift, const char *cells)
{
    static const char rest[] = ",kg,2026-12-20\n";
    roster_expect(roster, athlete->name, athlete->length);
    roster_expect(roster, cells, strlen(cells));
    double max = roster_max(roster);
    roster_expect(roster, rest, sizeof rest - 1);
    lift_work_out(&athlete->lifts[lift], max);
}

static bool athlete_read(struct roster *roster, struct athlete *athlete)
{
    if (!roster_name(roster, athlete))
        return false;
    roster_lift(roster, athlete, SQUAT, ",hall,squat,");
    roster_lift(roster, athlete, BENCH, ",hall,bench,");
    roster_lift(roster, athlete, DEADLIFT, ",hall,deadlift,");
    return true;
}

static void rows_flush(const char *from, const char *to)
{
    while (from < to) {
        ssize_t written = write(STDOUT_FILENO, from, (size_t)(to - from));
        if (written < 0)
            end("the rows cannot be written");
        from += written;
    }
}

int main(int argc, char **argv)
{
    static const char heading[] = "athlete,gym,lift,max,unit,date\n";
    static const char columns[] =
        "athlete,block,week,date,day,seq,lift,role,sets,reps_low,reps_high,rpe,percent,load,unit,"
        "per_side,rest_s,tempo,note,done_load,done_reps,done_rpe\n";
    static struct roster roster;
    static struct athlete athlete;
    static char rows[ROWS + ATHLETE_MOST];
    roster.file = argc == 2 ? open(argv[1], O_RDONLY) : -1;
    if (roster.file < 0)
        end("usage: rows_fast ROSTER");
    roster.at = roster.past = roster.bytes;
    numbers_make();
    loads_make();
    days_make();
    shares_make();
    roster_fill(&roster);
    roster_expect(&roster, heading, sizeof heading - 1);
    char *to = stpcpy(rows, columns);
    while (athlete_read(&roster, &athlete)) {
        to = athlete_write(to, &athlete);
        if (to >= rows + ROWS) {
            rows_flush(rows, to);
            to = rows;
        }
    }
    rows_flush(rows, to);
    return 0;
}
