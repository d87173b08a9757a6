//! Guides: `<job>.guide.ron` beside the job's own file.

use super::error::{ContentError, Problem, Wanted};
use super::reader::{Finding, Page, first};
use super::scenario_file::unwritten;
use super::script_file::read_script;
use detent_training::bench::script::ScriptStep;
use detent_training::lesson::{Astray, BenchGoal, Bilingual, Goal, Guide, GuideStep};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How a guide's file ends.
pub const GUIDE_ENDING: &str = ".guide.ron";

/// A guide through one job. It lies beside the job and is called as the job is: `my-job.ron`, `my-job.guide.ron`.
#[derive(Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Guide")]
pub(super) struct GuideFile {
    /// The steps, in order; at least one.
    #[schemars(length(min = 1))]
    steps: Vec<Step>,
}

/// One step. How it is done stands in lines of a script.
#[derive(Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Step {
    /// What to do and why.
    say: Bilingual,
    /// What ends the step.
    goal: Goal,
    /// Keys of the texts of the controls and parts that are marked, if any.
    #[serde(default)]
    mark: Vec<String>,
    /// How it is done, in lines of a script, to be shown.
    shown: Vec<String>,
    /// What leads away from it, if anything is to be said of that.
    #[serde(default)]
    astray: Vec<WayAstray>,
}

/// What leads away from a step, and the way back.
#[derive(Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct WayAstray {
    /// What the log shows then.
    after: BenchGoal,
    /// What ends it; without it, it is told until the step is done.
    #[serde(default)]
    until: Option<BenchGoal>,
    /// What it means, and the way back.
    say: Bilingual,
    /// The way back in lines of a script, to be shown before the step itself.
    #[serde(default)]
    shown: Vec<String>,
}

/// Lines of a script; a mistake in one is found at its place in `at`.
fn read_lines(
    file: &str,
    lines: &[String],
    at: &str,
    findings: &mut Vec<Finding>,
) -> Vec<ScriptStep> {
    let mut shown = Vec::new();
    for (k, line) in lines.iter().enumerate() {
        match read_script(file, line.as_bytes()) {
            Ok(lines) => shown.extend(lines.into_iter().map(|(_, step)| step)),
            Err(error) => findings.push((format!("{at}[{k}]"), error.problem)),
        }
    }
    shown
}

/// Read a guide. Whether its goals can be reached only doing its job shows.
///
/// # Errors
/// The first mistake in the file.
pub fn read_guide(file: &str, bytes: &[u8]) -> Result<Guide, ContentError> {
    check_guide(file, bytes).map_err(first)
}

/// The same for whoever wants to know all that is wrong.
///
/// # Errors
/// Every mistake in the file, in its order; at least one.
pub fn check_guide(file: &str, bytes: &[u8]) -> Result<Guide, Vec<ContentError>> {
    let page = Page::open(file, bytes).map_err(|error| vec![error])?;
    let written: GuideFile = page.parse().map_err(|error| vec![error])?;
    let mut findings: Vec<Finding> = Vec::new();
    if written.steps.is_empty() {
        let problem = Problem::Nothing(Wanted::Step);
        findings.push(("steps".to_owned(), problem));
    }
    let mut steps = Vec::new();
    for (n, step) in written.steps.into_iter().enumerate() {
        findings.extend(unwritten(&format!("steps[{n}].say"), &step.say));
        let mut astray = Vec::new();
        for (k, way) in step.astray.into_iter().enumerate() {
            let at = format!("steps[{n}].astray[{k}]");
            findings.extend(unwritten(&format!("{at}.say"), &way.say));
            let shown = read_lines(file, &way.shown, &format!("{at}.shown"), &mut findings);
            astray.push(Astray {
                after: way.after,
                until: way.until,
                say: way.say,
                shown,
            });
        }
        let at = format!("steps[{n}].shown");
        let shown = read_lines(file, &step.shown, &at, &mut findings);
        steps.push(GuideStep {
            say: step.say,
            goal: step.goal,
            mark: step.mark,
            shown,
            astray,
        });
    }
    page.judge_all(Guide { steps }, findings)
}
