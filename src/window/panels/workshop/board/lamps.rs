//! How a board's lamps show a number, where they stand, and what they show in each mode.

use super::{count_ui, list_ui, seconds_ui};
use crate::board_workshop::BoardWorkshop;
use crate::panels::workshop::flag_ui;
use crate::panels::{PanelContext, kit};
use crate::scene::console::layout::{LampId, Layout};
use bevy_egui::egui::{TextEdit, Ui, vec2};
use detent_content::{Value, lamp_modes};
use detent_simulation::controller::{Board, LampPlacement, LampRules, Sign, SignReading, Signs};

/// Most lamps of a board.
const MOST: u8 = 16;
/// Longest time that a sign is shown, s.
const LONGEST_S: f64 = 20.0;

/// Whether lamps of this kind can stand elsewhere than is usual.
pub(super) fn can_be_placed(signs: &Signs) -> bool {
    match signs {
        Signs::Pictures { .. } | Signs::InTurn { .. } => true,
        Signs::Weights { .. } | Signs::Segments | Signs::Flashes { .. } => false,
    }
}

/// Draws it.
pub(super) fn lamps_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &mut BoardWorkshop,
    board: &mut Board,
) {
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-board-page-lamps"));
        let now = board.lamps.signs.key();
        let kinds = ["weights", "segments", "pictures", "flashes", "in-turn"]
            .map(|kind| (kind, context.text(&format!("workshop-board-signs-{kind}"))));
        if let Some(kind) = kit::choices(ui, now, kinds) {
            board.lamps.signs = usual_signs(kind, board);
            board.lamps.placement = LampPlacement::Usual;
        }
        signs_ui(ui, context, open, &mut board.lamps);
    });
    if can_be_placed(&board.lamps.signs) {
        kit::card(ui, |ui| placement_ui(ui, context, open, board));
    }
    kit::card(ui, |ui| modes_ui(ui, context, &mut board.lamps));
}

/// Signs of a kind to begin with.
fn usual_signs(kind: &str, board: &Board) -> Signs {
    match kind {
        "weights" => Signs::Weights {
            tens: vec![8, 4, 2, 1],
            units: vec![8, 4, 2, 1],
        },
        "pictures" => {
            // Each code by itself, as its number is in binary digits; people draw their own.
            let mut numbers: Vec<u8> = board.codes.iter().map(|code| code.code).collect();
            numbers.extend(0..=board.service.stored_codes);
            numbers.sort_unstable();
            numbers.dedup();
            let picture = |number: u8| match number {
                0 => 0x80,
                number => u16::from(number),
            };
            Signs::Pictures {
                lamps: 8,
                table: numbers.iter().map(|n| (*n, picture(*n))).collect(),
                blinks: Vec::new(),
                blink_ms: 0,
            }
        }
        "flashes" => Signs::Flashes {
            long_ms: 1100,
            short_ms: 350,
            gap_ms: 450,
            between_ms: 1500,
            pause_ms: 3500,
        },
        "in-turn" => {
            // Four lamps count, the first as five; the digit 0 is all of them, blinking.
            let counted = |digit: u16| Sign {
                lit: digit,
                blinks: 0,
            };
            let mut digits = vec![Sign {
                lit: 0,
                blinks: 0b1111,
            }];
            digits.extend((1..=9).map(counted));
            Signs::InTurn {
                lamps: 4,
                digits,
                digit_ms: 2200,
                gap_ms: 800,
                pause_ms: 3000,
                blink_ms: 440,
            }
        }
        _ => Signs::Segments,
    }
}

