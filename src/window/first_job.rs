//! The job that stands in the bench before anybody has chosen one: set up while the window comes up, where there are
//! threads.

use super::port::{BenchPort, JobSource};
use super::workbench::LibraryJobs;
use super::{AppOptions, plugin, window};
use bevy::prelude::App;
use detent_content::Texts;
use detent_training::without_breaks;

/// The jobs on offer, and the bench set up for the first of them with its script done.
pub struct FirstJob {
    pub jobs: LibraryJobs,
    pub bench: Box<dyn BenchPort>,
    /// Its place among the jobs on offer, and the seed that it was set up with.
    pub start: (usize, u64),
}

impl FirstJob {
    /// Sets the bench up: the customer's wash has to be run, which takes about as long as a graphics driver to start.
    ///
    /// # Errors
    /// A sentence that says what is wrong with a file or the script.
    pub fn open(options: &AppOptions, jobs: LibraryJobs) -> Result<FirstJob, String> {
        let first = || (0, jobs.offers().first().map_or(1, |o| o.seed));
        let (offer, seed) = options.start.unwrap_or_else(first);
        let opened = without_breaks(jobs.open(offer, seed));
        let mut bench = opened.map_err(|error| error.words(&Texts::load(options.language)))?;
        for (line, step) in &options.script {
            bench
                .run(step)
                .map_err(|error| format!("line {line}: {error}"))?;
        }
        let start = (offer, seed);
        Ok(FirstJob { jobs, bench, start })
    }
}

/// The window with the bench in it.
///
/// # Errors
/// As [`FirstJob::open`].
pub fn window_with_bench(options: &AppOptions, jobs: LibraryJobs) -> Result<App, String> {
    #[cfg(target_family = "wasm")]
    let (mut app, first) = (window(options), FirstJob::open(options, jobs));
    #[cfg(not(target_family = "wasm"))]
    let (mut app, first) = std::thread::scope(|scope| {
        let first = scope.spawn(|| FirstJob::open(options, jobs));
        let app = window(options);
        let first = first.join();
        (
            app,
            first.unwrap_or_else(|panic| std::panic::resume_unwind(panic)),
        )
    });
    plugin(&mut app, options, first?);
    Ok(app)
}
