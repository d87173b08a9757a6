//! What the commands print.

use super::Failure;
use super::LibraryFolder;
use super::coached::Coached;
use super::course;
use super::output::Output;
use detent_content::{Language, ScenarioSource, Texts, Value, Words};
use detent_simulation::controller::{LampRules, Lamps, Signs};
use detent_simulation::units::{Span, Time};
use detent_training::bench::{Bench, Grip, MeterMode, Reading};
use detent_training::lesson::{
    Bilingual, CallBack, CustomerAccount, EarlierVisit, Intake, Invoice, PASS_SAFETY_SHARE, Score,
};
use detent_training::reason::Review;

/// The scenarios: name, title, goal. Those of the course's plan come first, in its order.
pub(super) fn scenarios(library: &LibraryFolder, language: Language) -> Result<(), Failure> {
    let content_library = library.open()?;
    let texts = Texts::load(language);
    let mut out = Output::standard();
    let mut others = content_library.scenarios()?;
    if let Some(own) = content_library.course() {
        out.line(course::heading(own, language, &texts))?;
        for job in &own.plan {
            if let Some(at) = others.iter().position(|source| source.stem() == *job) {
                out.line(listed(&others.remove(at), language))?;
            }
        }
    }
    let mut last = None;
    for scenario_source in others {
        let part = scenario_source
            .scenario
            .course
            .as_ref()
            .map(|course| course.part);
        if let Some(part) = part
            && last != Some(part)
        {
            out.line(texts.get(&format!("course-{part}")))?;
        }
        last = part;
        out.line(listed(&scenario_source, language))?;
    }
    Ok(())
}

fn listed(scenario_source: &ScenarioSource, language: Language) -> String {
    let name = scenario_source.stem();
    let scenario = &scenario_source.scenario;
    format!(
        "  {name:<22} {} ({:.0} min) — {}",
        said(&scenario.title, language),
        scenario.par_minutes,
        said(&scenario.goal, language)
    )
}

pub(super) fn said(text: &Bilingual, language: Language) -> &str {
    match language {
        Language::En => &text.en,
        Language::Es => &text.es,
    }
}

/// A moment at which a script looked, and the lamps that were lit.
pub(super) type Look = (Time, Lamps);

fn lamp(lit: bool) -> char {
    if lit { '●' } else { '○' }
}

/// The lamps as they stand on the panel: tens, units, and the lock lamp.
pub(super) fn lit(rules: &LampRules, lamps: Lamps) -> String {
    let row = |from: u8, count: u8| -> String {
        let bits = (from..from + count).rev();
        bits.map(|bit| lamp(lamps.code & (1 << bit) != 0)).collect()
    };
    let mut text = match &rules.signs {
        Signs::Weights { tens, units } => {
            let (tens, units) = (tens.len() as u8, units.len() as u8);
            format!("{} {}", row(units, tens), row(0, units))
        }
        Signs::Segments => format!("{}{}", digit(lamps.code >> 7), digit(lamps.code & 0x7f)),
        signs => row(0, signs.lamps()),
    };
    if rules.lock_lamp {
        text += &format!("  | {}", lamp(lamps.lock));
    }
    text
}

/// What an eye makes of seven segments.
fn digit(segments: u16) -> char {
    let shows = |n: &u8| Signs::Segments.lit(*n, Span::ZERO) & 0x7f == segments;
    match (0..=9).find(shows) {
        Some(n) => char::from(b'0' + n),
        None if segments == 0 => ' ',
        None if segments == 0x40 => '-',
        None => '?',
    }
}

/// A reading as a person writes it down.
pub(super) fn reading(r: &Reading, texts: &Texts) -> String {
    let mut line = format!(
        "{:<11} {} / {}: {}",
        texts.meter_mode(r.mode),
        r.red,
        r.black,
        texts.display(r.shown, r.mode)
    );
    if r.beeped() {
        line = format!("{line}  {}", texts.get("meter-beep"));
    }
    if r.grip == Grip::Fingers {
        line = format!("{line}  ({})", texts.get("meter-fingers"));
    }
    line
}

