# Todos los textos visibles, en español. Las secciones y sus claves van en orden alfabético, y
# en.ftl tiene las mismas claves con los mismos argumentos; `cargo test --test content` lo comprueba.

## account

account-owed = Se sabía entonces: { $known }. Mejor: { $sound }.
account-saves = Se sabía entonces: { $known }. Mejor: { $sound }. Ahorra unos { $minutes } min y { $money }.
account-saves-money = Se sabía entonces: { $known }. Mejor: { $sound }. Ahorra unos { $money }.
account-takes = Se sabía entonces: { $known }. Mejor: { $sound }. Lleva { $minutes } min y { $money }, y hay que hacerlo de todos modos.

## advice

advice-check-outlet = Que un electricista revise la toma
advice-clean-strainer = Limpiar de vez en cuando los filtros de los grifos
advice-keep-tap-open = Dejar los dos grifos bien abiertos
advice-less-detergent = Usar menos detergente
advice-level-machine = Nivelar la máquina
advice-none = Nada que añadir
advice-replace = Cambiar la máquina en vez de repararla

## app

app-name = Detent
app-tagline = Banco de prácticas para quienes reparan lavadoras

## best

best-at-dead = desenchufada
best-at-idle = enchufada, en reposo
best-at-pulled = desenchufada, conector de la carga quitado
best-at-test-cold = prueba de la válvula fría
best-at-test-hot = prueba de la válvula caliente
best-at-test-lock = prueba del bloqueo
best-at-test-motor-a = prueba del motor, un sentido
best-at-test-motor-b = prueba del motor, el otro sentido
best-at-test-pump = prueba de la bomba
best-at-test-shifter = prueba del cambiador
best-belief = Creencia antes y después del lavado del cliente
best-code-buyer = compra según el código
best-codes = Códigos guardados en el lavado del cliente
best-columns = Coste esperado de la reparación, con lo mínimo que puede costar cualquier camino (≥) / coste con la falla de esta semilla. El del experto es la media de las causas del 2 % o más.
best-control-swapper = primero cambia la placa
best-cost = Coste esperado de la reparación si en cada paso se hace lo mejor, en unidades enteras de dinero
best-expert = experto del guion
best-fit = montar y probar con un lavado
best-hand-back = recalibrar, hacer un lavado y entregarla
best-inspect = mirar
best-new-machine = parar y aconsejar una máquina nueva
best-next = Coste esperado de la reparación si esto se hace ahora (≥ lo mínimo que puede ser)
best-not-asked-for = El lavado del cliente nunca empezó: el selector gastado patinó y el control está en otro programa que el selector. Eso no dice nada del resto de la máquina.
best-optimum = mejor plan
best-put-right = arreglar a mano
best-recalibrate = recalibrar y ver cómo termina
best-scenario = trabajo
best-several = Este trabajo esconde { $count } fallos a la vez. Lo que sigue los toma de uno en uno: es el mejor camino solo hasta el primero.
best-tries = Intentos fallidos seguidos del gesto de entrada, con ritmo tranquilo y tiempos bien hechos en este selector, tras los que lo más probable es que falle la placa: { $tries }

## board

board-arc-dial = Placa de arco y selector
board-key-pad = Placa de teclas
board-lone-lamp = Placa de una lámpara
board-narrow-line = Máquina de línea estrecha

## broke

broke-hold-too-long = Se sostuvo demasiado
broke-hold-too-short = Se soltó demasiado pronto
broke-late = Demasiado tarde
broke-out-of-order = Tocaba otra acción
broke-press-too-long = Pulsación demasiado larga
broke-too-few-detents = Faltaron topes
broke-too-many-detents = Demasiados topes
broke-window-over = Se acabó el tiempo
broke-wrong-way = Giro en sentido contrario

## button

button-less = Menos
button-more = Más
button-start = Inicio
button-stop = Paro

## caution

caution-discharge-live = La clavija está enchufada: la red mantiene cargado el condensador y la resistencia se quema en la mano. Desenchufe antes. Siga las normas locales; si duda, déjelo a una persona autorizada.
caution-flood = Hay agua por encima de esta pieza. Abrirla inunda el piso. Desagüe o achique antes la cuba. Siga las normas locales; si duda, déjelo a una persona autorizada.
caution-go-on = Seguir
caution-heavy = La máquina pesa y puede aplastar una mano o un pie. Desenchufe, desagüe e inclínela entre dos personas. Siga las normas locales; si duda, déjelo a una persona autorizada.
caution-hot-water = Las mangueras tienen presión y una está caliente: puede quemar. Cierre antes los dos grifos y alivie la presión. Siga las normas locales; si duda, déjelo a una persona autorizada.
caution-live-test = Va a medir en una máquina con tensión. Un descuido puede dar descarga y matar. Use puntas certificadas, una sola mano, sin joyas y piso seco; solo si está capacitado y autorizado. Siga las normas locales; si duda, déjelo a una persona autorizada.
caution-moving = La cesta aún gira y puede romper un brazo. Espere a que se detenga. Siga las normas locales; si duda, déjelo a una persona autorizada.
caution-not-proved-dead = Aún nadie ha comprobado que la carga acumulada se haya ido. Pruebe el medidor, mida el condensador, vuelva a probar el medidor y solo entonces meta las manos. Siga las normas locales; si duda, déjelo a una persona autorizada.
caution-ohms-live = Hay tensión en este circuito. Medir ohmios en él funde el fusible del medidor y puede herirle. Desenchufe, descargue lo acumulado y luego mida. Siga las normas locales; si duda, déjelo a una persona autorizada.
caution-open-live = Hay tensión de red adentro. Tocarla mata. Desenchufe y tenga la clavija a la vista antes de quitar los paneles. Siga las normas locales; si duda, déjelo a una persona autorizada.
caution-plug-open = Los paneles están quitados: al enchufar, hay partes con tensión al alcance que pueden matar. Ponga antes los paneles, salvo que esté capacitado y autorizado para probar con tensión. Siga las normas locales; si duda, déjelo a una persona autorizada.
caution-scald = El agua de la cuba está tan caliente que quema las manos. Deje que la bomba la saque o que se enfríe. Siga las normas locales; si duda, déjelo a una persona autorizada.
caution-step-back = Dar un paso atrás
caution-stored-charge = Un condensador sigue cargado y puede dar descarga. Espere un minuto, descárguelo con una resistencia y compruébelo con el medidor. Siga las normas locales; si duda, déjelo a una persona autorizada.
caution-touch-live = La máquina está enchufada. Las partes con tensión dan descarga y matan. Desenchufe, tenga la clavija bajo su control y compruebe la ausencia de tensión. Siga las normas locales; si duda, déjelo a una persona autorizada.

## check

