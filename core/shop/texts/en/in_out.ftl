# In and out.

in-out-in = Bring in
in-out-out = Take out
in-out-file = Table, as CSV
in-out-what = It holds
in-out-dates = Its days: 10/12/2026 is
in-out-decimals = Its decimals
in-out-not-said = not said
in-out-look = Look at it first
in-out-in-help = Nothing is brought in before it was looked at. What cannot be read one way only is asked about, never guessed.
in-out-reader = This sign-in may read and not write: nothing can be brought in here.

what-units = units
what-services = services
what-readings = readings of meters
what-pours = fluids poured
what-columns = { $what }: { $columns }
dates-mdy = 12 October (month first)
dates-dmy = 10 December (day first)
dates-iso = only 2026-10-12 is used
dates-serial = days are numbers of a spreadsheet
decimals-point = 1,204.7
decimals-comma = 1.204,7

dry-title = Dry run
dry-counts = Dry run: { $good } good, { $refused } refused, { $here } already here
dry-nothing = Nothing was brought in yet.
dry-bring-in = Bring in { $good }
dry-save = { $refused ->
    [one] Save the one refused row as CSV
   *[other] Save the { $refused } refused rows as CSV
}
dry-other = Choose another file
dry-refused = Refused
dry-first = Read so
dry-already = Already here
dry-unused = Nothing is done with these columns: { $columns }
dry-more = and { $count } more
dry-gone = That dry run is no longer kept here. Nothing was brought in. Choose the file again.
dry-head-row = Row
dry-head-field = Field
dry-head-as-written = As written
dry-head-why = Why refused
dry-head-day = Day
dry-head-hours = Hours
dry-head-where = Where
dry-here-registered = registered so
dry-here-row = same as row { $row }
dry-here-recorded = recorded { $when }, { $source }
brought-in = { $count ->
    [one] One row was brought in.
   *[other] { $count } rows were brought in.
}

source-phone = on a phone
source-paper = from paper
source-invoice = from an invoice
source-estimate = an estimate
source-shop = at the shop

ask-day = { $day } { $month }
ask-day-year = { $day } { $month } { $year }
ask-dates = { $written } can be { $mdy } or { $dmy }. Nothing was brought in. Say which, once for the whole file.
ask-dates-mixed = { $written } in row { $row } can only be month first, and { $other } in row { $other-row } only day first. Nothing was brought in. Say which, once for the whole file.
ask-day-number = { $written } in row { $row } can be a spreadsheet's number for { $day }. Nothing was brought in. Say whether days are such numbers, once for the whole file.
ask-decimals = { $written } can be { $point } or { $comma }. Nothing was brought in. Say which, once for the whole file.
ask-decimals-mixed = { $written } in row { $row } has its decimals after a point, and { $other } in row { $other-row } after a comma. Nothing was brought in. Say which, once for the whole file.

why-blank = nothing stands there, and it is needed
why-not-a-date = no day
why-no-such-month = no such month
why-no-such-day = that month has no such day
why-short-year = a year in two digits: say which way days are written, or write four
why-other-dates = not written as the other days of this file
why-ahead = that day has not come yet
why-long-ago = before 1980
why-not-a-time = no time of day
why-not-a-figure = no figure
why-other-decimals = its decimals are not written as was said for this file
why-negative = below zero
why-too-large = more than a meter shows
why-no-such-minute = an hour has no such minute
why-unknown-unit = no unit of that number; bring in units first
why-unknown-task = not a task of this unit's programme
why-unknown-fluid = not a fluid by its name here
why-unknown-family = not a family of oil by its name here
why-unknown-meter = not a meter by its name here
why-unknown-feature = not one of the things a unit has, by its name here
why-no-volume-unit = no unit: write qt, gal, fl oz, L or mL in the cell or the head
why-not-a-percent = not a whole percentage of the glass
why-here-otherwise = this unit is here already and says otherwise; change it on its own page
why-set-elsewhere = a set of that serial stands on another unit
why-too-long = more words than an entry holds

