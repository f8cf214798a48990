/* Seasons: dates, and what must stand in them; src/model/seasons.c. Dates were checked with python's datetime; longer
 * seasons stand in tests/season.py, the words of the mistakes in tests/cases/findings/. */
#include "club.h"

#include "model/club.h"

#define BLOCKS \
    INES "athlete piotr { gym hall; max squat 200 kg }\n" \
         "block base { weeks 3; day A on mon { squat 3 x 5 at rpe 7 } }\n" \
         "block peak { weeks 2; day A on mon, sat { squat 1 x 1 at rpe 8 } }\n" \
         "template bases { weeks 3 }\n"
#define SPRING(lines) BLOCKS "season spring {\n" lines "\n}\n"

/* "base 2027-03-08 3, break 2027-03-29 1": each run with its Monday and weeks. */
static const char *runs_text(struct told *t, const struct season *season)
{
    const char *text = "";
    for (int i = 0; i < season->run_count; i++) {
        const struct season_run *run = &season->runs[i];
        const char *date = date_is_set(run->start) ? date_text(t->arena, run->start) : "-";
        text = arena_format(t->arena, "%s%s%s %s %d", text, i ? ", " : "", run->decl ? run->decl->name : "break", date, run->weeks);
    }
    return text;
}

struct dated {
    const char *says, *lines, *runs;
};

static const struct dated dates[] = {
    { "the last week holds the meet: 2027-04-17 is a Saturday", "for ines; meet \"A\" on 2027-04-17; run base, break 1 week, peak",
      "base 2027-03-08 3, break 2027-03-29 1, peak 2027-04-05 2" },
    { "a meet on a Monday", "for ines; meet \"A\" on 2027-04-12; run base, peak", "base 2027-03-15 3, peak 2027-04-05 2" },
    { "a meet on a Sunday", "for ines; meet \"A\" on 2027-04-18; run base, peak", "base 2027-03-15 3, peak 2027-04-05 2" },
    { "of several meets the last counts, whatever stands first",
      "for ines; meet \"B\" on 2027-04-17; meet \"A\" on 2027-04-03; run base, peak", "base 2027-03-15 3, peak 2027-04-05 2" },
    { "without a meet on from `starts`", "for ines; starts 2027-01-04; run base, break 2 weeks, peak",
      "base 2027-01-04 3, break 2027-01-25 2, peak 2027-02-08 2" },
    { "the same block twice", "for ines; starts 2027-01-04; run base, peak, base",
      "base 2027-01-04 3, peak 2027-01-25 2, base 2027-02-08 3" },
    { "over the end of a year and of February 2028", "for ines; meet \"A\" on 2028-03-04; run base, base, base, peak",
      "base 2027-12-20 3, base 2028-01-10 3, base 2028-01-31 3, peak 2028-02-21 2" },
};

static void dates_are_worked_out(void **state)
{
    const struct dated *row = *state;
    char text[8192];
    snprintf(text, sizeof text, SPRING("%s"), row->lines);
    struct told t = told_club(text);
    assert_non_null(t.model);
    assert_int_equal(findings_count(t.findings, LEVEL_ERROR), 0);
    assert_int_equal(t.model->season_count, 1);
    assert_string_equal(runs_text(&t, t.model->seasons[0]), row->runs);
    assert_int_equal(t.model->seasons[0]->start.day, t.model->seasons[0]->runs[0].start.day);
    told_end(&t);
}

/* The model's blocks are the season's, once for each run, with their dates, people and places in it. */
static void blocks_know_their_season(void **state)
{
    (void)state;
    struct told t = told_club(SPRING("for ines, piotr; meet \"A\" on 2027-04-17; run base, break 1 week, base, peak"));
    static const struct {
        const char *name, *start;
        int run;
        bool last, after_break;
    } blocks[] = { { "base", "2027-02-15", 0, false, false }, { "base", "2027-03-15", 2, false, true }, { "peak", "2027-04-05", 3, true, false } };
    assert_string_equal(findings_text(&t), "");
    assert_int_equal(t.model->block_count, 3);
    for (int i = 0; i < 3; i++) {
        const struct block *block = t.model->blocks[i];
        assert_string_equal(block->name, blocks[i].name);
        assert_string_equal(date_text(t.arena, block->start), blocks[i].start);
        assert_int_equal(block->run, blocks[i].run);
        assert_int_equal(block->last_of_season, blocks[i].last);
        assert_int_equal(block->break_before, blocks[i].after_break);
        assert_ptr_equal(block->season, t.model->seasons[0]);
        assert_int_equal(block->people->count, 2);
    }
    told_end(&t);
}

static void two_seasons_share_a_block(void **state)
{
    (void)state;
    struct told t = told_club(INES "athlete piotr\nblock peak { weeks 2; day A on mon { curl 1 x 1 } }\n"
                                   "season one { for ines; meet \"A\" on 2027-04-17; run peak }\n"
                                   "season two { for piotr; meet \"B\" on 2027-05-15; run peak }\n");
    assert_string_equal(findings_text(&t), "");
    assert_int_equal(t.model->block_count, 2);
    assert_string_equal(date_text(t.arena, t.model->blocks[0]->start), "2027-04-05");
    assert_string_equal(date_text(t.arena, t.model->blocks[1]->start), "2027-05-03");
    assert_string_equal(t.model->blocks[1]->people->at[0]->name, "piotr");
    told_end(&t);
}

