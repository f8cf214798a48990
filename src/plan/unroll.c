/* Model to plan: a block's weeks for one athlete, week by week. */
#include "base/sort.h"
#include "plan/shape.h"
#include "plan/steady.h"

struct finding *plan_finding(const struct planning *p, const struct work_week *week, const struct work_day *day,
                             const struct work_entry *entry, const struct origin *origin, enum kind kind, struct span at,
                             const char *format, ...)
{
    va_list args;
    va_start(args, format);
    struct finding *finding = diag_vadd(p->model->findings, kind, at, format, args);
    va_end(args);
    struct setting setting = { .block = p->block->name, .athlete = p->athlete->name, .week = week ? week->number : 0 };
    if (!day)
        day = p->day_now;
    if (day)
        setting.day = day->day->label;
    if (entry)
        setting.lift = entry->lift->name;
    diag_setting(p->model->findings, finding, setting);
    if (finding->times > 1)
        return finding;
    for (; origin; origin = origin->up)
        diag_related(p->model->findings, finding, origin->at, "%s", origin->says);
    if (entry && entry->swapped_by && entry->swapped_by->swap_at.start != at.start)
        diag_related(p->model->findings, finding, entry->swapped_by->at, "%s was swapped in here", entry->lift->name);
    return finding;
}

struct reason *reason_add(struct planning *p, enum reason_kind kind, struct span at, const struct origin *origin,
                          const struct reason *before)
{
    bool ruled = kind == REASON_MAX || kind == REASON_MAX_ESTIMATED || kind == REASON_RAW;
    struct reason *reason = reasons_are_told(p) || (p->for_rules && ruled) ? NEW(p->arena, struct reason) : &p->no_reason;
    reason->kind = kind;
    reason->at = at;
    reason->origin = origin;
    reason->before = before;
    return reason;
}

/* ---- which weeks: some skipped, some trained twice ---- */

struct week_slot {
    int block_week;
    bool skipped;
};
struct week_slots {
    VEC(struct week_slot) list;
};

static bool week_changed(struct planning *p, enum change_verb verb, int week)
{
    bool found = false;
    int count;
    const struct adjust_use *uses = adjusts_for(p->block, p->athlete, &count);
    for (int i = 0; i < count; i++) {
        const struct change_list *list = uses[i].list;
        for (int j = 0; j < list->change_count; j++)
            if (list->changes[j].verb == verb && week_in(&list->changes[j].weeks, week)) {
                found = true;
                if (p->touched)
                    p->touched[list->changes[j].id] = true;
            }
    }
    return found;
}

int plan_week_count(const struct block *block, const struct athlete *athlete)
{
    struct planning p = { .block = block, .athlete = athlete };
    int count = block->week_count;
    for (int week = 1; week <= block->week_count; week++)
        count += week_changed(&p, CHANGE_REPEAT_WEEK, week);
    return count;
}

static struct week_slots week_slots_of(struct planning *p)
{
    struct week_slots slots = { 0 };
    for (int week = 1; week <= p->block->week_count; week++) {
        struct week_slot slot = { week, week_changed(p, CHANGE_SKIP_WEEK, week) };
        vec_add(p->arena, &slots.list, slot);
        if (week_changed(p, CHANGE_REPEAT_WEEK, week))
            vec_add(p->arena, &slots.list, slot);
    }
    return slots;
}

/* ---- which days ---- */

static void day_add(struct planning *p, struct work_week *week, const struct day *day, struct date date)
{
    struct work_day work = { .day = day, .date = date, .gym = day->gym ? day->gym : p->athlete->gym };
    vec_add(p->arena, &week->days, work);
}

static struct date weekday_in(const struct work_week *week, int weekday)
{
    return date_on_or_after(week->start, (enum weekday)weekday);
}

