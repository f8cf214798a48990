/* A row means the same whether or not another has said it before. */
#include "reading_roster.h"

#include "records/repeats.h"

static unsigned chance = 11;

static const char *one_of(const char *const *words, int count)
{
    chance = chance * 1103515245 + 12345;
    return words[(chance >> 16) % (unsigned)count];
}
#define ONE_OF(words) one_of(words, (int)(sizeof words / sizeof *words))

static void assert_cells_equal(const struct reading *a, struct roster_cell in_a, const struct reading *b,
                               struct roster_cell in_b)
{
    assert_int_equal(!in_a.text, !in_b.text);
    assert_string_equal(in_a.text ? in_a.text : "", in_b.text ? in_b.text : "");
    if (in_a.text)
        assert_spells(a, in_a.at,
                      arena_format(b->arena, "%.*s", (int)(in_b.at.end - in_b.at.start),
                                   b->source->text + (in_b.at.start - b->source->base)));
}

/* As far behind where the line begins. */
static void assert_places_equal(const struct reading *a, struct span in_a, size_t from_a, const struct reading *b,
                                struct span in_b, size_t from_b)
{
    assert_int_equal(span_is_somewhere(in_a), span_is_somewhere(in_b));
    if (!span_is_somewhere(in_a))
        return;
    assert_int_equal(in_a.start - a->source->base - from_a, in_b.start - b->source->base - from_b);
    assert_int_equal(in_a.end - in_a.start, in_b.end - in_b.start);
}

static void assert_rows_equal(const struct reading *a, const struct roster_row *in_a, size_t from_a,
                              const struct reading *b, const struct roster_row *in_b, size_t from_b)
{
    assert_cells_equal(a, in_a->athlete, b, in_b->athlete);
    assert_cells_equal(a, in_a->title, b, in_b->title);
    assert_cells_equal(a, in_a->group, b, in_b->group);
    assert_cells_equal(a, in_a->gym, b, in_b->gym);
    assert_cells_equal(a, in_a->lift, b, in_b->lift);
    assert_int_equal(in_a->has_bodyweight, in_b->has_bodyweight);
    assert_int_equal(in_a->has_max, in_b->has_max);
    assert_int_equal(in_a->has_reps, in_b->has_reps);
    assert_int_equal(in_a->has_rpe, in_b->has_rpe);
    assert_int_equal(in_a->has_unit, in_b->has_unit);
    assert_int_equal(in_a->bodyweight.e10, in_b->bodyweight.e10);
    assert_int_equal(in_a->max.e10, in_b->max.e10);
    assert_int_equal(in_a->reps.e10, in_b->reps.e10);
    assert_int_equal(in_a->rpe.e10, in_b->rpe.e10);
    assert_int_equal(in_a->unit, in_b->unit);
    assert_int_equal(in_a->date.day, in_b->date.day);
    const struct span spans_a[] = { in_a->at,     in_a->bodyweight_at, in_a->max_at,     in_a->reps_at,
                                    in_a->rpe_at, in_a->date_at,       in_a->athlete.at, in_a->gym.at };
    const struct span spans_b[] = { in_b->at,     in_b->bodyweight_at, in_b->max_at,     in_b->reps_at,
                                    in_b->rpe_at, in_b->date_at,       in_b->athlete.at, in_b->gym.at };
    for (size_t i = 0; i < sizeof spans_a / sizeof *spans_a; i++)
        assert_places_equal(a, spans_a[i], from_a, b, spans_b[i], from_b);
}

/* What was said at the place in both. */
static void assert_findings_equal(const struct reading *a, int at, size_t from_a, const struct reading *b,
                                  size_t from_b)
{
    const struct finding *in_a = findings_sorted(a->findings)[at], *in_b = findings_sorted(b->findings)[0];
    assert_string_equal(in_a->message, in_b->message);
    assert_string_equal(in_a->help, in_b->help);
    assert_places_equal(a, in_a->at, from_a, b, in_b->at, from_b);
}