/// What the kind of signs asks for.
fn signs_ui(ui: &mut Ui, context: &PanelContext, open: &mut BoardWorkshop, rules: &mut LampRules) {
    let text = |key: &str| context.text(key);
    let count = rules.signs.lamps();
    match &mut rules.signs {
        Signs::Weights { tens, units } => {
            weights_ui(ui, context, "workshop-board-tens", tens);
            weights_ui(ui, context, "workshop-board-units", units);
        }
        Signs::Segments => {}
        Signs::Pictures {
            lamps,
            table,
            blinks,
            blink_ms,
        } => {
            count_ui(ui, text("workshop-board-lamp-count"), lamps, 1..=MOST);
            let number = open.number;
            let of = |list: &[(u8, u16)]| {
                let found = list.iter().find(|(n, _)| *n == number);
                found.map_or(0, |(_, lit)| *lit)
            };
            let mut sign = Sign {
                lit: of(&table[..]),
                blinks: of(&blinks[..]),
            };
            let name = [("number", Value::from(number))];
            ui.label(context.with("workshop-board-picture", &name));
            if sign_ui(ui, context, &mut sign, count) {
                for (list, picture) in [(table, sign.lit), (&mut *blinks, sign.blinks)] {
                    let place = list.iter().position(|(n, _)| *n == number);
                    match (place, picture) {
                        (Some(place), 0) => {
                            list.remove(place);
                        }
                        (Some(place), picture) => list[place].1 = picture,
                        (None, 0) => {}
                        (None, picture) => {
                            let place = list.iter().take_while(|(n, _)| *n < number).count();
                            list.insert(place, (number, picture));
                        }
                    }
                }
                if !blinks.is_empty() && *blink_ms == 0 {
                    *blink_ms = rules.blink_ms;
                }
            }
            if !blinks.is_empty() {
                seconds_ui(ui, text("workshop-board-blink"), blink_ms, LONGEST_S);
            }
        }
        Signs::Flashes {
            long_ms,
            short_ms,
            gap_ms,
            between_ms,
            pause_ms,
        } => {
            for (key, ms) in [
                ("workshop-board-flash-long", long_ms),
                ("workshop-board-flash-short", short_ms),
                ("workshop-board-flash-gap", gap_ms),
                ("workshop-board-between", between_ms),
                ("workshop-board-pause", pause_ms),
            ] {
                seconds_ui(ui, text(key), ms, LONGEST_S);
            }
        }
        Signs::InTurn {
            lamps,
            digits,
            digit_ms,
            gap_ms,
            pause_ms,
            blink_ms,
        } => {
            count_ui(ui, text("workshop-board-lamp-count"), lamps, 1..=MOST);
            for (key, ms) in [
                ("workshop-board-digit-time", digit_ms),
                ("workshop-board-between", gap_ms),
                ("workshop-board-pause", pause_ms),
                ("workshop-board-blink", blink_ms),
            ] {
                seconds_ui(ui, text(key), ms, LONGEST_S);
            }
            for (digit, sign) in digits.iter_mut().enumerate() {
                ui.push_id(digit, |ui| {
                    let name = [("digit", Value::from(digit))];
                    ui.label(context.with("workshop-board-digit", &name));
                    sign_ui(ui, context, sign, count);
                });
            }
        }
    }
}

/// Weights of the lamps of one place.
fn weights_ui(ui: &mut Ui, context: &PanelContext, key: &str, weights: &mut Vec<u8>) {
    ui.push_id(key, |ui| {
        let mut count = weights.len() as u8;
        count_ui(ui, context.text(key), &mut count, 1..=8);
        weights.resize(usize::from(count), 1);
        for (n, weight) in weights.iter_mut().enumerate() {
            let name = [("lamp", Value::from(n + 1))];
            count_ui(
                ui,
                context.with("workshop-board-weight", &name),
                weight,
                1..=9,
            );
        }
    });
}

/// Lamps of a sign, each dark, lit or blinking; whether one was changed.
fn sign_ui(ui: &mut Ui, context: &PanelContext, sign: &mut Sign, count: u8) -> bool {
    let mut changed = false;
    ui.horizontal_wrapped(|ui| {
        for n in 0..count.min(MOST) {
            let bit = 1_u16 << (count.min(MOST) - 1 - n);
            let (lit, blinks) = (sign.lit & bit != 0, sign.blinks & bit != 0);
            let key = match (lit, blinks) {
                (_, true) => "workshop-board-lamp-blinks",
                (true, false) => "workshop-board-lamp-lit",
                (false, false) => "workshop-board-lamp-dark",
            };
            let told = context.with(key, &[("lamp", Value::from(n + 1))]);
            if kit::choice(ui, lit || blinks, told).clicked() {
                changed = true;
                // Dark, lit, blinking, and dark again.
                let (lit, blinks) = match (lit, blinks) {
                    (_, true) => (0, 0),
                    (true, false) => (0, bit),
                    (false, false) => (bit, 0),
                };
                sign.lit = sign.lit & !bit | lit;
                sign.blinks = sign.blinks & !bit | blinks;
            }
        }
    });
    changed
}