static void plain_days(struct planning *p, struct work_week *week)
{
    for (int i = 0; i < p->block->day_count; i++) {
        const struct day *day = &p->block->days[i];
        if (day->rotates || !week_in(&day->weeks, week->block_week))
            continue;
        for (int weekday = MON; weekday <= SUN; weekday++)
            if (day->weekdays >> weekday & 1)
                day_add(p, week, day, weekday_in(week, weekday));
        if (!day->weekdays)
            day_add(p, week, day, (struct date){ 0 });
    }
}

static const struct day *day_labelled(const struct block *block, const char *label, int week)
{
    for (int i = 0; i < block->day_count; i++)
        if (block->days[i].label == label && week_in(&block->days[i].weeks, week))
            return &block->days[i];
    return NULL;
}

/* The labelled days in turn across weeks, in date order; a day left out keeps its turn. */
static void rotation_days(struct planning *p, struct work_week *week, const struct rotation *rotation)
{
    if (!week_in(&rotation->weeks, week->block_week) || !rotation->label_count)
        return;
    int a_week = __builtin_popcount(rotation->weekdays), turn = 0;
    for (int before = 1; before < week->block_week; before++)
        turn += week_in(&rotation->weeks, before) ? a_week : 0;
    int first = (int)date_weekday(week->start);
    for (int i = 0; i < 7; i++) {
        int weekday = (first - 1 + i) % 7 + 1;
        if (!(rotation->weekdays >> weekday & 1))
            continue;
        const struct day *day = day_labelled(p->block, rotation->labels[turn++ % rotation->label_count], week->block_week);
        if (day)
            day_add(p, week, day, weekday_in(week, weekday));
    }
}

/* By date, undated last; of one date in the order written. */
static int by_date(const void *a, const void *b)
{
    const struct work_day *one = a, *other = b;
    int32_t key = date_is_set(one->date) ? one->date.day : INT32_MAX, key_other = date_is_set(other->date) ? other->date.day : INT32_MAX;
    return key != key_other ? (key > key_other) - (key < key_other) : (one->day > other->day) - (one->day < other->day);
}

static void sort_days(struct work_week *week)
{
    sort_unless_sorted(week->days.at, week->days.count, sizeof *week->days.at, by_date);
}

/* The meet that ends this week's training, or, after the last one (by a week repeated), all of it; NULL: none. */
static const struct meet *meet_of_week(const struct season *season, struct date start)
{
    const struct meet *meet = season_next_meet(season, start);
    if (!meet && season && season->meet_count)
        return &season->meets[season->meet_count - 1];
    return meet && meet->date.day <= start.day + 6 ? meet : NULL;
}

static const char *meet_day_says(struct planning *p, const struct work_week *week, const struct work_day *day, const struct meet *meet)
{
    const char *label = day->day->label, *of = date_text(p->arena, meet->date);
    if (day->date.day == meet->date.day)
        return arena_format(p->arena, "day %s of week %d falls on the day of the meet, %s, and is left out", label, week->number, of);
    if (date_is_set(day->date))
        return arena_format(p->arena, "day %s of week %d falls on %s, after the meet of %s, and is left out", label, week->number,
                            date_text(p->arena, day->date), of);
    if (week->start.day > meet->date.day)
        return arena_format(p->arena, "day %s of week %d comes after the meet of %s, and is left out", label, week->number, of);
    return arena_format(p->arena, "day %s has no date, and stays in week %d with the meet of %s", label, week->number, of);
}

static void meet_day_help(struct planning *p, struct finding *finding, const struct work_week *week, const struct work_day *day,
                          const struct meet *meet, bool out)
{
    const char *label = day->day->label;
    if (week->start.day > meet->date.day)
        diag_help(p->model->findings, finding, "a repeated week moves the later ones beyond the meet: skip one as well, or repeat none");
    else if (out)
        diag_help(p->model->findings, finding, "if that is meant, say so with `skip day %s` in this week's taper; else give it an earlier weekday", label);
    else
        diag_help(p->model->findings, finding, "give day %s a weekday before the meet, or see that it is trained by then", label);
}

