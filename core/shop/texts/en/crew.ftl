# The crew over weeks: patterns, never one morning.

crew-title = The crew's weeks
crew-days = { $from } to { $to }
crew-weeks = { $weeks } weeks
crew-open-page = the crew's weeks
crew-says = Patterns over weeks, never one morning: fewer than { $enough } checks are none. What a person's own records say of how he walks stands on his phone, under his PIN, and nowhere here.

section-crew-walks = Whole walks signed
crew-no-walk = none in these weeks
crew-quick-what = Quick is said of the crew, not of a person. Each quick walk is marked at its unit, where it can be asked about.
crew-of = { $part } of { $of } ({ $percent } %)
crew-few = not told: fewer than { $enough } are no pattern
crew-people = By so many people
crew-on-phones = Of them on phones
crew-quick = Quick, of those on phones
crew-median = Middle of their times
crew-minutes = { $time } min
crew-defects = Lines answered with a defect
crew-not-checked = Lines that could not be checked

section-crew-repeats = Came again within 30 days of a certificate
crew-no-repeat = none in these weeks
head-last-certificate = Certificate before

section-crew-repairs = Repaired in these weeks
crew-no-repair = none in these weeks
crew-repair-what = From the first finding to the certificate that stands.
crew-repair-median = Middle of their times
crew-repair-longest = The longest
crew-days-long = { $days } days
crew-open = Waiting for a certificate now
crew-oldest = The oldest of them

section-crew-past = Tasks past due now
crew-none-past = none
crew-past = { $units ->
    [one] on 1 unit
   *[other] on { $units } units
}, { $parts } of them waiting for a part

section-crew-shares = Whose the records are
crew-shares-what = Pre-trips, ends of day and top-ups, of those with at least { $enough } of them; in the order of names. It tells who was there, not who is better. It is not printed.
crew-no-share = none in these weeks
crew-others = { $people ->
    [one] 1 other, with fewer than { $enough }
   *[other] { $people } others, with fewer than { $enough } each
}
head-share = Share
head-walks = Pre-trips
head-day-ends = Ends of day
head-top-ups = Top-ups
