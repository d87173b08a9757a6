//! A bench of made-up numbers, to look at the window without a machine behind it.

use super::port::*;
use crate::bench::{Action, BenchView, Caution, Display, Event, Happening, MeterMode, PartInHand, Reading, Refusal, Turn};
use crate::lesson::{Bilingual, Deduction, Dimension, DimensionScore, Score};
use crate::plant::{Button, Component, Connector, Pin, Side, Terminal};
use crate::units::{Span, Time};

/// Made-up bench.
pub struct DemoBench {
    now: Time,
    view: BenchView,
    job: Job,
    score: Option<Score>,
    tries: Vec<EntryTry>,
}

/// Offers nothing but [`DemoBench`].
pub struct DemoShop(Vec<Offer>);

fn both(en: &str, es: &str) -> Bilingual {
    Bilingual { en: en.to_owned(), es: es.to_owned() }
}

impl Default for DemoShop {
    fn default() -> Self {
        DemoShop(vec![
            Offer { title: both("The tub stays full", "La tina no se vacía"), goal: both("Prove the pump before you buy one.", "Demuestre la falla de la bomba antes de comprarla."), seed: 1 },
            Offer { title: both("It fills and stops", "Se llena y se detiene"), goal: both("One code, several suspects.", "Un código, varios sospechosos."), seed: 2 },
            Offer { title: both("Whatever the day brings", "Lo que traiga el día"), goal: both("A fault drawn at random.", "Una falla al azar."), seed: 3 },
        ])
    }
}

impl Shop for DemoShop {
    fn offers(&self) -> &[Offer] {
        &self.0
    }
    fn open(&self, _offer: usize, _seed: u64) -> Result<Box<dyn BenchPort>, String> {
        Ok(Box::new(DemoBench::new()))
    }
}

fn connector(label: &str, terminals: &[(Terminal, &str, &str, &str)]) -> ConnectorRow {
    ConnectorRow {
        connector: Connector::Board(label.to_owned()),
        label: label.to_owned(),
        pins: terminals
            .iter()
            .map(|(t, en, es, normal)| PinRow { pin: Pin::Wire(*t, Side::Board), name: both(en, es), normal: both(normal, normal) })
            .collect(),
    }
}

