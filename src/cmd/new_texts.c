/* What a new folder holds. Each block file must pass `check` with any template of the library: tests/new.sh tries them. */
#include "cmd/new.h"

const struct new_text new_texts[] = {
    { "README.md",
      "# Training\n"
      "\n"
      "- `gym.block`: what can be loaded. `athletes.block`: who trains, and the maxes. `first.block`: the block.\n"
      "- `setwright check .` reads everything and says what does not add up, and what to write instead.\n"
      "- `setwright build --week 1 . | less` shows the sheets; `setwright build -o sheets/ .` writes a file for each athlete.\n"
      "- `setwright why --athlete mara --week 1 --lift squat .` shows where a load comes from.\n"
      "- `setwright templates` lists the blocks of the library, `setwright templates @template@` prints this one.\n"
      "- After a test add a `max` line with its date and leave the old ones: printed weeks stay as they were.\n"
      "\n"
      "Stop at sharp pain. Squat and bench with safeties or spotters. A plan is not medical advice.\n" },
    { ".gitignore", "# Sheets can be built again at any time.\nsheets/\n" },
    { "gym.block",
      "# What the gym has. Count your own: a sheet only asks for loads that can be made.\n"
      "\n"
      "units kg\n"
      "\n"
      "gym club {\n"
      "  title \"The club\"\n"
      "  bar 20 kg\n"
      "  plates 25 x 4, 20 x 4, 15 x 2, 10 x 4, 5 x 4, 2.5 x 4, 1.25 x 2, 0.5 x 2 kg   # single discs\n"
      "  dumbbells 2 to 10 step 1 kg, 12 to 40 step 2 kg\n"
      "  stack 5 to 100 step 5 kg\n"
      "}\n" },
    { "athletes.block",
      "# Who trains. These two are invented: put your own in their place.\n"
      "\n"
      "units kg\n"
      "use \"std/lifts.block\"\n"
      "use \"gym.block\"\n"
      "\n"
      "athlete mara {\n"
      "  title \"Mara Lindholm\"\n"
      "  gym club\n"
      "  bodyweight 64 kg on @tested@\n"
      "  max squat 100 kg on @tested@                     # tested\n"
      "  max bench 60 kg on @tested@\n"
      "  max deadlift 125 kg on @tested@\n"
      "}\n"
      "\n"
      "athlete pavel {\n"
      "  title \"Pavel Okoro\"\n"
      "  gym club\n"
      "  bodyweight 83 kg on @tested@\n"
      "  max squat from 110 kg x 5 rpe 8 on @tested@      # worked out from a set\n"
      "  max bench from 80 kg x 5 rpe 8 on @tested@\n"
      "  max deadlift from 140 kg x 5 rpe 8 on @tested@\n"
      "}\n"
      "\n"
      "group evening { mara, pavel }\n" },
    { "first.block",
      "# The first block, built on a template of the library. What stands here replaces\n"
      "# the template's line: a `let`, a whole day, the deload.\n"
      "\n"
      "use \"athletes.block\"\n"
      "use \"std/@template@.block\"\n"
      "\n"
      "block first from @template@ {\n"
      "  for evening\n"
      "  starts @starts@\n"
      "}\n" },
};
const int new_text_count = sizeof new_texts / sizeof *new_texts;
