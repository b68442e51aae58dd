# Words for what is recorded: parts, locks, day statuses, roles, kinds, reasons.

part-road = MANEJO
part-air = AIRE
part-outlet = Salida { $name }
lock-none-on-record = sin bloqueo registrado
lock-locked = BLOQUEADO
lock-awaiting-review = falta revisión del chofer

answer-ok = bien
answer-defect = defecto
answer-not-fitted = no lo lleva
answer-could-not-check = no se pudo revisar

verdict-repaired = reparado
verdict-not-needed = no requiere reparación
defect-open = sin constancia
defect-awaiting-review = con constancia, falta revisión del chofer
defect-closed = con constancia y revisado

# What a finding that no checklist offers is called
choice-wrong-oil = se echó otra familia de aceite
choice-other-grade = se echó aceite de otro grado
choice-unknown-oil = se echó aceite de un bidón desconocido
choice-burnt-suspected = quizá quemado: míralo
choice-over-a-quart = más de 1 qt entre cambios
choice-sudden-thirst = gasta mucho más que antes
not-so-no-cause-written = arrancó sin anotar la causa

status-out = sale
status-parked = estacionada
status-in-shop = en el taller
status-stored = guardada
status-lent = prestada
status-rented-out = rentada a otro
status-sold = vendida

role-driver = chofer
role-crew = cuadrilla
role-trainee = aprendiz
role-mechanic = mecánico
role-manager = jefe de taller

source-phone = teléfono
source-paper = papel
source-invoice = factura
source-estimate = estimación
source-brought-in = traído de antes, sin firma
source-shop = escrito en el taller

how-asked = preguntado
how-chosen = elegido
how-timed = medido
how-offered = ofrecido
how-said = dicho

warmth-cold = frío
warmth-hot = caliente
look-clear = claro
look-dark = oscuro
look-milky = lechoso
look-foaming = con espuma
look-burnt = quemado

dust-clean = limpio
dust-dusty = con polvo
dust-very-dusty = con mucho polvo

note-fault = falla
note-warning = advertencia
note-reminder = recordatorio

meter-compressor = horas del compresor
meter-engine = horas del motor
meter-pto = horas de la toma de fuerza

# Kinds of entry
kind-pre-trip-section = inspección previa
kind-end-of-day = fin de día
kind-hour-reading = horas
kind-meter-exchange = cambio de medidor
kind-hours-estimate = horas estimadas
kind-level-check = nivel
kind-top-up = relleno
kind-water-drained = agua purgada
kind-start-air = arranque del aire
kind-stop-air = paro del aire
kind-running-numbers = lecturas en marcha
kind-display-note = aviso de la pantalla
kind-acknowledgement = respuesta a un aviso de la pantalla
kind-site-condition = polvo en el sitio
kind-oil-condition = aspecto del aceite
kind-sample = muestra de aceite
kind-lab-answer = respuesta del laboratorio
kind-review = revisión del último reporte
kind-certificate = constancia
kind-service-done = servicio hecho
kind-visit-plan = visita al taller planeada
kind-waiting-for-part = en espera de pieza
kind-lay-up = baja temporal
kind-return-to-service = regreso de baja temporal
kind-set-fitted = equipo compresor montado
kind-set-removed = equipo compresor desmontado
kind-correction = corrección
kind-other-unit = es de otra unidad
kind-drive = manejo
kind-steps-done = pasos
kind-happened = qué pasó
kind-stock-counted = aceite a bordo contado
kind-fleet-named = flota
kind-truck-registered = camión
kind-set-registered = equipo compresor
kind-programme-set = programa de servicio
kind-shop-says = lo que dicen los teléfonos
kind-campaign-set = campaña del fabricante
kind-rule-numbers = los números de las reglas
kind-severities-set = lo que bloquea cada hallazgo
kind-person-set = persona
kind-device-enrolled = teléfono agregado
kind-device-revoked = teléfono parado
kind-day-status-set = estado del día
kind-decision = decisión del taller
kind-late-accepted = registro que llegó tarde, aceptado
kind-sheet-closed = hoja del día cerrada
kind-paper-page = hoja de papel capturada
kind-newer = hecho por una versión más nueva

# Why an entry is set aside. It is kept and shown.
aside-counts = cuenta
aside-void = anulado por una corrección
aside-left-out = el taller lo dejó fuera
aside-device-stopped = su teléfono está parado
aside-shop-only = solo el taller escribe esto
aside-other-unit = habla de otra unidad
aside-two-contents = dos contenidos con el mismo número
aside-newer-version = hecho por una versión más nueva
aside-unreadable = no se puede leer
aside-reading = horas que el medidor no puede marcar
aside-by-shop = apartado por el taller

