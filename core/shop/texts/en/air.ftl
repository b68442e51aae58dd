# The page of the calculator; what it asks and answers the phones say as well.

place-air = Air for the job
air-bad = { $field }: "{ $said }" is no figure for it and was left out. The rest was worked out. Write it again.
air-any-unit = none, by its delivery
air-own-delivery = Empty: the unit's own, { $figure }.
air-tool-name = Name
air-work-out = Work it out
air-yes = yes
air-no = no
