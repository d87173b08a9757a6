//! The class on the start screen, before everything else: where it stands, and its jobs.

use super::super::{PanelContext, kit};
use super::strip::{notice_ui, send_state_ui};
use crate::class::ClassRes;
use crate::class::drills::{DrillRow, drill_rows};
use crate::class::driver::SendState;
use crate::class::jobs::{JobRow, JobStanding, job_rows};
use crate::port::JobSource;
use crate::state::{Guidance, say};
use crate::tokens as t;
use bevy_egui::egui::{Color32, RichText, Ui, Vec2};
use detent_class_protocol::{ClassKind, Standing, UnverifiedReason};
use detent_content::Value;
use detent_training::lesson::Bilingual;

/// Draws it.
pub(in crate::panels) fn seat_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    class: &mut ClassRes,
    jobs: &dyn JobSource,
) {
    let standing = class.standing();
    let is_open = matches!(standing, Some(Standing::Open { .. }));
    let link = class.joined();
    let Some((link, view)) = link.and_then(|link| Some((link, link.driver.view()?))) else {
        return;
    };
    let kind = view.kind;
    kit::card(ui, |ui| {
        kit::heading(ui, view.title.as_str());
        let who = [("name", Value::from(view.name.as_str()))];
        kit::quiet(ui, context.with("seat-you", &who));
        if let Some(standing) = standing {
            let (text, colour) = standing_words(context, standing);
            ui.label(RichText::new(text).color(colour));
        }
        if class.is_examination() {
            kit::quiet(ui, context.text("seat-examination-only"));
        }
        let small = |ui: &mut Ui, key: &str, colour: Color32| {
            ui.label(
                RichText::new(context.text(key))
                    .size(t::SMALL)
                    .color(colour),
            );
        };
        if link.differs_in_content() {
            small(ui, "seat-content-differs", t::AMBER);
        }
        if link.storage_error.is_some() {
            small(ui, "seat-not-kept", t::BAD);
        }
    });
    let names = context.ui_state.kept.iter().flatten();
    let names: Vec<&str> = names.map(|row| row.name.as_str()).collect();
    let rows = job_rows(view, link.driver.kept(), &names);
    let drills = drill_rows(view, link.driver.kept());
    notice_ui(ui, context, class);
    for row in &rows {
        job_ui(ui, context, jobs, (row, kind, is_open));
    }
    for row in &drills {
        drill_ui(ui, context, class, (row, kind, is_open));
    }
    send_state_ui(ui, context, class, jobs);
    leave_ui(ui, context, class);
    ui.add_space(10.0);
}

/// Where the class stands, and how that looks.
fn standing_words(context: &PanelContext, standing: Standing) -> (String, Color32) {
    let timed = |key: &str, seconds: u32| {
        context.with(key, &[("time", Value::from(span(context, seconds)))])
    };
    match standing {
        Standing::NotOpen { in_s } => (timed("seat-opens-in", in_s), t::AMBER),
        Standing::Open {
            left_s: Some(left_s),
        } => (timed("seat-open-left", left_s), t::GOOD),
        Standing::Open { left_s: None } => (context.text("seat-open"), t::GOOD),
        Standing::Paused => (context.text("seat-paused"), t::AMBER),
        Standing::Closed => (context.text("seat-closed"), t::QUIET),
    }
}

/// A span of time in hours and minutes.
fn span(context: &PanelContext, seconds: u32) -> String {
    /// From here on hours are easier to read than minutes.
    const LONG_MIN: u32 = 120;
    match seconds / 60 {
        0 => context.text("seat-time-short"),
        minutes if minutes < LONG_MIN => {
            context.with("seat-time-minutes", &[("minutes", Value::from(minutes))])
        }
        minutes => {
            let args = [
                ("hours", Value::from(minutes / 60)),
                ("minutes", Value::from(minutes % 60)),
            ];
            context.with("seat-time-hours", &args)
        }
    }
}