/// How the lamps stand, without where.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Placed {
    Usual,
    Row,
    Column,
    Grid,
    Free,
}

fn placement_ui(ui: &mut Ui, context: &PanelContext, open: &mut BoardWorkshop, board: &mut Board) {
    kit::heading(ui, context.text("workshop-board-placement"));
    let now = match board.lamps.placement {
        LampPlacement::Usual => Placed::Usual,
        LampPlacement::Row => Placed::Row,
        LampPlacement::Column => Placed::Column,
        LampPlacement::Grid { .. } => Placed::Grid,
        LampPlacement::Free(_) => Placed::Free,
    };
    let all = [
        (Placed::Usual, "workshop-board-placed-usual"),
        (Placed::Row, "workshop-board-placed-row"),
        (Placed::Column, "workshop-board-placed-column"),
        (Placed::Grid, "workshop-board-placed-grid"),
        (Placed::Free, "workshop-board-placed-free"),
    ]
    .map(|(placed, key)| (placed, context.text(key)));
    let count = board.lamps.signs.lamps().clamp(1, MOST);
    if let Some(placed) = kit::choices(ui, now, all) {
        board.lamps.placement = match placed {
            Placed::Usual => LampPlacement::Usual,
            Placed::Row => LampPlacement::Row,
            Placed::Column => LampPlacement::Column,
            Placed::Grid => LampPlacement::Grid {
                columns: count.div_ceil(2),
            },
            Placed::Free => LampPlacement::Free(places_now(board, count)),
        };
    }
    match &mut board.lamps.placement {
        LampPlacement::Usual | LampPlacement::Row | LampPlacement::Column => {}
        LampPlacement::Grid { columns } => {
            count_ui(
                ui,
                context.text("workshop-board-columns"),
                columns,
                1..=count,
            );
        }
        LampPlacement::Free(places) => {
            // As many as there are lamps; a further one stands in the middle.
            places.resize(usize::from(count), (50, 50));
            ui.label(context.text("workshop-board-free"));
            let lamps = (0..count).map(|n| (n, (n + 1).to_string()));
            open.lamp = open.lamp.min(count - 1);
            if let Some(lamp) = kit::choices(ui, open.lamp, lamps) {
                open.lamp = lamp;
            }
            let place = &mut places[usize::from(open.lamp)];
            count_ui(
                ui,
                context.text("workshop-board-across"),
                &mut place.0,
                0..=100,
            );
            count_ui(
                ui,
                context.text("workshop-board-down"),
                &mut place.1,
                0..=100,
            );
        }
    }
}

/// Where the lamps stand now, as near as it can be told, no two on one place.
fn places_now(board: &Board, count: u8) -> Vec<(u8, u8)> {
    let layout = Layout::of(&board.panel, &board.lamps);
    let places = layout.lamps.iter().filter(|lamp| lamp.id != LampId::Lock);
    let places: Vec<(u8, u8)> = places.map(|lamp| layout.free_place(lamp.at)).collect();
    let too_near = |n: usize| {
        let (x, y) = places[n];
        let near = |(a, b): &(u8, u8)| x.abs_diff(*a) < 15 && y.abs_diff(*b) < 25;
        places[..n].iter().any(near)
    };
    if !(0..places.len()).any(too_near) {
        return places;
    }
    // Four beside each other, as many rows as are needed.
    let rows = count.div_ceil(4).max(2);
    let place = |n: u8| (10 + 26 * (n % 4), (n / 4) * (100 / (rows - 1)));
    (0..count).map(place).collect()
}

/// What is shown in a mode, without its pictures.
const READINGS: [&str; 9] = [
    "dark",
    "all",
    "number",
    "number-and",
    "bar",
    "blink",
    "still",
    "turns",
    "letters",
];

