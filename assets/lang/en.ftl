# Every text that people see, in English. Sections stand in alphabetical order, and
# es.ftl has the same keys with the same placeables; `cargo test --test texts` checks it.

## app

app-name = Detent
app-tagline = A training bench for people who repair washing machines

### app

board-arc-dial = Arc-dial board

broke-hold-too-long = Held too long
broke-hold-too-short = Let go too early
broke-late = Too late
broke-out-of-order = Another input was due
broke-press-too-long = Pressed too long
broke-too-few-detents = Too few detents
broke-too-many-detents = Too many detents
broke-window-over = Time ran out
broke-wrong-way = Turned the wrong way

caution-defer = Local codes, lockout rules and licensed practice come before this trainer.
caution-flood = There is water above this part. Opening it floods the floor. Drain or bail the tub out first.
caution-go-on = Go on
caution-live-test = You are about to measure on a live machine. Use rated probes, one hand, no jewellery, dry floor; only if you are trained and allowed to.
caution-moving = The basket is still turning and can break an arm. Wait until it stands.
caution-ohms-live = There is voltage on this circuit. Measuring ohms on it blows the meter’s fuse and can hurt you.
caution-open-live = Mains voltage inside. Touching it kills. Pull the plug and keep it in your sight before you take the panels off.
caution-step-back = Step back
caution-stored-charge = A capacitor still holds charge and can shock. Wait, bleed it through a resistor, and prove it dead with the meter.
caution-touch-live = The machine is plugged in. Live parts shock and kill. Pull the plug, keep it in your own control, and prove it dead.

check-belt-in-place = Belt in place and tight
check-bulk-volts = Bulk capacitor, V =
check-cam-switch = Cam switch, Ω in both positions
check-cam-wires = Cam switch wires, Ω end to end
check-capacitor-check = Run capacitor: discharge it, then Ω
check-cord-ohms = Power cord, Ω blade to board
check-drain-hose-blocked = Drain hose free
check-drain-hose-height = Drain hose at the right height
check-drum-turns-by-hand = Basket turns by hand, unplugged
check-empty-drum-first = Empty the basket first
check-inlet-coil-ohms = Inlet coils, Ω
check-inlet-shuts-unplugged = Water stops when unplugged
check-inlet-volts = Inlet valves driven, V ~
check-lock-coil-ohms = Lock winding, Ω
check-lock-contact-ohms = Lock contact bolted, Ω
check-lock-line = Line through the lock, V ~
check-lock-volts = Lock driven, V ~
check-motor-amps = Motor current by clamp, A ~
check-motor-common = Motor common wire, Ω
check-motor-volts = Motor driven, V ~
check-motor-winding-ohms = Motor windings A and B, Ω
check-motor-wires = Motor wires, Ω end to end
check-pickup-output = Pickup output while turning, Hz
check-pickup-supply = Pickup supply, V =
check-pickup-wires = Pickup wires, Ω end to end
check-pressure-hose = Pressure hose: on, clear, tight
check-pressure-output = Pressure output at rest, V =
check-pressure-supply = Pressure sensor supply, V =
check-pressure-wires = Pressure wires, Ω end to end
check-pump-amps = Pump current by clamp, A ~
check-pump-coil-ohms = Pump winding, Ω
check-pump-volts = Pump driven, V ~
check-recalibrate-first = Recalibrate first
check-shifter-coil-ohms = Shifter winding, Ω
check-shifter-volts = Shifter driven, V ~
check-spread-laundry = Spread the laundry
check-supply-volts = Supply at the fuse, V ~
check-taps-and-strainers = Taps open, strainers clean
check-thermistor-ohms = Thermistor, Ω at known temperature
check-thermistor-rail = Thermistor input, V =
check-thermistor-wires = Thermistor wires, Ω end to end
check-tub-leak = Tub and hoses dry outside

component-belt = Drive belt
component-board = Control board
component-cord = Power cord
component-dial = Dial
component-drain-hose = Drain hose
component-drain-pump = Drain pump
component-filter = Mains filter
component-harness = Wiring harness
component-inlet-cold = Cold inlet valve
component-inlet-hot = Hot inlet valve
component-laundry = Laundry
component-lid-lock = Lid lock
component-line-fuse = Line fuse
component-motor = Motor
component-pickup = Speed pickup
component-pressure-hose = Pressure hose
component-pressure-sensor = Pressure sensor
component-run-capacitor = Run capacitor
component-shifter = Mode shifter
component-supply = Outlet and taps
component-thermistor = Water thermistor
component-tub = Tub

dial-at = Dial at { $position }

dimension-cost = Time and money
dimension-entry = Entry
dimension-proof = Proof
dimension-reading = Reading
dimension-reasoning = Reasoning
dimension-safety = Safety

