//! A complaint: which of the things that the customer noticed are told, and in which way, with what people say
//! around it. The words are made at the edge.

use super::customer::{CustomerAccount, CustomerObservation};
use crate::draws::{below, between, one_of};
use detent_simulation::interface::Component;
use detent_simulation::names;
use detent_simulation::plant::FailureMode;
use detent_simulation::units::uniform;
use rand_chacha::ChaCha8Rng;

/// Ways to say each observation, numbered from 1.
pub const WAYS: u8 = 3;
/// Things told besides how it ended.
const MOST_TOLD: usize = 2;
/// Shares of the complaints with each of the sentences around what happened. Our own choice.
const WHO_SHARE: f64 = 0.6;
const AGE_SHARE: f64 = 0.4;
const SINCE_SHARE: f64 = 0.7;
const THEORY_SHARE: f64 = 0.5;
/// Share of the complaints that tell what the panel shows, where it shows something.
const PANEL_SHARE: f64 = 0.6;
/// The youngest and oldest machine that is spoken of, years.
const AGES: (u32, u32) = (3, 17);

names! {
    /// Whose machine it is. Its sentence is `customer-who-{name}`.
    Customer {
        Family = "family", Widower = "widower", SharedFlat = "shared-flat", Hostel = "hostel",
        Salon = "salon", Caretaker = "caretaker", Student = "student", Farm = "farm",
    }
}

names! {
    /// When it began. Its sentence is `customer-since-{name}`.
    Since {
        Yesterday = "yesterday", Sunday = "sunday", LastWeek = "last-week", Vacation = "vacation",
        Birthday = "birthday", Monday = "monday",
    }
}

names! {
    /// What somebody who has not looked takes for the cause. Its sentence is `customer-theory-{name}`.
    LayTheory {
        Limescale = "limescale", Detergent = "detergent", Overfilled = "overfilled",
        Storm = "storm", PowerCompany = "power-company", Grandson = "grandson", Cat = "cat",
        Cheap = "cheap",
    }
}

impl LayTheory {
    /// Where the cause would have to be for it to be right.
    const fn accuses(self) -> &'static [Component] {
        match self {
            LayTheory::Limescale => &[
                Component::InletCold,
                Component::InletHot,
                Component::DrainPump,
                Component::DrainHose,
                Component::PressureHose,
                Component::PressureSensor,
            ],
            LayTheory::Detergent => &[
                Component::Laundry,
                Component::DrainPump,
                Component::DrainHose,
                Component::PressureHose,
            ],
            LayTheory::Overfilled => &[
                Component::Laundry,
                Component::Belt,
                Component::Motor,
                Component::Tub,
            ],
            LayTheory::Storm | LayTheory::PowerCompany => &[
                Component::Supply,
                Component::Cord,
                Component::LineFuse,
                Component::Filter,
                Component::Board,
            ],
            LayTheory::Grandson => &[Component::Dial, Component::Board, Component::Taps],
            LayTheory::Cat | LayTheory::Cheap => &[],
        }
    }
}

/// What the customer says. Everything in it that is about the machine was noticed; the theory is wrong.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Complaint {
    /// What is told, each with the number of the way to say it, 1 to [`WAYS`]; how it ended comes first.
    pub told: Vec<(CustomerObservation, u8)>,
    /// Time from Start to the end, min.
    pub after_min: u32,
    /// Whose machine it is.
    pub who: Option<Customer>,
    /// Its age, years.
    pub age_years: Option<u32>,
    /// When it began.
    pub since: Option<Since>,
    /// What somebody takes for the cause.
    pub theory: Option<LayTheory>,
}

impl Complaint {
    /// Draws what the customer says of this wash of a machine with these faults.
    pub fn draw(
        account: &CustomerAccount,
        hidden: &[FailureMode],
        rng: &mut ChaCha8Rng,
    ) -> Complaint {
        let (end, rest) = match account.noticed.split_first() {
            Some((end, rest)) => (Some(*end), rest),
            None => (None, &[][..]),
        };
        let (panel, did): (Vec<_>, Vec<_>) = rest
            .iter()
            .copied()
            .partition(|noticed| noticed.is_of_panel());
        let tells_panel = uniform(rng) < PANEL_SHARE;
        let panel = panel.into_iter().filter(|_| tells_panel);
        let told = end
            .into_iter()
            .chain(did.into_iter().take(MOST_TOLD))
            .chain(panel);
        let told = told
            .map(|noticed| (noticed, 1 + below(usize::from(WAYS), rng) as u8))
            .collect();
        let right = |theory: LayTheory| {
            let mut accused = theory.accuses().iter();
            accused.any(|c| hidden.iter().any(|mode| mode.component == *c))
        };
        let theories = LayTheory::ALL.iter().copied();
        let theories: Vec<LayTheory> = theories.filter(|theory| !right(*theory)).collect();
        // Each is drawn whether it is said or not, so that one share changes nothing else.
        let (who, since) = (one_of(Customer::ALL, rng), one_of(Since::ALL, rng));
        let age_years = between(AGES.0, AGES.1, rng);
        let theory = one_of(&theories, rng);
        let mut said = |share: f64| uniform(rng) < share;
        Complaint {
            told,
            after_min: account.after_min,
            who: who.filter(|_| said(WHO_SHARE)),
            age_years: Some(age_years).filter(|_| said(AGE_SHARE)),
            since: since.filter(|_| said(SINCE_SHARE)),
            theory: theory.filter(|_| said(THEORY_SHARE)),
        }
    }
}