check-belt-in-place = Primero desenchufe y descargue lo acumulado. Mire la correa y presiónela. Una correa sana está en ambas poleas, seca y tensa, y mueve la cesta junto con el motor.
check-bulk-volts = Prueba con tensión, solo si está capacitado y autorizado. Mida V = de bulk.plus a bulk.minus. Sano: cerca de 168 V con red de 120 V, cerca de 320 V con 230 V. No debe hundirse al arrancar el motor. Tensión completa con la consola apagada: la fuente de la propia placa está muerta, y la carga dura minutos después de desenchufar.
check-cam-switch = Primero desenchufe y descargue lo acumulado. Desconecte el cambiador y mida Ω de shifter.3 a shifter.4. Sano: menos de 1 Ω en la mitad de centrifugado, OL en la mitad de lavado.
check-cam-wires = Primero desenchufe y descargue lo acumulado. Mida Ω de shifter.3@board a shifter.3, y lo mismo con shifter.4. Sano: unos 0,2 Ω, que son solo las puntas del medidor.
check-capacitor-check = Primero desenchufe y descargue lo acumulado. Desconecte el condensador de marcha y mida Ω de run-capacitor.1 a run-capacitor.2. Sano: OL; unos pocos ohmios es un cortocircuito. Uno abierto solo se ve con tensión, donde se permita: con el motor girando, la V ~ en sus bornes queda muy por encima de la red (cerca de 190 V con 120 V, 390 V con 230 V).
check-cord-ohms = Primero desenchufe y descargue lo acumulado. Mida Ω de plug.line a fuse.in, luego de fuse.in a fuse.out, de fuse.out a cord.1 y de plug.neutral a cord.2. Sano: de 0,2 a 0,3 Ω cada uno. Medio ohmio más es una unión floja: busque partes tostadas.
check-drain-hose-blocked = Primero desenchufe y achique la cuba. Saque la manguera de desagüe y mire a través. Una manguera sana está libre de punta a punta. Si lo está, mida la bomba.
check-drain-hose-height = Mida la altura del codo superior de la manguera sobre el piso. Correcto: 0,9 m, suelta en el tubo. Si está baja o sellada, la cuba se vacía por sifón.
check-drum-turns-by-hand = Desenchufe y espere a que la cesta se detenga. Gírela a mano. Si está sana, gira libre y sin rozar. Si no, quite la correa y pruebe cesta y motor por separado.
check-empty-drum-first = Saque la ropa y recalibre otra vez. La recalibración aprende con la cesta vacía.
check-inlet-coil-ohms = Primero desenchufe y descargue lo acumulado. Desconecte cada válvula y mida Ω de inlet-cold.1 a inlet-cold.2, luego de inlet-hot.1 a inlet-hot.2. Sano: cerca de 780 Ω para 120 V, cerca de 2870 Ω para 230 V.
check-inlet-shuts-unplugged = Desenchufe y mire el agua. Si sigue subiendo, una válvula no cierra: falla mecánica. Si se detiene, la válvula estaba excitada: mida V ~ en sus bornes.
check-inlet-volts = Prueba con tensión, solo si está capacitado y autorizado. Mida V ~ de inlet-cold.1 a inlet-cold.2 en la prueba de fría, de inlet-hot.1 a inlet-hot.2 en la de caliente. Sano: tensión de red en su prueba, cerca de 0 V en reposo.
check-lock-coil-ohms = Primero desenchufe y descargue lo acumulado. Desconecte el bloqueo de tapa y mida Ω de lid-lock.1 a lid-lock.2. Sano: cerca de 120 Ω para 120 V, cerca de 440 Ω para 230 V.
check-lock-contact-ohms = Primero desenchufe y descargue lo acumulado. Desconecte el bloqueo de tapa y mida Ω de lid-lock.3 a lid-lock.4. Sano con el cerrojo recogido: OL; cerca de 0 Ω es un contacto soldado. Un contacto que no cierra se ve en la prueba de línea con tensión.
check-lock-line = Prueba con tensión, solo si está capacitado y autorizado. En la prueba del bloqueo mida V ~ de lid-lock.4 a cord.2, luego de lid-lock.4@board a cord.2. Sano: tensión de red en ambos. Sin tensión en el primero: contacto. Solo falta en la placa: hilo o pin.
check-lock-volts = Prueba con tensión, solo si está capacitado y autorizado. En la prueba del bloqueo mida V ~ de lid-lock.1 a lid-lock.2. Sano: tensión de red al excitarlo, cerca de 0 V en reposo. Con tensión y bobinado sano pero sin cerrojo: el bloqueo. Sin tensión: hilo o placa.
check-motor-amps = Prueba con tensión, solo si está capacitado y autorizado. Ponga la pinza en el cable de motor.1 en la prueba del motor A y en motor.2 en la del motor B. Las dos lecturas deben parecerse. Más de 9 A con 120 V (4,7 A con 230 V) después del arranque es sobrecarga.
check-motor-common = Primero desenchufe y descargue lo acumulado. Mida Ω de motor.3@board a motor.3. Sano: unos 0,2 Ω, que son solo las puntas del medidor. Medio ohmio más es un pin flojo o quemado, que pierde voltios con el motor andando. Si está abierto, ningún bobinado lleva corriente.
check-motor-volts = Prueba con tensión, solo si está capacitado y autorizado. Tapa cerrada. Mida V ~ de motor.1 a motor.3 en la prueba del motor A, de motor.2 a motor.3 en la del motor B. Sano: tensión de red. Sin tensión: mire línea del bloqueo, hilo y placa antes que el motor.
check-motor-winding-ohms = Primero desenchufe y descargue lo acumulado. Desconecte el motor y mida Ω de motor.1 a motor.3, luego de motor.2 a motor.3. Sano: ambos iguales, cerca de 2,6 Ω para 120 V, cerca de 9,6 Ω para 230 V; un bobinado caliente marca más.
check-motor-wires = Primero desenchufe y descargue lo acumulado. Mida Ω de motor.1@board a motor.1, y lo mismo con motor.2 y motor.3. Sano: unos 0,2 Ω cada uno, que son solo las puntas del medidor.
check-pickup-output = Prueba con tensión, solo si está capacitado y autorizado. En la prueba de centrifugado mida Hz de pickup.3 a pickup.2. Sano: doce pulsos por vuelta, o sea 80 Hz a 400 r/min. 0 Hz con la polea girando: captador o su alimentación.
check-pickup-supply = Prueba con tensión, solo si está capacitado y autorizado. Mida V = de pickup.1 a pickup.2. Sano: 5 V. Sin ella ningún captador da pulsos.
check-pickup-wires = Primero desenchufe y descargue lo acumulado. Mida Ω de pickup.1@board a pickup.1, y lo mismo con pickup.2 y pickup.3. Sano: unos 0,2 Ω cada uno, que son solo las puntas del medidor.
check-pressure-hose = Primero desenchufe y vacíe la cuba. Saque la manguera y sople con suavidad. Sana: libre, seca, firme en ambos extremos y sin grietas. Con agua en la cuba la salida de presión debe quedarse quieta.
check-pressure-output = Prueba con tensión, solo si está capacitado y autorizado. Mida V = de pressure-sensor.3 a pressure-sensor.2. Sano: 0,5 V sin agua, y 1 V más por cada kPa, que son unos 10 cm de agua.
check-pressure-supply = Prueba con tensión, solo si está capacitado y autorizado. Mida V = de pressure-sensor.1 a pressure-sensor.2. Sano: 5 V. Si aquí no hay pero en la placa sí: un hilo.
check-pressure-wires = Primero desenchufe y descargue lo acumulado. Mida Ω de pressure-sensor.3@board a pressure-sensor.3, y lo mismo con 1 y 2. Sano: unos 0,2 Ω cada uno, que son solo las puntas del medidor.
check-pump-amps = Prueba con tensión, solo si está capacitado y autorizado. En la prueba de la bomba ponga la pinza en drain-pump.1. Sana y girando: unos 1,3 A con 120 V, 0,7 A con 230 V. Unos 2 A (1,1 A) y vibra: rotor trabado. 0 A: circuito abierto.
check-pump-coil-ohms = Primero desenchufe y descargue lo acumulado. Desconecte la bomba y mida Ω de drain-pump.1 a drain-pump.2. Sano: cerca de 14 Ω para 120 V, cerca de 51 Ω para 230 V. OL: bobinado abierto.
check-pump-volts = Prueba con tensión, solo si está capacitado y autorizado. En la prueba de la bomba mida V ~ de drain-pump.1 a drain-pump.2. Sano: tensión de red. Si no hay, mida de drain-pump.1@board a cord.2: con tensión es un hilo, sin tensión es la placa.
check-recalibrate-first = Recalibre antes de sospechar de una pieza: tapa cerrada, de 2 a 3 minutos, sin tocar nada. Una placa nueva o borrada no conoce esta máquina.
check-shifter-coil-ohms = Primero desenchufe y descargue lo acumulado. Desconecte el cambiador y mida Ω de shifter.1 a shifter.2. Sano: cerca de 2400 Ω para 120 V, cerca de 8800 Ω para 230 V.
check-shifter-volts = Prueba con tensión, solo si está capacitado y autorizado. En la prueba del cambiador mida V ~ de shifter.1 a shifter.2. Sano: tensión de red. Con tensión y bobinado sano, pero la leva no se mueve: engranaje barrido.
check-spread-laundry = Espere a que la cesta se detenga, reparta la ropa por igual y centrifugue otra vez. Si el código no vuelve, era la carga.
check-supply-volts = Prueba con tensión, solo si está capacitado y autorizado. Mida V ~ de cord.1 a cord.2 en reposo y con el motor andando. Sano: de 114 a 126 V, o de 207 a 253 V con red de 230 V. Si baja unos voltios al arrancar el motor: unión floja en cable, clavija o toma; la toma es trabajo de un electricista.
check-taps-and-strainers = Abra del todo los dos grifos y sienta cuál manguera está caliente. Ciérrelos, saque las mangueras y limpie los filtros. Si aún entra poca agua con grifos abiertos y tensión en una bobina sana: la válvula.
check-thermistor-ohms = Primero desenchufe y descargue lo acumulado. Desconecte el termistor y mida Ω de thermistor.1 a thermistor.2. Sano: 10 kΩ a 25 °C, unos 12,5 kΩ a 20 °C, 5,3 kΩ a 40 °C.
check-thermistor-rail = Prueba con tensión, solo si está capacitado y autorizado. Mida V = de thermistor.1@board a thermistor.2@board. Sano: 2,5 V a 25 °C, menos si está más caliente. Cerca de 5 V: abierto. Cerca de 0 V: en cortocircuito.
check-thermistor-wires = Primero desenchufe y descargue lo acumulado. Mida Ω de thermistor.1@board a thermistor.1, y lo mismo con thermistor.2. Sano: unos 0,2 Ω cada uno, que son solo las puntas del medidor.
check-tub-leak = Desenchufe. Mire debajo de la cuba y a lo largo de las mangueras con una luz. Sano: seco por fuera y el nivel quieto durante cinco minutos.

