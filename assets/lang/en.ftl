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
