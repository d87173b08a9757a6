//! Scores an attempt from what the bench saw. Each point lost names the moment and the reason.

use super::advice;
use super::course::CoursePart;
use super::invoice::Invoice;
use super::loss::{Loss, LossKind};
use super::scenario::Scenario;
use super::score::{Dimension, DimensionScore, Score};
use crate::bench::{
    Action, Advice, Bench, DeadProof, LogEntry, MilestoneKind, NotedCode, Repair, Report, RunProof,
    Verdict, hands_inside,
};
use detent_simulation::controller::Outcome;
use detent_simulation::interface::Component;
use detent_simulation::plant::{FailureMode, Op, Param};
use detent_simulation::units::{Span, Time};

/// Tries at the entry gesture that cost nothing: a hand needs to find the rhythm.
pub(crate) const FREE_TRIES: usize = 1;

/// An invoice may be this much of the approved quote: a tenth more. Common practice, no source.
const QUOTE_HOLDS: f64 = 1.1;

struct Judge<'a> {
    scenario: &'a Scenario,
    bench: &'a Bench,
    score: Score,
}

/// Scores the attempt as it stands.
pub fn judge(scenario: &Scenario, bench: &Bench) -> Score {
    let of = |side| scenario.points.of(side);
    let dimensions = Dimension::ALL
        .iter()
        .map(|d| DimensionScore {
            dimension: *d,
            of: of(*d),
            kept: of(*d),
            lost: Vec::new(),
        })
        .collect();
    let mut judge = Judge {
        scenario,
        bench,
        score: Score { dimensions },
    };
    judge.entry();
    judge.reading();
    judge.reasoning();
    judge.safety();
    judge.cost();
    judge.proof();
    judge.hints();
    judge.score
}

