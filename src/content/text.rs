//! All visible text, in each language, from Project Fluent files.

use super::builtin;
use detent_simulation::controller::{Board, is_words};
use detent_simulation::interface::{Component, Pin, Side};
use detent_training::bench::{Condition, MeterMode, Part};
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource};
use std::borrow::Cow;
use std::fmt;
use unic_langid::LanguageIdentifier;

/// An argument of a text: a number or a string.
pub type Value<'a> = fluent_bundle::FluentValue<'a>;

/// A language that the program speaks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Language {
    /// English.
    #[default]
    En,
    /// Spanish.
    Es,
}

impl Language {
    /// Every language.
    pub const ALL: [Language; 2] = [Language::En, Language::Es];

    /// The language's own name for itself.
    pub const fn own_name(self) -> &'static str {
        match self {
            Language::En => "English",
            Language::Es => "Español",
        }
    }

    /// A number that is written with a point, as the language writes it.
    pub fn digits(self, written: String) -> String {
        match self {
            Language::En => written,
            Language::Es => written.replace('.', ","),
        }
    }

    /// The language's two-letter code (ISO 639-1).
    pub const fn code(self) -> &'static str {
        match self {
            Language::En => "en",
            Language::Es => "es",
        }
    }

    /// Path of its file among the built-in ones.
    pub const fn file(self) -> &'static str {
        match self {
            Language::En => "assets/lang/en.ftl",
            Language::Es => "assets/lang/es.ftl",
        }
    }

    fn identifier(self) -> LanguageIdentifier {
        self.code().parse().unwrap_or_default()
    }
}

/// Every text in one language.
pub struct Texts {
    language: Language,
    /// Volts of the supply at the job, if there is one: some words differ by country.
    supply_volts: Option<u32>,
    bundle: FluentBundle<FluentResource>,
}

impl fmt::Debug for Texts {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_tuple("Texts").field(&self.language).finish()
    }
}

/// A number as Spanish writes it; everything else as it comes.
fn decimal_comma<M>(value: &Value<'_>, _: &M) -> Option<String> {
    match value {
        Value::Number(number) => Some(number.as_string().replace('.', ",")),
        _ => None,
    }
}

impl Texts {
    /// The built-in texts. What a file says wrongly is left out here; a test keeps the files right.
    pub fn load(language: Language) -> Texts {
        Texts::from_source(language, builtin::text(language.file()).unwrap_or_default())
    }

    fn from_source(language: Language, source: &str) -> Texts {
        let mut bundle = FluentBundle::new_concurrent(vec![language.identifier()]);
        // Isolation marks are for mixed writing directions; screens without them show boxes.
        bundle.set_use_isolating(false);
        if language == Language::Es {
            bundle.set_formatter(Some(decimal_comma));
        }
        let resource = FluentResource::try_new(source.to_owned()).unwrap_or_else(|(part, _)| part);
        bundle.add_resource_overriding(resource);
        Texts {
            language,
            supply_volts: None,
            bundle,
        }
    }

    /// The same texts in the words of where the supply has this many volts: faucets at 120, taps elsewhere.
    pub fn for_supply(mut self, volts: u32) -> Texts {
        self.supply_volts = Some(volts);
        self
    }

    /// Volts of the supply whose words these texts use, if they were given.
    pub fn supply_volts(&self) -> Option<u32> {
        self.supply_volts
    }

    /// The language of these texts.
    pub fn language(&self) -> Language {
        self.language
    }

    /// A number that is written with a point, as the language writes it.
    pub fn digits(&self, written: String) -> String {
        self.language.digits(written)
    }

    /// A share, 0 to 1, as a percentage with so many decimals.
    pub fn percent(&self, share: f64, decimals: usize) -> String {
        let number = self.digits(format!("{:.decimals$}", 100.0 * share));
        self.with("percent", &[("number", Value::from(number))])
    }

    /// Whether there is a text under this key.
    pub fn has(&self, key: &str) -> bool {
        let message = self.bundle.get_message(key);
        message.is_some_and(|message| message.value().is_some())
    }

    /// The text under a key; a missing one shows as the key in angle quotes, words as
    /// they are.
    pub fn get(&self, key: &str) -> String {
        self.fixed(key).into_owned()
    }

