# When hours run out, and hours that are counted, estimated or weighted.

first-unknown = por calendario, ritmo desconocido
pace-unknown = Por calendario: ritmo desconocido.
likely-between = { $first }, probable { $likely } ({ $earliest } a { $latest })
likely-open = { $first }, probable { $likely } (no antes del { $earliest }, el último día no se sabe)
hours-likely-between = horas probable { $likely } ({ $earliest } a { $latest })
hours-likely-open = horas probable { $likely } (no antes del { $earliest }, el último día no se sabe)
weighted = ponderadas
ruler-weighted = Ponderadas: una hora cuenta { $weight } ahora, son { $meter } h en el medidor, hasta { $at }.
ruler-weighted-past = Ponderadas: una hora cuenta { $weight } ahora.
ruler-counted = Contadas por arranque y paro: quedan al menos { $least } h, como máximo { $most } h.
ruler-estimated = Estimadas: quedan al menos { $least } h, probable { $likely } h, como máximo { $most } h; cuenta lo menos.
at-least-left = al menos { $hours }
called-by-wrong-oil = pedido ya: aceite equivocado
called-by-milky = pedido ya: aceite lechoso
called-by-burnt = pedido ya: aceite quemado
