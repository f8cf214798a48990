/* Tokens to tree. The grammar builds and decides nothing: any statement may stand in any body here; syntax/place.c says in
 * words what does not belong where. That one shape for all bodies is what makes recovery plain: a broken statement is
 * skipped to its end, a broken header keeps its body.
 *
 * The line discipline (syntax/reader.c) supplies the end of each statement, and at the start of a statement tokens
 * of its own for a plain name: DID in a session, RULE in checks, MEMBER in a group. Most lines of a day, and
 * most days, are read by hand (syntax/plain.c) and come as one token, PLAIN; all that they may say stands here too, and is
 * decided here. */
%require "3.8"
%define api.pure full
%define api.prefix {sw_}
%define api.location.type {struct span}
%define api.value.type union
%define api.token.prefix {TOK_}
%define api.token.raw
%define parse.error custom
%locations
%param { struct parse *p }

%code requires {
#include "syntax/reader.h"
}

%code {
static int yylex(YYSTYPE *value, struct span *at, struct parse *p);
static void yyerror(const struct span *at, struct parse *p, const char *message);

#define YYINITDEPTH 1000
#define YYMAXDEPTH 1000
#define YYLLOC_DEFAULT(now, parts, count) \
    ((now) = (count) ? span_join(YYRHSLOC(parts, 1), YYRHSLOC(parts, count)) : span_after(YYRHSLOC(parts, 0)))

/* NODE(BAR, @$, $2, $3): the parts become children in order; a NULL is left out, the head of a list brings its siblings. */
#define NODE(kind, at, ...) \
    node_of(p, NODE_##kind, at, (struct node *[]){ __VA_ARGS__ }, sizeof((struct node *[]){ __VA_ARGS__ }) / sizeof(struct node *))
#define LEAF(kind, at) node_of(p, NODE_##kind, at, NULL, 0)
#define WORD(at) node_word(p, at)

static struct span span_after(struct span before)
{
    return (struct span){ before.end, before.end };
}
}

%token END "the end of the line"
%token <struct node *> NAME "a name" VAR "a $name" STRING "a text in quotes" NUMBER "a number" DATE "a date"
%token <struct node *> DID "a lift that was done" RULE "the name of a rule" MEMBER "a member"
%token <struct node *> PLAIN "statements read by hand"
%token OPEN "{" CLOSE "}" LEFT "(" RIGHT ")" COMMA "," BAR_SIGN "|" DASH "-" PLUS_SIGN "+" EQUALS "=" PERCENT "%"
%token KG "kg" LB "lb" SECONDS "s" MINUTES "min" METRES "m" STEP "step" DAYS "days"
%token ADD "add" ADJUST "adjust" ALLOW "allow" AMRAP "amrap" AND "and" AS "as" AT "at" ATHLETE "athlete" ATTEMPTS "attempts"
%token AVOID "avoid" BACK_OFF "back-off" BAR "bar" BECAUSE "because" BLOCK "block" BODYWEIGHT "bodyweight" BREAK "break"
%token CAP "cap" CHECKS "checks" COLLAR "collar" CUE "cue" CURVE "curve" DAY "day" DELOAD "deload" DIARY "diary" DOWN "down"
%token DROP "drop" DUMBBELLS "dumbbells" EACH "each" EASY "easy" EFFORT "effort" EVERY "every" FIXED "fixed" FOR "for"
%token FROM "from" FULL "full" GOAL "goal" GROUP "group" GYM "gym" HELPS "helps" HOLD "hold" IN "in" INSTEAD "instead" KIND "kind"
%token LANGUAGE "language" LEAST "least" LET "let" LEVEL "level" LIFT "lift" LIKE "like" LOAD "load" LOADS "loads"
%token MADE "made" MAX "max" MEANS "means" MEET "meet" MINUS "minus" MISSED "missed" MODEL "model" MOST "most" NOTE "note"
%token OF "of" OFF "off" ON "on" OPTIONAL "optional" OR "or" PASS "pass" PAUSE "pause" PLANNED "planned" PLATES "plates"
%token PLUS "plus" PROGRESSION "progression" REMOVE "remove" REPEAT "repeat" REPS "reps" REST "rest" RIR "rir"
%token ROSTER "roster" ROTATE "rotate" ROUND "round" ROUNDS "rounds" RPE "rpe" RUN "run" SAME "same" SCHEME "scheme"
%token SEASON "season" SESSION "session" SETS "sets" SIDE "side" SKIP "skip" SKIPPED "skipped" SPEED "speed" STACK "stack"
%token STARTS "starts" SUPERSET "superset" SWAP "swap" TAPER "taper" TEMPLATE "template" TEMPO "tempo" THEN "then"
%token TIMES "x" TIMES_WORD "times" TITLE "title" TO "to" TOP "top" TOTAL "total" UNITS "units" UNTIL "until" UP "up"
%token USE "use" WARM_UP "warm-up" WAVE "wave" WEEK "week" WEEKS "weeks" WHEN "when" WITH "with" WORKS "works"

%type <struct list> statements body open_body statement
%type <struct node *> everywhere file_part gym_part lift_part athlete_part block_part plan_part change season_part diary_part
%type <struct node *> checks_part when_part
%type <struct node *> person name_or_var lift label text text_or_none on on_or_none because amount plain_amount weight
%type <struct node *> number_or_var quantity week_item weeks in_weeks every
%type <struct list> people more_people lifts names labels weekday_names week_items
%type <struct node *> value series set_list week_list wave_list ramp step wave parens effort bodyweight sets
%type <const char *> unit weight_unit limit_unit
%type <struct node *> plate range like from_or_none let_value with_let
%type <struct list> set_items week_values plates plate_list ranges with_lets with_or_none
%type <struct node *> part count reps cluster clause at_clause of_or_none use_scheme group
%type <struct list> chain clauses cluster_numbers either
%type <const char *> role
%type <struct node *> adjust_when superset_for action limit limit_value
%type <struct list> limit_values change_where runs done_parts
%type <struct node *> done_part done_loads effort_or_none speed_or_none run name_or_none week_or_none label_or_none lifts_or_none
%type <const char *> change_what when_what
%type <int> change_way
%type <struct node *> loads_name round_way

%start file

%%

file: statements { p->root = node_body(p, LEAF(FILE, @$), $1); };

statements:
    %empty { $$ = (struct list){ 0 }; }
  | statements statement "the end of the line" { $$ = list_join($1, $2); }
  | statements error "the end of the line" { yyerrok; $$ = list_add($1, LEAF(ERROR, @2)); }
  | statements error body "the end of the line" { yyerrok; $$ = list_add($1, node_body(p, LEAF(ERROR, @2), $3)); }
  ;

/* yyerrok at the brace: what stands in the body of a broken header is read with fresh eyes. */
open: "{" { yyerrok; };
body: open statements "}" { $$ = $2; $$.braces = true; };
open_body: %empty { $$ = (struct list){ 0 }; } | body;

statement:
    everywhere { $$ = list_of($1); }
  | file_part { $$ = list_of($1); }
  | gym_part { $$ = list_of($1); }
  | lift_part { $$ = list_of($1); }
  | athlete_part { $$ = list_of($1); }
  | when_part { $$ = list_of($1); }
  | block_part { $$ = list_of($1); }
  | plan_part { $$ = list_of($1); }
  | change { $$ = list_of($1); }
  | season_part { $$ = list_of($1); }
  | diary_part { $$ = list_of($1); }
  | checks_part { $$ = list_of($1); }
  | chain
  | PLAIN { $$ = list_of($1); }
  | MEMBER more_people { $$ = list_of(NODE(PEOPLE, @$, $1, $2.first)); }
  ;

/* ---- small shared parts ---- */

person: NAME | any_word { $$ = WORD(@1); };
people: person more_people { $$ = list_join(list_of($1), $2); };
more_people: %empty { $$ = (struct list){ 0 }; } | more_people "," person { $$ = list_add($1, $3); };

/* Every word of the language, for people, who cannot choose their names. A test compares this with syntax/words.c. */
any_word:
    "add" | "adjust" | "allow" | "amrap" | "and" | "as" | "at" | "athlete" | "attempts" | "avoid" | "back-off" | "bar" | "because"
  | "block" | "bodyweight" | "break" | "cap" | "checks" | "collar" | "cue" | "curve" | "day" | "deload" | "diary" | "down" | "drop"
  | "dumbbells" | "each" | "easy" | "effort" | "every" | "fixed" | "for" | "from" | "full" | "goal" | "group" | "gym" | "helps"
  | "hold" | "in" | "instead" | "kind" | "language" | "least" | "let" | "level" | "lift" | "like" | "load" | "loads" | "made" | "max" | "means"
  | "meet" | "minus" | "missed" | "model" | "most" | "note" | "of" | "off" | "on" | "optional" | "or" | "pass" | "pause" | "planned"
  | "plates" | "plus" | "progression" | "remove" | "repeat" | "reps" | "rest" | "rir" | "roster" | "rotate" | "round" | "rounds"
  | "rpe" | "run" | "same" | "scheme" | "season" | "session" | "sets" | "side" | "skip" | "skipped" | "speed" | "stack" | "starts"
  | "superset" | "swap" | "taper" | "template" | "tempo" | "then" | "times" | "title" | "to" | "top" | "total" | "units" | "until"
  | "up" | "use" | "warm-up" | "wave" | "week" | "weeks" | "when" | "with" | "works" | "x"
  ;

name_or_var: NAME | VAR;
name_or_none: %empty { $$ = NULL; } | NAME;
names: NAME { $$ = list_of($1); } | names "," NAME { $$ = list_add($1, $3); };
lift: NAME | VAR;
lifts: lift { $$ = list_of($1); } | lifts "," lift { $$ = list_add($1, $3); };
lifts_or_none: %empty { $$ = NULL; } | lifts { $$ = NODE(LIFTS, @$, $1.first); };
label: NAME | NUMBER;
label_or_none: %empty { $$ = NULL; } | label;
labels: label { $$ = list_of($1); } | labels "," label { $$ = list_add($1, $3); };
weekday_names: names;
text: STRING | VAR;
text_or_none: %empty { $$ = NULL; } | "because" text { $$ = NODE(BECAUSE, @$, $2); };
because: text_or_none;
on: "on" DATE { $$ = NODE(ON, @$, $2); };
on_or_none: %empty { $$ = NULL; } | on;

week: "week" | "weeks";
week_item: number_or_var | number_or_var "-" number_or_var { $$ = NODE(BAND, @$, $1, $3); };
week_items: week_item { $$ = list_of($1); } | week_items "," week_item { $$ = list_add($1, $3); };
weeks: week week_items { $$ = NODE(WEEKS, @$, $2.first); };
week_or_none: %empty { $$ = NULL; } | weeks;
in_weeks: "in" weeks { $$ = NODE(IN_WEEKS, @$, $2); };
every: "each" number_or_var week { $$ = NODE(EVERY, @$, $2); };

/* ---- numbers, and values over sets and weeks ----
 *
 * Most of what is written is one plain number, so a number is a value as it stands: each list is of two or more. */

number_or_var: NUMBER | VAR;
unit: weight_unit | "%" { $$ = "%"; } | "s" { $$ = "s"; } | "min" { $$ = "min"; } | "m" { $$ = "m"; };
weight_unit: "kg" { $$ = "kg"; } | "lb" { $$ = "lb"; };
plain_amount: NUMBER | VAR | number_or_var "-" number_or_var { $$ = NODE(BAND, @$, $1, $3); };
amount: plain_amount | plain_amount unit { $$ = node_text(NODE(AMOUNT, @$, $1), $2); };
quantity:
    number_or_var { $$ = NODE(AMOUNT, @$, $1); }
  | number_or_var weight_unit { $$ = node_text(NODE(AMOUNT, @$, $1), $2); }
  ;
weight: quantity { $$ = NODE(WEIGHT, @$, $1); };

set_items: amount "," amount { $$ = list_add(list_of($1), $3); } | set_items "," amount { $$ = list_add($1, $3); };
set_list: set_items { $$ = NODE(SETS, @$, $1.first); };
sets: amount | set_list;
week_values: sets "|" sets { $$ = list_add(list_of($1), $3); } | week_values "|" sets { $$ = list_add($1, $3); };
week_list: week_values { $$ = NODE(LIST, @$, $1.first); };
wave_list: sets { $$ = NODE(LIST, @$, $1); } | week_list;
ramp: "from" amount "to" amount { $$ = NODE(RAMP, @$, $2, $4); };
step:
    sets "plus" amount "each" week { $$ = NODE(STEP, @$, $1, $3); }
  | sets "minus" amount "each" week { $$ = node_flag(NODE(STEP, @$, $1, $3), FLAG_MINUS); }
  | sets "plus" amount "each" NUMBER week { $$ = NODE(STEP, @$, $1, $3, $5); }
  | sets "minus" amount "each" NUMBER week { $$ = node_flag(NODE(STEP, @$, $1, $3, $5), FLAG_MINUS); }
  ;
wave:
    "wave" wave_list { $$ = NODE(WAVE, @$, $2); }
  | "wave" wave_list "plus" amount "each" "pass" { $$ = NODE(WAVE, @$, $2, $4); }
  | "wave" wave_list "minus" amount "each" "pass" { $$ = node_flag(NODE(WAVE, @$, $2, $4), FLAG_MINUS); }
  ;
series: amount | set_list | week_list | ramp | step | wave;
parens: "(" series ")" { $$ = node_parens(p, $2, @$); };
value: amount | set_list | week_list | ramp | step | wave | parens;

effort:
    "rpe" value { $$ = node_text(NODE(EFFORT, @$, $2), "rpe"); }
  | "rir" value { $$ = node_text(NODE(EFFORT, @$, $2), "rir"); }
  ;
effort_or_none: %empty { $$ = NULL; } | effort;
bodyweight:
    "bodyweight" { $$ = LEAF(BODYWEIGHT, @$); }
  | "bodyweight" "plus" value { $$ = NODE(BODYWEIGHT, @$, $3); }
  | "bodyweight" "minus" value { $$ = node_flag(NODE(BODYWEIGHT, @$, $3), FLAG_MINUS); }
  ;

/* ---- statements of many bodies ---- */

everywhere:
    "title" text { $$ = NODE(TITLE, @$, $2); }
  | "note" text { $$ = NODE(NOTE, @$, $2); }
  | "let" VAR "=" let_value { $$ = NODE(LET, @$, $2, $4); }
  | "allow" NAME because { $$ = NODE(ALLOW, @$, $2, $3); }
  | "model" NAME { $$ = NODE(MODEL, @$, $2); }
  ;
let_value: value | NAME | STRING | effort | "amrap" { $$ = LEAF(AMRAP, @$); };

file_part:
    "language" NUMBER { $$ = NODE(LANGUAGE, @$, $2); }
  | "units" NAME { $$ = NODE(UNITS, @$, $2); }
  | "use" STRING { $$ = NODE(USE, @$, $2); }
  | "roster" STRING { $$ = NODE(ROSTER, @$, $2); }
  | "gym" NAME open_body { $$ = node_body(p, NODE(GYM, @$, $2), $3); }
  | "lift" NAME like open_body { $$ = node_body(p, NODE(LIFT, @$, $2, $3), $4); }
  | "athlete" person open_body { $$ = node_body(p, NODE(ATHLETE, @$, $2), $3); }
  | "group" person open_body { $$ = node_body(p, NODE(GROUP_OF, @$, $2), $3); }
  | "scheme" NAME open_body { $$ = node_body(p, NODE(SCHEME, @$, $2), $3); }
  | "progression" NAME open_body { $$ = node_body(p, NODE(PROGRESSION, @$, $2), $3); }
  | "block" NAME from_or_none open_body { $$ = node_body(p, NODE(BLOCK, @$, $2, $3), $4); }
  | "template" NAME from_or_none open_body { $$ = node_body(p, NODE(TEMPLATE, @$, $2, $3), $4); }
  | "season" NAME body { $$ = node_body(p, NODE(SEASON, @$, $2), $3); }
  | "diary" person body { $$ = node_body(p, NODE(DIARY, @$, $2), $3); }
  | "checks" body { $$ = node_body(p, LEAF(CHECKS, @$), $2); }
  ;
like:
    %empty { $$ = NULL; }
  | "like" NAME { $$ = NODE(LIKE, @$, $2); }
  | "like" NAME "at" amount { $$ = NODE(LIKE, @$, $2, $4); }
  ;
from_or_none: %empty { $$ = NULL; } | "from" NAME { $$ = NODE(FROM, @$, $2); };

/* ---- gyms, lifts, athletes ---- */

gym_part:
    "bar" weight { $$ = NODE(BAR, @$, $2); }
  | "bar" NAME weight { $$ = NODE(BAR, @$, $3, $2); }
  | "collar" weight { $$ = NODE(COLLAR, @$, $2); }
  | "plates" plates { $$ = NODE(PLATES, @$, $2.first); }
  | "dumbbells" ranges { $$ = NODE(DUMBBELLS, @$, $2.first); }
  | "stack" ranges { $$ = NODE(STACK, @$, $2.first); }
  | "stack" NAME ranges { $$ = NODE(STACK, @$, $3.first, $2); }
  | "round" round_way { $$ = NODE(ROUND, @$, $2); }
  ;
round_way: NAME | "up" { $$ = WORD(@1); } | "down" { $$ = WORD(@1); };
plates: plate_list | plate_list weight_unit { $$ = plates_unit($1, $2); };
plate_list: plate { $$ = list_of($1); } | plate_list "," plate { $$ = list_add($1, $3); };
plate: weight "x" NUMBER { $$ = NODE(PLATE, @$, $1, $3); };
ranges: range { $$ = list_of($1); } | ranges "," range { $$ = list_add($1, $3); };
range:
    quantity { $$ = NODE(RANGE, @$, $1); }
  | quantity "to" quantity "step" quantity { $$ = NODE(RANGE, @$, $1, $3, $5); }
  ;

lift_part:
    "kind" NAME { $$ = NODE(KIND, @$, $2); }
  | "loads" loads_name name_or_none { $$ = NODE(LOADS, @$, $2, $3); }
  | "works" names { $$ = NODE(WORKS, @$, $2.first); }
  | "helps" names { $$ = NODE(HELPS, @$, $2.first); }
  | "cue" text { $$ = NODE(CUE, @$, $2); }
  | "instead" names { $$ = NODE(INSTEAD, @$, $2.first); }
  ;
loads_name:
    NAME
  | "bar" { $$ = WORD(@1); }
  | "dumbbells" { $$ = WORD(@1); }
  | "stack" { $$ = WORD(@1); }
  | "bodyweight" { $$ = WORD(@1); }
  ;

athlete_part:
    "bodyweight" weight on_or_none { $$ = NODE(BODYWEIGHT_LINE, @$, $2, $3); }
  | "max" NAME weight on_or_none { $$ = NODE(MAX, @$, $2, $3, $4); }
  | "max" NAME bodyweight on_or_none { $$ = NODE(MAX, @$, $2, $3, $4); }
  | "max" NAME "from" weight "x" NUMBER effort_or_none on_or_none {
        $$ = node_flag(NODE(MAX, @$, $2, $4, $6, $7, $8), FLAG_FROM); }
  | "max" NAME "from" bodyweight "x" NUMBER effort_or_none on_or_none {
        $$ = node_flag(NODE(MAX, @$, $2, $4, $6, $7, $8), FLAG_FROM); }
  | "curve" NAME NUMBER "reps" "at" amount { $$ = NODE(CURVE, @$, $2, $3, $6); }
  | "effort" NAME NUMBER "means" NUMBER { $$ = NODE(EFFORT_LINE, @$, $2, $3, $5); }
  | "avoid" NAME because { $$ = NODE(AVOID, @$, $2, $3); }
  | "avoid" NAME "use" NAME because { $$ = NODE(AVOID, @$, $2, $4, $5); }
  ;

when_part: "when" when_what action { $$ = node_text(NODE(WHEN, @$, $3), $2); }
  | "when" "missed" action { $$ = node_text(NODE(WHEN, @$, $3), "missed"); }
  | "when" "missed" NUMBER "times" action { $$ = node_text(NODE(WHEN, @$, $3, $5), "missed"); }
  ;
when_what: "made" { $$ = "made"; } | "easy" { $$ = "easy"; } | "reps" "full" { $$ = "reps full"; };
action:
    "add" amount { $$ = NODE(ADD, @$, $2); }
  | "add" number_or_var "step" { $$ = NODE(ADD, @$, node_text(NODE(AMOUNT, span_join(@2, @3), $2), "step")); }
  | "hold" { $$ = LEAF(HOLD, @$); }
  | "drop" amount { $$ = NODE(DROP_LOAD, @$, $2); }
  ;

/* ---- blocks ---- */

block_part:
    "goal" NAME { $$ = NODE(GOAL, @$, $2); }
  | "for" people { $$ = NODE(FOR, @$, NODE(PEOPLE, @2, $2.first)); }
  | "starts" DATE { $$ = NODE(STARTS, @$, $2); }
  | week number_or_var { $$ = NODE(LENGTH, @$, $2); }
  | week week_items body { $$ = node_body(p, NODE(WEEKS_GROUP, @$, NODE(WEEKS, span_join(@1, @2), $2.first)), $3); }
  | "deload" weeks open_body { $$ = node_body(p, NODE(DELOAD, @$, $2), $3); }
  | "deload" every open_body { $$ = node_body(p, NODE(DELOAD, @$, $2), $3); }
  | "taper" weeks open_body { $$ = node_body(p, NODE(TAPER, @$, $2), $3); }
  | "warm-up" NAME { $$ = NODE(WARM_UP, @$, $2); }
  | "warm-up" NAME "for" lifts { $$ = NODE(WARM_UP, @$, $2, NODE(LIFTS, @4, $4.first)); }
  | "max" "to" amount { $$ = NODE(MAX_TO, @$, $3); }
  | "max" "fixed" { $$ = LEAF(MAX_FIXED, @$); }
  | "remove" "day" labels { $$ = NODE(REMOVE, @$, NODE(DAYS, @3, $3.first)); }
  | "rotate" labels "on" weekday_names {
        $$ = NODE(ROTATE, @$, NODE(DAYS, @2, $2.first), NODE(WEEKDAYS, @4, $4.first)); }
  | "adjust" people adjust_when body { $$ = node_body(p, NODE(ADJUST, @$, NODE(PEOPLE, @2, $2.first), $3), $4); }
  | "day" label open_body { $$ = node_body(p, NODE(DAY, @$, $2), $3); }
  | "day" label "on" weekday_names open_body { $$ = node_body(p, NODE(DAY, @$, $2, NODE(WEEKDAYS, @4, $4.first)), $5); }
  ;
adjust_when:
    %empty { $$ = NULL; }
  | in_weeks
  | "from" DATE { $$ = NODE(DATES, @$, $2); }
  | "from" DATE "to" DATE { $$ = NODE(DATES, @$, $2, $4); }
  ;

/* ---- days: entries, set groups, clauses ---- */

plan_part:
    "optional" { $$ = LEAF(OPTIONAL, @$); }
  | "superset" superset_for body { $$ = node_body(p, NODE(SUPERSET, @$, $2), $3); }
  | either chain { $$ = NODE(ENTRY, @$, NODE(LIFTS, @1, $1.first), $2.first); }
  | either body { $$ = node_body(p, NODE(ENTRY, @$, NODE(LIFTS, @1, $1.first)), $2); }
  ;
superset_for:
    %empty { $$ = NULL; }
  | count "rounds" { $$ = NODE(ROUNDS, @$, $1->child); }
  | "for" amount { $$ = NODE(MINUTES, @$, $2); }
  ;
either: lift { $$ = list_of($1); } | either "or" lift { $$ = list_add($1, $3); };

chain: part { $$ = list_of($1); } | chain "then" part { $$ = list_add($1, $3); };
part: group | use_scheme;
use_scheme: name_or_var with_or_none { $$ = NODE(USE_SCHEME, @$, $1, $2.first); };
with_or_none: %empty { $$ = (struct list){ 0 }; } | "with" with_lets { $$ = $2; };
with_lets: with_let { $$ = list_of($1); } | with_lets "and" with_let { $$ = list_add($1, $3); };
with_let: VAR "=" let_value { $$ = NODE(LET, @$, $1, $3); };

group:
    count "x" reps clauses { $$ = NODE(GROUP, @$, $1, $3, $4.first); }
  | role count "x" reps clauses { $$ = node_text(NODE(GROUP, @$, $2, $4, $5.first), $1); }
  | "total" count clauses { $$ = NODE(GROUP, @$, NODE(TOTAL, span_join(@1, @2), $2->child), $3.first); }
  | role "total" count clauses {
        $$ = node_text(NODE(GROUP, @$, NODE(TOTAL, span_join(@2, @3), $3->child), $4.first), $1); }
  ;
role: "warm-up" { $$ = "warm-up"; } | "top" { $$ = "top"; } | "back-off" { $$ = "back-off"; };
count:
    plain_amount { $$ = NODE(COUNT, @$, $1); }
  | parens { $$ = NODE(COUNT, @$, $1); }
  ;
reps:
    amount { $$ = NODE(REPS, @$, $1); }
  | parens { $$ = NODE(REPS, @$, $1); }
  | "amrap" { $$ = NODE(REPS, @$, LEAF(AMRAP, @$)); }
  | cluster { $$ = NODE(REPS, @$, $1); }
  ;
cluster: cluster_numbers { $$ = NODE(CLUSTER, @$, $1.first); };
cluster_numbers: NUMBER "+" NUMBER { $$ = list_add(list_of($1), $3); } | cluster_numbers "+" NUMBER { $$ = list_add($1, $3); };

clauses: %empty { $$ = (struct list){ 0 }; } | clauses clause { $$ = list_add($1, $2); };
clause:
    "at" at_clause { $$ = node_at($2, @$); }
  | "allow" NAME because { $$ = NODE(ALLOW, @$, $2, $3); }
  | "drop" value { $$ = NODE(DROP, @$, unit_wanted(p, $2, "drop")); }
  | "cap" effort { $$ = NODE(CAP, @$, $2); }
  | "cap" value { $$ = NODE(CAP, @$, unit_wanted(p, $2, "cap")); }
  | "until" effort { $$ = NODE(UNTIL_EFFORT, @$, $2); }
  | "until" "speed" amount { $$ = NODE(UNTIL_SPEED, @$, $3); }
  | "every" amount { $$ = NODE(EVERY_TIME, @$, $2); }
  | "rest" amount { $$ = NODE(REST, @$, $2); }
  | "pause" amount { $$ = NODE(PAUSE, @$, $2); }
  | "tempo" text { $$ = NODE(TEMPO, @$, $2); }
  | "each" "side" { $$ = LEAF(EACH_SIDE, @$); }
  | "optional" { $$ = LEAF(OPTIONAL, @$); }
  | "note" text { $$ = NODE(NOTE, @$, $2); }
  | in_weeks
  | "progression" name_or_var { $$ = NODE(PROGRESS, @$, $2); }
  ;
at_clause:
    "rpe" value { $$ = node_text(NODE(AT_EFFORT, @$, $2), "rpe"); }
  | "rir" value { $$ = node_text(NODE(AT_EFFORT, @$, $2), "rir"); }
  | value of_or_none { $$ = NODE(AT_LOAD, @$, unit_wanted(p, $1, "at"), $2); }
  | bodyweight { $$ = NODE(AT_BODYWEIGHT, @$, $1); }
  | "same" { $$ = LEAF(AT_SAME, @$); }
  | "least" value { $$ = NODE(AT_LEAST, @$, $2); }
  ;
of_or_none:
    %empty { $$ = NULL; }
  | "of" lift { $$ = NODE(OF_LIFT, @$, $2); }
  | "of" "day" label { $$ = NODE(OF_DAY, @$, $3); }
  | "of" "bodyweight" { $$ = LEAF(OF_BODYWEIGHT, @$); }
  ;

/* ---- changes ---- */

change:
    change_what change_way value change_where {
        $$ = node_flag(node_text(NODE(CHANGE, @$, change_value(p, $1, $3), $4.first), $1), $2); }
  | "swap" lift "with" lift { $$ = NODE(SWAP, @$, $2, $4); }
  | "skip" lifts { $$ = NODE(SKIP_LIFT, @$, NODE(LIFTS, @2, $2.first)); }
  | "skip" "day" labels { $$ = NODE(SKIP_DAY, @$, NODE(DAYS, @3, $3.first)); }
  | "skip" weeks { $$ = NODE(SKIP_WEEK, @$, $2); }
  | "repeat" weeks { $$ = NODE(REPEAT_WEEK, @$, $2); }
  | "cap" lifts_or_none effort { $$ = NODE(CAP_CHANGE, @$, $2, $3); }
  | "add" "to" "day" label body { $$ = node_body(p, NODE(ADD_TO, @$, $4), $5); }
  ;
change_what: "sets" { $$ = "sets"; } | "reps" { $$ = "reps"; } | "rpe" { $$ = "rpe"; } | "load" { $$ = "load"; };
change_way: "up" { $$ = FLAG_UP; } | "down" { $$ = FLAG_DOWN; } | "to" { $$ = FLAG_TO; };
change_where:
    %empty { $$ = (struct list){ 0 }; }
  | "for" lifts { $$ = list_of(NODE(LIFTS, @2, $2.first)); }
  | "on" "day" labels { $$ = list_of(NODE(DAYS, @3, $3.first)); }
  | "for" lifts "on" "day" labels { $$ = list_add(list_of(NODE(LIFTS, @2, $2.first)), NODE(DAYS, @5, $5.first)); }
  | "on" "day" labels "for" lifts { $$ = list_add(list_of(NODE(LIFTS, @5, $5.first)), NODE(DAYS, @3, $3.first)); }
  ;

/* ---- seasons, diaries, checks ---- */

season_part:
    "meet" text on { $$ = NODE(MEET, @$, $2, $3); }
  | "run" runs { $$ = NODE(RUN, @$, $2.first); }
  | "attempts" lift value { $$ = NODE(ATTEMPTS, @$, $2, $3); }
  ;
runs: run { $$ = list_of($1); } | runs "," run { $$ = list_add($1, $3); };
run: NAME | "break" NUMBER week { $$ = NODE(BREAK, @$, $2); };

diary_part:
    DATE label_or_none week_or_none body { $$ = node_body(p, NODE(SESSION, @$, $1, $2, $3), $4); }
  | DATE label_or_none week_or_none "missed" because { $$ = NODE(MISSED, @$, $1, $2, $3, $5); }
  | DID done_parts { $$ = NODE(DONE, @$, $1, $2.first); }
  | DID "as" "planned" effort_or_none speed_or_none {
        $$ = NODE(DONE, @$, $1, NODE(AS_PLANNED, span_join(@2, @5), $4, $5)); }
  | DID "skipped" because { $$ = NODE(DONE, @$, $1, NODE(SKIPPED, span_join(@2, @3), $3)); }
  | "session" effort { $$ = NODE(SESSION_EFFORT, @$, $2); }
  | "session" effort "for" amount { $$ = NODE(SESSION_EFFORT, @$, $2, $4); }
  ;
done_parts: done_part { $$ = list_of($1); } | done_parts "then" done_part { $$ = list_add($1, $3); };
done_part: done_loads "x" sets effort_or_none speed_or_none { $$ = NODE(PART, @$, $1, $3, $4, $5); };
done_loads: sets | bodyweight;
speed_or_none: %empty { $$ = NULL; } | "speed" sets { $$ = NODE(SPEED, @$, $2); };

checks_part:
    RULE limit { $$ = node_before(p, $2, @$, $1, NULL); }
  | RULE NAME limit { $$ = node_before(p, $3, @$, $1, $2); }
  | "off" NAME because { $$ = NODE(OFF, @$, $2, $3); }
  ;
limit:
    "at" "least" limit_values { $$ = node_text(NODE(LIMIT, @$, $3.first), "at least"); }
  | "at" "most" limit_values { $$ = node_text(NODE(LIMIT, @$, $3.first), "at most"); }
  | limit_value "to" limit_value { $$ = node_text(NODE(LIMIT, @$, $1, $3), "to"); }
  | "level" NAME { $$ = node_text(NODE(LIMIT, @$, $2), "level"); }
  ;
limit_values: limit_value { $$ = list_of($1); } | limit_values "and" limit_value { $$ = list_add($1, $3); };
limit_value: amount | plain_amount limit_unit { $$ = node_text(NODE(AMOUNT, @$, $1), $2); } | effort;
limit_unit: "sets" { $$ = "sets"; } | "days" { $$ = "days"; } | "reps" { $$ = "reps"; } | week { $$ = "weeks"; };

%%

static int yyreport_syntax_error(const yypcontext_t *context, struct parse *p)
{
    yysymbol_kind_t expected[YYNTOKENS];
    int count = yypcontext_expected_tokens(context, expected, YYNTOKENS);
    int wanted[YYNTOKENS], written = 0;
    for (int i = 0; i < count; i++)
        if ((int)expected[i] != TOK_PLAIN)
            wanted[written++] = (int)expected[i];
    complain(p, (int)yypcontext_token(context), *yypcontext_location(context), wanted, written);
    return 0;
}

static int yylex(YYSTYPE *value, struct span *at, struct parse *p)
{
    struct token token = parse_is_lost(p) ? (struct token){ 0 } : reader_next(p);
    *at = token.at;
    value->TOK_NAME = token.node;
    return token.kind;
}

/* Syntax errors have their own way (complain); what is left is that the parser's stack is full. */
static void yyerror(const struct span *at, struct parse *p, const char *message)
{
    (void)message;
    diag_help(p->findings, found(p, KIND_LIMIT, *at, "this is too deeply nested to be read"),
              "take some of it apart");
}
