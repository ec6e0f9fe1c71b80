# What published pages say of themselves, in British English. One message a line; the accessors and their figures
# stand in src/tongue, and tests hold this catalogue to them. `$count` chooses a plural and is never printed.

## Figures

figure_cup = cup
figure_cups = cups
figure_tablespoon = tbsp
figure_teaspoon = tsp
figure_to = to
about = about
at_least = at least
piece = piece
pieces = pieces
spoons_metric = metric
spoons_australian = Australian
spoons_us_customary = US customary
spoons_us_label = US label
egg_whole = egg
egg_wholes = eggs
egg_white = white
egg_whites = whites
egg_yolk = yolk
egg_yolks = yolks
eggs_of_size = { $eggs }, size { $size }

## Sentences of the method

the_whole = the { $stage }
part_of_the = of the { $stage }
a_side = { $time } a side
then = then
until = until
until_ripe = until ripe
until_doubled = until doubled
until_trebled = until trebled
until_risen_by_half = until risen by half
until_risen_by = until risen by { $share }
until_core = until { $degrees } in the middle
until_at = until it is at { $degrees }
until_brix = until { $degrees } °Brix
until_it_pours = until it pours at { $viscosity } Pa·s

## What is done

action_weigh = weigh
action_prepare = prepare
action_warm = warm
action_melt = melt
action_soak = soak
action_scald = scald
action_mix = mix
action_knead = knead
action_rest = rest
action_ferment = ferment
action_bulk = bulk
action_fold = fold
action_divide = divide
action_shape = shape
action_fill = fill
action_proof = proof
action_retard = retard
action_score = score
action_griddle = griddle
action_bake = bake
action_fry = fry
action_boil = boil
action_simmer = simmer
action_reduce = reduce
action_strain = strain
action_cream = cream
action_whip = whip
action_temper = temper
action_chill = chill
action_cool = cool
action_hold = hold
action_rewarm = rewarm
action_drain = drain
action_glaze = glaze
action_dust = dust
action_assemble = assemble
action_store = store
action_serve = serve

## What stages are

kind_preferment = preferment
kind_sponge = sponge
kind_poolish = poolish
kind_biga = biga
kind_levain = levain
kind_old_dough = old-dough
kind_soaker = soaker
kind_scald = scald
kind_final_mix = final-mix
kind_inclusion = inclusion
kind_make_up = make-up
kind_cooked = cooked
kind_creamed = creamed
kind_mixed = mixed

## The head of a page

makes = Makes
each = Each
raw = raw
done = done
serves = Serves
hands_on = Hands on
at_the_heat = At the heat
start_to_table = Start to table
hands_on_part = hands on
at_the_heat_part = at the heat
waiting = waiting
course_caption = From start to table, each step at its longest:

## What is needed

what_you_need = What you need
to_work_with = To work with:
weights_first = Weights come first.
spoons_first = Where no spoon or cup comes near, weigh it.
spoons_and_cups_of = { $first } Cups and spoons are { $whose }, spooned and levelled: cup { $cup } ml, tablespoon { $tablespoon } ml, teaspoon { $teaspoon } ml.

## Stages and the table

method = Method
batches = { $many } batches of { $at_once }
the_formula = The formula
formula_of = Formula of { $component }
shares_of_flour = Percentages are shares of all flour, which is 100 %.
ingredient = Ingredient
percent_of_flour = % of flour
total_grams = total, g
total = Total
prefermented_flour = Prefermented flour
hydration_of_water = Hydration, water alone
hydration_of_all = Hydration, all water
salt = Salt
sugars = Sugars
fat = Fat
egg_share = Egg
yeast_as_instant = Yeast, as instant
not_counted = not counted: { $ingredients }

## What to mind