/* Days on or after a meet in its week are left out; undated ones stay, with a word. */
static void meet_week(struct planning *p, struct work_week *week)
{
    const struct meet *meet = meet_of_week(p->block->season, week->start);
    int kept = 0;
    if (!meet)
        return;
    for (int i = 0; i < week->days.count; i++) {
        struct work_day *day = &week->days.at[i];
        bool out = date_is_set(day->date) ? day->date.day >= meet->date.day : week->start.day > meet->date.day;
        if (out || !date_is_set(day->date)) {
            struct finding *finding = plan_finding(p, week, day, NULL, day->day->origin, KIND_MEET_DAY, day->day->at, "%s",
                                                   meet_day_says(p, week, day, meet));
            diag_related(p->model->findings, finding, meet->at, "the meet is here");
            meet_day_help(p, finding, week, day, meet, out);
        }
        if (!out)
            week->days.at[kept++] = *day;
    }
    week->days.count = kept;
}

/* ---- entries ---- */

static bool has_warm_up(const struct work_entry *entry)
{
    for (int i = 0; i < entry->groups.count; i++)
        if (entry->groups.at[i].role == ROLE_WARM_UP)
            return true;
    return false;
}

/* The block's next warm-up for the entry from one on; -1: none. */
static int warm_up_next(const struct block *block, const struct work_entry *entry, int from, int at[3])
{
    const struct lift *things[] = { entry->lift, entry->written, lift_is_main(entry->lift) ? NULL : entry->lift };
    int next = -1;
    for (int i = 0; i < 3; i++) {
        struct place_list places = places_of(&block->warm_up_places, things[i], 0);
        while (at[i] < places.at.count && places.at.at[at[i]] < from)
            at[i]++;
        if (at[i] < places.at.count && (next < 0 || places.at.at[at[i]] < next))
            next = places.at.at[at[i]];
    }
    return next;
}

/* The block's warm-up goes before the first entry of a lift in a day, unless the entry brings its own. `lifts`: of the entries before
 * it. */
static void add_warm_up(struct planning *p, const struct work_week *week, struct work_entry *entry, struct numbers *lifts)
{
    int known = lifts->count;
    if (numbers_give(lifts, entry->lift, 0) < known)
        return;
    if (has_warm_up(entry) || !entry->groups.count)
        return;
    VEC(struct work_group) groups = { 0 };
    int at[3] = { 0 };
    for (int i = warm_up_next(p->block, entry, 0, at); i >= 0; i = warm_up_next(p->block, entry, i + 1, at)) {
        const struct warm_up *warm_up = &p->block->warm_ups[i];
        for (int j = 0; j < warm_up->group_count; j++) {
            struct work_group group;
            if (work_group_make(p, week, entry, &warm_up->groups[j], &group))
                vec_add(p->arena, &groups, group);
        }
    }
    if (!groups.count)
        return;
    for (int i = 0; i < entry->groups.count; i++)
        vec_add(p->arena, &groups, entry->groups.at[i]);
    entry->groups.at = groups.at, entry->groups.count = groups.count, entry->groups.room = groups.room;
}

static void day_entries(struct planning *p, const struct work_week *week, struct work_day *day, bool steady)
{
    p->day_now = day;
    day->entries.room = day->day->entry_count;
    day->entries.at = NEW_MANY(p->arena, struct work_entry, day->entries.room);
    for (int i = 0; i < day->day->entry_count; i++) {
        const struct entry *entry = &day->day->entries[i];
        struct work_entry work = { .entry = entry, .superset = entry->superset };
        if (!entry->lift_count)
            continue;
        work.lift = work.written = entry->lifts[0];
        if (!steady || !steady_find(p, week, day, &work))
            sets_evaluate(p, week, &work);
        vec_add(p->arena, &day->entries, work);
    }
    p->day_now = NULL;
}

