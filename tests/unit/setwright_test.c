/* The library as a program that embeds it sees it: src/setwright.h. */
#include "setwright.h"

#include "club.h"

struct kept {
    char *text;
    size_t length, room;
    int writes, refuse_after; /* 0: never */
};

static bool keep(void *context, const char *bytes, size_t length)
{
    struct kept *kept = context;
    if (kept->refuse_after && ++kept->writes >= kept->refuse_after)
        return false;
    if (kept->length + length + 1 > kept->room) {
        kept->room = 2 * (kept->length + length + 1);
        kept->text = realloc(kept->text, kept->room);
        assert_non_null(kept->text);
    }
    memcpy(kept->text + kept->length, bytes, length);
    kept->length += length;
    kept->text[kept->length] = 0;
    return true;
}

static void forget(struct kept *kept)
{
    free(kept->text);
    *kept = (struct kept){ 0 };
}

#define SINK(kept) ((struct setwright_sink){ keep, &(kept) })

/* Papers stand on the caller's stack: one text, named club.block, and the hall. */
struct run {
    struct paper papers[3];
    struct setwright *sw;
    enum setwright_status loaded, checked;
};

static void run_text_of(struct run *run, const char *text)
{
    static const char *const paths[] = { "hall.block", "club.block" };
    run->papers[0] = (struct paper){ "hall.block", HALL };
    run->papers[1] = (struct paper){ "club.block", text };
    run->papers[2] = (struct paper){ NULL, NULL };
    run->sw = setwright_new((struct setwright_reader){ paper_read, run->papers, false });
    assert_non_null(run->sw);
    run->loaded = setwright_load(run->sw, paths, 2);
    run->checked = setwright_check(run->sw);
}

#define TWO_OF_THEM                                                                                                    \
    "athlete tomas { gym hall; max squat 140 kg }\nathlete ines { gym hall; max squat 100 kg }\ngroup late { tomas "   \
    "}\n"                                                                                                              \
    "block one { for ines, tomas; starts 2027-01-04; weeks 2; day A on mon { squat 3 x 5 at 80% }; day B on thu { "    \
    "squat top 1 x 1 at rpe 8 } }\n"                                                                                   \
    "block two { for tomas; starts 2027-02-01; weeks 1; day A on mon { squat 1 x 5 at 75% rest 3 min note \"slow; "    \
    "\\\"down\\\"\" } }\n"

static void fine_files(void **state)
{
    (void)state;
    struct run run;
    run_text_of(&run, TWO_OF_THEM);
    assert_int_equal(run.loaded, SETWRIGHT_FINE);
    assert_int_equal(run.checked, SETWRIGHT_FINE);
    assert_int_equal(setwright_errors(run.sw), 0);
    assert_null(setwright_problem(run.sw));
    setwright_free(run.sw);
    setwright_free(NULL);
}

static void findings_are_told(void **state)
{
    (void)state;
    struct run run;
    run_text_of(&run, "athlete ines { gym hall }\nblock one { for ines; starts 2027-01-04; weeks 1\n  day A { squat 1 "
                      "x 2 at 20 | 30 kg\n sqat 1 x 1 } }\n");
    assert_int_equal(run.loaded, SETWRIGHT_FINDINGS);
    assert_int_equal(run.checked, SETWRIGHT_FINDINGS);
    assert_int_equal(setwright_finding_count(run.sw), 2);
    assert_int_equal(setwright_errors(run.sw), 1);
    assert_int_equal(setwright_warnings(run.sw), 1);
    struct setwright_finding first = setwright_finding(run.sw, 0), second = setwright_finding(run.sw, 1);
    assert_int_equal(first.level, SETWRIGHT_WARNING);
    assert_string_equal(first.name, "weeks");
    assert_string_equal(first.place.file, "club.block");
    assert_int_equal(first.place.line, 3);
    assert_int_equal(first.place.column, 26);
    assert_int_equal(first.place.end_line, 3);
    assert_int_equal(first.place.end_column, 36);
    assert_int_equal(second.level, SETWRIGHT_ERROR);
    assert_string_equal(second.name, "unknown-name");
    assert_string_equal(second.message, "no lift is called sqat");
    assert_string_equal(second.help, "did you mean squat?");
    assert_null(setwright_finding(run.sw, 2).message);
    assert_null(setwright_finding(run.sw, -1).message);
    struct kept kept = { 0 };
    setwright_findings_text(run.sw, SINK(kept), (struct setwright_style){ 0 });
    assert_non_null(strstr(kept.text, "club.block:3:26: warning: "));
    assert_non_null(strstr(kept.text, "club.block:4:2: error: no lift is called sqat [unknown-name]\n"));
    forget(&kept);
    setwright_findings_text(run.sw, SINK(kept), (struct setwright_style){ .most = 1 });
    assert_non_null(
        strstr(kept.text, "no lift is called sqat")); /* the error first, though the warning stands above it */
    assert_null(strstr(kept.text, "warning: "));
    assert_non_null(strstr(kept.text, "2 findings")); /* the true total */
    forget(&kept);
    setwright_findings_text(run.sw, SINK(kept), (struct setwright_style){ .brief = true });
    assert_null(strstr(kept.text, "help:"));
    forget(&kept);
    struct setwright_choice all = { 0 };
    assert_int_equal(setwright_build(run.sw, "csv", &all, SINK(kept)), SETWRIGHT_FINDINGS);
    assert_int_equal(kept.length, 0);
    setwright_free(run.sw);
}

