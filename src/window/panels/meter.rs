//! The meter, the notebook of readings and the codes read.

use super::{Face, kit, look};
use crate::state::Spot;
use crate::tokens as t;
use bevy_egui::egui::{self, Align2, CornerRadius, RichText, Stroke, StrokeKind, Ui, vec2};
use detent_simulation::interface::{Component as Part, Connector, Pin, Side, Terminal};
use detent_training::bench::{Action, Display, Grip, MeterMode, Reading, meter};

/// The knob's settings, as they stand in two rows.
const MODES: [[MeterMode; 4]; 2] = [
    [
        MeterMode::VoltsAc,
        MeterMode::VoltsLowZ,
        MeterMode::VoltsDc,
        MeterMode::AmpsClamp,
    ],
    [
        MeterMode::Ohms,
        MeterMode::Continuity,
        MeterMode::Microfarads,
        MeterMode::Hertz,
    ],
];

/// Digits and unit as the display shows them.
pub(super) fn shown(display: Display, mode: MeterMode) -> (String, String) {
    let unit = match mode {
        MeterMode::Ohms | MeterMode::Continuity => "Ω",
        MeterMode::VoltsAc | MeterMode::VoltsLowZ | MeterMode::VoltsDc => "V",
        MeterMode::AmpsClamp => "A",
        MeterMode::Hertz => "Hz",
        MeterMode::Microfarads => "µF",
    };
    match display {
        Display::OverRange => ("0L".to_owned(), unit.to_owned()),
        Display::Dead => (String::new(), String::new()),
        Display::Value(value) => {
            let (scale, prefix) = match value.abs() {
                v if mode == MeterMode::Ohms && v >= 1e6 => (1e6, "M"),
                v if mode == MeterMode::Ohms && v >= 1e3 => (1e3, "k"),
                _ => (1.0, ""),
            };
            let value = value / scale;
            let digits = match value.abs() {
                v if v >= 999.5 => 0,
                v if v >= 99.95 => 1,
                v if v >= 9.995 => 2,
                _ => 3,
            };
            (format!("{value:.digits$}"), format!("{prefix}{unit}"))
        }
    }
}

/// One reading in a line.
pub(super) fn reading_text(reading: &Reading) -> String {
    let (digits, unit) = shown(reading.shown, reading.mode);
    if digits.is_empty() {
        "—".to_owned()
    } else {
        format!("{digits} {unit}").replace("0L", "OL")
    }
}

fn display(ui: &mut Ui, face: &Face) {
    let (rect, painter) = kit::canvas(ui, 92.0);
    painter.rect(
        rect,
        CornerRadius::same(8),
        t::LCD,
        Stroke::new(2.0, t::INK),
        StrokeKind::Inside,
    );
    let view = face.bench.view();
    let probed = view.probes.map(|(mode, _, _)| mode);
    let mode = view.held.or(probed).unwrap_or(face.desk.mode);
    let (digits, unit) = match face.bench.meter() {
        Some(display) => shown(display, mode),
        None => ("----".to_owned(), String::new()),
    };
    let glass = egui::Rect::from_min_max(
        rect.left_top() + vec2(16.0, 18.0),
        rect.right_bottom() - vec2(72.0, 18.0),
    );
    kit::segments(&painter, glass, &digits, t::LCD_ON);
    kit::write(
        &painter,
        rect.right() - 14.0,
        rect.bottom() - 16.0,
        Align2::RIGHT_BOTTOM,
        28.0,
        t::LCD_ON,
        unit,
    );
    let label = face.texts.meter_mode(mode);
    let beeps = face
        .bench
        .meter()
        .is_some_and(|shown| meter::beeps(mode, shown));
    let marks = [(view.held.is_some(), "meter-held"), (beeps, "meter-beep")];
    let marks: Vec<String> = (marks.into_iter())
        .filter(|(on, _)| *on)
        .map(|(_, key)| face.text(key))
        .collect();
    kit::write(
        &painter,
        rect.left() + 14.0,
        rect.top() + 6.0,
        Align2::LEFT_TOP,
        t::SMALL,
        t::LCD_ON,
        marks.join("  "),
    );
    kit::write(
        &painter,
        rect.right() - 14.0,
        rect.top() + 10.0,
        Align2::RIGHT_TOP,
        17.0,
        t::LCD_ON,
        label,
    );
    if face.bench.meter() == Some(Display::Dead) {
        kit::write(
            &painter,
            rect.left() + 16.0,
            rect.center().y,
            Align2::LEFT_CENTER,
            17.0,
            t::LCD_ON,
            face.text("meter-dead"),
        );
    }
}

