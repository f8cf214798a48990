/* Session load; src/plan/review.h. The week 420 0 600 0 630 225 0: sum 1875, sd with n - 1 283.3410, monotony 0.9454,
 * strain 1772.54 (python3's statistics.stdev). */
#include "reviewed.h"

#include <inttypes.h>

static const char *loads_text(struct looked *l)
{
    struct review_loads loads = review_loads(l->review);
    struct review_unrated unrated = review_unrated(l->review);
    const char *text = "";
    for (int i = 0; i < loads.count; i++) {
        const struct review_load *load = &loads.at[i];
        text = arena_format(l->t.arena, "%s%s %d/%d %" PRId64 " min %s", text, date_text(l->t.arena, load->monday), load->rated,
                            load->sessions, load->minutes, dec_text(l->t.arena, load->load));
        if (load->has_monotony)
            text = arena_format(l->t.arena, "%s %s %s", text, dec_text(l->t.arena, load->monotony),
                                dec_text(l->t.arena, load->strain));
        text = arena_format(l->t.arena, "%s\n", text);
    }
    for (int i = 0; i < unrated.count; i++)
        text = arena_format(l->t.arena, "%s%s%s", text, i ? " " : "not ",
                            date_text(l->t.arena, unrated.at[i]->diary->date));
    return text;
}

#define WEEK                                                                                                           \
    "2027-01-04 A { session rpe 7 for 60 min }\n2027-01-06 { session rpe 7.5 for 80 min }\n2027-01-08 B { session "    \
    "rpe 7 for 90 min }\n"                                                                                             \
    "2027-01-09 C { session rpe 5 for 45 min }\n"

struct loaded_weeks {
    const char *says, *diary, *from, *loads;
};
static const struct loaded_weeks rows[] = {
    { "the week of the reference", WEEK, "", "2027-01-04 4/4 275 min 1875 0.95 1773\n" },
    /* 420 and six days of rest: mean 60, sd 158.745, monotony 0.378, strain 158.7. */
    { "two sessions of a day are one day",
      "2027-01-05 { session rpe 7 for 30 min }\n2027-01-05 { session rpe 7 for 30 min }", "",
      "2027-01-04 2/2 60 min 420 0.38 159\n" },
    { "a week with a session that is not rated is left open",
      WEEK "2027-01-10 { session rpe 8; squat 60 kg x 5 }\n2027-01-11 A { squat as planned; press as planned }", "",
      "2027-01-04 4/5 275 min 1875\n2027-01-11 0/1 0 min 0\nnot 2027-01-10 2027-01-11" },
    { "a missed session is a day of rest", WEEK "2027-01-05 missed", "", "2027-01-04 4/4 275 min 1875 0.95 1773\n" },
    { "a week between has none", "2027-01-04 A { session rpe 7 for 60 min }\n2027-01-24 { session rpe 7 for 60 min }",
      "", "2027-01-04 1/1 60 min 420 0.38 159\n2027-01-11 0/0 0 min 0\n2027-01-18 1/1 60 min 420 0.38 159\n" },
    { "the whole of a week that is looked at in part", WEEK, "2027-01-08", "2027-01-04 4/4 275 min 1875 0.95 1773\n" },
};

static void loads_hold(void **state)
{
    const struct loaded_weeks *row = *state;
    struct looked l = look_back(row->diary, (struct review_scope){ .outside = true, .from = day_of(row->from) });
    assert_string_equal(loads_text(&l), row->loads);
    look_away(&l);
}

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, loads_hold));
    return tests_run(&tests);
}
