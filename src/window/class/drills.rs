//! The drills of the class: what has come of each, beginning a round, and keeping it as it goes.

use super::jobs::{JobStanding, further, of_status};
use super::kept::KeptClass;
use super::{ClassRes, drawn, text_of};
use crate::drill::{DrillRes, Recorded};
use crate::practice::LearnerRes;
use crate::state::{JobSourceRes, Screen};
use bevy::prelude::*;
use detent_class_protocol::{AttemptId, AttemptStatus, ClassDrill, ClassKind, ClassView};
use detent_training::practice::Skill;
use detent_training::record::{DrillHeader, DrillRecord, DrillText, ROUND, Seal, read_drill_round};
use std::collections::BTreeSet;

/// A drill of the class with what has come of it.
#[derive(Clone, Debug, PartialEq)]
pub struct DrillRow {
    /// The drill, and the seed of this learner's first round.
    pub drill: ClassDrill,
    /// Its skill; none where this program has no such drill.
    pub skill: Option<Skill>,
    /// What has come of it.
    pub standing: JobStanding,
    /// The most right answers in a round that was verified, where they may be shown.
    pub right: Option<u32>,
    /// The round that is under way here, by its name.
    pub under_way: Option<String>,
}

/// Every drill of the class, in order.
pub fn drill_rows(view: &ClassView, kept: &KeptClass) -> Vec<DrillRow> {
    let rows = view.drills.iter().map(|drill| {
        let here = rounds_of(kept, &drill.drill);
        let told: Vec<&AttemptStatus> = (view.attempts.iter())
            .filter(|status| {
                let is_known = here.iter().any(|(_, kept)| kept.attempt == status.attempt);
                is_known || is_at(status, &drill.drill)
            })
            .collect();
        let ours = here.iter().map(|(_, kept)| match kept.is_finished {
            true => JobStanding::HandedIn,
            false => JobStanding::Begun,
        });
        let all = told.iter().map(|status| of_status(status)).chain(ours);
        let is_verified =
            |status: &&&AttemptStatus| matches!(of_status(status), JobStanding::Verified(_));
        let right = told.iter().filter(is_verified);
        DrillRow {
            drill: drill.clone(),
            skill: drill.drill.parse().ok(),
            standing: all.fold(JobStanding::NotBegun, further),
            right: right
                .filter_map(|status| status.drill.as_ref()?.right)
                .max(),
            under_way: under_way(kept, &drill.drill).map(str::to_owned),
        }
    });
    rows.collect()
}

fn is_at(status: &AttemptStatus, drill: &str) -> bool {
    let told = status.drill.as_ref();
    told.is_some_and(|told| told.drill == drill)
}

/// Rounds of this drill that were begun here from this seat, by their names.
fn rounds_of<'a>(kept: &'a KeptClass, drill: &str) -> Vec<(&'a str, &'a super::kept::KeptAttempt)> {
    let attempts = kept.attempts.iter();
    attempts
        .filter(|(_, round)| round.drill.as_deref() == Some(drill) && kept.sits_in(&round.seat))
        .map(|(name, round)| (name.as_str(), round))
        .collect()
}

fn under_way<'a>(kept: &'a KeptClass, drill: &str) -> Option<&'a str> {
    let rounds = rounds_of(kept, drill).into_iter();
    let mut open = rounds.filter(|(_, kept)| !kept.is_finished);
    open.next().map(|(name, _)| name)
}

/// Rounds of this drill that this seat has begun anywhere.
fn rounds_begun(view: &ClassView, kept: &KeptClass, drill: &str) -> u64 {
    let told = view.attempts.iter().filter(|status| is_at(status, drill));
    let told = told.map(|status| status.attempt);
    let ours = rounds_of(kept, drill).into_iter();
    let all: BTreeSet<AttemptId> = told.chain(ours.map(|(_, kept)| kept.attempt)).collect();
    all.len() as u64
}

/// Begins the round that was asked for, or goes on with the one that is under way here.
pub(super) fn begin_round(
    mut class: ResMut<ClassRes>,
    mut drill_res: ResMut<DrillRes>,
    jobs: Res<JobSourceRes>,
    mut next: ResMut<NextState<Screen>>,
) {
    if class.to_begin.is_none() {
        return;
    }
    let class = &mut *class;
    let (Some(asked), Some(link), Some(attempts)) =
        (class.to_begin.take(), &mut class.link, jobs.0.attempts())
    else {
        return;
    };
    let kept = link.driver.kept();
    let open = under_way(kept, &asked.drill).map(str::to_owned);
    let read = open.as_ref().and_then(|name| {
        let text = text_of(attempts, name)?;
        let record = read_drill_round(name, &text, true).ok()?;
        Some((name, text, record))
    });
    if let Some((name, text, record)) = read {
        if record.right.is_some() {
            // The program ended before that was noted.
            link.driver.finish_round(name);
            return;
        }
        let sealed = link.driver.seals(name);
        let recorded = Recorded::new(name, DrillText::go_on(&text), (sealed, false));
        if drill_res.begin_recorded(recorded, &record) {
            next.set(Screen::Drill);
            return;
        }
    }
    let (Some(view), Ok(skill)) = (link.driver.view(), asked.drill.parse::<Skill>()) else {
        return;
    };
    let number = match view.kind {
        ClassKind::Practice => rounds_begun(view, kept, &asked.drill),
        // There is one.
        ClassKind::Examination => 0,
    };
    let header = DrillHeader::new(skill, asked.questions as usize, asked.seed + number);
    let Ok(text) = DrillText::begin(&header) else {
        return;
    };
    let attempt = AttemptId::of_bytes(drawn());
    let id = attempt.to_string();
    let name = format!("{}-{}{ROUND}", asked.drill, &id[..8]);
    let recorded = Recorded::new(&name, text, (kept.is_sealed(), true));
    let record = DrillRecord {
        header,
        answers: Vec::new(),
        right: None,
        seal: Seal::Without,
    };
    if drill_res.begin_recorded(recorded, &record) {
        let made_with = (env!("CARGO_PKG_VERSION"), link.content);
        (link.driver).begin_round(&name, attempt, &asked.drill, made_with);
        next.set(Screen::Drill);
    }
}

/// Keeps what is new of the round at hand, and has it sent from there.
pub(super) fn keep_round(
    mut class: ResMut<ClassRes>,
    mut drill_res: ResMut<DrillRes>,
    jobs: Res<JobSourceRes>,
    mut learner: ResMut<LearnerRes>,
) {
    // Looking is no change.
    let drill = drill_res.bypass_change_detection();
    if !drill.kept_back.is_empty() && !class.is_examination() {
        drill
            .kept_back
            .drain(..)
            .for_each(|answer| learner.note(answer));
    }
    let Some(sitting) = drill.sitting() else {
        return;
    };
    let answered = sitting.round.done().len() + usize::from(sitting.done.is_some());
    let is_over = answered >= sitting.round.questions();
    let Some(recorded) = &mut sitting.recorded else {
        return;
    };
    let name = recorded.name.clone();
    let Some((text, answers)) = recorded.take_to_keep() else {
        return;
    };
    if let Some(attempts) = jobs.0.attempts()
        && let Err(error) = attempts.keep_round(&name, text)
    {
        attempts.complain(error);
    }
    if let Some(link) = &mut class.link {
        link.driver.note_deeds(&name, answers);
        if is_over {
            link.driver.finish_round(&name);
        }
    }
}
