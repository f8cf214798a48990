#include "api/inner.h"

#include "base/near.h"

#include <string.h>

enum setwright_status api_problem(struct setwright *sw, const char *what, const char *name, const char *near)
{
    sw->problem = arena_format(sw->arena, "no %s is called %.60s%s%s%s", what, name, near ? "; did you mean " : "", near ? near : "", near ? "?" : "");
    return SETWRIGHT_USAGE;
}

enum setwright_status api_format_problem(struct setwright *sw, const char *name)
{
    const char **names = NEW_MANY(sw->work, const char *, format_count());
    for (int i = 0; i < format_count(); i++)
        names[i] = format_at(i)->name;
    return api_problem(sw, "format", name, word_nearest(name, names, format_count()));
}

static enum setwright_status choose_people(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out)
{
    if (!choice->athlete_count)
        return SETWRIGHT_FINE;
    out->athletes = NEW_MANY(sw->work, bool, sw->model->athlete_count + 1);
    for (int i = 0; i < choice->athlete_count; i++) {
        const struct people *people = model_people(sw->model, choice->athletes[i]);
        if (!people)
            return api_problem(sw, "athlete or group", choice->athletes[i], model_nearest_person(sw->model, choice->athletes[i]));
        for (int j = 0; j < people->count; j++)
            out->athletes[people->at[j]->order] = true;
    }
    return SETWRIGHT_FINE;
}

static enum setwright_status choose_blocks(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out)
{
    if (!choice->block_count)
        return SETWRIGHT_FINE;
    out->blocks = NEW_MANY(sw->work, bool, sw->model->block_count + 1);
    const char **names = NEW_MANY(sw->work, const char *, sw->model->block_count + 1);
    for (int i = 0; i < sw->model->block_count; i++)
        names[i] = sw->model->blocks[i]->name;
    for (int i = 0; i < choice->block_count; i++) {
        bool found = false;
        for (int j = 0; j < sw->model->block_count; j++)
            if (!strcmp(names[j], choice->blocks[i]))
                found = out->blocks[j] = true;
        if (!found)
            return api_problem(sw, "block", choice->blocks[i], word_nearest(choice->blocks[i], names, sw->model->block_count));
    }
    return SETWRIGHT_FINE;
}

/* "9:30" in minutes after midnight; -1: it is none. */
static int minutes_of(const char *text)
{
    int parts[2] = { 0, 0 }, digits[2] = { 0, 0 }, part = 0;
    for (; *text; text++) {
        if (*text == ':' && !part++)
            continue;
        if (*text < '0' || *text > '9' || ++digits[part != 0] > 2)
            return -1;
        parts[part != 0] = 10 * parts[part != 0] + (*text - '0');
    }
    return digits[0] && digits[1] == 2 && parts[0] < 24 && parts[1] < 60 ? 60 * parts[0] + parts[1] : -1;
}

static enum setwright_status choose_dates(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out)
{
    const char *texts[2] = { choice->from, choice->to };
    struct date *dates[2] = { &out->narrow.from, &out->narrow.to };
    for (int i = 0; i < 2; i++)
        if (texts[i] && !date_parse(texts[i], strlen(texts[i]), dates[i])) {
            sw->problem = arena_format(sw->arena, "%s is no date; write it as 2027-01-04", texts[i]);
            return SETWRIGHT_USAGE;
        }
    for (int i = 0; i < choice->flight_count && i < FLIGHTS_MOST; i++)
        if ((out->narrow.flights[out->narrow.flight_count++] = minutes_of(choice->flights[i])) < 0) {
            sw->problem = arena_format(sw->arena, "%.60s is no time of day; write it as 9:30", choice->flights[i]);
            return SETWRIGHT_USAGE;
        }
    out->narrow.first_week = choice->first_week;
    out->narrow.last_week = choice->last_week;
    return SETWRIGHT_FINE;
}

bool is_chosen(const struct chosen *chosen, const struct pair *pair)
{
    return (!chosen->athletes || chosen->athletes[pair->athlete->order]) && (!chosen->blocks || chosen->blocks[pair->block]) &&
           (!chosen->run || chosen->run == pair->run);
}

/* Whether a chosen week of the pair has a day between the dates. */
static bool pair_meets_dates(const struct block *block, int weeks, const struct narrow *narrow)
{
    int first_week = narrow->first_week ? narrow->first_week : 1, last_week = narrow->last_week ? narrow->last_week : weeks;
    int first = block->start.day + 7 * (first_week - 1), last = block->start.day + 7 * (last_week < weeks ? last_week : weeks) - 1;
    return first_week <= weeks && (!date_is_set(narrow->from) || last >= narrow->from.day) &&
           (!date_is_set(narrow->to) || first <= narrow->to.day);
}

/* Of pairs: how many weeks the longest chosen one has, and whether any meets the dates. */
static bool measure_pairs(const struct setwright *sw, const struct pair *pairs, int count, struct chosen *chosen)
{
    bool meets = false;
    for (int i = 0; i < count; i++)
        if (is_chosen(chosen, &pairs[i])) {
            const struct block *block = sw->model->blocks[pairs[i].block];
            int weeks = plan_week_count(block, pairs[i].athlete);
            chosen->weeks = weeks > chosen->weeks ? weeks : chosen->weeks;
            meets |= pair_meets_dates(block, weeks, &chosen->narrow);
        }
    return meets;
}