fn reading_key(reading: SignReading) -> &'static str {
    match reading {
        SignReading::Dark => "dark",
        SignReading::All => "all",
        SignReading::Number => "number",
        SignReading::NumberAnd(_) => "number-and",
        SignReading::Bar => "bar",
        SignReading::Blink => "blink",
        SignReading::Still(_) => "still",
        SignReading::Turns(..) => "turns",
        SignReading::Letters(..) => "letters",
    }
}

fn reading_of(key: &str) -> SignReading {
    match key {
        "all" => SignReading::All,
        "number" => SignReading::Number,
        "number-and" => SignReading::NumberAnd(0),
        "bar" => SignReading::Bar,
        "blink" => SignReading::Blink,
        "still" => SignReading::Still(1),
        "turns" => SignReading::Turns(1, 0),
        "letters" => SignReading::Letters('E', '-'),
        _ => SignReading::Dark,
    }
}

fn modes_ui(ui: &mut Ui, context: &PanelContext, rules: &mut LampRules) {
    kit::heading(ui, context.text("workshop-board-modes"));
    let lock = context.text("workshop-board-lock-lamp");
    if let Some(lock) = flag_ui(ui, lock, rules.lock_lamp) {
        rules.lock_lamp = lock;
    }
    // Two digits can show letters; of lamps only pictures can be made.
    let segments = matches!(rules.signs, Signs::Segments);
    let all: Vec<(&str, String)> = (READINGS.into_iter())
        .filter(|key| *key != "letters" || segments)
        .map(|key| (key, context.text(&format!("workshop-board-shows-{key}"))))
        .collect();
    let count = rules.signs.lamps().clamp(1, MOST);
    for (mode, shows) in lamp_modes(rules) {
        let of = match mode {
            "idle" => &mut rules.idle,
            "program" => &mut rules.program,
            "hold" => &mut rules.hold,
            "service" => &mut rules.service,
            "test" => &mut rules.test,
            _ => &mut rules.recalibration,
        };
        let name = context.text(&format!("lamps-{mode}"));
        if let Some(key) = list_ui(ui, mode, &name, reading_key(shows), &all) {
            *of = reading_of(key);
        }
        ui.push_id(mode, |ui| match of {
            SignReading::NumberAnd(one) | SignReading::Still(one) => {
                picture_ui(ui, context, one, count);
            }
            SignReading::Turns(one, other) => {
                picture_ui(ui, context, one, count);
                ui.push_id("then", |ui| picture_ui(ui, context, other, count));
            }
            SignReading::Letters(left, right) => letters_ui(ui, context, left, right),
            SignReading::Dark
            | SignReading::All
            | SignReading::Number
            | SignReading::Bar
            | SignReading::Blink => {}
        });
    }
    let blink = context.text("workshop-board-blink");
    seconds_ui(ui, blink, &mut rules.blink_ms, LONGEST_S);
    let turns = context.text("workshop-board-turns");
    seconds_ui(ui, turns, &mut rules.turns_ms, LONGEST_S);
}

/// Two characters on seven segments; one that is left out is dark.
fn letters_ui(ui: &mut Ui, context: &PanelContext, left: &mut char, right: &mut char) {
    ui.horizontal(|ui| {
        let mut text: String = [*left, *right].iter().collect();
        let edit = TextEdit::singleline(&mut text)
            .char_limit(2)
            .desired_width(48.0)
            .min_size(vec2(0.0, 28.0));
        let edit = ui.add(edit);
        let label = ui.label(context.text("workshop-board-letters"));
        if edit.labelled_by(label.id).changed() {
            let mut typed = text.chars().chain([' ', ' ']);
            [*left, *right] = [(); 2].map(|()| typed.next().unwrap_or(' '));
        }
    });
}

/// Lamps of a picture, each dark or lit.
fn picture_ui(ui: &mut Ui, context: &PanelContext, picture: &mut u16, count: u8) {
    ui.horizontal_wrapped(|ui| {
        for n in 0..count {
            let bit = 1_u16 << (count - 1 - n);
            let lit = *picture & bit != 0;
            let key = match lit {
                true => "workshop-board-lamp-lit",
                false => "workshop-board-lamp-dark",
            };
            let told = context.with(key, &[("lamp", Value::from(n + 1))]);
            if kit::choice(ui, lit, told).clicked() {
                *picture ^= bit;
            }
        }
    });
}
