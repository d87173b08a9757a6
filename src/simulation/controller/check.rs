//! What can be wrong with a board file although it reads well.

use super::board::{Board, Phase, Selector};
use super::gesture::GestureStep;
use super::monitor::{Monitor, Routine, Stage};
use super::segments::{nearest, segments_of};
use super::signs::{LampPlacement, Sign, SignReading, Signs, sum};
use crate::interface::{Button, Mains, Terminal};
use crate::units::{Span, TICK_MS};

/// Slowest and fastest normal flashing, Hz (IEC 60073, read in a secondary source).
const FLASH_HZ: (f64, f64) = (1.4, 2.8);
/// No lamp may flash more often than this in any second (WCAG 2.2, success criterion 2.3.1).
const MOST_FLASHES_HZ: f64 = 3.0;

/// Most characters of a name in words.
const LONGEST_NAME: usize = 80;

/// Whether a name is written in words and is no key of the texts: a key has neither spaces nor capitals.
pub fn is_words(name: &str) -> bool {
    let in_words = |c: char| c == ' ' || c.is_uppercase();
    let fits = name.chars().count() <= LONGEST_NAME && !name.contains(char::is_control);
    fits && !name.trim().is_empty() && name.contains(in_words)
}

/// One problem and the field it lies in.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{field}: {fault}")]
pub struct BoardProblem {
    /// Path of the field, such as `codes[3].code`.
    pub field: String,
    /// What is wrong with it.
    pub fault: BoardFault,
}

