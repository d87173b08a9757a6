//! The real bench and the built-in jobs behind the window's port.

use super::attempts::{Attempts, Keeping, Trouble};
use super::port::{BenchPort, CauseRow, Job, Kept, KeptState, Offer, PartRow, Shop};
use crate::bench::script::Step;
use crate::bench::{Action, Bench, BenchView, Caution, Refusal};
use crate::content::{Shelf, Titled, redo};
use crate::lesson::{Mains, Scenario, Score, judge, set_up};
use crate::record::{Footer, Header, LATEST, read_attempt};
use crate::units::Time;
use std::path::Path;
use std::sync::Arc;

/// The built-in scenarios, or one of the player's own.
pub struct Workshop {
    shelf: Shelf,
    titled: Vec<Titled>,
    offers: Vec<Offer>,
    /// Where attempts are kept, if they are.
    attempts: Option<Arc<dyn Attempts>>,
}

impl Workshop {
    /// Every built-in scenario, and `own` before them if given.
    ///
    /// # Errors
    /// What is wrong with a file, in one sentence.
    pub fn new(own: Option<&str>, attempts: Option<Arc<dyn Attempts>>) -> Result<Workshop, String> {
        let shelf = Shelf::builtin().map_err(|e| e.to_string())?;
        let mut titled = shelf.scenarios().map_err(|e| e.to_string())?;
        if let Some(name) = own {
            let mine = shelf.scenario(name).map_err(|e| e.to_string())?;
            titled.retain(|t| t.file != mine.file);
            titled.insert(0, mine);
        }
        let offers = titled
            .iter()
            .map(|t| Offer {
                title: t.scenario.title.clone(),
                goal: t.scenario.goal.clone(),
                seed: t.scenario.seed,
            })
            .collect();
        Ok(Workshop {
            shelf,
            titled,
            offers,
            attempts,
        })
    }

    /// The job that an attempt names.
    fn titled(&self, file: &str) -> Option<&Titled> {
        self.titled.iter().find(|titled| titled.file == file)
    }
}

impl Shop for Workshop {
    fn offers(&self) -> &[Offer] {
        &self.offers
    }

    fn open(&self, offer: usize, seed: u64) -> Result<Box<dyn BenchPort>, String> {
        let titled = self.titled.get(offer).ok_or("there is no such job")?;
        let scenario = &titled.scenario;
        let bench =
            set_up(scenario, &self.shelf.library(scenario), seed).map_err(|e| e.to_string())?;
        let header = Header::new(&titled.file, &titled.text, seed);
        Ok(Box::new(WorkBench {
            job: job(scenario, &bench),
            bench,
            scenario: scenario.clone(),
            begin: self.attempts.clone().map(|attempts| Begin {
                attempts,
                job: stem(&titled.file),
                header,
            }),
            attempts: self.attempts.clone(),
            keeping: None,
            kept: 0,
        }))
    }

    fn attempts(&self) -> Option<&dyn Attempts> {
        self.attempts.as_deref()
    }

    fn kept(&self) -> Vec<Kept> {
        let Some(attempts) = &self.attempts else {
            return Vec::new();
        };
        let state = |name: &str| -> Result<KeptState, Trouble> {
            let attempt = read_attempt(name, &attempts.read(name)?)?;
            let end = attempts.seen_until(name).unwrap_or_default();
            Ok(KeptState {
                title: self
                    .titled(&attempt.header.scenario)
                    .map(|t| t.scenario.title.clone()),
                actions: attempt.actions.len(),
                time_s: attempt.last().max(end).seconds(),
                score: attempt.footer.as_ref().map(|footer| footer.score),
            })
        };
        let names = attempts.names().into_iter();
        names
            .map(|name| Kept {
                state: state(&name),
                name,
            })
            .collect()
    }

    fn resume(&self, name: &str) -> Result<Box<dyn BenchPort>, Trouble> {
        let attempts = self.attempts.clone();
        let attempts = attempts.ok_or_else(|| Trouble::Gone(name.to_owned()))?;
        let attempt = read_attempt(name, &attempts.read(name)?)?;
        let titled = self
            .titled(&attempt.header.scenario)
            .ok_or_else(|| Trouble::Gone(attempt.header.scenario.clone()))?;
        let mut bench = redo(&self.shelf, titled, name, &attempt)?.bench;
        let keeping = if attempt.footer.is_some() {
            Box::new(Finished(name.to_owned()))
        } else {
            let end = attempts.seen_until(name).unwrap_or_default().min(LATEST);
            bench.wait(end.since(bench.now()));
            attempts.go_on(name)?
        };
        Ok(Box::new(WorkBench {
            job: job(&titled.scenario, &bench),
            kept: bench.history().len(),
            bench,
            scenario: titled.scenario.clone(),
            begin: None,
            attempts: Some(attempts),
            keeping: Some(keeping),
        }))
    }
}

