# Tasks of a service programme, and how they stand. A shop's own tasks carry their own names.

task-first-service = First service
task-oil-and-filters = Oil and filters
task-cooler-and-scavenge = Cooler and scavenge
task-separator = Separator
# Of a maker's campaign, with the name the shop gave it.
task-campaign = Maker's campaign { $name }
item-campaign = Maker's campaign
campaign-look-no-serial = no serial is on record
campaign-look-no-number = no number stands at the end of its serial
campaign-look-other-text = its serial may be one of the range, written in another way

standing-closed = done, does not return
standing-far-off = far off
standing-unknown = nothing to count from
standing-coming-up = coming up
standing-due-today = due today
standing-past-due = past due

nearer-hours = hours first
nearer-calendar = calendar first
nearer-unknown = pace unknown

task-hours-left = at least { $hours } h left of { $every } h
task-hours-past = past due { $hours } h
task-days-left = { $days ->
    [0] today is the last good day
    [one] 1 day left
   *[other] { $days } days left
}
task-days-past = past due { $days ->
    [one] 1 day
   *[other] { $days } days
}
task-last-good-day = last good day { $day }
task-due-at = due at { $figure } h
task-waiting = waiting for part: { $part }
task-promised = promised { $day }
task-late-hours = done { $hours } h late
task-late-days = done { $days ->
    [one] 1 day
   *[other] { $days } days
} late
task-entered-twice = entered twice
task-weighted = counts by the site's dust
task-reminder-gone = Reminder gone from the display, no service recorded: ask.
