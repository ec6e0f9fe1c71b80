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
kind_old_dough = old dough
kind_soaker = soaker
kind_scald = scald
kind_final_mix = final mix
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
in_other_languages = In other languages
language_name = English
learnt_of = { $count ->
    [one] of { $called } from { $trials } trial
   *[other] of { $called } from { $trials } trials
}
learnt_times = Times { $each } in the author’s own kitchen.
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

## The formula sheet

percent_of_its_flour = % of its flour
sheet_as_weighed = As the scales show it: { $shifts }.
sheet_at = at
sheet_do = do
sheet_flour = Total flour { $flour }, of which prefermented { $prefermented }; flour protein { $protein }
sheet_goes_on = { $mixed } mixed, of which { $made } go on
sheet_hydration = Hydration: nominal { $nominal } (water alone), true { $all } (the water of milk, egg, butter and all else counted)
sheet_little = { $ingredient }: { $mass } is little for a scale in steps of { $step } (±{ $uncertainty } standard uncertainty).
sheet_losses = { $mixed } mixed, { $raw } raw after { $make_up } make-up loss, { $done } done after { $bake } bake loss
sheet_makes = Makes { $what }
sheet_note = note
sheet_overall = Overall formula
sheet_overall_of = Overall formula of { $what }
sheet_pieces_of = { $pieces } of { $mass }
sheet_process = Process
sheet_scale_shows = scale shows
sheet_shares = Salt { $salt }, sugars { $sugars }, fat { $fat }, egg { $egg }, milk solids { $milk_solids }
sheet_shift = { $ingredient } { $weighed } instead of { $wanted }
sheet_silenced = Silenced by its author, { $rule } ({ $reason }).
sheet_spoon = By the spoon: { $measure } ({ $off } off, spoons differ by ±{ $spread }).
sheet_stage = Stage
sheet_stir = Stir { $weigh } into { $water } of the water and use { $take } of that, the water being taken off; or make { $batches } times the batch.
sheet_time = time
sheet_uncertainty = uncertainty
sheet_until = until
sheet_weighed_for = weighed for { $kitchen }
sheet_weighs_well = It weighs well from { $batches } times the batch on.
sheet_yeast = Yeast, as instant dry yeast: { $percent }{ $range }
sheet_yeast_range = ({ $from } to { $to } as sources differ)

## The day

weekday_1 = Monday
weekday_2 = Tuesday
weekday_3 = Wednesday
weekday_4 = Thursday
weekday_5 = Friday
weekday_6 = Saturday
weekday_7 = Sunday
month_1 = January
month_2 = February
month_3 = March
month_4 = April
month_5 = May
month_6 = June
month_7 = July
month_8 = August
month_9 = September
month_10 = October
month_11 = November
month_12 = December
station_hands = hands
station_ring = ring
station_oven = oven
station_griddle = griddle
station_mixer = mixer
station_proofer = proofer
day_a_night_without_sleep = a night without sleep
day_all_day_in_the_kitchen = staying in the kitchen all day
day_an_oven = an oven
day_and = { $one } and { $other }
day_and_the = { $one } and the { $other }
day_asleep = asleep { $hours }
day_asleep_until = asleep until { $time }
day_assumed = { $what } (assumed)
day_at_hand = at hand for { $time } when nobody should be
day_being_back = being back at { $time }
day_bowls = { $count ->
    [one] { $many } bowl
   *[other] { $many } bowls
}
day_bowls_of = { $bowls } of { $size } or more
day_cannot_be = It cannot be had without: { $what }.
day_date = { $weekday } { $day } { $month }
day_decks = { $count ->
    [one] { $many } deck in the oven
   *[other] { $many } decks in the oven
}
day_drawn = The day, drawn
day_fixed_at = fixed at { $time }
day_fixed_not_after = fixed not after { $time }
day_fixed_not_before = fixed not before { $time }
day_fridge = fridge
day_fridge_room = { $room } in the fridge
day_getting_up = getting up at { $time }
day_hands = { $count ->
    [one] { $many } pair of hands
   *[other] { $many } pairs of hands
}
day_heat_oven = heat the oven
day_heat_the_oven = Heat the oven.
day_heat_the_oven_to = Heat the oven to { $heat }.
day_in = In { $kitchen }: { $what }.
day_in_the_fridge = { $room } free in the fridge
day_in_the_proofer = { $room } in the proofer
day_is_planned = Planned for the formula as written, in the kitchen of the book: what is set above does not change it. Times are planned, not measured: look at the dough, not at the clock. Never leave hot fat, and nothing on the heat when nobody is there.
day_legend = solid: work · striped: on the heat · open: by itself · dotted: hours left out
day_legend_fixed = wedge: fixed
day_missing = { $what } missing
day_on_the_table = On the table at { $time }
day_out = out { $hours }
day_out_only = being out only from { $from } to { $to }
day_out_until = out until { $time }
day_past_its_best = { $by } past its best after “{ $action }” of { $thing }
day_rings = { $count ->
    [one] { $many } ring
   *[other] { $many } rings
}
day_served_later = served { $by } later than wished, at { $time }
day_sleep_only = sleep only from { $from } to { $to }
day_soft = Take { $things } out of the fridge, to be soft in an hour.
day_take_out = take out the { $things }
day_the = the { $thing }
day_the_day = The day
day_until = until { $time }
day_what_is_done = What is done when for { $dishes }: solid is work, striped is heat, open is waiting
day_what_is_served = On the table: { $dishes }
day_what_to_do = What to do, by day and hour

## Paper

paper_card = recipe card
paper_sheet = formula sheet
paper_labels = draft labels
label_check = Draft: check it with your authority.
labels_of = { $what }: labels
