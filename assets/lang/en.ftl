# Every text that people see, in English. Sections and the keys in them stand in alphabetical order,
# and es.ftl has the same keys with the same placeables; `cargo test --test content` checks it.

## account

account-owed = Known then: { $known }. Better: { $sound }.
account-saves = Known then: { $known }. Better: { $sound }. It saves about { $minutes } min and { $money }.
account-saves-money = Known then: { $known }. Better: { $sound }. It saves about { $money }.
account-takes = Known then: { $known }. Better: { $sound }. It takes { $minutes } min and { $money }, and has to be done all the same.

## advice

advice-check-outlet = Have the outlet checked by an electrician
advice-clean-strainer = Clean the strainers at the taps now and then
advice-keep-tap-open = Keep both taps fully open
advice-less-detergent = Use less detergent
advice-level-machine = Have the machine stand level
advice-none = Nothing to add
advice-replace = Replace the machine rather than repair it

## app

app-name = Detent
app-tagline = A training bench for people who repair washing machines

## best

best-at-dead = unplugged
best-at-idle = plugged in, idle
best-at-pulled = unplugged, plug off the load
best-at-test-cold = cold valve test
best-at-test-hot = hot valve test
best-at-test-lock = lock test
best-at-test-motor-a = motor test, one way
best-at-test-motor-b = motor test, other way
best-at-test-pump = pump test
best-at-test-shifter = shifter test
best-belief = Belief before and after the customer's wash
best-code-buyer = buys by the code
best-codes = Codes stored in the customer's wash
best-columns = Expected cost of repair, with the least that any way can cost (≥) / cost on this seed’s fault. The expert’s is the mean over causes of 2 % and more.
best-control-swapper = fits a control first
best-cost = Expected cost of repair when the best is done at each step, in whole units of money
best-expert = scripted expert
best-fit = fit and prove by a run
best-hand-back = recalibrate, run a wash and hand it back
best-inspect = look at
best-new-machine = stop and advise a new machine
best-next = Expected cost of repair if this is done next (≥ the least it can be)
best-not-asked-for = The customer’s wash was never started: the worn dial slipped, and the control stands at another program than the dial. That says nothing about the rest of the machine.
best-optimum = best plan
best-put-right = put right by hand
best-recalibrate = recalibrate and see how it ends
best-scenario = scenario
best-several = This job hides { $count } faults at once. What follows takes them one at a time: it is the best way only to the first.
best-tries = Failed tries at the entry gesture in a row, made at a calm pace and with right timing on this dial, after which the control is the likelier culprit: { $tries }

## board

board-arc-dial = Arc-dial board
board-key-pad = Key-pad board
board-lone-lamp = Lone-lamp board
board-narrow-line = Narrow-line machine

## broke

broke-hold-too-long = Held too long
broke-hold-too-short = Let go too early
broke-late = Too late
broke-out-of-order = Another input was due
broke-press-too-long = Pressed too long
broke-too-few-detents = Too few detents
broke-too-many-detents = Too many detents
broke-window-over = Time ran out
broke-wrong-way = Turned the wrong way

## button

button-less = Less
button-more = More
button-start = Start
button-stop = Stop

## caution

caution-discharge-live = The plug is in: the mains keeps the capacitor charged, and the resistor burns in your hand. Pull the plug first. Follow local codes; leave it to a licensed person if unsure.
caution-flood = There is water above this part. Opening it floods the floor. Drain or bail the tub out first. Follow local codes; leave it to a licensed person if unsure.
caution-go-on = Go on
caution-heavy = The machine is heavy and can crush a hand or a foot. Pull the plug, drain the water, and tilt it with a second person. Follow local codes; leave it to a licensed person if unsure.
caution-hot-water = The hoses are under pressure and one is hot: it can scald. Shut both taps and let the pressure off first. Follow local codes; leave it to a licensed person if unsure.
caution-live-test = You are about to measure on a live machine. A slip can shock and kill. Use rated probes, one hand, no jewellery, dry floor; only if you are trained and allowed to. Follow local codes; leave it to a licensed person if unsure.
caution-moving = The basket is still turning and can break an arm. Wait until it stands. Follow local codes; leave it to a licensed person if unsure.
caution-not-proved-dead = Nobody has proved yet that the stored charge is gone. Check the meter, measure the capacitor, check the meter again, and then put your hands in. Follow local codes; leave it to a licensed person if unsure.
caution-ohms-live = There is voltage on this circuit. Measuring ohms on it blows the meter’s fuse and can hurt you. Pull the plug, bleed the charge, then measure. Follow local codes; leave it to a licensed person if unsure.
caution-open-live = Mains voltage inside. Touching it kills. Pull the plug and keep it in your sight before you take the panels off. Follow local codes; leave it to a licensed person if unsure.
caution-plug-open = The panels are off: once plugged in, live parts are within reach and can kill. Put the panels back first, unless you are trained and allowed to test live. Follow local codes; leave it to a licensed person if unsure.
caution-scald = The water in the tub is hot enough to burn your hands. Let the pump take it out, or let it cool. Follow local codes; leave it to a licensed person if unsure.
caution-step-back = Step back
caution-stored-charge = A capacitor still holds charge and can shock. Wait a minute, bleed it through a resistor, and prove it dead with the meter. Follow local codes; leave it to a licensed person if unsure.
caution-touch-live = The machine is plugged in. Live parts shock and kill. Pull the plug, keep it in your own control, and prove it dead. Follow local codes; leave it to a licensed person if unsure.

## check