static void a_file_that_cannot_be_read(void **state)
{
    (void)state;
    struct run run;
    run_text_of(&run, "use \"gym.block\"\nathlete ines { max sqat 1 kg }\n");
    assert_int_equal(run.loaded, SETWRIGHT_FILES); /* even beside other errors */
    assert_int_equal(setwright_finding(run.sw, 0).level, SETWRIGHT_ERROR);
    assert_string_equal(setwright_finding(run.sw, 0).name, "file");
    assert_string_equal(setwright_finding(run.sw, 0).message, "gym.block: no such file");
    setwright_free(run.sw);
    const char *const none[] = { "none.block" };
    run.sw = setwright_new((struct setwright_reader){ paper_read, run.papers, false });
    assert_int_equal(setwright_load(run.sw, none, 1), SETWRIGHT_FILES);
    assert_null(setwright_finding(run.sw, 0).place.file);
    setwright_free(run.sw);
}

/* The first finding of a name; an empty one when there is none. */
static struct setwright_finding named(struct setwright *sw, const char *name)
{
    for (int i = 0; i < setwright_finding_count(sw); i++)
        if (!strcmp(setwright_finding(sw, i).name, name))
            return setwright_finding(sw, i);
    return (struct setwright_finding){ 0 };
}

/* A change that touches nothing is a warning; one that touches somebody is none. */
static void changes_that_touch_nothing(void **state)
{
    (void)state;
    static const struct {
        const char *lines, *spelt;
    } cases[] = {
        { "adjust ines { sets down 1 for squat on day B }", "sets down 1 for squat on day B" },
        { "adjust ines { load down 10% for curl }", "load down 10% for curl" }, /* its load is open */
        { "deload week 1 { rpe down 2 for squat }", "rpe down 2 for squat" },
        { "adjust ines in weeks 2 { skip day A }", NULL },
        { "adjust ines { rpe down 1 }", NULL },
        { "adjust tomas { sets down 1 }", "tomas" }, /* he is not in the block */
        { "deload week 1", NULL },
        { "adjust ines { skip week 2 }", NULL },
        { "adjust ines { repeat week 1 }", NULL },
        { "adjust ines { note \"well done\" }", NULL },
        { "adjust ines from 2028-01-01 { sets down 1 }", "sets down 1" },
        { "adjust ines { cap squat rpe 9 }", NULL },
        { "adjust ines { add to day A { press 1 x 8 } }", NULL },
        { "adjust ines { swap curl with press }", NULL },
        { "adjust ines { reps up 1 for bench }; day C { bench 1 x amrap at 20 kg }", "reps up 1 for bench" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct run run;
        char text[1024];
        snprintf(text, sizeof text,
                 INES "athlete tomas\nblock one { for ines; starts 2027-01-04; weeks 2; %s; day A { squat 3 x 5 at "
                      "80%% }; day B { curl 3 x 5 at rpe 8 } }\n",
                 cases[i].lines);
        run_text_of(&run, text);
        assert_int_equal(run.checked, SETWRIGHT_FINE);
        struct setwright_finding finding = named(run.sw, "untouched");
        if (!finding.name != !cases[i].spelt)
            print_message("case: %s\n", cases[i].lines);
        assert_int_equal(finding.name != NULL, cases[i].spelt != NULL);
        if (cases[i].spelt) {
            assert_int_equal(finding.place.end_byte - finding.place.byte, strlen(cases[i].spelt));
            assert_memory_equal(text + finding.place.byte, cases[i].spelt, strlen(cases[i].spelt));
        }
        setwright_free(run.sw);
    }
}

/* What an `allow` permits is in none of the counts, but can be asked for; what is silenced goes too, errors never. */
static void allowed_and_silenced(void **state)
{
    (void)state;
    struct run run;
    run_text_of(&run, INES "block one { for ines; starts 2027-01-04; weeks 1; allow under-bar because \"technique\"\n"
                           "  day A { squat 3 x 5 at 10 kg } }\n");
    assert_null(named(run.sw, "under-bar").name);
    assert_int_equal(setwright_allowed_count(run.sw), 1);
    assert_string_equal(setwright_allowed(run.sw, 0).name, "under-bar");
    assert_string_equal(setwright_allowed(run.sw, 0).allowed, "technique");
    assert_null(setwright_allowed(run.sw, 1).name);
    setwright_free(run.sw);
    run_text_of(
        &run, INES
        "block one { for ines; starts 2027-01-04; weeks 1\n  day A { squat 3 x 5 at 10 kg; bench 3 x 5 at 200% } }\n");
    bool silent[64];
    memset(silent, true, sizeof silent);
    assert_non_null(named(run.sw, "under-bar").name);
    assert_true(setwright_finding_count(run.sw) < 64);
    setwright_silence(run.sw, silent);
    assert_null(named(run.sw, "under-bar").name);
    assert_string_equal(named(run.sw, "impossible-set").name, "impossible-set");
    assert_int_equal(setwright_finding_count(run.sw), setwright_errors(run.sw));
    setwright_free(run.sw);
}

struct names {
    char text[512];
    int most;
};

static bool pair_name(void *context, const char *athlete, const char *block)
{
    struct names *names = context;
    size_t used = strlen(names->text);
    snprintf(names->text + used, sizeof names->text - used, "%s/%s ", athlete, block);
    return !names->most || --names->most;
}

static const char *pairs(struct setwright *sw, struct setwright_choice choice, enum setwright_status wanted,
                         struct names *names)
{
    *names = (struct names){ { 0 }, 0 };
    assert_int_equal(setwright_pairs(sw, &choice, pair_name, names), wanted);
    return names->text;
}

static void what_is_chosen(void **state)
{
    (void)state;
    struct run run;
    struct names names;
    run_text_of(&run, TWO_OF_THEM);
    const char *const late[] = { "late" }, *const ines[] = { "ines" }, *const nobody[] = { "inse" },
                      *const two[] = { "two" }, *const three[] = { "tow" };
    /* athletes as first named by the blocks, within one blocks in file order */
    assert_string_equal(pairs(run.sw, (struct setwright_choice){ 0 }, SETWRIGHT_FINE, &names),
                        "ines/one tomas/one tomas/two ");
    assert_string_equal(
        pairs(run.sw, (struct setwright_choice){ .athletes = late, .athlete_count = 1 }, SETWRIGHT_FINE, &names),
        "tomas/one tomas/two ");
    assert_string_equal(
        pairs(run.sw, (struct setwright_choice){ .athletes = ines, .athlete_count = 1 }, SETWRIGHT_FINE, &names),
        "ines/one ");
    assert_string_equal(
        pairs(run.sw, (struct setwright_choice){ .blocks = two, .block_count = 1 }, SETWRIGHT_FINE, &names),
        "tomas/two ");
    assert_string_equal(
        pairs(run.sw,
              (struct setwright_choice){ .athletes = ines, .athlete_count = 1, .blocks = two, .block_count = 1 },
              SETWRIGHT_FINE, &names),
        "");
    pairs(run.sw, (struct setwright_choice){ .athletes = nobody, .athlete_count = 1 }, SETWRIGHT_USAGE, &names);
    assert_string_equal(setwright_problem(run.sw), "no athlete or group is called inse; did you mean ines?");
    pairs(run.sw, (struct setwright_choice){ .blocks = three, .block_count = 1 }, SETWRIGHT_USAGE, &names);
    assert_string_equal(setwright_problem(run.sw), "no block is called tow; did you mean two?");
    pairs(run.sw, (struct setwright_choice){ .from = "4.1.2027" }, SETWRIGHT_USAGE, &names);
    assert_string_equal(setwright_problem(run.sw), "4.1.2027 is no date; write it as 2027-01-04");
    names = (struct names){ { 0 }, 1 };
    struct setwright_choice all = { 0 };
    assert_int_equal(setwright_pairs(run.sw, &all, pair_name, &names), SETWRIGHT_FILES); /* false ends the walk */
    assert_string_equal(names.text, "ines/one ");
    setwright_free(run.sw);
}

#define HEADER                                                                                                         \
    "athlete,block,week,date,day,seq,lift,role,sets,reps_low,reps_high,rpe,percent,load,unit,per_side,rest_s,tempo,"   \
    "note,done_load,done_reps,done_rpe\n"

/* Tomas trains block one twice, ines once; the number counts an athlete's own times. */
static void a_block_that_is_run_twice(void **state)
{
    (void)state;
    struct run run;
    run_text_of(&run, "athlete tomas { gym hall; max squat 140 kg on 2026-12-01 }\nathlete ines { gym hall; max squat 100 kg on 2026-12-01 }\n"
                      "block one { weeks 2; day A on mon { squat 3 x 5 at 80% } }\nblock two { weeks 3; day A on mon { squat 3 x 3 at 85% } }\n"
                      "season winter { for tomas; starts 2027-01-04; run one, two, one }\n"
                      "season late { for ines; starts 2027-06-07; run one }\n");
    assert_int_equal(run.loaded, SETWRIGHT_FINE);
    static const struct {
        int run, weeks;
        const char *has, *lacks;
    } cases[] = {
        { 0, 3, "tomas,one,1,2027-02-08", "nobody" },
        { 1, 3, "tomas,one,1,2027-01-04", "tomas,one,1,2027-02-08" },
        { 1, 3, "ines,one,2,2027-06-14", "nobody" },
        { 2, 2, "tomas,one,2,2027-02-15", "tomas,one,1,2027-01-04" },
        { 2, 2, "tomas,one,2,2027-02-15", "ines" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct setwright_choice choice = { .run = cases[i].run };
        struct kept kept = { 0 };
        assert_int_equal(setwright_weeks(run.sw, &choice), cases[i].weeks);
        assert_int_equal(setwright_build(run.sw, "csv", &choice, SINK(kept)), SETWRIGHT_FINE);
        assert_non_null(strstr(kept.text, cases[i].has));
        assert_null(strstr(kept.text, cases[i].lacks));
        forget(&kept);
    }
    /* Weeks and dates narrow together: block two lies between, and its third week ends on 7 February. */
    static const char *const two[] = { "two" };
    struct setwright_choice late = { .blocks = two, .block_count = 1, .first_week = 3, .last_week = 3, .from = "2027-02-07" };
    assert_int_equal(setwright_fits(run.sw, &late), SETWRIGHT_FINE);
    late.from = "2027-02-08";
    assert_int_equal(setwright_fits(run.sw, &late), SETWRIGHT_USAGE);
    late.from = NULL, late.to = "2027-01-31";
    assert_int_equal(setwright_fits(run.sw, &late), SETWRIGHT_USAGE);
    late.to = "2027-02-01";
    assert_int_equal(setwright_fits(run.sw, &late), SETWRIGHT_FINE);
    setwright_free(run.sw);
}

static void csv_is_built(void **state)
{
    (void)state;
    struct run run;
    struct kept kept = { 0 };
    run_text_of(&run, TWO_OF_THEM);
    const char *const two[] = { "two" };
    struct setwright_choice choice = { .blocks = two, .block_count = 1 };
    assert_int_equal(setwright_build(run.sw, "csv", &choice, SINK(kept)), SETWRIGHT_FINE);
    /* 105 kg: (105 - 20)/2 = 42.5 = 25 + 10 + 5 + 2.5; 75 % and five reps: n = 10, rpe 5 */
    assert_string_equal(
        kept.text,
        HEADER "tomas,two,1,2027-02-01,A,1,squat,work,1,5,5,5,75,105,kg,25+10+5+2.5,180,,\"slow; \"\"down\"\"\",,,\n");
    forget(&kept);
    choice.crlf = true;
    assert_int_equal(setwright_build(run.sw, "csv", &choice, SINK(kept)), SETWRIGHT_FINE);
    assert_non_null(strstr(kept.text, "done_rpe\r\n"));
    forget(&kept);
    assert_int_equal(setwright_build(run.sw, "cvs", &choice, SINK(kept)), SETWRIGHT_USAGE);
    assert_string_equal(setwright_problem(run.sw), "no format is called cvs; did you mean csv?");
    setwright_free(run.sw);
}

static void every_format_twice_the_same(void **state)
{
    (void)state;
    struct run run;
    run_text_of(&run, TWO_OF_THEM);
    const char *name, *ending, *says;
    struct setwright_choice all = { 0 };
    int formats = 0;
    for (; (name = setwright_format_name(formats, &ending, &says)); formats++) {
        struct kept once = { 0 }, again = { 0 };
        assert_int_equal(setwright_build(run.sw, name, &all, SINK(once)), SETWRIGHT_FINE);
        assert_int_equal(setwright_build(run.sw, name, &all, SINK(again)), SETWRIGHT_FINE);
        assert_true(once.length > 100);
        assert_string_equal(once.text, again.text);
        assert_int_equal(ending[0], '.');
        assert_true(strlen(says) > 5);
        forget(&once);
        forget(&again);
        once.refuse_after = 1;
        assert_int_equal(setwright_build(run.sw, name, &all, SINK(once)), SETWRIGHT_FILES);
    }
    assert_int_equal(formats, 3);
    setwright_free(run.sw);
}

struct rows_seen {
    char text[4096];
    int most;
};

static bool row_seen(void *context, const char *const *cells)
{
    struct rows_seen *seen = context;
    size_t used = strlen(seen->text);
    snprintf(seen->text + used, sizeof seen->text - used, "%s %s w%s %s %s%s %s\n", cells[0], cells[1], cells[2],
             cells[3], cells[4], cells[5], cells[13]);
    return !seen->most || --seen->most;
}

static void the_plan_is_walked(void **state)
{
    (void)state;
    struct run run;
    run_text_of(&run, TWO_OF_THEM);
    static const struct {
        struct setwright_choice choice;
        const char *rows;
    } cases[] = {
        { { .first_week = 2, .last_week = 2 },
          "ines one w2 2027-01-11 A1 80\nines one w2 2027-01-14 B1 95\ntomas one w2 2027-01-11 A1 112.5\ntomas one w2 "
          "2027-01-14 B1 132.5\n" },
        { { .from = "2027-01-14", .to = "2027-01-14" },
          "ines one w2 2027-01-14 B1 95\ntomas one w2 2027-01-14 B1 132.5\n" }, /* both inclusive */
        { { .from = "2027-01-15" }, "tomas two w1 2027-02-01 A1 105\n" },
        { { .to = "2027-01-04" }, "ines one w1 2027-01-04 A1 80\ntomas one w1 2027-01-04 A1 112.5\n" },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct rows_seen seen = { { 0 }, 0 };
        assert_int_equal(setwright_walk(run.sw, &cases[i].choice, row_seen, &seen), SETWRIGHT_FINE);
        assert_string_equal(seen.text, cases[i].rows);
    }
    struct rows_seen one = { { 0 }, 1 };
    struct setwright_choice all = { 0 }, late = { .first_week = 7, .last_week = 7 };
    assert_int_equal(setwright_walk(run.sw, &late, row_seen, &one), SETWRIGHT_USAGE); /* nobody has such a week */
    assert_string_equal(one.text, "");
    assert_int_equal(setwright_walk(run.sw, &all, row_seen, &one), SETWRIGHT_FILES);
    assert_string_equal(one.text, "ines one w1 2027-01-04 A1 80\n");
    setwright_free(run.sw);
}

static void columns_are_the_header_of_the_csv(void **state)
{
    (void)state;
    char header[512] = "";
    for (int i = 0; setwright_column(i); i++)
        snprintf(header + strlen(header), sizeof header - strlen(header), "%s%s", i ? "," : "", setwright_column(i));
    strcat(header, "\n");
    assert_string_equal(header, HEADER);
    assert_null(setwright_column(-1));
}

static void why(void **state)
{
    (void)state;
    struct run run;
    struct kept kept = { 0 };
    run_text_of(&run, TWO_OF_THEM);
    struct setwright_question question = { .athlete = "ines", .lift = "squat", .week = 1 };
    assert_int_equal(setwright_why(run.sw, &question, SINK(kept)), SETWRIGHT_FINE);
    assert_non_null(strstr(kept.text, "squat, day A, 2027-01-04: work 3 x 5 at 80 kg"));
    assert_non_null(strstr(kept.text, "squat, day B, 2027-01-07: top 1 x 1 at 95 kg"));
    forget(&kept);
    question.day = "B";
    assert_int_equal(setwright_why(run.sw, &question, SINK(kept)), SETWRIGHT_FINE);
    assert_null(strstr(kept.text, "day A"));
    forget(&kept);
    static const struct {
        struct setwright_question question;
        const char *problem;
    } wrong[] = {
        { { .athlete = "ines", .lift = "sqaut", .week = 1 }, "no lift is called sqaut; did you mean squat?" },
        { { .athlete = "ines", .lift = "bench", .week = 1 }, "ines does not train bench in week 1" },
        { { .athlete = "ines", .lift = "squat", .week = 3 }, "ines does not train squat in week 3" },
        { { .athlete = "ines", .lift = "squat", .week = 1, .day = "C", .block = "one" },
          "ines does not train squat in week 1 on day C of one" },
        { { .athlete = "inse", .lift = "squat", .week = 1 }, "no athlete or group is called inse; did you mean ines?" },
        { { .athlete = "ines", .lift = "squat", .week = 1, .block = "on" },
          "no block is called on; did you mean one?" },
    };
    for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
        assert_int_equal(setwright_why(run.sw, &wrong[i].question, SINK(kept)), SETWRIGHT_USAGE);
        assert_string_equal(setwright_problem(run.sw), wrong[i].problem);
    }
    setwright_free(run.sw);
}

static void tables_that_need_no_files(void **state)
{
    (void)state;
    const char *says, *name, *text;
    assert_true(strlen(setwright_version()) > 0);
    struct run run;
    run_text_of(&run, "");
    int findings = 0;
    for (; (name = setwright_finding_name(findings, &says)); findings++) {
        assert_true(strlen(says) > 10);
        assert_true(strlen(setwright_explain(run.sw, name)) > 50);
    }
    assert_true(findings >= KIND_COUNT - 1);
    assert_null(setwright_finding_name(-1, &says));
    assert_null(setwright_explain(run.sw, "no-such-finding"));
    assert_string_equal(setwright_finding_near("mising-max"), "missing-max");
    assert_null(setwright_finding_near("quite-another-thing"));
    int files = 0;
    for (; (name = setwright_library_name(files, &text)); files++) {
        assert_memory_equal(name, "std/", 4);
        assert_true(strlen(text) > 20);
    }
    assert_true(files > 3);
    assert_null(setwright_library_name(-1, &text));
    const char *ending;
    assert_null(setwright_format_name(-1, &ending, &says));
    setwright_free(run.sw);
}

/* Two of them side by side share nothing. */
static void two_at_once(void **state)
{
    (void)state;
    struct run one, other;
    run_text_of(&one, TWO_OF_THEM);
    run_text_of(&other, "athlete ines { max sqat 1 kg }\n");
    assert_int_equal(setwright_errors(one.sw), 0);
    assert_int_equal(setwright_errors(other.sw), 1);
    setwright_free(one.sw);
    assert_int_equal(setwright_errors(other.sw), 1);
    setwright_free(other.sw);
}

#define LOOKED_BACK                                                                                                    \
    "athlete ines { gym hall; max squat 100 kg on 2027-01-01 }\nathlete tomas { gym hall; max squat 140 kg }\n"        \
    "athlete hanna { gym hall }\n"                                                                                     \
    "block one { for ines; starts 2027-01-04; weeks 2; day A on mon { squat 3 x 5 at 70% } }\n"                        \
    "block two { for ines; starts 2027-02-01; weeks 1; day A on mon { squat 3 x 5 at 75% } }\n"                        \
    "diary ines { 2027-01-04 A { squat as planned }\n 2027-02-01 A { squat as planned } }\n"                           \
    "diary tomas { 2027-01-05 { squat 100 kg x 5 } }\n"

static int lines_with(const char *text, const char *words)
{
    int count = 0;
    for (const char *at = text; at && (at = strstr(at, words)); at++)
        count++;
    return count;
}

/* A lifter's blocks stand on one page; one without a block has a page where nobody asks for blocks. */
static void what_a_review_looks_at(void **state)
{
    (void)state;
    struct run run;
    run_text_of(&run, LOOKED_BACK);
    assert_int_equal(run.checked, SETWRIGHT_FINE);
    static const char *const hanna[] = { "hanna" }, *const tomas[] = { "tomas" }, *const two[] = { "two" };
    static const struct {
        struct setwright_choice choice;
        int work[3], pages; /* rows of ines in one and in two, and of tomas; pages of text */
    } cases[] = {
        { { 0 }, { 2, 1, 1 }, 2 }, /* block one has two weeks */
        { { .blocks = two, .block_count = 1 }, { 0, 1, 0 }, 1 },
        { { .athletes = tomas, .athlete_count = 1 }, { 0, 0, 1 }, 1 },
        { { .athletes = hanna, .athlete_count = 1 }, { 0, 0, 0 }, 1 },
        { { .from = "2027-01-11" }, { 1, 1, 0 }, 2 },
        { { .from = "2027-01-05", .to = "2027-01-05" }, { 0, 0, 1 }, 2 }, /* her one session of that week was the day before */
        { { .first_week = 1, .last_week = 1 }, { 1, 1, 0 }, 1 }, /* week 1 of each */
        { { .run = 1 }, { 2, 1, 0 }, 1 },
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct kept text = { 0 }, csv = { 0 };
        assert_int_equal(setwright_review(run.sw, "csv", &cases[i].choice, SINK(csv)), SETWRIGHT_FINE);
        assert_int_equal(setwright_review(run.sw, "text", &cases[i].choice, SINK(text)), SETWRIGHT_FINE);
        if (lines_with(csv.text, ",one,") < cases[i].work[0] || lines_with(text.text, "====\n") != cases[i].pages)
            fail_msg("%zu\n%s\n%s", i, csv.text, text.text);
        static const char *const starts[] = { "work,ines,2027-01", "work,ines,2027-02", "work,tomas," };
        for (int j = 0; j < 3; j++)
            if (lines_with(csv.text, starts[j]) != cases[i].work[j])
                fail_msg("%zu %s\n%s", i, starts[j], csv.text);
        forget(&text);
        forget(&csv);
        text.refuse_after = csv.refuse_after = 1;
        assert_int_equal(setwright_review(run.sw, "csv", &cases[i].choice, SINK(csv)), SETWRIGHT_FILES);
        assert_int_equal(setwright_review(run.sw, "text", &cases[i].choice, SINK(text)), SETWRIGHT_FILES);
        assert_int_equal(text.length + csv.length, 0);
    }
    struct setwright_choice all = { 0 };
    struct kept kept = { 0 };
    assert_int_equal(setwright_review(run.sw, "yaml", &all, SINK(kept)), SETWRIGHT_USAGE);
    assert_int_equal(kept.length, 0);
    setwright_free(run.sw);
}

static void times_of_flights(void **state)
{
    (void)state;
    struct run run;
    run_text_of(&run, TWO_OF_THEM);
    static const char *const good[] = { "9:30", "09:30", "0:00", "23:59" };
    static const char *const bad[] = { "24:00", "9:60", "9:3", "930", ":30", "9:30:1", "9:ab", "", "9", "009:30", "9:030", "-9:30" };
    for (size_t i = 0; i < sizeof good / sizeof *good; i++)
        assert_int_equal(setwright_fits(run.sw, &(struct setwright_choice){ .flights = &good[i], .flight_count = 1 }), SETWRIGHT_FINE);
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        assert_int_equal(setwright_fits(run.sw, &(struct setwright_choice){ .flights = &bad[i], .flight_count = 1 }), SETWRIGHT_USAGE);
        assert_non_null(strstr(setwright_problem(run.sw), "no time of day; write it as 9:30"));
    }
    setwright_free(run.sw);
}