/* An entry none of whose groups is trained this week is not trained this week. */
static void drop_empty(struct work_day *day)
{
    int kept = 0;
    for (int i = 0; i < day->entries.count; i++) {
        bool works = entry_is_known(&day->entries.at[i]);
        for (int j = 0; j < day->entries.at[i].groups.count; j++)
            works |= day->entries.at[i].groups.at[j].role != ROLE_WARM_UP;
        if (works)
            day->entries.at[kept++] = day->entries.at[i];
    }
    day->entries.count = kept;
}

static void check_avoided(struct planning *p, const struct work_week *week, const struct work_day *day, const struct work_entry *entry)
{
    const struct avoid_line *avoid = history_avoid(p->athlete, entry->lift);
    if (!avoid)
        return;
    struct span at = entry->swapped_by ? entry->swapped_by->swap_at : entry->entry->at;
    const struct origin *origin = entry->swapped_by ? entry->swapped_by->origin : entry->entry->origin;
    struct finding *finding = plan_finding(p, week, day, entry, origin, KIND_AVOIDED_LIFT, at,
                                           "%s avoids %s%s%s%s, and nothing takes its place", p->athlete->name, entry->lift->name,
                                           avoid->because ? " (" : "", avoid->because ? avoid->because : "", avoid->because ? ")" : "");
    diag_related(p->model->findings, finding, avoid->at, "this is where %s avoids it", p->athlete->name);
    diag_help(p->model->findings, finding, "write `avoid %s use OTHER-LIFT`, or `adjust %s { swap %s with OTHER-LIFT }` in the block",
              entry->lift->name, p->athlete->name, entry->lift->name);
}

/* ---- work to plan ---- */

static void keep_group(struct planning *p, const struct work_entry *entry, const struct work_group *work, struct plan_group *out, int *count)
{
    /* Sets whose reps differ make a group of their own each, so that a printed line says one number of reps. */
    for (int first = 0, next; first < work->run_count; first = next) {
        const struct spec *spec = work->runs[first].spec;
        for (next = first + 1; next < work->run_count; next++)
            if (work->runs[next].spec->reps_low != spec->reps_low || work->runs[next].spec->reps_high != spec->reps_high)
                break;
        struct plan_group *group = &out[(*count)++];
        struct plan_run *runs = NEW_MANY(p->arena, struct plan_run, next - first);
        bool split = first > 0 || next < work->run_count;
        int sets = 0;
        for (int i = first; i < next; i++) {
            runs[i - first] = work->runs[i].made;
            runs[i - first].sets = work->runs[i].sets * (entry->rounds && work->role != ROLE_WARM_UP ? entry->rounds : 1);
            sets += work->runs[i].sets;
        }
        *group = (struct plan_group){ .group = work->group, .role = work->role, .reps_kind = work->reps_kind, .runs = runs,
                                      .run_count = next - first, .reps_low = spec->reps_low, .reps_high = spec->reps_high,
                                      .sets_low = split ? sets : work->sets_low, .sets_high = split ? sets : work->sets_high };
        if (work->reps_kind == REPS_AMRAP)
            group->reps_high = 0;
    }
}

static const struct plan_group *keep_groups(struct planning *p, const struct work_entry *work, int *count)
{
    int rows = 0;
    if (entry_is_known(work))
        return steady_groups(p, work, count);
    for (int i = 0; i < work->groups.count; i++)
        rows += work->groups.at[i].run_count;
    struct plan_group *groups = rows ? NEW_MANY(p->arena, struct plan_group, rows) : NULL;
    for (int i = 0; i < work->groups.count; i++)
        keep_group(p, work, &work->groups.at[i], groups, count);
    if (work->steady)
        steady_keep(p, work, groups, *count);
    return groups;
}

