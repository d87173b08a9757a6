//! Examinations: chosen, sat, closed, and what came of them.

use super::{PanelContext, kit};
use crate::port::JobSource;
use crate::practice::{LearnerRes, ahead_s, now};
use crate::state::{Examined, Guidance, Screen, say};
use crate::tokens as t;
use bevy_egui::egui::{
    Align, CornerRadius, Layout, RichText, ScrollArea, Ui, UiBuilder, Vec2, vec2,
};
use detent_content::{Value, day_and_time};
use detent_training::practice::{Examination, ExaminationSitting, JobStanding};

/// A time on the wall: hours, minutes and seconds.
fn wall_time(seconds: i64) -> String {
    let (hours, minutes) = (seconds / 3600, seconds / 60 % 60);
    format!("{hours}:{minutes:02}:{:02}", seconds % 60)
}

/// The time that is left, and how it looks: the last five minutes stand out.
pub(super) fn time_left_ui(ui: &mut Ui, context: &PanelContext, left_s: i64) {
    /// From here on there is little left, s.
    const LITTLE_S: i64 = 300;
    let colour = if left_s <= LITTLE_S { t::BAD } else { t::SKY };
    let args = [("time", Value::from(wall_time(left_s)))];
    ui.label(RichText::new(context.with("examination-left", &args)).color(colour));
}

/// What stands in the place of a score until the set is closed.
pub(super) fn sealed_ui(ui: &mut Ui, context: &mut PanelContext) {
    kit::card(ui, |ui| {
        if context.ui_state.examined.is_none() {
            return super::class::sealed_ui(ui, context);
        }
        let key = if context.bench.view().finished {
            "examination-handed-in"
        } else {
            "examination-no-score-yet"
        };
        ui.label(context.text(key));
        if kit::go(ui, context.text("examination-back")).clicked() {
            context.ui_state.examine = true;
        }
    });
}

/// Draws it; where to go from here, if anywhere.
pub(super) fn examination_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    learner: &mut LearnerRes,
    jobs: &dyn JobSource,
) -> Option<Screen> {
    let all = ui.max_rect();
    ui.painter().rect_filled(all, CornerRadius::ZERO, t::PANEL);
    let mut place = all.shrink2(vec2(16.0, 10.0));
    // A line longer than this is hard to read.
    place.set_width(place.width().min(760.0));
    let place = place.translate(vec2((all.width() - 32.0 - place.width()) / 2.0, 0.0));
    let mut to = None;
    ui.scope_builder(UiBuilder::new().max_rect(place), |ui| {
        ui.horizontal(|ui| {
            let title = RichText::new(context.text("examination-title"));
            ui.label(title.size(28.0).color(t::AMBER));
            let right = Layout::right_to_left(Align::Center);
            ui.with_layout(right, |ui| {
                if kit::go_sized(ui, context.text("practice-back"), Vec2::ZERO).clicked() {
                    to = Some(Screen::Start);
                }
                let name = learner.name().map(str::to_owned);
                ui.label(name.unwrap_or_else(|| context.text("practice-guest")));
            });
        });
        if context.ui_state.opening.is_some() {
            kit::quiet(ui, context.fixed("start-opening"));
            ui.disable();
        }
        if let Some((message, _)) = &context.ui_state.message {
            ui.label(RichText::new(message).color(t::BAD));
        }
        ScrollArea::vertical()
            .id_salt("examination")
            .auto_shrink(false)
            .show(ui, |ui| {
                let wanted = match learner.sitting() {
                    Some(sitting) => open_ui(ui, context, jobs, sitting),
                    None => {
                        let wanted = offers_ui(ui, context, learner, jobs);
                        results_ui(ui, context, learner, jobs);
                        wanted
                    }
                };
                match wanted {
                    Some(Wanted::Sit(file, examination)) => learner.sit(&file, &examination),
                    Some(Wanted::Job(job)) => {
                        to = to.or(work_on(context, learner, jobs, &job));
                    }
                    Some(Wanted::Close) => {
                        context.ui_state.examined = None;
                        learner.close_sitting();
                    }
                    None => {}
                }
            });
    });
    to
}

/// What was pressed.
enum Wanted {
    /// To sit this, by its file name without folder and ending.
    Sit(String, Examination),
    /// To work on this job.
    Job(String),
    /// To close the set.
    Close,
}