static const char *const names[] = {
    "ines",
    "ines",
    "ines",
    "piotr",
    "tomas",
    "ren\xC3\xA9",
    "rene\xCC\x81",
    "a-name-of-a-hundred-letters-and-one-which-is-more-than-a-name-may-have-and-than-anybody-would-write-there-x",
    "9ine",
    "ines ",
    " piotr",
    "in-",
    "",
    "\"ines\""
};
static const char *const gyms[] = { "hall", "hall", "shed", "", " hall" };
static const char *const lifts[] = { "squat", "squat", "bench", "", "s\xC3\xA9p", "\"squat\"" };
static const char *const maxes[] = { "100", "100", "72.5", "", "0", "heavy", "\"100\"" };
static const char *const units[] = { "kg", "kg", "lb", "", "KG", "stone" };
static const char *const reps[] = { "", "", "5", "0" };
static const char *const rpes[] = { "", "", "8", "8.3" };
static const char *const days[] = { "2026-12-20", "2026-12-20", "", "20.12.2026", "2026-12-20,more" };

static const struct {
    const char *head;
    bool name_last, titled;
} forms[] = {
    { "athlete,gym,lift,max,unit,reps,rpe,date\n", false, false },
    { "gym,lift,max,unit,reps,rpe,date,athlete\n", true, false },
    { "athlete,title,gym,lift,max,unit,reps,rpe,date\n", false, true },
};

static const char *line_made(struct arena *arena, bool name_last, bool titled)
{
    static const char *const titles[] = { "", "", "Ines", "\"I, C\"" };
    const char *name = ONE_OF(names);
    const char *rest = arena_format(arena, "%s%s%s,%s,%s,%s", titled ? ONE_OF(titles) : "", titled ? "," : "",
                                    ONE_OF(gyms), ONE_OF(lifts), ONE_OF(maxes), ONE_OF(units));
    rest = arena_format(arena, "%s,%s,%s,%s", rest, ONE_OF(reps), ONE_OF(rpes), ONE_OF(days));
    return name_last ? arena_format(arena, "%s,%s\n", rest, name) : arena_format(arena, "%s,%s\n", name, rest);
}

static void rows_are_as_they_are_alone(void **state)
{
    enum { ROWS = 1500 };
    for (size_t f = 0; f < sizeof forms / sizeof *forms; f++) {
        const char *lines[ROWS];
        char *text = arena_alloc(*state, ROWS * 256), *end = text + sprintf(text, "%s", forms[f].head);
        for (int i = 0; i < ROWS; i++)
            end += sprintf(end, "%s", lines[i] = line_made(*state, forms[f].name_last, forms[f].titled));
        struct reading all = read_text(*state, text);
        struct arena *scratch = arena_within(*state);
        if (!all.count) /* what is wrong has been said: it is read again all the same */
            roster_rows(&all.roster, scratch, row_keep, &all);
        int row = 0, said = 0;
        size_t at = strlen(forms[f].head), from = at;
        for (int i = 0; i < ROWS; at += strlen(lines[i++])) {
            struct reading alone = read_text(*state, arena_format(*state, "%s%s", forms[f].head, lines[i]));
            if (findings_total(alone.findings))
                assert_findings_equal(&all, said++, at, &alone, from);
            else
                assert_rows_equal(&all, all.rows[row++], at, &alone, alone.rows[0], from);
        }
        assert_int_equal(row, all.roster.row_count);
        assert_true(row > ROWS / 20 && said > ROWS / 20);
    }
}

/* Of a row said again each cell is where it stands there. */
static void cells_of_a_row_said_again(void **state)
{
    static const char head[] = "athlete,group,gym,bodyweight,lift,max,unit,reps,rpe,date\n";
    static const char *const cells[] = { "novices", "hall", "61.8", "squat", "100", "5", "8", "2026-12-20" };
    static const char rest[] = ",novices,hall,61.8,squat,100,kg,5,8,2026-12-20";
    struct reading r = read_text(*state, arena_format(*state, "%sines%s\ntomas%s\n", head, rest, rest));
    struct roster_row known;
    assert_int_equal(findings_total(r.findings), 0);
    assert_true(repeats_find(r.roster.repeats, r.source, (struct span){ r.rows[1]->athlete.at.end, r.rows[1]->at.end },
                             &known));
    const struct roster_row *row = r.rows[1];
    const struct span at[] = { row->group.at, row->gym.at,  row->bodyweight_at, row->lift.at,
                               row->max_at,   row->reps_at, row->rpe_at,        row->date_at };
    size_t last = sizeof head - 1 + strlen("ines") + sizeof rest;
    for (size_t i = 0; i < sizeof at / sizeof *at; i++) {
        assert_spells(&r, at[i], cells[i]);
        assert_true(at[i].start - r.source->base > last);
    }
    assert_spells(&r, row->athlete.at, "tomas");
    assert_spells(&r, row->at, arena_format(*state, "tomas%s", rest));
}