/* Each way out of the library stops at a sink that takes no more, early or late, and says so. */
static void a_sink_that_is_full(void **state)
{
    (void)state;
    struct run run;
    run_text_of(&run, TWO_OF_THEM);
    struct setwright_choice all = { 0 }, group = { .sheet = "group" }, coach = { .sheet = "coach" };
    struct setwright_question question = { .athlete = "ines", .block = "one", .lift = "squat", .week = 1 };
    for (int most = 1; most <= 2; most++) {
        struct kept kept = { .refuse_after = most };
        assert_int_equal(setwright_calendar(run.sw, &all, SINK(kept)), most == 1 ? SETWRIGHT_FILES : SETWRIGHT_FINE);
        forget(&kept);
        kept.refuse_after = most;
        assert_int_equal(setwright_diary(run.sw, &all, SINK(kept)), most == 1 ? SETWRIGHT_FILES : SETWRIGHT_FINE);
        forget(&kept);
    }
    struct kept kept = { .refuse_after = 1 };
    assert_int_equal(setwright_why(run.sw, &question, SINK(kept)), SETWRIGHT_FILES);
    assert_int_equal(setwright_build(run.sw, "text", &group, SINK(kept)), SETWRIGHT_FILES);
    assert_int_equal(setwright_build(run.sw, "text", &coach, SINK(kept)), SETWRIGHT_FILES);
    assert_int_equal(setwright_findings_text(run.sw, SINK(kept), (struct setwright_style){ 0 }), SETWRIGHT_FILES);
    assert_int_equal(kept.length, 0);
    setwright_free(run.sw);
}

