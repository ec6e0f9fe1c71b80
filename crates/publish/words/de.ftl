# Was veröffentlichte Seiten von sich sagen, auf Deutsch. Die Namen der Nachrichten und was in sie eingesetzt wird,
# sind dieselben wie in en-GB.ftl.

## Figures

figure_cup = Tasse
figure_cups = Tassen
figure_tablespoon = EL
figure_teaspoon = TL
figure_to = bis
about = etwa
at_least = mindestens
piece = Stück
pieces = Stück
spoons_metric = metrisch
spoons_australian = australisch
spoons_us_customary = US-Küchenmaß
spoons_us_label = US-Etikettenmaß
egg_whole = Ei
egg_wholes = Eier
egg_white = Eiweiß
egg_whites = Eiweiß
egg_yolk = Eigelb
egg_yolks = Eigelb
eggs_of_size = { $eggs }, Größe { $size }

## Sentences of the method

the_whole = { $stage }
part_of_the = { $stage }
a_side = je Seite { $time }
then = dann
until = bis
until_ripe = bis zur Reife
until_doubled = bis zum doppelten Volumen
until_trebled = bis zum dreifachen Volumen
until_risen_by_half = bis zum anderthalbfachen Volumen
until_risen_by = bis das Volumen um { $share } zugenommen hat
until_core = bis { $degrees } im Kern
until_at = bis { $degrees } erreicht sind
until_brix = bis { $degrees } °Brix
until_it_pours = bis zu einer Zähigkeit von { $viscosity } Pa·s

## What is done

action_weigh = abwiegen
action_prepare = vorbereiten
action_warm = erwärmen
action_melt = schmelzen
action_soak = quellen
action_scald = brühen
action_mix = mischen
action_knead = kneten
action_rest = ruhen
action_ferment = reifen
action_bulk = Stockgare
action_fold = falten
action_divide = abstechen
action_shape = formen
action_fill = füllen
action_proof = Stückgare
action_retard = kalte Gare
action_score = einschneiden
action_griddle = auf der Platte backen
action_bake = backen
action_fry = in Fett backen
action_boil = kochen
action_simmer = köcheln
action_reduce = einkochen
action_strain = passieren
action_cream = schaumig rühren
action_whip = aufschlagen
action_temper = temperieren
action_chill = kühlen
action_cool = auskühlen
action_hold = bereithalten
action_rewarm = aufwärmen
action_drain = abtropfen
action_glaze = bestreichen
action_dust = bestäuben
action_assemble = zusammensetzen
action_store = aufbewahren
action_serve = servieren

## What stages are

kind_preferment = Vorteig
kind_sponge = Hefevorteig
kind_poolish = Poolish
kind_biga = Biga
kind_levain = Sauerteig
kind_old_dough = Altteig
kind_soaker = Quellstück
kind_scald = Brühstück
kind_final_mix = Hauptteig
kind_inclusion = Einlage
kind_make_up = Aufarbeitung
kind_cooked = gekocht
kind_creamed = schaumig gerührt
kind_mixed = gemischt

## The head of a page

makes = Ergibt
each = Je Stück
raw = roh
done = fertig
serves = Portionen
hands_on = Handarbeit
at_the_heat = Ofen und Herd
start_to_table = Von Beginn bis Tisch
hands_on_part = Handarbeit
at_the_heat_part = Ofen und Herd
waiting = warten
course_caption = Von Beginn bis Tisch, jeder Schritt mit seiner längsten Zeit:

## What is needed

what_you_need = Was gebraucht wird
to_work_with = Geräte:
weights_first = Gewichte gehen vor.
spoons_first = Wo kein Löffel und keine Tasse passt, bitte wiegen.
spoons_and_cups_of = { $first } Tassen und Löffel: { $whose }, locker gefüllt und glatt gestrichen; Tasse { $cup } ml, Esslöffel { $tablespoon } ml, Teelöffel { $teaspoon } ml.

## Stages and the table

method = Zubereitung
batches = { $many } Durchgänge zu { $at_once }
the_formula = Die Rezeptur
formula_of = Rezeptur: { $component }
shares_of_flour = Prozente sind Anteile an allem Mehl, das 100 % ist.
ingredient = Zutat
percent_of_flour = % vom Mehl
total_grams = gesamt, g
total = Summe
prefermented_flour = Mehl im Vorteig
hydration_of_water = Wasser, nur Schüttwasser
hydration_of_all = Wasser, aus allen Zutaten
salt = Salz
sugars = Zucker
fat = Fett
egg_share = Ei
yeast_as_instant = Hefe, als Instanthefe
not_counted = nicht mitgezählt: { $ingredients }

