# Set aside.

aside-oldest = el más antiguo: { $when }
aside-as-signed = como se firmó
aside-unread = Esta versión no puede leer lo que se firmó.
aside-signature-holds = Su firma vale.
aside-signature-not = Su firma no vale.
aside-way-shop-only = Esto solo lo escribe el taller. Queda a la vista y no cuenta. Si es cierto, hay que anotarlo aquí en el taller.
aside-way-two-contents = Hay dos contenidos con una misma identificación. Los dos quedan a la vista y no cuentan. Hay que preguntar a quien firmó y registrarlo otra vez.
aside-way-newer-version = Lo hizo una versión más nueva de este programa. Está guardado. Al actualizar este, cuenta por sí solo.
aside-way-unreadable = Lo firmado no es un registro. Queda a la vista y no cuenta.
aside-accept-words = Nombre de quien lo da por cierto
aside-accept = Aceptar por nombre
aside-leave-out = Dejar fuera por nombre
aside-reading-words = Nombre de quien decide, por esta cifra
aside-reading-stands = Esta cifra vale
aside-reading-not = No usar esta cifra
aside-twice-words = Nombre de quien decide, por los dos
aside-same-service = Es el mismo servicio
aside-both-stand = Dos servicios, valen los dos
aside-used = Se usa mientras tanto: { $hours }
aside-no-reason = No hay motivo. No se registró nada. Vuelve y di por qué, con tus palabras.
aside-no-name = No hay nombre. No se registró nada. Vuelve y escribe tu nombre.
aside-other-name = Ese no es el nombre con que se entró. No se registró nada. Vuelve y escribe tu nombre, o entra con él.
aside-no-verdict = No se eligió nada. No se registró nada. Vuelve y oprime lo que se decide.
section-settled = Aclarado antes
none-settled = todavía no se ha aclarado nada
aside-otherwise = Decidir de otra manera
aside-otherwise-words = Nombre de quien decide de otra manera
became-use = cuenta
became-do-not-use = queda fuera, a la vista
became-same-service = es el mismo servicio
became-reading-stands = esta cifra vale
became-late-accepted = aceptado por nombre, cuenta
section-outside = No se recibió
aside-outside-row = { $count ->
    [one] Uno de { $from }: { $why }, { $when }
   *[other] { $count } de { $from }: { $why }, el último { $when }
}
aside-forged = { $count ->
    [one] Un registro de { $from } trae una firma que no vale. Quedó apartado; los otros se recibieron. El último { $when }.
   *[other] { $count } registros de { $from } traen una firma que no vale. Quedaron apartados; los otros se recibieron. El último { $when }.
}
aside-outside-kept = Lo que llegó está guardado fuera de los cuadernos, como llegó. Lo demás que venía con ello se recibió.
outside-signature = una firma que no vale
outside-parcel-signature = una firma del remitente que no vale
outside-other-fleet = es de otra flota
outside-other-shop = nombra esta flota con la llave de otro taller
outside-other-actor = escribe con el nombre de otro
outside-place = nombra un lugar imposible
outside-payload = su contenido no tiene límites
outside-fork = hay otro registro en su lugar
outside-predecessor = sigue a un registro que nadie tiene
outside-damaged = sus datos están dañados
outside-unknown-sender = viene de un teléfono que no se conoce aquí
outside-malformed = nombra un registro que su propio archivo no trae
