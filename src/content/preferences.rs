//! How somebody works with the window: keys, hands, motion and the size of text. Kept with the learner.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What a key does at the bench.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum KeyAction {
    /// One detent counterclockwise.
    TurnLeft,
    /// One detent clockwise.
    TurnRight,
    /// The button Start.
    Start,
    /// The button Stop.
    Stop,
    /// The button More.
    More,
    /// The button Less.
    Less,
    /// Opens or closes the lid.
    Lid,
    /// Plugs in or unplugs.
    Plug,
    /// Takes the panels off or puts them back.
    Cabinet,
    /// Discharges the capacitor.
    Discharge,
    /// Looks at the console.
    ViewConsole,
    /// Looks at the whole machine.
    ViewMachine,
    /// Looks inside.
    ViewInside,
    /// Hides or shows the side panels.
    HidePanels,
    /// Opens the service sheet.
    TabSheet,
    /// Opens the meter.
    TabMeter,
    /// Opens the parts.
    TabParts,
    /// Opens the report.
    TabReport,
    /// Opens the score.
    TabScore,
    /// Waits for a minute.
    WaitMinute,
    /// Waits for ten minutes.
    WaitTenMinutes,
    /// Waits until the machine finishes or stops.
    WaitUntilStop,
    /// Slows time down.
    Slower,
    /// Speeds time up.
    Faster,
}

impl KeyAction {
    /// Every action, in the order of the list of keys.
    pub const ALL: [KeyAction; 24] = [
        KeyAction::TurnLeft,
        KeyAction::TurnRight,
        KeyAction::Start,
        KeyAction::Stop,
        KeyAction::More,
        KeyAction::Less,
        KeyAction::Lid,
        KeyAction::Plug,
        KeyAction::Cabinet,
        KeyAction::Discharge,
        KeyAction::ViewConsole,
        KeyAction::ViewMachine,
        KeyAction::ViewInside,
        KeyAction::HidePanels,
        KeyAction::TabSheet,
        KeyAction::TabMeter,
        KeyAction::TabParts,
        KeyAction::TabReport,
        KeyAction::TabScore,
        KeyAction::WaitMinute,
        KeyAction::WaitTenMinutes,
        KeyAction::WaitUntilStop,
        KeyAction::Slower,
        KeyAction::Faster,
    ];
}

/// A key that an action can be given, by its place on a keyboard for American English.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[allow(missing_docs, reason = "each is named for what is printed on it")]
pub enum KeyPlace {
    A,
    B,
    C,
    D,
    E,
    F,
    G,
    H,
    I,
    J,
    K,
    L,
    M,
    N,
    O,
    P,
    Q,
    R,
    S,
    T,
    U,
    V,
    W,
    X,
    Y,
    Z,
    Digit0,
    Digit1,
    Digit2,
    Digit3,
    Digit4,
    Digit5,
    Digit6,
    Digit7,
    Digit8,
    Digit9,
    Minus,
    Equals,
    OpenBracket,
    CloseBracket,
    Backslash,
    Semicolon,
    Quote,
    Backtick,
    Comma,
    Period,
    Slash,
    F2,
    F4,
    F8,
    F9,
    F10,
}

/// Whether keys that type a character do anything by themselves (WCAG 2.2, 2.1.4).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum CharacterKeys {
    /// They do.
    #[default]
    On,
    /// Only together with Alt.
    WithAlt,
    /// They do nothing: everything is done with Tab and Enter, or with the pointer.
    Off,
}

impl CharacterKeys {
    /// Every choice.
    pub const ALL: [CharacterKeys; 3] = [
        CharacterKeys::On,
        CharacterKeys::WithAlt,
        CharacterKeys::Off,
    ];
}

/// Whether the view glides to its new place or is there at once.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Motion {
    /// As the system or the browser has it, where that can be asked; else it glides.
    #[default]
    AsSystem,
    /// It is there at once.
    Reduced,
    /// It glides.
    Full,
}

impl Motion {
    /// Every choice.
    pub const ALL: [Motion; 3] = [Motion::AsSystem, Motion::Reduced, Motion::Full];
}

/// How loud what is heard of the machine is played. Its lines stand in any case.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum SoundVolume {
    /// Not at all.
    Off,
    /// A quarter as loud.
    Low,
    /// As loud as the system has it.
    #[default]
    Full,
}

impl SoundVolume {
    /// Every choice, from quiet to loud.
    pub const ALL: [SoundVolume; 3] = [SoundVolume::Off, SoundVolume::Low, SoundVolume::Full];

    /// Share of the amplitude that is played.
    pub const fn amplitude(self) -> f32 {
        match self {
            SoundVolume::Off => 0.0,
            SoundVolume::Low => 0.25,
            SoundVolume::Full => 1.0,
        }
    }
}

/// How large text and everything round it are drawn, against their usual size.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum TextSize {
    /// As they are.
    #[default]
    Percent100,
    /// A quarter larger.
    Percent125,
    /// Half as large again.
    Percent150,
    /// Three quarters larger.
    Percent175,
    /// Twice as large (WCAG 2.2, 1.4.4).
    Percent200,
}

impl TextSize {
    /// Every choice, from small to large.
    pub const ALL: [TextSize; 5] = [
        TextSize::Percent100,
        TextSize::Percent125,
        TextSize::Percent150,
        TextSize::Percent175,
        TextSize::Percent200,
    ];

    /// Per cent of the usual size.
    pub const fn percent(self) -> u16 {
        match self {
            TextSize::Percent100 => 100,
            TextSize::Percent125 => 125,
            TextSize::Percent150 => 150,
            TextSize::Percent175 => 175,
            TextSize::Percent200 => 200,
        }
    }
}

/// How somebody works with the window.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Preferences {
    /// Keys that type a character.
    pub character_keys: CharacterKeys,
    /// Keys that are not the usual ones; none where an action has none.
    pub keys: BTreeMap<KeyAction, Option<KeyPlace>>,
    /// Ticket and tabs have changed sides.
    pub left_handed: bool,
    /// How the view moves.
    pub motion: Motion,
    /// How loud the machine is.
    pub sound: SoundVolume,
    /// How large text is.
    pub text_size: TextSize,
}
