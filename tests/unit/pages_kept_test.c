/* Pages kept in pieces: whoever is alike in all lifts gets the bytes that sheets of her plan alone would have. */
#include "again.h"

static const struct again_club clubs[] = {
    { "all alike, with notes of their own",
      "athlete a { max squat 100 kg; title \"Ana\" }\nathlete b { max squat 100 kg; note \"bring the belt\" }\nathlete c { max squat 100 kg }\n",
      "note \"doors close at nine\"; day A { title \"heavy\"; note \"mind the step\"; squat 3 x 5 at rpe 7; curl 3 x 10 at 20 kg }", "0022" },
    { "alike in one lift of two is planned as a whole, for the totals",
      "athlete a { max squat 100 kg; max bench 50 kg }\nathlete b { max squat 100 kg; max bench 55 kg }\nathlete c { "
      "max squat 90 kg; max bench 55 kg }\nathlete d { max squat 90 kg; max bench 50 kg }\n",
      "day A { squat 3 x 5 at rpe 7; bench 3 x 5 at 70%; squat 1 x 8 at 60% }; day B { bench 5 x 3 at rpe 8; squat 1 x "
      "2 at rpe 6; press 3 x 8 at 10 kg each side; pull-up 3 x 5 at bodyweight }",
      "00002" },
    { "supersets, back-offs and a deload",
      "athlete a { max squat 100 kg; max bench 50 kg }\nathlete b { max squat 95 kg; max bench 55 kg }\nathlete c { max squat 100 kg; max bench 55 kg }\n",
      "deload week 2 { sets to 50% }; day A { squat { top 1 x 1 at rpe 8; back-off 3 x 5 drop 12% }; superset 3 rounds { bench 1 x 8 at 60%; curl 1 x 10 at 12 kg } }",
      "0002" },
    { "a gym of one's own",
      "gym shed { bar 15 kg; plates 20 x 6, 10 x 2, 5 x 2 kg }\nathlete a { gym shed; max squat 100 kg }\nathlete b { gym shed; max squat 100 kg }\n"
      "athlete c { gym hall; max squat 100 kg }\nathlete d { gym hall; max squat 100 kg }\n",
      "day A { squat 3 x 5 at rpe 7; curl 3 x 10 at 20 kg }", "00202" },
    { "a week without training",
      "athlete a { max squat 100 kg }\nathlete b { max squat 100 kg }\nathlete c { max squat 100 kg }\n",
      "weeks 1 { day A { squat 3 x 5 at rpe 7 } }", "0022" },
    { "warm-ups that some need and others do not",
      "athlete a { max squat 100 kg }\nathlete b { max squat 30 kg }\nathlete c { max squat 100 kg }\nathlete d { max squat 30 kg }\n",
      "warm-up ramp; day A { squat 3 x 5 at rpe 7; curl 3 x 10 at 20 kg }", "00022" },
    { "who must hear something of herself is no pattern",
      "athlete a { max squat 100 kg }\nathlete b { max squat 100 kg }\nathlete c { max squat 100 kg }\n",
      "day A { squat 1 x 5 at 10%; curl 3 x 10 at 20 kg }", "0000" },
};

static void club_holds(void **state)
{
    again_holds(*state, format_find("text"));
}

int main(void)
{
    struct tests tests = { 0 };
    tests_add_rows(&tests, EACH(clubs, club_holds));
    return tests_run(&tests);
}
