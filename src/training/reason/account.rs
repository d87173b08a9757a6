//! What each lost point was about: what was known then, what a sound choice would have been, and what it
//! would have gained in minutes and money.

use super::evidence::Table;
use super::path::{Deed, PathError, Start, Stop, best, yours};
use super::plan::{Problem, Step};
use super::policy::{expected, order_costs};
use super::slices::{SliceEnd, without_breaks};
use super::trade::{Trade, WAIT_PER_HOUR, code_buyer};
use crate::bench::{Action, Bench, LandmarkKind, Part, cost};
use crate::lesson::{Deduction, Dimension, Library, Scenario, Score};
use detent_simulation::units::Time;

/// Causes that are named as known.
const NAMED: usize = 2;

/// What a sound choice would have been.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Sound {
    /// What the planner would have done with the same belief.
    Step(Step),
    /// Something that needs no planner: a text key.
    Rule(&'static str),
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
    pub sound: Sound,
    /// And what that is worth.
    pub worth: Worth,
}

/// A finished job, thought over.
#[derive(Clone, Debug, PartialEq)]
pub struct Review {
    /// Names of the failure modes: hypothesis n + 1 is mode n, hypothesis 0 is "nothing is wrong".
    pub modes: Vec<String>,
    /// What steps and repairs stand for.
    pub trade: Trade,
    /// The way that was gone.
    pub yours: Vec<Stop>,
    /// The planner's way on the same machine.
    pub best: Vec<Stop>,
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

/// The same in slices of a few milliseconds each, but for the customer's wash, which is one.
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
    let trade = Trade::of(&library, table, scenario.live_tests_allowed);
    let start = Start {
        scenario,
        library,
        table,
        trade: &trade,
        seed,
    };
    let (outcome, yours) = yours(start, bench).await?;
    let best = best(start, &outcome, bench).await?;
    let accountant = Accountant {
        bench,
        table,
        scenario,
        library,
        trade: &trade,
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
        trade,
    })
}

