# People and phones.

section-people = People
section-all-phones = Phones
section-signs = Who may open these pages
head-name = Name
head-role = Role
head-on-phones = On phones
head-last-signed = Last signed
head-pin = PIN given
head-news = News it holds
head-clock-off = Clock off by
head-program = Program
head-only-there = Only there
head-key = Its key
head-may = May
word-yes = yes
word-no = no

people-of-days = Signatures of the last 14 days.
people-not-lately = not in 14 days
people-add = Add or change this person
people-kept = { $name }: kept as { $role }
people-kept-gone = { $name }: kept as no longer here
people-gone = no longer here
people-change = is here already: change the entry
people-here-already = { $name } is here already, as { $role }. Nothing was changed. To change that, go back and tick that they are here already; somebody else of the same name needs one that tells them apart.
people-no-name = There is no name given. Nothing was changed. Go back and give one.
people-no-role = There is no role given. Nothing was changed. Go back and choose one.
people-code-ran-out = That code ran out after 15 minutes. Nothing was added. Make a new one under People and phones.
people-code-used = Another phone used that code. Nothing was added. Make a new one under People and phones.
people-code-unknown = This shop never gave that code. Nothing was added. Ask who showed it, and make a new one under People and phones.
people-nobody-waits = No phone with that key waits any more. Nothing was added. Look at the list of phones.
people-compare-first = The two keys were not compared. Nothing was added. Go back, hold the phone beside this page and compare them first.

phones-quiet = { $count ->
    [one] One phone not heard from in 24 h
   *[other] { $count } phones not heard from in 24 h
}
phone-quiet = not heard from in 24 h
phone-stopped = stopped
program-since = { $version }, since { $when }
news-all = all there is
news-upto = up to { $when }
only-there-since = unknown since { $when }
only-there-unknown = unknown
lost-phone = Lost: stop this phone

ask-row = A phone that calls itself { $name } asks to be let in. Its key: { $key }
ask-open = Compare this key with the one on that phone's own screen.
ask-ran-out = Its code ran out after 15 minutes. Nothing was added. Make a new one.
ask-used = Another phone used its code. Nothing was added. Make a new one.
ask-unknown = This shop never gave its code. Nothing was added. Ask who showed it.
ask-same = the same key stands on that phone
let-in = Let in, { $who }

add-phone = Add a phone
code-hub = Phones reach the shop at
code-units = Units it holds at first (all when few)
code-no-hub = That is no address with a port, such as sumpbook.yard:8443. No code was made. Go back and give one.
code-many-units = A code holds at most 12 units. No code was made. Go back and name fewer; the phone can ask for others.
code-how = On the phone: Add this phone, then scan the shop's code.
code-left = { $minutes } min { $seconds } s left, for one phone.
code-picture = The code as a picture
code-same = The same to type:
code-key = Its key: { $key }
code-then = Then compare the keys and let it in

stop-phone = Stop this phone
stop-title = Lost: stop { $phone }
stop-held = What the shop held of it counts on. It last exchanged { $when }.
stop-still-there = Entries that are still on it are kept there and can be handed over by file. They then wait under Set aside until a person decides about them by name.
stop-told = The phone says so at its next exchange, and takes nothing from the shop any more.
stop-for-ever = A stopped phone is not let in again with the same key. Found again, it is added anew.
stop-already = This phone is stopped already.
stop-no-reason = There is no reason given. The phone was not stopped. Go back and say why.
stop-not = Do not stop it

may-shop = sees everything and writes
may-reader = sees everything and writes nothing
signs-nobody = nobody of this name is here, so it writes nothing
signs-set = Set this sign-in
signs-again = Password once more
signs-remove = Take this sign-in away
signs-no-role = It was not said what they may do. Nothing was changed. Go back and choose.
signs-not-twice = The two passwords differ. Nothing was changed. Go back and type both again.
signs-no-person = Nobody of this name is here. Nothing was changed. Add the person first.
signs-short = A password has 8 characters at least. Nothing was changed. Go back and choose a longer one.
signs-last = This is the last sign-in that may write. Nothing was changed. Let another one write first.

# What phones say
section-says = What phones say
says-beside = Whom to call and what of a note on the display, in your own words. None of it is this program's.
says-emergency = Number for help when somebody is hurt
says-call = To be called, { $n }
says-number = Number
says-of = Beside a note on the display: { $kind }
says-set = Set what phones say
says-no-number = A name to be called has no number. Nothing was changed. Go back and give its number, or take the name out.
says-too-long = One of these words is longer than 200 signs, which no phone shows at once. Nothing was changed. Go back and shorten it.

pin-of = New PIN for
pin-nobody = nobody chosen
pin-ask = Ask for a new PIN
pin-asked = a new one asked for { $when }
people-signs-in = { $name } still has a sign-in that may write. Nothing was changed. Take that sign-in away first, below on this page; then say that they are no longer here.
