//! What a hand finds on a board's panel, the supplies that it is made for, and its programs.

use super::{count_ui, line_ui, seconds_ui};
use crate::panels::workshop::{flag_ui, number_ui};
use crate::panels::{PanelContext, kit};
use bevy_egui::egui::Ui;
use detent_simulation::controller::{Board, Selector, SupplyRules};
use detent_simulation::interface::{Button, Mains};

/// How a position is chosen, without how many there are.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Dial,
    Switch,
    Steps,
}

impl Kind {
    fn of(selector: Selector) -> Kind {
        match selector {
            Selector::Dial { .. } => Kind::Dial,
            Selector::Switch { .. } => Kind::Switch,
            Selector::Steps => Kind::Steps,
        }
    }

    fn with(self, positions: u8) -> Selector {
        match self {
            Kind::Dial => Selector::Dial { detents: positions },
            Kind::Switch => Selector::Switch { positions },
            Kind::Steps => Selector::Steps,
        }
    }
}

/// Positions of a knob where there was none.
const USUAL_POSITIONS: u8 = 12;

/// Draws it.
pub(super) fn panel_ui(ui: &mut Ui, context: &PanelContext, board: &mut Board) {
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-board-page-panel"));
        let name = context.text("workshop-board-name");
        line_ui(ui, name, &mut board.name, "board-name");
        let panel = &mut board.panel;
        let kinds = [
            (Kind::Dial, context.text("workshop-board-dial")),
            (Kind::Switch, context.text("workshop-board-switch")),
            (Kind::Steps, context.text("workshop-board-steps")),
        ];
        if let Some(kind) = kit::choices(ui, Kind::of(panel.selector), kinds) {
            panel.selector = kind.with(panel.selector.turn().unwrap_or(USUAL_POSITIONS));
            if kind == Kind::Steps {
                for button in [Button::More, Button::Less] {
                    if !panel.buttons.contains(&button) {
                        panel.buttons.push(button);
                    }
                }
            }
        }
        match &mut panel.selector {
            Selector::Dial { detents: turn } | Selector::Switch { positions: turn } => {
                count_ui(ui, context.text("workshop-board-positions"), turn, 2..=100);
            }
            Selector::Steps => {}
        }
        ui.label(context.text("workshop-board-buttons"));
        ui.horizontal_wrapped(|ui| {
            for button in Button::ALL.iter().copied() {
                let on = panel.buttons.contains(&button);
                match flag_ui(ui, context.texts.button(button), on) {
                    Some(true) => panel.buttons.push(button),
                    Some(false) => panel.buttons.retain(|there| *there != button),
                    None => {}
                }
            }
        });
        let name = context.text("workshop-board-tap");
        seconds_ui(ui, name, &mut board.tap_ms, 10.0);
        let name = context.text("workshop-board-cancel");
        seconds_ui(ui, name, &mut board.cancel_ms, 60.0);
    });
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-board-supply"));
        for mains in Mains::ALL {
            supply_ui(ui, context, board, mains);
        }
    });
    kit::card(ui, |ui| programs_ui(ui, context, board));
}

/// A supply: whether the board is made for it, and its levels.
fn supply_ui(ui: &mut Ui, context: &PanelContext, board: &mut Board, mains: Mains) {
    let rating = mains.rating();
    let name = format!("{:.0} V, {:.0} Hz", rating.volts, rating.hz);
    match flag_ui(ui, name, board.mains.contains(&mains)) {
        Some(true) => {
            // The levels of another supply, in proportion to its voltage.
            let other = board.supply.iter().next();
            let levels = other.map_or_else(SupplyRules::default, |(other, levels)| SupplyRules {
                reset_v: levels.reset_v,
                sag_v: (levels.sag_v * rating.volts / other.rating().volts).round(),
            });
            board.mains.push(mains);
            board.supply.entry(mains).or_insert(levels);
        }
        Some(false) => {
            board.mains.retain(|there| *there != mains);
            board.supply.remove(&mains);
        }
        None => {}
    }
    if let Some(levels) = board.supply.get_mut(&mains) {
        ui.indent(mains.rating().volts as u32, |ui| {
            let name = context.text("workshop-board-reset-v");
            let reset = number_ui(ui, name, levels.reset_v, 0.0..=400.0, 1.0);
            levels.reset_v = reset.unwrap_or(levels.reset_v);
            let name = context.text("workshop-board-sag-v");
            let sag = number_ui(ui, name, levels.sag_v, 0.0..=400.0, 1.0);
            levels.sag_v = sag.unwrap_or(levels.sag_v);
        });
    }
}

/// Programs: their names and positions. What they do is written in the text.
fn programs_ui(ui: &mut Ui, context: &PanelContext, board: &mut Board) {
    kit::heading(ui, context.text("workshop-board-programs"));
    let mut copied = None;
    let mut removed = None;
    let is_alone = board.programs.len() == 1;
    for (n, program) in board.programs.iter_mut().enumerate() {
        let told = context.text(&program.name);
        ui.push_id(("program", n), |ui| {
            let shown = format!("{}. {told}", n + 1);
            line_ui(ui, shown, &mut program.name, "name");
            let name = context.text("workshop-board-position");
            count_ui(ui, name, &mut program.position, 0..=99);
            ui.horizontal_wrapped(|ui| {
                if kit::button(ui, context.text("workshop-board-program-copy")).clicked() {
                    copied = Some(n);
                }
                let remove = context.text("workshop-board-program-remove");
                if !is_alone && kit::button(ui, remove).clicked() {
                    removed = Some(n);
                }
            });
        });
    }
    if let Some(n) = removed {
        board.programs.remove(n);
    } else if let Some(n) = copied {
        let mut copy = board.programs[n].clone();
        let is_free = |position: &u8| board.program_at(*position).is_none();
        copy.position = (0..=99).find(is_free).unwrap_or(0);
        board.programs.insert(n + 1, copy);
    }
}
