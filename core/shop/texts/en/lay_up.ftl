# A set that is laid up, and sets that are recorded elsewhere than registered.

part-lay-up = Lay-up
lay-up-none = Not laid up.
lay-up-do = Lay up the compressor set
lay-up-done-words = What was done before it was put away
lay-up-then = Its air is locked from then on until the list before its return is answered. Its clocks run on. The road is not locked by it.
lay-up-keep = Keep the lay-up
lay-up-back = Back { $when }: { $by } answered the last line.
lay-up-no-day = The lay-up has no day and time. Nothing was recorded. Go back and give both.
lay-up-ahead = That moment has not come yet. Nothing was recorded. Go back and give the time it was put away.

do-return-list = Answer the list
return-keep = Keep these answers
return-why = why waived
return-why-of = Why, for { $line }
return-no-line = No line was answered. Nothing was recorded. Go back and say of a line that it was done or is waived.
return-no-reason = A line is waived without a reason. Nothing was recorded. Go back: what was chosen still stands there. Type why.
head-line = Line
head-look-at = Look at
head-answer = Answer

laid-up-rows = Laid up; clocks ran on
section-laid-up = { $count ->
    [one] Laid up, its clock ran on: 1 row
   *[other] Laid up, their clocks ran on: { $count } rows
}
due-laid-up = laid up since { $when }, clocks ran on
expected-laid-up = laid up since { $when }

set-told-fitted = Set { $set } recorded as fitted here { $when }, { $who }; registered on { $on }. The registration rules: register the set where it stands, or settle that entry.
set-told-removed = Set { $set } recorded as taken off { $when }, { $who }; registered on { $on }. The registration rules: register the set where it stands, or settle that entry.
set-on-no-truck = no truck
recorded-on = recorded on { $unit }
history-gone = { $count ->
    [one] 1 entry about the air is not among them: its set stands on { $to } now.
   *[other] { $count } entries about the air are not among them: their set stands on { $to } now.
}