## choose

choose-dial = Gire el selector hasta una posición.
choose-steps = Más y Menos recorren la lista; las cifras muestran la posición.
choose-switch = Gire el conmutador hasta una posición.

## cli

cli-entered = entró
cli-found = hallazgos
cli-lamps = luces
cli-meter-test = medidor probado en la fuente de prueba a los
cli-no-conclusion = El informe no concluye nada y por eso no recibe respuesta: nombre una causa o escriba verdict: NothingWrong o verdict: GivenUp.
cli-no-report = Aún sin informe: entréguelo para ver dónde se fue cada punto.
cli-practice-adaptive = adaptativa: el ejercicio más cercano a la meta
cli-practice-all = Todas las sesiones
cli-practice-early = Primeras { $sessions } sesiones
cli-practice-fixed = orden fijo: { $block } de cada habilidad por turno, el mejor de cuatro órdenes así
cli-practice-given-up = ({ $count } aprendices abandonados)
cli-practice-heading = { $learners } aprendices simulados, { $sessions } sesiones cada uno, { $exercises } ejercicios por sesión, una sesión al día; sus tasas difieren de las del modelo hasta en { $spread } %
cli-practice-learner = { $name }: probabilidad de que sepa cada habilidad, y respuestas correctas de todas
cli-practice-needs = Ejercicios hasta que toda habilidad se da por dominada y se sabe de verdad, promedio:
cli-practice-one-by-one = una habilidad tras otra, cada una hasta que el modelo la da por dominada
cli-practice-random = al azar
cli-practice-recovery = se cree { $believed } %, se sabe de verdad { $known } %, raíz del error cuadrático medio { $rmse }; dado por dominado y sabido de verdad { $verdict } %. Creencia, parte sabida, miradas:
cli-readings = lecturas
cli-score = puntaje
cli-seed = semilla
cli-state = estado
cli-state-hash = huella del estado
cli-try = intento a los

## code

code-calibration-failed = La recalibración aprendió un valor fuera de sus límites.
code-calibration-missing = Empezó un programa, pero la placa nunca se calibró.
code-cam-lost = El cambiador de modo no llegó a tiempo a su posición.
code-drain-slow = La cuba no se vació a tiempo.
code-fill-none = El nivel no se movió aunque había una válvula abierta.
code-fill-slow = No se alcanzó el nivel a tiempo.
code-level-lost = El nivel bajó aunque no se estaba desaguando.
code-lock-not-proven = Se excitó el bloqueo, pero no volvió la línea por su contacto.
code-lock-not-released = Se soltó el bloqueo, pero la línea sigue volviendo por su contacto.
code-motor-no-current = Se excitó el motor, pero no circuló corriente.
code-motor-overheated = La corriente del motor desapareció en plena marcha.
code-motor-overload = La corriente del motor siguió alta después del arranque.
code-pressure-range = La señal de presión salió de su rango válido.
code-pulses-none = El motor tomó corriente, pero no llegaron pulsos de velocidad.
code-pulses-weak = Llegaron pulsos de velocidad, pero muy pocos.
code-spin-not-reached = No se alcanzó a tiempo la velocidad de centrifugado.
code-supply-low = La alimentación se hundió con el motor excitado.
code-thermistor-range = La señal del termistor salió de su rango válido.
code-unbalance = La velocidad oscilaba en cada vuelta: la carga está de un lado.
code-water-not-warm = Se pidió agua tibia y siguió fría.
code-water-too-hot = El agua llegó más caliente de lo pedido.
code-water-unexpected = El nivel subió con las dos válvulas cerradas.

## common

common-cancel = Cancelar
common-close = Cerrar
common-no = No
common-yes = Sí

## component

component-belt = Correa de transmisión
component-board = Placa de control
component-cord = Cable de red
component-dial = Selector
component-drain-hose = Manguera de desagüe
component-drain-pump = Bomba de desagüe
component-filter = Filtro de red
component-floor = Patas y piso
component-harness = Mazo de cables
component-inlet-cold = Válvula de agua fría
component-inlet-hoses = Mangueras de entrada
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
component-supply = Toma de corriente
component-taps = Grifos
component-thermistor = Termistor del agua
component-tub = Cuba

## condition

condition-new = nueva
condition-rebuilt = reacondicionada
condition-used = usada, tal como está

## course

course-doubles = Dos a la vez
course-entry-drill = Entrar
course-exam = Examen
course-intermittents = De vez en cuando
course-look-alikes = Parecidos
course-nothing-found = Avisos raros
course-reading-drill = Leer códigos
course-single-fault = Un solo fallo

## deed

deed-arrived-dark = Último lavado: la consola está apagada
deed-arrived-finished = Último lavado: llegó al final
deed-arrived-not-asked-for = Último lavado: nunca empezó, el selector gastado patinó
deed-arrived-open = Último lavado: no terminó nunca
deed-arrived-stopped = Último lavado: se paró con el código { $code }
deed-fit = montar { $part }
deed-note-code = anotar el código { $code }
deed-order = pedir { $part }
deed-ran-dark = Lavado: la consola se apagó
deed-ran-finished = Lavado: llegó al final
deed-ran-open = Lavado: no terminó
deed-ran-stopped = Lavado: se paró con el código { $code }
deed-read-codes = Modo de servicio: leer los códigos
deed-recalibrated-dark = Recalibración: la consola se apagó
deed-recalibrated-finished = Recalibración: superada
deed-recalibrated-open = Recalibración: no terminó
deed-recalibrated-stopped = Recalibración: se paró con el código { $code }
deed-report = entregar el informe

## dial

dial-at = Selector en { $position }
dial-switch-at = Conmutador en { $position }

## dimension

dimension-cost = Tiempo y dinero
dimension-entry = Entrada
dimension-proof = Prueba
dimension-reading = Lectura
dimension-reasoning = Razonamiento
dimension-safety = Seguridad

## do

do-bail-out = Achicar la cuba
do-close-cabinet = Poner los paneles (C)
do-close-lid = Bajar la tapa (L)
do-discharge = Descargar lo acumulado (D)
do-fit = Montar
do-hold = Retener la lectura
do-inspect = Mirar y palpar
do-leads = Poner las puntas de repuesto
do-lift = Retirar las puntas
do-measure = Medir y anotar
do-meter-fuse = Cambiar el fusible del medidor
do-open-cabinet = Quitar los paneles (C)
do-open-lid = Levantar la tapa (L)
do-order = Pedir
do-plug = Enchufar (P)
do-pull = Desconectar este conector
do-put-right = Arreglar
do-release = Soltar la lectura
do-return = Devolver
do-seat = Volver a conectarlo
do-test-meter = Probar el medidor en la fuente de prueba
do-unplug = Desenchufar (P)

## doubt

doubt = ¿Es la placa o es mi mano?
doubt-cleared = Un intento entró: la placa lee el gesto. Los que fallaron fueron de la mano o del selector.
doubt-control = la placa es sospechosa
doubt-go-on = Tras { $tries } intentos fallidos, la placa está mal con un { $share } %. Eso aún no dice nada: otra vez, a ritmo parejo.
doubt-hand = es la mano
doubt-intro = Por los tiempos de cada intento y el desgaste de este selector: cuán probable era que una placa sana lo dejara entrar. Un intento que rompió una ventana no dice nada de la placa. Rayas: los límites de Wald con un riesgo del 5 % a cada lado.
doubt-suspect = Tras { $tries } intentos fallidos, la placa está mal con un { $share } %. Ahora vale la pena medir en la placa.

## drill

