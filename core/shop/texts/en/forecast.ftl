# When hours run out, and hours that are counted, estimated or weighted.

first-unknown = by the calendar, pace unknown
pace-unknown = By the calendar: pace unknown.
likely-between = { $first }, likely { $likely } ({ $earliest } to { $latest })
likely-open = { $first }, likely { $likely } (not before { $earliest }, latest day not known)
hours-likely-between = hours likely { $likely } ({ $earliest } to { $latest })
hours-likely-open = hours likely { $likely } (not before { $earliest }, latest day not known)
weighted = weighted
ruler-weighted = Weighted: an hour counts { $weight } now, so { $meter } h on the meter, to { $at }.
ruler-weighted-past = Weighted: an hour counts { $weight } now.
ruler-counted = Counted from start and stop: at least { $least } h left, at most { $most } h.
ruler-estimated = Estimated: at least { $least } h left, likely { $likely } h, at most { $most } h; the least counts.
at-least-left = at least { $hours }
called-by-wrong-oil = called now: wrong oil
called-by-milky = called now: milky oil
called-by-burnt = called now: burnt oil