/// What is wrong with a field.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum BoardFault {
    /// Two codes alike.
    #[error("code {code:02} already stands at codes[{first}]; give each monitor a code of its own")]
    SameCode {
        /// The code.
        code: u8,
        /// Where it stands first.
        first: usize,
    },
    /// Not two decimal digits.
    #[error("{code} cannot be shown; a code is 1 to 99")]
    CodeOutOfRange {
        /// The code.
        code: u8,
    },
    /// A monitor with two codes, rules or sheet entries.
    #[error("monitor {0} is listed twice")]
    MonitorTwice(Monitor),
    /// A monitor without a code.
    #[error("monitor {0} has no code")]
    NoCode(Monitor),
    /// A monitor without delay and retries.
    #[error("monitor {0} has no rule")]
    NoRule(Monitor),
    /// A monitor that the service sheet leaves out.
    #[error("monitor {0} has no entry in the service sheet")]
    NoSheet(Monitor),
    /// A gesture or one of its steps that nobody can do in time.
    #[error(
        "cannot be met: it takes at least {least_ms} ms and the window is {window_ms} ms; widen the window or ask for less"
    )]
    GestureTooShort {
        /// Shortest time the control can resolve, ms.
        least_ms: u32,
        /// Time allowed, ms.
        window_ms: u32,
    },
    /// A hold whose shortest time lies above its longest, or a press shorter than the debounce.
    #[error("cannot be met: at least {min_ms} ms and at most {max_ms} ms")]
    HoldImpossible {
        /// Shortest, ms.
        min_ms: u32,
        /// Longest, ms.
        max_ms: u32,
    },
    /// A gesture or step that asks for nothing.
    #[error("asks for nothing")]
    Empty,
    /// A fault hold that nothing ends.
    #[error("keeps a fault hold that nothing ends; give it a button to hold or a lid to move")]
    NoWayOut,
    /// A routine that every job needs and that the menu leaves out.
    #[error("the menu has no {0}; give it a position, every job needs it")]
    NoRoutine(Routine),
    /// Digits that are not ten.
    #[error("{digits} signs for the digits 0 to 9; write ten, the one for 0 first")]
    DigitCount {
        /// As written.
        digits: usize,
    },
    /// A digit that shows nothing: nobody could tell it from the pause.
    #[error("the digit {digit} would be dark; give it a lamp that is lit or that blinks")]
    DarkDigit {
        /// The digit.
        digit: u8,
    },
    /// Two digits alike.
    #[error("the digit {digit} looks like {first}; let one of their lamps differ")]
    SameDigit {
        /// The digit.
        digit: u8,
        /// The one that it looks like.
        first: u8,
    },
    /// A lamp that is to be lit and to blink at once, or that does not exist.
    #[error("lamps {lamps:#b} are lit and blink at once, or are more than there are")]
    LampTwice {
        /// A bit for each such lamp.
        lamps: u16,
    },
    /// A number and a picture in turn, where the number by itself is read over time.
    #[error("these signs take time to read; show the number alone: `Number`")]
    NumberTakesTime,
    /// A character that seven segments cannot show.
    #[error(
        "seven segments cannot show '{character}', or it would be a digit there; write '{nearest}'"
    )]
    NoSuchLetter {
        /// As written.
        character: char,
        /// What they can show and comes nearest.
        nearest: char,
    },
    /// Letters where there are no segments.
    #[error("signs of the kind {0} show no letters; take a picture of their lamps: `Still`")]
    LettersWithoutSegments(&'static str),
    /// Letters that are a number.
    #[error("'{0}{1}' would be taken for a number; put a letter or a dash into it")]
    LettersAreNumber(char, char),
    /// Lamps that cannot stand like this.
    #[error(
        "signs of the kind {0} have a place of their own; leave `placement` out, or take Pictures or InTurn"
    )]
    PlacedByKind(&'static str),
    /// Places that are not one for each lamp.
    #[error("{places} places for {lamps} lamps; give each lamp its own")]
    PlaceCount {
        /// As written.
        places: usize,
        /// How many there are.
        lamps: u8,
    },
    /// Two lamps that cover each other.
    #[error(
        "this lamp covers the one at places[{first}]; keep them 15 apart, or 25 one above the other"
    )]
    PlacesTooNear {
        /// Where the other stands.
        first: usize,
    },
    /// Two turns of the same direction in a row cannot be told apart.
    #[error("turns the same way as the step before; join the two")]
    TurnsJoin,
    /// A position that cannot be chosen.
    #[error("position {position} cannot be chosen; this panel has 0 to {last}", last = positions.saturating_sub(1))]
    NoPosition {
        /// The position.
        position: u8,
        /// How many the panel has.
        positions: u8,
    },
    /// Two entries at one position.
    #[error("position {position} is already taken by entry {first}")]
    SamePosition {
        /// The position.
        position: u8,
        /// Where it stands first.
        first: usize,
    },
    /// A lamp that blinks outside the permitted band.
    #[error(
        "{hz:.2} Hz is outside 1.4 to 2.8 Hz (IEC 60073); no lamp may flash more than three times a second (WCAG 2.2, 2.3.1)"
    )]
    Flashing {
        /// As written, Hz.
        hz: f64,
    },
    /// A button that the board does not have.
    #[error("this board has no button {0}")]
    NoButton(Button),
    /// A step that turns a knob on a panel without one.
    #[error("this panel has no knob to turn; give it a Dial or a Switch, or use buttons")]
    NoKnob,
    /// A button pushed twice, or let go although nothing pushed it.
    #[error("{0} is not {state} at this step", state = if *.1 { "pushed" } else { "free" })]
    ButtonState(Button, bool),
    /// The second order of a gesture is not the first one's steps.
    #[error(
        "has other steps than `steps`, or the same order; write the same steps in another order"
    )]
    OtherSteps,
    /// Where a switch stood can be seen only by its own contacts.
    #[error(
        "only a Switch shows where it stands when power comes; give this panel one, or leave `standing` out"
    )]
    StandingUnseen,
    /// Two buttons that are one.
    #[error("{0} is named twice; two buttons are pressed at once")]
    OneButton(Button),
    /// A pause that is not between two steps.
    #[error("a pause stands between two other steps")]
    PauseAlone,
    /// Power can only come first.
    #[error("power can come only as the first step")]
    PowerLater,
    /// Weights that cannot show a digit.
    #[error(
        "these weights cannot show the digit {digit}; choose weights that add up to each of 0 to 9"
    )]
    NoSuchDigit {
        /// The digit.
        digit: u8,
    },
    /// More lamps than a panel can have.
    #[error("{lamps} lamps are too many or none; use 1 to 16")]
    LampCount {
        /// As written.
        lamps: usize,
    },
    /// A code that the list of pictures leaves out, or shows like another number.
    #[error("number {number} has no picture of its own")]
    NoPicture {
        /// The number.
        number: u8,
    },
    /// A terminal wired to two pins.
    #[error("{terminal} is already wired to {first}")]
    TerminalTwice {
        /// The terminal.
        terminal: Terminal,
        /// Connector and pin where it stands first.
        first: String,
    },
    /// A terminal wired to no pin.
    #[error("{0} is wired to no pin")]
    TerminalUnwired(Terminal),
    /// A pin number or connector label twice.
    #[error("\"{0}\" stands twice")]
    LabelTwice(String),
    /// A number outside the bounds that another number or the physics sets.
    #[error("{value} is out of bounds: it must lie above {above} and below {below}")]
    Bounds {
        /// As written.
        value: f64,
        /// Lower bound.
        above: f64,
        /// Upper bound.
        below: f64,
    },
    /// A supply that the board is made for without its levels, or levels of one that it is not made for.
    #[error("{0:?} must stand in `mains` and in `supply`, or in neither")]
    SupplyUnmatched(Mains),
    /// A stage of recalibration missing or twice.
    #[error("stage {0} must stand exactly once")]
    StageCount(Stage),
    /// A text key that is not lower-case words joined by hyphens.
    #[error("\"{0}\" is no text key; use lower-case words joined by hyphens")]
    TextKey(String),
}