drill-again = Otra ronda
drill-check = Comprobar (Intro)
drill-entered = Entró en modo de servicio
drill-entry-broke = No entró: { $rule }.
drill-entry-every = un paso cada { $ms } ms: el mejor ritmo para su mano en este panel
drill-entry-left = Girar a la izquierda
drill-entry-metronome = Metrónomo
drill-entry-no-rhythm = Haga el gesto: después verá aquí su ritmo y lo que promete.
drill-entry-plot = Probabilidad de entrar según el tiempo de un paso. Línea discontinua: el mejor ritmo. Puntos: sus intentos, el último grande.
drill-entry-rhythm = Su último ritmo: { $mean } ms por paso, dispersión { $spread } ms. Probabilidad de entrar con este ritmo: { $odds }.
drill-entry-right = Girar a la derecha
drill-entry-wear = Los topes del selector tienen un desgaste del { $wear }.
drill-hint-code-look-up = Marque con las cifras o con un clic y compruebe.
drill-hint-entry-timing = Haga el gesto con las teclas (las flechas giran), la rueda o los botones de la pantalla.
drill-hint-lamp-reading = Escriba dos cifras y compruebe.
drill-hint-metering = Elija fila por fila, con las cifras o con un clic.
drill-hint-next-test = Elija con una cifra o con un clic y compruebe.
drill-hint-part-choice = Elija con una cifra o con un clic y compruebe.
drill-lamps-ask = ¿Qué número muestran las luces?
drill-lamps-back = Borrar
drill-lamps-digit-right = { $place }: { $shown }, y leyó { $read }.
drill-lamps-digit-wrong = { $place }: { $shown }, pero leyó { $read }.
drill-lamps-invented = Un lenguaje inventado para esta pregunta
drill-lamps-matrix = Qué cifra se leyó como cuál
drill-lamps-matrix-how = Filas: la cifra mostrada. Columnas: la cifra leída.
drill-lamps-share = Cifras mal leídas: { $share }
drill-leave = Volver a la práctica
drill-leave-key = Salir (Esc)
drill-look-up-all = Todos, y ninguno más.
drill-look-up-ask = El código { $code } está guardado. Marque todos los componentes que la hoja de esta placa pone detrás.
drill-look-up-excerpt = De la tabla de códigos de la hoja de servicio:
drill-look-up-left-out = Faltan: { $components }.
drill-look-up-missed = también va aquí
drill-look-up-not-listed = No están detrás de este código: { $components }.
drill-meter-ask-bulk = ¿Tiene el condensador principal la carga debida? Mida { $pins }.
drill-meter-ask-current = ¿Toma la bomba la corriente debida en su prueba? { $component }, cable en { $pins }.
drill-meter-ask-driven = { $component }: ¿le llega su tensión mientras corre su prueba? Mida { $pins }.
drill-meter-ask-fuse = ¿Está entero el fusible de línea? Mida { $pins }.
drill-meter-ask-input = ¿Está bien la entrada del termistor, vista por la placa? El cuarto está a 20 °C. Mida { $pins }.
drill-meter-ask-level = { $component }: ¿es correcta su señal con la tina vacía? Mida { $pins }.
drill-meter-ask-mains = ¿Es correcta la tensión de red en los extremos del cordón, en reposo? Mida { $pins }.
drill-meter-ask-open = { $component }: aquí no debe pasar nada. ¿Está en corto o soldado? Mida { $pins }.
drill-meter-ask-pulses = { $component }: ¿llegan sus pulsos en la prueba de centrifugado a 400 rev/min? Mida { $pins }.
drill-meter-ask-rail = { $component }: ¿le llega su alimentación? Mida { $pins }.
drill-meter-ask-thermistor = { $component }: ¿está bien? El cuarto está a 20 °C. Mida { $pins }.
drill-meter-ask-winding = { $component }: ¿está bien este bobinado? Mida { $pins }.
drill-meter-ask-wire = ¿Está entero este cable desde la placa hasta su extremo? Mida { $pins }.
drill-meter-first = Las puntas se ponen cuando estén elegidos el estado, el ajuste y el rango.
drill-meter-mode = ¿Cómo se ajusta el medidor?
drill-meter-open = OL: no pasa nada
drill-meter-out = Fuera de tolerancia
drill-meter-range = ¿Qué muestra uno sano?
drill-meter-reading = Bien tomada, la lectura es:
drill-meter-sheet = La hoja de servicio dice:
drill-meter-state = ¿En qué estado de la máquina?
drill-meter-state-bled = desenchufada y descargada
drill-meter-state-live = enchufada y trabajando
drill-meter-state-pulled = desenchufada y descargada, su conector fuera
drill-meter-state-unplugged = solo desenchufada
drill-meter-verdict = ¿Qué dice la lectura?
drill-meter-why-bled = Una resistencia se mide en un circuito muerto: desenchufado y con la carga descargada. El cable se queda en sus conectores; se miden sus dos extremos.
drill-meter-why-live = Hay tensión, corriente o frecuencia solo con la máquina enchufada y trabajando: solo con formación y permiso.
drill-meter-why-mode = Otro ajuste mide otra cosa.
drill-meter-why-out = Está fuera de los límites: este no está sano.
drill-meter-why-pulled = Una carga se mide sola, en un circuito muerto: desenchufado, carga descargada y su conector fuera; si no, se mide también lo que cuelga al lado.
drill-meter-why-range = Uno sano muestra otro valor.
drill-meter-why-within = Está dentro de los límites: este está sano.
drill-meter-within = Dentro de tolerancia
drill-next = Siguiente (Intro)
drill-next-test-ask = ¿Cuál de estas cosas abarata más la reparación entera?
drill-next-test-belief = Causas más probables
drill-next-test-codes = Códigos guardados: { $codes }
drill-next-test-cost = cuesta { $cost } ahora
drill-next-test-no-codes = No hay códigos guardados.
drill-next-test-repair = reparación entera: se esperan { $most }
drill-next-test-repair-between = reparación entera: se esperan de { $least } a { $most }
drill-next-test-tested = Ya hecho: { $test }
drill-not-entered = No entró
drill-nothing = No hay de qué preguntar: en este equipo aún no se ha calculado lo que muestra cada fallo en una placa.
drill-part-ask = Eso está demostrado. ¿Qué número pide para esta máquina?
drill-part-right = Nueva, vigente, y acaba con este fallo en esta máquina.
drill-part-wrong-board = Es para otra máquina: no va en esta.
drill-part-wrong-component = Otro componente ({ $component }): dejaría el fallo donde está.
drill-part-wrong-fault = El juego arregla otra cosa de este componente.
drill-part-wrong-not-new = Está en este estado: { $condition }. Con una probabilidad del { $chance } trae un fallo propio.
drill-part-wrong-superseded = Un número viejo: lo sustituye { $part }.
drill-question = Pregunta { $number } de { $of }
drill-right = Correcto
drill-seconds = { $seconds } s
drill-summary-median = Tiempo mediano de una respuesta: { $seconds } s
drill-summary-more = Cada ronda sortea otras placas y otras preguntas.
drill-summary-right = { $right } de { $of } correctas
drill-wrong = Incorrecto

## finding

finding-air-hose-blocked = No pasa aire al soplar por la manguera de presión.
finding-air-hose-cracked = La manguera de presión tiene una grieta cerca de la punta.
finding-basket-stiff = La cesta gira dura y retumba.
finding-belt-off = La correa está rota y quedó bajo las poleas.
finding-belt-slack = La correa está floja y brillante.
finding-bolt-stiff = El pestillo del bloqueo está duro y apenas se mueve.
finding-cold-tap-shut = El grifo de agua fría está cerrado.
finding-cold-tap-throttled = El grifo de agua fría está casi cerrado: sale poca agua.
finding-cord-browned = La clavija está tostada por un lado y el cable está rígido donde entra en ella.
finding-dial-soft = Los pasos del selector se sienten blandos; se salta algunos.
finding-fuse-wire-gone = El hilo del fusible ya no está.
finding-gap-wide = El captador está doblado, lejos de sus imanes.
finding-gear-stripped = El engranaje del cambiador gira sin mover la leva.
finding-hose-clogged = La manguera de desagüe está llena de pelusa por dentro.
finding-hose-end-high = El tubo de desagüe es muy alto para la bomba.
finding-hose-end-low = La punta de la manguera de desagüe está muy baja.
finding-hose-kinked = La manguera de desagüe está doblada detrás de la máquina.
finding-hose-too-deep = La manguera de desagüe está metida muy adentro del tubo.
finding-hoses-crossed = La manguera caliente está en la válvula fría y la fría en la caliente.
finding-hot-tap-shut = El grifo de agua caliente está cerrado.
finding-hot-tap-throttled = El grifo de agua caliente está casi cerrado: sale poca agua.
finding-impeller-fouled = Hay pelo e hilos enrollados en el rotor de la bomba.
finding-impeller-stuck = El rotor de la bomba no gira a mano.
finding-laundry-one-sided = La ropa quedó apelmazada a un lado.
finding-machine-rocks = La máquina se balancea: una pata queda en el aire.
finding-motor-hot = El motor está demasiado caliente para tocarlo mucho rato.
finding-nothing = Nada que ver.
finding-outlet-browned = La toma está tostada alrededor de un contacto y la clavija queda floja.
finding-pin-burnt = Un pin de un conector está descolorido y huele a quemado.
finding-relay-scorched = Un relé de la placa está tostado y huele a quemado.
finding-screen-clogged = El filtro de la válvula está lleno de arenilla.
finding-shaft-stiff = El eje del motor gira duro a mano.
finding-suds = Hay espuma espesa en la cesta.
finding-too-much-laundry = La cesta está repleta.
finding-tub-drips = Hay marcas de goteo recientes bajo la cuba.
finding-valve-trickles = Pasa un hilo de agua por la válvula cerrada.

## found

found-empty = Aún no ha mirado nada.

