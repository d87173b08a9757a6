# Every text that people see, in English. Sections stand in alphabetical order, and
# es.ftl has the same keys with the same placeables; `cargo test --test texts` checks it.

## app

app-name = Detent
app-tagline = A training bench for people who repair washing machines

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
