# The crew over weeks: patterns, never one morning.

crew-title = Las semanas de la cuadrilla
crew-days = { $from } a { $to }
crew-weeks = { $weeks } semanas
crew-open-page = las semanas de la cuadrilla
crew-says = Lo que se repite en semanas, nunca una sola mañana: menos de { $enough } inspecciones no dicen nada. Lo que los registros propios dicen de cómo revisa cada quien está en su teléfono, con su PIN, y aquí no.

section-crew-walks = Inspecciones completas firmadas
crew-no-walk = ninguna en estas semanas
crew-quick-what = Rápido se dice de la cuadrilla, no de una persona. Cada inspección rápida está marcada en su unidad, donde se puede preguntar por ella.
crew-of = { $part } de { $of } ({ $percent } %)
crew-few = no se dice: menos de { $enough } no muestran nada
crew-people = De cuántas personas
crew-on-phones = De ellas, en teléfonos
crew-quick = Rápidas, de las de teléfono
crew-median = Tiempo mediano
crew-minutes = { $time } min
crew-defects = Renglones con defecto
crew-not-checked = Renglones que no se pudieron revisar

section-crew-repeats = Otra vez dentro de 30 días de una constancia
crew-no-repeat = nada en estas semanas
head-last-certificate = Constancia anterior

section-crew-repairs = Reparados en estas semanas
crew-no-repair = ninguno en estas semanas
crew-repair-what = Desde que se encontró hasta la constancia que vale.
crew-repair-median = Tiempo mediano
crew-repair-longest = El más largo
crew-days-long = { $days } días
crew-open = Esperan constancia ahora
crew-oldest = El más viejo de ellos

section-crew-past = Tareas vencidas ahora
crew-none-past = ninguna
crew-past = { $units ->
    [one] en 1 unidad
   *[other] en { $units } unidades
}, { $parts } de ellas esperan una pieza

section-crew-shares = De quién son los registros
crew-shares-what = Inspecciones previas, fines de día y rellenos, de quienes tienen al menos { $enough }; en orden de nombres. Dice quién estuvo, no quién es mejor. No se imprime.
crew-no-share = ninguno en estas semanas
crew-others = { $people ->
    [one] 1 más, con menos de { $enough }
   *[other] { $people } más, con menos de { $enough } cada quien
}
head-share = Parte
head-walks = Inspecciones previas
head-day-ends = Fines de día
head-top-ups = Rellenos