## hands

hands = Manos

## happening


## keep

keep-down = { $button } apretado
keep-how = Mayús o el otro botón del ratón deja un botón apretado; también «Dejar un botón apretado» sobre la imagen. Púlselo otra vez para soltarlo.
keep-let-go = Soltarlo
keep-next = Dejar un botón apretado

## kept

kept-delete = Borrar
kept-delete-sure = ¿Borrar del todo?
kept-finished = entregado
kept-go-on = Continuar
kept-go-on-last = Continuar donde lo dejó
kept-in-browser = Se guardan en este navegador, en este equipo, con el mismo formato que los archivos del programa instalado.
kept-in-folder = Se guardan en { $place }
kept-jobs = Trabajos
kept-load = Cargar un intento de un archivo
kept-look = Ver el resultado
kept-mine = Mis intentos ({ $count })
kept-none = Aún no hay nada. Un intento se guarda desde su primera acción.
kept-save = Guardar una copia
kept-taken = { $detail } está ahora entre sus intentos.
kept-unfinished = sin terminar, { $actions } acciones en { $minutes } min

## key

key-back = Volver, dejar de esperar
key-cabinet = Quitar o poner los paneles
key-discharge = Descargar lo acumulado
key-focus = Campo siguiente, pulsarlo
key-hide = Ocultar o mostrar los paneles
key-keep = Con un botón: dejarlo apretado hasta pulsarlo otra vez
key-keys = Esta lista
key-lid = Tapa arriba o abajo
key-more-less = Más, Menos: pulsar o mantener
key-plug = Enchufar o desenchufar
key-speed = Tiempo más lento, más rápido
key-start = Inicio: pulsar o mantener
key-stop = Paro: pulsar o mantener
key-tabs = Hoja, medidor, piezas, informe, nota
key-turn = Girar el mando un paso
key-views = Consola, máquina, interior
key-wait = Esperar un minuto
key-wait-long = Esperar diez minutos

## keys

keys-title = Teclas

## known

known-caution = el aviso que salió antes
known-sheet = las ventanas y pausas de la hoja de servicio

## lamps

lamps-hold = Paro por fallo
lamps-idle = En espera
lamps-program = Programa
lamps-recalibration = Recalibración
lamps-service = Modo de servicio
lamps-test = Prueba de carga

## language

language-choose = Idioma

## learner

learner-changed = No se guardó: { $detail } cambió o se borró mientras tanto y se deja como está. Elija de nuevo al aprendiz.
learner-damaged = El archivo de este aprendiz no se puede usar y se deja como está: { $detail }
learner-no-name = Un nombre necesita una letra o una cifra.
learner-refused = No se guardó: { $detail }. Revise el espacio libre y que tenga permiso de escribir ahí.
learner-taken = Aquí ya hay un aprendiz llamado «{ $detail }». Elija otro nombre.

## leave

leave-job = Dejar este trabajo

## look

look = Mirar, palpar, girar a mano
look-intro = Un minuto cada vez. Lo que está tras los paneles pide paneles fuera y enchufe fuera.

## lost

lost-bought-on-the-code = La pieza { $part } se pidió antes de que ninguna lectura dijera algo. Un código dice qué vio el control, no qué pieza está mal: mida primero.
lost-code-not-noted = El control dio el código { $code } y usted no lo anotó. Lea la lista página por página y anote cada uno.
lost-discharged-live = Se descargó el condensador con la clavija enchufada: la red lo mantenía cargado y la resistencia se quemó. Desenchufe antes.
lost-discharged-unmeasured = Se descargó lo acumulado y nadie midió después. Una resistencia con mal contacto no descarga nada: mida V = de bulk.plus a bulk.minus antes de meter las manos.
lost-failed-try = Falló un intento de modo de servicio: { $rule }. Lea el registro, deje todo en reposo y pruebe otra vez a ritmo parejo.
lost-flood = Se abrió una pieza con agua por encima y se inundó el piso. Desagüe o achique antes la cuba.
lost-good-board-replaced = Se cambió una placa de control sana. Antes de comprar una, demuestre que sus entradas están bien y su salida está mal.
lost-hand-in-drive = Hubo una mano en la cesta o en la transmisión mientras giraba: rompe dedos y brazos. Espere a que se detenga.
lost-lid-spinning = Se abrió la tapa con la cesta girando. Espere a que se detenga: puede romper un brazo.
lost-live-not-allowed = Midió con tensión en un trabajo que no lo permite. Aquí había que hallar la falla con la máquina desenchufada.
lost-lucky-repair = La máquina vuelve a funcionar, pero por suerte: el informe dice «{ $said }»; era «{ $truth }». Demuestre qué pieza ha fallado antes de montar una: la próxima vez no habrá tanta suerte.
lost-meter-not-proved = Se midió el circuito, pero no se probó el medidor en una fuente conocida antes y después. Un medidor que no funciona muestra sin tensión cualquier circuito: fuente conocida, circuito, fuente conocida y recién entonces las manos.
lost-misread = Anotó { $noted }, pero las luces no lo habían mostrado. Sume otra vez cada grupo de cuatro luces. Códigos mostrados en este trabajo: { $shown }
lost-never-entered = Nunca se entró al modo de servicio, así que los códigos guardados quedaron sin leer. Siga el gesto de la hoja de servicio.
lost-no-evidence = El informe no cita ninguna lectura de antes de la reparación. Marque las lecturas que muestran la causa.
lost-no-proving-run = Ningún programa llegó al final después de la reparación. Haga uno y mírelo: solo eso muestra que la máquina lava.
lost-no-report = No se entregó informe. El trabajo termina con causa, pieza y prueba por escrito.
lost-not-cured = La falla sigue en la máquina. Monte la pieza que la cura, o dígaselo claro al cliente.
lost-not-proved-dead = Se metieron las manos sin comprobar la ausencia de tensión. Espere un minuto, mida V = de bulk.plus a bulk.minus, descargue y vuelva a medir.
lost-not-recalibrated = Ninguna recalibración terminó bien después de la reparación. Recalibre para que el control conozca la máquina como está ahora.
lost-ohms-on-live = Se midieron ohmios en un circuito con tensión o carga. Desenchufe y descargue lo acumulado antes de elegir Ω.
lost-opened-live = Se abrió el mueble con la máquina enchufada. Desenchufe primero y tenga la clavija a la vista.
lost-over-budget = Piezas y trabajo sumaron { $bill }; el cliente había aceptado { $budget }. Pregunte antes de pasar de lo acordado.
lost-over-repair-limit = Piezas y trabajo sumaron { $bill }; por encima de { $limit } no vale la pena reparar esta máquina. Dígalo antes de gastar el dinero.
lost-overspent = Gastó { $spent }; la reparación necesitaba { $needed }. El resto no le sirvió de nada al cliente.
lost-rest-too-short = Solo { $seconds } s desenchufada: el control aún tenía carga y nada se reinició. Dele un minuto entero.
lost-rivals-left = Las lecturas citadas dejan abiertas { $open } de { $rivals } otras causas. Mida lo que las distingue y cítelo.
lost-scald = Se metieron las manos en agua que quema. Deje que la bomba la saque o que se enfríe.
lost-shock = Descarga eléctrica: se tocó algo con tensión. Desenchufe, tenga la clavija bajo su control y compruebe la ausencia de tensión antes de meter las manos.
lost-slow = El trabajo llevó { $minutes } minutos; bastaban { $par }. Planee la próxima medición antes de tomar la herramienta.
lost-touched-charge = Descarga por carga acumulada: se metieron las manos antes de que se fuera. Espere un minuto, descárguela y compruébelo con el medidor.
lost-wrong-advice = Le dijo al cliente: «{ $given }». Lo que fallaba en la máquina pide: «{ $due }».
lost-wrong-cause = El informe dice «{ $said }»; era «{ $truth }». Que las lecturas, no el código, nombren la causa.
lost-wrong-part = Se montó una pieza que no cura la falla. Descarte midiendo a los demás sospechosos antes de comprar.
lost-wrong-part-named = El informe nombra la pieza { $named }; hacía falta { $needed }. Nombre la pieza del componente que falló, una que encaje en esta máquina.

## meter

meter-beep = pitido
meter-black = Punta negra
meter-choose = elija un pin abajo
meter-clips = Pinzas
meter-dead = Se fundió el fusible del medidor
meter-fingers = dedos en las puntas
meter-grip = Puntas sujetas con
meter-grip-fingers = Dedos
meter-held = RETENIDA
meter-mode-continuity = Pitido
meter-red = Punta roja
meter-test-bad = El medidor no muestra lo que se sabe que hay: revise el fusible y las puntas.
meter-test-good = El medidor muestra lo que se sabe que hay.
meter-test-intro = Fuente conocida: 50 V ~, 50 V = y 100 Ω. Pruebe el medidor antes y después de comprobar que un circuito no tiene tensión.

