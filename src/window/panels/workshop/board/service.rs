//! Service mode once it is entered: its menu and limits, and how a fault hold is left.

use super::{count_ui, list_ui, option_ui, seconds_ui};
use crate::panels::workshop::{flag_ui, number_ui};
use crate::panels::{PanelContext, kit};
use bevy_egui::egui::{DragValue, Ui};
use detent_simulation::controller::{
    Board, ButtonHold, LidCycle, LidMoves, MenuEntry, Resets, Routine,
};
use detent_simulation::interface::Button;

/// Draws it.
pub(super) fn service_ui(ui: &mut Ui, context: &PanelContext, board: &mut Board) {
    kit::card(ui, |ui| menu_ui(ui, context, board));
    kit::card(ui, |ui| limits_ui(ui, context, board));
    kit::card(ui, |ui| resets_ui(ui, context, &mut board.resets));
}

/// Routines and their positions.
fn menu_ui(ui: &mut Ui, context: &PanelContext, board: &mut Board) {
    kit::heading(ui, context.text("workshop-board-menu"));
    kit::quiet(ui, context.text("workshop-board-menu-how"));
    for routine in Routine::ALL.iter().copied() {
        let place = board.menu.iter().position(|entry| entry.routine == routine);
        ui.horizontal_wrapped(|ui| {
            let mut on = place.is_some();
            let name = context.text(&format!("routine-{routine}"));
            let tick = kit::checkbox(ui, &mut on, name);
            if let Some(entry) = place.and_then(|place| board.menu.get_mut(place)) {
                let value = DragValue::new(&mut entry.position)
                    .range(0..=99)
                    .speed(0.2)
                    .update_while_editing(false);
                ui.add_sized([52.0, 28.0], value).labelled_by(tick.id);
            }
            if !tick.changed() {
                return;
            }
            match place {
                Some(place) => drop(board.menu.remove(place)),
                None => {
                    let is_free = |position: &u8| board.routine_at(*position).is_none();
                    let position = (0..=99).find(is_free).unwrap_or(0);
                    board.menu.push(MenuEntry { position, routine });
                }
            }
        });
    }
}

fn limits_ui(ui: &mut Ui, context: &PanelContext, board: &mut Board) {
    kit::heading(ui, context.text("workshop-board-limits"));
    let service = &mut board.service;
    let text = |key: &str| context.text(key);
    let buttons = Button::ALL.iter().copied();
    let buttons: Vec<_> = buttons
        .map(|button| (button, context.texts.button(button)))
        .collect();
    let name = text("workshop-board-page-button");
    if let Some(button) = list_ui(ui, "page", &name, service.page, &buttons) {
        service.page = button;
    }
    count_ui(
        ui,
        text("workshop-board-stored"),
        &mut service.stored_codes,
        1..=20,
    );
    count_ui(
        ui,
        text("workshop-board-timeout"),
        &mut service.timeout_s,
        10..=3_600,
    );
    let clear = text("workshop-board-clear");
    seconds_ui(ui, clear, &mut service.clear_hold_ms, 60.0);
    count_ui(
        ui,
        text("workshop-board-test-limit"),
        &mut service.test_limit_s,
        5..=600,
    );
    let spin = text("workshop-board-test-spin");
    let spin = number_ui(ui, spin, service.test_spin_rpm, 10.0..=2_000.0, 10.0);
    service.test_spin_rpm = spin.unwrap_or(service.test_spin_rpm);
}

/// How a fault hold is left.
fn resets_ui(ui: &mut Ui, context: &PanelContext, resets: &mut Resets) {
    let text = |key: &str| context.text(key);
    kit::heading(ui, text("workshop-board-resets"));
    let usual = || ButtonHold {
        button: Button::Stop,
        ms: 3_000,
    };
    option_ui(
        ui,
        text("workshop-board-reset-hold"),
        &mut resets.hold,
        usual,
        |ui, hold| {
            let buttons = Button::ALL.iter().copied();
            let buttons = buttons.map(|button| (button, context.texts.button(button)));
            if let Some(button) = kit::choices(ui, hold.button, buttons) {
                hold.button = button;
            }
            seconds_ui(
                ui,
                text("workshop-board-step-no-shorter"),
                &mut hold.ms,
                60.0,
            );
        },
    );
    let usual = || LidCycle {
        cycles: 3,
        within_ms: 8_000,
    };
    let name = text("workshop-board-reset-lid");
    option_ui(ui, name, &mut resets.lid_cycle, usual, |ui, lid| {
        count_ui(
            ui,
            text("workshop-board-lid-cycles"),
            &mut lid.cycles,
            1..=20,
        );
        seconds_ui(ui, text("workshop-board-lid-gap"), &mut lid.within_ms, 60.0);
    });
    let usual = || LidMoves {
        moves: 4,
        within_ms: 8_000,
    };
    let name = text("workshop-board-reset-moves");
    option_ui(ui, name, &mut resets.lid_moves, usual, |ui, lid| {
        count_ui(ui, text("workshop-board-lid-moves"), &mut lid.moves, 1..=20);
        seconds_ui(
            ui,
            text("workshop-board-lid-within"),
            &mut lid.within_ms,
            60.0,
        );
    });
    let kept = flag_ui(ui, text("workshop-board-kept"), resets.kept);
    resets.kept = kept.unwrap_or(resets.kept);
    for (does, told) in context.texts.hold_resets(resets) {
        if does {
            kit::quiet(ui, told);
        }
    }
}