/// Two characters for a mode, written in `field`.
fn check_letters(signs: &Signs, [left, right]: [char; 2], field: &str, found: &mut Problems) {
    if *signs != Signs::Segments {
        found.add(field, BoardFault::LettersWithoutSegments(signs.key()));
        return;
    }
    for (n, character) in [left, right].into_iter().enumerate() {
        if segments_of(character).is_none() {
            let nearest = nearest(character);
            let fault = BoardFault::NoSuchLetter { character, nearest };
            found.add(&format!("{field}.{n}"), fault);
        }
    }
    let no_letter = |character: char| character.is_ascii_digit() || character == ' ';
    match (left, right) {
        (' ', ' ') => found.add(field, BoardFault::Empty),
        _ if no_letter(left) && no_letter(right) => {
            found.add(field, BoardFault::LettersAreNumber(left, right));
        }
        _ => {}
    }
}

impl Board {
    /// Every problem of this board; empty when it can be used.
    pub fn check(&self) -> Vec<BoardProblem> {
        let mut found = Problems(Vec::new());
        self.check_panel(&mut found);
        self.check_numbers(&mut found);
        self.check_codes(&mut found);
        self.check_programs(&mut found);
        self.check_gesture(&mut found);
        self.check_pins(&mut found);
        self.check_recalibration(&mut found);
        found.0
    }

    fn check_panel(&self, found: &mut Problems) {
        let positions = match self.panel.selector {
            Selector::Steps => {
                for button in [Button::More, Button::Less] {
                    found.need(self, "panel.selector", button);
                }
                100
            }
            Selector::Dial { detents: turn } | Selector::Switch { positions: turn } => {
                found.bounds("panel.selector", f64::from(turn), 1.0, 101.0);
                turn
            }
        };
        for button in [Button::Start, Button::Stop] {
            found.need(self, "panel.buttons", button);
        }
        found.need(self, "service.page", self.service.page);
        if let Some(hold) = self.resets.hold {
            found.need(self, "resets.hold.button", hold.button);
        }
        if self.resets.kept && !self.resets.has_own_way() {
            found.add("resets.kept", BoardFault::NoWayOut);
        }
        if self.mains.is_empty() {
            found.add("mains", BoardFault::Empty);
        }
        if let Some(lid) = self.resets.lid_moves {
            let least_ms = u32::from(lid.moves).saturating_sub(1) * 2 * self.debounce_ms;
            if lid.moves == 0 {
                found.add("resets.lid_moves.moves", BoardFault::Empty);
            } else if lid.within_ms < least_ms {
                let window_ms = lid.within_ms;
                let fault = BoardFault::GestureTooShort {
                    least_ms,
                    window_ms,
                };
                found.add("resets.lid_moves.within_ms", fault);
            }
        }
        for routine in [Routine::Recall, Routine::Recalibrate] {
            if self.position_of(routine).is_none() {
                found.add("menu", BoardFault::NoRoutine(routine));
            }
        }
        let stored = self.service.stored_codes;
        found.bounds("service.stored_codes", f64::from(stored), 0.0, 21.0);
        let needed = self.codes.iter().map(|c| c.code);
        self.lamps
            .signs
            .look_for_problems(needed.chain(0..=stored), found);
        self.check_lamps(found);
        found.bounds("debounce_ms", f64::from(self.debounce_ms), 9.0, 501.0);
        found.blinking("lamps.blink_ms", self.lamps.blink_ms);
        let hz = 500.0 / f64::from(self.lamps.turns_ms);
        if hz > MOST_FLASHES_HZ {
            found.add("lamps.turns_ms", BoardFault::Flashing { hz });
        }
        found.name("name", &self.name);
        found.positions("menu", self.menu.iter().map(|m| m.position), positions);
        found.positions(
            "programs",
            self.programs.iter().map(|p| p.position),
            positions,
        );
    }