## What to mind

to_mind = Zu beachten
contains = Enthält:
check_labels = Die Etiketten aller verwendeten Zutaten prüfen.
keeping = Aufbewahren
notes = Hinweise
guidance_only = Nur zur Orientierung: Das örtliche Lebensmittelrecht und das eigene Urteil gehen vor.
caution_raw_flour = Rohes Mehl und roher Teig
caution_text_raw_flour = Das Mahlen tötet keine Keime ab: rohen Teig nicht kosten, danach Hände und Arbeitsfläche waschen.
caution_raw_egg = Rohes Ei
caution_text_raw_egg = Durchgaren, Eierspeisen bis mindestens 71 °C im Kern; Eimassen nicht länger als zwei Stunden warm stehen lassen. Wo Ei roh bleibt, für Säuglinge, Schwangere, alte Menschen und bei geschwächter Abwehr pasteurisiertes Ei verwenden.
caution_honey = Honig
caution_text_honey = Nicht für Kinder unter zwölf Monaten, auch nicht gebacken.
caution_whole_nuts = Ganze Nüsse
caution_text_whole_nuts = An ganzen Nüssen können Kinder unter fünf Jahren ersticken; fein mahlen oder hacken.
caution_hot_sugar = Heißer Zucker
caution_text_hot_sugar = Kochender Sirup haftet und verbrennt tief: Kinder fernhalten, kaltes Wasser bereitstellen, eine Verbrennung 20 Minuten unter fließendem Wasser kühlen.
caution_hot_fat = Heißes Fett
caution_text_hot_fat = Den Topf höchstens zu einem Drittel füllen, Wasser fernhalten, nie allein lassen; raucht oder brennt es, die Hitze abstellen und den Deckel auflegen. Heiß nicht bewegen.
caution_held_warm = Warm gehalten und aufgewärmt
caution_text_held_warm = Heiße Speisen bei mindestens 57 °C halten. Rasch und nur einmal durchwärmen, bis 74 °C im Kern, wenn sie danach heiß gehalten werden. Örtliche Vorschriften können mehr verlangen.
caution_alcohol = Alkohol
caution_text_alcohol = Enthält Alkohol, der nicht ganz verkocht: Gästen sagen, für Kinder weglassen.

## Allergens

allergen_wheat = Weizen
allergen_rye = Roggen
allergen_barley = Gerste
allergen_oats = Hafer
allergen_crustaceans = Krebstiere
allergen_eggs = Eier
allergen_fish = Fische
allergen_peanut = Erdnüsse
allergen_soy = Sojabohnen
allergen_milk = Milch
allergen_almond = Mandeln
allergen_hazelnut = Haselnüsse
allergen_walnut = Walnüsse
allergen_cashew = Kaschunüsse
allergen_pecan = Pecannüsse
allergen_brazil_nut = Paranüsse
allergen_pistachio = Pistazien
allergen_macadamia = Macadamianüsse
allergen_pine_nut = Pinienkerne
allergen_celery = Sellerie
allergen_mustard = Senf
allergen_sesame = Sesamsamen
allergen_sulphites = Sulfite
allergen_lupin = Lupinen
allergen_molluscs = Weichtiere

## A serving, and the foot

in_a_serving = In einer Portion
serving_size = Eine von { $servings } Portionen von allem, etwa { $weight }
serving_from_tables = Aus Nährwerttabellen berechnet, zur Orientierung: kein Etikett.
energy = Energie
nutrient_fat = Fett
nutrient_saturates = davon gesättigte Fettsäuren
nutrient_carbohydrate = Kohlenhydrate
nutrient_sugars = davon Zucker
nutrient_fibre = Ballaststoffe
nutrient_protein = Eiweiß
nutrient_sodium = Natrium
tasted_blind = Blind verkostet
the_evidence = Der Beleg
goes_into = Kommt vor in
from = Aus
figures_after = Wasser, Zucker, Fett und Dichten der Zutaten nach:

## The book and its lists

book = Buch
in_other_languages = In anderen Sprachen
language_name = Deutsch
learnt_of = { $count ->
    [one] mit { $called } aus { $trials } Versuch
   *[other] mit { $called } aus { $trials } Versuchen
}
learnt_times = Zeiten { $each } in der eigenen Küche.
lists = Listen
formulas = Rezepte
formulas_counted = { $count ->
    [one] { $formulas } Rezept
   *[other] { $formulas } Rezepte
}
all_formulas = Alle Rezepte
by_tag = Nach Stichwort
by_ingredient = Nach Zutat
formulas_by_tag = Rezepte nach Stichwort
formulas_by_ingredient = Rezepte nach Zutat
no_tag_yet = Noch hat kein Rezept ein Stichwort.
no_ingredient_yet = Noch hat kein Rezept eine Zutat.
find_by = Nach Titel, Stichwort oder Zutat suchen
found = { $found } von { $all }
so_long_to_table = { $time } von Beginn bis Tisch

