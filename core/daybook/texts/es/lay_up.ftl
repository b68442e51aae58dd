# Un equipo que se guarda, y la lista antes de que vuelva a dar aire.

item-laid-up = De baja temporal
choice-return-list-open = falta la lista de regreso

return-manual = Manual del fabricante
    .look = leído lo que pide para un equipo que estuvo parado, y hecho junto a esta lista
return-oil-age = Aceite y filtro por edad
    .look = cambiados si su plazo de calendario venció mientras estuvo parado
return-oil-look = Aceite en la mirilla
    .look = terreno nivelado: a la mitad, claro, sin agua, de la familia de este equipo
return-water = Agua del tanque separador
    .look = purgada en frío con presión 0, donde tiene purga abajo
return-condensate = Condensado
    .look = vasos, filtro de salida y puntos bajos de las líneas vaciados
return-separator = Separador
    .look = su edad por calendario consultada; línea de barrido, orificio y malla limpios
return-intake-cooler = Admisión y enfriador
    .look = cubiertas fuera, sin nidos, elemento seco y entero, aletas limpias
return-belts-shaft = Bandas o flecha
    .look = sin grietas ni partes planas, tensión ajustada otra vez, crucetas engrasadas, guarda puesta
return-hoses = Mangueras y conexiones
    .look = sin grietas, sin partes blandas ni tiesas, sellos y pasadores en su lugar
return-valves = Válvulas
    .look = cada una mueve y cierra; la de seguridad con etiqueta vigente y salida libre
return-battery-display = Batería y pantalla
    .look = cargada, sin cables roídos, la pantalla prende y su botón de paro funciona
return-tires = Llantas del camión
    .look = presión en frío, sin grietas ni partes planas por estar parado
return-first-start = Primer arranque preparado
    .look = frío y seco, válvulas cerradas, presión en baja donde tiene dos, alguien a un lado hasta que caliente
