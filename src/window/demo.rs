//! A bench of made-up numbers, to look at the window without a machine behind it.

use super::attempts::{Attempts, StorageError};
use super::port::*;
use detent_simulation::controller::{
    Board, ControlView, EntryError, GestureInput, Lamps, Outcome, TraceLine, Tries, Try,
};
use detent_simulation::interface::{Button, Component, Connector, Direction, Pin, Side, Terminal};
use detent_simulation::machine::{MachineView, Sound};
use detent_simulation::units::{Span, Time};
use detent_training::bench::script::ScriptStep;
use detent_training::bench::{
    Action, BenchLog, BenchView, Caution, Condition, Display, Entries, Event, Finding, Found, Grip,
    Incident, LogEntry, MeterMode, MeterTest, Part, PartInHand, Rates, Reading, Refusal,
};
use detent_training::lesson::{
    Bilingual, Deduction, Dimension, DimensionScore, Loss, Points, Score,
};
use detent_training::practice::CourseJob;
use std::sync::Arc;

/// Made-up bench.
pub struct DemoBench {
    now: Time,
    machine: MachineView<'static>,
    cabinet_open: bool,
    pulled: Vec<Connector>,
    probes: Option<(MeterMode, Pin, Pin)>,
    meter: Option<Display>,
    held: Option<MeterMode>,
    parts: Vec<PartInHand>,
    tries: Vec<Try>,
    minutes: f64,
    finished: bool,
    job: Arc<Job>,
    score: Option<Score>,
    log: BenchLog,
}

/// Offers nothing but [`DemoBench`].
pub struct DemoJobs(Vec<Offer>);

fn both(en: &str, es: &str) -> Bilingual {
    Bilingual {
        en: en.to_owned(),
        es: es.to_owned(),
    }
}

fn demo_course(file: &str) -> CourseJob {
    CourseJob {
        file: file.to_owned(),
        after: Vec::new(),
        points: Points {
            reading: 50.0,
            proof: 50.0,
            ..Points::default()
        },
    }
}

impl Default for DemoJobs {
    fn default() -> Self {
        DemoJobs(vec![
            Offer {
                title: both("The tub stays full", "La cuba no se vacía"),
                complaint: both(
                    "It hums and leaves the clothes swimming.",
                    "Zumba y deja la ropa nadando.",
                ),
                board: "board-arc-dial".to_owned(),
                part: None,
                minutes: 60.0,
                after: Vec::new(),
                seed: 1,
                guided: false,
                course: demo_course("demo-1"),
            },
            Offer {
                title: both("It fills and stops", "Se llena y se detiene"),
                complaint: both(
                    "It takes water and then just sits there.",
                    "Coge agua y luego se queda parada.",
                ),
                board: "board-arc-dial".to_owned(),
                part: None,
                minutes: 60.0,
                after: Vec::new(),
                seed: 2,
                guided: false,
                course: demo_course("demo-2"),
            },
            Offer {
                title: both("Whatever the day brings", "Lo que traiga el día"),
                complaint: both("It blinks at me.", "Me parpadea."),
                board: "board-arc-dial".to_owned(),
                part: None,
                minutes: 60.0,
                after: Vec::new(),
                seed: 3,
                guided: false,
                course: demo_course("demo-3"),
            },
        ])
    }
}

impl JobSource for DemoJobs {
    fn offers(&self) -> &[Offer] {
        &self.0
    }
    fn open(&self, _offer: usize, _seed: u64) -> OpeningWork {
        Box::pin(async {
            let bench: Box<dyn BenchPort> = Box::new(DemoBench::new());
            Ok(bench)
        })
    }
    fn attempts(&self) -> Option<&dyn Attempts> {
        None
    }
    fn kept(&self, name: &str) -> Result<Kept, StorageError> {
        Err(StorageError::Gone(name.to_owned()))
    }
    fn resume(&self, name: &str) -> OpeningWork {
        let gone = OpenError::Attempt(StorageError::Gone(name.to_owned()));
        Box::pin(async { Err(gone) })
    }
}