/// Groups of pins within reach, in order.
fn spots(face: &Face) -> Vec<Spot> {
    let mut spots = vec![Spot::Bulk, Spot::Plug, Spot::Fuse];
    for part in Part::ALL {
        if *part != Part::Cord && Terminal::ALL.iter().any(|t| t.component() == *part) {
            spots.push(Spot::Load(*part));
        }
    }
    let connectors = face.bench.job().board.connectors.len();
    spots.extend((0..connectors).map(Spot::Board));
    spots.extend((0..connectors).map(Spot::Harness));
    spots
}

fn spot_name(face: &Face, spot: Spot) -> String {
    let connector = |n: usize| {
        face.bench
            .job()
            .board
            .connectors
            .get(n)
            .map_or(String::new(), |c| c.label.clone())
    };
    match spot {
        Spot::Plug => face.text("spot-plug"),
        Spot::Fuse => face.text("spot-fuse"),
        Spot::Bulk => face.text("spot-bulk"),
        Spot::Load(part) => face.part(part),
        Spot::Board(n) => format!("{} {}", connector(n), face.text("side-board")),
        Spot::Harness(n) => format!("{} {}", connector(n), face.text("side-harness")),
    }
}

fn pins_of(face: &Face, spot: Spot) -> Vec<(Pin, String)> {
    let on_board = |n: usize, side: Side| -> Vec<(Pin, String)> {
        face.bench
            .job()
            .board
            .connectors
            .get(n)
            .map_or(Vec::new(), |c| {
                c.pins
                    .iter()
                    .map(|p| {
                        (
                            Pin::Wire(p.terminal, side),
                            format!("{}  {}", p.pin, p.label),
                        )
                    })
                    .collect()
            })
    };
    let fixed = |pins: &[Pin]| pins.iter().map(|p| (*p, face.pin(*p))).collect();
    match spot {
        Spot::Plug => fixed(&[Pin::PlugLine, Pin::PlugNeutral, Pin::PlugEarth]),
        Spot::Fuse => fixed(&[Pin::FuseIn, Pin::FuseOut]),
        Spot::Bulk => fixed(&[Pin::BulkPlus, Pin::BulkMinus]),
        Spot::Load(part) => Terminal::ALL
            .iter()
            .filter(|t| t.component() == part)
            .map(|t| {
                (
                    Pin::Wire(*t, Side::Load),
                    t.name()[t.name().len() - 1..].to_owned(),
                )
            })
            .collect(),
        Spot::Board(n) => on_board(n, Side::Board),
        Spot::Harness(n) => on_board(n, Side::Harness),
    }
}

fn connector_of(face: &Face, spot: Spot) -> Option<Connector> {
    match spot {
        Spot::Load(part) => Some(Connector::Load(part)),
        Spot::Board(n) | Spot::Harness(n) => face
            .bench
            .job()
            .board
            .connectors
            .get(n)
            .map(|c| Connector::Board(c.label.clone())),
        _ => None,
    }
}

