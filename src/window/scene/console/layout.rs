//! Where a board's panel puts its things on the console's face, from the board's data alone.
//!
//! Places are on the face's plane, m, from its middle.

use bevy::prelude::*;
use detent_simulation::controller::{LampPlacement, LampRules, Lamps, PanelRules, Selector, Signs};
use detent_simulation::interface::Button;
use std::f32::consts::PI;

/// Width and height of the face, m.
pub const FACE_SIZE: Vec2 = Vec2::new(0.575, 0.222);
/// Middle of a knob that stands among the lamps, and of one that stands beside them.
const KNOB_AMONG: Vec2 = Vec2::new(0.0, -0.026);
const KNOB_BESIDE: Vec2 = Vec2::new(0.172, -0.002);
/// Middle of the lamps where no knob is among them.
const LAMPS_LEFT: Vec2 = Vec2::new(-0.148, 0.004);
/// Radius of the arc of lamps round the dial, and how far below its lamp each number stands, m.
const ARC: f32 = 0.1125;
const ARC_MARK_BELOW: f32 = 0.0182;
/// How tall a printed number is, and one that says what others are times, m.
const MARK: f32 = 0.0082;
const TIMES_MARK: f32 = 0.0092;
/// Radii of the braces over the arc, and of what all weights below one are times.
const ARC_BRACE: f32 = 0.1285;
const ARC_TIMES: f32 = 0.1415;
/// Height and width of a digit, and the thickness of its bars, m.
const DIGIT: Vec2 = Vec2::new(0.058, 0.112);
const BAR: f32 = 0.0125;
/// Room beside lamps that stand freely, for their numbers, across and up, m.
const BESIDE_FREE: Vec2 = Vec2::new(0.040, 0.024);
/// A digit leans by so much of its height.
const SLANT: f32 = 0.09;

/// What the face is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Plate {
    /// Dark glass, the lamps behind it.
    Glass,
    /// Painted, with a dark window for digits.
    Painted,
    /// Bare steel.
    Steel,
}

/// The knob, if there is one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Knob {
    /// Its middle.
    pub middle: Vec2,
    /// Detents or positions in one turn.
    pub stops: u8,
    /// A rotary switch with a pointer; else a dial with an index mark.
    pub switch: bool,
}

impl Knob {
    /// The knob of a panel with this selector.
    pub fn of(selector: Selector) -> Option<Knob> {
        let (middle, switch) = match selector {
            Selector::Dial { .. } => (KNOB_AMONG, false),
            Selector::Switch { .. } => (KNOB_BESIDE, true),
            Selector::Steps => return None,
        };
        Some(Knob {
            middle,
            stops: selector.turn()?,
            switch,
        })
    }

    /// Direction of a stop from the middle: position 0 is up, then clockwise.
    pub fn towards(&self, stop: u8) -> Vec2 {
        Vec2::from_angle(PI / 2.0 - f32::from(stop) * 2.0 * PI / f32::from(self.stops.max(1)))
    }
}

/// How tall a printed mark is, m.
pub fn mark_height(text: &str) -> f32 {
    if text.starts_with('×') {
        TIMES_MARK
    } else {
        MARK
    }
}

/// Which lamp: a bit of the code lamps, or the lock lamp.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LampId {
    /// Bit of [`Lamps::code`].
    Code(u8),
    /// The lock lamp.
    Lock,
}

impl LampId {
    /// Lit now.
    pub fn lit(self, lamps: Lamps) -> bool {
        match self {
            LampId::Code(bit) => lamps.code & (1 << bit) != 0,
            LampId::Lock => lamps.lock,
        }
    }
}

/// The shape of a lamp's lens.
#[derive(Clone, Debug, PartialEq)]
pub enum Form {
    /// Round, with this radius.
    Round(f32),
    /// A bar of a digit: its corners, anticlockwise, from the lamp's middle.
    Bar(Vec<Vec2>),
}

/// One lamp.
#[derive(Clone, Debug, PartialEq)]
pub struct Lamp {
    /// Which.
    pub id: LampId,
    /// Its middle.
    pub at: Vec2,
    /// Its lens.
    pub form: Form,
}

