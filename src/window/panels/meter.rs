//! The meter, the notebook of readings and the codes read.

use super::icon::Icon;
use super::{PanelContext, kit, look, spoken};
use crate::state::PinGroup;
use crate::tokens as t;
use bevy_egui::egui::{self, Align2, CornerRadius, RichText, Stroke, StrokeKind, Ui, vec2};
use detent_simulation::interface::{Component as Part, Connector, Pin, Side, Terminal};
use detent_training::bench::{Action, Display, Grip, MeterMode, meter};

/// The knob's settings, as they stand in two rows.
const MODES: [&[MeterMode]; 2] = [
    &[
        MeterMode::VoltsAc,
        MeterMode::VoltsLowZ,
        MeterMode::VoltsDc,
        MeterMode::AmpsClamp,
    ],
    &[
        MeterMode::Ohms,
        MeterMode::Continuity,
        MeterMode::Microfarads,
        MeterMode::Hertz,
        MeterMode::Insulation,
    ],
];

fn display(ui: &mut Ui, context: &PanelContext) {
    let (rect, painter) = kit::canvas(ui, 92.0);
    painter.rect(
        rect,
        CornerRadius::same(8),
        t::LCD,
        Stroke::new(2.0, t::INK),
        StrokeKind::Inside,
    );
    let view = context.bench.view();
    let probed = view.probes.map(|(mode, _, _)| mode);
    let mode = view.held.or(probed).unwrap_or(context.ui_state.mode);
    let (digits, unit) = match context.bench.meter() {
        Some(display) => {
            let written = display.written(mode);
            let unit = match display {
                Display::Dead => String::new(),
                Display::OverRange | Display::Value(_) => {
                    format!("{}{}", written.prefix, written.unit)
                }
            };
            (written.digits, unit)
        }
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
    let label = context.texts.meter_mode(mode);
    let beeps = context
        .bench
        .meter()
        .is_some_and(|shown| meter::beeps(mode, shown));
    let marks = [(view.held.is_some(), "meter-held"), (beeps, "meter-beep")];
    let marks: Vec<String> = (marks.into_iter())
        .filter(|(on, _)| *on)
        .map(|(_, key)| context.text(key))
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
    if context.bench.meter() == Some(Display::Dead) {
        kit::write(
            &painter,
            rect.left() + 16.0,
            rect.center().y,
            Align2::LEFT_CENTER,
            17.0,
            t::LCD_ON,
            context.text("meter-dead"),
        );
    }
}

/// Groups of pins within reach, in order.
fn pin_groups(context: &PanelContext) -> Vec<PinGroup> {
    let mut pin_groups = vec![PinGroup::Bulk, PinGroup::Plug, PinGroup::Fuse];
    for part in Part::ALL {
        if *part != Part::Cord && Terminal::ALL.iter().any(|t| t.component() == *part) {
            pin_groups.push(PinGroup::Load(*part));
        }
    }
    let connectors = context.bench.job().board.connectors.len();
    pin_groups.extend((0..connectors).map(PinGroup::Board));
    pin_groups.extend((0..connectors).map(PinGroup::Harness));
    pin_groups
}

fn pin_group_name(context: &PanelContext, pin_group: PinGroup) -> String {
    let connector = |n: usize| {
        context
            .bench
            .job()
            .board
            .connectors
            .get(n)
            .map_or(String::new(), |c| c.label.clone())
    };
    match pin_group {
        PinGroup::Plug => context.text("pin-group-plug"),
        PinGroup::Fuse => context.text("pin-group-fuse"),
        PinGroup::Bulk => context.text("pin-group-bulk"),
        PinGroup::Load(part) => context.part(part),
        PinGroup::Board(n) => format!("{} {}", connector(n), context.text("side-board")),
        PinGroup::Harness(n) => format!("{} {}", connector(n), context.text("side-harness")),
    }
}

fn pins_of(context: &PanelContext, pin_group: PinGroup) -> Vec<(Pin, String)> {
    let on_board = |n: usize, side: Side| -> Vec<(Pin, String)> {
        context
            .bench
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
    let fixed = |pins: &[Pin]| pins.iter().map(|p| (*p, context.pin(*p))).collect();
    match pin_group {
        PinGroup::Plug => fixed(&[Pin::PlugLine, Pin::PlugNeutral, Pin::PlugEarth]),
        PinGroup::Fuse => fixed(&[Pin::FuseIn, Pin::FuseOut]),
        PinGroup::Bulk => fixed(&[Pin::BulkPlus, Pin::BulkMinus]),
        PinGroup::Load(part) => Terminal::ALL
            .iter()
            .filter(|t| t.component() == part)
            .map(|t| {
                (
                    Pin::Wire(*t, Side::Load),
                    t.name()[t.name().len() - 1..].to_owned(),
                )
            })
            .collect(),
        PinGroup::Board(n) => on_board(n, Side::Board),
        PinGroup::Harness(n) => on_board(n, Side::Harness),
    }
}

fn connector_of(context: &PanelContext, pin_group: PinGroup) -> Option<Connector> {
    match pin_group {
        PinGroup::Load(part) => Some(Connector::Load(part)),
        PinGroup::Board(n) | PinGroup::Harness(n) => context
            .bench
            .job()
            .board
            .connectors
            .get(n)
            .map(|c| Connector::Board(c.label.clone())),
        _ => None,
    }
}

fn probes(ui: &mut Ui, context: &mut PanelContext) {
    if let Some((_, red, black)) = context.bench.view().probes {
        context.ui_state.red.get_or_insert(red);
        context.ui_state.black.get_or_insert(black);
    }
    for (red, key) in [(true, "meter-red"), (false, "meter-black")] {
        let pin = if red {
            context.ui_state.red
        } else {
            context.ui_state.black
        };
        let text = pin.map_or_else(|| context.text("meter-choose"), |p| context.pin(p));
        let next = context.ui_state.red_next == red;
        ui.horizontal(|ui| {
            let (rect, _) = ui.allocate_exact_size(vec2(16.0, 26.0), egui::Sense::hover());
            let colour = if red { t::BAD } else { t::INK };
            ui.painter()
                .circle(rect.center(), 7.0, colour, Stroke::new(1.5, t::TEXT));
            if kit::choice(ui, next, context.text(key)).clicked() {
                context.ui_state.red_next = red;
            }
            ui.label(text);
        });
    }
    let pin_group = context.ui_state.pin_group;
    let label = ui.label(context.text("meter-pins"));
    let groups: Vec<PinGroup> = pin_groups(context).into_iter().collect();
    let rows: Vec<String> = (groups.iter())
        .map(|group| pin_group_name(context, *group))
        .collect();
    let chosen = groups.iter().position(|group| *group == pin_group);
    let shown = pin_group_name(context, pin_group);
    let width = ui.available_width() - 8.0;
    let (list, taken) = kit::drop_down(ui, "pin-group", width, &shown, (&rows, chosen));
    if let Some(other) = taken.and_then(|taken| groups.get(taken).copied()) {
        context.ui_state.pin_group = other;
        context.ui_state.selected = match other {
            PinGroup::Load(part) => Some(part),
            PinGroup::Fuse => Some(Part::LineFuse),
            PinGroup::Bulk | PinGroup::Board(_) => Some(Part::Board),
            PinGroup::Harness(_) => Some(Part::Harness),
            PinGroup::Plug => None,
        };
    }
    list.labelled_by(label.id);
    ui.horizontal_wrapped(|ui| {
        for (pin, name) in pins_of(context, pin_group) {
            let mine = context.ui_state.red == Some(pin) || context.ui_state.black == Some(pin);
            let button = kit::choice(ui, mine, name);
            // The probe's mark stands on the corner: a button that grew would move the next one under the pointer.
            let corner = button.rect.right_top() + vec2(-3.0, 3.0);
            for (probe, colour) in [
                (context.ui_state.red, t::BAD),
                (context.ui_state.black, t::INK),
            ] {
                if probe == Some(pin) {
                    let edge = Stroke::new(1.5, t::TEXT);
                    ui.painter().circle(corner, 5.0, colour, edge);
                }
            }
            if button.clicked() {
                context.ui_state.put_probe(pin);
            }
        }
    });
    if let Some(connector) = connector_of(context, pin_group) {
        let pulled = context.bench.view().pulled.contains(&connector);
        let (key, action) = if pulled {
            ("do-seat", Action::Seat(connector))
        } else {
            ("do-pull", Action::Pull(connector))
        };
        if kit::small_deed(ui, Icon::Plug, context.text(key)).clicked() {
            context.act(action);
        }
    }
}

/// Heights of the lists that grow: three readings, two rows of codes. Room for what came of a check of the meter.
const NOTEBOOK_HEIGHT: f32 = 174.0;
const CODES_HEIGHT: f32 = 70.0;
const CHECKED_HEIGHT: f32 = 78.0;

fn notebook(ui: &mut Ui, context: &PanelContext) {
    kit::heading(ui, context.text("notebook"));
    kit::growing_list(ui, "notebook", NOTEBOOK_HEIGHT, |ui| {
        readings_ui(ui, context)
    });
}

/// All readings, the latest last.
fn readings_ui(ui: &mut Ui, context: &PanelContext) {
    let readings = context.bench.view().log.readings();
    if readings.is_empty() {
        kit::quiet(ui, context.text("notebook-empty"));
    }
    for (n, reading) in readings.iter().enumerate() {
        ui.horizontal(|ui| {
            ui.label(RichText::new(format!("{}", n + 1)).color(t::AMBER));
            ui.label(
                RichText::new(context.texts.display(reading.shown, reading.mode))
                    .strong()
                    .color(t::TEXT),
            );
            if reading.beeped() {
                ui.label(RichText::new(context.text("meter-beep")).color(t::GOOD));
            }
            if reading.live {
                ui.label(RichText::new(context.text("notebook-live")).color(t::BAD));
            }
            ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
                kit::quiet(ui, reading.at.to_string());
            });
        });
        let mut place = format!(
            "{}   {} – {}",
            context.texts.meter_mode(reading.mode),
            context.pin(reading.red),
            context.pin(reading.black)
        );
        if reading.grip == Grip::Fingers {
            place = format!("{place}   ({})", context.text("meter-fingers"));
        }
        kit::quiet(ui, place);
    }
}