do-bail-out = Bail the tub out
do-close-cabinet = Put the panels back (C)
do-close-lid = Put the lid down (L)
do-discharge = Bleed the stored charge (D)
do-fit = Fit it
do-lift = Lift the probes
do-measure = Measure and note
do-meter-fuse = Put a new fuse in the meter
do-open-cabinet = Take the panels off (C)
do-open-lid = Lift the lid (L)
do-order = Order
do-plug = Plug in (P)
do-pull = Pull this connector
do-seat = Push this connector back on
do-unplug = Pull the plug (P)

hands = Hands

key-back = Step back, stop waiting
key-cabinet = Panels off or on
key-discharge = Bleed the stored charge
key-focus = Next field, press it
key-hide = Hide or show the panels
key-keys = This list
key-lid = Lid up or down
key-plug = Plug in or out
key-speed = Time slower, faster
key-start = Start: press, or hold
key-stop = Stop: press, or hold
key-tabs = Sheet, meter, parts, report, score
key-turn = Turn the dial by one detent
key-views = Console, machine, inside
key-wait = Wait one minute
key-wait-long = Wait ten minutes

keys-title = Keys

leave-job = Leave this job

lost-bought-on-the-code = Part { $part } was ordered before anything was measured.
lost-code-not-noted = Code { $code } was raised and never noted.
lost-failed-try = A try at service mode failed: { $rule }.
lost-flood = A part was opened with water above it.
lost-good-board-replaced = A sound control board was replaced.
lost-lid-spinning = The lid was opened while the basket turned.
lost-live-not-allowed = Measured live in a job that does not allow it.
lost-misread = Noted { $noted }, but the lamps had shown: { $shown }.
lost-never-entered = Service mode was never entered.
lost-no-evidence = The report cites no reading from before the repair.
lost-no-proving-run = No program was run to its end after the repair.
lost-no-report = No report was handed in.
lost-not-cured = The fault is still in the machine.
lost-not-proved-dead = Nobody proved the circuit dead before hands went in.
lost-not-recalibrated = No recalibration passed after the repair.
lost-ohms-on-live = Ohms measured on a live or charged circuit.
lost-opened-live = The cabinet was opened with the plug in.
lost-over-budget = More than the customer’s { $budget } was spent.
lost-overspent = Spent { $spent }; { $needed } was needed.
lost-rest-too-short = Unplugged for only { $seconds } s: the control had not let go of its charge, so nothing was reset.
lost-rivals-left = The readings cited leave { $open } of { $rivals } other causes open.
lost-shock = Electric shock: something live was touched.
lost-slow = { $minutes } minutes of work; { $par } would do.
lost-touched-charge = Hands inside before the stored charge was gone.
lost-wrong-cause = The report says “{ $said }”; it was “{ $truth }”.
lost-wrong-part = A part was fitted that does not cure the fault.

meter-black = Black probe
meter-choose = choose a pin below
meter-dead = The meter’s fuse has blown
meter-red = Red probe

monitor-calibration-failed = Recalibration failed
monitor-calibration-missing = Not calibrated
monitor-cam-lost = Mode shifter not in place
monitor-drain-slow = Drains too slowly
monitor-fill-none = No water comes in
monitor-fill-slow = Fills too slowly
monitor-level-lost = Level falls without draining
monitor-lock-not-proven = Lid lock not proven
monitor-lock-not-released = Lid lock does not release
monitor-motor-no-current = Motor draws no current
monitor-motor-overheated = Motor current was lost in the run
monitor-motor-overload = Motor current stays high
monitor-pressure-range = Pressure signal out of range
monitor-pulses-none = No speed pulses
monitor-pulses-weak = Too few speed pulses
monitor-spin-not-reached = Spin speed not reached
monitor-supply-low = Supply sags
monitor-thermistor-range = Thermistor signal out of range
monitor-unbalance = Unbalance
monitor-water-not-warm = Water stays cold
monitor-water-too-hot = Water too hot
monitor-water-unexpected = Water rises with the valves shut

name-dial = Dial: drag, scroll or use the arrow keys
name-lid = Lid (L)
name-plug = Mains plug (P)
name-start = Start (S)
name-stop = Stop (X)

note-code = Code as you read it
note-code-do = Note it

notebook = Notebook
notebook-empty = No readings yet.
notebook-live = live

noted-codes = Noted:

parts = Parts counter
parts-fitted = Fitted
parts-intro = Invented numbers and prices. What you buy, the customer pays.
parts-price = { $price } money
parts-wait = comes in { $hours } h

pin-bulk-minus = Bulk −
pin-bulk-plus = Bulk +
pin-fuse-in = Line fuse, supply side
pin-fuse-out = Line fuse, machine side
pin-plug-earth = Plug, earth
pin-plug-line = Plug, line
pin-plug-neutral = Plug, neutral

