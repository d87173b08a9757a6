# Todos los textos visibles, en español de España y con el vocabulario de su servicio técnico (grifo, cuba,
# clavija, condensador, multímetro); de usted. Siempre «fallo», «selector» para el mando giratorio y «paso»
# para cada uno de sus clics. Las secciones y sus claves van en orden alfabético, y en.ftl tiene las mismas
# claves con los mismos argumentos; `cargo test --test content` lo comprueba.

## account

account-owed = Ya se sabía: { $known }. Mejor: { $sound }.
account-saves = Ya se sabía: { $known }. Mejor: { $sound }. Ahorra unos { $minutes } min y { $money }.
account-saves-money = Ya se sabía: { $known }. Mejor: { $sound }. Ahorra unos { $money }.
account-takes = Ya se sabía: { $known }. Mejor: { $sound }. Lleva { $minutes } min y { $money }, pero hay que hacerlo de todos modos.

## advice

advice-check-outlet = Que un electricista revise la toma
advice-check-water = Que un fontanero revise la instalación de agua
advice-clean-strainer = Limpiar de vez en cuando los filtros de entrada de agua
advice-keep-tap-open = Dejar los dos grifos bien abiertos
advice-less-detergent = Usar menos detergente
advice-level-machine = Nivelar la máquina
advice-no-extension-cord = Enchufar la máquina directamente a la toma
advice-none = Ningún consejo
advice-replace = Cambiar la máquina en vez de repararla

## app

app-name = Detent
app-tagline = Banco de prácticas para quienes reparan lavadoras

## area

area-basket = la cuba, lo que hay dentro y cómo está asentada la máquina
area-console = el control y su consola
area-drain = el camino por donde sale el agua
area-drive = la transmisión: motor, correa, actuador del embrague, captador de velocidad
area-fill = el camino por donde entra el agua
area-level = lo que indica al control el nivel del agua
area-lid = el bloqueo de la tapa
area-power = la entrada de corriente, de la toma al control
area-temperature = lo que indica al control la temperatura
area-wiring = los cables y los conectores

## ask

ask = Preguntar al cliente
ask-appliance = ¿Qué modelo y qué número de serie pone en la placa?
ask-appliance-answer = Modelo { $model }, número de serie { $serial }
ask-demonstration = Véalo funcionar, por favor: ¿está todo como debe?
ask-happens = ¿Qué hace, y en qué momento?
ask-noises = ¿Hace algún ruido que antes no hacía?
ask-nothing = Nada que yo haya notado.
ask-panel = ¿Qué luces hay encendidas o qué sale en la pantalla?
ask-since = ¿Desde cuándo lo hace?
ask-tried = ¿Qué ha probado usted?

## author

author-changed-since-packed = { $path } no está como cuando se empaquetó el curso; vuelva a empaquetarlo antes de entregárselo a nadie
author-dial-slipped = con esta semilla el selector gastado se salta un paso antes del lavado del cliente, que entonces no dice nada; elija otra semilla
author-difficulty = Aprendices simulados: aprueba el { $passing } ({ $groups })
author-drawn-from = Se sortea entre { $count } modos de fallo, cada uno comprobado con su tabla: { $modes }
author-drawn-from-many = Se sortea entre { $count } modos de fallo; se prueba en { $machines } máquinas
author-expert = Experto: { $minutes } min (previstos { $par }), factura { $bill } (presupuesto { $budget }), { $share } de los puntos
author-expert-fails = el experto simulado no aprueba este trabajo: { $share } de los puntos; revise el tiempo, el presupuesto y lo que se permite
author-expert-fails-by = el experto simulado no aprueba este trabajo ({ $share } de los puntos): { $why }
author-expert-none = Experto: no puede hacerlo
author-expert-stuck = el experto simulado llega a un paso que la máquina no admite: { $why }
author-gesture = Gesto de entrada, mejor ritmo de cada mano simulada: { $hands }
author-gesture-hardly-met = de los intentos de una mano de destreza corriente solo entra el { $share }; amplíe los plazos, pida menos o gaste menos el selector
author-gives-away = «{ $word }» delata el componente averiado ({ $component }); diga lo que el cliente ve y oye
author-guide-about-window = Nota: pasos que terminan con lo que enseña la ventana: { $count }. Solo se pueden enunciar, no demostrar.
author-guide-does-harm = lo que muestra el paso { $step } sale mal: { $why }
author-guide-ends-early = Nota: termina antes de entregar el informe. Lo que viene después queda sin guía.
author-guide-fails = quien hace lo que muestra esta guía no aprueba: { $share } de los puntos; revise los pasos, el tiempo y el presupuesto
author-guide-fails-by = quien hace lo que muestra esta guía no aprueba ({ $share } de los puntos): { $why }
author-guide-goal-already = el objetivo del paso { $step } se alcanza antes de que empiece el paso, así que nadie llega a verlo; quite el paso o póngale otro objetivo
author-guide-goal-missed = lo que muestra el paso { $step } no alcanza su objetivo; corrija «shown» o «goal». Los pasos siguientes no se han probado
author-guide-proved = Hecho en el banco tal como se muestra: { $proved } de { $steps } pasos alcanzan su objetivo.
author-guide-share = Quien hace lo que muestra conserva el { $share } de los puntos.
author-guide-step-refused = el paso { $step } muestra algo que no se puede hacer: { $why }. Los pasos siguientes no se han probado
author-guide-strays-itself = a quien sigue la guía hasta el paso { $step } se le dice que va por mal camino; corrija «after» o diga con «until» qué lo termina
author-guide-ways-astray = Nota: malos caminos de los que avisa: { $count }. Solo se pueden enunciar, no demostrar.
author-hand = dispersión del { $spread } de un paso: entra el { $share } a { $ms } ms
author-learners = { $level }: aprueba el { $passing }, { $mean } ± { $spread } de los puntos
author-learners-advanced = avanzados
author-learners-beginner = principiantes
author-learners-middle = intermedios
author-machine = Semilla { $seed }: { $modes }
author-never-shows = «{ $mode }» no se nota ni en el lavado del cliente ni en nada de lo que permite este trabajo; elija otro fallo o permita pruebas con tensión
author-no-control-to-buy = en el mostrador no hay ninguna placa de control nueva de este modelo; añada una a parts.ron
author-no-dial-to-wear = esta placa no tiene selector que se gaste; quítelo
author-no-job-for-guide = junto a la guía no hay ningún trabajo con ese nombre, o tiene un error
author-no-plan = no se ha podido planear nada: { $why }
author-no-table = no se ha podido probar nada: no hay tabla de lo que cada fallo muestra en esta placa
author-nothing-wrong = nada averiado
author-other-code-than-drawn = «{ $mode }» entra en el sorteo por su código, pero en esta placa el lavado del cliente no deja ninguno de { $codes }; ponga «{ $id }» en `without`
author-other-codes = el lavado del cliente guarda los códigos { $raised }, no { $expected }; corrija la lista, o el fallo y su semilla
author-rival-alike = nada de lo que permite este trabajo distingue «{ $mode }» de «{ $rival }» (probabilidad de { $share } tras el lavado), y ninguna reparación cura ambos; permita pruebas con tensión o elija otro fallo
author-rival-alike-same-repair = nada de lo que permite este trabajo distingue «{ $mode }» de «{ $rival }» (probabilidad de { $share } tras el lavado); la misma reparación cura ambos
author-rival-told = Rival { $share }: { $rival } (se distingue)
author-rival-told-same-repair = Rival { $share }: { $rival } (se distingue; misma reparación)
author-rival-untold = Rival { $share }: { $rival } (nada en las tablas lo distingue)
author-rival-untold-same-repair = Rival { $share }: { $rival } (nada en las tablas lo distingue; misma reparación)
author-same-in-both-languages = esto es igual en inglés y en español; tradúzcalo
author-severity-error = error
author-severity-warning = aviso
author-shown-codes = el lavado del cliente guarda códigos
author-shown-never = nada lo muestra
author-shown-nothing = no hay nada que mostrar
author-shown-tests = solo lo muestran las pruebas del técnico
author-shown-wash = el cliente lo nota en el lavado
author-shows = Cómo se nota: { $shown }. Códigos: { $codes }
author-sound-machine-accused = una máquina sana a { $volts } V se para o guarda códigos: { $monitors }; corrija límites y esperas
author-sound-machine-never-done = a { $volts } V una máquina sana no llega al final de su primer programa; corrija sus fases
author-sound-machine-not-recalibrated = a { $volts } V no se puede recalibrar una máquina sana; corrija gesto, menú, etapas y márgenes
author-too-dear = la factura del experto simulado es de { $bill }, más que el presupuesto de { $budget }; dé más dinero
author-too-slow = el experto simulado tarda { $minutes } min, más de los { $par } min de este trabajo; dé más tiempo
author-unknown-text = ningún texto tiene la clave «{ $key }»; use una clave de los archivos incorporados, o palabras
author-way = El camino del experto

## best

best-at-dead = desenchufada
best-at-idle = enchufada, en reposo
best-at-pulled = desenchufada, con la carga desconectada
best-at-test-clutch = prueba del actuador del embrague
best-at-test-cold = prueba de la válvula fría
best-at-test-hot = prueba de la válvula caliente
best-at-test-lock = prueba del bloqueo
best-at-test-motor-a = prueba del motor, sentido A
best-at-test-motor-b = prueba del motor, sentido B
best-at-test-pump = prueba de la bomba
best-belief = Probabilidades antes y después del lavado del cliente
best-bucket-cold = llenar un cubo en el grifo de agua fría
best-bucket-hot = llenar un cubo en el grifo de agua caliente
best-code-buyer = compra según el código
best-codes = Códigos guardados durante el lavado del cliente
best-columns = Coste esperado de la reparación, con el mínimo que puede alcanzar cualquier método (≥) / coste con el fallo de esta semilla. El del experto es la media de las causas del 2 % o más.
best-control-swapper = cambia primero la placa
best-cost = Coste esperado de la reparación si en cada paso se hace lo mejor, en unidades enteras de dinero
best-expert = experto del guion
best-fit = montar y comprobar con un lavado
best-hand-back = recalibrar, hacer un lavado y cerrar el trabajo
best-inspect = revisar
best-new-machine = parar y recomendar una máquina nueva
best-next = Coste esperado de la reparación si lo siguiente es esto (≥ el mínimo posible)
best-not-asked-for = El lavado del cliente no llegó a empezar: el selector gastado patinó y el control está en un programa distinto del que marca el selector. Eso no dice nada del resto de la máquina.
best-optimum = mejor plan
best-put-right = arreglar a mano
best-recalibrate = recalibrar y ver el resultado
best-scenario = trabajo
best-several = Este trabajo esconde { $count } fallos a la vez. Lo que sigue los trata de uno en uno: es el mejor plan solo para el primero.
best-tries = Intentos de entrada fallidos seguidos, a ritmo tranquilo y con los tiempos bien hechos en este selector, tras los que lo más probable es que falle la placa: { $tries } para quien empieza, { $practised } para una mano experta

## board

board-arc-dial = Placa de arco y selector
board-key-pad = Placa de teclas
board-lone-lamp = Placa de una luz
board-narrow-line = Máquina de línea estrecha

## broke

broke-hold-too-long = Se mantuvo demasiado
broke-hold-too-short = Se soltó demasiado pronto
broke-late = Demasiado tarde
broke-out-of-order = Tocaba otra acción
broke-press-too-long = Pulsación demasiado larga
broke-stood-too-short = Demasiado poco tiempo en su posición sin corriente
broke-too-few-detents = Faltaron pasos
broke-too-many-detents = Sobraron pasos
broke-too-soon = Demasiado pronto
broke-window-over = Se acabó el tiempo
broke-wrong-way = Giro en sentido contrario

## bucket

bucket-at-cold = Grifo de agua fría
bucket-at-hot = Grifo de agua caliente
bucket-dry = en el cubo no cae ni gota.
bucket-good = Para una lavadora, de sobra.
bucket-nothing = Con el grifo abierto, el agua no llega ni a la manguera.
bucket-reading = { $flow } L/min a { $warmth } °C. Eso son unos { $pressure } kPa mientras corre.
bucket-weak = Es poca: una lavadora no llenaría a tiempo.

## button

button-less = Menos
button-more = Más
button-start = Inicio
button-stop = Parada
caution-discharge-live = La máquina está enchufada: la red mantiene cargado el condensador y la resistencia se quemará en su mano. Desenchúfela antes.

## call

call-back = Tres días después llama el cliente:
call-back-earlier = En la ficha de la primera visita: códigos anotados: { $codes }. Trabajo hecho: { $repairs }. Causa indicada: { $causes }.
call-back-fitted = montada la pieza { $part }
call-back-go = Volver a la máquina
call-back-how = La segunda visita la paga usted, no el cliente: la mano de obra en garantía es gratis.
call-back-none = Tres días después: no llama nadie.
call-back-nothing = nada
call-back-put-right = arreglado a mano: { $component }
call-back-visit = Segunda visita, porque el cliente ha vuelto a llamar:

## caution

caution-flood = Hay agua en la cuba. Si abre una pieza más baja o inclina la máquina, se inunda el suelo. Vacíe o achique antes la cuba.
caution-go-on = Seguir
caution-heavy = La máquina pesa y puede aplastar una mano o un pie. Desenchúfela, vacíe o achique el agua e inclínela entre dos personas.
caution-hot-water = Las mangueras tienen presión y una está caliente: puede quemar. Cierre antes los dos grifos y quite la presión.
caution-insulation-in-hand = El medidor de aislamiento saca 500 V por las puntas. Si las sujeta con los dedos, pasan por usted: use las pinzas.
caution-insulation-on-control = El medidor de aislamiento pone 500 V en estos cables y la placa sigue conectada a ellos. Suelte antes el conector de lo que va a medir y no toque las puntas con los dedos.
caution-live-test = Va a medir en una máquina con tensión. Un descuido puede dar una descarga mortal, y la correa y las poleas arrancan sin avisar. Conecte las pinzas con la máquina desenchufada, apártese y después enchúfela; sin joyas y con el suelo seco. Multímetro y puntas de CAT II o superior para esta tensión. Solo con formación y autorización.
caution-moving = La cesta aún gira y puede romper un brazo. Espere a que se pare.
caution-not-proved-dead = Nadie ha comprobado todavía que la carga almacenada haya desaparecido. Compruebe el multímetro, mida el condensador, vuelva a comprobar el multímetro y solo entonces meta las manos.
caution-ohms-live = Hay tensión en este circuito. Si mide ohmios en él, fundirá el fusible del multímetro y puede hacerse daño. Desenchufe la máquina, descargue el condensador y luego mida.
caution-open-live = Dentro hay tensión de red. Tocarla puede matar. Desenchufe la máquina y tenga la clavija a la vista antes de quitar los paneles.
caution-plug-open = Los paneles están quitados: al enchufar, quedan al alcance partes con tensión que pueden matar. Ponga antes los paneles, salvo que tenga formación y autorización para trabajar con tensión.
caution-scald = El agua de la cuba está tan caliente que quema. Deje que la bomba la vacíe o que se enfríe.
caution-step-back = Volver atrás
caution-stored-charge = Un condensador sigue cargado y puede dar una descarga. Espere un minuto, descárguelo con una resistencia y compruebe con el multímetro que no queda tensión.
caution-touch-live = La máquina está enchufada. Las partes con tensión pueden matar. Desenchúfela, tenga la clavija bajo su control y compruebe la ausencia de tensión.

## check

check-belt-in-place = Primero desenchufe la máquina y descargue el condensador. Mire la correa y apriétela. Una correa buena está en las dos poleas, seca y tensa, y mueve la cesta con el motor.
check-bulk-volts = Prueba con tensión, solo con formación y autorización. Mida V DC de bulk.plus a bulk.minus. Correcto: unos 168 V con red de 120 V, unos 320 V con 230 V. No debe caer al arrancar el motor. Tensión completa con la consola apagada: la fuente de la propia placa no funciona, y la carga dura minutos después de desenchufar.
check-cam-switch = Primero desenchufe la máquina y descargue el condensador. Suelte el conector del actuador del embrague y mida Ω de clutch-actuator.3 a clutch-actuator.4. Correcto: menos de 1 Ω en la mitad de centrifugado, OL en la mitad de lavado.
check-cam-wires = Primero desenchufe la máquina y descargue el condensador. Mida Ω de clutch-actuator.3@board a clutch-actuator.3, y lo mismo con clutch-actuator.4. Correcto: unos 0,2 Ω, la resistencia de las puntas.
check-capacitor-microfarads = Primero desenchufe la máquina y descargue el condensador. Suelte el conector del condensador de marcha y mida µF de run-capacitor.1 a run-capacitor.2. Correcto: unos 45 µF para 120 V, unos 14,7 µF para 230 V. Si falta más de una décima parte o no marca nada, cámbielo. No hace falta ninguna prueba con tensión.
check-clutch-actuator-coil-ohms = Primero desenchufe la máquina y descargue el condensador. Suelte el conector del actuador del embrague y mida Ω de clutch-actuator.1 a clutch-actuator.2. Correcto: unos 2400 Ω para 120 V, unos 8800 Ω para 230 V.
check-clutch-actuator-volts = Prueba con tensión, solo con formación y autorización. En la prueba del actuador del embrague mida V~ de clutch-actuator.1 a clutch-actuator.2. Correcto: tensión de red. Con tensión y el bobinado bien, pero la leva no se mueve: engranaje sin dientes.
check-cord-ohms = Primero desenchufe la máquina y descargue el condensador. Mida Ω de plug.line a fuse.in, luego de fuse.in a fuse.out, de fuse.out a cord.1 y de plug.neutral a cord.2. Correcto: de 0,2 a 0,3 Ω cada uno. Medio ohmio más es una conexión floja: busque partes tostadas.
check-drain-hose-blocked = Primero desenchufe la máquina y achique la cuba. Saque la manguera de desagüe y mire a través de ella. Una buena está libre de un extremo a otro: una obstruida se limpia y se vuelve a colocar, no hace falta una nueva. Si está libre, limpie el rotor de la bomba y después mídala.
check-drain-hose-height = Mida la altura del codo superior de la manguera sobre el suelo. Correcto: 0,9 m, suelta en el tubo de desagüe. Si está baja o sellada, la cuba se vacía por sifón.
check-drum-turns-by-hand = Desenchufe la máquina y espere a que la cesta se pare. Gírela a mano. Si está bien, gira de manera uniforme contra el freno y sin rozar. Si no, quite la correa y pruebe la cesta y el motor por separado.
check-empty-drum-first = Saque la ropa y recalibre otra vez. La recalibración necesita la cesta vacía.
check-inlet-coil-ohms = Primero desenchufe la máquina y descargue el condensador. Suelte el conector de cada válvula y mida Ω de inlet-cold.1 a inlet-cold.2, luego de inlet-hot.1 a inlet-hot.2. Correcto: unos 780 Ω para 120 V, unos 2870 Ω para 230 V.
check-inlet-shuts-unplugged = Desenchufe la máquina y observe el agua. Si sigue subiendo, una válvula no cierra: fallo mecánico. Si se detiene, la válvula estaba alimentada: mida V~ en sus bornes.
check-inlet-volts = Prueba con tensión, solo con formación y autorización. Mida V~ de inlet-cold.1 a inlet-cold.2 en la prueba de fría, de inlet-hot.1 a inlet-hot.2 en la de caliente. Correcto: tensión de red en su prueba, unos 0 V en reposo. Unas decenas de voltios en reposo que desaparecen en LoZ V~ son tensión parásita.
check-lock-coil-ohms = Primero desenchufe la máquina y descargue el condensador. Suelte el conector del bloqueo de tapa y mida Ω de lid-lock.1 a lid-lock.2. Correcto: unos 120 Ω para 120 V, unos 440 Ω para 230 V.
check-lock-contact-ohms = Primero desenchufe la máquina y descargue el condensador. Suelte el conector del bloqueo de tapa y mida Ω de lid-lock.3 a lid-lock.4. Correcto con el pestillo recogido: OL; unos 0 Ω es un contacto soldado. Un contacto que no cierra se ve en la prueba de línea con tensión.
check-lock-line = Prueba con tensión, solo con formación y autorización. En la prueba del bloqueo mida V~ de lid-lock.4 a cord.2, luego de lid-lock.4@board a cord.2. Correcto: tensión de red en ambos. Sin tensión en el primero: el contacto. Solo falta en la placa: cable o pin. Saque el conector y mírelo: un pin flojo se reajusta, uno quemado se cambia con el juego de terminales, y se revisa el conector de la placa.
check-lock-volts = Prueba con tensión, solo con formación y autorización. En la prueba del bloqueo mida V~ de lid-lock.1 a lid-lock.2. Correcto: tensión de red al activarlo, unos 0 V en reposo. Con tensión y la bobina bien, pero sin que salga el pestillo: el bloqueo. Sin tensión: cable o placa. Unas decenas de voltios en reposo que desaparecen en LoZ V~ son tensión parásita.
check-motor-amps = Prueba con tensión, solo con formación y autorización. Ponga la pinza en el cable de motor.1 en la prueba del motor A y en el de motor.2 en la del motor B. Las dos lecturas deben parecerse. Más de 9 A con 120 V (4,7 A con 230 V) pasado el arranque es sobrecarga.
check-motor-common = Primero desenchufe la máquina y descargue el condensador. Mida Ω de motor.3@board a motor.3. Correcto: unos 0,2 Ω, la resistencia de las puntas. Medio ohmio más es un contacto flojo o quemado, que pierde voltios con el motor en marcha: cambie el pin con el juego de terminales y revise el conector con el que encaja. Si está cortado, no pasa corriente por ningún bobinado.
check-motor-volts = Prueba con tensión, solo con formación y autorización. Tapa cerrada. Mida V~ de motor.1 a motor.3 en la prueba del motor A, de motor.2 a motor.3 en la del motor B. Correcto: tensión de red. Sin tensión: revise la línea del bloqueo, el cable y la placa antes que el motor.
check-motor-winding-ohms = Primero desenchufe la máquina y descargue el condensador. Suelte el conector del motor y mida Ω de motor.1 a motor.3, luego de motor.2 a motor.3. Correcto: los dos iguales, unos 2,6 Ω para 120 V, unos 9,6 Ω para 230 V; un bobinado caliente da más.
check-motor-wires = Primero desenchufe la máquina y descargue el condensador. Mida Ω de motor.1@board a motor.1, y lo mismo con motor.2 y motor.3. Correcto: unos 0,2 Ω cada uno, la resistencia de las puntas.
check-pickup-output = Prueba con tensión, solo con formación y autorización. En la prueba de centrifugado mida Hz de pickup.3 a pickup.2. Correcto: doce pulsos por vuelta, o sea, 80 Hz a 400 r/min. 0 Hz con la polea girando: el captador o su alimentación. Mire antes su soporte: si solo está doblado, se endereza.
check-pickup-supply = Prueba con tensión, solo con formación y autorización. Mida V DC de pickup.1 a pickup.2. Correcto: 5 V. Sin esa tensión el captador no da pulsos.
check-pickup-wires = Primero desenchufe la máquina y descargue el condensador. Mida Ω de pickup.1@board a pickup.1, y lo mismo con pickup.2 y pickup.3. Correcto: unos 0,2 Ω cada uno, la resistencia de las puntas.
check-pressure-hose = Primero desenchufe la máquina y vacíe la cuba. Saque la manguera y sople con suavidad. Correcto: libre, seca, firme en los dos extremos y sin grietas. Una que solo estaba obstruida se sopla y se vuelve a montar. Con agua en la cuba la salida de presión debe mantenerse estable.
check-pressure-output = Prueba con tensión, solo con formación y autorización. Mida V DC de pressure-sensor.3 a pressure-sensor.2. Correcto: 0,5 V sin agua, y 1 V más por cada kPa, que son unos 10 cm de agua.
check-pressure-supply = Prueba con tensión, solo con formación y autorización. Mida V DC de pressure-sensor.1 a pressure-sensor.2. Correcto: 5 V. Si aquí no los hay y en la placa sí: un cable.
check-pressure-wires = Primero desenchufe la máquina y descargue el condensador. Mida Ω de pressure-sensor.3@board a pressure-sensor.3, y lo mismo con 1 y 2. Correcto: unos 0,2 Ω cada uno, la resistencia de las puntas.
check-pump-amps = Prueba con tensión, solo con formación y autorización. En la prueba de la bomba ponga la pinza en drain-pump.1. Correcto, girando: unos 1,3 A con 120 V, 0,7 A con 230 V. Unos 2 A (1,1 A) y vibra: rotor bloqueado. 0 A: circuito abierto.
check-pump-coil-ohms = Primero desenchufe la máquina y descargue el condensador. Suelte el conector de la bomba y mida Ω de drain-pump.1 a drain-pump.2. Correcto: unos 14 Ω para 120 V, unos 51 Ω para 230 V. OL: bobinado cortado.
check-pump-volts = Prueba con tensión, solo con formación y autorización. En la prueba de la bomba mida V~ de drain-pump.1 a drain-pump.2. Correcto: tensión de red. Si no la hay, mida de drain-pump.1@board a cord.2: con tensión es un cable, sin tensión es la placa. Unas decenas de voltios en reposo que desaparecen en LoZ V~ son tensión parásita.
check-recalibrate-first = Recalibre antes de sospechar de una pieza: cesta vacía, tapa cerrada y de 2 a 3 minutos sin tocar nada. Primero vacía el agua; con ropa dentro aprende una inercia falsa; con la tapa abierta no empieza, y las luces muestran el código del bloqueo. Si no termina, lea los códigos. Una placa nueva o borrada no conoce esta máquina.
check-spread-laundry = Espere a que la cesta se pare, reparta bien la ropa y centrifugue otra vez. Si el código no vuelve, era la carga.
check-supply-volts = Prueba con tensión, solo con formación y autorización. Mida V~ de cord.1 a cord.2 en reposo y con el motor en marcha. Correcto: de 114 a 126 V, o de 207 a 253 V con red de 230 V. Si baja varios voltios al arrancar el motor: conexión floja en cable, clavija o toma; la toma es trabajo de un electricista.
check-taps-and-strainers = Abra del todo los dos grifos y note qué manguera está caliente. Ciérrelos, saque las mangueras y limpie los filtros. Si aún entra poca agua con los grifos abiertos y tensión en una bobina buena: la válvula.
check-thermistor-ohms = Primero desenchufe la máquina y descargue el condensador. Suelte el conector del termistor y mida Ω de thermistor.1 a thermistor.2. Correcto: 10 kΩ a 25 °C, unos 12,5 kΩ a 20 °C, 5,3 kΩ a 40 °C.
check-thermistor-rail = Prueba con tensión, solo con formación y autorización. Mida V DC de thermistor.1@board a thermistor.2@board. Correcto: 2,5 V a 25 °C, menos si está más caliente. Unos 5 V: abierto. Unos 0 V: en cortocircuito.
check-thermistor-wires = Primero desenchufe la máquina y descargue el condensador. Mida Ω de thermistor.1@board a thermistor.1, y lo mismo con thermistor.2. Correcto: unos 0,2 Ω cada uno, la resistencia de las puntas.
check-tub-leak = Desenchufe la máquina. Mire debajo de la cuba y a lo largo de las mangueras con una linterna. Correcto: seco por fuera y el nivel estable durante cinco minutos.

## choose

choose-dial = Gire el selector hasta una posición.
choose-steps = Más y Menos recorren la lista; los dígitos muestran la posición.
choose-switch = Gire el conmutador hasta una posición.

## cli

