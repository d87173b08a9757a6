//! What `play --json` prints: a format of its own that other programs may rely on. Its schema is kept in
//! `assets/schema`; a change that breaks readers raises [`VERSION`].

use super::print::lit;
use detent_content::ScenarioSource;
use detent_simulation::controller::{Lamps, Outcome as End, Try};
use detent_simulation::units::Time;
use detent_training::bench::{
    self, Bench, BenchLog, Display, Found, Grip, MeterMode, MeterTest, MilestoneKind, Question,
    QuoteGiven, Reading as Taken, Repair,
};
use detent_training::lesson::{self, CustomerAccount, DimensionScore, EarlierVisit, Intake, Score};
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;

/// Version of the format.
const VERSION: u32 = 1;

/// How a script played out. Lengths of time in seconds or minutes, sums in whole units of money.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(title = "Outcome of `detent play --json`")]
#[serde(deny_unknown_fields)]
pub(super) struct Outcome {
    /// Version of this format.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// File of the scenario.
    scenario: String,
    /// Seed of the random draws.
    seed: u64,
    /// Hash of the machine's state, hexadecimal.
    #[schemars(regex(pattern = "^[0-9a-f]+$"))]
    state: String,
    /// What is on file of the first visit, where this is the second one; null otherwise.
    first_visit: Option<FirstVisit>,
    /// Machine time, s.
    time_s: f64,
    /// What the control is doing.
    mode: String,
    /// Water in the tub, mm.
    level_mm: f64,
    /// Work time, min, without waits for parts.
    minutes: f64,
    /// Money spent on parts.
    spent: f64,
    /// What the work costs.
    labour: f64,
    /// What the work used up, whole units of money.
    consumables: f64,
    /// Time waited for parts, h.
    waited_hours: f64,
    /// Codes written down, as they were read.
    codes_noted: Vec<u8>,
    /// Each look at the lamps.
    lamps: Vec<LampsSeen>,
    /// Tries at the entry gesture.
    tries: Vec<GestureTry>,
    /// Readings of the meter; a report cites them by their place here, from 0.
    readings: Vec<Reading>,
    /// Tries of the meter on the proving source: whether it showed what was there.
    meter_tests: Vec<bool>,
    /// What was found by looking.
    found: Vec<Look>,
    /// What the customer was asked.
    asked: Vec<Asked>,
    /// Quotes, each with the customer's answer.
    quotes: Vec<Quote>,
    /// Buckets filled at the taps.
    bucket_tests: Vec<BucketTest>,
    /// Looks for leaks.
    leak_checks: Vec<LeakCheck>,
    /// The step that could not be done; null when all were.
    failed: Option<FailedStep>,
    /// Fault, codes and score; null until a report comes to a conclusion.
    answer: Option<Answer>,
}

/// What is on file of the first visit.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct FirstVisit {
    /// Codes written down and not struck out.
    codes_noted: Vec<u8>,
    /// Parts that were fitted.
    fitted: Vec<String>,
    /// Components that were put right by hand.
    put_right: Vec<String>,
    /// Causes that the report named.
    causes: Vec<String>,
    /// What the customer called back for.
    call_back: CallBack,
}

/// The lamps at one moment.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct LampsSeen {
    /// Machine time, s.
    at_s: f64,
    /// As they stand on the panel.
    lit: String,
}

/// One try at the entry gesture.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct GestureTry {
    /// When it began, s.
    began_s: u32,
    /// How it ended.
    outcome: TryOutcome,
    /// The rule that ended it, such as `hold-too-short`; null when none did.
    broken_rule: Option<String>,
    /// The step at which it ended, from 0; null when no rule was broken.
    step: Option<u8>,
    /// By how much a time was missed, ms; null where none was.
    by_ms: Option<u32>,
}

/// How a try ended.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum TryOutcome {
    /// Still going on.
    Open,
    /// Service mode was entered.
    Entered,
    /// A rule was broken.
    Broken,
    /// Begun in a fault hold, in which the control takes no gesture.
    InHold,
}

/// One reading of the meter.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Reading {
    /// Machine time, s.
    at_s: f64,
    /// Setting of the meter.
    mode: MeterSetting,
    /// Pin under the red probe.
    red: String,
    /// Pin under the black probe.
    black: String,
    /// What it showed, in the setting's unit; null for no value.
    value: Option<f64>,
    /// It showed that the value is beyond its range.
    over_range: bool,
    /// The plug was in.
    live: bool,
    /// It beeped.
    beep: bool,
    /// The probes were held with the fingers on the metal.
    by_fingers: bool,
}