/* More rows than are kept, each twice. */
static void rows_beyond_those_kept(void **state)
{
    enum { ROWS = 3 * REPEATS_MOST };
    char *text = arena_alloc(*state, 2 * ROWS * 32), *at = text + sprintf(text, "athlete,lift,max\n");
    for (int i = 0; i < 2 * ROWS; i++)
        at += sprintf(at, "lifter-%d,squat,%d\n", i / 2, 1 + i % ROWS);
    struct reading r = read_text(*state, text);
    assert_int_equal(findings_total(r.findings), 0);
    for (int i = 0; i < 2 * ROWS; i++) {
        assert_string_equal(r.rows[i]->athlete.text, arena_format(*state, "lifter-%d", i / 2));
        assert_true(r.rows[i]->max.e10 == dec_int(1 + i % ROWS).e10);
    }
}

static void what_is_kept(void **state)
{
    struct sources *sources = sources_new(*state);
    const char text[] = ",squat,100\nines,squat,100\n,squat,101";
    const struct source *source = sources_add(sources, "athletes.csv", text, strlen(text));
    struct span first = { source->base, source->base + 10 }, second = { source->base + 15, source->base + 25 };
    struct span other = { source->base + 26, source->base + 36 }, shorter = { source->base, source->base + 9 };
    struct roster_row row = { .athlete = { "ines", first },
                              .lift = { "squat", { first.start + 1, first.start + 6 } },
                              .has_max = true,
                              .max = dec_int(100) },
                      found;
    struct roster_row titled = row;
    titled.title.text = "Ines";
    struct repeats *repeats = repeats_new(*state);
    assert_false(repeats_find(repeats, source, first, &found));
    repeats_keep(repeats, source, first, &titled);
    assert_false(repeats_find(repeats, source, first, &found));
    repeats_keep(repeats, source, first, &row);
    row.max = dec_int(7);
    repeats_keep(repeats, source, second, &row); /* nothing new */
    assert_true(repeats_find(repeats, source, second, &found));
    assert_null(found.athlete.text);
    assert_int_equal(found.lift.at.start, second.start + 1);
    assert_int_equal(found.lift.at.end, second.start + 6);
    assert_false(span_is_somewhere(found.gym.at));
    assert_true(found.max.e10 == dec_int(100).e10);
    assert_false(repeats_find(repeats, source, other, &found));
    assert_false(repeats_find(repeats, source, shorter, &found));
}

/* Rows made to fall on one place: some are not kept, none is mistaken. */
static void rows_made_to_collide(void **state)
{
    enum { ROWS = 40, PLACES = REPEATS_MOST };
    int made[ROWS], count = 0;
    for (int i = 1; count < ROWS; i++) {
        const char *rest = arena_format(*state, ",%d", i);
        if (bytes_hash(rest, strlen(rest)) % PLACES == 5)
            made[count++] = i;
    }
    const char *text = "athlete,bodyweight\n";
    for (int i = 0; i < 2 * ROWS; i++)
        text = arena_format(*state, "%slifter,%d\n", text, made[i % ROWS]);
    struct reading r = read_text(*state, text);
    assert_int_equal(findings_total(r.findings), 0);
    for (int i = 0; i < 2 * ROWS; i++)
        assert_true(r.rows[i]->bodyweight.e10 == dec_int(made[i % ROWS]).e10);
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(rows_are_as_they_are_alone), TEST(cells_of_a_row_said_again),
        TEST(rows_beyond_those_kept),     TEST(what_is_kept),
        TEST(rows_made_to_collide),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
