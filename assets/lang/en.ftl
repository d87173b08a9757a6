# Every text that people see, in English: American spelling, and the words of the American trade. Where they
# differ by country, `$mains` (volts, given to every text) chooses; a `word-…` is a word that it changes.
# Sections and the keys in them stand in alphabetical order, and es.ftl has the same keys with the same
# placeables, but for those two; `cargo test --test content` checks it.

## account

account-owed = You knew: { $known }. Better: { $sound }.
account-saves = You knew: { $known }. Better: { $sound }. That would save about { $minutes } min and { $money }.
account-saves-money = You knew: { $known }. Better: { $sound }. That would save about { $money }.
account-takes = You knew: { $known }. Better: { $sound }. It takes { $minutes } min and { $money }, but it has to be done.

## advice

advice-check-outlet = Have an electrician check the outlet
advice-check-water = Have a plumber look at the water supply
advice-clean-strainer = Clean the inlet screens from time to time
advice-keep-tap-open = Keep both { word-taps } fully open
advice-less-detergent = Use less detergent
advice-level-machine = Keep the machine level
advice-no-extension-cord = Plug the machine straight into the outlet
advice-none = No advice needed
advice-replace = Replace the machine rather than repair it

## app

app-name = Detent
app-tagline = A training bench for people who repair washing machines

## area

area-basket = the tub, what is in it and how the machine stands
area-console = the control and its console
area-drain = the way that water leaves by
area-drive = the drive: motor, belt, clutch actuator, speed pickup
area-fill = the way that water comes in by
area-level = what tells the control the water level
area-lid = the lid lock
area-power = the way in for power, from the outlet to the control
area-temperature = what tells the control the temperature
area-wiring = the wires and connectors

## ask

ask = Ask the customer
ask-appliance = What are the model and serial numbers on the plate?
ask-appliance-answer = Model { $model }, serial number { $serial }
ask-demonstration = Please watch it run: is everything as it should be?
ask-happens = What happens, and when?
ask-noises = Is it making any noise that it did not make before?
ask-nothing = Nothing that I noticed.
ask-panel = What do the lights or the display show?
ask-since = How long has it been doing that?
ask-tried = What have you tried yourself?

## author

author-changed-since-packed = { $path } is not as it was when the course was packed; pack it again before you give it to anybody
author-dial-slipped = with this seed the worn dial slips before the customer’s wash, which then says nothing; choose another seed
author-difficulty = Simulated learners: { $passing } pass ({ $groups })
author-drawn-from = Drawn from { $count } failure modes, each of which was tried by its table: { $modes }
author-drawn-from-many = Drawn from { $count } failure modes; tried on { $machines } machines
author-expert = Expert: { $minutes } min (par { $par }), bill { $bill } (budget { $budget }), { $share } of the points
author-expert-fails = the scripted expert does not pass this job: { $share } of the points; look at par time, budget and what is allowed
author-expert-fails-by = the scripted expert does not pass this job ({ $share } of the points): { $why }
author-expert-none = Expert: cannot do it
author-expert-stuck = the scripted expert comes to a step that the machine refuses: { $why }
author-gesture = Entry gesture, best pace of each simulated hand: { $hands }
author-gesture-hardly-met = of the tries of a hand of usual skill only { $share } get in; widen the windows, ask for less, or wear the dial less
author-gives-away = "{ $word }" gives the failed component away ({ $component }); say what the customer sees and hears
author-guide-about-window = Note: steps that end with what the window shows: { $count }. That can only be stated, not proved.
author-guide-does-harm = what step { $step } shows goes wrong: { $why }
author-guide-ends-early = Note: it ends before the report is handed in. What comes after is not guided.
author-guide-fails = whoever does what this guide shows does not pass: { $share } of the points; look at the steps, the par time and the budget
author-guide-fails-by = whoever does what this guide shows does not pass ({ $share } of the points): { $why }
author-guide-goal-already = the goal of step { $step } is reached before the step begins, so nobody gets to see it; leave the step out, or give it another goal
author-guide-goal-missed = what step { $step } shows does not reach its goal; correct "shown" or "goal". The steps after it were not tried
author-guide-proved = Done as shown at the bench: { $proved } of { $steps } steps reach their goals.
author-guide-share = Whoever does what it shows keeps { $share } of the points.
author-guide-step-refused = step { $step } shows something that cannot be done: { $why }. The steps after it were not tried
author-guide-strays-itself = whoever follows the guide as far as step { $step } is told that this is the wrong way; correct "after", or say with "until" what ends it
author-guide-ways-astray = Note: wrong turns that it warns of: { $count }. They can only be stated, not proved.
author-hand = spread { $spread } of a step: { $share } get in at { $ms } ms
author-learners = { $level }: { $passing } pass, { $mean } ± { $spread } of the points
author-learners-advanced = advanced
author-learners-beginner = beginners
author-learners-middle = halfway
author-machine = Seed { $seed }: { $modes }
author-never-shows = "{ $mode }" shows itself neither in the customer’s wash nor in anything that this job allows; choose another fault, or allow live tests
author-no-control-to-buy = the counter has no new control for this board; add one to parts.ron
author-no-dial-to-wear = this board has no dial that could be worn; leave it out
author-no-job-for-guide = no job of this name lies beside the guide, or it has a mistake
author-no-plan = nothing could be planned: { $why }
author-no-table = nothing could be proved: there is no table of what each fault shows on this board
author-nothing-wrong = nothing wrong
author-other-code-than-drawn = "{ $mode }" is drawn for its code, but on this board the customer’s wash leaves none of { $codes }; name "{ $id }" under `without`
author-other-codes = the customer’s wash stores codes { $raised }, not { $expected }; correct the list, or the fault and its seed
author-rival-alike = nothing that this job allows tells "{ $mode }" from "{ $rival }" ({ $share } likely after the wash), and no repair cures both; allow live tests or choose another fault
author-rival-alike-same-repair = nothing that this job allows tells "{ $mode }" from "{ $rival }" ({ $share } likely after the wash); the same repair cures both
author-rival-told = Rival { $share }: { $rival } (can be told apart)
author-rival-told-same-repair = Rival { $share }: { $rival } (can be told apart; same repair)
author-rival-untold = Rival { $share }: { $rival } (nothing in the tables tells it apart)
author-rival-untold-same-repair = Rival { $share }: { $rival } (nothing in the tables tells it apart; same repair)
author-same-in-both-languages = this is the same in English and Spanish; translate it
author-severity-error = error
author-severity-warning = warning
author-shown-codes = the customer’s wash stores codes
author-shown-never = nothing shows it
author-shown-nothing = there is nothing to show
author-shown-tests = only the technician’s tests show it
author-shown-wash = the customer notices it in the wash
author-shows = How it shows: { $shown }. Codes: { $codes }
author-sound-machine-accused = a sound machine at { $volts } V is stopped or stores codes: { $monitors }; correct limits and delays
author-sound-machine-never-done = at { $volts } V a sound machine does not come to the end of its first program; correct its phases
author-sound-machine-not-recalibrated = at { $volts } V a sound machine cannot be recalibrated; correct gesture, menu, stages and bounds
author-too-dear = the scripted expert’s bill is { $bill }, more than the budget of { $budget }; allow more
author-too-slow = the scripted expert takes { $minutes } min, more than the { $par } min of this job; allow more
author-unknown-text = no text has the key "{ $key }"; use a key of the built-in files, or words
author-way = The expert’s way

## best

best-at-dead = unplugged
best-at-idle = plugged in, idle
best-at-pulled = unplugged, load disconnected
best-at-test-clutch = clutch actuator test
best-at-test-cold = cold valve test
best-at-test-hot = hot valve test
best-at-test-lock = lock test
best-at-test-motor-a = motor test, direction A
best-at-test-motor-b = motor test, direction B
best-at-test-pump = pump test
best-belief = Probabilities before and after the customer’s wash
best-bucket-cold = fill a bucket at the cold { word-tap }
best-bucket-hot = fill a bucket at the hot { word-tap }
best-code-buyer = buys by the code
best-codes = Codes stored during the customer’s wash
best-columns = Expected cost of repair, with the lowest cost any approach can reach (≥) / cost with the fault of this seed. The expert’s figure is the mean over causes of 2% and more.
best-control-swapper = replaces the control first
best-cost = Expected cost of repair if the best step is taken each time, in whole units of money
best-expert = scripted expert
best-fit = install and verify with a run
best-hand-back = recalibrate, run a wash and close the job
best-inspect = inspect
best-new-machine = stop and recommend a new machine
best-next = Expected cost of repair if this is done next (≥ the lowest possible)
best-not-asked-for = The customer’s wash never started: the worn dial slipped, and the control is set to a different program than the dial shows. That says nothing about the rest of the machine.
best-optimum = best plan
best-put-right = fix by hand
best-recalibrate = recalibrate and see the result
best-scenario = scenario
best-several = This job hides { $count } faults at once. What follows takes them one at a time: it is the best plan for the first one only.
best-tries = Failed entry tries in a row, at a calm pace and with correct timing on this dial, after which the control is the more likely cause: { $tries } for a newcomer, { $practised } for a practiced hand

## board

board-arc-dial = Arc-dial board
board-key-pad = Key-pad board
board-lone-lamp = Lone-lamp board
board-narrow-line = Narrow-line machine

## broke

broke-hold-too-long = Held too long
broke-hold-too-short = Released too early
broke-late = Too late
broke-out-of-order = Wrong input
broke-press-too-long = Pressed too long
broke-stood-too-short = Not long enough at its position without power
broke-too-few-detents = Too few detents
broke-too-many-detents = Too many detents
broke-too-soon = Too soon
broke-window-over = Time ran out
broke-wrong-way = Turned the wrong way

## bucket

bucket-at-cold = Cold { word-tap }
bucket-at-hot = Hot { word-tap }
bucket-dry = not a drop in the bucket.
bucket-good = That is plenty for a washer.
bucket-nothing = With the { word-tap } open, no water gets as far as the hose.
bucket-reading = { $flow } L/min at { $warmth } °C. That takes about { $pressure } kPa while it runs.
bucket-weak = Too little: a washer would not fill in time.

## button

button-less = Less
button-more = More
button-start = Start
button-stop = Stop
caution-discharge-live = The machine is plugged in: the supply keeps the capacitor charged, and the resistor will burn in your hand. Unplug the machine first.

## call

call-back = Three days later the customer calls:
call-back-earlier = From the first visit: codes recorded: { $codes }. Work done: { $repairs }. Cause reported: { $causes }.
call-back-fitted = { $part } installed
call-back-go = Go back to the machine
call-back-how = The second visit costs you, not the customer: labor under your warranty is free.
call-back-none = Three days later: nobody calls.
call-back-nothing = none
call-back-put-right = { $component } fixed by hand
call-back-visit = Second visit, after the customer called back:

## caution

caution-flood = There is water in the tub. Opening a part below it, or tilting the machine, will flood the floor. Drain or bail out the tub first.
caution-go-on = Continue
caution-heavy = The machine is heavy and can crush a hand or a foot. Unplug it, drain or bail out the water, and tilt it with a second person.
caution-hot-water = The hoses are under pressure and one is hot: it can scald. Shut off both { word-taps } and relieve the pressure first.
caution-insulation-in-hand = The insulation tester puts 500 V on its probes. Held in the fingers it goes through you: use the clips.
caution-insulation-on-control = The insulation tester puts 500 V on these wires, and the control is still connected to them. Pull the connector of what you test first, and keep your fingers off the tips.
caution-live-test = You are about to measure on a live machine. A slip can shock or kill, and belt and pulleys start without warning. Clip the leads on with the machine unplugged, keep clear, then plug in; no jewelry, dry floor. Meter and leads rated CAT II or higher for this voltage. Only if you are trained and authorized.
caution-moving = The basket is still turning and can break an arm. Wait until it stops.
caution-not-proved-dead = Nobody has verified yet that the stored charge is gone. Check the meter, measure the capacitor, check the meter again, and only then put your hands in.
caution-ohms-live = There is voltage on this circuit. Measuring ohms on it blows the meter’s fuse and can hurt you. Unplug the machine, discharge the capacitor, then measure.
caution-open-live = Line voltage inside. Contact can kill. Unplug the machine and keep the plug in sight before you remove the panels.
caution-plug-open = The panels are off: once plugged in, live parts are within reach and can kill. Put the panels back first, unless you are trained and authorized to test live.
caution-scald = The water in the tub is hot enough to scald. Let the pump drain it, or let it cool.
caution-step-back = Step back
caution-stored-charge = A capacitor still holds a charge and can shock. Wait a minute, discharge it through a resistor, and verify with the meter that it is dead.
caution-touch-live = The machine is plugged in. Live parts can shock and kill. Unplug it, keep the plug under your control, and verify that the circuit is dead.

## check

check-belt-in-place = Unplug the machine and discharge the capacitor first. Look at the belt and press on it. A good belt sits on both pulleys, dry and tight, and turns the basket with the motor.
check-bulk-volts = Live test, only if you are trained and authorized. Measure V DC from bulk.plus to bulk.minus. Expected: about 168 V on a 120 V supply, about 320 V on 230 V. It must not sag when the motor starts. Full voltage behind a dark console: the board’s own supply is dead, and the charge stays for minutes after the machine is unplugged.
check-cam-switch = Unplug the machine and discharge the capacitor first. Unplug the clutch actuator’s connector and measure Ω from clutch-actuator.3 to clutch-actuator.4. Expected: under 1 Ω in the spin half of its turn, OL in the agitate half.
check-cam-wires = Unplug the machine and discharge the capacitor first. Measure Ω from clutch-actuator.3@board to clutch-actuator.3, and the same for clutch-actuator.4. Expected: about 0.2 Ω, the resistance of the leads.
check-capacitor-microfarads = Unplug the machine and discharge the capacitor first. Unplug the run capacitor’s connector and measure µF from run-capacitor.1 to run-capacitor.2. Expected: about 45 µF for 120 V, about 14.7 µF for 230 V. More than a tenth less, or no reading: replace it. No live test is needed.
check-clutch-actuator-coil-ohms = Unplug the machine and discharge the capacitor first. Unplug the clutch actuator’s connector and measure Ω from clutch-actuator.1 to clutch-actuator.2. Expected: about 2400 Ω for 120 V, about 8800 Ω for 230 V.
check-clutch-actuator-volts = Live test, only if you are trained and authorized. In the clutch actuator test measure V~ from clutch-actuator.1 to clutch-actuator.2. Expected: line voltage. Voltage and a good winding, but the cam never moves: a stripped gear.
check-cord-ohms = Unplug the machine and discharge the capacitor first. Measure Ω from plug.line to fuse.in, then fuse.in to fuse.out, fuse.out to cord.1, and plug.neutral to cord.2. Expected: 0.2 to 0.3 Ω each. Half an ohm more is a loose joint: look for browning.
check-drain-hose-blocked = Unplug the machine and bail out the tub first. Take the drain hose off and look through it. A good hose is clear from end to end: clear a clogged one and route it again, no new hose is needed. If it is clear, clear the pump’s impeller, then measure the pump.
check-drain-hose-height = Measure the height of the hose’s highest bend above the floor. Expected: 0.9 m, loose in the standpipe. If it is too low or sealed in, it siphons the tub empty.
check-drum-turns-by-hand = Unplug the machine and wait until the basket stops. Turn it by hand. A good one turns evenly against the drag of its brake, without grinding. If it does not, take the belt off and check basket and motor separately.
check-empty-drum-first = Take the laundry out and recalibrate again. Recalibration needs an empty basket.
check-inlet-coil-ohms = Unplug the machine and discharge the capacitor first. Unplug each valve’s connector and measure Ω from inlet-cold.1 to inlet-cold.2, then inlet-hot.1 to inlet-hot.2. Expected: about 780 Ω for 120 V, about 2870 Ω for 230 V.
check-inlet-shuts-unplugged = Unplug the machine and watch the water. If it still rises, a valve does not close: mechanical fault. If it stops, the valve was being driven: measure V~ at its terminals.
check-inlet-volts = Live test, only if you are trained and authorized. Measure V~ from inlet-cold.1 to inlet-cold.2 in the cold test, inlet-hot.1 to inlet-hot.2 in the hot test. Expected: line voltage during its test, about 0 V at rest. Tens of volts at rest that vanish on LoZ V~ are stray.
check-lock-coil-ohms = Unplug the machine and discharge the capacitor first. Unplug the lid lock’s connector and measure Ω from lid-lock.1 to lid-lock.2. Expected: about 120 Ω for 120 V, about 440 Ω for 230 V.
check-lock-contact-ohms = Unplug the machine and discharge the capacitor first. Unplug the lid lock’s connector and measure Ω from lid-lock.3 to lid-lock.4. Expected with the bolt retracted: OL; about 0 Ω is a welded contact. A contact that does not close shows in the live line check.
check-lock-line = Live test, only if you are trained and authorized. In the lock test measure V~ from lid-lock.4 to cord.2, then from lid-lock.4@board to cord.2. Expected: line voltage at both. None at the first: the contact. None only at the board: wire or pin. Pull the connector and look: reseat a loose pin, replace a burned one from the terminal kit and inspect the header it mates with.
check-lock-volts = Live test, only if you are trained and authorized. In the lock test measure V~ from lid-lock.1 to lid-lock.2. Expected: line voltage while driven, about 0 V at rest. Voltage and a good coil, but no bolt: the lock. No voltage: wire or board. Tens of volts at rest that vanish on LoZ V~ are stray.
check-motor-amps = Live test, only if you are trained and authorized. Clamp the wire at motor.1 in the motor A test and at motor.2 in the motor B test. The two readings should be about the same. More than 9 A on 120 V (4.7 A on 230 V) for longer than the start is an overload.
check-motor-common = Unplug the machine and discharge the capacitor first. Measure Ω from motor.3@board to motor.3. Expected: about 0.2 Ω, the resistance of the leads. Half an ohm more is a loose or burned pin, which loses volts while the motor runs: replace the pin from the terminal kit and inspect the header it mates with. If it is open, neither winding carries current.
check-motor-volts = Live test, only if you are trained and authorized. Lid closed. Measure V~ from motor.1 to motor.3 in the motor A test, motor.2 to motor.3 in the motor B test. Expected: line voltage. No voltage: check lock line, wire and board before the motor.
check-motor-winding-ohms = Unplug the machine and discharge the capacitor first. Unplug the motor’s connector and measure Ω from motor.1 to motor.3, then motor.2 to motor.3. Expected: both the same, about 2.6 Ω for 120 V, about 9.6 Ω for 230 V; a hot winding reads higher.
check-motor-wires = Unplug the machine and discharge the capacitor first. Measure Ω from motor.1@board to motor.1, and the same for motor.2 and motor.3. Expected: about 0.2 Ω each, the resistance of the leads.
check-pickup-output = Live test, only if you are trained and authorized. In the spin test measure Hz from pickup.3 to pickup.2. Expected: twelve pulses per turn, so 80 Hz at 400 rpm. 0 Hz with the pulley turning: the pickup or its supply. Look at its bracket first: one that is only bent away is bent back.
check-pickup-supply = Live test, only if you are trained and authorized. Measure V DC from pickup.1 to pickup.2. Expected: 5 V. Without it the pickup cannot pulse.
check-pickup-wires = Unplug the machine and discharge the capacitor first. Measure Ω from pickup.1@board to pickup.1, and the same for pickup.2 and pickup.3. Expected: about 0.2 Ω each, the resistance of the leads.
check-pressure-hose = Unplug the machine and drain the tub first. Take the hose off and blow through it gently. Expected: clear, dry, tight at both ends, no cracks. One that was only clogged is blown out and goes back on. With water in the tub the pressure output must hold steady.
check-pressure-output = Live test, only if you are trained and authorized. Measure V DC from pressure-sensor.3 to pressure-sensor.2. Expected: 0.5 V with no water, plus 1 V for each kPa, which is about 10 cm of water.
check-pressure-supply = Live test, only if you are trained and authorized. Measure V DC from pressure-sensor.1 to pressure-sensor.2. Expected: 5 V. None here but 5 V at the board: a wire.
check-pressure-wires = Unplug the machine and discharge the capacitor first. Measure Ω from pressure-sensor.3@board to pressure-sensor.3, and the same for 1 and 2. Expected: about 0.2 Ω each, the resistance of the leads.
check-pump-amps = Live test, only if you are trained and authorized. In the pump test clamp the wire at drain-pump.1. Expected when turning: about 1.3 A on 120 V, 0.7 A on 230 V. About 2 A (1.1 A) and a buzz: the rotor is stuck. 0 A: open circuit.
check-pump-coil-ohms = Unplug the machine and discharge the capacitor first. Unplug the pump’s connector and measure Ω from drain-pump.1 to drain-pump.2. Expected: about 14 Ω for 120 V, about 51 Ω for 230 V. OL: open winding.
check-pump-volts = Live test, only if you are trained and authorized. In the pump test measure V~ from drain-pump.1 to drain-pump.2. Expected: line voltage. If there is none, measure drain-pump.1@board to cord.2: voltage there means a wire, none means the board. Tens of volts at rest that vanish on LoZ V~ are stray.
check-recalibrate-first = Recalibrate before you suspect a part: basket empty, lid closed, hands off for 2 to 3 minutes. Water is pumped out first; laundry teaches the control a wrong inertia; with the lid open nothing begins, and the lamps show the lock’s code. If it does not finish, read the codes. A new or cleared board knows nothing about this machine.
check-spread-laundry = Wait until the basket stops, then spread the laundry evenly and spin again. If the code does not come back, it was the load.
check-supply-volts = Live test, only if you are trained and authorized. Measure V~ from cord.1 to cord.2 at rest and with the motor running. Expected: 114 to 126 V, or 207 to 253 V on a 230 V supply. A drop of several volts when the motor starts: a loose joint in the cord, plug or outlet; the outlet is an electrician’s job.
check-taps-and-strainers = Open both { word-taps } fully and feel which hose is hot. Shut them off, take the hoses off and clean the screens. Still little water with both { word-taps } open and line voltage at a good coil: the valve.
check-thermistor-ohms = Unplug the machine and discharge the capacitor first. Unplug the thermistor’s connector and measure Ω from thermistor.1 to thermistor.2. Expected: 10 kΩ at 25 °C, about 12.5 kΩ at 20 °C, 5.3 kΩ at 40 °C.
check-thermistor-rail = Live test, only if you are trained and authorized. Measure V DC from thermistor.1@board to thermistor.2@board. Expected: 2.5 V at 25 °C, less when warmer. About 5 V: open. About 0 V: shorted.
check-thermistor-wires = Unplug the machine and discharge the capacitor first. Measure Ω from thermistor.1@board to thermistor.1, and the same for thermistor.2. Expected: about 0.2 Ω each, the resistance of the leads.
check-tub-leak = Unplug the machine. Look under the tub and along the hoses with a light. Expected: dry outside, and the level holds for five minutes.

## choose

choose-dial = Turn the dial to a position.
choose-steps = More and Less step through the list; the digits show the position.
choose-switch = Turn the switch to a position.

## cli