/// Setting of the meter.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum MeterSetting {
    Ohms,
    VoltsAc,
    VoltsDc,
    AmpsClamp,
    Hertz,
    Continuity,
    VoltsLowZ,
    Microfarads,
    Insulation,
}

/// A look at a component.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Look {
    /// Machine time, s.
    at_s: f64,
    /// What was looked at.
    component: String,
    /// What was noticed; none when there was nothing to see.
    findings: Vec<String>,
}

/// A question to the customer, and the answer.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// Machine time, s.
    at_s: f64,
    /// What was asked, such as `panel`.
    question: String,
    /// The answer by name, such as `padlock-blinks`; for the plate model and serial number.
    said: Vec<String>,
}

/// A quote and the customer's answer.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Quote {
    /// Machine time, s.
    at_s: f64,
    /// Numbers of the parts.
    parts: Vec<String>,
    /// Labor, min.
    minutes: u16,
    /// Parts and labor, without call-out fee and tax.
    amount: f64,
    /// The customer agreed.
    approved: bool,
}

/// A bucket filled at a tap.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct BucketTest {
    /// Machine time, s.
    at_s: f64,
    /// Which tap: `cold` or `hot`.
    tap: String,
    /// Flow, L/min.
    flow_l_min: f64,
    /// Temperature of the water, °C; null where nothing comes.
    water_c: Option<f64>,
    /// Pressure behind the tap that such a flow speaks of, kPa.
    pressure_kpa: f64,
    /// What it comes to: `good`, `weak` or `nothing`.
    strength: String,
}

/// A look for leaks.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct LeakCheck {
    /// Machine time, s.
    at_s: f64,
    /// The floor was wet.
    wet: bool,
}

/// The step of a script that could not be done.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct FailedStep {
    /// Line in the script, from 1.
    pub line: usize,
    /// The step as it stands there.
    pub step: String,
    /// Why it could not be done, in the language of the program.
    pub error: String,
}

/// What is told once a report comes to a conclusion.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Answer {
    /// Points kept.
    total: f64,
    /// Points possible.
    of: f64,
    /// The job is passed.
    passed: bool,
    /// What failed it whatever else was won, such as `shock`; null when nothing did.
    failed_by: Option<String>,
    /// The failure modes that the machine had.
    hidden: Vec<String>,
    /// Codes that the control holds, newest first.
    codes_stored: Vec<u8>,
    /// The score by dimension.
    dimensions: Vec<Dimension>,
    /// What the machine went through.
    milestones: Vec<Milestone>,
    /// What the customer pays.
    invoice: Invoice,
    /// What the customer calls back for three days later; null where nobody calls.
    call_back: Option<CallBack>,
}

/// What the customer calls back for.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct CallBack {
    /// What was noticed in the wash, such as `water-stayed-in`; how it ended comes first.
    noticed: Vec<String>,
    /// Time from the start of that wash to its end, min.
    after_min: u32,
}

/// An invoice. Sums in whole units of money, to the cent.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Invoice {
    /// Model of the machine; null where nobody asked.
    model: Option<String>,
    /// Serial number of the machine; null where nobody asked.
    serial: Option<String>,
    /// Its lines.
    lines: Vec<InvoiceLine>,
    /// What the customer pays before tax.
    subtotal: f64,
    /// Tax, 0 to 1.
    tax_share: f64,
    /// Tax on the subtotal.
    tax: f64,
    /// What the customer pays.
    total: f64,
    /// Warranty on parts and labor, days; null where nothing was repaired.
    warranty_days: Option<u16>,
}

/// One line of an invoice.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct InvoiceLine {
    /// What for.
    item: InvoiceItem,
    /// What was used up, such as `contact-cleaner`; null for what is no consumable.
    consumable: Option<String>,
    /// Number of the part; null for what is none.
    part: Option<String>,
    /// Time of work, min; null for what is none.
    minutes: Option<u32>,
    /// What it is worth.
    value: f64,
    /// Why the customer does not pay it, such as `fitted-in-vain`; null for what the customer pays.
    free: Option<String>,
}

/// What a line of an invoice is for.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum InvoiceItem {
    CallOut,
    Labor,
    Consumable,
    Part,
    Restocking,
}

/// One dimension of the score.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Dimension {
    /// Which.
    dimension: String,
    /// Highest points possible.
    of: f64,
    /// Points kept.
    kept: f64,
    /// Each loss.
    lost: Vec<Loss>,
}

