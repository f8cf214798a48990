/* The nearest spelling: for "did you mean". */
#ifndef BASE_NEAR_H
#define BASE_NEAR_H

/* Edits between two words (insert, delete, change, swap of neighbours), stopping above `most`. In characters. */
int word_distance(const char *a, const char *b, int most);
/* The nearest of the candidates within a distance that fits the length (1 up to 5 letters, 2 above), or NULL. */
const char *word_nearest(const char *wrong, const char *const *candidates, int count);

#endif