static void the_next_meet(void **state)
{
    (void)state;
    struct told t = told_club(SPRING("for ines; meet \"Late\" on 2027-04-17; meet \"Early\" on 2027-04-03; run base, peak"));
    const struct season *season = t.model->seasons[0];
    struct date early, late;
    date_make(2027, 4, 3, &early);
    date_make(2027, 4, 17, &late);
    assert_int_equal(season->meet_count, 2);
    assert_string_equal(season_next_meet(season, date_plus(early, -30))->title, "Early");
    assert_string_equal(season_next_meet(season, early)->title, "Early"); /* on its day */
    assert_string_equal(season_next_meet(season, date_plus(early, 1))->title, "Late");
    assert_string_equal(season_next_meet(season, late)->title, "Late");
    assert_null(season_next_meet(season, date_plus(late, 1)));
    assert_null(season_next_meet(NULL, early));
    told_end(&t);
}

static void what_a_season_holds(void **state)
{
    (void)state;
    struct told t = told_club(SPRING("title \"Spring\"; note \"Bring the singlet\"; for ines; gym hall\n"
                                     "meet \"A\" on 2027-04-17; run base, peak\n"
                                     "attempts squat 91%, 96%, 101.5%; attempts bench 92, 92, 95%"));
    const struct season *season = t.model->seasons[0];
    assert_string_equal(season->title, "Spring");
    assert_string_equal(season->notes[0], "Bring the singlet");
    assert_string_equal(season->gym->name, "hall");
    assert_int_equal(season->weeks, 5);
    assert_int_equal(season->attempt_count, 2);
    assert_string_equal(season->attempts[0].lift->name, "squat");
    assert_string_equal(dec_text(t.arena, season->attempts[0].percent[2]), "101.5");
    assert_string_equal(dec_text(t.arena, season->attempts[1].percent[1]), "92"); /* a second try at the same weight */
    told_end(&t);
}

struct wrong {
    const char *says, *lines, *findings;
};

static const struct wrong wrongs[] = {
    { "all that is missing is said at once", "title \"x\"", "error missing `base`; error missing `peak`; error missing `spring`" },
    { "blocks of a refused season are not taken for blocks on their own", "for ines; run base, peak", "error missing `spring`" },
    { "starts and a meet", "for ines; starts 2027-01-04; meet \"A\" on 2027-04-17; run base, peak", "error season `starts 2027-01-04`" },
    { "starts on a Sunday", "for ines; starts 2027-01-03; run base, peak", "error season `2027-01-03`" },
    { "a template", "for ines; starts 2027-01-04; run base, bases, peak", "error season `bases`" },
    { "itself", "for ines; starts 2027-01-04; run base, spring, peak", "error season `spring`" },
    { "no such block", "for ines; starts 2027-01-04; run base, peek, peak", "error unknown-name `peek`" },
    { "a gym that is not there", "for ines; meet \"A\" on 2027-04-17; gym shed; run base, peak", "error unknown-name `shed`" },
    { "a second run is read too", "for ines; starts 2027-01-04; run base; run peak", "error repeated `run peak`" },
    { "a break without end", "for ines; starts 2027-01-04; run base, break 257 weeks, peak", "error range `257`" },
    { "beyond the end of the calendar", "for ines; starts 9999-11-29; run base, peak", "error range `9999-11-29`" },
    { "before its beginning", "for ines; meet \"A\" on 0001-01-08; run base, peak", "error range `0001-01-08`" },
    { "a meet before the season", "for ines; meet \"A\" on 2027-04-17; meet \"B\" on 2027-03-14; run base, peak",
      "warning season `2027-03-14`" },
    { "a meet on the season's first day", "for ines; meet \"A\" on 2027-04-16; meet \"B\" on 2027-03-15; run base, peak", "" },
    { "two meets in one day", "for ines; meet \"A\" on 2027-04-17; meet \"B\" on 2027-04-17; run base, peak",
      "error repeated `2027-04-17`" },
    { "attempts without a meet", "for ines; starts 2027-01-04; run base, peak; attempts squat 91, 96, 101%",
      "warning season `attempts squat 91, 96, 101%`" },
    { "attempts of a wave are no three attempts", "for ines; meet \"A\" on 2027-04-17; run base, peak; attempts squat wave 91, 96, 101%",
      "error list-length `wave 91, 96, 101%`" },
    { "attempts of a ramp neither", "for ines; meet \"A\" on 2027-04-17; run base, peak; attempts squat from 91 to 101%",
      "error list-length `from 91 to 101%`" },
    { "attempts of four", "for ines; meet \"A\" on 2027-04-17; run base, peak; attempts squat 88, 91, 96, 101%",
      "error list-length `88, 91, 96, 101%`" },
    { "a third attempt lighter than the second", "for ines; meet \"A\" on 2027-04-17; run base, peak; attempts squat 91, 96, 95.5%",
      "error range `91, 96, 95.5%`" },
};

static void wrong_is_found(void **state)
{
    const struct wrong *row = *state;
    char text[8192];
    snprintf(text, sizeof text, SPRING("%s"), row->lines);
    struct told t = told_club(text);
    assert_string_equal(findings_text(&t), row->findings);
    told_end(&t);
}

int main(void)
{
    const struct CMUnitTest more[] = {
        cmocka_unit_test(blocks_know_their_season),
        cmocka_unit_test(two_seasons_share_a_block),
        cmocka_unit_test(the_next_meet),
        cmocka_unit_test(what_a_season_holds),
    };
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(dates, dates_are_worked_out));
    tests_add_rows(&tests, EACH(wrongs, wrong_is_found));
    tests_add(&tests, ARRAY(more));
    return tests_run(&tests);
}
