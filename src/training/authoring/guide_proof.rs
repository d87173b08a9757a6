//! A written guide, proved by doing what its steps show.

use super::finding::{AuthoringFinding, PlacedFinding};
use crate::bench::script::StepError;
use crate::lesson::{
    Goal, Guide, Library, Scenario, SetUpError, WindowGoal, WindowState, WindowStepsDone, judge,
    mishaps, set_up_in_slices,
};
use crate::slices::SliceEnd;

/// What doing a guide's steps on its own job says of it.
#[derive(Clone, Debug, PartialEq)]
pub struct GuideProof {
    /// All its steps.
    pub steps: usize,
    /// Steps whose goal the bench saw reached by what they show.
    pub proved: usize,
    /// Steps whose goal is the window's: they are stated, and nothing here can prove them.
    pub about_window: usize,
    /// Ways astray: they are stated, since nothing says how somebody comes there.
    pub ways_astray: usize,
    /// Share of the points of whoever does what it shows, 0 to 1; none where it ends before the report.
    pub share: Option<f64>,
    /// What is wrong.
    pub findings: Vec<PlacedFinding>,
}

/// Does what a guide shows, step by step, on a fresh bench of its job, in slices. It ends at the first step that does
/// not reach its goal: whoever follows a guide waits there too.
///
/// # Errors
/// The job cannot be set up: it was not read against this catalogue.
pub async fn prove_guide_in_slices(
    guide: &Guide,
    scenario: &Scenario,
    library: &Library<'_>,
) -> Result<GuideProof, SetUpError> {
    let mut bench = set_up_in_slices(scenario, library, scenario.seed).await?;
    let mut proof = GuideProof {
        steps: guide.steps.len(),
        proved: 0,
        about_window: 0,
        ways_astray: guide.steps.iter().map(|step| step.astray.len()).sum(),
        share: None,
        findings: Vec::new(),
    };
    let (mut window, mut looked) = (WindowState::OPENED, WindowStepsDone::default());
    for (n, step) in guide.steps.iter().enumerate() {
        let number = n + 1;
        let mut place = guide.place(bench.log(), &looked);
        let already = place.steps_done > n || guide.look(place, window, &mut looked);
        if already {
            proof.find(
                format!("steps[{n}].goal"),
                AuthoringFinding::GuideGoalAlready { step: number },
            );
        } else if let Some(way) = place.astray {
            proof.find(
                format!("steps[{n}].astray[{way}]"),
                AuthoringFinding::GuideStraysItself { step: number },
            );
        }
        match step.goal {
            Goal::Bench(_) => {}
            Goal::Window(goal) => {
                proof.about_window += 1;
                goal.show_in(&mut window);
                guide.look(place, window, &mut looked);
            }
        }
        let mishaps_before = bench.events().len();
        for line in &step.shown {
            if let Err(error) = line.run(&mut bench) {
                proof.refused(n, error);
                return Ok(proof);
            }
            SliceEnd::default().await;
        }
        if bench.events().len() > mishaps_before {
            let (_, loss) = mishaps(&bench).swap_remove(mishaps_before);
            proof.find(
                format!("steps[{n}].shown"),
                AuthoringFinding::GuideDoesHarm {
                    step: number,
                    loss: Box::new(loss),
                },
            );
        }
        place = guide.place(bench.log(), &looked);
        if place.steps_done <= n {
            proof.find(
                format!("steps[{n}].goal"),
                AuthoringFinding::GuideGoalMissed { step: number },
            );
            return Ok(proof);
        }
        proof.proved += usize::from(matches!(step.goal, Goal::Bench(_)));
    }
    if bench.report().is_some() {
        let score = judge(scenario, &bench);
        let share = score.total() / score.of();
        proof.share = Some(share);
        if !score.passed() {
            let by = score.failed_by().map(|lost| Box::new(lost.loss.clone()));
            proof.find("steps", AuthoringFinding::GuideFails { by, share });
        }
    }
    Ok(proof)
}

impl GuideProof {
    fn find(&mut self, field: impl Into<String>, finding: AuthoringFinding) {
        self.findings.push(PlacedFinding {
            field: field.into(),
            finding,
        });
    }

    fn refused(&mut self, n: usize, error: StepError) {
        let why = Box::new(error);
        let finding = AuthoringFinding::GuideStepRefused { step: n + 1, why };
        self.find(format!("steps[{n}].shown"), finding);
    }
}

impl WindowGoal {
    /// Does in the window what this goal asks.
    fn show_in(self, window: &mut WindowState) {
        match self {
            WindowGoal::Looked(view) => window.view = view,
            WindowGoal::Opened(tab) => window.tab = tab,
            WindowGoal::ClockAt(speed) => window.clock_speed = speed,
        }
    }
}