/// The cap of a button.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cap {
    /// Round, with this radius.
    Round(f32),
    /// A soft pad of this size.
    Pad(Vec2),
    /// A square key of this size.
    Key(Vec2),
}

/// The whole face.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// What it is made of.
    pub plate: Plate,
    /// The dark window behind digits or a single lamp: middle and size.
    pub window: Option<(Vec2, Vec2)>,
    /// The knob.
    pub knob: Option<Knob>,
    /// Lamps, the lock lamp last.
    pub lamps: Vec<Lamp>,
    /// Printed numbers beside lamps, with their middles.
    pub marks: Vec<(String, Vec2)>,
    /// Printed lines over groups of lamps: middle of the arc, radius, and its two angles.
    pub braces: Vec<(Vec2, f32, f32, f32)>,
    /// Buttons.
    pub buttons: Vec<(Button, Vec2, Cap)>,
}

impl Layout {
    /// The face of a board with this panel and these lamps.
    pub fn of(panel: &PanelRules, rules: &LampRules) -> Layout {
        let knob = Knob::of(panel.selector);
        let among = knob.is_some_and(|knob| !knob.switch);
        let mut layout = Layout {
            plate: match rules.signs {
                Signs::Weights { .. } | Signs::Pictures { .. } | Signs::InTurn { .. } => {
                    Plate::Glass
                }
                Signs::Segments => Plate::Painted,
                Signs::Flashes { .. } => Plate::Steel,
            },
            window: None,
            knob,
            lamps: Vec::new(),
            marks: Vec::new(),
            braces: Vec::new(),
            buttons: Vec::new(),
        };
        match &rules.signs {
            Signs::Weights { tens, units } if among => layout.arc(tens, units),
            Signs::Weights { tens, units } => layout.rows(tens, units),
            Signs::Segments => layout.digits(among),
            Signs::Pictures { lamps, .. } | Signs::InTurn { lamps, .. } => {
                layout.placed(*lamps, &rules.placement, among);
            }
            Signs::Flashes { .. } => layout.single(among),
        }
        if rules.lock_lamp {
            layout.lamps.push(Lamp {
                id: LampId::Lock,
                at: match (&rules.signs, among) {
                    (Signs::Weights { .. }, true) => Vec2::new(-0.205, -0.012),
                    (_, true) => Vec2::new(-0.205, -0.062),
                    (_, false) => Vec2::new(-0.256, 0.014),
                },
                form: Form::Round(0.0105),
            });
        }
        for button in &panel.buttons {
            let (at, cap) = place(panel.selector, *button);
            layout.buttons.push((*button, at, cap));
        }
        layout
    }

    /// The place in the field that is free for lamps which lies nearest to a place on the face: hundredths of its width
    /// from the left, and of its height from the top.
    pub fn free_place(&self, at: Vec2) -> (u8, u8) {
        let (middle, field) = lamp_field(self.knob.is_some_and(|knob| !knob.switch));
        let share = (at - middle) * Vec2::new(1.0, -1.0) / (field - BESIDE_FREE) + 0.5;
        let hundredths = |share: f32| (share.clamp(0.0, 1.0) * 100.0).round() as u8;
        (hundredths(share.x), hundredths(share.y))
    }

    /// The buttons line by line, as the eye and the keys go through them.
    pub fn buttons_by_line(&self) -> Vec<(Button, Vec2, Cap)> {
        let mut buttons = self.buttons.clone();
        buttons.sort_by(|(_, a, _), (_, b, _)| b.y.total_cmp(&a.y).then(a.x.total_cmp(&b.x)));
        buttons
    }

    /// What an eye must take in to read a code: the window before the lamps, or else what has the middles of all of
    /// them in it; none without lamps.
    pub fn code_field(&self) -> Option<Rect> {
        let window = self
            .window
            .map(|(middle, size)| Rect::from_center_size(middle, size));
        let code = (self.lamps.iter()).filter(|lamp| matches!(lamp.id, LampId::Code(_)));
        window.or_else(|| {
            code.map(|lamp| Rect::from_center_size(lamp.at, Vec2::ZERO))
                .reduce(|field, lamp| field.union(lamp))
        })
    }

