/* Bests; src/plan/review.h. Estimates by Brzycki: load x 36 / (37 - n), n = reps + 10 - rpe; 80 x 5 at rpe 8 is n =
 * 7, 80 x 36 / 30 = 96; 92.5 x 1 at rpe 8 is n = 3, 92.5 x 36 / 34 = 97.94 (bc). */
#include "reviewed.h"

static const char *bests_text(struct looked *l, const char *lift)
{
    struct review_bests bests = review_bests(l->review, model_lift(l->t.model, lift));
    const char *text = "";
    for (int i = 0; i < bests.count; i++)
        text = arena_format(l->t.arena, "%s%s%dx%s(%s) %s%s", text, i ? ", " : "", bests.at[i].reps,
                            kilos(l, bests.at[i].shown), kilos(l, bests.at[i].load),
                            date_text(l->t.arena, bests.at[i].date), bests.at[i].in_period ? "" : " before");
    if (bests.has_estimate)
        text = arena_format(l->t.arena, "%s; %s of %dx%s %s%s", text, kilos(l, bests.estimate), bests.from->reps,
                            kilos(l, bests.from->shown), date_text(l->t.arena, bests.estimate_date),
                            bests.estimate_in_period ? "" : " before");
    return text;
}

struct best_row {
    const char *says, *diary, *lift, *from, *to, *bests;
};
static const struct best_row rows[] = {
    /* 80 x 36 / 29 = 99.31, and the six at rpe 8 as much. */
    { "the heaviest for so many reps",
      "2027-01-04 { squat 80 kg x 5, 5, 6 rpe 7, 8, 8 then 92.5 kg x 1 rpe 8 }\n2027-01-06 { squat 85 kg x 5, 3 }",
      "squat", "", "",
      "1x92.5(92.5) 2027-01-04, 5x85(85) 2027-01-06, 6x80(80) 2027-01-04; 99.3 of 5x80 2027-01-04" },
    { "of two as heavy the first", "2027-01-04 { squat 80 kg x 5 }\n2027-01-06 { squat 80 kg x 5 }", "squat", "", "",
      "5x80(80) 2027-01-04" },
    { "a longer set as heavy says more", "2027-01-04 { squat 80 kg x 3, 5, 0 }", "squat", "", "",
      "5x80(80) 2027-01-04" },
    { "before the time looked at, and never after it",
      "2027-01-04 { squat 80 kg x 5 rpe 8 }\n2027-01-06 { squat 85 kg x 3 }\n2027-01-08 { squat 90 kg x 3 }", "squat",
      "2027-01-05", "2027-01-07", "3x85(85) 2027-01-06, 5x80(80) 2027-01-04 before; 96 of 5x80 2027-01-04 before" },
    /* 60 kg of body: 65 x 36 / 30 = 78. */
    { "what is added to the body, and the total", "2027-01-04 { pull-up bodyweight plus 5 kg x 5 rpe 8 }", "pull-up",
      "", "", "5x5(65) 2027-01-04; 78 of 5x5 2027-01-04" },
    { "taken off is less than nothing added", "2027-01-04 { pull-up bodyweight minus 10 kg x 5 then bodyweight x 5 }",
      "pull-up", "", "", "5x0(60) 2027-01-04" },
    { "as planned of the other choice has no load of its own",
      "2027-01-07 B { pulldown as planned rpe 8; curl as planned; sled as planned }", "pulldown", "", "", "" },
    { "seconds and metres are no reps", "2027-01-04 { sled 40 kg x 20 m }", "sled", "", "", "" },
    { "a set too far off is no estimate until a second one agrees",
      "2027-01-04 { squat 80 kg x 5 rpe 8 }\n2027-01-06 { squat 140 kg x 1 rpe 8 }", "squat", "", "",
      "1x140(140) 2027-01-06, 5x80(80) 2027-01-04; 96 of 5x80 2027-01-04" },
    { "let in it is",
      "2027-01-04 { squat 80 kg x 5 rpe 8 }\n2027-01-06 { squat 140 kg x 1 rpe 8; allow unlikely-result because "
      "\"belt\" }",
      "squat", "", "",
      "1x140(140) 2027-01-06, 5x80(80) 2027-01-04; 148.2 of 1x140 2027-01-06" }, /* 140 x 36 / 34 = 148.24 */
};

static void bests_hold(void **state)
{
    const struct best_row *row = *state;
    struct looked l = look_back(
        row->diary, (struct review_scope){ .outside = true, .from = day_of(row->from), .to = day_of(row->to) });
    assert_string_equal(bests_text(&l, row->lift), row->bests);
    look_away(&l);
}

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, bests_hold));
    return tests_run(&tests);
}
