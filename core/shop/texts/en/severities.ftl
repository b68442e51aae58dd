# What each finding locks.

severities-title = What a finding locks
severities-way = what a finding locks
severities-beside = What the word for a finding locks, on the phones as here, until the shop certifies it. A change holds for what is found from then on; what was found before keeps what it locked. A driver may raise it, never lower it. To lock less changes nothing at the truck: the maker's manual, local law and licensed people come before this list.
severities-before = Before the walk
severities-own-count = { $count } of the shop's own
severities-set = Set these: { $stop }
severities-stands-on = Written in: { $text }
severities-usual = the shop's own; usual is: { $usual }
severities-again = { $word }, the second time in { $days } days
severities-none = No word was named. Nothing was changed. Go back and choose again.
severities-unknown = That is nothing a finding can lock. Nothing was changed. Go back and choose again.
stands-on-common-practice = common practice, no source
stands-on-shop-rule = the shop's own rule
stands-on-shop-or-state = company policy or state rule
stands-on-cdl-5-3 = model CDL manual, section 5.3
severities-why = Why, where a finding is to lock less than usual
