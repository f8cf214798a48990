/* The words of the language as a dictionary for libFuzzer and AFL++, and the marks that stand between them. */
#include "syntax/words.h"

#include <stdio.h>

int main(void)
{
    static const char *const marks[] = {
        "{ ",
        " }",
        "; ",
        "(",
        ")",
        "|",
        ", ",
        "$top",
        "%",
        " kg",
        " lb",
        "-",
        "+",
        "\\\"text\\\"",
        "#",
        "# file b.block\\x0a",
        "use \\\"std/lifts.block\\\"\\x0a",
        "roster \\\"b.csv\\\"\\x0a",
        "2027-01-04",
        "31X0",
        "mon",
        "std/strength.block",
        "athlete,lift,max,unit,reps,rpe,date\\x0a",
        "0.5",
        "100",
        "999999999999",
        "1e9",
        "\\xc3\\x97",
        "\\xef\\xbb\\xbf",
        "\\x0d\\x0a",
        "squat",
        "strength",
    };
    for (int i = 0; i < word_count(); i++)
        printf("\" %s \"\n", word_at(i)->text);
    for (size_t i = 0; i < sizeof marks / sizeof *marks; i++)
        printf("\"%s\"\n", marks[i]);
    return 0;
}
