# Due and visits.

due-known = as known at { $when }
due-units = Of { $count } units, door number has
due-both = hours and calendar
due-show = Show
due-nothing = Nothing within 30 days or 50 h.
due-of = Rows { $first } to { $last } of { $count }.
due-before = Rows before
due-after = Rows after
due-ticked = ticked
due-ticked-one = ticked
section-near = Past due, due, coming up, or within 30 days or 50 h
section-of-unit = Every task of { $unit }
due-no-task = no task in its programme
due-defects = Defects of { $unit } that wait for a certificate
due-nothing-to-tick = Nothing can be ticked here: this unit has no task in its programme and no open defect.
section-visits = Visits this week
section-order = To order
head-tick = Tick
head-promised = Promised

plan-visit = Plan a visit
plan-bay = Bay
plan-bay-number = bay { $number }
plan-none-ticked = No row was ticked. Nothing was recorded. Go back and tick the tasks or defects this is about.
plan-no-day = The visit has no day. Nothing was recorded. Go back and give one.
plan-day-past = That day is over in the yard. Nothing was recorded. Go back and give today or a later day.
visit-missed = { $day }, not done
visits-later = { $count ->
    [one] One visit later
   *[other] { $count } visits later
}
visit-cancel = Cancel the visit
visit-cancel-why = Why (may stay empty)
visit-cancelled = the visit was called off
wait-part = Wait for a part
wait-keep = Keep the wait
wait-is-in = The part is in
section-waits = Waiting for parts
none-waits = nothing waits for a part
wait-no-part = The part has no name. Nothing was recorded. Go back and say which part.

none-to-order = nothing to order
order-row = { $count } for { $task }, { $days ->
    [one] 1 day's lead
   *[other] { $days } days' lead
}
order-by = by { $day }
order-now = now
order-no-day = by the hours, pace unknown

service-open = Service done
service-of = Service done, { $unit }
service-read = Hours as read: { $hours } h, { $when }
service-tasks = Which tasks were done
service-hours = Hours of the meter then
service-who = Done by
service-source = Written down from
service-source-shop = the shop's own work
service-source-invoice = another shop's invoice
service-parts = Parts used, one a line, by the unit's own numbers
service-oil = Oil, when it was changed
service-oil-volume = How much
service-oil-unit = Unit of the volume
service-oil-family = Family
service-oil-grade = Grade
service-oil-reason = Why out of its turn
service-oil-in-turn = in its turn
service-oil-mixed = families were mixed
service-oil-milky = water in it
service-oil-burnt = it was burnt
service-oil-new-fill = a new fill for another reason
service-keep = Keep the service
service-one-unit = The ticked rows are of more than one unit. Nothing was recorded. Go back and tick one unit's tasks.
service-no-task = No task was ticked. Nothing was recorded. Go back and tick what was done.
service-no-day = The service has no day and time. Nothing was recorded. Go back and give both.
service-ahead = That moment has not come yet. Nothing was recorded. Go back and give the time it was done.
service-volume = The volume of oil is no figure. Nothing was recorded. Go back and give it as 8.0.

section-needs = Parts and oil for the week's visits
head-parts = Parts, by the unit's own numbers
head-oil-in-jugs = Oil, in whole jugs of 1 gal
head-waits = Waits for
parts-not-known = no numbers on record for { $tasks }
oil-jugs = { $volume } { $kind }, { $count ->
    [one] 1 jug
   *[other] { $count } jugs
}
oil-how-much = { $kind }, how much is not on record
oil-family-unknown = oil of a family not on record
oil-to-load = { $kind }: { $volume } in all, { $count ->
    [one] 1 jug of 1 gal
   *[other] { $count } jugs of 1 gal
}, for { $units }.
oil-not-known = { $kind }: how much { $units } takes is not on record and comes on top.

section-papers = Papers that ran out or do within 30 days
none-papers = none on record
paper-annual-inspection = annual inspection
paper-holds = { $paper } holds until { $day }
paper-runs-out = { $paper } runs out: { $days ->
    [0] { $day } is its last day
    [one] 1 day left, until { $day }
   *[other] { $days } days left, until { $day }
}
paper-ran-out = { $paper } ran out on { $day }
paper-unknown = { $paper }: its date is not on record
papers-keep = Keep the new date
papers-certificates = Certificates
papers-no-day = The paper has no date. Nothing was recorded. Go back and give the last day on which it holds.