program-empty-and-spin = Empty and spin
program-everyday = Everyday
program-gentle = Gentle
program-hot = Hot
program-rinse-and-spin = Rinse and spin
program-short = Short

refusal-already-so = It is so already.
refusal-cabinet-closed = Take the cabinet panels off first.
refusal-does-not-fit = Part { $part } does not fit this machine.
refusal-finished = The job is finished: the report was handed in.
refusal-lid-locked = The lid is locked.
refusal-no-connector = There is no such connector here.
refusal-no-part = The counter has no part { $part }.
refusal-not-in-hand = Order part { $part } first.
refusal-plug-in-outlet = Pull the plug first: its blades are in the outlet.

report-cause = What was wrong
report-choose = choose…
report-done = The report was handed in.
report-hand-in = Hand the machine back
report-no-part = No part
report-not-ready = Choose a cause and a part first.
report-nothing-wrong = Nothing was wrong
report-part = Part that was needed
report-proof = Readings that prove it
report-proof-intro = Tick those that rule the other suspects out.
report-see-score = See the score

routine-ages = Cycles since each code
routine-clear = Clear codes (hold Start)
routine-lamp-test = Lamp test
routine-live-level = Show level, cm
routine-live-speed = Show speed, in tens of rev/min
routine-live-temperature = Show water temperature, °C
routine-recalibrate = Recalibrate (2 to 3 minutes)
routine-recall = Show stored codes
routine-test-cold = Cold inlet valve
routine-test-hot = Hot inlet valve
routine-test-lock = Lid lock
routine-test-motor-a = Motor, direction A
routine-test-motor-b = Motor, direction B
routine-test-pump = Drain pump
routine-test-shifter = Mode shifter
routine-test-spin = Slow spin

score-losses = Points lost
score-none-lost = None. Well worked.
score-not-yet = The score comes with the report. Until then, here is how your tries at service mode went.
score-total = { $kept } of { $of } points

sheet-codes = Codes
sheet-codes-intro = A code says what the control saw, not which part is bad. Measure before you buy.
sheet-entry = Entry
sheet-entry-before = Into service mode: no program running, then, without a pause:
sheet-entry-rest = Before a new try leave dial, buttons and lid alone for { $seconds } s. A fast turn can skip a detent.
sheet-entry-window = The whole gesture within { $seconds } s.
sheet-invented = An invented board, for training only.
sheet-lamps = Lamps
sheet-lamps-example = This example reads 37. A lit lamp has a filled disc and an outer ring.
sheet-lamps-intro = Eight lamps over the dial show two digits. In each group of four add up the numbers under the lit lamps.
sheet-lamps-lock = The lock lamp blinks for any fault hold. That does not mean the lock is bad.
sheet-lamps-pages = In the code list each press of Start turns to the next page, the newest code first.
sheet-menu = Menu
sheet-menu-intro = In service mode: turn the dial to a position, press Start.
sheet-pins = Pins
sheet-pins-intro = Pin, printed mark, and where the wire ends.
sheet-programs = Programs outside service mode
sheet-tens = tens
sheet-units = units

side-board = board side
side-harness = harness side
side-load = at the load

signal-caution = CAUTION
signal-danger = DANGER
signal-warning = WARNING

sound-agitator-swish = agitator swishes
sound-cabinet-shake = cabinet shakes
sound-floor-wet = { $litres } L on the floor
sound-lock-held = lid lock holds
sound-motor-free = motor runs, nothing follows
sound-motor-hum = motor hums, does not turn
sound-none = quiet
sound-pump-buzz = pump buzzes, stuck
sound-pump-hum = pump hums
sound-relay-click = relay clicks
sound-shifter-tick = shifter ticks
sound-spin-whirr = basket spins
sound-valve-buzz = valve buzzes, no water
sound-water-rush = water rushes in

spot-bulk = Bulk capacitor on the board
spot-fuse = Line fuse
spot-plug = Mains plug

start-about = Every machine, board, code, part, price and customer here is invented. Training only: local codes and licensed practice come first.
start-begin = Begin the job
start-seed = Seed
start-seed-hint = same seed, same machine

step-hold = Hold { $button }
step-lid-down = Put the lid down
step-lid-up = Lift the lid
step-press = Press { $button }
step-turn-left = Turn left by { $detents } detents
step-turn-right = Turn right by { $detents } detents

tab-meter = Meter
tab-parts = Parts
tab-report = Report
tab-score = Score
tab-sheet = Sheet

ticket-hours = { $hours } h
ticket-live = Live tests
ticket-live-no = not allowed
ticket-live-yes = allowed
ticket-mains = Mains
ticket-minutes-of = { $minutes } of { $par } min
ticket-money = Money
ticket-money-of = { $spent } of { $budget }
ticket-waited = Waited for parts
ticket-work = Work

