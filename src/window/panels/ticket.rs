//! The job ticket, and what hands can do without a tool.

use super::customer::questions_ui;
use super::icon::Icon;
use super::{PanelContext, kit};
use crate::state::{Guidance, say};
use crate::tokens as t;
use bevy_egui::egui::{RichText, Ui};
use detent_content::Value;
use detent_training::bench::Action;

pub(super) fn ticket_ui(ui: &mut Ui, context: &mut PanelContext) {
    // Whoever is guided looks for what to press next.
    let guided = is_guided(context);
    if !guided {
        complaint_ui(ui, context);
        facts_ui(ui, context);
    }
    // Handed back, nothing can be done at it any more.
    if !context.bench.view().finished {
        hands_ui(ui, context);
        wait_ui(ui, context);
        more_hands_ui(ui, context);
    }
    if guided {
        complaint_ui(ui, context);
        facts_ui(ui, context);
    }
    if kit::go(ui, context.fixed("leave-job")).clicked() {
        context.ui_state.leave = true;
    }
}

/// The same for whoever only watches: the job, and how far it has come.
pub(super) fn watched_ticket_ui(ui: &mut Ui, context: &mut PanelContext) {
    complaint_ui(ui, context);
    facts_ui(ui, context);
}

/// The guide is open.
pub(super) fn is_guided(context: &PanelContext) -> bool {
    context.ui_state.guidance != Guidance::Nothing && context.bench.job().guide.is_some()
}

/// The customer's words.
fn complaint_ui(ui: &mut Ui, context: &mut PanelContext) {
    kit::card(ui, |ui| {
        let job = context.bench.job();
        kit::heading(ui, say(context.ui_state.language, &job.title));
        let complaint = match &job.called_back {
            None => say(context.ui_state.language, &job.complaint).to_owned(),
            Some(called) => {
                kit::quiet(ui, context.fixed("call-back-visit"));
                context.texts.call_back(&called.account)
            }
        };
        let args = [("complaint", Value::from(complaint))];
        ui.label(RichText::new(context.with("ticket-complaint", &args)).italics());
        if let Some(called) = &job.called_back {
            kit::quiet(ui, context.texts.earlier_visit(&called.earlier, &job.parts));
        }
        questions_ui(ui, context);
    });
}

/// Time, money and what is allowed.
fn facts_ui(ui: &mut Ui, context: &mut PanelContext) {
    kit::card(ui, |ui| {
        // Facts stand close, so that the hands' buttons keep their place on a small screen.
        ui.spacing_mut().item_spacing.y = 2.0;
        ui.spacing_mut().interact_size.y = 20.0;
        let (job, view) = (context.bench.job(), context.bench.view());
        let over = |bad: bool| if bad { t::BAD } else { t::TEXT };
        let minutes = context.with(
            "ticket-minutes-of",
            &[
                ("minutes", Value::from(view.minutes.round())),
                ("par", Value::from(job.par_minutes)),
            ],
        );
        kit::row(
            ui,
            context.fixed("ticket-work"),
            minutes,
            over(view.minutes > job.par_minutes),
        );
        let money = context.with(
            "ticket-money-of",
            &[
                ("spent", Value::from(view.bill.round())),
                ("budget", Value::from(job.budget)),
            ],
        );
        kit::row(
            ui,
            context.fixed("ticket-money"),
            money,
            over(view.bill > job.budget),
        );
        let labour = context.texts.whole_money(view.labour);
        kit::row(ui, context.fixed("ticket-labour"), labour, t::TEXT);
        let limit = context.texts.whole_money(job.rates.repair_limit());
        kit::row(ui, context.fixed("ticket-limit"), limit, t::TEXT);
        let hours = context.with("ticket-hours", &[("hours", Value::from(view.waited_hours))]);
        kit::row(ui, context.fixed("ticket-waited"), hours, t::TEXT);
        kit::row(
            ui,
            context.fixed("ticket-mains"),
            format!("{} V  {} Hz", job.mains_v, job.mains_hz),
            t::TEXT,
        );
        let live = if job.live_tests_allowed {
            "ticket-live-yes"
        } else {
            "ticket-live-no"
        };
        kit::row(
            ui,
            context.fixed("ticket-live"),
            context.fixed(live),
            t::TEXT,
        );
        // Where the hold is the job, the way out is to be found on the sheet.
        if job.guide.is_some()
            && let Some(way) = context.texts.out_of_hold(&job.board.resets)
        {
            kit::quiet(
                ui,
                context.with("ticket-hold", &[("way", Value::from(way))]),
            );
        }
    });
}