cli-check-total = Archivos comprobados: { $files }. Errores: { $errors }. Avisos: { $warnings }.
cli-class-begun = Clase «{ $title }» creada, con { $jobs } trabajos. Todo se guarda en { $folder }.
cli-class-board = Su panel, solo para usted: { $address }
cli-class-code = Código para entrar: { $code }
cli-class-continued = La clase «{ $title }» continúa, con { $jobs } trabajos. Todo se guarda en { $folder }; para otra clase, indique otra carpeta con --data.
cli-class-drills = Ejercicios además de los trabajos: { $count }
cli-class-end = Ctrl y C la terminan; lo que los alumnos hagan entretanto se guarda en su equipo y se envía cuando la clase continúe.
cli-class-error-certificate = { $file } no se puede usar: { $reason }. El certificado y la clave son archivos PEM
cli-class-error-damaged = { $file } está dañado ({ $found }): ponga en su lugar el archivo más reciente de la carpeta `copies`, que está al lado
cli-class-error-database = la clase no se puede guardar: { $reason }. Compruebe el disco y vuelva a iniciarla
cli-class-error-drill-twice = el ejercicio «{ $drill }» aparece dos veces: hay uno por habilidad
cli-class-error-foreign = { $file } no es una clase: indique otra carpeta con --data
cli-class-error-full = el disco está lleno: haga sitio y vuelva a iniciar la clase
cli-class-error-job = no hay ningún trabajo llamado «{ $job }»: `detent scenarios` los enumera
cli-class-error-listen = no se puede escuchar en { $address }: { $reason }. Puede que lo esté usando otro programa: elija otro --port
cli-class-error-name = { $file } no se puede escribir como texto: indique otra carpeta con --data
cli-class-error-newer = { $file } es de una versión más reciente de Detent: use esa
cli-class-error-page = no hay ninguna página empaquetada en { $file }: el README explica cómo se hace
cli-class-error-questions = una ronda de ejercicios no puede tener { $found } preguntas: pida de 1 a { $most }
cli-class-error-seats = una clase no puede tener { $found } puestos: indique de 1 a { $most }
cli-class-error-share = { $file } está en una unidad de red ({ $kind }), donde una base de datos puede dañarse: indique con --data una carpeta del disco de este equipo
cli-class-error-system = { $file }: { $reason }. Compruebe la carpeta y el espacio libre
cli-class-error-taken = otra clase está usando { $file }: termínela o indique otra carpeta con --data
cli-class-error-threads = el sistema no deja iniciar el servidor: { $reason }
cli-class-join = Los alumnos entran en { $address }
cli-class-names = { $count } nombres nuevos en la lista
cli-class-no-name = «{ $line }» no es un nombre: debe tener alguna letra y como mucho 60 caracteres
cli-class-no-page = Todavía no hay página para navegadores (el README explica cómo se hace); con el programa: detent window --join { $address }
cli-class-opens = Se abre por sí sola dentro de { $minutes } min; «Abrir ya», en el panel, la abre antes.
cli-class-page = En un navegador o con el programa: detent window --join { $address }
cli-class-plain = Lo que pasa por esta red puede leerlo quien esté conectado a ella: use para la clase una red propia.
cli-class-title = Clase
cli-course-heading = { $title } — versión { $version }, de { $author }, licencia { $license }
cli-course-opened = Se ha escrito la carpeta { $folder } con { $files } archivos. Para usarla: detent --library { $folder }
cli-course-packed = Se ha escrito { $file }: { $files } archivos, { $bytes } bytes. Para usarlo: detent --library { $file }
cli-entered = entró
cli-error-already-there = { $file } ya existe y no se ha escrito nada: elija otra carpeta u otra --seed
cli-error-check = la comprobación ha hallado algo: errores { $errors }, avisos { $warnings }
cli-error-count = no se pueden sacar { $found }: pida de 1 a { $most }
cli-error-expert = el experto del guion no puede hacer este trabajo.
cli-error-few-variants = solo se han podido demostrar { $found } de { $wanted } variantes: --survey dice por qué se rechazaron las demás
cli-error-folder = no se puede escribir en la carpeta { $folder }: { $reason }. Créela antes o elija otra.
cli-error-kept = Lo hecho hasta ahí está guardado en { $file }; continúe desde ahí con --resume.
cli-error-never-over = { $file } ya existe y no se sobrescribe; dé otro nombre
cli-error-no-board = no hay ninguna placa «{ $board }»; las placas son { $known }
cli-error-no-call-back = después de este intento no llama nadie: aún no tiene informe, la máquina lava o al cliente se le dijo que no está reparada
cli-error-no-data-folder = este sistema no tiene carpeta de datos: indique una con --data
cli-error-no-language = no hay ningún idioma «{ $language }»; use en o es
cli-error-no-learners = en { $folder } no hay archivos de aprendices (sus nombres acaban en .learner): dé la carpeta en la que se guardan
cli-error-no-paper = no hay ningún papel de tamaño «{ $paper }»; use a4 o letter
cli-error-no-window = este programa se compiló sin su ventana: compílelo con `cargo build --release` o use una orden (vea --help)
cli-error-not-this-supply = la placa «{ $board }» no está hecha para 230 V, 50 Hz: quite --v230
cli-error-other-seed = se empezó con la semilla { $seed }: quite --seed
cli-error-output = no se puede escribir la salida: { $reason }
cli-error-paper = no se puede hacer { $file }: { $reason }
cli-error-same-file = dos trabajos se imprimirían en { $file }: imprímalos en carpetas distintas
cli-error-write = no se puede escribir { $file }: { $reason }. Compruebe la carpeta y el espacio libre.
cli-found = hallazgos
cli-lamps = luces
cli-learners-jobs = Trabajos aprobados
cli-learners-last = Último día
cli-learners-lost = Lo que más pierde en los trabajos
cli-learners-name = Aprendiz
cli-learners-open = ({ $count } sin cerrar)
cli-learners-row = { $name }: domina: { $mastered }; en ello: { $working }
cli-learners-sittings = Exámenes
cli-learners-skills = Habilidades dominadas
cli-meter-test = multímetro comprobado en la fuente de prueba
cli-new-board = Una placa para empezar: cambie lo que hay aquí y luego ejecute detent check. Su recambio va en parts.ron.
cli-new-board-name = Una placa nueva
cli-new-written = Se ha escrito { $file }. Cámbielo y luego ejecute: detent check { $file }
cli-no-conclusion = El informe no llega a ninguna conclusión y por eso no recibe respuesta: nombre una causa o escriba verdict: NothingWrong o verdict: GivenUp.
cli-no-report = Aún no hay informe. Entréguelo para ver dónde se perdió cada punto.
cli-practice-adaptive = adaptativa: el ejercicio más cercano al objetivo
cli-practice-all = Todas las sesiones
cli-practice-beginners = Principiantes simulados, que al principio no saben nada: número medio de ejercicios hasta saberlo todo de verdad. Lo que enseña una pista es un supuesto, no una medida:
cli-practice-beginners-alone = sin ayuda
cli-practice-beginners-both = con ambos
cli-practice-beginners-coach = con el entrenador
cli-practice-beginners-hints = con pistas
cli-practice-early = Primeras { $sessions } sesiones
cli-practice-fit-bound = en su límite: las respuestas no distinguen acertar al azar o equivocarse de saber
cli-practice-fit-heading = Parámetros del seguimiento del conocimiento, ajustados a estas respuestas (Baum–Welch). Sabido al empezar, aprender, acertar al azar, equivocarse; personas, respuestas, rondas; logaritmo de la verosimilitud ajustado y de serie:
cli-practice-fit-skipped = muy pocas respuestas: { $answers } de { $learners } personas
cli-practice-fixed = orden fijo: { $block } de cada habilidad por turno, el mejor de cuatro órdenes así
cli-practice-given-up = ({ $count } aprendices abandonaron)
cli-practice-heading = { $learners } aprendices simulados, { $sessions } sesiones cada uno, { $exercises } ejercicios por sesión, una sesión al día; sus tasas difieren de las del modelo hasta en { $spread } %
cli-practice-learner = { $name }: probabilidad de que domine cada habilidad, y respuestas correctas sobre el total
cli-practice-needs = Media de ejercicios hasta que toda habilidad se da por dominada y se sabe de verdad:
cli-practice-one-by-one = una habilidad tras otra, cada una hasta que el modelo la da por dominada
cli-practice-random = al azar
cli-practice-recovery = se cree { $believed } %, se sabe de verdad { $known } %, raíz del error cuadrático medio { $rmse }; dado por dominado y sabido de verdad { $verdict } %. Creencia, parte sabida, observaciones:
cli-printed = { $file }: { $kilobytes } kB
cli-readings = lecturas
cli-replay-same = { $actions } acciones, mismo estado y misma puntuación
cli-replay-sealed = la huella coincide con las líneas
cli-replay-second-visit = segunda visita, después de una primera de { $actions } acciones
cli-replay-shown = la respuesta se mostró después del informe
cli-replay-unfinished = { $actions } acciones, sin terminar; todas se han podido repetir
cli-replay-withheld = el informe no llega a ninguna conclusión: la respuesta no se mostró
cli-replay-without-seal = un formato antiguo sin huella: no se puede detectar todo cambio
cli-score = puntuación
cli-see-faults = `detent faults` las enumera todas.
cli-see-parts = `detent parts` las enumera todas.
cli-see-sheet = `detent sheet` muestra lo que hay.
cli-seed = semilla
cli-state = estado
cli-state-hash = huella del estado
cli-state-now = placa: { $control } | agua: { $level } mm, { $water } °C
cli-table-making = aún no hay tabla de la placa { $board } a { $volts } V: se calcula ahora, lo que lleva cerca de medio minuto; queda guardada para la próxima vez
cli-try = intento a los
cli-usage = Uso: { $usage }
cli-usage-conflict = { $argument } y { $other } no se pueden dar a la vez.
cli-usage-missing = Falta: { $arguments }.
cli-usage-needs-value = { $argument } necesita un valor.
cli-usage-no-argument = Aquí no hay ninguna opción ni argumento «{ $argument }».
cli-usage-no-command = No hay ninguna orden «{ $command }».
cli-usage-no-value = «{ $value }» no es un valor para { $argument }.
cli-usage-not-text = Los argumentos no son texto UTF-8.
cli-usage-other = No se pueden usar los argumentos: { $problem }.
cli-usage-range = «{ $value }» no es un valor para { $argument }: admite { $range }.
cli-usage-takes-none = { $argument } no admite ningún valor («{ $value }»).
cli-usage-twice = { $argument } está dos veces.
cli-window-ended = la ventana terminó con el error { $code }
cli-window-no-address = --join espera la dirección del servidor de una clase, como http://192.168.1.20:8080, no «{ $address }»
cli-window-no-display = no hay pantalla: defina DISPLAY o WAYLAND_DISPLAY, o trabaje sin ventana (vea detent --help)
cli-window-no-size = no hay tamaño «{ $size }»: escríbalo como 1280x720
cli-window-no-tab = no hay ninguna pestaña «{ $tab }»: use sheet, lamps, codes, menu, pins, meter, parts, report, score, practice, progress, examination, settings, settings-display, workshop, workshop-job, workshop-proof, workshop-wash, workshop-paper, workshop-board, workshop-board-lamps, workshop-board-gesture, workshop-board-service, workshop-board-codes, workshop-board-text, join, class, class-examination, class-paused, film, film-loss, film-end, film-ways o none
cli-window-no-view = no hay ninguna vista «{ $view }»: use panel, machine o cabinet
cli-work-now = trabajo: { $minutes } min | piezas: { $parts } | mano de obra: { $labor } | material fungible: { $consumables }

## coach

coach = Lo primero que practicar
coach-again = Repetir este trabajo
coach-cost = Costó { $points } puntos en este trabajo.
coach-drill = Ejercicio: { $skill }
coach-job = Trabajo: { $title }
coach-next-job = Trabajo siguiente

## code

code-calibration-failed = La recalibración aprendió un valor fuera de sus límites.
code-calibration-missing = Se hizo un programa, pero la placa nunca se calibró, o no con este actuador del embrague.
code-cam-lost = El actuador del embrague no llegó a tiempo a su posición.
code-drain-slow = La cuba no se vació a tiempo.
code-fill-none = El nivel no se movió aunque había una válvula abierta.
code-fill-slow = No se alcanzó el nivel a tiempo.
code-level-lost = El nivel bajó aunque no se estaba desaguando.
code-lock-not-proven = Se activó el bloqueo, pero no volvió tensión de línea por su contacto.
code-lock-not-released = Se soltó el bloqueo, pero sigue volviendo tensión de línea por su contacto.
code-motor-no-current = Se activó el motor, pero no circuló corriente.
code-motor-overheated = La corriente del motor desapareció en plena marcha.
code-motor-overload = La corriente del motor siguió alta después del arranque.
code-pressure-range = La señal de presión se salió de su rango válido.
code-pulses-none = El motor consumió corriente, pero no llegaron pulsos de velocidad.
code-pulses-weak = Llegaron pulsos de velocidad, pero muy pocos.
code-spin-not-reached = No se alcanzó a tiempo la velocidad de centrifugado.
code-supply-low = La tensión de alimentación cayó con el motor activado.
code-thermistor-range = La señal del termistor se salió de su rango válido.
code-unbalance = La velocidad oscilaba en cada vuelta: la carga está a un lado.
code-water-not-warm = Se pidió agua templada y siguió fría.
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
component-clutch-actuator = Actuador del embrague
component-cord = Cable de alimentación
component-dial = Selector
component-drain-hose = Manguera de desagüe
component-drain-pump = Bomba de desagüe
component-filter = Filtro de red
component-floor = Patas y suelo
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
component-supply = Toma de corriente
component-taps = Grifos
component-thermistor = Termistor del agua
component-tub = Cuba

## condition

condition-new = nueva
condition-rebuilt = reacondicionada
condition-used = usada, tal cual

## consumable

consumable-cable-tie = brida
consumable-contact-cleaner = limpiador de contactos
consumable-cover-seal = junta de la tapa de la bomba
consumable-descaler = antical
consumable-hose-clamp = abrazadera
consumable-hose-washer = junta de manguera

## control

control-hold = parada por fallo
control-idle = en reposo
control-off = sin corriente
control-program = en un programa
control-service = modo de servicio
control-starved = con poca tensión

## course

course-doubles = Varios fallos
course-entry-drill = Entrada al modo de servicio
course-exam = Examen
course-intermittents = Fallos intermitentes
course-look-alikes = Fallos parecidos
course-nothing-found = Sin cambiar piezas
course-reading-drill = Leer códigos
course-single-fault = Un solo fallo

## customer

customer-after = { $minutes ->
    [0] enseguida
    [1] al minuto
   *[other] a los { $minutes } minutos
}
customer-age = Tiene { $years } años.
customer-buzzed-1 = Se oye un zumbido largo, como un moscardón en un tarro.
customer-buzzed-2 = Zumba y zumba; se oye desde el pasillo.
customer-buzzed-3 = Algo zumba ahí dentro un buen rato.
customer-clicked-1 = Clic, clic, clic; los conté.
customer-clicked-2 = Hace clic arriba, una y otra vez.
customer-clicked-3 = Cada poco suena un chasquido debajo del borde.
customer-dark-1 = No se enciende nada, pulse lo que pulse.
customer-dark-2 = Está muerta: ni una luz, ni un ruido.
customer-dark-3 = Ni siquiera se enciende.
customer-drains-while-filling-1 = Se vacía mientras se llena.
customer-drains-while-filling-2 = La oigo hacer gárgaras en el desagüe cuando todavía está entrando agua.
customer-drains-while-filling-3 = Desagua todo el rato, hasta cuando se llena.
customer-filled-for-long-1 = Se llena y se llena y nunca tiene bastante.
customer-filled-for-long-2 = Oigo entrar agua mucho más rato que antes.
customer-filled-for-long-3 = No deja de coger agua.
customer-hummed-1 = Hace un ruido grave y hondo, y no gira nada.
customer-hummed-2 = Ronronea como una nevera vieja, y ya está.
customer-hummed-3 = Ronronea, espera y vuelve a ronronear.
customer-lamp-blinks-1 = La única luz que tiene parpadea.
customer-lamp-blinks-2 = Y la lucecita me hace guiños.
customer-lamp-blinks-3 = Ahora la luz no deja de parpadear.
customer-lamps-blink-1 = Parpadean todas las luces a la vez.
customer-lamps-blink-2 = Parpadea con todo lo que tiene.
customer-lamps-blink-3 = Toda la fila de luces parpadea.
customer-marks-take-turns-1 = Salen dos rayas, primero una y luego la otra.
customer-marks-take-turns-2 = La pantalla hace guiños a izquierda y derecha.
customer-marks-take-turns-3 = Una raya aquí, otra allá, y así sin parar.
customer-mistrust-1 = Pero algo no va bien; échele un vistazo, por favor.
customer-mistrust-2 = Pero ya no me fío de ella.
customer-mistrust-3 = Y aun así quiero que alguien la mire.
customer-never-spun-1 = No llega nunca a dar vueltas deprisa.
customer-never-spun-2 = Chapotea, pero no escurre nada.
customer-never-spun-3 = La parte rápida del final no llega nunca.
customer-never-started-1 = Las luces están encendidas, pero pulso { button-start } y no pasa nada.
customer-never-started-2 = Está despierta y no quiere empezar.
customer-never-started-3 = Pulso { button-start } y no me hace caso.
customer-no-water-came-1 = No entró ni una gota de agua.
customer-no-water-came-2 = Mis cosas están tan secas como cuando las metí.
customer-no-water-came-3 = El agua no llegó nunca.
customer-nothing-moved-1 = Dentro no se movió nada.
customer-nothing-moved-2 = Mis cosas se quedan ahí quietas; no gira nada.
customer-nothing-moved-3 = No se menea ni una vez.
customer-other-program-1 = No hace lo que le marco.
customer-other-program-2 = Elijo una cosa y me sale otra.
customer-other-program-3 = Cuenta mal cuando giro la rueda.
customer-outlet-tripped-1 = Ha saltado el botoncito de la pared y, si lo aprieto, vuelve a saltar.
customer-outlet-tripped-2 = Algo en la pared hace clic y corta la luz.
customer-outlet-tripped-3 = Se queda sin corriente porque salta lo de la pared.
customer-padlock-blinks-1 = Parpadea el candadito.
customer-padlock-blinks-2 = Y una luz con un candado me hace guiños.
customer-padlock-blinks-3 = Ahora el dibujo del candado no deja de parpadear.
customer-ran-free-1 = Algo gira por debajo, pero no arrastra nada.
customer-ran-free-2 = Hace como un cochecito de juguete panza arriba.
customer-ran-free-3 = La oigo funcionar, pero dentro no da vueltas nada.
customer-ran-to-end-1 = Llegar al final, llega.
customer-ran-to-end-2 = La última colada la hizo entera; tardó { $minutes } minutos.
customer-ran-to-end-3 = Acabar, acabó; eso hay que reconocérselo.
customer-shows-number-1 = Sale un número que no había visto nunca.
customer-shows-number-2 = Ahora le sale un número.
customer-shows-number-3 = Ahora sale un número y nada más.
customer-since-birthday = Empezó el día de mi cumpleaños, mira por dónde.
customer-since-last-week = Está así desde la semana pasada.
customer-since-monday = La colada del lunes aún la hizo bien.
customer-since-sunday = Hasta el domingo iba bien.
customer-since-vacation = Volvimos de vacaciones y nos la encontramos así.
customer-since-yesterday = Desde ayer, y la necesito.
customer-spun-slowly-1 = Todo sale chorreando.
customer-spun-slowly-2 = Al final gira, pero con desgana, y las cosas salen empapadas.
customer-spun-slowly-3 = No coge velocidad como antes.
customer-still-going-1 = Pasada más de una hora, seguía dale que te pego.
customer-still-going-2 = No acaba nunca; me sonó el despertador y seguía en ello.
customer-still-going-3 = Es el cuento de nunca acabar.
customer-stopped-1 = Se paró { customer-after }.
customer-stopped-2 = Se rindió { customer-after }, sin haber terminado.
customer-stopped-3 = La puse y { customer-after } se acabó.
customer-theory-cat = Mi hijo le echa la culpa al gato.
customer-theory-cheap = Mi hermana dice que no debí comprar una barata.
customer-theory-detergent = Mi vecina dice que no uso el detergente que toca.
customer-theory-grandson = Yo sospecho de mi nieto, que pulsa todo lo que se puede pulsar.
customer-theory-limescale = Mi cuñado está seguro de que es la cal.
customer-theory-overfilled = Mi marido dice que la lleno demasiado.
customer-theory-power-company = El de al lado le echa la culpa a la compañía de la luz.
customer-theory-storm = Tuvimos tormenta, así que será eso.
customer-thumped-1 = Da golpes al coger velocidad.
customer-thumped-2 = Tiembla tanto que vibra la estantería.
customer-thumped-3 = Da porrazos como un caballo en la cuadra.
customer-too-much-water-1 = El agua llegaba casi al borde.
customer-too-much-water-2 = Tenía muchísima más agua de la cuenta.
customer-too-much-water-3 = Por poco se desborda.
customer-washed-cold-1 = Lava en frío; lo noté con la mano.
customer-washed-cold-2 = El agua de dentro está fría, y yo no la pedí fría.
customer-washed-cold-3 = Ahí dentro debería estar templado, y no lo está.
customer-washed-hot-1 = El agua está demasiado caliente; lo noté.
customer-washed-hot-2 = Metí un dedo: eso está caliente, y yo no lo pedí caliente.
customer-washed-hot-3 = Lava más caliente de lo que le pedí.
customer-water-on-floor-1 = Hay un charco delante.
customer-water-on-floor-2 = Tuve que pasar la fregona.
customer-water-on-floor-3 = Deja agua por el suelo.
customer-water-runs-by-itself-1 = Oigo entrar agua cuando no está haciendo nada.
customer-water-runs-by-itself-2 = Coge agua ella sola.
customer-water-runs-by-itself-3 = Se oye un chorrito, aunque no tenga nada que hacer.
customer-water-stayed-in-1 = Ahí está, llena de agua.
customer-water-stayed-in-2 = El agua se queda dentro; saqué mis cosas a mano.
customer-water-stayed-in-3 = Mis cosas están nadando ahí dentro.
customer-went-dark-1 = Estaba lavando y { customer-after } se apagó.
customer-went-dark-2 = Se apagó a medias, { customer-after }.
customer-went-dark-3 = Se me murió { customer-after }: ni luz ni nada.
customer-who-caretaker = Soy el conserje; la máquina es de los inquilinos.
customer-who-family = Somos cinco y tres juegan al fútbol.
customer-who-farm = Nos habrá encontrado por las vacas.
customer-who-hostel = Es la del albergue, y lo tenemos completo.
customer-who-salon = Tengo una peluquería y vivo de las toallas.
customer-who-shared-flat = Es de los cuatro del piso, así que nadie sabe nada.
customer-who-student = Estoy de alquiler y mañana tengo un examen.
customer-who-widower = De estas cosas se encargaba siempre mi mujer.

## deed

deed-arrived-dark = Último lavado: la consola está apagada
deed-arrived-finished = Último lavado: llegó hasta el final
deed-arrived-not-asked-for = Último lavado: no llegó a empezar, el selector gastado patinó
deed-arrived-open = Último lavado: no terminó
deed-arrived-stopped = Último lavado: se paró con el código { $code }
deed-check-for-leaks = buscar fugas
deed-fit = montar { $part }
deed-note-code = anotar el código { $code }
deed-order = pedir { $part }
deed-quote = dar presupuesto al cliente: { $parts }
deed-ran-dark = Lavado: la consola se apagó
deed-ran-finished = Lavado: llegó hasta el final
deed-ran-open = Lavado: no terminó
deed-ran-stopped = Lavado: se paró con el código { $code }
deed-read-codes = Modo de servicio: leer los códigos
deed-recalibrated-dark = Recalibración: la consola se apagó
deed-recalibrated-finished = Recalibración: superada
deed-recalibrated-open = Recalibración: no terminó
deed-recalibrated-stopped = Recalibración: se paró con el código { $code }
deed-report = entregar el informe
deed-show-customer = mostrar al cliente que funciona
deed-shut-taps = cerrar los dos grifos

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
do-bucket-cold = Cubo, fría
do-bucket-hot = Cubo, caliente
do-check-for-leaks = Buscar fugas
do-close-cabinet = Poner los paneles (C)
do-close-lid = Cerrar la tapa (L)
do-discharge = Descargar condensador (D)
do-fit = Montar
do-hold = Retener la lectura
do-inspect = Revisar
do-leads = Usar las puntas de repuesto
do-lift = Retirar las puntas
do-load-basket = Meter
do-measure = Medir y anotar
do-meter-fuse = Cambiar el fusible del multímetro
do-open-cabinet = Quitar los paneles (C)
do-open-lid = Abrir la tapa (L)
do-order = Pedir
do-plug = Enchufar (P)
do-pull = Soltar este conector
do-quote = Dar el presupuesto
do-release = Liberar la lectura
do-reset-outlet = Rearmar
do-return = Devolver pieza
do-seat = Volver a conectarlo
do-shut-taps = Cerrar
do-test-meter = Comprobar en la fuente de prueba
do-unload-basket = Sacar
do-unplug = Desenchufar (P)

## doubt

doubt = ¿Es la placa o es mi mano?
doubt-cleared = Un intento entró: la placa lee el gesto. Los fallidos se debieron a la mano o al selector.
doubt-control = la placa es sospechosa
doubt-go-on = Tras { $tries } intentos fallidos: un { $share } % de probabilidad de que falle la placa. Eso aún no demuestra nada: pruebe otra vez, a ritmo constante.
doubt-hand = es la mano
doubt-intro = Según los tiempos de cada intento y el desgaste de este selector: la probabilidad de que una placa buena lo dejara entrar. Un intento fuera de tiempo no dice nada de la placa. Rayas: límites de decisión con un riesgo del 5 % a cada lado.
doubt-needed = Quien hace el gesto por primera vez necesita unos { $newcomer } intentos fallidos para sospechar de la placa; quien entra cuatro de cada cinco veces, { $practised }.
doubt-own = En el ejercicio entró en { $entered } de sus últimos { $tries } intentos. Con esa mano, { $needed ->
        [one] un solo intento fallido basta
       *[other] bastan { $needed } intentos fallidos seguidos
    } para sospechar de la placa, y esta curva cuenta con ello. Las pistas y la nota no: son iguales para todos.
doubt-suspect = Tras { $tries } intentos fallidos: un { $share } % de probabilidad de que falle la placa. Ahora vale la pena medir en la placa.

## drill

