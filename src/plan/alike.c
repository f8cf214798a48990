#include "plan/alike.h"

#include "plan/shape.h"

enum { MAXES_MOST = 4, SLOTS = 2 * MARKS_MOST }; /* maxes that the loads of one lift may hang on */

/* What a block asks of an athlete for its entries of one lift. */
struct question {
    const struct lift *lift;
    const struct lift *maxes[MAXES_MOST]; /* its own first */
    int max_count;
    bool bodyweight;
};

/* What she answers; the same answers are the same mark. */
struct answer {
    const struct question *question;
    const struct gym *gym;
    const struct curve_row *model;
    struct weight bodyweight;
    bool has_bodyweight;
    struct ratio maxes[MAXES_MOST]; /* 0/1: none */
    bool fine;
};

struct asked_block {
    const struct shape *shape;
    VEC(struct question) questions;
    const struct lift **lifts; /* of the questions */
    int *marks;                /* of the athlete at hand */
    bool *known;
    bool fits;
    struct asked_block *next;
};

struct alikes {
    struct arena *arena;
    struct asked_block *blocks;
    VEC(struct answer) answers; /* by mark */
    int *slots;                 /* a hash table of marks, each one higher; 0: free */
};

struct alikes *alikes_new(struct arena *arena)
{
    struct alikes *alikes = NEW(arena, struct alikes);
    alikes->arena = arena;
    return alikes;
}

/* ---- what a block asks ---- */

static struct question *question_of(struct alikes *alikes, struct asked_block *block, const struct lift *lift)
{
    for (int i = 0; i < block->questions.count; i++)
        if (block->questions.at[i].lift == lift)
            return &block->questions.at[i];
    struct question question = {
        .lift = lift, .maxes = { lift }, .max_count = 1, .bodyweight = lift->loads == LOADS_BODYWEIGHT
    };
    vec_add(alikes->arena, &block->questions, question);
    return &block->questions.at[block->questions.count - 1];
}

static bool ask_max(struct question *question, const struct lift *lift)
{
    for (int i = 0; i < question->max_count; i++)
        if (question->maxes[i] == lift)
            return true;
    if (question->max_count == MAXES_MOST)
        return false;
    question->maxes[question->max_count++] = lift;
    return true;
}

static bool ask_entry(struct question *question, const struct work_entry *entry)
{
    for (int i = 0; i < entry->groups.count; i++) {
        const struct group *group = entry->groups.at[i].group;
        question->bodyweight |= group->load_kind == LOAD_PERCENT_OF_BODYWEIGHT || group->load_kind == LOAD_BODYWEIGHT;
        if (group_more(group)->of_lift && !ask_max(question, group_more(group)->of_lift))
            return false;
    }
    return true;
}

static bool ask_week(struct alikes *alikes, struct asked_block *block, const struct work_week *week)
{
    bool fits = true;
    for (int i = 0; i < week->days.count; i++)
        for (int j = 0; j < week->days.at[i].entries.count; j++) {
            const struct work_entry *entry = &week->days.at[i].entries.at[j];
            fits &= ask_entry(question_of(alikes, block, entry->lift), entry);
        }
    return fits;
}

static struct asked_block *asked_block_of(struct alikes *alikes, const struct shape *shape)
{
    struct asked_block *block = alikes->blocks;
    while (block && block->shape != shape)
        block = block->next;
    if (block)
        return block;
    block = NEW(alikes->arena, struct asked_block);
    *block = (struct asked_block){ .shape = shape, .fits = true, .next = alikes->blocks };
    alikes->blocks = block;
    for (int i = 0; i < shape->week_count && block->fits; i++)
        block->fits = ask_week(alikes, block, &shape->weeks[i]) && block->questions.count <= ALIKE_LIFTS_MOST;
    block->lifts = NEW_MANY(alikes->arena, const struct lift *, block->questions.count + 1);
    block->marks = NEW_MANY(alikes->arena, int, block->questions.count + 1);
    block->known = NEW_MANY(alikes->arena, bool, block->questions.count + 1);
    for (int i = 0; i < block->questions.count; i++)
        block->lifts[i] = block->questions.at[i].lift;
    return block;
}

/* ---- what she answers ---- */

/* The days between which nothing may change. */
struct days {
    struct date first, last;
    bool maxes_change; /* perhaps: some line of hers has its day among them */
};

