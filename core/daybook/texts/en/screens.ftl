# Screens: main buttons, why they do not take a tap yet, headings and strips.

# Main buttons
main-start-pre-trip = Start pre-trip, { $door }
main-go-on = Go on, stop { $stop }
main-go-on-begun = Go on with the pre-trip
main-take-over = Take over { $door }: short pre-trip
main-still-as-shown = Still { $percent } %, as shown
main-report-end-of-day = Report end of day
main-read-and-reviewed = Read and reviewed
main-read-road-stays-locked = Read. No certificate: ROAD stays locked
main-read-air-stays-locked = Read. No certificate: AIR stays locked
main-read-both-stay-locked = Read. No certificate: ROAD and AIR stay locked
main-all-ok = { $lines ->
    [one] Looked at: OK
   *[other] All { $lines } looked at: OK
}
main-other-ok = { $lines ->
    [one] The other one OK
   *[other] Other { $lines } OK
}
main-next-stop = Go on, stop { $stop }
main-to-signature = To the signature
main-keep-level = Keep { $level }
main-add-pour = Add a pour
main-finish-top-up = Cap tight: finish
main-told-shop = Told the shop
main-keep-note = Keep what it shows
main-give-hours = { $figure } h
main-yes-it-reads = Yes, it reads { $figure } h
main-keep-with-photo = Keep { $figure } h with a photo
main-type-hours = Type the hours
main-sign-end-of-day = Sign end of day
main-try-shop = Try the shop now

# Why not yet
why-not-more-below = { $left ->
    [one] 1 more below
   *[other] { $left } more below
}
why-not-just-opened = Just opened
why-not-figure-missing = { $item } wants its figure first.
why-not-sign-missing = Two signs first.
why-not-drum-not-read = Read the drum's label first.
why-not-oil-may-not-meet = Not this unit's oil. Do not pour; call.
why-not-defects-not-said = Say which defects were found, or that none was.
why-not-level-not-given = Drag to where the oil stands.
why-not-running = Never while it runs. Stop it and wait.
why-not-already-told = The shop was told.
why-not-nothing-typed = Type what the meter shows.

sign-missing-gauge-zero = The gauge does not read 0 yet.
sign-missing-blow-down-silent = Blow-down has not ended.
sign-missing-both = The gauge at 0 and blow-down silent, both, before the cap.

# News
news-heard = Shop last heard from: { $when }
news-never = Shop never heard from on this phone
news-old = This news is old. A lock may not be known here: call the yard.
counts-on-phone = { $count ->
    [one] 1 entry only on this phone
   *[other] { $count } entries only on this phone
}
where-on-phone = On this phone
where-at-shop = At the shop
where-aside = Set aside by the shop
where-tried = Tried { $when }
where-tried-why = Tried { $when }, { $why }
tried-no-signal = no signal
tried-other-shop = another shop answered
tried-said-no = the shop said no
tried-other = its answer could not be used
where-again = Again at { $when }
where-empty = Nothing recorded yet.

# Today
today-empty = No unit yet: scan the door tag or type its number.
pre-trip-not-started = Pre-trip: not started
pre-trip-under-way = Pre-trip: at stop { $stop }, { $answered } answered
pre-trip-covers = Pre-trip: { $by }, { $when }
pre-trip-ended = Day ended: { $by }, { $when }
expected-out = Due out { $when }
became-title = What became of what you told
became-not-yet-at-shop = Not yet at the shop: only on this phone
became-at-shop = The shop has it
became-visit = In the shop on { $day }
became-waiting-for-part = Waiting for part: { $part }
became-waiting-promised = Waiting for part: { $part }, promised { $day }

# What was scanned instead of a door tag or a drum's label
scan-other-fleet = That is another fleet's door tag. Nothing was opened. Type the number of a unit of yours.
scan-not-here = That tag is { $said }, of your fleet, and this phone does not know that truck. Nothing was opened. Exchange with the shop, then scan it again.
scan-other-truck = That tag was printed for another truck, one that was { $said } before. Nothing was opened. Look at the number on the door and type it.
scan-drum-label = That is a drum's label. Nothing was opened. Scan the tag on the door, or type its number.
scan-shop-code = That is the shop's code for a new phone, and this phone is in already. Nothing was changed.
scan-no-tag = That says { $said }, and no unit here is called so. Nothing was opened. Type the number.
scan-door-tag = That is a unit's door tag, not a drum's label. Nothing was changed. Scan the drum, or say what its label says.
drum-unknown = its label says nothing known here

