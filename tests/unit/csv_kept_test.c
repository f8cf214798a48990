/* Rows kept by lift: whoever is alike, in all lifts or in some, gets the bytes that a table of her plan alone would have. */
#include "club.h"

#include "caught.h"
#include "emit/formats.h"

enum { MOST = 1 << 20 };

struct table {
    struct caught caught;
    struct writer *writer;
};

static void table_begin(struct told *t, struct table *table)
{
    table->caught = (struct caught){ arena_alloc(t->arena, MOST), 0, MOST };
    table->writer =
        csv_begin(t->arena, (struct sink){ .write = catch_bytes, .context = &table->caught }, &(struct format_options){ .resumed = true });
}

static struct plan_job job_of(const struct told *t, int athlete, struct shapes *shapes)
{
    return (struct plan_job){ .model = t->model,
                              .block = t->model->blocks[0],
                              .athlete = t->model->athletes[athlete],
                              .shapes = shapes,
                              .bare = true };
}

static const char *alone(struct told *t, int athlete)
{
    struct table table;
    struct plan_job job = job_of(t, athlete, NULL);
    table_begin(t, &table);
    assert_true(csv_plan(table.writer, plan_make(t->arena, &job)) && csv_end(table.writer));
    return table.caught.text;
}

/* What of each athlete was known when her turn came: '2' all, '1' some lifts, '0' none. */
static const struct club {
    const char *says, *people, *block, *known;
} clubs[] = {
    { "all alike", "athlete a { max squat 100 kg }\nathlete b { max squat 100 kg }\nathlete c { max squat 100 kg }\n",
      "day A { squat 3 x 5 at rpe 7; curl 3 x 10 at 20 kg }", "0022" },
    { "alike in one lift of two",
      "athlete a { max squat 100 kg; max bench 50 kg }\nathlete b { max squat 100 kg; max bench 55 kg }\nathlete c { "
      "max squat 90 kg; max bench 55 kg }\n",
      "day A { squat 3 x 5 at rpe 7; bench 3 x 5 at 70%; squat 1 x 8 at 60% }; day B { bench 5 x 3 at rpe 8; squat 1 x "
      "2 at rpe 6 }",
      "0011" },
    { "rows above nine and ninety-nine of a day",
      "athlete a { max squat 100 kg }\nathlete b { max squat 105 kg }\nathlete c { max squat 100 kg }\n",
      "day A { curl 60 x 5 at 10 | 11 kg; squat 50 x 5 at 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, "
      "50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, "
      "50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, "
      "50%, 51%, 50%, 51%, 50%, 60%; "
      "squat 1 x 5 at 40% then 1 x 5 at 50% then 1 x 5 at 40% then 1 x 5 at 50%; curl 1 x 5 at 12 kg then 1 x 4 at 13 "
      "kg; curl 1 x 5 at 12 kg }",
      "0012" },
    { "an entry of which nothing is trained this week",
      "athlete a { max squat 100 kg }\nathlete b { max squat 100 kg }\nathlete c { max squat 100 kg }\n",
      "day A { squat 3 x 5 at rpe 7 in weeks 2; curl 3 x 10 at 20 kg; sled warm-up 1 x 5 at 20 kg then 1 x 20 m at 40 "
      "kg in weeks 2 }",
      "0022" },
    { "warm-ups that some need and others do not",
      "athlete a { max squat 100 kg }\nathlete b { max squat 30 kg }\nathlete c { max squat 100 kg }\n",
      "warm-up ramp; day A { squat 3 x 5 at rpe 7; curl 3 x 10 at 20 kg }", "0012" },
    { "who must hear something of herself is no pattern",
      "athlete a { max squat 100 kg }\nathlete b { max squat 100 kg }\nathlete c { max squat 100 kg }\n",
      "day A { squat 1 x 5 at 10%; curl 3 x 10 at 20 kg }", "0000" },
};

static void club_holds(void **state)
{
    const struct club *row = *state;
    struct told papers = told_begin();
    struct told t = told_club(arena_format(
        papers.arena,
        "athlete first { max squat 70 kg; max bench 30 kg }\n%sscheme ramp { 1 x 5 at 40%% then 1 x 3 at 60%% }\n"
        "block winter { for all; starts 2027-01-04; weeks 2; %s }\n",
        row->people, row->block));
    assert_string_equal(findings_text(&t), "");
    struct shapes *shapes = shapes_new(t.arena);
    struct alikes *alikes = alikes_new(t.arena);
    struct table table;
    table_begin(&t, &table);
    for (int i = 0; i < t.model->athlete_count; i++) {
        struct plan_job job = job_of(&t, i, shapes);
        struct alike alike = { 0 };
        bool found = alike_find(alikes, &job, &alike), all = found && csv_knows(table.writer, &alike), some = false;
        for (int j = 0; j < alike.count; j++)
            some |= alike.known[j];
        job.alike = found ? &alike : NULL;
        assert_int_equal(row->known[i], all ? '2' : some ? '1' : '0');
        table.caught.length = 0;
        assert_true(all ? csv_again(table.writer, job.athlete, &alike)
                        : csv_plan(table.writer, plan_make(t.arena, &job)));
        assert_true(csv_pause(table.writer));
        table.caught.text[table.caught.length] = 0;
        assert_string_equal(table.caught.text, alone(&t, i));
    }
    told_end(&t);
    told_end(&papers);
}

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(clubs, club_holds));
    return tests_run(&tests);
}