/// The title of a job on offer; its file's name where there is none of that name any more.
fn job_title(context: &PanelContext, jobs: &dyn JobSource, file: &str) -> String {
    let offer = jobs.offers().iter().find(|offer| offer.course.file == file);
    offer.map_or_else(
        || file.to_owned(),
        |offer| say(context.ui_state.language, &offer.title).to_owned(),
    )
}

/// The title of what was sat.
fn sitting_title(
    context: &PanelContext,
    jobs: &dyn JobSource,
    sitting: &ExaminationSitting,
) -> String {
    let set = jobs
        .examinations()
        .iter()
        .find(|(file, _)| *file == sitting.file);
    set.map_or_else(
        || job_title(context, jobs, &sitting.file),
        |(_, examination)| say(context.ui_state.language, &examination.title).to_owned(),
    )
}

/// What becomes of a job that is left before it is handed in.
fn one_try_ui(ui: &mut Ui, context: &PanelContext, jobs: &dyn JobSource) {
    let keeps = (jobs.attempts()).is_some_and(|attempts| attempts.storage_error().is_none());
    if keeps {
        ui.label(context.text("examination-one-try"));
    } else {
        ui.label(RichText::new(context.text("examination-one-try-not-kept")).color(t::BAD));
    }
}

/// The job of this name is the one on the bench, as it was left there.
fn is_on_bench(context: &PanelContext, file: &str) -> bool {
    (context.ui_state.examined.as_ref()).is_some_and(|at| at.job == file)
        && context.bench.job().file == file
}

/// What can be sat.
fn offers_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    learner: &LearnerRes,
    jobs: &dyn JobSource,
) -> Option<Wanted> {
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("examination-rules"));
        ui.label(context.text("examination-rules-text"));
        one_try_ui(ui, context, jobs);
        if learner.name().is_none() {
            kit::quiet(ui, context.text("examination-guest"));
        }
    });
    let mut wanted = None;
    let chosen = jobs.offers().get(context.ui_state.offer).map(|offer| {
        let file = offer.course.file.clone();
        (file.clone(), Examination::of_job(offer.title.clone(), file))
    });
    for (file, examination) in jobs.examinations().iter().chain(&chosen) {
        kit::card(ui, |ui| {
            let title = say(context.ui_state.language, &examination.title);
            let heading = if examination.jobs == [file.as_str()] {
                let args = [("title", Value::from(title.to_owned()))];
                context.with("examination-one-job", &args)
            } else {
                title.to_owned()
            };
            kit::heading(ui, heading);
            let titles = examination.jobs.iter();
            let titles: Vec<String> = titles.map(|job| job_title(context, jobs, job)).collect();
            let pages = examination.sheet.iter();
            let pages: Vec<String> = (pages)
                .map(|page| context.text(&format!("sheet-{page}")))
                .collect();
            let args = [
                ("minutes", Value::from(examination.minutes)),
                ("jobs", Value::from(titles.join("; "))),
                ("pages", Value::from(pages.join(", "))),
            ];
            ui.label(context.with("examination-terms", &args));
            let args = [("title", Value::from(title.to_owned()))];
            if kit::go(ui, context.with("examination-begin", &args)).clicked() {
                context.ui_state.closing = false;
                wanted = Some(Wanted::Sit(file.clone(), examination.clone()));
            }
        });
    }
    wanted
}

/// An open sitting: its time, its jobs, and its end.
fn open_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    jobs: &dyn JobSource,
    sitting: &ExaminationSitting,
) -> Option<Wanted> {
    let mut wanted = None;
    kit::card(ui, |ui| {
        kit::heading(ui, sitting_title(context, jobs, sitting));
        time_left_ui(ui, context, sitting.left_s(now()));
        kit::quiet(ui, context.text("examination-rules-text"));
        one_try_ui(ui, context, jobs);
    });
    for job in &sitting.jobs {
        kit::card(ui, |ui| {
            ui.label(RichText::new(job_title(context, jobs, &job.job)).size(18.0));
            let go_on = Some("examination-job-go-on");
            let (state, label) = match job.standing() {
                JobStanding::NotBegun => ("examination-job-open", Some("examination-job-begin")),
                JobStanding::NothingDone | JobStanding::Kept(_) => ("examination-job-begun", go_on),
                JobStanding::NotKept if is_on_bench(context, &job.job) => {
                    ("examination-job-on-bench", go_on)
                }
                JobStanding::NotKept => ("examination-job-try-over", None),
                JobStanding::HandedIn(_) => ("examination-job-handed-in", None),
            };
            kit::quiet(ui, context.text(state));
            if let Some(label) = label
                && kit::go(ui, context.text(label)).clicked()
            {
                wanted = Some(Wanted::Job(job.job.clone()));
            }
        });
    }
    kit::card(ui, |ui| {
        if !context.ui_state.closing {
            if kit::wide(ui, context.text("examination-close")).clicked() {
                context.ui_state.closing = true;
            }
            return;
        }
        let open = sitting.jobs.iter().filter(|job| job.result.is_none());
        let args = [("open", Value::from(open.count()))];
        ui.label(context.with("examination-close-sure", &args));
        if kit::wide(ui, context.text("examination-close-not")).clicked() {
            context.ui_state.closing = false;
        }
        let sure = RichText::new(context.text("examination-close-now")).color(t::BAD);
        if kit::wide(ui, sure).clicked() {
            context.ui_state.closing = false;
            wanted = Some(Wanted::Close);
        }
    });
    wanted
}