    fn check_lamps(&self, found: &mut Problems) {
        let lamps = &self.lamps;
        let readings = [
            ("idle", lamps.idle),
            ("program", lamps.program),
            ("hold", lamps.hold),
            ("service", lamps.service),
            ("test", lamps.test),
            ("recalibration", lamps.recalibration),
        ];
        for (name, reading) in readings {
            if lamps.signs.take_time() && matches!(reading, SignReading::NumberAnd(_)) {
                found.add(&format!("lamps.{name}"), BoardFault::NumberTakesTime);
            }
            if let SignReading::Letters(left, right) = reading {
                check_letters(&lamps.signs, [left, right], &format!("lamps.{name}"), found);
            }
        }
        match (&lamps.signs, &lamps.placement) {
            (_, LampPlacement::Usual) => {}
            (Signs::Weights { .. } | Signs::Segments | Signs::Flashes { .. }, _) => {
                let fault = BoardFault::PlacedByKind(lamps.signs.key());
                found.add("lamps.placement", fault);
            }
            (Signs::Pictures { .. } | Signs::InTurn { .. }, LampPlacement::Free(places)) => {
                let lamps = lamps.signs.lamps();
                if places.len() != usize::from(lamps) {
                    let places = places.len();
                    found.add("lamps.placement", BoardFault::PlaceCount { places, lamps });
                }
                for (index, (x, y)) in places.iter().enumerate() {
                    let field = format!("lamps.placement[{index}]");
                    for value in [x, y] {
                        found.bounds(&field, f64::from(*value), -1.0, 101.0);
                    }
                    let near =
                        |(left, top): &(u8, u8)| x.abs_diff(*left) < 15 && y.abs_diff(*top) < 25;
                    if let Some(first) = places[..index].iter().position(near) {
                        found.add(&field, BoardFault::PlacesTooNear { first });
                    }
                }
            }
            (Signs::Pictures { .. } | Signs::InTurn { .. }, LampPlacement::Grid { columns }) => {
                let most = f64::from(lamps.signs.lamps()) + 1.0;
                let field = "lamps.placement.columns";
                found.bounds(field, f64::from(*columns), 0.0, most);
            }
            (Signs::Pictures { .. } | Signs::InTurn { .. }, LampPlacement::Row)
            | (Signs::Pictures { .. } | Signs::InTurn { .. }, LampPlacement::Column) => {}
        }
    }

    fn check_numbers(&self, found: &mut Problems) {
        let inf = f64::INFINITY;
        for mains in Mains::ALL {
            let field = |name: &str| format!("supply[{mains:?}]{name}");
            match self.supply.get(&mains) {
                Some(levels) if self.mains.contains(&mains) => {
                    found.bounds(&field(".reset_v"), levels.reset_v, 0.0, inf);
                    found.bounds(&field(".sag_v"), levels.sag_v, levels.reset_v, inf);
                }
                Some(_) => found.add(&field(""), BoardFault::SupplyUnmatched(mains)),
                None if self.mains.contains(&mains) => {
                    found.add("supply", BoardFault::SupplyUnmatched(mains));
                }
                None => {}
            }
        }
        let p = &self.pressure;
        found.bounds("pressure.v_per_kpa", p.v_per_kpa, 0.0, inf);
        found.bounds("pressure.zero_v", p.zero_v, p.min_v, p.max_v);
        let t = &self.thermistor;
        found.bounds("thermistor.rail_v", t.rail_v, 0.0, inf);
        found.bounds("thermistor.min_v", t.min_v, 0.0, t.max_v);
        found.bounds("thermistor.max_v", t.max_v, t.min_v, t.rail_v);
        found.bounds("thermistor.pullup_ohms", t.pullup_ohms, 0.0, inf);
        found.bounds("thermistor.r25_ohms", t.r25_ohms, 0.0, inf);
        found.bounds("thermistor.beta_k", t.beta_k, 0.0, inf);
        let m = &self.motor;
        found.bounds(
            "motor.pulses_per_rev",
            f64::from(m.pulses_per_rev),
            0.0,
            inf,
        );
        found.bounds("motor.min_a", m.min_a, 0.0, m.overload_a);
        found.bounds("motor.reverse_ms", f64::from(m.reverse_ms), 49.0, inf);
        found.bounds("motor.reached_share", m.reached_share, 0.0, 1.0);
        found.bounds("water.drained_mm", self.water.drained_mm, 0.0, inf);
        found.bounds(
            "clutch_actuator.ms_per_deg",
            self.clutch_actuator.ms_per_deg,
            0.0,
            inf,
        );
        // Past half of the half turn the run-on would leave the position again.
        found.bounds(
            "clutch_actuator.run_on_deg",
            self.clutch_actuator.run_on_deg,
            -1.0,
            90.0,
        );
    }

    fn check_codes(&self, found: &mut Problems) {
        for (index, entry) in self.codes.iter().enumerate() {
            let field = format!("codes[{index}].code");
            if !(1..=99).contains(&entry.code) {
                found.add(&field, BoardFault::CodeOutOfRange { code: entry.code });
            }
            let first = self.codes.iter().position(|c| c.code == entry.code);
            if let Some(first) = first.filter(|first| *first < index) {
                found.add(
                    &field,
                    BoardFault::SameCode {
                        code: entry.code,
                        first,
                    },
                );
            }
        }
        found.each_once(
            "codes",
            self.codes.iter().map(|c| c.monitor),
            BoardFault::NoCode,
        );
        found.each_once(
            "monitors",
            self.monitors.iter().map(|r| r.monitor),
            BoardFault::NoRule,
        );
        found.each_once(
            "sheet",
            self.sheet.iter().map(|s| s.monitor),
            BoardFault::NoSheet,
        );
        for (index, entry) in self.sheet.iter().enumerate() {
            if entry.suspects.is_empty() {
                found.add(&format!("sheet[{index}].suspects"), BoardFault::Empty);
            }
            for (nth, key) in entry.checks.iter().enumerate() {
                found.text_key(&format!("sheet[{index}].checks[{nth}]"), key);
            }
        }
    }