    /// Weighted lamps in an arc over the dial, tens left of units.
    fn arc(&mut self, tens: &[u8], units: &[u8]) {
        let step = 13.5f32.to_radians();
        let gap = 22.0f32.to_radians();
        let count = tens.len() + units.len();
        let half = (count.saturating_sub(2) as f32 * step + gap) / 2.0;
        for (place, weight) in tens.iter().chain(units).enumerate() {
            let bit = (count - 1 - place) as u8;
            let extra = if place >= tens.len() { gap - step } else { 0.0 };
            let out = Vec2::from_angle(PI / 2.0 + half - place as f32 * step - extra);
            self.lamps.push(Lamp {
                id: LampId::Code(bit),
                at: KNOB_AMONG + out * ARC,
                form: Form::Round(0.0084),
            });
            let at = KNOB_AMONG + out * ARC;
            let mark = (weight.to_string(), at - Vec2::new(0.0, ARC_MARK_BELOW));
            self.marks.push(mark);
        }
        for (sign, text) in [(1.0f32, "×10"), (-1.0, "×1")] {
            let near = PI / 2.0 + sign * gap / 2.0 - sign * 0.06;
            let far = PI / 2.0 + sign * (half + 0.06);
            let (from, to) = (near.min(far), near.max(far));
            self.braces.push((KNOB_AMONG, ARC_BRACE, from, to));
            // Over its brace: beside it, it would stand in line with the weight of the outermost lamp.
            let out = Vec2::from_angle((from + to) / 2.0) * ARC_TIMES;
            self.marks.push((text.to_owned(), KNOB_AMONG + out));
        }
    }

    /// Weighted lamps in two rows, tens over units.
    fn rows(&mut self, tens: &[u8], units: &[u8]) {
        for (row, weights, y) in [(0, tens, 0.042), (1, units, -0.038)] {
            for (n, weight) in weights.iter().enumerate() {
                let shift = if row == 0 { units.len() } else { 0 };
                let x = (n as f32 - (weights.len() as f32 - 1.0) / 2.0) * 0.042;
                let at = LAMPS_LEFT + Vec2::new(x, y);
                self.lamps.push(Lamp {
                    id: LampId::Code((shift + weights.len() - 1 - n) as u8),
                    at,
                    form: Form::Round(0.011),
                });
                let mark = (weight.to_string(), at - Vec2::new(0.0, 0.027));
                self.marks.push(mark);
            }
        }
    }

    /// Two digits of seven segments in a window.
    fn digits(&mut self, among: bool) {
        let (middle, scale) = if among {
            (Vec2::new(-0.195, 0.032), 0.55)
        } else {
            (LAMPS_LEFT, 1.0)
        };
        self.window = Some((middle, Vec2::new(0.176, 0.158) * scale));
        for (first, x) in [(7, -0.040), (0, 0.040)] {
            for (n, bar) in bars().into_iter().enumerate() {
                let centre = bar.iter().sum::<Vec2>() / bar.len() as f32;
                let at = middle + (Vec2::new(x, 0.0) + centre) * scale;
                let corners = bar.iter().map(|p| (*p - centre) * scale).collect();
                self.lamps.push(Lamp {
                    id: LampId::Code(first + n as u8),
                    at,
                    form: Form::Bar(corners),
                });
            }
        }
    }

    /// One large lamp in a window.
    fn single(&mut self, among: bool) {
        let (at, radius) = if among {
            (Vec2::new(-0.195, 0.032), 0.024)
        } else {
            (LAMPS_LEFT, 0.042)
        };
        self.window = Some((at, Vec2::splat(radius * 3.4)));
        self.lamps.push(Lamp {
            id: LampId::Code(0),
            at,
            form: Form::Round(radius),
        });
    }

