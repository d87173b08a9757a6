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

## mode

mode-belt-broken = Correa rota
mode-board-cold-switch-welded = Placa de control: salida de válvula fría soldada
mode-board-lock-switch-open = Placa de control: salida del bloqueo muerta
mode-board-motor-a-switch-open = Placa de control: salida A del motor muerta
mode-board-pump-switch-open = Placa de control: salida de bomba muerta
mode-cord-open-line = Cable de alimentación: conductor de línea abierto
mode-drain-hose-blocked = Manguera de desagüe obstruida
mode-drain-pump-open-winding = Bomba de desagüe: bobinado abierto
mode-drain-pump-seized = Bomba de desagüe: rotor agarrotado
mode-filter-open-choke = Filtro de red: bobina abierta
mode-harness-cold-wire-open = Mazo de cables: hilo de la válvula fría abierto
mode-harness-lock-return-burnt = Mazo de cables: pin quemado en el retorno del bloqueo
mode-harness-lock-return-loose = Mazo de cables: pin flojo en el retorno del bloqueo
mode-harness-pickup-wire-open = Mazo de cables: hilo de señal del captador abierto
mode-harness-pressure-wire-open = Mazo de cables: hilo de señal de presión abierto
mode-harness-pump-wire-open = Mazo de cables: hilo de la bomba abierto
mode-harness-thermistor-wire-open = Mazo de cables: hilo del termistor abierto
mode-inlet-cold-blocked-screen = Válvula fría: filtro obstruido
mode-inlet-cold-open-winding = Válvula fría: bobina abierta
mode-inlet-cold-stuck-open = Válvula fría: no cierra
mode-inlet-hot-open-winding = Válvula caliente: bobina abierta
mode-inlet-hot-stuck-open = Válvula caliente: no cierra
mode-lid-lock-contact-open = Bloqueo de tapa: contacto de línea quemado
mode-lid-lock-contact-welded = Bloqueo de tapa: contacto de línea soldado
mode-lid-lock-open-winding = Bloqueo de tapa: bobinado abierto
mode-line-fuse-blown = Fusible de línea fundido
mode-motor-open-winding-a = Motor: bobinado A abierto
mode-motor-open-winding-b = Motor: bobinado B abierto
mode-motor-seized = Motor: rodamientos agarrotados
mode-motor-shorted-turns = Motor: espiras en cortocircuito
mode-pickup-no-output = Captador de velocidad: sin salida
mode-pressure-hose-blocked = Manguera de presión obstruida
mode-pressure-hose-leaking = Manguera de presión: pierde aire
mode-pressure-sensor-no-output = Sensor de presión: sin salida
mode-pressure-sensor-zero-drift = Sensor de presión: cero desplazado
mode-run-capacitor-open = Condensador de marcha abierto
mode-run-capacitor-shorted = Condensador de marcha en cortocircuito
mode-shifter-cam-switch-closed = Selector de modo: contacto de leva siempre cerrado
mode-shifter-open-winding = Selector de modo: bobinado abierto
mode-shifter-stripped-gear = Selector de modo: engranaje barrido
mode-thermistor-open = Termistor abierto
mode-thermistor-shorted = Termistor en cortocircuito

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
