# What is printed to be scanned.

door-tag = Door tag
door-tag-of = Door tag, { $unit }
door-tag-how = One sheet, black only. Put it where the crew stands before a walk, under clear tape: dirt over some of its squares does no harm. It stays with this truck; print another when its number changes.
door-tag-scan = Scan it, or type the number.
drum-label = Drum label
drum-label-how = One sheet, black only, for drums of this oil alone. It belongs in: { $units }. A drum that is filled with something else needs another label first.
drum-label-scan = Scan it before the cap is opened. The same number is not the same oil.
label-picture = The code to scan
