//! The real bench and the built-in jobs behind the window's port.

use super::port::{BenchPort, CauseRow, Job, Offer, PartRow, Shop};
use crate::bench::script::Step;
use crate::bench::{Action, Bench, BenchView, Caution, Refusal};
use crate::content::attempt_file::AttemptWriter;
use crate::content::{Shelf, Titled};
use crate::lesson::{Mains, Scenario, Score, judge, set_up};
use crate::record::{Footer, Header};
use std::path::{Path, PathBuf};

/// The built-in scenarios, or one of the player's own.
pub struct Workshop {
    shelf: Shelf,
    titled: Vec<Titled>,
    offers: Vec<Offer>,
    /// Folder in which attempts are kept, if they are.
    keep_in: Option<PathBuf>,
}

impl Workshop {
    /// Every built-in scenario, and `own` before them if given.
    ///
    /// # Errors
    /// What is wrong with a file, in one sentence.
    pub fn new(own: Option<&str>, keep_in: Option<PathBuf>) -> Result<Workshop, String> {
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
            keep_in,
        })
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
        let job = job(scenario, &bench);
        Ok(Box::new(WorkBench {
            bench,
            scenario: scenario.clone(),
            job,
            keep_in: self.keep_in.clone(),
            file: titled.file.clone(),
            header: Header::new(&titled.file, &titled.text, seed),
            log: None,
            kept: 0,
        }))
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

/// One job at the real bench, kept as it goes.
struct WorkBench {
    bench: Bench,
    scenario: Scenario,
    job: Job,
    /// Where the attempt will be kept, until its file is opened.
    keep_in: Option<PathBuf>,
    file: String,
    header: Header,
    log: Option<AttemptWriter>,
    kept: usize,
}

/// Opens an attempt file that no other attempt uses.
fn open_log(folder: &Path, file: &str, header: &Header) -> Option<AttemptWriter> {
    if let Err(error) = std::fs::create_dir_all(folder) {
        bevy::log::warn!(
            "attempts are not kept: cannot make {}: {error}",
            folder.display()
        );
        return None;
    }
    let stem = Path::new(file).file_stem()?.to_string_lossy().into_owned();
    let free = (1..10_000)
        .map(|n| folder.join(format!("{stem}-{n}.attempt")))
        .find(|path| {
            let part = PathBuf::from(format!("{}{}", path.display(), crate::record::PART));
            !path.exists() && !part.exists()
        })?;
    match AttemptWriter::create(&free, header) {
        Ok(writer) => Some(writer),
        Err(error) => {
            bevy::log::warn!("this attempt is not kept: {error}");
            None
        }
    }
}

impl WorkBench {
    /// Appends what is new to the attempt file; gives up keeping it when that fails.
    fn keep(&mut self) {
        // A job that was only looked at leaves no file.
        if let Some(folder) = self.keep_in.take_if(|_| !self.bench.history().is_empty()) {
            self.log = open_log(&folder, &self.file, &self.header);
        }
        let Some(log) = &mut self.log else { return };
        for (at, action) in &self.bench.history()[self.kept..] {
            if let Err(error) = log.push(*at, action) {
                bevy::log::warn!("this attempt is no longer kept: {error}");
                self.log = None;
                return;
            }
            self.kept += 1;
        }
        if self.bench.report().is_some()
            && let Some(log) = self.log.take()
        {
            let footer = Footer {
                at: self.bench.now(),
                state: self.bench.machine().state_hash(),
                score: judge(&self.scenario, &self.bench).total(),
            };
            if let Err(error) = log.finish(&footer) {
                bevy::log::warn!("this attempt could not be finished: {error}");
            }
        }
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
}
