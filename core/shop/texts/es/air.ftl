# The page of the calculator; what it asks and answers the phones say as well.

place-air = Aire para el trabajo
air-bad = { $field }: "{ $said }" no es una cifra para eso y se dejó fuera. Lo demás se calculó. Hay que escribirla otra vez.
air-any-unit = ninguna, por su caudal
air-own-delivery = Vacío: el de la unidad, { $figure }.
air-tool-name = Nombre
air-work-out = Calcular
air-yes = sí
air-no = no
