use std::process::ExitCode;

#[cfg(feature = "window")]
fn main() -> ExitCode {
    use detent::app::state::{Tab, ViewKind};
    use detent::content::Language;
    use detent::app::{AppOptions, demo::DemoShop, run};

    let mut options = AppOptions::default();
    let mut words = std::env::args().skip(1).filter(|word| word != "window");
    while let Some(flag) = words.next() {
        let value = words.next().unwrap_or_default();
        match (flag.as_str(), value.as_str()) {
            ("--shot", path) => options.screenshot = Some(path.into()),
            ("--view", "panel") => options.view = ViewKind::Panel,
            ("--view", "machine") => options.view = ViewKind::Machine,
            ("--view", "cabinet") => options.view = ViewKind::Cabinet,
            ("--tab", "sheet") => options.tab = Tab::Sheet,
            ("--tab", "meter") => options.tab = Tab::Meter,
            ("--tab", "parts") => options.tab = Tab::Parts,
            ("--tab", "report") => options.tab = Tab::Report,
            ("--tab", "score") => options.tab = Tab::Score,
            ("--lang", "es") => options.language = Language::Es,
            ("--lang", "en") => options.language = Language::En,
            ("--hidden", "yes") => options.hidden = true,
            ("--start", offer) => options.start = Some((offer.parse().unwrap_or(0), 1)),
            ("--frames", count) => options.after_frames = count.parse().unwrap_or(60),
            ("--width", count) => options.size.0 = count.parse().unwrap_or(1280),
            ("--height", count) => options.size.1 = count.parse().unwrap_or(720),
            _ => {
                eprintln!("detent: unknown option {flag} {value}");
                return ExitCode::from(2);
            }
        }
    }
    match run(options, Box::new(DemoShop::default())) {
        Ok(_) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("detent: {error}");
            ExitCode::FAILURE
        }
    }
}

#[cfg(not(feature = "window"))]
fn main() -> ExitCode {
    eprintln!("detent: built without the window");
    ExitCode::FAILURE
}
