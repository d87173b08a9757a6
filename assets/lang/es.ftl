# Todos los textos visibles, en español. Las secciones van en orden alfabético, y en.ftl
# tiene las mismas claves con los mismos argumentos; `cargo test --test texts` lo comprueba.

## app

app-name = Detent
app-tagline = Banco de prácticas para quienes reparan lavadoras

### app

board-arc-dial = Placa de arco y selector

broke-hold-too-long = Se sostuvo demasiado
broke-hold-too-short = Se soltó demasiado pronto
broke-late = Demasiado tarde
broke-out-of-order = Tocaba otra acción
broke-press-too-long = Pulsación demasiado larga
broke-too-few-detents = Faltaron topes
broke-too-many-detents = Demasiados topes
broke-window-over = Se acabó el tiempo
broke-wrong-way = Giro en sentido contrario

caution-defer = Las normas locales, el bloqueo y etiquetado y la práctica autorizada van antes que este simulador.
caution-flood = Hay agua por encima de esta pieza. Abrirla inunda el suelo. Desagüe o achique antes la cuba.
caution-go-on = Seguir
caution-live-test = Va a medir en una máquina con tensión. Use puntas homologadas, una mano, sin joyas y suelo seco; solo si está formado y autorizado.
caution-moving = La cesta aún gira y puede romper un brazo. Espere a que se pare.
caution-ohms-live = Hay tensión en este circuito. Medir ohmios en él funde el fusible del medidor y puede herirle.
caution-open-live = Hay tensión de red dentro. Tocarla mata. Desenchufe y tenga la clavija a la vista antes de quitar los paneles.
caution-step-back = Dar un paso atrás
caution-stored-charge = Un condensador sigue cargado y puede dar descarga. Espere, descárguelo con una resistencia y compruébelo con el medidor.
caution-touch-live = La máquina está enchufada. Las partes vivas dan descarga y matan. Desenchufe, tenga la clavija bajo su control y compruebe la ausencia de tensión.

check-belt-in-place = Correa puesta y tensa
check-bulk-volts = Condensador de reserva, V =
check-cam-switch = Contacto de leva, Ω en ambas posiciones
check-cam-wires = Cables de leva, Ω de punta a punta
check-capacitor-check = Condensador de marcha: descargue y mida Ω
check-cord-ohms = Cable de red, Ω de clavija a placa
check-drain-hose-blocked = Manguera de desagüe libre
check-drain-hose-height = Manguera de desagüe a su altura
check-drum-turns-by-hand = La cesta gira a mano, desenchufada
check-empty-drum-first = Vacíe antes la cesta
check-inlet-coil-ohms = Bobinas de entrada, Ω
check-inlet-shuts-unplugged = El agua se corta al desenchufar
check-inlet-volts = Válvulas excitadas, V ~
check-lock-coil-ohms = Bobinado del bloqueo, Ω
check-lock-contact-ohms = Contacto del bloqueo echado, Ω
check-lock-line = Línea a través del bloqueo, V ~
check-lock-volts = Bloqueo excitado, V ~
check-motor-amps = Corriente del motor con pinza, A ~
check-motor-common = Cable común del motor, Ω
check-motor-volts = Motor excitado, V ~
check-motor-winding-ohms = Bobinados A y B del motor, Ω
check-motor-wires = Cables del motor, Ω de punta a punta
check-pickup-output = Salida del captador al girar, Hz
check-pickup-supply = Alimentación del captador, V =
check-pickup-wires = Cables del captador, Ω de punta a punta
check-pressure-hose = Manguera de presión: puesta, libre, estanca
check-pressure-output = Salida de presión en reposo, V =
check-pressure-supply = Alimentación del sensor de presión, V =
check-pressure-wires = Cables de presión, Ω de punta a punta
check-pump-amps = Corriente de la bomba con pinza, A ~
check-pump-coil-ohms = Bobinado de la bomba, Ω
check-pump-volts = Bomba excitada, V ~
check-recalibrate-first = Recalibre antes
check-shifter-coil-ohms = Bobinado del cambiador, Ω
check-shifter-volts = Cambiador excitado, V ~
check-spread-laundry = Reparta la ropa
check-supply-volts = Red en el fusible, V ~
check-taps-and-strainers = Grifos abiertos, filtros limpios
check-thermistor-ohms = Termistor, Ω a temperatura conocida
check-thermistor-rail = Entrada del termistor, V =
check-thermistor-wires = Cables del termistor, Ω de punta a punta
check-tub-leak = Cuba y mangueras secas por fuera

