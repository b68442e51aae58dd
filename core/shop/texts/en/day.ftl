# The day sheet.

known-at = as known at { $when }, yard time { $zone }
standing-open = open
standing-now = worked out now, after its closing
standing-version = version { $version }, closed
view-morning = 06:00 view
view-evening = 17:00 view
day-before = Day before
day-after = Day after
close-as = Close as version { $version }
versions = { $count ->
    [one] Closed once
   *[other] Closed { $count } times
}
version-closed = Version { $version }, as known at { $when }, closed by { $by }
as-known-now = As known now
came-in-show = new since { $when }: show
sign-the-next = Sign the next
printed-at = Printed { $when }

first-title = Three things first
first-units = Bring in units, or type one
first-people = Add people
first-phone = No phone added yet: add one

phones-none = No phone added yet.
phones-heard = Phones: { $heard } of { $of } heard from since { $since }.
phones-not-heard = Not heard: { $phones }.
phone-since = { $phone }, since { $when }
phone-never = { $phone }, never
phone-never-since = { $phone }, never since it was added { $when }
phone-added = { $phone }, { $when }
phones-just-added = Added and not heard from yet: { $phones }.

sentence-none-expected = No unit is expected out.
sentence-reported = { $done } of { $of } expected out have reported
sentence-not-reported = not reported: { $units }
sentence-due-out = { $unit } is due out { $when }
sentence-due-again = { $unit } is due out again { $when }
sentence-locks = { $count ->
    [0] No lock-out on record
    [one] One lock-out
   *[other] { $count } lock-outs
}
sentence-against = { $count ->
    [one] used against once
   *[other] used against { $count } times
}
sentence-nobody-knew = before either could know
sentence-no-lock-known = No lock-out on record as known at { $when }.
sentence-not-out = Not to go out: { $units }.
sentence-air-locked = Air or an outlet locked: { $units }.
sentence-inspection-over = Annual inspection ran out: { $units }.
sentence-certify = { $count ->
    [0] No certificate to sign.
    [one] One certificate to sign.
   *[other] { $count } certificates to sign.
}
sentence-yesterday-open = Yesterday is not closed.
sentence-yesterday-late = { $count ->
    [0] Nothing came late for yesterday.
    [one] One entry came late for yesterday; its newest version is { $version }.
   *[other] { $count } entries came late for yesterday; its newest version is { $version }.
}

# Sections, in their order
section-happened = It happened
section-without = Used without a pre-trip
section-against = Used against a lock-out
section-not-reported = Not reported, of { $of } expected out
section-defects = New defects, worst first
section-locked = Locked now
section-locked-then = Locked at the end of that day
section-due = Past due, due, coming up
section-due-today = Past due, due today
section-reminders = Reminders and other display notes
section-top-ups = Top-ups
section-settle = To settle
section-aside = Set aside
section-late = Came in late, after this day's first closing
section-ahead = Dated after they came: a clock is ahead
since-ahead = { $when }, dated after it came
section-not-out = Locked: road, air or an outlet
section-certify = Certificates to sign
section-expected = Expected out
section-bays = In the bays today
section-phones = Phones not heard from in 24 h
section-late-yesterday = Came late for { $day }

none-recorded = none recorded
none-disputed = nothing is disputed
none-aside = Nothing is set aside.
none-late = nothing came late
none-due = nothing past due, due or coming up
papers-near = { $count ->
    [one] 1 paper ran out or does within 30 days
   *[other] { $count } papers ran out or do within 30 days
}
none-to-certify = none waits for a certificate
none-planned = none planned
all-heard = all heard from
entered-twice = Entered twice
all-of = all { $count }
reported-all = { $count } reported

# What happened
happened-hurt = somebody hurt
happened-spill = spill
happened-hit = something hit
happened-other = other
photos-count = { $count ->
    [one] one photo
   *[other] { $count } photos
}
not-so = not so

# Heads
head-where = Where
head-how-much = How much, what
head-told-whom = Told whom
head-unit = Unit
head-first-use = First use
head-what = What
head-who = Who
head-pre-trip-came = Pre-trip came
head-reason = Reason typed
head-lock = Lock
head-used = Used
head-driver = Driver
head-could-know = Could they know?
head-expected = Expected
head-its-phone = Its phone
head-last-heard = Last heard
head-day = Day
head-one-answer = One answer
head-other-answer = The other answer
head-locks = Locks
head-photo = Photo
head-photo-sound = Photo, sound
head-sound = Sound
head-next-step = Next step
head-road-air = Road and air
head-since = Since
head-why = Why
head-shop-knew = Shop knew
head-driver-knew = Driver knew
head-task = Task
head-hours-left = Hours left
head-last-good-day = Last good day
head-runs-out-first = Runs out first
head-state = State
head-part = Part
head-shown = Shown
head-as-it-stood = As it stood
head-seen-by = Seen by
head-told-by = Shop told by
head-service = Service
head-fluid = Fluid
head-poured = Poured
head-before-after = Before and after
head-finding = Finding
head-figures = Figures
head-used-until = Used until settled
head-pick = What may have happened
head-first-told = First told
head-told-again = Told again
head-came-from = Came from
head-says = What it says
head-when = When
head-came = Came
head-where-who = Where and who
head-phone = Phone

# Rows
use-start = air started
use-drive = driven
use-pour = poured
use-reading = hours read
use-stop = air stopped, its start not on record
use-and-more = { $what } and { $more } more
used-left-yard = left the yard
used-left-site = left the site
used-came-back = came back
used-started-air = started the air
lock-since = { $lock } since { $when }
could-know = yes: the lock-out was on the phone that recorded this
could-know-paper = not known, it came on paper: shop knew { $shop }
could-not-know = no: shop knew { $shop }, driver { $driver }
quiet-days = not heard from, day { $n }
expected-done = done { $when }
trainee-alone = signed by a trainee alone
expected-covered = covered { $from } to { $until }
expected-due-out = due out { $when }
expected-not-reported = not reported
expected-parked = parked
expected-in-shop = in the shop
expected-stored = stored
expected-lent = lent
expected-rented-out = rented out
expected-sold = sold
expected-no-day-status = nothing said for the day
answer-said-ok = OK
defect-again = again within 30 days
next-certify = to certify
next-review = awaiting the next driver's review
next-review-since = certified { $when }, awaiting review
next-over = no longer open
next-see-now = how it stands now
next-none = certified and reviewed
corrected = struck, { $instead } stands: { $why }
came-by = { $when } by { $phone }
service-done = { $tasks } done { $when }.
service-again = { $tasks }: the same service told again, the shop said.
not-bundled = Near and not done in the same visit: { $tasks }.
waiting-part = waits for { $part }

# Who comes in, and what is here
parts-in = parts in: { $count }
part-is-in = { $part } came in { $when }
tomorrow = Tomorrow: { $what }.
tomorrow-not-out = { $count ->
    [one] not to go out { $units }
   *[other] not to go out { $units }
}
tomorrow-air = air or an outlet locked { $units }
tomorrow-bay = bay { $units }
tomorrow-nothing = nothing locked, no visit planned
section-pages = Paper pages to type
none-pages = none kept at the desk
pages-what = Counted are photos of pages kept at the desk that no page typed in names yet.
pages-type = Type it in
pages-leave = Leave it out