check-belt-in-place = Pull the plug and bleed the charge first. Look at the belt and press on it. A sound belt sits on both pulleys, dry and tight, and turns the basket with the motor.
check-bulk-volts = Live test, only if you are trained and allowed. Measure V = from bulk.plus to bulk.minus. Sound: near 168 V on 120 V mains, near 320 V on 230 V. It must not sag when the motor starts. Full voltage behind a dark console: the board’s own supply is dead, and the charge stays for minutes after the plug is out.
check-cam-switch = Pull the plug and bleed the charge first. Pull the shifter’s plug and measure Ω from shifter.3 to shifter.4. Sound: under 1 Ω in the spin half of its turn, OL in the agitate half.
check-cam-wires = Pull the plug and bleed the charge first. Measure Ω from shifter.3@board to shifter.3, and the same for shifter.4. Sound: about 0.2 Ω, which is only the meter’s leads.
check-capacitor-check = Pull the plug and bleed the charge first. Pull the run capacitor’s plug and measure Ω from run-capacitor.1 to run-capacitor.2. Sound: OL; a few ohms is a short. An open one shows only live, where that is allowed: with the motor turning, V ~ across it stands well above the mains (near 190 V on 120 V, 390 V on 230 V).
check-cord-ohms = Pull the plug and bleed the charge first. Measure Ω from plug.line to fuse.in, then fuse.in to fuse.out, fuse.out to cord.1, and plug.neutral to cord.2. Sound: 0.2 to 0.3 Ω each. Half an ohm more is a loose joint: look for browning.
check-drain-hose-blocked = Pull the plug and bail the tub out first. Take the drain hose off and look through it. A sound hose is clear from end to end. If it is clear, measure the pump.
check-drain-hose-height = Measure the height of the hose’s top bend above the floor. Sound: 0.9 m, loose in the standpipe. Too low or sealed in, it siphons the tub empty.
check-drum-turns-by-hand = Pull the plug and wait until the basket stands. Turn it by hand. A sound one turns freely and without grinding. If it does not, slip the belt off and try basket and motor apart.
check-empty-drum-first = Take the laundry out and recalibrate again. Recalibration learns from an empty basket.
check-inlet-coil-ohms = Pull the plug and bleed the charge first. Pull each valve’s plug and measure Ω from inlet-cold.1 to inlet-cold.2, then inlet-hot.1 to inlet-hot.2. Sound: near 780 Ω for 120 V, near 2870 Ω for 230 V.
check-inlet-shuts-unplugged = Pull the plug and watch the water. If it still rises, a valve does not shut: mechanical. If it stops, the valve was driven: measure V ~ at its terminals.
check-inlet-volts = Live test, only if you are trained and allowed. Measure V ~ from inlet-cold.1 to inlet-cold.2 in the cold test, inlet-hot.1 to inlet-hot.2 in the hot test. Sound: mains voltage in its test, near 0 V at rest.
check-lock-coil-ohms = Pull the plug and bleed the charge first. Pull the lid lock’s plug and measure Ω from lid-lock.1 to lid-lock.2. Sound: near 120 Ω for 120 V, near 440 Ω for 230 V.
check-lock-contact-ohms = Pull the plug and bleed the charge first. Pull the lid lock’s plug and measure Ω from lid-lock.3 to lid-lock.4. Sound with the bolt in: OL; near 0 Ω is a welded contact. A contact that does not close shows in the live line check.
check-lock-line = Live test, only if you are trained and allowed. In the lock test measure V ~ from lid-lock.4 to cord.2, then from lid-lock.4@board to cord.2. Sound: mains voltage at both. None at the first: contact. None only at the board: wire or pin.
check-lock-volts = Live test, only if you are trained and allowed. In the lock test measure V ~ from lid-lock.1 to lid-lock.2. Sound: mains voltage while driven, near 0 V at rest. Voltage and a sound winding, but no bolt: the lock. No voltage: wire or board.
check-motor-amps = Live test, only if you are trained and allowed. Clamp the wire at motor.1 in the motor A test and at motor.2 in the motor B test. The two readings should be alike. More than 9 A on 120 V (4.7 A on 230 V) for longer than the start is overload.
check-motor-common = Pull the plug and bleed the charge first. Measure Ω from motor.3@board to motor.3. Sound: about 0.2 Ω, which is only the meter’s leads. Half an ohm more is a loose or burnt pin, which loses volts while the motor runs. Open, neither winding carries current.
check-motor-volts = Live test, only if you are trained and allowed. Lid down. Measure V ~ from motor.1 to motor.3 in the motor A test, motor.2 to motor.3 in the motor B test. Sound: mains voltage. No voltage: look at lock line, wire and board before the motor.
check-motor-winding-ohms = Pull the plug and bleed the charge first. Pull the motor’s plug and measure Ω from motor.1 to motor.3, then motor.2 to motor.3. Sound: both alike, near 2.6 Ω for 120 V, near 9.6 Ω for 230 V; a hot winding reads more.
check-motor-wires = Pull the plug and bleed the charge first. Measure Ω from motor.1@board to motor.1, and the same for motor.2 and motor.3. Sound: about 0.2 Ω each, which is only the meter’s leads.
check-pickup-output = Live test, only if you are trained and allowed. In the spin test measure Hz from pickup.3 to pickup.2. Sound: twelve pulses a turn, so 80 Hz at 400 rev/min. 0 Hz with the pulley turning: pickup or its supply.
check-pickup-supply = Live test, only if you are trained and allowed. Measure V = from pickup.1 to pickup.2. Sound: 5 V. Without it no pickup can pulse.
check-pickup-wires = Pull the plug and bleed the charge first. Measure Ω from pickup.1@board to pickup.1, and the same for pickup.2 and pickup.3. Sound: about 0.2 Ω each, which is only the meter’s leads.
check-pressure-hose = Pull the plug and drain the tub first. Take the hose off and blow through it gently. Sound: clear, dry, tight at both ends, no crack. With water in the tub the pressure output must hold still.
check-pressure-output = Live test, only if you are trained and allowed. Measure V = from pressure-sensor.3 to pressure-sensor.2. Sound: 0.5 V with no water, and 1 V more for each kPa, which is about 10 cm of water.
check-pressure-supply = Live test, only if you are trained and allowed. Measure V = from pressure-sensor.1 to pressure-sensor.2. Sound: 5 V. None here but 5 V at the board: a wire.
check-pressure-wires = Pull the plug and bleed the charge first. Measure Ω from pressure-sensor.3@board to pressure-sensor.3, and the same for 1 and 2. Sound: about 0.2 Ω each, which is only the meter’s leads.
check-pump-amps = Live test, only if you are trained and allowed. In the pump test clamp the wire at drain-pump.1. Sound and turning: about 1.3 A on 120 V, 0.7 A on 230 V. About 2 A (1.1 A) and a buzz: the rotor is stuck. 0 A: open circuit.
check-pump-coil-ohms = Pull the plug and bleed the charge first. Pull the pump’s plug and measure Ω from drain-pump.1 to drain-pump.2. Sound: near 14 Ω for 120 V, near 51 Ω for 230 V. OL: open winding.
check-pump-volts = Live test, only if you are trained and allowed. In the pump test measure V ~ from drain-pump.1 to drain-pump.2. Sound: mains voltage. If there is none, measure drain-pump.1@board to cord.2: voltage there means a wire, none means the board.
check-recalibrate-first = Recalibrate before you suspect a part: lid down, 2 to 3 minutes, hands off. A new or cleared board knows nothing of this machine.
check-shifter-coil-ohms = Pull the plug and bleed the charge first. Pull the shifter’s plug and measure Ω from shifter.1 to shifter.2. Sound: near 2400 Ω for 120 V, near 8800 Ω for 230 V.
check-shifter-volts = Live test, only if you are trained and allowed. In the shifter test measure V ~ from shifter.1 to shifter.2. Sound: mains voltage. Voltage and a sound winding, but the cam never moves: a stripped gear.
check-spread-laundry = Wait until the basket stands, then spread the laundry evenly and spin again. If the code does not come back, it was the load.
check-supply-volts = Live test, only if you are trained and allowed. Measure V ~ from cord.1 to cord.2 at rest and with the motor running. Sound: 114 to 126 V, or 207 to 253 V on 230 V mains. A drop of some volts as the motor starts: a loose joint in cord, plug or outlet; the outlet is an electrician’s work.
check-taps-and-strainers = Open both taps fully and feel which hose is hot. Shut them, take the hoses off and clean the strainers. Still little water with open taps and mains voltage at a sound coil: the valve.
check-thermistor-ohms = Pull the plug and bleed the charge first. Pull the thermistor’s plug and measure Ω from thermistor.1 to thermistor.2. Sound: 10 kΩ at 25 °C, about 12.5 kΩ at 20 °C, 5.3 kΩ at 40 °C.
check-thermistor-rail = Live test, only if you are trained and allowed. Measure V = from thermistor.1@board to thermistor.2@board. Sound: 2.5 V at 25 °C, less when warmer. Near 5 V: open. Near 0 V: shorted.
check-thermistor-wires = Pull the plug and bleed the charge first. Measure Ω from thermistor.1@board to thermistor.1, and the same for thermistor.2. Sound: about 0.2 Ω each, which is only the meter’s leads.
check-tub-leak = Pull the plug. Look under the tub and along the hoses with a light. Sound: dry outside, and the level stands still for five minutes.