# La razón completa, cuando se abre su renglón, y qué hacer.
aside-why-void = Una corrección lo anuló. Se queda en el cuaderno y se ve; no cuenta.
aside-why-left-out = El taller lo dejó fuera, con su nombre. Se queda en el cuaderno y se ve; no cuenta.
aside-why-device-stopped = El taller ya había parado este teléfono cuando llegó. Espera a una persona de allá.
aside-why-shop-only = Es de los que solo escribe el taller. No cuenta hasta que el taller lo escriba.
aside-why-other-unit = Está en el cuaderno de una unidad y habla de otra. No cuenta en ninguna.
aside-why-two-contents = Dos registros llevan el mismo número y dicen cosas distintas. Los dos se guardan y ninguno cuenta.
aside-why-newer-version = Lo hizo una versión más nueva de esta aplicación y esta no lo puede leer. No se perdió nada.
aside-why-unreadable = Lo que hay guardado no es un registro. Se guarda tal como llegó.
aside-why-reading = El medidor no puede haber marcado estas horas. Quedan fuera; lo demás cuenta.
aside-why-by-shop = El taller lo apartó. La razón llega con su próxima noticia.
aside-do-void = No hay nada que hacer. Si la corrección estaba mal, llama al taller: allá una persona puede decidir otra cosa.
aside-do-left-out = Si estaba bien, llama al taller y dilo: se puede decidir otra cosa.
aside-do-device-stopped = Llama al taller. Allá una persona lo da por cierto, con su nombre, o lo deja fuera.
aside-do-shop-only = Dile al taller lo que viste; allá alguien lo escribe.
aside-do-other-unit = Llama al taller y di qué unidad era.
aside-do-two-contents = Deja este teléfono como está y llama al taller.
aside-do-newer-version = Actualiza la aplicación de este teléfono y ábrelo otra vez.
aside-do-unreadable = Llama al taller, y registra otra vez lo que era.
aside-do-reading = Lee el medidor otra vez y escribe lo que marca. Si marcaba esto, llama al taller: allá una persona lo aclara.
aside-do-by-shop = Intenta con el taller para saber la razón, o llama.
aside-counts-again = Ya cuenta otra vez: aquí no queda nada apartado.
aside-no-words = Esta aplicación no puede decir lo que trae.
aside-at-most = El medidor podía marcar { $ceiling } h como máximo.
aside-belongs-to = es de { $door }

# Why a reading is asked about
question-above-ceiling = Más de lo que el medidor pudo haber contado.
question-unanswered-jump = Dio un salto y nadie ha dicho por qué.
question-backwards = Va para atrás.
question-tie = Tantas lecturas dicen una cosa como la otra.
question-same-moment = Dos cifras del mismo momento.
question-outvoted = Las lecturas de después le ganaron a esta.
question-unlike-this-unit = Raro en esta unidad: mucho más de lo que trabaja en un día.
question-both-stand = Se dejaron dos cifras que se contradicen.

hint-typed-wrong = ¿Mal escrito? Con dos números cambiados de lugar o el punto corrido, cuadra.
hint-earlier-typed-wrong = ¿La cifra de antes se escribió mal?
hint-went-round = ¿El medidor dio la vuelta?
hint-meter-changed = ¿Se cambió el medidor?
hint-other-meter-or-truck = ¿Otro medidor, u otro camión?
hint-reads = Marcaría { $figure }.

# De quién es la regla, y en qué edición se leyó
rule-set-us-federal = Estados Unidos (49 CFR, leído en 2026)
rule-set-us-federal-placarded = Estados Unidos, carga con rótulos (49 CFR, leído en 2026)
rule-set-us-fmvss-121 = Estados Unidos, vehículos nuevos (FMVSS 121, interpretación 2947o)
rule-set-us-osha = Estados Unidos (29 CFR, leído en 2026)
rule-set-cdl-modernized = Estados Unidos, examen de manejo (modernizado)
rule-set-cdl-older = Estados Unidos, examen de manejo (anterior)
rule-set-us-california = California (leído en 2026)
rule-set-ca-ontario = Ontario (leído en 2026)
rule-set-ca-quebec = Quebec (leído en 2026)
rule-set-common-practice = en cualquier lugar (1)
