# What happened. What is kept. What to do.

error-no-signal = No signal since { $since }. { $count ->
    [0] Nothing waits on this phone. Go on; what you record is kept.
    [one] Your entry is kept on this phone. Go on; it goes by itself, or hand it over by file.
   *[other] Your { $count } entries are kept on this phone. Go on; they go by themselves, or hand them over by file.
}
error-phone-full = This phone is full. What you signed is kept; this photo is not. Make room, then take it again.
error-wrong-pin = That PIN is not { $name }'s. Nothing was signed; the { $what } is kept. Try again in { $seconds } s, or sign without PIN: the record will say so.
error-wrong-pin-again = That PIN is not { $name }'s. Nothing was signed; the { $what } is kept. Try again, or sign without PIN: the record will say so.
error-pin-wait = Too many PINs were wrong. This one was not looked at. Wait { $seconds } s, or sign without PIN: the record will say so.
error-pin-digits = A PIN has 6 to 12 digits and nothing else. Nothing was changed. Choose another.
error-pin-too-plain = A PIN of one digit, or of digits in a row, is soon guessed. Nothing was changed. Choose another.
error-pin-not-the-old = There is a PIN already, and that is not it. Nothing was changed. Give the old one first.
error-pin-not-kept = The PIN could not be kept. Nothing was changed. Make room on this phone, then try again.
error-code-ran-out = That code ran out after { $minutes } minutes. Nothing was added. Ask the shop for a new one.
error-code-used = Another phone used that code. Nothing was added. Ask the shop for a new one.
error-code-unknown = The shop never gave that code. Nothing was added. Ask the shop for a new one.
error-other-shop = This is not the shop this phone knows: its key is another. Nothing was sent, all is kept. Call the shop before you go on.
error-phone-stopped = The shop stopped this phone on { $when }. { $count ->
    [0] All of yours is there.
    [one] Your entry is kept and can be handed over by file; a person there decides.
   *[other] Your { $count } entries are kept and can be handed over by file; a person there decides.
} Use another phone or paper.
error-book-damaged = Part of this phone's book can't be read. { $kept } of { $all } entries are kept, and the damaged file too. Exchange with the shop: it may hold the rest.
error-photo-stopped = The photo stopped at { $percent } % when the signal went. The defect itself is at the shop. The photo goes on by itself.
error-bad-signatures = { $count ->
    [one] 1 entry
   *[other] { $count } entries
} from { $phone } carry a signature that does not hold. They are set aside; the other { $taken } were taken in. Open Set aside.
error-file-forged = { $count ->
    [one] 1 entry carries a signature that does not hold. It was not taken in
   *[other] { $count } entries carry a signature that does not hold. They were not taken in
}; the other { $taken } were. Tell the shop whose file it was.
error-shop-disk-full = The shop computer's disk is full. Nothing is half-written; phones keep their entries and try again. Make room on it.
error-slip-length = A slip's code has 12 digits. Nothing was changed. Type all of them.
error-slip-mistyped = A digit is mistyped. Nothing was changed. Type the code again.
error-slip-wrong = This code is not for this defect on this phone. Nothing was changed. Look on the slip for this phone's name and this defect, or call the shop.
error-slip-wrong-wait = This code is not for this defect on this phone. Nothing was changed. Wait { $seconds } s, then look at the slip again, or call the shop.
error-slip-wait = Too many codes were wrong. This one was not looked at. Wait { $seconds } s, then type it again.
error-slip-nothing-locked = Nothing is locked by that defect, or it is certified already. Nothing was changed. Look at the unit again.
error-slip-book = The book can't be read or written now. Nothing was changed. Try again.
error-other-fleet = Another fleet's file: nothing was taken in. Ask your own shop for its file.
error-draft-newer = A newer version of this program began this. It is kept. Update this phone's app, then go on.
error-not-a-photo = This is no photo: JPEG, PNG and WebP are kept. What you signed is kept; this is not. Take another.
error-photo-cut = This photo is cut off. What you signed is kept; this photo is not. Take it again.
error-photo-too-large = This photo has more than 4 MiB. What you signed is kept; this photo is not. Take it again, smaller.
error-photo-damaged = This photo is damaged on this phone. The entry that names it is kept. Take it again, in a new entry.
error-not-a-sound = This is no sound that can be kept: WAV of one channel and AAC in MP4 are. What you told stays; this is not kept. Record it here.
error-sound-cut = This sound is cut off. What you told stays; this sound is not kept. Record it again.
error-sound-too-long = This sound is longer than 10 seconds. What you told stays; this sound is not kept. Record it again, shorter.
error-sound-too-large = This sound has more than 512 KiB. What you told stays; this sound is not kept. Record it here: that is smaller.
error-sound-full = No room on this phone: the defect is kept, the sound is not. Make room, then record it again.
error-sound-damaged = This sound is damaged on this phone. The entry that names it is kept. Record it again, in a new entry.
error-sound-stopped = The sound stopped at { $percent } % when the signal went. The defect itself is at the shop. The sound goes on by itself.
error-microphone-not-allowed = This app is not allowed to use the microphone. What you told stays, without a sound. Allow it in the phone's settings, or say the noise in words.
error-no-microphone = The microphone gave no sound: another app may have it. What you told stays, without a sound. Try again, or say the noise in words.
error-sound-not-played = This sound can't be played on this phone. It is kept and goes with the defect. Hear it at the shop.
error-shop-set-back = The shop was set back to an older day. Nothing is lost: what it lost is sent again.
error-two-shops = Two shops answer with one key. Nothing is lost. Tell the shop before you go on.
error-own-back = { $count ->
    [one] 1 entry this phone wrote earlier came back
   *[other] { $count } entries this phone wrote earlier came back
} from the shop. Nothing is lost. The phone was put back from a copy, or a copy of it is in use: use one of the two.
error-placed-again = { $count ->
    [one] 1 entry of this phone was
   *[other] { $count } entries of this phone were
} written by a copy of it as well. Nothing is lost: they were put in their place again. Tell the shop that this phone was copied.
