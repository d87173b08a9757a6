//! The way into a class: its code, a name, and a word where there is one.

use super::super::{PanelContext, kit, start};
use crate::class::driver::{Failure, JoinProblem};
use crate::class::{ClassRes, JoinMistake};
use crate::tokens as t;
use bevy_egui::egui::accesskit::Live;
use bevy_egui::egui::{Align, Key, RichText, TextEdit, Ui, vec2};
use detent_class_protocol::{JoinRefusal, LONGEST_NAME};
use detent_content::Value;

/// What can be typed at most, characters: a code may have spaces in it.
const LONGEST_CODE: usize = 16;

/// Draws it.
pub(in crate::panels) fn join_ui(ui: &mut Ui, context: &mut PanelContext, class: &mut ClassRes) {
    let Some(link) = &class.link else {
        return;
    };
    let (address, asking) = (link.address.to_string(), link.driver.is_joining());
    start::in_panel(ui, true, |ui| {
        start::name_and_language_ui(ui, context);
        ui.add_space(8.0);
        kit::heading(ui, context.text("join-title"));
        let at = [("address", Value::from(address.as_str()))];
        kit::quiet(ui, context.with("join-server", &at));
        ui.add_space(8.0);
        let entered = ui.add_enabled_ui(!asking, |ui| fields_ui(ui, context, class));
        ui.add_space(8.0);
        if let Some(told) = problem(context, class, &address) {
            let label = ui.label(RichText::new(told).color(t::BAD));
            (ui.ctx()).accesskit_node_builder(label.id, |node| node.set_live(Live::Assertive));
        }
        let key = if asking { "join-asking" } else { "join-go" };
        if kit::main_button(ui, context.text(key), !asking).clicked() || entered.inner {
            class.ask_for_seat();
        }
        ui.add_space(14.0);
        if kit::go(ui, context.text("join-without")).clicked() {
            class.desk.without = true;
        }
        kit::quiet(ui, context.text("join-without-note"));
    });
}

/// What is typed. Whether Enter was pressed in it.
fn fields_ui(ui: &mut Ui, context: &PanelContext, class: &mut ClassRes) -> bool {
    let desk = &mut class.desk;
    let code = ("join-code", "join-code-hint", LONGEST_CODE);
    let name = ("join-name", "join-name-hint", LONGEST_NAME);
    let word = ("join-word", "join-word-hint", LONGEST_NAME);
    let mut entered = field_ui(ui, context, code, &mut desk.code);
    entered |= field_ui(ui, context, name, &mut desk.name);
    kit::checkbox(ui, &mut desk.has_word, context.text("join-has-word"));
    if desk.has_word {
        entered |= field_ui(ui, context, word, &mut desk.word);
    }
    entered
}

/// A line to type in, with its name above and what is to be typed below. Whether Enter was pressed in it.
fn field_ui(
    ui: &mut Ui,
    context: &PanelContext,
    (name, hint, longest): (&str, &str, usize),
    typed: &mut String,
) -> bool {
    let label = ui.label(context.text(name));
    let edit = TextEdit::singleline(typed)
        .char_limit(longest)
        .min_size(vec2(0.0, 34.0))
        .vertical_align(Align::Center)
        .desired_width(ui.available_width());
    let edit = ui.add(edit).labelled_by(label.id);
    kit::quiet(ui, context.text(hint));
    ui.add_space(4.0);
    edit.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter))
}

/// What stands in the way of a seat, in a sentence.
fn problem(context: &PanelContext, class: &ClassRes, address: &str) -> Option<String> {
    if let Some(mistake) = class.desk.mistake {
        return Some(context.text(match mistake {
            JoinMistake::Code => "join-mistake-code",
            JoinMistake::Name => "join-refused-name",
        }));
    }
    let at = [("address", Value::from(address))];
    Some(match class.link.as_ref()?.driver.problem()? {
        JoinProblem::Refused(refusal) => refusal_words(context, refusal),
        JoinProblem::Failed(Failure::NoAnswer) => context.with("join-no-answer", &at),
        JoinProblem::Failed(Failure::NotAClass) => context.with("join-not-a-class", &at),
        JoinProblem::Failed(Failure::UnknownSeat) | JoinProblem::SeatLost => {
            context.text("join-seat-lost")
        }
    })
}

/// Why the server gives no seat.
fn refusal_words(context: &PanelContext, refusal: &JoinRefusal) -> String {
    let key = match refusal {
        JoinRefusal::TooManyTries { wait_s } => {
            return context.with("join-refused-tries", &[("seconds", Value::from(*wait_s))]);
        }
        JoinRefusal::Protocol { .. } => "join-refused-protocol",
        JoinRefusal::WrongCode => "join-refused-code",
        JoinRefusal::Name => "join-refused-name",
        JoinRefusal::NotOnList => "join-refused-not-on-list",
        JoinRefusal::NameTaken => "join-refused-taken",
        JoinRefusal::WrongWord => "join-refused-word",
        JoinRefusal::Full => "join-refused-full",
        JoinRefusal::Closed => "join-refused-closed",
    };
    context.text(key)
}
