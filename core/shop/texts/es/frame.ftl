# What stands around every page, signing in, and answers that are no page.

place-day = Hoja del día
place-units = Unidades
place-due = Vencimientos y visitas
place-people = Personas y teléfonos
place-aside = Apartados
place-in-out = Entra y sale
place-paper = Hoja de papel
place-sign-in = Entrar

skip = Saltar a la página
pages = Páginas
find = Buscar
find-go = Ir
choices = Idioma y unidades
units-us = unidades de EE. UU.
units-metric = métricas
signed-in-as = Entró: { $name }
sign-out = Salir
print = Imprimir
demo-label = Flota inventada
demo-strip = Flota inventada; para ver primero:
demo-answers = las dos respuestas de TH-02
demo-struck = el 7,421.0 tachado de TH-03
demo-ruler = la regla de TH-01

sign-in = Entrar
sign-in-name = Nombre
sign-in-password = Contraseña
sign-in-show = mostrar la contraseña
sign-in-wrong = El nombre o la contraseña no coinciden. No se abrió nada. Espera { $seconds } s.
sign-in-wait = Muy pronto después de un intento que no coincidió: este no se miró. No se abrió nada. Espera { $seconds } s y luego intenta otra vez.
sign-in-nobody = Nadie puede entrar todavía. En la computadora del taller: sumpbook password NOMBRE
sign-in-demo = Para entrar a la demostración: { $name }, contraseña { $password }
sign-in-address = Esta dirección: { $address }
sign-in-key = Su llave: { $key }
sign-in-forgotten = ¿Contraseña olvidada? Alguien en la computadora del taller pone otra: sumpbook password NOMBRE

refused-title = Esto no se hizo
refused-sign-in = Nadie ha entrado. Entra primero.
refused-reader = Con este nombre se puede leer y no escribir. No se cambió nada.
refused-forged = Este formulario no vino de una página de esta consola, o ya se había salido. No se cambió nada. Abre la página otra vez.
refused-too-large = Es más de lo que cabe en un formulario. No se cambió nada.
refused-only-forms = A esta dirección solo se envía un formulario; no hay página que leer. No se cambió nada. Abre la página del formulario.
back-to-form = Volver al formulario
back-keeps = El botón Atrás del navegador conserva lo escrito.
go-to-form = A la página del formulario
refused-no-unit = Aquí no hay ninguna unidad con el número «{ $unit }». No se cambió nada.
refused-not-there = No hay nada en esta dirección. No se cambió nada.
refused-broken = Los cuadernos no se pueden leer o escribir ahora. Lo registrado antes está guardado. Mira lo que dice el servidor en su propia pantalla.
go-to-units = A la lista de unidades
go-to-day-sheet = A la hoja del día

# Small words of every page
and = { " y " }
none-dash = -
none-word = ninguno
not-said = no se dijo
not-yet = todavía no
never = nunca
never-since-added = nunca desde que se añadió: { $when }
added-not-heard = añadido: { $when }, todavía sin noticias
nobody = nadie
dated-before-note = { $who } { $when }, con fecha anterior al aviso, no cuenta
any-time = a cualquier hora
the-fleet = la flota
no-hours = sin horas
from-to = { $from } > { $to }
at-most = { $figure } como máximo
glass-below = no se ve, abajo
glass-above = llena, arriba

# Road and air
lock-road = MANEJO
lock-air = AIRE
lock-outlet = salida de aire { $name }
no-lock = sin bloqueo registrado
lock-stands = BLOQUEADO
lock-awaiting = BLOQUEADO, falta revisión del chofer
road-line = Manejo: { $state }
air-line = Aire: { $state }
locks-nothing = nada

# How a task stands
due-past-due = vencido
due-due-today = vence hoy
due-coming-up = se acerca
due-far-off = lejos
due-unknown = falta una cifra
due-closed = hecho
due-hours = { $hours } h
due-days = { $days ->
    [one] 1 día
   *[other] { $days } días
}
due-waiting = en espera de pieza
due-higher-of-disputed = la mayor de dos en duda
due-across-jump = después de un salto sin aclarar
first-hours = horas
first-calendar = calendario
part-promised = { $part }, prometida para el { $day }