/* ---- checked and built in one go ---- */

#define FIVE_OF_THEM                                                                                                   \
    "athlete tomas { gym hall; max squat 140 kg }\nathlete ines { gym hall; max squat 100 kg }\n"                      \
    "athlete hanna { gym hall; max squat 90 kg }\nathlete egon { gym hall; max squat 150 kg }\n"                       \
    "athlete piotr { gym hall; max squat 160 kg }\n"                                                                   \
    "block one { for all; starts 2027-01-04; weeks 2; day A on mon { squat 3 x 5 at 80% }; day B on thu { squat top "  \
    "1 x 1 at rpe 8 } }\n"                                                                                             \
    "block two { for tomas, egon; starts 2027-02-01; weeks 1; day A on mon { squat 1 x 5 at 75% } }\n"

static void load_text_of(struct run *run, const char *text)
{
    static const char *const paths[] = { "hall.block", "club.block" };
    run->papers[0] = (struct paper){ "hall.block", HALL };
    run->papers[1] = (struct paper){ "club.block", text };
    run->papers[2] = (struct paper){ NULL, NULL };
    run->sw = setwright_new((struct setwright_reader){ paper_read, run->papers, false });
    assert_non_null(run->sw);
    assert_int_equal(setwright_load(run->sw, paths, 2), SETWRIGHT_FINE);
}

