//! The entry gesture as a timing diagram: a lane for each thing that is moved, a column for each step, and the
//! windows of time; the same in words below.

use super::canvas::{Anchor, Area, Canvas, SHADE};
use super::document::{Sheet, invented};
use super::draft::{BODY, Draft, NOTE, SMALL, STRONG};
use detent_content::{Texts, Value};
use detent_simulation::controller::{GestureStep, LidMove, Selector};
use detent_simulation::interface::{Button, Direction};

/// What is moved.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Lane {
    Plug,
    Knob,
    Press(Button),
    Lid,
}

const NAME: f32 = 78.0;
const REST: f32 = 46.0;
const HEAD: f32 = 20.0;
const HIGH: f32 = 36.0;
const FOOT: f32 = 26.0;
/// How far a line is raised while something is pressed, open or plugged in.
const RISE: f32 = 15.0;

fn lane_of(step: &GestureStep) -> Vec<Lane> {
    match *step {
        GestureStep::Turn { .. } => vec![Lane::Knob],
        GestureStep::Press { button, .. }
        | GestureStep::Hold { button, .. }
        | GestureStep::Push { button, .. }
        | GestureStep::Release { button, .. } => vec![Lane::Press(button)],
        GestureStep::Lid { .. } => vec![Lane::Lid],
        GestureStep::Together {
            buttons: (one, other),
            ..
        } => vec![Lane::Press(one), Lane::Press(other)],
        GestureStep::Pause { .. } => Vec::new(),
        GestureStep::PowerUp { holding, .. } => {
            let held = holding.map(Lane::Press);
            [Lane::Plug].into_iter().chain(held).collect()
        }
    }
}

fn seconds(texts: &Texts, ms: u32) -> String {
    format!(
        "{}\u{a0}s",
        texts.digits((f64::from(ms) / 1000.0).to_string())
    )
}

/// A step in words, with its limits of time.
fn words(texts: &Texts, step: &GestureStep) -> String {
    let mut told = texts.gesture_step(step);
    let mut limit = |key: &str, ms: u32| {
        let value = Value::from(f64::from(ms) / 1000.0);
        told = format!("{told} {}", texts.with(key, &[("seconds", value)]));
    };
    match *step {
        GestureStep::Press { max_ms, .. } => limit("paper-no-longer", max_ms),
        GestureStep::Release {
            min_ms,
            window_ms: None,
            ..
        } if min_ms > 0 => limit("paper-not-sooner", min_ms),
        _ => {}
    }
    told
}

pub(super) fn gesture(draft: &mut Draft, sheet: &Sheet<'_>) {
    let (texts, board) = (sheet.texts, sheet.library.board);
    let gesture = &board.gesture;
    draft.page();
    draft.heading(2, &texts.get("sheet-entry"), 150.0);
    invented(draft, sheet);
    for before in texts.before_gesture(gesture) {
        draft.paragraph(&before, BODY);
    }
    let told: Vec<String> = gesture
        .steps
        .iter()
        .map(|step| words(texts, step))
        .collect();
    let mut lanes: Vec<Lane> = Vec::new();
    for lane in gesture.steps.iter().flat_map(lane_of) {
        if !lanes.contains(&lane) {
            lanes.push(lane);
        }
    }
    let within = Value::from(f64::from(gesture.within_ms) / 1000.0);
    let within = texts.with("sheet-entry-window", &[("seconds", within)]);
    let alt = format!("{}. {within}", told.join("; "));
    let height = HEAD + HIGH * lanes.len() as f32 + FOOT;
    let from_power = matches!(gesture.steps.first(), Some(GestureStep::PowerUp { .. }));
    draft.figure(&alt, height, |canvas, area| {
        let chart = Chart {
            area,
            steps: &gesture.steps,
            lanes: &lanes,
            texts,
            selector: board.panel.selector,
        };
        chart.draw(canvas);
        chart.brackets(
            canvas,
            gesture.within_ms,
            (!from_power).then_some(gesture.rest_ms),
        );
    });
    let numbered: Vec<(Option<String>, String)> = (told.into_iter().enumerate())
        .map(|(n, words)| (Some(format!("{}.", n + 1)), words))
        .collect();
    draft.list(&numbered, 1, BODY);
    draft.paragraph(&within, STRONG);
    for note in texts.gesture_notes(gesture) {
        draft.paragraph(&note, BODY);
    }
    if from_power {
        draft.paragraph(&texts.get("sheet-entry-again"), BODY);
    } else {
        let rest = Value::from(f64::from(gesture.rest_ms) / 1000.0);
        draft.paragraph(&texts.with("sheet-entry-rest", &[("seconds", rest)]), BODY);
    }
    if let Selector::Dial { .. } = board.panel.selector {
        draft.paragraph(&texts.get("sheet-entry-skip"), BODY);
    }
    draft.paragraph(&texts.get("sheet-entry-click"), BODY);
    if let Some(way) = texts.out_of_hold(&board.resets) {
        let way = [("way", Value::from(way))];
        draft.paragraph(&texts.with("sheet-entry-hold", &way), BODY);
    }
}