/// The demonstration job at a given board.
pub fn demo_job() -> Job {
    let part = |number: &str, component, name_key: &str, price, wait_hours| Part {
        number: number.to_owned(),
        component,
        revision: Some('A'),
        name_key: name_key.to_owned(),
        condition: Condition::New,
        boards: Vec::new(),
        superseded_by: None,
        kit: false,
        fitting_minutes: None,
        note_key: None,
        price,
        wait_hours,
    };
    let cause = |id: &str, component| CauseRow {
        id: id.to_owned(),
        component,
    };
    Job {
        file: "demo-1".to_owned(),
        title: both("The tub stays full", "La cuba no se vacía"),
        complaint: both(
            "It washed fine on Monday. Now it hums a bit at the end and leaves the clothes swimming.",
            "El lunes lavó bien. Ahora zumba un poco al final y deja la ropa nadando.",
        ),
        goal: both(
            "Prove the pump before you buy one.",
            "Demuestre el fallo de la bomba antes de comprarla.",
        ),
        budget: 180.0,
        rates: Rates {
            labour_per_hour: 50.0,
            return_fee_share: 0.2,
            new_machine: 600.0,
            repair_share: 0.5,
            used_bad: 0.5,
            rebuilt_bad: 0.1,
        },
        par_minutes: 55.0,
        mains_v: 120,
        mains_hz: 60,
        hints_allowed: false,
        hints_at_hand: false,
        points: Points::default(),
        live_tests_allowed: false,
        is_variant: false,
        intake: None,
        board: ron::from_str(include_str!("../../assets/boards/arc-dial.ron"))
            .expect("the built-in board reads"),
        parts: vec![
            part(
                "C24-330",
                Component::DrainPump,
                "part-drain-pump",
                52.0,
                24.0,
            ),
            part(
                "C24-331",
                Component::DrainPump,
                "part-drain-pump",
                41.0,
                24.0,
            ),
            part("C24-200", Component::Board, "part-board", 189.0, 48.0),
            part(
                "C24-320",
                Component::InletCold,
                "part-inlet-cold",
                27.0,
                24.0,
            ),
            part(
                "C24-418",
                Component::RunCapacitor,
                "part-run-capacitor",
                19.0,
                24.0,
            ),
            part("C24-425", Component::Belt, "part-belt", 14.0, 24.0),
            part("C24-310", Component::LidLock, "part-lid-lock", 46.0, 24.0),
        ],
        guide: None,
        called_back: None,
        causes: vec![
            cause("drain-pump.open-winding", Component::DrainPump),
            cause("drain-pump.seized", Component::DrainPump),
            cause("drain-hose.blocked", Component::DrainHose),
            cause("board.pump-switch-open", Component::Board),
            cause("harness.pump-wire-open", Component::Harness),
        ],
    }
}

fn demo_score() -> Score {
    let lost = |s: u64, points, loss| Deduction {
        at: Time::ZERO + Span::from_s(s),
        points,
        loss,
    };
    let row = |dimension, of, lost: Vec<Deduction>| DimensionScore {
        dimension,
        of,
        kept: of - lost.iter().map(|l| l.points).sum::<f64>(),
        lost,
    };
    Score {
        dimensions: vec![
            row(
                Dimension::Entry,
                15.0,
                vec![lost(
                    74,
                    3.0,
                    Loss::FailedTry {
                        rule: HELD_TOO_SHORT,
                    },
                )],
            ),
            row(Dimension::Reading, 15.0, vec![]),
            row(
                Dimension::Reasoning,
                25.0,
                vec![lost(
                    640,
                    8.0,
                    Loss::GoodBoardReplaced {
                        part: "C24-500".to_owned(),
                    },
                )],
            ),
            row(
                Dimension::Safety,
                20.0,
                vec![lost(310, 10.0, Loss::OhmsOnLive)],
            ),
            row(
                Dimension::Cost,
                10.0,
                vec![lost(
                    900,
                    4.0,
                    Loss::OverBudget {
                        bill: 214.0,
                        budget: 180.0,
                    },
                )],
            ),
            row(Dimension::Proof, 15.0, vec![]),
        ],
    }
}

/// How the first of the tries ended.
const HELD_TOO_SHORT: EntryError = EntryError::HoldTooShort {
    step: 3,
    by_ms: 360,
};