/* What one of those who take turns has written, and where its turns ended. */
struct taking_turns {
    struct kept kept;
    size_t ends[16];
    int done, most; /* most: of turns, then it is enough; 0: never */
};

static bool turn_done(void *context)
{
    struct taking_turns *taking = context;
    assert_true(taking->done < 16);
    taking->ends[taking->done++] = taking->kept.length;
    return !taking->most || taking->done < taking->most;
}

static enum setwright_status build_turn(const char *format, int turn, int turns, int athletes, struct taking_turns *taking)
{
    struct run run;
    struct setwright_turns mine = { turn, turns, athletes, turn_done, taking };
    load_text_of(&run, FIVE_OF_THEM);
    enum setwright_status status =
        setwright_build_checked(run.sw, format, &(struct setwright_choice){ .turns = &mine }, SINK(taking->kept));
    setwright_free(run.sw);
    return status;
}

/* Turn by turn, for as long as anyone has one. */
static const char *taken_together(struct kept *all, const struct taking_turns *taking, int turns)
{
    for (int round = 0, some = 1; some; round++) {
        some = 0;
        for (int i = 0; i < turns; i++) {
            size_t from = round ? taking[i].ends[round - 1] : 0;
            if (round >= taking[i].done)
                continue;
            some = 1;
            if (taking[i].ends[round] > from)
                assert_true(keep(all, taking[i].kept.text + from, taking[i].ends[round] - from));
        }
    }
    return all->text;
}