impl Judge<'_> {
    /// Takes its share of the points of the loss's own side.
    fn lose(&mut self, at: Time, loss: Loss) {
        self.lose_on(loss.side(), at, loss);
    }

    /// The same on another side.
    fn lose_on(&mut self, side: Dimension, at: Time, loss: Loss) {
        self.score.lose(side, at, loss);
    }

    /// Whether a side has lost points for this reason.
    fn lost(&self, side: Dimension, kind: LossKind) -> bool {
        let lost = self.score.dimensions[side.index()].lost.iter();
        lost.map(|lost| lost.loss.kind()).any(|lost| lost == kind)
    }

    /// Hints take their share of the side that the job is most about.
    fn hints(&mut self) {
        let side = self.scenario.points.main_side();
        for (at, action) in self.bench.history().iter() {
            if let Action::TakeHint(rung) = action {
                self.lose_on(side, at, Loss::HintTaken { rung: *rung });
            }
        }
    }

    fn end(&self) -> Time {
        self.bench.now()
    }

    fn entry(&mut self) {
        let tries = self.bench.tries();
        let failed = tries.iter().filter_map(|t| match t.outcome {
            Outcome::Broken(broke) => {
                Some((Time::ZERO + Span::from_s(u64::from(t.began_s)), broke))
            }
            Outcome::Open | Outcome::Entered | Outcome::InHold => None,
        });
        let failed: Vec<_> = failed
            .filter(|(began, _)| !self.nobody_could_enter(*began))
            .collect();
        for (began, rule) in failed.into_iter().skip(FREE_TRIES) {
            self.lose(began, Loss::FailedTry { rule });
        }
        if !self
            .bench
            .passed(MilestoneKind::ServiceEntered, self.bench.began())
        {
            self.lose(self.end(), Loss::NeverEntered);
        }
        // A plug pulled and put back before the control forgot has reset nothing.
        let mut pulled = None;
        let bench = self.bench;
        for (at, action) in bench.history().iter() {
            match action {
                Action::Unplug => pulled = Some(at),
                Action::Plug => {
                    if let Some(since) = pulled.take()
                        && !self.bench.milestones().iter().any(|l| {
                            l.kind == MilestoneKind::PowerReset && l.at >= since && l.at <= at
                        })
                    {
                        let seconds = at.since(since).seconds();
                        self.lose(at, Loss::RestTooShort { seconds });
                    }
                }
                _ => {}
            }
        }
    }

    /// The machine itself kept everybody out then: nobody's hand is to blame.
    fn nobody_could_enter(&self, at: Time) -> bool {
        let blocks = |(param, _): &(Param, Op)| {
            matches!(
                param,
                Param::ServiceLost | Param::StopButtonOhms | Param::EncoderOhms
            )
        };
        let mut blocking = (self.bench.hidden().iter()).filter(|m| m.changes.iter().any(blocks));
        blocking.any(|mode| {
            let ended = self
                .bench
                .repairs()
                .iter()
                .find(|(_, repair)| match repair {
                    Repair::Fitted { part } => self.bench.part(part).is_some_and(|p| p.ends(mode)),
                    Repair::PutRight(_) => false,
                });
            ended.is_none_or(|(ended, _)| at < ended)
        })
    }

    fn reading(&mut self) {
        let mut shown: Vec<(Time, u8)> = Vec::new();
        for milestone in self.bench.milestones().iter() {
            if let MilestoneKind::CodeShown(code) = milestone.kind
                && milestone.at >= self.bench.began()
                && !shown.iter().any(|(_, c)| *c == code)
            {
                shown.push((milestone.at, code));
            }
        }
        let notes = self.bench.log().notes();
        let first_order = (self.bench.history().iter())
            .find(|(_, action)| matches!(action, Action::Order(_)))
            .map(|(at, _)| at);
        for (n, note) in notes.iter().enumerate() {
            let NotedCode { at, code, struck } = *note;
            let again = notes[..n].iter().any(|earlier| earlier.code == code);
            if again || shown.iter().any(|(when, c)| *c == code && *when <= at) {
                continue;
            }
            // Seen before it led to a purchase, it did no harm.
            let in_time = struck.is_some_and(|at| first_order.is_none_or(|order| at < order));
            let loss = if in_time {
                Loss::CodeSlip { noted: code }
            } else {
                let shown = shown.iter().map(|(_, code)| *code).collect();
                Loss::Misread { noted: code, shown }
            };
            self.lose(at, loss);
        }
        let standing = self.bench.log().standing_codes();
        let to_note = self.codes_to_note();
        let due = to_note.len();
        for code in to_note {
            if !standing.contains(&code) {
                self.lose(self.end(), Loss::CodeNotNoted { code, due });
            }
        }
    }

    /// The codes raised and, where reading is drilled, the old ones that are stored beside them.
    fn codes_to_note(&self) -> Vec<u8> {
        let mut codes = self.raised_codes();
        if self.drilled() == Some(Dimension::Reading) {
            let stored = self.scenario.stale_codes.iter();
            codes.extend(
                stored
                    .filter(|code| !codes.contains(code))
                    .collect::<Vec<_>>(),
            );
            // What newer codes have pushed off the end of the list cannot be read.
            let kept = self.bench.machine().board().service.stored_codes;
            codes.truncate(usize::from(kept));
        }
        codes
    }

    /// The side of the job that this one is a drill for, if it is one.
    fn drilled(&self) -> Option<Dimension> {
        match self.scenario.course.as_ref()?.part {
            CoursePart::EntryDrill => Some(Dimension::Entry),
            CoursePart::ReadingDrill => Some(Dimension::Reading),
            _ => None,
        }
    }

    /// When the first repair was made, or now if none was.
    fn first_fit(&self) -> Time {
        let first = self.bench.repairs().first();
        first.map_or(self.end(), |(at, _)| at)
    }

    /// Codes that the control itself raised for this machine's fault before the first part went in.
    fn raised_codes(&self) -> Vec<u8> {
        let first_fit = self.first_fit();
        let mut codes = Vec::new();
        for milestone in self.bench.milestones().iter().filter(|l| l.at < first_fit) {
            if let Some(monitor) = milestone.kind.stopped_by()
                && let Some(code) = self.bench.machine().board().code_of(monitor)
                && !codes.contains(&code)
            {
                codes.push(code);
            }
        }
        codes
    }

    fn reasoning(&mut self) {
        for (at, loss) in happened(self.bench, Dimension::Reasoning) {
            if let Loss::GoodBoardReplaced { .. } = loss
                && let Some(drilled) = self.drilled()
            {
                self.lose_on(drilled, at, loss.clone());
            }
            self.lose(at, loss);
        }
        let first_order = self.bench.history().iter().find_map(|(at, a)| match a {
            Action::Order(number) => Some((at, number.clone())),
            _ => None,
        });
        if let Some((at, part)) = first_order
            && !self.anything_told_before(at)
        {
            self.lose(at, Loss::BoughtOnTheCode { part });
        }
        if !self.cured() && !self.given_up_rightly() {
            self.lose(self.end(), Loss::NotCured);
            self.lose_on(Dimension::Cost, self.end(), Loss::NotCured);
        }
        let bench = self.bench;
        match bench.report() {
            None => self.lose(self.end(), Loss::NoReport),
            Some(report) => {
                self.causes(report);
                self.part_named(report);
                self.advice(report.advice);
            }
        }
    }

    /// A reading or a look until then ruled out a cause that the codes could have or, without a code, any cause.
    /// What has nothing to do with them is no evidence.
    fn anything_told_before(&self, at: Time) -> bool {
        let codes = self.raised_codes();
        let suspects = self.suspects(&[], &codes);
        let could_be = |mode: &FailureMode| match mode.component {
            // Of the wires those that go to a suspect. What a reading says of the board it says of its inputs.
            Component::Harness => (mode.changes.iter()).any(|(param, _)| match param {
                Param::WireOhms(t) | Param::ContactOhms(t) => suspects.contains(&t.component()),
                _ => false,
            }),
            Component::Board => false,
            other => suspects.contains(&other),
        };
        let tells = |rules_out: &[bool]| {
            let ruled_out = self.bench.modes().iter().zip(rules_out);
            ruled_out
                .filter(|(_, out)| **out)
                .any(|(mode, _)| codes.is_empty() || could_be(mode))
        };
        let read = self.bench.notebook().iter();
        let mut by_hand = self.bench.log().seen_by_hand();
        read.filter(|r| r.at <= at).any(|r| tells(&r.rules_out))
            || by_hand.any(|(seen, out)| seen <= at && tells(out))
    }

    /// Nothing is wrong with the machine any more.
    fn cured(&self) -> bool {
        self.bench.machine().plant().faults().next().is_none()
    }

    /// The machine had a fault and has none any more.
    fn repaired(&self) -> bool {
        !self.bench.hidden().is_empty() && self.cured()
    }

    fn advice_due(&self) -> Advice {
        advice::due(self.bench, self.scenario.par_minutes)
    }

    /// The repair is not worth its money, and the customer was told so.
    fn given_up_rightly(&self) -> bool {
        self.advice_due() == Advice::Replace
            && (self.bench.report()).is_some_and(|report| report.advice == Advice::Replace)
    }

    /// The causes named against those that the machine had.
    fn causes(&mut self, report: &Report) {
        let said = report.causes.clone();
        let truth: Vec<String> = self.bench.hidden().iter().map(|m| m.id.clone()).collect();
        let all_in = |some: &[String], others: &[String]| some.iter().all(|id| others.contains(id));
        // Who gives up a sound machine has not found that it is sound.
        let gave_up_a_sound_one = truth.is_empty() && report.verdict == Verdict::GivenUp;
        if all_in(&said, &truth) && all_in(&truth, &said) && !gave_up_a_sound_one {
            return;
        }
        if self.repaired_by_luck(&said) {
            let lucky = Loss::LuckyRepair { said, truth };
            let sides = [Dimension::Reasoning, Dimension::Proof];
            for side in sides.into_iter().chain(self.drilled()) {
                self.lose_on(side, self.end(), lucky.clone());
            }
        } else {
            self.lose(self.end(), Loss::WrongCause { said, truth });
        }
    }

    /// The machine is cured, but the causes named lie elsewhere than the fault did: none of them in a component
    /// that failed, or fewer there than in others. A wrong cause in the right component is no luck: whoever
    /// suspects that component fits the right part.
    fn repaired_by_luck(&self, said: &[String]) -> bool {
        let hidden = self.bench.hidden();
        let failed = |c: Component| hidden.iter().any(|m| m.component == c);
        let named = self.bench.modes().iter().filter(|m| said.contains(&m.id));
        let (near, astray): (Vec<_>, Vec<_>) = named.partition(|m| failed(m.component));
        !hidden.is_empty() && self.cured() && (near.is_empty() || astray.len() > near.len())
    }

    /// The part named must be for a component that failed, and fit. What is put right by hand needs
    /// none.
    fn part_named(&mut self, report: &Report) {
        let hidden = self.bench.hidden();
        let right = match report.part.as_ref().and_then(|n| self.bench.part(n)) {
            Some(part) => {
                // A part that was fitted where hands would have done has taken its points already.
                let was_fitted = (self.bench.repairs().iter()).any(
                    |(_, repair)| matches!(repair, Repair::Fitted { part: n } if *n == part.number),
                );
                let needs = |m: &FailureMode| part.ends(m) && (was_fitted || !m.needs_no_part());
                self.bench.fits(part) && hidden.iter().any(needs)
            }
            None => hidden.iter().all(|m| m.needs_no_part()),
        };
        if !right {
            let needed = (hidden.iter().filter_map(|m| self.bench.cure(m)))
                .map(|part| part.number.clone())
                .collect();
            let named = report.part.clone();
            self.lose(self.end(), Loss::WrongPartNamed { named, needed });
        }
    }

    fn advice(&mut self, given: Advice) {
        let due = self.advice_due();
        if given != due {
            self.lose(self.end(), Loss::WrongAdvice { given, due });
        }
    }

    fn safety(&mut self) {
        for (at, loss) in safety_losses(self.bench) {
            self.lose(at, loss);
        }
    }

    fn cost(&mut self) {
        let Scenario {
            par_minutes: par,
            budget,
            ..
        } = *self.scenario;
        let minutes = self.bench.minutes();
        if minutes - par > 1.0 {
            self.lose(self.end(), Loss::Slow { minutes, par });
        }
        let needed = self.bench.needed_parts();
        let spent = self.bench.spent();
        if spent - needed > 0.5 {
            let overspent = Loss::Overspent {
                spent,
                needed,
                budget,
            };
            self.lose(self.end(), overspent);
        }
        let bill = self.bench.bill();
        if bill > budget {
            self.lose(self.end(), Loss::OverBudget { bill, budget });
        }
        let limit = self.bench.rates().repair_limit();
        if bill > limit {
            self.lose(self.end(), Loss::OverRepairLimit { bill, limit });
        }
        let bench = self.bench;
        if bench.is_called_back() {
            return;
        }
        for (at, part) in bench.log().fitted_without_approval() {
            let part = part.to_owned();
            self.lose(at, Loss::NotApproved { part });
        }
        if let Some(quoted) = bench.log().approved_quote().map(|given| given.amount) {
            let bill = Invoice::of(bench).parts_and_labor();
            if bill > QUOTE_HOLDS * quoted {
                self.lose(self.end(), Loss::OverQuote { bill, quoted });
            }
        }
    }

    fn proof(&mut self) {
        self.proof_by_readings();
        if self.given_up_rightly() {
            return;
        }
        for loss in left_unproved(self.bench) {
            if matches!(loss, Loss::NoProvingRun) {
                let main = self.scenario.points.main_side();
                self.lose_on(main, self.end(), loss.clone());
            }
            self.lose(self.end(), loss);
        }
        if self.repaired() && self.bench.demonstration_due() {
            self.lose(self.end(), Loss::NotDemonstrated);
        }
    }

    /// The readings cited must rule out the other parts that the service sheet lists for the codes.
    fn proof_by_readings(&mut self) {
        let truth: Vec<Component> = self.bench.hidden().iter().map(|m| m.component).collect();
        if truth.is_empty() {
            return;
        }
        // A lucky repair proved nothing, whatever is cited, and has taken its points.
        if self.lost(Dimension::Proof, LossKind::LuckyRepair) {
            return;
        }
        let suspects = self.suspects(&truth, &self.raised_codes());
        let rivals: Vec<usize> = self
            .bench
            .modes()
            .iter()
            .enumerate()
            .filter(|(_, m)| !truth.contains(&m.component) && suspects.contains(&m.component))
            .map(|(n, _)| n)
            .collect();
        let Some(report) = self.bench.report() else {
            self.lose_on(Dimension::Proof, self.end(), Loss::NoReport);
            return;
        };
        let first_fit = self.first_fit();
        let cited: Vec<_> = report
            .proof
            .iter()
            .filter_map(|n| self.bench.notebook().get(*n))
            .filter(|r| r.at <= first_fit)
            .collect();
        // What was found by hand before the repair needs no citing.
        let found: Vec<&[bool]> = (self.bench.log().seen_by_hand())
            .filter(|(at, _)| *at <= first_fit)
            .map(|(_, rules_out)| rules_out)
            .collect();
        let ruled_out = rivals
            .iter()
            .filter(|n| {
                cited.iter().any(|r| r.rules_out.get(**n) == Some(&true))
                    || found.iter().any(|out| out.get(**n) == Some(&true))
            })
            .count();
        let open = rivals.len() - ruled_out;
        if cited.is_empty() && found.is_empty() {
            self.lose(self.end(), Loss::NoEvidence);
        } else if open > 0 {
            let rivals = rivals.len();
            self.lose(self.end(), Loss::RivalsLeft { open, rivals });
        }
    }

    /// `truth`, and what the service sheet lists for these codes.
    fn suspects(&self, truth: &[Component], codes: &[u8]) -> Vec<Component> {
        let board = self.bench.machine().board();
        let mut suspects = truth.to_vec();
        for code in codes {
            let monitor = board.monitor_of(*code);
            for entry in board.sheet.iter().filter(|e| Some(e.monitor) == monitor) {
                suspects.extend(&entry.suspects);
            }
        }
        suspects
    }
}

