# Where American English is spelt otherwise; all else is said as in en-GB.ftl.

allergen_molluscs = mollusks
allergen_sulphites = sulfites
caution_text_raw_egg = Cook through, to at least 71 °C in the middle of an egg dish; do not leave egg mixtures warm for more than two hours. Where egg stays raw, use pasteurized egg for infants, in pregnancy, in old age and with a weak immune system.
guidance_only = Guidance only: your local food rules and your own judgment come first.
nutrient_fibre = Fiber
spoons_and_cups_of = { $first } Cups and spoons are { $whose }, spooned and leveled: cup { $cup } ml, tablespoon { $tablespoon } ml, teaspoon { $teaspoon } ml.
