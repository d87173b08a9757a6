//! What each lost point was about: what was known then, what a sound choice would have been, and what it
//! would have gained in minutes and money.

use super::evidence::Table;
use super::path::{PathError, PathPoint, PathStep, Start, best, was_seen, yours};
use super::plan::{PlanStep, Problem};
use super::policy::{expected, order_costs};
use super::repair_costs::{RepairCosts, WAIT_PER_HOUR, code_buyer, dead_test};
use crate::bench::{Action, Bench, MilestoneKind, Part, Question, Quote, cost};
use crate::lesson::{Deduction, Dimension, Library, Loss, Scenario, Score};
use crate::slices::{SliceEnd, without_breaks};
use detent_simulation::names;
use detent_simulation::units::Time;

/// Causes that are named as known.
const NAMED: usize = 2;

/// What a sound choice would have been.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SoundChoice {
    /// What the planner would have done with the same belief.
    Step(PlanStep),
    /// Something that needs no planner.
    Practice(GoodPractice),
}

names! {
    /// What is sound in every job. Its text is `sound-{name}`.
    GoodPractice {
        SteadyHand = "steady-hand", Rest = "rest", ReadTwice = "read-twice",
        NoteCodes = "note-codes", MeasureFirst = "measure-first", SecondVisit = "second-visit",
        Report = "report", PartNumber = "part-number", Unplug = "unplug", Discharge = "discharge",
        OhmsDead = "ohms-dead", DeadTest = "dead-test", BailOut = "bail-out",
        WaitSpin = "wait-spin", ProveMeter = "prove-meter", Recalibrate = "recalibrate",
        LetCool = "let-cool", MeasureDead = "measure-dead", Run = "run",
        ShutTaps = "shut-taps", UseClips = "use-clips", HandsFirst = "hands-first",
        CheckForLeaks = "check-for-leaks", EmptyBasket = "empty-basket",
        ShowCustomer = "show-customer",
        ShorterWay = "shorter-way", BuyNeeded = "buy-needed", AskFirst = "ask-first", Unaided = "unaided",
    }
}

/// What a sound choice is worth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Worth {
    /// It would have saved so many minutes of work and so much money, wages counted in.
    Saves {
        /// Work, min.
        minutes: f64,
        /// Whole units of money.
        money: f64,
    },
    /// It takes that much, and is owed all the same: people's safety, or the proof.
    Takes {
        /// Work, min.
        minutes: f64,
        /// Whole units of money.
        money: f64,
    },
}

/// One lost point, accounted for.
#[derive(Clone, Debug, PartialEq)]
pub struct Account {
    /// Side of the job on which it was lost.
    pub dimension: Dimension,
    /// Its place among that side's losses.
    pub place: usize,
    /// What was likeliest then: hypothesis and belief, the likeliest first.
    pub known: Vec<(usize, f64)>,
    /// What would have been sound.
    pub sound: SoundChoice,
    /// And what that is worth.
    pub worth: Worth,
}

/// A finished job, thought over.
#[derive(Clone, Debug, PartialEq)]
pub struct Review {
    /// Names of the failure modes: hypothesis n + 1 is mode n, hypothesis 0 is "nothing is wrong".
    pub modes: Vec<String>,
    /// What steps and repairs stand for.
    pub repair_costs: RepairCosts,
    /// The way that was gone.
    pub yours: Vec<PathPoint>,
    /// The planner's way on the same machine.
    pub best: Vec<PathPoint>,
    /// One for each point lost, in the score's order.
    pub accounts: Vec<Account>,
}

impl Review {
    /// The account of a side's loss, by its place.
    pub fn account(&self, dimension: Dimension, place: usize) -> Option<&Account> {
        let is = |a: &&Account| (a.dimension, a.place) == (dimension, place);
        self.accounts.iter().find(is)
    }
}