cli-check-total = Files checked: { $files }. Errors: { $errors }. Warnings: { $warnings }.
cli-class-begun = Class “{ $title }” begun, with { $jobs } jobs. Everything is kept in { $folder }.
cli-class-board = Your board, for you alone: { $address }
cli-class-code = Code to join with: { $code }
cli-class-continued = Class “{ $title }” goes on, with { $jobs } jobs. Everything is kept in { $folder }; for another class, give another folder with --data.
cli-class-drills = Drills besides: { $count }
cli-class-end = Ctrl and C end it; what the learners do meanwhile is kept where they do it and sent when the class goes on.
cli-class-error-certificate = { $file } cannot be used: { $reason }. Certificate and key are PEM files
cli-class-error-damaged = { $file } is damaged ({ $found }): put the newest file of the folder `copies` beside it in its place
cli-class-error-database = the class cannot be kept: { $reason }. Check the disk, then start the class again
cli-class-error-drill-twice = the drill “{ $drill }” was named twice: each skill has one
cli-class-error-foreign = { $file } is not a class: name another folder with --data
cli-class-error-full = the disk is full: make room, then start the class again
cli-class-error-job = there is no job named “{ $job }”: `detent scenarios` lists them
cli-class-error-listen = cannot listen at { $address }: { $reason }. Another program may be there: choose another --port
cli-class-error-name = { $file } cannot be written as text: name another folder with --data
cli-class-error-newer = { $file } was made by a newer Detent: use that one
cli-class-error-page = there is no packed page in { $file }: the README says how it is made
cli-class-error-questions = a round of a drill cannot have { $found } questions: ask for 1 to { $most }
cli-class-error-seats = a class cannot have { $found } seats: ask for 1 to { $most }
cli-class-error-share = { $file } lies on a network share ({ $kind }), where a database can be damaged: name a folder on this computer’s own disk with --data
cli-class-error-system = { $file }: { $reason }. Check the folder and the free space
cli-class-error-taken = { $file } is in use by another class: end that one, or name another folder with --data
cli-class-error-threads = the system does not let a server start: { $reason }
cli-class-join = Learners join at { $address }
cli-class-names = { $count } new names on the list
cli-class-no-name = “{ $line }” is not a name: it needs a letter, and at most 60 characters
cli-class-no-page = There is no page for browsers yet (the README says how it is made); with the program: detent window --join { $address }
cli-class-opens = It opens by itself in { $minutes } min; “Open now” on the board opens it before that.
cli-class-page = In a browser, or with the program: detent window --join { $address }
cli-class-plain = What goes over this network can be read by whoever is on it: use a network of your own for the class.
cli-class-title = Class
cli-course-heading = { $title } — version { $version }, by { $author }, license { $license }
cli-course-opened = Folder { $folder } written with { $files } files. To use it: detent --library { $folder }
cli-course-packed = { $file } written: { $files } files, { $bytes } bytes. To use it: detent --library { $file }
cli-entered = entered
cli-error-already-there = { $file } is there already, and nothing was written: choose another folder or another --seed
cli-error-check = the check found something: errors { $errors }, warnings { $warnings }
cli-error-count = { $found } cannot be drawn: ask for 1 to { $most }
cli-error-expert = the scripted expert cannot do this job.
cli-error-few-variants = only { $found } of { $wanted } variants could be proved: --survey tells why the others were refused
cli-error-folder = cannot write to the folder { $folder }: { $reason }. Make it first, or choose another.
cli-error-kept = What was done before it is saved in { $file }; continue from there with --resume.
cli-error-never-over = { $file } is there already, and nothing is written over it; give another name
cli-error-no-board = there is no board “{ $board }”; the boards are { $known }
cli-error-no-call-back = nobody calls back after this attempt: it has no report yet, the machine washes, or the customer was told that it is not repaired
cli-error-no-data-folder = this system names no folder for data: name one with --data
cli-error-no-language = there is no language “{ $language }”; use en or es
cli-error-no-learners = { $folder } holds no learner files (their names end in .learner): give the folder in which the learners are kept
cli-error-no-paper = there is no paper of size “{ $paper }”; use a4 or letter
cli-error-no-window = this program was built without its window: build it with `cargo build --release`, or use a command (see --help)
cli-error-not-this-supply = board “{ $board }” is not made for 230 V, 50 Hz: leave out --v230
cli-error-other-seed = started with seed { $seed }: leave out --seed
cli-error-output = cannot write the output: { $reason }
cli-error-paper = { $file } cannot be made: { $reason }
cli-error-same-file = two scenarios would both be printed to { $file }: print them to different folders
cli-error-write = cannot write { $file }: { $reason }. Check the folder and the free space.
cli-found = found
cli-lamps = lamps
cli-learners-jobs = Jobs passed
cli-learners-last = Last day
cli-learners-lost = Lost most often in jobs
cli-learners-name = Learner
cli-learners-open = ({ $count } open)
cli-learners-row = { $name }: mastered: { $mastered }; being worked on: { $working }
cli-learners-sittings = Examinations
cli-learners-skills = Skills mastered
cli-meter-test = meter checked on the proving unit
cli-new-board = A board to begin with: change what stands here, then run detent check. Its control belongs in parts.ron.
cli-new-board-name = A new board
cli-new-written = { $file } written. Change it, then run: detent check { $file }
cli-no-conclusion = The report draws no conclusion, so it gets no answer: name a cause, or write verdict: NothingWrong or verdict: GivenUp.
cli-no-report = No report yet. Submit one to see where each point went.
cli-practice-adaptive = adaptive: the drill closest to the target
cli-practice-all = All sessions
cli-practice-beginners = Simulated beginners, who know nothing at first: mean number of exercises until every skill is truly known. What a hint teaches is assumed, not measured:
cli-practice-beginners-alone = alone
cli-practice-beginners-both = with both
cli-practice-beginners-coach = with the coach
cli-practice-beginners-hints = with hints
cli-practice-early = First { $sessions } sessions
cli-practice-fit-bound = at its bound: the answers do not tell guessing or slipping from knowing
cli-practice-fit-heading = Parameters of knowledge tracing, fitted to these answers (Baum–Welch). Known at the start, learn, guess, slip; learners, answers, rounds; log-likelihood fitted and built in:
cli-practice-fit-skipped = too few answers: { $answers } from { $learners } learners
cli-practice-fixed = fixed order: { $block } of each skill in turn, the best of four such orders
cli-practice-given-up = ({ $count } learners gave up)
cli-practice-heading = { $learners } simulated learners, { $sessions } sessions each, { $exercises } exercises a session, one session a day; their rates differ from the model’s by up to { $spread }%
cli-practice-learner = { $name }: chance that each skill is known, and share of right answers
cli-practice-needs = Mean number of exercises until every skill is rated mastered and truly known:
cli-practice-one-by-one = one skill after another, each until the model rates it mastered
cli-practice-random = random
cli-practice-recovery = believed { $believed }%, truly known { $known }%, root mean squared error { $rmse }; rated mastered and truly known { $verdict }%. Belief, share known, observations:
cli-printed = { $file }: { $kilobytes } kB
cli-readings = readings
cli-replay-same = { $actions } actions, same state and score
cli-replay-sealed = the digest matches the lines
cli-replay-second-visit = second visit, after a first one of { $actions } actions
cli-replay-shown = the answer was shown after the report
cli-replay-unfinished = { $actions } actions, unfinished; every action could be repeated
cli-replay-withheld = the report draws no conclusion: the answer was not shown
cli-replay-without-seal = an older format without a digest: not every change can be detected
cli-score = score
cli-see-faults = `detent faults` lists them all.
cli-see-parts = `detent parts` lists them all.
cli-see-sheet = `detent sheet` shows what there is.
cli-seed = seed
cli-state = state
cli-state-hash = state hash
cli-state-now = control: { $control } | water: { $level } mm, { $water } °C
cli-table-making = no table of board { $board } at { $volts } V yet: making it now, which takes about half a minute; it is kept for next time
cli-try = try at
cli-usage = Usage: { $usage }
cli-usage-conflict = { $argument } and { $other } cannot be given together.
cli-usage-missing = Missing: { $arguments }.
cli-usage-needs-value = { $argument } needs a value.
cli-usage-no-argument = There is no option or argument "{ $argument }" here.
cli-usage-no-command = There is no command "{ $command }".
cli-usage-no-value = "{ $value }" is not a value for { $argument }.
cli-usage-not-text = The arguments are not UTF-8 text.
cli-usage-other = The arguments cannot be used: { $problem }.
cli-usage-range = "{ $value }" is not a value for { $argument }: it takes { $range }.
cli-usage-takes-none = { $argument } takes no value "{ $value }".
cli-usage-twice = { $argument } is given twice.
cli-window-ended = the window ended with error { $code }
cli-window-no-address = --join takes the address of a class’s server, such as http://192.168.1.20:8080, not "{ $address }"
cli-window-no-display = there is no display: set DISPLAY or WAYLAND_DISPLAY, or work without a window (see detent --help)
cli-window-no-size = no size "{ $size }": write it as 1280x720
cli-window-no-tab = no tab "{ $tab }": use sheet, lamps, codes, menu, pins, meter, parts, report, score, practice, progress, examination, settings, settings-display, workshop, workshop-job, workshop-proof, workshop-wash, workshop-paper, workshop-board, workshop-board-lamps, workshop-board-gesture, workshop-board-service, workshop-board-codes, workshop-board-text, join, class, class-examination, class-paused, film, film-loss, film-end, film-ways or none
cli-window-no-view = no view "{ $view }": use panel, machine or cabinet
cli-work-now = work: { $minutes } min | parts: { $parts } | labor: { $labor } | consumables: { $consumables }

## coach

coach = Work on this first
coach-again = Do this job again
coach-cost = It cost { $points } points in this job.
coach-drill = Drill: { $skill }
coach-job = Job: { $title }
coach-next-job = Next job

## code

code-calibration-failed = Recalibration learned a value outside its limits.
code-calibration-missing = A program ran, but the board was never calibrated, or not for this clutch actuator.
code-cam-lost = The clutch actuator did not reach its position in time.
code-drain-slow = The tub did not empty in time.
code-fill-none = The level did not move although a valve was open.
code-fill-slow = The water level was not reached in time.
code-level-lost = The level fell although nothing was draining.
code-lock-not-proven = The lock was driven, but line voltage did not come back through its contact.
code-lock-not-released = The lock was released, but line voltage still comes back through its contact.
code-motor-no-current = The motor was driven, but no current flowed.
code-motor-overheated = The motor current disappeared while running.
code-motor-overload = The motor current stayed high after the start.
code-pressure-range = The pressure signal left its valid range.
code-pulses-none = The motor drew current, but no speed pulses came.
code-pulses-weak = Speed pulses came, but too few.
code-spin-not-reached = The spin speed was not reached in time.
code-supply-low = The supply voltage sagged while the motor was driven.
code-thermistor-range = The thermistor signal left its valid range.
code-unbalance = The speed swung within each turn: the load is on one side.
code-water-not-warm = Warm water was called for, but it stayed cold.
code-water-too-hot = The water was hotter than called for.
code-water-unexpected = The level rose with both valves closed.

## common

common-cancel = Cancel
common-close = Close
common-no = No
common-yes = Yes

## component

component-belt = Drive belt
component-board = Control board
component-clutch-actuator = Clutch actuator
component-cord = Power cord
component-dial = Dial
component-drain-hose = Drain hose
component-drain-pump = Drain pump
component-filter = Line filter
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
component-supply = Outlet
component-taps = { $mains ->
    [120] Faucets
   *[other] Taps
}
component-thermistor = Water thermistor
component-tub = Tub

## condition

condition-new = new
condition-rebuilt = rebuilt
condition-used = used, as is

## consumable

consumable-cable-tie = cable tie
consumable-contact-cleaner = contact cleaner
consumable-cover-seal = pump cover seal
consumable-descaler = descaler
consumable-hose-clamp = hose clamp
consumable-hose-washer = hose washer

## control

control-hold = fault hold
control-idle = idle
control-off = without power
control-program = in a program
control-service = service mode
control-starved = short of power

## course

course-doubles = Multiple faults
course-entry-drill = Service-mode entry
course-exam = Exam
course-intermittents = Intermittent faults
course-look-alikes = Look-alikes
course-nothing-found = No part needed
course-reading-drill = Reading codes
course-single-fault = Single fault

## customer

customer-after = { $minutes ->
    [0] right away
    [1] after a minute
   *[other] after { $minutes } minutes
}
customer-age = It is { $years } years old.
customer-buzzed-1 = There is a long buzz, like a big fly in a jar.
customer-buzzed-2 = It buzzes and buzzes; you can hear it in the hall.
customer-buzzed-3 = Something in there buzzes for ages.
customer-clicked-1 = Click, click, click it went; I counted.
customer-clicked-2 = It clicks at the top, again and again.
customer-clicked-3 = Every little while there is a clack from under the rim.
customer-dark-1 = Nothing lights up, whatever I press.
customer-dark-2 = Dead as a doornail: no light, no sound.
customer-dark-3 = It does not even come on.
customer-drains-while-filling-1 = It is emptying itself while it fills.
customer-drains-while-filling-2 = I hear it gurgle into the drain while the water is still coming in.
customer-drains-while-filling-3 = It drains all the while, even as it fills.
customer-filled-for-long-1 = It fills and fills and never gets enough.
customer-filled-for-long-2 = I hear water running in for much longer than it used to.
customer-filled-for-long-3 = It keeps taking in water.
customer-hummed-1 = It hums low and deep, and nothing turns.
customer-hummed-2 = There is a hum like an old refrigerator, and that is all.
customer-hummed-3 = It hums, waits, and hums again.
customer-lamp-blinks-1 = The one light blinks at me.
customer-lamp-blinks-2 = And the light winks, on and off.
customer-lamp-blinks-3 = Now its only light keeps blinking.
customer-lamps-blink-1 = All the lights blink at once.
customer-lamps-blink-2 = It blinks with everything it has.
customer-lamps-blink-3 = The whole row of lights flashes.
customer-marks-take-turns-1 = It shows two dashes, first one, then the other.
customer-marks-take-turns-2 = The display winks left and right.
customer-marks-take-turns-3 = A dash here, a dash there, and so on without end.
customer-mistrust-1 = But something about it is not right; please look it over.
customer-mistrust-2 = But I do not trust it any more.
customer-mistrust-3 = And still I want somebody to look at it.
customer-never-spun-1 = It never gets around to spinning.
customer-never-spun-2 = It sloshes, but it never wrings anything out.
customer-never-spun-3 = The fast part at the end never comes.
customer-never-started-1 = The lights are on, but when I press { button-start }, nothing happens.
customer-never-started-2 = It is on, but it will not start.
customer-never-started-3 = I press { button-start } and it ignores me.
customer-no-water-came-1 = Not a drop of water came in.
customer-no-water-came-2 = My things are as dry as when I put them in.
customer-no-water-came-3 = The water never came.
customer-nothing-moved-1 = Nothing in it moved at all.
customer-nothing-moved-2 = My things just lie there; nothing turns.
customer-nothing-moved-3 = It does not budge, not once.
customer-other-program-1 = It does something other than what I set it to.
customer-other-program-2 = I choose one thing and get another.
customer-other-program-3 = It counts wrong when I turn the knob.
customer-outlet-tripped-1 = The little button on the wall has popped out, and it pops out again when I push it in.
customer-outlet-tripped-2 = Something in the wall goes click and cuts the power.
customer-outlet-tripped-3 = It keeps cutting off its own power at the wall.
customer-padlock-blinks-1 = The little padlock blinks.
customer-padlock-blinks-2 = And a light with a padlock on it winks at me.
customer-padlock-blinks-3 = Now that padlock sign keeps blinking.
customer-ran-free-1 = Something whirs underneath, but it does not turn anything.
customer-ran-free-2 = It whirs like a toy car on its back.
customer-ran-free-3 = I hear it run, but nothing in it goes around.
customer-ran-to-end-1 = It does get to the end.
customer-ran-to-end-2 = The last load went through; it took { $minutes } minutes.
customer-ran-to-end-3 = It finished, I will give it that.
customer-shows-number-1 = It shows a number that I have never seen.
customer-shows-number-2 = There is a number on it now.
customer-shows-number-3 = Now it shows me a number and nothing else.
customer-since-birthday = It began on my birthday, of all days.
customer-since-last-week = It has been like this since last week.
customer-since-monday = Monday’s load came out fine.
customer-since-sunday = It was fine until Sunday.
customer-since-vacation = We came back from vacation, and there it was.
customer-since-yesterday = Since yesterday, and I need it.
customer-spun-slowly-1 = Everything comes out dripping.
customer-spun-slowly-2 = It turns at the end, but lazily, and things come out soaked.
customer-spun-slowly-3 = It does not get up to speed the way it used to.
customer-still-going-1 = After more than an hour it was still going.
customer-still-going-2 = It never finishes; my alarm went off and it was still at it.
customer-still-going-3 = It goes on forever.
customer-stopped-1 = It stopped { customer-after }.
customer-stopped-2 = It gave up { customer-after }, before it was done.
customer-stopped-3 = I started it, and { customer-after } that was that.
customer-theory-cat = My son blames the cat.
customer-theory-cheap = My sister says I should never have bought a cheap one.
customer-theory-detergent = My neighbor says that I use the wrong detergent.
customer-theory-grandson = I suspect my grandson, who presses everything that can be pressed.
customer-theory-limescale = My brother-in-law is sure that it is limescale.
customer-theory-overfilled = My husband says that I stuff it too full.
customer-theory-power-company = The man across the street blames the power company.
customer-theory-storm = We had a thunderstorm, so that must be it.
customer-thumped-1 = It thumps when it picks up speed.
customer-thumped-2 = It shakes so hard that the shelf rattles.
customer-thumped-3 = It bangs around like a horse in a stall.
customer-too-much-water-1 = The water stood almost at the rim.
customer-too-much-water-2 = There was far too much water in it.
customer-too-much-water-3 = It nearly ran over.
customer-washed-cold-1 = It washes cold; I felt it.
customer-washed-cold-2 = The water in it is cold, and I did not ask for cold.
customer-washed-cold-3 = It should be warm in there, and it is not.
customer-washed-hot-1 = The water is far too hot; I felt it.
customer-washed-hot-2 = I put a finger in: that is hot, and I never asked for hot.
customer-washed-hot-3 = It washes hotter than I asked for.
customer-water-on-floor-1 = There is a puddle in front of it.
customer-water-on-floor-2 = I had to mop up after it.
customer-water-on-floor-3 = It leaves water on the floor.
customer-water-runs-by-itself-1 = I hear water running in when it is not doing anything.
customer-water-runs-by-itself-2 = It takes in water by itself.
customer-water-runs-by-itself-3 = It trickles, although it has nothing to do.
customer-water-stayed-in-1 = It stands there full of water.
customer-water-stayed-in-2 = The water stays in; I fished my things out by hand.
customer-water-stayed-in-3 = My things are swimming in there.
customer-went-dark-1 = It was washing, and { customer-after } it went dark.
customer-went-dark-2 = It went out in the middle, { customer-after }.
customer-went-dark-3 = It died on me { customer-after }: no light, nothing.
customer-who-caretaker = I look after this building; it is the tenants’ machine.
customer-who-family = There are five of us and three of them play soccer.
customer-who-farm = You will know us by the cows.
customer-who-hostel = It is the youth hostel’s machine, and we are fully booked.
customer-who-salon = I have a hair salon, and I go through towels all day long.
customer-who-shared-flat = It belongs to all four of us, so nobody knows anything.
customer-who-student = I rent here, and I have an exam tomorrow.
customer-who-widower = My wife always took care of these things.

## deed

deed-arrived-dark = Last wash: the console is dark
deed-arrived-finished = Last wash: ran to the end
deed-arrived-not-asked-for = Last wash: never started, the worn dial slipped
deed-arrived-open = Last wash: did not finish
deed-arrived-stopped = Last wash: stopped with code { $code }
deed-check-for-leaks = check for leaks
deed-fit = install { $part }
deed-note-code = record code { $code }
deed-order = order { $part }
deed-quote = give the customer a quote: { $parts }
deed-ran-dark = Wash: the console went dark
deed-ran-finished = Wash: ran to the end
deed-ran-open = Wash: did not finish
deed-ran-stopped = Wash: stopped with code { $code }
deed-read-codes = Service mode: read the codes
deed-recalibrated-dark = Recalibration: the console went dark
deed-recalibrated-finished = Recalibration: passed
deed-recalibrated-open = Recalibration: did not finish
deed-recalibrated-stopped = Recalibration: stopped with code { $code }
deed-report = submit the report
deed-show-customer = show the customer that it runs
deed-shut-taps = shut off both { word-taps }

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

do-bail-out = Bail out the tub
do-bucket-cold = Bucket, cold
do-bucket-hot = Bucket, hot
do-check-for-leaks = Check for leaks
do-close-cabinet = Put the panels back (C)
do-close-lid = Close the lid (L)
do-discharge = Discharge capacitor (D)
do-fit = Install
do-hold = Hold the reading
do-inspect = Inspect
do-leads = Use the spare leads
do-lift = Lift the probes
do-load-basket = Put back
do-measure = Measure and record
do-meter-fuse = Replace the meter’s fuse
do-open-cabinet = Remove the panels (C)
do-open-lid = Open the lid (L)
do-order = Order
do-plug = Plug in (P)
do-pull = Unplug this connector
do-quote = Give the quote
do-release = Release hold
do-reset-outlet = Reset
do-return = Return part
do-seat = Plug this connector back in
do-shut-taps = Shut off
do-test-meter = Check the meter on a proving unit
do-unload-basket = Take out
do-unplug = Unplug (P)

## doubt

doubt = Is it the control or my technique?
doubt-cleared = One try got in: the control reads the gesture. The failed tries were down to your technique or the dial.
doubt-control = the control is suspect
doubt-go-on = After { $tries } failed tries: { $share }% chance the control is faulty. That proves nothing yet: try again at an even pace.
doubt-hand = it is my technique
doubt-intro = From the timing of each try and the wear of this dial: how likely a good control would have let it in. A try that broke a timing window says nothing about the control. Dashed: decision limits at 5% risk either way.
doubt-needed = The first time you meet a gesture, about { $newcomer } failed tries speak against the control; once you get in four times out of five, { $practised } do.
doubt-own = In the drill you got in on { $entered } of your latest { $tries } tries. With that hand, { $needed } failed { $needed ->
        [one] try
       *[other] tries
    } in a row speak against the control, and this curve goes by it. Hints and the score do not: they are the same for everybody.
doubt-suspect = After { $tries } failed tries: { $share }% chance the control is faulty. Now it is worth measuring at the control.

## drill