/// File name without folder and ending.
fn stem(file: &str) -> String {
    let stem = Path::new(file).file_stem();
    stem.map_or_else(|| "job".to_owned(), |s| s.to_string_lossy().into_owned())
}

/// An attempt to which nothing is added any more.
struct Finished(String);

impl Keeping for Finished {
    fn name(&self) -> String {
        self.0.clone()
    }

    fn push(&mut self, _: Time, _: &Action) -> Result<(), Trouble> {
        Ok(())
    }

    fn mark(&mut self, _: Time) {}

    fn finish(&mut self, _: &Footer) -> Result<(), Trouble> {
        Ok(())
    }
}

fn job(scenario: &Scenario, bench: &Bench) -> Job {
    let (mains_v, mains_hz) = match scenario.mains {
        Mains::V120Hz60 => (120, 60),
        Mains::V230Hz50 => (230, 50),
    };
    Job {
        title: scenario.title.clone(),
        complaint: scenario.complaint.clone(),
        budget: scenario.budget,
        par_minutes: scenario.par_minutes,
        mains_v,
        mains_hz,
        live_tests_allowed: scenario.live_tests_allowed,
        board: bench.machine().board().clone(),
        parts: bench
            .counter()
            .iter()
            .map(|part| PartRow {
                number: part.number.clone(),
                name_key: part.name_key.clone(),
                note_key: part.note_key.clone(),
                price: part.price,
                wait_hours: part.wait_hours,
            })
            .collect(),
        causes: bench
            .modes()
            .iter()
            .map(|mode| CauseRow {
                id: mode.id.clone(),
                component: mode.component,
            })
            .collect(),
    }
}

/// What an attempt that is not yet kept will begin with.
struct Begin {
    attempts: Arc<dyn Attempts>,
    job: String,
    header: Header,
}

/// One job at the real bench, kept as it goes.
struct WorkBench {
    bench: Bench,
    scenario: Scenario,
    job: Job,
    /// Until the first action: a job that was only looked at leaves nothing behind.
    begin: Option<Begin>,
    attempts: Option<Arc<dyn Attempts>>,
    keeping: Option<Box<dyn Keeping>>,
    /// Actions kept so far.
    kept: usize,
}

impl WorkBench {
    /// Keeps what is new; gives up keeping this attempt when that fails.
    fn keep(&mut self) {
        if let Err(trouble) = self.try_to_keep() {
            self.keeping = None;
            if let Some(attempts) = &self.attempts {
                attempts.complain(trouble);
            }
        }
    }

    fn try_to_keep(&mut self) -> Result<(), Trouble> {
        if let Some(begin) = self.begin.take_if(|_| !self.bench.history().is_empty()) {
            self.keeping = Some(begin.attempts.begin(&begin.job, &begin.header)?);
        }
        let Some(keeping) = &mut self.keeping else {
            return Ok(());
        };
        for (at, action) in &self.bench.history()[self.kept..] {
            keeping.push(*at, action)?;
            self.kept += 1;
        }
        if self.bench.report().is_some() {
            keeping.finish(&Footer {
                at: self.bench.now(),
                state: self.bench.machine().state_hash(),
                score: judge(&self.scenario, &self.bench).total(),
            })?;
        }
        Ok(())
    }
}

impl BenchPort for WorkBench {
    fn step(&mut self) {
        self.bench.step();
    }

    fn act(&mut self, action: Action) -> Result<(), Refusal> {
        self.bench.act(&action)?;
        self.keep();
        Ok(())
    }

    fn caution(&self, action: &Action) -> Option<Caution> {
        self.bench.caution(action)
    }

    fn view(&self) -> BenchView {
        self.bench.view()
    }

    fn job(&self) -> &Job {
        &self.job
    }

    fn run(&mut self, step: &Step) -> Result<(), String> {
        let done = step.run(&mut self.bench).map_err(|e| e.to_string());
        self.keep();
        done
    }

    fn score(&self) -> Option<Score> {
        self.bench
            .report()
            .map(|_| judge(&self.scenario, &self.bench))
    }

    fn kept_as(&self) -> Option<String> {
        self.keeping.as_ref().map(|keeping| keeping.name())
    }

    fn mark(&mut self) {
        if let Some(keeping) = &mut self.keeping {
            keeping.mark(self.bench.now());
        }
    }
}
