//! What reader and simulator say of the job on the bench, proved anew by itself while it is written.

use crate::background::Background;
use detent_content::{ContentLibrary, FileProof, FileReport, KnownBoards, check_file_in_slices};
use detent_training::lesson::{Scenario, WashTrace, wash_trace_in_slices};
use std::sync::Arc;
use std::sync::atomic::{AtomicU8, Ordering};

/// So long nothing is changed before the job is proved anew, s.
const PAUSE_S: f64 = 0.8;
/// Under this name the reader is given the text: what is found is told by its fields.
const FILE: &str = "job.ron";

/// What is being done for a proof.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ProofStep {
    /// The customer washes.
    Wash,
    /// What is known of every fault on this board is looked up.
    Faults,
    /// The expert, simulated learners and simulated hands work.
    People,
}

impl ProofStep {
    /// All of them, in their order.
    pub const ALL: [ProofStep; 3] = [ProofStep::Wash, ProofStep::Faults, ProofStep::People];

    /// Key of its text.
    pub const fn key(self) -> &'static str {
        match self {
            ProofStep::Wash => "workshop-proof-wash",
            ProofStep::Faults => "workshop-proof-faults",
            ProofStep::People => "workshop-proof-people",
        }
    }
}

/// What was proved of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct ProvedJob {
    /// What is wrong, and how it goes.
    pub report: FileReport,
    /// The customer's wash with the job's own seed; none where the job has a mistake.
    pub wash: Option<WashTrace>,
}

impl ProvedJob {
    /// The job that was proved, as the simulator had it; none where it had a mistake, or nothing is known of its board.
    pub fn proof(&self) -> Option<(&Scenario, &detent_training::authoring::ScenarioProof)> {
        match &self.report.proof {
            FileProof::Scenario(scenario, proof) => Some((scenario, proof)),
            FileProof::Board(_) | FileProof::Guide(_) | FileProof::None => None,
        }
    }
}

/// A proof that is being made.
struct Running {
    /// Place of what is being done among [`ProofStep::ALL`].
    step: Arc<AtomicU8>,
    work: Background<(Arc<KnownBoards>, ProvedJob)>,
}

/// The last proof of the job on the bench, and the one that is being made.
#[derive(Default)]
pub struct LiveProof {
    /// What is known of the faults on the board that was proved last.
    known: Arc<KnownBoards>,
    /// The text as it is, and since when, s of the window's time.
    text: String,
    since_s: f64,
    running: Option<Running>,
    /// What was proved last, and of which text.
    last: Option<(String, ProvedJob)>,
}

impl LiveProof {
    /// Once a frame: goes on with the proof, breaks it off where the text has changed, and begins the next one when
    /// nothing was changed for a moment. `scenario` is what the text says, where nothing is wrong with it.
    pub fn watch(
        &mut self,
        now_s: f64,
        (text, scenario): (&str, Option<&Scenario>),
        library: &Arc<ContentLibrary>,
    ) {
        if self.text != text {
            self.running = None;
            text.clone_into(&mut self.text);
            self.since_s = now_s;
        }
        if let Some(running) = &mut self.running {
            running.work.go_on();
        }
        match self.running.take() {
            Some(Running {
                work: Background::Done((known, proved)),
                ..
            }) => {
                self.known = known;
                self.last = Some((self.text.clone(), proved));
            }
            running => self.running = running,
        }
        if self.is_under_way() && self.running.is_none() && now_s - self.since_s >= PAUSE_S {
            let step = Arc::new(AtomicU8::new(0));
            let work = prove(
                Arc::clone(library),
                Arc::clone(&self.known),
                (self.text.clone(), scenario.cloned()),
                Arc::clone(&step),
            );
            let work = Background::begin_to_break_off(Box::pin(work));
            self.running = Some(Running { step, work });
        }
    }

    /// Whether the job is not proved yet as it is.
    pub fn is_under_way(&self) -> bool {
        self.last
            .as_ref()
            .is_none_or(|(text, _)| *text != self.text)
    }

    /// What is being done; none while it waits for the writer, or rests.
    pub fn step(&self) -> Option<ProofStep> {
        let running = self.running.as_ref()?;
        let place = usize::from(running.step.load(Ordering::Relaxed));
        ProofStep::ALL.get(place).copied()
    }

    /// What was proved last, be it of the job as it is or as it was.
    pub fn last(&self) -> Option<&ProvedJob> {
        self.last.as_ref().map(|(_, proved)| proved)
    }