drill-again = Otra ronda
drill-check = Comprobar (Intro)
drill-entered = Dentro del modo de servicio
drill-entry-broke = No ha entrado: { $rule }.
drill-entry-every = un paso cada { $ms } ms: el mejor ritmo para su mano en esta consola
drill-entry-left = Girar a la izquierda
drill-entry-metronome = Metrónomo
drill-entry-no-rhythm = Haga el gesto: después verá aquí su ritmo y su probabilidad de entrar.
drill-entry-plot = Probabilidad de entrar según el tiempo por paso. Línea discontinua: el mejor ritmo. Puntos: sus intentos, el último más grande.
drill-entry-rhythm = Su último ritmo: { $mean } ms por paso, dispersión { $spread } ms. Probabilidad de entrar con este ritmo: { $odds }.
drill-entry-right = Girar a la derecha
drill-entry-wear = Los pasos del selector tienen un desgaste del { $wear }.
drill-hint-code-look-up = Marque con las teclas numéricas o con un clic y compruebe.
drill-hint-entry-timing = Haga el gesto con las teclas (las flechas giran), la rueda o los botones de la pantalla.
drill-hint-lamp-reading = Escriba dos dígitos y compruebe.
drill-hint-metering = Elija fila por fila, con las teclas numéricas o con un clic.
drill-hint-next-test = Elija con una tecla numérica o con un clic y compruebe.
drill-hint-part-choice = Elija con una tecla numérica o con un clic y compruebe.
drill-hint-proof = Elija con una tecla numérica o con un clic y compruebe.
drill-hint-safe-work = Elija con las teclas numéricas o con un clic y compruebe. Para un orden, elija los pasos uno tras otro.
drill-lamps-ask = ¿Qué número muestran las luces?
drill-lamps-back = Borrar
drill-lamps-digit-right = { $place }: { $shown }, y leyó { $read }.
drill-lamps-digit-wrong = { $place }: { $shown }, pero leyó { $read }.
drill-lamps-invented = Un código inventado para esta pregunta
drill-lamps-matrix = Qué dígito se leyó como cuál
drill-lamps-matrix-how = Filas: el dígito mostrado. Columnas: el dígito leído.
drill-lamps-share = Dígitos mal leídos: { $share }
drill-leave = Volver a la práctica
drill-leave-key = Salir (Esc)
drill-look-up-all = Todos, y ninguno más.
drill-look-up-ask = El código { $code } está guardado. Marque todos los componentes que la hoja de esta placa indica para él.
drill-look-up-left-out = Faltan: { $components }.
drill-look-up-missed = este también
drill-look-up-not-listed = No figuran para este código: { $components }.
drill-look-up-page = La página de códigos de la hoja de servicio:
drill-meter-ask-bulk = ¿Tiene el condensador principal la tensión correcta? Mida { $pins }.
drill-meter-ask-capacitor = { $component }: ¿conserva su capacidad? Mida { $pins }.
drill-meter-ask-current = ¿Consume la bomba de desagüe la corriente correcta en su prueba? { $component }, cable en { $pins }.
drill-meter-ask-driven = { $component }: ¿le llega su tensión durante su prueba? Mida { $pins }.
drill-meter-ask-fuse = ¿Está bien el fusible de línea? Mida { $pins }.
drill-meter-ask-input = ¿Está bien la entrada del termistor, tal como la ve la placa? La habitación está a 20 °C. Mida { $pins }.
drill-meter-ask-level = { $component }: ¿es correcta su señal con la cuba vacía? Mida { $pins }.
drill-meter-ask-mains = ¿Es correcta la tensión de red en el extremo del cable, en reposo? Mida { $pins }.
drill-meter-ask-open = { $component }: aquí debe estar abierto. ¿Está en cortocircuito o soldado? Mida { $pins }.
drill-meter-ask-pulses = { $component }: ¿da pulsos en la prueba de centrifugado a 400 r/min? Mida { $pins }.
drill-meter-ask-rail = { $component }: ¿le llega su alimentación? Mida { $pins }.
drill-meter-ask-thermistor = { $component }: ¿está bien? La habitación está a 20 °C. Mida { $pins }.
drill-meter-ask-winding = { $component }: ¿está bien este bobinado? Mida { $pins }.
drill-meter-ask-wire = ¿Está bien este cable desde la placa hasta su extremo? Mida { $pins }.
drill-meter-first = Primero elija estado, función y rango; después se ponen las puntas.
drill-meter-mode = ¿En qué función va el multímetro?
drill-meter-open = OL: abierto
drill-meter-out = Fuera de tolerancia
drill-meter-range = ¿Qué debe dar uno bueno?
drill-meter-reading = Bien medido, el multímetro muestra:
drill-meter-sheet = La hoja de servicio dice:
drill-meter-state = ¿En qué estado debe estar la máquina?
drill-meter-state-bled = desenchufada y con el condensador descargado
drill-meter-state-live = enchufada y en marcha
drill-meter-state-pulled = desenchufada, con el condensador descargado y su conector suelto
drill-meter-state-unplugged = recién desenchufada
drill-meter-verdict = ¿Qué dice la lectura?
drill-meter-why-bled = La resistencia se mide en un circuito sin tensión: máquina desenchufada y condensador descargado. El cable se queda en sus conectores; se mide de extremo a extremo.
drill-meter-why-live = Solo hay tensión, corriente o frecuencia con la máquina enchufada y en marcha: solo con formación y autorización.
drill-meter-why-mode = Esa función mide otra cosa.
drill-meter-why-out = Está fuera de los límites: este está mal.
drill-meter-why-pulled = Una carga se mide sola, en un circuito sin tensión: máquina desenchufada, condensador descargado y su conector suelto; si no, se mide también lo que está en paralelo.
drill-meter-why-range = Uno bueno da otro valor.
drill-meter-why-within = Está dentro de los límites: este está bien.
drill-meter-within = Dentro de tolerancia
drill-next = Siguiente (Intro)
drill-next-test-ask = ¿Cuál de estas opciones deja más barata la reparación entera?
drill-next-test-belief = Causas más probables
drill-next-test-codes = Códigos guardados: { $codes }
drill-next-test-cost = cuesta { $cost } ¤ ahora
drill-next-test-no-codes = No hay códigos guardados.
drill-next-test-repair = reparación entera: se esperan { $most }
drill-next-test-repair-between = reparación entera: se esperan de { $least } a { $most }
drill-next-test-tested = Ya hecho: { $test }
drill-not-entered = No ha entrado
drill-nothing = No hay nada que preguntar: en este ordenador aún no se ha calculado lo que muestra cada fallo en una placa.
drill-part-ask = La causa está demostrada. ¿Qué número pide para esta máquina?
drill-part-right = Nueva, vigente, y acaba con este fallo en esta máquina.
drill-part-wrong-board = Es para otra máquina: no sirve en esta.
drill-part-wrong-component = Otro componente ({ $component }): dejaría el fallo donde está.
drill-part-wrong-fault = El juego arregla otra cosa de este componente.
drill-part-wrong-not-new = Su estado: { $condition }. Hay una probabilidad del { $chance } de que traiga un fallo propio.
drill-part-wrong-superseded = Un número antiguo, sustituido por { $part }.
drill-proof-ask-reading = Está guardado el código { $code }. Usted cree que es «{ $cause }». ¿Cuál de estas comprobaciones descarta a todos los rivales?
drill-proof-ask-repair = La avería era «{ $cause }». ¿Está probada la reparación?
drill-proof-did = Lo que se hizo, por orden:
drill-proof-rivals = Rivales: { $rivals }
drill-proof-with = { $cause }: { $shown }
drill-question = Pregunta { $number } de { $of }
drill-right = Correcto
drill-safe-ask-deed = ¿Qué pasa si ahora hace esto: { $step }?
drill-safe-ask-hazard = Hay una cosa que hace peligroso este trabajo. ¿Cuál?
drill-safe-ask-order = Ponga estos pasos en un orden seguro: ¿qué va primero?
drill-safe-hazard = { $object }: { $why } Prevalecen las normas locales y el trabajo de profesionales autorizados.
drill-safe-look-closer = Señale una cosa, o vaya a ella con el tabulador, para verla más de cerca.
drill-safe-order-safe = En este orden no se toca nada antes de que sea seguro.
drill-safe-order-sound = Un orden seguro: { $steps }
drill-safe-order-wrong = Paso { $number } ({ $step }): { $why }
drill-safe-sound = { $object }: como debe estar para este trabajo.
drill-safe-state = La máquina tal como está
drill-seconds = { $seconds } s
drill-summary-median = Tiempo mediano por respuesta: { $seconds } s
drill-summary-more = Cada ronda sortea otras placas y otras preguntas.
drill-summary-right = { $right } de { $of } correctas
drill-wrong = Incorrecto

## error

error-belief-bad = el número { $at } es { $found }; los pesos y las verosimilitudes son 0 o más
error-belief-empty = no hay ninguna hipótesis; dé al menos una
error-belief-impossible = ninguna hipótesis deja que esto ocurra; ponga un mínimo a las verosimilitudes
error-belief-length = { $found } verosimilitudes para { $wanted } hipótesis; dé una para cada una
error-empty-draw = el trabajo sortea un fallo, pero no nombra ninguno para el sorteo
error-path-refused = el intento no se puede repetir: { $refusal }
error-plan-bad = la reparación o prueba { $at } tiene mal el coste, lo que resuelve o lo que necesita
error-plan-chances = la prueba { $at } tiene un resultado sin una probabilidad para cada hipótesis
error-plan-incurable = nada resuelve la hipótesis { $at }; añada una reparación o un último recurso
error-plan-sum = los resultados de la prueba { $at } no suman 1 con la hipótesis { $hypothesis }
error-plan-too-many = demasiadas reparaciones o preparaciones; quite algunas
error-step-longer-than-a-job = Este paso puede durar { $hours } h y ningún trabajo tiene más de { $most } h de tiempo de máquina: escriba un tiempo más corto.
error-step-never-came = Se esperaron { $seconds } s y { $what } no llegó: suba limit_s o mire qué hizo la máquina en su lugar.
error-step-no-position = Ahora no se puede elegir la posición { $position } en esta consola.
error-step-too-long = Este paso llevaría el trabajo más allá de { $most } h, el máximo de tiempo de máquina: espere menos.
error-target = el objetivo { $found } está fuera de rango; escriba una proporción de { $least } a { $most }
error-too-few = { $skill }: muy pocas respuestas: { $answers } de { $learners } aprendices. Reúna al menos { $least-answers } respuestas de { $least-learners } aprendices.
error-variant-no-table = el programa no lleva ninguna tabla de la placa «{ $board }»: las hace `detent best --tables`
error-variant-original = el experto del guion no puede hacer este trabajo, así que no se puede juzgar su dificultad: { $reason }

## examination

examination-back = Volver al examen
examination-begin = Hacer «{ $title }»
examination-close = Cerrar el examen
examination-close-not = Seguir
examination-close-now = Cerrarlo definitivamente
examination-close-sure = { $open ->
    [0] Todos los trabajos están entregados. Al cerrarlo verá el resultado.
    [one] Queda un trabajo sin entregar, que no contará nada. ¿Cerrarlo de todos modos?
   *[other] Quedan { $open } trabajos sin entregar, que no contarán nada. ¿Cerrarlo de todos modos?
}
examination-guest = El examen de un invitado se pierde al cerrar el programa. Elija un nombre en Práctica para conservarlo.
examination-handed-in = Entregado. Verá la nota cuando se cierre el examen completo.
examination-is-open = Hay un examen abierto. Su reloj sigue corriendo; lo demás espera hasta que se cierre.
examination-job-begin = Empezar este trabajo
examination-job-begun = Empezado, sin entregar todavía.
examination-job-broken-off = { $title }: interrumpido, no puntúa
examination-job-failed = { $title }: { $kept } de { $of } puntos, no superado
examination-job-go-on = Seguir con este trabajo
examination-job-handed-in = Entregado.
examination-job-missing = { $title }: sin entregar
examination-job-on-bench = Empezado y sin guardar: si pasa a otro trabajo o cierra el programa, este intento se acaba.
examination-job-open = Sin empezar. Hay un solo intento.
examination-job-out-of-time = { $title }: { $kept } de { $of } puntos, fuera de tiempo
examination-job-passed = { $title }: { $kept } de { $of } puntos, superado
examination-job-try-over = Interrumpido. Este intento se ha acabado y no puntúa.
examination-left = Quedan { $time }
examination-no-page = Esta página de la hoja de servicio no se permite en este examen.
examination-no-score-yet = En un examen no se ven ni la nota ni el registro de los intentos hasta que se cierra el conjunto.
examination-one-job = Solo «{ $title }»
examination-one-try = Un trabajo sin terminar se puede retomar más tarde. Si lo que hizo en él no se puede guardar, el intento se acaba al pasar a otro trabajo o al cerrar el programa, y el trabajo no puntúa.
examination-one-try-not-kept = Aquí no se guardan los intentos. En cuanto haya hecho algo en un trabajo, no lo deje: si pasa a otro trabajo o cierra el programa, el intento se acaba y el trabajo no puntúa.
examination-result = { $passed } de { $jobs ->
    [one] un trabajo superado
   *[other] { $jobs } trabajos superados
}. { $pauses ->
    [0] Sin pausas.
    [one] Una pausa, { $time }.
   *[other] { $pauses } pausas, { $time } en total.
}
examination-rules = Normas
examination-rules-text = El tiempo es tiempo real: corre desde que se empieza y no se detiene. Hay un solo intento por trabajo. No hay pistas ni guía. Se puede detener el reloj de la máquina, pero cada pausa queda anotada. La nota no se ve hasta que se cierra el conjunto. Cuando se acaba el tiempo, el trabajo que esté en el banco se entrega como abandonado.
examination-terms = { $minutes } minutos de tiempo real. Trabajos: { $jobs }. Hoja de servicio: { $pages }.
examination-title = Examen

## fault

fault-kind-control = La alimentación, la memoria o el modo de servicio de la propia placa
fault-kind-crossed = Dos cosas cambiadas entre sí
fault-kind-mechanical = Algo atascado, gastado, roto, que patina o mal cargado
fault-kind-open = Un circuito abierto: un cable o un devanado cortado, un contacto que no cierra
fault-kind-short = Un cortocircuito: espiras que se tocan, un contacto pegado
fault-kind-signal = Un sensor o una entrada que indica lo que no es
fault-kind-to-ground = Una derivación a tierra
fault-kind-value = Una resistencia, una capacidad o una tensión de red fuera de su valor
fault-kind-water = Agua, espuma o aire donde no debe, o que no llega adonde debe
fault-presence-drift = Cada vez más
fault-presence-intermittent = A ratos
fault-presence-steady = Siempre

## file