## choose

choose-dial = Turn the dial to a position.
choose-steps = More and Less step through the list; the digits show the position.
choose-switch = Turn the switch to a position.

## cli

cli-entered = entered
cli-found = found
cli-lamps = lamps
cli-meter-test = meter tried on the proving source at
cli-no-conclusion = The report concludes nothing, so it gets no answer: name a cause, or write verdict: NothingWrong or verdict: GivenUp.
cli-no-report = No report yet: hand one in to see where each point went.
cli-practice-adaptive = adaptive: the drill nearest the target
cli-practice-all = All sessions
cli-practice-early = First { $sessions } sessions
cli-practice-fixed = fixed order: { $block } of each skill in turn, the best of four such orders
cli-practice-given-up = ({ $count } learners given up)
cli-practice-heading = { $learners } simulated learners, { $sessions } sessions each, { $exercises } exercises a session, one session a day; their rates differ from the model’s by up to { $spread } %
cli-practice-learner = { $name }: chance that each skill is known, and right answers of all
cli-practice-needs = Exercises until every skill is held mastered and truly known, mean:
cli-practice-one-by-one = one skill after the other, each until the model holds it mastered
cli-practice-random = random
cli-practice-recovery = believed { $believed } %, truly known { $known } %, root mean squared error { $rmse }; held mastered and truly known { $verdict } %. Belief, share known, looks:
cli-readings = readings
cli-score = score
cli-seed = seed
cli-state = state
cli-state-hash = state hash
cli-try = try at

## code

code-calibration-failed = Recalibration learned a value outside its limits.
code-calibration-missing = A program began, but the board was never calibrated.
code-cam-lost = The mode shifter did not reach its position in time.
code-drain-slow = The tub was not empty in time.
code-fill-none = The level did not move although a valve was open.
code-fill-slow = The level was not reached in time.
code-level-lost = The level fell although nothing was draining.
code-lock-not-proven = The lock was driven, but no line came back through its contact.
code-lock-not-released = The lock was let go, but line still comes back through its contact.
code-motor-no-current = The motor was driven, but no current flowed.
code-motor-overheated = The motor current vanished in the middle of a run.
code-motor-overload = The motor current stayed high after the start.
code-pressure-range = The pressure signal left its valid range.
code-pulses-none = The motor drew current, but no speed pulses came.
code-pulses-weak = Speed pulses came, but too few.
code-spin-not-reached = The spin speed was not reached in time.
code-supply-low = The supply sagged while the motor was driven.
code-thermistor-range = The thermistor signal left its valid range.
code-unbalance = The speed swung within each turn: the load sits to one side.
code-water-not-warm = Warm water was wanted and it stayed cold.
code-water-too-hot = The water came hotter than wanted.
code-water-unexpected = The level rose with both valves shut.

## common

common-cancel = Cancel
common-close = Close
common-no = No
common-yes = Yes

## component

component-belt = Drive belt
component-board = Control board
component-cord = Power cord
component-dial = Dial
component-drain-hose = Drain hose
component-drain-pump = Drain pump
component-filter = Mains filter
component-floor = Feet and floor
component-harness = Wiring harness
component-inlet-cold = Cold inlet valve
component-inlet-hoses = Inlet hoses
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
component-supply = Outlet
component-taps = Taps
component-thermistor = Water thermistor
component-tub = Tub

## condition

condition-new = new
condition-rebuilt = rebuilt
condition-used = used, as it is

## course

course-doubles = Two at once
course-entry-drill = Getting in
course-exam = Examination
course-intermittents = Now and then
course-look-alikes = Look-alikes
course-nothing-found = Odd calls
course-reading-drill = Reading codes
course-single-fault = One fault

## deed

deed-arrived-dark = Last wash: the console is dark
deed-arrived-finished = Last wash: it came to its end
deed-arrived-not-asked-for = Last wash: never started, the worn dial slipped
deed-arrived-open = Last wash: it never ended
deed-arrived-stopped = Last wash: stopped with code { $code }
deed-fit = fit { $part }
deed-note-code = note code { $code }
deed-order = order { $part }
deed-ran-dark = Wash: the console went dark
deed-ran-finished = Wash: it came to its end
deed-ran-open = Wash: it did not end
deed-ran-stopped = Wash: stopped with code { $code }
deed-read-codes = Service mode: read the codes
deed-recalibrated-dark = Recalibration: the console went dark
deed-recalibrated-finished = Recalibration: passed
deed-recalibrated-open = Recalibration: it did not end
deed-recalibrated-stopped = Recalibration: stopped with code { $code }
deed-report = hand in the report

## dial

dial-at = Dial at { $position }
dial-switch-at = Switch at { $position }

## dimension

dimension-cost = Time and money
dimension-entry = Entry
dimension-proof = Proof
dimension-reading = Reading
dimension-reasoning = Reasoning
dimension-safety = Safety

## do

do-bail-out = Bail the tub out
do-close-cabinet = Put the panels back (C)
do-close-lid = Put the lid down (L)
do-discharge = Bleed the stored charge (D)
do-fit = Fit it
do-hold = Hold the display
do-inspect = Look and feel
do-leads = Put the spare leads on
do-lift = Lift the probes
do-measure = Measure and note
do-meter-fuse = Put a new fuse in the meter
do-open-cabinet = Take the panels off (C)
do-open-lid = Lift the lid (L)
do-order = Order
do-plug = Plug in (P)
do-pull = Pull this connector
do-put-right = Put right
do-release = Let the display go
do-return = Take it back
do-seat = Push this connector back on
do-test-meter = Try the meter on the proving source
do-unplug = Pull the plug (P)

## doubt

doubt = Is it the control or my hand?
doubt-cleared = A try got in: the control reads the gesture. The tries that failed were the hand or the dial.
doubt-control = the control is suspect
doubt-go-on = After { $tries } failed tries the control is bad with { $share } %. That says nothing yet: try again, at an even pace.
doubt-hand = it is the hand
doubt-intro = From the timing of each try and the wear of this dial: how likely a sound control would have let it in. A try that broke a window says nothing about the control. Dashed: Wald’s bounds at 5 % risk either way.
doubt-suspect = After { $tries } failed tries the control is bad with { $share } %. Now it is worth measuring at the control.

## drill

