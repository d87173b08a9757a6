//! What the commands print.

use super::Failure;
use crate::bench::{Bench, Display, Grip, MeterMode, Reading};
use crate::content::{Language, Shelf, Texts, Titled};
use crate::controller::Lamps;
use crate::lesson::{Bilingual, Score};
use crate::units::Time;
use std::io::Write;

/// The built-in scenarios: name, title, goal.
pub(super) fn scenarios(language: Language) -> Result<(), Failure> {
    let shelf = Shelf::builtin()?;
    let mut out = std::io::stdout().lock();
    for titled in shelf.scenarios()? {
        let name = titled
            .file
            .trim_start_matches("scenarios/")
            .trim_end_matches(".ron");
        let scenario = &titled.scenario;
        let line = format!(
            "{name:<16} {} — {}",
            said(&scenario.title, language),
            said(&scenario.goal, language)
        );
        writeln!(out, "{line}").map_err(|e| Failure::Write("the list".to_owned(), e))?;
    }
    Ok(())
}

fn said(text: &Bilingual, language: Language) -> &str {
    match language {
        Language::En => &text.en,
        Language::Es => &text.es,
    }
}

/// A moment at which a script looked, and the lamps that were lit.
pub(super) type Look = (Time, Lamps);

/// The lamps as they stand on the panel: tens, units, and the lock lamp.
fn lit(lamps: Lamps) -> String {
    let lamp = |bit: u8| {
        if lamps.arc & (1 << bit) != 0 {
            '●'
        } else {
            '○'
        }
    };
    let group = |bits: [u8; 4]| bits.map(lamp).iter().collect::<String>();
    let lock = if lamps.lock { '●' } else { '○' };
    format!("{} {}  | {lock}", group([7, 6, 5, 4]), group([3, 2, 1, 0]))
}

/// A reading as a person writes it down.
pub(super) fn reading(r: &Reading, texts: &Texts) -> String {
    let (name, unit) = match r.mode {
        MeterMode::Ohms => ("ohms", "Ω"),
        MeterMode::VoltsAc => ("volts-ac", "V~"),
        MeterMode::VoltsDc => ("volts-dc", "V⎓"),
        MeterMode::AmpsClamp => ("amps", "A~"),
        MeterMode::Hertz => ("hertz", "Hz"),
        MeterMode::Continuity => ("continuity", "Ω"),
        MeterMode::VoltsLowZ => ("volts-low-z", "V~"),
        MeterMode::Microfarads => ("microfarads", "µF"),
    };
    let mut line = format!(
        "{name:<11} {} / {}: {} {unit}",
        r.red,
        r.black,
        display(r.shown)
    );
    if r.beeped() {
        line = format!("{line}  {}", texts.get("meter-beep"));
    }
    if r.grip == Grip::Fingers {
        line = format!("{line}  ({})", texts.get("meter-fingers"));
    }
    line
}

/// What a meter shows, without its unit.
fn display(shown: Display) -> String {
    match shown {
        Display::Value(v) => format!("{v:.6}")
            .trim_end_matches('0')
            .trim_end_matches('.')
            .to_owned(),
        Display::OverRange => "OL".to_owned(),
        Display::Dead => "—".to_owned(),
    }
}

