/* Who is alike in which lift: nothing that planning asks of an athlete may differ. */
#include "club.h"
#include "plan/alike.h"

#define MAXES "max squat 100 kg; max bench 60 kg; max sled 1000 kg; bodyweight 60 kg; "
#define BLOCK(lines) "block winter { for all; starts 2027-01-04; weeks 3; day A on mon { " lines " } }\n"
#define ALL_LIFTS(people)                                                                                              \
    people BLOCK(                                                                                                      \
        "squat 3 x 5 at rpe 7; bench 3 x 5 at 70%; sled 2 x 5 at 50% of squat; pull-up 3 x 5 at bodyweight plus 5 kg")

/* Ines and Vera: whether they are alike in squat, bench, sled and pull-up, in this order. NULL: Vera is like nobody. */
static const struct likeness {
    const char *says, *vera, *alike, *more;
} likenesses[] = {
    { "the same maxes, written in another order",
      "gym hall; bodyweight 60 kg; max sled 1000 kg; max bench 60 kg; max squat 100 kg", "1111", NULL },
    { "another max of one lift", "gym hall; " MAXES "max bench 62.5 kg on 2026-12-01", "1011", NULL },
    { "another max of the lift that a load is a share of", "gym hall; " MAXES "max squat 102.5 kg on 2026-12-01",
      "0101", NULL },
    { "no max of a lift", "gym hall; bodyweight 60 kg; max squat 100 kg; max sled 1000 kg", "1011", NULL },
    { "another bodyweight", "gym hall; " MAXES "bodyweight 61 kg on 2026-12-01", "1110", NULL },
    { "another gym", "gym shed; " MAXES, "0000", "gym shed { bar 15 kg; plates 20 x 8, 5 x 2 kg }\n" },
    { "another way to reckon shares", "gym hall; model epley; " MAXES, "0000", NULL },
    { "points of her own for a lift", "gym hall; curve squat 8 reps at 77%; " MAXES, NULL, NULL },
    { "a max that changes while the block is trained", "gym hall; " MAXES "max bench 65 kg on 2027-01-12", NULL, NULL },
    { "a max from after the block", "gym hall; " MAXES "max bench 65 kg on 2027-02-01", "1111", NULL },
    { "a bodyweight that changes while the block is trained", "gym hall; " MAXES "bodyweight 61 kg on 2027-01-12", NULL,
      NULL },
    { "a lift she avoids", "gym hall; avoid bench use sled; " MAXES, NULL, NULL },
    { "an effort line moves no load without results", "gym hall; effort squat 8 means 7; " MAXES, "1111", NULL },
    { "a diary", "gym hall; " MAXES, NULL, "diary vera { 2027-01-04 A { squat 90 kg x 5 rpe 8 } }\n" },
};

static bool find(struct told *t, struct alikes *alikes, struct shapes *shapes, const char *name, struct alike *out)
{
    struct plan_job job = {
        .model = t->model, .block = t->model->blocks[0], .athlete = told_athlete(t, name), .shapes = shapes
    };
    return alike_find(alikes, &job, out);
}

static void plan_all(struct told *t, struct shapes *shapes)
{
    for (int i = 0; i < t->model->athlete_count; i++)
        plan_make(t->arena, &(struct plan_job){ .model = t->model,
                                                .block = t->model->blocks[0],
                                                .athlete = t->model->athletes[i],
                                                .shapes = shapes });
}

static void likeness_holds(void **state)
{
    enum { LIFTS = 4 };
    const struct likeness *likeness = *state;
    struct told t = told_begin();
    const char *text =
        arena_format(t.arena, "athlete ines { gym hall; %s }\nathlete vera { %s }\nathlete jana { gym hall }\n%s%s",
                     MAXES, likeness->vera, likeness->more ? likeness->more : "", ALL_LIFTS(""));
    struct told club = told_club(text);
    assert_string_equal(findings_text(&club), "");
    struct shapes *shapes = shapes_new(club.arena);
    struct alikes *alikes = alikes_new(club.arena);
    struct alike ines, vera;
    plan_all(&club, shapes);
    assert_true(find(&club, alikes, shapes, "ines", &ines));
    assert_int_equal(ines.count, LIFTS);
    int marks[LIFTS];
    memcpy(marks, ines.marks, sizeof marks);
    bool found = find(&club, alikes, shapes, "vera", &vera);
    assert_int_equal(found, likeness->alike != NULL);
    char same[LIFTS + 1] = "";
    for (int i = 0; found && i < LIFTS; i++)
        same[i] = vera.marks[i] == marks[i] ? '1' : '0';
    if (found)
        assert_string_equal(same, likeness->alike);
    told_end(&club);
    told_end(&t);
}