    fn check_programs(&self, found: &mut Problems) {
        let top_mm = super::sense::mm_per_volt(self.pressure.v_per_kpa)
            * (self.pressure.max_v - self.pressure.zero_v);
        for (index, program) in self.programs.iter().enumerate() {
            found.name(&format!("programs[{index}].name"), &program.name);
            if program.phases.is_empty() {
                found.add(&format!("programs[{index}].phases"), BoardFault::Empty);
            }
            for (nth, phase) in program.phases.iter().enumerate() {
                let field = |name: &str| format!("programs[{index}].phases[{nth}].{name}");
                match *phase {
                    Phase::Fill {
                        level_mm,
                        cold,
                        hot,
                        min_c,
                        max_c,
                        ..
                    } => {
                        found.bounds(&field("level_mm"), level_mm, self.water.drained_mm, top_mm);
                        found.bounds(&field("min_c"), min_c, -1.0, max_c);
                        if !cold && !hot {
                            found.add(&field("cold"), BoardFault::Empty);
                        }
                    }
                    Phase::Agitate {
                        minutes,
                        stroke_ms,
                        pause_ms,
                    } => {
                        found.bounds(&field("minutes"), minutes, 0.0, 120.0);
                        found.bounds(&field("stroke_ms"), f64::from(stroke_ms), 99.0, 10_001.0);
                        found.bounds(
                            &field("pause_ms"),
                            f64::from(pause_ms),
                            f64::from(self.motor.reverse_ms) - 1.0,
                            10_001.0,
                        );
                    }
                    Phase::Soak { minutes } => {
                        found.bounds(&field("minutes"), minutes, 0.0, 240.0);
                    }
                    Phase::Spin { rpm, minutes } => {
                        found.bounds(&field("rpm"), rpm, 0.0, 2000.0);
                        found.bounds(&field("minutes"), minutes, 0.0, 30.0);
                    }
                    Phase::Drain { .. } | Phase::Rest { .. } => {}
                }
            }
        }
    }

    fn check_gesture(&self, found: &mut Problems) {
        let gesture = &self.gesture;
        if gesture.steps.is_empty() {
            found.add("gesture.steps", BoardFault::Empty);
        }
        self.check_steps("gesture.steps", &gesture.steps, found);
        if !gesture.or_steps.is_empty() {
            self.check_steps("gesture.or_steps", &gesture.or_steps, found);
            let mut left = gesture.or_steps.clone();
            let each_there = gesture.steps.iter().all(|step| {
                let place = left.iter().position(|other| other == step);
                place.map(|place| left.remove(place)).is_some()
            });
            if !each_there || !left.is_empty() || gesture.steps == gesture.or_steps {
                found.add("gesture.or_steps", BoardFault::OtherSteps);
            }
        }
    }