drill-again = Another round
drill-check = Check (Enter)
drill-entered = Service mode entered
drill-entry-broke = Not entered: { $rule }.
drill-entry-every = one step every { $ms } ms: the best rhythm for your hand on this panel
drill-entry-left = Turn left
drill-entry-metronome = Metronome
drill-entry-no-rhythm = Do the gesture: your rhythm and what it promises stand here afterwards.
drill-entry-plot = Chance of entry over the time of a step. Dashed: the best rhythm. Dots: your tries, the last one big.
drill-entry-rhythm = Your last rhythm: { $mean } ms a step, spread { $spread } ms. Chance of entry at this rhythm: { $odds }.
drill-entry-right = Turn right
drill-entry-wear = The dial’s detents are { $wear } worn.
drill-hint-code-look-up = Tick with the digits or by clicking, then check.
drill-hint-entry-timing = Do the gesture with the keys (arrow keys turn), the wheel or the buttons on the screen.
drill-hint-lamp-reading = Type two digits, then check.
drill-hint-metering = Choose row by row, with the digits or by clicking.
drill-hint-next-test = Choose with a digit or by clicking, then check.
drill-hint-part-choice = Choose with a digit or by clicking, then check.
drill-lamps-ask = Which number do the lamps show?
drill-lamps-back = Back
drill-lamps-digit-right = { $place }: { $shown }, and you read { $read }.
drill-lamps-digit-wrong = { $place }: { $shown }, but you read { $read }.
drill-lamps-invented = A language made up for this question
drill-lamps-matrix = Which digit was read as which
drill-lamps-matrix-how = Rows: the digit shown. Columns: the digit read.
drill-lamps-share = Digits misread: { $share }
drill-leave = Back to practice
drill-leave-key = Leave (Esc)
drill-look-up-all = All of them, and nothing else.
drill-look-up-ask = Code { $code } is stored. Tick every component that this board’s sheet lists behind it.
drill-look-up-excerpt = From the code table of the service sheet:
drill-look-up-left-out = Left out: { $components }.
drill-look-up-missed = belongs here too
drill-look-up-not-listed = Not behind this code: { $components }.
drill-meter-ask-bulk = Is the bulk capacitor charged as it should be? Measure { $pins }.
drill-meter-ask-current = Does the drain pump draw the right current in its test? { $component }, wire at { $pins }.
drill-meter-ask-driven = { $component }: does its voltage arrive while its test runs? Measure { $pins }.
drill-meter-ask-fuse = Is the line fuse whole? Measure { $pins }.
drill-meter-ask-input = Is the thermistor’s input right, as the board sees it? The room is at 20 °C. Measure { $pins }.
drill-meter-ask-level = { $component }: is its signal right with an empty tub? Measure { $pins }.
drill-meter-ask-mains = Is the mains voltage right at the cord’s ends, at rest? Measure { $pins }.
drill-meter-ask-open = { $component }: nothing may pass here. Is it shorted or welded? Measure { $pins }.
drill-meter-ask-pulses = { $component }: do its pulses come in the spin test at 400 rev/min? Measure { $pins }.
drill-meter-ask-rail = { $component }: does its supply arrive? Measure { $pins }.
drill-meter-ask-thermistor = { $component }: is it sound? The room is at 20 °C. Measure { $pins }.
drill-meter-ask-winding = { $component }: is this winding sound? Measure { $pins }.
drill-meter-ask-wire = Is this wire whole from the board to its end? Measure { $pins }.
drill-meter-first = The probes go on once state, setting and range are chosen.
drill-meter-mode = How is the meter set?
drill-meter-open = OL: nothing passes
drill-meter-out = Out of tolerance
drill-meter-range = What does a sound one show?
drill-meter-reading = Taken rightly, the meter shows:
drill-meter-sheet = The service sheet says:
drill-meter-state = In what state of the machine?
drill-meter-state-bled = unplugged, charge bled
drill-meter-state-live = plugged in and at work
drill-meter-state-pulled = unplugged, charge bled, its plug pulled off
drill-meter-state-unplugged = just unplugged
drill-meter-verdict = What does the reading say?
drill-meter-why-bled = A resistance is measured on a dead circuit: plug out and the stored charge bled. The wire stays in its plugs, its two ends are what is measured.
drill-meter-why-live = A voltage, current or frequency is there only while the machine is plugged in and at work: only if you are trained and allowed.
drill-meter-why-mode = Another setting measures something else.
drill-meter-why-out = It lies outside the limits: this one is not sound.
drill-meter-why-pulled = A load is measured by itself, on a dead circuit: plug out, stored charge bled, and its own plug off, or what hangs beside it is measured too.
drill-meter-why-range = A sound one shows another value.
drill-meter-why-within = It lies within the limits: this one is sound.
drill-meter-within = Within tolerance
drill-next = Next (Enter)
drill-next-test-ask = Which of these now makes the whole repair cheapest?
drill-next-test-belief = Likeliest causes
drill-next-test-codes = Codes stored: { $codes }
drill-next-test-cost = costs { $cost } now
drill-next-test-no-codes = No codes stored.
drill-next-test-repair = whole repair: { $most } expected
drill-next-test-repair-between = whole repair: { $least } to { $most } expected
drill-next-test-tested = Done already: { $test }
drill-not-entered = Not entered
drill-nothing = There is nothing to ask from: what every fault shows on a board is not worked out yet on this computer.
drill-part-ask = That is proved. Which number do you order for this machine?
drill-part-right = New, current, and it ends this fault on this machine.
drill-part-wrong-board = For another machine: it does not fit this one.
drill-part-wrong-component = Another component ({ $component }): it would leave the fault where it is.
drill-part-wrong-fault = The kit mends something else of this component.
drill-part-wrong-not-new = It is { $condition }: with a chance of { $chance } it brings a fault of its own.
drill-part-wrong-superseded = An old number: { $part } has taken its place.
drill-question = Question { $number } of { $of }
drill-right = Right
drill-seconds = { $seconds } s
drill-summary-median = Median time of an answer: { $seconds } s
drill-summary-more = Each round draws other boards and other questions.
drill-summary-right = { $right } of { $of } right
drill-wrong = Not right

## finding

finding-air-hose-blocked = No air passes when you blow through the pressure hose.
finding-air-hose-cracked = The pressure hose has a crack near its end.
finding-basket-stiff = The basket turns stiffly and rumbles.
finding-belt-off = The belt is broken and lies under the pulleys.
finding-belt-slack = The belt is slack and shiny.
finding-bolt-stiff = The lock’s bolt is stiff and barely moves.
finding-cold-tap-shut = The cold tap is shut.
finding-cold-tap-throttled = The cold tap is nearly shut: little comes.
finding-cord-browned = The plug is browned on one side, and the cord is hard where it goes in.
finding-dial-soft = The dial’s clicks are soft; it slips past some of them.
finding-fuse-wire-gone = The wire in the fuse is gone.
finding-gap-wide = The speed pickup is bent away from its magnets.
finding-gear-stripped = The shifter’s gear spins without turning its cam.
finding-hose-clogged = The drain hose is stuffed with lint inside.
finding-hose-end-high = The standpipe is far too high for the pump.
finding-hose-end-low = The end of the drain hose lies far too low.
finding-hose-kinked = The drain hose is kinked behind the machine.
finding-hose-too-deep = The drain hose is pushed deep down into the standpipe.
finding-hoses-crossed = The hot hose is on the cold valve, and the cold one on the hot valve.
finding-hot-tap-shut = The hot tap is shut.
finding-hot-tap-throttled = The hot tap is nearly shut: little comes.
finding-impeller-fouled = Hair and threads are wound around the pump’s impeller.
finding-impeller-stuck = The pump’s impeller cannot be turned.
finding-laundry-one-sided = The laundry lies in a lump on one side.
finding-machine-rocks = The machine rocks: one foot hangs in the air.
finding-motor-hot = The motor is too hot to touch for long.
finding-nothing = Nothing to see.
finding-outlet-browned = The outlet is browned around one contact, and the plug sits loose.
finding-pin-burnt = A connector pin is discoloured and smells burnt.
finding-relay-scorched = A relay on the board is browned and smells burnt.
finding-screen-clogged = The valve’s screen is clogged with grit.
finding-shaft-stiff = The motor’s shaft turns stiffly by hand.
finding-suds = Thick suds stand in the basket.
finding-too-much-laundry = The basket is crammed full.
finding-tub-drips = There are fresh drip marks under the tub.
finding-valve-trickles = Water trickles through the shut valve.