static void turns_are_the_whole(void **state)
{
    (void)state;
    static const char *const formats[] = { "text", "csv", "yaml" };
    for (size_t f = 0; f < 3; f++) {
        struct run run;
        struct kept whole = { 0 };
        load_text_of(&run, FIVE_OF_THEM);
        struct setwright_choice all = { 0 };
        assert_int_equal(setwright_build_checked(run.sw, formats[f], &all, SINK(whole)), SETWRIGHT_FINE);
        setwright_free(run.sw);
        for (int turns = 1; turns <= 3; turns++)
            for (int athletes = 1; athletes <= 3; athletes++) {
                struct taking_turns taking[3] = { 0 };
                struct kept together = { 0 };
                for (int turn = 0; turn < turns; turn++)
                    assert_int_equal(build_turn(formats[f], turn, turns, athletes, &taking[turn]), SETWRIGHT_FINE);
                assert_string_equal(taken_together(&together, taking, turns), whole.text);
                /* five athletes are five turns, three or two; the first of those who take them has the odd one */
                int count = (5 + athletes - 1) / athletes;
                assert_int_equal(taking[0].done, (count + turns - 1) / turns);
                for (int turn = 0; turn < turns; turn++)
                    forget(&taking[turn].kept);
                forget(&together);
            }
        forget(&whole);
    }
}