    /// Lamps for pictures and for digits in turn; the first is the highest bit.
    fn placed(&mut self, count: u8, placement: &LampPlacement, among: bool) {
        let (
            LampPlacement::Column | LampPlacement::Grid { .. } | LampPlacement::Free(_),
            Some(places),
        ) = (placement, placement.places(count))
        else {
            return self.row(count, among);
        };
        let (middle, field) = lamp_field(among);
        let free = matches!(placement, LampPlacement::Free(_));
        let (columns, rows) = LampPlacement::columns_and_rows(&places);
        let cells = Vec2::new(f32::from(columns), f32::from(rows));
        let pitch = (field / cells).min_element().min(0.045);
        let radius = if free {
            0.0088
        } else {
            (pitch * 0.28).min(0.012)
        };
        for ((x, y), n) in places.into_iter().zip(0..count) {
            let (x, y) = (f32::from(x), f32::from(y));
            let from_middle = if free {
                (Vec2::new(x, y) / 100.0 - 0.5) * (field - BESIDE_FREE)
            } else {
                (Vec2::new(x, y) - (cells - 1.0) / 2.0) * pitch
            };
            let at = middle + from_middle * Vec2::new(1.0, -1.0);
            self.lamps.push(Lamp {
                id: LampId::Code(count - 1 - n),
                at,
                form: Form::Round(radius),
            });
            if free {
                let mark = at + Vec2::new(radius + 0.012, 0.0);
                self.marks.push(((n + 1).to_string(), mark));
            }
        }
    }

    /// A row of lamps for pictures; the leftmost is the highest bit.
    fn row(&mut self, count: u8, among: bool) {
        let (middle, width) = if among {
            (Vec2::new(0.0, 0.088), 0.40)
        } else {
            (LAMPS_LEFT, 0.19)
        };
        let pitch = (width / f32::from(count.max(1))).min(0.045);
        for n in 0..count {
            let x = (f32::from(n) - (f32::from(count) - 1.0) / 2.0) * pitch;
            self.lamps.push(Lamp {
                id: LampId::Code(count - 1 - n),
                at: middle + Vec2::new(x, 0.0),
                form: Form::Round((pitch * 0.28).min(0.012)),
            });
        }
    }
}

/// Middle and size of the field that is free for lamps, m.
fn lamp_field(among: bool) -> (Vec2, Vec2) {
    if among {
        (Vec2::new(-0.175, 0.034), Vec2::new(0.110, 0.120))
    } else {
        (LAMPS_LEFT, Vec2::new(0.150, 0.170))
    }
}

/// Corners of the segments a to g of one digit about its middle, leaning; clockwise from the top, then
/// the middle one.
fn bars() -> [Vec<Vec2>; 7] {
    let (w, h) = (DIGIT.x / 2.0 - BAR / 2.0, DIGIT.y / 2.0 - BAR / 2.0);
    let corner = |x: f32, y: f32| Vec2::new(x, y);
    let bar = |from: Vec2, to: Vec2| {
        let along = (to - from).normalize();
        let side = along.perp() * BAR / 2.0;
        let (a, b) = (from + along * BAR * 0.14, to - along * BAR * 0.14);
        let tip = along * BAR / 2.0;
        [
            a,
            a + tip - side,
            b - tip - side,
            b,
            b - tip + side,
            a + tip + side,
        ]
        .map(|p| p + Vec2::new(p.y * SLANT, 0.0))
        .to_vec()
    };
    [
        bar(corner(-w, h), corner(w, h)),
        bar(corner(w, h), corner(w, 0.0)),
        bar(corner(w, 0.0), corner(w, -h)),
        bar(corner(-w, -h), corner(w, -h)),
        bar(corner(-w, 0.0), corner(-w, -h)),
        bar(corner(-w, h), corner(-w, 0.0)),
        bar(corner(-w, 0.0), corner(w, 0.0)),
    ]
}