/// Thinks a job over that stands as `bench` does and was scored so.
///
/// # Errors
/// What was done cannot be done again with this scenario, library and seed.
pub fn review(
    job: (&Scenario, u64),
    library: Library<'_>,
    table: &Table,
    bench: &Bench,
    score: &Score,
) -> Result<Review, PathError> {
    without_breaks(review_in_slices(job, library, table, bench, score))
}

/// The same in slices of a few milliseconds each.
///
/// # Errors
/// As [`review`].
pub async fn review_in_slices(
    (scenario, seed): (&Scenario, u64),
    library: Library<'_>,
    table: &Table,
    bench: &Bench,
    score: &Score,
) -> Result<Review, PathError> {
    let repair_costs = RepairCosts::of(&library, table, scenario.live_tests_allowed);
    let start = Start {
        scenario,
        library,
        table,
        repair_costs: &repair_costs,
        seed,
    };
    let (outcome, yours) = yours(start, bench).await?;
    let best = best(start, &outcome, bench).await?;
    let accountant = Accountant {
        bench,
        table,
        library,
        repair_costs: &repair_costs,
        yours: &yours,
        best: &best,
    };
    let mut accounts = Vec::new();
    for side in &score.dimensions {
        for (place, loss) in side.lost.iter().enumerate() {
            SliceEnd::default().await;
            accounts.push(accountant.account(side.dimension, place, loss));
        }
    }
    Ok(Review {
        modes: library.modes.iter().map(|m| m.id.clone()).collect(),
        accounts,
        yours,
        best,
        repair_costs,
    })
}

struct Accountant<'a> {
    bench: &'a Bench,
    table: &'a Table,
    library: Library<'a>,
    repair_costs: &'a RepairCosts,
    yours: &'a [PathPoint],
    best: &'a [PathPoint],
}

/// Minutes of work and whole units of money, wages counted in.
#[derive(Clone, Copy)]
struct Toll {
    minutes: f64,
    money: f64,
}

impl Toll {
    const NONE: Toll = Toll {
        minutes: 0.0,
        money: 0.0,
    };

    fn less(self, other: Toll) -> Toll {
        Toll {
            minutes: (self.minutes - other.minutes).max(0.0),
            money: (self.money - other.money).max(0.0),
        }
    }

    fn times(self, share: f64) -> Toll {
        Toll {
            minutes: share * self.minutes,
            money: share * self.money,
        }
    }

    fn saved(self) -> Worth {
        let Toll { minutes, money } = self;
        Worth::Saves { minutes, money }
    }

    fn taken(self) -> Worth {
        let Toll { minutes, money } = self;
        Worth::Takes { minutes, money }
    }
}

