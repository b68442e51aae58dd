# Screens: main buttons, why they do not take a tap yet, headings and strips.

# Main buttons
main-start-pre-trip = Empezar inspección, { $door }
main-go-on = Seguir, parada { $stop }
main-go-on-begun = Seguir con la inspección
main-take-over = Recibir { $door }: inspección corta
main-still-as-shown = Sigue en { $percent } %, como se ve ahí
main-report-end-of-day = Reporte de fin de día
main-read-and-reviewed = Leído y revisado
main-read-road-stays-locked = Leído. Sin constancia: MANEJO sigue bloqueado
main-read-air-stays-locked = Leído. Sin constancia: AIRE sigue bloqueado
main-read-both-stay-locked = Leído. Sin constancia: MANEJO y AIRE siguen bloqueados
main-all-ok = { $lines ->
    [one] Visto: bien
   *[other] Los { $lines } vistos: bien
}
main-other-ok = { $lines ->
    [one] El otro: bien
   *[other] Los otros { $lines }: bien
}
main-next-stop = Seguir, parada { $stop }
main-to-signature = A firmar
main-keep-level = Guardar { $level }
main-add-pour = Anotar un agregado
main-finish-top-up = Tapa apretada: listo
main-told-shop = Avisé al taller
main-keep-note = Guardar lo que muestra
main-give-hours = { $figure } h
main-yes-it-reads = Sí, marca { $figure } h
main-keep-with-photo = Guardar { $figure } h con foto
main-type-hours = Escribir las horas
main-sign-end-of-day = Firmar fin de día
main-try-shop = Intentar con el taller

# Why not yet
why-not-more-below = { $left ->
    [one] Falta 1 abajo
   *[other] Faltan { $left } abajo
}
why-not-just-opened = Se acaba de abrir
why-not-figure-missing = { $item }: primero anota la cifra.
why-not-sign-missing = Primero las dos señales.
why-not-drum-not-read = Primero lee la etiqueta del tambor.
why-not-oil-may-not-meet = No es el aceite de esta unidad. No eches; llama.
why-not-defects-not-said = Di qué defectos hubo, o que ninguno.
why-not-level-not-given = Arrastra hasta donde está el aceite.
why-not-running = Nunca en marcha. Páralo y espera.
why-not-already-told = Ya se avisó al taller.
why-not-nothing-typed = Escribe lo que marca el medidor.

sign-missing-gauge-zero = El manómetro todavía no marca 0.
sign-missing-blow-down-silent = La purga no ha terminado.
sign-missing-both = Manómetro en 0 y purga en silencio, las dos cosas, antes de la tapa.

# News
news-heard = Última noticia del taller: { $when }
news-never = Sin ninguna noticia del taller en este teléfono
news-old = Esta noticia es vieja. Puede haber un bloqueo que aquí no aparece: llama al patio.
counts-on-phone = { $count ->
    [one] 1 registro solo en este teléfono
   *[other] { $count } registros solo en este teléfono
}
where-on-phone = En este teléfono
where-at-shop = En el taller
where-aside = Apartado por el taller
where-tried = Último intento: { $when }
where-tried-why = Último intento: { $when }, { $why }
tried-no-signal = sin señal
tried-other-shop = contestó otro taller
tried-said-no = el taller dijo que no
tried-other = no se pudo usar la respuesta
where-again = Otro intento: { $when }
where-empty = Todavía no hay nada registrado.

# Today
today-empty = Todavía no hay unidad: escanea la etiqueta de la puerta o escribe su número.
pre-trip-not-started = Inspección previa: sin empezar
pre-trip-under-way = Inspección previa: en la parada { $stop }, { $answered ->
    [one] 1 contestado
   *[other] { $answered } contestados
}
pre-trip-covers = Inspección previa: { $by }, { $when }
pre-trip-ended = Día terminado: { $by }, { $when }
expected-out = Debe salir: { $when }
became-title = Qué pasó con lo que avisaste
became-not-yet-at-shop = Todavía no está en el taller: solo en este teléfono
became-at-shop = El taller ya lo tiene
became-visit = En el taller el { $day }
became-waiting-for-part = En espera de pieza: { $part }
became-waiting-promised = En espera de pieza: { $part }, prometida para el { $day }

# What was scanned instead of a door tag or a drum's label
scan-other-fleet = Esa etiqueta es de otra flota. No se abrió nada. Escribe el número de una unidad tuya.
scan-not-here = Esa etiqueta es { $said }, de tu flota, y este teléfono no conoce ese camión. No se abrió nada. Comunícate con el taller y escanéala otra vez.
scan-other-truck = Esa etiqueta se imprimió para otro camión, uno que antes era { $said }. No se abrió nada. Mira el número de la puerta y escríbelo.
scan-drum-label = Esa es la etiqueta de un tambor. No se abrió nada. Escanea la etiqueta de la puerta, o escribe el número.
scan-shop-code = Ese es el código del taller para un teléfono nuevo, y este ya está dado de alta. No se cambió nada.
scan-no-tag = Ahí dice { $said }, y ninguna unidad se llama así aquí. No se abrió nada. Escribe el número.
scan-door-tag = Esa es la etiqueta de la puerta de una unidad, no la de un tambor. No se cambió nada. Escanea el tambor, o di lo que dice su etiqueta.
drum-unknown = su etiqueta no dice nada conocido aquí

