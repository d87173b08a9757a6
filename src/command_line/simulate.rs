//! `detent simulate`: the customer's wash, its signals as a table.

use super::{Failure, LibraryFolder};
use detent_simulation::controller::PhaseKind;
use detent_simulation::units::{Span, TICK_MS};
use detent_training::bench::cost::LONGEST_JOB;
use detent_training::lesson::{prepare, start_wash};
use std::io::Write;

#[derive(Debug, clap::Args)]
pub(super) struct SimulateArgs {
    scenario: String,
    #[arg(long)]
    seed: Option<u64>,
    #[arg(long, default_value_t = 3600, value_parser = clap::value_parser!(u64).range(1..=LONGEST_S))]
    seconds: u64,
    #[arg(long, default_value_t = 1000, value_parser = clap::value_parser!(u64).range(TICK_MS..=1000 * LONGEST_S))]
    every_ms: u64,
    #[arg(long)]
    csv: bool,
}

/// The longest machine time of a job, s.
const LONGEST_S: u64 = LONGEST_JOB.ms() / 1000;

/// Writes one row of cells.
type WriteRow<'a> = Box<dyn FnMut(&[String]) -> std::io::Result<()> + 'a>;

const COLUMNS: [&str; 17] = [
    "time_s",
    "mode",
    "phase",
    "level_mm",
    "water_c",
    "cold_l_min",
    "hot_l_min",
    "drain_l_min",
    "motor_rpm",
    "basket_rpm",
    "motor_a",
    "line_a",
    "pump_a",
    "bulk_v",
    "bolted",
    "arc",
    "lock_lamp",
];

pub(super) fn simulate(args: &SimulateArgs, library: &LibraryFolder) -> Result<(), Failure> {
    let content_library = library.open()?;
    let scenario_source = content_library.scenario(&args.scenario)?;
    let seed = args.seed.unwrap_or(scenario_source.scenario.seed);
    let mut bench = prepare(
        &scenario_source.scenario,
        &content_library.library(&scenario_source.scenario),
        seed,
    )?;
    start_wash(&mut bench);
    let every = Span::from_ms(args.every_ms);
    let rows = Span::from_s(args.seconds).0 / every.0;
    let out = std::io::stdout().lock();
    let mut table: WriteRow<'_> = if args.csv {
        let mut csv = csv::Writer::from_writer(out);
        Box::new(move |row| {
            csv.write_record(row)?;
            csv.flush()
        })
    } else {
        let mut out = out;
        Box::new(move |row| {
            let cells: Vec<String> = row.iter().map(|cell| format!("{cell:>11}")).collect();
            writeln!(out, "{}", cells.join(" "))
        })
    };
    table(&COLUMNS.map(str::to_owned)).map_err(Failure::Output)?;
    for _ in 0..rows {
        let machine = bench.machine();
        let (view, amps) = (machine.view(), machine.plant().amps());
        let number = |v: f64| format!("{v:.3}");
        let row = [
            number(view.time_s),
            view.control.mode.name().to_owned(),
            view.control.phase.map_or("-", PhaseKind::name).to_owned(),
            number(view.level_mm),
            number(view.water_c),
            number(view.cold_l_min),
            number(view.hot_l_min),
            number(view.drain_l_min),
            number(view.motor_rpm),
            number(view.basket_rpm),
            number(amps.motor),
            number(amps.line),
            number(amps.pump),
            number(machine.plant().supply().bulk_v),
            u8::from(view.lid_bolted).to_string(),
            {
                let count = usize::from(machine.board().lamps.signs.lamps());
                format!("{:0count$b}", view.lamps.code)
            },
            u8::from(view.lamps.lock).to_string(),
        ];
        table(&row).map_err(Failure::Output)?;
        bench.wait(every);
    }
    Ok(())
}
