# Fluids, what is found by them, and oil families.

fluid-compressor-oil = Aceite del compresor
fluid-engine-oil = Aceite de motor
fluid-coolant = Anticongelante
fluid-hydraulic-oil = Aceite hidráulico
fluid-power-steering = Líquido de dirección
fluid-brake-fluid = Líquido de frenos
fluid-gearbox-oil = Transmisión y toma de fuerza
fluid-gear-case = Engranes del compresor
fluid-def = Líquido de escape (DEF)
fluid-fuel = Combustible
fluid-water-trap = Trampa de agua
fluid-washer-fluid = Líquido del parabrisas
fluid-brake-tanks = Tanques de aire de frenos
fluid-receiver-water = Agua del tanque separador
fluid-battery-water = Agua de la batería
fluid-tool-oil = Aceite del lubricador
fluid-grease = Grasa

# Findings
finding-any = se rellenó
finding-wrong-oil = no es el aceite de esta unidad
finding-below-view = no se ve, abajo
finding-rising = subió desde la última vez: combustible o anticongelante en el aceite
finding-over-a-quart = más de 1 qt entre cambios: lo tira o lo quema
finding-hot = se calienta
finding-oily = aceitoso o café
finding-sprays = fuga que sale a presión
finding-below-mark = abajo de la marca mínima
finding-noisy = hace ruido
finding-pto-case-low = toma de fuerza, nivel bajo
finding-in-fuel = líquido de escape en el tanque de combustible
finding-sudden-thirst = gasta mucho más que antes
finding-none-used = no gastó nada
finding-low = le falta
finding-stalls = se apaga el motor
finding-water = agua en la trampa
finding-dry-in-salt = no llega nada al vidrio, época de sal
finding-dry = no llega nada al vidrio
finding-oil-in-water = aceite en el agua purgada
finding-milky = lechoso en la mirilla
finding-over-a-cup-a-week = más de una taza por semana: ratos cortos, trabaja frío

# Oil families
family-mineral = mineral
family-synthetic-hydrocarbon = hidrocarburo sintético
family-ester = éster
family-polyglycol = poliglicol
family-blend = mezcla

# What stands between the unit's oil and the drum's
mix-same = El mismo aceite.
mix-other-grade = Misma familia, otro grado. No eches; llama.
mix-other-family = Otra familia de aceite. No eches; llama.
mix-unknown = Tambor desconocido. No eches; llama.
