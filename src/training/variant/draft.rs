//! A draft: the original's job on another machine, drawn but not proved.

use super::known_faults::KnownFaults;
use crate::draws::{below, between, one_of, shuffle, within};
use crate::lesson::{Bilingual, CoursePart, Hidden, Library, Scenario};
use crate::practice::drill::SuppliedBoard;
use detent_simulation::plant::FailureMode;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

/// Of so many drafts one comes from the rest of the catalogue, the others from the original's kin.
const ONE_OF_THE_REST_IN: u64 = 4;
/// Wear of the dials that jobs without a worn one have, and of those that come beside them.
const WEARS: [f64; 5] = [0.0, 0.0, 0.0, 0.1, 0.2];
/// A worn dial is worn by so much more or less.
const WEAR_APART: f64 = 0.15;
/// Of jobs without old codes, one in so many variants has one.
const ONE_STALE_IN: usize = 4;
/// Seeds of the variants' own draws.
const SEEDS: (u32, u32) = (1, 999_999);

/// A fault, or none, on one of the boards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Card {
    /// Place among the boards.
    board: usize,
    /// Hypothesis: 0 for no fault, `n + 1` for failure mode `n`.
    hypothesis: usize,
}

/// Two piles of cards, each gone through in an order of its own before any card comes again.
#[derive(Clone, Debug)]
pub(super) struct Decks {
    kin: Vec<Card>,
    rest: Vec<Card>,
    /// Faults at once.
    faults: usize,
    seed: u64,
}

/// One of the two piles.
#[derive(Clone, Copy)]
enum Pile {
    Kin,
    Rest,
}

/// The original's job on another machine.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// Place among the boards.
    pub board: usize,
    /// Hypotheses that are true: failure mode `n` is `n + 1`; 0 for none.
    pub hypotheses: Vec<usize>,
    /// The job; title, complaint and goal are empty, time and budget the original's.
    pub scenario: Scenario,
}