top-keys = F1 keys

tries = Tries at service mode
tries-intro = Time runs to the right, in seconds. Shaded: the whole window. Bars: an input’s own window. Flag: the rule that broke.

try-entered = Service mode entered
try-open = Going on

view-cabinet = Inside
view-machine = Machine
view-panel = Console

wait = Let time pass
wait-1-min = 1 min
wait-10-min = 10 min
wait-10-s = 10 s
wait-left = { $seconds } s to go
wait-stop = Stop

## common

common-cancel = Cancel
common-close = Close
common-no = No
common-yes = Yes

## language

language-choose = Language

## mode

mode-belt-broken = Drive belt broken
mode-board-cold-switch-welded = Control board: cold valve switch welded
mode-board-lock-switch-open = Control board: lock switch dead
mode-board-motor-a-switch-open = Control board: motor A switch dead
mode-board-pump-switch-open = Control board: pump switch dead
mode-cord-open-line = Power cord: line conductor open
mode-drain-hose-blocked = Drain hose blocked
mode-drain-pump-open-winding = Drain pump: open winding
mode-drain-pump-seized = Drain pump: rotor seized
mode-filter-open-choke = Mains filter: choke open
mode-harness-cold-wire-open = Harness: cold valve wire open
mode-harness-lock-return-burnt = Harness: burnt pin in the lock's return
mode-harness-lock-return-loose = Harness: loose pin in the lock's return
mode-harness-pickup-wire-open = Harness: pickup signal wire open
mode-harness-pressure-wire-open = Harness: pressure signal wire open
mode-harness-pump-wire-open = Harness: pump wire open
mode-harness-thermistor-wire-open = Harness: thermistor wire open
mode-inlet-cold-blocked-screen = Cold inlet valve: screen blocked
mode-inlet-cold-open-winding = Cold inlet valve: open winding
mode-inlet-cold-stuck-open = Cold inlet valve: does not shut
mode-inlet-hot-open-winding = Hot inlet valve: open winding
mode-inlet-hot-stuck-open = Hot inlet valve: does not shut
mode-lid-lock-contact-open = Lid lock: line contact burnt
mode-lid-lock-contact-welded = Lid lock: line contact welded
mode-lid-lock-open-winding = Lid lock: actuator winding open
mode-line-fuse-blown = Line fuse blown
mode-motor-open-winding-a = Motor: winding A open
mode-motor-open-winding-b = Motor: winding B open
mode-motor-seized = Motor: bearings seized
mode-motor-shorted-turns = Motor: shorted turns
mode-pickup-no-output = Speed pickup: no output
mode-pressure-hose-blocked = Pressure hose blocked
mode-pressure-hose-leaking = Pressure hose: leaks air
mode-pressure-sensor-no-output = Pressure sensor: no output
mode-pressure-sensor-zero-drift = Pressure sensor: zero has drifted
mode-run-capacitor-open = Run capacitor open
mode-run-capacitor-shorted = Run capacitor shorted
mode-shifter-cam-switch-closed = Mode shifter: cam switch stays closed
mode-shifter-open-winding = Mode shifter: open winding
mode-shifter-stripped-gear = Mode shifter: gear stripped
mode-thermistor-open = Thermistor open
mode-thermistor-shorted = Thermistor shorted

## part

part-belt = Drive belt
part-board = Control board
part-board-other = Control board, narrow model
part-contact-kit = Contact and splice kit
part-cord = Supply cord with plug
part-dial = Dial with detent ring
part-drain-hose = Drain hose
part-drain-pump = Drain pump
part-drain-pump-other = Drain pump, narrow model
part-filter = Mains filter
part-harness = Wiring harness
part-inlet-cold = Cold inlet valve
part-inlet-hot = Hot inlet valve
part-laundry-sorted = Load taken out and spread evenly
part-lid-lock = Lid lock with lid switch
part-lid-lock-other = Lid lock, left-hand model
part-line-fuse = Line fuse
part-motor = Motor
part-motor-other = Motor, narrow model
part-note-measure-first = Cannot be returned once unpacked: measure before you buy
part-note-no-part = Work, not a part
part-note-other-machine = Made for another machine; its mounting differs
part-note-visit = A visit, not a part. Local rules say who may do this work
part-pickup = Speed pickup
part-pressure-hose = Pressure hose with clamps
part-pressure-sensor = Pressure sensor
part-run-capacitor = Run capacitor
part-shifter = Mode shifter with cam switch
part-supply-electrician = Visit by a licensed electrician (outlet)
part-supply-plumber = Visit by a licensed plumber (taps)
part-thermistor = Water thermistor
part-tub-seal = Tub seal set