out-tables = Tables, as CSV
out-mark = for a spreadsheet that shows wrong letters otherwise: with the mark of UTF-8
out-marked = with mark
out-kind-units = Units
out-kind-due = Due
out-kind-readings = Readings
out-kind-services = Services
out-kind-pours = Pours
out-kind-defects = Defects
out-kind-certificates = Certificates
out-kind-acknowledgements = Reminders and who knew
out-kind-inspections = Inspections
out-kind-people = People
out-kind-phones = Phones
out-kind-set-aside = Set aside
out-kind-all-records = Every record
out-calendar = Calendar feed
out-calendar-help = Whoever has this address reads what is due, without signing in. It changes nothing here. The last good day of each task stands as a whole day.
out-calendar-none = No address was made yet.
out-calendar-make = Make an address
out-calendar-again = Make another address; this one ends
out-calendar-end = End this address
out-pack = Evidence pack
out-pack-help = All that is recorded of a unit, with what is missing first, every signature, and how to check them without this program.
out-pack-unit = Unit
out-pack-all = every unit
out-pack-make = Make the pack
out-pack-gaps = Gaps the pack will state first
out-gaps-head = What
out-gaps-count = How many
out-fleet = Whole fleet
out-fleet-help = Every book as a document that any automerge opens, and every signed entry. Another shop's folder takes it in with sumpbook import.
out-fleet-make = Take out the whole fleet
out-backup = Backup
out-backup-help = The shop's whole folder as it stands now, its key sealed by the phrase that was shown when the shop was made. Keep it elsewhere.
out-backup-make = Make a backup
out-backup-no-phrase = No phrase was made yet. On the shop's computer: sumpbook phrase

feed-name = Sumpbook, { $fleet }: what runs out
feed-open = { $unit }: { $task }, last good day
feed-done = { $unit }: { $task }, done { $day }
feed-gone = { $unit }: { $task }, no longer asked for
feed-by-hours = The hours of the meter had run out when they were read on this day.
feed-hours = Due at { $hours } h of the meter or on the last day by the calendar, whichever comes first.
feed-manual = The maker's manual comes first. This says what was recorded, no more.

gap-no-truck-serial = the truck's serial is not recorded
gap-no-set-serial = the compressor set's serial is not recorded
gap-task-never = tasks never recorded as done
gap-service-no-hours = services without hours
gap-service-late = services that came late
gap-reading-span = spans of more than 14 days between readings that count
gap-hours-question = figures of the meter that dispute each other
gap-use-without = days of use with no pre-trip on them or the day before
gap-defect-open = defects without a certificate
gap-note-unanswered = reminders and faults nobody acknowledged
gap-brought-in = entries brought in from older records, unsigned by whoever made them
gap-paper = entries typed from paper
gap-invoice = entries from another shop's invoice
gap-estimate = estimates
gap-no-pin = inspections and reviews signed without the person's PIN
gap-photo-missing = photos that are named and are not here
gap-set-aside = entries set aside
gap-void = entries voided or left out

in-out-columns = Columns it may have
table-no-file = No file was chosen. Nothing was brought in. Go back and choose one.
table-too-large = That file is larger than 4 MiB. Nothing was brought in. Part it, and bring in one part after the other.
table-not-text = That file is not text in UTF-8. Nothing was brought in. Save it again as CSV in UTF-8.
table-empty = That file holds no rows. Nothing was brought in. Its first row holds the heads of its columns.
table-not-a-table = That file does not read as a table. Nothing was brought in. Save it again as CSV in UTF-8.
table-not-seen = This is not what the dry run saw: something came in since, or the file is another. Nothing was brought in. Look at it again.
table-column = That file has no column { $missing }, which is needed. Nothing was brought in. Columns that are known: { $known }.

one-head = One unit, typed in
one-help = A unit of the same door number is changed; what is left empty, or without a tick at all, stays as it was. What it has decides which lines its pre-trip asks.
one-door = Door number
one-in-service = In service since
one-hours = Compressor hours on that day, such as 0.0
one-plate = Plate
one-serial = Serial of the chassis
one-annual = Annual inspection holds until
one-set-serial = Serial of the compressor set
one-delivery = Rated delivery, cfm
one-load-share = Share of running time in which it delivers, %, as you estimate it
one-oil-family = Family of its oil
one-oil-grade = Grade of its oil, such as ISO VG 46
one-valves = Service valves, by name, with commas between
one-has = It has
one-enter = Enter the unit
one-no-door = A unit needs its door number. Nothing was changed. Go back and give it.
one-bad-delivery = The delivery does not read as a number. Nothing was changed. Go back and give it in cfm, such as 185.
one-bad-share = The share of running time is a whole number from 1 to 100. Nothing was changed. Go back and correct it, or leave it empty.