component-belt = Correa de transmisión
component-board = Placa de control
component-cord = Cable de red
component-dial = Selector
component-drain-hose = Manguera de desagüe
component-drain-pump = Bomba de desagüe
component-filter = Filtro de red
component-harness = Mazo de cables
component-inlet-cold = Válvula de agua fría
component-inlet-hot = Válvula de agua caliente
component-laundry = Ropa
component-lid-lock = Bloqueo de tapa
component-line-fuse = Fusible de línea
component-motor = Motor
component-pickup = Captador de velocidad
component-pressure-hose = Manguera de presión
component-pressure-sensor = Sensor de presión
component-run-capacitor = Condensador de marcha
component-shifter = Cambiador de modo
component-supply = Toma y grifos
component-thermistor = Termistor del agua
component-tub = Cuba

dial-at = Selector en { $position }

dimension-cost = Tiempo y dinero
dimension-entry = Entrada
dimension-proof = Prueba
dimension-reading = Lectura
dimension-reasoning = Razonamiento
dimension-safety = Seguridad

do-bail-out = Achicar la cuba
do-close-cabinet = Poner los paneles (C)
do-close-lid = Bajar la tapa (L)
do-discharge = Descargar lo acumulado (D)
do-fit = Montar
do-lift = Retirar las puntas
do-measure = Medir y anotar
do-meter-fuse = Cambiar el fusible del medidor
do-open-cabinet = Quitar los paneles (C)
do-open-lid = Levantar la tapa (L)
do-order = Pedir
do-plug = Enchufar (P)
do-pull = Desconectar este conector
do-seat = Volver a conectarlo
do-unplug = Desenchufar (P)

hands = Manos

key-back = Volver, dejar de esperar
key-cabinet = Quitar o poner los paneles
key-discharge = Descargar lo acumulado
key-focus = Campo siguiente, pulsarlo
key-hide = Ocultar o mostrar los paneles
key-keys = Esta lista
key-lid = Tapa arriba o abajo
key-plug = Enchufar o desenchufar
key-speed = Tiempo más lento, más rápido
key-start = Inicio: pulsar o mantener
key-stop = Paro: pulsar o mantener
key-tabs = Hoja, medidor, piezas, informe, nota
key-turn = Girar el selector un tope
key-views = Consola, máquina, interior
key-wait = Esperar un minuto
key-wait-long = Esperar diez minutos

keys-title = Teclas

leave-job = Dejar este trabajo

lost-bought-on-the-code = La pieza { $part } se pidió antes de medir nada.
lost-code-not-noted = El código { $code } apareció y no se anotó.
lost-failed-try = Falló un intento de modo de servicio: { $rule }.
lost-flood = Se abrió una pieza con agua por encima.
lost-good-board-replaced = Se cambió una placa de control sana.
lost-lid-spinning = Se abrió la tapa con la cesta girando.
lost-live-not-allowed = Se midió con tensión en un trabajo que no lo permite.
lost-misread = Anotó { $noted }, pero las luces habían mostrado: { $shown }.
lost-never-entered = Nunca se entró al modo de servicio.
lost-no-evidence = El informe no cita ninguna lectura previa a la reparación.
lost-no-proving-run = Ningún programa llegó al final tras la reparación.
lost-no-report = No se entregó informe.
lost-not-cured = El fallo sigue en la máquina.
lost-not-proved-dead = Nadie comprobó la ausencia de tensión antes de meter las manos.
lost-not-recalibrated = Ninguna recalibración pasó tras la reparación.
lost-ohms-on-live = Ohmios medidos en un circuito con tensión o carga.
lost-opened-live = Se abrió el mueble con el enchufe puesto.
lost-over-budget = Se gastó más de los { $budget } del cliente.
lost-overspent = Gastó { $spent }; hacían falta { $needed }.
lost-rest-too-short = Solo { $seconds } s desenchufada: el control seguía cargado y nada se reinició.
lost-rivals-left = Las lecturas citadas dejan abiertas { $open } de { $rivals } causas.
lost-shock = Descarga eléctrica: se tocó algo con tensión.
lost-slow = { $minutes } minutos de trabajo; bastaban { $par }.
lost-touched-charge = Manos dentro antes de que se fuera la carga.
lost-wrong-cause = El informe dice «{ $said }»; era «{ $truth }».
lost-wrong-part = Se montó una pieza que no cura el fallo.