## misread

misread-count = Cuente otra vez: primero decenas, luego unidades.
misread-lamps = { $count ->
    [one] Una luz es distinta.
   *[other] { $count } luces son distintas.
}
misread-noted = Anotó { $code }
misread-shown = Se mostró { $code }

## mode

mode-belt-broken = Correa rota
mode-belt-slipping = Correa que patina
mode-board-bleeder-open = Placa de control: resistencia de descarga abierta
mode-board-cold-switch-welded = Placa de control: salida de válvula fría soldada
mode-board-current-input-drift = Placa de control: entrada de corriente del motor se desvía
mode-board-hot-switch-open = Placa de control: salida de válvula caliente muerta
mode-board-lock-switch-open = Placa de control: salida del bloqueo muerta
mode-board-lock-switch-welded = Placa de control: salida del bloqueo soldada
mode-board-memory-lost = Placa de control: memoria borrada, recalibrar
mode-board-motor-a-switch-open = Placa de control: salida A del motor muerta
mode-board-motor-a-switch-tired = Placa de control: salida A del motor falla en caliente
mode-board-motor-b-switch-scorched = Placa de control: salida B del motor quemada
mode-board-pump-switch-open = Placa de control: salida de bomba muerta
mode-board-pump-switch-welded = Placa de control: salida de bomba soldada
mode-board-sensor-rail-dead = Placa de control: alimentación de sensores muerta
mode-board-shifter-switch-open = Placa de control: salida del cambiador muerta
mode-board-supply-dead = Placa de control: fuente conmutada muerta, condensador aún cargado
mode-board-thermistor-input-drift = Placa de control: entrada del termistor se desvía
mode-cord-open-line = Cable de red: conductor de línea abierto
mode-cord-weak-joint = Cable de red: unión débil en el enchufe
mode-dial-worn = Selector: pasos gastados
mode-drain-hose-blocked = Manguera de desagüe obstruida
mode-drain-hose-end-high = Manguera de desagüe: tubo muy alto
mode-drain-hose-end-low = Manguera de desagüe: punta muy baja
mode-drain-hose-kinked = Manguera de desagüe doblada
mode-drain-hose-too-deep = Manguera de desagüe: muy metida en el tubo
mode-drain-pump-fouled = Bomba de desagüe: hilos en el rotor
mode-drain-pump-open-winding = Bomba de desagüe: bobinado abierto
mode-drain-pump-seized = Bomba de desagüe: rotor agarrotado
mode-filter-open-choke = Filtro de red: bobina abierta
mode-floor-not-level = La máquina se balancea sobre sus patas
mode-harness-cold-wire-open = Mazo de cables: hilo de la válvula fría abierto
mode-harness-hot-wire-open = Mazo de cables: hilo de la válvula caliente abierto
mode-harness-lock-coil-wire-open = Mazo de cables: hilo del bobinado del bloqueo abierto
mode-harness-lock-return-burnt = Mazo de cables: pin quemado en el retorno del bloqueo
mode-harness-lock-return-loose = Mazo de cables: pin flojo en el retorno del bloqueo
mode-harness-motor-common-burnt = Mazo de cables: pin quemado en el común del motor
mode-harness-motor-wire-shaken = Mazo de cables: el común del motor se corta al vibrar
mode-harness-pickup-ground-shaken = Mazo de cables: la masa del captador se corta al vibrar
mode-harness-pickup-wire-open = Mazo de cables: hilo de señal del captador abierto
mode-harness-pressure-supply-wire-open = Mazo de cables: hilo de alimentación del sensor de presión abierto
mode-harness-pressure-wire-open = Mazo de cables: hilo de señal de presión abierto
mode-harness-pump-wire-open = Mazo de cables: hilo de la bomba abierto
mode-harness-shifter-wire-open = Mazo de cables: hilo del cambiador abierto
mode-harness-thermistor-pin-damp = Mazo de cables: el pin del termistor falla con humedad
mode-harness-thermistor-wire-open = Mazo de cables: hilo del termistor abierto
mode-inlet-cold-blocked-screen = Válvula fría: filtro obstruido
mode-inlet-cold-open-winding = Válvula fría: bobina abierta
mode-inlet-cold-stuck-open = Válvula fría: no cierra
mode-inlet-hoses-crossed = Mangueras de entrada cambiadas
mode-inlet-hot-blocked-screen = Válvula caliente: filtro obstruido
mode-inlet-hot-open-winding = Válvula caliente: bobina abierta
mode-inlet-hot-stuck-open = Válvula caliente: no cierra
mode-laundry-overload = Ropa: demasiada
mode-laundry-suds = Ropa: demasiada espuma
mode-laundry-uneven = Ropa: apelmazada a un lado
mode-lid-lock-bolt-stiff = Bloqueo de tapa: pestillo duro
mode-lid-lock-contact-damp = Bloqueo de tapa: el contacto falla con humedad
mode-lid-lock-contact-open = Bloqueo de tapa: contacto de línea quemado
mode-lid-lock-contact-welded = Bloqueo de tapa: contacto de línea soldado
mode-lid-lock-lid-switch-open = Bloqueo de tapa: contacto de tapa siempre abierto
mode-lid-lock-open-winding = Bloqueo de tapa: bobinado abierto
mode-line-fuse-blown = Fusible de línea fundido
mode-motor-bearing-dry = Motor: cojinete que se va secando
mode-motor-open-winding-a = Motor: bobinado A abierto
mode-motor-open-winding-b = Motor: bobinado B abierto
mode-motor-seized = Motor: rodamientos agarrotados
mode-motor-shorted-turns = Motor: espiras en cortocircuito
mode-motor-winding-opens-hot = Motor: el bobinado B se abre en caliente
mode-nothing = No fallaba nada
mode-pickup-gap-wide = Captador de velocidad: lejos de sus imanes
mode-pickup-no-output = Captador de velocidad: sin salida
mode-pressure-hose-blocked = Manguera de presión obstruida
mode-pressure-hose-leaking = Manguera de presión: pierde aire
mode-pressure-sensor-no-output = Sensor de presión: sin salida
mode-pressure-sensor-slope-drift = Sensor de presión: pierde sensibilidad
mode-pressure-sensor-zero-drift = Sensor de presión: cero desplazado
mode-run-capacitor-fading = Condensador de marcha: pierde capacidad
mode-run-capacitor-open = Condensador de marcha abierto
mode-run-capacitor-shorted = Condensador de marcha en cortocircuito
mode-shifter-cam-switch-closed = Cambiador de modo: contacto de leva siempre cerrado
mode-shifter-cam-switch-open = Cambiador de modo: contacto de leva siempre abierto
mode-shifter-open-winding = Cambiador de modo: bobinado abierto
mode-shifter-stripped-gear = Cambiador de modo: engranaje barrido
mode-supply-loose-outlet = Toma: contacto flojo
mode-supply-low-mains = Toma: tensión de red muy baja
mode-taps-cold-shut = Grifo de agua fría cerrado
mode-taps-cold-throttled = Grifo de agua fría casi cerrado
mode-taps-hot-shut = Grifo de agua caliente cerrado
mode-thermistor-drifting = Termistor que se desvía
mode-thermistor-open = Termistor abierto
mode-thermistor-shorted = Termistor en cortocircuito
mode-tub-bearing-rough = Cuba: cojinete de la cesta áspero
mode-tub-leaking = Cuba: el sello gotea

## monitor

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

## name

name-dial = Selector: arrastre, use la rueda o las flechas
name-less = Menos (K)
name-lid = Tapa (L)
name-more = Más (I)
name-plug = Enchufe de red (P)
name-start = Inicio (S)
name-stop = Paro (X)
name-switch = Conmutador: arrastre, use la rueda o las flechas

## note

note-code = Código leído
note-code-do = Anotar

## notebook

notebook = Cuaderno
notebook-empty = Aún no hay lecturas.
notebook-live = con tensión

## noted

noted-codes = Anotados:

## number

number-hold = el código
number-idle = los minutos que durará
number-program = los minutos que faltan
number-recalibration = la etapa
number-service = la posición elegida
number-test = los segundos que faltan

## part