/// The meter against a source that is known.
fn proving(ui: &mut Ui, context: &mut PanelContext) {
    kit::quiet(ui, context.text("meter-test-intro"));
    if kit::deed(ui, Icon::Probe, context.text("do-test-meter")).clicked() {
        context.act(Action::TestMeter);
    }
    if kit::deed(ui, Icon::Probe, context.text("do-leads")).clicked() {
        context.act(Action::ReplaceLeads);
    }
    kit::reserved(ui, CHECKED_HEIGHT, |ui| checked_ui(ui, context));
}

/// What the meter showed on the proving unit the last time.
fn checked_ui(ui: &mut Ui, context: &PanelContext) {
    if let Some(test) = context.bench.view().log.meter_tests().last().copied() {
        let values = [
            context.texts.display(test.volts_ac, MeterMode::VoltsAc),
            context.texts.display(test.volts_dc, MeterMode::VoltsDc),
            context.texts.display(test.ohms, MeterMode::Ohms),
        ];
        kit::row(ui, test.at.to_string(), values.join(" · "), t::TEXT);
        let (key, colour) = if test.is_good() {
            ("meter-test-good", t::GOOD)
        } else {
            ("meter-test-bad", t::BAD)
        };
        ui.label(
            RichText::new(context.text(key))
                .size(t::SMALL)
                .color(colour),
        );
    }
}

