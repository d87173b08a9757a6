//! A bench for a drill: a plain machine to try a gesture on. Nothing of it is kept.

use crate::port::{BenchPort, Job};
use detent_simulation::interface::Rating;
use detent_simulation::units::Time;
use detent_training::bench::script::ScriptStep;
use detent_training::bench::{Action, Bench, BenchView, Caution, Display, Entries, Refusal};
use detent_training::lesson::{Bilingual, Points, Score};
use std::sync::Arc;

/// A bench without a job.
pub struct DrillBench {
    bench: Bench,
    job: Arc<Job>,
}

impl DrillBench {
    /// Behind the window's port.
    pub fn new(bench: Bench) -> DrillBench {
        let nothing = || Bilingual {
            en: String::new(),
            es: String::new(),
        };
        let Rating { volts, hz } = bench.machine().plant().rating();
        let job = Job {
            file: String::new(),
            title: nothing(),
            complaint: nothing(),
            goal: nothing(),
            budget: 0.0,
            rates: bench.rates(),
            par_minutes: 0.0,
            mains_v: volts as u32,
            mains_hz: hz as u32,
            hints_allowed: false,
            hints_at_hand: false,
            points: Points::default(),
            live_tests_allowed: true,
            is_variant: false,
            intake: None,
            board: bench.machine().board().clone(),
            parts: Vec::new(),
            causes: Vec::new(),
            guide: None,
            called_back: None,
        };
        let job = Arc::new(job);
        DrillBench { bench, job }
    }
}

impl BenchPort for DrillBench {
    fn step(&mut self) {
        self.bench.step();
    }

    fn act(&mut self, action: Action) -> Result<(), Refusal> {
        self.bench.act(&action)
    }

    fn caution(&self, _action: &Action) -> Option<Caution> {
        None
    }

    fn meter_shows(&mut self) -> Option<Display> {
        self.bench.meter_shows()
    }

    fn view(&self) -> BenchView<'_> {
        let mut view = self.bench.view();
        // Whoever only turns the knob here has tried as well.
        view.machine.control.tries = self.bench.machine().tries();
        view
    }

    fn job(&self) -> &Arc<Job> {
        &self.job
    }

    fn run(&mut self, step: &ScriptStep) -> Result<(), String> {
        step.run(&mut self.bench).map_err(|e| e.to_string())
    }

    fn score(&self) -> Option<&Score> {
        None
    }

    fn history(&self) -> Entries<'_, (Time, &Action)> {
        self.bench.history()
    }
}
