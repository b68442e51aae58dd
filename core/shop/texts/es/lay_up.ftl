# Un equipo de baja temporal, y equipos anotados en otro camión que el de su alta.

part-lay-up = Baja temporal
lay-up-none = Sin baja temporal.
lay-up-do = Dar de baja temporal el equipo compresor
lay-up-done-words = Qué se hizo antes de guardarlo
lay-up-then = Desde ese momento su aire queda bloqueado hasta responder la lista antes del regreso. Sus plazos siguen corriendo. El manejo no queda bloqueado por esto.
lay-up-keep = Guardar la baja
lay-up-back = Regresó { $when }: { $by } respondió el último renglón.
lay-up-no-day = A la baja le faltan el día y la hora. No se guardó nada. Vuelve y da los dos.
lay-up-ahead = Ese momento todavía no llega. No se guardó nada. Vuelve y da la hora en que se guardó el equipo.

do-return-list = Responder la lista
return-keep = Guardar estas respuestas
return-why = por qué se dispensa
return-why-of = Por qué, para { $line }
return-no-line = No se respondió ningún renglón. No se guardó nada. Vuelve y di de un renglón que se hizo o se dispensa.
return-no-reason = Un renglón se dispensa sin decir por qué. No se guardó nada. Vuelve: lo elegido sigue ahí. Escribe por qué.
head-line = Renglón
head-look-at = Qué mirar
head-answer = Respuesta

laid-up-rows = De baja temporal; los plazos siguieron corriendo
section-laid-up = { $count ->
    [one] De baja temporal, su plazo siguió corriendo: 1 renglón
   *[other] De baja temporal, sus plazos siguieron corriendo: { $count } renglones
}
due-laid-up = de baja temporal desde { $when }, plazos corriendo
expected-laid-up = de baja temporal desde { $when }

set-told-fitted = Equipo { $set } anotado como montado aquí { $when }, { $who }; dado de alta en { $on }. Manda el alta: dar de alta el equipo donde está, o resolver ese registro.
set-told-removed = Equipo { $set } anotado como desmontado { $when }, { $who }; dado de alta en { $on }. Manda el alta: dar de alta el equipo donde está, o resolver ese registro.
set-on-no-truck = ningún camión
recorded-on = anotado en { $unit }
history-gone = { $count ->
    [one] 1 registro del aire no está entre ellos: su equipo está ahora en { $to }.
   *[other] { $count } registros del aire no están entre ellos: su equipo está ahora en { $to }.
}
