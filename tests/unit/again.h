/* Clubs in which many are alike, written by a format that keeps what it wrote: whoever is alike gets the bytes that a plan of hers
 * alone would have. */
#ifndef TESTS_UNIT_AGAIN_H
#define TESTS_UNIT_AGAIN_H

#include "club.h"

#include "caught.h"
#include "emit/format.h"

/* What of each athlete was known when her turn came: '2' all, '1' some lifts, '0' none. */
struct again_club {
    const char *says, *people, *block, *known;
};

static inline struct plan_job again_job(const struct told *t, const struct format *format, int athlete, struct shapes *shapes)
{
    return (struct plan_job){ .model = t->model, .block = t->model->blocks[0], .athlete = t->model->athletes[athlete],
                              .shapes = shapes, .bare = format->bare };
}

static inline const char *again_alone(struct told *t, const struct format *format, int athlete)
{
    enum { MOST = 1 << 20 };
    struct caught caught = { arena_alloc(t->arena, MOST), 0, MOST };
    struct plan_job job = again_job(t, format, athlete, NULL);
    struct writer *writer = format->begin(t->arena, (struct sink){ .write = catch_bytes, .context = &caught },
                                          &(struct format_options){ .resumed = true });
    assert_true(format->plan(writer, plan_make(t->arena, &job)) && format->end(writer));
    return caught.text;
}

static inline void again_holds(const struct again_club *row, const struct format *format)
{
    enum { MOST = 1 << 20 };
    struct told papers = told_begin();
    struct told t = told_club(arena_format(
        papers.arena,
        "athlete first { max squat 70 kg; max bench 30 kg }\n%sscheme ramp { 1 x 5 at 40%% then 1 x 3 at 60%% }\n"
        "block winter { for all; starts 2027-01-04; weeks 2; %s }\n",
        row->people, row->block));
    assert_string_equal(findings_text(&t), "");
    struct shapes *shapes = shapes_new(t.arena);
    struct alikes *alikes = alikes_new(t.arena);
    struct caught caught = { arena_alloc(t.arena, MOST), 0, MOST };
    struct writer *writer = format->begin(t.arena, (struct sink){ .write = catch_bytes, .context = &caught },
                                          &(struct format_options){ .resumed = true });
    for (int i = 0; i < t.model->athlete_count; i++) {
        struct plan_job job = again_job(&t, format, i, shapes);
        struct alike alike = { 0 };
        bool found = alike_find(alikes, &job, &alike), all = found && format->knows(writer, &alike), some = false;
        for (int j = 0; j < alike.count; j++)
            some |= alike.known[j];
        job.alike = found ? &alike : NULL;
        assert_int_equal(row->known[i], all ? '2' : some ? '1' : '0');
        caught.length = 0;
        assert_true(all ? format->again(writer, job.athlete, &alike) : format->plan(writer, plan_make(t.arena, &job)));
        assert_true(format->pause(writer));
        caught.text[caught.length] = 0;
        assert_string_equal(caught.text, again_alone(&t, format, i));
    }
    told_end(&t);
    told_end(&papers);
}

#endif
