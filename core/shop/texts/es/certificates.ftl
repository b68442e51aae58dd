# Constancias y sus papeletas.

certify-legend = El defecto
certify-in-words = Trabajo hecho, o por qué no requiere reparación
certify-by = Firma por nombre: { $name }
certify-then = El bloqueo sigue hasta la revisión del siguiente chofer.
sign-and-next = Firmar y seguir
certify-which = Falta decir cuál: reparado, o no requiere reparación. No se firmó nada. Al volver, lo escrito sigue ahí.
certify-words = Falta decir con palabras qué se hizo, o por qué no requiere reparación. No se firmó nada. Vuelve y escríbelo.
certify-reader = Con este acceso se puede leer y no escribir: firma alguien del taller.
certify-signed = Firmado: { $unit }, { $what }, { $verdict }.
certify-print-slip = Imprimir su papeleta para un patio sin señal
certify-gone = Ese defecto ya no espera constancia.
certify-rest = esperan después
sound-one = sonido
sound-of-defect = Sonido del defecto, 10 segundos a lo más.
sound-open = Abrirlo aparte
photo-n = foto { $n }
more-said = Otra respuesta

slip-title = Constancia
slip-on = A la siguiente constancia
slip-certified = Constancia de
slip-found = Encontrado
slip-how = Si no hay señal en el patio: en la página de la unidad, elegir "Escribir el código" y escribir el código de ese mismo teléfono.
slip-codes = Códigos, uno por teléfono
slip-then = El teléfono muestra entonces que al bloqueo le falta revisión del chofer. Termina cuando la constancia misma llega al teléfono y el chofer la revisa.
slip-found-again = Se encontró otra vez después de esta constancia: no hay código, y el bloqueo sigue.
slip-over = El bloqueo terminó: no hace falta código.
slip-entry = Registro { $entry }
head-code = Código
