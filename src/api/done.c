/* What a filled row says was done, as one value for each set. */
#include "api/match.h"

#include "emit/wording.h"

static bool is_any_number_of_sets(const struct plan_group *group)
{
    return group->reps_kind == REPS_TOTAL || group->sets_low != group->sets_high;
}

static void list_too_long(struct matching *m, const struct filled_row *row, enum filled_column column, int count,
                          const char *what, int most)
{
    struct finding *finding = match_refuse(m, row, row->cells[column].at, "%d %s, and the plan has %d set%s here",
                                           count, what, most, most == 1 ? "" : "s");
    diag_help(m->findings, finding,
              "write one value for all sets, or one a set; sets that were added go into the diary by hand");
}

static void lists_differ(struct matching *m, const struct filled_row *row, enum filled_column column, int count,
                         const char *what, int sets)
{
    struct finding *finding =
        match_refuse(m, row, row->cells[column].at, "%d %s for %d set%s", count, what, sets, sets == 1 ? "" : "s");
    diag_help(m->findings, finding,
              column == FILLED_DONE_RPE ? "write the effort of the last set, or one for each set that was done"
                                        : "write one load for all sets, or one for each set that was done");
}

/* How many sets were done: as many as are listed, or all of them. 0: it has been said what does not fit. */
static int sets_done(struct matching *m, const struct filled_row *row, const struct row *plan)
{
    int reps = row->reps.count, loads = row->loads.count, planned = plan->run->sets ? plan->run->sets : 1;
    int sets = reps > 1 ? reps : loads > 1 ? loads : planned;
    if (sets > planned && !is_any_number_of_sets(plan->group))
        list_too_long(m, row, reps > 1 ? FILLED_DONE_REPS : FILLED_DONE_LOAD, sets,
                      reps > 1 ? "numbers of repetitions" : "loads", planned);
    else if (loads > 1 && loads != sets)
        lists_differ(m, row, FILLED_DONE_LOAD, loads, "loads", sets);
    else if (row->efforts.count > 1 && row->efforts.count != sets)
        lists_differ(m, row, FILLED_DONE_RPE, row->efforts.count, "efforts", sets);
    else
        return sets;
    return 0;
}

static bool reps_unit_fits(struct matching *m, const struct filled_row *row, const struct row *plan)
{
    char unit = (char)(plan->group->reps_kind == REPS_SECONDS ? 's' : plan->group->reps_kind == REPS_METRES ? 'm' : 0);
    for (int i = 0; i < row->reps.count; i++)
        if (row->reps.at[i].unit && row->reps.at[i].unit != unit) {
            struct finding *finding = match_refuse(m, row, row->cells[FILLED_DONE_REPS].at, "the plan counts %s here",
                                                   unit == 's'   ? "seconds"
                                                   : unit == 'm' ? "metres"
                                                                 : "repetitions");
            diag_help(m->findings, finding, "write the number alone, one for all sets or one a set");
            return false;
        }
    return true;
}

/* What an empty done_load stands for; false: nothing was printed that it could stand for. */
static bool load_printed(const struct row *plan, struct dec *load)
{
    const struct lift *lift = plan->entry->lift;
    bool by_time = plan->group->reps_kind == REPS_SECONDS || plan->group->reps_kind == REPS_METRES;
    *load = plan->run->has_load ? weight_in(plan->run->shown, plan->day->gym->unit) : (struct dec){ 0 };
    return plan->run->has_load || (!plan->run->open && lift->loads == LOADS_BODYWEIGHT) ||
           (by_time && lift->loads == LOADS_FREE);
}

/* A decimal point that got lost, or kilograms in a cell of something else. */
enum { LOAD_MOST = 1000, SLIP = 8, SLIP_FROM = 20 };

static bool load_can_be(struct matching *m, const struct filled_row *row, const struct row *plan, struct dec load)
{
    const struct filled_cell *cell = &row->cells[FILLED_DONE_LOAD];
    struct weight weight = { 0 };
    bool body = plan->entry->lift->loads == LOADS_BODYWEIGHT,
         fine = weight_from((struct dec){ load.e10 < 0 ? -load.e10 : load.e10 }, plan->day->gym->unit, &weight);
    int64_t printed = plan->run->has_load && !body ? plan->run->shown.e10 : 0;
    const char *unit = unit_word(plan->day->gym->unit), *text = dec_text(m->arena, load);
    struct finding *finding;
    if (load.e10 < 0 && !body) {
        finding = match_refuse(m, row, cell->at, "%s %s is less than nothing", text, unit);
        diag_help(m->findings, finding, "only on bodyweight lifts a load may be taken off; write what was lifted");
    } else if (!fine) {
        finding = match_refuse(m, row, cell->at, "%s %s has more decimals than a weight in lb", text, unit);
        diag_help(m->findings, finding, "write at most two decimals");
    } else if (weight.e10 > LOAD_MOST * DEC_ONE || (printed >= SLIP_FROM * DEC_ONE && weight.e10 >= SLIP * printed)) {
        finding = printed ? match_refuse(m, row, cell->at, "%s %s cannot be right where %s was planned", text, unit,
                                         weight_text(m->arena, plan->run->shown, plan->day->gym->unit))
                          : match_refuse(m, row, cell->at, "%s %s cannot be right", text, unit);
        diag_help(m->findings, finding, "is a decimal point missing? loads are in %s here", unit);
    } else {
        return true;
    }
    return false;
}

static bool loads_make(struct matching *m, const struct filled_row *row, const struct row *plan, struct dec *loads,
                       int sets)
{
    struct dec printed = { 0 };
    if (!row->loads.count && !load_printed(plan, &printed)) {
        const struct filled_cell *cell = &row->cells[FILLED_DONE_LOAD];
        struct finding *finding = match_refuse(m, row, cell->at, "no load was printed here, and none is written down");
        diag_help(m->findings, finding, "write under done_load what was lifted, in %s",
                  unit_word(plan->day->gym->unit));
        return false;
    }
    bool plus = false, minus = false;
    for (int i = 0; i < sets; i++) {
        loads[i] = !row->loads.count ? printed : row->loads.at[row->loads.count == 1 ? 0 : i].number;
        if (row->loads.count && !load_can_be(m, row, plan, loads[i]))
            return false;
        plus |= loads[i].e10 > 0;
        minus |= loads[i].e10 < 0;
    }
    if (plus && minus) {
        struct finding *finding = match_refuse(m, row, row->cells[FILLED_DONE_LOAD].at,
                                               "weight was added in one set and taken off in another");
        diag_help(m->findings, finding, "a diary says that in two parts; write this session by hand");
    }
    return !plus || !minus;
}

void done_make(struct matching *m, const struct filled_row *row, const struct row *plan, struct done_sets *done)
{
    int sets = reps_unit_fits(m, row, plan) ? sets_done(m, row, plan) : 0;
    struct dec *loads = NEW_MANY(m->arena, struct dec, sets + 1), *reps = NEW_MANY(m->arena, struct dec, sets + 1),
               *efforts = NEW_MANY(m->arena, struct dec, sets + 1);
    if (!sets || !loads_make(m, row, plan, loads, sets))
        return;
    for (int i = 0; i < sets; i++)
        reps[i] = row->reps.at[row->reps.count == 1 ? 0 : i].number;
    for (int i = 0; i < row->efforts.count; i++)
        efforts[i] = row->efforts.at[i].number;
    *done = (struct done_sets){ .asked = true,
                                .sets = sets,
                                .loads = loads,
                                .reps = reps,
                                .efforts = efforts,
                                .effort_count = row->efforts.count };
}
