# When hours run out, and hours that are counted, estimated or weighted.

first-unknown = por calendario, ritmo desconocido
pace-unknown = Por calendario: ritmo desconocido.
likely-between = { $first }, probable { $likely } ({ $earliest } a { $latest })
likely-open = { $first }, probable { $likely } (no antes del { $earliest }, el último día no se sabe)
hours-likely-between = horas probable { $likely } ({ $earliest } a { $latest })
hours-likely-open = horas probable { $likely } (no antes del { $earliest }, el último día no se sabe)
likely-gone-by = { $said }, ya pasó sin horas anotadas desde entonces
weighted = ponderadas
ruler-weighted = Ponderadas: una hora cuenta { $weight } ahora, son { $meter } h en el medidor, hasta { $at } h.
ruler-weighted-past = Ponderadas: una hora cuenta { $weight } ahora.
ruler-counted = Contadas por arranque y paro: quedan al menos { $least } h, como máximo { $most } h.
ruler-estimated = Estimadas: quedan al menos { $least } h, probable { $likely } h, como máximo { $most } h; cuenta lo menos.
at-least-left = al menos { $hours }
called-by-wrong-oil = adelantado por aceite equivocado
called-by-milky = adelantado por aceite lechoso
called-by-burnt = adelantado por aceite quemado

other-meters = Otros medidores
other-meters-apart = No cuentan para los servicios del compresor.
meter-total = { $hours } h con todos sus medidores
hours-unsure-runs = { $count ->
    [one] A 1 arranque le falta un extremo: cuenta lo máximo.
   *[other] A { $count } arranques les falta un extremo: cuenta lo máximo.
}
hours-still-runs = Arrancó { $when } y no hay paro registrado: sigue contando hasta que alguien lo pare.
hours-up = horas
hours-say = Horas leídas: { $count } cifras que cuentan, { $struck } tachadas; la más nueva que cuenta { $newest } h. Las mismas cifras están abajo en la tabla.
feed-likely = { $unit }: { $task }, las horas probablemente se acaban
feed-called = { $unit }: { $task }, lo pide el aceite
feed-by-pace = Al ritmo de las últimas semanas, las horas del medidor probablemente se acaban este día. Se mueve con el ritmo.

rules-say = Las cifras según las reglas
rules-only-shown = Se muestran lado a lado. Aquí no deciden nada; valen las palabras del defecto.
rule-no-verdict = no puede decir, { $limit }: { $rule }
fact-cut-out = el corte del gobernador
fact-reservoir-share = el volumen de los tanques
fact-mawp = la presión máxima de trabajo del tanque
fact-vehicles = el número de vehículos
