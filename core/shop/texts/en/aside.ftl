# Set aside.

aside-oldest = oldest: { $when }
aside-as-signed = as signed
aside-unread = What was signed cannot be read by this version.
aside-signature-holds = Its signature holds.
aside-signature-not = Its signature does not hold.
aside-way-shop-only = Only the shop writes this. It stays visible and counts nothing. If it is true, write it down here at the shop.
aside-way-two-contents = Two contents stand under one id. Both stay visible and count nothing. Ask whoever signed it, and have it recorded once more.
aside-way-newer-version = A newer version of this program made it. It is kept. Update this one; it then counts by itself.
aside-way-unreadable = What was signed is not an entry. It stays visible and counts nothing.
aside-accept-words = Your name, taking this as true
aside-accept = Accept by name
aside-leave-out = Leave out by name
aside-reading-words = Your name, about this figure
aside-reading-stands = This figure stands
aside-reading-not = Do not use this figure
aside-twice-words = Your name, about the two
aside-same-service = One and the same service
aside-both-stand = Two services, both stand
aside-used = Used until settled: { $hours }
aside-no-reason = There is no reason given. Nothing was recorded. Go back and say why, in your own words.
aside-no-name = There is no name given. Nothing was recorded. Go back and write your own name.
aside-other-name = That is not the name of this sign-in. Nothing was recorded. Go back and write your own name, or sign in as yourself.
aside-no-verdict = Nothing was chosen. Nothing was recorded. Go back and press what becomes of it.
section-settled = Settled before
none-settled = nothing was settled yet
aside-otherwise = Decide otherwise
aside-otherwise-words = Your name, deciding otherwise
became-use = counts
became-do-not-use = left out, still seen
became-same-service = one and the same service
became-reading-stands = this figure stands
became-late-accepted = accepted by name, counts
section-outside = Not taken in
aside-outside-row = { $count ->
    [one] One from { $from }: { $why }, { $when }
   *[other] { $count } from { $from }: { $why }, last { $when }
}
aside-forged = { $count ->
    [one] One entry from { $from } carries a signature that does not hold. It is set aside; the others were taken in. Last { $when }.
   *[other] { $count } entries from { $from } carry a signature that does not hold. They are set aside; the others were taken in. Last { $when }.
}
aside-outside-kept = What came is kept outside the books, as it came. What came with it was taken in.
outside-signature = a signature that does not hold
outside-parcel-signature = a sender's signature that does not hold
outside-other-fleet = it belongs to another fleet
outside-other-shop = it names this fleet under another shop's key
outside-other-actor = it writes under another's name
outside-place = it names a place that cannot be
outside-payload = its content cannot be bounded
outside-fork = another entry stands at its place
outside-predecessor = it follows an entry that nobody has
outside-damaged = its bytes are damaged
outside-unknown-sender = it comes from a phone not known here
outside-malformed = it names an entry its own file does not have
