/* The plain way to write the rows of a plan: one printf a row, numbers by division, no plan behind them. What a row of
 * the product is set against.  usage: rows COUNT */
#include <stdio.h>
#include <stdlib.h>

int main(int argc, char **argv)
{
    long count = argc == 2 ? atol(argv[1]) : 0;
    if (count <= 0)
        return 2;
    for (long i = 0; i < count; i++) {
        int week = (int)(i / 36 % 12) + 1, load = 400 + (int)(i * 7919 % 640) * 5;
        if (printf("athlete-%05ld,winter,%d,2027-%02d-%02d,%c,%d,squat,work,%d,%d,%d,%d.%d,%d.%d,%d.%d,kg,25+20+2.5,"
                   "180,,,,,\n",
                   i / 432, week, week % 12 + 1, (int)(i % 28) + 1, "ABCD"[i / 9 % 4], (int)(i % 9) + 1,
                   3 + (int)(i % 3), 5, 5, 7, (int)(i % 2) * 5, 70 + (int)(i % 20), (int)(i % 10), load / 10,
                   load % 10) < 0)
            return 3;
    }
    return fflush(stdout) == 0 ? 0 : 3;
}