part-belt = Correa de transmisión
part-board = Placa de control
part-board-keys = Placa de control con teclas
part-board-one-lamp = Placa de control de una luz
part-board-other = Placa de control, modelo estrecho
part-contact-kit = Limpiador y grasa para contactos
part-cord = Cable de red con clavija
part-dial = Selector con anillo de retén
part-drain-hose = Manguera de desagüe
part-drain-pump = Bomba de desagüe
part-drain-pump-other = Bomba de desagüe, modelo estrecho
part-filter = Filtro de red
part-harness = Mazo de cables
part-inlet-cold = Válvula de entrada fría
part-inlet-hot = Válvula de entrada caliente
part-lid-lock = Bloqueo de tapa con interruptor de tapa
part-lid-lock-other = Bloqueo de tapa, modelo izquierdo
part-line-fuse = Fusible de línea
part-motor = Motor
part-motor-other = Motor, modelo estrecho
part-note-measure-first = No se admite devolución una vez abierta: mida antes de comprar
part-note-other-machine = Hecho para otra máquina; la fijación es distinta
part-note-visit = Una visita, no un repuesto. Las normas locales dicen quién puede hacerlo
part-pickup = Captador de velocidad
part-pressure-hose = Manguera de presión con abrazaderas
part-pressure-sensor = Sensor de presión
part-run-capacitor = Condensador de marcha
part-shifter = Cambiador de modo con interruptor de leva
part-supply-electrician = Visita de un electricista autorizado (toma y red)
part-thermistor = Termistor del agua
part-tub-seal = Juego de juntas de la cuba

## parts

parts = Mostrador de piezas
parts-boards = para placa: { $boards }
parts-fitted = Montada
parts-intro = Números y precios inventados. Lo que compra, lo paga el cliente.
parts-price = precio { $price }
parts-rates = Mano de obra: { $labour } por hora. Una pieza sin montar se puede devolver por el { $fee } % de su precio. Por encima de { $limit } entre piezas y trabajo, conviene más una máquina nueva.
parts-revision = rev. { $revision }
parts-superseded = reemplazada por { $part }
parts-wait = llega en { $hours } h

## pin

pin-bulk-minus = Reserva −
pin-bulk-plus = Reserva +
pin-fuse-in = Fusible, lado red
pin-fuse-out = Fusible, lado máquina
pin-plug-earth = Enchufe, tierra
pin-plug-line = Enchufe, fase
pin-plug-neutral = Enchufe, neutro

## practice

practice-all = Todos los ejercicios
practice-answers = { $right } de { $count } respuestas correctas
practice-back = Volver al inicio
practice-begin = Comenzar
practice-browser = Los aprendices se guardan en el almacenamiento de este navegador, solo en esta computadora.
practice-chart-confusion = Cifras leídas en las luces
practice-chart-confusion-none = Todavía no se ha leído ninguna cifra en las luces.
practice-chart-confusion-read = leída
practice-chart-confusion-shown = mostrada
practice-chart-confusion-sound = No se confundió ninguna cifra.
practice-chart-confusion-worst = La confusión más frecuente: { $shown } leído como { $read } (× { $count }).
practice-chart-known = { $name }: qué tan probable es que sepa cada cosa ahora
practice-chart-retention = De lo que sabe ahora, lo que quedará
practice-chart-retention-axis = días desde hoy
practice-chart-retention-none = Practique algo: aquí se verá cómo se olvida.
practice-chart-rhythm = Ritmo en el gesto de entrada
practice-chart-rhythm-axis = Tiempo de paso a paso en cada día de práctica, ms, y su variación
practice-chart-rhythm-none = Todavía no se ha medido ningún intento del gesto de entrada.
practice-choose = Aprendiz
practice-create = Agregar
practice-delete = Borrar este aprendiz
practice-delete-keep = Conservar
practice-delete-sure = ¿Borrar a { $name } y todas sus respuestas para siempre?
practice-due = toca repasar
practice-export-csv = Guardar respuestas (CSV)
practice-export-png = Guardar imagen (PNG)
practice-exported = Guardado: { $place }
practice-folder = Los aprendices se guardan como archivos simples en { $place }.
practice-guest = Invitado
practice-guest-note = Las respuestas de un invitado no se guardan: se pierden al cerrar el programa. Agregue un aprendiz para guardarlas.
practice-job-gone = Este trabajo ya no está aquí.
practice-known = { $known } % sabido
practice-mastered = dominada
practice-name = Nombre del nuevo aprendiz
practice-new = sin practicar
practice-next = Lo siguiente
practice-not-exported = No se guardó: { $detail }
practice-tab-practice = Práctica
practice-tab-progress = Progreso
practice-target = Meta: { $target } % de respuestas correctas
practice-target-note = Más bajo es más difícil. El instructor puede fijarla para un aprendiz.
practice-title = Práctica
practice-unkept = Aquí no se guardan las respuestas: se pierden al cerrar el programa.
practice-why-fades-first = Todo está dominado y no toca ningún repaso; de todo, «{ $exercise }» es lo que primero se olvida.
practice-why-nearest = De lo que tiene abierto, «{ $exercise }» es lo más cercano a su meta de { $target } %: se espera cerca de { $expected } % correcto.
practice-why-new = Todavía no ha practicado «{ $exercise }», y con cerca de { $expected } % correcto esperado es lo más cercano a su meta de { $target } %.
practice-why-review = «{ $exercise }» ya estaba dominado y toca repasarlo: sin repaso se olvida, y ahora se espera cerca de { $expected } % correcto.

## program

program-empty-and-spin = Vaciar y centrifugar
program-everyday = Diario
program-gentle = Delicado
program-hot = Caliente
program-rinse-and-spin = Enjuagar y centrifugar
program-short = Corto
program-soak = Remojo

## refusal

refusal-already-so = Ya está así.
refusal-cabinet-closed = Quite antes los paneles del mueble.
refusal-does-not-fit = La pieza { $part } no encaja en esta máquina.
refusal-finished = El trabajo terminó: el informe está entregado.
refusal-lid-closed = Levante primero la tapa.
refusal-lid-locked = La tapa está bloqueada.
refusal-needs-part = Esto no se arregla solo con las manos: pide un repuesto o una persona autorizada.
refusal-no-button = Aquí no hay ese botón.
refusal-no-cause = Esa causa no está en el catálogo. Elija una de la lista.
refusal-no-connector = Aquí no existe ese conector.
refusal-no-part = El mostrador no tiene la pieza { $part }.
refusal-no-reading = No hay tal lectura en el cuaderno.
refusal-not-in-hand = Pida antes la pieza { $part }.
refusal-nothing-to-hold = El medidor no muestra nada que retener. Ponga antes las puntas.
refusal-plug-in-outlet = Desenchufe antes: las clavijas están en la toma.

## report

report-advice = Consejo para el cliente
report-cause = Qué fallaba
report-cause-again = Puede haber dos fallas: elija otra vez para añadir una o quitarla.
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

## reset

reset-hold = Mantenga { $button } durante { $seconds } s.
reset-hold-not = En esta placa mantener un botón no hace nada.
reset-lid = Levante y baje la tapa { $times } veces en { $seconds } s.
reset-lid-not = En esta placa mover la tapa no hace nada.
reset-power = Desenchufe y espere un minuto antes de volver a enchufar.

## review

review-best = El mejor camino
review-cost = Coste hasta aquí
review-intro = Cada barra: cuán probable era cada causa después de ese acto. En verde: la que era. El coste cuenta trabajo, piezas y la espera de piezas.
review-none = No se puede mostrar ningún camino: falta la tabla de fallas de esta placa.
review-working = Calculando su camino y el mejor…
review-others = todas las demás
review-sound = mejor: { $step }
review-stop = { $minutes } min · { $money }
review-title = Dos caminos por este trabajo
review-yours = Su camino

## routine

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

## rule

rule-hold-too-long = se mantuvo demasiado tiempo
rule-hold-too-short = se soltó demasiado pronto
rule-late = la acción llegó tarde
rule-out-of-order = tocaba otra acción
rule-press-too-long = la pulsación fue demasiado larga
rule-too-few-detents = faltaron topes
rule-too-many-detents = sobraron topes
rule-window-over = se acabó el tiempo
rule-wrong-way = el selector giró en sentido contrario

## score

score-at = { $minutes } min después de llegar
score-failed = Suspendido, por mucho que se ganara lo demás. { $why }
score-goal = Lo que enseña este trabajo: { $goal }
score-losses = Puntos perdidos
score-none-lost = Ninguno. Buen trabajo.
score-not-passed = Aún no aprobado: hace falta un { $percent } %.
score-not-yet = La nota llega con el informe. Hasta entonces, así fueron sus intentos de entrar al modo de servicio.
score-passed = Aprobado: hacía falta un { $percent } %.
score-total = { $kept } de { $of } puntos

## sheet

