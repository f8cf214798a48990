/* The sentences about diary entries that fit nothing: where they point is record_test.c's; here what they say. */
#include "club.h"

struct told_unmatched {
    const char *says, *block, *diary, *message;
    enum kind kind;
};

static void message_is(void **state)
{
    const struct told_unmatched *row = *state;
    char text[4096];
    snprintf(text, sizeof text,
             "%sprogression steady { when made add 2.5 kg }\nblock winter { for ines; starts 2027-01-04; weeks 2\n%s\n}\n"
             "diary ines {\n%s\n}\n",
             INES, row->block, row->diary);
    struct told t = told_club(text);
    told_plan(&t, "winter", "ines");
    const struct finding *finding = the_finding(&t, row->kind);
    assert_string_equal(finding->message, row->message);
    assert_non_null(finding->help);
    assert_string_equal(finding->athletes[0], "ines");
    told_end(&t);
}

#define A "day A on mon { squat 1 x 5 at 80% }"
#define WARNS(sentence, lines, diary, message) { sentence, lines, diary, message, KIND_UNMATCHED_DIARY }
#define REFUSES(sentence, lines, diary, message) { sentence, lines, diary, message, KIND_DIARY }

static const struct told_unmatched rows[] = {
    WARNS("outside every block", A, "2027-02-01 A { squat 80 kg x 5 }", "2027-02-01 lies in no block of ines"),
    WARNS("a week beyond", A, "2027-01-11 A week 3 { squat 80 kg x 5 }", "winter has no week 3"),
    WARNS("no such day", A, "2027-01-11 C { squat 80 kg x 5 }", "week 2 of winter has no day C for this"),
    WARNS("no day of that date", A, "2027-01-12 { squat 80 kg x 5 }",
          "nothing is planned for 2027-01-12 in week 2 of winter"),
    WARNS("parts", A, "2027-01-04 A { squat 80 kg x 5 then 70 kg x 5 }",
          "squat has 1 set group in the plan of this day, and 2 parts here"),
    WARNS("as planned", A, "2027-01-04 A { squat as planned; curl as planned }",
          "day A does not train curl, so `as planned` stands for nothing"),
    WARNS("a progression", "day A on mon { squat 1 x 5 at 80%; bench 1 x 5 at 40 kg progression steady }",
          "2027-01-04 A { squat as planned }", "this session says nothing of bench, whose progression steady waits for it"),
    REFUSES("a second entry", A, "2027-01-04 A { squat 80 kg x 5 }\n2027-01-05 A { squat 80 kg x 5 }",
            "this session has an entry already"),
    REFUSES("a bare load", A, "2027-01-04 A { squat 5 x 5 }", "squat with 5 kg is less than the empty bar (20 kg)"),
};

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(rows, message_is));
    return tests_run(&tests);
}