/// A card whose buttons are low and close, so that what lets time pass is in sight too.
fn low_card(ui: &mut Ui, contents: impl FnOnce(&mut Ui)) {
    kit::card(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 4.0;
        ui.spacing_mut().interact_size.y = 28.0;
        contents(ui);
    });
}

/// What hands do first and last.
fn hands_ui(ui: &mut Ui, context: &mut PanelContext) {
    low_card(ui, |ui| {
        let view = context.bench.view();
        let (plugged, lid, open) = (
            view.machine.plugged,
            view.machine.lid_open,
            view.cabinet_open,
        );
        let pairs = [
            (
                if plugged { "do-unplug" } else { "do-plug" },
                if plugged {
                    Action::Unplug
                } else {
                    Action::Plug
                },
            ),
            (
                if lid { "do-close-lid" } else { "do-open-lid" },
                if lid {
                    Action::CloseLid
                } else {
                    Action::OpenLid
                },
            ),
            (
                if open {
                    "do-close-cabinet"
                } else {
                    "do-open-cabinet"
                },
                if open {
                    Action::CloseCabinet
                } else {
                    Action::OpenCabinet
                },
            ),
        ];
        for ((key, action), icon) in pairs.into_iter().zip([Icon::Plug, Icon::Lid, Icon::Panels]) {
            if kit::deed(ui, icon, context.fixed(key)).clicked() {
                context.act(action);
            }
        }
    });
}

/// Room for what a look for leaks showed: two lines.
const LEAKS_HEIGHT: f32 = 40.0;

/// What is not always possible. Each keeps its place whether or not it can be done now.
fn more_hands_ui(ui: &mut Ui, context: &mut PanelContext) {
    low_card(ui, |ui| {
        let view = context.bench.view();
        let (lid, open) = (view.machine.lid_open, view.cabinet_open);
        let wet = view.machine.level_mm > 5.0;
        if kit::deed_if(ui, open, Icon::Capacitor, context.fixed("do-discharge")).clicked() {
            context.act(Action::Discharge);
        }
        let log = context.bench.view().log;
        let (repaired, looked) = (!log.repairs().is_empty(), log.leak_checks().last().cloned());
        if kit::deed_if(ui, lid && wet, Icon::Bucket, context.fixed("do-bail-out")).clicked() {
            context.act(Action::BailOut);
        }
        if kit::deed_if(
            ui,
            repaired,
            Icon::Drop,
            context.fixed("do-check-for-leaks"),
        )
        .clicked()
        {
            context.act(Action::CheckForLeaks);
        }
        kit::reserved(ui, LEAKS_HEIGHT, |ui| {
            if let Some(check) = looked {
                kit::quiet(ui, context.texts.leak_check(&check));
            }
        });
    });
}

/// Letting time pass.
fn wait_ui(ui: &mut Ui, context: &mut PanelContext) {
    low_card(ui, |ui| {
        let waiting = context.bench.wait_ticks > 0;
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = 4.0;
            ui.spacing_mut().button_padding.x = 2.0;
            ui.label(RichText::new(context.fixed("wait")).size(t::SMALL));
            let width = (ui.available_width() - 8.0) / 3.0;
            for (key, seconds) in [("wait-10-s", 10), ("wait-1-min", 60), ("wait-10-min", 600)] {
                if kit::choice_sized(ui, false, context.fixed(key), [width, 28.0].into()).clicked()
                {
                    context.bench.wait(seconds * 100);
                }
            }
        });
        // In one place: what waits, and what ends the wait.
        if !waiting {
            let until = kit::deed(ui, Icon::Clock, context.fixed("wait-until"));
            let how = context.fixed("wait-until-how");
            if until.on_hover_text(how).clicked() {
                context.bench.wait_until_it_stops();
            }
            return;
        }
        let left = context.bench.wait_ticks / 100;
        let text = context.with("wait-left", &[("seconds", Value::from(left))]);
        if kit::deed(ui, Icon::Clock, text).clicked() {
            context.bench.stop_waiting();
        }
    });
}
