/* What a calendar has a line for; src/emit/calendar_items.h. The tables made of it: calendar_test.c. */
#include "club.h"

#include "emit/calendar_items.h"

#define TWO "athlete ines\nathlete piotr\n" \
            "block base { weeks 2; day A on mon { curl 1 x 1 } }\nblock peak { weeks 1; day A on mon { curl 1 x 1 } }\n"

struct listed {
    const char *says, *club, *blocks; /* blocks: the first letters of those chosen */
    const char *from, *to, *items;    /* "w 2027-03-22" week, "b" break, "g" gap with its days, "m" meet */
};

static const struct listed rows[] = {
    { "weeks back to back, the meet last", TWO "season s { for ines; meet \"A\" on 2027-04-17; run base, peak }\n", "bp", NULL, NULL,
      "w 2027-03-29, w 2027-04-05, w 2027-04-12, m 2027-04-17" },
    { "a break is a line a week, and no gap", TWO "season s { for ines; meet \"A\" on 2027-04-17; run base, break 2 weeks, peak }\n", "bp", NULL,
      NULL, "w 2027-03-15, w 2027-03-22, b 2027-03-29, b 2027-04-05, w 2027-04-12, m 2027-04-17" },
    { "a break at either end", TWO "season s { for ines; meet \"A\" on 2027-04-12; run break 1 week, base, peak, break 1 week }\n", "bp", NULL, NULL,
      "b 2027-03-15, w 2027-03-22, w 2027-03-29, w 2027-04-05, b 2027-04-12, m 2027-04-12" },
    { "two breaks in a row", TWO "season s { for ines; starts 2027-01-04; run base, break 1 week, break 1 week, peak }\n", "bp", NULL, NULL,
      "w 2027-01-04, w 2027-01-11, b 2027-01-18, b 2027-01-25, w 2027-02-01" },
    { "a block not chosen is no gap, and a break beside it alone is left out",
      TWO "season s { for ines; starts 2027-01-04; run base, break 1 week, base, peak, base }\n", "p", NULL, NULL, "w 2027-02-08" },
    { "blocks on their own, given in any order, with what lies between",
      "athlete ines\nblock peak { for ines; starts 2027-01-20; weeks 1; day A { curl 1 x 1 } }\n"
      "block base { for ines; starts 2027-01-04; weeks 2; day A { curl 1 x 1 } }\n", "bp", NULL, NULL,
      "w 2027-01-04, w 2027-01-11, g 2027-01-18 2, w 2027-01-20" },
    { "blocks over each other have no gap", "athlete ines\nblock base { for ines; starts 2027-01-04; weeks 3; day A { curl 1 x 1 } }\n"
      "block peak { for ines; starts 2027-01-11; weeks 1; day A { curl 1 x 1 } }\n", "bp", NULL, NULL,
      "w 2027-01-04, w 2027-01-11, w 2027-01-11, w 2027-01-18" },
    { "another's block does not fill her gap", "athlete ines\nathlete piotr\n"
      "block base { for ines; starts 2027-01-04; weeks 1; day A { curl 1 x 1 } }\n"
      "block other { for piotr; starts 2027-01-11; weeks 1; day A { curl 1 x 1 } }\n"
      "block peak { for ines; starts 2027-01-18; weeks 1; day A { curl 1 x 1 } }\n", "bp", NULL, NULL,
      "w 2027-01-04, g 2027-01-11 7, w 2027-01-18" },
    { "a gap that begins before the dates asked for is told", "athlete ines\nblock base { for ines; starts 2027-01-04; weeks 1; day A { curl 1 x 1 } }\n"
      "block peak { for ines; starts 2027-02-01; weeks 1; day A { curl 1 x 1 } }\n", "bp", "2027-01-31", "2027-01-31",
      "g 2027-01-11 21" },
    { "and not when it ends before them", "athlete ines\nblock base { for ines; starts 2027-01-04; weeks 1; day A { curl 1 x 1 } }\n"
      "block peak { for ines; starts 2027-02-01; weeks 1; day A { curl 1 x 1 } }\n", "bp", "2027-02-01", NULL, "w 2027-02-01" },
    { "meets outside the dates are left out", TWO "season s { for ines; meet \"A\" on 2027-04-17; meet \"B\" on 2027-03-30; run base, peak }\n",
      "bp", "2027-03-30", "2027-04-16", "m 2027-03-30, w 2027-04-05, w 2027-04-12" },
};

static const char *items_text(struct told *t, const struct listed *row)
{
    const struct athlete *ines = told_athlete(t, "ines");
    struct plan **plans = NEW_MANY(t->arena, struct plan *, t->model->block_count + 1);
    struct narrow narrow = { 0 };
    const char *text = "";
    int count = 0;
    for (int i = 0; i < t->model->block_count; i++)
        if (strchr(row->blocks, t->model->blocks[i]->name[0]))
            plans[count++] = plan_make(t->arena, &(struct plan_job){ .model = t->model, .block = t->model->blocks[i], .athlete = ines, .record = NULL, .touched = NULL });
    if (row->from)
        assert_true(date_parse(row->from, 10, &narrow.from));
    if (row->to)
        assert_true(date_parse(row->to, 10, &narrow.to));
    struct items items = items_find(t->arena, &narrow, ines, plans, count);
    for (int i = 0; i < items.list.count; i++) {
        const struct item *item = &items.list.at[i];
        text = arena_format(t->arena, "%s%s%c %s", text, i ? ", " : "", "wbgm"[item->kind], date_text(t->arena, item->date));
        if (item->kind == ITEM_GAP)
            text = arena_format(t->arena, "%s %d", text, item->days);
    }
    return text;
}

static void the_items(void **state)
{
    const struct listed *row = *state;
    struct told t = told_club(row->club);
    assert_non_null(t.model);
    assert_int_equal(findings_count(t.findings, LEVEL_ERROR), 0);
    assert_string_equal(items_text(&t, row), row->items);
    told_end(&t);
}

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, the_items));
    return tests_run(&tests);
}