fn demo_job() -> Job {
    use Terminal as T;
    Job {
        title: both("The tub stays full", "La tina no se vacía"),
        complaint: both(
            "It washed fine on Monday. Now it hums a bit at the end and leaves the clothes swimming.",
            "El lunes lavó bien. Ahora zumba un poco al final y deja la ropa nadando.",
        ),
        budget: 180.0,
        par_minutes: 55.0,
        mains_v: 120,
        mains_hz: 60,
        live_tests_allowed: false,
        sheet: Sheet {
            board: "Marlow ring board".to_owned(),
            gesture: vec![
                GestureStep::Lid(true),
                GestureStep::Turn(Turn::Left, 4),
                GestureStep::Hold(Button::Stop, Span::from_ms(800)),
                GestureStep::Turn(Turn::Right, 2),
                GestureStep::Press(Button::Start),
            ],
            window: Span::from_ms(6000),
            menu: [(2, "Stored codes", "Códigos guardados"), (5, "Recalibrate", "Recalibrar"), (8, "Cold valve", "Válvula fría"), (11, "Hot valve", "Válvula caliente"), (14, "Drain pump", "Bomba de desagüe"), (17, "Motor", "Motor"), (20, "Clear codes", "Borrar códigos")]
                .into_iter()
                .map(|(position, en, es)| MenuRow { position, name: both(en, es) })
                .collect(),
            codes: vec![
                CodeRow { code: 13, name: both("Fill too long", "Llenado demasiado largo"), suspects: vec![Component::InletCold, Component::InletHot, Component::PressureSensor, Component::Harness, Component::Board] },
                CodeRow { code: 27, name: both("Drain too long", "Desagüe demasiado largo"), suspects: vec![Component::DrainPump, Component::DrainHose, Component::Harness, Component::Board] },
                CodeRow { code: 41, name: both("No speed pulses", "Sin pulsos de velocidad"), suspects: vec![Component::Motor, Component::RunCapacitor, Component::Belt, Component::Pickup] },
                CodeRow { code: 58, name: both("Lock not proven", "Cierre no confirmado"), suspects: vec![Component::LidLock, Component::Harness] },
            ],
            connectors: vec![
                connector("X1", &[(T::CordLine, "line in", "línea", "mains"), (T::CordNeutral, "neutral in", "neutro", "mains")]),
                connector("X2", &[(T::Cold1, "cold valve", "válvula fría", "850 Ω"), (T::Cold2, "cold return", "retorno", "850 Ω"), (T::Hot1, "hot valve", "válvula caliente", "850 Ω"), (T::Hot2, "hot return", "retorno", "850 Ω"), (T::Pump1, "drain pump", "bomba", "14 Ω"), (T::Pump2, "pump return", "retorno", "14 Ω")]),
                connector("X3", &[(T::MotorA, "winding A", "devanado A", "3 Ω"), (T::MotorB, "winding B", "devanado B", "3 Ω"), (T::MotorCommon, "common", "común", "3 Ω"), (T::Shift1, "shifter", "selector", "2.2 kΩ"), (T::Shift2, "shifter return", "retorno", "2.2 kΩ")]),
                connector("X4", &[(T::LockCoil1, "lock coil", "bobina", "900 Ω"), (T::LockCoil2, "lock return", "retorno", "900 Ω"), (T::LockLineIn, "locked line in", "línea", "OL"), (T::LockLineOut, "locked line out", "línea", "OL"), (T::LidSwitch1, "lid switch", "tapa", "0 Ω"), (T::LidSwitch2, "lid switch", "tapa", "0 Ω")]),
                connector("X5", &[(T::PressureSupply, "5 V", "5 V", "5 V"), (T::PressureGround, "ground", "tierra", "0 V"), (T::PressureOut, "level", "nivel", "0.5 V"), (T::Therm1, "thermistor", "termistor", "10 kΩ"), (T::Therm2, "thermistor", "termistor", "10 kΩ"), (T::PickupOut, "speed", "velocidad", "pulses")]),
            ],
        },
        parts: [("DT-4103", "Drain pump", "Bomba de desagüe", 46.0, 20.0, 0), ("DT-2207", "Cold inlet valve", "Válvula de agua fría", 31.0, 20.0, 0), ("DT-9001", "Control board", "Tarjeta de control", 189.0, 1440.0, 0), ("DT-3110", "Run capacitor", "Capacitor de marcha", 18.0, 20.0, 0), ("DT-5502", "Lid lock", "Cierre de tapa", 39.0, 20.0, 0), ("DT-6040", "Belt", "Correa", 14.0, 20.0, 0)]
            .into_iter()
            .map(|(number, en, es, price, wait, _)| PartRow { number: number.to_owned(), name: both(en, es), price, wait_minutes: wait })
            .collect(),
        causes: [("drain-pump.open-winding", Component::DrainPump, "Winding open", "Devanado abierto"), ("drain-pump.seized", Component::DrainPump, "Rotor seized", "Rotor trabado"), ("drain-hose.blocked", Component::DrainHose, "Blocked", "Obstruida"), ("board.pump-relay-open", Component::Board, "Pump relay stuck open", "Relé de la bomba abierto")]
            .into_iter()
            .map(|(id, component, en, es)| CauseRow { id: id.to_owned(), component, name: both(en, es) })
            .collect(),
    }
}

fn demo_score() -> Score {
    let lost = |s: u64, points, reason, args| Deduction { at: Time::ZERO + Span::from_s(s), points, reason, args };
    let row = |dimension, of, lost: Vec<Deduction>| DimensionScore { dimension, of, kept: of - lost.iter().map(|l| l.points).sum::<f64>(), lost };
    Score {
        dimensions: vec![
            row(Dimension::Entry, 15.0, vec![lost(74, 3.0, "lost-entry-tries", vec![("tries", "2".to_owned())])]),
            row(Dimension::Reading, 15.0, vec![]),
            row(Dimension::Reasoning, 25.0, vec![lost(640, 8.0, "lost-wrong-part", vec![("part", "DT-9001".to_owned())])]),
            row(Dimension::Safety, 20.0, vec![lost(310, 10.0, "lost-ohms-on-live", vec![])]),
            row(Dimension::Cost, 10.0, vec![lost(900, 4.0, "lost-over-budget", vec![("spent", "235".to_owned())])]),
            row(Dimension::Proof, 15.0, vec![]),
        ],
    }
}

fn demo_tries() -> Vec<EntryTry> {
    let mark = |ms, step| EntryMark { after: Span::from_ms(ms), step };
    let left = || GestureStep::Turn(Turn::Left, 1);
    let right = || GestureStep::Turn(Turn::Right, 1);
    let windows = vec![(Span::ZERO, Span::from_ms(6000))];
    vec![
        EntryTry {
            at: Time::ZERO + Span::from_s(61),
            marks: vec![mark(0, GestureStep::Lid(true)), mark(900, left()), mark(1150, left()), mark(1420, left()), mark(1700, left()), mark(2600, GestureStep::Hold(Button::Stop, Span::from_ms(520))), mark(4100, right()), mark(4400, right()), mark(5100, GestureStep::Press(Button::Start))],
            windows: windows.clone(),
            broken: Some((5, "rule-hold-too-short".to_owned())),
        },
        EntryTry {
            at: Time::ZERO + Span::from_s(74),
            marks: vec![mark(0, GestureStep::Lid(true)), mark(700, left()), mark(950, left()), mark(1220, left()), mark(1500, left()), mark(2300, GestureStep::Hold(Button::Stop, Span::from_ms(900))), mark(3900, right()), mark(4300, right()), mark(5000, GestureStep::Press(Button::Start))],
            windows,
            broken: None,
        },
    ]
}

