# What happened. What is kept. What to do.

error-no-signal = Sin señal desde: { $since }. { $count ->
    [0] Nada espera en este teléfono. Sigue; lo que anotes queda guardado.
    [one] Tu registro está guardado en este teléfono. Sigue; se envía solo, o entrégalo por archivo.
   *[other] Tus { $count } registros están guardados en este teléfono. Sigue; se envían solos, o entrégalos por archivo.
}
error-phone-full = Este teléfono está lleno. Lo firmado está guardado; esta foto no. Haz espacio y tómala otra vez.
error-wrong-pin = Ese PIN no es de { $name }. No se firmó nada; lo escrito está guardado ({ $what }). Prueba en { $seconds } s, o firma sin PIN: quedará dicho.
error-wrong-pin-again = Ese PIN no es de { $name }. No se firmó nada; lo escrito está guardado ({ $what }). Prueba otra vez, o firma sin PIN: quedará dicho.
error-pin-wait = Demasiados PIN equivocados. Este no se revisó. Espera { $seconds } s, o firma sin PIN: quedará dicho.
error-pin-digits = Un PIN tiene de 6 a 12 cifras y nada más. No se cambió nada. Elige otro.
error-pin-too-plain = Un PIN de una sola cifra, o de cifras seguidas, se adivina pronto. No se cambió nada. Elige otro.
error-pin-not-the-old = Ya hay un PIN y no es ese. No se cambió nada. Da primero el anterior.
error-pin-not-kept = No se pudo guardar el PIN. No se cambió nada. Haz espacio en este teléfono y prueba otra vez.
error-code-ran-out = Ese código venció a los { $minutes } minutos. No se agregó nada. Pide otro al taller.
error-code-used = Otro teléfono usó ese código. No se agregó nada. Pide otro al taller.
error-code-unknown = El taller nunca dio ese código. No se agregó nada. Pide otro al taller.
error-other-shop = No es el taller que este teléfono conoce: su llave es otra. No se envió nada, todo está guardado. Llama al taller antes de seguir.
error-phone-stopped = El taller paró este teléfono el { $when }. { $count ->
    [0] Todo lo tuyo está allá.
    [one] Tu registro está guardado y se puede entregar por archivo; allá decide una persona.
   *[other] Tus { $count } registros están guardados y se pueden entregar por archivo; allá decide una persona.
} Usa otro teléfono o papel.
error-book-damaged = Parte del cuaderno no se puede leer. { $kept ->
    [one] Hay 1 de { $all } registros guardado
   *[other] Hay { $kept } de { $all } registros guardados
}, y también el archivo dañado. Comunícate con el taller: quizá tenga los que faltan.
error-photo-stopped = La foto se detuvo en { $percent } % al irse la señal. El defecto ya está en el taller. La foto sigue sola.
error-bad-signatures = { $count ->
    [one] 1 registro de { $phone } trae una firma que no vale. Quedó apartado
   *[other] { $count } registros de { $phone } traen una firma que no vale. Quedaron apartados
}; { $taken ->
    [0] no venía otro
    [one] el otro se recibió
   *[other] los otros { $taken } se recibieron
}. Abre Apartados.
error-file-forged = { $count ->
    [one] 1 registro trae una firma que no vale. No se recibió
   *[other] { $count } registros traen una firma que no vale. No se recibieron
}; los otros { $taken } sí. Dile al taller de quién era el archivo.
error-shop-disk-full = El disco del taller está lleno. Nada quedó a medias; los teléfonos guardan sus registros y reintentan. Haz espacio.
error-slip-length = El código de la papeleta tiene 12 cifras. No se cambió nada. Escríbelas todas.
error-slip-mistyped = Hay una cifra mal escrita. No se cambió nada. Escribe el código otra vez.
error-slip-wrong = Ese código no es de este defecto en este teléfono. No se cambió nada. Busca en la papeleta el nombre de este teléfono y este defecto, o llama al taller.
error-slip-wrong-wait = Ese código no es de este defecto en este teléfono. No se cambió nada. Espera { $seconds } s y mira la papeleta otra vez, o llama al taller.
error-slip-wait = Hubo demasiados códigos equivocados. Este no se revisó. Espera { $seconds } s y escríbelo otra vez.
error-slip-nothing-locked = Ese defecto no bloquea nada, o ya tiene constancia. No se cambió nada. Mira la unidad otra vez.
error-slip-book = El cuaderno no se puede leer o escribir ahora. No se cambió nada. Intenta otra vez.
error-other-fleet = Es un archivo de otra flota: no se recibió nada. Pídele el suyo a tu taller.
error-draft-newer = Una versión más nueva de este programa empezó esto. Está guardado. Actualiza la aplicación y sigue.
error-not-a-photo = Esto no es una foto: se guardan JPEG, PNG y WebP. Lo firmado está guardado; esto no. Toma otra.
error-photo-cut = Esta foto está cortada. Lo firmado está guardado; esta foto no. Tómala otra vez.
error-photo-too-large = Esta foto tiene más de 4 MiB. Lo firmado está guardado; esta foto no. Tómala otra vez, más chica.
error-photo-damaged = Esta foto está dañada en este teléfono. El registro que la nombra está guardado. Tómala otra vez, en un registro nuevo.
error-not-a-sound = Esto no es un sonido que se pueda guardar: se guardan WAV de un canal y AAC en MP4. Lo dicho queda guardado; esto no se guardó. Grábalo aquí.
error-sound-cut = Este sonido está cortado. Lo dicho queda guardado; este sonido no se guardó. Grábalo otra vez.
error-sound-too-long = Este sonido dura más de 10 segundos. Lo dicho queda guardado; este sonido no se guardó. Grábalo otra vez, más corto.
error-sound-too-large = Este sonido tiene más de 512 KiB. Lo dicho queda guardado; este sonido no se guardó. Grábalo aquí: así ocupa menos.
error-sound-full = No hay espacio en este teléfono: el defecto queda guardado, el sonido no. Haz espacio y grábalo otra vez.
error-sound-damaged = Este sonido está dañado en este teléfono. El registro que lo nombra está guardado. Grábalo otra vez, en un registro nuevo.
error-sound-stopped = El sonido se detuvo en { $percent } % al irse la señal. El defecto ya está en el taller. El sonido sigue solo.
error-microphone-not-allowed = Esta aplicación no tiene permiso de usar el micrófono. Lo dicho queda guardado, sin sonido. Dale permiso en los ajustes del teléfono, o di el ruido con palabras.
error-no-microphone = El micrófono no dio sonido: quizá lo usa otra aplicación. Lo dicho queda guardado, sin sonido. Prueba otra vez, o di el ruido con palabras.
error-sound-not-played = Este sonido no se puede oír en este teléfono. Está guardado y va con el defecto. Óyelo en el taller.
error-shop-set-back = El taller volvió a un día anterior. No se perdió nada: lo que perdió se envía otra vez.
error-two-shops = Dos talleres contestan con una misma llave. No se perdió nada. Avisa al taller antes de seguir.
error-own-back = { $count ->
    [one] 1 registro que este teléfono escribió antes regresó
   *[other] { $count } registros que este teléfono escribió antes regresaron
} del taller. No se perdió nada. El teléfono se restauró de una copia, o hay una copia en uso: usa uno solo.
error-placed-again = { $count ->
    [one] 1 registro de este teléfono lo escribió
   *[other] { $count } registros de este teléfono los escribió
} también una copia suya. No se perdió nada: quedó todo en su lugar otra vez. Avisa al taller que este teléfono fue copiado.
