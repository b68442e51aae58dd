# Lo que se imprime para escanear.

door-tag = Etiqueta de la puerta
door-tag-of = Etiqueta de la puerta, { $unit }
door-tag-how = Una hoja, solo en negro. Se pone donde la cuadrilla empieza su recorrido, bajo cinta transparente: no importa si la mugre tapa algunos cuadros. Se queda con este camión; si cambia su número, se imprime otra.
door-tag-scan = Se escanea, o se escribe el número.
drum-label = Etiqueta de tambor
drum-label-how = Una hoja, solo en negro, para tambores de este aceite y de ningún otro. Va en: { $units }. Un tambor que se llena con otra cosa necesita antes otra etiqueta.
drum-label-scan = Se escanea antes de abrir la tapa. El mismo número no es el mismo aceite.
label-picture = El código para escanear
