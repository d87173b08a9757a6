//! Scores an attempt from what the bench saw. Each point lost names the moment and the reason.

use super::advice;
use super::course::CoursePart;
use super::scenario::Scenario;
use super::score::{Deduction, Dimension, DimensionScore, Score};
use crate::bench::{
    Action, Advice, Bench, Display, Happening, LandmarkKind, MeterMode, Report, Verdict,
};
use detent_simulation::controller::{MAX_CODES, Outcome};
use detent_simulation::plant::{Component, FailureMode, Pin};
use detent_simulation::units::{Span, Time};

/// Share of a dimension's points that each kind of loss takes.
mod share {
    pub const FAILED_TRY: f64 = 0.15;
    pub const REST_TOO_SHORT: f64 = 0.20;
    pub const MISREAD: f64 = 0.50;
    pub const CODES_NOT_NOTED: f64 = 1.0;
    pub const WRONG_PART: f64 = 0.35;
    pub const GOOD_BOARD: f64 = 0.60;
    pub const BOUGHT_ON_CODE: f64 = 0.40;
    pub const WRONG_CAUSE: f64 = 0.40;
    pub const WRONG_PART_NAMED: f64 = 0.15;
    pub const WRONG_ADVICE: f64 = 0.10;
    pub const NOT_PROVED_DEAD: f64 = 0.15;
    pub const METER_NOT_PROVED: f64 = 0.10;
    pub const OVER_LIMIT: f64 = 0.5;
    pub const UNPROVEN: f64 = 0.50;
    pub const NOT_RECALIBRATED: f64 = 0.25;
    pub const NO_PROVING_RUN: f64 = 0.25;
}

/// Tries at the entry gesture that cost nothing: a hand needs to find the rhythm.
const FREE_TRIES: usize = 1;

/// A circuit that shows no more than this is dead, V (IEC 61140's limit for direct voltage, from memory).
const DEAD_V: f64 = 60.0;

struct Judge<'a> {
    scenario: &'a Scenario,
    bench: &'a Bench,
    score: Vec<DimensionScore>,
}

/// Scores the attempt as it stands.
pub fn judge(scenario: &Scenario, bench: &Bench) -> Score {
    let points = scenario.points;
    let of = |dimension| match dimension {
        Dimension::Entry => points.entry,
        Dimension::Reading => points.reading,
        Dimension::Reasoning => points.reasoning,
        Dimension::Safety => points.safety,
        Dimension::Cost => points.cost,
        Dimension::Proof => points.proof,
    };
    let score = Dimension::ALL
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
        score,
    };
    judge.entry();
    judge.reading();
    judge.reasoning();
    judge.safety();
    judge.cost();
    judge.proof();
    Score {
        dimensions: judge.score,
    }
}

