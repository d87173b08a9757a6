//! What of a class shows at the bench: a word from the teacher, whether everything has been sent, a pause, and what stands
//! in the place of a score.

use super::super::{PanelContext, framed, kit};
use crate::attempts::Attempts;
use crate::class::ClassRes;
use crate::class::driver::SendState;
use crate::port::JobSource;
use crate::tokens as t;
use bevy_egui::egui::accesskit::Live;
use bevy_egui::egui::{Color32, Context, Frame, Id, Margin, Modal, Panel, RichText, Stroke, Ui};
use detent_content::Value;
use detent_training::record::PART;

/// The newest word from the teacher, until it is put away.
pub(super) fn notice_ui(ui: &mut Ui, context: &PanelContext, class: &mut ClassRes) {
    let Some(link) = class.link.as_mut() else {
        return;
    };
    let Some((number, text)) = link.driver.notice() else {
        return;
    };
    let words = context.with("seat-notice", &[("text", Value::from(text))]);
    let read = ui.horizontal_wrapped(|ui| {
        let label = ui.label(RichText::new(words).color(t::AMBER));
        (ui.ctx()).accesskit_node_builder(label.id, |node| node.set_live(Live::Polite));
        kit::button(ui, context.text("seat-notice-read")).clicked()
    });
    if read.inner {
        link.driver.put_away(number);
    }
}

/// Whether what was done has come to the server; where it never will, how to hand it in.
pub(super) fn send_state_ui(
    ui: &mut Ui,
    context: &PanelContext,
    class: &ClassRes,
    jobs: &dyn JobSource,
) {
    let Some(link) = class.joined() else {
        return;
    };
    let state = link.driver.send_state();
    let (words, colour) = match state {
        SendState::Sent => (context.text("seat-sent"), t::QUIET),
        SendState::Waiting { deeds } => {
            let args = [("actions", Value::from(deeds))];
            (context.with("seat-waiting", &args), t::QUIET)
        }
        SendState::Unreachable => (context.text("seat-unreachable"), t::AMBER),
        SendState::ServerFull => (context.text("seat-server-full"), t::AMBER),
        SendState::Refused => (context.text("seat-refused"), t::BAD),
    };
    let label = ui.label(RichText::new(words).size(t::SMALL).color(colour));
    (ui.ctx()).accesskit_node_builder(label.id, |node| node.set_live(Live::Polite));
    if state != SendState::Refused {
        return;
    }
    let Some(attempts) = jobs.attempts() else {
        return;
    };
    for name in link.driver.refused() {
        let file = ("file", Value::from(name));
        if attempts.file_exchange().is_some() {
            if kit::wide(ui, context.with("seat-save", &[file])).clicked() {
                save_copy(attempts, name);
            }
        } else if let Some(place) = attempts.place() {
            let args = [file, ("place", Value::from(place))];
            kit::quiet(ui, context.with("seat-file-in-folder", &args));
        }
    }
}

/// A copy of an attempt, finished or not.
fn save_copy(attempts: &dyn Attempts, name: &str) {
    for name in [name, &format!("{name}{PART}")] {
        if let (Some(file_exchange), Ok(bytes)) = (attempts.file_exchange(), attempts.read(name)) {
            file_exchange.save_copy(name, &bytes);
            return;
        }
    }
}

/// Along the top of the bench: a word from the teacher, and whether what was done at a job of the class has been sent.
pub(in crate::panels) fn strip_ui(
    ui: &mut Ui,
    context: &PanelContext,
    class: &mut ClassRes,
    jobs: &dyn JobSource,
) {
    let Some(link) = class.joined() else {
        return;
    };
    let of_class = context.ui_state.of_class;
    if link.driver.notice().is_none() && !of_class {
        return;
    }
    framed(Panel::top("class"), (12, 3)).show(ui, |ui| {
        notice_ui(ui, context, class);
        if of_class {
            send_state_ui(ui, context, class, jobs);
        }
    });
}

/// While the teacher has stopped the class, nothing at the bench is seen or done.
pub(in crate::panels) fn paused_ui(ctx: &Context, context: &PanelContext) {
    if !context.bench.class_paused {
        return;
    }
    let frame = Frame::new()
        .fill(t::CARD)
        .stroke(Stroke::new(2.0, t::AMBER))
        .corner_radius(10)
        .inner_margin(Margin::symmetric(20, 16));
    let modal = Modal::new(Id::new("class paused"))
        .frame(frame)
        .backdrop_color(Color32::from_black_alpha(225));
    modal.show(ctx, |ui| {
        ui.set_width(460.0_f32.min(ui.ctx().content_rect().width() - 64.0));
        let title = kit::heading(ui, context.text("seat-stopped"));
        kit::dialog(ui, &title);
        let label = ui.label(context.text("seat-stopped-text"));
        (ui.ctx()).accesskit_node_builder(label.id, |node| node.set_live(Live::Assertive));
    });
}

/// What stands in the place of a score until the class is closed.
pub(in crate::panels) fn sealed_ui(ui: &mut Ui, context: &mut PanelContext) {
    let key = match context.bench.view().finished {
        true => "seat-sealed-handed-in",
        false => "seat-sealed",
    };
    ui.label(context.text(key));
    if kit::go(ui, context.text("seat-back")).clicked() {
        context.ui_state.leave = true;
    }
}