/// What each unsafe or mistaken thing takes, in the order in which they happened.
pub(crate) fn mishaps(bench: &Bench) -> Vec<(Time, Loss)> {
    let mut fitted = "";
    let mut lost = Vec::new();
    for entry in bench.log().entries() {
        match entry {
            LogEntry::Action {
                action: Action::Fit(number),
                ..
            } => fitted = number,
            LogEntry::Event(event) => {
                lost.push((event.at, Loss::of_happening(event.what, fitted)));
            }
            _ => {}
        }
    }
    lost
}

/// What they took from a side.
fn happened(bench: &Bench, side: Dimension) -> Vec<(Time, Loss)> {
    let mut lost = mishaps(bench);
    lost.retain(|(_, loss)| loss.side() == side);
    lost
}

/// What the log says against the safety of the work so far: what happened, the worst first, and then hands that went
/// in before the stored charge was proved gone.
pub(crate) fn safety_losses(bench: &Bench) -> Vec<(Time, Loss)> {
    let side = Dimension::Safety;
    let mut lost = happened(bench, side);
    // What hurts most takes its points first.
    lost.sort_by(|(_, a), (_, b)| b.share(side).total_cmp(&a.share(side)));
    for (unplugged, touched) in first_touches(bench) {
        let unproved = match bench.dead_proof(unplugged, touched) {
            DeadProof::Complete => continue,
            DeadProof::MeterNotChecked => Loss::MeterNotProved,
            DeadProof::DischargedUnmeasured => Loss::DischargedUnmeasured,
            DeadProof::Missing => Loss::NotProvedDead,
        };
        lost.push((touched, unproved));
    }
    lost
}

