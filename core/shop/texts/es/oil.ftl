# The oil of a unit: charts, balances, what they say.

part-oil = Aceite
date-tick = { $day } { $mon }
key-pour = agregado
key-ring = visto
key-figure = cuenta
key-struck = tachada, no cuenta
chart-figures = Las mismas cifras en tablas

oil-nothing-known = Nada registrado de su aceite.
oil-too-little = Se sabe muy poco de su consumo de aceite.
oil-no-balance = Todavía no se cierra ningún balance: lo cierra un agregado con nivel después.
oil-before-records = Lo trae desde antes de los registros; agregado desde entonces: { $poured }.
oil-filled = Cargado { $when } con { $hours } h; agregado desde entonces: { $poured }.
oil-filled-no-hours = Cargado { $when }, horas de entonces sin decir; agregado desde entonces: { $poured }.
oil-usual = Lo normal de esta carga: unos { $rate } mL/h.
oil-usual-line = normal { $rate } mL/h
oil-limit-is = { $mg } mg/m3 son { $limit } mL/h
oil-so-far-no-rate = Por el último nivel, { $when }: { $volume } usados desde el último agregado, pocas horas para un ritmo; ningún agregado lo cierra todavía.
oil-so-far = Por el último nivel, { $when }: { $volume } usados desde el último agregado, unos { $rate } mL/h hasta ahora; ningún agregado lo cierra todavía.
oil-so-far-rose = El último nivel, { $when }, está más alto que el anterior; ningún agregado lo cierra todavía.
oil-rose = El nivel subió sin agregado registrado, { $when }: preguntar, revisar por la purga.
oil-rose-here = subió sin agregado registrado: preguntar, revisar por la purga
oil-lab = Laboratorio
oil-lab-row = Frasco { $bottle }, tomado { $drawn }, { $hours } h en el aceite
oil-lab-row-no-hours = Frasco { $bottle }, tomado { $drawn }, horas en el aceite sin decir
oil-levels = Niveles de la mirilla
oil-levels-up = mirilla
oil-middle-to = el medio, { $from } a { $to } %
oil-levels-say = Niveles de la mirilla: { $levels ->
    [one] 1 nivel
   *[other] { $levels } niveles
}, { $pours ->
    [0] ningún agregado
    [one] 1 agregado
   *[other] { $pours } agregados
}. Último: { $last }. El medio es de { $from } a { $to } %. Las mismas cifras están abajo en tablas.
oil-chart-filled = carga
oil-use = Consumo de aceite
oil-use-up = mL/h
oil-use-says = Consumo de aceite por horas de trabajo: { $count ->
    [one] 1 balance
   *[other] { $count } balances
}, el más nuevo { $newest } mL/h. Límites: { $limits }. Las mismas cifras están abajo en tablas.
oil-what-level = nivel
oil-what-pour = agregado
oil-what-filled = carga
oil-head-over = Durante (h)
oil-head-used = Usado
oil-head-rate = mL/h (banda)

oil-times = { $times } veces lo normal
oil-times-since = { $times } veces lo normal desde { $since }
oil-unknown-use = se sabe muy poco
oil-over-limit = arriba del límite
oil-rate = unos { $rate } mL/h
oil-over-middle = arriba del medio por { $percent } % = { $volume }
section-oil = ¿Quién está tomando aceite?
none-oil = ninguna alarma; hace falta un consumo normal propio o un balance arriba del límite
head-oil = Alarma
head-oil-rate = Consumo de aceite
nothing-word = nada
oil-settling-here = la carga nueva se está asentando, va aparte
