# Pages of paper.

paper-type = Capturar una hoja de papel
paper-blank = Hoja en blanco para imprimir
paper-blank-what = Solo lo que la unidad lleva, en los dos idiomas. Trae su edición, para que se note un bloc viejo.
paper-photo = Foto de la hoja (JPEG, PNG o WebP, 4 MiB a lo más)
paper-photo-alt = Foto de la hoja firmada
paper-go = Al formulario
paper-no-unit = No hay unidad. No se guardó nada. Vuelve y da su número.
photo-large = Esta foto tiene más de 4 MiB. No se guardó. Vuelve y toma una más chica.
photo-kind = Esto no es una foto que se pueda guardar: solo JPEG, PNG y WebP. No se guardó. Vuelve y elige otra.
photo-damaged = Esta foto está dañada. No se guardó. Vuelve y tómala otra vez.

paper-title = Capturar una hoja de papel, { $unit }
paper-edition-on-page = Edición en la hoja
paper-edition = edición { $edition }
paper-kept = La hoja está guardada. ¿La siguiente?
paper-all-here = Todo lo escrito sigue aquí.
paper-old = Esta es la edición { $edition }, de un bloc viejo. Hay que imprimir hojas nuevas.
paper-no-longer = Está en ella y ya no se pregunta: { $lines }.
paper-not-yet = Se pregunta ahora y no está en ella: { $lines }.
paper-no-photo = No se dio foto de esta hoja.
paper-turn = Girar
paper-zoom = Más grande
paper-keys = Teclas: 1 OK, 2 defecto, 3 no lo lleva, 4 no se pudo revisar. Después pasa al renglón siguiente.
paper-word = Qué tiene
paper-signed = Lo que está debajo de los renglones
paper-hours = Horas del medidor
paper-glass = Mirilla, por ciento
paper-drop-released = Caída en 60 s, frenos sueltos, psi
paper-drop-applied = Caída en 60 s, pedal pisado, psi
paper-driver = Chofer en la hoja
paper-signed-day = Día en la hoja
paper-signed-at = Firmada en papel a las
paper-number = hoja núm.
paper-typed-by = La captura { $who }
paper-typed = { $typed } de { $of } capturados
paper-blank-lines = Los renglones sin contestar aquí están en blanco también en la hoja
paper-keep = Guardar como papel
paper-no-edition = No hay hoja de esa edición. No se registró nada.
paper-no-time = La hoja no tiene día y hora. No se registró nada. Hay que dar lo que está en ella.
paper-no-driver = La hoja no tiene chofer. No se registró nada. Hay que elegir quién la firmó.
paper-lines-open = Hay renglones sin contestar. No se registró nada. Hay que capturarlos, o decir que están en blanco en la hoja.
paper-no-word = Un defecto no tiene palabra. No se registró nada. Hay que elegir qué tiene en ese renglón.
paper-figure = Una cifra de ahí no es de su clase. No se registró nada. Hay que darla como está en la hoja.

# The sheet itself
paper-blank-of = Hoja en blanco, { $unit }
paper-sheet = { $number } de { $of }
paper-date = Fecha
paper-circles = Un círculo por renglón: 1 OK, 2 defecto, 3 no lo lleva, 4 no se pudo revisar. Las palabras de un defecto van abajo.
paper-draw = Se marca con una raya en la mirilla hasta dónde llega el aceite.
paper-defects = Defectos: renglón y palabras
paper-signature = Firma
paper-typed-on = Capturada por, el