/// Points lost at one moment for one reason.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Loss {
    /// Machine time, s.
    at_s: f64,
    /// Points lost.
    points: f64,
    /// Why, such as `wrong-part`.
    reason: String,
    /// What belongs to it, by name.
    details: BTreeMap<String, serde_json::Value>,
}

/// Something that the machine went through.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Milestone {
    /// Machine time, s.
    at_s: f64,
    /// What.
    kind: MilestoneName,
    /// The monitor that stopped the control; null where none did.
    monitor: Option<String>,
    /// The code that was shown; null where none was.
    code: Option<u8>,
}

/// Kinds of milestone.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum MilestoneName {
    PowerReset,
    ServiceEntered,
    ProgramStarted,
    ProgramCancelled,
    ProgramFinished,
    Held,
    CalibrationStarted,
    CalibrationPassed,
    CalibrationFailed,
    CodeShown,
    CodesCleared,
}

impl Outcome {
    /// Of the job on this bench; `failed` is the step at which its script ended.
    pub fn of(
        (scenario_source, seed): (&ScenarioSource, u64),
        (bench, first): (&Bench, Option<&(EarlierVisit, CustomerAccount)>),
        (score, call_back): (&Score, Option<&lesson::CallBack>),
        (looks, intake): (&[(Time, Lamps)], &Intake),
        failed: Option<FailedStep>,
    ) -> Outcome {
        let view = bench.view();
        let concluded = bench.report().is_some_and(|report| report.concludes());
        let lamps = looks.iter().map(|(at, lamps)| LampsSeen {
            at_s: at.seconds(),
            lit: lit(&bench.machine().board().lamps, *lamps),
        });
        Outcome {
            version: VERSION,
            scenario: scenario_source.file.clone(),
            seed,
            state: bench.machine().state_hash(),
            first_visit: first.map(FirstVisit::of),
            time_s: bench.now().seconds(),
            mode: view.machine.control.mode.to_string(),
            level_mm: view.machine.level_mm,
            minutes: view.minutes,
            spent: view.spent,
            labour: view.labour,
            consumables: view.consumables,
            waited_hours: view.waited_hours,
            codes_noted: bench.log().standing_codes(),
            lamps: lamps.collect(),
            tries: view
                .machine
                .control
                .tries
                .iter()
                .map(GestureTry::of)
                .collect(),
            readings: bench.notebook().iter().map(Reading::of).collect(),
            meter_tests: bench.meter_tests().iter().map(MeterTest::is_good).collect(),
            found: bench.found().iter().map(Look::of).collect(),
            asked: bench
                .asked()
                .map(|asked| Asked::of(asked, intake, bench.log()))
                .collect(),
            quotes: bench.quotes().iter().map(Quote::of).collect(),
            bucket_tests: bench
                .log()
                .bucket_tests()
                .iter()
                .map(BucketTest::of)
                .collect(),
            leak_checks: bench
                .log()
                .leak_checks()
                .iter()
                .map(LeakCheck::of)
                .collect(),
            failed,
            answer: concluded.then(|| Answer::of(bench, score, call_back)),
        }
    }
}

impl GestureTry {
    fn of(seen: &Try) -> GestureTry {
        use detent_simulation::controller::EntryError as Rule;
        let broken = match seen.outcome {
            End::Broken(rule) => Some(rule),
            End::Open | End::Entered | End::InHold => None,
        };
        let by_ms = broken.and_then(|rule| match rule {
            Rule::Late { by_ms, .. }
            | Rule::PressTooLong { by_ms, .. }
            | Rule::HoldTooShort { by_ms, .. }
            | Rule::HoldTooLong { by_ms, .. }
            | Rule::TooSoon { by_ms, .. }
            | Rule::StoodTooShort { by_ms, .. } => Some(by_ms),
            Rule::WrongWay { .. }
            | Rule::TooManyDetents { .. }
            | Rule::TooFewDetents { .. }
            | Rule::OutOfOrder { .. }
            | Rule::WindowOver { .. } => None,
        });
        let step = broken.map(|rule| match rule {
            Rule::Late { step, .. }
            | Rule::PressTooLong { step, .. }
            | Rule::HoldTooShort { step, .. }
            | Rule::HoldTooLong { step, .. }
            | Rule::TooSoon { step, .. }
            | Rule::StoodTooShort { step, .. }
            | Rule::WrongWay { step }
            | Rule::TooManyDetents { step }
            | Rule::TooFewDetents { step, .. }
            | Rule::OutOfOrder { step }
            | Rule::WindowOver { step } => step,
        });
        GestureTry {
            began_s: seen.began_s,
            outcome: match seen.outcome {
                End::Open => TryOutcome::Open,
                End::Entered => TryOutcome::Entered,
                End::Broken(_) => TryOutcome::Broken,
                End::InHold => TryOutcome::InHold,
            },
            broken_rule: broken.map(|rule| rule.rule().to_string()),
            step,
            by_ms,
        }
    }
}