drill-again = Another round
drill-check = Check (Enter)
drill-entered = Service mode entered
drill-entry-broke = Not entered: { $rule }.
drill-entry-every = one step every { $ms } ms: the best rhythm for your hand on this console
drill-entry-left = Turn left
drill-entry-metronome = Metronome
drill-entry-no-rhythm = Do the gesture: your rhythm and your chance of entry appear here afterward.
drill-entry-plot = Chance of entry by time per step. Dashed: the best rhythm. Dots: your tries, the last one large.
drill-entry-rhythm = Your last rhythm: { $mean } ms per step, spread { $spread } ms. Chance of entry at this rhythm: { $odds }.
drill-entry-right = Turn right
drill-entry-wear = The dial’s detents are { $wear } worn.
drill-hint-code-look-up = Tick with the digits or by clicking, then check.
drill-hint-entry-timing = Do the gesture with the keys (arrow keys turn), the wheel or the on-screen buttons.
drill-hint-lamp-reading = Type two digits, then check.
drill-hint-metering = Choose row by row, with the digits or by clicking.
drill-hint-next-test = Choose with a digit or by clicking, then check.
drill-hint-part-choice = Choose with a digit or by clicking, then check.
drill-hint-proof = Choose with a digit or by clicking, then check.
drill-hint-safe-work = Choose with the digits or by clicking, then check. For an order, choose the steps one after another.
drill-lamps-ask = What number do the lamps show?
drill-lamps-back = Back
drill-lamps-digit-right = { $place }: { $shown }, and you read { $read }.
drill-lamps-digit-wrong = { $place }: { $shown }, but you read { $read }.
drill-lamps-invented = A code made up for this question
drill-lamps-matrix = Which digit was read as which
drill-lamps-matrix-how = Rows: the digit shown. Columns: the digit read.
drill-lamps-share = Digits misread: { $share }
drill-leave = Back to practice
drill-leave-key = Leave (Esc)
drill-look-up-all = All of them, and nothing else.
drill-look-up-ask = Code { $code } is stored. Tick every component that this board’s sheet lists for it.
drill-look-up-left-out = Left out: { $components }.
drill-look-up-missed = this one too
drill-look-up-not-listed = Not listed for this code: { $components }.
drill-look-up-page = The codes page of the service sheet:
drill-meter-ask-bulk = Does the bulk capacitor have the right voltage? Measure { $pins }.
drill-meter-ask-capacitor = { $component }: has it kept its capacitance? Measure { $pins }.
drill-meter-ask-current = Does the drain pump draw the right current in its test? { $component }, wire at { $pins }.
drill-meter-ask-driven = { $component }: does it get its voltage during its test? Measure { $pins }.
drill-meter-ask-fuse = Is the line fuse good? Measure { $pins }.
drill-meter-ask-input = Is the thermistor input right, as the board sees it? The room is at 20 °C. Measure { $pins }.
drill-meter-ask-level = { $component }: is its signal right with an empty tub? Measure { $pins }.
drill-meter-ask-mains = Is the line voltage right at the end of the cord, at rest? Measure { $pins }.
drill-meter-ask-open = { $component }: this should be open. Is it shorted or welded? Measure { $pins }.
drill-meter-ask-pulses = { $component }: does it pulse in the spin test at 400 rpm? Measure { $pins }.
drill-meter-ask-rail = { $component }: does it get its supply? Measure { $pins }.
drill-meter-ask-thermistor = { $component }: is it good? The room is at 20 °C. Measure { $pins }.
drill-meter-ask-winding = { $component }: is this winding good? Measure { $pins }.
drill-meter-ask-wire = Is this wire good from the board to its end? Measure { $pins }.
drill-meter-first = Choose state, setting and range first; then the probes go on.
drill-meter-mode = How is the meter set?
drill-meter-open = OL: open
drill-meter-out = Out of tolerance
drill-meter-range = What should a good one read?
drill-meter-reading = Measured correctly, the meter shows:
drill-meter-sheet = The service sheet says:
drill-meter-state = What state must the machine be in?
drill-meter-state-bled = unplugged, capacitor discharged
drill-meter-state-live = plugged in and running
drill-meter-state-pulled = unplugged, capacitor discharged, its connector off
drill-meter-state-unplugged = just unplugged
drill-meter-verdict = What does the reading tell you?
drill-meter-why-bled = Resistance is measured on a dead circuit: machine unplugged, capacitor discharged. The wire stays in its connectors; you measure from end to end.
drill-meter-why-live = Voltage, current and frequency are there only while the machine is plugged in and running: only if you are trained and authorized.
drill-meter-why-mode = That setting measures something else.
drill-meter-why-out = It is outside the limits: this one is bad.
drill-meter-why-pulled = A load is measured by itself, on a dead circuit: machine unplugged, capacitor discharged, and its own connector off, or you also measure whatever is in parallel with it.
drill-meter-why-range = A good one reads differently.
drill-meter-why-within = It is within the limits: this one is good.
drill-meter-within = Within tolerance
drill-next = Next (Enter)
drill-next-test-ask = Which of these next keeps the whole repair cheapest?
drill-next-test-belief = Most likely causes
drill-next-test-codes = Codes stored: { $codes }
drill-next-test-cost = costs ¤{ $cost } now
drill-next-test-no-codes = No codes stored.
drill-next-test-repair = whole repair: { $most } expected
drill-next-test-repair-between = whole repair: { $least } to { $most } expected
drill-next-test-tested = Done already: { $test }
drill-not-entered = Not entered
drill-nothing = There is nothing to ask about: what each fault shows on a board has not been worked out on this computer yet.
drill-part-ask = The cause is proven. Which number do you order for this machine?
drill-part-right = New, current, and it cures this fault on this machine.
drill-part-wrong-board = Made for another machine: it does not fit this one.
drill-part-wrong-component = Wrong component ({ $component }): it would leave the fault in place.
drill-part-wrong-fault = The kit fixes something else in this component.
drill-part-wrong-not-new = It is { $condition }: there is a { $chance } chance that it brings a fault of its own.
drill-part-wrong-superseded = An old number, superseded by { $part }.
drill-proof-ask-reading = Code { $code } is stored. You think it is “{ $cause }”. Which one of these rules out every rival?
drill-proof-ask-repair = The fault was “{ $cause }”. Is the repair proven?
drill-proof-did = What was done, in order:
drill-proof-rivals = Rivals: { $rivals }
drill-proof-with = { $cause }: { $shown }
drill-question = Question { $number } of { $of }
drill-right = Right
drill-safe-ask-deed = What happens if you do this now: { $step }?
drill-safe-ask-hazard = One thing here makes this work dangerous. Which one?
drill-safe-ask-order = Put these steps in a safe order: what comes first?
drill-safe-hazard = { $object }: { $why } Local codes and licensed practice come first.
drill-safe-look-closer = Point at a thing, or move to it with Tab, to look at it more closely.
drill-safe-order-safe = In this order nothing is touched before it is safe.
drill-safe-order-sound = One safe order: { $steps }
drill-safe-order-wrong = Step { $number } ({ $step }): { $why }
drill-safe-sound = { $object }: as it should be for this work.
drill-safe-state = The machine as it stands
drill-seconds = { $seconds } s
drill-summary-median = Median time per answer: { $seconds } s
drill-summary-more = Each round draws different boards and questions.
drill-summary-right = { $right } of { $of } right
drill-wrong = Incorrect

## error

error-belief-bad = number { $at } is { $found }; weights and likelihoods are 0 or more
error-belief-empty = there is no hypothesis; give at least one
error-belief-impossible = no hypothesis leaves this possible; give likelihoods a floor
error-belief-length = { $found } likelihoods for { $wanted } hypotheses; give one for each
error-empty-draw = the scenario draws a fault but names none to draw from
error-path-refused = the attempt cannot be done again: { $refusal }
error-plan-bad = repair or test { $at } has a bad cost, cure or need
error-plan-chances = test { $at } has an outcome without one chance for each hypothesis
error-plan-incurable = nothing cures hypothesis { $at }; add a repair or a last resort
error-plan-sum = the outcomes of test { $at } do not add up to 1 under hypothesis { $hypothesis }
error-plan-too-many = too many repairs or setups; leave some out
error-step-longer-than-a-job = This step may take { $hours } h, and no job has more than { $most } h of machine time: write a shorter time.
error-step-never-came = Waited { $seconds } s and { $what } never came: raise limit_s, or look at what the machine did instead.
error-step-no-position = Position { $position } cannot be chosen on this console now.
error-step-too-long = This step would take the job past { $most } h, the longest machine time: wait less.
error-target = the target { $found } is out of range; write a share from { $least } to { $most }
error-too-few = { $skill }: too few answers: { $answers } from { $learners } learners. Collect at least { $least-answers } answers from { $least-learners } learners.
error-variant-no-table = no table of board "{ $board }" is built in: `detent best --tables` makes them
error-variant-original = the scripted expert cannot do this job, so its difficulty cannot be judged: { $reason }

## examination

examination-back = Back to the examination
examination-begin = Take “{ $title }”
examination-close = Close the examination
examination-close-not = Go on
examination-close-now = Close it for good
examination-close-sure = { $open ->
    [0] Every job is handed in. Once it is closed, you see the result.
    [one] One job is not handed in and will count nothing. Close it all the same?
   *[other] { $open } jobs are not handed in and will count nothing. Close it all the same?
}
examination-guest = A guest’s examination is lost when the program ends. Choose a name under Practice to keep it.
examination-handed-in = Handed in. You will see what it was worth when the whole examination is closed.
examination-is-open = An examination is open. Its clock goes on; everything else waits until it is closed.
examination-job-begin = Begin this job
examination-job-begun = Begun, not handed in yet.
examination-job-broken-off = { $title }: broken off, counts for nothing
examination-job-failed = { $title }: { $kept } of { $of } points, not passed
examination-job-go-on = Resume this job
examination-job-handed-in = Handed in.
examination-job-missing = { $title }: not handed in
examination-job-on-bench = Begun, and kept nowhere: if you turn to another job or end the program, this try is over.
examination-job-open = Not begun. You have one try.
examination-job-out-of-time = { $title }: { $kept } of { $of } points, out of time
examination-job-passed = { $title }: { $kept } of { $of } points, passed
examination-job-try-over = Broken off. This try is over and counts for nothing.
examination-left = { $time } left
examination-no-page = This page of the service sheet is not allowed in this examination.
examination-no-score-yet = In an examination you see no score and no trace of your tries before the whole set is closed.
examination-one-job = Only “{ $title }”
examination-one-try = A job that you do not finish can be resumed later. Where what you did cannot be kept, the try is over when you turn to another job or end the program, and the job counts for nothing.
examination-one-try-not-kept = Attempts are not kept here. Once you have done something at a job, stay at it: if you turn to another job or end the program, the try is over and the job counts for nothing.
examination-result = { $passed } of { $jobs ->
    [one] one job
   *[other] { $jobs } jobs
} passed. { $pauses ->
    [0] No pauses.
    [one] One pause, { $time }.
   *[other] { $pauses } pauses, { $time } altogether.
}
examination-rules = Rules
examination-rules-text = The time is real time: it runs from the moment you begin and does not stop. You have one try at each job. There are no hints and no guide. You may pause the machine, but every pause is noted. You see no score until the whole set is closed. When the time is over, the job on the bench is submitted as abandoned.
examination-terms = { $minutes } minutes of real time. Jobs: { $jobs }. Service sheet: { $pages }.
examination-title = Examination

## fault

fault-kind-control = The control’s own supply, memory or service mode
fault-kind-crossed = Two things mixed up
fault-kind-mechanical = Something stuck, slipping, worn, broken or badly loaded
fault-kind-open = An open circuit: a broken wire or winding, a contact that stays open
fault-kind-short = A short circuit: turns that touch, a welded contact
fault-kind-signal = A sensor or an input that reports what is not so
fault-kind-to-ground = Leakage to ground
fault-kind-value = A resistance, a capacitance or a supply voltage that is off
fault-kind-water = Water, suds or air where it should not be, or not where it should
fault-presence-drift = More and more
fault-presence-intermittent = In spells
fault-presence-steady = All the time

## file

file-allowed-answer-seconds = 0 to 86400 s
file-allowed-bound = a bound above 0
file-allowed-budget = a sum above 0, up to a million
file-allowed-chance = a chance from 0 to 1
file-allowed-class-minutes = 1 to 43200 min
file-allowed-code = a code from 0 to 99
file-allowed-examination-minutes = 1 to 480 min
file-allowed-factor = a factor of 0 or more
file-allowed-fitting-minutes = more than 0 minutes, up to the 1440 of a day
file-allowed-job-minutes = a time above 0 min, up to the 2880 min of the longest job
file-allowed-lamp-number = a number from 0 to 99
file-allowed-layout = 1
file-allowed-milliseconds = 0 ms or more
file-allowed-moment = seconds since 1970, up to 2200
file-allowed-money = 0 or more, up to a million
file-allowed-opening-minutes = 1 to 1440 min
file-allowed-points = 0 points or more
file-allowed-points-together = points that add up to 100
file-allowed-questions = 1 to 50 questions
file-allowed-resistance = a resistance above 0 Ω
file-allowed-right-or-wrong = 1 or 0
file-allowed-seats = 1 to 2000 seats
file-allowed-seconds = seconds, 0 or more
file-allowed-share = a share from 0 to 1
file-allowed-skill = a skill such as lamp-reading
file-allowed-spell = a length above 0 s, up to the 3e7 s of a year
file-allowed-target = a share from 0.5 to 0.95
file-allowed-wait-hours = 0 or more, up to the 8760 hours of a year
file-allowed-wear = a wear from 0 (new) to 1 (worn out)
file-allowed-weight = a weight above 0, up to a million
file-allowed-weight-bound = a weight from 0 to a million
file-allowed-written-moment = a moment such as 2026-11-27T12:30:00Z
file-answers-field = is "{ $found }"; write { $allowed }
file-answers-no-column = there is no column "{ $name }"; save the answers again
file-answers-no-table = cannot be read as comma-separated values ({ $said }); save the answers again
file-board-bounds = { $value } is out of bounds: it must lie above { $above } and below { $below }
file-board-bounds-below = { $value } is out of bounds: it must lie above { $above }
file-board-code-range = { $code } cannot be shown; a code is 1 to 99
file-board-dark-digit = the digit { $digit } would be dark; give it a lamp that is lit or that blinks
file-board-digit-count = { $digits } signs for the digits 0 to 9; write ten, the one for 0 first
file-board-empty = asks for nothing
file-board-flashing = { $hz } Hz is outside 1.4 to 2.8 Hz (IEC 60073); no lamp may flash more than three times a second (WCAG 2.2, 2.3.1)
file-board-gesture-too-short = cannot be met: it takes at least { $least } ms and the window is { $window } ms; widen the window or ask for less
file-board-hold-impossible = cannot be met: at least { $least } ms and at most { $most } ms
file-board-label-twice = "{ $name }" stands twice
file-board-lamp-count = { $lamps } lamps are too many or none; use 1 to 16
file-board-lamp-twice = lamps { $name } are lit and blink at once, or are more than there are
file-board-letters-are-number = '{ $name }' would be taken for a number; put a letter or a dash into it
file-board-letters-without-segments = signs of the kind { $name } show no letters; take a picture of their lamps: `Still`
file-board-monitor-twice = monitor { $name } is listed twice
file-board-no-button = this board has no button { $name }
file-board-no-code = monitor { $name } has no code
file-board-no-digit = these weights cannot show the digit { $digit }; choose weights that add up to each of 0 to 9
file-board-no-knob = this panel has no knob to turn; give it a Dial or a Switch, or use buttons
file-board-no-letter = seven segments cannot show '{ $character }', or it would be a digit there; write '{ $nearest }'
file-board-no-picture = number { $number } has no picture of its own
file-board-no-position = position { $position } cannot be chosen; this panel has 0 to { $last }
file-board-no-routine = the menu has no { $name }; give it a position, every job needs it
file-board-no-rule = monitor { $name } has no rule
file-board-no-sheet = monitor { $name } has no entry in the service sheet
file-board-no-way-out = keeps a fault hold that nothing ends; give it a button to hold or a lid to move
file-board-not-free = { $name } is not free at this step
file-board-not-pushed = { $name } is not pushed at this step
file-board-number-takes-time = these signs take time to read; show the number alone: `Number`
file-board-one-button = { $name } is named twice; two buttons are pressed at once
file-board-other-steps = has other steps than `steps`, or the same order; write the same steps in another order
file-board-pause-alone = a pause stands between two other steps
file-board-place-count = { $places } places for { $lamps } lamps; give each lamp its own
file-board-placed-by-kind = signs of the kind { $name } have a place of their own; leave `placement` out, or take Pictures or InTurn
file-board-places-near = this lamp covers the one at places[{ $first }]; keep them 15 apart, or 25 one above the other
file-board-power-later = power can come only as the first step
file-board-same-code = code { $code } already stands at codes[{ $first }]; give each monitor a code of its own
file-board-same-digit = the digit { $digit } looks like { $first }; let one of their lamps differ
file-board-same-position = position { $position } is already taken by entry { $first }
file-board-stage-count = stage { $name } must stand exactly once
file-board-standing-unseen = only a Switch shows where it stands when power comes; give this panel one, or leave `standing` out
file-board-supply-unmatched = { $name } must stand in `mains` and in `supply`, or in neither
file-board-terminal-twice = { $terminal } is already wired to { $first }
file-board-terminal-unwired = { $name } is wired to no pin
file-board-text-key = "{ $name }" is no text key; use lower-case words joined by hyphens
file-board-turns-join = turns the same way as the step before; join the two
file-edit-already-there = "{ $name }" is there already; change it instead
file-edit-no-index = there are { $count } items; none can be put at { $index }
file-edit-no-list = what is at "{ $name }" is no list
file-edit-no-map = what is at "{ $name }" is no map
file-edit-no-name = "{ $name }" is no name of a field; use letters, digits and _
file-edit-no-path = there is nothing at "{ $name }"
file-edit-no-struct = what is at "{ $name }" has no fields
file-edit-no-value = this is no value: { $problem }
file-edit-unreadable = the file could not be read any more: { $problem }
file-edit-whole = the whole cannot be removed
file-kind-board = board
file-kind-course = course
file-kind-examination = examination
file-kind-guide = guide
file-kind-parts = parts list
file-kind-plan = plan of a class
file-kind-scenario = job
file-nearest = { $names } (the nearest of { $of })
file-not-sayable-letters = codes and numbers have digits only; letters can stand for a mode on two digits of seven segments: `hold: Letters('E', '-')`
file-not-sayable-turn-to = a turn counts detents from a known position; write `from` (a Switch without power: `standing`), then `Turn`
file-not-sayable-two-colors = a lamp has one color, so that nothing depends on telling colors apart; let it blink for the second meaning: `blinks`
file-not-written = { $reason }; check the folder, the free space and your permission to write there
file-packed-added = { $path } is not among the files that were packed; ask the author for the zip again
file-packed-changed = { $path } is not as it was packed; ask the author for the zip again
file-packed-gone = { $path } was packed and is missing now; ask the author for the zip again
file-problem-beyond-handbook = this has no place in a handbook; it takes headings of two levels, paragraphs, simple lists, code, bold labels, and fenced blocks of the kinds console, ron NAME and diff NAME
file-problem-board-name = the board calls itself "{ $found }", but its file says "{ $wanted }"; give both the same name
file-problem-course-number = job { $found } of course part { $part } is where job { $expected } belongs; number them from 1 without gaps
file-problem-empty = the file is empty; copy one of the same kind and change it
file-problem-foreign-param = { $param } belongs to { $owner }, but the failing component is { $component }; change one of its own parameters
file-problem-integer-range = { $found } is out of range; write a whole number from { $least } to { $most }
file-problem-io = cannot be read: { $reason }; check the name and your permission to read it
file-problem-leads-out = is a link that leads out of the library’s folder; put a copy of the file there instead
file-problem-misplaced = nothing reads a file in this place; boards belong in `boards`, jobs, guides and examinations in `scenarios`, parts in `parts.ron`, the manifest of a course in `course.ron`
file-problem-missing-field = the field "{ $name }" is missing; add it
file-problem-missing-param = { $name } has no value; add it here or under `common`
file-problem-name-taken = "{ $name }" is already the name of something in the library or built in; choose another name
file-problem-newer-course = this course has format { $format }, and this Detent reads formats up to { $most }; use a newer Detent
file-problem-newer-course-packed-with = this course has format { $format }, and this Detent reads formats up to { $most }; use Detent { $version } or newer
file-problem-newer-layout = layout { $layout } is of a newer Detent; use that one, or choose another file
file-problem-newer-program = this course was packed with Detent { $version }, and this is Detent { $own }: what follows may be no mistake but only newer; use Detent { $version } or newer
file-problem-no-end = supersession loop at part "{ $name }"; the newest part must not be superseded
file-problem-no-file = is a folder or a device, not a file; give the name of a file
file-problem-no-folder = there is no such folder, and no zip of this name; give the name of a folder with `boards`, `scenarios` or `parts.ron` in it, or of a course in one zip
file-problem-no-job = there is no job "{ $name }"; write the file name of a scenario without folder and ending
file-problem-no-name = is no name; write at most { $most } characters, one of them a letter or a digit
file-problem-no-scenario = there is no such file, and no built-in scenario of that name: `detent scenarios` lists them
file-problem-no-sum = this is not a SHA-256; leave `files` out, `detent course pack` writes it
file-problem-no-version = "{ $found }" is not a version; write one to four numbers with dots between them, such as 1.2
file-problem-not-built-in = is not built into this program; give a file's path, or one of: { $known }
file-problem-not-finite = { $found } is not a finite number; write an ordinary number
file-problem-not-own-board = an added part may be for boards of this library only, and "{ $name }" is none; name one of its boards
file-problem-not-text = these bytes are not UTF-8 text; choose another file, or save this one as UTF-8
file-problem-nothing = this is empty; { $wanted }
file-problem-nothing-to-draw = no failure mode is all of this on this board; ask for less: `detent names faults`, `kinds` and `codes` list what there is
file-problem-out-of-range = { $found } is out of range; write { $allowed }
file-problem-repeated = "{ $name }" is already used in line { $line }; give it another name
file-problem-repeated-field = the field "{ $name }" is here twice; remove one
file-problem-step = { $problem }; write a step (Turn, Point, Tap, Hold, PowerDown, Look, Watch, Wait, Rest, Until) or an action (Plug, Unplug, Probe…): README shows examples
file-problem-syntax = { $problem }; correct the value or the punctuation here
file-problem-too-deep = nesting too deep; no file of this program needs that, remove some brackets
file-problem-too-little-money = nobody can do this job for { $found }: parts and the least work cost { $least }; allow more
file-problem-too-little-time = nobody can do this job in { $found } min: report and repair alone take { $least } min; allow more
file-problem-too-long = the file is longer than the { $most } bytes that such a file may have; choose another file
file-problem-too-much = the library holds more than { $files } files or { $bytes } bytes; split it into several
file-problem-unfit-part = part "{ $name }" is for another component; name one for this one
file-problem-unknown-board = no board is called "{ $found }"; the boards are: { $known }
file-problem-unknown-code = board "{ $board }" has no code { $code }; see its list of codes
file-problem-unknown-field = there is no field "{ $found }" here; use one of: { $expected }
file-problem-unknown-mode = no failure mode is called "{ $name }"; `detent faults` lists them all
file-problem-unknown-name = there is no "{ $found }" here; use one of: { $expected }
file-problem-unknown-name-alone = there is no "{ $name }" here; correct the name
file-problem-unknown-part = no part has the number "{ $name }"; see assets/parts.ron
file-problem-wrong-mains = board "{ $name }" is not made for this supply; see `mains` in its file
file-profile-changed = was changed or deleted since it was read and has been left as it is; choose the learner again
file-profile-no-name = a learner's name needs a letter or a digit; write one
file-profile-taken = there is already a learner called "{ $name }"; choose another name
file-ron-attribute = an attribute is #![enable(…)], #![type = "…"] or #![schema = "…"]
file-ron-boolean = expected true or false
file-ron-bracket = expected an opening "("
file-ron-bracket-end = expected a closing ")"
file-ron-bracket-mismatch = "{ $open }" is closed by "{ $close }"
file-ron-bracket-open = "{ $open }" is not closed
file-ron-character = expected a single character in single quotes
file-ron-colon = expected a colon
file-ron-comma = expected a comma
file-ron-comment-end = a comment that begins with "/*" is not closed
file-ron-decimal-point = expected a name; a decimal fraction is written with a point
file-ron-end = the text ends too early
file-ron-escape = no character is written like this; behind a backslash comes n, r, t, u, x, another backslash or a quote
file-ron-integer-bounds = this whole number is out of range
file-ron-length = expected another number of values than { $found }
file-ron-list = expected an opening "["
file-ron-list-end = expected a closing "]"
file-ron-map = expected an opening brace
file-ron-map-end = expected a closing brace
file-ron-missing-field = the field "{ $name }" is missing
file-ron-mixed = fields with a name and without one do not go together
file-ron-more = there is more text behind the end
file-ron-name = expected a name
file-ron-number = expected a number
file-ron-number-form = no number is written like this
file-ron-option = expected Some or None
file-ron-other = { $said }
file-ron-other-name = expected { $expected } but found { $found }
file-ron-repeated-field = the field "{ $name }" is here twice
file-ron-text = expected text in double quotes
file-ron-text-end = a text is not closed with double quotes
file-ron-unexpected = the character "{ $found }" does not belong here
file-ron-unit = expected "()"
file-ron-value = expected a value
file-ron-whole-number = expected a whole number
file-system-already-there = there is one already
file-system-denied = permission denied
file-system-folder = it is a folder
file-system-full = no space is left
file-system-no-folder = a part of the path is no folder
file-system-nobody-reads = nobody reads it any more
file-system-not-found = there is no such file or folder
file-system-other = { $said }
file-system-read-only = it can only be read
file-wanted-both-languages = write it in both languages
file-wanted-catalogue = give the machine at least one failure mode
file-wanted-change = name at least one parameter that the fault changes
file-wanted-cure = name the part that cures it, or say by_hand: true
file-wanted-failure-mode = name at least one failure mode
file-wanted-job = name at least one job
file-wanted-job-or-drill = name at least one job or one drill
file-wanted-mode-name = name the failure mode
file-wanted-no-hands = leave it out: hands cannot put this component right
file-wanted-own-board = name at least one board of this library
file-wanted-part = list at least one part
file-wanted-step = write at least one step
file-wanted-text = write it
file-zip-absolute = this path starts at the top of a disk, not inside the course; ask for a zip made by `detent course pack`
file-zip-backslash = there is a backslash in this path, which leads elsewhere on some systems; ask for a zip made by `detent course pack`
file-zip-drive = there is a colon in this path, which names a drive on some systems; ask for a zip made by `detent course pack`
file-zip-encrypted = this file is encrypted; ask for a zip without a password
file-zip-link = this is a link or a device, not a file; ask for a zip with the file itself
file-zip-long-name = this name is longer than some systems allow; give the file a shorter one and pack the course again
file-zip-method = this file is packed in a way that Detent does not read; ask for a zip made by `detent course pack`
file-zip-name-characters = some systems do not take this name; use letters, digits, spaces, `-`, `_` and `.`, with no space or dot at the end, and pack the course again
file-zip-no-manifest = there is no `course.ron` at the top, so this is not a course; `detent new course` writes one
file-zip-no-zip = this is not a zip; give the name of a folder or of a zip made by `detent course pack`
file-zip-ratio = this file would become more than a hundred times as large as it is packed, as no text does; do not use this zip
file-zip-reserved = this name is that of a device on some systems; give the file another one and pack the course again
file-zip-same-name = two files of this zip would be one on some systems; rename one and pack the course again
file-zip-several-parts = this is one part of a zip in several; ask for it in one piece
file-zip-size = this file is not as long as the zip says; do not use this zip
file-zip-strange = no course has such a file: it holds `course.ron`, `parts.ron`, and files that end in `.ron` in `boards` and `scenarios`; pack it with `detent course pack`
file-zip-torn = this zip is damaged or contradicts itself; ask for it again
file-zip-unpackable = this cannot be packed; remove what is not needed from `course.ron` and from the folder
file-zip-upward = this path leads out of the course; do not use this zip
file-zip-zip64 = this is the form of a zip for more than 4 GiB, and no course is that large; ask for a zip made by `detent course pack`