# Unit and last report
unit-left-by = Lo que dejó { $by } ({ $when })
unit-no-programme = Sin programa de servicio
unit-unlike = Diferente de { $usual }
unit-only-here = solo aquí
unit-not-here = aquí no
unit-notes-open = { $count ->
    [one] 1 aviso de pantalla sigue abierto
   *[other] { $count } avisos de pantalla siguen abiertos
}
unit-higher-used = Se usa la cifra más alta hasta que el taller lo aclare.
site-said = Sitio de hoy: { $dust }, { $when }, { $by }
report-none-found = Ningún defecto anotado en el último reporte, { $when }.
report-none-held = No hay reporte en este teléfono.
unit-known-since = No se sabe nada de { $door } antes del { $day }.
unit-nothing-known = En este teléfono no se sabe nada de { $door }.
lock-only-here = { $parts } con bloqueo en este teléfono; el taller todavía no lo sabe. Llama.
report-listed = { $count ->
    [one] 1 defecto anotado
   *[other] { $count } defectos anotados
}
report-no-certificate = sin constancia

# Walk
stop-of = { $index } / { $of }
stop-answered-together = { $lines ->
    [one] 1 contestado
   *[other] { $lines } contestados juntos
} después de { $seconds } s en pantalla
stop-open-since = Abierto desde: { $when }. ¿Sigue igual?
stop-open-since-part = Abierto desde: { $when }, espera la parte. ¿Sigue igual?
stop-by-other = { $by }, { $when }
step-said = Dicho: { $by }, { $when }
step-said-not-so = Dicho: { $by }, { $when }: { $word }
steps-skipped = No era así y se siguió
mark-to-come = falta
mark-done = hecha
mark-defect = defecto
mark-could-not-check = no se pudo revisar
mark-by-other = la hizo otra persona

# The sound of a defect
sound-record = Sonido
sound-choose = Elegir un sonido
sound-stop = Parar aquí
sound-listen = Oír
sound-stop-listening = Dejar de oír
sound-take-away = Quitar el sonido
sound-goes-with-it = Lleva un sonido
sound-recording = { $seconds ->
    [one] Grabando: queda 1 segundo
   *[other] Grabando: quedan { $seconds } segundos
}
sound-stand-clear = Lejos de lo que gira. Teléfono quieto; no te acerques más por el ruido.
sound-of-defect = Sonido del defecto
sound-not-here = Se grabó un sonido. No está en este teléfono.

# Sight glass
level-not-given = Mirilla, nivel sin marcar
level-below-view = no se ve, abajo
level-under = { $percent } % abajo del medio
level-middle = en el medio
level-over = { $percent } % arriba del medio
level-above-view = llena, arriba
level-rose = Subió y no hay agregado registrado. ¿Se echó algo?
wait-enough = Parado { $minutes } min, medido
wait-said = Parado al menos 5 minutos, dicho
wait-too-short = Lleva muy poco parado: faltan { $left } s. Si se lee ahora, se guarda fuera de los balances.
wait-ask = ¿Parado al menos 5 minutos?
running-since = Arrancó: { $when }; sin paro registrado

# Display, hours, end of day
display-no-words = Tu taller no ha escrito nada sobre esto. Si dudas, llama.
display-stopped-again = Hoy se paró solo { $count ->
    [one] 1 vez
   *[other] { $count } veces
}.
ack-told = avisó al taller
ack-seen = solo lo vio
ack-before-note = con fecha anterior al aviso, no cuenta
ack-told-here = "Avisé" quiere decir que avisaste a una persona; el aviso mismo está en este teléfono.
hours-first = Primera lectura
hours-counted = Contadas aquí por arranque y paro
hours-ceiling = { $figure } h como máximo
asked-fits = Nada que preguntar.
asked-above-ceiling = El medidor puede marcar { $ceiling } h como máximo, y { $figure } h es más.
asked-backwards = Antes marcaba { $last } h, y { $figure } h es menos.
asked-slipped-back = 0.1 h menos que antes: queda apartado, nada que preguntar.
asked-unlike-this-unit = { $rise } h más por día. Rara vez pasa de { $seldom } h por día. ¿Es correcto { $figure } h?
notice-no-pre-trip = No hay inspección previa que cubra hoy. Firma de todos modos.
notice-air-still-on = El aire arrancó y no hay paro registrado. Primero los pasos de salida.
end-none-found = Ninguno
end-covers = cubre de { $from } a { $to }