    /// What was proved of the job as it is.
    pub fn of_now(&self) -> Option<&ProvedJob> {
        self.last().filter(|_| !self.is_under_way())
    }

    /// Waits until the job is proved as it is.
    #[cfg(test)]
    pub fn wait(
        &mut self,
        (text, scenario): (&str, Option<&Scenario>),
        library: &Arc<ContentLibrary>,
    ) {
        for now_s in [0.0, 2.0 * PAUSE_S] {
            self.watch(self.since_s + now_s, (text, scenario), library);
        }
        if let Some(running) = &mut self.running {
            running.work.wait();
        }
        self.watch(self.since_s + 2.0 * PAUSE_S, (text, scenario), library);
    }
}

/// Proves a job: its text, and what it says where nothing is wrong with it.
async fn prove(
    library: Arc<ContentLibrary>,
    mut known: Arc<KnownBoards>,
    (text, scenario): (String, Option<Scenario>),
    at: Arc<AtomicU8>,
) -> (Arc<KnownBoards>, ProvedJob) {
    let begin = |step: ProofStep| {
        let place = ProofStep::ALL.iter().position(|other| *other == step);
        at.store(place.unwrap_or_default() as u8, Ordering::Relaxed);
    };
    let mut wash = None;
    if let Some(scenario) = &scenario {
        begin(ProofStep::Wash);
        let washed = wash_trace_in_slices(library.library(scenario), scenario, scenario.seed);
        wash = washed.await.ok();
        begin(ProofStep::Faults);
        let (board, mains) = (&scenario.board, scenario.mains);
        if !known.knows(board, mains) {
            let mut learned = KnownBoards::default();
            learned.learn(&library, board, mains);
            known = Arc::new(learned);
        }
    }
    begin(ProofStep::People);
    let report = check_file_in_slices(&library, &known, FILE, text.as_bytes()).await;
    (known, ProvedJob { report, wash })
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_training::authoring::Severity;

    fn library() -> Arc<ContentLibrary> {
        Arc::new(ContentLibrary::builtin().expect("the built-in content is sound"))
    }

    /// A change breaks the proof off, and what was proved before is marked until the new one is there.
    #[test]
    fn a_change_breaks_the_proof_off_and_makes_the_last_one_stale() {
        let library = library();
        let source = library.scenario("drain-code").expect("built in");
        let said = (source.text.as_str(), Some(&source.scenario));
        let mut proof = LiveProof::default();
        proof.watch(10.0, said, &library);
        assert!(proof.is_under_way() && proof.step().is_none());
        proof.watch(10.5, said, &library);
        assert!(proof.running.is_none(), "the writer may go on");
        proof.watch(11.0, said, &library);
        assert!(proof.running.is_some());
        let changed = format!("{}\n", source.text);
        let said_now = (changed.as_str(), Some(&source.scenario));
        proof.watch(11.1, said_now, &library);
        assert!(proof.running.is_none() && proof.last().is_none());
        proof.wait(said_now, &library);
        assert!(!proof.is_under_way());
        let proved = proof.of_now().expect("of now").clone();
        assert_eq!(proved.report.count(Severity::Error), 0);
        // The job's own pump is the fault that its wash stores a code for.
        let (_, of_job) = proved.proof().expect("proved");
        let wash = proved.wash.as_ref().expect("it washes");
        let stored: Vec<u8> = wash.stored.iter().map(|stored| stored.code).collect();
        assert_eq!(of_job.machines[0].codes, stored);
        proof.watch(99.0, said, &library);
        assert!(proof.is_under_way() && proof.of_now().is_none());
        assert_eq!(proof.last(), Some(&proved));
    }

    #[test]
    fn a_job_with_a_mistake_is_told_by_its_field_and_not_run() {
        let library = library();
        let source = library.scenario("drain-code").expect("built in");
        let mut draft = detent_content::ScenarioDraft::copy_of(&source, "own");
        let change = detent_content::ScenarioChange::Budget(-1.0);
        draft.change(&change).expect("there");
        let mut proof = LiveProof::default();
        proof.wait((draft.text(), None), &library);
        let proved = proof.of_now().expect("of now");
        assert_eq!((&proved.wash, proved.proof()), (&None, None));
        let fields: Vec<&str> = (proved.report.findings.iter())
            .map(|finding| finding.field.as_str())
            .collect();
        assert_eq!(fields, ["budget"]);
    }
}