## found

found-empty = You have not looked at anything yet.

## hands

hands = Hands

## happening


## keep

keep-down = { $button } stays down
keep-how = Shift or the other mouse button keeps a button down; so does “Keep a button down” over the picture. Press the button once more to let it go.
keep-let-go = Let it go
keep-next = Keep a button down

## kept

kept-delete = Delete
kept-delete-sure = Delete for good?
kept-finished = handed in
kept-go-on = Go on
kept-go-on-last = Go on where you left off
kept-in-browser = Kept in this browser, on this computer, in the same format as the files of the installed program.
kept-in-folder = Kept in { $place }
kept-jobs = Jobs
kept-load = Load an attempt from a file
kept-look = See the result
kept-mine = My attempts ({ $count })
kept-none = Nothing here yet. An attempt is kept from its first action on.
kept-save = Save a copy
kept-taken = { $detail } is among your attempts now.
kept-unfinished = unfinished, { $actions } actions in { $minutes } min

## key

key-back = Step back, stop waiting
key-cabinet = Panels off or on
key-discharge = Bleed the stored charge
key-focus = Next field, press it
key-hide = Hide or show the panels
key-keep = With a button: keep it down until it is pressed again
key-keys = This list
key-lid = Lid up or down
key-more-less = More, Less: press, or hold
key-plug = Plug in or out
key-speed = Time slower, faster
key-start = Start: press, or hold
key-stop = Stop: press, or hold
key-tabs = Sheet, meter, parts, report, score
key-turn = Turn the knob by one step
key-views = Console, machine, inside
key-wait = Wait one minute
key-wait-long = Wait ten minutes

## keys

keys-title = Keys

## known

known-caution = the caution that came before it
known-sheet = the windows and rests on the service sheet

## lamps

lamps-hold = Fault hold
lamps-idle = Waiting
lamps-program = Program
lamps-recalibration = Recalibration
lamps-service = Service mode
lamps-test = Load test

## language

language-choose = Language

## learner

learner-changed = Not kept: { $detail } was changed or deleted meanwhile and is left as it is. Choose the learner again.
learner-damaged = This learner’s file cannot be used and is left as it is: { $detail }
learner-no-name = A name needs a letter or a digit.
learner-refused = Not kept: { $detail }. Check the free space and that you may write there.
learner-taken = There is a learner called “{ $detail }” here already. Choose another name.

## leave

leave-job = Leave this job

## look

look = Look, feel, turn by hand
look-intro = Takes a minute each. Parts behind the panels need the panels off and the plug out.

## lost

lost-bought-on-the-code = Part { $part } was ordered before any reading told something. A code names what the control saw, not the bad part: measure first.
lost-code-not-noted = The control raised code { $code } and you never noted it. Read the code list page by page and write each one down.
lost-discharged-live = The capacitor was discharged with the plug in: the mains kept it charged, and the resistor burned. Pull the plug first.
lost-discharged-unmeasured = The charge was bled and nobody measured afterwards. A resistor with a bad contact discharges nothing: measure V = from bulk.plus to bulk.minus before hands go in.
lost-failed-try = A try at service mode failed: { $rule }. Read the trace, leave everything at rest, then try again at an even pace.
lost-flood = A part was opened with water above it, and the floor was flooded. Drain or bail the tub out first.
lost-good-board-replaced = A sound control board was replaced. Prove that the board’s inputs are right and its output is wrong before you buy one.
lost-hand-in-drive = A hand was in the basket or at the drive while it turned: it breaks fingers and arms. Wait until it stands.
lost-lid-spinning = The lid was opened while the basket turned. Wait until it stands: it can break an arm.
lost-live-not-allowed = You measured live in a job that does not allow it. Here the fault had to be found with the plug out.
lost-lucky-repair = The machine runs again, but by luck: the report says “{ $said }”; it was “{ $truth }”. Prove which part has failed before you fit one: the next machine will not be so kind.
lost-meter-not-proved = The circuit was tested, but the meter was not tried on a known source before and after. A dead meter shows a dead circuit everywhere: known source, circuit, known source, then hands.
lost-misread = You noted { $noted }, but the lamps had not shown it. Add up each group of four lamps again. Codes shown in this job: { $shown }
lost-never-entered = Service mode was never entered, so the stored codes stayed unread. Follow the gesture on the service sheet.
lost-no-evidence = The report cites no reading from before the repair. Tick the readings that show the cause.
lost-no-proving-run = No program ran to its end after the repair. Run one and watch it: only that shows that the machine washes.
lost-no-report = No report was handed in. The job ends with a written cause, part and proof.
lost-not-cured = The fault is still in the machine. Fit the part that cures it, or say so plainly to the customer.
lost-not-proved-dead = Hands went in before anyone proved the circuit dead. Wait a minute, measure V = from bulk.plus to bulk.minus, discharge, and measure again.
lost-not-recalibrated = No recalibration passed after the repair. Recalibrate, so that the control learns the machine as it is now.
lost-ohms-on-live = Ohms were measured on a live or charged circuit. Pull the plug and bleed the charge before you choose Ω.
lost-opened-live = The cabinet was opened with the plug in. Pull the plug first and keep it in your sight.
lost-over-budget = Parts and work came to { $bill }; the customer had agreed to { $budget }. Ask before you go over what was agreed.
lost-over-repair-limit = Parts and work came to { $bill }; above { $limit } this machine is not worth repairing. Say so before you spend the money.
lost-overspent = You spent { $spent }; the repair needed { $needed }. The rest bought nothing for the customer.
lost-rest-too-short = Unplugged for only { $seconds } s: the control still had its charge, so nothing was reset. Give it a full minute.
lost-rivals-left = The readings cited leave { $open } of { $rivals } other causes open. Measure what tells them apart, and cite it.
lost-scald = Hands were in water that burns. Let the pump take it out, or let it cool.
lost-shock = Electric shock: something live was touched. Pull the plug, keep it in your control and prove it dead before hands go in.
lost-slow = The work took { $minutes } minutes; { $par } would do. Plan the next measurement before you pick up the tool.
lost-touched-charge = A shock from stored charge: hands were inside before it was gone. Wait a minute, discharge it, and prove it dead with the meter.
lost-wrong-advice = You told the customer: “{ $given }”. What was wrong with the machine calls for: “{ $due }”.
lost-wrong-cause = The report says “{ $said }”; it was “{ $truth }”. Let the readings, not the code, name the cause.
lost-wrong-part = A part was fitted that does not cure the fault. Rule the other suspects out by measuring before you buy.
lost-wrong-part-named = The report names part { $named }; needed was { $needed }. Name the part for the component that failed, one that fits this machine.

## meter

meter-beep = beep
meter-black = Black probe
meter-choose = choose a pin below
meter-clips = Clips
meter-dead = The meter’s fuse has blown
meter-fingers = fingers on the tips
meter-grip = Probes held by
meter-grip-fingers = Fingers
meter-held = HOLD
meter-mode-continuity = Beep
meter-red = Red probe
meter-test-bad = The meter does not show what is known to be there: look at its fuse and its leads.
meter-test-good = The meter shows what is known to be there.
meter-test-intro = Known source: 50 V ~, 50 V = and 100 Ω. Try it before and after you prove a circuit dead.

## misread

