# Todas las unidades.

known-at-short = según lo sabido: { $when }
units-needing-only = solo las que piden atención
as-a-table = como tabla
units-none = No hay unidades:
units-bring-in = traer una lista
units-add-one = o agregar una
units-need = piden atención
units-none-need = ninguna pide atención
units-quiet = sin nada que decir
units-all = Todas las unidades, por número
units-found = Unidades con "{ $find }" en su número
units-none-found = Ninguna unidad lo lleva en su número.
find-in-list = En esta lista
pages-by-number = Páginas por número de unidad

head-today = Hoy
head-hours-read = Horas leídas
head-oil-use = Consumo de aceite
head-open = Abierto

no-programme = Sin programa
hours-never-read = nunca leídas
hours-disputed = por aclarar
outlets-locked = { $count } de { $of } salidas de aire con BLOQUEO
open-defects = { $count ->
    [one] 1 defecto
   *[other] { $count } defectos
}
open-to-settle = { $count } por aclarar
open-reminder = recordatorio desaparecido, preguntar
left-hours = quedan { $hours } h
left-days = { $days ->
    [0] hoy es el último día bueno
    [one] queda 1 día, hasta { $day }
   *[other] quedan { $days } días, hasta { $day }
}
