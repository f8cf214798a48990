#!/bin/sh
# Kilograms and pounds against bc, with the international pound of 0.45359237 kg (NIST SP 811, appendix B.9).
set -u
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
status=0

verdict()
{
    if [ "$1" = "$2" ]; then echo "ok $3"; else echo "not ok $3: got $1, wanted $2"; status=1; fi
}

# loads TEXT: loads, units and per cents of the rows, one a line
loads()
{
    printf '%s\n' "$1" > "$work/club.block"
    "$SETWRIGHT" build --format csv "$work/club.block" 2> "$work/err" | tail -n +2 | cut -d, -f13-15
    [ -s "$work/err" ] && grep ' error: ' "$work/err"
}

# share N: Brzycki's share of N repetitions; nearest EXACT STEP EMPTY: the step of the gym, ties down.
share()
{
    echo "scale=20; (37 - $1) / 36" | bc
}

nearest()
{
    echo "scale=20; x = ($1 - $3) / $2; scale = 0; n = x / 1; scale = 20; f = x - n
          if (f > 0.5) n = n + 1; if (n < 0) n = 0; n * $2 + $3" | bc | sed 's/\(\.[0-9]*[1-9]\)0*$/\1/; s/\.0*$//'
}

percent()
{
    echo "scale=20; p = 1000 * $1 / $2; scale = 0; (p + 0.5) / 1" | bc | sed 's/\([0-9]\)$/.\1/; s/\.0$//'
}

kg_gym='gym hall { bar 20 kg; plates 25 x 12, 20 x 2, 15 x 2, 10 x 2, 5 x 2, 2.5 x 2, 1.25 x 2 kg }'
lb_gym='gym hall { bar 45 lb; plates 45 x 12, 25 x 2, 10 x 4, 5 x 2, 2.5 x 2 lb }'
plan='lift squat { loads bar }
block b { for a; starts 2027-01-04; weeks 1; day A on mon {'

# An athlete of pounds in a gym of kilograms: at an effort, at a per cent, at a load in pounds.
for max in 225 315 402.5 517.75; do
    got=$(loads "units lb
$kg_gym
athlete a { gym hall; max squat $max }
$plan squat 3 x 5 at rpe 8; squat 3 x 5 at 72.5%; squat 2 x 5 at 135 lb } }" | tr '\n' ' ')
    kilos=$(echo "scale=20; $max * 0.45359237" | bc)
    want=
    for exact in "$kilos * $(share 7)" "$kilos * 0.725" "135 * 0.45359237"; do
        load=$(nearest "$(echo "scale=20; $exact" | bc)" 2.5 20)
        want="$want$(percent "$load" "$kilos"),$load,kg "
    done
    verdict "$got" "$want" "$max lb among kilograms"
done

# And the other way round.
for max in 100 142.5 181.25 235; do
    got=$(loads "units kg
$lb_gym
athlete a { gym hall; max squat $max }
$plan squat 3 x 5 at rpe 8; squat 3 x 5 at 72.5%; squat 2 x 5 at 60 kg } }" | tr '\n' ' ')
    pounds=$(echo "scale=20; $max / 0.45359237" | bc)
    want=
    for exact in "$pounds * $(share 7)" "$pounds * 0.725" "60 / 0.45359237"; do
        load=$(nearest "$(echo "scale=20; $exact" | bc)" 5 45)
        want="$want$(percent "$load" "$pounds"),$load,lb "
    done
    verdict "$got" "$want" "$max kg among pounds"
done

# One pound, exactly: ties are ties only where they are exact. 1.25 kg apart from a disc is 2.755778... lb.
got=$(loads "units kg
lift sled
athlete a
block b { for a; starts 2027-01-04; weeks 1; day A on mon {
sled 1 x 20 m at 100 lb; sled 1 x 20 m at 102.5 lb
sled 1 x 20 m at 41.25 kg; sled 1 x 20 m at 41.26 kg } }" | tr '\n' ' ')
want=
for exact in '100 * 0.45359237' '102.5 * 0.45359237' 41.25 41.26; do
    want="$want,$(nearest "$(echo "scale=20; $exact" | bc)" 2.5 0),kg "
done
verdict "$got" "$want" 'free loads in steps of 2.5 kg, ties down'

# A max in pounds and the same max in kilograms to the digit make the same plan.
for max in 100 333.33 405.5; do
    kilos=$(echo "scale=10; $max * 0.45359237" | bc)
    one=$(loads "$kg_gym
athlete a { gym hall; max squat $max lb }
$plan squat 3 x 3 at 80%; squat 3 x 8 at rpe 7 } }")
    other=$(loads "$kg_gym
athlete a { gym hall; max squat $kilos kg }
$plan squat 3 x 3 at 80%; squat 3 x 8 at rpe 7 } }")
    verdict "$one" "$other" "$max lb is $kilos kg"
done

# A drop, a cap and a change in the other unit.
got=$(loads "$kg_gym
athlete a { gym hall; max squat 180 kg }
$plan squat top 1 x 1 at rpe 8 then back-off 3 x 5 drop 45 lb; squat 2 x 3 at 85% cap 300 lb } }" | cut -d, -f2 | tr '\n' ' ')
top=$(nearest "$(echo "scale=20; 180 * $(share 3)" | bc)" 2.5 20)
below=$(nearest "$(echo "scale=20; $top - 45 * 0.45359237" | bc)" 2.5 20)
cap=$(echo "scale=20; x = 300 * 0.45359237 / 2.5; scale = 0; x / 1" | bc)
verdict "$got" "$top $below $(echo "$cap * 2.5" | bc | sed 's/\.0$//') " 'a drop and a cap in pounds'

# Bodyweight in pounds, a belt in kilograms: 185 lb + 20 kg is the max; five with two left are 30/36 of it.
got=$(loads "lift pull-up { loads bodyweight }
athlete a { bodyweight 185 lb on 2026-12-01; max pull-up bodyweight plus 20 kg on 2026-12-01 }
block b { for a; starts 2027-01-04; weeks 1
day A on mon { pull-up 3 x 5 at rpe 9 } }" | cut -d, -f2)
added=$(echo "scale=20; (185 * 0.45359237 + 20) * $(share 6) - 185 * 0.45359237" | bc)
verdict "$got" "$(nearest "$added" 2.5 0)" 'bodyweight in pounds, kilograms on the belt'
exit $status