misread-count = Count again: tens first, then units.
misread-lamps = { $count ->
    [one] One lamp differs.
   *[other] { $count } lamps differ.
}
misread-noted = You noted { $code }
misread-shown = Shown was { $code }

## mode

mode-belt-broken = Drive belt broken
mode-belt-slipping = Drive belt slipping
mode-board-bleeder-open = Control board: bleeder resistor open
mode-board-cold-switch-welded = Control board: cold valve switch welded
mode-board-current-input-drift = Control board: motor current input drifting
mode-board-hot-switch-open = Control board: hot valve switch dead
mode-board-lock-switch-open = Control board: lock switch dead
mode-board-lock-switch-welded = Control board: lock switch welded
mode-board-memory-lost = Control board: memory wiped, recalibrate
mode-board-motor-a-switch-open = Control board: motor A switch dead
mode-board-motor-a-switch-tired = Control board: motor A switch fails when warm
mode-board-motor-b-switch-scorched = Control board: motor B switch scorched
mode-board-pump-switch-open = Control board: pump switch dead
mode-board-pump-switch-welded = Control board: pump switch welded
mode-board-sensor-rail-dead = Control board: sensor supply dead
mode-board-shifter-switch-open = Control board: shifter switch dead
mode-board-supply-dead = Control board: switching supply dead, capacitor still charged
mode-board-thermistor-input-drift = Control board: thermistor input drifting
mode-cord-open-line = Power cord: line conductor open
mode-cord-weak-joint = Power cord: weak joint at the plug
mode-dial-worn = Dial: detents worn
mode-drain-hose-blocked = Drain hose blocked
mode-drain-hose-end-high = Drain hose: standpipe too high
mode-drain-hose-end-low = Drain hose: end too low
mode-drain-hose-kinked = Drain hose kinked
mode-drain-hose-too-deep = Drain hose: pushed too deep into the standpipe
mode-drain-pump-fouled = Drain pump: threads around the impeller
mode-drain-pump-open-winding = Drain pump: open winding
mode-drain-pump-seized = Drain pump: rotor seized
mode-filter-open-choke = Mains filter: choke open
mode-floor-not-level = Machine rocks on its feet
mode-harness-cold-wire-open = Harness: cold valve wire open
mode-harness-hot-wire-open = Harness: hot valve wire open
mode-harness-lock-coil-wire-open = Harness: lock winding’s wire open
mode-harness-lock-return-burnt = Harness: burnt pin in the lock’s return
mode-harness-lock-return-loose = Harness: loose pin in the lock’s return
mode-harness-motor-common-burnt = Harness: burnt pin in the motor’s common
mode-harness-motor-wire-shaken = Harness: motor common wire breaks when shaken
mode-harness-pickup-ground-shaken = Harness: pickup ground wire breaks when shaken
mode-harness-pickup-wire-open = Harness: pickup signal wire open
mode-harness-pressure-supply-wire-open = Harness: pressure sensor’s supply wire open
mode-harness-pressure-wire-open = Harness: pressure signal wire open
mode-harness-pump-wire-open = Harness: pump wire open
mode-harness-shifter-wire-open = Harness: shifter wire open
mode-harness-thermistor-pin-damp = Harness: thermistor pin fails when damp
mode-harness-thermistor-wire-open = Harness: thermistor wire open
mode-inlet-cold-blocked-screen = Cold inlet valve: screen blocked
mode-inlet-cold-open-winding = Cold inlet valve: open winding
mode-inlet-cold-stuck-open = Cold inlet valve: does not shut
mode-inlet-hoses-crossed = Inlet hoses swapped
mode-inlet-hot-blocked-screen = Hot inlet valve: screen blocked
mode-inlet-hot-open-winding = Hot inlet valve: open winding
mode-inlet-hot-stuck-open = Hot inlet valve: does not shut
mode-laundry-overload = Laundry: far too much
mode-laundry-suds = Laundry: far too much suds
mode-laundry-uneven = Laundry: lump on one side
mode-lid-lock-bolt-stiff = Lid lock: bolt stiff
mode-lid-lock-contact-damp = Lid lock: line contact fails when damp
mode-lid-lock-contact-open = Lid lock: line contact burnt
mode-lid-lock-contact-welded = Lid lock: line contact welded
mode-lid-lock-lid-switch-open = Lid lock: lid switch stays open
mode-lid-lock-open-winding = Lid lock: actuator winding open
mode-line-fuse-blown = Line fuse blown
mode-motor-bearing-dry = Motor: bearing running dry
mode-motor-open-winding-a = Motor: winding A open
mode-motor-open-winding-b = Motor: winding B open
mode-motor-seized = Motor: bearings seized
mode-motor-shorted-turns = Motor: shorted turns
mode-motor-winding-opens-hot = Motor: winding B opens when hot
mode-nothing = Nothing was wrong
mode-pickup-gap-wide = Speed pickup: too far from its magnets
mode-pickup-no-output = Speed pickup: no output
mode-pressure-hose-blocked = Pressure hose blocked
mode-pressure-hose-leaking = Pressure hose: leaks air
mode-pressure-sensor-no-output = Pressure sensor: no output
mode-pressure-sensor-slope-drift = Pressure sensor: sensitivity drifting
mode-pressure-sensor-zero-drift = Pressure sensor: zero has drifted
mode-run-capacitor-fading = Run capacitor: losing capacitance
mode-run-capacitor-open = Run capacitor open
mode-run-capacitor-shorted = Run capacitor shorted
mode-shifter-cam-switch-closed = Mode shifter: cam switch stays closed
mode-shifter-cam-switch-open = Mode shifter: cam switch stays open
mode-shifter-open-winding = Mode shifter: open winding
mode-shifter-stripped-gear = Mode shifter: gear stripped
mode-supply-loose-outlet = Outlet: loose contact
mode-supply-low-mains = Outlet: mains voltage too low
mode-taps-cold-shut = Cold tap shut
mode-taps-cold-throttled = Cold tap nearly shut
mode-taps-hot-shut = Hot tap shut
mode-thermistor-drifting = Thermistor drifting
mode-thermistor-open = Thermistor open
mode-thermistor-shorted = Thermistor shorted
mode-tub-bearing-rough = Tub: basket bearing rough
mode-tub-leaking = Tub: seal leaks

## monitor

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

## name

name-dial = Dial: drag, scroll or use the arrow keys
name-less = Less (K)
name-lid = Lid (L)
name-more = More (I)
name-plug = Mains plug (P)
name-start = Start (S)
name-stop = Stop (X)
name-switch = Switch: drag, scroll or use the arrow keys

## note

note-code = Code as you read it
note-code-do = Note it

## notebook

notebook = Notebook
notebook-empty = No readings yet.
notebook-live = live

## noted

noted-codes = Noted:

## number

number-hold = the code
number-idle = the minutes it will take
number-program = the minutes left
number-recalibration = the stage
number-service = the position chosen
number-test = the seconds left

## part

