# In and out.

in-out-in = Traer
in-out-out = Llevar
in-out-file = Tabla, como CSV
in-out-what = Contiene
in-out-dates = Sus días: 10/12/2026 es
in-out-decimals = Sus decimales
in-out-not-said = sin decir
in-out-look = Verla primero
in-out-in-help = No se trae nada antes de verlo. Lo que se puede leer de dos modos se pregunta, nunca se adivina.
in-out-reader = Esta entrada puede leer y no escribir: aquí no se puede traer nada.

what-units = unidades
what-services = servicios
what-readings = lecturas de medidores
what-pours = fluidos agregados
what-columns = { $what }: { $columns }
dates-mdy = 12 de octubre (primero el mes)
dates-dmy = 10 de diciembre (primero el día)
dates-iso = solo se usa 2026-10-12
dates-serial = los días son números de una hoja de cálculo
decimals-point = 1,204.7
decimals-comma = 1.204,7

dry-title = Prueba
dry-counts = Prueba: { $good } bien, { $refused } rechazados, { $here } ya estaban
dry-nothing = Todavía no se trajo nada.
dry-bring-in = Traer { $good }
dry-save = { $refused ->
    [one] Guardar el renglón rechazado como CSV
   *[other] Guardar los { $refused } renglones rechazados como CSV
}
dry-other = Escoger otro archivo
dry-refused = Rechazados
dry-first = Leídos así
dry-already = Ya estaban
dry-unused = Con estas columnas no se hace nada: { $columns }
dry-more = y { $count } más
dry-gone = Esa prueba ya no se guarda aquí. No se trajo nada. Escoger el archivo otra vez.
dry-head-row = Renglón
dry-head-field = Campo
dry-head-as-written = Como está escrito
dry-head-why = Por qué se rechaza
dry-head-day = Día
dry-head-hours = Horas
dry-head-where = Dónde
dry-here-registered = registrada así
dry-here-row = igual que el renglón { $row }
dry-here-recorded = registrado { $when }, { $source }
brought-in = { $count ->
    [one] Se trajo un renglón.
   *[other] Se trajeron { $count } renglones.
}

source-phone = en un teléfono
source-paper = de papel
source-invoice = de una factura
source-estimate = una estimación
source-shop = en el taller

ask-day = { $day } de { $month }
ask-day-year = { $day } de { $month } de { $year }
ask-dates = { $written } puede ser { $mdy } o { $dmy }. No se trajo nada. Decir cuál, una vez para todo el archivo.
ask-dates-mixed = { $written } en el renglón { $row } solo puede llevar primero el mes, y { $other } en el renglón { $other-row } solo primero el día. No se trajo nada. Decir cuál, una vez para todo el archivo.
ask-day-number = { $written } en el renglón { $row } puede ser el número de una hoja de cálculo para { $day }. No se trajo nada. Decir si los días son números así, una vez para todo el archivo.
ask-decimals = { $written } puede ser { $point } o { $comma }. No se trajo nada. Decir cuál, una vez para todo el archivo.
ask-decimals-mixed = { $written } en el renglón { $row } lleva los decimales tras un punto, y { $other } en el renglón { $other-row } tras una coma. No se trajo nada. Decir cuál, una vez para todo el archivo.

why-blank = no hay nada, y hace falta
why-not-a-date = no es un día
why-no-such-month = no hay tal mes
why-no-such-day = ese mes no tiene tal día
why-short-year = año de dos cifras: decir cómo se escriben los días, o escribir cuatro
why-other-dates = no está escrito como los otros días de este archivo
why-ahead = ese día no ha llegado
why-long-ago = antes de 1980
why-not-a-time = no es una hora del día
why-not-a-figure = no es una cifra
why-other-decimals = sus decimales no están escritos como se dijo para este archivo
why-negative = menos que cero
why-too-large = más de lo que marca un medidor
why-no-such-minute = una hora no tiene tal minuto
why-unknown-unit = no hay unidad de ese número; traer primero las unidades
why-unknown-task = no es una tarea del programa de esta unidad
why-unknown-fluid = no es un fluido con un nombre de aquí
why-unknown-family = no es una familia de aceite con un nombre de aquí
why-unknown-meter = no es un medidor con un nombre de aquí
why-unknown-feature = no es algo que una unidad lleva, con un nombre de aquí
why-no-volume-unit = sin medida: escribir qt, gal, fl oz, L o mL en la celda o en el título
why-not-a-percent = no es un porcentaje entero de la mirilla
why-here-otherwise = esta unidad ya está aquí y dice otra cosa; se cambia en su propia página
why-set-elsewhere = un equipo con esa serie está en otra unidad
why-too-long = más palabras de las que caben en un registro