fn probes(ui: &mut Ui, face: &mut Face) {
    if let Some((_, red, black)) = face.bench.view().probes {
        face.desk.red.get_or_insert(red);
        face.desk.black.get_or_insert(black);
    }
    for (red, key) in [(true, "meter-red"), (false, "meter-black")] {
        let pin = if red { face.desk.red } else { face.desk.black };
        let text = pin.map_or_else(|| face.text("meter-choose"), |p| face.pin(p));
        let next = face.desk.red_next == red;
        ui.horizontal(|ui| {
            let (rect, _) = ui.allocate_exact_size(vec2(16.0, 26.0), egui::Sense::hover());
            let colour = if red { t::BAD } else { t::INK };
            ui.painter()
                .circle(rect.center(), 7.0, colour, Stroke::new(1.5, t::TEXT));
            if kit::choice(ui, next, face.text(key)).clicked() {
                face.desk.red_next = red;
            }
            ui.label(text);
        });
    }
    let spot = face.desk.spot;
    egui::ComboBox::from_id_salt("spot")
        .width(ui.available_width() - 8.0)
        .height(420.0)
        .selected_text(spot_name(face, spot))
        .show_ui(ui, |ui| {
            for other in spots(face) {
                let name = spot_name(face, other);
                if ui
                    .selectable_label(
                        other == spot,
                        RichText::new(name).color(if other == spot {
                            t::ON_AMBER
                        } else {
                            t::TEXT
                        }),
                    )
                    .clicked()
                {
                    face.desk.spot = other;
                    face.desk.selected = match other {
                        Spot::Load(part) => Some(part),
                        Spot::Fuse => Some(Part::LineFuse),
                        Spot::Bulk | Spot::Board(_) => Some(Part::Board),
                        Spot::Harness(_) => Some(Part::Harness),
                        Spot::Plug => None,
                    };
                }
            }
        });
    ui.horizontal_wrapped(|ui| {
        for (pin, name) in pins_of(face, spot) {
            let mine = face.desk.red == Some(pin) || face.desk.black == Some(pin);
            let mark = match (face.desk.red == Some(pin), face.desk.black == Some(pin)) {
                (true, _) => "⏺ ",
                (_, true) => "○ ",
                _ => "",
            };
            if kit::choice(ui, mine, format!("{mark}{name}")).clicked() {
                face.desk.put_probe(pin);
            }
        }
    });
    if let Some(connector) = connector_of(face, spot) {
        let pulled = face.bench.view().pulled.contains(&connector);
        let (key, action) = if pulled {
            ("do-seat", Action::Seat(connector))
        } else {
            ("do-pull", Action::Pull(connector))
        };
        if ui.button(face.text(key)).clicked() {
            face.act(action);
        }
    }
}

fn notebook(ui: &mut Ui, face: &Face) {
    kit::heading(ui, face.text("notebook"));
    let readings = face.bench.view().log.readings();
    if readings.is_empty() {
        kit::quiet(ui, face.text("notebook-empty"));
    }
    let latest_first = (0..readings.len()).rev();
    for (n, reading) in latest_first.filter_map(|n| Some((n, readings.get(n)?))) {
        ui.horizontal(|ui| {
            ui.label(RichText::new(format!("{}", n + 1)).color(t::AMBER));
            ui.label(RichText::new(reading_text(reading)).strong().color(t::TEXT));
            if reading.beeped() {
                ui.label(RichText::new(face.text("meter-beep")).color(t::GOOD));
            }
            if reading.live {
                ui.label(RichText::new(face.text("notebook-live")).color(t::BAD));
            }
            ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
                kit::quiet(ui, reading.at.to_string());
            });
        });
        let mut place = format!(
            "{}   {} – {}",
            face.texts.meter_mode(reading.mode),
            face.pin(reading.red),
            face.pin(reading.black)
        );
        if reading.grip == Grip::Fingers {
            place = format!("{place}   ({})", face.text("meter-fingers"));
        }
        kit::quiet(ui, place);
    }
}

/// The meter against a source that is known.
fn proving(ui: &mut Ui, face: &mut Face) {
    kit::quiet(ui, face.text("meter-test-intro"));
    if kit::wide(ui, face.text("do-test-meter")).clicked() {
        face.act(Action::TestMeter);
    }
    if let Some(test) = face.bench.view().log.meter_tests().last().copied() {
        let shows = |display, mode| {
            let (digits, unit) = shown(display, mode);
            if digits.is_empty() {
                "—".to_owned()
            } else {
                format!("{digits} {unit}").replace("0L", "OL")
            }
        };
        let values = [
            shows(test.volts_ac, MeterMode::VoltsAc),
            shows(test.volts_dc, MeterMode::VoltsDc),
            shows(test.ohms, MeterMode::Ohms),
        ];
        kit::row(ui, test.at.to_string(), values.join(" · "), t::TEXT);
        let (key, colour) = if test.is_good() {
            ("meter-test-good", t::GOOD)
        } else {
            ("meter-test-bad", t::BAD)
        };
        ui.label(RichText::new(face.text(key)).size(t::SMALL).color(colour));
    }
    if kit::wide(ui, face.text("do-leads")).clicked() {
        face.act(Action::ReplaceLeads);
    }
}

