/* A week's totals: language.md 5.10; minutes as checks.md counts them. Every sum is worked beside its row. */
#include "club.h"

#define PEOPLE                                                                                                         \
    "lift plank\n"                                                                                                     \
    "lift lunge { loads dumbbells; works quads }\n"                                                                    \
    "athlete ines { gym hall; bodyweight 60 kg; max squat 100 kg; max press 20 kg; max pull-up 80 kg }\n"

struct sum {
    const char *says, *lines;
    int sets, reps;
    const char *tonnage, *percent; /* percent NULL: none */
    int by_effort[4];
    int minutes;
    const char *muscles; /* halves: "quads 6" */
    const char *lifts;   /* sets × reps: "squat 3/15" */
};

static const struct sum sums[] = {
    { "sets, reps, tonnage, mean per cent",
      "squat 3 x 5 at 80 kg",
      3,
      15,
      "1200",
      "80",
      { 0, 3, 0, 0 }, /* n = 8.2: rpe 6.8 */
      11 /* 3 × (40 + 180) s = 660 */,
      "quads 6, glutes 6, trunk 3",
      "squat 3/15" },
    { "the mean per cent is by reps",
      "squat 1 x 5 at 80 kg then 2 x 10 at 60 kg",
      3,
      25,
      "1600",
      /* (5 × 80 + 20 × 60) / 25 */ "64",
      { 2, 1, 0, 0 },
      /* 60 %: n = 20, rpe 0 */ 11,
      "quads 6, glutes 6, trunk 3",
      "squat 3/25" },
    { "one decimal",
      "squat 1 x 5 at 80 kg then 1 x 10 at 60 kg",
      2,
      15,
      "1000",
      "66.7",
      { 1, 1, 0, 0 },
      8 /* 440 s */,
      "quads 4, glutes 4, trunk 2",
      "squat 2/15" },
    { "warm-ups count in no total but the minutes",
      "squat warm-up 2 x 5 at 50% then 3 x 5 at 80 kg",
      3,
      15,
      "1200",
      "80",
      { 0, 3, 0, 0 },
      13 /* 660 + 2 × 60 */,
      "quads 6, glutes 6, trunk 3",
      "squat 3/15" },
    { "a pair of dumbbells counts double",
      "press 3 x 10 at 10 kg",
      3,
      30,
      "600",
      "50",
      { 3, 0, 0, 0 },
      7 /* 3 × (40 + 90) = 390 s */,
      "shoulders 6",
      "press 3/30" },
    { "each side counts double",
      "curl 3 x 10 at 10 kg each side",
      3,
      30,
      "600",
      NULL,
      { 0, 0, 0, 0 },
      7,
      "",
      "curl 3/30" },
    { "both count fourfold",
      "lunge 2 x 8 at 10 kg each side",
      2,
      16,
      "640",
      NULL,
      { 0, 0, 0, 0 },
      5 /* 260 s */,
      "quads 4",
      "lunge 2/16" },
    { "an open load has no tonnage", "curl 3 x 10 at rpe 8", 3, 30, "0", NULL, { 0, 0, 3, 0 }, 7, "", "curl 3/30" },
    { "seconds and metres are no reps",
      "plank 3 x 30 s at 20 kg then 2 x 20 m at 30 kg",
      5,
      0,
      "0",
      NULL,
      { 0, 0, 0, 0 },
      11 /* 650 s */,
      "",
      "plank 5/0" },
    { "a range counts its middle, halves up",
      "curl 2 x 8-11 at 10 kg",
      2,
      20,
      "200",
      NULL,
      { 0, 0, 0, 0 },
      5,
      "",
      "curl 2/20" },
    { "amrap counts its at least number, and as all she had",
      "squat 1 x amrap at 50 kg at least 8",
      1,
      8,
      "400",
      "50",
      { 0, 0, 0, 1 },
      4 /* 220 s */,
      "quads 2, glutes 2, trunk 1",
      "squat 1/8" },
    { "a total of reps is so many", "curl total 30 at 10 kg", 0, 30, "300", NULL, { 0, 0, 0, 0 }, 0, "", "curl 0/30" },
    { "rounds multiply the sets",
      "superset 3 rounds { curl 1 x 10 at 10 kg; lunge 1 x 5 at 10 kg }",
      6,
      45,
      "600",
      NULL,
      { 0, 0, 0, 0 },
      9 /* a superset rests once a round: 3 × 40 + 3 × (40 + 90) = 510 s */,
      "quads 6",
      "curl 3/30, lunge 3/15" },
    { "a superset for a time",
      "superset for 12 min { curl 3 x 10 at 10 kg; lunge 3 x 5 at 10 kg }",
      6,
      45,
      "600",
      NULL,
      { 0, 0, 0, 0 },
      12,
      "quads 6",
      "curl 3/30, lunge 3/15" },
    { "rest as stated, a band by its middle",
      "squat 3 x 5 at 80 kg rest 2-3 min",
      3,
      15,
      "1200",
      "80",
      { 0, 3, 0, 0 },
      10 /* 3 × (40 + 150) = 570 s */,
      "quads 6, glutes 6, trunk 3",
      "squat 3/15" },
    { "every 60 s is a set a minute",
      "squat 6 x 2 at 80 kg every 60 s",
      6,
      12,
      "960",
      "80",
      { 6, 0, 0, 0 },
      /* n = 8.2, rpe 3.8 */ 6,
      "quads 12, glutes 12, trunk 6",
      "squat 6/12" },
    { "efforts by band",
      "curl 1 x 5 at rpe 4.5 then 1 x 5 at rpe 5 then 1 x 5 at rpe 7 then 1 x 5 at rpe 9",
      4,
      20,
      "0",
      NULL,
      { 1, 1, 1, 1 },
      9 /* 520 s */,
      "",
      "curl 4/20" },
    { "a band of efforts by its middle",
      "curl 2 x 5 at rpe 6-7",
      2,
      10,
      "0",
      NULL,
      { 0, 2, 0, 0 },
      5,
      "",
      "curl 2/10" },
    { "a lift in two entries is one sum",
      "squat 1 x 5 at 80 kg; curl 1 x 5; squat 1 x 3 at 80 kg",
      3,
      13,
      "640",
      "80",
      { 1, 1, 0, 0 }, /* 5: 6.8; 3: 4.8 */
      10 /* 220 + 130 + 220 s */,
      "quads 4, glutes 4, trunk 2",
      "squat 2/8, curl 1/5" },
    { "a bodyweight lift counts its total",
      "pull-up 2 x 5 at bodyweight plus 10 kg",
      2,
      10,
      "700",
      "87.5",
      { 0, 0, 0, 2 },
      /* 70/80: n = 5.5, rpe 9.5 */ 5,
      "back 4",
      "pull-up 2/10" },
};

