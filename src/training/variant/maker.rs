//! Makes variants of one original.

use super::difficulty::{Band, Difficulty};
use super::draft::{Decks, Draft};
use super::known_faults::KnownFaults;
use super::proof::{Proved, refuted, tried};
use super::refusal::VariantRefusal;
use crate::lesson::{Complaint, Library, Scenario, SetUpError, draw};
use crate::practice::drill::SuppliedBoard;
use crate::reason::evidence::Table;
use crate::reason::{PlanError, PosteriorError};
use crate::slices::SliceEnd;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

/// Machines of an original that draws its fault, by which its difficulty is judged.
const ORIGINALS: u64 = 3;
/// Keeps what the customer says apart from the machine's own draws.
const SAYS: u64 = 0x7361_7973;

/// A proved variant.
#[derive(Clone, Debug, PartialEq)]
pub struct Variant {
    /// Number of its draft.
    pub number: u64,
    /// The job, with the expert's par time and budget. Its title, complaint and goal are empty: words are made at the
    /// edge.
    pub scenario: Scenario,
    /// What the customer says.
    pub complaint: Complaint,
    /// How difficult it is.
    pub difficulty: Difficulty,
}

/// Why there can be no variants.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum VariantError {
    /// Nothing is known of the faults on the original's board and supply.
    #[error("no table of board \"{0}\" is built in: `detent best --tables` makes them")]
    NoTable(String),
    /// The original itself cannot be tried: the scripted expert does not pass it.
    #[error("the scripted expert cannot do this job, so its difficulty cannot be judged: {0}")]
    Original(VariantRefusal),
    /// It cannot be set up.
    #[error(transparent)]
    SetUp(#[from] SetUpError),
    /// Nothing can be planned.
    #[error(transparent)]
    Plan(#[from] PlanError),
    /// Nothing can be believed.
    #[error(transparent)]
    Posterior(#[from] PosteriorError),
}

/// Makes variants of one original. It keeps what is dear to work out and borrows nothing: the boards are handed in
/// again at each call, always the same and in the same order.
#[derive(Clone, Debug)]
pub struct VariantMaker {
    original: Scenario,
    known: Vec<KnownFaults>,
    decks: Decks,
    band: Band,
    own: Vec<Difficulty>,
}

impl VariantMaker {
    /// Judges the original's difficulty and lays out the drafts, in slices of a few milliseconds each. `table` gives
    /// the table of a board, one after the other.
    ///
    /// # Errors
    /// As named.
    pub async fn begin_in_slices(
        original: &Scenario,
        boards: &[SuppliedBoard<'_>],
        mut table: impl FnMut(&SuppliedBoard<'_>) -> Option<Table>,
        seed: u64,
    ) -> Result<VariantMaker, VariantError> {
        let mut known = Vec::new();
        for board in boards {
            let id = || board.library.board.id.clone();
            let table = table(board).ok_or_else(|| VariantError::NoTable(id()))?;
            SliceEnd::default().await;
            known.push(KnownFaults::of(&board.library, table));
            SliceEnd::default().await;
        }
        let place = boards.iter().position(|board| {
            board.library.board.id == original.board && board.mains == original.mains
        });
        let place = place.ok_or_else(|| VariantError::NoTable(original.board.clone()))?;
        let draws = match original.fault.is_drawn() {
            true => ORIGINALS,
            false => 1,
        };
        let mut own = Vec::new();
        let mut refused = VariantRefusal::ExpertFails;
        for seed in (0..draws).map(|n| original.seed.wrapping_add(n)) {
            let draft = as_draft(original, place, &boards[place], seed)?;
            match tried(&draft, &boards[place], &known[place], None).await? {
                Ok(proved) => own.push(proved.difficulty),
                Err(reason) => refused = reason,
            }
        }
        if own.is_empty() {
            return Err(VariantError::Original(refused));
        }
        Ok(VariantMaker {
            decks: Decks::of(original, boards, &known, seed),
            original: original.clone(),
            known,
            band: Band::around(&own),
            own,
        })
    }

    /// The difficulties that a variant may have.
    pub fn band(&self) -> &Band {
        &self.band
    }

    /// How difficult the original's own machines are.
    pub fn own(&self) -> &[Difficulty] {
        &self.own
    }

    /// Draft number `n`, from 0, unproved; none where no second fault goes with the first.
    pub fn draft(&self, boards: &[SuppliedBoard<'_>], n: u64) -> Option<Draft> {
        self.decks.draft(&self.original, boards, n)
    }

    /// Draws and proves draft number `n`, from 0, in slices of a few milliseconds each. The same number gives the same.
    ///
    /// # Errors
    /// Nothing can be planned or set up.
    pub async fn prove_in_slices(
        &self,
        boards: &[SuppliedBoard<'_>],
        n: u64,
    ) -> Result<Result<Variant, VariantRefusal>, VariantError> {
        let Some(draft) = self.draft(boards, n) else {
            return Ok(Err(VariantRefusal::NoSecondFault));
        };
        let (board, known) = (&boards[draft.board], &self.known[draft.board]);
        if let Some(reason) = refuted(&draft, &self.original, board, known)? {
            return Ok(Err(reason));
        }
        let proved = tried(&draft, board, known, Some(&self.band)).await?;
        Ok(proved.map(|proved| variant(n, proved)))
    }
}

fn variant(number: u64, proved: Proved) -> Variant {
    let mut rng = ChaCha8Rng::seed_from_u64(proved.scenario.seed ^ SAYS);
    Variant {
        number,
        complaint: Complaint::draw(&proved.account, proved.bench.hidden(), &mut rng),
        scenario: proved.scenario,
        difficulty: proved.difficulty,
    }
}

/// The original with this seed as if it had been drawn.
fn as_draft(
    original: &Scenario,
    place: usize,
    board: &SuppliedBoard<'_>,
    seed: u64,
) -> Result<Draft, SetUpError> {
    Ok(Draft {
        board: place,
        hypotheses: hypotheses_of(original, &board.library, seed)?,
        scenario: Scenario {
            seed,
            ..original.clone()
        },
    })
}

/// The hypotheses that are true on the machine of this scenario and seed: failure mode `n` is `n + 1`; 0 for none.
pub(crate) fn hypotheses_of(
    scenario: &Scenario,
    library: &Library<'_>,
    seed: u64,
) -> Result<Vec<usize>, SetUpError> {
    let hidden = draw(scenario, library, seed)?;
    let hypotheses: Vec<usize> = (hidden.iter())
        .filter_map(|mode| library.modes.iter().position(|m| m.id == mode.id))
        .map(|n| n + 1)
        .collect();
    Ok(if hypotheses.is_empty() {
        vec![0]
    } else {
        hypotheses
    })
}
