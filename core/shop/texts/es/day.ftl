# The day sheet.

known-at = según lo sabido: { $when }, hora del taller { $zone }
standing-open = abierta
standing-now = calculada ahora, después de cerrada
standing-version = versión { $version }, cerrada
view-morning = vista de 06:00
view-evening = vista de 17:00
day-before = Día anterior
day-after = Día siguiente
close-as = Cerrar como versión { $version }
versions = { $count ->
    [one] Cerrada una vez
   *[other] Cerrada { $count } veces
}
version-closed = Versión { $version }, según lo sabido: { $when }, cerrada por { $by }
as-known-now = Según lo sabido ahora
came-in-show = nuevos desde las { $when }: mostrar
sign-the-next = Firmar la siguiente
printed-at = Impresa { $when }

first-title = Primero tres cosas
first-units = Traer unidades, o escribir una
first-people = Agregar personas
first-phone = Todavía no hay teléfono: agregar uno

phones-none = Todavía no hay teléfono.
phones-heard = Teléfonos: { $heard } de { $of } con noticias desde { $since }.
phones-not-heard = Sin noticias: { $phones }.
phone-since = { $phone }, desde { $when }
phone-never = { $phone }, nunca
phone-never-since = { $phone }, nunca desde que se añadió: { $when }
phone-added = { $phone }, { $when }
phones-just-added = Añadidos y todavía sin noticias: { $phones }.

sentence-none-expected = No se espera que salga ninguna unidad.
sentence-reported = { $done } de { $of } que debían salir han reportado
sentence-not-reported = no reportó: { $units }
sentence-due-out = { $unit } sale a las { $when }
sentence-due-again = { $unit } vuelve a salir a las { $when }
sentence-locks = { $count ->
    [0] Sin bloqueo registrado
    [one] Un bloqueo
   *[other] { $count } bloqueos
}
sentence-against = { $count ->
    [one] usado con bloqueo una vez
   *[other] usado con bloqueo { $count } veces
}
sentence-nobody-knew = antes de que se pudiera saber
sentence-no-lock-known = Sin bloqueo registrado según lo sabido: { $when }.
sentence-not-out = No debe salir: { $units }.
sentence-air-locked = Bloqueo de aire o de una salida de aire: { $units }.
sentence-inspection-over = Inspección anual vencida: { $units }.
sentence-certify = { $count ->
    [0] Ninguna constancia por firmar.
    [one] Una constancia por firmar.
   *[other] { $count } constancias por firmar.
}
sentence-yesterday-open = La hoja de ayer no está cerrada.
sentence-yesterday-late = { $count ->
    [0] Nada llegó tarde para ayer.
    [one] Un registro llegó tarde para ayer; su versión más nueva es la { $version }.
   *[other] { $count } registros llegaron tarde para ayer; su versión más nueva es la { $version }.
}

# Sections, in their order
section-happened = Qué pasó
section-without = Usado sin inspección previa
section-against = Usado con bloqueo
section-not-reported = No reportó, de { $of } que debían salir
section-defects = Defectos nuevos, lo peor primero
section-locked = Bloqueado ahora
section-locked-then = Con bloqueo al final de ese día
section-due = Vencido, vence, se acerca
section-due-today = Vencido, vence hoy
section-reminders = Recordatorios y otros avisos de pantalla
section-top-ups = Rellenos
section-settle = Por aclarar
section-aside = Apartado
section-late = Llegó tarde, después del primer cierre de este día
section-ahead = Con fecha posterior a su llegada: un reloj va adelantado
since-ahead = { $when }, con fecha posterior a su llegada
section-not-out = Con bloqueo: manejo, aire o una salida de aire
section-certify = Constancias por firmar
section-expected = Deben salir
section-bays = En el taller hoy
section-phones = Teléfonos sin noticias en 24 h
section-late-yesterday = Llegó tarde para el { $day }

none-recorded = nada registrado
none-disputed = nada en duda
none-aside = No hay nada apartado.
none-late = nada llegó tarde
none-due = nada vencido, por vencer ni cerca
papers-near = { $count ->
    [one] 1 papel vencido o que vence dentro de 30 días
   *[other] { $count } papeles vencidos o que vencen dentro de 30 días
}
none-to-certify = nada espera constancia
none-planned = nada planeado
all-heard = hay noticias de todos
entered-twice = Anotado dos veces
all-of = las { $count }
reported-all = { $count } reportaron

