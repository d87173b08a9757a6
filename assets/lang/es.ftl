# Todos los textos visibles, en español. Las secciones van en orden alfabético, y en.ftl
# tiene las mismas claves con los mismos argumentos; `cargo test --test texts` lo comprueba.

## app

app-name = Detent
app-tagline = Banco de prácticas para quienes reparan lavadoras

## common

common-cancel = Cancelar
common-close = Cerrar
common-no = No
common-yes = Sí

## language

language-choose = Idioma

## part

part-belt = Correa de transmisión
part-board = Placa de control
part-board-other = Placa de control, modelo estrecho
part-contact-kit = Juego de contactos y empalmes
part-cord = Cable de alimentación con clavija
part-dial = Mando con anillo de retén
part-drain-hose = Manguera de desagüe
part-drain-pump = Bomba de desagüe
part-drain-pump-other = Bomba de desagüe, modelo estrecho
part-filter = Filtro de red
part-harness = Mazo de cables
part-inlet-cold = Válvula de entrada fría
part-inlet-hot = Válvula de entrada caliente
part-laundry-sorted = Ropa sacada y repartida por igual
part-lid-lock = Bloqueo de tapa con interruptor de tapa
part-lid-lock-other = Bloqueo de tapa, modelo izquierdo
part-line-fuse = Fusible de línea
part-motor = Motor
part-motor-other = Motor, modelo estrecho
part-note-measure-first = No se admite devolución una vez abierta: mida antes de comprar
part-note-no-part = Trabajo, no un recambio
part-note-other-machine = Hecho para otra máquina; la fijación es distinta
part-note-visit = Una visita, no un recambio. Las normas locales dicen quién puede hacerlo
part-pickup = Captador de velocidad
part-pressure-hose = Tubo de presión con abrazaderas
part-pressure-sensor = Sensor de presión
part-run-capacitor = Condensador de marcha
part-shifter = Actuador de modo con interruptor de leva
part-supply-electrician = Visita de un electricista autorizado (toma de corriente)
part-supply-plumber = Visita de un fontanero autorizado (grifos)
part-thermistor = Termistor del agua
part-tub-seal = Juego de juntas de la cuba