    fn check_steps(&self, list: &str, steps: &[GestureStep], found: &mut Problems) {
        let gesture = &self.gesture;
        // The clock starts with the first input, so the first contact change costs nothing.
        let mut least_ms: u32 = 0;
        let mut turned = None;
        let mut pushed: Vec<Button> = Vec::new();
        if let (Some(from), Some(turn)) = (gesture.from, self.panel.selector.turn())
            && from >= turn
        {
            found.add(
                "gesture.from",
                BoardFault::NoPosition {
                    position: from,
                    positions: turn,
                },
            );
        }
        let mut pause_ms = 0;
        for (index, step) in steps.iter().enumerate() {
            let field = |name: &str| format!("{list}[{index}].{name}");
            let gaps_ms = u32::from(step.deeds()).saturating_mul(gesture.gap_ms);
            let own_ms = step.shortest_ms(self.debounce_ms).max(gaps_ms);
            let shortest = own_ms.saturating_add(std::mem::take(&mut pause_ms));
            if let GestureStep::Pause { .. } = step {
                pause_ms = shortest;
                turned = None;
                let after = steps.get(index + 1);
                let alone = after.is_none_or(|next| matches!(next, GestureStep::Pause { .. }));
                if index == 0 || alone {
                    found.add(&field("min_ms"), BoardFault::PauseAlone);
                }
                continue;
            }
            least_ms = least_ms.saturating_add(shortest);
            if let Some(window_ms) = step.window_ms()
                && shortest > window_ms
            {
                found.add(
                    &field("window_ms"),
                    BoardFault::GestureTooShort {
                        least_ms: shortest,
                        window_ms,
                    },
                );
            }
            if let GestureStep::Press { button, .. }
            | GestureStep::Hold { button, .. }
            | GestureStep::Push { button, .. }
            | GestureStep::Release { button, .. }
            | GestureStep::PowerUp {
                holding: Some(button),
                ..
            } = *step
            {
                found.need(self, &field("button"), button);
                let is_pushed = pushed.contains(&button);
                let wants_pushed = matches!(step, GestureStep::Release { .. });
                if is_pushed != wants_pushed {
                    let fault = BoardFault::ButtonState(button, wants_pushed);
                    found.add(&field("button"), fault);
                }
                match step {
                    GestureStep::Push { .. } | GestureStep::PowerUp { .. } => pushed.push(button),
                    GestureStep::Release { .. } => pushed.retain(|b| *b != button),
                    GestureStep::Press { .. }
                    | GestureStep::Hold { .. }
                    | GestureStep::Turn { .. }
                    | GestureStep::Lid { .. }
                    | GestureStep::Pause { .. }
                    | GestureStep::Together { .. } => {}
                }
            }
            let mut turns = None;
            match *step {
                GestureStep::Turn { to, detents, .. } => {
                    turns = Some(to);
                    if self.panel.selector.turn().is_none() {
                        found.add(&field("detents"), BoardFault::NoKnob);
                    }
                    if detents == 0 {
                        found.add(&field("detents"), BoardFault::Empty);
                    }
                    if turned == turns {
                        found.add(&field("to"), BoardFault::TurnsJoin);
                    }
                }
                GestureStep::Press { times, max_ms, .. } => {
                    if times == 0 {
                        found.add(&field("times"), BoardFault::Empty);
                    }
                    if max_ms < self.debounce_ms {
                        let min_ms = self.debounce_ms;
                        found.add(
                            &field("max_ms"),
                            BoardFault::HoldImpossible { min_ms, max_ms },
                        );
                    }
                }
                GestureStep::Hold { min_ms, max_ms, .. } => {
                    if max_ms < min_ms.max(self.debounce_ms) {
                        found.add(
                            &field("max_ms"),
                            BoardFault::HoldImpossible { min_ms, max_ms },
                        );
                    }
                }
                GestureStep::PowerUp { .. } if index > 0 => {
                    found.add(&field("holding"), BoardFault::PowerLater);
                }
                GestureStep::PowerUp {
                    standing: Some(standing),
                    ..
                } => {
                    let field = field("standing");
                    match self.panel.selector {
                        Selector::Switch { positions } if standing.at >= positions => {
                            let position = standing.at;
                            let fault = BoardFault::NoPosition {
                                position,
                                positions,
                            };
                            found.add(&field, fault);
                        }
                        Selector::Switch { .. } => {}
                        Selector::Dial { .. } | Selector::Steps => {
                            found.add(&field, BoardFault::StandingUnseen);
                        }
                    }
                }
                GestureStep::Together {
                    buttons: (one, other),
                    min_ms,
                    max_ms,
                    ..
                } => {
                    let field = field("buttons");
                    for button in [one, other] {
                        found.need(self, &field, button);
                        if pushed.contains(&button) {
                            found.add(&field, BoardFault::ButtonState(button, false));
                        }
                    }
                    if one == other {
                        found.add(&field, BoardFault::OneButton(one));
                    }
                    if max_ms < min_ms.max(self.debounce_ms) {
                        found.add(&field, BoardFault::HoldImpossible { min_ms, max_ms });
                    }
                }
                GestureStep::Push { .. }
                | GestureStep::Release { .. }
                | GestureStep::Lid { .. }
                | GestureStep::Pause { .. }
                | GestureStep::PowerUp { .. } => {}
            }
            turned = turns;
        }
        let first_free = match steps.first() {
            Some(GestureStep::Turn { .. }) => gesture.gap_ms.max(TICK_MS as u32),
            Some(GestureStep::PowerUp { .. }) | None => 0,
            Some(_) => self.debounce_ms.max(gesture.gap_ms),
        };
        let least_ms = least_ms.saturating_sub(first_free);
        if least_ms > gesture.within_ms {
            found.add(
                "gesture.within_ms",
                BoardFault::GestureTooShort {
                    least_ms,
                    window_ms: gesture.within_ms,
                },
            );
        }
    }

