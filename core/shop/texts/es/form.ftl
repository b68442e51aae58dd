# Forms of every page.

form-unread = Este formulario no se puede leer. No se cambió nada. Hay que abrir la página otra vez.
address-unread = Esta dirección pide algo que no se puede leer. No se cambió nada. Abre la página desde otra.
form-day = Un día de ahí no es un día. No se registró nada. Vuelve y escríbelo como año-mes-día, por ejemplo 2026-10-22.
form-day-far = Un día de ahí no es de esta época. No se registró nada. Vuelve y revisa el año, entre 1980 y 2099.
form-time = Una hora de ahí no es una hora del día. No se registró nada. Vuelve y escríbela como 06:40.
form-hours = Las horas de ahí no son una cifra. No se registró nada. Vuelve y escríbelas como en el medidor, por ejemplo 2918.0.
form-comma = Una coma de ahí puede querer decir punto. No se registró nada. Vuelve y escribe el punto, como en 500.5; la coma va solo entre miles, como en 2,918.0.
form-time-of-day = Hora
form-words = Palabras
form-because = porque
hours-read-so = Sí, es lo que se lee (palomear solo si se pregunta)
hours-above = El medidor todavía no puede haber llegado ahí: son más horas que las que han pasado desde la última lectura. No se registró nada. Vuelve y mira la cifra otra vez; si es lo que se lee, palomea que así es.
hours-back = Eso es menos que lo leído antes. No se registró nada. Vuelve y mira la cifra otra vez; si es lo que se lee, palomea que así es.
hours-unlike = Eso es mucho más por día que lo que trabaja esta unidad. No se registró nada. Vuelve y mira la cifra otra vez; si es lo que se lee, palomea que así es.