impl Accountant<'_> {
    fn account(&self, dimension: Dimension, place: usize, loss: &Deduction) -> Account {
        let stop = self.before(loss.at);
        let (sound, worth) = self.sound(loss, stop);
        let mut known: Vec<(usize, f64)> = stop.shares.iter().copied().enumerate().collect();
        known.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        known.truncate(NAMED);
        Account {
            dimension,
            place,
            known,
            sound,
            worth,
        }
    }

    /// Where the job stood when something began at that time.
    fn before(&self, at: Time) -> &PathPoint {
        let until = |stop: &&PathPoint| stop.at.is_some_and(|t| t <= at);
        let stops = self.yours.iter().take_while(until);
        stops.last().unwrap_or(&self.yours[0])
    }

    fn sound(&self, lost: &Deduction, stop: &PathPoint) -> (SoundChoice, Worth) {
        use GoodPractice as P;
        let good = |practice, worth| (SoundChoice::Practice(practice), worth);
        let seconds = |s: f64| self.work(s / 60.0);
        let of = |action: Action| seconds(cost::span(&action).seconds());
        match &lost.loss {
            Loss::FailedTry { .. } => good(P::SteadyHand, self.until_next_try(lost.at).saved()),
            Loss::NeverEntered => good(P::SteadyHand, self.first_look().taken()),
            Loss::RestTooShort { .. } => good(P::Rest, self.until_unplugged(lost.at).saved()),
            Loss::Misread { noted, shown } => {
                good(P::ReadTwice, self.misread(*noted, shown, stop).saved())
            }
            Loss::CodeSlip { .. } => good(P::ReadTwice, Toll::NONE.saved()),
            Loss::CodeNotNoted { .. } => good(P::NoteCodes, self.first_look().saved()),
            Loss::GoodBoardReplaced { part } | Loss::WrongPart { part } => self.part_in_vain(part),
            Loss::OverRepaired { part } => good(P::HandsFirst, self.over_repair(part).saved()),
            Loss::BoughtOnTheCode { .. } => self.bought_blind(Some(lost.at)),
            Loss::LuckyRepair { .. } | Loss::NoEvidence | Loss::RivalsLeft { .. } => {
                self.bought_blind(None)
            }
            Loss::NotCured | Loss::WrongAdvice { .. } => {
                good(P::SecondVisit, last(self.best).saved())
            }
            Loss::NoReport | Loss::WrongCause { .. } => good(P::Report, self.diagnosis().saved()),
            Loss::WrongPartNamed { named, .. } => {
                good(P::PartNumber, self.part_named(named.as_deref()).saved())
            }
            Loss::Shock | Loss::OpenedLive | Loss::DischargedLive => {
                good(P::Unplug, of(Action::Unplug).taken())
            }
            Loss::TesterShock => good(P::UseClips, Toll::NONE.taken()),
            Loss::TouchedCharge => good(P::Discharge, of(Action::Discharge).taken()),
            Loss::NotProvedDead | Loss::DischargedUnmeasured => {
                good(P::MeasureDead, of(dead_test()).taken())
            }
            Loss::OhmsOnLive => {
                let mut fuse = of(Action::ReplaceMeterFuse);
                fuse.money += cost::METER_FUSE_PRICE;
                good(P::OhmsDead, fuse.saved())
            }
            Loss::LiveNotAllowed => good(P::DeadTest, Toll::NONE.taken()),
            Loss::OpenedUnderPressure => good(P::ShutTaps, of(Action::ShutTaps).taken()),
            Loss::Flood => good(P::BailOut, of(Action::BailOut).taken()),
            Loss::LidSpinning | Loss::HandInDrive => {
                good(P::WaitSpin, seconds(SPIN_DOWN_S).taken())
            }
            Loss::Scald => good(P::LetCool, seconds(PUMP_OUT_S).taken()),
            Loss::MeterNotProved => good(P::ProveMeter, of(Action::TestMeter).times(2.0).taken()),
            Loss::NotRecalibrated => {
                good(P::Recalibrate, seconds(self.table.recalibration_s).taken())
            }
            Loss::CalibratedWithLaundry => {
                let taking_out = cost::span(&Action::UnloadBasket).seconds();
                let again = seconds(taking_out + self.table.recalibration_s);
                good(P::EmptyBasket, again.taken())
            }
            Loss::NoLeakCheck { .. } => good(P::CheckForLeaks, of(Action::CheckForLeaks).taken()),
            Loss::NotDemonstrated => {
                let showing = Action::Ask(Question::Demonstration);
                good(P::ShowCustomer, of(showing).taken())
            }
            Loss::NoProvingRun | Loss::RunFallsShort { .. } => {
                good(P::Run, seconds(self.table.proof_s).taken())
            }
            Loss::HintTaken { .. } => good(P::Unaided, Toll::NONE.taken()),
            Loss::Slow { minutes, par } => good(P::ShorterWay, self.work(minutes - par).saved()),
            Loss::Overspent { spent, needed, .. } => {
                good(P::BuyNeeded, money(spent - needed).saved())
            }
            Loss::NotApproved { .. } => good(P::AskFirst, of(a_quote()).taken()),
            Loss::OverQuote {
                bill,
                quoted: limit,
            }
            | Loss::OverBudget {
                bill,
                budget: limit,
            }
            | Loss::OverRepairLimit { bill, limit } => {
                good(P::AskFirst, money(bill - limit).saved())
            }
        }
    }

    fn work(&self, minutes: f64) -> Toll {
        Toll {
            minutes,
            money: self.bench.rates().labour(minutes),
        }
    }

    fn first_look(&self) -> Toll {
        let (minutes, money) = self.repair_costs.first_look();
        Toll { minutes, money }
    }

    fn price(&self, step: PlanStep) -> Toll {
        // The machine is open when a test comes up at all.
        let (minutes, money) = self.repair_costs.price(step, super::repair_costs::OPENED);
        Toll { minutes, money }
    }

    /// From a failed try to the next try or to service mode.
    fn until_next_try(&self, began: Time) -> Toll {
        let tries = self.bench.tries();
        let tries = tries
            .iter()
            .map(|t| Time::ZERO + detent_simulation::units::Span::from_s(t.began_s.into()));
        let entered = (self.bench.milestones().iter())
            .filter(|l| l.kind == MilestoneKind::ServiceEntered)
            .map(|l| l.at);
        let next = tries.chain(entered).filter(|at| *at > began).min();
        let next = next.unwrap_or(self.bench.now());
        self.work(next.since(began).seconds() / 60.0)
    }

    /// From plugging in too early to the plug being pulled again.
    fn until_unplugged(&self, plugged: Time) -> Toll {
        let again = (self.bench.history().iter())
            .filter(|(at, action)| *at > plugged && **action == Action::Unplug)
            .map(|(at, _)| at)
            .min();
        again.map_or(Toll::NONE, |at| {
            self.work(at.since(plugged).seconds() / 60.0)
        })
    }

    /// What buying by the code as read costs more than by the code as shown, on average, and reading
    /// again at least.
    fn misread(&self, noted: u8, shown: &[u8], stop: &PathPoint) -> Toll {
        let minutes = self.repair_costs.in_minutes();
        let by = |codes: &[u8]| {
            let (board, parts) = (self.library.board, self.library.parts);
            let order = code_buyer(self.repair_costs, board, parts, codes, &stop.shares);
            let mean = |problem: &Problem| expected(&stop.shares, &order_costs(problem, &order));
            Toll {
                minutes: mean(&minutes),
                money: mean(&self.repair_costs.problem),
            }
        };
        let more = by(&[noted]).less(by(shown));
        let again = self.first_look();
        Toll {
            minutes: more.minutes.max(again.minutes),
            money: more.money.max(again.money),
        }
    }

    /// A part's price, its wait and the work of buying and fitting it.
    fn purchase(&self, part: &Part) -> Toll {
        let seconds =
            cost::span(&Action::Order(part.number.clone())).seconds() + part.fitting().seconds();
        let mut toll = self.work(seconds / 60.0);
        toll.money += part.price + WAIT_PER_HOUR * part.wait_hours;
        toll
    }

    /// What a new part took more than the hands would have.
    fn over_repair(&self, number: &str) -> Toll {
        self.bench.part(number).map_or(Toll::NONE, |part| {
            let ended = self.bench.hidden().iter().filter(|mode| part.ends(mode));
            let mut cures = ended.filter_map(|mode| self.bench.cure(mode));
            let enough = match cures.find(|cure| cure.kit) {
                Some(kit) => self.purchase(kit),
                None => {
                    let by_hand = cost::span(&Action::PutRight(part.component));
                    let mut toll = self.work(by_hand.seconds() / 60.0);
                    toll.money += self.library.billing.consumables.hand_work(part.component);
                    toll
                }
            };
            self.purchase(part).less(enough)
        })
    }

    /// A part that was fitted and cured nothing.
    fn part_in_vain(&self, number: &str) -> (SoundChoice, Worth) {
        let part = self.bench.part(number);
        let toll = part.map_or(Toll::NONE, |part| self.purchase(part));
        let fitted = |ordered: &Part| part.is_some_and(|part| part.number == ordered.number);
        let ordered = self.ordering(|_, part| fitted(part));
        let sound = ordered.and_then(|stop| stop.sound);
        (step_or_measure(sound), toll.saved())
    }

    /// A part was bought whose need was not proved: how often that is in vain, less the test that would tell. What
    /// was seen broken needs no test: it belongs in the report.
    fn bought_blind(&self, at: Option<Time>) -> (SoundChoice, Worth) {
        let Some(stop) = self.ordering(|stop, _| at.is_none_or(|at| stop.at >= Some(at))) else {
            return (step_or_measure(None), Toll::NONE.saved());
        };
        let Some(part) = self.part_of(stop) else {
            return (step_or_measure(None), Toll::NONE.saved());
        };
        if stop.at.is_some_and(|at| was_seen(self.bench, part, at)) {
            let report = SoundChoice::Practice(GoodPractice::Report);
            return (report, Toll::NONE.saved());
        }
        let modes = self.library.modes.iter().enumerate();
        let cured: f64 = modes
            .filter(|(_, mode)| part.ends(mode) && !mode.needs_no_part())
            .map(|(n, _)| stop.shares[n + 1])
            .sum();
        let test = stop.sound.filter(|step| matches!(step, PlanStep::Test(_)));
        let spent = test.map_or(Toll::NONE, |step| self.price(step));
        let gain = self.purchase(part).times(1.0 - cured).less(spent);
        (step_or_measure(test), gain.saved())
    }

    /// The first order on the way that this is true of.
    fn ordering(&self, wanted: impl Fn(&PathPoint, &Part) -> bool) -> Option<&PathPoint> {
        let is = |stop: &&PathPoint| self.part_of(stop).is_some_and(|part| wanted(stop, part));
        self.yours.iter().find(is)
    }

    /// The part that was ordered there.
    fn part_of(&self, stop: &PathPoint) -> Option<&Part> {
        match &stop.deed {
            PathStep::Did(Action::Order(number)) => self.bench.part(number),
            _ => None,
        }
    }

    /// What it takes to find the fault: the best way up to its first repair.
    fn diagnosis(&self) -> Toll {
        let repair = |stop: &PathPoint| matches!(stop.deed, PathStep::Planned(PlanStep::Repair(_)));
        let before = self.best.iter().take_while(|stop| !repair(stop));
        before.last().map_or(Toll::NONE, |stop| Toll {
            minutes: stop.minutes,
            money: stop.money,
        })
    }

    /// What the wrong part costs whoever orders it by this report.
    fn part_named(&self, named: Option<&str>) -> Toll {
        let part = named.and_then(|number| self.bench.part(number));
        part.map_or(self.first_look(), |part| self.purchase(part))
    }
}

/// The planner's step where it had one; else the meter comes before the purchase.
fn step_or_measure(step: Option<PlanStep>) -> SoundChoice {
    step.map_or(
        SoundChoice::Practice(GoodPractice::MeasureFirst),
        SoundChoice::Step,
    )
}

/// A quote, for the time that it takes.
fn a_quote() -> Action {
    Action::Quote(Quote {
        parts: Vec::new(),
        minutes: 0,
    })
}

/// Time that a basket takes to stop. Common practice, no source: count to thirty.
const SPIN_DOWN_S: f64 = 30.0;

/// Time that a pump takes to empty a tub. Common practice, no source: two to three minutes.
const PUMP_OUT_S: f64 = 150.0;

fn money(money: f64) -> Toll {
    Toll {
        minutes: 0.0,
        money: money.max(0.0),
    }
}

/// A whole way.
fn last(way: &[PathPoint]) -> Toll {
    way.last().map_or(Toll::NONE, |stop| Toll {
        minutes: stop.minutes,
        money: stop.money,
    })
}
