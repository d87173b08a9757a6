//! The job ticket, and what hands can do without a tool.

use super::{Face, kit};
use crate::state::say;
use crate::tokens as t;
use bevy_egui::egui::{RichText, Ui};
use detent_content::Value;
use detent_training::bench::Action;

pub(super) fn ticket_ui(ui: &mut Ui, face: &mut Face) {
    kit::card(ui, |ui| {
        let job = face.bench.job();
        kit::heading(ui, say(face.desk.language, &job.title));
        ui.label(RichText::new(format!("“{}”", say(face.desk.language, &job.complaint))).italics());
    });
    kit::card(ui, |ui| {
        // Facts stand close, so that the hands' buttons keep their place on a small screen.
        ui.spacing_mut().item_spacing.y = 2.0;
        ui.spacing_mut().interact_size.y = 22.0;
        let (job, view) = (face.bench.job(), face.bench.view());
        let over = |bad: bool| if bad { t::BAD } else { t::TEXT };
        let minutes = face.with(
            "ticket-minutes-of",
            &[
                ("minutes", Value::from(view.minutes.round())),
                ("par", Value::from(job.par_minutes)),
            ],
        );
        kit::row(
            ui,
            face.text("ticket-work"),
            minutes,
            over(view.minutes > job.par_minutes),
        );
        let money = face.with(
            "ticket-money-of",
            &[
                ("spent", Value::from((view.spent + view.labour).round())),
                ("budget", Value::from(job.budget)),
            ],
        );
        kit::row(
            ui,
            face.text("ticket-money"),
            money,
            over(view.spent + view.labour > job.budget),
        );
        let labour = format!("{:.0}", view.labour);
        kit::row(ui, face.text("ticket-labour"), labour, t::TEXT);
        let limit = format!("{:.0}", job.rates.repair_limit());
        kit::row(ui, face.text("ticket-limit"), limit, t::TEXT);
        if view.waited_hours > 0.0 {
            let hours = face.with("ticket-hours", &[("hours", Value::from(view.waited_hours))]);
            kit::row(ui, face.text("ticket-waited"), hours, t::TEXT);
        }
        kit::row(
            ui,
            face.text("ticket-mains"),
            format!("{} V  {} Hz", job.mains_v, job.mains_hz),
            t::TEXT,
        );
        let live = if job.live_tests_allowed {
            "ticket-live-yes"
        } else {
            "ticket-live-no"
        };
        kit::row(ui, face.text("ticket-live"), face.text(live), t::TEXT);
    });
    kit::card(ui, |ui| {
        kit::heading(ui, face.text("hands"));
        let view = face.bench.view();
        let (plugged, lid, open) = (
            view.machine.plugged,
            view.machine.lid_open,
            view.cabinet_open,
        );
        let wet = view.machine.level_mm > 5.0;
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
        for (key, action) in pairs {
            if kit::wide(ui, face.text(key)).clicked() {
                face.act(action);
            }
        }
        if open && kit::wide(ui, face.text("do-discharge")).clicked() {
            face.act(Action::Discharge);
        }
        if lid && wet && kit::wide(ui, face.text("do-bail-out")).clicked() {
            face.act(Action::BailOut);
        }
    });
    kit::card(ui, |ui| {
        kit::heading(ui, face.text("wait"));
        let waiting = face.bench.wait_ticks > 0;
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = 6.0;
            let width = (ui.available_width() - 12.0) / 3.0;
            for (key, seconds) in [("wait-10-s", 10), ("wait-1-min", 60), ("wait-10-min", 600)] {
                if kit::choice_sized(ui, false, face.text(key), [width, 32.0].into()).clicked() {
                    face.bench.wait_ticks += seconds * 100;
                }
            }
        });
        if waiting {
            let left = face.bench.wait_ticks / 100;
            let text = face.with("wait-left", &[("seconds", Value::from(left))]);
            ui.horizontal(|ui| {
                kit::quiet(ui, text);
                if ui.button(face.text("wait-stop")).clicked() {
                    face.bench.wait_ticks = 0;
                }
            });
        }
    });
    if ui.button(face.text("leave-job")).clicked() {
        face.desk.leave = true;
    }
}
