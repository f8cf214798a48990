#include "base/near.h"

#include <stdint.h>
#include <stdlib.h>
#include <utf8proc.h>

enum { LETTERS_MOST = 64 };

/* The letters of a word; -1 when there are too many to be worth comparing. */
static int word_letters(const char *text, int32_t letters[LETTERS_MOST])
{
    int count = 0;
    while (*text) {
        utf8proc_int32_t letter;
        utf8proc_ssize_t step = utf8proc_iterate((const utf8proc_uint8_t *)text, -1, &letter);
        if (step < 1) {
            letter = (unsigned char)*text;
            step = 1;
        }
        if (count == LETTERS_MOST)
            return -1;
        letters[count++] = letter;
        text += step;
    }
    return count;
}

static int least(int a, int b)
{
    return a < b ? a : b;
}

/* Optimal string alignment (Damerau 1964 with each pair of neighbours swapped once at most): three rows of the table, of each but
 * what lies near enough to its diagonal to be no further than `most`. */
int word_distance(const char *a, const char *b, int most)
{
    int32_t from[LETTERS_MOST], to[LETTERS_MOST];
    int rows[3][LETTERS_MOST + 1];
    int m = word_letters(a, from), n = word_letters(b, to);
    if (m < 0 || n < 0 || abs(m - n) > most)
        return most + 1;
    const int far = most + 1;
    for (int j = 0; j <= n; j++)
        rows[0][j] = j;
    for (int i = 1; i <= m; i++) {
        int *now = rows[i % 3], *before = rows[(i + 2) % 3], *two_before = rows[(i + 1) % 3];
        int first = i - most > 1 ? i - most : 1, last = least(i + most, n);
        now[first - 1] = first == 1 ? i : far;
        if (last < n)
            now[last + 1] = far;
        for (int j = first; j <= last; j++) {
            now[j] = least(least(before[j], now[j - 1]) + 1, before[j - 1] + (from[i - 1] != to[j - 1]));
            if (i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1])
                now[j] = least(now[j], two_before[j - 2] + 1);
        }
    }
    return least(rows[m % 3][n], far);
}

const char *word_nearest(const char *wrong, const char *const *candidates, int count)
{
    int32_t letters[LETTERS_MOST];
    int length = word_letters(wrong, letters);
    int best = (length <= 5 ? 1 : 2) + 1;
    const char *nearest = NULL;
    for (int i = 0; i < count && length > 1; i++) {
        int distance = word_distance(wrong, candidates[i], best - 1);
        if (distance < best) {
            best = distance;
            nearest = candidates[i];
        }
    }
    return nearest;
}
