# Every text that people see, in English. Sections and the keys in them stand in alphabetical order,
# and es.ftl has the same keys with the same placeables; `cargo test --test texts` checks it.

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

### Failure modes (invented catalogue)

mode-cord-open-line = Power cord: line conductor open
mode-line-fuse-blown = Line fuse blown
mode-filter-open-choke = Mains filter: choke open
mode-inlet-cold-open-winding = Cold inlet valve: open winding
mode-inlet-cold-blocked-screen = Cold inlet valve: screen blocked
mode-inlet-cold-stuck-open = Cold inlet valve: does not shut
mode-inlet-hot-open-winding = Hot inlet valve: open winding
mode-inlet-hot-stuck-open = Hot inlet valve: does not shut
mode-drain-pump-open-winding = Drain pump: open winding
mode-drain-pump-seized = Drain pump: rotor seized
mode-drain-hose-blocked = Drain hose blocked
mode-motor-open-winding-a = Motor: winding A open
mode-motor-open-winding-b = Motor: winding B open
mode-motor-shorted-turns = Motor: shorted turns
mode-motor-seized = Motor: bearings seized
mode-run-capacitor-open = Run capacitor open
mode-run-capacitor-shorted = Run capacitor shorted
mode-belt-broken = Drive belt broken
mode-shifter-open-winding = Mode shifter: open winding
mode-shifter-stripped-gear = Mode shifter: gear stripped
mode-shifter-cam-switch-open = Mode shifter: cam switch stays open
mode-pickup-no-output = Speed pickup: no output
mode-pressure-sensor-no-output = Pressure sensor: no output
mode-pressure-sensor-zero-drift = Pressure sensor: zero has drifted
mode-pressure-hose-blocked = Pressure hose blocked
mode-pressure-hose-leaking = Pressure hose: leaks air
mode-thermistor-open = Thermistor open
mode-thermistor-shorted = Thermistor shorted
mode-lid-lock-open-winding = Lid lock: actuator winding open
mode-lid-lock-contact-open = Lid lock: line contact burnt
mode-lid-lock-contact-welded = Lid lock: line contact welded
mode-board-pump-switch-open = Control board: pump switch dead
mode-board-motor-a-switch-open = Control board: motor A switch dead
mode-board-cold-switch-welded = Control board: cold valve switch welded
mode-board-lock-switch-open = Control board: lock switch dead
mode-harness-pump-wire-open = Harness: pump wire open
mode-harness-cold-wire-open = Harness: cold valve wire open
mode-harness-pickup-wire-open = Harness: pickup signal wire open
mode-harness-pressure-wire-open = Harness: pressure signal wire open
mode-harness-thermistor-wire-open = Harness: thermistor wire open
mode-harness-lock-return-burnt = Harness: burnt pin in the lock's return
mode-harness-lock-return-loose = Harness: loose pin in the lock's return

### Parts counter (invented part numbers)

part-c24-110 = Power cord
part-c24-118 = Line fuse
part-c24-125 = Mains filter
part-c24-200 = Control board, arc dial
part-c24-201 = Control board, other series
part-c24-214 = Dial with contacts
part-c24-310 = Lid lock
part-c24-320 = Inlet valve, cold
part-c24-321 = Inlet valve, hot
part-c24-330 = Drain pump
part-c24-331 = Drain pump, narrow flange
part-c24-340 = Drain hose
part-c24-410 = Drive motor
part-c24-418 = Run capacitor
part-c24-425 = Drive belt
part-c24-430 = Mode shifter
part-c24-440 = Speed pickup
part-c24-510 = Pressure sensor
part-c24-514 = Pressure hose
part-c24-520 = Water thermistor
part-c24-610 = Wiring harness
part-c24-710 = Tub with seal
