# Due and visits.

due-known = según lo sabido: { $when }
due-units = De { $count } unidades, el número contiene
due-both = horas y calendario
due-show = Mostrar
due-nothing = Nada en los próximos 30 días o 50 h.
due-of = Renglones { $first } a { $last } de { $count }.
due-before = Renglones anteriores
due-after = Renglones siguientes
due-ticked = marcados
due-ticked-one = marcado
section-near = Vencido, vence, se acerca, o dentro de 30 días o 50 h
section-of-unit = Todos los servicios de { $unit }
due-no-task = ningún servicio en su programa
due-defects = Defectos de { $unit } que esperan constancia
due-nothing-to-tick = Aquí no hay nada que marcar: esta unidad no tiene servicios en su programa ni defectos abiertos.
section-visits = Visitas de esta semana
section-order = Por pedir
head-tick = Marcar
head-promised = Prometida

plan-visit = Planear una visita
plan-bay = Bahía
plan-bay-number = bahía { $number }
plan-none-ticked = No se marcó ningún renglón. No se registró nada. Vuelve y marca los servicios o defectos.
plan-no-day = La visita no tiene día. No se registró nada. Vuelve y da uno.
plan-day-past = Ese día ya pasó en el taller. No se registró nada. Vuelve y da hoy o un día posterior.
visit-missed = { $day }, no se hizo
visits-later = { $count ->
    [one] Una visita más adelante
   *[other] { $count } visitas más adelante
}
visit-cancel = Cancelar la visita
visit-cancel-why = Por qué (puede quedar vacío)
visit-cancelled = la visita se canceló
wait-part = En espera de pieza
wait-keep = Anotar la espera
wait-is-in = Ya llegó la pieza
section-waits = En espera de piezas
none-waits = nada espera pieza
wait-no-part = La pieza no tiene nombre. No se registró nada. Vuelve y di cuál pieza.

none-to-order = nada por pedir
order-row = { $count } para { $task }, tarda { $days ->
    [one] 1 día
   *[other] { $days } días
}
order-by = a más tardar el { $day }
order-now = ya
order-no-day = por horas, ritmo desconocido

service-open = Servicio hecho
service-of = Servicio hecho, { $unit }
service-read = Horas leídas: { $hours } h, { $when }
service-tasks = Qué servicios se hicieron
service-hours = Horas del medidor entonces
service-who = Lo hizo
service-source = Según
service-source-shop = trabajo del propio taller
service-source-invoice = factura de otro taller
service-parts = Piezas usadas, una por renglón, con los números de la unidad
service-oil = Aceite, si se cambió
service-oil-volume = Cuánto
service-oil-unit = Unidad del volumen
service-oil-family = Familia
service-oil-grade = Grado
service-oil-reason = Por qué antes de tiempo
service-oil-in-turn = cuando tocaba
service-oil-mixed = se mezclaron familias
service-oil-milky = tenía agua
service-oil-burnt = estaba quemado
service-oil-new-fill = carga nueva por otro motivo
service-keep = Anotar el servicio
service-one-unit = Los renglones marcados son de más de una unidad. No se registró nada. Vuelve y marca los de una sola.
service-no-task = No se marcó ningún servicio. No se registró nada. Vuelve y marca lo que se hizo.
service-no-day = El servicio no tiene día y hora. No se registró nada. Vuelve y da los dos.
service-ahead = Ese momento todavía no llega. No se registró nada. Vuelve y da la hora en que se hizo.
service-volume = El volumen de aceite no es una cifra. No se registró nada. Vuelve y escríbelo como 8.0.

section-needs = Piezas y aceite para las visitas de la semana
head-parts = Piezas, con los números de la unidad
head-oil-in-jugs = Aceite, en garrafas enteras de 1 gal
head-waits = En espera de
parts-not-known = sin números registrados para { $tasks }
oil-jugs = { $volume } { $kind }, { $count ->
    [one] 1 garrafa
   *[other] { $count } garrafas
}
oil-how-much = { $kind }, cuánto no está registrado
oil-family-unknown = aceite de familia no registrada
oil-to-load = { $kind }: { $volume } en total, { $count ->
    [one] 1 garrafa de 1 gal
   *[other] { $count } garrafas de 1 gal
}, para { $units }.
oil-not-known = { $kind }: cuánto lleva { $units } no está registrado y va aparte.

section-papers = Papeles vencidos o que vencen dentro de 30 días
none-papers = ninguno registrado
paper-annual-inspection = inspección anual
paper-holds = { $paper }: vale hasta el { $day }
paper-runs-out = { $paper } por vencer: { $days ->
    [0] el { $day } es su último día
    [one] queda 1 día, hasta el { $day }
   *[other] quedan { $days } días, hasta el { $day }
}
paper-ran-out = { $paper }: venció el { $day }
paper-unknown = { $paper }: su fecha no está registrada
papers-keep = Anotar la fecha nueva
papers-certificates = Constancias
papers-no-day = El papel no tiene fecha. No se registró nada. Vuelve y da el último día en que vale.