to_mind = To mind
contains = Contains:
check_labels = Check the label of everything you use.
keeping = Keeping
notes = Notes
guidance_only = Guidance only: your local food rules and your own judgement come first.
caution_raw_flour = Raw flour and dough
caution_text_raw_flour = Milling does not kill germs: do not taste raw dough or batter, and wash hands and bench afterwards.
caution_raw_egg = Raw egg
caution_text_raw_egg = Cook through, to at least 71 °C in the middle of an egg dish; do not leave egg mixtures warm for more than two hours. Where egg stays raw, use pasteurised egg for infants, in pregnancy, in old age and with a weak immune system.
caution_honey = Honey
caution_text_honey = Not for children under twelve months, not even baked.
caution_whole_nuts = Whole nuts
caution_text_whole_nuts = Whole nuts can choke children under five years; grind or chop them finely.
caution_hot_sugar = Hot sugar
caution_text_hot_sugar = Boiling syrup clings and burns deeply: keep children away, have cold water ready, cool a burn under running water for 20 minutes.
caution_hot_fat = Hot fat
caution_text_hot_fat = Fill the pan no more than a third, keep water away, never leave it; if it smokes or burns, turn off the heat and cover it. Do not move it hot.
caution_held_warm = Held warm and rewarmed
caution_text_held_warm = Hold hot food at 57 °C (135 °F) or more. Warm through quickly and only once, to 74 °C (165 °F) in the middle where it is held hot after that. Your local rules may ask for more: 63 °C in England.
caution_alcohol = Alcohol
caution_text_alcohol = Contains alcohol, which does not all cook off: tell guests, and leave it out for children.

## Allergens

allergen_wheat = wheat
allergen_rye = rye
allergen_barley = barley
allergen_oats = oats
allergen_crustaceans = crustaceans
allergen_eggs = eggs
allergen_fish = fish
allergen_peanut = peanuts
allergen_soy = soybeans
allergen_milk = milk
allergen_almond = almonds
allergen_hazelnut = hazelnuts
allergen_walnut = walnuts
allergen_cashew = cashews
allergen_pecan = pecan nuts
allergen_brazil_nut = Brazil nuts
allergen_pistachio = pistachio nuts
allergen_macadamia = macadamia nuts
allergen_pine_nut = pine nuts
allergen_celery = celery
allergen_mustard = mustard
allergen_sesame = sesame seeds
allergen_sulphites = sulphites
allergen_lupin = lupin
allergen_molluscs = molluscs

## A serving, and the foot

in_a_serving = In a serving
serving_size = One of { $servings } servings of all that is made, about { $weight }
serving_from_tables = Worked out from food tables, for orientation: it is no label.
energy = Energy
nutrient_fat = Fat
nutrient_saturates = of which saturates
nutrient_carbohydrate = Carbohydrate
nutrient_sugars = of which sugars
nutrient_fibre = Fibre
nutrient_protein = Protein
nutrient_sodium = Sodium
tasted_blind = Tasted blind
the_evidence = The evidence
goes_into = Goes into
from = From
figures_after = Water, sugars, fat and densities of the ingredients after:

## The book and its lists

book = Book
lists = Lists
formulas = Formulas
formulas_counted = { $count ->
    [one] { $formulas } formula
   *[other] { $formulas } formulas
}
all_formulas = All formulas
by_tag = By tag
by_ingredient = By ingredient
formulas_by_tag = Formulas by tag
formulas_by_ingredient = Formulas by ingredient
no_tag_yet = No formula has a tag yet.
no_ingredient_yet = No formula has an ingredient yet.
find_by = Find by title, tag or ingredient
found = { $found } of { $all }
so_long_to_table = { $time } from start to table

## The reader's controls