struct Chart<'a> {
    area: Area,
    steps: &'a [GestureStep],
    lanes: &'a [Lane],
    texts: &'a Texts,
    selector: Selector,
}

impl Chart<'_> {
    fn from(&self) -> f32 {
        self.area.left + NAME + REST
    }

    fn pitch(&self) -> f32 {
        (self.area.right() - self.from() - 8.0) / self.steps.len().max(1) as f32
    }

    /// Where a share of a step's column lies.
    fn x(&self, step: usize, share: f32) -> f32 {
        self.from() + self.pitch() * (step as f32 + share)
    }

    /// The lower line of a lane.
    fn low(&self, lane: usize) -> f32 {
        self.area.top + HEAD + HIGH * (lane as f32 + 1.0) - 6.0
    }

    fn draw(&self, canvas: &mut Canvas<'_>) {
        let bottom = self.low(self.lanes.len() - 1) + 6.0;
        for n in 0..=self.steps.len() {
            let x = self.x(n, 0.0);
            canvas.dashed(&[(x, self.area.top + 4.0), (x, bottom)], 0.5);
        }
        for n in 0..self.steps.len() {
            let number = (self.x(n, 0.5), self.area.top + 13.0);
            canvas.text(number, Anchor::Middle, STRONG, &(n + 1).to_string());
        }
        for (row, lane) in self.lanes.iter().enumerate() {
            let low = self.low(row);
            let name = match lane {
                Lane::Plug => self.texts.get("paper-lane-plug"),
                Lane::Knob => self.texts.get("paper-lane-knob"),
                Lane::Press(button) => self.texts.button(*button),
                Lane::Lid => self.texts.get("paper-lane-lid"),
            };
            let at = (self.area.left, low - RISE / 2.0);
            canvas.block(at, NAME - 8.0, Anchor::Left, SMALL, &name);
            match lane {
                Lane::Knob => self.knob(canvas, low),
                Lane::Press(button) => self.button(canvas, low, *button),
                Lane::Plug | Lane::Lid => self.level(canvas, low, *lane),
            }
        }
    }

    /// Turns: an arrow to the left or right, and how many detents.
    fn knob(&self, canvas: &mut Canvas<'_>, low: f32) {
        let y = low - 6.0;
        canvas.line(&[(self.from() - REST, low), (self.area.right(), low)], 0.6);
        for (n, step) in self.steps.iter().enumerate() {
            let GestureStep::Turn { to, detents, .. } = *step else {
                continue;
            };
            let (a, b) = (self.x(n, 0.14), self.x(n, 0.86));
            let ends = match to {
                Direction::Left => [(b, y), (a, y)],
                Direction::Right => [(a, y), (b, y)],
            };
            canvas.arrow(&ends, 1.6);
            let told = match self.selector.turn() {
                Some(turn) => format!("{detents} / {turn}"),
                None => detents.to_string(),
            };
            let over = (self.x(n, 0.5), y - 6.0);
            canvas.text(over, Anchor::Middle, SMALL, &told);
        }
    }

    /// A button's line: raised while it is down.
    fn button(&self, canvas: &mut Canvas<'_>, low: f32, of: Button) {
        let high = low - RISE;
        let mut line = vec![(self.from() - REST, low)];
        let mut blocks: Vec<(f32, f32)> = Vec::new();
        let mut labels: Vec<(f32, String)> = Vec::new();
        let mut pressed: Option<f32> = None;
        for (n, step) in self.steps.iter().enumerate() {
            match *step {
                GestureStep::Press {
                    button,
                    times,
                    max_ms,
                    ..
                } if button == of => {
                    let times = f32::from(times.max(1));
                    for i in 0..times as usize {
                        let wide = 0.7 / times;
                        let from = 0.15 + wide * i as f32;
                        blocks.push((self.x(n, from + wide * 0.12), self.x(n, from + wide * 0.88)));
                    }
                    labels.push((
                        self.x(n, 0.5),
                        format!("≤\u{a0}{}", seconds(self.texts, max_ms)),
                    ));
                }
                GestureStep::Hold {
                    button,
                    min_ms,
                    max_ms,
                    ..
                } if button == of => {
                    blocks.push((self.x(n, 0.08), self.x(n, 0.92)));
                    let low = self.texts.digits((f64::from(min_ms) / 1000.0).to_string());
                    let told = format!("{low}–{}", seconds(self.texts, max_ms));
                    labels.push((self.x(n, 0.5), told));
                }
                GestureStep::Push { button, .. } if button == of => pressed = Some(self.x(n, 0.4)),
                GestureStep::Together {
                    buttons: (one, other),
                    min_ms,
                    max_ms,
                    ..
                } if one == of || other == of => {
                    blocks.push((self.x(n, 0.08), self.x(n, 0.92)));
                    let low = self.texts.digits((f64::from(min_ms) / 1000.0).to_string());
                    let told = format!("{low}–{}", seconds(self.texts, max_ms));
                    labels.push((self.x(n, 0.5), told));
                }
                GestureStep::PowerUp { holding, .. } if holding == Some(of) => {
                    pressed = Some(self.from() - 12.0);
                }
                GestureStep::Release { button, min_ms, .. } if button == of => {
                    let from = pressed.take().unwrap_or(self.from());
                    blocks.push((from, self.x(n, 0.5)));
                    if min_ms > 0 {
                        labels.push((
                            self.x(n, 0.5),
                            format!("≥\u{a0}{}", seconds(self.texts, min_ms)),
                        ));
                    }
                }
                _ => {}
            }
        }
        blocks.extend(pressed.map(|from| (from, self.area.right() - 4.0)));
        for (from, to) in &blocks {
            let area = Area {
                left: *from,
                top: high,
                width: to - from,
                height: RISE,
            };
            canvas.rect(area, Some(SHADE), None);
            line.extend([(*from, low), (*from, high), (*to, high), (*to, low)]);
        }
        line.push((self.area.right(), low));
        canvas.line(&line, 1.3);
        for (x, label) in labels {
            canvas.text((x, high - 3.0), Anchor::Middle, SMALL, &label);
        }
    }

    /// The lid, or the plug: raised while it is open, or plugged in.
    fn level(&self, canvas: &mut Canvas<'_>, low: f32, lane: Lane) {
        let high = low - RISE;
        let mut y = low;
        let mut line = vec![(self.from() - REST, y)];
        for (n, step) in self.steps.iter().enumerate() {
            let to = match (*step, lane) {
                (
                    GestureStep::Lid {
                        to: LidMove::Up, ..
                    },
                    Lane::Lid,
                ) => high,
                (
                    GestureStep::Lid {
                        to: LidMove::Down, ..
                    },
                    Lane::Lid,
                ) => low,
                (GestureStep::PowerUp { .. }, Lane::Plug) => high,
                _ => continue,
            };
            line.extend([(self.x(n, 0.4), y), (self.x(n, 0.6), to)]);
            y = to;
        }
        line.push((self.area.right(), y));
        canvas.line(&line, 1.3);
        let words = match lane {
            Lane::Lid => ["paper-lid-open", "paper-lid-closed"],
            Lane::Plug | Lane::Knob | Lane::Press(_) => ["paper-plug-in", "paper-plug-out"],
        };
        let x = self.from() - REST + 2.0;
        canvas.text(
            (x, low - 3.0),
            Anchor::Left,
            NOTE,
            &self.texts.get(words[1]),
        );
        let raised = line
            .windows(2)
            .find(|two| two[0].1 == high && two[1].1 == high);
        if let Some([from, to]) = raised {
            // Beside the border between two steps, not on it.
            let middle = ((from.0 + to.0) / 2.0 - 2.0, high - 3.0);
            canvas.text(middle, Anchor::Right, NOTE, &self.texts.get(words[0]));
        }
    }

    /// The quiet time before, and the time for all of it.
    fn brackets(&self, canvas: &mut Canvas<'_>, within_ms: u32, rest_ms: Option<u32>) {
        let y = self.low(self.lanes.len() - 1) + 9.0;
        let mut bracket = |from: f32, to: f32, told: &str| {
            canvas.line(&[(from, y - 4.0), (from, y), (to, y), (to, y - 4.0)], 0.9);
            canvas.text(((from + to) / 2.0, y + 11.0), Anchor::Middle, SMALL, told);
        };
        let (from, to) = (self.from(), self.x(self.steps.len(), 0.0));
        bracket(
            from,
            to,
            &format!("≤\u{a0}{}", seconds(self.texts, within_ms)),
        );
        if let Some(rest) = rest_ms {
            bracket(
                from - REST + 4.0,
                from - 3.0,
                &format!("≥\u{a0}{}", seconds(self.texts, rest)),
            );
        }
    }
}