fn demo_tries() -> Vec<Try> {
    use GestureInput::{Detent, Down, Up};
    let line = |step, at_ms, until_ms, input, broke| TraceLine {
        step,
        at_ms,
        from_ms: 0,
        until_ms,
        expected: input,
        got: Some(input),
        broke,
    };
    let left = Detent(Direction::Left);
    let right = Detent(Direction::Right);
    let start = |last_ms: u32, slow: u32, broke| {
        let mut lines: Vec<TraceLine> =
            (0..4).map(|i| line(0, i * 230, 6000, left, None)).collect();
        lines.push(line(1, 1300, 6000, Down(Button::Stop), None));
        lines.push(line(1, 1560, 2000, Up(Button::Stop), None));
        lines.extend((0..7).map(|i| line(2, 2100 + i * slow, 6000, right, None)));
        lines.push(line(3, 2400 + 7 * slow, 6000, Down(Button::Start), None));
        lines.push(TraceLine {
            from_ms: 3400 + 7 * slow,
            until_ms: 4900 + 7 * slow,
            ..line(3, last_ms, 6000, Up(Button::Start), broke)
        });
        lines
    };
    vec![
        Try {
            began_s: 61,
            lines: start(4300, 180, Some(HELD_TOO_SHORT)),
            outcome: Outcome::Broken(HELD_TOO_SHORT),
        },
        Try {
            began_s: 74,
            lines: start(4980, 170, None),
            outcome: Outcome::Entered,
        },
    ]
}

fn ordered(number: String) -> PartInHand {
    PartInHand {
        number,
        fitted: false,
        bad: None,
    }
}

impl DemoBench {
    /// The same at another board.
    pub fn at(board: Board) -> DemoBench {
        let mut bench = DemoBench::new();
        Arc::make_mut(&mut bench.job).board = board;
        bench
    }

    /// The same with hints allowed; there is no table to make them from.
    pub fn without_table() -> DemoBench {
        let mut bench = DemoBench::new();
        Arc::make_mut(&mut bench.job).hints_allowed = true;
        bench
    }

    /// Plugged in, half full, showing 27.
    pub fn new() -> DemoBench {
        let machine = MachineView {
            plugged: true,
            lid_bolted: true,
            level_mm: 210.0,
            water_c: 32.0,
            dial_position: 2,
            lamps: Lamps {
                code: 0x27,
                lock: true,
            },
            ..MachineView::default()
        };
        let load = |t| Pin::Wire(t, Side::Load);
        let reading = |s, mode, red, black, shown, live| Reading {
            at: Time::ZERO + Span::from_s(s),
            mode,
            red,
            black,
            grip: Grip::Clips,
            shown,
            meter_sound: true,
            live,
            rules_out: Vec::new(),
        };
        let readings = [
            reading(
                203,
                MeterMode::VoltsDc,
                Pin::BulkPlus,
                Pin::BulkMinus,
                Display::Value(0.8),
                false,
            ),
            reading(
                251,
                MeterMode::Ohms,
                load(Terminal::Pump1),
                load(Terminal::Pump2),
                Display::OverRange,
                false,
            ),
            reading(
                288,
                MeterMode::Ohms,
                load(Terminal::Cold1),
                load(Terminal::Cold2),
                Display::Value(856.0),
                false,
            ),
        ];
        let mut log = BenchLog::default();
        for reading in readings {
            log.push(LogEntry::Reading(reading));
        }
        log.push(LogEntry::Action {
            at: Time(6100),
            action: Action::NoteCode(27),
        });
        log.push(LogEntry::Event(Event {
            at: Time(31_000),
            what: Incident::OhmsOnLive,
        }));
        DemoBench {
            now: Time::ZERO,
            machine,
            cabinet_open: false,
            pulled: Vec::new(),
            probes: None,
            meter: None,
            held: None,
            parts: vec![ordered("C24-330".to_owned())],
            tries: demo_tries(),
            minutes: 18.0,
            finished: false,
            job: Arc::new(demo_job()),
            score: None,
            log,
        }
    }
}

impl Default for DemoBench {
    fn default() -> Self {
        DemoBench::new()
    }
}

