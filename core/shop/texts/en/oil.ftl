# The oil of a unit: charts, balances, what they say.

part-oil = Oil
date-tick = { $day } { $mon }
key-pour = poured
key-ring = seen
key-figure = counts
key-struck = struck, does not count
chart-figures = The same figures as tables

oil-nothing-known = Nothing of its oil on record.
oil-too-little = Too little known of its oil use.
oil-no-balance = No balance is closed yet: a pour with a level after it closes one.
oil-before-records = In it since before records begin; { $poured } poured since.
oil-filled = Filled { $when } at { $hours } h; { $poured } poured since.
oil-filled-no-hours = Filled { $when }, hours then not said; { $poured } poured since.
oil-usual = Usual of this fill: about { $rate } mL/h.
oil-usual-line = usual { $rate } mL/h
oil-limit-is = { $mg } mg/m3 is { $limit } mL/h
oil-so-far-no-rate = From the last level, { $when }: { $volume } used since the last pour, too few hours for a rate; no pour closes it yet.
oil-so-far = From the last level, { $when }: { $volume } used since the last pour, about { $rate } mL/h so far; no pour closes it yet.
oil-so-far-rose = The last level, { $when }, stands higher than the one before; no pour closes it yet.
oil-rose = The level rose with no pour recorded, { $when }: ask, drain-check.
oil-rose-here = rose with no pour recorded: ask, drain-check
oil-lab = Laboratory
oil-lab-row = Bottle { $bottle }, drawn { $drawn }, { $hours } h on the oil
oil-lab-row-no-hours = Bottle { $bottle }, drawn { $drawn }, hours on the oil not said
oil-levels = Levels of the glass
oil-levels-up = glass
oil-middle-to = the middle, { $from } to { $to } %
oil-levels-say = Levels of the sight glass: { $levels ->
    [one] 1 level
   *[other] { $levels } levels
}, { $pours ->
    [0] no pour
    [one] 1 pour
   *[other] { $pours } pours
}. Last: { $last }. The middle is { $from } to { $to } %. The same figures stand as tables below.
oil-chart-filled = filled
oil-use = Oil use
oil-use-up = mL/h
oil-use-says = Oil use by running hours: { $count ->
    [one] 1 balance
   *[other] { $count } balances
}, the newest { $newest } mL/h. Limits: { $limits }. The same figures stand as tables below.
oil-what-level = level
oil-what-pour = pour
oil-what-filled = filled
oil-head-over = Over (h)
oil-head-used = Used
oil-head-rate = mL/h (band)

oil-times = { $times }x its usual
oil-times-since = { $times }x its usual since { $since }
oil-unknown-use = too little known
oil-over-limit = over the limit
oil-rate = about { $rate } mL/h
oil-over-middle = over the middle by { $percent } % = { $volume }
section-oil = Who's drinking oil?
none-oil = no alarm; an alarm needs a usual of its own or a balance over its limit
head-oil = Alarm
head-oil-rate = Oil use
nothing-word = nothing
oil-settling-here = the new fill settles, kept apart