impl Reading {
    fn of(taken: &Taken) -> Reading {
        Reading {
            at_s: taken.at.seconds(),
            mode: MeterSetting::of(taken.mode),
            red: taken.red.to_string(),
            black: taken.black.to_string(),
            value: match taken.shown {
                Display::Value(value) => Some(value),
                Display::OverRange | Display::Dead => None,
            },
            over_range: taken.shown == Display::OverRange,
            live: taken.live,
            beep: taken.beeped(),
            by_fingers: taken.grip == Grip::Fingers,
        }
    }
}

impl MeterSetting {
    fn of(mode: MeterMode) -> MeterSetting {
        match mode {
            MeterMode::Ohms => MeterSetting::Ohms,
            MeterMode::VoltsAc => MeterSetting::VoltsAc,
            MeterMode::VoltsDc => MeterSetting::VoltsDc,
            MeterMode::AmpsClamp => MeterSetting::AmpsClamp,
            MeterMode::Hertz => MeterSetting::Hertz,
            MeterMode::Continuity => MeterSetting::Continuity,
            MeterMode::VoltsLowZ => MeterSetting::VoltsLowZ,
            MeterMode::Microfarads => MeterSetting::Microfarads,
            MeterMode::Insulation => MeterSetting::Insulation,
        }
    }
}

impl Look {
    fn of(found: &Found) -> Look {
        Look {
            at_s: found.at.seconds(),
            component: found.component.to_string(),
            findings: found.findings.iter().map(ToString::to_string).collect(),
        }
    }
}

impl Asked {
    fn of((at, question): (Time, Question), intake: &Intake, log: &BenchLog) -> Asked {
        let said = match intake.answer(question, log) {
            lesson::Answer::Appliance(plate) => vec![plate.model, plate.serial],
            lesson::Answer::Since(since) => vec![since.to_string()],
            lesson::Answer::Noticed { noticed, .. } => {
                noticed.iter().map(ToString::to_string).collect()
            }
            lesson::Answer::Tried(tried) => vec![tried.to_string()],
            lesson::Answer::Shown(shown) => vec![shown.to_string()],
        };
        Asked {
            at_s: at.seconds(),
            question: question.to_string(),
            said,
        }
    }
}

impl Quote {
    fn of(given: &QuoteGiven) -> Quote {
        Quote {
            at_s: given.at.seconds(),
            parts: given.quote.parts.clone(),
            minutes: given.quote.minutes,
            amount: given.amount,
            approved: given.approved,
        }
    }
}

impl BucketTest {
    fn of(test: &bench::BucketTest) -> BucketTest {
        BucketTest {
            at_s: test.at.seconds(),
            tap: test.pipe.to_string(),
            flow_l_min: test.flow_l_min,
            water_c: test.water_c,
            pressure_kpa: test.pressure_kpa(),
            strength: test.strength().to_string(),
        }
    }
}

impl LeakCheck {
    fn of(check: &bench::LeakCheck) -> LeakCheck {
        LeakCheck {
            at_s: check.at.seconds(),
            wet: check.is_wet(),
        }
    }
}

impl Answer {
    fn of(bench: &Bench, score: &Score, call_back: Option<&lesson::CallBack>) -> Answer {
        let stored = bench.machine().control().memory().codes.iter();
        Answer {
            total: score.total(),
            of: score.of(),
            passed: score.passed(),
            failed_by: score.failed_by().map(|d| d.loss.kind().to_string()),
            hidden: bench.hidden().iter().map(|mode| mode.id.clone()).collect(),
            codes_stored: stored.map(|code| code.code).collect(),
            dimensions: score.dimensions.iter().map(Dimension::of).collect(),
            milestones: bench.milestones().iter().map(Milestone::of).collect(),
            invoice: Invoice::of(&lesson::Invoice::of(bench)),
            call_back: call_back.map(|call| CallBack::of(&call.account)),
        }
    }
}

impl FirstVisit {
    fn of((earlier, account): &(EarlierVisit, CustomerAccount)) -> FirstVisit {
        let mut visit = FirstVisit {
            codes_noted: earlier.noted_codes.clone(),
            fitted: Vec::new(),
            put_right: Vec::new(),
            causes: earlier.report.causes.clone(),
            call_back: CallBack::of(account),
        };
        for repair in &earlier.repairs {
            match repair {
                Repair::Fitted { part } => visit.fitted.push(part.clone()),
                Repair::PutRight(component) => visit.put_right.push(component.to_string()),
            }
        }
        visit
    }
}