static struct plan_entry keep_entry(struct planning *p, const struct work_entry *work)
{
    int count = 0;
    const struct plan_group *groups = keep_groups(p, work, &count);
    const struct lift **choices = work->entry->lift_count > 1 ? NEW_MANY(p->arena, const struct lift *, work->entry->lift_count) : NULL;
    int choice_count = 0;
    bool own = false;
    for (int i = 0; i < work->entry->lift_count; i++)
        own |= work->entry->lifts[i] == work->lift;
    for (int i = 0; own && i < work->entry->lift_count; i++)
        if (work->entry->lifts[i] != work->lift)
            choices[choice_count++] = work->entry->lifts[i];
    return (struct plan_entry){ .entry = work->entry, .lift = work->lift, .instead_of = own ? NULL : work->written,
                                .because = own ? NULL : work->because, .choices = choices, .choice_count = choice_count,
                                .superset = work->superset, .rounds = work->rounds, .superset_minutes = entry_more(work->entry)->superset_minutes,
                                .groups = groups, .group_count = count, .notes = work->notes.at, .note_count = work->notes.count };
}

static int64_t sets_of(const struct plan_entry *entry)
{
    int64_t sets = 0;
    for (int i = 0; i < entry->group_count; i++) {
        const struct plan_group *group = &entry->groups[i];
        for (int j = 0; j < group->run_count; j++)
            sets += group->reps_kind == REPS_TOTAL ? group->reps_high : group->runs[j].sets;
    }
    return sets;
}

/* Nobody trains so many, and who sums them up counts on that. */
static bool is_too_much(struct planning *p, struct work_week *week, const struct work_day *day, const struct work_entry *work,
                        const struct plan_entry *entry)
{
    bool was = week->sets > WEEK_SETS_MOST;
    week->sets += sets_of(entry);
    if (week->sets <= WEEK_SETS_MOST || was)
        return was;
    struct finding *finding = plan_finding(p, week, day, work, entry->entry->origin, KIND_RANGE, entry->entry->at,
                                           "week %d comes to more than %d sets here", week->number, WEEK_SETS_MOST);
    diag_help(p->model->findings, finding, "count the rounds and sets again: is one of them a number of repetitions?");
    return true;
}

static struct plan_day keep_day(struct planning *p, struct work_week *week, const struct work_day *work)
{
    struct plan_entry *entries = NEW_MANY(p->arena, struct plan_entry, work->entries.count + 1);
    int count = 0;
    for (int i = 0; i < work->entries.count; i++) {
        entries[count] = keep_entry(p, &work->entries.at[i]);
        count += !is_too_much(p, week, work, &work->entries.at[i], &entries[count]);
    }
    return (struct plan_day){ .day = work->day, .date = work->date, .gym = work->gym, .entries = entries,
                              .entry_count = count, .notes = work->notes.at, .note_count = work->notes.count };
}

static void week_entries(struct planning *p, struct work_week *work)
{
    bool steady = steady_week(p, work);
    for (int i = 0; i < work->days.count; i++)
        day_entries(p, work, &work->days.at[i], steady);
    avoids_apply(p, work);
    changes_week(p, work);
    avoids_apply(p, work);
    for (int i = 0; i < work->days.count; i++) {
        struct numbers lifts = { .arena = p->arena };
        drop_empty(&work->days.at[i]);
        for (int j = 0; j < work->days.at[i].entries.count; j++) {
            if (p->block->warm_up_count)
                add_warm_up(p, work, &work->days.at[i].entries.at[j], &lifts);
            check_avoided(p, work, &work->days.at[i], &work->days.at[i].entries.at[j]);
        }
    }
}

/* All of a week that needs no max. */
static void week_shape(struct planning *p, int number, struct week_slot slot, struct work_week *work)
{
    *work = (struct work_week){ .number = number, .block_week = slot.block_week, .kind = p->block->kinds[slot.block_week],
                                .start = date_plus(p->block->start, 7 * (number - 1)) };
    for (int i = 0; i < p->block->week_line_count; i++)
        for (int j = 0; week_in(&p->block->week_lines[i].weeks, slot.block_week) && j < p->block->week_lines[i].note_count; j++)
            vec_add(p->arena, &work->notes, p->block->week_lines[i].notes[j]);
    if (slot.skipped)
        return;
    plain_days(p, work);
    for (int i = 0; i < p->block->rotation_count; i++)
        rotation_days(p, work, &p->block->rotations[i]);
    sort_days(work);
    meet_week(p, work);
    week_entries(p, work);
}

