//! Attempts by somebody who tries everything, recorded as a person's are.

use detent_content::{ContentLibrary, ScenarioSource};
use detent_simulation::interface::{Button, Component, Connector, Direction, Pin, Side, Terminal};
use detent_training::bench::script::{ScriptStep, entry_steps, reset_steps};
use detent_training::bench::{Action, Advice, Bench, Grip, MeterMode, Report, Verdict};
use detent_training::lesson::{Scenario, judge, set_up};
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

/// An attempt of about so many steps at `scenario_source`; the same seed gives the same attempt.
pub fn random_attempt(
    content_library: &ContentLibrary,
    scenario_source: &ScenarioSource,
    seed: u64,
    steps: usize,
) -> Recorded {
    let scenario = &scenario_source.scenario;
    let mut bench = set_up(scenario, &content_library.library(scenario), seed)
        .expect("the scenario fits its library");
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
    let looks = (0..bench.found().len()).step_by(2).collect();
    let report = Report {
        causes: vec![cause],
        advice: Advice::ALL[below(Advice::ALL.len())],
        part: Some(part),
        proof,
        looks,
        verdict: Verdict::CausesNamed,
    };
    bench
        .act(&Action::Report(report))
        .expect("a report can always be handed in");

    let header = Header::new(&scenario_source.file, &scenario_source.text, seed);
    recorded(&header, scenario, &bench)
}

/// What was done on `bench`, as it is recorded under `header`.
pub fn recorded(header: &Header, scenario: &Scenario, bench: &Bench) -> Recorded {
    let mut log = AttemptLog::begin(Vec::new(), header).expect("memory takes it");
    for (at, action) in bench.history().iter() {
        log.push(at, action).expect("memory takes it");
    }
    let score = judge(scenario, bench);
    let footer = Footer::of(bench, &score);
    Recorded {
        bytes: log.finish(&footer).expect("memory takes it"),
        footer,
        score: score.total(),
        actions: bench.history().len(),
    }
}

/// The next thing that comes to mind.
fn think(bench: &Bench, rng: &mut ChaCha8Rng) -> Vec<ScriptStep> {
    let mut below = |n: usize| rng.next_u32() as usize % n;
    let board = bench.machine().board();
    let button = board.panel.buttons[below(board.panel.buttons.len())];
    match below(22) {
        0..3 => vec![ScriptStep::Wait {
            s: 1 + below(90) as u64,
        }],
        3 => vec![ScriptStep::Turn {
            way: [Direction::Left, Direction::Right][below(2)],
            detents: 1 + below(9) as u8,
            every_ms: 60 + below(300) as u64,
        }],
        4 => vec![ScriptStep::Hold {
            button,
            ms: 30 + below(3500) as u64,
        }],
        5 => vec![ScriptStep::Tap(button)],
        6..9 => {
            let program = &board.programs[below(board.programs.len())];
            vec![
                ScriptStep::Do(Action::CloseLid),
                ScriptStep::Point {
                    to: program.position,
                    every_ms: 160,
                },
                ScriptStep::Tap(Button::Start),
                ScriptStep::Wait {
                    s: below(240) as u64,
                },
            ]
        }
        9..12 => {
            // Where the plug does not end a fault hold, its own way out comes first.
            let kept = Some(&board.resets).filter(|resets| resets.kept);
            let mut steps = kept.map(reset_steps).unwrap_or_default();
            steps.extend(entry_steps(&board.gesture));
            let item = &board.menu[below(board.menu.len())];
            steps.extend([
                ScriptStep::Wait { s: 1 },
                ScriptStep::Point {
                    to: item.position,
                    every_ms: 160,
                },
                ScriptStep::Wait { s: 1 },
                ScriptStep::Tap(Button::Start),
                ScriptStep::Wait {
                    s: below(120) as u64,
                },
            ]);
            steps
        }
        12 => vec![ScriptStep::Do(
            [Action::OpenLid, Action::CloseLid, Action::BailOut][below(3)].clone(),
        )],
        13 => vec![
            ScriptStep::Do(Action::Unplug),
            ScriptStep::Wait {
                s: below(80) as u64,
            },
            ScriptStep::Do(Action::Plug),
        ],
        14 => vec![
            ScriptStep::Do(Action::Unplug),
            ScriptStep::Do(Action::OpenCabinet),
            ScriptStep::Do(Action::Discharge),
        ],
        15 => vec![
            ScriptStep::Do(Action::LiftProbes),
            ScriptStep::Do(Action::CloseCabinet),
            ScriptStep::Do(Action::Plug),
        ],
        16 => {
            let component = Component::ALL[below(Component::ALL.len())];
            let connector = Connector::Load(component);
            vec![
                ScriptStep::Do(Action::Pull(connector.clone())),
                ScriptStep::Wait {
                    s: below(20) as u64,
                },
                ScriptStep::Do(Action::Seat(connector)),
            ]
        }
        20 => {
            let component = Component::ALL[below(Component::ALL.len())];
            vec![ScriptStep::Do(Action::Inspect(component))]
        }
        21 => {
            let component = Component::ALL[below(Component::ALL.len())];
            let shuts = (component == Component::Taps).then_some(ScriptStep::Do(Action::ShutTaps));
            let put_right = ScriptStep::Do(Action::PutRight(component));
            shuts.into_iter().chain([put_right]).collect()
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
                ScriptStep::Do(Action::TestMeter),
                ScriptStep::Do(Action::Probe {
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
                ScriptStep::Do(Action::Order(part.number.clone())),
                ScriptStep::Do(Action::Fit(part.number.clone())),
                ScriptStep::Do(Action::NoteCode(below(100) as u8)),
            ]
        }
    }
}