sheet-codes = Códigos
sheet-codes-intro = Un código dice qué vio el control, no qué pieza está mal. Mida antes de comprar.
sheet-entry = Entrada
sheet-entry-again = Si el intento falla: desenchufe, espere a que el control se apague y empiece de nuevo.
sheet-entry-before = Para entrar al modo de servicio: sin programa en marcha y, sin pausas:
sheet-entry-before-power = Para entrar al modo de servicio: desenchufe y espere a que el control se apague; luego:
sheet-entry-from = Antes, el mando debe estar en { $position }.
sheet-entry-rest = Antes de otro intento no toque la consola ni la tapa durante { $seconds } s.
sheet-entry-skip = Un giro rápido puede saltarse un tope.
sheet-entry-window = Todo el gesto en { $seconds } s.
sheet-invented = Placa inventada, solo para formación.
sheet-lamps = Luces
sheet-lamps-example = Este ejemplo se lee { $number }.
sheet-lamps-lock = La luz de bloqueo parpadea con cualquier fallo. Eso no significa que el bloqueo esté mal.
sheet-lamps-no-lock = Esta placa no tiene luz de bloqueo: si la tapa está bloqueada, se nota en la tapa.
sheet-lamps-pages = En la lista de códigos cada pulsación de { $button } pasa de página; el más nuevo va primero.
sheet-menu = Menú
sheet-menu-clear = Para borrar los códigos mantenga Inicio durante { $seconds } s.
sheet-menu-intro = En modo de servicio: elija una posición y pulse Inicio.
sheet-pins = Cables
sheet-pins-intro = Pin, marca impresa y adónde va el cable.
sheet-programs = Programas fuera del modo de servicio
sheet-reset = Salir de un paro por fallo
sheet-sights = Qué muestran las luces
sheet-tens = decenas
sheet-units = unidades
sheet-wires-intro = A la izquierda, el pin de la placa con su marca impresa; a la derecha, el borne donde termina el cable. Los cables de red son marrones. Un clic pone ahí la siguiente punta.

## side

side-board = lado placa
side-harness = lado mazo
side-load = en la carga

## sight

sight-all = { $lamps ->
    [one] encendida
   *[other] todo encendido
}
sight-bar = { $number }, como una fila de luces que crece desde la izquierda
sight-blink = { $lamps ->
    [one] parpadea
   *[other] todo parpadea
}
sight-dark = { $lamps ->
    [one] apagada
   *[other] todo apagado
}
sight-number = { $number }
sight-number-and = { $number }, alternando con esto
sight-still = esto
sight-turns = estas dos, alternando

## signal

signal-caution = ATENCIÓN
signal-danger = PELIGRO
signal-notice = AVISO
signal-warning = ADVERTENCIA

## signs

signs-flashes = Una sola luz destella el número: cuente los destellos largos para las decenas y luego los cortos para las unidades. Tras una pausa empieza de nuevo.
signs-pictures = Cada número tiene su propia figura; búsquela en la lista.
signs-segments = Dos cifras muestran el número.
signs-weights = Las luces muestran dos cifras a la vez. En cada grupo sume los números bajo las luces encendidas.

## skill

skill-code-look-up = Buscar códigos
skill-entry-timing = Gesto de entrada
skill-lamp-reading = Leer las luces
skill-metering = Usar el medidor
skill-next-test = Elegir la siguiente prueba
skill-part-choice = Elegir la pieza
skill-proof = Demostrar la falla
skill-safe-work = Trabajar con seguridad

## sound

sound-agitator-swish = el agitador se mueve
sound-ask-first = decir cuánto costará y preguntar antes de seguir
sound-bail-out = vaciar antes la cuba
sound-buy-needed = comprar solo lo que piden las lecturas
sound-cabinet-shake = el mueble tiembla
sound-dead-test = encontrarlo con la clavija fuera
sound-discharge = descargar la carga y ver que ya no está
sound-floor-wet = { $litres } L en el piso
sound-let-cool = dejar que la bomba saque el agua caliente, o que se enfríe
sound-lock-held = el bloqueo retiene la tapa
sound-measure-dead = medir que la carga se ha ido antes de meter las manos
sound-measure-first = medir antes de comprar
sound-motor-free = el motor gira solo
sound-motor-hum = el motor zumba sin girar
sound-none = silencio
sound-note-codes = anotar cada código mientras se ve
sound-ohms-dead = clavija fuera y carga descargada antes de Ω
sound-part-number = nombrar la pieza por el número de la hoja que va en esta placa
sound-prove-meter = probar el medidor en la fuente conocida antes y después
sound-pump-buzz = la bomba vibra, trabada
sound-pump-hum = la bomba zumba
sound-read-twice = leer las luces dos veces antes de anotar el código
sound-recalibrate = recalibrar después de la reparación
sound-report = nombrar lo que prueban las lecturas
sound-rest = dejar la clavija fuera el minuto entero
sound-run = hacer un programa hasta el final y mirar
sound-second-visit = quedarse hasta que esté reparada, o decir claramente que no lo está; si no, alguien vuelve otra vez
sound-shifter-tick = el cambiador hace tic
sound-shorter-way = tomar la medida que más dice por su tiempo
sound-spin-whirr = la cesta centrifuga
sound-steady-hand = un ritmo parejo dentro de las ventanas de la hoja
sound-unplug = sacar antes la clavija
sound-valve-buzz = la válvula vibra, sin agua
sound-wait-spin = esperar a que la cesta se pare
sound-water-rush = entra agua

## spot

spot-bulk = Condensador de reserva de la placa
spot-fuse = Fusible de línea
spot-plug = Enchufe de red

## stage

stage-cam = Una vuelta del cambiador de modo
stage-coast = Espera a que la cesta se detenga
stage-cold = Entra agua fría
stage-empty = Vaciado de la cuba
stage-hot = Entra agua caliente
stage-lock = Bloqueo de la tapa
stage-motor-a = Motor, sentido A
stage-motor-b = Motor, sentido B
stage-pump = Sale el agua
stage-spin = Un centrifugado corto
stage-unlock = Liberación de la tapa
stage-zero = Aprende el cero del sensor de presión

## start

start-about = Todo aquí es inventado: máquinas, placas, códigos, piezas, precios y clientes. Solo para formación: mandan las normas locales y la práctica autorizada.
start-after = Mejor después de: { $titles }.
start-begin = Empezar el trabajo
start-minutes = Unos { $minutes } minutos.
start-practice = Práctica
start-seed = Semilla
start-seed-hint = misma semilla, misma máquina

## step

step-hold = Mantenga { $button } de { $from } a { $to } s
step-lid-down = Baje la tapa
step-lid-up = Levante la tapa
step-power-up = Enchufe
step-power-up-holding = Apriete { $button }, no lo suelte y enchufe
step-press = Pulse { $button }
step-press-times = Pulse { $button } { $times } veces
step-push = Apriete { $button } y no lo suelte
step-release = Suelte { $button }
step-turn-left = Gire a la izquierda { $detents } topes
step-turn-right = Gire a la derecha { $detents } topes

## tab

tab-meter = Medidor
tab-parts = Piezas
tab-report = Informe
tab-score = Nota
tab-sheet = Hoja

## ticket

ticket-hours = { $hours } h
ticket-labour = de eso, trabajo
ticket-limit = No vale más de
ticket-live = Con tensión
ticket-live-no = no permitido
ticket-live-yes = permitido
ticket-mains = Red
ticket-minutes-of = { $minutes } de { $par } min
ticket-money = Dinero
ticket-money-of = { $spent } de { $budget }
ticket-waited = Espera de piezas
ticket-work = Trabajo

## top

top-keys = F1 teclas
top-pause = Parar el reloj

## tries

tries = Intentos de modo de servicio
tries-intro = El tiempo corre a la derecha, en segundos. Sombreado: la ventana entera. Barras: ventana propia de una acción. Bandera: la regla rota.

## trouble

trouble-changed = { $detail } se hizo con otro texto de su trabajo, así que aquí no se puede continuar. Guarde una copia y ábrala con el Detent que lo hizo.
trouble-damaged = Este intento está dañado ({ $detail }). Guarde una copia si la necesita, o bórrelo.
trouble-differs = Repetido, este intento termina de otra manera que la que dice: lo hizo otra versión de Detent o fue cambiado ({ $detail }).
trouble-elsewhere = El banco está abierto en otra pestaña y los intentos se guardan allí. Cierre esta.
trouble-foreign = { $detail } no es un intento de Detent. Elija un archivo que Detent haya guardado.
trouble-full = No queda espacio o el disco falla: este intento no se guarda. Guarde una copia antes de cerrar y borre los intentos que ya no necesite. ({ $detail })
trouble-gone = { $detail } no está aquí.
trouble-newer = { $detail } lo hizo un Detent más nuevo. Recargue esta página o instale el más nuevo para abrirlo; no se pierde nada.
trouble-other = El intento no se guarda: { $detail }
trouble-refused = El navegador no permite guardar intentos, como en una ventana privada: guarde una copia antes de cerrar. ({ $detail })

## try

try-entered = Entró al modo de servicio
try-open = En curso

## view

view-cabinet = Interior
view-machine = Máquina
view-panel = Consola

## wait

wait = Dejar pasar el tiempo
wait-1-min = 1 min
wait-10-min = 10 min
wait-10-s = 10 s
wait-left = faltan { $seconds } s
wait-stop = Parar
