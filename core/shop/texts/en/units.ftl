# Every unit.

known-at-short = as known at { $when }
units-needing-only = only those that need someone
as-a-table = as a table
units-none = No units:
units-bring-in = bring in a list
units-add-one = or add one
units-need = need someone
units-none-need = none needs anyone
units-quiet = with nothing to tell
units-all = All units, by door number
units-found = Units with "{ $find }" in their number
units-none-found = No unit has that in its number.
find-in-list = In this list
pages-by-number = Pages by door number

head-today = Today
head-hours-read = Hours as read
head-oil-use = Oil use
head-open = Open

no-programme = No programme set
hours-never-read = never read
hours-disputed = to settle
outlets-locked = { $count } of { $of } outlets LOCKED
open-defects = { $count ->
    [one] 1 defect
   *[other] { $count } defects
}
open-to-settle = { $count } to settle
open-reminder = reminder gone, ask
left-hours = { $hours } h left
left-days = { $days ->
    [0] today is the last good day
    [one] 1 day left, to { $day }
   *[other] { $days } days left, to { $day }
}
