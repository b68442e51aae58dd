# Lo que bloquea cada hallazgo.

severities-title = Lo que bloquea cada hallazgo
severities-way = lo que bloquea cada hallazgo
severities-beside = Lo que bloquea la palabra de un hallazgo, en los teléfonos igual que aquí, hasta que el taller dé constancia. Un cambio vale para lo que se encuentre desde entonces; lo encontrado antes sigue bloqueando lo que bloqueó. El chofer puede subirlo, nunca bajarlo. Bloquear menos no cambia nada en el camión: el manual del fabricante, la ley local y las personas con licencia van antes que esta lista.
severities-before = Antes del recorrido
severities-own-count = { $count } propias del taller
severities-set = Fijar estas: { $stop }
severities-stands-on = Escrito en: { $text }
severities-usual = propio del taller; lo habitual es: { $usual }
severities-again = { $word }, la segunda vez en { $days } días
severities-none = No se nombró ninguna palabra. No se cambió nada. Vuelve y elige otra vez.
severities-unknown = Eso no es algo que un hallazgo pueda bloquear. No se cambió nada. Vuelve y elige otra vez.
stands-on-common-practice = práctica común, sin fuente
stands-on-shop-rule = regla propia del taller
stands-on-shop-or-state = política de la empresa o regla estatal
stands-on-cdl-5-3 = manual CDL modelo, sección 5.3
severities-why = Por qué, si un hallazgo va a bloquear menos que de costumbre