# What happened
happened-hurt = alguien herido
happened-spill = derrame
happened-hit = golpe
happened-other = otra cosa
photos-count = { $count ->
    [one] una foto
   *[other] { $count } fotos
}
not-so = no es así

# Heads
head-where = Dónde
head-how-much = Cuánto, qué
head-told-whom = A quién se avisó
head-unit = Unidad
head-first-use = Primer uso
head-what = Qué
head-who = Quién
head-pre-trip-came = Llegó la inspección
head-reason = Motivo escrito
head-lock = Bloqueo
head-used = Usado
head-driver = Chofer
head-could-know = ¿Podía saberlo?
head-expected = Debía salir
head-its-phone = Su teléfono
head-last-heard = Última noticia
head-day = Día
head-one-answer = Una respuesta
head-other-answer = La otra respuesta
head-locks = Bloquea
head-photo = Foto
head-photo-sound = Foto, sonido
head-sound = Sonido
head-next-step = Paso siguiente
head-road-air = Manejo y aire
head-since = Desde
head-why = Por qué
head-shop-knew = Supo el taller
head-driver-knew = Supo el chofer
head-task = Servicio
head-hours-left = Horas restantes
head-last-good-day = Último día bueno
head-runs-out-first = Se acaba primero
head-state = Estado
head-part = Pieza
head-shown = Apareció
head-as-it-stood = Como decía
head-seen-by = Lo vio
head-told-by = Avisó al taller
head-service = Servicio
head-fluid = Líquido
head-poured = Agregado
head-before-after = Antes y después
head-finding = Hallazgo
head-figures = Cifras
head-used-until = Mientras tanto se usa
head-pick = Qué pudo pasar
head-first-told = Anotado primero
head-told-again = Anotado otra vez
head-came-from = Vino de
head-says = Qué dice
head-when = Cuándo
head-came = Llegó
head-where-who = Dónde y quién
head-phone = Teléfono

# Rows
use-start = aire arrancado
use-drive = manejado
use-pour = agregado
use-reading = horas leídas
use-stop = aire parado, sin arranque registrado
use-and-more = { $what } y { $more } más
used-left-yard = salió del patio
used-left-site = salió del sitio
used-came-back = regresó
used-started-air = arrancó el aire
lock-since = { $lock } desde { $when }
could-know = sí: el bloqueo estaba en el teléfono que registró esto
could-know-paper = no se sabe, vino en papel: taller { $shop }
could-not-know = no podía saberlo: taller { $shop }, chofer { $driver }
quiet-days = sin noticias, día { $n }
expected-done = hecha { $when }
trainee-alone = firmada por un aprendiz solo
expected-covered = cubierta de { $from } a { $until }
expected-due-out = sale { $when }
expected-not-reported = no reportó
expected-parked = estacionada
expected-in-shop = en el taller
expected-stored = guardada
expected-lent = prestada
expected-rented-out = rentada a otro
expected-sold = vendida
expected-no-day-status = nada dicho para el día
answer-said-ok = bien
defect-again = otra vez en 30 días
next-certify = falta constancia
next-review = falta revisión del chofer
next-review-since = constancia { $when }, falta revisión del chofer
next-over = ya no está abierto
next-see-now = cómo está ahora
next-none = con constancia y revisado
corrected = tachado, queda { $instead }: { $why }
came-by = { $when } por { $phone }
service-done = { $tasks } hecho { $when }.
service-again = { $tasks }: el mismo servicio anotado otra vez, según el taller.
not-bundled = Cerca y no hecho en la misma visita: { $tasks }.
waiting-part = espera { $part }

# Quién entra y qué hay
parts-in = piezas que llegaron: { $count }
part-is-in = { $part } llegó { $when }
tomorrow = Mañana { $what }.
tomorrow-not-out = { $count ->
    [one] no sale: { $units }
   *[other] no salen: { $units }
}
tomorrow-air = con bloqueo de aire o de una salida de aire: { $units }
tomorrow-bay = en la bahía: { $units }
tomorrow-nothing = nada con bloqueo, ninguna visita planeada
section-pages = Hojas de papel por capturar
none-pages = ninguna guardada en el escritorio
pages-what = Se cuentan las fotos de hojas guardadas en el escritorio que ninguna hoja capturada nombra todavía.
pages-type = Capturarla
pages-leave = Dejarla fuera
