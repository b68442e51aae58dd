# Forms of every page.

form-unread = Este formulario no se puede leer. No se cambió nada. Hay que abrir la página otra vez.
form-day = Un día de ahí no es un día. No se registró nada. Hay que volver y escribirlo como año-mes-día, por ejemplo 2026-10-22.
form-time = Una hora de ahí no es una hora del día. No se registró nada. Hay que volver y escribirla como 06:40.
form-hours = Las horas de ahí no son una cifra. No se registró nada. Hay que volver y escribirlas como en el medidor, por ejemplo 2918.0.
form-time-of-day = Hora
form-words = Palabras
form-because = porque
