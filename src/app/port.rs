//! What the window needs from a bench, and nothing more. Panels read plain structs from here.

use crate::bench::script::Step;
use crate::bench::{Action, BenchView, Caution, Refusal};
use crate::controller::Board;
use crate::lesson::{Bilingual, Score};
use crate::plant::Component;

/// A bench that the window can show and drive.
pub trait BenchPort: Send + Sync {
    /// One tick of 10 ms.
    fn step(&mut self);
    /// Do one thing now.
    ///
    /// # Errors
    /// [`Refusal`] when it is not physically possible; nothing has changed then.
    fn act(&mut self, action: Action) -> Result<(), Refusal>;
    /// The usual caution before `action`, if there is one.
    fn caution(&self, action: &Action) -> Option<Caution>;
    /// What the person sees now. Asked once a frame.
    fn view(&self) -> BenchView;
    /// What does not change during the job.
    fn job(&self) -> &Job;
    /// Run one line of a script at once.
    ///
    /// # Errors
    /// Why it could not be done, in a sentence.
    fn run(&mut self, step: &Step) -> Result<(), String>;
    /// The result, once the report was handed in.
    fn score(&self) -> Option<Score>;
}

/// Where jobs come from.
pub trait Shop: Send + Sync {
    /// The jobs on offer, in order.
    fn offers(&self) -> &[Offer];
    /// Set a bench up for one of them.
    ///
    /// # Errors
    /// A sentence that says what is wrong and what to do.
    fn open(&self, offer: usize, seed: u64) -> Result<Box<dyn BenchPort>, String>;
}

/// One job on offer.
#[derive(Clone, Debug)]
pub struct Offer {
    /// Title.
    pub title: Bilingual,
    /// What it teaches.
    pub goal: Bilingual,
    /// Seed used unless the player types another.
    pub seed: u64,
}

/// Everything about a job that stays the same.
#[derive(Clone, Debug)]
pub struct Job {
    /// Title.
    pub title: Bilingual,
    /// The complaint in the customer's words.
    pub complaint: Bilingual,
    /// Money the customer will spend at most, whole units.
    pub budget: f64,
    /// Minutes a good technician should need.
    pub par_minutes: f64,
    /// Nominal mains voltage, V.
    pub mains_v: u32,
    /// Mains frequency, Hz.
    pub mains_hz: u32,
    /// Meter work on the live machine is allowed.
    pub live_tests_allowed: bool,
    /// The board, whose printed sheet the trainee has.
    pub board: Board,
    /// What the counter sells.
    pub parts: Vec<PartRow>,
    /// Causes that the report can name.
    pub causes: Vec<CauseRow>,
}

/// One part at the counter.
#[derive(Clone, Debug)]
pub struct PartRow {
    /// Part number (invented).
    pub number: String,
    /// Text key of its name.
    pub name_key: String,
    /// Text key of a note on the card, if any.
    pub note_key: Option<String>,
    /// Price in whole units.
    pub price: f64,
    /// Wait, h.
    pub wait_hours: f64,
}

/// One cause that the report can name.
#[derive(Clone, Debug)]
pub struct CauseRow {
    /// Failure mode, such as `drain-pump.open-winding`.
    pub id: String,
    /// The component that fails.
    pub component: Component,
}

impl CauseRow {
    /// Text key of the cause in words.
    pub fn name_key(&self) -> String {
        format!("mode-{}", self.id.replace('.', "-"))
    }
}