struct Accountant<'a> {
    bench: &'a Bench,
    table: &'a Table,
    scenario: &'a Scenario,
    library: Library<'a>,
    trade: &'a Trade,
    yours: &'a [Stop],
    best: &'a [Stop],
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
    fn before(&self, at: Time) -> &Stop {
        let until = |stop: &&Stop| stop.at.is_some_and(|t| t <= at);
        let stops = self.yours.iter().take_while(until);
        stops.last().unwrap_or(&self.yours[0])
    }

    fn sound(&self, loss: &Deduction, stop: &Stop) -> (Sound, Worth) {
        let rule = |key, worth| (Sound::Rule(key), worth);
        let seconds = |s: f64| self.work(s / 60.0);
        let of = |action: Action| seconds(cost::span(&action).seconds());
        match loss.reason {
            "lost-failed-try" => rule("sound-steady-hand", self.until_next_try(loss.at).saved()),
            "lost-never-entered" => rule("sound-steady-hand", self.first_look().taken()),
            "lost-rest-too-short" => rule("sound-rest", self.until_unplugged(loss.at).saved()),
            "lost-misread" => rule("sound-read-twice", self.misread(loss, stop).saved()),
            "lost-code-not-noted" => rule("sound-note-codes", self.first_look().saved()),
            "lost-good-board-replaced" | "lost-wrong-part" => self.part_in_vain(loss.at),
            "lost-bought-on-the-code" => self.bought_blind(Some(loss.at)),
            "lost-no-evidence" | "lost-rivals-left" => self.bought_blind(None),
            "lost-not-cured" | "lost-wrong-advice" => {
                rule("sound-second-visit", last(self.best).saved())
            }
            "lost-no-report" | "lost-wrong-cause" => rule("sound-report", self.diagnosis().saved()),
            "lost-wrong-part-named" => rule("sound-part-number", self.part_named().saved()),
            "lost-shock" | "lost-opened-live" => rule("sound-unplug", of(Action::Unplug).taken()),
            "lost-touched-charge" | "lost-not-proved-dead" => {
                rule("sound-discharge", of(Action::Discharge).taken())
            }
            "lost-ohms-on-live" => {
                let mut fuse = of(Action::ReplaceMeterFuse);
                fuse.money += cost::METER_FUSE_PRICE;
                rule("sound-ohms-dead", fuse.saved())
            }
            "lost-live-not-allowed" => rule("sound-dead-test", Toll::NONE.taken()),
            "lost-flood" => rule("sound-bail-out", of(Action::BailOut).taken()),
            "lost-lid-spinning" => rule("sound-wait-spin", seconds(SPIN_DOWN_S).taken()),
            "lost-meter-not-proved" => rule(
                "sound-prove-meter",
                of(Action::TestMeter).times(2.0).taken(),
            ),
            "lost-not-recalibrated" => rule(
                "sound-recalibrate",
                seconds(self.table.recalibration_s).taken(),
            ),
            "lost-no-proving-run" => rule("sound-run", seconds(self.table.proof_s).taken()),
            "lost-slow" => {
                let over = self.bench.minutes() - self.scenario.par_minutes;
                rule("sound-shorter-way", self.work(over).saved())
            }
            "lost-overspent" => {
                let needed: f64 = (self.bench.hidden().iter())
                    .filter_map(|m| self.bench.cure(m))
                    .map(|part| part.price)
                    .sum();
                rule(
                    "sound-buy-needed",
                    money(self.bench.spent() - needed).saved(),
                )
            }
            "lost-over-budget" => rule(
                "sound-ask-first",
                self.bill_over(self.scenario.budget).saved(),
            ),
            _ => {
                let limit = self.bench.rates().repair_limit();
                rule("sound-ask-first", self.bill_over(limit).saved())
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
        let (minutes, money) = self.trade.first_look();
        Toll { minutes, money }
    }

    fn bill_over(&self, limit: f64) -> Toll {
        money(self.bench.spent() + self.bench.labour() - limit)
    }

    fn price(&self, step: Step) -> Toll {
        // The machine is open when a test comes up at all.
        let (minutes, money) = self.trade.price(step, super::trade::OPENED);
        Toll { minutes, money }
    }

    /// From a failed try to the next try or to service mode.
    fn until_next_try(&self, began: Time) -> Toll {
        let tries = self.bench.tries();
        let tries = tries
            .iter()
            .map(|t| Time::ZERO + detent_simulation::units::Span::from_s(t.began_s.into()));
        let entered = (self.bench.landmarks().iter())
            .filter(|l| l.kind == LandmarkKind::ServiceEntered)
            .map(|l| l.at);
        let next = tries.chain(entered).filter(|at| *at > began).min();
        let next = next.unwrap_or(self.bench.now());
        self.work(next.since(began).seconds() / 60.0)
    }

    /// From plugging in too early to the plug being pulled again.
    fn until_unplugged(&self, plugged: Time) -> Toll {
        let again = (self.bench.history().iter())
            .filter(|(at, action)| *at > plugged && *action == Action::Unplug)
            .map(|(at, _)| *at)
            .min();
        again.map_or(Toll::NONE, |at| {
            self.work(at.since(plugged).seconds() / 60.0)
        })
    }

    /// What buying by the code as read costs more than by the code as shown, on average, and reading
    /// again at least.
    fn misread(&self, loss: &Deduction, stop: &Stop) -> Toll {
        let codes = |name: &str| -> Vec<u8> {
            let arg = loss.args.iter().find(|(n, _)| *n == name);
            let codes = arg.map_or("", |(_, value)| value.as_str()).split(", ");
            codes.filter_map(|code| code.parse().ok()).collect()
        };
        let minutes = self.trade.in_minutes();
        let by = |codes: &[u8]| {
            let (board, parts) = (self.library.board, self.library.parts);
            let order = code_buyer(self.trade, board, parts, codes, &stop.shares);
            let mean = |problem: &Problem| expected(&stop.shares, &order_costs(problem, &order));
            Toll {
                minutes: mean(&minutes),
                money: mean(&self.trade.problem),
            }
        };
        let more = by(&codes("noted")).less(by(&codes("shown")));
        let again = self.first_look();
        Toll {
            minutes: more.minutes.max(again.minutes),
            money: more.money.max(again.money),
        }
    }

    /// A part's price, its wait and the work of buying and fitting it.
    fn purchase(&self, part: &Part) -> Toll {
        let seconds = cost::span(&Action::Order(part.number.clone())).seconds()
            + cost::fitting(part.component).seconds();
        let mut toll = self.work(seconds / 60.0);
        toll.money += part.price + WAIT_PER_HOUR * part.wait_hours;
        toll
    }

    /// A part that was fitted then and cured nothing.
    fn part_in_vain(&self, fitted: Time) -> (Sound, Worth) {
        let number = (self.bench.history().iter()).find_map(|(at, action)| match action {
            Action::Fit(number) if *at == fitted => Some(number),
            _ => None,
        });
        let part = number.and_then(|n| self.bench.part(n));
        let toll = part.map_or(Toll::NONE, |part| self.purchase(part));
        let ordered = self.ordering(|_, part| {
            number.is_some_and(|n| {
                self.bench
                    .part(n)
                    .is_some_and(|fitted| fitted.number == part.number)
            })
        });
        let sound = ordered.and_then(|stop| stop.sound);
        (self.step_or(sound, "sound-measure-first"), toll.saved())
    }

    /// A part was bought whose need was not proved: how often that is in vain, less the test that would tell.
    fn bought_blind(&self, at: Option<Time>) -> (Sound, Worth) {
        let Some(stop) = self.ordering(|stop, _| at.is_none_or(|at| stop.at >= Some(at))) else {
            return (Sound::Rule("sound-measure-first"), Toll::NONE.saved());
        };
        let Some(part) = self.part_of(stop) else {
            return (Sound::Rule("sound-measure-first"), Toll::NONE.saved());
        };
        let modes = self.library.modes.iter().enumerate();
        let cured: f64 = modes
            .filter(|(_, mode)| part.ends(mode) && !mode.needs_no_part())
            .map(|(n, _)| stop.shares[n + 1])
            .sum();
        let test = stop.sound.filter(|step| matches!(step, Step::Test(_)));
        let spent = test.map_or(Toll::NONE, |step| self.price(step));
        let gain = self.purchase(part).times(1.0 - cured).less(spent);
        (self.step_or(test, "sound-measure-first"), gain.saved())
    }

    fn step_or(&self, step: Option<Step>, key: &'static str) -> Sound {
        step.map_or(Sound::Rule(key), Sound::Step)
    }

    /// The first order on the way that this is true of.
    fn ordering(&self, wanted: impl Fn(&Stop, &Part) -> bool) -> Option<&Stop> {
        let is = |stop: &&Stop| self.part_of(stop).is_some_and(|part| wanted(stop, part));
        self.yours.iter().find(is)
    }

    /// The part that was ordered there.
    fn part_of(&self, stop: &Stop) -> Option<&Part> {
        match &stop.deed {
            Deed::Did(Action::Order(number)) => self.bench.part(number),
            _ => None,
        }
    }

    /// What it takes to find the fault: the best way up to its first repair.
    fn diagnosis(&self) -> Toll {
        let repair = |stop: &Stop| matches!(stop.deed, Deed::Planned(Step::Repair(_)));
        let before = self.best.iter().take_while(|stop| !repair(stop));
        before.last().map_or(Toll::NONE, |stop| Toll {
            minutes: stop.minutes,
            money: stop.money,
        })
    }

    /// What the wrong part costs whoever orders it by this report.
    fn part_named(&self) -> Toll {
        let named = self.bench.report().and_then(|r| r.part.as_ref());
        let part = named.and_then(|number| self.bench.part(number));
        part.map_or(self.first_look(), |part| self.purchase(part))
    }
}

/// Time that a basket takes to stop. Common practice, no source: count to thirty.
const SPIN_DOWN_S: f64 = 30.0;

fn money(money: f64) -> Toll {
    Toll {
        minutes: 0.0,
        money: money.max(0.0),
    }
}

/// A whole way.
fn last(way: &[Stop]) -> Toll {
    way.last().map_or(Toll::NONE, |stop| Toll {
        minutes: stop.minutes,
        money: stop.money,
    })
}