impl BenchPort for DemoBench {
    fn history(&self) -> Entries<'_, (Time, &Action)> {
        self.log.actions()
    }

    fn step(&mut self) {
        self.now += Span(1);
        let t = self.now.seconds();
        let machine = &mut self.machine;
        machine.time_s = t;
        let swing = (t * 0.9).sin();
        machine.agitator_rev = 0.35 * swing;
        machine.basket_rev = t * 0.02;
        machine.motor_rpm = 600.0 * (t * 0.9).cos();
        let heard: &[Sound] = if t % 8.0 < 6.0 {
            &[Sound::PumpHum, Sound::AgitatorSwish]
        } else {
            &[Sound::LockHeld]
        };
        machine.sounds = heard.iter().copied().collect();
        self.minutes = 18.0 + t / 60.0;
    }

    fn act(&mut self, action: Action) -> Result<(), Refusal> {
        match action {
            Action::Plug => self.machine.plugged = true,
            Action::Unplug => {
                self.machine.plugged = false;
                self.machine.lamps = Default::default();
            }
            Action::OpenLid => self.machine.lid_open = true,
            Action::CloseLid => self.machine.lid_open = false,
            Action::Detent(turn) => {
                let by = if turn == Direction::Right { 1 } else { 23 };
                self.machine.dial_position = (self.machine.dial_position + by) % 24;
            }
            Action::Down(Button::Start) => self.machine.lamps.code = 0x96,
            Action::Down(Button::Stop) => self.machine.lamps.code = 0x27,
            Action::OpenCabinet => self.cabinet_open = true,
            Action::CloseCabinet => self.cabinet_open = false,
            Action::Pull(connector) => self.pulled.push(connector),
            Action::Seat(connector) => self.pulled.retain(|c| *c != connector),
            Action::Probe {
                mode,
                red,
                black,
                grip,
            } => {
                self.probes = Some((mode, red, black));
                self.meter = Some(Display::Value(14.2));
                self.log.push(LogEntry::Reading(Reading {
                    at: self.now,
                    mode,
                    red,
                    black,
                    grip,
                    shown: Display::Value(14.2),
                    meter_sound: true,
                    live: self.machine.plugged,
                    rules_out: Vec::new(),
                }));
            }
            Action::Inspect(component) => self.log.push(LogEntry::Found(Found {
                at: self.now,
                component,
                findings: vec![Finding::ImpellerStuck],
                rules_out: Vec::new(),
            })),
            Action::LiftProbes => {
                self.probes = None;
                self.meter = None;
            }
            Action::HoldDisplay => self.held = self.probes.map(|(mode, _, _)| mode),
            Action::ReleaseDisplay => self.held = None,
            Action::TestMeter => self.log.push(LogEntry::MeterTest(MeterTest {
                at: self.now,
                volts_ac: Display::Value(50.0),
                volts_dc: Display::Value(50.0),
                ohms: Display::Value(100.0),
            })),
            Action::Return(number) => {
                self.parts.retain(|p| p.fitted || p.number != number);
            }
            Action::Order(number) => self.parts.push(ordered(number)),
            Action::Fit(number) => match self.parts.iter_mut().find(|p| p.number == number) {
                Some(part) => part.fitted = true,
                None => return Err(Refusal::NotInHand(number)),
            },
            Action::NoteCode(_) => {
                let at = self.now;
                self.log.push(LogEntry::Action { at, action });
            }
            Action::Report(_) => {
                self.finished = true;
                self.score = Some(demo_score());
            }
            _ => {}
        }
        Ok(())
    }

    fn caution(&self, action: &Action) -> Option<Caution> {
        (matches!(action, Action::OpenCabinet) && self.machine.plugged).then_some(Caution::OpenLive)
    }

    fn view(&self) -> BenchView<'_> {
        let control = ControlView {
            tries: Tries::from(&self.tries[..]),
            ..self.machine.control
        };
        BenchView {
            machine: MachineView {
                control,
                ..self.machine
            },
            cabinet_open: self.cabinet_open,
            taps_shut: false,
            basket_empty: false,
            laundry_inside: true,
            outlet_tripped: false,
            pulled: &self.pulled,
            probes: self.probes,
            held: self.held,
            log: &self.log,
            parts: &self.parts,
            spent: 46.0,
            labour: 15.0,
            consumables: 0.0,
            bill: 61.0,
            minutes: self.minutes,
            waited_hours: 0.0,
            finished: self.finished,
        }
    }

    fn meter_shows(&mut self) -> Option<Display> {
        self.meter
    }

    fn job(&self) -> &Arc<Job> {
        &self.job
    }

    fn run(&mut self, step: &ScriptStep) -> Result<(), String> {
        match step {
            ScriptStep::Do(action) => self.act(action.clone()).map_err(|e| e.to_string()),
            _ => Ok(()),
        }
    }

    fn score(&self) -> Option<&Score> {
        self.score.as_ref()
    }
}