impl CallBack {
    fn of(account: &CustomerAccount) -> CallBack {
        CallBack {
            noticed: account.noticed.iter().map(ToString::to_string).collect(),
            after_min: account.after_min,
        }
    }
}

impl Invoice {
    fn of(invoice: &lesson::Invoice) -> Invoice {
        Invoice {
            model: invoice.appliance.as_ref().map(|plate| plate.model.clone()),
            serial: invoice.appliance.as_ref().map(|plate| plate.serial.clone()),
            lines: invoice.lines.iter().map(InvoiceLine::of).collect(),
            subtotal: invoice.subtotal,
            tax_share: invoice.tax_share,
            tax: invoice.tax,
            total: invoice.total,
            warranty_days: invoice.warranty_days,
        }
    }
}

impl InvoiceLine {
    fn of(line: &lesson::InvoiceLine) -> InvoiceLine {
        let (item, part, minutes) = match &line.item {
            lesson::InvoiceItem::CallOut => (InvoiceItem::CallOut, None, None),
            lesson::InvoiceItem::Labor { minutes, .. } => {
                (InvoiceItem::Labor, None, Some(*minutes))
            }
            lesson::InvoiceItem::Consumable(_) => (InvoiceItem::Consumable, None, None),
            lesson::InvoiceItem::Part { number } => (InvoiceItem::Part, Some(number), None),
            lesson::InvoiceItem::Restocking { number, .. } => {
                (InvoiceItem::Restocking, Some(number), None)
            }
        };
        let consumable = match &line.item {
            lesson::InvoiceItem::Consumable(consumable) => Some(consumable.to_string()),
            _ => None,
        };
        InvoiceLine {
            item,
            consumable,
            part: part.cloned(),
            minutes,
            value: line.value,
            free: line.free.map(|why| why.to_string()),
        }
    }
}

impl Dimension {
    fn of(scored: &DimensionScore) -> Dimension {
        let lost = scored.lost.iter().map(|loss| Loss {
            at_s: loss.at.seconds(),
            points: loss.points,
            reason: loss.loss.kind().to_string(),
            details: details(&loss.loss),
        });
        Dimension {
            dimension: scored.dimension.to_string(),
            of: scored.of,
            kept: scored.kept,
            lost: lost.collect(),
        }
    }
}

/// The fields of a loss, by name.
fn details(loss: &detent_training::lesson::Loss) -> BTreeMap<String, serde_json::Value> {
    match serde_json::to_value(loss) {
        Ok(serde_json::Value::Object(fields)) => {
            let fields = fields.into_iter();
            fields.filter(|(name, _)| name != "reason").collect()
        }
        _ => BTreeMap::new(),
    }
}

impl Milestone {
    fn of(milestone: &detent_training::bench::Milestone) -> Milestone {
        let (kind, monitor, code) = match milestone.kind {
            MilestoneKind::PowerReset => (MilestoneName::PowerReset, None, None),
            MilestoneKind::ServiceEntered => (MilestoneName::ServiceEntered, None, None),
            MilestoneKind::ProgramStarted => (MilestoneName::ProgramStarted, None, None),
            MilestoneKind::ProgramCancelled => (MilestoneName::ProgramCancelled, None, None),
            MilestoneKind::ProgramFinished => (MilestoneName::ProgramFinished, None, None),
            MilestoneKind::Held(monitor) => (MilestoneName::Held, Some(monitor), None),
            MilestoneKind::CalibrationStarted => (MilestoneName::CalibrationStarted, None, None),
            MilestoneKind::CalibrationPassed => (MilestoneName::CalibrationPassed, None, None),
            MilestoneKind::CalibrationFailed(monitor) => {
                (MilestoneName::CalibrationFailed, Some(monitor), None)
            }
            MilestoneKind::CodeShown(code) => (MilestoneName::CodeShown, None, Some(code)),
            MilestoneKind::CodesCleared => (MilestoneName::CodesCleared, None, None),
        };
        Milestone {
            at_s: milestone.at.seconds(),
            kind,
            monitor: monitor.map(|monitor| monitor.to_string()),
            code,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kept_file;

    #[test]
    fn the_kept_schema_is_that_of_the_program() {
        kept_file::check_printed::<Outcome>("play", VERSION);
    }
}