file-allowed-answer-seconds = de 0 a 86400 s
file-allowed-bound = un límite mayor que 0
file-allowed-budget = un importe mayor que 0, hasta un millón
file-allowed-chance = una probabilidad de 0 a 1
file-allowed-class-minutes = de 1 a 43200 min
file-allowed-code = un código de 0 a 99
file-allowed-examination-minutes = de 1 a 480 min
file-allowed-factor = un factor de 0 o más
file-allowed-fitting-minutes = más de 0 minutos, hasta los 1440 de un día
file-allowed-job-minutes = un tiempo mayor que 0 min, hasta los 2880 min del trabajo más largo
file-allowed-lamp-number = un número de 0 a 99
file-allowed-layout = 1
file-allowed-milliseconds = 0 ms o más
file-allowed-moment = segundos desde 1970, hasta 2200
file-allowed-money = 0 o más, hasta un millón
file-allowed-opening-minutes = de 1 a 1440 min
file-allowed-points = 0 puntos o más
file-allowed-points-together = puntos que sumen 100
file-allowed-questions = de 1 a 50 preguntas
file-allowed-resistance = una resistencia mayor que 0 Ω
file-allowed-right-or-wrong = 1 o 0
file-allowed-seats = de 1 a 2000 puestos
file-allowed-seconds = segundos, 0 o más
file-allowed-share = una proporción de 0 a 1
file-allowed-skill = una habilidad, como lamp-reading
file-allowed-spell = una duración mayor que 0 s, hasta los 3e7 s de un año
file-allowed-target = una proporción de 0.5 a 0.95
file-allowed-wait-hours = 0 o más, hasta las 8760 horas de un año
file-allowed-wear = un desgaste de 0 (nuevo) a 1 (gastado del todo)
file-allowed-weight = un peso mayor que 0, hasta un millón
file-allowed-weight-bound = un peso de 0 a un millón
file-allowed-written-moment = un momento, como 2026-11-27T12:30:00Z
file-answers-field = es «{ $found }»; escriba { $allowed }
file-answers-no-column = falta la columna «{ $name }»; vuelva a guardar las respuestas
file-answers-no-table = no se puede leer como valores separados por comas («{ $said }»); vuelva a guardar las respuestas
file-board-bounds = { $value } se sale de los límites: tiene que ser mayor que { $above } y menor que { $below }
file-board-bounds-below = { $value } se sale de los límites: tiene que ser mayor que { $above }
file-board-code-range = { $code } no se puede mostrar; un código va de 1 a 99
file-board-dark-digit = la cifra { $digit } quedaría apagada; dele una luz encendida o que parpadee
file-board-digit-count = { $digits } signos para las cifras de 0 a 9; escriba diez, primero el del 0
file-board-empty = no pide nada
file-board-flashing = { $hz } Hz queda fuera de 1.4 a 2.8 Hz (IEC 60073); ninguna luz puede parpadear más de tres veces por segundo (WCAG 2.2, 2.3.1)
file-board-gesture-too-short = no se puede cumplir: lleva al menos { $least } ms y el plazo es de { $window } ms; amplíe el plazo o pida menos
file-board-hold-impossible = no se puede cumplir: al menos { $least } ms y como mucho { $most } ms
file-board-label-twice = «{ $name }» está dos veces
file-board-lamp-count = { $lamps } luces son demasiadas o ninguna; use de 1 a 16
file-board-lamp-twice = las luces { $name } están encendidas y parpadean a la vez, o no existen
file-board-letters-are-number = '{ $name }' se tomaría por un número; ponga una letra o un guion
file-board-letters-without-segments = los signos del tipo { $name } no muestran letras; use una imagen de sus luces: `Still`
file-board-monitor-twice = la vigilancia { $name } está dos veces
file-board-no-button = esta placa no tiene el botón { $name }
file-board-no-code = la vigilancia { $name } no tiene código
file-board-no-digit = con estos pesos no se puede mostrar la cifra { $digit }; elija pesos con los que salgan todas las sumas de 0 a 9
file-board-no-knob = este panel no tiene ningún mando que girar; póngale un Dial o un Switch, o use botones
file-board-no-letter = con siete segmentos no se puede mostrar '{ $character }', o parecería una cifra; escriba '{ $nearest }'
file-board-no-picture = el número { $number } no tiene imagen propia
file-board-no-position = la posición { $position } no se puede elegir; este panel tiene de 0 a { $last }
file-board-no-routine = el menú no tiene { $name }; dele una posición, hace falta en todos los trabajos
file-board-no-rule = la vigilancia { $name } no tiene regla
file-board-no-sheet = la vigilancia { $name } no figura en la hoja de servicio
file-board-no-way-out = guarda una parada por fallo que nada termina; dele un botón que mantener pulsado o una tapa que mover
file-board-not-free = { $name } no está suelto en este paso
file-board-not-pushed = { $name } no está pulsado en este paso
file-board-number-takes-time = estos signos se leen con el tiempo; muestre solo el número: `Number`
file-board-one-button = { $name } figura dos veces; se pulsan dos botones a la vez
file-board-other-steps = tiene otros pasos que `steps`, o el mismo orden; escriba los mismos pasos en otro orden
file-board-pause-alone = una pausa va entre otros dos pasos
file-board-place-count = { $places } sitios para { $lamps } luces; dé a cada luz el suyo
file-board-placed-by-kind = los signos del tipo { $name } tienen su propio sitio; omita `placement` o use Pictures o InTurn
file-board-places-near = esta luz tapa a la de places[{ $first }]; sepárelas 15, o 25 si están una sobre otra
file-board-power-later = conectar la corriente solo puede ser el primer paso
file-board-same-code = el código { $code } ya está en codes[{ $first }]; dé a cada vigilancia un código propio
file-board-same-digit = la cifra { $digit } se ve igual que { $first }; haga que cambie alguna luz
file-board-same-position = la posición { $position } ya la ocupa la entrada { $first }
file-board-stage-count = la fase { $name } tiene que estar una sola vez
file-board-standing-unseen = solo un Switch muestra dónde está cuando llega la corriente; dele uno a este panel u omita `standing`
file-board-supply-unmatched = { $name } tiene que estar en `mains` y en `supply`, o en ninguno de los dos
file-board-terminal-twice = { $terminal } ya está conectado a { $first }
file-board-terminal-unwired = { $name } no está conectado a ningún pin
file-board-text-key = «{ $name }» no es una clave de texto; use palabras en minúsculas unidas por guiones
file-board-turns-join = gira en el mismo sentido que el paso anterior; una los dos
file-edit-already-there = «{ $name }» ya está; cámbielo en su sitio
file-edit-no-index = hay { $count } elementos; no se puede poner ninguno en el lugar { $index }
file-edit-no-list = lo que hay en «{ $name }» no es una lista
file-edit-no-map = lo que hay en «{ $name }» no es una tabla de claves
file-edit-no-name = «{ $name }» no vale como nombre de campo; use letras, cifras y _
file-edit-no-path = en «{ $name }» no hay nada
file-edit-no-struct = lo que hay en «{ $name }» no tiene campos
file-edit-no-value = esto no es un valor: { $problem }
file-edit-unreadable = el archivo ya no se podría leer: { $problem }
file-edit-whole = no se puede quitar el archivo entero
file-kind-board = placa
file-kind-course = curso
file-kind-examination = examen
file-kind-guide = guía
file-kind-parts = lista de recambios
file-kind-plan = plan de clase
file-kind-scenario = trabajo
file-nearest = { $names } (los más parecidos de { $of })
file-not-sayable-letters = los códigos y los números solo llevan cifras; las letras pueden indicar un modo en dos dígitos de siete segmentos: `hold: Letters('E', '-')`
file-not-sayable-turn-to = un giro cuenta pasos desde una posición conocida; escriba `from` (un Switch sin corriente: `standing`) y después `Turn`
file-not-sayable-two-colors = cada luz tiene un solo color, para que nada dependa de distinguir colores; hágala parpadear para el segundo significado: `blinks`
file-not-written = { $reason }; compruebe la carpeta, el espacio libre y que tiene permiso para escribir en ella
file-packed-added = { $path } no está entre los archivos que se empaquetaron; pida de nuevo el zip a su autor
file-packed-changed = { $path } no está como se empaquetó; pida de nuevo el zip a su autor
file-packed-gone = { $path } se empaquetó y ahora falta; pida de nuevo el zip a su autor
file-problem-beyond-handbook = esto no cabe en un manual; admite títulos de dos niveles, párrafos, listas sencillas, código, rótulos en negrita y bloques cercados de los tipos console, ron NOMBRE y diff NOMBRE
file-problem-board-name = la placa se llama «{ $found }», pero su archivo dice «{ $wanted }»; dé a los dos el mismo nombre
file-problem-course-number = el trabajo { $found } de la parte { $part } del curso está donde va el { $expected }; numérelos desde 1 sin huecos
file-problem-empty = el archivo está vacío; copie uno de la misma clase y cámbielo
file-problem-foreign-param = { $param } es de { $owner }, pero el componente que falla es { $component }; cambie un parámetro suyo
file-problem-integer-range = { $found } está fuera de rango; escriba un número entero de { $least } a { $most }
file-problem-io = no se puede leer: { $reason }; compruebe el nombre y que tiene permiso de lectura
file-problem-leads-out = es un enlace que lleva fuera de la carpeta de la biblioteca; ponga allí una copia del archivo
file-problem-misplaced = nada lee un archivo en este sitio; las placas van en `boards`, los trabajos, guías y exámenes en `scenarios`, los recambios en `parts.ron`, la ficha de un curso en `course.ron`
file-problem-missing-field = falta el campo «{ $name }»; añádalo
file-problem-missing-param = { $name } no tiene valor; póngalo aquí o en `common`
file-problem-name-taken = «{ $name }» ya es el nombre de algo de la biblioteca o incorporado; elija otro
file-problem-newer-course = este curso tiene el formato { $format } y este Detent lee hasta el { $most }; use un Detent más nuevo
file-problem-newer-course-packed-with = este curso tiene el formato { $format } y este Detent lee hasta el { $most }; use Detent { $version } o uno más nuevo
file-problem-newer-layout = el formato { $layout } es de un Detent más nuevo; use ese programa o elija otro archivo
file-problem-newer-program = este curso se empaquetó con Detent { $version } y este es Detent { $own }: lo que sigue puede no ser un error, sino solo más nuevo; use Detent { $version } o uno más nuevo
file-problem-no-end = la pieza «{ $name }» se sustituye en círculo; la más nueva no puede tener sustituta
file-problem-no-file = es una carpeta o un dispositivo, no un archivo; dé el nombre de un archivo
file-problem-no-folder = no existe esa carpeta ni un zip de ese nombre; dé el nombre de una carpeta que contenga `boards`, `scenarios` o `parts.ron`, o el de un curso en un solo zip
file-problem-no-job = no hay ningún trabajo «{ $name }»; escriba el nombre del archivo de un trabajo sin carpeta ni extensión
file-problem-no-name = no es un nombre; escriba como mucho { $most } caracteres, y al menos una letra o una cifra
file-problem-no-scenario = no hay tal archivo ni ningún trabajo incorporado con ese nombre: `detent scenarios` los enumera
file-problem-no-sum = esto no es un SHA-256; quite `files`, que lo escribe `detent course pack`
file-problem-no-version = «{ $found }» no es una versión; escriba de uno a cuatro números separados por puntos, como 1.2
file-problem-not-built-in = no viene incorporado en este programa; dé la ruta de un archivo, o uno de estos: { $known }
file-problem-not-finite = { $found } no es un número finito; escriba un número corriente
file-problem-not-own-board = un recambio añadido solo puede ser para placas de esta biblioteca, y «{ $name }» no lo es; nombre una de ellas
file-problem-not-text = estos bytes no son texto UTF-8; elija otro archivo o guarde este como UTF-8
file-problem-nothing = aquí no hay nada; { $wanted }
file-problem-nothing-to-draw = en esta placa ningún modo de fallo cumple todo esto; pida menos: `detent names faults`, `kinds` y `codes` enumeran lo que hay
file-problem-out-of-range = { $found } está fuera de rango; escriba { $allowed }
file-problem-repeated = «{ $name }» ya está en la línea { $line }; póngale otro nombre
file-problem-repeated-field = el campo «{ $name }» está dos veces; quite uno
file-problem-step = { $problem }; escriba un paso (Turn, Point, Tap, Hold, PowerDown, Look, Watch, Wait, Rest, Until) o una acción (Plug, Unplug, Probe…): README tiene ejemplos
file-problem-syntax = { $problem }; corrija aquí el valor o la puntuación
file-problem-too-deep = hay demasiados paréntesis unos dentro de otros; ningún archivo de este programa los necesita, quite algunos
file-problem-too-little-money = nadie puede hacer este trabajo por { $found }: las piezas y el trabajo mínimo cuestan { $least }; dé más
file-problem-too-little-time = nadie puede hacer este trabajo en { $found } min: solo el informe y la reparación llevan { $least } min; dé más
file-problem-too-long = el archivo pasa de los { $most } bytes que puede tener uno así; elija otro
file-problem-too-much = la biblioteca pasa de { $files } archivos o { $bytes } bytes; divídala en varias
file-problem-unfit-part = la pieza «{ $name }» es de otro componente; nombre una de este
file-problem-unknown-board = ninguna placa se llama «{ $found }»; las placas son: { $known }
file-problem-unknown-code = la placa «{ $board }» no tiene el código { $code }; mire su lista de códigos
file-problem-unknown-field = aquí no hay ningún campo «{ $found }»; use uno de estos: { $expected }
file-problem-unknown-mode = ningún fallo se llama «{ $name }»; `detent faults` los enumera todos
file-problem-unknown-name = aquí no hay ningún «{ $found }»; use uno de estos: { $expected }
file-problem-unknown-name-alone = aquí no hay ningún «{ $name }»; corrija el nombre
file-problem-unknown-part = ninguna pieza tiene la referencia «{ $name }»; mire assets/parts.ron
file-problem-wrong-mains = la placa «{ $name }» no está hecha para esta red; mire `mains` en su archivo
file-profile-changed = ha cambiado o se ha borrado desde que se leyó, y se ha dejado como está; vuelva a elegir al aprendiz
file-profile-no-name = el nombre de un aprendiz necesita una letra o una cifra; escríbala
file-profile-taken = ya hay un aprendiz que se llama «{ $name }»; elija otro nombre
file-ron-attribute = un atributo se escribe #![enable(…)], #![type = "…"] o #![schema = "…"]
file-ron-boolean = aquí va true o false
file-ron-bracket = aquí falta un «(» de apertura
file-ron-bracket-end = aquí falta un «)» de cierre
file-ron-bracket-mismatch = «{ $open }» se cierra con «{ $close }»
file-ron-bracket-open = «{ $open }» no se cierra
file-ron-character = aquí va un solo carácter entre comillas simples
file-ron-colon = aquí faltan los dos puntos
file-ron-comma = aquí falta una coma
file-ron-comment-end = un comentario que empieza con «/*» no se cierra
file-ron-decimal-point = aquí va un nombre; los decimales se escriben con punto
file-ron-end = el texto se acaba antes de tiempo
file-ron-escape = ningún carácter se escribe así; tras la barra invertida va n, r, t, u, x, otra barra invertida o unas comillas
file-ron-integer-bounds = este número entero está fuera de rango
file-ron-length = aquí va otro número de valores, no { $found }
file-ron-list = aquí falta un «[» de apertura
file-ron-list-end = aquí falta un «]» de cierre
file-ron-map = aquí falta una llave de apertura
file-ron-map-end = aquí falta una llave de cierre
file-ron-missing-field = falta el campo «{ $name }»
file-ron-mixed = no se pueden mezclar campos con nombre y sin él
file-ron-more = después del final hay más texto
file-ron-name = aquí va un nombre
file-ron-number = aquí va un número
file-ron-number-form = ningún número se escribe así
file-ron-option = aquí va Some o None
file-ron-other = el lector de RON dice «{ $said }»
file-ron-other-name = aquí va { $expected } y no { $found }
file-ron-repeated-field = el campo «{ $name }» está dos veces
file-ron-text = aquí va un texto entre comillas dobles
file-ron-text-end = un texto no se cierra con comillas dobles
file-ron-unexpected = el carácter «{ $found }» no va aquí
file-ron-unit = aquí va «()»
file-ron-value = aquí falta un valor
file-ron-whole-number = aquí va un número entero
file-system-already-there = ya existe
file-system-denied = permiso denegado
file-system-folder = es una carpeta
file-system-full = no queda espacio
file-system-no-folder = una parte de la ruta no es una carpeta
file-system-nobody-reads = ya no hay quien lo lea
file-system-not-found = no existe
file-system-other = el sistema dice «{ $said }»
file-system-read-only = solo se puede leer
file-wanted-both-languages = escríbalo en los dos idiomas
file-wanted-catalogue = dé a la máquina al menos un fallo
file-wanted-change = nombre al menos un parámetro que cambie con el fallo
file-wanted-cure = nombre la pieza que lo elimina o ponga by_hand: true
file-wanted-failure-mode = nombre al menos un fallo
file-wanted-job = nombre al menos un trabajo
file-wanted-job-or-drill = nombre al menos un trabajo o un ejercicio
file-wanted-mode-name = póngale nombre al fallo
file-wanted-no-hands = quítelo: este componente no se arregla con las manos
file-wanted-own-board = nombre al menos una placa de esta biblioteca
file-wanted-part = ponga al menos una pieza
file-wanted-step = escriba al menos un paso
file-wanted-text = escríbalo
file-zip-absolute = esta ruta empieza en la raíz de un disco y no dentro del curso; pida un zip hecho con `detent course pack`
file-zip-backslash = en esta ruta hay una barra invertida, que en algunos sistemas lleva a otro sitio; pida un zip hecho con `detent course pack`
file-zip-drive = en esta ruta hay dos puntos, que en algunos sistemas indican una unidad; pida un zip hecho con `detent course pack`
file-zip-encrypted = este archivo está cifrado; pida un zip sin contraseña
file-zip-link = esto es un enlace o un dispositivo, no un archivo; pida un zip con el archivo mismo
file-zip-long-name = este nombre es más largo de lo que admiten algunos sistemas; dé al archivo uno más corto y vuelva a empaquetar el curso
file-zip-method = este archivo está comprimido de un modo que Detent no lee; pida un zip hecho con `detent course pack`
file-zip-name-characters = algunos sistemas no admiten este nombre; use letras, cifras, espacios, `-`, `_` y `.`, sin espacio ni punto al final, y vuelva a empaquetar el curso
file-zip-no-manifest = arriba del todo no hay ningún `course.ron`, así que no es un curso; `detent new course` lo escribe
file-zip-no-zip = esto no es un zip; dé el nombre de una carpeta o de un zip hecho con `detent course pack`
file-zip-ratio = al descomprimirlo, este archivo ocuparía más de cien veces lo que ocupa, como no le pasa a ningún texto; no use este zip
file-zip-reserved = en algunos sistemas este nombre es el de un dispositivo; dé otro al archivo y vuelva a empaquetar el curso
file-zip-same-name = en algunos sistemas dos archivos de este zip serían uno solo; cambie el nombre de uno y vuelva a empaquetar el curso
file-zip-several-parts = esto es una parte de un zip dividido en varias; pídalo de una pieza
file-zip-size = este archivo no tiene la longitud que dice el zip; no use este zip
file-zip-strange = ningún curso lleva un archivo así: contiene `course.ron`, `parts.ron` y archivos acabados en `.ron` en `boards` y `scenarios`; empaquételo con `detent course pack`
file-zip-torn = este zip está dañado o se contradice; pídalo de nuevo
file-zip-unpackable = esto no se puede empaquetar; quite lo que sobre en `course.ron` y en la carpeta
file-zip-upward = esta ruta sale del curso; no use este zip
file-zip-zip64 = esta es la forma de zip para más de 4 GiB, y ningún curso es tan grande; pida un zip hecho con `detent course pack`

## film

film-again = Volver a verlo
film-as-recorded = Fin de la repetición: acaba como se grabó.
film-at = { $minutes }:{ $seconds }
film-before-first = El técnico ha llegado. Aún no se ha hecho nada.
film-did-ask = Preguntar al cliente: { $question }
film-did-bail-out = Achicar la cuba
film-did-bucket-cold = Prueba del cubo en el grifo del agua fría
film-did-bucket-hot = Prueba del cubo en el grifo del agua caliente
film-did-button-down = Pulsar { $button } sin soltarlo
film-did-button-up = Soltar { $button }
film-did-check-for-leaks = Buscar fugas
film-did-clamp = Pinza { $mode } en el cable de { $red }
film-did-close-cabinet = Poner los paneles
film-did-close-lid = Cerrar la tapa
film-did-discharge = Descargar el condensador
film-did-fit = Montar { $part }
film-did-hold-display = Retener la lectura
film-did-inspect = Revisar: { $component }
film-did-lift-probes = Retirar las puntas
film-did-load-basket = Volver a meter la ropa
film-did-note-code = Anotar el código { $code }
film-did-open-cabinet = Quitar los paneles
film-did-open-lid = Abrir la tapa
film-did-order = Pedir { $part }
film-did-plug = Enchufar la máquina
film-did-press = Pulsar { $button } durante { $seconds } s
film-did-probe = Medir { $mode }: de { $red } a { $black }
film-did-probe-fingers = Medir { $mode } con los dedos en las puntas: de { $red } a { $black }
film-did-pull = Soltar el conector { $connector }
film-did-put-right = { $component }: { $work }
film-did-quote = Dar el presupuesto al cliente
film-did-release-display = Liberar la lectura
film-did-replace-leads = Usar las puntas de repuesto
film-did-replace-meter-fuse = Cambiar el fusible del multímetro
film-did-report = Entregar el informe: { $causes }
film-did-report-given-up = Dejar el trabajo por imposible
film-did-report-nothing-wrong = Entregar el informe: no hay ninguna avería
film-did-reset-outlet = Rearmar la toma de corriente
film-did-return = Devolver { $part }
film-did-seat = Volver a conectar { $connector }
film-did-shut-taps = Cerrar los dos grifos
film-did-strike-code = Tachar el código { $code }
film-did-take-hint = Pedir una pista: { $rung }
film-did-test-meter = Comprobar el multímetro en la fuente de prueba
film-did-turn-left = Girar a la izquierda: { $detents } { $detents ->
    [one] paso
   *[other] pasos
}
film-did-turn-right = Girar a la derecha: { $detents } { $detents ->
    [one] paso
   *[other] pasos
}
film-did-unload-basket = Sacar la ropa
film-did-unplug = Desenchufar la máquina
film-differs = La repetición no acaba como se grabó: { $why }.
film-here = { $number } de { $count }: { $deed }
film-keys = Barra espaciadora: reproducir o pausar. Flechas: una acción atrás o adelante.
film-leave = Cerrar la repetición
film-live = Aún sin terminar: lo que venga después aparecerá solo.
film-losses-later = Los puntos perdidos se ven cuando se ha entregado el informe.
film-losses-sealed = Los puntos perdidos no se ven hasta que se cierre la clase.
film-machine = Lo que pasó en la máquina
film-milestone-calibration-failed = La recalibración se interrumpió
film-milestone-calibration-passed = Recalibración superada
film-milestone-calibration-started = Empezó la recalibración
film-milestone-code-shown = Las luces mostraron el código { $code }
film-milestone-codes-cleared = Se borró la lista de códigos
film-milestone-held = El control se paró con una avería
film-milestone-power-reset = El control se quedó sin tensión y lo olvidó todo
film-milestone-program-canceled = Se canceló un programa
film-milestone-program-finished = Un programa llegó al final
film-milestone-program-started = Empezó un programa
film-milestone-service-entered = Entrada en el modo de servicio
film-milestone-some-code-shown = Las luces mostraron un código
film-newest = Lo último
film-next = Acción siguiente
film-no-hands = Esto es una repetición: no se puede hacer nada en el banco. Ciérrela antes.
film-none-yet = Aún nada.
film-pause = Pausar
film-play = Reproducir
film-previous = Acción anterior
film-shortened = Espera abreviada: { $minutes } min
film-timeline = Línea de tiempo de las acciones
film-timeline-how = Rayas: acciones. Rombos: lo que pasó en la máquina. Triángulos: puntos perdidos. Las esperas largas se dibujan cortas. Lo que tardaría más de { $seconds } s en verse se abrevia.
film-waits-for-more = Esperando la acción siguiente…
film-ways = Comparar con el mejor camino

## finding

finding-air-hose-blocked = No pasa aire al soplar por la manguera de presión.
finding-air-hose-cracked = La manguera de presión tiene una grieta cerca del extremo.
finding-basket-stiff = La cesta va dura al girarla y retumba.
finding-belt-off = La correa está rota y ha quedado bajo las poleas.
finding-belt-slack = La correa está floja y brillante, y huele a goma recalentada.
finding-bolt-stiff = El pestillo del bloqueo está duro y apenas se mueve.
finding-cold-tap-shut = El grifo de agua fría está cerrado.
finding-cold-tap-throttled = El grifo de agua fría está casi cerrado: sale poca agua.
finding-cord-browned = La clavija está tostada por un lado y el cable está rígido donde entra en ella.
finding-dial-cable-broken = El cable plano del selector a la placa está roto.
finding-dial-soft = Los pasos del selector se notan blandos; se salta algunos.
finding-extension-cord = La máquina está enchufada a un alargador largo y fino, tibio al tacto.
finding-fuse-wire-gone = El hilo del fusible está fundido.
finding-gap-wide = El captador está doblado, lejos de sus imanes.
finding-gear-stripped = La leva del actuador del embrague gira suelta con la mano: no la sujeta ningún engranaje.
finding-hose-clogged = La manguera de desagüe está llena de pelusa por dentro.
finding-hose-end-high = El tubo de desagüe está demasiado alto para la bomba.
finding-hose-end-low = El extremo de la manguera de desagüe está demasiado bajo.
finding-hose-kinked = La manguera de desagüe está doblada detrás de la máquina.
finding-hose-too-deep = La manguera de desagüe está metida demasiado dentro del tubo.
finding-hoses-crossed = La manguera de agua caliente está en la válvula de fría, y la de fría en la de caliente.
finding-hot-tap-shut = El grifo de agua caliente está cerrado.
finding-hot-tap-throttled = El grifo de agua caliente está casi cerrado: sale poca agua.
finding-impeller-fouled = Hay pelo e hilos enrollados en el rotor de la bomba.
finding-impeller-stuck = El rotor de la bomba no gira a mano.
finding-laundry-one-sided = La ropa está apelotonada a un lado.
finding-machine-rocks = La máquina cojea: una pata no toca el suelo.
finding-motor-hot = El motor está demasiado caliente para dejar la mano encima.
finding-nothing = Sin defectos visibles.
finding-outlet-browned = La toma está tostada alrededor de un contacto y la clavija queda floja.
finding-outlet-no-ground = El comprobador de enchufes indica que falta la toma de tierra.
finding-outlet-reversed = El comprobador de enchufes indica fase y neutro invertidos.
finding-outlet-tripped = Ha saltado el diferencial de la toma: el botón de rearme está fuera.
finding-pin-burnt = Un pin de un conector está descolorido y huele a quemado.
finding-relay-scorched = Un relé de la placa está tostado y huele a quemado.
finding-screen-clogged = El filtro de la válvula está atascado de arenilla.
finding-shaft-stiff = El eje del motor va duro al girarlo a mano.
finding-stop-switch-cracked = El interruptor del botón de parada está partido y no hace clic.
finding-suds = Hay espuma espesa en la cesta.
finding-too-much-laundry = La cesta está abarrotada.
finding-tub-drips = Hay marcas de goteo recientes debajo de la cuba.
finding-valve-trickles = Pasa un hilo de agua por la válvula cerrada.
finding-winding-smells = El motor huele a barniz quemado.

## found

found-empty = Aún no ha revisado nada.

## guide

guide-again-alone = Repetirlo, sin ayuda
guide-again-half = Repetirlo, con la mitad de los pasos por su cuenta
guide-done = Ese era el trabajo entero
guide-hide = Ocultar la guía
guide-open = Abrir la guía
guide-show = Muéstremelo
guide-step = Guía: paso { $step } de { $steps }
guide-tell = Dígamelo
guide-your-turn = Le toca: este paso ya lo ha hecho.

## hand

hand-work-drain-hose = Limpiar y recolocar
hand-work-drain-pump = Limpiar rotor
hand-work-floor = Nivelar
hand-work-harness = Reajustar conectores
hand-work-inlet-cold = Limpiar filtro
hand-work-inlet-hoses = Reconectar
hand-work-inlet-hot = Limpiar filtro
hand-work-laundry = Repartir
hand-work-minutes = { $minutes } min
hand-work-pickup = Enderezar
hand-work-pressure-hose = Soplar
hand-work-supply = Quitar alargador
hand-work-taps = Abrir del todo

## help

help-about = Un banco de prácticas para quien repara lavadoras.
help-about-more = Todas las máquinas, placas, códigos, piezas y clientes son inventados. No sustituye a la normativa local, a las reglas de consignación ni al trabajo de un electricista autorizado.
help-best-cache = Carpeta donde se guardan los resultados de las simulaciones [por defecto: la carpeta de caché del usuario; entorno: DETENT_CACHE]
help-best-course = Mostrar en su lugar una tabla de todos los trabajos incorporados
help-best-tables = Escribir en esta carpeta las tablas que acompañan al programa (lo que muestra cada fallo en cada placa incorporada); `assets/tables` en el código fuente
help-check-files = Archivos, carpetas o nombres de trabajos incorporados; sin ninguno, toda la biblioteca
help-check-quiet = Muestra solo lo hallado
help-check-strict = Cuenta los avisos como errores
help-class-address = Dirección que se da a los alumnos en lugar de la de este equipo, como http://banco.example.org/
help-class-as-written = En un examen: todos reciben el trabajo tal como está escrito, y no una máquina propia con otra avería
help-class-bind = Dirección de este equipo en la que escuchar [por defecto: todas]
help-class-cert = Certificado (PEM) para un nombre propio del centro: la clase se sirve por https; requiere --key
help-class-data = Carpeta en la que se guarda la clase; si ya existe, continúa [por defecto: `class` en su carpeta de datos]
help-class-drill = Un ejercicio que hacer además; se puede repetir, uno de cada habilidad: entry-timing, lamp-reading, metering, code-look-up, next-test, part-choice, safe-work o proof
help-class-examination = Un examen: ni mejor camino, ni avería oculta, ni puntuación antes de cerrar la clase
help-class-job = Un trabajo que hay que hacer; se puede repetir, en su orden [por defecto: todo el curso, o ninguno si hay ejercicios]
help-class-key = Clave (PEM) del certificado
help-class-minutes = Cerrar la clase por sí sola cuando pasen estos minutos desde la apertura prevista
help-class-names = Nombres de la lista: un texto con uno por línea o el users.csv de un centro (OneRoster)
help-class-no-open = No abrir el panel en el navegador
help-class-only-listed = No dejar entrar a quien no esté en la lista
help-class-opens-in = Abrir la clase por sí sola al cabo de estos minutos [por defecto: al momento]
help-class-page = Carpeta de la página empaquetada para navegadores [por defecto: donde la deja el empaquetador]
help-class-plan = Un plan: un archivo con título, trabajos, ejercicios y tiempos (detent new plan), en lugar de las opciones correspondientes
help-class-port = Puerto en el que escuchar [por defecto: 8720]
help-class-questions = Preguntas de cada ronda de ejercicios, 50 como mucho [por defecto: 10]
help-class-seats = Número máximo de alumnos [por defecto: 60]
help-class-title = Nombre de la clase
help-command-best = Mostrar las causas probables en la máquina de un trabajo, los mejores pasos siguientes y el coste esperado de la reparación; o una tabla de costes de todos los trabajos
help-command-check = Comprueba trabajos, placas, guías, exámenes y cursos: la estructura y, simulando, que cada trabajo se pueda hacer
help-command-class = Dar una clase desde este equipo: los alumnos entran con un navegador o con el programa y usted ve por dónde va cada uno
help-command-course = Empaqueta un curso propio en un solo zip, comprueba un curso o lo abre como carpeta
help-command-course-check = Comprueba un curso, carpeta o zip: la ficha, que los archivos estén como se empaquetaron, y cada archivo con su lector
help-command-course-open = Descomprime el zip de un curso en una carpeta nueva, si todo es seguro y se puede leer
help-command-course-pack = Comprueba la carpeta de un curso como `check` y, si no hay errores, la empaqueta en un solo zip. Los mismos archivos dan el mismo zip
help-command-faults = Mostrar cada fallo con los códigos que da y las lecturas que lo distinguen
help-command-help = Mostrar esta ayuda o la de una orden
help-command-jobs = Sortear variantes de un trabajo, cada una comprobada antes de ofrecerse; mostrarlas o escribirlas en archivos
help-command-names = Enumera los nombres que pueden usar los archivos; sin TIPO, los tipos
help-command-new = Escribe un archivo comentado para empezar: scenario (trabajo), board (placa), guide (guía), examination (examen) o course (curso)
help-command-parts = Mostrar la lista de precios del mostrador de piezas
help-command-play = Ejecutar un guion sobre un trabajo sin ventana; mostrar el estado de la máquina, las lecturas y la puntuación
help-command-practice = Mostrar cómo va un alumno en cada habilidad, o cómo funciona la práctica adaptativa con alumnos simulados
help-command-print = Imprimir hojas de prácticas y sus soluciones en archivos PDF
help-command-reference = Muestra lo que puede decir un tipo de archivo: cada campo con unidad, límites, valor por defecto y ejemplos (en inglés); sin TIPO, los tipos
help-command-replay = Repetir un intento grabado y comprobar que el estado de la máquina y la puntuación son los mismos
help-command-scenarios = Enumera los trabajos
help-command-sheet = Mostrar la hoja de servicio de una placa: gesto de entrada, códigos, comprobaciones, menú, pines
help-command-simulate = Hacer el lavado del cliente con la máquina de un trabajo y mostrar sus señales
help-command-tutorial = Lee el tutorial para instructores: tres ejercicios, de un trabajo copiado a una placa propia
help-command-wash = Mostrar el lavado del cliente con la máquina de un trabajo como cronología, con los códigos que guarda y cómo termina
help-command-window = Abrir el banco en una ventana (igual que sin orden)
help-course-check-course = Carpeta o zip del curso
help-course-check-prove = Prueba además, simulando, que cada trabajo se pueda hacer
help-course-check-quiet = Muestra solo lo hallado
help-course-check-strict = Cuenta los avisos como errores
help-course-open-to = Carpeta que se escribe; no debe existir todavía
help-course-open-zip = Zip del curso
help-course-pack-folder = Carpeta del curso, con `course.ron` dentro
help-course-pack-to = Zip que se escribe; no debe existir todavía
help-default = { $help } [por defecto: { $value }]
help-exit-status = Estado de salida: 0 correcto; 1 falló el guion, la repetición o la comprobación; 2 uso incorrecto o un archivo que no se puede usar.
help-faults-of = Una placa o un trabajo, por su nombre o por su archivo
help-faults-v230 = Usar la máquina de 230 V, 50 Hz
help-heading-arguments = Argumentos
help-heading-commands = Órdenes
help-heading-options = Opciones
help-heading-usage = Uso
help-help-of = Orden que se quiere explicar, con la orden a la que pertenece [por defecto: todas, en breve]
help-jobs-count = Cuántas variantes mostrar
help-jobs-like = El trabajo del que se sortean variantes: un archivo de trabajo o el nombre de uno incorporado
help-jobs-out = Escribir cada variante como archivo de trabajo en esta carpeta, que ya debe existir. Nunca se sobrescribe un archivo
help-jobs-seed = Semilla de los sorteos: la misma semilla da las mismas variantes
help-jobs-survey = Sortear en su lugar tantos borradores y mostrar solo cuántos se ofrecen y por qué los demás no
help-names-kind = Qué enumerar
help-new-file = Archivo que se escribe; no debe existir todavía
help-new-kind = scenario (trabajo), board (placa), guide (guía), examination (examen), course (curso) o plan
help-option-board = Placa, por su nombre
help-option-help = Mostrar la ayuda
help-option-json = Mostrar JSON, como se describe en `assets/schema`
help-option-lang = Idioma de los textos: en o es [por defecto: según LANG; si no, en]
help-option-library = Carpeta con placas, trabajos y recambios propios, o un curso en un solo zip: se suman a los incorporados
help-option-scenario = Archivo de un trabajo o nombre de uno incorporado
help-option-seed = Semilla de los sorteos [por defecto: la del propio trabajo]
help-option-version = Mostrar la versión
help-play-call-back = Trabajar en la segunda visita de este intento terminado del mismo trabajo: el cliente ha llamado a los tres días y empieza la segunda visita. Lo que se guarda lleva consigo el primer intento
help-play-learner = Archivo de un aprendiz: lo que conviene trabajar primero depende de lo que ya domina. No se escribe nada en él
help-play-resume = Continuar el intento inacabado; el guion empieza donde se interrumpió
help-play-save = Guardar el intento en este archivo, para `detent replay`. Mientras no esté terminado, el nombre lleva `.part`; se sustituye un intento inacabado del mismo nombre
help-play-script = Archivo de guion: un paso por línea
help-practice-fit = Respuestas guardadas (CSV), un archivo por alumno: estimar los parámetros del seguimiento del conocimiento de cada habilidad
help-practice-json = Con --learners o --fit: mostrar JSON, como se describe en `assets/schema`
help-practice-learners = Carpeta de archivos de alumnos: mostrar cómo van, uno al lado de otro. No se escribe nada
help-practice-profile = Archivo de un alumno: mostrar cómo va en cada habilidad
help-practice-seed = Semilla de los sorteos
help-practice-sessions = Sesiones por alumno, una al día
help-practice-simulate = Hacer practicar a alumnos simulados: ¿averigua el modelo lo que saben, y cuántos ejercicios piden la práctica adaptativa, un orden fijo y un orden al azar?
help-practice-simulated = Número de alumnos simulados
help-practice-target = Proporción de respuestas correctas que se busca
help-print-out = Carpeta de los archivos, que ya debe existir. Nunca se sobrescribe un archivo
help-print-paper = Tamaño del papel: a4 o letter [por defecto: a4]
help-print-scenarios = Archivos de trabajos o nombres de los incorporados: una hoja y sus soluciones para cada uno
help-print-seed = Semilla de los sorteos [por defecto: la del propio trabajo; para variantes, 1]
help-print-variants = Sortear en su lugar tantas variantes de cada trabajo, una por alumno, con unas solas soluciones
help-reference-json = Mostrar en su lugar el JSON Schema, como en `assets/schema`
help-reference-kind = scenario (trabajo), board (placa), guide (guía), examination (examen), parts (piezas) o course (curso)
help-replay-attempt = Archivo de un intento
help-replay-scenario = Trabajo, si no está donde dice el intento, ni junto al intento, ni entre los incorporados
help-sheet-of = Una placa o un trabajo, por su nombre o por su archivo
help-simulate-csv = Mostrar valores separados por comas [por defecto: columnas alineadas]
help-simulate-every-ms = Tiempo entre filas, ms
help-simulate-seconds = Tiempo de máquina que se simula, s
help-value-address = DIRECCIÓN
help-value-attempt = INTENTO
help-value-bind = DIRECCIÓN
help-value-board = PLACA
help-value-cache = CARPETA
help-value-command = ORDEN
help-value-count = CANTIDAD
help-value-course = CURSO
help-value-drafts = BORRADORES
help-value-every-ms = MS
help-value-file = ARCHIVO
help-value-folder = CARPETA
help-value-job = TRABAJO
help-value-kind = TIPO
help-value-lang = IDIOMA
help-value-library = BIBLIOTECA
help-value-like = TRABAJO
help-value-minutes = MINUTOS
help-value-name-or-file = NOMBRE-O-ARCHIVO
help-value-options = OPCIONES
help-value-out = CARPETA
help-value-paper = TAMAÑO
help-value-port = PUERTO
help-value-profile = ARCHIVO
help-value-save = ARCHIVO
help-value-scenario = TRABAJO
help-value-script = GUION
help-value-seats = CANTIDAD
help-value-seconds = SEGUNDOS
help-value-seed = NÚMERO
help-value-sessions = CANTIDAD
help-value-skill = HABILIDAD
help-value-tables = CARPETA
help-value-target = PROPORCIÓN
help-value-title = TÍTULO
help-window-flat = Dibujar la máquina en plano, más ligero en equipos lentos
help-window-join = Entrar en la clase cuyo servidor está en esta dirección, como http://192.168.1.20:8080
help-window-scenario = Empezar con este trabajo en vez de la pantalla de inicio
help-window-software = Dibujar con el procesador, como se hace donde no hay tarjeta gráfica
help-window-watch = Ver este intento, terminado o no, como una repetición en el banco

## hint

hint = Pista
hint-ask-none = Todavía no destaca nada. ¿Qué distinguiría más causas con menos trabajo?
hint-ask-one = ¿Es esto: { $cause } ({ $share } %)?
hint-ask-two = ¿Cuál de las dos: { $cause } ({ $share } %) o { $other } ({ $other-share } %)?
hint-check-for-leaks-ask = ¿Qué se abrió que lleve agua?
hint-check-for-leaks-do = Mire debajo de la máquina con agua dentro o justo después del lavado. Una manguera mal encajada se nota ahí primero.
hint-check-for-leaks-where = Mire el suelo.
hint-do-apart = { $step }. Distingue entre las dos.
hint-do-cheap = { $step }. Nada más aporta tanto por lo que cuesta.
hint-do-last-resort = { $step }. Cualquier reparación costará probablemente más.
hint-do-repair = { $step }. Ya sabe lo suficiente: otra prueba costaría más de lo que puede ahorrar.
hint-empty-basket-ask = ¿Qué tendrá que mover el motor mientras el control conoce la máquina?
hint-empty-basket-do = Espere a que no se mueva nada, abra la tapa, saque la ropa y vuelva a cerrarla. Después recalibre: con ropa en la cesta, el control aprendería una inercia falsa.
hint-empty-basket-where = Mire dentro de la cesta.
hint-enter-service-mode-ask = ¿Sabe el control qué lo detuvo?
hint-enter-service-mode-do = Entre en modo de servicio con el gesto de la página «Entrada» de la hoja, dentro de sus tiempos. El control guarda lo que vio, y después cada prueba sale más barata.
hint-enter-service-mode-where = Empiece por la consola, no por dentro.
hint-fit-part-ask = ¿Qué tiene todavía en las manos?
hint-fit-part-do = Monte { $part }. Lo que sabe lo respalda y se puede trabajar en la máquina con seguridad.
hint-fit-part-where = Mire las piezas que ha comprado.
hint-intro = Una pista cuesta puntos, más cuanto más lejos llega. Solo sabe lo que usted ha visto hasta ahora.
hint-leave-fault-hold-ask = ¿Por qué no responde a nada la consola?
hint-leave-fault-hold-do = El control está retenido por un fallo y mientras tanto no acepta ningún gesto. La página «Entrada» de la hoja dice cómo salir de ahí; después intente el gesto.
hint-leave-fault-hold-where = Mire las luces de la consola.
hint-look = ¿Qué podría ayudar?
hint-look-again = Mirar otra vez
hint-make-safe-ask = ¿Qué puede todavía hacerle daño en esta máquina, o derramarse?
hint-make-safe-do = Antes del paso siguiente: { $practice }. Le protege sea cual sea el fallo.
hint-make-safe-where = El paso siguiente aún no es seguro.
hint-none-no-table = No hay pistas: falta la tabla de fallos de esta placa.
hint-none-second-visit = En una segunda visita no hay pistas: guíese por lo que mostró la primera.
hint-open-cabinet-ask = ¿Qué estorba al paso siguiente?
hint-open-cabinet-do = Quite los paneles. Lo que toca comprobar está detrás.
hint-open-cabinet-where = El paso siguiente está dentro de la máquina.
hint-open-taps-ask = ¿Puede llegarle agua a la máquina?
hint-open-taps-do = Vuelva a abrir del todo los dos grifos. Los cerró usted para trabajar.
hint-open-taps-where = Mire los grifos.
hint-prove-by-run-ask = ¿Ha lavado desde entonces?
hint-prove-by-run-do = Vuelva a meter la ropa, cierre la máquina, enchúfela y haga un lavado entero hasta el final, con agua fría y caliente y el centrifugado rápido. Solo eso demuestra que no falla nada más.
hint-prove-by-run-where = La reparación aún no está demostrada.
hint-quote-part-ask = ¿Cuánto va a costar? ¿Está de acuerdo el cliente?
hint-quote-part-do = Ya sabe lo suficiente para comprar. Antes, dé al cliente un presupuesto con { $part } y la mano de obra de toda la visita.
hint-quote-part-where = El paso siguiente es con el cliente.
hint-read-codes-ask = ¿Qué códigos hay guardados y en qué orden?
hint-read-codes-do = En modo de servicio, abra los códigos guardados y anote cada uno tal como lo muestran las luces. Léalas dos veces: un código equivocado lleva a la pieza equivocada.
hint-read-codes-where = Mire las luces en modo de servicio.
hint-recalibrate-ask = ¿Conoce el control la máquina tal como está ahora?
hint-recalibrate-do = Ciérrela, enchúfela y haga la recalibración del menú de servicio, con la cesta vacía y la tapa cerrada. Después de una reparación el control tiene que volver a conocer la máquina.
hint-recalibrate-where = Ahora le toca al control.
hint-renew-fuse-ask = ¿Deja pasar corriente el fusible de red, ahora que está reparado lo que lo fundió?
hint-renew-fuse-do = Ponga { $part }. El viejo se fundió; reparada la causa, el nuevo aguanta.
hint-renew-fuse-where = Mire por dónde entra la corriente.
hint-reset-outlet-ask = ¿Le llega corriente a la máquina?
hint-reset-outlet-do = Rearme el diferencial de la toma. Se queda dentro cuando ya nada deriva a tierra; si vuelve a saltar, algo sigue derivando.
hint-reset-outlet-where = Mire la toma.
hint-rung-what-to-ask = Qué preguntar
hint-rung-what-to-do = Qué hacer y por qué
hint-rung-where-to-look = Dónde mirar
hint-rung-with-price = { $rung } (−{ $points })
hint-show-customer-ask = ¿La ha visto funcionar el cliente?
hint-show-customer-do = Pida al cliente que mire la máquina y diga si está todo como debe. Lo que se ve juntos no se discute después.
hint-show-customer-where = Piense en el cliente.
hint-start-wash-ask = ¿Llegó a empezar el lavado que el cliente quería?
hint-start-wash-do = Elija el programa que usa el cliente y póngalo en marcha. Con un selector gastado, el control puede estar en otro sitio que la marca.
hint-start-wash-where = Mire el selector y lo que muestra la consola.
hint-thinking = Repasando el trabajo…
hint-where = Mire { $area }.
hint-where-wide = Mire el trabajo entero: no destaca ninguna parte.
hint-write-report-ask = ¿Qué causa demuestran sus lecturas?
hint-write-report-do = Escriba el informe: { $cause }. Cite las lecturas que descartan las demás.
hint-write-report-do-none = Escriba el informe y cite las lecturas que descartan las demás causas.
hint-write-report-where = La máquina está lista; el papel no.

## incident

incident-fails = Aunque lo demás vaya bien, este trabajo está suspendido. Siga y aprenda del resto.
incident-flood = Agua en el suelo
incident-hand-in-drive = Mano atrapada
incident-opened-under-pressure = Agua a presión
incident-scald = Quemadura
incident-shock = Descarga eléctrica
incident-touched-charge = Descarga de un condensador

## invoice

invoice = Factura
invoice-call-out = Desplazamiento
invoice-consumable = Material fungible: { $consumable }
invoice-free-called-back = segunda visita por la misma avería, no se cobra (valor { $value })
invoice-free-fitted-in-vain = montada sin hacer falta, no se cobra (valor { $value })
invoice-free-no-repair = sin reparación, no se cobra (valor { $value })
invoice-free-ordered-in-vain = al final no hizo falta, no se cobra (valor { $value })
invoice-labor = Mano de obra: { $minutes } min a { $rate } por hora
invoice-part = Pieza { $part }
invoice-restocking = Gastos de devolución de la pieza { $part }: { $percent } %
invoice-subtotal = Base imponible
invoice-tax = Impuestos, { $percent } %
invoice-total = Total
invoice-warranty = Garantía: { $days } días en piezas y mano de obra.

## join

join-asking = Preguntando al servidor…
join-code = Código
join-code-hint = Seis letras y cifras, como en la pizarra.
join-go = Entrar
join-has-word = Tengo una palabra del instructor
join-mistake-code = Un código tiene seis letras y cifras. Nunca lleva B, I, O, S, U ni Z, y sus únicas cifras son 3, 4, 7 y 9.
join-name = Su nombre
join-name-hint = Tal como lo tiene el instructor en la lista.
join-no-answer = El servidor no responde. Compruebe que este equipo está en la misma wifi que el del instructor y que la dirección de la pizarra es { $address }.
join-not-a-class = Lo que responde en { $address } no es una clase. Compare la dirección con la de la pizarra.
join-refused-closed = Esta clase está cerrada.
join-refused-code = Ese no es el código de esta clase. Vuelva a leerlo en la pizarra.
join-refused-full = No quedan puestos en esta clase. Avise al instructor.
join-refused-name = Un nombre tiene al menos una letra y como mucho 60 caracteres.
join-refused-not-on-list = Ese nombre no está en la lista de esta clase. Escríbalo como lo tiene el instructor.
join-refused-protocol = El servidor usa otra versión del programa. Use la misma con la que se hizo la clase.
join-refused-taken = Ya ha entrado alguien con este nombre. Si fue usted, pida al instructor una palabra para volver.
join-refused-tries = Demasiados códigos equivocados. Inténtelo de nuevo dentro de { $seconds } s.
join-refused-word = Esa no es la palabra que el instructor dio para este nombre, o ya se usó o ha caducado. Pida otra.
join-seat-lost = El servidor ya no reconoce su puesto. Vuelva a entrar; si su nombre está ocupado, pida una palabra al instructor.
join-server = Servidor: { $address }
join-title = Entrar en la clase
join-without = Seguir sin clase
join-without-note = Está todo disponible, pero no se envía nada al instructor.
join-word = Palabra
join-word-hint = Le devuelve a su puesto si antes usó otro equipo.

## keep

keep-down = { $button } pulsado
keep-how = Mayús o el otro botón del ratón deja un botón pulsado; también «Dejar un botón pulsado» sobre la imagen. Púlselo otra vez para soltarlo.
keep-let-go = Soltarlo
keep-next = Dejar un botón pulsado

## kept

kept-delete = Borrar
kept-delete-sure = ¿Borrar definitivamente?
kept-finished = entregado
kept-go-on = Continuar
kept-go-on-last = Continuar donde lo dejó
kept-in-browser = Se guardan en este navegador, en este ordenador, con el mismo formato que los archivos del programa instalado.
kept-in-folder = Se guardan en { $place }
kept-jobs = Trabajos
kept-load = Cargar un intento de un archivo
kept-look = Ver el resultado
kept-mine = Mis intentos ({ $count })
kept-none = Aún no hay nada. Un intento se guarda desde su primera acción.
kept-save = Guardar una copia
kept-second-visit = segunda visita
kept-taken = { $detail } ya está entre sus intentos.
kept-unfinished = sin terminar, { $actions } acciones en { $minutes } min

## key

key-back = Volver, dejar de esperar
key-cabinet = Quitar o poner los paneles
key-discharge = Descargar el condensador
key-faster = Tiempo más rápido
key-focus = Campo siguiente, pulsarlo
key-hide = Ocultar o mostrar los paneles
key-keep = Con un botón: dejarlo pulsado hasta pulsarlo otra vez
key-keys = Teclas y ajustes
key-less = Menos: pulsar o mantener
key-lid = Abrir o cerrar la tapa
key-more = Más: pulsar o mantener
key-page = Desplazar la página
key-plug = Enchufar o desenchufar
key-slower = Tiempo más lento
key-start = Inicio: pulsar o mantener
key-stop = Parada: pulsar o mantener
key-tab-meter = Pestaña: medir
key-tab-parts = Pestaña: piezas
key-tab-report = Pestaña: informe
key-tab-score = Pestaña: nota
key-tab-sheet = Pestaña: hoja de servicio
key-turn = Girar el selector
key-turn-left = Selector: un paso a la izquierda
key-turn-right = Selector: un paso a la derecha
key-view-console = Vista de la consola
key-view-inside = Vista del interior
key-view-machine = Vista de la máquina
key-wait = Esperar un minuto
key-wait-long = Esperar diez minutos
key-wait-until = Esperar hasta que la máquina termine o se pare

## known

known-caution = el aviso que salió antes
known-sheet = los tiempos y pausas de la hoja de servicio

## lamps

lamps-bar-bottom = abajo
lamps-bar-lower-left = abajo a la izquierda
lamps-bar-lower-right = abajo a la derecha
lamps-bar-middle = centro
lamps-bar-top = arriba
lamps-bar-upper-left = arriba a la izquierda
lamps-bar-upper-right = arriba a la derecha
lamps-bars = segmentos encendidos: { $bars }
lamps-blinking = parpadean — { $lamps }
lamps-column = encendidas, contando desde arriba: { $lit } (de { $lamps } luces)
lamps-digits = cifra izquierda: { $left }; cifra derecha: { $right }
lamps-flash-long = largo
lamps-flash-short = corto
lamps-flashes = destellos: { $flashes }; pausa
lamps-free = encendidas, por el número que llevan al lado: { $lit } (de { $lamps } luces)
lamps-grid = encendidas, contando fila a fila desde arriba a la izquierda: { $lit } (de { $lamps } luces)
lamps-hold = Parada por fallo
lamps-idle = En espera
lamps-in-turn = alternan: { $first } — y: { $then }
lamps-lock-blinking = la luz de bloqueo parpadea
lamps-lock-dark = luz de bloqueo apagada
lamps-lock-lit = luz de bloqueo encendida
lamps-none = ninguna
lamps-one-after-the-other = una cifra tras otra: { $signs }; pausa
lamps-one-dark = luz apagada
lamps-one-lit = luz encendida
lamps-program = Programa
lamps-recalibration = Recalibración
lamps-row = encendidas, contando desde la izquierda: { $lit } (de { $lamps } luces)
lamps-seen = Luces: { $lamps }
lamps-service = Modo de servicio
lamps-test = Prueba de carga
lamps-then = después
lamps-weights = encendidas en las decenas: { $tens }; encendidas en las unidades: { $units }

## language

language-choose = Idioma

## leak

leak-dry = Debajo de la máquina: seco.
leak-wet = Debajo de la máquina: mojado. Algo pierde agua.

## learner

learner-changed = No se ha guardado: { $detail } se modificó o se borró mientras tanto y se deja como está. Vuelva a elegir al aprendiz.
learner-damaged = El archivo de este aprendiz no se puede usar y se deja como está: { $detail }
learner-no-name = Un nombre necesita al menos una letra o un número.
learner-refused = No se ha guardado: { $detail }. Compruebe el espacio libre y que tiene permiso de escritura.
learner-taken = Aquí ya hay un aprendiz llamado «{ $detail }». Elija otro nombre.

## leave

leave-job = Salir de este trabajo

## library

library-about = Una carpeta propia con boards, scenarios y parts.ron, o un curso en un zip; también se puede arrastrar a la ventana. Lo que cambie en ella con cualquier editor se ve aquí al momento.
library-about-page = Placas, ejercicios y recambios propios, de una carpeta o de un curso empaquetado en un zip. Este navegador guarda lo que abra.
library-ask-folder = Abrir una carpeta…
library-ask-zip = Abrir un zip…
library-close = Cerrar la biblioteca
library-mistakes = Hay un error en la biblioteca. Lo que se leyó antes sigue disponible:
library-none = No hay ninguna biblioteca abierta: se ofrece lo incorporado.
library-open = Abierta: { $place }
library-open-do = Abrir
library-title = Biblioteca

## look

look = Mirar, palpar, girar a mano
look-intro = Limpie, ajuste y reconecte antes de comprar. Cada revisión lleva un minuto. Lo que está tras los paneles exige paneles quitados y máquina desenchufada.

## loss

loss-bought-on-the-code = Pieza pedida solo por el código
loss-calibrated-with-laundry = Recalibrada con ropa dentro
loss-code-not-noted = Código sin anotar
loss-code-slip = Código mal leído y tachado
loss-discharged-live = Condensador descargado con la máquina enchufada
loss-discharged-unmeasured = Carga sin medir tras la descarga
loss-failed-try = Intento fallido de entrar en el modo de servicio
loss-flood = Suelo inundado
loss-good-board-replaced = Placa de control buena sustituida
loss-hand-in-drive = Mano en la transmisión en marcha
loss-hint-taken = Pista usada
loss-lid-spinning = Tapa abierta con la cesta girando
loss-live-not-allowed = Medición con tensión no permitida
loss-lucky-repair = Reparada por suerte
loss-meter-not-proved = Medidor sin comprobar antes y después
loss-misread = Código mal leído
loss-never-entered = No se entró en el modo de servicio
loss-no-evidence = Informe sin pruebas
loss-no-leak-check = Sin buscar fugas
loss-no-proving-run = Sin programa de prueba
loss-no-report = Sin informe
loss-not-approved = Pieza montada sin aprobación
loss-not-cured = La avería sigue en la máquina
loss-not-demonstrated = Sin demostración al cliente
loss-not-proved-dead = Ausencia de tensión sin comprobar
loss-not-recalibrated = Sin recalibrar
loss-ohms-on-live = Ohmios medidos con tensión
loss-opened-live = Mueble abierto con la máquina enchufada
loss-opened-under-pressure = Manguera soltada con presión
loss-over-budget = Por encima de lo acordado con el cliente
loss-over-quote = Muy por encima del presupuesto
loss-over-repair-limit = Por encima de lo que vale reparar la máquina
loss-over-repaired = Pieza sustituida sin necesidad
loss-overspent = Más gasto del necesario
loss-rest-too-short = Desenchufada muy poco tiempo
loss-rivals-left = Otras causas sin descartar
loss-run-falls-short = Programa de prueba insuficiente
loss-scald = Quemadura con agua
loss-shock = Descarga eléctrica
loss-slow = Demasiado tiempo
loss-tester-shock = Descarga del medidor de aislamiento
loss-touched-charge = Descarga por carga almacenada
loss-wrong-advice = Consejo equivocado al cliente
loss-wrong-cause = Causa equivocada en el informe
loss-wrong-part = Pieza equivocada montada
loss-wrong-part-named = Pieza equivocada en el informe

## lost

lost-bought-on-the-code = La pieza { $part } se pidió antes de que ninguna lectura apuntara a ella. Un código dice qué vio el control, no qué pieza está mal: mida primero.
lost-calibrated-with-laundry = En la última recalibración había ropa en la cesta, así que el control aprendió una inercia falsa. Saque la ropa, cierre la tapa y recalibre otra vez.
lost-code-not-noted = El control guardó el código { $code } y usted no lo anotó. Lea la lista página por página y anote cada uno.
lost-code-slip = Anotó el { $noted }, que las luces nunca mostraron, y lo tachó antes de comprar nada por él.
lost-discharged-live = Se descargó el condensador con la máquina enchufada: la red lo mantenía cargado y la resistencia se quemó. Desenchúfela antes.
lost-discharged-unmeasured = Se descargó el condensador y nadie midió después. Una resistencia que hace mal contacto no descarga nada: mida V DC de bulk.plus a bulk.minus antes de meter las manos.
lost-failed-try = Falló un intento de entrar en modo de servicio: { $rule }. Lea el registro, deje todo en reposo y pruebe otra vez a ritmo constante.
lost-flood = Con agua en la cuba se abrió una pieza más baja o se inclinó la máquina, y se inundó el suelo. Vacíe o achique antes la cuba.
lost-good-board-replaced = Se cambió una placa de control buena. Antes de comprar una, demuestre que sus entradas están bien y su salida mal.
lost-hand-in-drive = Hubo una mano en la cesta o en la transmisión mientras giraba: eso rompe dedos y brazos. Espere a que se detenga.
lost-hint-taken = Se tomó una pista: { $rung }.
lost-lid-spinning = Se abrió la tapa con la cesta girando. Espere a que se pare: puede romper un brazo.
lost-live-not-allowed = Midió con tensión en un trabajo que no lo permite. Aquí había que encontrar el fallo con la máquina desenchufada.
lost-lucky-repair = La máquina vuelve a funcionar, pero por suerte: el informe dice «{ $said }»; era «{ $truth }». Demuestre qué pieza ha fallado antes de montar una: la próxima vez quizá no tenga tanta suerte.
lost-meter-not-proved = Se midió el circuito, pero no se comprobó el multímetro en una fuente conocida antes y después. Un multímetro averiado marca cero en cualquier circuito: fuente conocida, circuito, fuente conocida y solo entonces las manos.
lost-misread = Anotó { $noted }, pero las luces no lo habían mostrado. Vuelva a sumar cada grupo de cuatro luces. Códigos mostrados en este trabajo: { $shown }
lost-never-entered = No se llegó a entrar en modo de servicio, así que los códigos guardados quedaron sin leer. Siga el gesto de la hoja de servicio.
lost-no-evidence = El informe no cita ninguna lectura de antes de la reparación. Marque las lecturas que muestran la causa.
lost-no-leak-check = { $component }: se abrió algo que lleva agua y nadie miró después si pierde. Mire debajo de la máquina con agua dentro o después de un lavado.
lost-no-proving-run = Ningún programa llegó al final después de la reparación. Haga uno y obsérvelo: solo eso demuestra que la máquina lava.
lost-no-report = No se entregó ningún informe. El trabajo termina con causa, pieza y prueba por escrito.
lost-not-approved = Se montó la pieza { $part } antes de que el cliente aceptara lo que cuesta. Dé un presupuesto que la incluya y espere la respuesta.
lost-not-cured = El fallo sigue en la máquina. Monte la pieza que lo elimina o dígale claramente al cliente que no está reparada.
lost-not-demonstrated = La máquina vuelve a funcionar y no se pidió al cliente que la viera. Pídaselo después del lavado de comprobación, antes del informe.
lost-not-proved-dead = Se metieron las manos sin comprobar la ausencia de tensión. Espere un minuto, mida V DC de bulk.plus a bulk.minus, descargue el condensador y vuelva a medir.
lost-not-recalibrated = Ninguna recalibración terminó bien después de la reparación. Recalibre para que el control conozca la máquina tal como está ahora.
lost-ohms-on-live = Se midieron ohmios en un circuito con tensión o con carga. Desenchufe la máquina y descargue el condensador antes de elegir Ω.
lost-opened-live = Se abrió el mueble con la máquina enchufada. Desenchúfela primero y tenga la clavija a la vista.
lost-opened-under-pressure = Se soltó una manguera con el grifo abierto y el agua salió a presión por el suelo. Cierre antes los grifos.
lost-over-budget = Piezas y mano de obra sumaron { $bill } ¤; el cliente había aceptado { $budget } ¤. Pregunte antes de pasarse de lo acordado.
lost-over-quote = Piezas y mano de obra sumaron { $bill } ¤; el cliente había aceptado un presupuesto de { $quoted } ¤. Pasarse más de un diez por ciento pide uno nuevo.
lost-over-repair-limit = Piezas y mano de obra sumaron { $bill } ¤; por encima de { $limit } ¤ no vale la pena reparar esta máquina. Dígalo antes de gastar el dinero.
lost-over-repaired = Se cambió la pieza { $part }, aunque bastaba con limpiar, ajustar o reconectar la vieja, o repararla con un juego de piezas. Corrija a mano lo que se puede corregir a mano y vuelva a probar.
lost-overspent = Gastó { $spent }; la reparación necesitaba { $needed }. El resto no le sirvió de nada al cliente.
lost-rest-too-short = Solo { $seconds } s desenchufada: el control aún tenía carga y no se reinició nada. Espere un minuto entero.
lost-rivals-left = Las lecturas citadas dejan abiertas { $open } de { $rivals } otras causas. Mida lo que las distingue y cítelo.
lost-run-falls-short = Después de la reparación un programa llegó al final, pero { $gap }. Haga uno que llegue a lo reparado y obsérvelo.
lost-scald = Se metieron las manos en agua que quema. Deje que la bomba la vacíe o que se enfríe.
lost-shock = Descarga eléctrica: se tocó algo con tensión. Desenchufe la máquina, tenga la clavija bajo su control y compruebe la ausencia de tensión antes de meter las manos.
lost-slow = El trabajo llevó { $minutes } minutos; bastaban { $par }. Planifique la siguiente medición antes de coger la herramienta.
lost-tester-shock = Sujetó con los dedos las puntas del medidor de aislamiento y los 500 V pasaron por usted. Duele y poco más, pero la mano que se aparta de golpe acaba en el primer canto. Use las pinzas.
lost-touched-charge = Una descarga de la carga almacenada: se metieron las manos antes de que desapareciera. Espere un minuto, descargue el condensador y compruébelo con el multímetro.
lost-wrong-advice = Le dijo al cliente: «{ $given }». Lo que le pasaba a la máquina pide: «{ $due }».
lost-wrong-cause = El informe dice «{ $said }»; era «{ $truth }». Que sean las lecturas, y no el código, las que nombren la causa.
lost-wrong-part = Se montó una pieza que no elimina el fallo. Descarte a los demás sospechosos midiendo antes de comprar.
lost-wrong-part-named = Pieza del informe: { $named }; hacía falta: { $needed }. Nombre la pieza del componente que ha fallado, una que sirva en esta máquina.

## meter

meter-beep = pitido
meter-black = Punta negra
meter-choose = elija un pin abajo
meter-clips = Pinzas
meter-dead = Se ha fundido el fusible del multímetro
meter-fingers = dedos en las puntas
meter-grip = Puntas sujetas con
meter-grip-fingers = Dedos
meter-held = RETENIDA
meter-mode-continuity = Continuidad
meter-pins = Pines de
meter-red = Punta roja
meter-test-bad = El multímetro no marca la fuente conocida: revise el fusible y las puntas.
meter-test-good = El multímetro marca la fuente conocida.
meter-test-intro = Fuente de prueba: 50 V~, 50 V DC y 100 Ω. Compruebe en ella el multímetro antes y después de verificar la ausencia de tensión.

## misread

misread-count = Cuente otra vez: primero decenas, luego unidades.
misread-lamps = { $count ->
    [one] Una luz es distinta.
   *[other] { $count } luces son distintas.
}
misread-noted = Anotó { $code }
misread-shown = Las luces mostraron { $code }

## mode

mode-belt-broken = Correa rota
mode-belt-slipping = Correa que patina
mode-board-bleeder-open = Placa de control: resistencia de descarga abierta
mode-board-clutch-actuator-switch-open = Placa de control: el relé del actuador del embrague no cierra
mode-board-cold-switch-welded = Placa de control: relé de válvula fría soldado
mode-board-current-input-drift = Placa de control: deriva en la entrada de corriente del motor
mode-board-hot-switch-open = Placa de control: el relé de válvula caliente no cierra
mode-board-lock-switch-open = Placa de control: el relé del bloqueo no cierra
mode-board-lock-switch-welded = Placa de control: relé del bloqueo soldado
mode-board-memory-lost = Placa de control: memoria borrada, recalibrar
mode-board-motor-a-switch-open = Placa de control: el relé A del motor no cierra
mode-board-motor-a-switch-tired = Placa de control: el relé A del motor falla en caliente
mode-board-motor-b-switch-scorched = Placa de control: relé B del motor quemado
mode-board-pump-switch-open = Placa de control: el relé de la bomba no cierra
mode-board-pump-switch-welded = Placa de control: relé de la bomba soldado
mode-board-sensor-rail-dead = Placa de control: sin alimentación de sensores
mode-board-service-mode-lost = Placa de control: el modo de servicio no responde
mode-board-stop-button-dead = Placa de control: botón de parada averiado
mode-board-supply-dead = Placa de control: fuente conmutada averiada, condensador aún cargado
mode-board-thermistor-input-drift = Placa de control: deriva en la entrada del termistor
mode-clutch-actuator-cam-switch-closed = Actuador del embrague: contacto de leva siempre cerrado
mode-clutch-actuator-cam-switch-open = Actuador del embrague: contacto de leva siempre abierto
mode-clutch-actuator-open-winding = Actuador del embrague: bobinado cortado
mode-clutch-actuator-stripped-gear = Actuador del embrague: engranaje sin dientes
mode-cord-open-line = Cable de alimentación: conductor de fase cortado
mode-cord-weak-joint = Cable de alimentación: mala conexión en la clavija
mode-dial-encoder-dead = Selector: sin señal a la placa
mode-dial-worn = Selector: pasos gastados
mode-drain-hose-blocked = Manguera de desagüe obstruida
mode-drain-hose-end-high = Manguera de desagüe: tubo demasiado alto
mode-drain-hose-end-low = Manguera de desagüe: extremo demasiado bajo
mode-drain-hose-kinked = Manguera de desagüe doblada
mode-drain-hose-too-deep = Manguera de desagüe: demasiado metida en el tubo
mode-drain-pump-fouled = Bomba de desagüe: hilos en el rotor
mode-drain-pump-open-winding = Bomba de desagüe: bobinado cortado
mode-drain-pump-seized = Bomba de desagüe: rotor agarrotado
mode-drain-pump-winding-to-ground = Bomba de desagüe: bobinado derivado a tierra
mode-filter-capacitor-shorted = Filtro de red: condensador en cortocircuito
mode-filter-line-to-ground = Filtro de red: fase derivada a tierra
mode-filter-open-choke = Filtro de red: bobina cortada
mode-floor-not-level = La máquina cojea
mode-harness-clutch-actuator-wire-open = Mazo de cables: cable del actuador del embrague cortado
mode-harness-cold-wire-open = Mazo de cables: cable de la válvula fría cortado
mode-harness-hot-wire-open = Mazo de cables: cable de la válvula caliente cortado
mode-harness-lock-coil-wire-open = Mazo de cables: cable de la bobina del bloqueo cortado
mode-harness-lock-return-burnt = Mazo de cables: pin quemado en el retorno del bloqueo
mode-harness-lock-return-loose = Mazo de cables: pin flojo en el retorno del bloqueo
mode-harness-motor-common-burnt = Mazo de cables: pin quemado en el común del motor
mode-harness-motor-wire-shaken = Mazo de cables: el común del motor se corta al vibrar
mode-harness-pickup-ground-shaken = Mazo de cables: la masa del captador se corta al vibrar
mode-harness-pickup-wire-open = Mazo de cables: cable de señal del captador cortado
mode-harness-pressure-supply-wire-open = Mazo de cables: cable de alimentación del sensor de presión cortado
mode-harness-pressure-wire-open = Mazo de cables: cable de señal de presión cortado
mode-harness-pump-wire-open = Mazo de cables: cable de la bomba cortado
mode-harness-thermistor-pin-damp = Mazo de cables: el pin del termistor falla con la humedad
mode-harness-thermistor-wire-open = Mazo de cables: cable del termistor cortado
mode-inlet-cold-blocked-screen = Válvula fría: filtro obstruido
mode-inlet-cold-open-winding = Válvula fría: bobina cortada
mode-inlet-cold-stuck-open = Válvula fría: no cierra
mode-inlet-hoses-crossed = Mangueras de agua fría y caliente intercambiadas
mode-inlet-hot-blocked-screen = Válvula caliente: filtro obstruido
mode-inlet-hot-open-winding = Válvula caliente: bobina cortada
mode-inlet-hot-stuck-open = Válvula caliente: no cierra
mode-laundry-overload = Ropa: cesta sobrecargada
mode-laundry-suds = Ropa: exceso de detergente, espuma
mode-laundry-uneven = Ropa: apelotonada a un lado
mode-lid-lock-bolt-stiff = Bloqueo de tapa: pestillo duro
mode-lid-lock-contact-damp = Bloqueo de tapa: el contacto de línea falla con la humedad
mode-lid-lock-contact-open = Bloqueo de tapa: contacto de línea quemado
mode-lid-lock-contact-welded = Bloqueo de tapa: contacto de línea soldado
mode-lid-lock-lid-switch-open = Bloqueo de tapa: el interruptor de tapa no cierra
mode-lid-lock-open-winding = Bloqueo de tapa: bobina cortada
mode-line-fuse-blown = Fusible de línea fundido
mode-motor-bearing-dry = Motor: rodamiento seco
mode-motor-open-winding-a = Motor: bobinado A cortado
mode-motor-open-winding-b = Motor: bobinado B cortado
mode-motor-seized = Motor: rodamientos agarrotados
mode-motor-shorted-turns = Motor: espiras en cortocircuito
mode-motor-winding-opens-hot = Motor: el bobinado B se corta en caliente
mode-motor-winding-to-ground = Motor: bobinados derivados a tierra
mode-nothing = No fallaba nada
mode-pickup-gap-wide = Captador de velocidad: demasiado lejos de sus imanes
mode-pickup-no-output = Captador de velocidad: sin salida
mode-pressure-hose-blocked = Manguera de presión obstruida
mode-pressure-hose-leaking = Manguera de presión: pierde aire
mode-pressure-sensor-no-output = Sensor de presión: sin salida
mode-pressure-sensor-slope-drift = Sensor de presión: pierde sensibilidad
mode-pressure-sensor-zero-drift = Sensor de presión: cero desplazado
mode-run-capacitor-fading = Condensador de marcha: pierde capacidad
mode-run-capacitor-open = Condensador de marcha abierto
mode-run-capacitor-shorted = Condensador de marcha en cortocircuito
mode-supply-extension-cord = Toma: alargador fino
mode-supply-loose-outlet = Toma: contacto flojo
mode-supply-low-mains = Toma: tensión demasiado baja, neutro flojo aguas arriba
mode-supply-no-ground = Toma: sin tierra
mode-supply-polarity-reversed = Toma: fase y neutro invertidos
mode-taps-cold-pipe-frozen = Agua de la casa: tubería de la fría helada
mode-taps-cold-pipe-narrow = Agua de la casa: tubería de la fría casi cegada por la cal
mode-taps-cold-shut = Grifo de agua fría cerrado
mode-taps-cold-throttled = Grifo de agua fría casi cerrado
mode-taps-hot-pipe-frozen = Agua de la casa: tubería de la caliente helada
mode-taps-hot-pipe-narrow = Agua de la casa: tubería de la caliente casi cegada por la cal
mode-taps-hot-shut = Grifo de agua caliente cerrado
mode-taps-well-pump-weak = Agua de la casa: la bomba del pozo no da presión
mode-thermistor-drifting = Termistor con deriva
mode-thermistor-open = Termistor abierto
mode-thermistor-shorted = Termistor en cortocircuito
mode-tub-bearing-rough = Cuba: rodamiento de la cesta desgastado
mode-tub-leaking = Cuba: fuga por el retén

## monitor

monitor-calibration-failed = Ha fallado la recalibración
monitor-calibration-missing = Sin calibrar
monitor-cam-lost = Actuador del embrague fuera de posición
monitor-drain-slow = Desagua demasiado despacio
monitor-fill-none = No entra agua
monitor-fill-slow = Llena demasiado despacio
monitor-level-lost = Baja el nivel sin desaguar
monitor-lock-not-proven = Bloqueo sin confirmar
monitor-lock-not-released = El bloqueo de tapa no se suelta
monitor-motor-no-current = El motor no consume corriente
monitor-motor-overheated = Corriente del motor perdida en marcha
monitor-motor-overload = La corriente del motor sigue alta
monitor-pressure-range = Señal de presión fuera de rango
monitor-pulses-none = Sin pulsos de velocidad
monitor-pulses-weak = Pocos pulsos de velocidad
monitor-spin-not-reached = No alcanza la velocidad de centrifugado
monitor-supply-low = Cae la tensión de red
monitor-thermistor-range = Señal del termistor fuera de rango
monitor-unbalance = Carga desequilibrada
monitor-water-not-warm = El agua sigue fría
monitor-water-too-hot = Agua demasiado caliente
monitor-water-unexpected = Sube el agua con las válvulas cerradas

## name

name-dial = Selector: arrastre, use la rueda o las flechas
name-less = Menos (K)
name-lid = Tapa (L)
name-more = Más (I)
name-plug = Clavija (P)
name-start = Inicio (S)
name-stop = Parada (X)
name-switch = Conmutador: arrastre, use la rueda o las flechas

## names

names-advice = Consejos de un informe
names-boards = Placas de control
names-codes = Códigos de una placa (--board)
names-components = Componentes
names-faults = Modos de fallo
names-fields = Campos de cada tipo de archivo
names-guide-goals = Lo que puede dar por hecho un paso de una guía
names-kinds = Clases de modos de fallo
names-meter-modes = Posiciones del multímetro
names-monitors = Lo que vigila un control
names-parts = Recambios del mostrador
names-presences = Cuándo está presente un fallo
names-routines = Rutinas del modo de servicio
names-stages = Etapas de la recalibración
names-terminals = Bornes

## note

note-code = Código leído
note-code-do = Anotar
note-strike = Tachar
note-tens-fewer = Decenas: una menos
note-tens-more = Decenas: una más
note-units-fewer = Unidades: una menos
note-units-more = Unidades: una más

## notebook

notebook = Cuaderno
notebook-empty = Aún no hay lecturas.
notebook-live = con tensión

## noted

noted-codes = Anotados:
noted-none = Ninguno todavía

## number

number-hold = el código
number-idle = los minutos que durará
number-program = los minutos que faltan
number-recalibration = la etapa
number-service = la posición elegida
number-test = los segundos que faltan

## pages

pages-apply = Aplicar
pages-attempt-running = En curso
pages-attempts = Intentos
pages-attempts-none = Todavía no ha llegado ningún intento.
pages-back-online = De nuevo en contacto con la clase.
pages-board = Panel de la clase
pages-book = Libro de notas
pages-book-attempt-count = Verificados: { $count }
pages-book-back = Volver al libro de notas
pages-book-back-learner = Volver al alumno
pages-book-cause = Causa indicada
pages-book-cause-none = Sin informe
pages-book-changed = cambiada
pages-book-changes = Cambios de los instructores
pages-book-changes-from = Antes
pages-book-changes-none = No se ha cambiado nada.
pages-book-changes-reason = Motivo
pages-book-changes-to = Después
pages-book-changes-what = Qué
pages-book-changes-when = Cuándo (UTC)
pages-book-changes-who = Quién
pages-book-changes-who-instructor = Instructor
pages-book-comment = Comentario
pages-book-comment-help = Figura en el informe.
pages-book-cost = Piezas y mano de obra
pages-book-difficulty = Puntos conseguidos (media)
pages-book-difficulty-help = El 100 % sería un trabajo en el que nadie pierde ningún punto.
pages-book-discrimination = Discriminación
pages-book-discrimination-help = Hasta qué punto quien saca buena nota en este trabajo la saca también en los demás, de −1 a 1. Cerca de 0 o por debajo, el trabajo mide otra cosa. Hacen falta al menos { $count } alumnos.
pages-book-download = Descargar
pages-book-download-csv = Notas con nombres (CSV)
pages-book-download-csv-pseudonyms = Notas sin nombres (CSV)
pages-book-download-note = Solo el primer archivo contiene nombres; en los demás figuran seudónimos.
pages-book-download-plot = Descargar la imagen (SVG)
pages-book-download-roster = Notas para el programa del centro (OneRoster 1.2)
pages-book-download-xapi = Intentos como declaraciones (xAPI 2.0)
pages-book-erase = Borrar a este alumno
pages-book-erase-confirm = Borrar para siempre
pages-book-erase-explained = El nombre, los intentos, las notas y los comentarios se eliminan de este ordenador, también de las copias de la clase. No se puede deshacer. Los archivos descargados y los mensajes a toda la clase se quedan como están.
pages-book-erase-keep = No borrar
pages-book-export-learner = Todo lo que se guarda de este alumno (JSON)
pages-book-item-losses = Pérdidas de puntos más frecuentes
pages-book-item-misread = Códigos mal leídos
pages-book-item-misread-shown = Mostrados
pages-book-items = Trabajos
pages-book-learners = Alumnos
pages-book-learners-count = Alumnos con un intento verificado
pages-book-lost-points = Puntos
pages-book-lost-reason = Motivo
pages-book-lost-side = Aspecto del trabajo
pages-book-lost-when = Minuto
pages-book-mark = Nota
pages-book-mark-and-comment = Cambiar la nota o escribir un comentario
pages-book-mark-computed = Calculada: { $points }
pages-book-mark-help = Puntos de 0 a 100; vacío para la nota calculada.
pages-book-mark-none = Todavía sin intento verificado. No es un cero.
pages-book-mark-reason = Motivo del cambio de nota
pages-book-mark-reason-missing = Un cambio de nota necesita un motivo.
pages-book-mark-save = Guardar
pages-book-mark-saved = Guardado.
pages-book-mark-stale = Alguien lo ha cambiado entretanto: nota { $points }, comentario «{ $comment }». No se ha sobrescrito nada. Vuelva a cargar la página para verlo y cámbielo si sigue haciendo falta.
pages-book-mark-wrong = Una nota es un número de 0 a 100.
pages-book-mean = Media
pages-book-money = { $amount } ¤
pages-book-none = Todavía no se ha verificado ningún intento.
pages-book-not-closed = Este examen sigue abierto. Los alumnos no ven puntos hasta que se cierre: no muestre esta página en el proyector.
pages-book-open = Abrir el libro de notas
pages-book-passed = Aprobado
pages-book-passed-count = { $count } de { $of }
pages-book-passed-not = No aprobado
pages-book-plot-items = Media de puntos conseguidos en cada trabajo
pages-book-plot-skills = Puntos conseguidos por destreza
pages-book-points = { $points } de 100
pages-book-report = Informe
pages-book-report-for = Informe de { $name }
pages-book-report-how = Cómo leerlo
pages-book-report-how-parent = En esta clase los alumnos buscan y reparan averías en una lavadora simulada. Cada trabajo vale 100 puntos: por trabajar con seguridad, razonar bien, leer los códigos de la máquina, cuidar el tiempo y el gasto, y comprobar que la reparación funciona. A partir de 70 puntos el trabajo está aprobado, si se hizo con seguridad. Un trabajo sin nota no se hizo o no se pudo comprobar; no es un cero.
pages-book-report-parent = Informe para la familia
pages-book-report-print = Para imprimirlo, use la orden de imprimir del navegador.
pages-book-report-safe = Ningún acto inseguro en los trabajos de arriba.
pages-book-report-skill-good = Bien
pages-book-report-skill-some = En camino
pages-book-report-skill-weak = Necesita práctica
pages-book-report-teacher = Informe para el instructor
pages-book-report-unsafe = Actos inseguros en los trabajos de arriba: { $count }.
pages-book-result = Resultado
pages-book-rule = Qué intento cuenta
pages-book-second-visit = Segunda visita: no cuenta
pages-book-skill = Destreza
pages-book-skill-jobs = Trabajos bien hechos
pages-book-skill-kept = Puntos conseguidos
pages-book-skills = Por destreza
pages-book-time = Tiempo de trabajo
pages-book-unsafe = Actos inseguros
pages-book-unsafe-none = Ninguno
pages-close-confirm = Cerrar la clase
pages-close-explained = Después nadie podrá seguir trabajando. Lo que se haya hecho antes seguirá llegando y se comprobará.
pages-close-keep = No cerrarla
pages-close-question = ¿Cerrar la clase?
pages-column-attempts = Intentos terminados
pages-column-deeds = Acciones
pages-column-idle = Sin actividad
pages-column-job = Trabajo
pages-column-machine-time = Tiempo de máquina
pages-column-more = Ayuda y archivos
pages-column-name = Nombre
pages-column-seat = Puesto
pages-column-state = Situación
pages-column-unsafe = Actos inseguros
pages-download = Descargar
pages-download-newest = Descargar el último intento de { $name }
pages-drill-so-far = { $done } de { $of } respondidas, { $right } correctas
pages-hand-in = Entregar un archivo
pages-hand-in-done = Recibido: { $file }. { $result }
pages-hand-in-file = Archivo de intento (.attempt) o de ronda (.round), por ejemplo de una memoria USB
pages-hand-in-none = Elija antes un archivo.
pages-hand-in-send = Entregar
pages-join-address = Dirección
pages-join-code = Código
pages-join-qr = Código QR con la dirección { $address }
pages-kind-examination = Examen
pages-kind-practice = Práctica
pages-list-none = Nadie coincide con lo elegido.
pages-lost = Sin conexión con la clase desde las { $time }. Lo que ve aquí es como estaba entonces. La página sigue intentándolo.
pages-message = Mensaje
pages-message-all = Mensaje a toda la clase
pages-message-none = Escriba antes un mensaje.
pages-message-seat = Mensaje a este puesto
pages-message-send = Enviar
pages-message-sent = Enviado.
pages-minutes = { $minutes } min
pages-minutes-hours = { $hours } h { $minutes } min
pages-minutes-less = < 1 min
pages-more = Más
pages-more-of = Más sobre el puesto { $seat }, { $name }
pages-names = Añadir nombres
pages-names-add = Añadir a la lista
pages-names-added = Añadidos a la lista.
pages-names-field = Nombres, uno por línea
pages-names-none = Escriba al menos un nombre.
pages-names-refused = Añadidos, salvo lo que no es un nombre: { $what }
pages-no-answer = El ordenador que lleva la clase no responde. Vuelva a intentarlo.
pages-no-page = Aquí no hay banco para navegadores
pages-no-page-built = En un ordenador con el proyecto y las herramientas de Rust, el instructor lo empaqueta una sola vez. La primera vez tarda una media hora; los detalles están en el README, en «In a browser»:
pages-no-page-instructor = Para el instructor
pages-no-page-join = Con el programa en su propio ordenador, únase así:
pages-no-page-learner = La clase está en marcha, pero este ordenador no tiene un banco empaquetado que dar a los navegadores. Avise a su instructor.
pages-no-page-restart = Después, termine la clase y vuelva a iniciarla: cada cual recupera su puesto.
pages-no-script = Sin scripts, esta página muestra cómo estaba todo al cargarla, y desde ella no se puede enviar nada. Vuelva a cargarla para ver las novedades.
pages-not-done = No ha funcionado (error { $number }). Vuelva a intentarlo.
pages-projector = Proyector
pages-projector-attempt = Un intento
pages-projector-gone = Este intento ya no está aquí.
pages-projector-join = Únase a la clase
pages-projector-joined = { $count } en clase
pages-projector-open = Mostrar en el proyector cómo unirse
pages-projector-step-code = Escriba el código y, después, su nombre
pages-projector-step-open = Abra esta dirección o escanee el código QR
pages-projector-this = Mostrar en el proyector, sin nombre
pages-result-mismatch = Da un resultado distinto del que declara
pages-result-not-assigned = No es el trabajo o la máquina de este alumno
pages-result-other-content = Hecho con otro contenido: sin verificar
pages-result-other-program = Otra versión: sin verificar
pages-result-too-long = Tarda demasiado: sin verificar
pages-result-verified = Verificado
pages-result-verified-points = Verificado: { $points } de 100
pages-result-verified-right = Verificado: { $right } de { $of } correctas
pages-result-waiting = Pendiente de comprobar
pages-rule-best = El mejor intento
pages-rule-first = El primer intento
pages-rule-last = El último intento
pages-seat = Puesto { $seat }
pages-seat-back = Volver al panel
pages-seats = Puestos
pages-show = Mostrar
pages-show-absent = Quien aún no se ha unido
pages-show-all = Toda la clase
pages-show-help = Quien necesita ayuda
pages-sign-in = Página del instructor
pages-sign-in-again = Volver a entrar
pages-sign-in-go = Entrar
pages-sign-in-key = Clave o dirección del instructor
pages-sign-in-none = Pegue antes la clave.
pages-sign-in-refused = Esa no es la clave de esta clase. Cópiela de la ventana en la que se inició la clase.
pages-sign-in-where = Está en la ventana en la que se inició la clase. Que no la vean los aprendices.
pages-signed-out = Ha salido de la sesión. Lo que ve aquí ya no cambia.
pages-skip = Saltar a los puestos
pages-sort = Orden
pages-sort-help = Primero quien necesita ayuda
pages-sort-name = Por nombre
pages-sort-seat = Por puesto
pages-standing = Clase
pages-standing-close = Cerrar
pages-standing-closed = Cerrada. Lo que se hizo antes sigue llegando.
pages-standing-not-open = Aún no está abierta. Se abre dentro de { $time }.
pages-standing-open = Abierta
pages-standing-open-now = Abrir ya
pages-standing-open-until = Abierta. Se cierra dentro de { $time }.
pages-standing-pause = Pausar
pages-standing-paused = En pausa. Toda la clase espera.
pages-standing-set = Abrir, pausar o cerrar la clase
pages-standing-set-open = Abrir
pages-state-absent = Aún no se ha unido
pages-state-finished = Todo hecho
pages-state-here = En clase
pages-state-idle = Sin actividad
pages-state-not-begun = Aún sin empezar
pages-state-silent = Sin contacto: { $time }
pages-state-stuck = Sin avanzar
pages-state-unsafe = Acto inseguro ahora
pages-state-working = Trabajando
pages-summary-here = { $count } de { $of } en clase
pages-summary-stuck = { $count } sin avanzar
pages-summary-unsafe = { $count } en riesgo ahora
pages-told-stuck = Puesto { $seat }, { $name }: sin avanzar.
pages-told-unsafe = Puesto { $seat }, { $name }: acto inseguro ahora.
pages-trouble = Problema en el ordenador que lleva la clase: { $what }
pages-undrawn = No se puede sortear ni demostrar ninguna variante más de «{ $what }»: quien aún no tenía ninguna recibe el trabajo tal como está escrito.
pages-watch = Ver en el banco
pages-word = Una palabra para volver
pages-word-explained = Para quien sigue en otro equipo o ha perdido su puesto: se escribe allí junto al nombre.
pages-word-give = Dar una palabra
pages-word-is = La palabra: { $word }

## paper

paper-answer-key = Soluciones
paper-black = Punta negra en
paper-budget = Límite del cliente
paper-cause = Causa posible
paper-cause-against = Qué habla en contra
paper-cause-for = Qué habla a favor
paper-causes = Causas posibles, la más probable primero
paper-check = Comprobaciones
paper-checks = Comprobaciones para distinguirlos
paper-checks-names = La tabla de pines da los nombres de los bornes como los escriben las comprobaciones; con @board, el pin de la placa donde empieza ese cable.
paper-code = Código
paper-date = Fecha
paper-digit = Cifra
paper-does = Qué pone en marcha
paper-expected = Esperado
paper-fault = Avería oculta
paper-file = Archivo
paper-findings = Hallazgos
paper-findings-safe = Dejar la máquina segura: marque cada paso al hacerlo, antes de meter las manos.
paper-goal = Qué enseña
paper-handout = Hoja de prácticas
paper-invented = El cliente, la máquina y la avería son inventados.
paper-key-intro = Solo para el instructor.
paper-knob = El selector visto de frente, en la posición 0; las posiciones, hasta { $positions }, siguen en el sentido de las agujas del reloj. Las que tienen una rutina van en negrita.
paper-labor = Mano de obra por hora
paper-lamps = Luces
paper-lamps-blank = Las luces de la placa, para rellenar
paper-lamps-blink = Una luz con un punto en el centro parpadea.
paper-lamps-how = Una luz rellena y con rayos está encendida; un contorno vacío está apagado.
paper-lane-knob = Selector (pasos de una vuelta)
paper-lane-lid = Tapa
paper-lane-plug = Clavija
paper-lid-closed = cerrada
paper-lid-open = abierta
paper-local-codes = La normativa local y la práctica autorizada van primero. Si piden más que esta hoja, haga lo que piden.
paper-machine = Máquina
paper-mark = Marca
paper-meaning = Significado
paper-minutes = { $minutes } min
paper-minutes-so-far = Minutos hasta ahí
paper-mode = Modo
paper-money-so-far = Coste hasta ahí
paper-name = Nombre
paper-no-longer = (cada pulsación, no más de { $seconds } s)
paper-not-possible = La máquina no llega hasta ahí.
paper-not-sooner = (no antes de { $seconds } s desde el paso anterior)
paper-page = Página { $page } de { $pages }
paper-patterns = Figuras de las luces
paper-pause = pausa: { $seconds } s
paper-pin = Pin
paper-pins = Tabla de pines
paper-plug-in = enchufada
paper-plug-out = desenchufada
paper-points = Puntos
paper-position = Posición
paper-read = Leído
paper-readings = Medidas
paper-red = Punta roja en
paper-repair = Reparación
paper-repair-cause = Causa encontrada
paper-repair-cost = Minutos trabajados; importe
paper-repair-customer = Qué se dijo al cliente
paper-repair-part = Pieza y su número, o arreglo a mano
paper-repair-verified = Comprobado con
paper-safety = Antes de trabajar
paper-safety-charge = Espere un minuto, descargue el condensador con una resistencia y compruebe con el multímetro que no queda tensión: pruebe el multímetro, mida y vuelva a probarlo.
paper-safety-live = En este trabajo se puede medir con tensión, pero solo con formación y autorización: conecte las pinzas con la máquina desenchufada, apártese y después enchúfela. Suelo seco, sin joyas, multímetro y puntas de CAT II o superior para esta tensión.
paper-safety-moving = No meta las manos hasta que la cesta, la correa y las poleas se hayan parado.
paper-safety-no-live = En este trabajo no se permite medir con tensión.
paper-safety-ohms = Mida ohmios solo en un circuito que haya comprobado sin tensión.
paper-safety-unplug = La tensión de red puede matar. Desenchufe la máquina y tenga la clavija a la vista antes de quitar un panel.
paper-safety-water = Vacíe la cuba antes de abrir nada por debajo del agua. Cierre los dos grifos antes de soltar una manguera: el agua caliente quema. La máquina pesa: inclínela entre dos personas.
paper-setting = Escala
paper-sheet = Hoja
paper-sheet-seed = Semilla { $seed }
paper-sheet-variant = Hoja { $sheet } de { $sheets } · variante { $variant } · semilla { $seed }
paper-shows = Qué se ve aquí
paper-sights = Luces vistas
paper-sights-how = Rellene lo que está encendido. Si una luz destella, dibuje cada destello en la línea del tiempo, largo o corto.
paper-state = Estado de la máquina
paper-step = Paso
paper-suspects = Sospechosos
paper-terminal = Dónde acaba el cable
paper-ticket = Parte de trabajo
paper-time = Tiempo para el trabajo
paper-voltage = Tensión
paper-voltage-line = tensión de red
paper-voltage-low = baja tensión
paper-wash = Lavado del cliente
paper-way-intro = Lo que hace el planificador en esta máquina y lo que cada prueba muestra aquí más a menudo; tiempo y dinero hasta ahí, con la espera de piezas.
paper-wires-alt = Esquema de cableado: cada cable desde su pin en la placa, por el conector, hasta el borne del componente donde acaba. La tabla de pines de abajo dice lo mismo.
paper-wires-intro = A la izquierda, el pin de la placa con su marca impresa y el conector. A la derecha, el borne donde acaba el cable y lo que hay entre los bornes. Los cables gruesos llevan tensión de red.

## part

part-belt = Correa de transmisión
part-board = Placa de control
part-board-keys = Placa de control con teclas
part-board-one-lamp = Placa de control de una luz
part-board-other = Placa de control, modelo estrecho
part-clutch-actuator = Actuador del embrague con interruptor de leva
part-contact-kit = Limpiador y grasa para contactos
part-cord = Cable de alimentación con clavija
part-dial = Selector con anillo de pasos
part-drain-hose = Manguera de desagüe
part-drain-pump = Bomba de desagüe
part-drain-pump-other = Bomba de desagüe, modelo estrecho
part-filter = Filtro de red
part-harness = Mazo de cables
part-inlet-cold = Válvula de agua fría
part-inlet-hot = Válvula de agua caliente
part-lid-lock = Bloqueo de tapa con interruptor de tapa
part-lid-lock-other = Bloqueo de tapa, modelo izquierdo
part-line-fuse = Fusible de línea
part-motor = Motor
part-motor-other = Motor, modelo estrecho
part-note-measure-first = No se admite devolución una vez abierta: mida antes de comprar
part-note-other-machine = Para otra máquina; la fijación es distinta
part-note-visit = Una visita, no una pieza. Las normas locales dicen quién puede hacerlo
part-pickup = Captador de velocidad
part-pressure-hose = Manguera de presión con abrazaderas
part-pressure-sensor = Sensor de presión
part-run-capacitor = Condensador de marcha
part-supply-electrician = Visita de un electricista autorizado (toma y red)
part-terminal-kit = Juego de terminales: pines y carcasa
part-thermistor = Termistor del agua
part-tub-bearings = Juego de rodamientos y retén de la cuba
part-tub-seal = Juego de juntas de la cuba
part-water-plumber = Visita de un fontanero autorizado (instalación de agua)

## parts

parts = Mostrador de piezas
parts-boards = para placa: { $boards }
parts-fitted = Montada
parts-intro = Números y precios inventados; ¤ vale por la moneda de cualquier país. El cliente paga las piezas que pide la reparación; lo que se monta en vano lo pierde el taller.
parts-none-found = Ninguna pieza con ese nombre o número.
parts-price = { $price } ¤
parts-rates = Mano de obra: { $labour } ¤ por hora. Por devolver una pieza sin montar se cobra el { $fee } %. Por encima de { $limit } ¤ entre piezas y mano de obra, conviene más una máquina nueva.
parts-revision = rev. { $revision }
parts-superseded = sustituida por { $part }
parts-wait = llega en { $hours } h

## paused

paused-elsewhere = El reloj está parado: otra ventana está activa
paused-no-hands = El reloj está detenido: la máquina no vería nada. Póngalo antes en marcha.

## percent

percent = { $number }{ "\u00A0" }%

## pin

pin-bulk-minus = Condensador principal −
pin-bulk-plus = Condensador principal +
pin-fuse-in = Fusible, lado red
pin-fuse-out = Fusible, lado máquina
pin-plug-earth = Clavija, tierra
pin-plug-line = Clavija, fase
pin-plug-neutral = Clavija, neutro

## pin-group

pin-group-bulk = Condensador principal de la placa
pin-group-fuse = Fusible de línea
pin-group-plug = Clavija

## practice

practice-all = Todos los ejercicios
practice-answers = { $right } de { $count } respuestas correctas
practice-back = Volver al inicio
practice-begin = Comenzar
practice-browser = Los aprendices se guardan en este navegador, solo en este ordenador.
practice-chart-confusion = Dígitos leídos en las luces
practice-chart-confusion-none = Todavía no se ha leído ningún dígito en las luces.
practice-chart-confusion-read = leído
practice-chart-confusion-shown = mostrado
practice-chart-confusion-sound = No se confundió ningún dígito.
practice-chart-confusion-worst = La confusión más frecuente: { $shown } leído como { $read } (× { $count }).
practice-chart-date = { $day }/{ $month }
practice-chart-known = { $name }: probabilidad de que domine cada habilidad ahora
practice-chart-retention = Probabilidad de que siga sabiendo cada cosa sin practicar
practice-chart-retention-axis = días desde hoy
practice-chart-retention-none = Practique algo: aquí se verá cómo se olvida.
practice-chart-rhythm = Ritmo en el gesto de entrada
practice-chart-rhythm-axis = Tiempo por paso en cada día de práctica, ms, y su dispersión
practice-chart-rhythm-none = Todavía no se ha medido ningún intento del gesto de entrada.
practice-choose = Aprendiz
practice-create = Añadir
practice-delete = Borrar este aprendiz
practice-delete-keep = Conservar
practice-delete-sure = ¿Borrar definitivamente a { $name } y todas sus respuestas?
practice-due = toca repasar
practice-export-csv = Guardar respuestas (CSV)
practice-export-png = Guardar imagen (PNG)
practice-exported = Guardado: { $place }
practice-folder = Los aprendices se guardan como archivos simples en { $place }.
practice-guest = Invitado
practice-guest-note = Las respuestas de un invitado no se guardan: se pierden al cerrar el programa. Añada un aprendiz para guardarlas.
practice-job-gone = Este trabajo ya no está aquí.
practice-known = dominio { $known } %
practice-learner-damaged = { $name }: este perfil no se puede leer
practice-learner-new = { $name }: todavía sin practicar
practice-learner-row = { $name }: { $mastered } de { $skills } habilidades dominadas, { $due } por repasar, última práctica { $day }
practice-learners = Aprendices que hay aquí
practice-mastered = dominada
practice-name = Nombre del nuevo aprendiz
practice-new = sin practicar
practice-next = Siguiente
practice-not-exported = No se ha guardado: { $detail }
practice-rates-unfitted = Estimado con parámetros de serie, que no se han ajustado a ninguna persona.
practice-tab-practice = Práctica
practice-tab-progress = Progreso
practice-target = Objetivo: { $target } % de respuestas correctas
practice-target-note = Cuanto más bajo, más difícil. El instructor puede fijarlo para un aprendiz.
practice-title = Práctica
practice-unkept = Aquí no se guardan las respuestas: se pierden al cerrar el programa.
practice-why-fades-first = Todo está dominado y no toca ningún repaso; «{ $exercise }» es lo primero que se olvidará.
practice-why-first = Todo trabajo empieza por el gesto de entrada: quien no entra en el modo de servicio no puede leer ningún código. Por eso «{ $exercise }» va primero.
practice-why-nearest = De lo que tiene disponible, «{ $exercise }» es lo más cercano a su objetivo del { $target } %: se espera cerca de un { $expected } % de aciertos.
practice-why-new = Todavía no ha practicado «{ $exercise }» y, con cerca de un { $expected } % de aciertos esperados, es lo más cercano a su objetivo del { $target } %.
practice-why-review = La habilidad «{ $exercise }» ya estaba dominada y toca repasarla: sin repaso se olvida, y ahora se espera cerca de un { $expected } % de aciertos.

## program

program-empty-and-spin = Vaciar y centrifugar
program-everyday = Diario
program-gentle = Delicado
program-hot = Caliente
program-rinse-and-spin = Enjuagar y centrifugar
program-short = Corto
program-soak = Remojo

## proof

proof-did-fit = Se montó { $part }
proof-did-look-dry = Se buscaron fugas con { $depth } cm de agua en la cuba: seco
proof-did-look-wet = Se buscaron fugas con { $depth } cm de agua en la cuba: mojado
proof-gap-no-leak-check = Todavía no: nadie ha buscado fugas desde entonces, con agua dentro o tras un lavado.
proof-gap-no-proving-run = Todavía no: desde entonces ningún programa ha llegado al final.
proof-gap-none = Sí, está probada.
proof-gap-not-cured = No: la avería sigue ahí.
proof-gap-not-recalibrated = Todavía no: desde entonces no se ha superado ninguna recalibración.

## quote

quote = Presupuesto
quote-approved = Presupuesto: { $amount } entre piezas y mano de obra ({ $minutes } min). El cliente acepta.
quote-comes-to = { $parts }: suma { $amount }, sin desplazamiento ni impuestos.
quote-declined = Presupuesto: { $amount } entre piezas y mano de obra ({ $minutes } min). El cliente no acepta: es demasiado.
quote-intro = Antes de montar una pieza, el cliente acepta lo que va a costar. Añada abajo las piezas y aquí la mano de obra de toda la visita.
quote-less = Cinco minutos menos de mano de obra
quote-minutes = Mano de obra: { $minutes } min
quote-more = Cinco minutos más de mano de obra
quote-no-part = Sin piezas
quote-part = Presupuestar

## record

record-after-end = hay más después de la última línea; borre lo que sigue a `End(…)`
record-another-text = «{ $scenario }» ha cambiado desde el intento; dé su texto anterior con --scenario
record-answer = línea { $line }: con este informe, la solución no es como dice aquí
record-backwards = va hacia atrás, de { $before } a { $found }; las acciones están en el orden en que se hicieron
record-broken = ya falló una escritura; continúe el intento desde su archivo
record-empty = el archivo está vacío; no se grabó ningún intento en él
record-ends-early = línea { $line }: el intento acaba cuando aún se está haciendo su última acción
record-exists = ya existe; elija otro nombre, o continúelo si está sin terminar
record-finished = el intento está terminado; empiece otro
record-first-visit = primera visita: { $problem }
record-foreign = esto no es un intento de Detent; elija un archivo grabado por Detent
record-in-first-visit = en la primera visita, línea { $line }: { $problem }
record-line = { $problem }; la línea se ha cambiado: recupere el archivo de una copia
record-log-backwards = una acción en el tick { $found } no puede ir después de otra en el tick { $before }
record-log-too-late = el tick { $tick } pasa del intento más largo; termine este y empiece otro
record-newer-format = el intento tiene el formato { $found } y este programa lee hasta el { $known }; use un Detent más nuevo
record-no-call-back = después de esta primera visita el cliente no vuelve a llamar
record-no-scenario = «{ $scenario }» no está allí, ni junto al intento, ni incorporado en el programa; dé el trabajo con --scenario
record-no-scenario-name = «{ $scenario }» no es el nombre del archivo de un trabajo, que acaba en .ron; dé el trabajo con --scenario
record-no-such-format = ningún Detent ha escrito el formato { $format }; recupere el archivo de una copia
record-no-such-round = ninguna ronda de un ejercicio tiene { $questions } preguntas; recupere el archivo de una copia
record-no-words = la acción no se pudo poner por escrito: { $problem }
record-not-a-hash = «{ $found }» no es una huella en cifras hexadecimales; recupere el archivo de una copia
record-not-finite = { $found } no es un número finito; recupere el archivo de una copia
record-not-text = estos bytes no son texto UTF-8; recupere el archivo de una copia
record-other-first-visit = la primera visita que lleva dentro fue a otra máquina; recupere el archivo de una copia
record-other-text = este no es el trabajo que se intentó; recupere el archivo de una copia
record-overlap = la línea { $line }, a los { $at }, empieza cuando aún se está haciendo la anterior (hasta { $busy })
record-refused = línea { $line }, a los { $at }: { $refusal }; el intento no se hizo en esta máquina
record-scenario-changed = el intento se grabó con otro texto de { $scenario }; repítalo con el trabajo como estaba
record-score = línea { $line }: lo hecho no vale la puntuación que pone aquí
record-seal = línea { $line }: la huella no es la de las líneas de arriba: el archivo se cambió después de terminar el intento; recupérelo de una copia
record-second-visit = esto ya es una segunda visita, y ningún intento guarda una tercera; elija el intento de una primera visita
record-state = línea { $line }: lo hecho no lleva al estado de la máquina que pone aquí
record-too-late = el tick { $tick } pasa del intento más largo; recupere el archivo de una copia
record-too-long = el archivo pasa de { $most } bytes, y ningún trabajo da un intento tan largo; elija otro archivo
record-truncated = el archivo acaba sin su última línea, así que se ha perdido parte del intento; recupérelo de una copia
record-unknown-action = ninguna acción ni parte de una se llama «{ $name }»; la línea se ha cambiado: recupere el archivo de una copia

## reference

reference-at-least = { $bound } como mínimo
reference-at-most = { $bound } como máximo
reference-between = de { $least } a { $most }
reference-default = { $value } si se omite
reference-goal-approved = El cliente aceptó un presupuesto
reference-goal-calibrated = Una recalibración terminó bien
reference-goal-cancelled = Se canceló un programa antes de su final
reference-goal-clock-at = El reloj de la máquina va tantas veces más deprisa; 0: parado
reference-goal-did = Se hizo esto
reference-goal-entered = Se entró en el modo de servicio
reference-goal-finished = Un programa llegó a su final
reference-goal-hands-inside = Se metieron las manos tras los paneles
reference-goal-looked = Se ve esta vista
reference-goal-noted-another = Se anotó un código, y no este
reference-goal-opened = Está abierta esta pestaña
reference-goal-ordered = Se pidió una pieza
reference-goal-read = Se midió entre estos puntos, en cualquier sentido
reference-goal-read-dead = Un multímetro en el condensador mostró que no tenía carga
reference-goal-reported = Se entregó el informe
reference-goal-rested = El control estuvo sin corriente hasta que olvidó
reference-goal-shown = Las luces mostraron este código guardado
reference-goal-started = Se puso en marcha un programa
reference-goal-turned = Se giró el selector en este sentido
reference-less-than = menos de { $bound }
reference-letter = letra
reference-money = unidades monetarias
reference-more-than = más de { $bound }
reference-number = número
reference-optional = { $some } o None
reference-points = puntos
reference-text = texto
reference-true-or-false = true o false
reference-whole-number = número entero

## refusal

refusal-already-so = Ya está hecho.
refusal-cabinet-closed = Quite antes los paneles del mueble.
refusal-does-not-fit = La pieza { $part } no sirve en esta máquina.
refusal-finished = El trabajo está cerrado: el informe ya se ha entregado.
refusal-lid-closed = Abra primero la tapa.
refusal-lid-locked = La tapa está bloqueada.
refusal-needs-part = Esto no se corrige a mano: hace falta una pieza o un profesional autorizado.
refusal-no-button = Aquí no hay botón { $button }.
refusal-no-cause = La causa «{ $cause }» no está en el catálogo. Elija una de la lista.
refusal-no-connector = Aquí no hay ese conector.
refusal-no-hints = Este trabajo no da pistas.
refusal-no-look = No hay ninguna revisión con el número { $look }.
refusal-no-part = El mostrador no tiene la pieza { $part }.
refusal-no-reading = En el cuaderno no hay ninguna lectura { $reading }.
refusal-not-in-hand = Pida antes la pieza { $part }.
refusal-not-noted = El código { $code } no está en el cuaderno.
refusal-nothing-to-hold = No hay ninguna lectura que retener. Ponga antes las puntas.
refusal-plug-in-outlet = Desenchufe antes la máquina: la clavija está en la toma.

## report

report-advice = Consejo para el cliente
report-cause = Qué fallaba
report-choose = elija…
report-done = El informe ya se ha entregado.
report-given-up = Renuncio al trabajo
report-hand-in = Cerrar el trabajo
report-no-cause = Ninguna causa indicada todavía
report-no-part = Ninguna pieza
report-none-found = Ninguna causa con ese nombre.
report-not-ready = Elija antes una causa y una pieza.
report-nothing-wrong = No fallaba nada
report-part = Pieza necesaria
report-proof = Lecturas y revisiones que lo demuestran
report-proof-intro = Marque las que descartan a los demás sospechosos. Una revisión cuenta aunque no la marque.
report-see-score = Ver la nota

## reset

reset-hold = Mantenga pulsado { $button } durante { $seconds } s.
reset-hold-not = En esta placa, mantener pulsado un botón no hace nada.
reset-lid = Abra y cierre la tapa { $times } veces en { $seconds } s.
reset-lid-moves = Mueva la tapa { $times } veces, arriba o abajo, en { $seconds } s.
reset-lid-not = En esta placa, mover la tapa no hace nada.
reset-power = Desenchufe la máquina y espere un minuto antes de volver a enchufarla.
reset-power-not = En esta placa, desenchufar la máquina no hace nada: guarda la parada por fallo aunque no tenga corriente.

## review

review-best = La mejor manera
review-cost = Coste hasta aquí
review-intro = Cada barra: la probabilidad de cada causa después de ese paso. En verde: la real. El coste incluye mano de obra, piezas y la espera de piezas.
review-none = No se puede mostrar la comparación: falta la tabla de fallos de esta placa.
review-others = todas las demás
review-sound = mejor: { $step }
review-stop = { $minutes } min · { $money }
review-title = Su manera de hacerlo y la mejor
review-working = Calculando su planteamiento y el mejor…
review-yours = Su manera de hacerlo

## routine

routine-ages = Ciclos desde cada código
routine-clear = Borrar códigos (mantenga Inicio)
routine-lamp-test = Prueba de luces
routine-live-level = Mostrar nivel, cm
routine-live-speed = Mostrar velocidad, en decenas de r/min
routine-live-temperature = Mostrar temperatura del agua, °C
routine-recalibrate = Recalibrar (de 2 a 3 minutos)
routine-recall = Mostrar códigos guardados
routine-test-clutch = Actuador del embrague
routine-test-cold = Válvula de agua fría
routine-test-hot = Válvula de agua caliente
routine-test-lock = Bloqueo de tapa
routine-test-motor-a = Motor, sentido A
routine-test-motor-b = Motor, sentido B
routine-test-pump = Bomba de desagüe
routine-test-spin = Centrifugado lento

## rule

rule-hold-too-long = se mantuvo demasiado tiempo
rule-hold-too-short = se soltó demasiado pronto
rule-late = la acción llegó tarde
rule-out-of-order = tocaba otra acción
rule-press-too-long = la pulsación fue demasiado larga
rule-stood-too-short = el selector no llevaba bastante tiempo en su posición sin corriente
rule-too-few-detents = faltaron pasos
rule-too-many-detents = sobraron pasos
rule-too-soon = la entrada llegó demasiado pronto
rule-window-over = se acabó el tiempo
rule-wrong-way = el selector giró en sentido contrario

## run-gap

run-gap-full-speed = no centrifugó a la velocidad máxima
run-gap-hot-water = no tomó agua caliente
run-gap-laundry = la cesta estaba vacía
run-gap-water = no tomó agua

## safe

safe-fact-basket-stands = La cesta está parada.
safe-fact-basket-turns = La cesta sigue girando.
safe-fact-bleeder-open = Se sabe que la resistencia de descarga del condensador principal está abierta.
safe-fact-discharged = Después se descargó el condensador con una resistencia.
safe-fact-dry = La cuba está vacía.
safe-fact-lid-closed = La tapa está cerrada.
safe-fact-lid-open = La tapa está abierta.
safe-fact-live-tests = En este trabajo se permiten las pruebas con tensión, y usted está formado para hacerlas.
safe-fact-lock-failed = Se hizo centrifugar la cesta y entretanto falló el bloqueo: nada sujeta la tapa.
safe-fact-measured = Después se midió el condensador: { $shown } CC.
safe-fact-meter-bad = Después se comprobó el multímetro con la fuente de prueba: no indica lo que debe.
safe-fact-meter-good = Después se comprobó el multímetro con la fuente de prueba: correcto.
safe-fact-no-live-tests = En este trabajo no se permiten las pruebas con tensión.
safe-fact-panels-off = Los paneles están quitados.
safe-fact-plugged = La máquina está enchufada.
safe-fact-taps-open = Los grifos están abiertos.
safe-fact-taps-shut = Los dos grifos están cerrados.
safe-fact-unplugged = Desenchufada hace { $seconds } s.
safe-fact-water = { $depth } cm de agua en la cuba, a { $celsius } °C ({ $fahrenheit } °F).
safe-hazard-belt-turning = correa y poleas atrapan mangas y dedos, y la cesta sigue girando después de desenchufar. Espere a que todo se pare antes de meter las manos.
safe-hazard-bucket-on-top = un golpe y el agua cae sobre la parte eléctrica abierta. Nada de agua encima de una máquina abierta: vacíe el cubo y déjelo en el suelo.
safe-hazard-capacitor-charged = aún guarda una carga que puede dar una descarga. Descárguelo con una resistencia y vuelva a medir, comprobando antes y después el multímetro, antes de meter las manos.
safe-hazard-capacitor-unmeasured = nadie ha medido la carga almacenada, y lo que no se ha comprobado cuenta como cargado. Compruebe el multímetro, mida y vuelva a comprobarlo antes de meter las manos.
safe-hazard-floor-wet = quien pisa agua resbala, y da a la corriente un camino por su cuerpo. Averigüe de dónde viene y séquela antes de seguir.
safe-hazard-glasses-cracked = un arco en un circuito con tensión lanza metal caliente, y una lente rajada no lo para. Póngase unas gafas enteras o no mida con tensión.
safe-hazard-gloves-torn = un guante rasgado ya no aísla. Revise los guantes aislantes antes de cada uso y deseche los rotos.
safe-hazard-hose-loose = en cuanto se abran los grifos, el agua saltará sobre la máquina abierta. Enrosque antes la manguera, con una junta en buen estado.
safe-hazard-lid-up = la cesta que centrifuga queda al alcance y puede romper un brazo. Pare la máquina y no la deje nunca centrifugar con la tapa abierta.
safe-hazard-meter-lead-bare = el cobre al aire lleva la tensión que usted mide. Revise las puntas antes de cada medida y cambie las gastadas.
safe-hazard-meter-lead-in-amps = en el borne A el multímetro es casi un cortocircuito: con tensión se funde su fusible o revienta en la mano. Pase antes la punta al borne V.
safe-hazard-meter-ohms = en Ω y en un circuito con tensión, el multímetro funde su fusible y puede hacerle daño. Ponga el selector en voltios antes de tocar con las puntas.
safe-hazard-plug-in = las partes con tensión pueden matar y la máquina puede arrancar sola. Desenchúfela y tenga la clavija a la vista y bajo su control.
safe-hazard-screwdriver-in-belt = la polea lo lanza al girar o rompe la correa. Pare y desenchufe la máquina, espere a que se detenga y sáquelo. Junto a una transmisión en marcha no se deja nada suelto.
safe-hazard-screwdriver-on-board = el metal entre bornes con tensión los pone en cortocircuito: el arco quema manos y ojos. Desenchufe la máquina, retire la herramienta y cuente las herramientas antes de dar tensión.
safe-hazard-taps-open = la manguera tiene presión y suelta agua en cuanto se afloja. Cierre antes los dos grifos y quite la presión.
safe-object-belt = Correa y poleas
safe-object-bucket = Cubo
safe-object-capacitor = Condensador
safe-object-floor = Suelo
safe-object-hose = Manguera de agua fría
safe-object-lid = Tapa
safe-object-meter = Multímetro y puntas
safe-object-plug = Clavija
safe-object-protective-gear = Guantes y gafas
safe-object-screwdriver = Destornillador
safe-object-taps = { component-taps }
safe-outcome-discharged-live = La resistencia se quema: la red mantiene cargado el condensador
safe-outcome-discharged-unmeasured = Sin probar: se descargó, pero no se ha medido desde entonces
safe-outcome-flood = Se inunda el suelo
safe-outcome-hand-in-drive = La cesta en marcha atrapa la mano
safe-outcome-lid-spinning = La cesta queda al alcance de la mano mientras gira
safe-outcome-live-not-allowed = Una prueba con tensión que este trabajo no permite
safe-outcome-meter-not-proved = Sin probar: el multímetro no se comprobó antes y después
safe-outcome-none = Nada: es seguro
safe-outcome-not-proved-dead = Sin probar: nadie ha medido que ya no hay carga
safe-outcome-ohms-on-live = Se funde el fusible del multímetro
safe-outcome-opened-live = La tensión de red queda al alcance de la mano
safe-outcome-opened-under-pressure = Sale agua a presión
safe-outcome-scald = Las manos escaldadas
safe-outcome-shock = Una descarga eléctrica de la red
safe-outcome-touched-charge = Una descarga eléctrica del condensador
safe-planned-clean-screen = Va a quitar de la máquina la manguera de agua fría y a limpiar su filtro.
safe-planned-fill-tub = Va a abrir los grifos y a dejar que se llene la cuba con los paneles quitados. En este trabajo se permiten las pruebas con tensión: usted se aparta y solo mira.
safe-planned-measure-charge = Va a medir V DC en el condensador para comprobar que no queda carga.
safe-planned-measure-mains = Va a medir V AC donde el cable de red llega a la placa. En este trabajo se permiten las pruebas con tensión, y usted está formado para hacerlas.
safe-planned-pull-connector = Va a quitar de la placa el conector de la bomba de desagüe, con las manos desnudas.
safe-planned-watch-drive = La máquina centrifuga con los paneles quitados. En este trabajo se permiten las pruebas con tensión: usted se aparta y observa la transmisión.
safe-state-belt-still = La correa y las poleas están paradas.
safe-state-belt-turning = La correa y las poleas giran.
safe-state-bucket-on-floor = Hay un cubo vacío en el suelo, bajo la manguera.
safe-state-bucket-on-top = Hay un cubo lleno encima de la máquina abierta.
safe-state-capacitor-charged = La tarjeta del condensador dice: medido ahora mismo, { $shown } CC.
safe-state-capacitor-covered = Una tapa aislante cubre el condensador.
safe-state-capacitor-discharged = La tarjeta del condensador dice: medido ahora mismo, { $shown } CC.
safe-state-capacitor-unmeasured = La tarjeta del condensador está en blanco: no se ha medido.
safe-state-floor-dry = El suelo está seco.
safe-state-floor-wet = Hay agua en el suelo delante de la máquina.
safe-state-gear-whole = Los guantes aislantes y las gafas están enteros.
safe-state-glasses-cracked = Los guantes aislantes están enteros. Una lente de las gafas está rajada.
safe-state-gloves-torn = Uno de los guantes aislantes está rasgado. Las gafas están enteras.
safe-state-hose-connected = La manguera de agua fría está enroscada a la máquina.
safe-state-hose-loose = La manguera de agua fría cuelga junto a la máquina, con el extremo abierto.
safe-state-lid-down = La tapa está cerrada.
safe-state-lid-up = La tapa está abierta.
safe-state-meter-lead-bare = La punta roja está en el borne V Ω. Su aislamiento está gastado y se ve el cobre.
safe-state-meter-lead-in-amps = La punta roja está en el borne A. Las dos puntas están enteras.
safe-state-meter-ohms = El multímetro está en Ω. La punta roja está en el borne V Ω y las dos puntas están enteras.
safe-state-meter-put-aside = El multímetro está apagado y sus puntas, recogidas.
safe-state-meter-volts-ac = El multímetro está en V~. La punta roja está en el borne V Ω y las dos puntas están enteras.
safe-state-meter-volts-dc = El multímetro está en V DC. La punta roja está en el borne V Ω y las dos puntas están enteras.
safe-state-plug-in = La clavija está en el enchufe.
safe-state-plug-out = La clavija cuelga de su gancho junto al enchufe.
safe-state-screwdriver-hung = El destornillador cuelga en su sitio.
safe-state-screwdriver-in-belt = Un destornillador está metido entre la correa y la polea.
safe-state-screwdriver-on-board = Hay un destornillador sobre la placa de control.
safe-state-taps-open = Las palancas siguen las tuberías: los dos grifos están abiertos.
safe-state-taps-shut = Las palancas cruzan las tuberías: los dos grifos están cerrados.
safe-step-bail-out = achicar la cuba
safe-step-clean-pump = limpiar a mano la bomba de desagüe
safe-step-clean-screen = quitar la manguera de agua fría y limpiar su filtro
safe-step-discharge = descargar el condensador con una resistencia
safe-step-fit-valve = montar una electroválvula de agua fría nueva
safe-step-measure-charge = medir V DC en el condensador
safe-step-measure-mains = medir V AC entre fase y neutro donde el cable de red llega a la placa
safe-step-measure-ohms = medir Ω en el condensador
safe-step-open-lid = levantar la tapa
safe-step-open-panels = quitar los paneles
safe-step-pull-connector = quitar el conector de la bomba de desagüe
safe-step-reach-into-basket = meter la mano en la cesta
safe-step-shut-taps = cerrar los dos grifos
safe-step-test-meter = comprobar el multímetro con la fuente de prueba
safe-step-unplug = desenchufar la máquina
safe-step-wait-a-minute = esperar un minuto

## score

score-at = { $minutes } min después de llegar
score-failed = Trabajo suspendido, por mucho que se haya ganado. { $why }
score-goal = Lo que enseña este trabajo: { $goal }
score-losses = Puntos perdidos
score-none-lost = No se ha perdido ningún punto.
score-not-passed = Aún no aprobado: hace falta un { $percent } %.
score-not-safe = No aprobado: no se ha trabajado con seguridad. Hace falta un { $percent } % de los puntos de seguridad, por mucho que se haya ganado.
score-not-yet = La nota llega con el informe. Hasta entonces, así han ido sus intentos de entrar en modo de servicio.
score-passed = Aprobado: hacía falta un { $percent } %.
score-total = { $kept } de { $of } puntos

## search

search = Buscar:

## seat

seat-back = Volver a la clase
seat-closed = La clase está cerrada.
seat-content-differs = La clase se hizo con otro contenido que el de este programa. Puede que lo que haga aquí no se pueda comprobar.
seat-drill = Ejercicio: { $skill }
seat-drill-missing = Este ejercicio no está en este programa. Avise al instructor.
seat-drill-not-begun = Sin empezar. { $questions ->
    [one] { $questions } pregunta
   *[other] { $questions } preguntas
}.
seat-drill-verified-right = Comprobado: { $right } de { $questions } correctas.
seat-examination-only = Es un examen: un solo intento por trabajo, sin pistas y sin nota hasta que se cierre. Lo demás espera hasta entonces.
seat-file-in-folder = Entregue el archivo { $file }. Está en { $place }.
seat-job-again = Otra vez
seat-job-begin = Empezar
seat-job-begun = Empezado.
seat-job-begun-elsewhere = Empezado en otro equipo.
seat-job-differs = Entregado, pero al repetirlo sale otra cosa: se dañó o se modificó. Avise al instructor.
seat-job-drawing = Se está preparando su máquina.
seat-job-go-on = Seguir
seat-job-handed-in = Entregado, sin comprobar todavía.
seat-job-look = Verlo
seat-job-missing = Este trabajo no está en este programa. Avise al instructor.
seat-job-not-assigned = Entregado, pero en una máquina que no era la suya. Avise al instructor.
seat-job-not-begun = Sin empezar.
seat-job-unverified-content = Entregado. El servidor no puede comprobarlo porque se hizo con otro contenido.
seat-job-unverified-long = Entregado. El servidor no puede comprobarlo porque tarda demasiado.
seat-job-unverified-program = Entregado. El servidor no puede comprobarlo porque se hizo con otra versión del programa.
seat-job-verified = Entregado y comprobado.
seat-job-verified-points = Comprobado: { $points } de 100 puntos.
seat-leave = Dejar este puesto
seat-leave-not = Quedarse
seat-leave-now = Dejarlo
seat-leave-sure = Lo que ha hecho se queda en la clase. Para volver a este puesto necesita una palabra del instructor.
seat-leave-unsent = Aún no se ha enviado todo a la clase. Se queda en este equipo y se envía cuando vuelva a este puesto, para lo que necesita una palabra del instructor.
seat-not-kept = Este puesto no se puede guardar aquí. Si reinicia, necesitará una palabra del instructor para volver.
seat-notice = Del instructor: { $text }
seat-notice-read = Entendido
seat-open = Abierta.
seat-open-left = Abierta, quedan { $time }.
seat-opens-in = Se abre dentro de { $time }.
seat-paused = El instructor ha parado la clase.
seat-refused = El servidor rechaza lo que ha hecho. Entréguelo como archivo.
seat-rejoin = Entrar en la clase
seat-save = Guardar una copia de { $file }
seat-sealed = En un examen no se ven ni la nota ni el registro de los intentos hasta que se cierra la clase.
seat-sealed-handed-in = Entregado. Verá la nota cuando se cierre la clase.
seat-sealed-title = Trabajo { $number }
seat-sent = Todo está enviado a la clase.
seat-server-full = El servidor no puede recibir nada ahora. Todo queda guardado aquí y se envía más tarde.
seat-stopped = La clase está en pausa
seat-stopped-text = El instructor ha parado la clase un momento. La máquina queda quieta hasta que se reanude.
seat-time-hours = { $hours } h { $minutes } min
seat-time-minutes = { $minutes } min
seat-time-short = menos de un minuto
seat-unreachable = No se llega al servidor. Todo queda guardado aquí y se envía más tarde.
seat-waiting = { $actions ->
    [one] Falta una acción
   *[other] Faltan { $actions } acciones
} por enviar a la clase.
seat-you = Está aquí como { $name }.

## settings

settings-characters = Teclas que escriben una letra, una cifra o un signo
settings-characters-alt = Solo con Alt
settings-characters-off = Desactivadas
settings-characters-on = Actúan solas
settings-guest = Los ajustes de un invitado duran hasta que termina el programa.
settings-kept = Se guardan con las respuestas del aprendiz.
settings-keys-note = Pulse una tecla de la lista para cambiarla. A todas las acciones se llega también con Tab e Intro.
settings-left-handed = Para zurdos: la orden de trabajo y las pestañas cambian de lado
settings-left-note = Así la mano del ratón tapa menos de lo que se lee.
settings-motion = Movimiento de la vista y de las listas
settings-motion-full = Suave
settings-motion-reduced = Ninguno
settings-motion-system = Como en el sistema
settings-no-key = ninguna
settings-press = Pulse la tecla nueva para «{ $action }». Retroceso: ninguna. Esc: dejarla como está.
settings-reset = Volver a las teclas habituales
settings-sound = Sonido de la máquina
settings-sound-full = Normal
settings-sound-low = Bajo
settings-sound-none = Este programa se compiló sin sonido. Lo que se oiría siempre aparece por escrito.
settings-sound-note = Lo que se oye también aparece siempre por escrito.
settings-sound-off = Apagado
settings-tab-display = Pantalla
settings-tab-keys = Teclas
settings-taken = { $key } ya se usa para «{ $action }». Asígnele antes otra tecla.
settings-text-fits = Esta ventana es demasiado estrecha: el texto es tan grande como cabe.
settings-text-note = Ctrl con más y menos lo cambia hasta que termine el programa.
settings-text-size = Tamaño del texto
settings-title = Ajustes

## sheet

sheet-codes = Códigos
sheet-codes-intro = Un código dice qué vio el control, no qué pieza está mal. Sospechosos: primero los que más lo causan en esta placa, el control al final. Mida antes de comprar.
sheet-entry = Entrada
sheet-entry-again = Si el intento falla: desenchufe, espere a que el control se apague y empiece de nuevo.
sheet-entry-before = Para entrar en modo de servicio: sin programa en marcha y, sin pausas:
sheet-entry-before-power = Para entrar en modo de servicio: desenchufe y espere a que el control se apague; luego:
sheet-entry-click = Un clic leve de relé al enchufar: el control tiene alimentación. A oscuras y sin clic: fusible, cable, filtro o la propia fuente del control.
sheet-entry-from = Primero ponga el selector en { $position }.
sheet-entry-gap = De una acción a la siguiente, al menos { $seconds } s.
sheet-entry-hold = En una parada por fallo (el control ha visto un fallo, se ha parado y espera a que lo reinicien) el gesto no hace nada. Salga primero de ella. { $way }
sheet-entry-or = O en este orden: { $steps }
sheet-entry-rest = Antes de otro intento no toque la consola ni la tapa durante { $seconds } s.
sheet-entry-skip = Un giro rápido puede saltarse un paso.
sheet-entry-standing = Sin corriente, en la posición { $position } al menos { $seconds } s antes de enchufar.
sheet-entry-together = { $one } y { $other } a la vez: el segundo, como mucho { $seconds } s después del primero.
sheet-entry-window = Todo el gesto en { $seconds } s.
sheet-invented = Placa inventada, solo para formación: prevalecen las normas locales y el trabajo de profesionales autorizados.
sheet-lamps = Luces
sheet-lamps-blinking = Una luz rodeada de rayos parpadea.
sheet-lamps-example = Este ejemplo se lee { $number }.
sheet-lamps-lock = La luz de bloqueo parpadea con cualquier parada por fallo. Eso no significa que el bloqueo esté mal.
sheet-lamps-no-lock = Esta placa no tiene luz de bloqueo: pruebe la tapa para saber si está bloqueada.
sheet-lamps-pages = En la lista de códigos, cada pulsación de { $button } pasa de página, con el más reciente primero.
sheet-menu = Menú
sheet-menu-clear = Para borrar los códigos, mantenga pulsado Inicio durante { $seconds } s. Después pulse Parada: hasta entonces queda una luz encendida e Inicio no hace nada.
sheet-menu-intro = En modo de servicio: elija una posición y pulse Inicio.
sheet-none-found = Ningún código dice eso.
sheet-pins = Cables
sheet-pins-intro = Pin, marca impresa y adónde va el cable.
sheet-programs = Programas fuera del modo de servicio
sheet-reset = Salir de una parada por fallo
sheet-sights = Qué significan las luces
sheet-stored-codes = El control guarda los { $codes } códigos más recientes.
sheet-tens = decenas
sheet-units = unidades
sheet-wires-intro = A la izquierda, el pin de la placa con su marca impresa; a la derecha, el borne donde termina el cable. Los cables de red son marrones. Un clic pone ahí la siguiente punta.

## shown

shown-not-yet = Enséñemelo primero: desde que trabajó en ella no ha terminado ningún programa.
shown-stopped = No, se ha vuelto a parar.
shown-washed = Sí, así funcionaba antes. Gracias.

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
sight-letters = las letras «{ $letters }»
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

signs-flashes = Una sola luz da el número en destellos: cuente los largos para las decenas y luego los cortos para las unidades. Tras una pausa empieza de nuevo.
signs-in-turn = Las luces muestran una cifra cada vez: primero las decenas, un breve apagado y después las unidades. Tras una pausa más larga vuelve a empezar.
signs-pictures = Cada número tiene su propio dibujo; búsquelo en la lista.
signs-segments = Dos dígitos muestran el número.
signs-weights = Las luces muestran dos dígitos a la vez. En cada grupo sume los números que hay bajo las luces encendidas.

## skill

skill-code-look-up = Buscar códigos
skill-entry-timing = Gesto de entrada
skill-lamp-reading = Leer las luces
skill-metering = Usar el multímetro
skill-next-test = Elegir la siguiente prueba
skill-part-choice = Elegir la pieza
skill-proof = Demostrar el fallo
skill-safe-work = Trabajar con seguridad

## sound

sound-agitator-swish = el agitador se mueve
sound-ask-first = decir cuánto costará y preguntar antes de seguir
sound-bail-out = vaciar antes la cuba
sound-buy-needed = comprar solo lo que piden las lecturas
sound-cabinet-shake = el mueble tiembla
sound-check-for-leaks = mirar debajo de la máquina cuando ya ha vuelto a tener agua
sound-clutch-actuator-tick = el actuador del embrague hace tic
sound-dead-test = encontrarlo con la máquina desenchufada
sound-discharge = descargar el condensador y comprobar que no queda tensión
sound-empty-basket = sacar la ropa y recalibrar con la cesta vacía
sound-floor-wet = { $litres } L en el suelo
sound-hands-first = limpiar, ajustar o reconectar primero; comprar solo si no basta
sound-let-cool = vaciar el agua caliente o dejar que se enfríe
sound-lock-held = bloqueo de tapa echado
sound-measure-dead = comprobar que la carga ha desaparecido antes de meter las manos
sound-measure-first = medir antes de comprar
sound-motor-free = el motor gira, la cesta no
sound-motor-hum = el motor zumba sin girar
sound-none = silencio
sound-note-codes = anotar cada código mientras se ve
sound-ohms-dead = desenchufar y descargar antes de medir Ω
sound-part-number = nombrar la pieza por el número que corresponde a esta placa
sound-prove-meter = comprobar el multímetro en la fuente conocida antes y después
sound-pump-buzz = la bomba vibra, atascada
sound-pump-hum = la bomba zumba
sound-read-twice = leer las luces dos veces antes de anotar el código
sound-recalibrate = recalibrar después de la reparación
sound-relay-click = un relé hace clic
sound-report = informar de lo que demuestran las lecturas y las revisiones
sound-rest = dejarla desenchufada el minuto entero
sound-run = hacer un programa hasta el final y observar
sound-second-visit = quedarse hasta que esté reparada, o decir claramente que no lo está; si no, alguien tendrá que volver
sound-shorter-way = tomar la medida que más información da por su tiempo
sound-show-customer = pedir al cliente que la vea funcionar antes del informe
sound-shut-taps = cerrar los grifos antes de soltar una manguera
sound-spin-whirr = la cesta centrifuga
sound-steady-hand = un ritmo constante dentro de los tiempos de la hoja
sound-unaided = deducir antes el paso siguiente con la hoja y las lecturas; la pista es para cuando se atasca
sound-unplug = desenchufar primero
sound-use-clips = poner el medidor con las pinzas y apartar las manos
sound-valve-buzz = la válvula vibra, sin agua
sound-wait-spin = esperar a que la cesta se pare
sound-water-rush = entra agua

## stage

stage-cam = Una vuelta del actuador del embrague
stage-coast = Espera a que la cesta se pare
stage-cold = Entra agua fría
stage-empty = Vaciado de la cuba
stage-hot = Entra agua caliente
stage-lock = Bloqueo de la tapa
stage-motor-a = Motor, sentido A
stage-motor-b = Motor, sentido B
stage-pump = Desagüe
stage-spin = Un centrifugado corto
stage-unlock = Liberación de la tapa
stage-zero = Ajuste del cero del sensor de presión

## start

start-about = Todo aquí es inventado: máquinas, placas, códigos, piezas, precios y clientes. Solo para formación: prevalecen las normas locales y el trabajo de profesionales autorizados.
start-after = Mejor después de: { $titles }.
start-begin = Empezar el trabajo
start-everything = Todos los trabajos, práctica y examen
start-examination = Examen
start-first = Empezar
start-first-note = Un primer trabajo con guía: unos quince minutos. Puede dejarlo y retomarlo en cualquier paso.
start-guided = Empezar: un primer trabajo con guía
start-minutes = Unos { $minutes } minutos.
start-name = Su nombre
start-name-note = Se guarda en este equipo, con lo que practique. Déjelo vacío para trabajar como invitado.
start-no-variant = No se pudo comprobar ninguna variante de este trabajo. Pruebe con otra semilla.
start-opening = Preparando la máquina…
start-passed = superado
start-practice = Práctica
start-seed = Semilla
start-seed-hint = misma semilla, misma máquina
start-settings = Ajustes (F1)
start-tried = intentado
start-variant = Una variante
start-variant-note = Otra máquina con su propio fallo, comprobada y más o menos igual de difícil. Se guarda entre los intentos como cualquier otro trabajo.
start-who = Usuario: { $name }
start-workshop = Taller

## step

step-hold = Mantenga pulsado { $button } de { $from } a { $to } s
step-lid-down = Cierre la tapa
step-lid-up = Abra la tapa
step-pause = No toque nada durante al menos { $seconds } s
step-power-up = Enchufe
step-power-up-holding = Mantenga pulsado { $button } y enchufe
step-press = Pulse { $button }
step-press-times = Pulse { $button } { $times } veces
step-push = Pulse { $button } y no lo suelte
step-release = Suelte { $button }
step-release-between = Suelte { $button } al cabo de { $from } a { $to } s
step-together = Pulse { $one } y { $other } a la vez, manténgalos de { $from } a { $to } s y suéltelos
step-turn-left = Gire { $detents } pasos a la izquierda
step-turn-right = Gire { $detents } pasos a la derecha
step-within = { $step } (en { $seconds } s)

## stopped

stopped = { $why } El reloj está detenido.
stopped-calibration-over = La recalibración ha terminado.
stopped-dark = El panel se ha apagado.
stopped-floor-wet = Hay agua en el suelo.
stopped-held = El control se ha parado por un fallo.
stopped-nothing-came = Han pasado dos horas y nada ha terminado ni se ha parado.
stopped-outlet-tripped = Ha saltado el diferencial de la toma.
stopped-program-finished = El programa ha terminado.
stopped-service-left = El control ha salido por sí solo del modo de servicio.

## tab

tab-film = Repaso
tab-machine = Máquina
tab-meter = Medir
tab-parts = Piezas
tab-report = Informe
tab-score = Nota
tab-sheet = Hoja
tab-ticket = Orden

## telltale

telltale-belt = correa
telltale-board = placa, electrónica, tarjeta
telltale-clutch-actuator = embrague, actuador
telltale-cord = cable
telltale-dial = codificador, contactos del mando
telltale-drain-hose = manguera, tubo de desagüe
telltale-drain-pump = bomba
telltale-filter = filtro
telltale-floor = patas, nivelar, desnivelada
telltale-harness = mazo, cableado, conector, cables
telltale-inlet-cold = válvula, electroválvula
telltale-inlet-hoses = mangueras, manguera
telltale-inlet-hot = válvula, electroválvula
telltale-laundry = desequilibrada, sobrecargada, apelotonada
telltale-lid-lock = bloqueo, cerradura, pestillo
telltale-line-fuse = fusible
telltale-motor = motor, bobinado
telltale-pickup = captador, tacómetro
telltale-pressure-hose = manguera de presión, tubo de presión
telltale-pressure-sensor = presostato, sensor de presión, sensor de nivel
telltale-run-capacitor = condensador
telltale-supply = enchufe, toma
telltale-taps = grifo, grifos, filtro
telltale-thermistor = termistor, sonda, sensor de temperatura
telltale-tub = rodamiento, rodamientos, retén

## ticket

ticket-complaint = «{ $complaint }»
ticket-hold = En una parada por fallo el control no hace nada más. { $way }
ticket-hours = { $hours } h
ticket-labour = Mano de obra
ticket-limit = Límite de reparación
ticket-live = Medir con tensión
ticket-live-no = no permitido
ticket-live-yes = permitido
ticket-mains = Red
ticket-minutes-of = { $minutes } de { $par } min
ticket-money = Total hasta ahora
ticket-money-of = { $spent } ¤ de { $budget } ¤
ticket-protect = Tras los paneles: gafas, guantes anticorte para los bordes de chapa, sin anillos ni reloj.
ticket-waited = Espera de piezas
ticket-work = Tiempo de trabajo

## top

top-keys = F1 ajustes
top-pause = Parar el reloj

## tried

tried-asked-neighbor = Pregunté a mi vecino, que tampoco lo sabía.
tried-nothing = Nada. No quería romper nada.
tried-pressed-again = Volví a pulsar los botones y no sirvió de nada.
tried-waited = Esperé un rato, por si acaso.

## tries

tries = Intentos de entrada al modo de servicio
tries-intro = El tiempo corre hacia la derecha, en segundos. Sombreado: la ventana entera. Barras: la ventana de cada acción. Bandera: la regla incumplida.

## trouble

trouble-changed = { $detail } se hizo con otra versión de su trabajo, así que aquí no se puede continuar. Guarde una copia y ábrala con el Detent que lo hizo.
trouble-damaged = Este intento está dañado ({ $detail }). Guarde una copia si la necesita, o bórrelo.
trouble-differs = Al repetirlo, este intento no termina como se grabó: lo hizo otra versión de Detent o alguien lo cambió ({ $detail }).
trouble-elsewhere = El banco está abierto en otra pestaña y los intentos se guardan allí. Cierre esta.
trouble-foreign = { $detail } no es un intento de Detent. Elija un archivo que Detent haya guardado.
trouble-full = El almacenamiento está lleno o falla: este intento no se guarda. Guarde una copia antes de cerrar y borre los intentos que ya no necesite. ({ $detail })
trouble-gone = No se encuentra { $detail }.
trouble-newer = { $detail } lo hizo un Detent más reciente. Recargue esta página o instale la versión nueva para abrirlo; no se pierde nada.
trouble-no-name = El intento no se está guardando porque todos los nombres posibles están cogidos: { $detail }. Borre los intentos que ya no necesite.
trouble-no-scenario = El trabajo de este intento no está aquí: { $detail }. Abra la biblioteca de la que procede.
trouble-other = El intento no se guarda: { $detail }
trouble-refused = El navegador no permite guardar intentos, como ocurre en una ventana privada: guarde una copia antes de cerrar. ({ $detail })

## try

try-entered = Dentro del modo de servicio
try-in-hold = El control estaba en parada por fallo, y así no admite ningún gesto. Salga primero de la parada. { $way }
try-open = En curso

## tutorial

tutorial-back = Volver al taller
tutorial-change = Cambio en { $file }
tutorial-copy = Copiar
tutorial-file = El archivo { $file }
tutorial-label = «{ $label }»

## variant

variant-chance-of-passing = Aprendices simulados que aprueban, %
variant-difficulty = mejor plan { $cost } ¤, las personas del guion conservan el { $share } de los puntos, aprueba el { $chance } de los aprendices simulados
variant-drawn = { $drawn } borradores, { $passed } demostrados. Rechazados:
variant-expert-minutes = Trabajo del experto, min
variant-goal = Averigüe qué falla, demuéstrelo, arréglelo y demuestre también que está arreglado.
variant-goal-doubles = Puede fallar más de una cosa: no se quede en la primera que encuentre.
variant-goal-entry-drill = Entre en modo de servicio con esta consola y haga después el trabajo.
variant-goal-exam = El trabajo completo, sin una sola pista.
variant-goal-intermittents = Un fallo no tiene por qué estar cuando usted mira: averigüe cuándo está.
variant-goal-look-alikes = Varias causas se parecen: busque la prueba que las distingue.
variant-goal-nothing-found = No todas las máquinas necesitan una pieza: demuestre qué necesita la suya.
variant-goal-reading-drill = Lea todos los códigos guardados y distinga los viejos de los nuevos.
variant-goal-single-fault = Una máquina, una causa: demuéstrela antes de comprar.
variant-mean-share = Parte media de los puntos del experto, de quien adivina y de quien cambia la placa, %
variant-planned-cost = Coste esperado del mejor plan
variant-refused-dial-slipped = el selector gastado falló antes del lavado del cliente, que entonces no dice nada
variant-refused-expert-fails = el experto no aprueba
variant-refused-expert-stuck = el experto no puede seguir
variant-refused-expert-too-slow = el experto necesita más tiempo del que puede durar un trabajo
variant-refused-never-shows = nada de lo permitido deja ver el fallo
variant-refused-no-second-fault = ningún segundo fallo va con el primero
variant-refused-one-hides-the-other = de dos fallos solo se muestra uno
variant-refused-plan-too-cheap = el mejor plan cuesta mucho menos que el del original
variant-refused-plan-too-dear = el mejor plan cuesta mucho más que el del original
variant-refused-rivals-alike = nada de lo permitido distingue el fallo de un rival probable
variant-refused-same-job = la misma máquina y el mismo fallo que el original
variant-refused-too-easy = la gente lo hace mucho mejor que en el original
variant-refused-too-hard = la gente lo hace mucho peor que en el original
variant-spread = { $what }: de { $least } a { $greatest }, mediana { $median }; original { $own }, permitido { $band }
variant-title = Como «{ $title }», n.º { $number }

## variants

variants-back = Volver a los trabajos
variants-count = cuántas
variants-drawing = Preparando y comprobando: { $proved } de { $count }; { $refused } borradores descartados hasta ahora.
variants-drawn = { $proved } preparadas y comprobadas; { $refused } borradores descartados.
variants-exhausted = { $proved } comprobadas; no se puede comprobar ningún borrador más.
variants-of = Variantes de «{ $title }»

## view

view-cabinet = Interior
view-flat = 2D
view-flat-how = Dibujar la máquina en plano: más ligero en equipos lentos; las manos funcionan igual
view-flat-only = Aquí no hay escena: la ventana se dibuja sin tarjeta gráfica
view-machine = Máquina
view-panel = Consola

## wait

wait = Espera
wait-1-min = 1 min
wait-10-min = 10 min
wait-10-s = 10 s
wait-left = faltan { $seconds } s
wait-stop = Parar
wait-until = Hasta que acabe o pare
wait-until-how = Deja correr el tiempo, dos horas como mucho, hasta que acabe un programa o una recalibración, el control se pare o salga del modo de servicio, el panel se apague, salte el diferencial o haya agua en el suelo. Entonces el reloj se detiene. El tiempo hasta entonces lo paga el cliente.

## wash

wash-end-called-off = El programa se canceló sin que se avisara de ningún fallo.
wash-end-finished = El programa llegó hasta el final.
wash-end-never-started = No llegó a empezar ningún programa.
wash-end-still-running = El programa seguía en marcha, o a la espera, cuando el cliente desistió.
wash-end-stopped = El control paró el programa: { $monitor }.
wash-end-went-dark = La consola se apagó durante el programa.
wash-phase = Fase
wash-phase-agitate = Agitación
wash-phase-drain = Desagüe
wash-phase-fill = Llenado
wash-phase-rest = Pausa
wash-phase-soak = Remojo
wash-phase-spin = Centrifugado
wash-trace-axis-current = Corriente, A
wash-trace-axis-level = Nivel de agua, mm
wash-trace-axis-speed = Velocidad de la cesta, r/min
wash-trace-axis-time = Tiempo, min
wash-trace-code = Código { $code } guardado a los { $minutes } min
wash-trace-lamps = Luces en ese momento
wash-trace-stale = Códigos ya guardados antes de este lavado: { $codes }
wash-trace-title = El lavado del cliente

## workshop

workshop-about = Escriba un trabajo para otros: qué dice el cliente, qué le pasa a la máquina y qué cuenta en la nota. Todo es inventado: sin clientes, marcas ni máquinas reales.
workshop-board = Describir una placa
workshop-board-about = Describa el control de una máquina de su taller, valor por valor, a partir de la copia de una placa. Cambie lo que delate una marca o un modelo reales: lo que se guarda aquí es inventado. Una vez guardada, se pueden escribir trabajos para ella. Los trabajos en los que falla la placa necesitan además su recambio, en el archivo parts.ron de su biblioteca.
workshop-board-across = desde la izquierda, centésimas del campo
workshop-board-between = s apagadas entre decenas y unidades
workshop-board-blink = s por parpadeo, encendida y apagada
workshop-board-buttons = Botones
workshop-board-cancel = s que se mantiene pulsado Parada para terminar un programa en pausa
workshop-board-clear = s que se mantiene pulsado Inicio para borrar los códigos
workshop-board-code = Código mostrado
workshop-board-code-number = código
workshop-board-columns = luces por fila completa
workshop-board-copy = Trabajar sobre una copia de esta placa
workshop-board-delay = s que tiene que durar la condición
workshop-board-dial = Selector de pasos
workshop-board-digit = Cifra { $digit }
workshop-board-digit-time = s que se muestra cada cifra
workshop-board-down = desde arriba, centésimas del campo
workshop-board-drain = Durante la parada por fallo puede vaciar la cuba
workshop-board-flash-gap = s apagada entre dos destellos
workshop-board-flash-long = s por destello largo (decenas)
workshop-board-flash-short = s por destello corto (unidades)
workshop-board-free = Arrastre una luz por la consola, o elíjala aquí. Con el foco en la consola, las flechas la mueven.
workshop-board-from = El gesto empieza en una posición
workshop-board-gap = s como mínimo entre una acción y la siguiente
workshop-board-hand-again = Probar otra vez
workshop-board-hand-back = Volver a la placa
workshop-board-hand-in = Ha entrado en el modo de servicio.
workshop-board-hand-out = Este intento no ha entrado en el modo de servicio.
workshop-board-hand-practiced = Una mano experta: { $in } de { $of } intentos; lo mejor, { $ms } ms por paso
workshop-board-hand-try = Probarlo con su propia mano
workshop-board-hand-unsteady = Una mano insegura: { $in } de { $of } intentos; lo mejor, { $ms } ms por paso
workshop-board-hand-usual = La mano habitual de un principiante: { $in } de { $of } intentos; lo mejor, { $ms } ms por paso
workshop-board-hands = Quién consigue entrar
workshop-board-hands-wrong = Se podrá probar cuando la placa ya no tenga errores.
workshop-board-kept = La parada por fallo sobrevive a un corte de corriente
workshop-board-lamp-blinks = { $lamp } parpadea
workshop-board-lamp-count = luces
workshop-board-lamp-dark = { $lamp } apagada
workshop-board-lamp-lit = { $lamp } encendida
workshop-board-lamp-moves = Consola: luz { $lamp } a { $across } en horizontal, { $down } en vertical. Las flechas la mueven
workshop-board-letters = lo que muestran las dos cifras, por ejemplo E-
workshop-board-lid-cycles = veces que se cierra la tapa
workshop-board-lid-gap = s como máximo entre un cierre y el siguiente
workshop-board-lid-moves = movimientos de la tapa, arriba o abajo
workshop-board-lid-within = s como máximo del primer movimiento al último
workshop-board-limits = Límites del modo de servicio
workshop-board-lock-lamp = Con una luz de bloqueo de la tapa al lado
workshop-board-menu = Menú del modo de servicio
workshop-board-menu-how = Cada rutina con su posición. Los códigos guardados y la recalibración no pueden faltar.
workshop-board-mistake = Línea { $line }, { $field }: { $problem }
workshop-board-mistakes = Errores
workshop-board-modes = Qué muestran en cada modo
workshop-board-name = Nombre, en palabras
workshop-board-name-note = El nombre del archivo lleva letras minúsculas de la a a la z, cifras y guiones; es también el identificador de la placa.
workshop-board-name-taken = Ya hay una placa con ese nombre. Póngale otro a esta.
workshop-board-new-name = Placa del taller
workshop-board-no-console = Una consola tiene de 1 a 16 luces; se volverá a dibujar cuando las tenga.
workshop-board-number = número que muestran las luces
workshop-board-own = Placas propias
workshop-board-page-button = Botón que pasa las páginas de la lista de códigos
workshop-board-page-codes = Códigos
workshop-board-page-gesture = Entrada
workshop-board-page-lamps = Luces
workshop-board-page-panel = Mandos
workshop-board-page-service = Servicio
workshop-board-page-text = Texto
workshop-board-pause = s apagadas antes de volver a empezar
workshop-board-picture = Dibujo para el número { $number }
workshop-board-placed-column = En columna
workshop-board-placed-free = Cada una por su lado
workshop-board-placed-grid = En filas
workshop-board-placed-row = Una al lado de otra
workshop-board-placed-usual = Como es habitual
workshop-board-placement = Dónde están las luces
workshop-board-position = posición
workshop-board-positions = posiciones por vuelta
workshop-board-program-copy = Copiar este programa
workshop-board-program-remove = Quitar este programa
workshop-board-programs = Programas (lo que hacen está en el texto)
workshop-board-reset-hold = Mantener pulsado un botón saca de la parada por fallo
workshop-board-reset-lid = Cerrar la tapa varias veces saca de la parada por fallo
workshop-board-reset-moves = Subir y bajar la tapa saca de la parada por fallo
workshop-board-reset-v = V por debajo de los que el control olvida
workshop-board-resets = Cómo se sale de una parada por fallo
workshop-board-rest = s de reposo antes de un intento
workshop-board-rest-between = s de reposo entre dos intentos
workshop-board-retries = veces que el control lo vuelve a intentar
workshop-board-sag-v = V que son pocos con el motor en marcha
workshop-board-shows-all = Todas las luces
workshop-board-shows-bar = Una barra de luces
workshop-board-shows-blink = Todas, parpadeando
workshop-board-shows-dark = Nada
workshop-board-shows-letters = Letras
workshop-board-shows-number = El número
workshop-board-shows-number-and = El número y un dibujo, por turnos
workshop-board-shows-still = Un dibujo
workshop-board-shows-turns = Dos dibujos por turnos
workshop-board-signs-flashes = Una luz que destella
workshop-board-signs-in-turn = Una cifra tras otra
workshop-board-signs-pictures = Un dibujo por código
workshop-board-signs-segments = Dos dígitos
workshop-board-signs-weights = Luces que se suman
workshop-board-step-add = Añadir un paso
workshop-board-step-apart = s como máximo entre uno y otro
workshop-board-step-detents = pasos
workshop-board-step-earlier = Antes
workshop-board-step-hold = Pulsar, mantener y soltar
workshop-board-step-holding = Con un botón pulsado
workshop-board-step-kind = Qué se hace
workshop-board-step-later = Después
workshop-board-step-lid = Mover la tapa
workshop-board-step-no-longer = s como máximo
workshop-board-step-no-shorter = s como mínimo
workshop-board-step-not-before = s como mínimo desde la acción anterior
workshop-board-step-pause = No tocar nada
workshop-board-step-power-up = Enchufar
workshop-board-step-press = Pulsar
workshop-board-step-push = Pulsar y no soltar
workshop-board-step-release = Soltar
workshop-board-step-remove = Quitarlo
workshop-board-step-standing = Antes, sin corriente, el selector tiene que estar en una posición
workshop-board-step-times = veces
workshop-board-step-together = Pulsar dos botones a la vez
workshop-board-step-turn = Girar el selector
workshop-board-step-window = Tiene un tiempo propio
workshop-board-step-window-time = s desde el final del paso anterior
workshop-board-steps = Sin selector: botones Más y Menos
workshop-board-stored = códigos que se guardan
workshop-board-supply = Hecha para
workshop-board-suspects = Qué puede haber detrás, según la hoja
workshop-board-switch = Conmutador giratorio
workshop-board-tap = s como máximo que se pulsa Inicio para empezar un programa
workshop-board-tens = luces de las decenas
workshop-board-test-limit = s tras los que acaba una prueba de carga
workshop-board-test-spin = r/min de la prueba de centrifugado
workshop-board-text = El archivo entero. Lo que no tiene campo propio se escribe aquí.
workshop-board-timeout = s sin tocar nada tras los que acaba el modo de servicio
workshop-board-turns = s que se muestra cada uno de dos dibujos
workshop-board-unfinished = Una placa entra en la biblioteca cuando ya no tiene ningún error.
workshop-board-units = luces de las unidades
workshop-board-unreadable = El texto no se puede leer tal como está. Corríjalo, o deshaga el cambio.
workshop-board-weight = lo que vale la luz { $lamp }
workshop-board-whole = El gesto entero
workshop-board-within = s para el gesto entero
workshop-board-wrong = { $count ->
    [one] Queda un error.
   *[other] Quedan { $count } errores.
}
workshop-budget = lo máximo que pagará el cliente
workshop-cabinet-all = Todos los componentes
workshop-cabinet-part = { $part }: { $count ->
    [one] 1 avería
   *[other] { $count } averías
}
workshop-changed-elsewhere = El archivo se ha modificado en otro programa. «Guardar» lo sustituye por esta versión; para ver la otra, deje este trabajo y vuelva a abrirlo.
workshop-copy = Copia de un trabajo
workshop-copy-do = Trabajar sobre una copia
workshop-copy-out = Guardar una copia
workshop-expects-codes = La comprobación espera ciertos códigos del lavado del cliente
workshop-fault = Qué le pasa
workshop-fault-draw = Cualquier avería
workshop-fault-draw-from = Una de varias
workshop-fault-draw-where = Una de las que describe el archivo
workshop-fault-grows = { $fault } (va a más mientras la máquina trabaja)
workshop-fault-in-spells = { $fault } (va y viene)
workshop-fault-named = Esta avería
workshop-fault-nothing = Nada
workshop-fault-several = Varias a la vez
workshop-field-board = Placa
workshop-field-budget = Lo máximo que pagará el cliente
workshop-field-complaint = Qué dice el cliente
workshop-field-course = Lugar en el curso
workshop-field-dial-wear = Desgaste del selector
workshop-field-expected-codes = Códigos que se esperan del lavado
workshop-field-fault = Qué le pasa
workshop-field-goal = Qué enseña
workshop-field-hints-allowed = Pistas
workshop-field-live-tests-allowed = Pruebas con tensión
workshop-field-mains = Red eléctrica
workshop-field-par-minutes = Minutos
workshop-field-points = Puntos
workshop-field-seed = Semilla
workshop-field-stale-codes = Códigos antiguos
workshop-field-title = Título
workshop-field-worn-lead = Punta del multímetro
workshop-hints = Se pueden pedir pistas
workshop-keep = Guardar
workshop-kept = Guardado: { $place }
workshop-leave = Dejarlo
workshop-limits = Límites
workshop-live = Se permiten pruebas con tensión
workshop-machine = La máquina
workshop-minutes = minutos que debería necesitar un buen técnico
workshop-more-mistakes = Y { $count } más.
workshop-name = Nombre del archivo
workshop-name-note = El nombre lleva letras minúsculas de la a a la z, cifras y guiones. Póngale el de lo que enseña, no el de la respuesta.
workshop-name-taken = Ya hay un trabajo con ese nombre. Póngale otro a este.
workshop-new = Escribir un trabajo nuevo
workshop-own = Trabajos propios
workshop-own-none = Todavía ninguno.
workshop-own-nowhere = Aquí no se guardan los trabajos: guarde una copia de lo que escriba.
workshop-page-job = Trabajo
workshop-page-paper = Papel
workshop-page-proof = Comprobación
workshop-page-proof-of = Comprobación: { $told }
workshop-page-wash = Lavado
workshop-paper = Hoja de prácticas y soluciones
workshop-paper-a4 = A4
workshop-paper-about = Dos archivos PDF junto al trabajo: una hoja para el alumno, con el parte de trabajo, el formulario, el esquema eléctrico y los códigos, y aparte las soluciones. Están en el idioma de la ventana.
workshop-paper-do = Imprimir en PDF
workshop-paper-elsewhere = Se imprime con el programa en un ordenador, no en el navegador: guarde una copia del trabajo e imprímala allí.
workshop-paper-leave = Dejarlo como está
workshop-paper-letter = Carta (EE. UU.)
workshop-paper-printing = Imprimiendo…
workshop-paper-replace = Sustituir
workshop-paper-taken = Ya hay un archivo { $file }.
workshop-paper-unsound = Se puede imprimir cuando el trabajo no tenga errores.
workshop-points = Puntos
workshop-points-sum = En total, { $sum } de 100
workshop-proof = Comprobación
workshop-proof-errors = { $count ->
    [one] 1 error
   *[other] { $count } errores
}
workshop-proof-faults = Paso 2 de 3: se consulta lo que se sabe de cada avería en esta placa…
workshop-proof-gesture = Entrada al modo de servicio
workshop-proof-machines = Cómo va el trabajo
workshop-proof-none = sin errores
workshop-proof-people = Paso 3 de 3: el experto y los aprendices simulados hacen el trabajo…
workshop-proof-seed = Semilla { $seed }
workshop-proof-sound = No se ha encontrado ningún error.
workshop-proof-stale = Lo que sigue es del trabajo tal como estaba antes de su último cambio.
workshop-proof-waits = El trabajo se comprueba en cuanto haga una pausa.
workshop-proof-warnings = { $count ->
    [one] 1 aviso
   *[other] { $count } avisos
}
workshop-proof-wash = Paso 1 de 3: se hace el lavado del cliente…
workshop-redo = Rehacer
workshop-seed = semilla: con el mismo número todos tienen la misma máquina
workshop-sentence-complaint = Qué dice el cliente
workshop-sentence-goal = Qué enseña (se dice junto con la nota)
workshop-sentence-title = Título (que no delate la avería)
workshop-sound = El archivo está bien.
workshop-sound-proved = El archivo está bien. Comprobación: { $told }.
workshop-stale = Códigos que quedan en la memoria desde hace tiempo
workshop-title = Taller
workshop-try = Probarlo
workshop-tutorial = Leer el tutorial: tres ejercicios
workshop-undo = Deshacer
workshop-unfinished = Un trabajo entra en la biblioteca cuando ya no tiene ningún error.
workshop-wash-lamps = Luces, una por fila: encendida o parpadeando
workshop-wash-moment = Momento, min
workshop-wash-no-codes = El lavado no guarda ningún código.
workshop-wash-no-phase = ningún programa en marcha
workshop-wash-none = El lavado se hace en cuanto el trabajo no tenga errores.
workshop-wash-sample = A los { $minutes } min: { $phase }; nivel { $level } mm, cesta { $speed } r/min, corriente { $current } A. Luces: { $lamps }.
workshop-way-point = { $minutes } min, { $money }: { $deed }
workshop-way-try = Pulse un paso para probar el trabajo desde ahí.
workshop-wear = desgaste del selector, de 0 (nuevo) a 1 (gastado)
workshop-worn-lead = Una punta del multímetro tiene el cable roto por dentro
workshop-wrong = { $field }: { $problem }