/// What has come of a drill, and how that looks.
fn drill_words(context: &PanelContext, row: &DrillRow) -> (String, Color32) {
    let questions = ("questions", Value::from(row.drill.questions));
    match (row.standing, row.right) {
        (JobStanding::NotBegun, _) => {
            let words = context.with("seat-drill-not-begun", &[questions]);
            (words, t::QUIET)
        }
        (JobStanding::Verified(_), Some(right)) => {
            let args = [questions, ("right", Value::from(right))];
            (context.with("seat-drill-verified-right", &args), t::GOOD)
        }
        (standing, _) => standing_of_work(context, standing, row.under_way.is_some()),
    }
}

/// What has come of a job, and how that looks.
fn job_words(context: &PanelContext, row: &JobRow) -> (String, Color32) {
    standing_of_work(context, row.standing, row.under_way.is_some())
}

/// How far a job or a drill has come, and how that looks.
fn standing_of_work(
    context: &PanelContext,
    standing: JobStanding,
    is_here: bool,
) -> (String, Color32) {
    let (key, colour) = match standing {
        JobStanding::NotBegun => ("seat-job-not-begun", t::QUIET),
        JobStanding::Begun if !is_here => ("seat-job-begun-elsewhere", t::AMBER),
        JobStanding::Begun => ("seat-job-begun", t::AMBER),
        JobStanding::HandedIn => ("seat-job-handed-in", t::SKY),
        JobStanding::Verified(None) => ("seat-job-verified", t::GOOD),
        JobStanding::Verified(Some(points)) => {
            let args = [("points", Value::from(points.round()))];
            return (context.with("seat-job-verified-points", &args), t::GOOD);
        }
        JobStanding::Differs => ("seat-job-differs", t::BAD),
        JobStanding::NotAssigned => ("seat-job-not-assigned", t::BAD),
        JobStanding::Unverified(UnverifiedReason::OtherProgram) => {
            ("seat-job-unverified-program", t::AMBER)
        }
        JobStanding::Unverified(UnverifiedReason::OtherContent) => {
            ("seat-job-unverified-content", t::AMBER)
        }
        JobStanding::Unverified(UnverifiedReason::TooLong) => {
            ("seat-job-unverified-long", t::AMBER)
        }
    };
    (context.text(key), colour)
}

/// Where a job of the class is.
enum JobAtHand<'a> {
    /// On offer, in this place.
    Offered(usize, &'a Bilingual),
    /// It came closed and can be done.
    Opened(&'a Bilingual),
    /// It is still to come.
    NotYet,
    /// Nowhere.
    Missing,
}

impl<'a> JobAtHand<'a> {
    fn of(jobs: &'a dyn JobSource, row: &JobRow) -> JobAtHand<'a> {
        let job = &row.job;
        if job.is_sealed {
            return match jobs.sealed_scenario(&job.job) {
                Some(opened) => JobAtHand::Opened(&opened.title),
                // What came cannot be read here: the content is another.
                None if row.has_scenario => JobAtHand::Missing,
                None => JobAtHand::NotYet,
            };
        }
        let offers = jobs.offers();
        let offer = offers.iter().position(|offer| offer.course.file == job.job);
        offer.map_or(JobAtHand::Missing, |offer| {
            JobAtHand::Offered(offer, &offers[offer].title)
        })
    }

    fn title(&self) -> Option<&'a Bilingual> {
        match self {
            JobAtHand::Offered(_, title) | JobAtHand::Opened(title) => Some(title),
            JobAtHand::NotYet | JobAtHand::Missing => None,
        }
    }
}

/// A job of the class: what has come of it, and what can be done with it now.
fn job_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    jobs: &dyn JobSource,
    (row, kind, is_open): (&JobRow, ClassKind, bool),
) {
    let source = JobAtHand::of(jobs, row);
    kit::card(ui, |ui| {
        let title = source.title().map_or(row.job.job.as_str(), |title| {
            say(context.ui_state.language, title)
        });
        ui.label(RichText::new(title).size(18.0));
        let (words, colour) = job_words(context, row);
        ui.label(RichText::new(words).size(t::SMALL).color(colour));
        let missing = match source {
            JobAtHand::Offered(..) | JobAtHand::Opened(_) => None,
            JobAtHand::NotYet => Some(("seat-job-drawing", t::AMBER)),
            JobAtHand::Missing => Some(("seat-job-missing", t::BAD)),
        };
        if let Some((key, colour)) = missing {
            let text = context.text(key);
            ui.label(RichText::new(text).size(t::SMALL).color(colour));
            return;
        }
        let is_new = row.standing == JobStanding::NotBegun;
        let may_begin = is_open && (is_new || kind == ClassKind::Practice);
        let resume = match (&row.under_way, &row.finished) {
            (Some(name), _) if is_open => Some(("seat-job-go-on", name)),
            (_, Some(name)) => Some(("seat-job-look", name)),
            (Some(_) | None, None) => None,
        };
        let begin = (may_begin && row.under_way.is_none()).then_some(match is_new {
            true => "seat-job-begin",
            false => "seat-job-again",
        });
        if resume.is_none() && begin.is_none() {
            return;
        }
        ui.horizontal_wrapped(|ui| {
            let go =
                |ui: &mut Ui, key: &str| kit::go_sized(ui, context.text(key), Vec2::ZERO).clicked();
            let resumed = resume.filter(|(key, _)| go(ui, key));
            let begins = begin.is_some_and(|key| go(ui, key));
            if let Some((_, name)) = resumed {
                context.ui_state.open(jobs.resume(name));
            } else if begins {
                context.ui_state.guidance = Guidance::Nothing;
                context.ui_state.opening_class_job = Some(row.job.job.clone());
                context.ui_state.open(match source {
                    JobAtHand::Offered(offer, _) => jobs.open(offer, row.job.seed),
                    JobAtHand::Opened(_) | JobAtHand::NotYet | JobAtHand::Missing => {
                        jobs.open_sealed(&row.job.job)
                    }
                });
            }
        });
    });
}