fit_to_your_kitchen = Fit to your kitchen
fit_it = Fit it to your kitchen
across_the_room = From across the room
keep_the_screen_on = Keep the screen on
as_published = As published
by_the_clock = By the clock
how_much = How much
how_many = How many { $pieces }
each_raw_grams = Each, raw, g
times_the_recipe = Times the recipe
my_tin = My tin
as_written = as written
oblong = oblong
round_tin = round
by_volume = by volume
long_cm = Long, cm
wide_cm = Wide, cm
across_cm = Across, cm
high_cm = High, cm
holds_ml = Holds, ml
how_many_tins = How many tins
measures = Measures
amounts = Amounts
grams = grams
cups_and_spoons = cups, spoons
whose_cups = Whose cups
degrees = Degrees
both_degrees = °C and °F
my_eggs = My eggs
size = size { $size }
american_size = US { $size }
my_flour = My flour
protein_of_the_bag = Protein as the bag gives it, for 100 g. The liquid follows; hold some back and judge by the dough.
room_and_clock = Room and clock
my_room = My room
as_the_method_says = as the method says
served_at = Served at
or_begun_at = or begun at
what_raises_it = What raises it
as_the_formula_says = as the formula says
to_mind_here = To mind:
not_kept = Not kept:
way_yeast = yeast instead of the culture in the { $stage }
way_culture = { $culture } instead of the yeast in the { $stage }
way_straight = straight: without the { $stage }, all mixed at once
way_allergen = an allergen comes in: { $allergens }
way_acid_comes = acid: a culture sours the crumb, and keeps it longer; a yeasted preferment does not
way_acid_goes = acid: what the culture's bacteria soured is gone, and with it some flavour and keeping
way_yeast_stays = the dough keeps its own yeast, which still does most of the raising
way_culture_alone = the culture alone raises the dough now: take it when it is ripe, not by the clock
way_culture_unfed = a culture that is not fed from this build any more must be fed on its own
way_hours_gone = what the hours of the preferment gave: flavour, acid, and flour that has soaked and softened
way_culture_unbuilt = the culture is not built up first any more: so little of it raises a dough slowly, if at all
way_yeast_unbuilt = the yeast is the same in all; in the preferment it had already multiplied
way_nothing_kept = nothing is kept back any more: feed the culture on its own
way_flour_of_culture = { $weight } of the flour is now the culture's own: { $flour }

## What the scripts say

told_for = Told for { $what }.
so_many_times = { $times } times
a_tin_of = a tin of { $litres } l
a_room_of = a room of { $degrees }
of_protein = { $flour } of { $percent } % protein
eggs_like = eggs of size { $size }
whose_cups_and_spoons = { $whose } cups and spoons
times_are_foreseen = Times are foreseen, not measured: judge by what the dough looks like.
times_of_the_batch = They are those of the batch as written; a larger one follows the room more slowly.
day_of_serving = The day it is served
days_before = { $count ->
    [one] The day before
   *[other] { $days } days before
}
so_long_before = { $time } before
serving = serving
served_then = { $time } served
have_ready = have ready: { $what }
beat_eggs = beat { $whole }, weigh { $weight }, { $left } are left
foreseen_at = At { $degrees }
foreseen_kept_at = Kept at { $degrees }, whatever the room
foreseen_never = { $place }: not foreseen to get there. Find it a warmer place.
foreseen_ripe = { $place }: ripe from { $from } to { $to }{ $says }.
foreseen_after = { $place }: after { $after }, from { $from } to { $to }{ $says }.
method_says = ; the method says { $time }
liquid_alone_cannot = In a room of { $room } the { $liquid } alone cannot bring this to its temperature: warm or chill more than that.
liquid_at = In a room of { $room }, have the { $liquid } at { $degrees } to bring this to its temperature.{ $hot }
liquid_too_hot = Too hot to meet the yeast alone.
timer = Timer
timers = Timers
timer_of = Timer: { $time }
time_is_up = Time: { $step }
stop = Stop
step = Step
previous = Previous
next = Next
back_to_the_page = Back to the page

## Labels

label_ingredients = Ingredients:
label_in_all = In all:
label_use_by = Use by
label_best_before = Best before
label_best_before_end = Best before
label_day_and_month = day and month
label_month_and_year = month and year (“best before end”)
label_year = year (“best before end”)
label_days = { $count ->
    [one] { $days } day
   *[other] { $days } days
}
label_from_packing = { $time } from packing
label_draft = Draft
label_gap = gap
label_nutrition = Nutrition
label_per_100_g = per 100 g
label_per_portion = per portion ({ $portion })
label_of_intake = % RI*
label_intake = Reference intake of an average adult (8400 kJ/2000 kcal).
label_energy = energy
label_fat = fat
label_saturates = of which saturates
label_carbohydrate = carbohydrate
label_sugars = of which sugars
label_fibre = fibre
label_protein = protein
label_salt = salt