impl Decks {
    /// The cards for variants of a job.
    pub fn of(
        original: &Scenario,
        boards: &[SuppliedBoard<'_>],
        known: &[KnownFaults],
        seed: u64,
    ) -> Decks {
        let mut decks = Decks {
            kin: Vec::new(),
            rest: Vec::new(),
            faults: match &original.fault {
                Hidden::Several(ids) => ids.len(),
                Hidden::Named(_)
                | Hidden::Draw
                | Hidden::DrawFrom(_)
                | Hidden::DrawWhere(_)
                | Hidden::Nothing => 1,
            },
            seed,
        };
        for (place, (board, known)) in boards.iter().zip(known).enumerate() {
            if stays(original) && board.library.board.id != original.board {
                continue;
            }
            let modes = board.library.modes;
            let own = own_hypotheses(original, boards, &board.library);
            let monitors = |h: usize| known.monitors(board.library.board, h);
            let raised: Vec<_> = own.iter().flat_map(|h| monitors(*h)).collect();
            let component = |h: usize| h.checked_sub(1).map(|n| modes[n].component);
            let components: Vec<_> = own.iter().filter_map(|h| component(*h)).collect();
            // A job without a fault is about machines that store nothing.
            let silent = original.fault == Hidden::Nothing;
            let least = usize::from(!silent);
            for hypothesis in least..=modes.len() {
                let raises = monitors(hypothesis);
                let related = own.contains(&hypothesis)
                    || component(hypothesis).is_some_and(|c| components.contains(&c))
                    || raises.iter().any(|m| raised.contains(m))
                    || silent && raises.is_empty();
                let card = Card {
                    board: place,
                    hypothesis,
                };
                if related {
                    decks.kin.push(card);
                } else {
                    decks.rest.push(card);
                }
            }
        }
        decks
    }

    /// Draft number `n`, from 0. The same number gives the same draft.
    pub fn draft(
        &self,
        original: &Scenario,
        boards: &[SuppliedBoard<'_>],
        n: u64,
    ) -> Option<Draft> {
        let mut rng = ChaCha8Rng::seed_from_u64(self.seed);
        rng.set_stream(n + 1);
        let of_rest = n / ONE_OF_THE_REST_IN;
        let is_rest = n % ONE_OF_THE_REST_IN == ONE_OF_THE_REST_IN - 1;
        let card = match (self.kin.is_empty(), self.rest.is_empty()) {
            (true, _) => self.card(Pile::Rest, n)?,
            (false, true) => self.card(Pile::Kin, n)?,
            (false, false) if is_rest => self.card(Pile::Rest, of_rest)?,
            (false, false) => self.card(Pile::Kin, n - of_rest)?,
        };
        let modes = boards[card.board].library.modes;
        let mut hypotheses = vec![card.hypothesis];
        while hypotheses.len() < self.faults {
            hypotheses.push(self.companion(&card, &hypotheses, modes, &mut rng)?);
        }
        Some(Draft {
            board: card.board,
            scenario: scenario(original, &boards[card.board], &hypotheses, &mut rng),
            hypotheses,
        })
    }

    /// Card number `place` of a pile that is shuffled anew whenever it has been gone through.
    fn card(&self, pile: Pile, place: u64) -> Option<Card> {
        let cards = match pile {
            Pile::Kin => &self.kin,
            Pile::Rest => &self.rest,
        };
        let count = cards.len() as u64;
        let round = place.checked_div(count)?;
        let mut rng = ChaCha8Rng::seed_from_u64(self.seed);
        // The drafts count their streams from below.
        rng.set_stream(u64::MAX - 2 * round - pile as u64);
        let mut order: Vec<usize> = (0..cards.len()).collect();
        shuffle(&mut order, &mut rng);
        Some(cards[order[(place % count) as usize]])
    }

    /// A fault beside these in another component.
    fn companion(
        &self,
        card: &Card,
        hypotheses: &[usize],
        modes: &[FailureMode],
        rng: &mut ChaCha8Rng,
    ) -> Option<usize> {
        let component = |h: usize| h.checked_sub(1).map(|n| modes[n].component);
        let kin = self.kin.iter().filter(|other| other.board == card.board);
        let others: Vec<usize> = kin
            .map(|other| other.hypothesis)
            .filter(|h| {
                *h > 0
                    && hypotheses
                        .iter()
                        .all(|there| component(*there) != component(*h))
            })
            .collect();
        one_of(&others, rng)
    }
}

/// Whether variants keep the original's board: a drill is about this panel.
fn stays(original: &Scenario) -> bool {
    (original.course.as_ref())
        .is_some_and(|c| matches!(c.part, CoursePart::EntryDrill | CoursePart::ReadingDrill))
}

/// Hypotheses that the original may hide, as `library` numbers them. Codes that it names are those of its own board.
fn own_hypotheses(
    original: &Scenario,
    boards: &[SuppliedBoard<'_>],
    library: &Library<'_>,
) -> Vec<usize> {
    if original.fault == Hidden::Nothing {
        return vec![0];
    }
    let mut own = boards.iter().map(|board| &board.library);
    let own = own.find(|own| own.board.id == original.board);
    let own = own.unwrap_or(library);
    let may_be = own.candidates(&original.fault).unwrap_or_default();
    let places = may_be
        .iter()
        .map(|own| library.modes.iter().position(|m| m.id == own.id));
    places.flatten().map(|n| n + 1).collect()
}

fn scenario(
    original: &Scenario,
    board: &SuppliedBoard<'_>,
    hypotheses: &[usize],
    rng: &mut ChaCha8Rng,
) -> Scenario {
    let modes = board.library.modes;
    let ids: Vec<String> = (hypotheses.iter())
        .filter_map(|h| h.checked_sub(1))
        .map(|n| modes[n].id.clone())
        .collect();
    let fault = match &ids[..] {
        [] => Hidden::Nothing,
        [id] => Hidden::Named(id.clone()),
        _ => Hidden::Several(ids),
    };
    let worn = if original.dial_wear > 0.0 {
        original.dial_wear + within(-WEAR_APART, WEAR_APART, rng)
    } else {
        WEARS[below(WEARS.len(), rng)]
    };
    let turns = board.library.board.panel.selector.turn().is_some();
    let stale = match original.stale_codes.len() {
        0 => usize::from(below(ONE_STALE_IN, rng) == 0),
        some => (some + below(3, rng)).saturating_sub(1).max(1),
    };
    let mut codes: Vec<u8> = board.library.board.codes.iter().map(|c| c.code).collect();
    shuffle(&mut codes, rng);
    let kept = board.library.board.service.stored_codes;
    codes.truncate(stale.min(usize::from(kept)));
    let empty = || Bilingual {
        en: String::new(),
        es: String::new(),
    };
    Scenario {
        title: empty(),
        complaint: empty(),
        goal: empty(),
        course: None,
        board: board.library.board.id.clone(),
        mains: board.mains,
        seed: u64::from(between(SEEDS.0, SEEDS.1, rng)),
        fault,
        // In twentieths, as people write it.
        dial_wear: if turns {
            ((20.0 * worn.clamp(0.0, 1.0)) as u8) as f64 / 20.0
        } else {
            0.0
        },
        stale_codes: codes,
        expected_codes: None,
        par_minutes: original.par_minutes,
        budget: original.budget,
        live_tests_allowed: original.live_tests_allowed,
        hints_allowed: original.hints_allowed,
        worn_lead: original.worn_lead,
        points: original.points,
    }
}