/// The first time that hands went in after each time the plug was pulled, with that time; hands that went in with the
/// plug in come with their own.
pub(crate) fn first_touches(bench: &Bench) -> Vec<(Time, Time)> {
    let mut touches = Vec::new();
    let mut unplugged = None;
    let mut touched = false;
    for (at, action) in bench.history().iter() {
        match action {
            Action::Unplug => (unplugged, touched) = (Some(at), false),
            Action::Plug => (unplugged, touched) = (None, false),
            action if hands_inside(action) && !touched => {
                touches.push((unplugged.unwrap_or(at), at));
                touched = true;
            }
            _ => {}
        }
    }
    touches
}

/// What is still wanted before the last repair is proved by what the machine did since.
pub(crate) fn left_unproved(bench: &Bench) -> Vec<Loss> {
    let last = bench.repairs().last();
    let since = last.map_or(bench.began(), |(at, _)| at);
    let mut left = Vec::new();
    match bench.calibrated_empty(since) {
        None => left.push(Loss::NotRecalibrated),
        Some(false) => left.push(Loss::CalibratedWithLaundry),
        Some(true) => {}
    }
    match bench.run_proof() {
        RunProof::Complete => {}
        RunProof::NoRun => left.push(Loss::NoProvingRun),
        RunProof::FallsShort(gap) => left.push(Loss::RunFallsShort { gap }),
    }
    let component = bench.leak_check_due();
    left.extend(component.map(|component| Loss::NoLeakCheck { component }));
    left
}