## film

film-again = Watch again
film-as-recorded = End of the replay: it comes out as recorded.
film-at = { $minutes }:{ $seconds }
film-before-first = The technician has arrived. Nothing has been done yet.
film-did-ask = Ask the customer: { $question }
film-did-bail-out = Bail out the tub
film-did-bucket-cold = Bucket test at the cold { word-tap }
film-did-bucket-hot = Bucket test at the hot { word-tap }
film-did-button-down = Press { $button } and keep it down
film-did-button-up = Release { $button }
film-did-check-for-leaks = Check for leaks
film-did-clamp = Clamp { $mode } around the wire at { $red }
film-did-close-cabinet = Put the panels back
film-did-close-lid = Close the lid
film-did-discharge = Discharge the capacitor
film-did-fit = Install { $part }
film-did-hold-display = Hold the reading
film-did-inspect = Inspect: { $component }
film-did-lift-probes = Lift the probes
film-did-load-basket = Put the laundry back in
film-did-note-code = Record code { $code }
film-did-open-cabinet = Remove the panels
film-did-open-lid = Open the lid
film-did-order = Order { $part }
film-did-plug = Plug in the machine
film-did-press = Press { $button } for { $seconds } s
film-did-probe = Measure { $mode }: { $red } to { $black }
film-did-probe-fingers = Measure { $mode } with fingers on the tips: { $red } to { $black }
film-did-pull = Unplug connector { $connector }
film-did-put-right = { $component }: { $work }
film-did-quote = Give the customer a quote
film-did-release-display = Release the reading
film-did-replace-leads = Use the spare leads
film-did-replace-meter-fuse = Replace the meter’s fuse
film-did-report = Submit the report: { $causes }
film-did-report-given-up = Give the job up
film-did-report-nothing-wrong = Submit the report: nothing is wrong
film-did-reset-outlet = Reset the outlet
film-did-return = Return { $part }
film-did-seat = Plug connector { $connector } back in
film-did-shut-taps = Shut off both { word-taps }
film-did-strike-code = Strike out code { $code }
film-did-take-hint = Take a hint: { $rung }
film-did-test-meter = Check the meter on the proving unit
film-did-turn-left = Turn left: { $detents } { $detents ->
    [one] detent
   *[other] detents
}
film-did-turn-right = Turn right: { $detents } { $detents ->
    [one] detent
   *[other] detents
}
film-did-unload-basket = Take the laundry out
film-did-unplug = Unplug the machine
film-differs = The replay comes out otherwise than it was recorded: { $why }.
film-here = { $number } of { $count }: { $deed }
film-keys = Space bar: play or pause. Arrow keys: one action back or on.
film-leave = Close the replay
film-live = Not finished yet: what comes next follows by itself.
film-losses-later = Lost points are shown once the report has been submitted.
film-losses-sealed = Lost points are withheld until the class is closed.
film-machine = What the machine went through
film-milestone-calibration-failed = Recalibration stopped
film-milestone-calibration-passed = Recalibration passed
film-milestone-calibration-started = Recalibration began
film-milestone-code-shown = The lamps showed code { $code }
film-milestone-codes-cleared = The code list was cleared
film-milestone-held = The control stopped with a fault
film-milestone-power-reset = The control lost its supply and forgot
film-milestone-program-canceled = A program was canceled
film-milestone-program-finished = A program ran to its end
film-milestone-program-started = A program began
film-milestone-service-entered = Service mode was entered
film-milestone-some-code-shown = The lamps showed a code
film-newest = Latest
film-next = Next action
film-no-hands = This is a replay: nothing can be done at the bench. Close it first.
film-none-yet = Nothing yet.
film-pause = Pause
film-play = Play
film-previous = Previous action
film-shortened = Wait shortened: { $minutes } min
film-timeline = Timeline of the actions
film-timeline-how = Lines: actions. Diamonds: what the machine went through. Triangles: lost points. Long waits are drawn short. What would take more than { $seconds } s to watch is shortened.
film-waits-for-more = Waiting for the next action…
film-ways = Compare with the best way

## finding

finding-air-hose-blocked = No air passes when you blow through the pressure hose.
finding-air-hose-cracked = The pressure hose has a crack near its end.
finding-basket-stiff = The basket is stiff to turn and rumbles.
finding-belt-off = The belt is broken and lies under the pulleys.
finding-belt-slack = The belt is slack and shiny, and smells of hot rubber.
finding-bolt-stiff = The lock’s bolt is stiff and barely moves.
finding-cold-tap-shut = The cold { word-tap } is shut off.
finding-cold-tap-throttled = The cold { word-tap } is nearly shut off: little water comes.
finding-cord-browned = The plug is scorched on one side, and the cord is stiff where it enters the plug.
finding-dial-cable-broken = The flat cable from the dial to the board is broken.
finding-dial-soft = The dial’s detents feel soft; it slips past some of them.
finding-extension-cord = The machine is plugged into a long, thin extension cord that is warm to the touch.
finding-fuse-wire-gone = The wire in the fuse is burned out.
finding-gap-wide = The speed pickup is bent away from its magnets.
finding-gear-stripped = The clutch actuator’s cam turns loosely by hand: no gear holds it.
finding-hose-clogged = The drain hose is packed with lint.
finding-hose-end-high = The standpipe is far too high for the pump.
finding-hose-end-low = The end of the drain hose is far too low.
finding-hose-kinked = The drain hose is kinked behind the machine.
finding-hose-too-deep = The drain hose is pushed too far down the standpipe.
finding-hoses-crossed = The hot hose is on the cold valve, and the cold hose on the hot valve.
finding-hot-tap-shut = The hot { word-tap } is shut off.
finding-hot-tap-throttled = The hot { word-tap } is nearly shut off: little water comes.
finding-impeller-fouled = Hair and threads are wound around the pump’s impeller.
finding-impeller-stuck = The pump’s impeller will not turn.
finding-laundry-one-sided = The laundry is bunched up on one side.
finding-machine-rocks = The machine rocks: one foot is off the floor.
finding-motor-hot = The motor is too hot to keep a hand on.
finding-nothing = No visible fault.
finding-outlet-browned = The outlet is scorched around one contact, and the plug fits loosely.
finding-outlet-no-ground = The outlet tester shows no ground.
finding-outlet-reversed = The outlet tester shows line and neutral reversed.
finding-outlet-tripped = { $mains ->
    [120] The outlet’s GFCI has tripped: its reset button stands out.
   *[other] The outlet’s residual current device has tripped: its reset button stands out.
}
finding-pin-burnt = A connector pin is discolored and smells burned.
finding-relay-scorched = A relay on the board is scorched and smells burned.
finding-screen-clogged = The valve’s screen is clogged with grit.
finding-shaft-stiff = The motor’s shaft is stiff to turn by hand.
finding-stop-switch-cracked = The switch under the Stop button is cracked and has no click.
finding-suds = There are thick suds in the basket.
finding-too-much-laundry = The basket is packed full.
finding-tub-drips = There are fresh drip marks under the tub.
finding-valve-trickles = Water trickles through the closed valve.
finding-winding-smells = The motor smells of burned varnish.

## found

found-empty = You have not inspected anything yet.

## guide

guide-again-alone = Do it again, alone
guide-again-half = Do it again, every other step on your own
guide-done = That was the whole job
guide-hide = Hide the guide
guide-open = Open the guide
guide-show = Show me
guide-step = Guide: step { $step } of { $steps }
guide-tell = Tell me
guide-your-turn = Your turn: you have done this step before.

## hand

hand-work-drain-hose = Clear and reroute
hand-work-drain-pump = Clear impeller
hand-work-floor = Level
hand-work-harness = Reseat connectors
hand-work-inlet-cold = Clean screen
hand-work-inlet-hoses = Reconnect
hand-work-inlet-hot = Clean screen
hand-work-laundry = Rearrange
hand-work-minutes = { $minutes } min
hand-work-pickup = Bend back
hand-work-pressure-hose = Blow out
hand-work-supply = Remove extension cord
hand-work-taps = Open fully

## help

help-about = A training bench for people who repair washing machines.
help-about-more = Every machine, board, code, part and customer in it is invented. It does not replace local codes, lockout rules or a licensed electrician’s work.
help-best-cache = Folder in which the results of simulated runs are kept [default: the user’s cache folder; environment: DETENT_CACHE]
help-best-course = Print a table of all built-in scenarios instead
help-best-tables = Write the tables that ship with the program (what each fault shows on each built-in board) to this folder; `assets/tables` in the source
help-check-files = Files, folders, or names of built-in jobs; without any, the whole library
help-check-quiet = Print findings only
help-check-strict = Count warnings as errors
help-class-address = Address that learners are told instead of this computer’s own, such as http://bench.example.org/
help-class-as-written = In an examination: everyone gets the job as it is written, and not a machine of their own with a different fault
help-class-bind = Address of this computer to listen at [default: all of them]
help-class-cert = Certificate (PEM) for a name of the school’s own: the class is served by https; needs --key
help-class-data = Folder in which the class is kept; one that is there goes on [default: `class` in the folder of your data]
help-class-drill = A drill to be done besides; several times, one of each skill: entry-timing, lamp-reading, metering, code-look-up, next-test, part-choice, safe-work or proof
help-class-examination = An examination: no best path, hidden fault or score before the class is closed
help-class-job = A job to be done; several times, in their order [default: the whole course, or none beside drills]
help-class-key = Key (PEM) of the certificate
help-class-minutes = Close the class by itself so many minutes after it opens by itself
help-class-names = Names for the list: a text with one a line, or a school’s users.csv (OneRoster)
help-class-no-open = Do not open the board in the browser
help-class-only-listed = Let nobody join whose name is not on the list
help-class-opens-in = Open the class by itself after so many minutes [default: at once]
help-class-page = Folder of the packed page for browsers [default: where the packer puts it]
help-class-plan = A plan: a file with title, jobs, drills and times (detent new plan), in place of the options for these
help-class-port = Port to listen at [default: 8720]
help-class-questions = Questions in a round of each drill, at most 50 [default: 10]
help-class-seats = Most learners [default: 60]
help-class-title = What the class is called
help-command-best = Print the likely causes on a scenario’s machine, the best next steps and the expected cost of repair; or a table of costs for every scenario
help-command-check = Check jobs, boards, guides, examinations and courses: structure, and by simulation that each job can be done
help-command-class = Serve a class from this computer: learners join in a browser or with the program, you see where everybody stands
help-command-course = Pack a course of your own into one zip, check one, or open one as a folder
help-command-course-check = Check a course, a folder or a zip: manifest, files as they were packed, every file through its reader
help-command-course-open = Unpack the zip of a course into a new folder, if all of it is safe and can be read
help-command-course-pack = Check the folder of a course as `check` does, and pack it into one zip if there is no error. The same files give the same zip
help-command-faults = Print every fault with the codes it raises and the readings that tell it apart
help-command-help = Print this help, or that of a command
help-command-jobs = Draw variants of a job, each proved before it is offered; print them or write them to files
help-command-names = List the names that files may use; without KIND, the kinds
help-command-new = Write a commented file to begin with: scenario, board, guide, examination or course
help-command-parts = Print the price list of the parts counter
help-command-play = Run a script on a scenario without a window; print the machine’s state, the readings and the score
help-command-practice = Print how a learner is doing in each skill, or how well adaptive practice works for simulated learners
help-command-print = Print handouts and their answer keys as PDF files
help-command-reference = Print what a kind of file may say: every field with unit, limits, default and examples; without KIND, the kinds
help-command-replay = Repeat a recorded attempt and check that the machine’s state and the score are the same
help-command-scenarios = List the scenarios
help-command-sheet = Print a board’s service sheet: entry gesture, codes, checks, menu, pins
help-command-simulate = Run the customer’s wash on a scenario’s machine and print its signals
help-command-tutorial = Read the tutorial for instructors: three exercises, from a copied job to a board of your own
help-command-wash = Print the customer’s wash on a scenario’s machine as a timeline, with the codes it stores and how it ends
help-command-window = Open the bench in a window (the same as no command)
help-course-check-course = Folder or zip of the course
help-course-check-prove = Prove by simulation, too, that each job can be done
help-course-check-quiet = Print findings only
help-course-check-strict = Count warnings as errors
help-course-open-to = Folder to write; there must be none of this name yet
help-course-open-zip = Zip of the course
help-course-pack-folder = Folder of the course, with `course.ron` in it
help-course-pack-to = Zip to write; there must be none of this name yet
help-default = { $help } [default: { $value }]
help-exit-status = Exit status: 0 success; 1 the script, replay or check failed; 2 wrong usage, or a file that cannot be used.
help-faults-of = A board or a scenario, by name or by file
help-faults-v230 = Use the 230 V, 50 Hz machine
help-heading-arguments = Arguments
help-heading-commands = Commands
help-heading-options = Options
help-heading-usage = Usage
help-help-of = Command to explain, with the command that it belongs to [default: all of them, briefly]
help-jobs-count = How many variants to print
help-jobs-like = The job to draw variants of: a scenario file, or the name of a built-in scenario
help-jobs-out = Write each variant to a scenario file in this folder, which must be there. No file is ever overwritten
help-jobs-seed = Seed of the draws: the same seed gives the same variants
help-jobs-survey = Draw so many drafts instead, and print only how many are offered and why the others are not
help-names-kind = What to list
help-new-file = File to write; there must be none of this name yet
help-new-kind = scenario, board, guide, examination, course or plan
help-option-board = Board, by its name
help-option-help = Print help
help-option-json = Print JSON, as described in `assets/schema`
help-option-lang = Language of the texts: en or es [default: from LANG, else en]
help-option-library = Folder with boards, scenarios and parts of your own, or a course in one zip: they stand beside the built-in ones
help-option-scenario = Scenario file, or the name of a built-in scenario
help-option-seed = Seed of the random draws [default: the scenario’s own]
help-option-version = Print version
help-play-call-back = Work on the call-back of this finished attempt at the same scenario: the customer has called three days later, and the second visit begins. What is saved carries the first attempt with it
help-play-learner = Learner file: what to work on first depends on what this learner has mastered. Nothing is written to it
help-play-resume = Continue the unfinished attempt instead; the script starts where it was interrupted
help-play-save = Save the attempt to this file, for `detent replay`. Until it is finished, `.part` is added to the name; an unfinished attempt of that name is replaced
help-play-script = Script file: one step per line
help-practice-fit = Saved answers (CSV), one file a learner: estimate the parameters of knowledge tracing for each skill
help-practice-json = With --learners or --fit: print JSON, as described in `assets/schema`
help-practice-learners = Folder of learner files: print how the learners are doing, side by side. Nothing is written
help-practice-profile = Learner file: print how this learner is doing in each skill
help-practice-seed = Seed of the random draws
help-practice-sessions = Sessions per learner, one a day
help-practice-simulate = Let simulated learners practice: does the model find out what they know, and how many exercises do adaptive practice, a fixed order and a random order need?
help-practice-simulated = Number of simulated learners
help-practice-target = Share of right answers to aim at
help-print-out = Folder for the files, which must be there. No file is ever overwritten
help-print-paper = Size of the paper: a4 or letter [default: a4]
help-print-scenarios = Scenario files, or names of built-in scenarios: a handout and a key for each
help-print-seed = Seed of the random draws [default: the scenario’s own; for variants 1]
help-print-variants = Draw so many variants of each job instead, one for each learner, with one key
help-reference-json = Print the JSON Schema instead, as in `assets/schema`
help-reference-kind = scenario, board, guide, examination, parts or course
help-replay-attempt = Attempt file
help-replay-scenario = Scenario, if it is neither where the attempt says, nor next to the attempt, nor built in
help-sheet-of = A board or a scenario, by name or by file
help-simulate-csv = Print comma-separated values [default: aligned columns]
help-simulate-every-ms = Time between rows, ms
help-simulate-seconds = Machine time to simulate, s
help-value-address = ADDRESS
help-value-attempt = ATTEMPT
help-value-bind = ADDRESS
help-value-board = BOARD
help-value-cache = FOLDER
help-value-command = COMMAND
help-value-count = COUNT
help-value-course = COURSE
help-value-drafts = DRAFTS
help-value-every-ms = MS
help-value-file = FILE
help-value-folder = FOLDER
help-value-job = JOB
help-value-kind = KIND
help-value-lang = LANGUAGE
help-value-library = LIBRARY
help-value-like = SCENARIO
help-value-minutes = MINUTES
help-value-name-or-file = NAME-OR-FILE
help-value-options = OPTIONS
help-value-out = FOLDER
help-value-paper = SIZE
help-value-port = PORT
help-value-profile = FILE
help-value-save = FILE
help-value-scenario = SCENARIO
help-value-script = SCRIPT
help-value-seats = COUNT
help-value-seconds = SECONDS
help-value-seed = NUMBER
help-value-sessions = COUNT
help-value-skill = SKILL
help-value-tables = FOLDER
help-value-target = SHARE
help-value-title = TITLE
help-window-flat = Draw the machine flat, which is lighter on slow computers
help-window-join = Join the class whose server is at this address, such as http://192.168.1.20:8080
help-window-scenario = Start with this scenario instead of the start screen
help-window-software = Draw on the processor, as it is done where there is no graphics card
help-window-watch = Watch this attempt, finished or not, as a replay at the bench

## hint

hint = Hint
hint-ask-none = Nothing stands out yet. What would tell the most causes apart for the least work?
hint-ask-one = Is it { $cause } ({ $share }%)?
hint-ask-two = Which is it: { $cause } ({ $share }%), or { $other } ({ $other-share }%)?
hint-check-for-leaks-ask = What was opened that holds water?
hint-check-for-leaks-do = Look under the machine while there is water in it, or right after the run. A hose that was not seated shows there first.
hint-check-for-leaks-where = Look at the floor.
hint-do-apart = { $step }. It tells the two apart.
hint-do-cheap = { $step }. Nothing else tells you as much for its cost.
hint-do-last-resort = { $step }. Any way of repairing it is likely to cost more.
hint-do-repair = { $step }. You know enough: another test would cost more than it could save.
hint-empty-basket-ask = What will the motor have to turn while the control learns the machine?
hint-empty-basket-do = Wait until nothing moves, open the lid, take the laundry out and close the lid again. Then recalibrate: with laundry in the basket the control would learn a wrong inertia.
hint-empty-basket-where = Look into the basket.
hint-enter-service-mode-ask = Does the control know what stopped it?
hint-enter-service-mode-do = Get into service mode with the gesture on the sheet’s “Entry” page, within its timing windows. The control stores what it saw, and every test after that is cheaper.
hint-enter-service-mode-where = Start at the console, not inside.
hint-fit-part-ask = What is still in your hands?
hint-fit-part-do = Install { $part }. What you know speaks for it, and the machine is safe to work on.
hint-fit-part-where = Look at the parts you bought.
hint-intro = A hint costs points, more the further it goes. It knows only what you have seen so far.
hint-leave-fault-hold-ask = Why does the console answer to nothing?
hint-leave-fault-hold-do = The control holds its fault and takes no gesture meanwhile. The sheet’s “Entry” page tells the ways out of it; then try the gesture.
hint-leave-fault-hold-where = Look at the lamps on the console.
hint-look = What could help?
hint-look-again = Look again
hint-make-safe-ask = What on this machine can still hurt you, or run out?
hint-make-safe-do = Before the next step: { $practice }. It protects you whatever the fault is.
hint-make-safe-where = The next step is not safe yet.
hint-none-no-table = There are no hints: there is no table of this board’s faults.
hint-none-second-visit = There are no hints on a second visit: go by what the first one showed.
hint-open-cabinet-ask = What is in the way of the next step?
hint-open-cabinet-do = Take the cabinet panels off. What has to be tested next is behind them.
hint-open-cabinet-where = The next step is inside the machine.
hint-open-taps-ask = Can water get to the machine at all?
hint-open-taps-do = Open both { word-taps } again, all the way. You shut them off for the work.
hint-open-taps-where = Look at the { word-taps }.
hint-prove-by-run-ask = Has it washed since?
hint-prove-by-run-do = Put the laundry back in, close it up, plug it in and run a whole wash to the end: hot and cold water, and the fast spin. Only a run shows that nothing else is wrong.
hint-prove-by-run-where = The repair is not proven yet.
hint-quote-part-ask = What will it come to, and has the customer agreed to that?
hint-quote-part-do = You know enough to buy. First give the customer a quote with { $part } and the labor of the whole visit.
hint-quote-part-where = The next step is with the customer.
hint-read-codes-ask = Which codes are stored, and in which order?
hint-read-codes-do = In service mode, open the stored codes and record each one as the lamps show it. Read the lamps twice: the wrong code leads to the wrong part.
hint-read-codes-where = Look at the lamps in service mode.
hint-recalibrate-ask = Does the control know the machine as it is now?
hint-recalibrate-do = Close it up, plug it in and run the recalibration from the service menu, with the basket empty and the lid down. After a repair the control has to learn the machine again.
hint-recalibrate-where = The control comes next.
hint-renew-fuse-ask = Does the line fuse still pass current, now that what blew it is repaired?
hint-renew-fuse-do = Install { $part }. The old one has blown; with the cause repaired, the new one holds.
hint-renew-fuse-where = Look at where power comes in.
hint-reset-outlet-ask = Does power come to the machine at all?
hint-reset-outlet-do = Push the outlet’s reset button back in. It stays in once nothing leaks to ground any more; if it pops out again, something still does.
hint-reset-outlet-where = Look at the outlet.
hint-rung-what-to-ask = What to ask
hint-rung-what-to-do = What to do, and why
hint-rung-where-to-look = Where to look
hint-rung-with-price = { $rung } (−{ $points })
hint-show-customer-ask = Has the customer seen it run?
hint-show-customer-do = Ask the customer to watch the machine and to say whether everything is as it should be. What is seen together is not disputed later.
hint-show-customer-where = Think of the customer.
hint-start-wash-ask = Was the wash that the customer meant ever started?
hint-start-wash-do = Choose the program the customer uses and start it. On a worn dial the control can be somewhere else than the pointer.
hint-start-wash-where = Look at the dial and at what the console shows.
hint-thinking = Going over the job…
hint-where = Look at { $area }.
hint-where-wide = Look at the whole job: no one part stands out.
hint-write-report-ask = Which cause do your readings prove?
hint-write-report-do = Write the report: { $cause }. Cite the readings that rule the others out.
hint-write-report-do-none = Write the report, and cite the readings that rule the other causes out.
hint-write-report-where = The machine is done; the paper is not.

## incident

incident-fails = Whatever else goes well, this job is failed. Go on and learn from the rest.
incident-flood = Water on the floor
incident-hand-in-drive = Hand caught
incident-opened-under-pressure = Water under pressure
incident-scald = Scalded
incident-shock = Electric shock
incident-touched-charge = Shock from a stored charge

## invoice

