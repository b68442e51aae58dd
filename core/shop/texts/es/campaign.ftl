# Campañas de fabricantes: un trabajo que se hace una vez en unidades de ciertas series, hasta un día.

section-campaigns = Campañas de fabricantes
campaigns-none = ninguna registrada
head-campaign = Campaña del fabricante
head-serial = Serie
open-campaigns = { $count ->
    [one] 1 campaña por hacer
   *[other] { $count } campañas por hacer
}
open-campaigns-look = { $count ->
    [one] por revisar para 1 campaña
   *[other] por revisar para { $count } campañas
}

campaign-counts = { $all ->
    [one] 1 unidad comparada
   *[other] { $all } unidades comparadas
}: { $open } por hacer, { $past } de ellas pasadas de su último día u hora buena, { $look } por revisar, { $done } hechas
campaign-of-set = de equipos compresores { $ranges }
campaign-of-truck = de camiones { $ranges }
campaign-range = { $from } a { $to }
campaign-until = último día bueno { $day }
campaign-until-hours = último día bueno { $day } o al llegar a { $hours } h, lo que llegue primero
campaign-locks-nothing = no bloquea nada
campaign-locks-after = después de ese día bloquea { $part }
campaign-locks-now = el fabricante dice parar: bloquea { $part } hasta que se haga
campaign-paper-said = documento { $paper }
campaign-read-at-said = se lee en { $paper }
campaign-no-paper = número del documento sin registrar
campaign-entered = registrada { $when }, como está ahora por { $who }
campaign-withdrawn = Retirada { $when }: { $why }
campaign-units = Unidades de { $name }
campaign-no-serial = sin registrar
campaign-state-open = por hacer
campaign-state-past-deadline = pasada de su último día u hora buena
campaign-state-look = por revisar
campaign-state-done = hecha
campaign-state-withdrawn = retirada
campaign-state-not-of-this-unit = no es de esta unidad
campaign-late = { $days ->
    [one] 1 día tarde
   *[other] { $days } días tarde
}
campaign-days-left = { $days ->
    [0] hoy es el último día bueno
    [one] queda 1 día
   *[other] quedan { $days } días
}
campaign-looked = revisada: { $why }

campaign-look-at = Revisar { $unit }
campaign-is-meant = Es de la campaña
campaign-is-not-meant = No es de la campaña
campaign-look-why = Qué se revisó y qué decía
campaign-own-name = El nombre con que se entra
campaign-look-keep = Guardar lo visto
campaign-withdraw = Retirar { $name }
campaign-withdraw-keep = Retirarla
campaign-enter = Registrar una campaña de fabricante
campaign-enter-says = Una del mismo nombre se cambia entera. Las series se ordenan por su texto y luego por el número al final; mayúsculas, espacios y signos no cuentan. Una unidad cuya serie no se puede comparar se nombra para revisarla. El documento del fabricante va primero.
campaign-name = Nombre aquí, como el número del documento
campaign-words = Qué hay que hacer
campaign-paper = Número del documento del fabricante
campaign-read-at = Dónde se puede leer
campaign-of = Series de
campaign-sets = Equipos compresores
campaign-trucks = Camiones
campaign-ranges = Series, un rango por renglón, dos puntos seguidos entre la primera y la última; o una sola
campaign-deadline = Último día bueno
campaign-hours = Últimas horas buenas de la unidad, si el documento las da
campaign-locks = Qué bloquea después
campaign-stop = El fabricante dice parar: bloquea desde ahora
campaign-keep = Guardar la campaña

campaign-no-name = La campaña no tiene nombre. No se registró nada. Vuelve y da uno, como el número del documento.
campaign-no-words = Nada dice qué hay que hacer. No se registró nada. Vuelve y dilo.
campaign-no-range = No se dieron series. No se registró nada. Vuelve y da un rango por renglón.
campaign-no-day = La campaña no tiene último día bueno. No se registró nada. Vuelve y dalo.
campaign-no-answer = Nada dice si la unidad es de la campaña. No se registró nada. Vuelve y elige.
