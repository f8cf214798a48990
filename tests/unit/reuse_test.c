/* Templates and schemes: language.md, section 3, Reuse. */
#include "builds.h"

#define SPRING(sentence, base, lines, comes)                                                                           \
    {                                                                                                                  \
        sentence,                                                                                                      \
            INES "template base { weeks 2; " base " }\nblock spring from base { for ines; starts 2027-01-04; " lines   \
                 " }\n",                                                                                               \
            comes, NULL                                                                                                \
    }
#define SPRING_FAULT(sentence, base, lines, found)                                                                     \
    {                                                                                                                  \
        sentence,                                                                                                      \
            INES "template base { weeks 2; " base " }\nblock spring from base { for ines; starts 2027-01-04; " lines   \
                 " }\n",                                                                                               \
            NULL, found                                                                                                \
    }
static const struct build builds[] = {
    SPRING("a block takes a template over", "day A { sled 3 x 5 at 70% }", "", "A: sled 3x5 700 | A: sled 3x5 700"),
    SPRING("a plain statement replaces the template's", "day A { sled 3 x 5 at 70% }", "weeks 1", "A: sled 3x5 700"),
    SPRING("day A replaces all its days A", "weeks 1 { day A { curl 1 x 1 } }; weeks 2 { day A { curl 2 x 2 } }",
           "day A { sled 3 x 5 at 70% }", "A: sled 3x5 700 | A: sled 3x5 700"),
    SPRING("day A inside weeks only those weeks", "day A { sled 3 x 5 at 70% }", "weeks 2 { day A { curl 1 x 1 } }",
           "A: sled 3x5 700 | A: curl 1x1 ?"),
    SPRING("other days stay", "day A on mon { curl 1 x 1 }; day B on tue { curl 2 x 2 }", "day A on wed { curl 3 x 3 }",
           "B: curl 2x2 ? / A: curl 3x3 ? | B: curl 2x2 ? / A: curl 3x3 ?"),
    SPRING("deload lines replace the template's as a whole", "deload week 1; day A { curl 4 x 5 }", "deload week 2",
           "A: curl 4x5 ? | A: curl 2x5 ?"),
    SPRING("all of them", "deload week 1 { sets to 1 }; deload week 2 { sets to 2 }; day A { curl 4 x 5 }",
           "deload week 2 { sets to 3 }", "A: curl 4x5 ? | A: curl 3x5 ?"),
    SPRING("taper lines too", "taper week 1 { sets to 1 }; day A { curl 4 x 5 }", "taper week 2 { sets to 2 }",
           "A: curl 4x5 ? | A: curl 2x5 ?"),
    SPRING("a deload does not replace a taper", "taper week 1 { sets to 1 }; day A { curl 4 x 5 }",
           "deload week 2 { sets to 2 }", "A: curl 1x5 ? | A: curl 2x5 ?"),
    SPRING("adjust adds", "adjust ines { sets down 1 }; day A { curl 4 x 5 }", "adjust ines { reps up 1 }",
           "A: curl 3x6 ? | A: curl 3x6 ?"),
    SPRING("warm-up adds",
           "warm-up one for sled; day A { sled 1 x 5 at 80% }\n}\nscheme one { warm-up 1 x 5 at 50% }\nscheme two { "
           "warm-up 1 x 3 at 75%",
           "warm-up two for sled",
           "A: sled warm-up 1x5 400, warm-up 1x3 600, 1x5 800 | A: sled warm-up 1x5 400, warm-up 1x3 600, 1x5 800"),
    SPRING("remove day D leaves one out", "day A { curl 1 x 1 }; day B { curl 2 x 2 }", "remove day A",
           "B: curl 2x2 ? | B: curl 2x2 ?"),
    SPRING("remove two days", "day A { curl 1 x 1 }; day B { curl 2 x 2 }; day C { curl 3 x 3 }", "remove day A, C",
           "B: curl 2x2 ? | B: curl 2x2 ?"),
    SPRING_FAULT("remove of a day that is not there", "day A { curl 1 x 1 }", "remove day B", "error unknown-name `B`"),
    SPRING("the block's let beats the template's", "let $t = 70%; day A { sled 3 x 5 at $t }", "let $t = 80%",
           "A: sled 3x5 800 | A: sled 3x5 800"),
    SPRING("the template's holds otherwise", "let $t = 70%; day A { sled 3 x 5 at $t }", "",
           "A: sled 3x5 700 | A: sled 3x5 700"),
    SPRING("a let counts the weeks of the block that uses it", "let $t = from 60 to 80%; day A { sled 3 x 5 at $t }",
           "weeks 3", "A: sled 3x5 600 | A: sled 3x5 700 | A: sled 3x5 800"),
    SPRING("the block gives a $name that the template leaves open", "day A { sled 3 x 5 at $t }", "let $t = 80%",
           "A: sled 3x5 800 | A: sled 3x5 800"),
    SPRING_FAULT("an unknown $name is an error at its use", "day A { sled 3 x 5 at $t }", "", "error unknown-let `$t`"),
    TEXT("templates build on templates",
         "template root { weeks 2; let $t = 70%; day A { sled 3 x 5 at $t } }\ntemplate base from root { let $t = 75%; "
         "day B { curl 1 x 1 } }\n"
         "block spring from base { for ines; starts 2027-01-04; weeks 1 }\n",
         "A: sled 3x5 750 / B: curl 1x1 ?"),
    TEXT_FAULT("templates that build on each other",
               "template one from two { weeks 1 }\ntemplate two from one { weeks 1 }\n", "error cycle `two`"),
    TEXT_FAULT("a block is no template",
               "block base { for ines; starts 2027-01-04; weeks 1; day A { curl 1 x 1 } }\nblock spring from base { "
               "for ines; starts 2027-03-01 }\n",
               "error misplaced `base`"),
    TEXT_FAULT("a template nobody has declared", "block spring from bace { for ines; starts 2027-01-04; weeks 1 }\n",
               "error unknown-name `bace`"),
    TEXT_FAULT("a statement twice in one block",
               "block spring { for ines; starts 2027-01-04; weeks 1; weeks 2; day A { curl 1 x 1 } }\n",
               "error repeated `weeks 2`"),
    TEXT_FAULT("a day twice in the same weeks",
               "block spring { for ines; starts 2027-01-04; weeks 1; day A { curl 1 x 1 }; day A { curl 2 x 2 } }\n",
               "error duplicate-name `A`"),
    TEXT("a day twice in other weeks",
         "block spring { for ines; starts 2027-01-04; weeks 2; weeks 1 { day A { curl 1 x 1 } }; weeks 2 { day A { "
         "curl 2 x 2 } } }\n",
         "A: curl 1x1 ? | A: curl 2x2 ?"),
    TEXT("a template that nothing uses may leave names open",
         "template base { weeks 2; day A { sled 3 x 5 at $t } }\n"
         "block spring { for ines; starts 2027-01-04; weeks 1; day A { curl 1 x 1 } }\n",
         "A: curl 1x1 ?"),
    TEXT_FAULT("but its mistakes do not wait", "template base { weeks 2; day A { sled 3 x 5 at 70 } }\n",
               "error unit `70`"),
    TEXT("templates may leave their weeks to the block",
         "template base { day A { sled 3 x 5 at 70 | 75% } }\nblock spring from base { for ines; starts 2027-01-04; "
         "weeks 2 }\n",
         "A: sled 3x5 700 | A: sled 3x5 750"),

/* schemes; from near to far: the athlete's own, with, entry, scheme, day, block, the template */
    TEXT("a scheme is used by name", SCHEME DAY("day A { sled heavy }"), "A: sled 3x5 700"),
    TEXT("with", SCHEME DAY("day A { sled heavy with $t = 80% and $n = 4 }"), "A: sled 4x5 800"),
    TEXT("with a series",
         SCHEME
         "block spring { for ines; starts 2027-01-04; weeks 2; day A { sled heavy with $t = from 70 to 80% } }\n",
         "A: sled 3x5 700 | A: sled 3x5 800"),
    TEXT("the entry's let beats the scheme's", SCHEME DAY("day A { sled { let $t = 75%\n heavy } }"),
         "A: sled 3x5 750"),
    TEXT("with beats the entry's let", SCHEME DAY("day A { sled { let $t = 75%\n heavy with $t = 80% } }"),
         "A: sled 3x5 800"),
    TEXT("the scheme's let beats the day's and the block's",
         SCHEME DAY("let $t = 60%; day A { let $t = 65%; sled heavy }"), "A: sled 3x5 700"),
    TEXT("a scheme takes what it leaves open from the day",
         "scheme open { 3 x 5 at $t }\n" DAY("let $t = 60%; day A { let $t = 65%; sled open }"), "A: sled 3x5 650"),
    TEXT("or from the block", "scheme open { 3 x 5 at $t }\n" DAY("let $t = 60%; day A { sled open }"),
         "A: sled 3x5 600"),
    TEXT("the day's let beats the block's", DAY("let $t = 60%; day A { let $t = 65%; sled 3 x 5 at $t }"),
         "A: sled 3x5 650"),
    TEXT("the entry's let beats the day's", DAY("day A { let $t = 65%; sled { let $t = 70%\n 3 x 5 at $t } }"),
         "A: sled 3x5 700"),
    TEXT_FAULT("a $name that a scheme leaves open", "scheme open { 3 x 5 at $t }\n" DAY("day A { sled open }"),
               "error unknown-let `$t`"),
    TEXT_FAULT("a scheme nobody has declared", DAY("day A { sled haevy }"), "error unknown-name `haevy`"),
    TEXT("groups beside a scheme", SCHEME DAY("day A { sled { top 1 x 1 at 90%\n heavy } }"),
         "A: sled top 1x1 900, 3x5 700"),
    TEXT("a drop in a scheme hangs on its top",
         "scheme taps { top 1 x 3 at 80%; back-off 3 x 5 drop 10% }\n" DAY("day A { sled taps }"),
         "A: sled top 1x3 800, back-off 3x5 720"),

    TEXT("titles and notes in every body",
         "gym g { title \"a\"; note \"b\" }\nlift l { title \"a\"; note \"b\" }\nscheme s { title \"a\"; note \"b\"; 3 "
         "x 5 }\n"
         "progression p { title \"a\"; note \"b\"; when made hold }\ngroup h { title \"a\"; note \"b\"; ines "
         "}\ntemplate t { title \"a\"; note \"b\" }\n" DAY(
             "title \"a\"; note \"b\"; deload week 1 { title \"a\"; note \"b\" }; adjust ines { title \"a\"; note "
             "\"b\" }; checks { title \"a\"; note \"b\" }; "
             "weeks 1 { title \"a\"; note \"b\"; day A { title \"a\"; note \"b\"; superset { title \"a\"; note \"b\"; "
             "curl { title \"a\"; note \"b\"; 3 x 5 } } } }"),
         "A: curl 3x5 ?"),
};

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(builds, build_holds));
    return tests_run(&tests);
}