static void who_takes_turns_may_have_enough(void **state)
{
    (void)state;
    struct taking_turns enough = { .most = 2 }, last = { .most = 3 };
    assert_int_equal(build_turn("csv", 0, 2, 1, &enough), SETWRIGHT_FILES);
    assert_int_equal(build_turn("csv", 0, 2, 1, &last), SETWRIGHT_FILES); /* even after all has been written */
    assert_int_equal(last.done, 3);
    assert_non_null(strstr(enough.kept.text, "\nhanna,")); /* after tomas; ines is another's, and for piotr there is no call */
    assert_null(strstr(enough.kept.text, "\npiotr,"));
    assert_non_null(strstr(last.kept.text, "\npiotr,"));
    forget(&enough.kept);
    forget(&last.kept);
    struct taking_turns full = { .kept = { .refuse_after = 1 } };
    for (int f = 0; f < 3; f++)
        assert_int_equal(build_turn((const char *[]){ "text", "csv", "yaml" }[f], 0, 2, 1, &full), SETWRIGHT_FILES);
    assert_int_equal(full.kept.length, 0);
}

/* A host that checks again, or after a look for errors alone, hears each thing once, and what it heard before is no hindrance. */
static void checked_again(void **state)
{
    (void)state;
    struct run run;
    load_text_of(&run, "athlete ines { gym hall; max squat 100 kg on 2027-01-01; max bench 60 kg on 2027-01-01 }\n"
                       "block one { for ines; starts 2027-01-04; weeks 1\n"
                       " day A { squat { 3 x 5 at 70%; top 1 x 1 at rpe 8; allow top-first because \"as taught\" }\n"
                       "  bench { 3 x 5 at 70%; top 1 x 1 at rpe 8 } } }\n");
    assert_null(setwright_finding(run.sw, 0).message);
    assert_int_equal(setwright_allowed_count(run.sw), 0);
    int first = 0;
    for (int time = 0; time < 3; time++) {
        int top_first = 0;
        assert_int_equal(time == 1 ? setwright_check_errors(run.sw) : SETWRIGHT_FINE, SETWRIGHT_FINE);
        assert_int_equal(setwright_check(run.sw), SETWRIGHT_FINE);
        first = time ? first : setwright_finding_count(run.sw);
        assert_int_equal(setwright_finding_count(run.sw), first);
        for (int i = 0; i < first; i++)
            top_first += !strcmp(setwright_finding(run.sw, i).name, "top-first");
        assert_int_equal(top_first, 1); /* of the bench */
        assert_int_equal(setwright_allowed_count(run.sw), 1);
        assert_string_equal(setwright_allowed(run.sw, 0).allowed, "as taught");
    }
    setwright_free(run.sw);
}

/* What only warns is an error where the house says so; then everyone is looked at before anything is built. */
static void a_warning_made_an_error(void **state)
{
    (void)state;
    static const char *const places[] = {
        "checks { top-first level error }\nathlete ines { gym hall; max squat 100 kg }\n"
        "block one { for ines; starts 2027-01-04; weeks 1; day A { squat { 3 x 5 at 70%; top 1 x 1 at rpe 8 } } }\n",
        "athlete ines { gym hall; max squat 100 kg }\nblock one { for ines; starts 2027-01-04; weeks 1; checks { "
        "top-first level error }; day A { squat { 3 x 5 at 70%; top 1 x 1 at rpe 8 } } }\n",
        "checks { top-first level warning }\nathlete ines { gym hall; max squat 100 kg }\n"
        "block one { for ines; starts 2027-01-04; weeks 1; day A { squat { 3 x 5 at 70%; top 1 x 1 at rpe 8 } } }\n",
    };
    for (size_t i = 0; i < 3; i++) {
        enum setwright_status wanted = i < 2 ? SETWRIGHT_FINDINGS : SETWRIGHT_FINE;
        struct run run;
        struct kept kept = { 0 };
        load_text_of(&run, places[i]);
        assert_int_equal(setwright_check_errors(run.sw), wanted);
        assert_int_equal(setwright_errors(run.sw), i < 2);
        assert_int_equal(setwright_check(run.sw), wanted); /* once more, and it is the same one */
        assert_int_equal(setwright_errors(run.sw), i < 2);
        setwright_free(run.sw);
        load_text_of(&run, places[i]);
        assert_int_equal(setwright_build_checked(run.sw, "csv", &(struct setwright_choice){ 0 }, SINK(kept)), wanted);
        assert_int_equal(setwright_errors(run.sw), i < 2);
        setwright_free(run.sw);
        forget(&kept);
    }
}