fn code_entry(ui: &mut Ui, face: &mut Face) {
    kit::heading(ui, face.text("note-code"));
    ui.horizontal(|ui| {
        for place in 0..2 {
            if ui.button("−").clicked() {
                face.desk.digits[place] = (face.desk.digits[place] + 9) % 10;
            }
            ui.label(
                RichText::new(face.desk.digits[place].to_string())
                    .size(26.0)
                    .color(t::AMBER),
            );
            if ui.button("+").clicked() {
                face.desk.digits[place] = (face.desk.digits[place] + 1) % 10;
            }
            ui.add_space(8.0);
        }
        if ui.button(face.text("note-code-do")).clicked() {
            let code = face.desk.digits[0] * 10 + face.desk.digits[1];
            face.act(Action::NoteCode(code));
        }
    });
    let noted: Vec<String> = face
        .bench
        .view()
        .log
        .noted_codes()
        .iter()
        .map(|(_, code)| format!("{code:02}"))
        .collect();
    if !noted.is_empty() {
        kit::quiet(
            ui,
            format!("{}  {}", face.text("noted-codes"), noted.join(", ")),
        );
    }
}

pub(super) fn meter_ui(ui: &mut Ui, face: &mut Face) {
    kit::card(ui, |ui| {
        display(ui, face);
        for modes in MODES {
            ui.horizontal(|ui| {
                ui.spacing_mut().item_spacing.x = 5.0;
                let width = (ui.available_width() - 15.0) / 4.0;
                for mode in modes {
                    let (on, text) = (face.desk.mode == mode, face.texts.meter_mode(mode));
                    if kit::choice_sized(ui, on, text, vec2(width, 32.0)).clicked() {
                        face.desk.mode = mode;
                    }
                }
            });
        }
        probes(ui, face);
        ui.horizontal(|ui| {
            kit::quiet(ui, face.text("meter-grip"));
            for (grip, key) in [
                (Grip::Clips, "meter-clips"),
                (Grip::Fingers, "meter-grip-fingers"),
            ] {
                if kit::choice(ui, face.desk.grip == grip, face.text(key)).clicked() {
                    face.desk.grip = grip;
                }
            }
        });
        let clamp = face.desk.mode == MeterMode::AmpsClamp;
        let black = if clamp {
            face.desk.black.or(face.desk.red)
        } else {
            face.desk.black
        };
        let ready = face.desk.red.zip(black);
        if kit::main_button(ui, face.text("do-measure"), ready.is_some()).clicked()
            && let Some((red, black)) = ready
        {
            face.act(Action::Probe {
                mode: face.desk.mode,
                red,
                black,
                grip: face.desk.grip,
            });
        }
        if face.bench.view().probes.is_some() && kit::wide(ui, face.text("do-lift")).clicked() {
            face.act(Action::LiftProbes);
        }
        let (held, probed) = {
            let view = face.bench.view();
            (view.held.is_some(), view.probes.is_some())
        };
        if held && kit::wide(ui, face.text("do-release")).clicked() {
            face.act(Action::ReleaseDisplay);
        }
        if !held && probed && kit::wide(ui, face.text("do-hold")).clicked() {
            face.act(Action::HoldDisplay);
        }
        if face.bench.meter() == Some(Display::Dead)
            && kit::wide(ui, face.text("do-meter-fuse")).clicked()
        {
            face.act(Action::ReplaceMeterFuse);
        }
    });
    kit::card(ui, |ui| proving(ui, face));
    kit::card(ui, |ui| code_entry(ui, face));
    kit::card(ui, |ui| notebook(ui, face));
    kit::card(ui, |ui| look::look_ui(ui, face));
}
