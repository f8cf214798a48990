/* Makes the inputs, the same bytes on every machine.
 *
 *   make small            a club of 60 lines with nothing to say about: gym, lifts, a lifter, a block of four weeks
 *   make large BYTES      templates, one after the other, until there are so many bytes; nobody trains them
 *   make written BYTES    blocks of 12 weeks for one lifter, one after the other in time, each week's sets written out, until there
 *                         are so many bytes; 7 set groups a day and as many bytes a group as common formats take for one
 *   make club             a block of 12 weeks, 4 days, 7 entries a day, for all in athletes.csv
 *   make athletes COUNT   that roster: three maxes each, in all some 270
 *   make unlike COUNT     the same with no max of a lift twice among 22,000 athletes */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static const char *const gym = "gym hall {\n"
                               "  bar 20 kg\n"
                               "  plates 25 x 8, 20 x 2, 15 x 2, 10 x 2, 5 x 2, 2.5 x 2, 1.25 x 2 kg\n"
                               "  dumbbells 5 to 40 step 2.5 kg\n"
                               "  stack 5 to 100 step 5 kg\n"
                               "}\n";
static const char *const lifts = "lift squat    { kind competition; loads bar; works quads, glutes; helps trunk }\n"
                                 "lift bench    { kind competition; loads bar; works chest; helps triceps }\n"
                                 "lift deadlift { kind competition; loads bar; works hamstrings; helps trunk }\n"
                                 "lift row      { loads bar; works back }\n"
                                 "lift press    { loads dumbbells; works shoulders }\n"
                                 "lift pulldown { loads stack; works back }\n"
                                 "lift curl     { loads dumbbells; works biceps }\n";
static const char *const held = "lift plank\n";

/* Returns the bytes written. */
static long day(const char *label, const char *weekday, const char *first, const char *second)
{
    return printf("  day %s on %s {\n"
                  "    title \"%s first\"\n"
                  "    %s {\n"
                  "      warm-up  1 x 5 at 50%%\n"
                  "      top      1 x 1 at rpe from 6 to 8.5\n"
                  "      back-off (4 | 4 | 5) x 5 drop 15%% rest 3 min\n"
                  "    }\n"
                  "    %s 4 x 4 at 70%% plus 1%% each week cap rpe 8\n"
                  "    row 3 x 8-12 at 50 kg then 1 x 12 at same\n"
                  "    press 3 x 10 at rpe 7-8 note \"elbows under the wrists\"\n"
                  "    pulldown 3 x 10 at 40 | 45 | 50 kg\n"
                  "    curl 2 x 12-15 at rpe 8\n"
                  "    plank 3 x 30 s rest 60 s\n"
                  "  }\n",
                  label, weekday, first, first, second);
}

static long days(void)
{
    return day("A", "mon", "squat", "bench") + day("B", "tue", "deadlift", "bench") +
           day("C", "thu", "bench", "squat") + day("D", "fri", "squat", "deadlift");
}

