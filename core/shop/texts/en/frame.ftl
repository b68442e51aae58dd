# What stands around every page, signing in, and answers that are no page.

place-day = Day sheet
place-units = Units
place-due = Due and visits
place-people = People and phones
place-aside = Set aside
place-in-out = In and out
place-paper = Paper page
place-sign-in = Sign in

skip = Skip to the page
pages = Pages
find = Find
find-go = Go
choices = Language and units
units-us = US units
units-metric = metric
signed-in-as = Signed in: { $name }
sign-out = Sign out
print = Print
demo-label = Invented fleet
demo-strip = Invented fleet; look here first:
demo-answers = TH-02's two answers
demo-struck = TH-03's struck 7,421.0
demo-ruler = TH-01's ruler

sign-in = Sign in
sign-in-name = Name
sign-in-password = Password
sign-in-show = show the password
sign-in-wrong = Name or password do not match. Nothing was opened. Wait { $seconds } s.
sign-in-wait = Too soon after a try that did not match: this one was not looked at. Nothing was opened. Wait { $seconds } s, then try again.
sign-in-nobody = Nobody may sign in yet. On the shop's computer: sumpbook password NAME
sign-in-demo = The demo's sign-in: { $name }, password { $password }
sign-in-address = This address: { $address }
sign-in-key = Its key: { $key }
sign-in-forgotten = Forgotten? Someone at the shop's computer sets a new one: sumpbook password NAME

refused-title = This was not done
refused-sign-in = Nobody is signed in. Sign in first.
refused-reader = This sign-in may read and not write. Nothing was changed.
refused-forged = This form did not come from a page of this console, or its sign-in ended. Nothing was changed. Open the page again.
refused-too-large = That is more than a form holds. Nothing was changed.
refused-only-forms = Only a form is sent to this address; there is no page to read. Nothing was changed. Open the page the form stands on.
back-to-form = Back to the form
back-keeps = The browser's own Back button keeps what was typed.
go-to-form = To the page of the form
refused-no-unit = There is no unit of the number “{ $unit }” here. Nothing was changed.
refused-not-there = Nothing is at this address. Nothing was changed.
refused-broken = The books cannot be read or written now. What was recorded before is kept. Look at what the hub says on its own screen.
go-to-units = To the list of units
go-to-day-sheet = To the day sheet

# Small words of every page
and = { " and " }
none-dash = -
none-word = none
not-said = not said
not-yet = not yet
never = never
never-since-added = never since it was added { $when }
added-not-heard = added { $when }, not heard from yet
nobody = nobody
dated-before-note = { $who } { $when }, dated before the note, not counted
any-time = any time
the-fleet = the fleet
no-hours = no hours
from-to = { $from } > { $to }
at-most = at most { $figure }
glass-below = below view
glass-above = above view

# Road and air
lock-road = ROAD
lock-air = AIR
lock-outlet = outlet { $name }
no-lock = no lock on record
lock-stands = LOCKED
lock-awaiting = LOCKED, awaiting review
road-line = Road: { $state }
air-line = Air: { $state }
locks-nothing = nothing

# How a task stands
due-past-due = past due
due-due-today = due today
due-coming-up = coming up
due-far-off = far off
due-unknown = a figure is missing
due-closed = done
due-hours = { $hours } h
due-days = { $days ->
    [one] 1 day
   *[other] { $days } days
}
due-waiting = waiting for part
due-higher-of-disputed = higher of two disputed
due-across-jump = across an unanswered jump
first-hours = hours
first-calendar = calendar
part-promised = { $part }, promised { $day }