    /// The same, copied only where it must be.
    pub fn fixed(&self, key: &str) -> Cow<'_, str> {
        self.filled_in(key, &[])
    }

    /// The text under a key with its arguments filled in.
    pub fn with(&self, key: &str, args: &[(&str, Value<'_>)]) -> String {
        self.filled_in(key, args).into_owned()
    }

    fn filled_in(&self, key: &str, args: &[(&str, Value<'_>)]) -> Cow<'_, str> {
        let message = self.bundle.get_message(key);
        let Some(pattern) = message.and_then(|message| message.value()) else {
            // What an author writes in words instead of a key is shown as it is.
            let told = if is_words(key) {
                key.to_owned()
            } else {
                format!("‹{key}›")
            };
            return Cow::Owned(told);
        };
        let mut args: FluentArgs<'_> = args.iter().cloned().collect();
        // Without a supply the texts fall back on their words for any country.
        args.set("mains", self.supply_volts.unwrap_or_default());
        // An argument that is missing shows as its own name in braces.
        let mut errors = Vec::new();
        self.bundle
            .format_pattern(pattern, Some(&args), &mut errors)
    }

    /// A failure mode's name.
    pub fn mode(&self, id: &str) -> String {
        self.get(&format!("mode-{}", id.replace('.', "-")))
    }

    /// A board's name by its id: that of a built-in one, or the id of an own one.
    pub fn board_name(&self, id: &str) -> String {
        let key = format!("board-{id}");
        if self.has(&key) {
            self.get(&key)
        } else {
            id.to_owned()
        }
    }

    /// A component's name.
    pub fn component(&self, component: Component) -> String {
        self.get(&format!("component-{component}"))
    }

    /// A pin as the service sheet names it: `X2-5 (board)`, `Drain pump 1`, `Plug, line`.
    pub fn pin(&self, board: &Board, pin: Pin) -> String {
        match pin {
            Pin::Wire(terminal, Side::Load) => {
                let name = terminal.name();
                let number = &name[name.len() - 1..];
                format!("{} {number}", self.component(terminal.component()))
            }
            Pin::Wire(terminal, side) => {
                let place = board.connectors.iter().find_map(|c| {
                    let pin = c.pins.iter().find(|p| p.terminal == terminal)?;
                    Some(format!("{}-{}", c.label, pin.pin))
                });
                let side = self.get(&format!("side-{side}"));
                let place = place.unwrap_or_else(|| terminal.name().to_owned());
                format!("{place} {side}")
            }
            fixed => self.get(&format!("pin-{}", fixed.to_string().replace('.', "-"))),
        }
    }

    /// A setting of the meter as its knob names it.
    pub fn meter_mode(&self, mode: MeterMode) -> String {
        let sign = match mode {
            MeterMode::Ohms => "Ω",
            MeterMode::VoltsAc => "V~",
            MeterMode::VoltsLowZ => "LoZ V~",
            MeterMode::VoltsDc => "V DC",
            MeterMode::AmpsClamp => "A~",
            MeterMode::Hertz => "Hz",
            MeterMode::Microfarads => "µF",
            MeterMode::Insulation => "MΩ",
            MeterMode::Continuity => return self.get("meter-mode-continuity"),
        };
        sign.to_owned()
    }

    /// What a card at the counter says besides name and price: used or rebuilt, for which boards, what took
    /// its place; nothing for an ordinary new part.
    pub fn part_state(&self, part: &Part) -> Vec<String> {
        let mut words = Vec::new();
        if part.condition != Condition::New {
            words.push(self.get(&format!("condition-{}", part.condition.name())));
        }
        if !part.boards.is_empty() {
            let boards = part.boards.iter();
            let boards: Vec<String> = boards.map(|id| self.board_name(id)).collect();
            let boards = Value::from(boards.join(", "));
            words.push(self.with("parts-boards", &[("boards", boards)]));
        }
        if let Some(next) = &part.superseded_by {
            words.push(self.with("parts-superseded", &[("part", Value::from(next.as_str()))]));
        }
        words
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts() -> Texts {
        let source = "plain = Lid\nwith-name = Part { $number } costs { $price }\n";
        Texts::from_source(Language::En, source)
    }

    #[test]
    fn decimals_stand_behind_a_comma_in_spanish_and_a_point_in_english() {
        let source = "rest = { $seconds } s\n";
        let args = [("seconds", Value::from(2.5))];
        for (language, told) in [(Language::En, "2.5 s"), (Language::Es, "2,5 s")] {
            let texts = Texts::from_source(language, source);
            assert_eq!(texts.with("rest", &args), told);
        }
    }

    #[test]
    fn a_percentage_is_written_as_the_language_writes_it() {
        // American English closes the sign up (Chicago Manual of Style); Spanish keeps a space before it
        // (Ortografía de la lengua española). From memory.
        assert_eq!(Texts::load(Language::En).percent(0.124, 1), "12.4%");
        assert_eq!(Texts::load(Language::Es).percent(0.124, 1), "12,4\u{a0}%");
        assert_eq!(Texts::load(Language::En).percent(1.0, 0), "100%");
    }

    #[test]
    fn arguments_are_filled_in_without_marks() {
        let args = [("number", Value::from("D-1")), ("price", Value::from(12.5))];
        assert_eq!(texts().with("with-name", &args), "Part D-1 costs 12.5");
        assert_eq!(texts().get("plain"), "Lid");
    }

    #[test]
    fn words_that_differ_by_country_follow_the_supply() {
        let source =
            "tap = { $mains ->\n    [120] faucet\n   *[other] tap\n}\nshut = The { tap } is shut\n";
        let shut = |texts: Texts| texts.get("shut");
        let load = || Texts::from_source(Language::En, source);
        assert_eq!(shut(load().for_supply(120)), "The faucet is shut");
        assert_eq!(shut(load().for_supply(230)), "The tap is shut");
        assert_eq!(shut(load()), "The tap is shut");
    }

    #[test]
    fn what_is_missing_is_shown_as_missing() {
        assert_eq!(texts().get("no-such-key"), "‹no-such-key›");
        assert_eq!(texts().get("with-name"), "Part {$number} costs {$price}");
        assert!(!texts().has("no-such-key") && texts().has("plain"));
    }

    #[test]
    fn texts_can_be_shared_between_threads() {
        fn shared<T: Send + Sync>() {}
        shared::<Texts>();
    }
}