out-tables = Tablas, como CSV
out-mark = para una hoja de cálculo que si no muestra mal las letras: con la marca de UTF-8
out-marked = con marca
out-kind-units = Unidades
out-kind-due = Por vencer
out-kind-readings = Lecturas
out-kind-services = Servicios
out-kind-pours = Agregados
out-kind-defects = Defectos
out-kind-certificates = Constancias
out-kind-acknowledgements = Avisos y quién supo
out-kind-inspections = Inspecciones
out-kind-people = Personas
out-kind-phones = Teléfonos
out-kind-set-aside = Apartados
out-kind-all-records = Todos los registros
out-calendar = Calendario de lo que vence
out-calendar-help = Quien tiene esta dirección lee lo que vence, sin entrar. No cambia nada aquí. El último día bueno de cada tarea está como día entero.
out-calendar-none = Todavía no se hizo una dirección.
out-calendar-make = Hacer una dirección
out-calendar-again = Hacer otra dirección; esta termina
out-calendar-end = Terminar esta dirección
out-pack = Paquete de pruebas
out-pack-help = Todo lo registrado de una unidad, primero lo que falta, cada firma, y cómo revisarlas sin este programa.
out-pack-unit = Unidad
out-pack-all = todas las unidades
out-pack-make = Hacer el paquete
out-pack-gaps = Huecos que el paquete dirá primero
out-gaps-head = Qué
out-gaps-count = Cuántos
out-fleet = Toda la flota
out-fleet-help = Cada cuaderno como documento que cualquier automerge abre, y cada registro firmado. La carpeta de otro taller lo recibe con sumpbook import.
out-fleet-make = Llevar toda la flota
out-backup = Respaldo
out-backup-help = Toda la carpeta del taller como está ahora, su llave sellada con la frase que se mostró al hacer el taller. Guardarlo en otro lugar.
out-backup-make = Hacer un respaldo
out-backup-no-phrase = Todavía no se hizo una frase. En la computadora del taller: sumpbook phrase

feed-name = Sumpbook, { $fleet }: lo que vence
feed-open = { $unit }: { $task }, último día bueno
feed-done = { $unit }: { $task }, hecho el { $day }
feed-gone = { $unit }: { $task }, ya no se pide
feed-by-hours = Las horas del medidor ya se habían acabado cuando se leyeron este día.
feed-hours = Vence a las { $hours } h del medidor o el último día por calendario, lo que llegue primero.
feed-manual = Primero el manual del fabricante. Esto dice lo que se registró, nada más.

gap-no-truck-serial = la serie del camión no está registrada
gap-no-set-serial = la serie del equipo compresor no está registrada
gap-task-never = tareas nunca registradas como hechas
gap-service-no-hours = servicios sin horas
gap-service-late = servicios que llegaron tarde
gap-reading-span = lapsos de más de 14 días entre lecturas que cuentan
gap-hours-question = cifras del medidor que se contradicen
gap-use-without = días de uso sin inspección previa ese día ni el anterior
gap-defect-open = defectos sin constancia
gap-note-unanswered = avisos y fallas que nadie reconoció
gap-brought-in = registros traídos de antes, sin firma de quien los hizo
gap-paper = registros pasados de papel
gap-invoice = registros de la factura de otro taller
gap-estimate = estimaciones
gap-no-pin = inspecciones y revisiones firmadas sin el PIN de la persona
gap-photo-missing = fotos nombradas que no están
gap-set-aside = registros apartados
gap-void = registros anulados o dejados fuera

in-out-columns = Columnas que puede tener
table-no-file = No se escogió ningún archivo. No se trajo nada. Volver y escoger uno.
table-too-large = Ese archivo pasa de 4 MiB. No se trajo nada. Partirlo y traer una parte tras otra.
table-not-text = Ese archivo no es texto en UTF-8. No se trajo nada. Guardarlo otra vez como CSV en UTF-8.
table-empty = Ese archivo no tiene renglones. No se trajo nada. El primero lleva los títulos de las columnas.
table-not-a-table = Ese archivo no se lee como tabla. No se trajo nada. Guardarlo otra vez como CSV en UTF-8.
table-not-seen = No es lo que vio la prueba: algo llegó desde entonces, o el archivo es otro. No se trajo nada. Verlo otra vez.
table-column = Ese archivo no tiene la columna { $missing }, que hace falta. No se trajo nada. Columnas conocidas: { $known }.

one-head = Una unidad, escrita a mano
one-help = Se cambia la unidad con el mismo número de puerta; lo que se deja vacío, o sin ninguna marca, queda como estaba. Lo que lleva decide qué renglones pregunta su inspección previa.
one-door = Número de puerta
one-in-service = En servicio desde
one-hours = Horas del compresor ese día, como 0.0
one-plate = Placa
one-serial = Serie del chasis
one-annual = La inspección anual vale hasta
one-set-serial = Serie del equipo compresor
one-delivery = Entrega nominal, cfm
one-load-share = Parte del tiempo en marcha en que entrega, %, según la estimación del taller
one-oil-family = Familia de su aceite
one-oil-grade = Grado de su aceite, como ISO VG 46
one-valves = Válvulas de servicio, por nombre, con comas
one-has = Lleva
one-enter = Anotar la unidad
one-no-door = Una unidad necesita su número de puerta. No se cambió nada. Hay que volver y darlo.
one-bad-delivery = La entrega no se lee como número. No se cambió nada. Hay que volver y darla en cfm, como 185.
one-bad-share = La parte del tiempo en marcha es un número entero de 1 a 100. No se cambió nada. Hay que volver y corregirla, o dejarla vacía.