## The reader's controls

fit_to_your_kitchen = An die eigene Küche anpassen
fit_it = An die eigene Küche anpassen
across_the_room = Groß, zum Lesen von weitem
keep_the_screen_on = Bildschirm anlassen
as_published = Wie veröffentlicht
by_the_clock = Nach der Uhr
how_much = Wie viel
how_many = Wie viele: { $pieces }
each_raw_grams = Je Stück roh, g
times_the_recipe = Rezept mal
my_tin = Meine Form
as_written = wie im Rezept
oblong = rechteckig
round_tin = rund
by_volume = nach Inhalt
long_cm = Länge, cm
wide_cm = Breite, cm
across_cm = Durchmesser, cm
high_cm = Höhe, cm
holds_ml = Inhalt, ml
how_many_tins = Wie viele Formen
measures = Maße
amounts = Mengen
grams = Gramm
cups_and_spoons = Tassen, Löffel
whose_cups = Welche Tassen
degrees = Grad
both_degrees = °C und °F
my_eggs = Meine Eier
size = Größe { $size }
american_size = US { $size }
my_flour = Mein Mehl
protein_of_the_bag = Eiweiß laut Packung, je 100 g. Die Flüssigkeit folgt; etwas davon zurückhalten und nach dem Teig urteilen.
room_and_clock = Raum und Uhr
my_room = Mein Raum
as_the_method_says = wie im Rezept
served_at = Auf dem Tisch um
or_begun_at = oder Beginn um
what_raises_it = Was den Teig treibt
as_the_formula_says = wie im Rezept
to_mind_here = Zu beachten:
not_kept = Nicht gleich bleibt:
way_yeast = Hefe statt Sauerteigkultur: { $stage }
way_culture = { $culture } statt Hefe: { $stage }
way_straight = direkt: ohne { $stage }, alles auf einmal gemischt
way_allergen = ein Allergen kommt hinzu: { $allergens }
way_acid_comes = die Säure: Sauerteig säuert die Krume und hält sie länger frisch, ein Hefevorteig nicht
way_acid_goes = die Säure: Was die Bakterien der Kultur säuern, fehlt, und damit etwas Geschmack und Frische
way_yeast_stays = der Teig behält seine eigene Hefe, die weiter am meisten treibt
way_culture_alone = nur noch die Kultur treibt den Teig: nach ihrer Reife nehmen, nicht nach der Uhr
way_culture_unfed = eine Kultur, die hier nicht mehr gefüttert wird, muss für sich gefüttert werden
way_hours_gone = was die Stunden des Vorteigs geben: Geschmack, Säure und gequollenes Mehl
way_culture_unbuilt = die Kultur wird nicht mehr aufgebaut: so wenig davon treibt einen Teig langsam, wenn überhaupt
way_yeast_unbuilt = die Hefemenge bleibt gleich; im Vorteig hätte sie sich schon vermehrt
way_nothing_kept = es wird nichts mehr zurückbehalten: die Kultur für sich füttern
way_flour_of_culture = { $weight } des Mehls kommen nun aus der Kultur: { $flour }

## What the scripts say

