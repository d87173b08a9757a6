//! Attempts by somebody who tries everything, recorded as a person's are.

use detent_content::{Shelf, Titled};
use detent_simulation::interface::{Button, Component, Connector, Direction, Pin, Side, Terminal};
use detent_training::bench::script::{Step, entry_steps};
use detent_training::bench::{Action, Advice, Bench, Grip, MeterMode, Report, Verdict};
use detent_training::lesson::{judge, set_up};
use detent_training::record::{AttemptLog, Footer, Header};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// Something done in a recorded attempt, and how it ended.
pub struct Recorded {
    /// The attempt as its file would hold it.
    pub bytes: Vec<u8>,
    /// Where it ended.
    pub footer: Footer,
    /// Points.
    pub score: f64,
    /// Actions in it.
    pub actions: usize,
}

/// An attempt of about so many steps at `titled`; the same seed gives the same attempt.
pub fn random_attempt(shelf: &Shelf, titled: &Titled, seed: u64, steps: usize) -> Recorded {
    let scenario = &titled.scenario;
    let mut bench =
        set_up(scenario, &shelf.library(scenario), seed).expect("the scenario fits its library");
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    for _ in 0..steps {
        for step in think(&bench, &mut rng) {
            // What is not possible is refused and leaves no trace.
            let _ = step.run(&mut bench);
        }
    }
    let mut below = |n: usize| rng.next_u32() as usize % n;
    let cause = bench.modes()[below(bench.modes().len())].id.clone();
    let part = bench.counter()[below(bench.counter().len())].number.clone();
    let proof = (0..bench.notebook().len()).step_by(2).collect();
    let report = Report {
        causes: vec![cause],
        advice: Advice::ALL[below(Advice::ALL.len())],
        part: Some(part),
        proof,
        verdict: Verdict::CausesNamed,
    };
    bench
        .act(&Action::Report(report))
        .expect("a report can always be handed in");

    let header = Header::new(&titled.file, &titled.text, seed);
    let mut log = AttemptLog::begin(Vec::new(), &header).expect("memory takes it");
    for (at, action) in bench.history().iter() {
        log.push(at, action).expect("memory takes it");
    }
    let score = judge(scenario, &bench);
    let footer = Footer::of(&bench, &score);
    Recorded {
        bytes: log.finish(&footer).expect("memory takes it"),
        footer,
        score: score.total(),
        actions: bench.history().len(),
    }
}

/// The next thing that comes to mind.
fn think(bench: &Bench, rng: &mut ChaCha8Rng) -> Vec<Step> {
    let mut below = |n: usize| rng.next_u32() as usize % n;
    let board = bench.machine().board();
    let button = board.panel.buttons[below(board.panel.buttons.len())];
    match below(22) {
        0..3 => vec![Step::Wait {
            s: 1 + below(90) as u64,
        }],
        3 => vec![Step::Turn {
            way: [Direction::Left, Direction::Right][below(2)],
            detents: 1 + below(9) as u8,
            every_ms: 60 + below(300) as u64,
        }],
        4 => vec![Step::Hold {
            button,
            ms: 30 + below(3500) as u64,
        }],
        5 => vec![Step::Tap(button)],
        6..9 => {
            let program = &board.programs[below(board.programs.len())];
            vec![
                Step::Do(Action::CloseLid),
                Step::Point {
                    to: program.position,
                    every_ms: 160,
                },
                Step::Tap(Button::Start),
                Step::Wait {
                    s: below(240) as u64,
                },
            ]
        }
        9..12 => {
            let mut steps = entry_steps(&board.gesture);
            let item = &board.menu[below(board.menu.len())];
            steps.extend([
                Step::Wait { s: 1 },
                Step::Point {
                    to: item.position,
                    every_ms: 160,
                },
                Step::Wait { s: 1 },
                Step::Tap(Button::Start),
                Step::Wait {
                    s: below(120) as u64,
                },
            ]);
            steps
        }
        12 => vec![Step::Do(
            [Action::OpenLid, Action::CloseLid, Action::BailOut][below(3)].clone(),
        )],
        13 => vec![
            Step::Do(Action::Unplug),
            Step::Wait {
                s: below(80) as u64,
            },
            Step::Do(Action::Plug),
        ],
        14 => vec![
            Step::Do(Action::Unplug),
            Step::Do(Action::OpenCabinet),
            Step::Do(Action::Discharge),
        ],
        15 => vec![
            Step::Do(Action::LiftProbes),
            Step::Do(Action::CloseCabinet),
            Step::Do(Action::Plug),
        ],
        16 => {
            let component = Component::ALL[below(Component::ALL.len())];
            let connector = Connector::Load(component);
            vec![
                Step::Do(Action::Pull(connector.clone())),
                Step::Wait {
                    s: below(20) as u64,
                },
                Step::Do(Action::Seat(connector)),
            ]
        }
        20 => {
            let component = Component::ALL[below(Component::ALL.len())];
            vec![Step::Do(Action::Inspect(component))]
        }
        21 => {
            let component = Component::ALL[below(Component::ALL.len())];
            vec![Step::Do(Action::PutRight(component))]
        }
        17 | 18 => {
            let modes = [
                MeterMode::Ohms,
                MeterMode::VoltsAc,
                MeterMode::VoltsDc,
                MeterMode::AmpsClamp,
                MeterMode::Hertz,
                MeterMode::Continuity,
                MeterMode::VoltsLowZ,
                MeterMode::Microfarads,
            ];
            let mut pin = || {
                let terminal = Terminal::ALL[below(Terminal::ALL.len())];
                Pin::Wire(terminal, Side::ALL[below(Side::ALL.len())])
            };
            let (red, black) = (pin(), pin());
            let mode = modes[below(modes.len())];
            let grip = [Grip::Clips, Grip::Fingers][below(2)];
            vec![
                Step::Do(Action::TestMeter),
                Step::Do(Action::Probe {
                    mode,
                    red,
                    black,
                    grip,
                }),
            ]
        }
        _ => {
            let part = &bench.counter()[below(bench.counter().len())];
            vec![
                Step::Do(Action::Order(part.number.clone())),
                Step::Do(Action::Fit(part.number.clone())),
                Step::Do(Action::NoteCode(below(100) as u8)),
            ]
        }
    }
}