/// Writing down what the lamps show, and striking it out again.
pub(super) fn code_entry(ui: &mut Ui, context: &mut PanelContext) {
    kit::heading(ui, context.text("note-code"));
    ui.horizontal(|ui| {
        for (place, fewer, more) in [
            (0, "note-tens-fewer", "note-tens-more"),
            (1, "note-units-fewer", "note-units-more"),
        ] {
            if kit::stepper(ui, "−", &context.fixed(fewer)).clicked() {
                context.ui_state.digits[place] = (context.ui_state.digits[place] + 9) % 10;
            }
            let digit = context.ui_state.digits[place].to_string();
            let digit = ui.label(RichText::new(digit).size(26.0).color(t::AMBER));
            spoken::when_changed(ui, &digit);
            if kit::stepper(ui, "+", &context.fixed(more)).clicked() {
                context.ui_state.digits[place] = (context.ui_state.digits[place] + 1) % 10;
            }
            ui.add_space(8.0);
        }
        if kit::small_deed(ui, Icon::Paper, context.text("note-code-do")).clicked() {
            let code = context.ui_state.digits[0] * 10 + context.ui_state.digits[1];
            context.act(Action::NoteCode(code));
        }
    });
    kit::quiet(ui, context.fixed("noted-codes"));
    kit::growing_list(ui, "noted-codes", CODES_HEIGHT, |ui| noted_ui(ui, context));
}

