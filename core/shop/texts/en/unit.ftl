# One unit.

part-due = Due
part-defects = Open defects
part-hours = Hours
part-history = History
part-fluids = Fluids by month
part-papers = Papers with their dates, certificates
part-set = Truck and set

part-day = What it does from day to day
day-status-never = Nothing was ever said of what this unit does from day to day, so nobody expects a report of it.
day-status-say = Say what it does
day-status-now = (today)
day-status-from-day = from { $day }: { $status }
day-status-expected-at = out, expected at { $when }
day-status-what = It is
day-status-choose = choose
day-status-from = From which day
day-status-expected = Expected out at (only when it goes out; empty for the morning)
day-status-then = It holds until something else is said. Who is out is expected to report.
day-status-keep = Keep it
day-status-none = It was not said what the unit does. Nothing was recorded. Go back and choose.
day-status-no-day = It was not said from which day. Nothing was recorded. Go back and give the day.
day-status-not-out = Only a unit that goes out is expected at a time. Nothing was recorded. Go back and choose “out”, or leave the time empty.
told-no-defect = None found
do-certify = Certify
do-service = Service done
do-plan = Plan a visit
do-wait = Wait for part

outlets-named = Outlets LOCKED: { $outlets }
since-when = since { $when }
its-phone-heard = its phone { $phone } last heard { $when }
no-phone-wrote = no phone has written of it
reminder-gone = Reminder gone from the display by { $when }, no service recorded: ask.
no-open-defect = No open defect.
settle-it = Settle it
pages-of-part = Pages of { $part }
newer = Newer
older = Older
page-of = page { $page } of { $of }
the-shop = the shop

head-last-done = Last done
head-ruler = Hours and calendar
head-visit = Visit
head-figure = Figure
head-became = What became of it
head-from = From
head-kind = Kind
head-written-on = Written on, came
head-counts = Counts
head-month = Month
head-times = Times
head-hours = Hours
head-certified = Certified
head-in-words = In words
head-print = Print

never-done = never
ruler-hours = { $hours } h left of { $every } h, due at { $at } h
ruler-hours-past = { $hours } h past { $every } h, was due at { $at } h
ruler-hours-unknown = hours not known, of { $every } h
ruler-days = { $days ->
    [0] today, { $day }, is the last good day
    [one] 1 day left, last good day { $day }
   *[other] { $days } days left, last good day { $day }
}
ruler-days-past = { $days ->
    [one] 1 day past, last good day was { $day }
   *[other] { $days } days past, last good day was { $day }
}

hours-for-due = The due list counts { $hours } h.
hours-offset = Earlier meters: { $hours } h of them.
hours-between = at least { $low } h, likely { $likely } h, at most { $high } h
reading-accepted = counts
reading-unlike-this-unit = counts; much more than this unit runs in a day
reading-outvoted = struck: later readings agree against it
reading-above-ceiling = struck: more than the meter can have counted
reading-backwards = struck: it runs backwards
reading-slipped-back = not counted: 0.1 h less than before
reading-same-moment = struck: another figure of the same moment
reading-does-not-count = struck by the shop
reading-displaced = struck: the shop says that a later figure stands
reading-void = struck: taken back
reading-part-old-end = last figure of the old meter
reading-part-new-start = first figure of the new meter

entries-count = { $count ->
    [0] No entry yet.
    [one] 1 entry, nothing left out.
   *[other] { $count } entries, newest first, nothing left out.
}
who-with = { $who } with { $with }
came-itself = { $phone }, came { $when }
came-carried = { $phone }, came { $when } by { $by }
clock-off-by = {"; "}that phone's clock was off by { $off }
clock-ahead-by = {"; "}dated after it came: the clock it was signed by was off by { $off } or more; nothing is corrected
clock-off-between = {"; "}that phone's clock was moved: off by something from { $low } to { $high }; nothing is corrected
answers-count = { $count ->
    [one] 1 answer
   *[other] { $count } answers
}
walk-minutes = { $minutes } min
walk-quick = quick
walk-defects = defects: { $defects }
wait-over = no longer waited for

nothing-poured = Nothing poured on record.
poured-times = { $count ->
    [one] once
   *[other] { $count } times
}
pours-newest = The newest pours
no-certificate-yet = No certificate on record.
print-slip = Slip

truck-serial = Truck serial
truck-plate = Plate
truck-in-service = In service since
truck-has = Has
truck-valves = Valves
truck-reels = Reels
truck-hoses = Hoses
truck-set = Compressor set
no-set = none on record
set-serial = Set serial
set-delivery = Delivery
set-glass = Sight glass, 0 to 100 %
set-oil-volume = All the oil in it, filled to the middle
set-oil = Oil
set-weights = Weight of an hour by dust
