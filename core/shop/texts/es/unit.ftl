# Una unidad.

part-due = Vencimientos
part-defects = Defectos abiertos
part-hours = Horas
part-history = Historial
part-fluids = Líquidos por mes
part-papers = Papeles con sus fechas, constancias
part-set = Camión y equipo

part-day = Qué hace cada día
day-status-never = Nunca se dijo qué hace esta unidad cada día, así que nadie espera reporte de ella.
day-status-say = Decir qué hace
day-status-now = (hoy)
day-status-from-day = desde el { $day }: { $status }
day-status-expected-at = sale a las { $when }
day-status-what = La unidad
day-status-choose = elige
day-status-from = Desde qué día
day-status-expected = Sale a las (solo si sale; vacío es por la mañana)
day-status-then = Vale hasta que se diga otra cosa. De la que sale se espera reporte.
day-status-keep = Anotarlo
day-status-none = No se dijo qué hace la unidad. No se registró nada. Vuelve y elige.
day-status-no-day = No se dijo desde qué día. No se registró nada. Vuelve y da el día.
day-status-not-out = Solo de una unidad que sale se espera una hora. No se registró nada. Vuelve y elige «sale», o deja la hora vacía.
told-no-defect = ningún defecto
do-certify = Dar constancia
do-service = Servicio hecho
do-plan = Planear visita
do-wait = En espera de pieza

outlets-named = Salidas de aire con BLOQUEO: { $outlets }
since-when = desde { $when }
its-phone-heard = su teléfono { $phone }, última noticia { $when }
no-phone-wrote = ningún teléfono ha escrito de ella
reminder-gone = El recordatorio desapareció de la pantalla antes de { $when }, sin servicio registrado: preguntar.
no-open-defect = Ningún defecto abierto.
settle-it = Aclarar
pages-of-part = Páginas de { $part }
newer = Más nuevos
older = Más viejos
page-of = página { $page } de { $of }
the-shop = el taller

head-last-done = Hecho
head-ruler = Horas y calendario
head-visit = Visita
head-figure = Cifra
head-became = Qué pasó con ella
head-from = De
head-kind = Clase
head-written-on = Escrito en, llegó
head-counts = Vale
head-month = Mes
head-times = Veces
head-hours = Horas
head-certified = Constancia
head-in-words = En palabras
head-print = Imprimir

never-done = nunca
ruler-hours = quedan { $hours } h de { $every } h, vence al llegar a { $at } h
ruler-hours-past = { $hours } h pasadas de { $every } h, vencía al llegar a { $at } h
ruler-hours-unknown = horas desconocidas, de { $every } h
ruler-days = { $days ->
    [0] hoy, { $day }, es el último día bueno
    [one] queda 1 día, último día bueno { $day }
   *[other] quedan { $days } días, último día bueno { $day }
}
ruler-days-past = { $days ->
    [one] 1 día pasado, el último día bueno fue { $day }
   *[other] { $days } días pasados, el último día bueno fue { $day }
}

hours-for-due = Para los vencimientos cuentan { $hours } h.
hours-offset = De medidores anteriores: { $hours } h.
hours-between = al menos { $low } h, probable { $likely } h, máximo { $high } h
reading-accepted = cuenta
reading-unlike-this-unit = cuenta; mucho más de lo que esta unidad trabaja en un día
reading-outvoted = tachada: lecturas posteriores coinciden en contra
reading-above-ceiling = tachada: más de lo que el medidor pudo contar
reading-backwards = tachada: va hacia atrás
reading-slipped-back = no cuenta: 0.1 h menos que antes
reading-same-moment = tachada: otra cifra del mismo momento
reading-does-not-count = tachada por el taller
reading-displaced = tachada: el taller dice que vale una cifra posterior
reading-void = tachada: anulada
reading-part-old-end = última cifra del medidor anterior
reading-part-new-start = primera cifra del medidor nuevo

entries-count = { $count ->
    [0] Todavía ningún registro.
    [one] 1 registro, nada se omite.
   *[other] { $count } registros, primero los más nuevos, nada se omite.
}
who-with = { $who } con { $with }
came-itself = { $phone }, llegó { $when }
came-carried = { $phone }, llegó { $when } por { $by }
clock-off-by = {"; "}el reloj de ese teléfono difería { $off }
clock-ahead-by = {"; "}con fecha posterior a su llegada: el reloj con que se firmó difería { $off } o más; no se corrige nada
clock-off-between = {"; "}se movió el reloj de ese teléfono: difería algo entre { $low } y { $high }; no se corrige nada
answers-count = { $count ->
    [one] 1 respuesta
   *[other] { $count } respuestas
}
walk-minutes = { $minutes } min
walk-quick = rápida
walk-defects = defectos: { $defects }
wait-over = ya no se espera

nothing-poured = Ningún agregado registrado.
poured-times = { $count ->
    [one] una vez
   *[other] { $count } veces
}
pours-newest = Los agregados más nuevos
no-certificate-yet = Ninguna constancia registrada.
print-slip = Papeleta

truck-serial = Serie del camión
truck-plate = Placas
truck-in-service = En servicio desde
truck-has = Lleva
truck-valves = Válvulas
truck-reels = Carretes
truck-hoses = Mangueras
truck-set = Equipo compresor
no-set = ninguno registrado
set-serial = Serie del equipo
set-delivery = Caudal
set-glass = Mirilla, de 0 a 100 %
set-oil-volume = Todo el aceite, lleno hasta el medio
set-oil = Aceite
set-weights = Peso de una hora según el polvo
