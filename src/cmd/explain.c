#include "cmd/command.h"

#include "base/diag.h"

static void explain_all(void)
{
    const char *name, *says;
    for (int i = 0; (name = setwright_finding_name(i, &says)); i++)
        printf("%-20s %s\n", name, says);
}

static int explain_one(struct setwright *sw, const char *name)
{
    const char *page = setwright_explain(sw, name), *near = setwright_finding_near(name);
    if (page) {
        printf("%s\n\n%s\n", name, page);
        return 0;
    }
    if (setwright_problem(sw)) {
        diag_say(stderr, "%s", setwright_problem(sw));
        return EXIT_LIMIT;
    }
    diag_say(stderr, near ? "no finding is called %s; did you mean %s?" : "no finding is called %s; `setwright explain` lists them%s", name, near ? near : "");
    return EXIT_USAGE;
}

int cmd_explain(struct request *request)
{
    int status = 0;
    struct setwright *sw = setwright_new((struct setwright_reader){ 0 });
    if (!sw) {
        diag_say(stderr, "out of memory");
        return EXIT_LIMIT;
    }
    if (!request->word_count)
        explain_all();
    for (int i = 0; i < request->word_count && !status; i++)
        status = explain_one(sw, request->words[i]);
    setwright_free(sw);
    return status;
}
