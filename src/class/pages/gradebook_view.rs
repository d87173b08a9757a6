//! What the pages of the gradebook show, and the words that they share.

use super::page_texts::PageTexts;
use super::shown::shown;
use crate::store::MarkChange;
use detent_class_protocol::ClassKind;
use detent_gradebook::{ClassGrades, ClassLearner, ItemStatistics, Mark, MarkRule, utc_minute};
use detent_training::lesson::{Dimension, Loss, LossKind};
use detent_training::practice::Skill;
use maud::{Markup, html};

/// What stands where there is nothing to tell.
pub(super) const NOTHING: &str = "–";

/// The gradebook at one moment, as the instructor may see it.
pub struct GradebookView {
    /// The marks, by the rule that was asked for.
    pub grades: ClassGrades,
    /// What they say of each job, in the order of the jobs.
    pub statistics: Vec<ItemStatistics>,
    /// What instructors changed, the oldest change first.
    pub changes: Vec<MarkChange>,
    /// What the class is for.
    pub kind: ClassKind,
    /// Whether learners are told no points yet.
    pub keeps_back: bool,
}

impl GradebookView {
    /// The address of a page of the gradebook in the same language and by the same rule.
    pub(super) fn address(&self, texts: &PageTexts, path: &str) -> String {
        let (language, rule) = (texts.language().code(), self.grades.book.rule());
        format!("/teacher/gradebook{path}?lang={language}&rule={rule}")
    }

    /// The query of a page without its language.
    pub(super) fn query(&self) -> String {
        format!("rule={}", self.grades.book.rule())
    }

    /// The page of a job, by its place in the class.
    pub(super) fn job_address(&self, texts: &PageTexts, place: usize) -> String {
        self.address(texts, &format!("/jobs/{}", place + 1))
    }

    /// The page of a learner.
    pub(super) fn learner_address(&self, texts: &PageTexts, learner: &ClassLearner) -> String {
        self.address(texts, &format!("/learners/{}", learner.seat))
    }

    /// What is said while learners are told no points.
    pub(super) fn banner(&self, texts: &PageTexts) -> Markup {
        html! {
            @if self.keeps_back { p.banner { (texts.get("pages-book-not-closed")) } }
        }
    }

    /// The choice of which attempt counts. It works without a script.
    pub(super) fn rule_form(&self, texts: &PageTexts) -> Markup {
        let rule = |rule: &MarkRule| texts.get(&format!("pages-rule-{rule}"));
        html! {
            form.rule method="get" {
                input type="hidden" name="lang" value=(texts.language().code());
                label { (texts.get("pages-book-rule")) " "
                    select name="rule" {
                        @for each in MarkRule::ALL {
                            option value=(each.name()) selected[*each == self.grades.book.rule()] { (rule(each)) }
                        }
                    }
                }
                button { (texts.get("pages-apply")) }
            }
        }
    }
}

/// A mark in a table: points, a sign for a pass or none, and whether an instructor changed it.
pub(super) fn mark_cell(mark: &Mark<'_>, is_pass: Option<bool>, texts: &PageTexts) -> Markup {
    let (class, sign, words) = match is_pass {
        Some(true) => ("passed", "✓", texts.get("pages-book-passed")),
        Some(false) => ("failed", "×", texts.get("pages-book-passed-not")),
        None => ("", "", String::new()),
    };
    html! {
        @match mark.points {
            None => span { (NOTHING) }
            Some(points) => {
                @if !mark.is_changed && !sign.is_empty() {
                    span.sign.(class) aria-hidden="true" { (sign) }
                    span.unseen { (words) " " }
                }
                (texts.points(points))
                @if mark.is_changed { span.changed { " (" (texts.get("pages-book-changed")) ")" } }
            }
        }
    }
}

impl PageTexts {
    /// Points with at most one decimal, as the language writes them.
    pub(super) fn points(&self, points: f64) -> String {
        let tenths = (points * 10.0).round() / 10.0;
        self.texts.digits(tenths.to_string())
    }

    /// A moment, ms since 1970, in UTC.
    pub(super) fn utc(&self, ms: u64) -> String {
        format!("{} UTC", utc_minute(ms))
    }

    /// A sum, whole units of money and hundredths.
    pub(super) fn money(&self, sum: f64) -> String {
        let amount = self.texts.digits(format!("{sum:.2}"));
        self.with("pages-book-money", &[("amount", amount)])
    }

    /// A share, 0 to 1, in whole percent.
    pub(super) fn percent(&self, share: f64) -> String {
        self.texts.percent(share, 0)
    }

    /// A correlation with two decimals and a real minus sign.
    pub(super) fn correlation(&self, correlation: f64) -> String {
        let written = self.texts.digits(format!("{:.2}", correlation.abs()));
        let is_negative = (100.0 * correlation).round() < 0.0;
        format!("{}{written}", if is_negative { "−" } else { "" })
    }

    /// A reason for lost points in a few words.
    pub(super) fn loss_kind(&self, kind: LossKind) -> String {
        self.get(&format!("loss-{kind}"))
    }

    /// Why points were lost, in full.
    pub(super) fn loss(&self, loss: &Loss) -> String {
        self.texts.loss(loss)
    }

    /// A side of a job.
    pub(super) fn side(&self, side: Dimension) -> String {
        self.get(&format!("dimension-{side}"))
    }

    /// A skill.
    pub(super) fn skill(&self, skill: Skill) -> String {
        self.get(&format!("skill-{skill}"))
    }

    /// Failure modes by name, or that nothing is wrong.
    pub(super) fn causes(&self, causes: &[String]) -> String {
        if causes.is_empty() {
            return self.get("mode-nothing");
        }
        let causes: Vec<String> = causes.iter().map(|id| self.texts.mode(id)).collect();
        causes.join("; ")
    }
}

/// A learner's name as it is shown.
pub(super) fn learner_name(learner: &ClassLearner) -> String {
    shown(&learner.name)
}
