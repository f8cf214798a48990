/* A target without a fuzzer: each file named, and each file of a folder named, once. The name comes before its run, so
 * that the last line of the output says where it ended. */
#include "target.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int runs;

static void run_file(const char *path, FILE *in)
{
    size_t length = 0, room = 1 << 16;
    char *bytes = malloc(room);
    for (size_t got; bytes && (got = fread(bytes + length, 1, room - length, in)) > 0;)
        if ((length += got) == room)
            bytes = realloc(bytes, room *= 2);
    /* A copy of the exact size, so that the sanitizer sees a byte read behind it. */
    uint8_t *exact = malloc(length ? length : 1);
    if (!bytes || !exact)
        abort();
    memcpy(exact, bytes, length);
    free(bytes);
    printf("%s\n", path);
    fflush(stdout);
    LLVMFuzzerTestOneInput(exact, length);
    free(exact);
    runs++;
}

static void run_folder(const char *path, DIR *folder)
{
    char inner[4096];
    for (const struct dirent *entry; (entry = readdir(folder));) {
        snprintf(inner, sizeof inner, "%s/%s", path, entry->d_name);
        FILE *in = entry->d_name[0] == '.' ? NULL : fopen(inner, "rb");
        if (in) {
            run_file(inner, in);
            fclose(in);
        }
    }
}

int main(int count, char **words)
{
    for (int i = 1; i < count; i++) {
        DIR *folder = opendir(words[i]);
        FILE *in = folder ? NULL : fopen(words[i], "rb");
        if (folder) {
            run_folder(words[i], folder);
            closedir(folder);
        } else if (in) {
            run_file(words[i], in);
            fclose(in);
        }
    }
    printf("%d inputs\n", runs);
    return runs ? 0 : 1;
}