# Forecast, wear
forecast-likely = A este ritmo, probable { $likely }, entre { $earliest } y { $latest }.
forecast-open = A este ritmo, probable { $likely }, no antes de { $earliest }; el día más tarde no se puede saber.
forecast-gone-by = Ese día ya pasó, y desde entonces no se anotaron horas que cuenten.
forecast-unknown = Ritmo desconocido: por calendario.
pace-a-day = unas { $hours } h por día
hours-weighted = Quedan { $left } h ponderadas: unas { $meter } h de medidor como trabaja ahora, en { $due } h
hours-weigh-now = ahora cada hora cuenta { $weight }
hours-left-counted = contadas: quedan al menos { $least } h, como máximo { $most } h
hours-left-estimated = estimadas: quedan al menos { $least } h, probable { $likely } h, como máximo { $most } h; cuenta el mínimo
hours-counted-between = contadas: al menos { $low } h, como máximo { $high } h
hours-estimated = estimadas: mínimo { $low } h, probable { $likely } h, máximo { $high } h; cuenta el máximo
called-wrong-oil = Toca ya: se echó otro aceite o uno desconocido.
called-milky = Toca ya: se vio aceite lechoso.
called-burnt = Toca ya: se vio aceite quemado.

# Where the oil goes
oil-used = usó { $volume } en { $hours } h: unos { $rate } mL/h
oil-used-no-rate = usó { $volume } en { $hours } h: pocas horas para un ritmo
oil-used-between = entre { $least } y { $most } mL/h según dos lecturas de la mirilla
oil-carried-over = { $volume } arriba del medio, pasa al balance siguiente
oil-carried-under = { $volume } abajo del medio, pasa al balance siguiente
oil-settling = La carga nueva se está asentando: va aparte.
oil-corrected = Leído en caliente y corregido.
oil-filled-at = cargado { $when }, con { $hours } h
oil-poured-since = { $volume } agregado desde entonces
oil-usual-rate = lo normal de esta carga: unos { $rate } mL/h
oil-span = de { $from } a { $to }
oil-use-more = Usa { $times } veces lo normal desde { $since }. Revisar separador, línea de barrido, fugas.
oil-use-more-unknown = Usa más de lo normal desde { $since }; no se sabe cuánto más. Revisar separador, línea de barrido, fugas.
oil-use-less-unknown = Usa menos de lo normal desde { $since }; no se sabe cuánto menos. Revisar si tiene agua o un agregado sin anotar.
oil-use-less = Usa { $times } veces lo normal desde { $since }. Revisar si tiene agua o un agregado sin anotar.
oil-verdict-under = abajo del límite de { $limit } mL/h
oil-verdict-over = arriba del límite de { $limit } mL/h
oil-verdict-too-few-hours = muy pocas horas para decir
oil-verdict-band-too-wide = la mirilla no da para decir en tan pocas horas
oil-verdict-glass-unknown = no se puede decir: no se sabe el volumen de la mirilla
oil-verdict-settling = no se puede decir: la carga se está asentando
oil-verdict-load-share-unknown = no pasa de { $limit } mL/h, el límite a plena entrega; se hizo menos aire, así que no se puede decir sin la parte en carga
oil-verdict-less-than-nothing = no se puede decir: se usó menos que nada. ¿Nivel leído en caliente, o un agregado sin anotar?
oil-air-at-least = al menos { $mg } mg/m3 de aceite en el aire
oil-air-about = unos { $mg } mg/m3 de aceite en el aire, según la parte de carga que da el taller
oil-class = clase { $class } de aceite, ISO 8573-1
oil-class-or-worse = clase { $class } de aceite o peor, ISO 8573-1
oil-class-x = clase X de aceite, ISO 8573-1: más de 5 mg/m3
oil-astray = { $volume } de lo que se echó no se ve en la mirilla. ¿Otra unidad? ¿Se derramó? ¿Hay fuga?
oil-astray-more = La mirilla muestra { $volume } más de lo que se echó. ¿Se echó algo más?
lab-other-fill = de una carga anterior: no es de la que trae ahora
lab-answered = Laboratorio, frasco { $bottle }, muestra del { $when }: '{ $words }'
rule-is-at-most = como máximo { $limit }
rule-is-less-than = menos de { $limit }
rule-is-at-least = al menos { $limit }
rule-is-more-than = más de { $limit }
rule-is-within = de { $limit }
figure-over = { $figure }: { $said }. Así que esto es un defecto: di qué tiene, o vuelve y haz la prueba otra vez.
rule-kept = cumple la regla, { $limit }: { $rule }
rule-not-kept = no cumple la regla, { $limit }: { $rule }
rule-missing = { $rule } no puede decir: no se sabe { $fact }
leak-scaled = llevado a 60 s: hay que repetirla para dar constancia

# Un equipo de baja temporal
lay-up-since = De baja temporal desde { $when }
lay-up-by = por { $by }
lay-up-hours = con { $hours } h
lay-up-clocks = De baja temporal desde { $when }; sus plazos siguieron corriendo.
lay-up-air = Sin aire hasta que cada renglón esté hecho o dispensado con nombre. El manejo no queda bloqueado por esto.
return-list = Lista antes del regreso
return-list-stands-on = Práctica común, sin fuente. Primero va el manual del fabricante, y su propia lista va junto a esta.
return-lines-open = { $open ->
    [0] todos los renglones respondidos
    [one] falta 1 renglón de { $of }
   *[other] faltan { $open } renglones de { $of }
}
return-how-done = hecho
return-how-waived = dispensado
return-how-open = falta