told_for = Angepasst an: { $what }.
so_many_times = { $times }-fache Menge
a_tin_of = eine Form von { $litres } l
a_room_of = einen Raum von { $degrees }
of_protein = { $flour } mit { $percent } % Eiweiß
eggs_like = Eier der Größe { $size }
whose_cups_and_spoons = Tassen und Löffel ({ $whose })
times_are_foreseen = Die Zeiten sind vorausberechnet, nicht gemessen: nach dem Aussehen des Teigs urteilen.
times_of_the_batch = Sie gelten für die Menge im Rezept; eine größere folgt dem Raum langsamer.
day_of_serving = Am Tag selbst
days_before = { $count ->
    [one] Am Tag davor
   *[other] { $days } Tage davor
}
so_long_before = { $time } davor
serving = Auf dem Tisch
served_then = { $time } auf dem Tisch
have_ready = bereithalten: { $what }
beat_eggs = { $whole } verquirlen, { $weight } abwiegen, { $left } bleiben übrig
foreseen_at = Bei { $degrees }
foreseen_kept_at = Bei { $degrees }, unabhängig vom Raum
foreseen_never = { $place }: voraussichtlich nie so weit. Einen wärmeren Platz suchen.
foreseen_ripe = { $place }: reif nach { $from } bis { $to }{ $says }.
foreseen_after = { $place }: nach { $after }, zwischen { $from } und { $to }{ $says }.
method_says = ; im Rezept steht { $time }
liquid_alone_cannot = Bei { $room } im Raum reicht { $liquid } allein nicht, um die Teigtemperatur zu treffen: noch mehr wärmen oder kühlen.
liquid_at = Bei { $room } im Raum { $liquid } mit { $degrees } verwenden, um die Teigtemperatur zu treffen.{ $hot }
liquid_too_hot = Zu heiß, um allein auf die Hefe zu treffen.
timer = Wecker
timers = Wecker
timer_of = Wecker: { $time }
time_is_up = Zeit: { $step }
stop = Aus
step = Schritt
previous = Zurück
next = Weiter
back_to_the_page = Zur Seite

## Labels

# Die Wörter der Verordnung (EU) Nr. 1169/2011 in ihrer deutschen Fassung, aus dem Gedächtnis: Art. 18 (Zutaten),
# Anhang X (Daten), Anhang XIII (Referenzmenge), Anhang XV (Nährwertdeklaration).
label_ingredients = Zutaten:
label_in_all = Insgesamt:
label_use_by = Zu verbrauchen bis
label_best_before = Mindestens haltbar bis
label_best_before_end = Mindestens haltbar bis Ende
label_day_and_month = Tag und Monat
label_month_and_year = Monat und Jahr
label_year = Jahr
label_days = { $count ->
    [one] { $days } Tag
   *[other] { $days } Tage
}
label_from_packing = { $time } ab Verpacken
label_draft = Entwurf
label_gap = Lücke
label_nutrition = Nährwertdeklaration
label_per_100_g = je 100 g
label_per_portion = je Portion ({ $portion })
label_of_intake = % RM*
label_intake = Referenzmenge für einen durchschnittlichen Erwachsenen (8400 kJ/2000 kcal).
label_energy = Energie
label_fat = Fett
label_saturates = davon gesättigte Fettsäuren
label_carbohydrate = Kohlenhydrate
label_sugars = davon Zucker
label_fibre = Ballaststoffe
label_protein = Eiweiß
label_salt = Salz

## The formula sheet

percent_of_its_flour = % vom eigenen Mehl
sheet_as_weighed = Wie die Waagen es zeigen: { $shifts }.
sheet_at = bei
sheet_do = Arbeit
sheet_flour = Mehl insgesamt { $flour }, davon im Vorteig { $prefermented }; Eiweiß des Mehls { $protein }
sheet_goes_on = { $mixed } gemischt, davon gehen { $made } weiter
sheet_hydration = Wasser: { $nominal } nur Schüttwasser, { $all } mit dem Wasser aus Milch, Ei, Butter und allem anderen
sheet_little = { $ingredient }: { $mass } sind wenig für eine Waage mit Schritten von { $step } (Standardunsicherheit ±{ $uncertainty }).
sheet_losses = { $mixed } gemischt, { $raw } roh nach { $make_up } Verlust beim Aufarbeiten, { $done } fertig nach { $bake } Backverlust
sheet_makes = Ergibt { $what }
sheet_note = Hinweis
sheet_overall = Gesamtrezeptur
sheet_overall_of = Gesamtrezeptur: { $what }
sheet_pieces_of = { $pieces } zu { $mass }
sheet_process = Ablauf
sheet_scale_shows = Waage zeigt
sheet_shares = Salz { $salt }, Zucker { $sugars }, Fett { $fat }, Ei { $egg }, Milchtrockenmasse { $milk_solids }
sheet_shift = { $ingredient } { $weighed } statt { $wanted }
sheet_silenced = Bewusst abweichend, { $rule } ({ $reason }).
sheet_spoon = Mit dem Löffel: { $measure } ({ $off } daneben, Löffel weichen um ±{ $spread } voneinander ab).
sheet_stage = Stufe
sheet_stir = { $weigh } in { $water } des Wassers rühren und davon { $take } nehmen, das Wasser darin abziehen; oder die { $batches }-fache Menge machen.
sheet_time = Zeit
sheet_uncertainty = Unsicherheit
sheet_until = bis
sheet_weighed_for = Küche: { $kitchen }
sheet_weighs_well = Ab der { $batches }-fachen Menge lässt es sich gut wiegen.
sheet_yeast = Hefe, als Instanthefe: { $percent }{ $range }
sheet_yeast_range = ({ $from } bis { $to }, je nach Quelle)