/* The lifts stand in order of first training, and until somebody's plan is made nothing is known of the block. */
static void a_block_is_known_by_its_first_plan(void **state)
{
    (void)state;
    struct told t = told_club(
        ALL_LIFTS("athlete ines { gym hall; " MAXES "}\nathlete vera { gym hall }\nathlete jana { gym hall }\n"));
    struct shapes *shapes = shapes_new(t.arena);
    struct alikes *alikes = alikes_new(t.arena);
    struct alike alike;
    assert_false(find(&t, alikes, shapes, "ines", &alike));
    plan_all(&t, shapes);
    assert_true(find(&t, alikes, shapes, "ines", &alike));
    const char *const lifts[] = { "squat", "bench", "sled", "pull-up" };
    assert_int_equal(alike.count, (int)(sizeof lifts / sizeof *lifts));
    for (int i = 0; i < alike.count; i++)
        assert_string_equal(alike.lifts[i]->name, lifts[i]);
    told_end(&t);
}

/* An `adjust` gives weeks of one's own; loads that hang on more maxes than are looked at are nobody's but hers. */
static void who_is_like_nobody(void **state)
{
    (void)state;
    static const char
        *const
            clubs
                [] = {
                    "block winter { for all; starts 2027-01-04; weeks 3; day A on mon { squat 3 x 5 at rpe 7 }; adjust "
                    "vera { load down 5% } }\n",
                    BLOCK("curl 1 x 5 at 10% of squat then 1 x 5 at 10% of bench then 1 x 5 at 1% of sled then 1 x 5 "
                          "at 10% of press"),
                    "block winter { for vera, ines; starts 2027-01-04; weeks 3; day A on mon { squat 3 x 5 at rpe 7 } "
                    "}\n", /* two share nothing */
                };
    for (int i = 0; i < (int)(sizeof clubs / sizeof *clubs); i++) {
        struct told t = told_begin();
        struct told club = told_club(
            arena_format(t.arena,
                         "athlete ines { gym hall; " MAXES "max press 20 kg }\nathlete vera { gym hall; " MAXES
                         "max press 20 kg }\nathlete jana { gym hall; " MAXES "max press 20 kg }\n%s",
                         clubs[i]));
        assert_string_equal(findings_text(&club), "");
        struct shapes *shapes = shapes_new(club.arena);
        struct alike alike;
        plan_all(&club, shapes);
        assert_false(find(&club, alikes_new(club.arena), shapes, "vera", &alike));
        told_end(&club);
        told_end(&t);
    }
}

/* In a block of more than 64 lifts nobody is compared. */
static void very_many_lifts(void **state)
{
    (void)state;
    for (int count = ALIKE_LIFTS_MOST; count <= ALIKE_LIFTS_MOST + 1; count++) {
        struct told t = told_begin();
        const char *text = "athlete ines { gym hall }\nathlete vera { gym hall }\nathlete jana { gym hall }\n", *day = "";
        for (int i = 0; i < count; i++) {
            text = arena_format(t.arena, "%slift l%d\n", text, i);
            day = arena_format(t.arena, "%sl%d 1 x 5 at 20 kg\n", day, i);
        }
        struct told club = told_club(arena_format(t.arena, "%sblock winter { for all; starts 2027-01-04; weeks 1; day A on mon {\n%s} }\n", text, day));
        struct shapes *shapes = shapes_new(club.arena);
        struct alike alike;
        plan_all(&club, shapes);
        assert_int_equal(find(&club, alikes_new(club.arena), shapes, "vera", &alike), count == ALIKE_LIFTS_MOST);
        told_end(&club);
        told_end(&t);
    }
}

/* A plan of which something was said is not handed on: the next one has to hear it too. */
static void what_is_said_is_said_to_each(void **state)
{
    (void)state;
    struct told t = told_club("athlete ines { gym hall; max squat 100 kg }\nathlete vera { gym hall; max squat 100 kg "
                              "}\nathlete jana { gym hall }\n" BLOCK("squat 1 x 5 at 10%"));
    struct shapes *shapes = shapes_new(t.arena);
    struct alikes *alikes = alikes_new(t.arena);
    struct alike alike;
    plan_all(&t, shapes);
    struct plan_job job = { .model = t.model,
                            .block = t.model->blocks[0],
                            .athlete = told_athlete(&t, "vera"),
                            .shapes = shapes,
                            .alike = &alike };
    assert_true(alike_find(alikes, &job, &alike));
    assert_false(alike_is_fine(alikes, &alike));
    assert_true(plan_make(t.arena, &job)->said); /* less than the empty bar */
    assert_int_equal(the_finding(&t, KIND_UNDER_BAR)->athlete_count, 2);
    alike_was_fine(alikes, &alike);
    assert_true(alike_is_fine(alikes, &alike));
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest more[] = { cmocka_unit_test(a_block_is_known_by_its_first_plan),
                                       cmocka_unit_test(who_is_like_nobody),
                                       cmocka_unit_test(very_many_lifts),
                                       cmocka_unit_test(what_is_said_is_said_to_each) };
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(likenesses, likeness_holds));
    tests_add(&tests, ARRAY(more));
    return tests_run(&tests);
}