    fn check_pins(&self, found: &mut Problems) {
        let mut seen: Vec<(Terminal, String)> = Vec::new();
        for (index, connector) in self.connectors.iter().enumerate() {
            if self.connectors[..index]
                .iter()
                .any(|c| c.label == connector.label)
            {
                found.add(
                    &format!("connectors[{index}].label"),
                    BoardFault::LabelTwice(connector.label.clone()),
                );
            }
            for (nth, pin) in connector.pins.iter().enumerate() {
                let place = format!("{}.{}", connector.label, pin.pin);
                if connector.pins[..nth].iter().any(|p| p.pin == pin.pin) {
                    found.add(
                        &format!("connectors[{index}].pins[{nth}].pin"),
                        BoardFault::LabelTwice(place.clone()),
                    );
                }
                match seen.iter().find(|(t, _)| *t == pin.terminal) {
                    Some((_, first)) => found.add(
                        &format!("connectors[{index}].pins[{nth}].terminal"),
                        BoardFault::TerminalTwice {
                            terminal: pin.terminal,
                            first: first.clone(),
                        },
                    ),
                    None => seen.push((pin.terminal, place)),
                }
            }
        }
        for terminal in Terminal::ALL {
            if !seen.iter().any(|(t, _)| t == terminal) {
                found.add("connectors", BoardFault::TerminalUnwired(*terminal));
            }
        }
    }

    fn check_recalibration(&self, found: &mut Problems) {
        let r = &self.recalibration;
        for stage in Stage::ALL {
            if r.stages.iter().filter(|s| s.stage == *stage).count() != 1 {
                found.add("recalibration.stages", BoardFault::StageCount(*stage));
            }
        }
        for (index, rule) in r.stages.iter().enumerate() {
            found.bounds(
                &format!("recalibration.stages[{index}].limit_s"),
                f64::from(rule.limit_s),
                f64::from(rule.min_s),
                601.0,
            );
        }
        found.bounds("recalibration.zero_v.0", r.zero_v.0, 0.0, r.zero_v.1);
        found.bounds(
            "recalibration.cam_ms_per_deg.0",
            r.cam_ms_per_deg.0,
            0.0,
            r.cam_ms_per_deg.1,
        );
        found.bounds("recalibration.spin_rpm.0", r.spin_rpm.0, 0.0, r.spin_rpm.1);
    }
}

impl Signs {
    /// Every problem of this way of showing these numbers; empty when it can be used. Fields as in a
    /// board's file.
    pub fn check(&self, numbers: impl Iterator<Item = u8>) -> Vec<BoardProblem> {
        let mut found = Problems(Vec::new());
        self.look_for_problems(numbers, &mut found);
        found.0
    }

    fn look_for_problems(&self, numbers: impl Iterator<Item = u8>, found: &mut Problems) {
        let mut count = usize::from(self.lamps());
        match self {
            Signs::Segments => {}
            Signs::Weights { tens, units } => {
                count = tens.len() + units.len();
                for (field, weights) in [("tens", tens), ("units", units)] {
                    let one = Signs::Weights {
                        tens: Vec::new(),
                        units: weights.clone(),
                    };
                    let shows =
                        |digit: &u8| sum(weights, one.lit(*digit, Span::ZERO)) == u32::from(*digit);
                    if let Some(digit) = (0..=9).find(|digit| !shows(digit)) {
                        found.add(
                            &format!("lamps.signs.{field}"),
                            BoardFault::NoSuchDigit { digit },
                        );
                    }
                }
            }
            Signs::Pictures {
                table,
                blinks,
                blink_ms,
                ..
            } => {
                let drawn = || table.iter().chain(blinks).map(|(number, _)| *number);
                for number in numbers {
                    let own = self.sign(number);
                    let alone = !drawn().any(|n| n != number && self.sign(n) == own);
                    if !alone || own.is_none() {
                        found.add("lamps.signs.table", BoardFault::NoPicture { number });
                    }
                }
                if !blinks.is_empty() {
                    found.blinking("lamps.signs.blink_ms", *blink_ms);
                }
                for (index, (number, _)) in blinks.iter().enumerate() {
                    let sign = self.sign(*number).unwrap_or_default();
                    found.lamps_once(&format!("lamps.signs.blinks[{index}]"), sign, self.all());
                }
            }
            Signs::InTurn {
                digits,
                digit_ms,
                gap_ms,
                pause_ms,
                blink_ms,
                ..
            } => {
                if digits.len() != 10 {
                    let digits = digits.len();
                    found.add("lamps.signs.digits", BoardFault::DigitCount { digits });
                }
                for ((index, sign), digit) in digits.iter().enumerate().zip(0..) {
                    let field = format!("lamps.signs.digits[{index}]");
                    if *sign == Sign::default() {
                        found.add(&field, BoardFault::DarkDigit { digit });
                    }
                    let alike = digits[..index]
                        .iter()
                        .zip(0..)
                        .find(|(other, _)| *other == sign);
                    if let Some((_, first)) = alike {
                        found.add(&field, BoardFault::SameDigit { digit, first });
                    }
                    found.lamps_once(&field, *sign, self.all());
                }
                found.blinking("lamps.signs.blink_ms", *blink_ms);
                // Two blinks are told from a lamp that is lit and goes out, and darkness that is no longer than a
                // blink would be taken for a part of one (common practice, no source).
                let (shown, gap) = (f64::from(*digit_ms), f64::from(*gap_ms));
                let (pause, blink) = (f64::from(*pause_ms), f64::from(*blink_ms));
                let inf = f64::INFINITY;
                found.bounds("lamps.signs.digit_ms", shown, 2.0 * blink - 1.0, inf);
                found.bounds("lamps.signs.gap_ms", gap, blink - 1.0, inf);
                found.bounds("lamps.signs.pause_ms", pause, 2.0 * gap - 1.0, inf);
            }
            Signs::Flashes {
                long_ms,
                short_ms,
                gap_ms,
                between_ms,
                pause_ms,
            } => {
                let hz = 1000.0 / f64::from(*short_ms + *gap_ms);
                if hz > MOST_FLASHES_HZ {
                    found.add("lamps.signs.gap_ms", BoardFault::Flashing { hz });
                }
                // Twice as long is told apart at a glance (common practice, no source).
                let (long, short) = (f64::from(*long_ms), f64::from(*short_ms));
                let (gap, between) = (f64::from(*gap_ms), f64::from(*between_ms));
                let inf = f64::INFINITY;
                found.bounds("lamps.signs.long_ms", long, 2.0 * short - 1.0, inf);
                found.bounds("lamps.signs.between_ms", between, 2.0 * gap - 1.0, inf);
                found.bounds("lamps.signs.pause_ms", f64::from(*pause_ms), between, inf);
            }
        }
        if !(1..=16).contains(&count) {
            found.add("lamps.signs", BoardFault::LampCount { lamps: count });
        }
    }
}