/// State, readings and score as text.
pub(super) fn outcome(
    out: &mut Output,
    (scenario_source, seed): (&ScenarioSource, u64),
    (bench, score, call_back): (&Bench, &Score, Option<&CallBack>),
    (intake, first): (&Intake, Option<&(EarlierVisit, CustomerAccount)>),
    looks: &[Look],
    (review, coached): (Option<&Review>, Option<&Coached>),
    language: Language,
) -> Result<(), Failure> {
    let volts = scenario_source.scenario.mains.rating().volts;
    let texts = Texts::load(language).for_supply(volts as u32);
    let mut put = |line: String| out.line(line);
    let view = bench.view();
    put(format!(
        "{}: {} ({} {seed})",
        scenario_source.file,
        said(&scenario_source.scenario.title, language),
        texts.get("cli-seed")
    ))?;
    let control = &view.machine.control;
    put(texts.with(
        "cli-state-now",
        &[
            ("control", texts.control_mode(control.mode).into()),
            (
                "level",
                Value::from(format!("{:.0}", view.machine.level_mm)),
            ),
            (
                "water",
                Value::from(texts.digits(format!("{:.1}", view.machine.water_c))),
            ),
        ],
    ))?;
    put(texts.with(
        "cli-work-now",
        &[
            ("minutes", Value::from(format!("{:.0}", view.minutes))),
            ("parts", Value::from(texts.whole_money(view.spent))),
            ("labor", Value::from(texts.whole_money(view.labour))),
            ("consumables", Value::from(texts.money(view.consumables))),
        ],
    ))?;
    put(format!(
        "{}: {}",
        texts.get("cli-state-hash"),
        bench.machine().state_hash()
    ))?;
    if let Some((earlier, account)) = first {
        put(format!(
            "{} {}",
            texts.get("call-back-visit"),
            texts.call_back(account)
        ))?;
        put(texts.earlier_visit(earlier, bench.counter()))?;
    }
    for attempt in control.tries.iter() {
        let outcome = match attempt.outcome {
            detent_simulation::controller::Outcome::Open => "…".to_owned(),
            detent_simulation::controller::Outcome::Entered => texts.get("cli-entered"),
            detent_simulation::controller::Outcome::Broken(broke) => texts.broken_rule(broke),
            detent_simulation::controller::Outcome::InHold => {
                texts.try_in_hold(&bench.machine().board().resets)
            }
        };
        put(format!(
            "{} {} s: {outcome}",
            texts.get("cli-try"),
            attempt.began_s
        ))?;
    }
    for (at, lamps) in looks {
        let rules = &bench.machine().board().lamps;
        let shown = lit(rules, *lamps);
        put(format!("{} {at}  {shown}", texts.get("cli-lamps")))?;
    }
    put(format!("{}:", texts.get("cli-readings")))?;
    for (n, r) in bench.notebook().iter().enumerate() {
        put(format!("  {n:>2}  {}  {}", r.at, reading(r, &texts)))?;
    }
    for test in bench.meter_tests().iter() {
        let shown = [
            (test.volts_ac, MeterMode::VoltsAc),
            (test.volts_dc, MeterMode::VoltsDc),
            (test.ohms, MeterMode::Ohms),
        ];
        let shown = shown
            .map(|(shown, of)| format!("{} {}", texts.meter_mode(of), texts.display(shown, of)));
        put(format!(
            "{}: {}  {}",
            texts.get("cli-meter-test"),
            test.at,
            shown.join("  ")
        ))?;
    }
    for (n, found) in bench.found().iter().enumerate() {
        let told: Vec<String> = match found.findings.as_slice() {
            [] => vec![texts.get("finding-nothing")],
            some => some
                .iter()
                .map(|f| texts.get(&format!("finding-{f}")))
                .collect(),
        };
        put(format!(
            "{} {n:>2}  {}  {}: {}",
            texts.get("cli-found"),
            found.at,
            texts.get(&format!("component-{}", found.component)),
            told.join(" ")
        ))?;
    }
    for (at, question) in bench.asked() {
        let answer = texts.answer(&intake.answer(question, bench.log()));
        put(format!("{at}  {} – {answer}", texts.question(question)))?;
    }
    for given in bench.quotes().iter() {
        put(format!("{}  {}", given.at, texts.quote_given(given)))?;
    }
    for test in bench.log().bucket_tests().iter() {
        put(format!("{}  {}", test.at, texts.bucket_test(test)))?;
    }
    for check in bench.log().leak_checks().iter() {
        put(format!("{}  {}", check.at, texts.leak_check(check)))?;
    }
    // Only a report that comes to a conclusion is answered.
    match bench.report() {
        None => return put(texts.get("cli-no-report")),
        Some(report) if !report.concludes() => return put(texts.get("cli-no-conclusion")),
        Some(_) => {}
    }
    if let Some(failed) = score.failed_by() {
        let why = texts.loss(&failed.loss);
        put(texts.with("score-failed", &[("why", Value::from(why))]))?;
    }
    if score.failed_by().is_none() && !score.is_safe_enough() {
        let percent = Value::from((PASS_SAFETY_SHARE * 100.0).round());
        put(texts.with("score-not-safe", &[("percent", percent)]))?;
    }
    let points = |kept: f64, of: f64| texts.digits(format!("{kept:>5.1} / {of:.1}"));
    put(format!(
        "{}: {}",
        texts.get("cli-score"),
        points(score.total(), score.of())
    ))?;
    // Pins are named as in the script that the reader wrote.
    let words =
        review.map(|r| Words::of((&r.repair_costs, &r.modes), &texts, bench.counter(), None));
    for d in &score.dimensions {
        put(format!(
            "  {:<16} {}",
            texts.get(&format!("dimension-{}", d.dimension)),
            points(d.kept, d.of)
        ))?;
        for (place, lost) in d.lost.iter().enumerate() {
            put(format!(
                "    −{}  {}  {}",
                texts.digits(format!("{:.1}", lost.points)),
                lost.at,
                texts.loss(&lost.loss)
            ))?;
            let reviewed = words.zip(review.and_then(|r| r.account(d.dimension, place)));
            if let Some((words, account)) = reviewed {
                put(format!("          {}", words.account(account)))?;
            }
        }
    }
    if let Some(coached) = coached {
        put(coached.words(score, &texts))?;
    }
    put(format!("{}:", texts.get("invoice")))?;
    for row in texts.invoice(&Invoice::of(bench), bench.counter()) {
        put(match row.amount {
            Some(amount) => format!("  {amount:>9}  {}", row.label),
            None => format!("             {}", row.label),
        })?;
    }
    match call_back {
        None => put(texts.get("call-back-none"))?,
        Some(call) => put(format!(
            "{} {}",
            texts.get("call-back"),
            texts.call_back(&call.account)
        ))?,
    }
    let (Some(words), Some(review)) = (words, review) else {
        return Ok(());
    };
    for (key, way) in [
        ("review-yours", &review.yours),
        ("review-best", &review.best),
    ] {
        put(format!("{}:", texts.get(key)))?;
        for stop in way {
            put(format!(
                "  {} min {:>8}  {}",
                texts.digits(format!("{:>5.1}", stop.minutes)),
                texts.whole_money(stop.money),
                words.deed(&stop.deed)
            ))?;
        }
    }
    Ok(())
}
