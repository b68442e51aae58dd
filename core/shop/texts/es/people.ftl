# People and phones.

section-people = Personas
section-all-phones = Teléfonos
section-signs = Quién puede abrir estas páginas
head-name = Nombre
head-role = Puesto
head-on-phones = En teléfonos
head-last-signed = Última firma
head-pin = Dio PIN
head-news = Noticias que tiene
head-clock-off = Reloj desviado
head-program = Programa
head-only-there = Solo ahí
head-key = Su llave
head-may = Puede
word-yes = sí
word-no = no

people-of-days = Firmas de los últimos 14 días.
people-not-lately = no en 14 días
people-add = Agregar o cambiar a esta persona
people-kept = { $name }: anotado como { $role }
people-kept-gone = { $name }: anotado que ya no está
people-gone = ya no está
people-change = ya está aquí: cambiar lo anotado
people-here-already = { $name } ya está aquí, como { $role }. No se cambió nada. Para cambiarlo, vuelve y marca que ya está aquí; otra persona del mismo nombre necesita uno que la distinga.
people-no-name = No hay nombre. No se cambió nada. Vuelve y da uno.
people-no-role = No hay puesto. No se cambió nada. Vuelve y elige uno.
people-code-ran-out = Ese código venció a los 15 minutos. No se agregó nada. Hay que hacer otro en Personas y teléfonos.
people-code-used = Otro teléfono usó ese código. No se agregó nada. Hay que hacer otro en Personas y teléfonos.
people-code-unknown = Este taller nunca dio ese código. No se agregó nada. Hay que preguntar quién lo mostró y hacer otro en Personas y teléfonos.
people-nobody-waits = Ya no espera ningún teléfono con esa llave. No se agregó nada. Hay que ver la lista de teléfonos.
people-compare-first = No se compararon las dos llaves. No se agregó nada. Vuelve, pon el teléfono junto a esta página y compáralas primero.

phones-quiet = { $count ->
    [one] Un teléfono sin noticias en 24 h
   *[other] { $count } teléfonos sin noticias en 24 h
}
phone-quiet = sin noticias en 24 h
phone-stopped = parado
program-since = { $version }, desde { $when }
news-all = todo lo que hay
news-upto = hasta { $when }
only-there-since = no se sabe desde { $when }
only-there-unknown = no se sabe
lost-phone = Perdido: parar este teléfono

ask-row = Un teléfono que se llama { $name } pide entrar. Su llave: { $key }
ask-open = Hay que comparar esta llave con la que muestra ese teléfono.
ask-ran-out = Su código venció a los 15 minutos. No se agregó nada. Hay que hacer otro.
ask-used = Otro teléfono usó su código. No se agregó nada. Hay que hacer otro.
ask-unknown = Este taller nunca dio su código. No se agregó nada. Hay que preguntar quién lo mostró.
ask-same = ese teléfono muestra la misma llave
let-in = Dejar entrar, { $who }

add-phone = Agregar un teléfono
code-hub = Los teléfonos llegan al taller en
code-units = Unidades que tiene al principio (todas si son pocas)
code-no-hub = Eso no es una dirección con puerto, por ejemplo sumpbook.yard:8443. No se hizo ningún código. Vuelve y da una.
code-many-units = Un código lleva a lo más 12 unidades. No se hizo ningún código. Vuelve y nombra menos; el teléfono puede pedir otras.
code-how = En el teléfono: Agregar este teléfono, y escanear el código del taller.
code-left = Quedan { $minutes } min { $seconds } s, para un solo teléfono.
code-picture = El código en imagen
code-same = Lo mismo para escribirlo:
code-key = Su llave: { $key }
code-then = Después, comparar las llaves y dejarlo entrar

stop-phone = Parar este teléfono
stop-title = Perdido: parar { $phone }
stop-held = Lo que el taller ya tenía de él sigue contando. Su última comunicación: { $when }.
stop-still-there = Los registros que siguen en él quedan guardados ahí y se pueden entregar por archivo. Entonces esperan en Apartados hasta que una persona decida por nombre.
stop-told = El teléfono lo dice en su próxima comunicación, y ya no recibe nada del taller.
stop-for-ever = Un teléfono parado no vuelve a entrar con la misma llave. Si aparece, se agrega de nuevo.
stop-already = Este teléfono ya está parado.
stop-no-reason = No hay motivo. El teléfono no se paró. Vuelve y di por qué.
stop-not = No pararlo

may-shop = ve todo y escribe
may-reader = ve todo y no escribe nada
signs-nobody = nadie con este nombre está aquí, así que no escribe nada
signs-set = Poner este acceso
signs-again = La contraseña otra vez
signs-remove = Quitar este acceso
signs-no-role = No se dijo qué puede hacer. No se cambió nada. Vuelve y elige.
signs-not-twice = Las dos contraseñas no son iguales. No se cambió nada. Vuelve y escribe las dos otra vez.
signs-no-person = Nadie con este nombre está aquí. No se cambió nada. Primero hay que agregar a la persona.
signs-short = Una contraseña tiene 8 caracteres por lo menos. No se cambió nada. Vuelve y elige una más larga.
signs-last = Este es el último acceso que puede escribir. No se cambió nada. Primero otro tiene que poder escribir.

# What phones say
section-says = Lo que dicen los teléfonos
says-beside = A quién llamar y qué hacer con un aviso de pantalla, en palabras propias del taller. Nada de esto es del programa.
says-emergency = Número de emergencia si hay heridos
says-call = A quién llamar, { $n }
says-number = Número
says-of = Junto a un aviso de pantalla: { $kind }
says-set = Fijar lo que dicen los teléfonos
says-no-number = Un nombre no tiene número. No se cambió nada. Vuelve y da su número, o quita el nombre.
says-too-long = Una de estas palabras pasa de 200 signos, y ningún teléfono la muestra entera. No se cambió nada. Vuelve y acórtala.

pin-of = PIN nuevo para
pin-nobody = nadie elegido
pin-ask = Pedir un PIN nuevo
pin-asked = se pidió uno nuevo { $when }
people-signs-in = { $name } todavía tiene un acceso que puede escribir. No se cambió nada. Quita primero ese acceso, abajo en esta página; después di que ya no está.
