//! What the window needs from a bench, and nothing more. Panels read plain structs from here.

use crate::bench::{Action, BenchView, Caution, Refusal, Turn};
use crate::lesson::{Bilingual, Score};
use crate::plant::{Button, Component, Connector, Pin};
use crate::units::{Span, Time};

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
    /// What the person sees now.
    fn view(&self) -> &BenchView;
    /// What does not change during the job.
    fn job(&self) -> &Job;
    /// The result, once the report was handed in.
    fn score(&self) -> Option<&Score>;
    /// Every try at the service-mode entry so far, oldest first.
    fn entry_tries(&self) -> &[EntryTry];
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
    /// The board's service sheet.
    pub sheet: Sheet,
    /// What the counter sells.
    pub parts: Vec<PartRow>,
    /// Causes that the report can name.
    pub causes: Vec<CauseRow>,
}

/// The service sheet of a board.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// Name of the (invented) board.
    pub board: String,
    /// Entry gesture, in order.
    pub gesture: Vec<GestureStep>,
    /// Time within which the whole gesture must fall.
    pub window: Span,
    /// Service menu by dial position.
    pub menu: Vec<MenuRow>,
    /// Code table.
    pub codes: Vec<CodeRow>,
    /// Pin table, grouped by the board's connectors, in order.
    pub connectors: Vec<ConnectorRow>,
}

/// One step of the entry gesture.
#[derive(Clone, Debug, PartialEq)]
pub enum GestureStep {
    /// Turn by this many detents.
    Turn(Turn, u8),
    /// Press and let go.
    Press(Button),
    /// Hold at least this long.
    Hold(Button, Span),
    /// Lift (true) or shut (false) the lid.
    Lid(bool),
}

/// One position of the service menu.
#[derive(Clone, Debug)]
pub struct MenuRow {
    /// Dial position, 0 to 23.
    pub position: u8,
    /// What it does.
    pub name: Bilingual,
}

/// One row of the code table.
#[derive(Clone, Debug)]
pub struct CodeRow {
    /// Two digits.
    pub code: u8,
    /// What it says.
    pub name: Bilingual,
    /// What can raise it.
    pub suspects: Vec<Component>,
}

/// One connector of the board.
#[derive(Clone, Debug)]
pub struct ConnectorRow {
    /// The connector.
    pub connector: Connector,
    /// Its label, such as `X2`.
    pub label: String,
    /// Its pins, in order.
    pub pins: Vec<PinRow>,
}

/// One pin of the pin table.
#[derive(Clone, Debug)]
pub struct PinRow {
    /// The pin at the board.
    pub pin: Pin,
    /// What it carries.
    pub name: Bilingual,
    /// What a sound machine shows there.
    pub normal: Bilingual,
}

/// One part at the counter.
#[derive(Clone, Debug)]
pub struct PartRow {
    /// Part number (invented).
    pub number: String,
    /// Name.
    pub name: Bilingual,
    /// Price in whole units.
    pub price: f64,
    /// Wait, minutes.
    pub wait_minutes: f64,
}

/// One cause that the report can name.
#[derive(Clone, Debug)]
pub struct CauseRow {
    /// Failure mode, such as `drain-pump.open-winding`.
    pub id: String,
    /// The component that fails.
    pub component: Component,
    /// In words.
    pub name: Bilingual,
}

/// One try at the service-mode entry.
#[derive(Clone, Debug)]
pub struct EntryTry {
    /// When it began.
    pub at: Time,
    /// Every input of it, in order.
    pub marks: Vec<EntryMark>,
    /// Windows, from the beginning of the try: the whole, then that of single steps.
    pub windows: Vec<(Span, Span)>,
    /// Which mark broke which rule (text key), unless it succeeded.
    pub broken: Option<(usize, String)>,
}

/// One input during a try.
#[derive(Clone, Debug)]
pub struct EntryMark {
    /// From the beginning of the try.
    pub after: Span,
    /// What it was.
    pub step: GestureStep,
}
