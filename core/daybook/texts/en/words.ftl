# Words for what is recorded: parts, locks, day statuses, roles, kinds, reasons.

part-road = ROAD
part-air = AIR
part-outlet = Outlet { $name }
lock-none-on-record = no lock on record
lock-locked = LOCKED
lock-awaiting-review = awaiting review

answer-ok = OK
answer-defect = defect
answer-not-fitted = no such part
answer-could-not-check = could not check

verdict-repaired = repaired
verdict-not-needed = repair not needed
defect-open = no certificate
defect-awaiting-review = certified, awaiting review
defect-closed = certified and reviewed

# What a finding that no checklist offers is called
choice-wrong-oil = another oil family was poured
choice-other-grade = oil of another grade was poured
choice-unknown-oil = oil from an unknown drum was poured
choice-burnt-suspected = burnt suspected: look at it
choice-over-a-quart = over 1 qt between changes
choice-sudden-thirst = much more used than before
not-so-no-cause-written = restarted, no cause written

status-out = out
status-parked = parked
status-in-shop = in the shop
status-stored = stored
status-lent = lent
status-rented-out = rented out
status-sold = sold

role-driver = driver
role-crew = crew
role-trainee = learning
role-mechanic = mechanic
role-manager = shop manager

source-phone = phone
source-paper = paper
source-invoice = invoice
source-estimate = estimate
source-brought-in = brought in, unsigned
source-shop = written at the shop

how-asked = asked
how-chosen = chosen
how-timed = timed
how-offered = offered
how-said = said

warmth-cold = cold
warmth-hot = hot
look-clear = clear
look-dark = dark
look-milky = milky
look-foaming = foaming
look-burnt = burnt

dust-clean = clean
dust-dusty = dusty
dust-very-dusty = very dusty

note-fault = fault
note-warning = warning
note-reminder = reminder

meter-compressor = compressor hours
meter-engine = engine hours
meter-pto = PTO hours

# Kinds of entry
kind-pre-trip-section = pre-trip
kind-end-of-day = end of day
kind-hour-reading = hours
kind-meter-exchange = meter exchanged
kind-hours-estimate = hours estimated
kind-level-check = level
kind-top-up = top-up
kind-water-drained = water drained
kind-start-air = air started
kind-stop-air = air stopped
kind-running-numbers = running numbers
kind-display-note = display note
kind-acknowledgement = answer to a display note
kind-site-condition = dust at the site
kind-oil-condition = oil look
kind-sample = oil sample
kind-lab-answer = laboratory's answer
kind-review = review of the last report
kind-certificate = certificate
kind-service-done = service done
kind-visit-plan = visit planned
kind-waiting-for-part = waiting for part
kind-lay-up = lay-up
kind-return-to-service = back from lay-up
kind-set-fitted = set fitted
kind-set-removed = set removed
kind-correction = correction
kind-other-unit = belongs to another unit
kind-drive = drive
kind-steps-done = steps
kind-happened = it happened
kind-stock-counted = oil on the truck counted
kind-fleet-named = fleet
kind-truck-registered = truck
kind-set-registered = compressor set
kind-programme-set = service programme
kind-shop-says = what the phones say
kind-campaign-set = maker's campaign
kind-rule-numbers = the rules' numbers
kind-severities-set = what findings lock
kind-person-set = person
kind-device-enrolled = phone added
kind-device-revoked = phone stopped
kind-day-status-set = day status
kind-decision = shop's decision
kind-late-accepted = late entry accepted
kind-sheet-closed = day sheet closed
kind-paper-page = paper page typed in
kind-newer = made by a newer version

# Why an entry is set aside. It is kept and shown.
aside-counts = counts
aside-void = void by a correction
aside-left-out = left out by the shop
aside-device-stopped = its phone was stopped
aside-shop-only = only the shop writes this
aside-other-unit = speaks of another unit
aside-two-contents = two contents under one id
aside-newer-version = made by a newer version
aside-unreadable = cannot be read
aside-reading = hours the meter cannot show
aside-by-shop = set aside by the shop

# The whole reason of that, once its row is opened, and what to do.
aside-why-void = A correction voided it. It stays in the book and is shown; it does not count.
aside-why-left-out = The shop left it out, by name. It stays in the book and is shown; it does not count.
aside-why-device-stopped = The shop had stopped this phone when it came. It waits for a person there.
aside-why-shop-only = It is of a kind that only the shop writes. It does not count until the shop writes it.
aside-why-other-unit = It stands in one unit's book and speaks of another. It does not count in either.
aside-why-two-contents = Two entries bear the same number and say different things. Both are kept, neither counts.
aside-why-newer-version = A newer version of this app made it, and this one cannot read it. Nothing of it is lost.
aside-why-unreadable = What is kept of it is no entry. It is kept as it came.
aside-why-reading = Its meter cannot have shown these hours. They are left out; the rest of it counts.
aside-why-by-shop = The shop has set it aside. Why comes with its next news.
aside-do-void = Nothing to do. If the correction was wrong, call the shop: a person there can decide otherwise.
aside-do-left-out = If it was right, call the shop and say so: it can be decided otherwise.
aside-do-device-stopped = Call the shop. A person there takes it as true, by name, or leaves it out.
aside-do-shop-only = Tell the shop what you saw; somebody there writes it.
aside-do-other-unit = Call the shop and say which unit it was.
aside-do-two-contents = Leave this phone as it is and call the shop.
aside-do-newer-version = Update this phone's app, then open it again.
aside-do-unreadable = Call the shop, and record what it was once more.
aside-do-reading = Read the meter again and type what it shows. If this is what it showed, call the shop: a person there settles it.
aside-do-by-shop = Try the shop now for its reason, or call.
aside-counts-again = It counts again: nothing is set aside here any more.
aside-no-words = This app cannot say what is in it.
aside-at-most = The meter could show at most { $ceiling } h then.
aside-belongs-to = belongs to { $door }

# Why a reading is asked about
question-above-ceiling = More than the meter can have counted.
question-unanswered-jump = It jumped, and nobody has said why.
question-backwards = It runs backwards.
question-tie = As many readings say one thing as the other.
question-same-moment = Two figures of one moment.
question-outvoted = Later readings outvoted this one.
question-unlike-this-unit = Much more than this unit runs in a day.
question-both-stand = Two figures that were let stand contradict each other.

hint-typed-wrong = Typed wrong? With two digits swapped or the point moved it fits.
hint-earlier-typed-wrong = Was the figure before typed wrong?
hint-went-round = Did the meter go round?
hint-meter-changed = Was the meter changed?
hint-other-meter-or-truck = Another meter, or another truck?
hint-reads = It would read { $figure }.

# Whose rule it is, and in which edition it was read
rule-set-us-federal = United States (49 CFR, read 2026)
rule-set-us-federal-placarded = United States, placarded load (49 CFR, read 2026)
rule-set-us-fmvss-121 = United States, new vehicles (FMVSS 121, interpretation 2947o)
rule-set-us-osha = United States (29 CFR, read 2026)
rule-set-cdl-modernized = United States, driver test (modernized)
rule-set-cdl-older = United States, driver test (older)
rule-set-us-california = California (read 2026)
rule-set-ca-ontario = Ontario (read 2026)
rule-set-ca-quebec = Quebec (read 2026)
rule-set-common-practice = anywhere (1)