static void small(void)
{
    printf("# A small club\nlanguage 1\nunits kg\n\n%s%s\n", gym, lifts);
    printf("athlete ines {\n"
           "  gym hall\n"
           "  max squat 120 kg on 2026-12-20\n"
           "  max bench 70 kg on 2026-12-20\n"
           "  max deadlift 145 kg on 2026-12-20\n"
           "}\n"
           "\n"
           "block winter {\n"
           "  title \"Winter base\"\n"
           "  goal general\n"
           "  for ines\n"
           "  starts 2027-01-04\n"
           "  weeks 4\n"
           "  deload week 4 { note \"Lighter, and early to bed\" }\n"
           "  note \"Bring shoes with a hard sole\"\n"
           "  day A on mon {\n"
           "    squat top 1 x 4 at rpe from 7 to 8 rest 4 min\n"
           "      then back-off 3 x 6 at rpe 6 rest 3 min\n"
           "    bench top 1 x 5 at rpe 7 rest 4 min\n"
           "      then back-off 3 x 6 at rpe 6 rest 3 min\n"
           "    row 3 x 8-12 at 50 kg rest 2 min\n"
           "  }\n"
           "  day B on tue {\n"
           "    deadlift top 1 x 4 at rpe 7 rest 4 min\n"
           "      then back-off 3 x 6 at rpe 6 rest 3 min\n"
           "    press 3 x 8 at rpe 6 rest 3 min\n"
           "    pulldown 3 x 10 at 45 kg rest 90 s\n"
           "  }\n"
           "  day C on thu {\n"
           "    bench top 1 x 4 at rpe 7 rest 4 min\n"
           "      then back-off 3 x 6 at rpe 6 rest 3 min\n"
           "    squat 3 x 6 at rpe 6 rest 3 min\n"
           "    row 3 x 8-12 at 50 kg rest 2 min\n"
           "  }\n"
           "  day D on fri {\n"
           "    press 3 x 8 at rpe 7 rest 3 min\n"
           "    deadlift 3 x 5 at rpe 6 rest 3 min\n"
           "    curl 4 x 12 at rpe 7\n"
           "    pulldown 3 x 10 at 45 kg rest 90 s note \"Chest up, elbows to the floor\"\n"
           "  }\n"
           "  # Days off: walk, row easily, sleep.\n"
           "}\n");
}

static void large(long bytes)
{
    long written = printf("%s%s%s", gym, lifts, held);
    for (long i = 0; written < bytes; i++) {
        written += printf("template base-%ld {\n  title \"Template %ld\"\n  weeks 6\n  goal strength\n  deload week 6 "
                          "{ sets to 50%%; rpe down 2 }\n",
                          i, i);
        written += days();
        written += printf("}\n");
    }
}

/* ---- blocks written out ---- */

enum { WEEKS = 12, FIRST_MONDAY = 20822 /* 2027-01-04, in days since 1970-01-01 */ };

/* The days of a week, and how hard top sets are by week of a wave, in tenths. */
static const struct {
    const char *label, *weekday, *first, *second, *title;
} written_days[] = {
    { "A", "mon", "squat", "bench", "Squat first, then the bench" },
    { "B", "tue", "deadlift", "press", "Deadlift first, then over the head" },
    { "C", "thu", "bench", "squat", "Bench first, then the squat" },
    { "D", "fri", "press", "deadlift", "Over the head first, then the deadlift" },
};
static const int efforts[] = { 70, 75, 80, 60 };

static const char *date(long day)
{
    static char text[16];
    time_t seconds = (time_t)day * 86400;
    struct tm parts;
    strftime(text, sizeof text, "%Y-%m-%d", gmtime_r(&seconds, &parts));
    return text;
}

static long written_day(size_t day, int week)
{
    int effort = efforts[week % 4], easier = effort - 10;
    return printf("    day %s on %s {\n"
                  "      title \"%s\"\n"
                  "      %s top 1 x 4 at rpe %d.%d rest 4 min note \"Brace, and stay over the middle of the foot from start to end\"\n"
                  "        then back-off 3 x 6 at rpe %d.%d rest 3 min note \"Every repetition looks like the first one did\"\n"
                  "      %s top 1 x 5 at rpe %d.%d rest 4 min note \"Set the shoulders before the bar moves, then press the floor\"\n"
                  "        then back-off 3 x 6 at rpe %d.%d rest 3 min note \"Stop when the bar slows down, and say so\"\n"
                  "      row 3 x 8-12 at 50 kg rest 2 min tempo \"31X0\" note \"Pull to the belt, and leave the swinging to others\"\n"
                  "      pulldown 3 x 10 at 45 kg rest 90 s pause 1 s note \"Chest up, elbows to the floor, no haste on the way up\"\n"
                  "      curl 3 x 12-15 at rpe 7 rest 60 s each side note \"Slowly on the way down, the elbows stay where they are\"\n"
                  "    }\n",
                  written_days[day].label, written_days[day].weekday, written_days[day].title, written_days[day].first,
                  effort / 10, effort % 10, easier / 10, easier % 10, written_days[day].second, effort / 10, effort % 10,
                  easier / 10, easier % 10);
}