static struct days days_of(const struct shape *shape, const struct athlete *athlete)
{
    struct days days = { shape->weeks[0].start, shape->weeks[shape->week_count - 1].start, false };
    for (int i = 0; i < athlete->max_count; i++)
        days.maxes_change |= athlete->maxes[i].date.day > days.first.day && athlete->maxes[i].date.day <= days.last.day;
    return days;
}

static bool answer_make(const struct plan_job *job, const struct days *days, const struct question *question,
                        struct answer *out)
{
    const struct athlete *athlete = job->athlete;
    out->question = question, out->gym = athlete->gym, out->model = athlete->model;
    out->has_bodyweight = out->fine = false;
    out->bodyweight = (struct weight){ 0 };
    for (int i = 0; i < question->max_count; i++) {
        struct max_used max = history_max(athlete, question->maxes[i], days->first, job->block);
        if (days->maxes_change && max.line != history_max_line(athlete, question->maxes[i], days->last))
            return false;
        out->maxes[i] = max.load;
    }
    if (question->bodyweight) {
        const struct bodyweight_line *line = history_bodyweight(athlete, days->first);
        if (line != history_bodyweight(athlete, days->last))
            return false;
        out->has_bodyweight = line;
        out->bodyweight = line ? line->weight : (struct weight){ 0 };
    }
    return !history_has_points(athlete, question->lift);
}

static bool answers_equal(const struct answer *a, const struct answer *b)
{
    bool equal = a->question == b->question && a->gym == b->gym && a->model == b->model &&
                 a->has_bodyweight == b->has_bodyweight && a->bodyweight.e10 == b->bodyweight.e10;
    for (int i = 0; equal && i < a->question->max_count; i++)
        equal = a->maxes[i].num == b->maxes[i].num && a->maxes[i].den == b->maxes[i].den;
    return equal;
}

static unsigned answer_slot(const struct answer *answer)
{
    uint64_t hash = (uintptr_t)answer->question ^ (uintptr_t)answer->gym << 7 ^ (uintptr_t)answer->model ^
                    (uint64_t)answer->bodyweight.e10;
    for (int i = 0; i < answer->question->max_count; i++)
        hash = hash * UINT64_C(0x9E3779B97F4A7C15) + (uint64_t)answer->maxes[i].num + (uint64_t)answer->maxes[i].den;
    return (unsigned)(hash * UINT64_C(0x9E3779B97F4A7C15) >> 40) % SLOTS;
}

/* Below 0: there are too many different ones. */
static int mark_of(struct alikes *alikes, const struct answer *answer)
{
    if (!alikes->slots)
        alikes->slots = NEW_MANY(alikes->arena, int, SLOTS);
    unsigned slot = answer_slot(answer);
    for (; alikes->slots[slot]; slot = (slot + 1) % SLOTS)
        if (answers_equal(&alikes->answers.at[alikes->slots[slot] - 1], answer))
            return alikes->slots[slot] - 1;
    if (alikes->answers.count == MARKS_MOST)
        return -1;
    vec_add(alikes->arena, &alikes->answers, *answer);
    alikes->slots[slot] = alikes->answers.count;
    return alikes->answers.count - 1;
}

bool alike_is_fine(const struct alikes *alikes, const struct alike *alike)
{
    for (int i = 0; i < alike->count; i++)
        if (!alikes->answers.at[alike->marks[i]].fine)
            return false;
    return true;
}

void alike_was_fine(struct alikes *alikes, const struct alike *alike)
{
    for (int i = 0; i < alike->count; i++)
        alikes->answers.at[alike->marks[i]].fine = true;
}

bool alike_find(struct alikes *alikes, const struct plan_job *job, struct alike *out)
{
    struct planning p = { .model = job->model, .block = job->block, .athlete = job->athlete, .shapes = job->shapes };
    if (job->record || job->athlete->diary_count || !shape_is_shared(&p))
        return false;
    const struct shape *shape = shape_find(job->shapes, job->block);
    if (!shape || shape->unfit || !shape->week_count)
        return false;
    struct asked_block *block = asked_block_of(alikes, shape);
    struct days days = days_of(shape, job->athlete);
    if (!block->fits)
        return false;
    for (int i = 0; i < block->questions.count; i++) {
        struct answer answer;
        if (!answer_make(job, &days, &block->questions.at[i], &answer))
            return false;
        block->known[i] = false;
        block->marks[i] = mark_of(alikes, &answer);
        if (block->marks[i] < 0)
            return false;
    }
    *out = (struct alike){
        .lifts = block->lifts, .marks = block->marks, .known = block->known, .count = block->questions.count
    };
    return true;
}