meter-black = Punta negra
meter-choose = elija un pin abajo
meter-dead = Se fundió el fusible del medidor
meter-red = Punta roja

monitor-calibration-failed = Falló la recalibración
monitor-calibration-missing = Sin calibrar
monitor-cam-lost = Cambiador de modo fuera de posición
monitor-drain-slow = Desagua demasiado despacio
monitor-fill-none = No entra agua
monitor-fill-slow = Llena demasiado despacio
monitor-level-lost = Baja el nivel sin desaguar
monitor-lock-not-proven = Bloqueo de tapa no confirmado
monitor-lock-not-released = El bloqueo de tapa no suelta
monitor-motor-no-current = El motor no toma corriente
monitor-motor-overheated = Se perdió la corriente del motor en marcha
monitor-motor-overload = La corriente del motor sigue alta
monitor-pressure-range = Señal de presión fuera de rango
monitor-pulses-none = Sin pulsos de velocidad
monitor-pulses-weak = Pocos pulsos de velocidad
monitor-spin-not-reached = No alcanza la velocidad de centrifugado
monitor-supply-low = La red se hunde
monitor-thermistor-range = Señal del termistor fuera de rango
monitor-unbalance = Desequilibrio
monitor-water-not-warm = El agua sigue fría
monitor-water-too-hot = Agua demasiado caliente
monitor-water-unexpected = Sube el agua con las válvulas cerradas

name-dial = Selector: arrastre, use la rueda o las flechas
name-lid = Tapa (L)
name-plug = Enchufe de red (P)
name-start = Inicio (S)
name-stop = Paro (X)

note-code = Código leído
note-code-do = Anotar

notebook = Cuaderno
notebook-empty = Aún no hay lecturas.
notebook-live = con tensión

noted-codes = Anotados:

parts = Mostrador de piezas
parts-fitted = Montada
parts-intro = Números y precios inventados. Lo que compra, lo paga el cliente.
parts-price = { $price } de dinero
parts-wait = llega en { $hours } h

pin-bulk-minus = Reserva −
pin-bulk-plus = Reserva +
pin-fuse-in = Fusible, lado red
pin-fuse-out = Fusible, lado máquina
pin-plug-earth = Enchufe, tierra
pin-plug-line = Enchufe, fase
pin-plug-neutral = Enchufe, neutro

program-empty-and-spin = Vaciar y centrifugar
program-everyday = Diario
program-gentle = Delicado
program-hot = Caliente
program-rinse-and-spin = Aclarar y centrifugar
program-short = Corto

refusal-already-so = Ya está así.
refusal-cabinet-closed = Quite antes los paneles del mueble.
refusal-does-not-fit = La pieza { $part } no encaja en esta máquina.
refusal-finished = El trabajo terminó: el informe está entregado.
refusal-lid-locked = La tapa está bloqueada.
refusal-no-connector = Aquí no existe ese conector.
refusal-no-part = El mostrador no tiene la pieza { $part }.
refusal-not-in-hand = Pida antes la pieza { $part }.
refusal-plug-in-outlet = Desenchufe antes: las clavijas están en la toma.

report-cause = Qué fallaba
report-choose = elija…
report-done = El informe ya está entregado.
report-hand-in = Entregar la máquina
report-no-part = Ninguna pieza
report-not-ready = Elija antes una causa y una pieza.
report-nothing-wrong = No fallaba nada
report-part = Pieza que hacía falta
report-proof = Lecturas que lo demuestran
report-proof-intro = Marque las que descartan a los demás sospechosos.
report-see-score = Ver la nota

routine-ages = Ciclos desde cada código
routine-clear = Borrar códigos (mantenga Inicio)
routine-lamp-test = Prueba de luces
routine-live-level = Mostrar nivel, cm
routine-live-speed = Mostrar velocidad, en decenas de r/min
routine-live-temperature = Mostrar temperatura del agua, °C
routine-recalibrate = Recalibrar (de 2 a 3 minutos)
routine-recall = Mostrar códigos guardados
routine-test-cold = Válvula de agua fría
routine-test-hot = Válvula de agua caliente
routine-test-lock = Bloqueo de tapa
routine-test-motor-a = Motor, sentido A
routine-test-motor-b = Motor, sentido B
routine-test-pump = Bomba de desagüe
routine-test-shifter = Cambiador de modo
routine-test-spin = Centrifugado lento

