# Certificates and their slips.

certify-legend = The defect is
certify-in-words = Work done, or why no repair is needed
certify-by = Signed by name: { $name }
certify-then = What is locked stays locked until the next driver's review.
sign-and-next = Sign and next
certify-which = Say which: repaired, or repair not needed. Nothing was signed. Go back: what was typed still stands there.
certify-words = Say in words what was done, or why no repair is needed. Nothing was signed. Go back and type it.
certify-reader = This sign-in may read and not write: someone with the shop role signs.
certify-signed = Signed: { $unit }, { $what }, { $verdict }.
certify-print-slip = Print its slip for a yard without signal
certify-gone = That defect waits for no certificate any more.
certify-rest = wait after it
sound-one = sound
sound-of-defect = Sound of the defect, at most 10 seconds.
sound-open = Open it by itself
photo-n = photo { $n }
more-said = Said as well

slip-title = Certificate
slip-on = On to the next certificate
slip-certified = Certified
slip-found = Found
slip-how = No signal in the yard: on the unit's page choose "Type the slip's code" and type the code of that very phone.
slip-codes = Codes, one for each phone
slip-then = The phone then shows the lock-out as awaiting review. It ends when the certificate itself has come to the phone and the driver has reviewed it.
slip-found-again = It was found again after this certificate: there is no code for it, and it stays locked.
slip-over = The lock-out is over: no code is needed.
slip-entry = Entry { $entry }
head-code = Code