struct Problems(Vec<BoardProblem>);

impl Problems {
    fn add(&mut self, field: &str, fault: BoardFault) {
        self.0.push(BoardProblem {
            field: field.to_owned(),
            fault,
        });
    }

    /// NaN is out of bounds too.
    fn bounds(&mut self, field: &str, value: f64, above: f64, below: f64) {
        if !(value > above && value < below) {
            self.add(
                field,
                BoardFault::Bounds {
                    value,
                    above,
                    below,
                },
            );
        }
    }

    /// A name for people: a key of the texts, or the words themselves.
    fn name(&mut self, field: &str, name: &str) {
        if !is_words(name) {
            self.text_key(field, name);
        }
    }

    /// One full blink of a lamp, ms.
    fn blinking(&mut self, field: &str, blink_ms: u32) {
        let hz = 1000.0 / f64::from(blink_ms);
        if !(FLASH_HZ.0..=FLASH_HZ.1).contains(&hz) {
            self.add(field, BoardFault::Flashing { hz });
        }
    }

    /// No lamp of a sign is lit and blinks at once, and all are among those that there are.
    fn lamps_once(&mut self, field: &str, sign: Sign, all: u16) {
        let lamps = sign.lit & sign.blinks | (sign.lit | sign.blinks) & !all;
        if lamps != 0 {
            self.add(field, BoardFault::LampTwice { lamps });
        }
    }

    fn text_key(&mut self, field: &str, key: &str) {
        let good = !key.is_empty()
            && key.split('-').all(|word| {
                !word.is_empty()
                    && word
                        .bytes()
                        .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
            });
        if !good {
            self.add(field, BoardFault::TextKey(key.to_owned()));
        }
    }

    fn need(&mut self, board: &Board, field: &str, button: Button) {
        if !board.panel.buttons.contains(&button) {
            self.add(field, BoardFault::NoButton(button));
        }
    }

    fn positions(&mut self, list: &str, entries: impl Iterator<Item = u8>, positions: u8) {
        let mut seen = Vec::new();
        for (index, position) in entries.enumerate() {
            let field = format!("{list}[{index}].position");
            if position >= positions {
                let fault = BoardFault::NoPosition {
                    position,
                    positions,
                };
                self.add(&field, fault);
            }
            if let Some(first) = seen.iter().position(|p| *p == position) {
                self.add(&field, BoardFault::SamePosition { position, first });
            }
            seen.push(position);
        }
    }

    fn each_once(
        &mut self,
        list: &str,
        monitors: impl Iterator<Item = Monitor>,
        missing: fn(Monitor) -> BoardFault,
    ) {
        let mut seen = [false; Monitor::ALL.len()];
        for (index, monitor) in monitors.enumerate() {
            if std::mem::replace(&mut seen[monitor.index()], true) {
                self.add(
                    &format!("{list}[{index}].monitor"),
                    BoardFault::MonitorTwice(monitor),
                );
            }
        }
        for monitor in Monitor::ALL.iter().filter(|m| !seen[m.index()]) {
            self.add(list, missing(*monitor));
        }
    }
}
