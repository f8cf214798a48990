#include "emit/brief.h"

enum { LINE_LONG = 1000 };

static const char blank[] = "______";

void say_count(struct out *say, int64_t count, const char *one, const char *many)
{
    out_int(say, count);
    out_char(say, ' ');
    out_text(say, count == 1 ? one : many);
}

static void say_band(struct out *say, int low, int high)
{
    out_int(say, low);
    if (low != high) {
        out_char(say, '-');
        out_int(say, high);
    }
}

void say_seconds(struct out *say, struct seconds_band band)
{
    int unit = band.low % 60 == 0 && band.high % 60 == 0 ? 60 : 1;
    say_band(say, band.low / unit, band.high / unit);
    out_text(say, unit == 60 ? " min" : " s");
}

void say_weight(struct out *say, struct weight weight, enum weight_unit unit)
{
    out_weight(say, weight, unit);
    out_char(say, ' ');
    out_text(say, unit_word(unit));
}

void say_date(struct out *say, struct date date, bool month, bool year)
{
    int y, m, d;
    date_parts(date, &y, &m, &d);
    out_bytes(say, weekday_title(date_weekday(date)), 3);
    out_char(say, ' ');
    out_int(say, d);
    if (month) {
        out_char(say, ' ');
        out_text(say, month_title(m));
    }
    if (year) {
        out_char(say, ' ');
        out_int(say, y);
    }
}

void say_week_dates(struct out *say, struct date first)
{
    struct date last = date_plus(first, 6);
    if (!date_is_set(last)) {
        say_date(say, first, true, true);
        return;
    }
    int year, month, day, last_year, last_month, last_day;
    date_parts(first, &year, &month, &day);
    date_parts(last, &last_year, &last_month, &last_day);
    say_date(say, first, month != last_month, year != last_year);
    out_text(say, " to ");
    say_date(say, last, true, true);
}

/* Sets and repetitions */

static void say_cluster(struct out *say, const struct plan_group *group)
{
    const struct group *written = group->group;
    int sum = 0;
    for (int i = 0; i < group_more(written)->cluster_count; i++)
        sum += group_more(written)->cluster[i];
    if (sum != group->reps_low) { /* a change has moved the sum */
        out_int(say, group->reps_low);
        out_text(say, " reps in small parts");
        return;
    }
    for (int i = 0; i < group_more(written)->cluster_count; i++) {
        if (i > 0)
            out_char(say, '+');
        out_int(say, group_more(written)->cluster[i]);
    }
    out_text(say, " reps");
}

static void say_reps(struct out *say, const struct plan_group *group)
{
    switch (group->reps_kind) {
    case REPS_AMRAP:
        out_text(say, "as many reps as you can");
        if (group->reps_low > 0) {
            out_text(say, ", at least ");
            out_int(say, group->reps_low);
        }
        break;
    case REPS_CLUSTER:
        say_cluster(say, group);
        break;
    default:
        say_band(say, group->reps_low, group->reps_high);
        out_text(say, group->reps_kind == REPS_SECONDS  ? " s"
                      : group->reps_kind == REPS_METRES ? " m"
                      : group->reps_high == 1           ? " rep"
                                                        : " reps");
    }
    if (group->group->each_side)
        out_text(say, " each side");
}

static int rounds_of(const struct row *row)
{
    return row->entry->rounds > 0 ? row->entry->rounds : 1;
}

static bool is_sets_band(const struct row *row)
{
    return row->group->sets_low != row->group->sets_high;
}

int sets_most(const struct row *row)
{
    if (row->group->reps_kind == REPS_TOTAL)
        return 0;
    if (is_sets_band(row))
        return row->group->sets_high * rounds_of(row);
    int sets = 0;
    for (int i = 0; i < row->group->run_count; i++)
        sets += row->group->runs[i].sets;
    return sets;
}

void say_sets(struct out *say, const struct row *row)
{
    const struct plan_group *group = row->group;
    if (group->reps_kind == REPS_TOTAL) {
        say_count(say, group->reps_high, "rep", "reps");
        out_text(say, group->group->each_side ? " each side in all, in as many sets as it takes"
                                              : " in all, in as many sets as it takes");
        return;
    }
    if (is_sets_band(row)) {
        say_band(say, group->sets_low * rounds_of(row), group->sets_high * rounds_of(row));
        out_text(say, " sets");
    } else {
        say_count(say, row->run->sets, "set", "sets");
    }
    out_text(say, " x ");
    say_reps(say, group);
}

/* Effort */

void say_rpe(struct out *say, const char *before, struct dec low, struct dec high)
{
    out_text(say, before);
    out_text(say, "rpe ");
    out_dec(say, low);
    if (low.e10 != high.e10) {
        out_char(say, '-');
        out_dec(say, high);
    }
}

/* Repetitions left, where counting them says something: from rpe 5 up. */
static void say_left(struct out *say, const struct plan_group *group, struct dec low, struct dec high)
{
    if (group->reps_kind == REPS_SECONDS || group->reps_kind == REPS_METRES || low.e10 < 5 * DEC_ONE)
        return;
    int least = (int)(10 - dec_ceil(high)), most = (int)(10 - dec_floor(low));
    if (most == 0) {
        out_text(say, " (nothing left)");
        return;
    }
    out_text(say, " (");
    say_band(say, least, most);
    out_text(say, " left)");
}