part-belt = Drive belt
part-board = Control board
part-board-keys = Control board with keys
part-board-one-lamp = Control board with one lamp
part-board-other = Control board, narrow model
part-contact-kit = Contact cleaner and grease
part-cord = Supply cord with plug
part-dial = Dial with detent ring
part-drain-hose = Drain hose
part-drain-pump = Drain pump
part-drain-pump-other = Drain pump, narrow model
part-filter = Mains filter
part-harness = Wiring harness
part-inlet-cold = Cold inlet valve
part-inlet-hot = Hot inlet valve
part-lid-lock = Lid lock with lid switch
part-lid-lock-other = Lid lock, left-hand model
part-line-fuse = Line fuse
part-motor = Motor
part-motor-other = Motor, narrow model
part-note-measure-first = Cannot be returned once unpacked: measure before you buy
part-note-other-machine = Made for another machine; its mounting differs
part-note-visit = A visit, not a part. Local rules say who may do this work
part-pickup = Speed pickup
part-pressure-hose = Pressure hose with clamps
part-pressure-sensor = Pressure sensor
part-run-capacitor = Run capacitor
part-shifter = Mode shifter with cam switch
part-supply-electrician = Visit by a licensed electrician (outlet and mains)
part-thermistor = Water thermistor
part-tub-seal = Tub seal set

## parts

parts = Parts counter
parts-boards = for board: { $boards }
parts-fitted = Fitted
parts-intro = Invented numbers and prices. What you buy, the customer pays.
parts-price = price { $price }
parts-rates = Labour { $labour } an hour. A part that was not fitted can go back for { $fee } % of its price. Above { $limit } for parts and work, a new machine is the better buy.
parts-revision = rev { $revision }
parts-superseded = replaced by { $part }
parts-wait = comes in { $hours } h

## pin

pin-bulk-minus = Bulk −
pin-bulk-plus = Bulk +
pin-fuse-in = Line fuse, supply side
pin-fuse-out = Line fuse, machine side
pin-plug-earth = Plug, earth
pin-plug-line = Plug, line
pin-plug-neutral = Plug, neutral

## practice

practice-all = All drills
practice-answers = { $right } of { $count } answers right
practice-back = Back to the start
practice-begin = Begin
practice-browser = Learners are kept in this browser’s own storage, on this computer only.
practice-chart-confusion = Digits read off lamps
practice-chart-confusion-none = No digit has been read off lamps yet.
practice-chart-confusion-read = read
practice-chart-confusion-shown = shown
practice-chart-confusion-sound = No digit was confused.
practice-chart-confusion-worst = Most often confused: { $shown } read as { $read } (× { $count }).
practice-chart-known = { $name }: how likely each skill is known now
practice-chart-retention = Of what is known now, what will still be there
practice-chart-retention-axis = days from now
practice-chart-retention-none = Practise something: then this shows how it fades.
practice-chart-rhythm = Rhythm at the entry gesture
practice-chart-rhythm-axis = Time from step to step on each practice day, ms, and its spread
practice-chart-rhythm-none = No try at an entry gesture has been timed yet.
practice-choose = Learner
practice-create = Add
practice-delete = Delete this learner
practice-delete-keep = Keep
practice-delete-sure = Delete { $name } and all answers for good?
practice-due = review due
practice-export-csv = Save answers (CSV)
practice-export-png = Save picture (PNG)
practice-exported = Saved: { $place }
practice-folder = Learners are kept as plain files in { $place }.
practice-guest = Guest
practice-guest-note = A guest’s answers are not kept: they are gone when the program ends. Add a learner to keep them.
practice-job-gone = This job is not here any more.
practice-known = { $known } % known
practice-mastered = mastered
practice-name = New learner’s name
practice-new = not practised yet
practice-next = Next
practice-not-exported = Not saved: { $detail }
practice-tab-practice = Practice
practice-tab-progress = Progress
practice-target = Aim at { $target } % right answers
practice-target-note = Lower is harder. An instructor may set it for a learner.
practice-title = Practice
practice-unkept = Answers are not kept here: they are gone when the program ends.
practice-why-fades-first = Everything is mastered and no review is due; of it all, “{ $exercise }” fades first.
practice-why-nearest = Of what is open to you, “{ $exercise }” comes nearest your target of { $target } %: about { $expected } % right is to be expected.
practice-why-new = You have not practised “{ $exercise }” yet, and with about { $expected } % right to be expected it comes nearest your target of { $target } %.
practice-why-review = “{ $exercise }” was mastered and is due for review: without one it fades, and about { $expected } % right is to be expected now.

## program

program-empty-and-spin = Empty and spin
program-everyday = Everyday
program-gentle = Gentle
program-hot = Hot
program-rinse-and-spin = Rinse and spin
program-short = Short
program-soak = Soak

## refusal

refusal-already-so = It is so already.
refusal-cabinet-closed = Take the cabinet panels off first.
refusal-does-not-fit = Part { $part } does not fit this machine.
refusal-finished = The job is finished: the report was handed in.
refusal-lid-closed = Lift the lid first.
refusal-lid-locked = The lid is locked.
refusal-needs-part = Hands alone cannot put this right: it takes a part, or a licensed person.
refusal-no-button = There is no such button here.
refusal-no-cause = That cause is not in the catalogue. Choose one from the list.
refusal-no-connector = There is no such connector here.
refusal-no-part = The counter has no part { $part }.
refusal-no-reading = There is no such reading in the notebook.
refusal-not-in-hand = Order part { $part } first.
refusal-nothing-to-hold = The meter shows nothing to hold. Put the probes on first.
refusal-plug-in-outlet = Pull the plug first: its blades are in the outlet.

## report

report-advice = Advice to the customer
report-cause = What was wrong
report-cause-again = Two faults can be there: choose again to add one or take one away.
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

## reset

reset-hold = Hold { $button } for { $seconds } s.
reset-hold-not = Holding a button does nothing on this board.
reset-lid = Lift the lid and put it down { $times } times within { $seconds } s.
reset-lid-not = Moving the lid does nothing on this board.
reset-power = Pull the plug and leave it out for one minute.

## review

review-best = The best way
review-cost = Cost so far
review-intro = Each bar: how likely each cause was after that deed. In green: what it was. The cost counts work, parts and the wait for parts.
review-none = No way can be shown: there is no table of this board’s faults.
review-working = Working out your way and the best one…
review-others = all others
review-sound = better: { $step }
review-stop = { $minutes } min · { $money }
review-title = Two ways through this job
review-yours = Your way

## routine

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

## rule

rule-hold-too-long = the hold was too long
rule-hold-too-short = the hold ended too early
rule-late = the input came too late
rule-out-of-order = another input was due
rule-press-too-long = the press was too long
rule-too-few-detents = too few detents were turned
rule-too-many-detents = too many detents were turned
rule-window-over = the time ran out
rule-wrong-way = the dial turned the wrong way

## score

score-at = { $minutes } min after you came
score-failed = Failed, whatever else was won. { $why }
score-goal = What this job teaches: { $goal }
score-losses = Points lost
score-none-lost = None. Well worked.
score-not-passed = Not passed yet: { $percent } % is needed.
score-not-yet = The score comes with the report. Until then, here is how your tries at service mode went.
score-passed = Passed: { $percent } % was needed.
score-total = { $kept } of { $of } points

## sheet

