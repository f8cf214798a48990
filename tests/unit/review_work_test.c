/* Planned against done; src/plan/review.h. Sums by hand: squat is 1 x 90 and 15 x 75, 1215 kg, a mean of 75.94; press
 * 2 x 8 (the low end, with a progression) x 15 kg, twice for the pair 480; three pull-ups of five are 15 x 65 = 975. */
#include "reviewed.h"

#include <inttypes.h>

static const char *amount_text(struct looked *l, const struct review_amount *amount)
{
    const char *loads = "";
    if (amount->loaded)
        loads = arena_format(l->t.arena, " %s kg %s",
                             hundredths(l, ratio_div(amount->shown, ratio_int(amount->loaded * DEC_ONE))),
                             hundredths(l, ratio_div(amount->total, ratio_int(DEC_ONE))));
    return arena_format(l->t.arena, "%" PRId64 "x%" PRId64 "%s", amount->sets, amount->reps, loads);
}

static const char *works_text(struct looked *l)
{
    struct review_works works = review_works(l->review);
    const char *text = "";
    for (int i = 0; i < works.count; i++) {
        const struct review_work *work = &works.at[i];
        struct ratio percent;
        bool planned = review_percent(work, &percent);
        text = arena_format(l->t.arena, "%s%d %s: %s, %s", text, work->week->number, work->lift->name,
                            amount_text(l, &work->planned), amount_text(l, &work->done));
        if (work->apart.sets)
            text = arena_format(l->t.arena, "%s, apart %s", text, amount_text(l, &work->apart));
        if (work->rated)
            text = arena_format(l->t.arena, "%s, rpe %s/%s of %d", text,
                                hundredths(l, ratio_div(work->asked_sum, ratio_int(work->rated))),
                                hundredths(l, ratio_div(work->rated_sum, ratio_int(work->rated))), work->rated);
        text =
            arena_format(l->t.arena, "%s%s%s%s%s%s\n", text, planned ? ", " : "", planned ? hundredths(l, percent) : "",
                         planned ? "%" : "", work->fell_short ? ", short" : "",
                         work->as ? arena_format(l->t.arena, ", as %s", work->as->name) : "");
    }
    return text;
}

struct compared {
    const char *says, *diary, *works;
};

#define SQUAT "1 squat: 4x16 75.94 kg 1215, "
#define PRESS "1 press: 2x16 15 kg 480, "
#define PULL "1 pull-up: 3x15 5 kg 975, "
#define CURL "1 curl: 0x30 10 kg 300, "
#define SLED "1 sled: 2x0, "

static const struct compared rows[] = {
    { "as planned is all of it", "2027-01-04 A { squat as planned; press as planned }",
      SQUAT "4x16 75.94 kg 1215, 100%\n" PRESS "2x16 15 kg 480, 100%\n" },
    /* 1 x 90, 14 x 75 is 1140 over 15 reps, 76; rated sets: 6.5 and 8 against 6.5 and 5 twice, 7.33 and 5.5. */
    { "reps short, efforts of the sets that were rated",
      "2027-01-04 A { squat 90 kg x 1 rpe 6 then 75 kg x 5, 5, 4 rpe 7, 8, 8; press 15 kg x 10, 9 }",
      SQUAT "4x15 76 kg 1140, rpe 5.38/7.25 of 4, 93.75%, short\n" PRESS "2x19 15 kg 570, 118.75%\n" },
    { "lighter than a per cent asks for falls short with all reps done",
      "2027-01-04 A { squat 90 kg x 1 then 70 kg x 5, 5, 5; press as planned }",
      SQUAT "4x16 71.25 kg 1140, 100%, short\n" PRESS "2x16 15 kg 480, 100%\n" },
    { "a failed rep is none, and its set no set",
      "2027-01-04 A { squat 90 kg x 0 then 75 kg x 5, 5, 5; press as planned }",
      SQUAT "3x15 75 kg 1125, 93.75%, short\n" PRESS "2x16 15 kg 480, 100%\n" },
    { "left out, skipped, unnamed", "2027-01-04 A { squat skipped }", SQUAT "0x0, 0%\n" PRESS "0x0, 0%\n" },
    { "missed as a whole", "2027-01-04 A missed", SQUAT "0x0, 0%\n" PRESS "0x0, 0%\n" },
    { "other parts than groups, and what nobody planned, are counted apart",
      "2027-01-04 A { squat 90 kg x 1; press as planned; pulldown 40 kg x 8, 8 }",
      SQUAT "0x0, apart 1x1 90 kg 90, 0%\n" PRESS
            "2x16 15 kg 480, 100%\n1 pulldown: 0x0, 0x0, apart 2x16 40 kg 640\n" },
    { "what is added and the total",
      "2027-01-04 A missed\n2027-01-07 B { pull-up bodyweight plus 7.5 kg x 5, 5, 5; curl as planned; sled 40 kg x 20, "
      "20 }",
      SQUAT "0x0, 0%\n" PRESS "0x0, 0%\n" PULL "3x15 7.5 kg 1012.5, 100%\n" CURL "0x30 10 kg 300, 100%\n" SLED
            "2x0, 100%\n" },
    { "the other choice has loads of its own",
      "2027-01-04 A missed\n2027-01-07 B { pulldown 40 kg x 5, 5, 5; curl 10 kg x 10, 10, 10; sled skipped }",
      SQUAT "0x0, 0%\n" PRESS "0x0, 0%\n" PULL "3x15, 100%, as pulldown\n" CURL "3x30 10 kg 300, 100%\n" SLED
            "0x0, 0%\n" },
    { "an optional day counts when it was trained", "2027-01-04 A missed\n2027-01-09 C { bench 45 kg x 5, 5 rpe 7.5 }",
      SQUAT "0x0, 0%\n" PRESS "0x0, 0%\n" PULL "0x0, 0%\n" CURL "0x0, 0%\n" SLED "0x0, 0%\n"
            "1 bench: 2x10 47.5 kg 475, 2x10 45 kg 450, rpe 7/7.5 of 1, 100%\n" },
    { "outside all blocks", "2027-02-06 { squat 60 kg x 5, 5 }", "0 squat: 0x0, 0x0, apart 2x10 60 kg 600\n" },
};

static void compared_holds(void **state)
{
    const struct compared *row = *state;
    struct looked l = look_back(row->diary, (struct review_scope){ .outside = true });
    assert_string_equal(works_text(&l), row->works);
    look_away(&l);
}

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, compared_holds));
    return tests_run(&tests);
}
