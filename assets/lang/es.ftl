# Todos los textos visibles, en español. Las secciones y sus claves van en orden alfabético, y
# en.ftl tiene las mismas claves con los mismos argumentos; `cargo test --test texts` lo comprueba.

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

### Failure modes (invented catalogue)

mode-cord-open-line = Cable de alimentación: conductor de línea abierto
mode-line-fuse-blown = Fusible de línea fundido
mode-filter-open-choke = Filtro de red: bobina abierta
mode-inlet-cold-open-winding = Válvula fría: bobina abierta
mode-inlet-cold-blocked-screen = Válvula fría: filtro obstruido
mode-inlet-cold-stuck-open = Válvula fría: no cierra
mode-inlet-hot-open-winding = Válvula caliente: bobina abierta
mode-inlet-hot-stuck-open = Válvula caliente: no cierra
mode-drain-pump-open-winding = Bomba de desagüe: bobinado abierto
mode-drain-pump-seized = Bomba de desagüe: rotor agarrotado
mode-drain-hose-blocked = Manguera de desagüe obstruida
mode-motor-open-winding-a = Motor: bobinado A abierto
mode-motor-open-winding-b = Motor: bobinado B abierto
mode-motor-shorted-turns = Motor: espiras en cortocircuito
mode-motor-seized = Motor: rodamientos agarrotados
mode-run-capacitor-open = Condensador de marcha abierto
mode-run-capacitor-shorted = Condensador de marcha en cortocircuito
mode-belt-broken = Correa rota
mode-shifter-open-winding = Selector de modo: bobinado abierto
mode-shifter-stripped-gear = Selector de modo: engranaje barrido
mode-shifter-cam-switch-open = Selector de modo: contacto de leva siempre abierto
mode-pickup-no-output = Captador de velocidad: sin salida
mode-pressure-sensor-no-output = Sensor de presión: sin salida
mode-pressure-sensor-zero-drift = Sensor de presión: cero desplazado
mode-pressure-hose-blocked = Manguera de presión obstruida
mode-pressure-hose-leaking = Manguera de presión: pierde aire
mode-thermistor-open = Termistor abierto
mode-thermistor-shorted = Termistor en cortocircuito
mode-lid-lock-open-winding = Bloqueo de tapa: bobinado abierto
mode-lid-lock-contact-open = Bloqueo de tapa: contacto de línea quemado
mode-lid-lock-contact-welded = Bloqueo de tapa: contacto de línea soldado
mode-board-pump-switch-open = Placa de control: salida de bomba muerta
mode-board-motor-a-switch-open = Placa de control: salida A del motor muerta
mode-board-cold-switch-welded = Placa de control: salida de válvula fría soldada
mode-board-lock-switch-open = Placa de control: salida del bloqueo muerta
mode-harness-pump-wire-open = Mazo de cables: hilo de la bomba abierto
mode-harness-cold-wire-open = Mazo de cables: hilo de la válvula fría abierto
mode-harness-pickup-wire-open = Mazo de cables: hilo de señal del captador abierto
mode-harness-pressure-wire-open = Mazo de cables: hilo de señal de presión abierto
mode-harness-thermistor-wire-open = Mazo de cables: hilo del termistor abierto
mode-harness-lock-return-burnt = Mazo de cables: pin quemado en el retorno del bloqueo
mode-harness-lock-return-loose = Mazo de cables: pin flojo en el retorno del bloqueo

### Parts counter (invented part numbers)

part-c24-110 = Cable de alimentación
part-c24-118 = Fusible de línea
part-c24-125 = Filtro de red
part-c24-200 = Placa de control, dial de arco
part-c24-201 = Placa de control, otra serie
part-c24-214 = Dial con contactos
part-c24-310 = Bloqueo de tapa
part-c24-320 = Válvula de entrada, fría
part-c24-321 = Válvula de entrada, caliente
part-c24-330 = Bomba de desagüe
part-c24-331 = Bomba de desagüe, brida estrecha
part-c24-340 = Manguera de desagüe
part-c24-410 = Motor de accionamiento
part-c24-418 = Condensador de marcha
part-c24-425 = Correa de transmisión
part-c24-430 = Selector de modo
part-c24-440 = Captador de velocidad
part-c24-510 = Sensor de presión
part-c24-514 = Manguera de presión
part-c24-520 = Termistor de agua
part-c24-610 = Mazo de cables
part-c24-710 = Cuba con sello