/// The codes written down, each to be struck out.
fn noted_ui(ui: &mut Ui, context: &mut PanelContext) {
    let notes = context.bench.view().log.notes();
    ui.horizontal_wrapped(|ui| {
        if notes.is_empty() {
            kit::quiet(ui, context.fixed("noted-none"));
        }
        for note in notes {
            let code = RichText::new(format!("{:02}", note.code)).size(20.0);
            match note.struck {
                Some(_) => {
                    ui.label(code.strikethrough().color(t::QUIET));
                }
                None => {
                    ui.label(code);
                    if ui.button(context.fixed("note-strike")).clicked() {
                        context.act(Action::StrikeCode(note.code));
                    }
                }
            }
            ui.add_space(8.0);
        }
    });
}

/// What is done at the meter once it is on something. Each keeps its place whether or not it can be done now.
fn at_the_meter_ui(ui: &mut Ui, context: &mut PanelContext) {
    let view = context.bench.view();
    let (held, probed) = (view.held.is_some(), view.probes.is_some());
    let dead = context.bench.meter() == Some(Display::Dead);
    let (hold, hold_or_release) = match held {
        true => ("do-release", Action::ReleaseDisplay),
        false => ("do-hold", Action::HoldDisplay),
    };
    let deeds = [
        (probed, Icon::Probe, "do-lift", Action::LiftProbes),
        (held || probed, Icon::Probe, hold, hold_or_release),
        (
            dead,
            Icon::Wrench,
            "do-meter-fuse",
            Action::ReplaceMeterFuse,
        ),
    ];
    for (possible, icon, key, action) in deeds {
        if kit::deed_if(ui, possible, icon, context.text(key)).clicked() {
            context.act(action);
        }
    }
}

pub(super) fn meter_ui(ui: &mut Ui, context: &mut PanelContext) {
    kit::card(ui, |ui| {
        display(ui, context);
        for modes in MODES {
            ui.horizontal(|ui| {
                ui.spacing_mut().item_spacing.x = 5.0;
                // What the words leave of the row is shared out, so that a long one does not widen the panel.
                ui.spacing_mut().button_padding.x = 0.0;
                let named = modes.iter().map(|mode| {
                    let text = context.texts.meter_mode(*mode);
                    let width = kit::width(ui, &text);
                    (*mode, text, width)
                });
                let named: Vec<(MeterMode, String, f32)> = named.collect();
                let gaps = 5.0 * (modes.len() - 1) as f32;
                let words: f32 = named.iter().map(|(_, _, width)| width).sum();
                let rest = ui.available_width() - gaps - words;
                let padding = rest / modes.len() as f32;
                for (mode, text, width) in named {
                    let on = context.ui_state.mode == mode;
                    let size = vec2(width + padding, 32.0);
                    if kit::choice_sized(ui, on, text, size).clicked() {
                        context.ui_state.mode = mode;
                    }
                }
            });
        }
        probes(ui, context);
        ui.horizontal(|ui| {
            kit::quiet(ui, context.text("meter-grip"));
            for (grip, key) in [
                (Grip::Clips, "meter-clips"),
                (Grip::Fingers, "meter-grip-fingers"),
            ] {
                if kit::choice(ui, context.ui_state.grip == grip, context.text(key)).clicked() {
                    context.ui_state.grip = grip;
                }
            }
        });
        let clamp = context.ui_state.mode == MeterMode::AmpsClamp;
        let black = if clamp {
            context.ui_state.black.or(context.ui_state.red)
        } else {
            context.ui_state.black
        };
        let ready = context.ui_state.red.zip(black);
        if kit::main_button(ui, context.text("do-measure"), ready.is_some()).clicked()
            && let Some((red, black)) = ready
        {
            context.act(Action::Probe {
                mode: context.ui_state.mode,
                red,
                black,
                grip: context.ui_state.grip,
            });
        }
        at_the_meter_ui(ui, context);
    });
    kit::card(ui, |ui| proving(ui, context));
    kit::card(ui, |ui| code_entry(ui, context));
    kit::card(ui, |ui| notebook(ui, context));
    kit::card(ui, |ui| look::look_ui(ui, context));
}