/// Begins a job of the sitting or goes on with it; where that is, unless the bench comes by itself.
fn work_on(
    context: &mut PanelContext,
    learner: &mut LearnerRes,
    jobs: &dyn JobSource,
    file: &str,
) -> Option<Screen> {
    let on_bench = is_on_bench(context, file);
    let begin = |sitting: &mut ExaminationSitting| sitting.begin_job(file, on_bench, now());
    if !learner.in_sitting(|sitting| begin(sitting).map(|()| true)) {
        return None;
    }
    if on_bench {
        return Some(Screen::Bench);
    }
    let sitting = learner.sitting()?;
    let work = match sitting.job(file)?.standing() {
        // Where it cannot be gone on with now, it says why; a new bench would be a second try.
        JobStanding::Kept(attempt) => jobs.resume(attempt),
        JobStanding::NotKept | JobStanding::HandedIn(_) => return None,
        JobStanding::NotBegun | JobStanding::NothingDone => {
            let mut offers = jobs.offers().iter();
            let offer = offers.position(|offer| offer.course.file == file)?;
            jobs.open(offer, sitting.seed)
        }
    };
    context.ui_state.guidance = Guidance::Nothing;
    context.ui_state.examined = Some(Examined {
        job: file.to_owned(),
        until: sitting.until,
        sheet: sitting.sheet.clone(),
    });
    context.ui_state.open(work);
    None
}

/// What came of earlier sittings, the latest first.
fn results_ui(ui: &mut Ui, context: &mut PanelContext, learner: &LearnerRes, jobs: &dyn JobSource) {
    for sitting in learner.sittings().iter().rev() {
        let Some(result) = sitting.result() else {
            continue;
        };
        kit::card(ui, |ui| {
            let title = sitting_title(context, jobs, sitting);
            kit::heading(
                ui,
                format!("{title}   {}", day_and_time(sitting.began, ahead_s())),
            );
            let args = [
                ("passed", Value::from(result.passed)),
                ("jobs", Value::from(result.jobs)),
                ("pauses", Value::from(result.pauses)),
                ("time", Value::from(wall_time(result.paused_s))),
            ];
            ui.label(context.with("examination-result", &args));
            for job in &sitting.jobs {
                let title = Value::from(job_title(context, jobs, &job.job));
                let (text, colour) = match job.standing() {
                    JobStanding::HandedIn(result) => {
                        let args = [
                            ("title", title),
                            ("kept", Value::from(result.kept.round())),
                            ("of", Value::from(result.of.round())),
                        ];
                        let key = match (result.passed, result.out_of_time) {
                            (true, _) => "examination-job-passed",
                            (false, false) => "examination-job-failed",
                            (false, true) => "examination-job-out-of-time",
                        };
                        let colour = if result.passed { t::GOOD } else { t::BAD };
                        (context.with(key, &args), colour)
                    }
                    JobStanding::NotKept => {
                        let args = [("title", title)];
                        (context.with("examination-job-broken-off", &args), t::BAD)
                    }
                    JobStanding::NotBegun | JobStanding::NothingDone | JobStanding::Kept(_) => {
                        let args = [("title", title)];
                        (context.with("examination-job-missing", &args), t::BAD)
                    }
                };
                ui.horizontal_wrapped(|ui| {
                    ui.label(RichText::new(text).color(colour));
                    if let (Some(attempt), Some(_)) = (&job.attempt, &job.result)
                        && jobs.attempts().is_some()
                        && kit::go_sized(ui, context.text("kept-look"), Vec2::ZERO).clicked()
                    {
                        context.ui_state.examined = None;
                        context.ui_state.open(jobs.resume(attempt));
                    }
                });
            }
        });
    }
}