void say_effort(struct out *say, const struct row *row)
{
    const struct plan_run *run = row->run;
    if (row->group->role == ROLE_WARM_UP)
        return;
    if (run_shows_expected(run)) {
        if (run->expected_under_one) {
            out_text(say, "should feel very easy");
            return;
        }
        say_rpe(say, "should feel like ", run->expected, run->expected);
        say_left(say, row->group, run->expected, run->expected);
    } else if (run->has_effort) {
        say_rpe(say, "", run->effort_low, run->effort_high);
        say_left(say, row->group, run->effort_low, run->effort_high);
    }
}

/* Loads */

static bool is_bodyweight(const struct row *row)
{
    return row->entry->lift->loads == LOADS_BODYWEIGHT;
}

bool is_body_alone(const struct row *row)
{
    enum load_kind kind = row->group->group->load_kind;
    if (!is_bodyweight(row) || (kind != LOAD_BODYWEIGHT && kind != LOAD_NONE))
        return false;
    return !row->run->has_load || row->run->shown.e10 == 0;
}

static void say_equipment(struct out *say, const struct lift *lift)
{
    if (lift->loads == LOADS_DUMBBELLS)
        out_text(say, " a hand");
    if (!lift->equipment)
        return;
    out_text(say, " on the ");
    out_text(say, lift->equipment);
    out_text(say, lift->loads == LOADS_STACK ? " stack" : " bar");
}

static void say_added(struct out *say, struct weight shown, enum weight_unit unit)
{
    out_text(say, "bodyweight");
    if (shown.e10 == 0)
        return;
    out_text(say, shown.e10 > 0 ? " + " : " - ");
    say_weight(say, (struct weight){ shown.e10 < 0 ? -shown.e10 : shown.e10 }, unit);
    if (shown.e10 < 0)
        out_text(say, " assistance");
}

static void say_open(struct out *say, const struct row *row)
{
    if (row->run->open) {
        out_text(say, row->run->open);
    } else if (is_bodyweight(row)) {
        out_text(say, row->run->has_effort ? "bodyweight, made harder or easier to reach " : "bodyweight");
        say_effort(say, row);
        return;
    } else {
        out_text(say, row->run->has_effort ? "choose a load for " : "choose a load");
        say_effort(say, row);
    }
    out_text(say, ": ");
    out_text(say, blank);
    out_char(say, ' ');
    out_text(say, unit_word(row->day->gym->unit));
    say_equipment(say, row->entry->lift);
}

void say_load(struct out *say, const struct row *row)
{
    if (!row->run->has_load) {
        say_open(say, row);
    } else if (is_bodyweight(row)) {
        say_added(say, row->run->shown, row->day->gym->unit);
    } else {
        say_weight(say, row->run->shown, row->day->gym->unit);
        say_equipment(say, row->entry->lift);
    }
}

void say_discs(struct out *say, const struct row *row)
{
    const struct plan_run *run = row->run;
    if (!run->has_load || run->disc_count < 0 || row->entry->lift->loads != LOADS_BAR)
        return;
    if (run->disc_count == 0) {
        out_text(say, "the empty bar");
        return;
    }
    out_text(say, "discs a side: ");
    for (int i = 0; i < run->disc_count; i++) {
        if (i > 0)
            out_text(say, " + ");
        out_weight(say, run->discs[i], row->day->gym->unit);
    }
    out_char(say, ' ');
    out_text(say, unit_word(row->day->gym->unit));
}

/* Warm-ups */

bool is_plain_warm_up(const struct row *row)
{
    const struct group *group = row->group->group;
    enum reps_kind kind = row->group->reps_kind;
    return row->group->role == ROLE_WARM_UP && row->run->has_load && !row->run->capped && !is_sets_band(row) &&
           (kind == REPS_COUNT || kind == REPS_SECONDS || kind == REPS_METRES) && !group->rest.high && !group->pause.high &&
           !group_more(group)->every_s && !group->tempo && !group->optional && !group->note_count && !group_more(group)->until_effort.series &&
           group_more(group)->until_speed.e10 == 0;
}

void say_warm_up(struct out *say, const struct row *row)
{
    if (row->run->sets > 1) {
        say_count(say, row->run->sets, "set", "sets");
        out_text(say, " of ");
    }
    say_load(say, row);
    out_text(say, " x ");
    say_band(say, row->group->reps_low, row->group->reps_high);
    if (row->group->reps_kind != REPS_COUNT)
        out_text(say, row->group->reps_kind == REPS_SECONDS ? " s" : " m");
    if (row->group->group->each_side)
        out_text(say, " each side");
    size_t before = say->used;
    out_text(say, ", ");
    size_t start = say->used;
    brief_discs(say, row, 0, LINE_LONG);
    if (say->used == start)
        say->used = before;
    else if (row->run->disc_count)
        out_text(say, " a side");
}