/// State, readings and score as text.
pub(super) fn outcome(
    titled: &Titled,
    seed: u64,
    bench: &Bench,
    score: &Score,
    looks: &[Look],
    language: Language,
) -> Result<(), Failure> {
    let texts = Texts::load(language);
    let mut out = std::io::stdout().lock();
    let mut put = |line: String| {
        writeln!(out, "{line}").map_err(|e| Failure::Write("the result".to_owned(), e))
    };
    let view = bench.view();
    put(format!(
        "{}: {} ({} {seed})",
        titled.file,
        said(&titled.scenario.title, language),
        texts.get("cli-seed")
    ))?;
    let control = &view.machine.control;
    put(format!(
        "{}: {} | {:.0} mm | {:.1} °C | {:.0} min | {:.0} + {:.0}",
        texts.get("cli-state"),
        control.mode,
        view.machine.level_mm,
        view.machine.water_c,
        view.minutes,
        view.spent,
        view.labour,
    ))?;
    put(format!(
        "{}: {}",
        texts.get("cli-state-hash"),
        bench.machine().state_hash()
    ))?;
    for attempt in &control.tries {
        let outcome = match attempt.outcome {
            crate::controller::Outcome::Open => "…".to_owned(),
            crate::controller::Outcome::Entered => texts.get("cli-entered"),
            crate::controller::Outcome::Broken(broke) => {
                texts.get(&format!("rule-{}", broke.key()))
            }
        };
        put(format!(
            "{} {} s: {outcome}",
            texts.get("cli-try"),
            attempt.began_s
        ))?;
    }
    for (at, lamps) in looks {
        put(format!("{} {at}  {}", texts.get("cli-lamps"), lit(*lamps)))?;
    }
    put(format!("{}:", texts.get("cli-readings")))?;
    for (n, r) in bench.notebook().iter().enumerate() {
        put(format!("  {n:>2}  {}  {}", r.at, reading(r, &texts)))?;
    }
    for test in bench.meter_tests() {
        put(format!(
            "{}: {}  {} V~  {} V⎓  {} Ω",
            texts.get("cli-meter-test"),
            test.at,
            display(test.volts_ac),
            display(test.volts_dc),
            display(test.ohms)
        ))?;
    }
    put(format!(
        "{}: {:.1} / {:.1}",
        texts.get("cli-score"),
        score.total(),
        score.of()
    ))?;
    if bench.report().is_none() {
        return put(texts.get("cli-no-report"));
    }
    for d in &score.dimensions {
        put(format!(
            "  {:<12} {:>5.1} / {:.1}",
            texts.get(&format!("dimension-{}", d.dimension)),
            d.kept,
            d.of
        ))?;
        for lost in &d.lost {
            put(format!(
                "    −{:.1}  {}  {}",
                lost.points,
                lost.at,
                texts.loss(lost)
            ))?;
        }
    }
    Ok(())
}

/// The same as JSON.
pub(super) fn outcome_json(
    titled: &Titled,
    seed: u64,
    bench: &Bench,
    score: &Score,
    looks: &[Look],
) -> Result<(), Failure> {
    let view = bench.view();
    let readings: Vec<_> = bench
        .notebook()
        .iter()
        .map(|r| {
            let value = match r.shown {
                Display::Value(v) => Some(v),
                _ => None,
            };
            serde_json::json!({
                "at_s": r.at.seconds(), "mode": r.mode, "red": r.red, "black": r.black,
                "value": value, "over_range": r.shown == Display::OverRange, "live": r.live,
                "beep": r.beeped(), "grip": r.grip,
            })
        })
        .collect();
    let mut json = serde_json::json!({
        "scenario": titled.file,
        "seed": seed,
        "state": bench.machine().state_hash(),
        "time_s": bench.now().seconds(),
        "mode": view.machine.control.mode,
        "level_mm": view.machine.level_mm,
        "minutes": view.minutes,
        "spent": view.spent,
        "labour": view.labour,
        "waited_hours": view.waited_hours,
        "codes_stored": view.machine.control.stored.iter().map(|c| c.code).collect::<Vec<_>>(),
        "codes_noted": bench.noted_codes().iter().map(|(_, c)| c).collect::<Vec<_>>(),
        "lamps": looks.iter().map(|(at, lamps)| format!("{at} {}", lit(*lamps))).collect::<Vec<_>>(),
        "tries": view.machine.control.tries,
        "readings": readings,
        "total": score.total(),
        "of": score.of(),
    });
    // The answers stay hidden until the report is in.
    if bench.report().is_some() {
        json["score"] = serde_json::json!(score);
        json["hidden"] = bench.hidden().iter().map(|m| m.id.as_str()).collect();
        json["landmarks"] = bench
            .landmarks()
            .iter()
            .map(|l| format!("{} {:?}", l.at, l.kind))
            .collect();
    }
    let mut out = std::io::stdout().lock();
    writeln!(out, "{json:#}").map_err(|e| Failure::Write("the result".to_owned(), e))
}