invoice = Invoice
invoice-call-out = Service call fee: the trip to you
invoice-consumable = Consumables: { $consumable }
invoice-free-called-back = after a call-back, no charge (worth { $value })
invoice-free-fitted-in-vain = installed but not needed, no charge (worth { $value })
invoice-free-no-repair = not repaired, no charge (worth { $value })
invoice-free-ordered-in-vain = not needed after all, no charge (worth { $value })
invoice-labor = Labor: { $minutes } min at { $rate } per hour
invoice-part = Part { $part }
invoice-restocking = Restocking fee of { $percent }% for part { $part }
invoice-subtotal = Subtotal
invoice-tax = Tax, { $percent }%
invoice-total = Total
invoice-warranty = Warranty: { $days } days on parts and labor.

## join

join-asking = Asking the server…
join-code = Code
join-code-hint = Six letters and digits, as on the board.
join-go = Join
join-has-word = I have a word from my instructor
join-mistake-code = A code has six letters and digits. The letters B, I, O, S, U and Z are never in it, and its only digits are 3, 4, 7 and 9.
join-name = Your name
join-name-hint = As your instructor has it on the list.
join-no-answer = The server does not answer. Check that this device is on the same Wi-Fi as the instructor’s computer, and that the address on the board is { $address }.
join-not-a-class = What answers at { $address } is not a class. Compare the address with the one on the board.
join-refused-closed = This class is closed.
join-refused-code = That is not the code of this class. Read it off the board again.
join-refused-full = Every seat in this class is taken. Tell your instructor.
join-refused-name = A name has at least one letter and at most 60 characters.
join-refused-not-on-list = That name is not on the list of this class. Type it as your instructor has it.
join-refused-protocol = The server runs another version of the program. Use the one that the class was made with.
join-refused-taken = Somebody with this name has already joined. If that was you, ask your instructor for a word to come back with.
join-refused-tries = Too many wrong codes. Try again in { $seconds } s.
join-refused-word = That is not the word your instructor gave for this name, or it has been used or is too old. Ask for another.
join-seat-lost = The server no longer knows your seat. Join again; if your name is taken, ask your instructor for a word.
join-server = Server: { $address }
join-title = Join the class
join-without = Go on without a class
join-without-note = Everything is there, but nothing is sent to your instructor.
join-word = Word
join-word-hint = It brings you back to your seat after you used another device.

## keep

keep-down = { $button } held down
keep-how = Shift or the other mouse button keeps a button down; so does “Keep a button down” over the picture. Press the button again to release it.
keep-let-go = Release it
keep-next = Keep a button down

## kept

kept-delete = Delete
kept-delete-sure = Delete permanently?
kept-finished = submitted
kept-go-on = Continue
kept-go-on-last = Continue where you left off
kept-in-browser = Stored in this browser, on this computer, in the same format as the files of the installed program.
kept-in-folder = Stored in { $place }
kept-jobs = Jobs
kept-load = Load an attempt from a file
kept-look = See the result
kept-mine = My attempts ({ $count })
kept-none = Nothing here yet. An attempt is saved from its first action on.
kept-save = Save a copy
kept-second-visit = second visit
kept-taken = { $detail } is now among your attempts.
kept-unfinished = unfinished, { $actions } actions in { $minutes } min

## key

key-back = Go back, stop waiting
key-cabinet = Panels off or on
key-discharge = Discharge capacitor
key-faster = Speed time up
key-focus = Next field, press it
key-hide = Hide or show the panels
key-keep = With a button: keep it down until it is pressed again
key-keys = Keys and settings
key-less = Less: press, or hold
key-lid = Open or close the lid
key-more = More: press, or hold
key-page = Scroll the page
key-plug = Plug in or unplug
key-slower = Slow time down
key-start = Start: press, or hold
key-stop = Stop: press, or hold
key-tab-meter = Tab: meter
key-tab-parts = Tab: parts
key-tab-report = Tab: report
key-tab-score = Tab: score
key-tab-sheet = Tab: service sheet
key-turn = Turn the dial
key-turn-left = Dial: one detent left
key-turn-right = Dial: one detent right
key-view-console = View of the console
key-view-inside = View inside
key-view-machine = View of the machine
key-wait = Wait one minute
key-wait-long = Wait ten minutes
key-wait-until = Wait until the machine finishes or stops

## known

known-caution = the caution shown before it
known-sheet = the timing windows and rests on the service sheet

## lamps

lamps-bar-bottom = bottom
lamps-bar-lower-left = lower left
lamps-bar-lower-right = lower right
lamps-bar-middle = middle
lamps-bar-top = top
lamps-bar-upper-left = upper left
lamps-bar-upper-right = upper right
lamps-bars = bars lit: { $bars }
lamps-blinking = blinking — { $lamps }
lamps-column = lit, counted from the top: { $lit } (of { $lamps } lamps)
lamps-digits = left digit: { $left }; right digit: { $right }
lamps-flash-long = long
lamps-flash-short = short
lamps-flashes = flashes: { $flashes }; pause
lamps-free = lit, by the number beside each: { $lit } (of { $lamps } lamps)
lamps-grid = lit, counted row by row from the top left: { $lit } (of { $lamps } lamps)
lamps-hold = Fault hold
lamps-idle = Standby
lamps-in-turn = blinking between: { $first } — and: { $then }
lamps-lock-blinking = lock lamp blinking
lamps-lock-dark = lock lamp dark
lamps-lock-lit = lock lamp lit
lamps-none = none
lamps-one-after-the-other = one digit after the other: { $signs }; pause
lamps-one-dark = lamp dark
lamps-one-lit = lamp lit
lamps-program = Program
lamps-recalibration = Recalibration
lamps-row = lit, counted from the left: { $lit } (of { $lamps } lamps)
lamps-seen = Lamps: { $lamps }
lamps-service = Service mode
lamps-test = Load test
lamps-then = then
lamps-weights = lit in the tens: { $tens }; lit in the units: { $units }

## language

language-choose = Language

## leak

leak-dry = Under the machine: dry.
leak-wet = Under the machine: wet. Something leaks.

## learner

learner-changed = Not saved: { $detail } was changed or deleted in the meantime and has been left as it is. Choose the learner again.
learner-damaged = This learner’s file cannot be used and has been left as it is: { $detail }
learner-no-name = A name needs a letter or a digit.
learner-refused = Not saved: { $detail }. Check the free space and your write permission.
learner-taken = There is already a learner called “{ $detail }”. Choose another name.

## leave

leave-job = Leave this job

## library

library-about = A folder with boards, scenarios and parts.ron of your own, or a course packed as a zip; it can be dropped on the window too. What you change there in any editor shows here at once.
library-about-page = Boards, scenarios and parts of your own, from a folder or from a course packed as one zip. This browser keeps what you open.
library-ask-folder = Open a folder…
library-ask-zip = Open a zip…
library-close = Close the library
library-mistakes = Something is wrong in the library. What was read before stays on offer:
library-none = No library is open: what is built in is on offer.
library-open = Open: { $place }
library-open-do = Open it
library-title = Library

## look

look = Look, feel, turn by hand
look-intro = Clean, adjust and reseat before you buy. A look takes one minute. Parts behind the panels need the panels off and the machine unplugged.

## loss

loss-bought-on-the-code = Part ordered on the code alone
loss-calibrated-with-laundry = Recalibrated with laundry inside
loss-code-not-noted = Code not recorded
loss-code-slip = Code misread and struck out
loss-discharged-live = Capacitor discharged with the plug in
loss-discharged-unmeasured = Charge not measured after discharging
loss-failed-try = Failed try to enter service mode
loss-flood = Floor flooded
loss-good-board-replaced = Good control board replaced
loss-hand-in-drive = Hand in the moving drive
loss-hint-taken = Hint taken
loss-lid-spinning = Lid opened while the basket turned
loss-live-not-allowed = Live measurement where not allowed
loss-lucky-repair = Repaired by luck
loss-meter-not-proved = Meter not checked before and after
loss-misread = Code misread
loss-never-entered = Service mode never entered
loss-no-evidence = No evidence cited
loss-no-leak-check = No look for leaks
loss-no-proving-run = No proving run
loss-no-report = No report
loss-not-approved = Part installed without approval
loss-not-cured = Fault still in the machine
loss-not-demonstrated = Customer not shown that it runs
loss-not-proved-dead = Circuit not proved dead
loss-not-recalibrated = Not recalibrated
loss-ohms-on-live = Ohms measured on a live circuit
loss-opened-live = Cabinet opened with the plug in
loss-opened-under-pressure = Hose taken off under pressure
loss-over-budget = Over what the customer agreed to
loss-over-quote = Well over the quote
loss-over-repair-limit = Over what the machine is worth repairing for
loss-over-repaired = Part replaced that only needed work by hand
loss-overspent = More spent than needed
loss-rest-too-short = Unplugged too briefly
loss-rivals-left = Other causes left open
loss-run-falls-short = Proving run fell short
loss-scald = Scalded
loss-shock = Electric shock
loss-slow = Took too long
loss-tester-shock = Shock from the insulation tester
loss-touched-charge = Shock from a stored charge
loss-wrong-advice = Wrong advice to the customer
loss-wrong-cause = Wrong cause named
loss-wrong-part = Wrong part installed
loss-wrong-part-named = Wrong part named

## lost

lost-bought-on-the-code = Part { $part } was ordered before any reading pointed to it. A code names what the control saw, not the bad part: measure first.
lost-calibrated-with-laundry = Laundry was in the basket during the last recalibration, so the control learned a wrong inertia. Take the laundry out, close the lid and recalibrate again.
lost-code-not-noted = The control stored code { $code } and you never recorded it. Read the code list page by page and record each one.
lost-code-slip = You recorded { $noted }, which the lamps never showed, and struck it out before it led to a purchase.
lost-discharged-live = The capacitor was discharged with the machine plugged in: the supply kept it charged, and the resistor burned. Unplug the machine first.
lost-discharged-unmeasured = The capacitor was discharged, and nobody measured afterward. A resistor that makes bad contact discharges nothing: measure V DC from bulk.plus to bulk.minus before hands go in.
lost-failed-try = A try to enter service mode failed: { $rule }. Read the trace, let everything rest, then try again at an even pace.
lost-flood = With water in the tub a part below it was opened, or the machine was tilted, and the floor was flooded. Drain or bail out the tub first.
lost-good-board-replaced = A good control board was replaced. Prove that the board’s inputs are right and its output is wrong before you buy one.
lost-hand-in-drive = A hand was in the basket or at the drive while it turned: that breaks fingers and arms. Wait until it stops.
lost-hint-taken = A hint was taken: { $rung }.
lost-lid-spinning = The lid was opened while the basket was turning. Wait until it stops: it can break an arm.
lost-live-not-allowed = You measured live on a job that does not allow it. This fault had to be found with the machine unplugged.
lost-lucky-repair = The machine runs again, but by luck: the report says “{ $said }”; it was “{ $truth }”. Prove which part has failed before you install one: next time you may not be so lucky.
lost-meter-not-proved = The circuit was tested, but the meter was not checked on a known source before and after. A dead meter shows a dead circuit everywhere: known source, circuit, known source, then hands.
lost-misread = You recorded { $noted }, but the lamps never showed it. Add up each group of four lamps again. Codes shown in this job: { $shown }
lost-never-entered = Service mode was never entered, so the stored codes were not read. Follow the gesture on the service sheet.
lost-no-evidence = The report cites no reading from before the repair. Tick the readings that show the cause.
lost-no-leak-check = { $component }: something that holds water was opened, and nobody looked afterward whether it leaks. Look under the machine with water in it, or after a run.
lost-no-proving-run = No program was run to the end after the repair. Run one and watch it: only that shows that the machine washes.
lost-no-report = No report was submitted. The job ends with a written cause, part and proof.
lost-not-approved = Part { $part } was installed before the customer had agreed to what it costs. Give a quote that names it, and wait for the answer.
lost-not-cured = The fault is still in the machine. Install the part that cures it, or tell the customer plainly that it is not fixed.
lost-not-demonstrated = The machine runs again, and the customer was not asked to watch it. Ask for it after the proving run, before the report.
lost-not-proved-dead = Hands went in before anyone verified that the circuit was dead. Wait a minute, measure V DC from bulk.plus to bulk.minus, discharge the capacitor, and measure again.
lost-not-recalibrated = No recalibration passed after the repair. Recalibrate, so that the control learns the machine as it is now.
lost-ohms-on-live = Ohms were measured on a live or charged circuit. Unplug the machine and discharge the capacitor before you choose Ω.
lost-opened-live = The cabinet was opened with the machine plugged in. Unplug it first and keep the plug in sight.
lost-opened-under-pressure = A hose came off with its { word-tap } open, and water sprayed over the floor. Shut the { word-taps } off first.
lost-over-budget = Parts and labor came to ¤{ $bill }; the customer had agreed to ¤{ $budget }. Ask before you go over what was agreed.
lost-over-quote = Parts and labor came to ¤{ $bill }; the customer had agreed to a quote of ¤{ $quoted }. More than a tenth above the quote takes a new one.
lost-over-repair-limit = Parts and labor came to ¤{ $bill }; above ¤{ $limit } this machine is not worth repairing. Say so before you spend the money.
lost-over-repaired = Part { $part } was replaced although the old one only had to be cleaned, adjusted, reseated or repaired with a kit. Correct by hand what can be corrected by hand, then test again.
lost-overspent = You spent { $spent }; the repair needed { $needed }. The rest did nothing for the customer.
lost-rest-too-short = Unplugged for only { $seconds } s: the control still held its charge, so nothing was reset. Give it a full minute.
lost-rivals-left = The readings cited leave { $open } of { $rivals } other causes open. Measure what tells them apart, and cite it.
lost-run-falls-short = A program ran to the end after the repair, but { $gap }. Run one that comes to what was repaired, and watch it.
lost-scald = Hands went into scalding water. Let the pump drain it, or let it cool.
lost-shock = Electric shock: something live was touched. Unplug the machine, keep the plug under your control and verify that the circuit is dead before hands go in.
lost-slow = The job took { $minutes } minutes; { $par } would do. Plan the next measurement before you pick up the tool.
lost-tester-shock = The insulation tester’s probes were in your fingers, and its 500 V went through you. It hurts and no more, but a hand that jerks back hits the next edge. Use the clips.
lost-touched-charge = A shock from stored charge: hands went in before it was gone. Wait a minute, discharge the capacitor, and verify with the meter that it is dead.
lost-wrong-advice = You told the customer: “{ $given }”. What was wrong with the machine calls for: “{ $due }”.
lost-wrong-cause = The report says “{ $said }”; it was “{ $truth }”. Let the readings, not the code, name the cause.
lost-wrong-part = A part was installed that does not cure the fault. Rule out the other suspects by measuring before you buy.
lost-wrong-part-named = Part named in the report: { $named }; part needed: { $needed }. Name the part for the component that failed, one that fits this machine.

## meter

meter-beep = beeps
meter-black = Black probe
meter-choose = choose a pin below
meter-clips = Clips
meter-dead = The meter’s fuse has blown
meter-fingers = fingers on the tips
meter-grip = Probes held by
meter-grip-fingers = Fingers
meter-held = HOLD
meter-mode-continuity = Continuity
meter-pins = Pins of
meter-red = Red probe
meter-test-bad = The meter does not read the known source: check its fuse and its leads.
meter-test-good = The meter reads the known source.
meter-test-intro = Proving unit: 50 V~, 50 V DC and 100 Ω. Check the meter on it before and after you verify that a circuit is dead.

## misread

misread-count = Count again: tens first, then units.
misread-lamps = { $count ->
    [one] One lamp differs.
   *[other] { $count } lamps differ.
}
misread-noted = You recorded { $code }
misread-shown = The lamps showed { $code }

## mode

mode-belt-broken = Drive belt broken
mode-belt-slipping = Drive belt slipping
mode-board-bleeder-open = Control board: bleeder resistor open
mode-board-clutch-actuator-switch-open = Control board: clutch actuator relay won’t close
mode-board-cold-switch-welded = Control board: cold valve relay welded
mode-board-current-input-drift = Control board: motor current input drifting
mode-board-hot-switch-open = Control board: hot valve relay won’t close
mode-board-lock-switch-open = Control board: lock relay won’t close
mode-board-lock-switch-welded = Control board: lock relay welded
mode-board-memory-lost = Control board: memory lost, recalibrate
mode-board-motor-a-switch-open = Control board: motor A relay won’t close
mode-board-motor-a-switch-tired = Control board: motor A relay fails when warm
mode-board-motor-b-switch-scorched = Control board: motor B relay scorched
mode-board-pump-switch-open = Control board: pump relay won’t close
mode-board-pump-switch-welded = Control board: pump relay welded
mode-board-sensor-rail-dead = Control board: no sensor supply
mode-board-service-mode-lost = Control board: service mode never answers
mode-board-stop-button-dead = Control board: Stop button dead
mode-board-supply-dead = Control board: switching supply dead, capacitor still charged
mode-board-thermistor-input-drift = Control board: thermistor input drifting
mode-clutch-actuator-cam-switch-closed = Clutch actuator: cam switch stays closed
mode-clutch-actuator-cam-switch-open = Clutch actuator: cam switch stays open
mode-clutch-actuator-open-winding = Clutch actuator: open winding
mode-clutch-actuator-stripped-gear = Clutch actuator: gear stripped
mode-cord-open-line = Power cord: line conductor open
mode-cord-weak-joint = Power cord: bad connection at the plug
mode-dial-encoder-dead = Dial: no signal to the board
mode-dial-worn = Dial: detents worn
mode-drain-hose-blocked = Drain hose blocked
mode-drain-hose-end-high = Drain hose: standpipe too high
mode-drain-hose-end-low = Drain hose: end too low
mode-drain-hose-kinked = Drain hose kinked
mode-drain-hose-too-deep = Drain hose: pushed too deep into the standpipe
mode-drain-pump-fouled = Drain pump: threads around the impeller
mode-drain-pump-open-winding = Drain pump: open winding
mode-drain-pump-seized = Drain pump: rotor seized
mode-drain-pump-winding-to-ground = Drain pump: winding leaks to ground
mode-filter-capacitor-shorted = Line filter: capacitor shorted
mode-filter-line-to-ground = Line filter: line side leaks to ground
mode-filter-open-choke = Line filter: choke open
mode-floor-not-level = Machine rocks on its feet
mode-harness-clutch-actuator-wire-open = Harness: clutch actuator wire open
mode-harness-cold-wire-open = Harness: cold valve wire open
mode-harness-hot-wire-open = Harness: hot valve wire open
mode-harness-lock-coil-wire-open = Harness: lock coil wire open
mode-harness-lock-return-burnt = Harness: burned pin in the lock return
mode-harness-lock-return-loose = Harness: loose pin in the lock return
mode-harness-motor-common-burnt = Harness: burned pin in the motor common
mode-harness-motor-wire-shaken = Harness: motor common wire opens when shaken
mode-harness-pickup-ground-shaken = Harness: pickup ground wire opens when shaken
mode-harness-pickup-wire-open = Harness: pickup signal wire open
mode-harness-pressure-supply-wire-open = Harness: pressure sensor supply wire open
mode-harness-pressure-wire-open = Harness: pressure signal wire open
mode-harness-pump-wire-open = Harness: pump wire open
mode-harness-thermistor-pin-damp = Harness: thermistor pin fails when damp
mode-harness-thermistor-wire-open = Harness: thermistor wire open
mode-inlet-cold-blocked-screen = Cold inlet valve: screen clogged
mode-inlet-cold-open-winding = Cold inlet valve: open coil
mode-inlet-cold-stuck-open = Cold inlet valve: won’t close
mode-inlet-hoses-crossed = Hot and cold hoses reversed
mode-inlet-hot-blocked-screen = Hot inlet valve: screen clogged
mode-inlet-hot-open-winding = Hot inlet valve: open coil
mode-inlet-hot-stuck-open = Hot inlet valve: won’t close
mode-laundry-overload = Laundry: basket overloaded
mode-laundry-suds = Laundry: too much detergent, suds
mode-laundry-uneven = Laundry: bunched on one side
mode-lid-lock-bolt-stiff = Lid lock: bolt stiff
mode-lid-lock-contact-damp = Lid lock: line contact fails when damp
mode-lid-lock-contact-open = Lid lock: line contact burned open
mode-lid-lock-contact-welded = Lid lock: line contact welded
mode-lid-lock-lid-switch-open = Lid lock: lid switch stays open
mode-lid-lock-open-winding = Lid lock: actuator coil open
mode-line-fuse-blown = Line fuse blown
mode-motor-bearing-dry = Motor: bearing running dry
mode-motor-open-winding-a = Motor: winding A open
mode-motor-open-winding-b = Motor: winding B open
mode-motor-seized = Motor: bearings seized
mode-motor-shorted-turns = Motor: shorted turns
mode-motor-winding-opens-hot = Motor: winding B opens when hot
mode-motor-winding-to-ground = Motor: windings leak to ground
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
mode-supply-extension-cord = Outlet: thin extension cord
mode-supply-loose-outlet = Outlet: loose contact
mode-supply-low-mains = Outlet: voltage too low, neutral loose upstream
mode-supply-no-ground = Outlet: no ground
mode-supply-polarity-reversed = Outlet: line and neutral reversed
mode-taps-cold-pipe-frozen = House supply: cold water pipe frozen
mode-taps-cold-pipe-narrow = House supply: cold water pipe narrowed by scale
mode-taps-cold-shut = Cold { word-tap } shut off
mode-taps-cold-throttled = Cold { word-tap } nearly shut off
mode-taps-hot-pipe-frozen = House supply: hot water pipe frozen
mode-taps-hot-pipe-narrow = House supply: hot water pipe narrowed by scale
mode-taps-hot-shut = Hot { word-tap } shut off
mode-taps-well-pump-weak = House supply: well pump builds up no pressure
mode-thermistor-drifting = Thermistor drifting
mode-thermistor-open = Thermistor open
mode-thermistor-shorted = Thermistor shorted
mode-tub-bearing-rough = Tub: basket bearing rough
mode-tub-leaking = Tub: seal leaks

## monitor

monitor-calibration-failed = Recalibration failed
monitor-calibration-missing = Not calibrated
monitor-cam-lost = Clutch actuator not in position
monitor-drain-slow = Drains too slowly
monitor-fill-none = No water comes in
monitor-fill-slow = Fills too slowly
monitor-level-lost = Level falls without draining
monitor-lock-not-proven = Lock not confirmed
monitor-lock-not-released = Lid lock does not release
monitor-motor-no-current = Motor draws no current
monitor-motor-overheated = Motor current lost while running
monitor-motor-overload = Motor current stays high
monitor-pressure-range = Pressure signal out of range
monitor-pulses-none = No speed pulses
monitor-pulses-weak = Too few speed pulses
monitor-spin-not-reached = Spin speed not reached
monitor-supply-low = Supply voltage sags
monitor-thermistor-range = Thermistor signal out of range
monitor-unbalance = Out of balance
monitor-water-not-warm = Water stays cold
monitor-water-too-hot = Water too hot
monitor-water-unexpected = Water rises with the valves closed

## name

name-dial = Dial: drag, scroll or use the arrow keys
name-less = Less (K)
name-lid = Lid (L)
name-more = More (I)
name-plug = Power plug (P)
name-start = Start (S)
name-stop = Stop (X)
name-switch = Switch: drag, scroll or use the arrow keys

## names

names-advice = Advice in a report
names-boards = Boards
names-codes = Codes of a board (--board)
names-components = Components
names-faults = Failure modes
names-fields = Fields of each kind of file
names-guide-goals = What can end a step of a guide
names-kinds = Kinds of failure modes
names-meter-modes = Settings of the meter
names-monitors = What a control watches
names-parts = Parts at the counter
names-presences = When a fault is there
names-routines = Routines of service mode
names-stages = Stages of recalibration
names-terminals = Terminals

## note

note-code = Code as you read it
note-code-do = Record code
note-strike = Strike out
note-tens-fewer = Tens: one less
note-tens-more = Tens: one more
note-units-fewer = Units: one less
note-units-more = Units: one more

## notebook

notebook = Notebook
notebook-empty = No readings yet.
notebook-live = live

## noted

noted-codes = Recorded:
noted-none = None yet

## number

number-hold = the code
number-idle = the minutes it will take
number-program = the minutes left
number-recalibration = the stage
number-service = the selected position
number-test = the seconds left

## pages