# Unit and last report
unit-left-by = { $by } left ({ $when })
unit-no-programme = No programme set
unit-unlike = Unlike { $usual }
unit-only-here = only here
unit-not-here = not here
unit-notes-open = { $count ->
    [one] 1 display note is open
   *[other] { $count } display notes are open
}
unit-higher-used = The higher figure is used until the shop settles it.
site-said = Site today: { $dust }, { $when }, { $by }
report-none-found = No defect listed in the last report, { $when }.
report-none-held = No report on this phone.
unit-known-since = Nothing known of { $door } before { $day }.
unit-nothing-known = Nothing known of { $door } on this phone.
lock-only-here = { $parts } locked on this phone; the shop does not know yet. Call.
report-listed = { $count ->
    [one] 1 defect listed
   *[other] { $count } defects listed
}
report-no-certificate = no certificate

# Walk
stop-of = { $index } / { $of }
stop-answered-together = { $lines } answered together after { $seconds } s on screen
stop-open-since = Open since { $when }. Still so?
stop-open-since-part = Open since { $when }, part on hold. Still so?
stop-by-other = { $by }, { $when }
step-said = Said { $when } by { $by }
step-said-not-so = Said { $when } by { $by }: { $word }
steps-skipped = Not so, and gone on from
mark-to-come = to come
mark-done = done
mark-defect = defect
mark-could-not-check = could not check
mark-by-other = done by someone else

# The sound of a defect
sound-record = Sound
sound-choose = Choose a sound
sound-stop = Stop here
sound-listen = Listen
sound-stop-listening = Stop listening
sound-take-away = Take the sound away
sound-goes-with-it = A sound goes with it
sound-recording = { $seconds ->
    [one] Recording: 1 second left
   *[other] Recording: { $seconds } seconds left
}
sound-stand-clear = Stand clear of what turns. Hold the phone still; go no nearer for the noise.
sound-of-defect = Sound of the defect
sound-not-here = A sound was recorded. It is not on this phone.

# Sight glass
level-not-given = Sight glass, level not given
level-below-view = below view
level-under = under the middle by { $percent } %
level-middle = in the middle
level-over = over the middle by { $percent } %
level-above-view = above view
level-rose = It rose and no pour is recorded. Was something poured?
wait-enough = Stopped { $minutes } min, timed
wait-said = Stopped at least 5 minutes, said
wait-too-short = Stopped too short: { $left } s left. Read now, it is kept out of balances.
wait-ask = Stopped at least 5 minutes?
running-since = Started { $when }, no stop recorded

# Display, hours, end of day
display-no-words = Your shop has set no words for this. Call if in doubt.
display-stopped-again = It stopped by itself { $count ->
    [one] once
   *[other] { $count } times
} today.
ack-told = told the shop
ack-seen = only seen
ack-before-note = dated before the note, not counted
ack-told-here = "Told" means that you told a person; the note itself is on this phone.
hours-first = First reading
hours-counted = Counted here from start and stop
hours-ceiling = at most { $figure } h
asked-fits = Nothing to ask.
asked-above-ceiling = The meter can read at most { $ceiling } h now, and { $figure } h is more.
asked-backwards = It showed { $last } h before, and { $figure } h is less.
asked-slipped-back = 0.1 h less than before: kept aside, nothing to ask.
asked-unlike-this-unit = { $rise } h more a day. Seldom above { $seldom } h a day. Is { $figure } h right?
notice-no-pre-trip = No pre-trip covers today. Sign all the same.
notice-air-still-on = Air was started and no stop is recorded. Leaving steps first.
end-none-found = None found
end-covers = covers { $from } to { $to }

