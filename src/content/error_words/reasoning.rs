//! Words for jobs that cannot be set up, thought over or varied, and for practice that cannot be aimed.

use super::files::number;
use crate::text::{Texts, Value};
use crate::variants::JobVariantError;
use detent_simulation::units::{Span, TICKS_PER_S};
use detent_training::bench::cost::LONGEST_JOB;
use detent_training::bench::script::StepError;
use detent_training::lesson::SetUpError;
use detent_training::practice::fit::{FEWEST_ANSWERS, FEWEST_LEARNERS, TooFew};
use detent_training::practice::{Target, TargetError};
use detent_training::reason::{PathError, PlanError, PosteriorError};
use detent_training::variant::VariantError;

impl Texts {
    /// A scenario that cannot be set up.
    pub fn set_up_error(&self, error: &SetUpError) -> String {
        match error {
            SetUpError::UnknownMode(id) => {
                self.with("file-problem-unknown-mode", &[("name", id.as_str().into())])
            }
            SetUpError::EmptyDraw => self.get("error-empty-draw"),
        }
    }

    /// Why a step of a script could not be done.
    pub fn step_error(&self, error: &StepError) -> String {
        let hours = |span: Span| Value::from(span.0.div_ceil(3600 * TICKS_PER_S));
        match error {
            StepError::Refused(refusal) => self.refusal(refusal),
            StepError::NoPosition(position) => {
                self.with("error-step-no-position", &[("position", number(position))])
            }
            StepError::NeverCame { what, limit_s } => self.with(
                "error-step-never-came",
                &[
                    ("what", number(format!("{what:?}"))),
                    ("seconds", number(limit_s)),
                ],
            ),
            StepError::TooLong => self.with("error-step-too-long", &[("most", hours(LONGEST_JOB))]),
            StepError::StepTooLong(span) => self.with(
                "error-step-longer-than-a-job",
                &[("hours", hours(*span)), ("most", hours(LONGEST_JOB))],
            ),
        }
    }

    /// Why nothing can be planned.
    pub fn plan_error(&self, error: &PlanError) -> String {
        let at = |key: &str, at: &usize| self.with(key, &[("at", number(at))]);
        match error {
            PlanError::Incurable(hypothesis) => at("error-plan-incurable", hypothesis),
            PlanError::Chances(test) => at("error-plan-chances", test),
            PlanError::Sum(test, hypothesis) => self.with(
                "error-plan-sum",
                &[("at", number(test)), ("hypothesis", number(hypothesis))],
            ),
            PlanError::TooMany => self.get("error-plan-too-many"),
            PlanError::Bad(place) => at("error-plan-bad", place),
        }
    }

    /// Why a belief cannot be formed.
    pub fn posterior_error(&self, error: &PosteriorError) -> String {
        match error {
            PosteriorError::Empty => self.get("error-belief-empty"),
            PosteriorError::Bad { at, value } => self.with(
                "error-belief-bad",
                &[("at", number(at)), ("found", number(value))],
            ),
            PosteriorError::Length { found, wanted } => self.with(
                "error-belief-length",
                &[("found", number(found)), ("wanted", number(wanted))],
            ),
            PosteriorError::Impossible => self.get("error-belief-impossible"),
        }
    }

    /// Why the way through a job cannot be shown.
    pub fn path_error(&self, error: &PathError) -> String {
        match error {
            PathError::SetUp(error) => self.set_up_error(error),
            PathError::Refused(refusal) => {
                let refusal = self.refusal(refusal);
                self.with("error-path-refused", &[("refusal", refusal.into())])
            }
            PathError::Plan(error) => self.plan_error(error),
            PathError::Posterior(error) => self.posterior_error(error),
        }
    }

    /// Why there can be no variants of a job.
    pub fn variant_error(&self, error: &VariantError) -> String {
        match error {
            VariantError::NoTable(board) => self.with(
                "error-variant-no-table",
                &[("board", board.as_str().into())],
            ),
            VariantError::Original(refusal) => {
                let reason = self.get(&format!("variant-refused-{refusal}"));
                self.with("error-variant-original", &[("reason", reason.into())])
            }
            VariantError::SetUp(error) => self.set_up_error(error),
            VariantError::Plan(error) => self.plan_error(error),
            VariantError::Posterior(error) => self.posterior_error(error),
        }
    }

    /// Why there is no variant.
    pub fn job_variant_error(&self, error: &JobVariantError) -> String {
        match error {
            JobVariantError::Variant(error) => self.variant_error(error),
            JobVariantError::Content(error) => self.content_error(error),
        }
    }

    /// Too few answers to fit anything to.
    pub fn too_few(&self, error: &TooFew) -> String {
        self.with(
            "error-too-few",
            &[
                ("skill", self.get(&format!("skill-{}", error.skill)).into()),
                ("answers", number(error.answers)),
                ("learners", number(error.learners)),
                ("least-answers", number(FEWEST_ANSWERS)),
                ("least-learners", number(FEWEST_LEARNERS)),
            ],
        )
    }

    /// A target that practice cannot aim at.
    pub fn target_error(&self, TargetError(found): &TargetError) -> String {
        self.with(
            "error-target",
            &[
                ("found", number(found)),
                ("least", number(Target::LOWEST)),
                ("most", number(Target::HIGHEST)),
            ],
        )
    }
}