pages-apply = Apply
pages-attempt-running = In progress
pages-attempts = Attempts
pages-attempts-none = No attempt has come in yet.
pages-back-online = Connected to the class again.
pages-board = Class board
pages-book = Gradebook
pages-book-attempt-count = Verified: { $count }
pages-book-back = Back to the gradebook
pages-book-back-learner = Back to the learner
pages-book-cause = Cause named
pages-book-cause-none = No report
pages-book-changed = changed
pages-book-changes = Changes by instructors
pages-book-changes-from = Before
pages-book-changes-none = Nothing has been changed.
pages-book-changes-reason = Reason
pages-book-changes-to = After
pages-book-changes-what = What
pages-book-changes-when = When (UTC)
pages-book-changes-who = Who
pages-book-changes-who-instructor = Instructor
pages-book-comment = Comment
pages-book-comment-help = Stands on the report.
pages-book-cost = Parts and labor
pages-book-difficulty = Mean share of the points
pages-book-difficulty-help = 100% would be a job in which everybody keeps every point.
pages-book-discrimination = Discrimination
pages-book-discrimination-help = How well the marks in this job go with those in the other jobs, from −1 to 1. Near 0 or below, the job measures something else. At least { $count } learners are needed.
pages-book-download = Download
pages-book-download-csv = Marks with names (CSV)
pages-book-download-csv-pseudonyms = Marks without names (CSV)
pages-book-download-note = Only the first file has names in it; in the others pseudonyms stand for them.
pages-book-download-plot = Download the picture (SVG)
pages-book-download-roster = Marks for a school’s gradebook (OneRoster 1.2)
pages-book-download-xapi = Attempts as statements (xAPI 2.0)
pages-book-erase = Erase this learner
pages-book-erase-confirm = Erase for good
pages-book-erase-explained = Name, attempts, marks and comments are deleted from this computer, from the copies of the class too. This cannot be undone. Files that were downloaded, and messages to everybody, stay as they are.
pages-book-erase-keep = Do not erase
pages-book-export-learner = Everything kept about this learner (JSON)
pages-book-item-losses = What cost points most often
pages-book-item-misread = Codes misread
pages-book-item-misread-shown = Shown
pages-book-items = Jobs
pages-book-learners = Learners
pages-book-learners-count = Learners with a verified attempt
pages-book-lost-points = Points
pages-book-lost-reason = Reason
pages-book-lost-side = Side of the job
pages-book-lost-when = Minute
pages-book-mark = Mark
pages-book-mark-and-comment = Change the mark or write a comment
pages-book-mark-computed = Computed: { $points }
pages-book-mark-help = Points from 0 to 100; empty for the computed mark.
pages-book-mark-none = No verified attempt yet. That is not a zero.
pages-book-mark-reason = Reason for a changed mark
pages-book-mark-reason-missing = A changed mark needs a reason.
pages-book-mark-save = Save
pages-book-mark-saved = Saved.
pages-book-mark-stale = Somebody else has changed this meanwhile: mark { $points }, comment “{ $comment }”. Nothing was overwritten. Load the page again to see it, then change it if it still needs changing.
pages-book-mark-wrong = A mark is a number from 0 to 100.
pages-book-mean = Mean
pages-book-money = ¤{ $amount }
pages-book-none = No attempt has been verified yet.
pages-book-not-closed = This examination is still open. Learners see no points until it is closed: keep this page off the projector.
pages-book-open = Open the gradebook
pages-book-passed = Passed
pages-book-passed-count = { $count } of { $of }
pages-book-passed-not = Not passed
pages-book-plot-items = Mean share of the points in each job
pages-book-plot-skills = Share of the points by skill
pages-book-points = { $points } of 100
pages-book-report = Report
pages-book-report-for = Report on { $name }
pages-book-report-how = How to read this
pages-book-report-how-parent = In this class, learners find and repair faults on a simulated washing machine. Each job has 100 points: for safe work, sound reasoning, reading the machine’s codes, time and money, and proving that the repair works. From 70 points on a job is passed, if the work was safe. A job without a mark was not done or could not be checked; it is not a zero.
pages-book-report-parent = Report for the family
pages-book-report-print = To print it, use your browser’s print command.
pages-book-report-safe = No unsafe act in the jobs above.
pages-book-report-skill-good = Good
pages-book-report-skill-some = On the way
pages-book-report-skill-weak = Needs practice
pages-book-report-teacher = Report for the instructor
pages-book-report-unsafe = Unsafe acts in the jobs above: { $count }.
pages-book-result = Result
pages-book-rule = Which attempt counts
pages-book-second-visit = Second visit: does not count
pages-book-skill = Skill
pages-book-skill-jobs = Jobs done well
pages-book-skill-kept = Share of the points
pages-book-skills = By skill
pages-book-time = Working time
pages-book-unsafe = Unsafe acts
pages-book-unsafe-none = None
pages-close-confirm = Close the class
pages-close-explained = Nobody can go on working after that. What was done before still comes in and is checked.
pages-close-keep = Do not close it
pages-close-question = Close the class?
pages-column-attempts = Attempts done
pages-column-deeds = Actions
pages-column-idle = Idle for
pages-column-job = Job
pages-column-machine-time = Machine time
pages-column-more = Help and files
pages-column-name = Name
pages-column-seat = Seat
pages-column-state = State
pages-column-unsafe = Unsafe acts
pages-download = Download
pages-download-newest = Download the newest attempt of { $name }
pages-drill-so-far = { $done } of { $of } answered, { $right } right
pages-hand-in = Hand in a file
pages-hand-in-done = Taken in: { $file }. { $result }
pages-hand-in-file = Attempt file (.attempt) or drill round (.round), from a memory stick, for instance
pages-hand-in-none = Choose a file first.
pages-hand-in-send = Hand it in
pages-join-address = Address
pages-join-code = Code
pages-join-qr = QR code with the address { $address }
pages-kind-examination = Examination
pages-kind-practice = Practice
pages-list-none = Nobody matches this choice.
pages-lost = No connection to the class since { $time }. What you see here is how things stood then. The page keeps trying.
pages-message = Message
pages-message-all = Message to everybody
pages-message-none = Type a message first.
pages-message-seat = Message to this seat
pages-message-send = Send
pages-message-sent = Sent.
pages-minutes = { $minutes } min
pages-minutes-hours = { $hours } h { $minutes } min
pages-minutes-less = < 1 min
pages-more = More
pages-more-of = More for seat { $seat }, { $name }
pages-names = Add names
pages-names-add = Add to the list
pages-names-added = Added to the list.
pages-names-field = Names, one on each line
pages-names-none = Type at least one name.
pages-names-refused = Added, except for what is not a name: { $what }
pages-no-answer = The computer that runs the class does not answer. Try again.
pages-no-page = No bench for browsers here
pages-no-page-built = On a computer with the project and a Rust toolchain, the instructor packs it once. The first time takes about half an hour; the README, under “In a browser,” has the details:
pages-no-page-instructor = For the instructor
pages-no-page-join = With the program on your own computer, join like this:
pages-no-page-learner = The class is running, but this computer has no packed bench to hand out to browsers. Tell your instructor.
pages-no-page-restart = Then end the class and start it again: everybody comes back to the same seat.
pages-no-script = Without scripts this page shows how things stood when it was loaded, and you cannot send anything from it. Load it again for news.
pages-not-done = That did not work (error { $number }). Try again.
pages-projector = Projector
pages-projector-attempt = One attempt
pages-projector-gone = This attempt is not here any more.
pages-projector-join = Join the class
pages-projector-joined = { $count } joined
pages-projector-open = Show how to join on the projector
pages-projector-step-code = Type the code, then your name
pages-projector-step-open = Open this address, or scan the QR code
pages-projector-this = Show on the projector, without a name
pages-result-mismatch = Comes out otherwise than it says
pages-result-not-assigned = Not this learner’s job or machine
pages-result-other-content = Made with other content: not verified
pages-result-other-program = Other version: not verified
pages-result-too-long = Takes too long: not verified
pages-result-verified = Verified
pages-result-verified-points = Verified: { $points } of 100
pages-result-verified-right = Verified: { $right } of { $of } right
pages-result-waiting = Waiting to be checked
pages-rule-best = Best attempt
pages-rule-first = First attempt
pages-rule-last = Last attempt
pages-seat = Seat { $seat }
pages-seat-back = Back to the board
pages-seats = Seats
pages-show = Show
pages-show-absent = Not joined yet
pages-show-all = Everybody
pages-show-help = Those who need help
pages-sign-in = Instructor’s page
pages-sign-in-again = Sign in again
pages-sign-in-go = Sign in
pages-sign-in-key = Instructor’s key or address
pages-sign-in-none = Paste the key first.
pages-sign-in-refused = That is not the key of this class. Copy it from the window where the class was started.
pages-sign-in-where = It stands in the window where the class was started. Keep it from the learners.
pages-signed-out = You are signed out. What you see here no longer changes.
pages-skip = Skip to the seats
pages-sort = Order
pages-sort-help = Who needs help first
pages-sort-name = By name
pages-sort-seat = By seat
pages-standing = Class
pages-standing-close = Close
pages-standing-closed = Closed. What was done before still comes in.
pages-standing-not-open = Not open yet. It opens in { $time }.
pages-standing-open = Open
pages-standing-open-now = Open now
pages-standing-open-until = Open. It closes in { $time }.
pages-standing-pause = Pause
pages-standing-paused = Paused. Everybody waits.
pages-standing-set = Open, pause or close the class
pages-standing-set-open = Open
pages-state-absent = Not joined yet
pages-state-finished = All jobs done
pages-state-here = Here
pages-state-idle = Idle
pages-state-not-begun = Nothing begun yet
pages-state-silent = No contact: { $time }
pages-state-stuck = Stuck
pages-state-unsafe = Unsafe just now
pages-state-working = Working
pages-summary-here = { $count } of { $of } here
pages-summary-stuck = { $count } stuck
pages-summary-unsafe = { $count } unsafe now
pages-told-stuck = Seat { $seat }, { $name }: stuck.
pages-told-unsafe = Seat { $seat }, { $name }: unsafe just now.
pages-trouble = Trouble on the computer that runs the class: { $what }
pages-undrawn = No further variant of “{ $what }” can be drawn and proved: whoever had none yet gets the job as it is written.
pages-watch = Watch at the bench
pages-word = A word to come back with
pages-word-explained = For somebody who goes on at another device or has lost the seat: to be typed there beside the name.
pages-word-give = Give a word
pages-word-is = The word: { $word }

## paper

paper-answer-key = Answer key
paper-black = Black probe on
paper-budget = Customer’s limit
paper-cause = Possible cause
paper-cause-against = What speaks against it
paper-cause-for = What speaks for it
paper-causes = Possible causes, the likeliest first
paper-check = Checks
paper-checks = Checks that tell them apart
paper-checks-names = The pin table gives the names of terminals as the checks write them; with @board, the pin on the board where that wire begins.
paper-code = Code
paper-date = Date
paper-digit = Digit
paper-does = What it starts
paper-expected = Expected
paper-fault = Hidden fault
paper-file = File
paper-findings = Findings
paper-findings-safe = Making the machine safe: check off each step as you do it, before you reach in.
paper-goal = What it teaches
paper-handout = Training handout
paper-invented = Customer, machine and fault are made up.
paper-key-intro = For the instructor only.
paper-knob = The knob from the front, pointing at position 0; the positions up to { $positions } follow clockwise. Positions with a routine are bold.
paper-labor = Labor per hour
paper-lamps = Lamps
paper-lamps-blank = The board’s lamps, to shade in
paper-lamps-blink = A lamp with a dot in its middle blinks.
paper-lamps-how = A lamp that is filled and has rays is lit; an empty outline is dark.
paper-lane-knob = Dial (detents of a full turn)
paper-lane-lid = Lid
paper-lane-plug = Plug
paper-lid-closed = closed
paper-lid-open = open
paper-local-codes = Local codes and licensed practice come first. If they ask for more than this sheet, do as they say.
paper-machine = Machine
paper-mark = Mark
paper-meaning = Meaning
paper-minutes = { $minutes } min
paper-minutes-so-far = Minutes so far
paper-mode = Mode
paper-money-so-far = Cost so far
paper-name = Name
paper-no-longer = (each press no longer than { $seconds } s)
paper-not-possible = The machine does not get that far.
paper-not-sooner = (no sooner than { $seconds } s after the step before)
paper-page = Page { $page } of { $pages }
paper-patterns = Patterns of the lamps
paper-pause = pause: { $seconds } s
paper-pin = Pin
paper-pins = Pin table
paper-plug-in = plugged in
paper-plug-out = unplugged
paper-points = Points
paper-position = Position
paper-read = Read
paper-readings = Readings
paper-red = Red probe on
paper-repair = Repair
paper-repair-cause = Cause found
paper-repair-cost = Minutes worked; bill
paper-repair-customer = What the customer was told
paper-repair-part = Part and its number, or work by hand
paper-repair-verified = Verified by
paper-safety = Before you work
paper-safety-charge = Wait a minute, discharge the capacitor through a resistor, and verify with the meter that it is dead: check the meter, measure, check the meter again.
paper-safety-live = Live tests are allowed in this job, but only if you are trained and authorized: clip the leads on with the machine unplugged, keep clear, then plug in. Dry floor, no jewelry, meter and leads rated CAT II or higher for this voltage.
paper-safety-moving = Keep your hands out until the basket, the belt and the pulleys have stopped.
paper-safety-no-live = Live tests are not allowed in this job.
paper-safety-ohms = Measure ohms only on a circuit that you have verified dead.
paper-safety-unplug = Line voltage can kill. Unplug the machine and keep the plug in sight before you take a panel off.
paper-safety-water = Drain or bail out the tub before you open anything below the water. Shut off both { word-taps } before a hose comes off: hot water scalds. The machine is heavy: tilt it with a second person.
paper-setting = Meter setting
paper-sheet = Sheet
paper-sheet-seed = Seed { $seed }
paper-sheet-variant = Sheet { $sheet } of { $sheets } · variant { $variant } · seed { $seed }
paper-shows = What it shows here
paper-sights = Lamps seen
paper-sights-how = Shade what is lit. For a lamp that flashes, draw each flash on the line of time, long or short.
paper-state = State of the machine
paper-step = Step
paper-suspects = Suspects
paper-terminal = Where the wire ends
paper-ticket = Job ticket
paper-time = Time for the job
paper-voltage = Voltage
paper-voltage-line = line voltage
paper-voltage-low = low voltage
paper-wash = Customer’s wash
paper-way-intro = What the planner does on this machine, and what each test shows here most often; time and money so far, with the wait for parts.
paper-wires-alt = Wiring diagram: each wire from its pin on the board through the connector to the terminal of the component where it ends. The pin table below says the same.
paper-wires-intro = Left: the pin on the board with its printed mark, and the connector. Right: the terminal where the wire ends, and what lies between the terminals. Thick wires carry line voltage.

## part

part-belt = Drive belt
part-board = Control board
part-board-keys = Control board with keys
part-board-one-lamp = Control board with one lamp
part-board-other = Control board, narrow model
part-clutch-actuator = Clutch actuator with cam switch
part-contact-kit = Contact cleaner and grease
part-cord = Power cord with plug
part-dial = Dial with detent ring
part-drain-hose = Drain hose
part-drain-pump = Drain pump
part-drain-pump-other = Drain pump, narrow model
part-filter = Line filter
part-harness = Wiring harness
part-inlet-cold = Cold inlet valve
part-inlet-hot = Hot inlet valve
part-lid-lock = Lid lock with lid switch
part-lid-lock-other = Lid lock, left-hand model
part-line-fuse = Line fuse
part-motor = Motor
part-motor-other = Motor, narrow model
part-note-measure-first = No returns once unpacked: measure before you buy
part-note-other-machine = Made for another machine; its mounting differs
part-note-visit = A visit, not a part. Local rules say who may do this work
part-pickup = Speed pickup
part-pressure-hose = Pressure hose with clamps
part-pressure-sensor = Pressure sensor
part-run-capacitor = Run capacitor
part-supply-electrician = Visit by a licensed electrician (outlet and wiring)
part-terminal-kit = Terminal repair kit: pins and housing
part-thermistor = Water thermistor
part-tub-bearings = Tub bearing and seal set
part-tub-seal = Tub seal set
part-water-plumber = Visit by a licensed plumber (water supply)

## parts

parts = Parts counter
parts-boards = for board: { $boards }
parts-fitted = Installed
parts-intro = Part numbers and prices are invented; ¤ stands for money of any country. The customer pays for the parts that the repair needs; what is installed in vain is the shop’s loss.
parts-none-found = No part of that name or number.
parts-price = ¤{ $price }
parts-rates = Labor ¤{ $labour } per hour. { $fee }% restocking fee on parts that were not installed. Above ¤{ $limit } for parts and labor, a new machine is the better buy.
parts-revision = rev { $revision }
parts-superseded = superseded by { $part }
parts-wait = arrives in { $hours } h

## paused

paused-elsewhere = The clock stands: another window has the focus
paused-no-hands = The clock is paused: the machine would see nothing of it. Start it first.

## percent

percent = { $number }%

## pin

pin-bulk-minus = Bulk −
pin-bulk-plus = Bulk +
pin-fuse-in = Line fuse, line side
pin-fuse-out = Line fuse, load side
pin-plug-earth = Plug, { $mains ->
    [120] ground
   *[other] earth
}
pin-plug-line = Plug, line
pin-plug-neutral = Plug, neutral

## pin-group

pin-group-bulk = Bulk capacitor on the board
pin-group-fuse = Line fuse
pin-group-plug = Power plug

## practice

practice-all = All drills
practice-answers = { $right } of { $count } answers right
practice-back = Back to the start
practice-begin = Begin
practice-browser = Learners are stored in this browser, on this computer only.
practice-chart-confusion = Digits read off lamps
practice-chart-confusion-none = No digit has been read off lamps yet.
practice-chart-confusion-read = read
practice-chart-confusion-shown = shown
practice-chart-confusion-sound = No digit was confused.
practice-chart-confusion-worst = Most often confused: { $shown } read as { $read } (× { $count }).
practice-chart-date = { $month }/{ $day }
practice-chart-known = { $name }: how likely each skill is known now
practice-chart-retention = Chance that each skill is still known without practice
practice-chart-retention-axis = days from now
practice-chart-retention-none = Practice something first: this then shows how it fades.
practice-chart-rhythm = Rhythm in the entry gesture
practice-chart-rhythm-axis = Time per step on each practice day, ms, and its spread
practice-chart-rhythm-none = No try at an entry gesture has been timed yet.
practice-choose = Learner
practice-create = Add
practice-delete = Delete this learner
practice-delete-keep = Keep
practice-delete-sure = Delete { $name } and all answers permanently?
practice-due = review due
practice-export-csv = Save answers (CSV)
practice-export-png = Save picture (PNG)
practice-exported = Saved: { $place }
practice-folder = Learners are stored as plain files in { $place }.
practice-guest = Guest
practice-guest-note = A guest’s answers are not saved: they are lost when the program closes. Add a learner to save them.
practice-job-gone = This job is no longer here.
practice-known = { $known }% known
practice-learner-damaged = { $name }: this profile cannot be read
practice-learner-new = { $name }: nothing practiced yet
practice-learner-row = { $name }: { $mastered } of { $skills } skills mastered, { $due } due for review, last practiced { $day }
practice-learners = Learners here
practice-mastered = mastered
practice-name = New learner’s name
practice-new = not practiced yet
practice-next = Next
practice-not-exported = Not saved: { $detail }
practice-rates-unfitted = Estimated with built-in parameters that were not fitted to any learner.
practice-tab-practice = Practice
practice-tab-progress = Progress
practice-target = Aim for { $target }% correct answers
practice-target-note = Lower is harder. An instructor may set it for a learner.
practice-title = Practice
practice-unkept = Answers are not saved here: they are lost when the program closes.
practice-why-fades-first = Everything is mastered and no review is due; “{ $exercise }” will fade first.
practice-why-first = Every job starts with the entry gesture: whoever cannot enter service mode cannot read a code. So “{ $exercise }” comes first.
practice-why-nearest = Of what is open to you, “{ $exercise }” comes closest to your target of { $target }%: expect about { $expected }% right.
practice-why-new = You have not practiced “{ $exercise }” yet, and at about { $expected }% right it comes closest to your target of { $target }%.
practice-why-review = “{ $exercise }” was mastered and is due for review: without one it fades; expect about { $expected }% right now.

## program

program-empty-and-spin = Drain and spin
program-everyday = Everyday
program-gentle = Gentle
program-hot = Hot
program-rinse-and-spin = Rinse and spin
program-short = Short
program-soak = Soak

## proof

proof-did-fit = Installed { $part }
proof-did-look-dry = Looked for leaks, { $depth } cm of water in the tub: dry
proof-did-look-wet = Looked for leaks, { $depth } cm of water in the tub: wet
proof-gap-no-leak-check = Not yet: nobody looked for leaks since, with water in it or after a run.
proof-gap-no-proving-run = Not yet: no program has run to the end since.
proof-gap-none = Yes, it is proven.
proof-gap-not-cured = No: the fault is still there.
proof-gap-not-recalibrated = Not yet: no recalibration has passed since.

## quote

quote = Quote
quote-approved = Quote: { $amount } for parts and labor ({ $minutes } min). The customer agrees.
quote-comes-to = { $parts }: comes to { $amount }, plus service call fee and tax.
quote-declined = Quote: { $amount } for parts and labor ({ $minutes } min). The customer declines: that is too much.
quote-intro = Before a part goes in, the customer agrees to the cost. Add the parts below, and the labor for the whole visit here.
quote-less = Five minutes of labor less
quote-minutes = Labor: { $minutes } min
quote-more = Five minutes of labor more
quote-no-part = No part
quote-part = Quote it

## record

record-after-end = there is more behind the last line; delete what follows `End(…)`
record-another-text = "{ $scenario }" has changed since the attempt; give its earlier text with --scenario
record-answer = line { $line }: with this report the answer is not as it says here
record-backwards = goes back from { $before } to { $found }; actions stand in the order in which they were done
record-broken = writing has failed before; resume the attempt from its file
record-empty = the file is empty; no attempt was recorded in it
record-ends-early = line { $line }: the attempt ends while its last action is still being done
record-exists = already exists; choose another name, or resume it if it is unfinished
record-finished = the attempt is finished; begin another
record-first-visit = first visit: { $problem }
record-foreign = this is not an attempt of Detent; choose a file that Detent recorded
record-in-first-visit = in the first visit, line { $line }: { $problem }
record-line = { $problem }; the line was changed, restore the file from a copy
record-log-backwards = an action at tick { $found } cannot follow one at tick { $before }
record-log-too-late = tick { $tick } lies beyond the longest attempt; finish this one and begin another
record-newer-format = the attempt has format { $found } and this program reads up to { $known }; use a newer Detent
record-no-call-back = the customer does not call back after this first visit
record-no-scenario = "{ $scenario }" was found neither there, nor next to the attempt, nor built in; give the scenario with --scenario
record-no-scenario-name = "{ $scenario }" is not the name of a scenario's file, which ends in .ron; give the scenario with --scenario
record-no-such-format = no Detent wrote format { $format }; restore the file from a copy
record-no-such-round = no round of a drill has { $questions } questions; restore the file from a copy
record-no-words = the action could not be put into words: { $problem }
record-not-a-hash = "{ $found }" is not a hash in hexadecimal digits; restore the file from a copy
record-not-finite = { $found } is not a finite number; restore the file from a copy
record-not-text = these bytes are not UTF-8 text; restore the file from a copy
record-other-first-visit = the first visit that it carries was to another machine; restore the file from a copy
record-other-text = this is not the scenario that was attempted; restore the file from a copy
record-overlap = line { $line }, at { $at }, begins while the line before is still being done (until { $busy })
record-refused = line { $line }, at { $at }: { $refusal }; the attempt was not made on this machine
record-scenario-changed = the attempt was recorded with another text of { $scenario }; replay it with the scenario as it was
record-score = line { $line }: these deeds are not worth the score that stands here
record-seal = line { $line }: the digest is not that of the lines above it: the file was changed after the attempt was finished; restore it from a copy
record-second-visit = this is a second visit already, and no attempt holds a third; choose the attempt of a first visit
record-state = line { $line }: these deeds do not lead to the state of the machine that stands here
record-too-late = tick { $tick } lies beyond the longest attempt; restore the file from a copy
record-too-long = the file is longer than { $most } bytes, and no job makes so long an attempt; choose another file
record-truncated = the file ends without its last line, so part of the attempt is lost; restore it from a copy
record-unknown-action = no action or part of one is called "{ $name }"; the line was changed, restore the file from a copy