/// A drill of the class: what has come of it, and what can be done with it now.
fn drill_ui(
    ui: &mut Ui,
    context: &PanelContext,
    class: &mut ClassRes,
    (row, kind, is_open): (&DrillRow, ClassKind, bool),
) {
    kit::card(ui, |ui| {
        let name = match row.skill {
            Some(skill) => context.text(&format!("skill-{skill}")),
            None => row.drill.drill.clone(),
        };
        let title = context.with("seat-drill", &[("skill", Value::from(name))]);
        ui.label(RichText::new(title).size(18.0));
        let (words, colour) = drill_words(context, row);
        ui.label(RichText::new(words).size(t::SMALL).color(colour));
        if row.skill.is_none() {
            let text = context.text("seat-drill-missing");
            ui.label(RichText::new(text).size(t::SMALL).color(t::BAD));
            return;
        }
        let is_new = row.standing == JobStanding::NotBegun;
        let key = match (is_open, row.under_way.is_some()) {
            (false, _) => return,
            (true, true) => "seat-job-go-on",
            (true, false) if is_new => "seat-job-begin",
            (true, false) if kind == ClassKind::Practice => "seat-job-again",
            (true, false) => return,
        };
        if kit::go_sized(ui, context.text(key), Vec2::ZERO).clicked() {
            class.to_begin = Some(row.drill.clone());
        }
    });
}

/// Out of the seat, so that somebody else can sit here.
fn leave_ui(ui: &mut Ui, context: &PanelContext, class: &mut ClassRes) {
    if !class.desk.leaving {
        class.desk.leaving = kit::go(ui, context.text("seat-leave")).clicked();
        return;
    }
    let state = class.joined().map(|link| link.driver.send_state());
    kit::card(ui, |ui| {
        let key = match state {
            Some(SendState::Sent) | None => "seat-leave-sure",
            Some(
                SendState::Waiting { .. }
                | SendState::Unreachable
                | SendState::ServerFull
                | SendState::Refused,
            ) => "seat-leave-unsent",
        };
        ui.label(context.text(key));
        if kit::wide(ui, context.text("seat-leave-not")).clicked() {
            class.desk.leaving = false;
        }
        let sure = RichText::new(context.text("seat-leave-now")).color(t::BAD);
        if kit::wide(ui, sure).clicked() {
            class.leave();
        }
    });
}