static long written_block(long block)
{
    long written = printf("block cycle-%ld {\n  title \"Cycle %ld\"\n  goal general\n  for ines\n  starts %s\n  weeks %d\n  deload weeks 4, 8, 12 { note \"Lighter, and early to bed\" }\n",
                          block, block, date(FIRST_MONDAY + 7L * WEEKS * block), WEEKS);
    for (int week = 0; week < WEEKS; week++) {
        written += printf("  week %d {\n", week + 1);
        for (size_t day = 0; day < sizeof written_days / sizeof *written_days; day++)
            written += written_day(day, week);
        written += printf("  }\n");
    }
    return written + printf("}\n");
}

/* A max is to be of the weeks before the block that counts on it. */
static long written_maxes(long block)
{
    const char *on = date(FIRST_MONDAY + 7L * WEEKS * block - 2);
    return printf("  max squat 120 kg on %s\n  max bench 70 kg on %s\n  max deadlift 145 kg on %s\n  max press 45 kg on %s\n", on,
                  on, on, on);
}

static void written_out(long bytes)
{
    long written = printf("units kg\n%s%s", gym, lifts), blocks = 0;
    for (; written < bytes; blocks++)
        written += written_block(blocks) + 4 * 32;
    printf("athlete ines {\n  gym hall\n");
    for (long i = 0; i < blocks; i++)
        written_maxes(i);
    printf("}\n");
}

static void club(void)
{
    printf("units kg\nroster \"athletes.csv\"\n%s%s%sblock winter {\n  for all\n  starts 2027-01-04\n  weeks 12\n  goal "
           "general\n  deload each 4 weeks\n",
           gym, lifts, held);
    days();
    printf("}\n");
}

static void athletes(long count)
{
    printf("athlete,gym,lift,max,unit,date\n");
    for (long i = 0; i < count; i++)
        printf("athlete-%05ld,hall,squat,%ld.5,kg,2026-12-20\nathlete-%05ld,hall,bench,%ld,kg,2026-12-20\nathlete-%"
               "05ld,hall,deadlift,%ld,kg,2026-12-20\n",
               i, 100 + i * 7 % 90, i, 60 + i * 11 % 70, i, 120 + i * 13 % 110);
}

static void unlike(long count)
{
    static const struct lift {
        const char *name;
        int least, step; /* hundredths; the steps have no factor of 22,000, so that none comes twice on the way round */
    } lifts_tested[] = { { "squat", 6000, 7919 }, { "bench", 5000, 7907 }, { "deadlift", 8000, 7901 } };
    printf("athlete,gym,lift,max,unit,date\n");
    for (long i = 0; i < count; i++)
        for (int j = 0; j < 3; j++) {
            const struct lift *lift = &lifts_tested[j];
            long max = lift->least + i * lift->step % 22000;
            printf("athlete-%05ld,hall,%s,%ld.%02ld,kg,2026-12-20\n", i, lift->name, max / 100, max % 100);
        }
}

int main(int argc, char **argv)
{
    long number = argc > 2 ? atol(argv[2]) : 0;
    if (argc == 2 && !strcmp(argv[1], "small"))
        small();
    else if (argc == 2 && !strcmp(argv[1], "club"))
        club();
    else if (argc == 3 && number > 0 && !strcmp(argv[1], "large"))
        large(number);
    else if (argc == 3 && number > 0 && !strcmp(argv[1], "written"))
        written_out(number);
    else if (argc == 3 && number > 0 && !strcmp(argv[1], "athletes"))
        athletes(number);
    else if (argc == 3 && number > 0 && !strcmp(argv[1], "unlike"))
        unlike(number);
    else
        return 2;
    return fflush(stdout) == 0 ? 0 : 3;
}
