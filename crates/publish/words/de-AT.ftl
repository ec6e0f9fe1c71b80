# Was in Österreich anders heißt als in de.ftl; alles andere wird gesagt wie dort.

# CLDR, de-AT.
month_1 = Jänner