## reference

reference-at-least = at least { $bound }
reference-at-most = at most { $bound }
reference-between = { $least } to { $most }
reference-default = { $value } if left out
reference-goal-approved = The customer agreed to a quote
reference-goal-calibrated = A recalibration passed
reference-goal-cancelled = A program was called off before its end
reference-goal-clock-at = The machine’s clock runs this many times as fast; 0: paused
reference-goal-did = This was done
reference-goal-entered = Service mode was entered
reference-goal-finished = A program ran to its end
reference-goal-hands-inside = Hands went behind the panels
reference-goal-looked = This view is shown
reference-goal-noted-another = A code was noted, and not this one
reference-goal-opened = This tab is open
reference-goal-ordered = A part was ordered
reference-goal-read = A reading was taken on these pins, either way round
reference-goal-read-dead = A meter across the bulk capacitor showed it dead
reference-goal-reported = The report was handed in
reference-goal-rested = The control was without power until it forgot
reference-goal-shown = The lamps showed this stored code
reference-goal-started = A program was started
reference-goal-turned = The dial was turned this way
reference-less-than = less than { $bound }
reference-letter = letter
reference-money = units of money
reference-more-than = more than { $bound }
reference-number = number
reference-optional = { $some } or None
reference-points = points
reference-text = text
reference-true-or-false = true or false
reference-whole-number = whole number

## refusal

refusal-already-so = Already done.
refusal-cabinet-closed = Remove the cabinet panels first.
refusal-does-not-fit = Part { $part } does not fit this machine.
refusal-finished = The job is closed: the report has been submitted.
refusal-lid-closed = Open the lid first.
refusal-lid-locked = The lid is locked.
refusal-needs-part = This cannot be corrected by hand: it takes a part, or a licensed person.
refusal-no-button = There is no { $button } button here.
refusal-no-cause = Cause “{ $cause }” is not in the catalog. Choose one from the list.
refusal-no-connector = There is no such connector here.
refusal-no-hints = This job gives no hints.
refusal-no-look = Nothing was looked at under the number { $look }.
refusal-no-part = The parts counter has no part { $part }.
refusal-no-reading = There is no reading { $reading } in the notebook.
refusal-not-in-hand = Order part { $part } first.
refusal-not-noted = Code { $code } is not in the notebook.
refusal-nothing-to-hold = There is no reading to hold. Put the probes on first.
refusal-plug-in-outlet = Unplug the machine first: the plug is in the outlet.

## report

report-advice = Advice to the customer
report-cause = What was wrong
report-choose = choose…
report-done = The report has been submitted.
report-given-up = I’m giving up the job
report-hand-in = Close the job
report-no-cause = No cause named yet
report-no-part = No part
report-none-found = No cause of that name.
report-not-ready = Choose a cause and a part first.
report-nothing-wrong = Nothing was wrong
report-part = Part needed
report-proof = Readings and looks that prove it
report-proof-intro = Tick those that rule the other suspects out. A look counts without a tick as well.
report-see-score = See the score

## reset

reset-hold = Hold { $button } for { $seconds } s.
reset-hold-not = Holding a button does nothing on this board.
reset-lid = Open and close the lid { $times } times within { $seconds } s.
reset-lid-moves = Move the lid { $times } times, up or down, within { $seconds } s.
reset-lid-not = Moving the lid does nothing on this board.
reset-power = Unplug the machine and leave it unplugged for one minute.
reset-power-not = Unplugging the machine does nothing on this board: it keeps its fault hold without power.

## review

review-best = The best approach
review-cost = Cost so far
review-intro = Each bar: how likely each cause was after that step. Green: the actual cause. The cost includes labor, parts and the wait for parts.
review-none = No comparison can be shown: there is no table of this board’s faults.
review-others = all others
review-sound = better: { $step }
review-stop = { $minutes } min · { $money }
review-title = Your approach and the best one
review-working = Working out your approach and the best one…
review-yours = Your approach

## routine

routine-ages = Cycles since each code
routine-clear = Clear codes (hold Start)
routine-lamp-test = Lamp test
routine-live-level = Show level, cm
routine-live-speed = Show speed, in tens of rpm
routine-live-temperature = Show water temperature, °C
routine-recalibrate = Recalibrate (2 to 3 minutes)
routine-recall = Show stored codes
routine-test-clutch = Clutch actuator
routine-test-cold = Cold inlet valve
routine-test-hot = Hot inlet valve
routine-test-lock = Lid lock
routine-test-motor-a = Motor, direction A
routine-test-motor-b = Motor, direction B
routine-test-pump = Drain pump
routine-test-spin = Slow spin

## rule

rule-hold-too-long = the hold was too long
rule-hold-too-short = the button was released too early
rule-late = the input came too late
rule-out-of-order = a different input was due
rule-press-too-long = the press was too long
rule-stood-too-short = the switch had not stood long enough without power
rule-too-few-detents = too few detents were turned
rule-too-many-detents = too many detents were turned
rule-too-soon = the input came too soon
rule-window-over = the time ran out
rule-wrong-way = the dial turned the wrong way

## run-gap

run-gap-full-speed = it never spun at full speed
run-gap-hot-water = it took in no hot water
run-gap-laundry = the basket was empty
run-gap-water = it took in no water

## safe

safe-fact-basket-stands = The basket has stopped.
safe-fact-basket-turns = The basket is still turning.
safe-fact-bleeder-open = The bleeder across the bulk capacitor is known to be open.
safe-fact-discharged = Then the capacitor was discharged through a resistor.
safe-fact-dry = The tub is empty.
safe-fact-lid-closed = The lid is down.
safe-fact-lid-open = The lid is up.
safe-fact-live-tests = Live tests are allowed on this job, and you are trained for them.
safe-fact-lock-failed = The basket was spun, and meanwhile the lid lock failed: nothing holds the lid.
safe-fact-measured = Then the capacitor was measured: { $shown } DC.
safe-fact-meter-bad = Then the meter was checked on the proving unit: it does not show what it should.
safe-fact-meter-good = Then the meter was checked on the proving unit: good.
safe-fact-no-live-tests = Live tests are not allowed on this job.
safe-fact-panels-off = The panels are off.
safe-fact-plugged = The machine is plugged in.
safe-fact-taps-open = The { word-taps } are open.
safe-fact-taps-shut = Both { word-taps } are shut off.
safe-fact-unplugged = Unplugged { $seconds } s ago.
safe-fact-water = { $depth } cm of water in the tub, at { $celsius } °C ({ $fahrenheit } °F).
safe-hazard-belt-turning = belt and pulleys catch sleeves and fingers, and a basket coasts on after the plug is pulled. Wait until everything stands still before your hands go in.
safe-hazard-bucket-on-top = one knock and the water runs over the open electrics. No water stands above an open machine: empty the bucket and put it on the floor.
safe-hazard-capacitor-charged = it still holds a charge that can shock. Discharge it through a resistor and measure again, with the meter checked before and after, before your hands go in.
safe-hazard-capacitor-unmeasured = nobody has measured the stored charge, and what is not proven dead counts as charged. Check the meter, measure, and check the meter again before your hands go in.
safe-hazard-floor-wet = whoever stands in water slips, and gives current a path through the body. Find out where it comes from and mop it up before you go on.
safe-hazard-glasses-cracked = an arc on a live circuit throws hot metal, and a cracked lens does not stop it. Wear whole safety glasses, or do not measure live.
safe-hazard-gloves-torn = a glove with a tear no longer insulates. Inspect insulating gloves before each use and discard torn ones.
safe-hazard-hose-loose = as soon as the { word-taps } are open, water sprays over the open machine. Screw the hose on, with a good washer in it, first.
safe-hazard-lid-up = the spinning basket is within reach and can break an arm. Stop the machine, and never let it spin with the lid up.
safe-hazard-meter-lead-bare = the bare copper carries the voltage that you measure. Inspect leads before each measurement and replace a worn one.
safe-hazard-meter-lead-in-amps = in the A socket the meter is nearly a short circuit: across a voltage its fuse blows, or it bursts in your hand. Put the lead into the V socket first.
safe-hazard-meter-ohms = set to Ω on a circuit that carries voltage, the meter blows its fuse and can hurt you. Set the knob to volts before the probes touch.
safe-hazard-plug-in = live parts can shock and kill, and the machine can start by itself. Unplug it and keep the plug in sight and under your control.
safe-hazard-screwdriver-in-belt = the turning pulley throws it out or tears the belt. Stop and unplug the machine, let it come to rest, and take the tool out. Nothing loose lies near a drive that turns.
safe-hazard-screwdriver-on-board = metal across live terminals shorts them: the arc burns hands and eyes. Unplug the machine, take the tool away, and count your tools before power comes on.
safe-hazard-taps-open = the hose is under pressure and sprays as soon as it is loosened. Shut off both { word-taps } and relieve the pressure first.
safe-object-belt = Belt and pulleys
safe-object-bucket = Bucket
safe-object-capacitor = Capacitor
safe-object-floor = Floor
safe-object-hose = Cold hose
safe-object-lid = Lid
safe-object-meter = Meter and leads
safe-object-plug = Plug
safe-object-protective-gear = Gloves and glasses
safe-object-screwdriver = Screwdriver
safe-object-taps = { component-taps }
safe-outcome-discharged-live = The resistor burns: the supply keeps the capacitor charged
safe-outcome-discharged-unmeasured = Unproven: discharged, but not measured since
safe-outcome-flood = The floor is flooded
safe-outcome-hand-in-drive = The turning basket catches the hand
safe-outcome-lid-spinning = A spinning basket is within reach
safe-outcome-live-not-allowed = A live test that this job does not allow
safe-outcome-meter-not-proved = Unproven: the meter was not checked both before and after
safe-outcome-none = Nothing: it is safe
safe-outcome-not-proved-dead = Unproven: nobody measured that the charge is gone
safe-outcome-ohms-on-live = The meter’s fuse blows
safe-outcome-opened-live = Line voltage is within reach
safe-outcome-opened-under-pressure = Water sprays out under pressure
safe-outcome-scald = Scalded hands
safe-outcome-shock = An electric shock from the supply
safe-outcome-touched-charge = An electric shock from the capacitor
safe-planned-clean-screen = You are about to take the cold hose off the machine and clean its screen.
safe-planned-fill-tub = You are about to open the { word-taps } and let the tub fill with the panels off. Live tests are allowed on this job: you stand clear and only watch.
safe-planned-measure-charge = You are about to measure V DC across the capacitor, to prove that it is dead.
safe-planned-measure-mains = You are about to measure V AC where the cord meets the control board. Live tests are allowed on this job, and you are trained for them.
safe-planned-pull-connector = You are about to pull the drain pump’s connector off the control board, with your bare hands.
safe-planned-watch-drive = The machine spins with its panels off. Live tests are allowed on this job: you stand clear and watch the drive.
safe-state-belt-still = The belt and the pulleys stand still.
safe-state-belt-turning = The belt and the pulleys are turning.
safe-state-bucket-on-floor = An empty bucket stands on the floor, below the hose.
safe-state-bucket-on-top = A full bucket stands on top of the open machine.
safe-state-capacitor-charged = The card on the capacitor says: measured just now, { $shown } DC.
safe-state-capacitor-covered = An insulating cover sits over the capacitor.
safe-state-capacitor-discharged = The card on the capacitor says: measured just now, { $shown } DC.
safe-state-capacitor-unmeasured = The card on the capacitor is blank: it was not measured.
safe-state-floor-dry = The floor is dry.
safe-state-floor-wet = Water stands on the floor in front of the machine.
safe-state-gear-whole = The insulating gloves and the safety glasses are whole.
safe-state-glasses-cracked = The insulating gloves are whole. One lens of the safety glasses is cracked.
safe-state-gloves-torn = One of the insulating gloves has a tear. The safety glasses are whole.
safe-state-hose-connected = The cold hose is screwed onto the machine.
safe-state-hose-loose = The cold hose hangs beside the machine, its end open.
safe-state-lid-down = The lid is down.
safe-state-lid-up = The lid is up.
safe-state-meter-lead-bare = The red lead is in the V Ω socket. Its insulation is worn through, and copper shows.
safe-state-meter-lead-in-amps = The red lead is in the A socket. Both leads are whole.
safe-state-meter-ohms = The meter is set to Ω. The red lead is in the V Ω socket, both leads are whole.
safe-state-meter-put-aside = The meter is off and its leads are rolled up.
safe-state-meter-volts-ac = The meter is set to V~. The red lead is in the V Ω socket, both leads are whole.
safe-state-meter-volts-dc = The meter is set to V DC. The red lead is in the V Ω socket, both leads are whole.
safe-state-plug-in = The plug is in the outlet.
safe-state-plug-out = The plug hangs on its hook beside the outlet.
safe-state-screwdriver-hung = The screwdriver hangs in its rack.
safe-state-screwdriver-in-belt = A screwdriver sticks between the belt and the pulley.
safe-state-screwdriver-on-board = A screwdriver lies on the control board.
safe-state-taps-open = The levers stand along the pipes: both { word-taps } are open.
safe-state-taps-shut = The levers stand across the pipes: both { word-taps } are shut off.
safe-step-bail-out = bail out the tub
safe-step-clean-pump = clean the drain pump by hand
safe-step-clean-screen = take the cold hose off and clean its screen
safe-step-discharge = discharge the capacitor through a resistor
safe-step-fit-valve = install a new cold inlet valve
safe-step-measure-charge = measure V DC across the capacitor
safe-step-measure-mains = measure V AC from line to neutral where the cord meets the control board
safe-step-measure-ohms = measure Ω across the capacitor
safe-step-open-lid = lift the lid
safe-step-open-panels = take the panels off
safe-step-pull-connector = pull the drain pump’s connector
safe-step-reach-into-basket = reach into the basket
safe-step-shut-taps = shut off both { word-taps }
safe-step-test-meter = check the meter on the proving unit
safe-step-unplug = unplug the machine
safe-step-wait-a-minute = wait a minute

## score

score-at = { $minutes } min after you arrived
score-failed = Job failed, whatever else was earned. { $why }
score-goal = What this job teaches: { $goal }
score-losses = Points lost
score-none-lost = No points lost.
score-not-passed = Not passed yet: you need { $percent }%.
score-not-safe = Not passed: this was not safe work. You need { $percent }% of the points for safety, whatever else was earned.
score-not-yet = The score comes with the report. Until then, here is how your tries to enter service mode went.
score-passed = Passed: you needed { $percent }%.
score-total = { $kept } of { $of } points

## search

search = Search:

## seat

seat-back = Back to the class
seat-closed = The class is closed.
seat-content-differs = The class was made with other content than this program has. What you do here may not be verified.
seat-drill = Drill: { $skill }
seat-drill-missing = This drill is not in this program. Tell your instructor.
seat-drill-not-begun = Not begun. { $questions ->
    [one] { $questions } question
   *[other] { $questions } questions
}.
seat-drill-verified-right = Verified: { $right } of { $questions } right.
seat-examination-only = An examination: one try at each job, no hints and no score until it is closed. Everything else waits until then.
seat-file-in-folder = Hand in the file { $file }. It is in { $place }.
seat-job-again = Once more
seat-job-begin = Begin
seat-job-begun = Begun.
seat-job-begun-elsewhere = Begun on another device.
seat-job-differs = Handed in, but it comes out otherwise when it is done again: it was damaged or changed. Tell your instructor.
seat-job-drawing = Your machine is being set up.
seat-job-go-on = Resume
seat-job-handed-in = Handed in, not verified yet.
seat-job-look = Look at it
seat-job-missing = This job is not in this program. Tell your instructor.
seat-job-not-assigned = Handed in, but at a machine that was not yours. Tell your instructor.
seat-job-not-begun = Not begun.
seat-job-unverified-content = Handed in. It cannot be verified on the server, as it was made with other content.
seat-job-unverified-long = Handed in. It cannot be verified on the server, as it takes too long.
seat-job-unverified-program = Handed in. It cannot be verified on the server, as it was made with another version of the program.
seat-job-verified = Handed in and verified.
seat-job-verified-points = Verified: { $points } of 100 points.
seat-leave = Leave this seat
seat-leave-not = Stay
seat-leave-now = Leave it
seat-leave-sure = Your work stays with the class. To come back to this seat you need a word from your instructor.
seat-leave-unsent = Not everything has been sent to the class yet. It stays on this device and is sent when you come back to this seat, for which you need a word from your instructor.
seat-not-kept = This seat cannot be kept here. After a restart you need a word from your instructor to come back.
seat-notice = From your instructor: { $text }
seat-notice-read = Got it
seat-open = Open.
seat-open-left = Open, { $time } left.
seat-opens-in = Opens in { $time }.
seat-paused = Paused by your instructor.
seat-refused = The server refuses what you did. Hand it in as a file.
seat-rejoin = Join the class
seat-save = Save a copy of { $file }
seat-sealed = In an examination you see no score and no trace of your tries before the class is closed.
seat-sealed-handed-in = Handed in. You will see what it was worth when the class is closed.
seat-sealed-title = Job { $number }
seat-sent = Everything has been sent to the class.
seat-server-full = The server cannot take anything now. Everything is kept here and sent later.
seat-stopped = The class is paused
seat-stopped-text = Your instructor has stopped the class for a moment. The machine stands still until it goes on.
seat-time-hours = { $hours } h { $minutes } min
seat-time-minutes = { $minutes } min
seat-time-short = less than a minute
seat-unreachable = The server cannot be reached. Everything is kept here and sent later.
seat-waiting = { $actions ->
    [one] One action has
   *[other] { $actions } actions have
} not been sent to the class yet.
seat-you = You are here as { $name }.

## settings

settings-characters = Keys that type a letter, a digit or a sign
settings-characters-alt = Only with Alt
settings-characters-off = Off
settings-characters-on = Work by themselves
settings-guest = A guest’s settings last until the program ends.
settings-kept = Kept with the learner’s answers.
settings-keys-note = Press a key in the list to change it. Every action can also be reached with Tab and Enter.
settings-left-handed = Left-handed: ticket and tabs change sides
settings-left-note = The hand on the mouse then covers less of what is read.
settings-motion = Motion of the view and of lists
settings-motion-full = Gliding
settings-motion-reduced = None
settings-motion-system = As the system has it
settings-no-key = none
settings-press = Press the new key for “{ $action }”. Backspace: no key. Esc: leave it as it is.
settings-reset = Usual keys again
settings-sound = Sound of the machine
settings-sound-full = Full
settings-sound-low = Low
settings-sound-none = This program was built without sound. What could be heard is always written out.
settings-sound-note = What can be heard is always written out as well.
settings-sound-off = Off
settings-tab-display = Display
settings-tab-keys = Keys
settings-taken = { $key } is already used for “{ $action }”. Give that one another key first.
settings-text-fits = This window is too narrow for that: text is as large as there is room for.
settings-text-note = Ctrl with plus and minus changes it until the program ends.
settings-text-size = Size of text
settings-title = Settings

## sheet

sheet-codes = Codes
sheet-codes-intro = A code says what the control saw, not which part is bad. Suspects: those that cause it most often on this board come first, the control last. Measure before you buy.
sheet-entry = Entry
sheet-entry-again = After a failed try: unplug the machine, wait until the control is dead, start again.
sheet-entry-before = To enter service mode: no program running, then, without pausing:
sheet-entry-before-power = To enter service mode: unplug the machine and wait until the control is dead; then:
sheet-entry-click = A faint click of a relay as the plug goes in: the control has its supply. Dark and no click: fuse, cord, filter or the control’s own supply.
sheet-entry-from = First set the dial to { $position }.
sheet-entry-gap = From each input to the next at least { $seconds } s.
sheet-entry-hold = In a fault hold (the control has seen a fault, has stopped, and waits for a reset) the gesture does nothing. Leave the hold first. { $way }
sheet-entry-or = Or in this order: { $steps }
sheet-entry-rest = Before another try, leave the console and the lid alone for { $seconds } s.
sheet-entry-skip = A fast turn can skip a detent.
sheet-entry-standing = Without power, at position { $position } for at least { $seconds } s before the plug goes in.
sheet-entry-together = { $one } and { $other } at the same moment: the second within { $seconds } s of the first.
sheet-entry-window = The whole gesture within { $seconds } s.
sheet-invented = An invented board, for training only: local codes and licensed practice come first.
sheet-lamps = Lamps
sheet-lamps-blinking = A lamp with rays around it blinks.
sheet-lamps-example = This example reads { $number }.
sheet-lamps-lock = The lock lamp blinks for any fault hold. That does not mean the lock is bad.
sheet-lamps-no-lock = This board has no lock lamp: try the lid to see whether it is locked.
sheet-lamps-pages = In the code list, each press of { $button } goes to the next page, newest code first.
sheet-menu = Menu
sheet-menu-clear = To clear the codes, hold Start for { $seconds } s. Then press Stop: until then a lamp stays lit and Start does nothing.
sheet-menu-intro = In service mode: choose a position, press Start.
sheet-none-found = No code says that.
sheet-pins = Wires
sheet-pins-intro = Pin, printed mark, and where the wire ends.
sheet-programs = Programs outside service mode
sheet-reset = Clearing a fault hold
sheet-sights = What the lamps mean
sheet-stored-codes = The control keeps the { $codes } newest codes.
sheet-tens = tens
sheet-units = units
sheet-wires-intro = Left: the pin on the board with its printed mark. Right: the terminal where the wire ends. Line-voltage wires are brown. A click places the next probe there.

## shown

shown-not-yet = Show me first: nothing has run to the end since you worked on it.
shown-stopped = No, it stopped again.
shown-washed = Yes, that is how it used to run. Thank you.

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
sight-letters = the letters “{ $letters }”
sight-number = { $number }
sight-number-and = { $number }, alternating with this
sight-still = this
sight-turns = these two, alternating

## signal

signal-caution = CAUTION
signal-danger = DANGER
signal-notice = NOTICE
signal-warning = WARNING

## signs

signs-flashes = One lamp flashes the number: count the long flashes for the tens, then the short ones for the units. After a pause it starts again.
signs-in-turn = The lamps show one digit at a time: first the tens, a short dark gap, then the units. After a longer pause it starts again.
signs-pictures = Each number has its own pattern; find it in the list.
signs-segments = Two digits show the number.
signs-weights = The lamps show two digits at once. In each group add up the numbers under the lit lamps.

## skill

skill-code-look-up = Looking up codes
skill-entry-timing = Entry gesture
skill-lamp-reading = Reading lamps
skill-metering = Using the meter
skill-next-test = Choosing the next test
skill-part-choice = Choosing the part
skill-proof = Proving the fault
skill-safe-work = Working safely

## sound

sound-agitator-swish = agitator swishes
sound-ask-first = quote the cost and ask before you go on
sound-bail-out = drain or bail out the tub first
sound-buy-needed = buy only what the readings call for
sound-cabinet-shake = cabinet shakes
sound-check-for-leaks = look under the machine once there has been water in it again
sound-clutch-actuator-tick = clutch actuator ticks
sound-dead-test = find it with the machine unplugged
sound-discharge = discharge the capacitor and verify that it is dead
sound-empty-basket = take the laundry out and recalibrate with the basket empty
sound-floor-wet = { $litres } L on the floor
sound-hands-first = clean, adjust or reseat first; buy only if that does not help
sound-let-cool = drain the hot water, or let it cool
sound-lock-held = lid lock engaged
sound-measure-dead = verify that the charge is gone before hands go in
sound-measure-first = measure before buying
sound-motor-free = motor runs, basket does not
sound-motor-hum = motor hums, does not turn
sound-none = quiet
sound-note-codes = record every code while it is shown
sound-ohms-dead = unplug and discharge before you measure Ω
sound-part-number = name the part by the number listed for this board
sound-prove-meter = check the meter on the known source before and after
sound-pump-buzz = pump buzzes, stuck
sound-pump-hum = pump hums
sound-read-twice = read the lamps twice before you record the code
sound-recalibrate = recalibrate after the repair
sound-relay-click = a relay clicks
sound-report = report what the readings and looks prove
sound-rest = leave it unplugged for the full minute
sound-run = run a program to the end and watch
sound-second-visit = stay until it is fixed, or say plainly that it is not; otherwise someone has to come back
sound-shorter-way = take the measurement that tells you most for its time
sound-show-customer = ask the customer to watch it run before the report
sound-shut-taps = shut the { word-taps } off before a hose comes off
sound-spin-whirr = basket spins
sound-steady-hand = keep an even pace within the timing windows on the sheet
sound-unaided = work out the next step from the sheet and your readings first; a hint is for when you are stuck
sound-unplug = unplug first
sound-use-clips = put the tester on with its clips and keep the hands away
sound-valve-buzz = valve buzzes, no water
sound-wait-spin = wait until the basket stops
sound-water-rush = water rushes in