static struct plan_week week_finish(struct planning *p, struct work_week *work)
{
    progress_week(p, work);
    loads_week(p, work);
    struct plan_day *days = NEW_MANY(p->arena, struct plan_day, work->days.count + 1);
    for (int i = 0; i < work->days.count; i++)
        days[i] = keep_day(p, work, &work->days.at[i]);
    struct plan_week week = { .number = work->number, .block_week = work->block_week, .kind = work->kind, .start = work->start,
                              .days = days, .day_count = work->days.count, .notes = work->notes.at, .note_count = work->notes.count };
    if (reasons_are_told(p))
        totals_week(p, &week);
    return week;
}

/* Worked out by the first who asks, into the run's memory. */
static struct shape *shape_make(struct planning *p)
{
    struct planning maker = *p;
    struct shape *shape = NEW(p->shapes->arena, struct shape);
    bool *touched = NEW_MANY(p->shapes->arena, bool, p->block->change_count + 1);
    int said = findings_said(p->model->findings);
    maker.arena = p->shapes->arena;
    maker.touched = touched;
    maker.bare = maker.for_rules = false;
    maker.steadies = NULL;
    struct week_slots slots = week_slots_of(&maker);
    struct work_week *weeks = NEW_MANY(maker.arena, struct work_week, slots.list.count + 1);
    for (int i = 0; i < slots.list.count; i++)
        week_shape(&maker, i + 1, slots.list.at[i], &weeks[i]);
    *shape = (struct shape){ .block = p->block, .weeks = weeks, .week_count = slots.list.count, .touched = touched,
                             .unfit = findings_said(p->model->findings) != said };
    return shape_keep(p->shapes, shape);
}

/* The shape that she shares with others; NULL: her weeks are her own. */
static const struct shape *shape_of(struct planning *p)
{
    if (!shape_is_shared(p))
        return NULL;
    struct shape *shape = shape_find(p->shapes, p->block);
    if (!shape)
        shape = shape_make(p);
    for (int i = 0; p->touched && i < p->block->change_count; i++)
        p->touched[i] |= shape->touched[i];
    return shape->unfit ? NULL : shape;
}

struct plan *plan_make(struct arena *scratch, const struct plan_job *job)
{
    struct plan *plan = NEW(scratch, struct plan);
    struct planning p = { .arena = scratch, .model = job->model, .block = job->block, .athlete = job->athlete, .record = job->record,
                          .touched = job->touched, .shapes = job->shapes, .steadies = job->steadies, .alike = job->alike, .bare = job->bare,
                          .for_rules = job->for_rules, .plan = plan };
    int said = findings_said(job->model->findings);
    *plan = (struct plan){ .model = job->model, .athlete = job->athlete, .block = job->block, .unit = job->athlete->gym->unit,
                           .record = job->record, .alike = job->alike };
    if (p.steadies)
        steadies_trim(p.steadies);
    const struct shape *shape = shape_of(&p);
    struct week_slots slots = { 0 };
    if (!shape)
        slots = week_slots_of(&p);
    int count = shape ? shape->week_count : slots.list.count;
    struct plan_week *weeks = NEW_MANY(scratch, struct plan_week, count + 1);
    plan->weeks = weeks;
    for (int i = 0; i < count; i++) {
        struct work_week *work = NEW(scratch, struct work_week);
        if (shape)
            shape_week(&p, &shape->weeks[i], work);
        else
            week_shape(&p, i + 1, slots.list.at[i], work);
        weeks[i] = week_finish(&p, work);
        plan->week_count = i + 1;
        if (p.record)
            record_take_week(p.record, plan, &weeks[i]);
    }
    plan->said = findings_said(job->model->findings) != said;
    return plan;
}