impl DemoBench {
    /// Plugged in, half full, showing 27.
    pub fn new() -> DemoBench {
        let mut view = BenchView::default();
        view.machine.plugged = true;
        view.machine.lid_bolted = true;
        view.machine.level_mm = 210.0;
        view.machine.water_c = 32.0;
        view.machine.dial_position = 2;
        view.machine.lamps.arc = 0x27;
        view.machine.lamps.lock = true;
        view.spent = 46.0;
        view.minutes = 18.0;
        view.noted_codes = vec![(Time(6100), 27)];
        view.parts = vec![PartInHand { number: "DT-4103".to_owned(), fitted: false }];
        let load = |t| Pin::Wire(t, Side::Load);
        let reading = |s, mode, red, black, shown, live| Reading { at: Time::ZERO + Span::from_s(s), mode, red, black, shown, live };
        view.notebook = vec![
            reading(203, MeterMode::VoltsDc, Pin::BulkPlus, Pin::BulkMinus, Display::Value(0.8), false),
            reading(251, MeterMode::Ohms, load(Terminal::Pump1), load(Terminal::Pump2), Display::OverRange, false),
            reading(288, MeterMode::Ohms, load(Terminal::Cold1), load(Terminal::Cold2), Display::Value(856.0), false),
        ];
        view.events = vec![Event { at: Time(31_000), what: Happening::OhmsOnLive }];
        DemoBench { now: Time::ZERO, view, job: demo_job(), score: None, tries: demo_tries() }
    }
}

impl Default for DemoBench {
    fn default() -> Self {
        DemoBench::new()
    }
}

impl BenchPort for DemoBench {
    fn step(&mut self) {
        self.now += Span(1);
        let t = self.now.seconds();
        let machine = &mut self.view.machine;
        machine.time_s = t;
        let swing = (t * 0.9).sin();
        machine.agitator_rev = 0.35 * swing;
        machine.basket_rev = t * 0.02;
        machine.motor_rpm = 600.0 * (t * 0.9).cos();
        machine.sounds = if t % 8.0 < 6.0 { vec!["pump-hum", "agitator-swish"] } else { vec!["relay-click"] };
        self.view.minutes = 18.0 + t / 60.0;
    }

    fn act(&mut self, action: Action) -> Result<(), Refusal> {
        let view = &mut self.view;
        match action {
            Action::Plug => view.machine.plugged = true,
            Action::Unplug => {
                view.machine.plugged = false;
                view.machine.lamps = Default::default();
            }
            Action::OpenLid => view.machine.lid_open = true,
            Action::CloseLid => view.machine.lid_open = false,
            Action::Detent(turn) => {
                let by = if turn == Turn::Right { 1 } else { 23 };
                view.machine.dial_position = (view.machine.dial_position + by) % 24;
            }
            Action::Down(Button::Start) => view.machine.lamps.arc = 0x96,
            Action::Down(Button::Stop) => view.machine.lamps.arc = 0x27,
            Action::OpenCabinet => view.cabinet_open = true,
            Action::CloseCabinet => view.cabinet_open = false,
            Action::Pull(connector) => view.pulled.push(connector),
            Action::Seat(connector) => view.pulled.retain(|c| *c != connector),
            Action::Probe { mode, red, black } => {
                view.probes = Some((mode, red, black));
                view.meter = Some(Display::Value(14.2));
                view.notebook.push(Reading { at: self.now, mode, red, black, shown: Display::Value(14.2), live: view.machine.plugged });
            }
            Action::LiftProbes => {
                view.probes = None;
                view.meter = None;
            }
            Action::Order(number) => view.parts.push(PartInHand { number, fitted: false }),
            Action::Fit(number) => match view.parts.iter_mut().find(|p| p.number == number) {
                Some(part) => part.fitted = true,
                None => return Err(Refusal::NotInHand(number)),
            },
            Action::NoteCode(code) => view.noted_codes.push((self.now, code)),
            Action::Report(_) => {
                view.finished = true;
                self.score = Some(demo_score());
            }
            _ => {}
        }
        Ok(())
    }

    fn caution(&self, action: &Action) -> Option<Caution> {
        (matches!(action, Action::OpenCabinet) && self.view.machine.plugged).then_some("caution-cabinet-live")
    }

    fn view(&self) -> &BenchView {
        &self.view
    }

    fn job(&self) -> &Job {
        &self.job
    }

    fn score(&self) -> Option<&Score> {
        self.score.as_ref()
    }

    fn entry_tries(&self) -> &[EntryTry] {
        &self.tries
    }
}