## stage

stage-cam = One turn of the clutch actuator
stage-coast = Waiting until the basket stops
stage-cold = Cold water in
stage-empty = Pumping out the tub
stage-hot = Hot water in
stage-lock = Locking the lid
stage-motor-a = Motor, direction A
stage-motor-b = Motor, direction B
stage-pump = Draining
stage-spin = A short spin
stage-unlock = Releasing the lid
stage-zero = Learning the zero of the pressure sensor

## start

start-about = Every machine, board, code, part, price and customer here is invented. Training only: local codes and licensed practice come first.
start-after = Best after: { $titles }.
start-begin = Begin the job
start-everything = All jobs, practice, examination
start-examination = Examination
start-first = Begin
start-first-note = A first job with a guide: about fifteen minutes. You can leave it and take it up again at any step.
start-guided = Begin: a first job with a guide
start-minutes = About { $minutes } minutes.
start-name = Your name
start-name-note = It is kept on this computer, with what you have practiced. Leave it empty to work as a guest.
start-no-variant = No variant of this job could be proved. Try another seed.
start-opening = Setting up the machine…
start-passed = passed
start-practice = Practice
start-seed = Seed
start-seed-hint = same seed, same machine
start-settings = Settings (F1)
start-tried = tried
start-variant = A variant of it
start-variant-note = Another machine with a fault of its own, proved to be about as hard as this job. It is kept among the attempts like any other job.
start-who = Learner: { $name }
start-workshop = Workshop

## step

step-hold = Hold { $button } for { $from } to { $to } s
step-lid-down = Close the lid
step-lid-up = Open the lid
step-pause = Touch nothing for at least { $seconds } s
step-power-up = Plug in
step-power-up-holding = Hold { $button } down and plug in
step-press = Press { $button }
step-press-times = Press { $button } { $times } times
step-push = Press { $button } and keep it down
step-release = Release { $button }
step-release-between = Release { $button } after { $from } to { $to } s
step-together = Press { $one } and { $other } at the same moment, hold both for { $from } to { $to } s, and release them
step-turn-left = Turn { $detents } detents left
step-turn-right = Turn { $detents } detents right
step-within = { $step } (within { $seconds } s)

## stopped

stopped = { $why } The clock is paused.
stopped-calibration-over = The recalibration has ended.
stopped-dark = The console has gone dark.
stopped-floor-wet = There is water on the floor.
stopped-held = The control has stopped with a fault.
stopped-nothing-came = Two hours have passed and nothing has ended or stopped.
stopped-outlet-tripped = The outlet’s residual current device has tripped.
stopped-program-finished = The program has ended.
stopped-service-left = The control has left service mode by itself.

## tab

tab-film = Replay
tab-machine = Machine
tab-meter = Meter
tab-parts = Parts
tab-report = Report
tab-score = Score
tab-sheet = Sheet
tab-ticket = Ticket

## telltale

telltale-belt = belt
telltale-board = board, control board, electronics, circuit board
telltale-clutch-actuator = clutch, actuator
telltale-cord = cord, power cord
telltale-dial = encoder, knob contacts
telltale-drain-hose = drain hose
telltale-drain-pump = pump
telltale-filter = filter
telltale-floor = feet, leveling
telltale-harness = wiring, wire, wires, harness, connector
telltale-inlet-cold = valve, cold valve
telltale-inlet-hoses = inlet hose, hoses, crossed
telltale-inlet-hot = valve, hot valve
telltale-laundry = unbalanced, overloaded, bunched
telltale-lid-lock = latch, lid lock
telltale-line-fuse = fuse
telltale-motor = motor, winding
telltale-pickup = pickup, tachometer
telltale-pressure-hose = pressure hose, air hose
telltale-pressure-sensor = pressure sensor, level sensor
telltale-run-capacitor = capacitor
telltale-supply = outlet, socket
telltale-taps = { $mains ->
    [120] faucet
   *[other] tap
}, strainer
telltale-thermistor = thermistor, temperature sensor
telltale-tub = bearing, bearings, tub seal

## ticket

ticket-complaint = “{ $complaint }”
ticket-hold = In a fault hold the control does nothing else. { $way }
ticket-hours = { $hours } h
ticket-labour = Labor
ticket-limit = Repair limit
ticket-live = Live tests
ticket-live-no = not allowed
ticket-live-yes = allowed
ticket-mains = Supply
ticket-minutes-of = { $minutes } of { $par } min
ticket-money = Bill so far
ticket-money-of = ¤{ $spent } of ¤{ $budget }
ticket-protect = Behind the panels: safety glasses, cut-resistant gloves at sheet edges, no rings or watch.
ticket-waited = Wait for parts
ticket-work = Time on job

## top

top-keys = F1 settings
top-pause = Pause the clock

## tried

tried-asked-neighbor = I asked my neighbor, who did not know either.
tried-nothing = Nothing. I did not want to break anything.
tried-pressed-again = I pressed the buttons again, but it was no use.
tried-waited = I waited a while and hoped.

## tries

tries = Service-mode entry tries
tries-intro = Time runs to the right, in seconds. Shaded: the whole window. Bars: the window of each input. Flag: the rule that was broken.

## trouble

trouble-changed = { $detail } was made with a different version of its job, so it cannot be continued here. Save a copy and open it with the Detent that made it.
trouble-damaged = This attempt is damaged ({ $detail }). Save a copy if you need it, or delete it.
trouble-differs = Played back, this attempt does not end as recorded: a different version of Detent made it, or it was changed ({ $detail }).
trouble-elsewhere = The bench is open in another tab, and attempts are saved there. Close this one.
trouble-foreign = { $detail } is not a Detent attempt. Choose a file that Detent saved.
trouble-full = Storage is full or failing: this attempt is not being saved. Save a copy before you close this, and delete attempts you no longer need. ({ $detail })
trouble-gone = { $detail } was not found.
trouble-newer = { $detail } was made by a newer Detent. Reload this page or install the newer version to open it; nothing is lost.
trouble-no-name = The attempt is not being saved, because every name for it is taken: { $detail }. Delete attempts you no longer need.
trouble-no-scenario = The job of this attempt is not here: { $detail }. Open the library that it comes from.
trouble-other = The attempt is not being saved: { $detail }
trouble-refused = The browser does not allow attempts to be saved, as in a private window: save a copy before you close this. ({ $detail })

## try

try-entered = Service mode entered
try-in-hold = The control was in a fault hold, where it takes no gesture. Leave the hold first. { $way }
try-open = In progress

## tutorial

tutorial-back = Back to the workshop
tutorial-change = Change in { $file }
tutorial-copy = Copy
tutorial-file = The file { $file }
tutorial-label = “{ $label }”

## variant

variant-chance-of-passing = Simulated learners who pass, %
variant-difficulty = best plan ¤{ $cost }, scripted people keep { $share } of the points, { $chance } of simulated learners pass
variant-drawn = { $drawn } drafts, { $passed } proved. Refused:
variant-expert-minutes = Expert’s work, min
variant-goal = Find out what is wrong, prove it, put it right, and prove that too.
variant-goal-doubles = More than one thing can be wrong: do not stop at the first one you find.
variant-goal-entry-drill = Get into service mode on this console, then do the job.
variant-goal-exam = The whole job, without a hint.
variant-goal-intermittents = A fault need not be there when you look: find out when it is.
variant-goal-look-alikes = Several causes look alike: find the test that tells them apart.
variant-goal-nothing-found = Not every machine needs a part: prove what yours needs.
variant-goal-reading-drill = Read every stored code, and tell the old ones from the new.
variant-goal-single-fault = One machine, one cause: prove it before you buy.
variant-mean-share = Mean share of the points of expert, guesser and control swapper, %
variant-planned-cost = Expected cost of the best plan
variant-refused-dial-slipped = the worn dial slipped before the customer’s wash, which then says nothing
variant-refused-expert-fails = the expert does not pass
variant-refused-expert-stuck = the expert cannot go on
variant-refused-expert-too-slow = the expert needs more time than a job may take
variant-refused-never-shows = nothing that is allowed shows the fault
variant-refused-no-second-fault = no second fault goes with the first
variant-refused-one-hides-the-other = of two faults only one shows itself
variant-refused-plan-too-cheap = the best plan costs much less than the original’s
variant-refused-plan-too-dear = the best plan costs much more than the original’s
variant-refused-rivals-alike = nothing that is allowed tells the fault from a likely rival
variant-refused-same-job = the original’s own machine and fault
variant-refused-too-easy = people do much better than at the original
variant-refused-too-hard = people do much worse than at the original
variant-spread = { $what }: { $least } to { $greatest }, median { $median }; original { $own }, allowed { $band }
variant-title = Like “{ $title }”, no. { $number }

## variants

variants-back = Back to the jobs
variants-count = how many
variants-drawing = Drawing and proving: { $proved } of { $count }; { $refused } drafts refused so far.
variants-drawn = { $proved } drawn and proved; { $refused } drafts refused.
variants-exhausted = { $proved } proved; no further draft can be proved.
variants-of = Variants of “{ $title }”

## view

view-cabinet = Inside
view-flat = 2D
view-flat-how = Draw the machine flat: lighter on slow computers, and every hand works the same
view-flat-only = There is no scene: the window is drawn without a graphics card
view-machine = Machine
view-panel = Console

## wait

wait = Wait
wait-1-min = 1 min
wait-10-min = 10 min
wait-10-s = 10 s
wait-left = { $seconds } s left
wait-stop = Stop
wait-until = Until it finishes or stops
wait-until-how = Lets time run, two hours at most, until a program or a recalibration ends, the control stops or leaves service mode, the console goes dark, the outlet trips, or water comes onto the floor. Then the clock is paused. The customer pays for the time until then.

## wash

wash-end-called-off = The program was called off, and no fault was reported.
wash-end-finished = The program ran to its end.
wash-end-never-started = No program was started.
wash-end-still-running = The program was still running, or waiting, when the customer gave up.
wash-end-stopped = The control stopped the program: { $monitor }.
wash-end-went-dark = The console went dark during the program.
wash-phase = Phase
wash-phase-agitate = Agitate
wash-phase-drain = Drain
wash-phase-fill = Fill
wash-phase-rest = Pause
wash-phase-soak = Soak
wash-phase-spin = Spin
wash-trace-axis-current = Current, A
wash-trace-axis-level = Water level, mm
wash-trace-axis-speed = Basket speed, rpm
wash-trace-axis-time = Time, min
wash-trace-code = Code { $code } stored after { $minutes } min
wash-trace-lamps = Lamps at that moment
wash-trace-stale = Codes already stored before this wash: { $codes }
wash-trace-title = The customer’s wash

## word

word-tap = { $mains ->
    [120] faucet
   *[other] tap
}
word-taps = { $mains ->
    [120] faucets
   *[other] taps
}

## workshop

workshop-about = Write a job for others: what the customer says, what is wrong with the machine, and what counts. Everything in it is invented: no real customers, brands or machines.
workshop-board = Describe a board
workshop-board-about = Describe the control of a machine in your shop, value by value, beginning with a copy of a board. Change what would name a real make or model: what is kept here is invented. Once it is saved, jobs can be written for it. Jobs in which the control board is at fault also need a part for it, in parts.ron of your library.
workshop-board-across = from the left, hundredths of the field
workshop-board-between = s dark between tens and units
workshop-board-blink = s for one blink, lit and dark
workshop-board-buttons = Buttons
workshop-board-cancel = s that Stop is held to end a paused program
workshop-board-clear = s that Start is held to clear the codes
workshop-board-code = Code shown
workshop-board-code-number = code
workshop-board-columns = lamps in a full row
workshop-board-copy = Work on a copy of this board
workshop-board-delay = s that the condition has to last
workshop-board-dial = Dial with detents
workshop-board-digit = Digit { $digit }
workshop-board-digit-time = s that each digit is shown
workshop-board-down = from the top, hundredths of the field
workshop-board-drain = The fault hold may pump the tub out
workshop-board-flash-gap = s dark between two flashes
workshop-board-flash-long = s for a long flash (tens)
workshop-board-flash-short = s for a short flash (units)
workshop-board-free = Drag a lamp on the console, or choose it here. With the console in focus, the arrow keys move it.
workshop-board-from = The gesture begins at one position
workshop-board-gap = s at least from each input to the next
workshop-board-hand-again = Try again
workshop-board-hand-back = Back to the board
workshop-board-hand-in = Service mode is entered.
workshop-board-hand-out = This try did not enter service mode.
workshop-board-hand-practiced = A practiced hand: { $in } of { $of } tries, best at { $ms } ms a step
workshop-board-hand-try = Try it with your own hand
workshop-board-hand-unsteady = An unsteady hand: { $in } of { $of } tries, best at { $ms } ms a step
workshop-board-hand-usual = A newcomer’s usual hand: { $in } of { $of } tries, best at { $ms } ms a step
workshop-board-hands = Who gets in
workshop-board-hands-wrong = Hands can try it once nothing is wrong with the board.
workshop-board-kept = A fault hold outlasts a power cut
workshop-board-lamp-blinks = { $lamp } blinking
workshop-board-lamp-count = lamps
workshop-board-lamp-dark = { $lamp } dark
workshop-board-lamp-lit = { $lamp } lit
workshop-board-lamp-moves = Console: lamp { $lamp } at { $across } across, { $down } down. The arrow keys move it
workshop-board-letters = what the two digits show, such as E-
workshop-board-lid-cycles = times that the lid is closed
workshop-board-lid-gap = s at most from one closing to the next
workshop-board-lid-moves = moves of the lid, up or down
workshop-board-lid-within = s at most from the first move to the last
workshop-board-limits = Limits of service mode
workshop-board-lock-lamp = A lock lamp beside them
workshop-board-menu = Menu of service mode
workshop-board-menu-how = Each routine with its position. Stored codes and recalibration have to be there.
workshop-board-mistake = Line { $line }, { $field }: { $problem }
workshop-board-mistakes = Errors
workshop-board-modes = What they show in each mode
workshop-board-name = Name, in words
workshop-board-name-note = A file name has small letters a to z, digits and hyphens; it is the board’s id as well.
workshop-board-name-taken = There is already a board of this name. Give this one another.
workshop-board-new-name = Board from the shop
workshop-board-no-console = A console has 1 to 16 lamps; it is drawn again once there are as many.
workshop-board-number = number that the lamps show
workshop-board-own = Boards of your own
workshop-board-page-button = Button that turns the pages of the code list
workshop-board-page-codes = Codes
workshop-board-page-gesture = Entry
workshop-board-page-lamps = Lamps
workshop-board-page-panel = Panel
workshop-board-page-service = Service mode
workshop-board-page-text = Text
workshop-board-pause = s dark before it begins again
workshop-board-picture = Picture for the number { $number }
workshop-board-placed-column = In a column
workshop-board-placed-free = Each by itself
workshop-board-placed-grid = In rows
workshop-board-placed-row = Side by side
workshop-board-placed-usual = As usual
workshop-board-placement = Where the lamps stand
workshop-board-position = position
workshop-board-positions = positions in one turn
workshop-board-program-copy = Copy this program
workshop-board-program-remove = Remove this program
workshop-board-programs = Programs (what they do is in the text)
workshop-board-reset-hold = Holding a button leaves a fault hold
workshop-board-reset-lid = Closing the lid several times leaves a fault hold
workshop-board-reset-moves = Moving the lid up and down leaves a fault hold
workshop-board-reset-v = V below which the control forgets
workshop-board-resets = How a fault hold is left
workshop-board-rest = s of quiet before a try
workshop-board-rest-between = s of rest between two tries
workshop-board-retries = times that the control tries again
workshop-board-sag-v = V that are too low while the motor runs
workshop-board-shows-all = All lamps
workshop-board-shows-bar = A bar of lamps
workshop-board-shows-blink = All lamps, blinking
workshop-board-shows-dark = Nothing
workshop-board-shows-letters = Letters
workshop-board-shows-number = The number
workshop-board-shows-number-and = The number and a picture in turn
workshop-board-shows-still = A picture
workshop-board-shows-turns = Two pictures in turn
workshop-board-signs-flashes = One lamp that flashes
workshop-board-signs-in-turn = One digit after the other
workshop-board-signs-pictures = A picture for each code
workshop-board-signs-segments = Two digits
workshop-board-signs-weights = Lamps that add up
workshop-board-step-add = Add a step
workshop-board-step-apart = s at most between the two
workshop-board-step-detents = detents
workshop-board-step-earlier = Earlier
workshop-board-step-hold = Press, hold and release
workshop-board-step-holding = A button is held meanwhile
workshop-board-step-kind = What is done
workshop-board-step-later = Later
workshop-board-step-lid = Move the lid
workshop-board-step-no-longer = s at most
workshop-board-step-no-shorter = s at least
workshop-board-step-not-before = s at least after the input before
workshop-board-step-pause = Touch nothing
workshop-board-step-power-up = Plug in
workshop-board-step-press = Press
workshop-board-step-push = Press and keep down
workshop-board-step-release = Release
workshop-board-step-remove = Remove it
workshop-board-step-standing = Without power the switch has to stand at one position
workshop-board-step-times = times
workshop-board-step-together = Press two buttons at once
workshop-board-step-turn = Turn the knob
workshop-board-step-window = It has a time of its own
workshop-board-step-window-time = s from the end of the step before
workshop-board-steps = No knob: More and Less
workshop-board-stored = codes that are stored
workshop-board-supply = Made for
workshop-board-suspects = What may lie behind it, as the sheet says
workshop-board-switch = Rotary switch
workshop-board-tap = s at most that Start is pressed to begin a program
workshop-board-tens = lamps for the tens
workshop-board-test-limit = s after which a load test ends
workshop-board-test-spin = rpm of the spin test
workshop-board-text = The whole file. What has no field of its own is written here.
workshop-board-timeout = s without an input after which service mode ends
workshop-board-turns = s that each of two pictures is shown
workshop-board-unfinished = A board goes into the library once nothing is wrong with it.
workshop-board-units = lamps for the units
workshop-board-unreadable = The text cannot be read as it is. Correct it, or undo.
workshop-board-weight = what lamp { $lamp } stands for
workshop-board-whole = The whole gesture
workshop-board-within = s for the whole gesture
workshop-board-wrong = { $count ->
    [one] One error is left.
   *[other] { $count } errors are left.
}
workshop-budget = the most that the customer will pay
workshop-cabinet-all = All components
workshop-cabinet-part = { $part }: { $count ->
    [one] 1 fault
   *[other] { $count } faults
}
workshop-changed-elsewhere = The file was changed in another program. Save puts this version in its place; to see the other one, put this job away and open it again.
workshop-copy = A copy of a job
workshop-copy-do = Work on a copy
workshop-copy-out = Save a copy
workshop-expects-codes = The proof expects certain codes of the customer’s wash
workshop-fault = What is wrong
workshop-fault-draw = Any fault
workshop-fault-draw-from = One of several
workshop-fault-draw-where = One of those the file describes
workshop-fault-grows = { $fault } (grows while the machine works)
workshop-fault-in-spells = { $fault } (comes and goes)
workshop-fault-named = This fault
workshop-fault-nothing = Nothing
workshop-fault-several = Several at once
workshop-field-board = Board
workshop-field-budget = The most that the customer will pay
workshop-field-complaint = What the customer says
workshop-field-course = Place in the course
workshop-field-dial-wear = Wear of the dial
workshop-field-expected-codes = Codes expected of the wash
workshop-field-fault = What is wrong
workshop-field-goal = What it teaches
workshop-field-hints-allowed = Hints
workshop-field-live-tests-allowed = Live tests
workshop-field-mains = Supply
workshop-field-par-minutes = Minutes
workshop-field-points = Points
workshop-field-seed = Seed
workshop-field-stale-codes = Old codes
workshop-field-title = Title
workshop-field-worn-lead = Meter lead
workshop-hints = Hints may be taken
workshop-keep = Save
workshop-kept = Saved: { $place }
workshop-leave = Put it away
workshop-limits = Limits
workshop-live = Live tests are allowed
workshop-machine = The machine
workshop-minutes = minutes a good technician should need
workshop-more-mistakes = And { $count } more.
workshop-name = File name
workshop-name-note = A file name has small letters a to z, digits and hyphens. Name the file for what it teaches, not for the answer.
workshop-name-taken = There is already a job of this name. Give this one another.
workshop-new = Write a new job
workshop-own = Jobs of your own
workshop-own-none = None yet.
workshop-own-nowhere = Jobs are not kept here: save a copy of what you write.
workshop-page-job = Job
workshop-page-paper = Paper
workshop-page-proof = Proof
workshop-page-proof-of = Proof: { $told }
workshop-page-wash = Wash
workshop-paper = Handout and key
workshop-paper-a4 = A4
workshop-paper-about = Two PDF files beside the job: a handout for the learner, with job ticket, form, wiring and codes, and a separate answer key. They are in the language of the window.
workshop-paper-do = Print to PDF
workshop-paper-elsewhere = Printing is done by the program on a computer, not in the browser: save a copy of the job and print it there.
workshop-paper-leave = Leave it as it is
workshop-paper-letter = US Letter
workshop-paper-printing = Being printed…
workshop-paper-replace = Replace
workshop-paper-taken = There is already a file { $file }.
workshop-paper-unsound = It can be printed once the job has no mistakes.
workshop-points = Points
workshop-points-sum = Together { $sum } of 100
workshop-proof = Proof
workshop-proof-errors = { $count ->
    [one] 1 error
   *[other] { $count } errors
}
workshop-proof-faults = Step 2 of 3: what is known of every fault on this board is being looked up…
workshop-proof-gesture = Entering service mode
workshop-proof-machines = How it goes
workshop-proof-none = no mistakes found
workshop-proof-people = Step 3 of 3: the expert and simulated learners are doing the job…
workshop-proof-seed = Seed { $seed }
workshop-proof-sound = No mistakes found.
workshop-proof-stale = What follows is the job as it was before your last change.
workshop-proof-waits = The job is proved as soon as you pause.
workshop-proof-warnings = { $count ->
    [one] 1 warning
   *[other] { $count } warnings
}
workshop-proof-wash = Step 1 of 3: the customer’s wash is running…
workshop-redo = Redo
workshop-seed = seed: the same number gives everybody the same machine
workshop-sentence-complaint = What the customer says
workshop-sentence-goal = What it teaches (told with the score)
workshop-sentence-title = Title (it must not give the fault away)
workshop-sound = The file is sound.
workshop-sound-proved = The file is sound. Proof: { $told }.
workshop-stale = Codes left in the memory from long ago
workshop-title = Workshop
workshop-try = Try it
workshop-tutorial = Read the tutorial: three exercises
workshop-undo = Undo
workshop-unfinished = A job goes into the library once nothing is wrong with it.
workshop-wash-lamps = Lamps, one row each: lit or blinking
workshop-wash-moment = Moment, min
workshop-wash-no-codes = The wash stores no code.
workshop-wash-no-phase = no program running
workshop-wash-none = The wash is run as soon as the job has no mistakes.
workshop-wash-sample = After { $minutes } min: { $phase }; level { $level } mm, basket { $speed } rpm, current { $current } A. Lamps: { $lamps }.
workshop-way-point = { $minutes } min, { $money }: { $deed }
workshop-way-try = Press a deed to try the job from there.
workshop-wear = wear of the dial, from 0 (new) to 1 (worn out)
workshop-worn-lead = A lead of the meter is broken inside
workshop-wrong = { $field }: { $problem }