sheet-codes = Codes
sheet-codes-intro = A code says what the control saw, not which part is bad. Measure before you buy.
sheet-entry = Entry
sheet-entry-again = After a try that failed: pull the plug, wait until the control is dead, begin again.
sheet-entry-before = Into service mode: no program running, then, without a pause:
sheet-entry-before-power = Into service mode: pull the plug and wait until the control is dead; then:
sheet-entry-from = First the knob must stand at { $position }.
sheet-entry-rest = Before a new try leave the panel and the lid alone for { $seconds } s.
sheet-entry-skip = A fast turn can skip a detent.
sheet-entry-window = The whole gesture within { $seconds } s.
sheet-invented = An invented board, for training only.
sheet-lamps = Lamps
sheet-lamps-example = This example reads { $number }.
sheet-lamps-lock = The lock lamp blinks for any fault hold. That does not mean the lock is bad.
sheet-lamps-no-lock = This board has no lock lamp: whether the lid is locked, the lid tells.
sheet-lamps-pages = In the code list each press of { $button } turns to the next page, the newest code first.
sheet-menu = Menu
sheet-menu-clear = To clear the codes keep Start down for { $seconds } s.
sheet-menu-intro = In service mode: choose a position, press Start.
sheet-pins = Wires
sheet-pins-intro = Pin, printed mark, and where the wire ends.
sheet-programs = Programs outside service mode
sheet-reset = Leaving a fault hold
sheet-sights = What the lamps show
sheet-tens = tens
sheet-units = units
sheet-wires-intro = On the left the pin on the board with its printed mark, on the right the terminal where the wire ends. Mains wires are brown. A click puts the next probe there.

## side

side-board = board side
side-harness = harness side
side-load = at the load

## sight

sight-all = { $lamps ->
    [one] lit
   *[other] all lit
}
sight-bar = { $number }, as a row of lamps that grows from the left
sight-blink = { $lamps ->
    [one] blinking
   *[other] all blinking
}
sight-dark = { $lamps ->
    [one] dark
   *[other] all dark
}
sight-number = { $number }
sight-number-and = { $number }, in turn with this
sight-still = this
sight-turns = these two in turn

## signal

signal-caution = CAUTION
signal-danger = DANGER
signal-notice = NOTICE
signal-warning = WARNING

## signs

signs-flashes = One lamp flashes the number: count the long flashes for the tens, then the short ones for the units. After a pause it begins again.
signs-pictures = Each number has a picture of its own; find it in the list.
signs-segments = Two digits show the number.
signs-weights = The lamps show two digits at once. In each group add up the numbers under the lit lamps.

## skill

skill-code-look-up = Looking up codes
skill-entry-timing = Entry gesture
skill-lamp-reading = Reading lamps
skill-metering = Using the meter
skill-next-test = Choosing the next test
skill-part-choice = Choosing the part
skill-proof = Proving it
skill-safe-work = Safe work

## sound

sound-agitator-swish = agitator swishes
sound-ask-first = say what it will cost and ask before going on
sound-bail-out = drain or bail the tub out first
sound-buy-needed = buy only what the readings call for
sound-cabinet-shake = cabinet shakes
sound-dead-test = find it with the plug out
sound-discharge = bleed the charge and see it gone
sound-floor-wet = { $litres } L on the floor
sound-let-cool = let the pump take hot water out, or let it cool
sound-lock-held = lid lock holds
sound-measure-dead = measure that the charge is gone before hands go in
sound-measure-first = measure before buying
sound-motor-free = motor runs, nothing follows
sound-motor-hum = motor hums, does not turn
sound-none = quiet
sound-note-codes = write every code down while it is shown
sound-ohms-dead = plug out and charge bled before Ω
sound-part-number = name the part by the number on the sheet that fits this board
sound-prove-meter = try the meter on the known source before and after
sound-pump-buzz = pump buzzes, stuck
sound-pump-hum = pump hums
sound-read-twice = read the lamps twice before writing the code down
sound-recalibrate = recalibrate after the repair
sound-report = name what the readings prove
sound-rest = leave the plug out for the full minute
sound-run = run a program to its end and watch
sound-second-visit = stay until it is cured, or say plainly that it is not; otherwise somebody comes once more
sound-shifter-tick = shifter ticks
sound-shorter-way = take the measurement that tells most for its time
sound-spin-whirr = basket spins
sound-steady-hand = an even pace within the windows of the sheet
sound-unplug = pull the plug first
sound-valve-buzz = valve buzzes, no water
sound-wait-spin = wait until the basket stands
sound-water-rush = water rushes in

## spot

spot-bulk = Bulk capacitor on the board
spot-fuse = Line fuse
spot-plug = Mains plug

## stage

stage-cam = One turn of the mode shifter
stage-coast = Waiting until the basket stands
stage-cold = Cold water in
stage-empty = Pumping the tub empty
stage-hot = Hot water in
stage-lock = Locking the lid
stage-motor-a = Motor, direction A
stage-motor-b = Motor, direction B
stage-pump = Water out
stage-spin = A short spin
stage-unlock = Releasing the lid
stage-zero = Learning the zero of the pressure sensor

## start

start-about = Every machine, board, code, part, price and customer here is invented. Training only: local codes and licensed practice come first.
start-after = Best after: { $titles }.
start-begin = Begin the job
start-minutes = About { $minutes } minutes.
start-practice = Practice
start-seed = Seed
start-seed-hint = same seed, same machine

## step

step-hold = Hold { $button } for { $from } to { $to } s
step-lid-down = Put the lid down
step-lid-up = Lift the lid
step-power-up = Plug in
step-power-up-holding = Push { $button }, keep it down, and plug in
step-press = Press { $button }
step-press-times = Press { $button } { $times } times
step-push = Push { $button } and keep it down
step-release = Let { $button } go
step-turn-left = Turn left by { $detents } detents
step-turn-right = Turn right by { $detents } detents

## tab

tab-meter = Meter
tab-parts = Parts
tab-report = Report
tab-score = Score
tab-sheet = Sheet

## ticket

ticket-hours = { $hours } h
ticket-labour = of it, work
ticket-limit = Not worth more than
ticket-live = Live tests
ticket-live-no = not allowed
ticket-live-yes = allowed
ticket-mains = Mains
ticket-minutes-of = { $minutes } of { $par } min
ticket-money = Money
ticket-money-of = { $spent } of { $budget }
ticket-waited = Waited for parts
ticket-work = Work

## top

top-keys = F1 keys
top-pause = Stop the clock

## tries

tries = Tries at service mode
tries-intro = Time runs to the right, in seconds. Shaded: the whole window. Bars: an input’s own window. Flag: the rule that broke.

## trouble

trouble-changed = { $detail } was made with another text of its job, so it cannot be gone on with here. Save a copy and open it with the Detent that made it.
trouble-damaged = This attempt is damaged ({ $detail }). Save a copy if you need it, or delete it.
trouble-differs = Done again, this attempt ends otherwise than it says, so another version of Detent made it or it was changed ({ $detail }).
trouble-elsewhere = The bench is open in another tab, and attempts are kept there. Close this one.
trouble-foreign = { $detail } is not an attempt of Detent. Choose a file that Detent saved.
trouble-full = The storage is full or failing: this attempt is not kept. Save a copy before you close this, and delete attempts that you no longer need. ({ $detail })
trouble-gone = { $detail } is not here.
trouble-newer = { $detail } was made by a newer Detent. Reload this page or install the newer one to open it; nothing of it is lost.
trouble-other = The attempt is not kept: { $detail }
trouble-refused = The browser refuses to keep attempts, as it does in a private window: save a copy before you close this. ({ $detail })

## try

try-entered = Service mode entered
try-open = Going on

## view

view-cabinet = Inside
view-machine = Machine
view-panel = Console

## wait

wait = Let time pass
wait-1-min = 1 min
wait-10-min = 10 min
wait-10-s = 10 s
wait-left = { $seconds } s to go
wait-stop = Stop