impl Judge<'_> {
    /// Takes a share of a dimension's points, as far as there are any left. The reason is kept even
    /// when there are none: it is there to be learned from.
    fn lose(
        &mut self,
        d: Dimension,
        share: f64,
        at: Time,
        reason: &'static str,
        args: Vec<(&'static str, String)>,
    ) {
        let entry = &mut self.score[d.index()];
        let points = (share * entry.of).min(entry.kept);
        entry.kept -= points;
        entry.lost.push(Deduction {
            at,
            points,
            reason,
            args,
        });
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
            _ => None,
        });
        let failed: Vec<_> = failed.collect();
        for (began, broke) in failed.into_iter().skip(FREE_TRIES) {
            let args = vec![("rule", broke.key().to_owned())];
            self.lose(
                Dimension::Entry,
                share::FAILED_TRY,
                began,
                "lost-failed-try",
                args,
            );
        }
        if !self
            .bench
            .passed(LandmarkKind::ServiceEntered, self.bench.began())
        {
            let left = 1.0;
            self.lose(
                Dimension::Entry,
                left,
                self.end(),
                "lost-never-entered",
                Vec::new(),
            );
        }
        // A plug pulled and put back before the control forgot has reset nothing.
        let mut pulled = None;
        for (at, action) in self.bench.history().to_vec() {
            match action {
                Action::Unplug => pulled = Some(at),
                Action::Plug => {
                    if let Some(since) = pulled.take()
                        && !self.bench.landmarks().iter().any(|l| {
                            l.kind == LandmarkKind::PowerReset && l.at >= since && l.at <= at
                        })
                    {
                        let args = vec![("seconds", format!("{:.0}", at.since(since).seconds()))];
                        self.lose(
                            Dimension::Entry,
                            share::REST_TOO_SHORT,
                            at,
                            "lost-rest-too-short",
                            args,
                        );
                    }
                }
                _ => {}
            }
        }
    }

    fn reading(&mut self) {
        let mut shown: Vec<(Time, u8)> = Vec::new();
        for landmark in self.bench.landmarks() {
            if let LandmarkKind::CodeShown(code) = landmark.kind
                && landmark.at >= self.bench.began()
                && !shown.iter().any(|(_, c)| *c == code)
            {
                shown.push((landmark.at, code));
            }
        }
        let noted = self.bench.noted_codes().to_vec();
        for (n, (at, code)) in noted.iter().enumerate() {
            let again = noted[..n].iter().any(|(_, earlier)| earlier == code);
            if !again && !shown.iter().any(|(when, c)| c == code && when <= at) {
                let args = vec![("noted", format!("{code:02}")), ("shown", list(&shown))];
                self.lose(
                    Dimension::Reading,
                    share::MISREAD,
                    *at,
                    "lost-misread",
                    args,
                );
            }
        }
        let due = self.codes_to_note();
        let share = share::CODES_NOT_NOTED / due.len().max(1) as f64;
        for code in due {
            if !noted.iter().any(|(_, c)| *c == code) {
                let args = vec![("code", format!("{code:02}"))];
                self.lose(
                    Dimension::Reading,
                    share,
                    self.end(),
                    "lost-code-not-noted",
                    args,
                );
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
            codes.truncate(MAX_CODES);
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
        let fitted = self.bench.fitted().first();
        fitted.map_or(self.end(), |(at, _)| *at)
    }

    /// Codes that the control itself raised for this machine's fault before the first part went in.
    fn raised_codes(&self) -> Vec<u8> {
        let first_fit = self.first_fit();
        let mut codes = Vec::new();
        for landmark in self.bench.landmarks().iter().filter(|l| l.at < first_fit) {
            if let Some(monitor) = landmark.kind.stopped_by()
                && let Some(code) = self.bench.machine().board().code_of(monitor)
                && !codes.contains(&code)
            {
                codes.push(code);
            }
        }
        codes
    }

    fn reasoning(&mut self) {
        let d = Dimension::Reasoning;
        for event in self.bench.events().to_vec() {
            match event.what {
                Happening::GoodBoardReplaced => {
                    // Who swaps a sound control made nothing of what was drilled.
                    let taken = [(d, share::GOOD_BOARD)];
                    let drilled = self.drilled().map(|drilled| (drilled, 1.0));
                    for (d, share) in taken.into_iter().chain(drilled) {
                        self.lose(d, share, event.at, "lost-good-board-replaced", Vec::new());
                    }
                }
                Happening::WrongPart => self.lose(
                    d,
                    share::WRONG_PART,
                    event.at,
                    "lost-wrong-part",
                    Vec::new(),
                ),
                _ => {}
            }
        }
        let first_order = self.bench.history().iter().find_map(|(at, a)| match a {
            Action::Order(number) => Some((*at, number.clone())),
            _ => None,
        });
        if let Some((at, number)) = first_order
            && !self
                .bench
                .notebook()
                .iter()
                .any(|r| r.at <= at && r.shown != Display::Dead)
        {
            self.lose(
                d,
                share::BOUGHT_ON_CODE,
                at,
                "lost-bought-on-the-code",
                vec![("part", number)],
            );
        }
        if !self.cured() && !self.given_up_rightly() {
            self.lose(d, 1.0, self.end(), "lost-not-cured", Vec::new());
            // Time and money bought nothing.
            self.lose(
                Dimension::Cost,
                1.0,
                self.end(),
                "lost-not-cured",
                Vec::new(),
            );
        }
        match self.bench.report().cloned() {
            None => self.lose(
                d,
                share::WRONG_CAUSE,
                self.end(),
                "lost-no-report",
                Vec::new(),
            ),
            Some(report) => {
                self.causes(&report);
                self.part_named(&report);
                self.advice(report.advice);
            }
        }
    }

    /// Nothing is wrong with the machine any more.
    fn cured(&self) -> bool {
        self.bench.machine().plant().faults().next().is_none()
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
        let right = truth.iter().filter(|id| said.contains(id)).count();
        // Who gives up a sound machine has not found that it is sound.
        let missed_that_it_is_sound = truth.is_empty() && report.verdict == Verdict::GivenUp;
        let wrong = said.iter().filter(|id| !truth.contains(id)).count()
            + usize::from(missed_that_it_is_sound);
        let missed = truth.len() - right;
        if wrong + missed == 0 {
            return;
        }
        let share = share::WRONG_CAUSE * (wrong + missed) as f64 / (wrong + truth.len()) as f64;
        let args = vec![("said", said.join(",")), ("truth", truth.join(","))];
        self.lose(
            Dimension::Reasoning,
            share,
            self.end(),
            "lost-wrong-cause",
            args,
        );
    }

    /// The part named must be for a component that failed, and fit. What is put right by hand needs
    /// none.
    fn part_named(&mut self, report: &Report) {
        let hidden = self.bench.hidden();
        let right = match report.part.as_ref().and_then(|n| self.bench.part(n)) {
            Some(part) => {
                let needs = |m: &FailureMode| part.ends(m) && !m.needs_no_part();
                self.bench.fits(part) && hidden.iter().any(needs)
            }
            None => hidden.iter().all(|m| m.needs_no_part()),
        };
        if !right {
            let needed: Vec<&str> = (hidden.iter().filter_map(|m| self.bench.cure(m)))
                .map(|part| part.number.as_str())
                .collect();
            let args = vec![
                ("named", report.part.clone().unwrap_or_default()),
                ("needed", needed.join(", ")),
            ];
            self.lose(
                Dimension::Reasoning,
                share::WRONG_PART_NAMED,
                self.end(),
                "lost-wrong-part-named",
                args,
            );
        }
    }

    fn advice(&mut self, given: Advice) {
        let due = self.advice_due();
        if given != due {
            let args = vec![("given", given.to_string()), ("due", due.to_string())];
            self.lose(
                Dimension::Reasoning,
                share::WRONG_ADVICE,
                self.end(),
                "lost-wrong-advice",
                args,
            );
        }
    }

    fn safety(&mut self) {
        let mut lost: Vec<(f64, Time, &'static str)> = Vec::new();
        for event in self.bench.events() {
            let (share, reason) = match event.what {
                Happening::Shock => (1.0, "lost-shock"),
                Happening::TouchedCharge => (0.7, "lost-touched-charge"),
                Happening::CabinetOpenedLive => (0.5, "lost-opened-live"),
                Happening::OhmsOnLive => (0.5, "lost-ohms-on-live"),
                Happening::LiveTestNotAllowed => (0.4, "lost-live-not-allowed"),
                Happening::Flood => (0.4, "lost-flood"),
                Happening::LidOpenedSpinning => (0.5, "lost-lid-spinning"),
                Happening::WrongPart | Happening::GoodBoardReplaced => continue,
            };
            lost.push((share, event.at, reason));
        }
        // What hurts most takes its points first.
        lost.sort_by(|a, b| b.0.total_cmp(&a.0));
        for (share, at, reason) in lost {
            self.lose(Dimension::Safety, share, at, reason, Vec::new());
        }
        for (unplugged, touched) in self.first_touches() {
            let dead = self.found_dead(unplugged, touched);
            // Hands went in without a look at the meter or a bleed: luck, not proof.
            if dead.is_empty() {
                self.lose(
                    Dimension::Safety,
                    share::NOT_PROVED_DEAD,
                    touched,
                    "lost-not-proved-dead",
                    Vec::new(),
                );
            } else if !dead.iter().any(|at| self.meter_proved_around(*at, touched)) {
                self.lose(
                    Dimension::Safety,
                    share::METER_NOT_PROVED,
                    touched,
                    "lost-meter-not-proved",
                    Vec::new(),
                );
            }
        }
    }

    /// The first time that hands went in after each time the plug was pulled, with that time; hands
    /// that went in with the plug in come with their own.
    fn first_touches(&self) -> Vec<(Time, Time)> {
        let mut touches = Vec::new();
        let mut unplugged = None;
        let mut touched = false;
        for (at, action) in self.bench.history() {
            match action {
                Action::Unplug => (unplugged, touched) = (Some(*at), false),
                Action::Plug => (unplugged, touched) = (None, false),
                Action::Pull(_) | Action::Fit(_) if !touched => {
                    touches.push((unplugged.unwrap_or(*at), *at));
                    touched = true;
                }
                _ => {}
            }
        }
        touches
    }

    /// Moments between two others at which the circuit was found dead: the charge was bled and
    /// checked, or a meter that works showed that it is gone.
    fn found_dead(&self, from: Time, until: Time) -> Vec<Time> {
        let within = |at: Time| from <= at && at <= until;
        let bulk = |pin| matches!(pin, Pin::BulkPlus | Pin::BulkMinus);
        let bled = self.bench.history().iter();
        let bled = bled
            .filter(|(_, a)| *a == Action::Discharge)
            .map(|(at, _)| *at);
        let read = self.bench.notebook().iter().filter(|r| {
            !r.live
                && r.meter_sound
                && r.mode == MeterMode::VoltsDc
                && bulk(r.red)
                && bulk(r.black)
                && matches!(r.shown, Display::Value(volts) if volts.abs() < DEAD_V)
        });
        bled.chain(read.map(|r| r.at))
            .filter(|at| within(*at))
            .collect()
    }

    /// The meter showed what it should on the proving source, both before the circuit was tested and
    /// after, before hands went in. 29 CFR 1910.333(b)(2)(iv) wants the circuit tested with test
    /// equipment, and that equipment checked where the circuit is over 600 V; to do so at any voltage,
    /// before and after, is common practice, no source.
    fn meter_proved_around(&self, tested: Time, touched: Time) -> bool {
        let good = |from: Time, until: Time| {
            let tests = self.bench.meter_tests().iter();
            tests
                .filter(|t| t.is_good())
                .any(|t| from < t.at && t.at <= until)
        };
        good(self.bench.began(), tested) && good(tested, touched)
    }

    fn cost(&mut self) {
        let d = Dimension::Cost;
        let minutes = self.bench.minutes();
        let over = minutes - self.scenario.par_minutes;
        if over > 1.0 {
            let args = vec![
                ("minutes", format!("{minutes:.0}")),
                ("par", format!("{:.0}", self.scenario.par_minutes)),
            ];
            let share = (0.5 * over / self.scenario.par_minutes).min(0.5);
            self.lose(d, share, self.end(), "lost-slow", args);
        }
        let needed = self.bench.hidden().iter();
        let needed_price: f64 = needed
            .filter_map(|m| self.bench.cure(m))
            .map(|p| p.price)
            .sum();
        let excess = self.bench.spent() - needed_price;
        if excess > 0.5 {
            let args = vec![
                ("spent", format!("{:.0}", self.bench.spent())),
                ("needed", format!("{needed_price:.0}")),
            ];
            let share = (excess / self.scenario.budget).min(1.0);
            self.lose(d, share, self.end(), "lost-overspent", args);
        }
        let bill = self.bench.spent() + self.bench.labour();
        if bill > self.scenario.budget {
            let args = vec![
                ("bill", format!("{bill:.0}")),
                ("budget", format!("{:.0}", self.scenario.budget)),
            ];
            self.lose(d, share::OVER_LIMIT, self.end(), "lost-over-budget", args);
        }
        let limit = self.bench.rates().repair_limit();
        if bill > limit {
            let args = vec![
                ("bill", format!("{bill:.0}")),
                ("limit", format!("{limit:.0}")),
            ];
            self.lose(
                d,
                share::OVER_LIMIT,
                self.end(),
                "lost-over-repair-limit",
                args,
            );
        }
    }

    fn proof(&mut self) {
        let d = Dimension::Proof;
        self.proof_by_readings();
        if self.given_up_rightly() {
            return;
        }
        let since = self
            .bench
            .fitted()
            .last()
            .map_or(self.bench.began(), |(at, _)| *at);
        if !self.bench.passed(LandmarkKind::CalibrationPassed, since) {
            self.lose(
                d,
                share::NOT_RECALIBRATED,
                self.end(),
                "lost-not-recalibrated",
                Vec::new(),
            );
        }
        if !self.bench.passed(LandmarkKind::ProgramFinished, since) {
            self.lose(
                d,
                share::NO_PROVING_RUN,
                self.end(),
                "lost-no-proving-run",
                Vec::new(),
            );
        }
    }

    /// The readings cited must rule out the other parts that the service sheet lists for the codes.
    fn proof_by_readings(&mut self) {
        let truth: Vec<Component> = self.bench.hidden().iter().map(|m| m.component).collect();
        if truth.is_empty() {
            return;
        }
        let suspects = self.suspects(&truth);
        let rivals: Vec<usize> = self
            .bench
            .modes()
            .iter()
            .enumerate()
            .filter(|(_, m)| !truth.contains(&m.component) && suspects.contains(&m.component))
            .map(|(n, _)| n)
            .collect();
        let Some(report) = self.bench.report() else {
            self.lose(
                Dimension::Proof,
                share::UNPROVEN,
                self.end(),
                "lost-no-report",
                Vec::new(),
            );
            return;
        };
        let first_fit = self.first_fit();
        let cited: Vec<_> = report
            .proof
            .iter()
            .filter_map(|n| self.bench.notebook().get(*n))
            .filter(|r| r.at <= first_fit)
            .collect();
        // What was found by looking before the repair needs no citing.
        let found: Vec<_> = (self.bench.found().iter())
            .filter(|f| f.at <= first_fit)
            .collect();
        let ruled_out = rivals
            .iter()
            .filter(|n| {
                cited.iter().any(|r| r.rules_out.get(**n) == Some(&true))
                    || found.iter().any(|f| f.rules_out.get(**n) == Some(&true))
            })
            .count();
        let open = rivals.len() - ruled_out;
        if cited.is_empty() && found.is_empty() {
            self.lose(
                Dimension::Proof,
                share::UNPROVEN,
                self.end(),
                "lost-no-evidence",
                Vec::new(),
            );
        } else if open > 0 {
            let share = share::UNPROVEN * open as f64 / rivals.len() as f64;
            let args = vec![
                ("open", open.to_string()),
                ("rivals", rivals.len().to_string()),
            ];
            self.lose(
                Dimension::Proof,
                share,
                self.end(),
                "lost-rivals-left",
                args,
            );
        }
    }

    fn suspects(&self, truth: &[Component]) -> Vec<Component> {
        let board = self.bench.machine().board();
        let mut suspects = truth.to_vec();
        for code in self.raised_codes() {
            let monitor = board.monitor_of(code);
            for entry in board.sheet.iter().filter(|e| Some(e.monitor) == monitor) {
                suspects.extend(&entry.suspects);
            }
        }
        suspects
    }
}

fn list(shown: &[(Time, u8)]) -> String {
    shown
        .iter()
        .map(|(_, code)| format!("{code:02}"))
        .collect::<Vec<_>>()
        .join(", ")
}
