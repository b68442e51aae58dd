# Days and months

date-short = { $wday } { $day } { $mon }
date-short-year = { $wday } { $day } { $mon } { $year }
date-long = { $weekday } { $day } de { $month } de { $year }
date-plain = { $day } { $mon } { $year }
date-month = { $month } de { $year }

weekday-1 = lunes
weekday-2 = martes
weekday-3 = miércoles
weekday-4 = jueves
weekday-5 = viernes
weekday-6 = sábado
weekday-7 = domingo
wday-1 = lun
wday-2 = mar
wday-3 = mié
wday-4 = jue
wday-5 = vie
wday-6 = sáb
wday-7 = dom

month-1 = enero
month-2 = febrero
month-3 = marzo
month-4 = abril
month-5 = mayo
month-6 = junio
month-7 = julio
month-8 = agosto
month-9 = septiembre
month-10 = octubre
month-11 = noviembre
month-12 = diciembre
mon-1 = ene
mon-2 = feb
mon-3 = mar
mon-4 = abr
mon-5 = may
mon-6 = jun
mon-7 = jul
mon-8 = ago
mon-9 = sep
mon-10 = oct
mon-11 = nov
mon-12 = dic