/* Weeks that none of the chosen blocks has would build nothing, in silence; so would dates, where plans alone are asked for. */
static enum setwright_status check_weeks(struct setwright *sw, struct chosen *chosen, bool past)
{
    bool between = measure_pairs(sw, sw->pairs.at, sw->pairs.count, chosen) || past;
    if (sw->common.count) { /* of those who wait one stands for all */
        int count;
        const struct pair *pairs = standing_meet(sw, &(struct standing){ .pair = sw->pairs.count }, &count);
        between |= measure_pairs(sw, pairs, count, chosen);
    }
    if (!chosen->weeks || (between && chosen->narrow.first_week <= chosen->weeks))
        return SETWRIGHT_FINE;
    if (chosen->narrow.first_week > chosen->weeks)
        sw->problem = arena_format(sw->arena, "there is no week %d: what is chosen has %d week%s", chosen->narrow.first_week, chosen->weeks,
                                   chosen->weeks == 1 ? "" : "s");
    else
        sw->problem = arena_format(sw->arena, "nothing is planned between these dates");
    return SETWRIGHT_USAGE;
}

/* How many athletes the choice has; `kept` (by order, or NULL) learns which of them are from first up to past. */
static int athletes_between(const struct setwright *sw, const struct chosen *chosen, int64_t first, int64_t past, bool *kept)
{
    const struct athlete *last = NULL;
    int count = 0;
    for (int i = 0; i < sw->pairs.count; i++) {
        const struct pair *pair = &sw->pairs.at[i];
        if (pair->athlete == last || !is_chosen(chosen, pair))
            continue;
        last = pair->athlete;
        if (kept)
            kept[last->order] = count >= first && count < past;
        count++;
    }
    bool waiting = false; /* names chosen, nobody waits */
    for (int i = 0; i < sw->common.count; i++)
        waiting |= (!chosen->blocks || chosen->blocks[sw->common.at[i].block]) && (!chosen->run || chosen->run == sw->common.at[i].run);
    for (int i = 0; waiting && i < sw->model->waiting_count; i++, count++)
        if (kept)
            kept[sw->model->athlete_count + i] = count >= first && count < past;
    return count;
}

/* Athletes in output order, in shares that differ by one at most; the first is never the smaller. */
static enum setwright_status choose_part(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out)
{
    if (!choice->parts)
        return SETWRIGHT_FINE;
    if (choice->sheet && strcmp(choice->sheet, "athlete") != 0)
        sw->problem = arena_format(sw->arena, "the %s sheet has no parts; leave --part out", choice->sheet);
    else if (choice->part < 1 || choice->part > choice->parts)
        sw->problem = arena_format(sw->arena, "there is no part %d of %d", choice->part, choice->parts);
    if (sw->problem)
        return SETWRIGHT_USAGE;
    bool *kept = NEW_MANY(sw->work, bool, sw->model->athlete_count + sw->model->waiting_count + 1);
    int64_t count = athletes_between(sw, out, 0, 0, NULL), parts = choice->parts;
    athletes_between(sw, out, (count * (choice->part - 1) + parts - 1) / parts, (count * choice->part + parts - 1) / parts, kept);
    out->athletes = kept;
    out->resumed = choice->part > 1;
    return SETWRIGHT_FINE;
}

static enum setwright_status choose(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out, bool past, bool waiting)
{
    *out = (struct chosen){ .run = choice->run };
    arena_reset(sw->work);
    sw->problem = NULL;
    if (!sw->model)
        return api_status(sw) ? api_status(sw) : SETWRIGHT_FINDINGS;
    if (waiting && !choice->athlete_count)
        pairs_make(sw);
    else
        pairs_make_all(sw);
    enum setwright_status status = choose_people(sw, choice, out);
    if (!status)
        status = choose_blocks(sw, choice, out);
    if (!status)
        status = choose_dates(sw, choice, out);
    if (!status)
        status = check_weeks(sw, out, past);
    return status ? status : choose_part(sw, choice, out);
}

enum setwright_status api_choose(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out)
{
    return choose(sw, choice, out, false, false);
}

enum setwright_status api_choose_waiting(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out)
{
    return choose(sw, choice, out, false, true);
}

enum setwright_status api_choose_past(struct setwright *sw, const struct setwright_choice *choice, struct chosen *out)
{
    return choose(sw, choice, out, true, false);
}

enum setwright_status setwright_fits(struct setwright *sw, const struct setwright_choice *choice)
{
    GUARD(sw);
    struct chosen chosen;
    return api_choose_waiting(sw, choice, &chosen);
}

int setwright_weeks(struct setwright *sw, const struct setwright_choice *choice)
{
    struct chosen chosen;
    GUARD_WITH(sw, 0);
    api_choose_waiting(sw, choice, &chosen);
    return chosen.weeks;
}

const char *setwright_problem(const struct setwright *sw)
{
    return sw->problem;
}

enum setwright_status setwright_pairs(struct setwright *sw, const struct setwright_choice *choice,
                                      bool (*each)(void *context, const char *athlete, const char *block), void *context)
{
    GUARD(sw);
    struct chosen chosen;
    enum setwright_status status = api_choose(sw, choice, &chosen);
    for (int i = 0; !status && i < sw->pairs.count; i++)
        if (is_chosen(&chosen, &sw->pairs.at[i]) &&
            !each(context, sw->pairs.at[i].athlete->name, sw->model->blocks[sw->pairs.at[i].block]->name))
            return SETWRIGHT_FILES;
    return status;
}