/// Where a button stands on a panel with this selector, and its cap.
fn place(selector: Selector, button: Button) -> (Vec2, Cap) {
    let at = |x, y| Vec2::new(x, y);
    match selector {
        Selector::Dial { .. } => {
            let spot = match button {
                Button::Start => at(0.205, 0.022),
                Button::Stop => at(0.205, -0.056),
                Button::More => at(0.128, 0.022),
                Button::Less => at(0.128, -0.056),
            };
            (spot, Cap::Round(0.0252))
        }
        Selector::Steps => match button {
            Button::More => (at(0.010, 0.038), Cap::Pad(at(0.070, 0.062))),
            Button::Less => (at(0.010, -0.038), Cap::Pad(at(0.070, 0.062))),
            Button::Start => (at(0.118, 0.0), Cap::Pad(at(0.090, 0.138))),
            Button::Stop => (at(0.222, 0.0), Cap::Pad(at(0.072, 0.138))),
        },
        Selector::Switch { .. } => {
            let spot = match button {
                Button::Start => at(-0.010, 0.040),
                Button::Stop => at(-0.010, -0.040),
                Button::More => at(0.060, 0.080),
                Button::Less => at(0.060, -0.080),
            };
            let size = match button {
                Button::Start | Button::Stop => at(0.076, 0.054),
                Button::More | Button::Less => at(0.034, 0.034),
            };
            (spot, Cap::Key(size))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_content::{builtin, read_board};
    use detent_simulation::controller::Board;

    /// A lamp that is put where it stands stays where it is.
    #[test]
    fn the_place_of_a_free_lamp_is_found_again() {
        let places: Vec<(u8, u8)> = vec![(0, 0), (100, 100), (37, 62), (5, 90)];
        for board in boards().iter().chain(&described()) {
            let rules = LampRules {
                signs: Signs::Pictures {
                    lamps: 4,
                    table: Vec::new(),
                    blinks: Vec::new(),
                    blink_ms: 0,
                },
                placement: LampPlacement::Free(places.clone()),
                ..board.lamps.clone()
            };
            let layout = Layout::of(&board.panel, &rules);
            let found = layout.lamps.iter().filter(|lamp| lamp.id != LampId::Lock);
            let found: Vec<(u8, u8)> = found.map(|lamp| layout.free_place(lamp.at)).collect();
            assert_eq!(found, places, "{}", board.id);
        }
        let layout = Layout::of(&boards()[0].panel, &boards()[0].lamps);
        assert_eq!(layout.free_place(Vec2::new(-9.0, 9.0)), (0, 0));
    }

    fn boards() -> Vec<Board> {
        builtin::in_folder("assets/boards")
            .map(|(path, text)| {
                read_board(&path, text.as_bytes()).expect("built-in boards are sound")
            })
            .collect()
    }

    /// Boards that lie beside the tests, with what no built-in one has.
    fn described() -> Vec<Board> {
        let files = [
            include_str!("../../../../tests/boards/kite.ron"),
            include_str!("../../../../tests/boards/six-field.ron"),
            include_str!("../../../../tests/boards/tower.ron"),
        ];
        let board = |text: &str| read_board("board.ron", text.as_bytes()).expect("a sound board");
        files.map(board).into()
    }

    /// Name, middle and half size of everything that stands out of the face; the size is a radius for
    /// what is round.
    fn things(layout: &Layout) -> Vec<(String, Vec2, Vec2, bool)> {
        let mut things = Vec::new();
        for (button, at, cap) in &layout.buttons {
            let (half, round) = match cap {
                Cap::Round(radius) => (Vec2::splat(*radius), true),
                Cap::Pad(size) | Cap::Key(size) => (*size / 2.0, false),
            };
            things.push((button.to_string(), *at, half, round));
        }
        if let Some(knob) = layout.knob {
            things.push(("knob".to_owned(), knob.middle, Vec2::splat(0.0585), true));
        }
        for lamp in &layout.lamps {
            let radius = match &lamp.form {
                Form::Round(radius) => *radius,
                Form::Bar(corners) => corners[1].distance(corners[5]) / 2.0,
            };
            things.push((format!("{:?}", lamp.id), lamp.at, Vec2::splat(radius), true));
        }
        things
    }

    #[test]
    fn everything_is_on_the_face_and_nothing_covers_another() {
        for board in boards().into_iter().chain(described()) {
            let layout = Layout::of(&board.panel, &board.lamps);
            let things = things(&layout);
            for (n, (name, at, half, round)) in things.iter().enumerate() {
                let reach = at.abs() + *half;
                let on = reach.cmple(FACE_SIZE / 2.0).all();
                assert!(on, "{}: {name} leaves the face", board.id);
                for (other, there, size, ring) in &things[n + 1..] {
                    let apart = if *round && *ring {
                        at.distance(*there) >= half.x + size.x
                    } else {
                        (*at - *there).abs().cmpge(*half + *size).any()
                    };
                    assert!(apart, "{}: {name} covers {other}", board.id);
                }
            }
        }
    }

    /// Numbers that stand in line are one number to the eye unless more than the widest character lies between them.
    #[test]
    fn no_two_marks_read_as_one_number() {
        for board in boards().into_iter().chain(described()) {
            let marks = Layout::of(&board.panel, &board.lamps).marks;
            let wide = |text: &str| text.chars().count() as f32 * mark_height(text);
            for (n, (one, at)) in marks.iter().enumerate() {
                let reach = at.abs() + Vec2::new(wide(one), mark_height(one)) / 2.0;
                let on = reach.cmple(FACE_SIZE / 2.0).all();
                assert!(on, "{}: {one} leaves the face", board.id);
                for (other, there) in &marks[n + 1..] {
                    let apart = (*at - *there).abs();
                    let free = apart.x - (wide(one) + wide(other)) / 2.0;
                    assert!(
                        apart.y > MARK || free > 1.5 * TIMES_MARK,
                        "{}: {one} and {other} read as one number",
                        board.id
                    );
                }
            }
        }
    }

    #[test]
    fn every_lamp_and_button_of_the_board_is_there_once() {
        for board in boards().into_iter().chain(described()) {
            let layout = Layout::of(&board.panel, &board.lamps);
            let mut bits: Vec<u8> = (layout.lamps.iter())
                .filter_map(|lamp| match lamp.id {
                    LampId::Code(bit) => Some(bit),
                    LampId::Lock => None,
                })
                .collect();
            bits.sort_unstable();
            assert_eq!(
                bits,
                (0..board.lamps.signs.lamps()).collect::<Vec<_>>(),
                "{}",
                board.id
            );
            let lock = layout.lamps.iter().any(|lamp| lamp.id == LampId::Lock);
            assert_eq!(lock, board.lamps.lock_lamp, "{}", board.id);
            let buttons: Vec<Button> = layout.buttons.iter().map(|(b, _, _)| *b).collect();
            assert_eq!(buttons, board.panel.buttons, "{}", board.id);
            let stops = layout.knob.map(|knob| knob.stops);
            assert_eq!(stops, board.panel.selector.turn(), "{}", board.id);
        }
    }

    #[test]
    fn no_two_boards_look_alike() {
        let faces: Vec<Layout> = (boards().iter())
            .map(|board| Layout::of(&board.panel, &board.lamps))
            .collect();
        assert!(faces.len() >= 3);
        for (n, one) in faces.iter().enumerate() {
            for other in &faces[n + 1..] {
                assert!(one.plate != other.plate && one.buttons != other.buttons);
            }
        }
    }

    /// Which segments make which digit is common knowledge, no source: a one has its bars on the right.
    #[test]
    fn the_bars_stand_where_the_bits_say() {
        let bars = bars();
        let middle = |n: usize| bars[n].iter().sum::<Vec2>() / 6.0;
        assert!(middle(0).y > 0.04 && middle(3).y < -0.04 && middle(6).y.abs() < 1e-4);
        assert!(middle(1).x > 0.01 && middle(1).y > 0.0 && middle(2).x > 0.01 && middle(2).y < 0.0);
        assert!(
            middle(4).x < -0.01 && middle(4).y < 0.0 && middle(5).x < -0.01 && middle(5).y > 0.0
        );
    }
}