# Forecast, wear
forecast-likely = At this pace likely { $likely }, between { $earliest } and { $latest }.
forecast-open = At this pace likely { $likely }, not before { $earliest }; the latest day cannot be told.
forecast-gone-by = That day has gone by, and no hours that count were told since.
forecast-unknown = Pace unknown: by the calendar.
pace-a-day = about { $hours } h a day
hours-weighted = { $left } weighted h left: about { $meter } h on the meter as it runs now, at { $due } h
hours-weigh-now = an hour counts { $weight } now
hours-left-counted = counted: at least { $least } h left, at most { $most } h
hours-left-estimated = estimated: at least { $least } h left, likely { $likely } h, at most { $most } h; the least counts
hours-counted-between = counted: at least { $low } h, at most { $high } h
hours-estimated = estimated: low { $low } h, likely { $likely } h, high { $high } h; the high one counts
called-wrong-oil = Due now: another or an unknown oil was poured.
called-milky = Due now: milky oil was seen.
called-burnt = Due now: burnt oil was seen.

# Where the oil goes
oil-used = used { $volume } in { $hours } h: about { $rate } mL/h
oil-used-no-rate = used { $volume } in { $hours } h: too few hours for a rate
oil-used-between = between { $least } and { $most } mL/h by two readings of the glass
oil-carried-over = { $volume } over the middle, carried to the next
oil-carried-under = { $volume } under the middle, carried to the next
oil-settling = The new fill settles: kept apart.
oil-corrected = Read hot and corrected.
oil-filled-at = filled { $when } at { $hours } h
oil-poured-since = { $volume } poured since
oil-usual-rate = usual of this fill: about { $rate } mL/h
oil-span = { $from } to { $to }
oil-use-more = Using { $times }x its usual since { $since }. Look at separator, scavenge line, leaks.
oil-use-more-unknown = Using more than its usual since { $since }, by how much is not known. Look at separator, scavenge line, leaks.
oil-use-less-unknown = Using less than its usual since { $since }, by how much is not known. Look for water, or a pour nobody wrote down.
oil-use-less = Using { $times }x its usual since { $since }. Look for water, or a pour nobody wrote down.
oil-verdict-under = under the limit of { $limit } mL/h
oil-verdict-over = over the limit of { $limit } mL/h
oil-verdict-too-few-hours = too few hours for a verdict
oil-verdict-band-too-wide = the glass is too coarse for a verdict over so few hours
oil-verdict-glass-unknown = no verdict: the glass's volume is not known
oil-verdict-settling = no verdict: the fill settles
oil-verdict-load-share-unknown = not over { $limit } mL/h, the limit at full delivery; less air was made, so no verdict without a load share
oil-verdict-less-than-nothing = no verdict: less than nothing was used. A level read hot, or a pour nobody wrote down?
oil-air-at-least = at least { $mg } mg/m3 of oil in the air
oil-air-about = about { $mg } mg/m3 of oil in the air, by the shop's load share
oil-class = ISO 8573-1 oil class { $class }
oil-class-or-worse = ISO 8573-1 oil class { $class } or worse
oil-class-x = ISO 8573-1 oil class X: more than 5 mg/m3
oil-astray = { $volume } poured is not in the glass. Another unit, spilt, or a leak?
oil-astray-more = The glass shows { $volume } more than was poured. Was something else poured?
lab-other-fill = of an earlier fill: not about what is in there now
lab-answered = Laboratory, bottle { $bottle }, drawn { $when }: '{ $words }'
rule-is-at-most = at most { $limit }
rule-is-less-than = less than { $limit }
rule-is-at-least = at least { $limit }
rule-is-more-than = more than { $limit }
rule-is-within = from { $limit }
figure-over = { $figure } { $said }. So this is a defect: say what is wrong, or go back and run the test again.
rule-kept = keeps the rule, { $limit }: { $rule }
rule-not-kept = breaks the rule, { $limit }: { $rule }
rule-missing = no verdict by { $rule }: { $fact } is not known
leak-scaled = scaled to 60 s: run it again to certify

# A set that is laid up
lay-up-since = Laid up since { $when }
lay-up-by = by { $by }
lay-up-hours = at { $hours } h
lay-up-clocks = Laid up since { $when }; its clocks ran on.
lay-up-air = No air until every line is done or waived by name. The road is not locked by it.
return-list = List before it returns
return-list-stands-on = Common practice, no source. The maker's manual comes first, and its own list goes beside this one.
return-lines-open = { $open ->
    [0] every line answered
    [one] 1 line of { $of } open
   *[other] { $open } lines of { $of } open
}
return-how-done = done
return-how-waived = waived
return-how-open = open