## The day

# Namen der Tage und Monate nach CLDR.
weekday_1 = Montag
weekday_2 = Dienstag
weekday_3 = Mittwoch
weekday_4 = Donnerstag
weekday_5 = Freitag
weekday_6 = Samstag
weekday_7 = Sonntag
month_1 = Januar
month_2 = Februar
month_3 = März
month_4 = April
month_5 = Mai
month_6 = Juni
month_7 = Juli
month_8 = August
month_9 = September
month_10 = Oktober
month_11 = November
month_12 = Dezember
station_hands = Hände
station_ring = Kochstelle
station_oven = Ofen
station_griddle = Backplatte
station_mixer = Knetmaschine
station_proofer = Gärschrank
day_a_night_without_sleep = eine Nacht ohne Schlaf
day_all_day_in_the_kitchen = den ganzen Tag in der Küche
day_an_oven = ein Ofen
day_and = { $one } und { $other }
day_and_the = { $one } und { $other }
day_asleep = Schlaf { $hours }
day_asleep_until = Schlaf bis { $time }
day_assumed = { $what } (angenommen)
day_at_hand = { $time } in der Küche, wenn niemand da sein sollte
day_being_back = Rückkehr um { $time }
day_bowls = { $count ->
    [one] { $many } Schüssel
   *[other] { $many } Schüsseln
}
day_bowls_of = { $bowls } ab { $size }
day_cannot_be = Nicht zu haben ohne: { $what }.
day_date = { $weekday }, { $day }. { $month }
day_decks = { $count ->
    [one] { $many } Etage im Ofen
   *[other] { $many } Etagen im Ofen
}
day_drawn = Der Tag als Zeichnung
day_fixed_at = festgelegt auf { $time }
day_fixed_not_after = festgelegt: nicht nach { $time }
day_fixed_not_before = festgelegt: nicht vor { $time }
day_fridge = Kühlschrank
day_fridge_room = { $room } im Kühlschrank
day_getting_up = Aufstehen um { $time }
day_hands = { $count ->
    [one] { $many } Paar Hände
   *[other] { $many } Paar Hände
}
day_heat_oven = Ofen vorheizen
day_heat_the_oven = Den Ofen vorheizen.
day_heat_the_oven_to = Den Ofen auf { $heat } vorheizen.
day_in = { $kitchen }: { $what }.
day_in_the_fridge = { $room } frei im Kühlschrank
day_in_the_proofer = { $room } im Gärschrank
day_is_planned = Geplant für das Rezept, wie es geschrieben ist, in der Küche des Buchs: Was oben eingestellt wird, ändert daran nichts. Die Zeiten sind geplant, nicht gemessen: auf den Teig schauen, nicht auf die Uhr. Heißes Fett nie allein lassen und nichts auf dem Feuer, wenn niemand da ist.
day_legend = gefüllt: Arbeit · gestreift: am Feuer · offen: von selbst · gepunktet: ausgelassene Stunden
day_legend_fixed = Keil: festgelegt
day_missing = es fehlt: { $what }
day_on_the_table = Auf dem Tisch um { $time }
day_out = außer Haus { $hours }
day_out_only = außer Haus nur von { $from } bis { $to }
day_out_until = außer Haus bis { $time }
day_past_its_best = { $thing }: { $by } über den besten Zeitpunkt nach „{ $action }“
day_rings = { $count ->
    [one] { $many } Kochstelle
   *[other] { $many } Kochstellen
}
day_served_later = { $by } später auf dem Tisch als gewünscht, um { $time }
day_sleep_only = Schlaf nur von { $from } bis { $to }
day_soft = { $things } aus dem Kühlschrank nehmen, damit es in einer Stunde weich ist.
day_take_out = { $things } herausnehmen
day_the = { $thing }
day_the_day = Der Tag
day_until = bis { $time }
day_what_is_done = Was wann getan wird für { $dishes }: gefüllt ist Arbeit, gestreift Hitze, offen Warten
day_what_is_served = Auf dem Tisch: { $dishes }
day_what_to_do = Was zu tun ist, nach Tag und Stunde

## Paper

paper_card = Rezeptkarte
paper_sheet = Rezepturblatt
paper_labels = Etiketten, Entwurf
label_check = Entwurf: bei der zuständigen Behörde prüfen.
labels_of = { $what }: Etiketten