static const char *muscles_text(struct told *t, const struct plan_totals *totals)
{
    const char *text = "";
    for (int i = 0; i < totals->muscle_count; i++)
        text = arena_format(t->arena, "%s%s%s %d", text, i ? ", " : "", totals->muscles[i].muscle,
                            totals->muscles[i].half_sets);
    return text;
}

static const char *lifts_text(struct told *t, const struct plan_totals *totals)
{
    const char *text = "";
    for (int i = 0; i < totals->lift_count; i++)
        text = arena_format(t->arena, "%s%s%s %d/%d", text, i ? ", " : "", totals->lifts[i].lift->name,
                            totals->lifts[i].sets, totals->lifts[i].reps);
    return text;
}

static void sum_holds(void **state)
{
    const struct sum *sum = *state;
    char text[4096];
    snprintf(text, sizeof text, PEOPLE "block winter { for ines; starts 2027-01-04; weeks 1; day A { %s } }",
             sum->lines);
    struct told t = told_club(text);
    assert_string_equal(findings_text(&t), "");
    const struct plan_totals *totals = &told_plan(&t, "winter", "ines")->weeks[0].totals;
    assert_int_equal(totals->sets, sum->sets);
    assert_int_equal(totals->reps, sum->reps);
    assert_string_equal(number_in(&t, totals->tonnage, UNIT_KG), sum->tonnage);
    assert_int_equal(totals->has_percent, sum->percent != NULL);
    if (sum->percent)
        assert_string_equal(dec_text(t.arena, totals->mean_percent), sum->percent);
    for (int i = 0; i < 4; i++)
        assert_int_equal(totals->by_effort[i], sum->by_effort[i]);
    assert_int_equal(totals->minutes, sum->minutes);
    assert_string_equal(muscles_text(&t, totals), sum->muscles);
    assert_string_equal(lifts_text(&t, totals), sum->lifts);
    told_end(&t);
}

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(sums, sum_holds));
    return tests_run(&tests);
}
