# When hours run out, and hours that are counted, estimated or weighted.

first-unknown = by the calendar, pace unknown
pace-unknown = By the calendar: pace unknown.
likely-between = { $first }, likely { $likely } ({ $earliest } to { $latest })
likely-open = { $first }, likely { $likely } (not before { $earliest }, latest day not known)
hours-likely-between = hours likely { $likely } ({ $earliest } to { $latest })
hours-likely-open = hours likely { $likely } (not before { $earliest }, latest day not known)
likely-gone-by = { $said }, gone by with no hours told since
weighted = weighted
ruler-weighted = Weighted: an hour counts { $weight } now, so { $meter } h on the meter, to { $at } h.
ruler-weighted-past = Weighted: an hour counts { $weight } now.
ruler-counted = Counted from start and stop: at least { $least } h left, at most { $most } h.
ruler-estimated = Estimated: at least { $least } h left, likely { $likely } h, at most { $most } h; the least counts.
at-least-left = at least { $hours }
called-by-wrong-oil = called now: wrong oil
called-by-milky = called now: milky oil
called-by-burnt = called now: burnt oil

other-meters = Other meters
other-meters-apart = They feed no clock of the compressor.
meter-total = { $hours } h through all its meters
hours-unsure-runs = { $count ->
    [one] Of 1 run one end is missing: the upper bound counts.
   *[other] Of { $count } runs one end is missing: the upper bound counts.
}
hours-still-runs = Started { $when } and no stop on record: it counts on until somebody stops it.
hours-up = hours
hours-say = Hours as read: { $count } figures that count, { $struck } struck; the newest that counts { $newest } h. The same figures stand in the table below.
feed-likely = { $unit }: { $task }, hours likely run out
feed-called = { $unit }: { $task }, the oil calls for it
feed-by-pace = The hours of the meter likely run out on this day at the pace of the last weeks. It moves with the pace.

rules-say = Figures by the rules
rules-only-shown = Shown side by side. They decide nothing here; the defect's own words stand.
rule-no-verdict = no verdict, { $limit }: { $rule }
fact-cut-out = the governor's cut-out
fact-reservoir-share = the reservoirs' volume
fact-mawp = the receiver's greatest working pressure
fact-vehicles = the number of vehicles