score-losses = Puntos perdidos
score-none-lost = Ninguno. Buen trabajo.
score-not-yet = La nota llega con el informe. Hasta entonces, así fueron sus intentos de entrar al modo de servicio.
score-total = { $kept } de { $of } puntos

sheet-codes = Códigos
sheet-codes-intro = Un código dice qué vio el control, no qué pieza está mal. Mida antes de comprar.
sheet-entry = Entrada
sheet-entry-before = Para entrar al modo de servicio: sin programa en marcha y, sin pausas:
sheet-entry-rest = Antes de otro intento no toque selector, botones ni tapa durante { $seconds } s. Un giro rápido puede saltarse un tope.
sheet-entry-window = Todo el gesto en { $seconds } s.
sheet-invented = Placa inventada, solo para formación.
sheet-lamps = Luces
sheet-lamps-example = Este ejemplo se lee 37. Una luz encendida tiene el disco lleno y un anillo exterior.
sheet-lamps-intro = Ocho luces sobre el selector muestran dos cifras. En cada grupo de cuatro, sume los números bajo las luces encendidas.
sheet-lamps-lock = La luz de bloqueo parpadea con cualquier fallo. Eso no significa que el bloqueo esté mal.
sheet-lamps-pages = En la lista de códigos cada pulsación de Inicio pasa de página; el más nuevo va primero.
sheet-menu = Menú
sheet-menu-intro = En modo de servicio: lleve el selector a una posición y pulse Inicio.
sheet-pins = Pines
sheet-pins-intro = Pin, marca impresa y adónde va el cable.
sheet-programs = Programas fuera del modo de servicio
sheet-tens = decenas
sheet-units = unidades

side-board = lado placa
side-harness = lado mazo
side-load = en la carga

signal-caution = ATENCIÓN
signal-danger = PELIGRO
signal-warning = ADVERTENCIA

sound-agitator-swish = el agitador se mueve
sound-cabinet-shake = el mueble tiembla
sound-floor-wet = { $litres } L en el suelo
sound-lock-held = el bloqueo retiene la tapa
sound-motor-free = el motor gira solo
sound-motor-hum = el motor zumba sin girar
sound-none = silencio
sound-pump-buzz = la bomba vibra, trabada
sound-pump-hum = la bomba zumba
sound-relay-click = un relé hace clic
sound-shifter-tick = el cambiador hace tic
sound-spin-whirr = la cesta centrifuga
sound-valve-buzz = la válvula vibra, sin agua
sound-water-rush = entra agua

spot-bulk = Condensador de reserva de la placa
spot-fuse = Fusible de línea
spot-plug = Enchufe de red

start-about = Todo aquí es inventado: máquinas, placas, códigos, piezas, precios y clientes. Solo para formación: mandan las normas locales y la práctica autorizada.
start-begin = Empezar el trabajo
start-seed = Semilla
start-seed-hint = misma semilla, misma máquina

step-hold = Mantenga { $button }
step-lid-down = Baje la tapa
step-lid-up = Levante la tapa
step-press = Pulse { $button }
step-turn-left = Gire a la izquierda { $detents } topes
step-turn-right = Gire a la derecha { $detents } topes

tab-meter = Medidor
tab-parts = Piezas
tab-report = Informe
tab-score = Nota
tab-sheet = Hoja

ticket-hours = { $hours } h
ticket-live = Con tensión
ticket-live-no = no permitidas
ticket-live-yes = permitidas
ticket-mains = Red
ticket-minutes-of = { $minutes } de { $par } min
ticket-money = Dinero
ticket-money-of = { $spent } de { $budget }
ticket-waited = Espera de piezas
ticket-work = Trabajo

top-keys = F1 teclas

tries = Intentos de modo de servicio
tries-intro = El tiempo corre a la derecha, en segundos. Sombreado: la ventana entera. Barras: ventana propia de una acción. Bandera: la regla rota.

try-entered = Entró al modo de servicio
try-open = En curso

view-cabinet = Interior
view-machine = Máquina
view-panel = Consola

wait = Dejar pasar el tiempo
wait-1-min = 1 min
wait-10-min = 10 min
wait-10-s = 10 s
wait-left = faltan { $seconds } s
wait-stop = Parar

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