/* Who writes as he is told, and is told when nothing will be void. */
struct telling_sink {
    struct kept kept; /* first: it is the sink's context */
    int sure;
    size_t at; /* what was written before it was sure */
    bool refuses;
};

static bool is_sure(void *context)
{
    struct telling_sink *sink = context;
    sink->at = sink->kept.length;
    sink->sure++;
    return !sink->refuses;
}

/* A hundred lifters who are alike, the last as `last` has it. */
static enum setwright_status build_hundred(const char *last, const char *format, const struct setwright_turns *turns, struct telling_sink *sink)
{
    char text[16384] = "";
    size_t used = 0;
    struct run run;
    for (int i = 0; i < 100; i++)
        used += (size_t)snprintf(text + used, sizeof text - used, "athlete l%d { gym hall; max squat 100 kg; max bench 60 kg%s }\n", i,
                                 i == 99 ? last : "");
    snprintf(text + used, sizeof text - used,
             "block one { for all; starts 2027-01-04; weeks 2; day A on mon { squat 3 x 5 at 80%%; bench 3 x 5 at 75%% } }\n");
    load_text_of(&run, text);
    struct setwright_choice choice = { .turns = turns, .sure = is_sure };
    enum setwright_status status = setwright_build_checked(run.sw, format, &choice, SINK(sink->kept));
    if (!status) { /* the same bytes as in two steps */
        struct kept whole = { 0 };
        assert_int_equal(setwright_check(run.sw), SETWRIGHT_FINE);
        assert_int_equal(setwright_build(run.sw, format, &(struct setwright_choice){ 0 }, SINK(whole)), SETWRIGHT_FINE);
        if (!turns)
            assert_string_equal(sink->kept.text, whole.text);
        forget(&whole);
    }
    setwright_free(run.sw);
    return status;
}

static void sure_before_the_end(void **state)
{
    (void)state;
    struct telling_sink csv = { 0 }, text = { 0 }, yaml = { 0 }, wrong = { 0 }, refused = { .refuses = true }, turn = { 0 };
    assert_int_equal(build_hundred("", "csv", NULL, &csv), SETWRIGHT_FINE);
    assert_int_equal(csv.sure, 1);
    assert_true(csv.at < csv.kept.length); /* before all was written */
    assert_int_equal(build_hundred("", "text", NULL, &text), SETWRIGHT_FINE);
    assert_int_equal(text.sure, 1);
    assert_true(text.at < text.kept.length);
    assert_int_equal(build_hundred("", "yaml", NULL, &yaml), SETWRIGHT_FINE);
    assert_int_equal(yaml.sure, 0); /* made for each by herself, so it is known at the end alone */
    assert_int_equal(build_hundred("; avoid bench", "csv", NULL, &wrong), SETWRIGHT_FINDINGS);
    assert_int_equal(wrong.sure, 0);
    assert_int_equal(build_hundred("", "csv", NULL, &refused), SETWRIGHT_FILES);
    assert_int_equal(refused.sure, 1);
    struct taking_turns taking = { 0 };
    struct setwright_turns first = { 0, 2, 25, turn_done, &taking };
    assert_int_equal(build_hundred("", "csv", &first, &turn), SETWRIGHT_FINE);
    assert_int_equal(turn.sure, 1); /* of his own, before he begins */
    assert_int_equal(turn.at, 0);
    assert_int_equal(taking.done, 2);
    struct telling_sink *all[] = { &csv, &text, &yaml, &wrong, &refused, &turn };
    for (size_t i = 0; i < sizeof all / sizeof *all; i++)
        forget(&all[i]->kept);
}

static void no_such_format(void **state)
{
    (void)state;
    struct run run;
    struct kept kept = { 0 };
    struct setwright_choice all = { 0 };
    load_text_of(&run, FIVE_OF_THEM);
    assert_int_equal(setwright_build_checked(run.sw, "yml", &all, SINK(kept)), SETWRIGHT_USAGE);
    assert_non_null(strstr(setwright_problem(run.sw), "yaml"));
    assert_int_equal(kept.length, 0);
    assert_null(setwright_sheet_name(-1, NULL));
    setwright_free(run.sw);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(fine_files),
        cmocka_unit_test(findings_are_told),
        cmocka_unit_test(a_file_that_cannot_be_read),
        cmocka_unit_test(changes_that_touch_nothing),
        cmocka_unit_test(allowed_and_silenced),
        cmocka_unit_test(what_is_chosen),
        cmocka_unit_test(a_block_that_is_run_twice),
        cmocka_unit_test(csv_is_built),
        cmocka_unit_test(every_format_twice_the_same),
        cmocka_unit_test(the_plan_is_walked),
        cmocka_unit_test(columns_are_the_header_of_the_csv),
        cmocka_unit_test(why),
        cmocka_unit_test(tables_that_need_no_files),
        cmocka_unit_test(two_at_once),
        cmocka_unit_test(what_a_review_looks_at),
        cmocka_unit_test(times_of_flights),
        cmocka_unit_test(a_sink_that_is_full),
        cmocka_unit_test(turns_are_the_whole),
        cmocka_unit_test(who_takes_turns_may_have_enough),
        cmocka_unit_test(checked_again),
        cmocka_unit_test(a_warning_made_an_error),
        cmocka_unit_test(sure_before_the_end),
        cmocka_unit_test(no_such_format),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
