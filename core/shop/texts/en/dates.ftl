# Days and months

date-short = { $wday } { $day } { $mon }
date-short-year = { $wday } { $day } { $mon } { $year }
date-long = { $weekday } { $day } { $month } { $year }
date-plain = { $day } { $mon } { $year }
date-month = { $month } { $year }

weekday-1 = Monday
weekday-2 = Tuesday
weekday-3 = Wednesday
weekday-4 = Thursday
weekday-5 = Friday
weekday-6 = Saturday
weekday-7 = Sunday
wday-1 = Mon
wday-2 = Tue
wday-3 = Wed
wday-4 = Thu
wday-5 = Fri
wday-6 = Sat
wday-7 = Sun

month-1 = January
month-2 = February
month-3 = March
month-4 = April
month-5 = May
month-6 = June
month-7 = July
month-8 = August
month-9 = September
month-10 = October
month-11 = November
month-12 = December
mon-1 = Jan
mon-2 = Feb
mon-3 = Mar
mon-4 = Apr
mon-5 = May
mon-6 = Jun
mon-7 = Jul
mon-8 = Aug
mon-9 = Sep
mon-10 = Oct
mon-11 = Nov
mon-12 = Dec
