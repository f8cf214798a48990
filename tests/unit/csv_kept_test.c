/* Rows kept by lift: whoever is alike, in all lifts or in some, gets the bytes that a table of her plan alone would have. */
#include "again.h"

static const struct again_club clubs[] = {
    { "all alike", "athlete a { max squat 100 kg }\nathlete b { max squat 100 kg }\nathlete c { max squat 100 kg }\n",
      "day A { squat 3 x 5 at rpe 7; curl 3 x 10 at 20 kg }", "0022" },
    { "alike in one lift of two",
      "athlete a { max squat 100 kg; max bench 50 kg }\nathlete b { max squat 100 kg; max bench 55 kg }\nathlete c { "
      "max squat 90 kg; max bench 55 kg }\n",
      "day A { squat 3 x 5 at rpe 7; bench 3 x 5 at 70%; squat 1 x 8 at 60% }; day B { bench 5 x 3 at rpe 8; squat 1 x "
      "2 at rpe 6 }",
      "0011" },
    { "rows above nine and ninety-nine of a day",
      "athlete a { max squat 100 kg }\nathlete b { max squat 105 kg }\nathlete c { max squat 100 kg }\n",
      "day A { curl 60 x 5 at 10 | 11 kg; squat 50 x 5 at 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, "
      "50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, "
      "50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, 50%, 51%, "
      "50%, 51%, 50%, 51%, 50%, 60%; "
      "squat 1 x 5 at 40% then 1 x 5 at 50% then 1 x 5 at 40% then 1 x 5 at 50%; curl 1 x 5 at 12 kg then 1 x 4 at 13 "
      "kg; curl 1 x 5 at 12 kg }",
      "0012" },
    { "an entry of which nothing is trained this week",
      "athlete a { max squat 100 kg }\nathlete b { max squat 100 kg }\nathlete c { max squat 100 kg }\n",
      "day A { squat 3 x 5 at rpe 7 in weeks 2; curl 3 x 10 at 20 kg; sled warm-up 1 x 5 at 20 kg then 1 x 20 m at 40 "
      "kg in weeks 2 }",
      "0022" },
    { "warm-ups that some need and others do not",
      "athlete a { max squat 100 kg }\nathlete b { max squat 30 kg }\nathlete c { max squat 100 kg }\n",
      "warm-up ramp; day A { squat 3 x 5 at rpe 7; curl 3 x 10 at 20 kg }", "0012" },
    { "who must hear something of herself is no pattern",
      "athlete a { max squat 100 kg }\nathlete b { max squat 100 kg }\nathlete c { max squat 100 kg }\n",
      "day A { squat 1 x 5 at 10%; curl 3 x 10 at 20 kg }", "0000" },
};

static void club_holds(void **state)
{
    again_holds(*state, format_find("csv"));
}

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(clubs, club_holds));
    return tests_run(&tests);
}
