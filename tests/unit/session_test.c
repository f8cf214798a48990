/* Files from the disk: a folder means every .block file in it; src/cmd/session.h. */
#include "cmd/session.h"

#include "command_line.h"

#include <sys/stat.h>

static void a_folder_means_its_block_files(void **state)
{
    (void)state;
    assert_int_equal(mkdir("club", 0777), 0);
    put("club/b.block", CLUB_TEXT);
    put("club/a.block", "lift bench\n");
    put("club/notes.txt", "this is no block file\n");
    static const char *const names[] = { "build -f csv club", "build -f csv club/",
                                         "build -f csv club/a.block club/b.block" };
    char first[sizeof said.out];
    for (int i = 0; i < 3; i++) {
        assert_int_equal(say(names[i]), 0);
        if (!i)
            strcpy(first, said.out);
        assert_string_equal(said.out, first);
    }
    put("club/z.block", "lift bench\n");
    assert_int_equal(say("check club/"), 1);
    assert_has(said.err, "club/z.block:1:6: error: "); /* in the order of their names; no slash doubled */
}

static void folders_that_are_no_use(void **state)
{
    (void)state;
    assert_int_equal(mkdir("empty", 0777), 0);
    assert_int_equal(say("check empty"), 3);
    assert_has(said.err, "empty: there is no .block file in this folder");
    assert_int_equal(say("check none/"), 3);
    assert_has(said.err, "none/: ");
    assert_int_equal(mkdir("d.block", 0777), 0);
    put("d.block/x.block", CLUB_TEXT);
    assert_int_equal(say("check d.block"), 0);
}

static void a_file_named_twice_is_read_once(void **state)
{
    (void)state;
    put("c.block", CLUB_TEXT);
    assert_int_equal(say("check c.block ./c.block c.block"), 0);
}

static void used_files_are_seen_from_the_file(void **state)
{
    (void)state;
    assert_int_equal(mkdir("club", 0777), 0);
    put("club/c.block", "use \"in/lifts.block\"\nathlete ines { max squat 100 kg }\nblock winter { for ines; starts "
                        "2027-01-04; weeks 1; day A { squat 3 x 5 at 80% } }\n");
    assert_int_equal(say("check club/c.block"), 3);
    assert_has(said.err, "club/c.block:1:5: error: club/in/lifts.block: no such file [file]\n");
    assert_int_equal(mkdir("club/in", 0777), 0);
    put("club/in/lifts.block", "lift squat { loads bar }\n");
    assert_int_equal(say("check club/c.block"), 0);
    assert_int_equal(say("build -f csv -o club/in/lifts.block club/c.block"),
                     2); /* a file that was read is never written over */
    assert_string_equal(got("club/in/lifts.block"), "lift squat { loads bar }\n");
}

static void what_was_read_is_known_by_any_name(void **state)
{
    (void)state;
    jmp_buf out_of_memory;
    if (setjmp(out_of_memory))
        fail();
    put("c.block", CLUB_TEXT);
    put("other.block", "");
    assert_int_equal(symlink("c.block", "same.block"), 0);
    const char *const words[] = { "c.block" };
    struct request request = {
        .arena = arena_new(&out_of_memory), .words = words, .word_count = 1, .command = &commands[0]
    };
    struct session session;
    assert_int_equal(session_open(&request, &session), 0);
    assert_true(session_has_read(&session, "c.block"));
    assert_true(session_has_read(&session, "./same.block"));
    assert_false(session_has_read(&session, "other.block"));
    assert_false(session_has_read(&session, "none.block"));
    session_close(&session);
    arena_free(request.arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup(a_folder_means_its_block_files, folder_setup),
        cmocka_unit_test_setup(folders_that_are_no_use, folder_setup),
        cmocka_unit_test_setup(a_file_named_twice_is_read_once, folder_setup),
        cmocka_unit_test_setup(used_files_are_seen_from_the_file, folder_setup),
        cmocka_unit_test_setup(what_was_read_is_known_by_any_name, folder_setup),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
