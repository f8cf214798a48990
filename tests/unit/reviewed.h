/* A diary looked back at: the hall's lifter, a block of four weeks and what she wrote down. */
#ifndef TESTS_UNIT_REVIEWED_H
#define TESTS_UNIT_REVIEWED_H

#include "club.h"

#include "emit/review_page.h"

/* Per cents of round maxes: 90 kg and 75 kg of squat; expected rpe by Brzycki, n = 37 - 36 x share: 90 % is n = 4.6,
 * a single of it rpe 6.4, to the half 6.5; 75 % is n = 10, five of it rpe 5. */
#define REVIEWED \
    "progression push { when reps full add 1 step }\n" \
    "athlete ines { title \"Ines Corrado\"; gym hall; bodyweight 60 kg on 2026-12-28\n" \
    "  max squat 100 kg on 2026-12-28; max bench 60 kg on 2026-12-28; max pull-up 80 kg on 2026-12-28 }\n" \
    "block winter { title \"Winter base\"; for ines; starts 2027-01-04; weeks 4; deload week 4 { sets to 50% }\n" \
    "  day A on mon { squat { top 1 x 1 at 90%; 3 x 5 at 75% }; press 2 x 8-12 at 15 kg progression push }\n" \
    "  day B on thu { pull-up or pulldown 3 x 5 at bodyweight plus 5 kg; curl total 30 at 10 kg; sled 2 x 20 m at 40 kg } \n" \
    "  day C on sat { optional; bench 2 x 5 at rpe 7 } }\n"

struct looked {
    struct told t;
    struct review *review;
};

static inline struct date day_of(const char *text)
{
    struct date date = { 0 };
    assert_true(!*text || date_parse(text, strlen(text), &date));
    return date;
}

/* `diary`: its lines. `scope`: but for the plans. */
static inline struct looked look_back(const char *diary, struct review_scope scope)
{
    char text[8192];
    struct looked looked;
    struct record *record;
    assert_true(snprintf(text, sizeof text, "%sdiary ines {\n%s\n}\n", REVIEWED, diary) < (int)sizeof text);
    looked.t = told_club(text);
    if (!looked.t.model)
        fail_msg("%s", findings_text(&looked.t));
    const struct plan **plans = NEW_MANY(looked.t.arena, const struct plan *, 1);
    plans[0] = told_plan_record(&looked.t, "winter", "ines", &record);
    if (findings_count(looked.t.findings, LEVEL_ERROR))
        fail_msg("%s", findings_text(&looked.t));
    scope.plans = plans;
    scope.plan_count = 1;
    looked.review = review_new(looked.t.arena, record, &scope);
    return looked;
}

static inline void look_away(struct looked *looked)
{
    told_end(&looked->t);
}

/* A part of the page, such as review_chart, as text. */
static inline const char *part_text(struct looked *looked, void (*part)(struct review_page *page))
{
    struct out out = out_scratch(looked->t.arena);
    struct review_page page = { .out = &out,
                                .arena = looked->t.arena,
                                .lines = lines_new(&out, looked->t.arena),
                                .say = out_scratch(looked->t.arena),
                                .review = looked->review };
    part(&page);
    out_char(&out, '\0');
    return out.at;
}

static inline const char *hundredths(struct looked *looked, struct ratio number)
{
    return dec_text(looked->t.arena, ratio_nearest(number, (struct dec){ DEC_ONE / 100 }));
}

static inline const char *kilos(struct looked *looked, struct weight weight)
{
    return dec_text(looked->t.arena, weight_in(weight, UNIT_KG));
}

#endif
