# What lies on the trucks in cans, and what to load.

stock-title = Aceite a bordo
stock-open = aceite a bordo
stock-says = Lo que alguien contó en un camión, menos lo que se le puso desde entonces. Al cargar otra vez, se cuenta otra vez.
section-to-load = Por cargar, por lo que se agregó desde entonces
stock-nothing = nada
head-to-load = Cuánto
head-jugs = Garrafas enteras de 1 gal
section-stock = En los camiones
stock-none = nada contado, ni aceite de compresor puesto en 28 días
head-counted = Contado
head-poured-since = Puesto desde entonces
head-left = Queda
stock-never = nunca contado; puesto en 28 días
stock-left-unknown = no se sabe
stock-more = se puso más de lo contado: hay que contarlo otra vez
stock-line = A bordo: { $fluid }, quedan { $left } de { $counted } contados { $when }
stock-count = Contar lo que hay en un camión
stock-count-how = Como está ahora, después de cargar. Vale por todo lo que había antes.
stock-volume = Cuánto, como 4 qt o 1 gal; 0 si no hay
stock-keep = Guardar el conteo
stock-no-unit = No se eligió unidad. No se registró nada. Vuelve y elige una.
stock-no-fluid = No se eligió fluido. No se registró nada. Vuelve y elige uno.
stock-no-volume = Una cantidad es un número con su unidad, qt, gal, L o mL, como 4 qt. No se registró nada. Vuelve y corrígela.
stock-too-much = Es más de lo que un camión lleva en envases. No se registró nada. Vuelve y revisa la cifra y su unidad.
