# Tasks of a service programme, and how they stand. A shop's own tasks carry their own names.

task-first-service = Primer servicio
task-oil-and-filters = Aceite y filtros
task-cooler-and-scavenge = Enfriador y barrido
task-separator = Separador
# Of a maker's campaign, with the name the shop gave it.
task-campaign = Campaña del fabricante { $name }
item-campaign = Campaña del fabricante
campaign-look-no-serial = no hay serie registrada
campaign-look-no-number = su serie no termina en un número
campaign-look-other-text = su serie puede ser una del rango, escrita de otra forma

standing-closed = hecho, no se repite
standing-far-off = lejos
standing-unknown = no hay desde dónde contar
standing-coming-up = se acerca
standing-due-today = vence hoy
standing-past-due = vencido

nearer-hours = primero por horas
nearer-calendar = primero por calendario
nearer-unknown = ritmo desconocido

task-hours-left = quedan al menos { $hours } h de { $every } h
task-hours-past = vencido por { $hours } h
task-days-left = { $days ->
    [0] hoy es el último día bueno
    [one] queda 1 día
   *[other] quedan { $days } días
}
task-days-past = vencido por { $days ->
    [one] 1 día
   *[other] { $days } días
}
task-last-good-day = último día bueno: { $day }
task-due-at = vence al marcar { $figure } h
task-waiting = en espera de pieza: { $part }
task-promised = prometida: { $day }
task-late-hours = hecho { $hours } h tarde
task-late-days = hecho { $days ->
    [one] 1 día
   *[other] { $days } días
} tarde
task-entered-twice = anotado dos veces
task-weighted = cuenta según el polvo del sitio
task-reminder-gone = El recordatorio ya no está en la pantalla y no hay servicio registrado: pregunta.
