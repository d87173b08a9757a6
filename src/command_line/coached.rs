//! The one thing to work on after a job, in a line.

use super::print::said;
use detent_content::{ScenarioSource, Texts};
use detent_training::lesson::Score;
use detent_training::practice::{Answer, CoachAdvice, CourseJob, Exercise, Learner, Moment, coach};

/// What the coach says.
pub(super) struct Coached {
    advice: CoachAdvice,
    /// The job that trains it, if a job does.
    job: Option<ScenarioSource>,
}

impl Coached {
    /// After this job, to whoever gave these answers before; `all` are the jobs of the course.
    pub fn after(
        (done, score): (&ScenarioSource, &Score),
        answers: &[Answer],
        all: &[ScenarioSource],
    ) -> Option<Coached> {
        let course: Vec<CourseJob> = all.iter().map(ScenarioSource::course_job).collect();
        // Nobody says what time it is: the last answer's.
        let now = answers.last().map_or(Moment(0), |last| last.at);
        let learner = Learner::of(answers);
        let advice = coach((&done.stem(), score), &learner, &course, now)?;
        let job = match &advice.exercise {
            Exercise::Job(file) => all.iter().find(|job| job.stem() == *file).cloned(),
            Exercise::Drill(_) => None,
        };
        Some(Coached { advice, job })
    }

    /// What cost most, and what trains it.
    pub fn words(&self, score: &Score, texts: &Texts) -> String {
        let (side, place) = self.advice.loss;
        let sides = score.dimensions.iter();
        let lost = sides
            .filter(|of| of.dimension == side)
            .find_map(|of| of.lost.get(place));
        let lost = lost.map_or_else(String::new, |lost| texts.loss(&lost.loss));
        let trained = match (&self.advice.exercise, &self.job) {
            (Exercise::Drill(skill), _) => {
                let skill = texts.get(&format!("skill-{skill}"));
                texts.with("coach-drill", &[("skill", skill.into())])
            }
            (Exercise::Job(file), job) => {
                let title = job.as_ref().map(|job| &job.scenario.title);
                let title = title.map_or(file.as_str(), |title| said(title, texts.language()));
                let job = texts.with("coach-job", &[("title", title.into())]);
                format!("{job} ({file})")
            }
        };
        format!("{}: {lost} {trained}", texts.get("coach"))
    }
}
