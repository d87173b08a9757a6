//! The workshop for boards: a board of one's own, described value by value, undone, tried with the own hand and kept.

use super::background::Background;
use super::drill::Trial;
use super::workshop::{KeptJob, KeptText, OwnTexts};
use bevy_egui::egui::util::undoer::Undoer;
use detent_content::{BoardDraft, ContentError, ContentLibrary, OwnFile, Texts};
use detent_simulation::controller::{Board, Gesture, Monitor, Selector};
use detent_simulation::interface::Mains;
use detent_training::authoring::GestureShare;
use detent_training::practice::drill::SuppliedBoard;
use detent_training::practice::drill::entry::Marked;
use std::sync::Arc;

/// A page of what a board says.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum BoardPage {
    /// Name, supply, panel and programs.
    #[default]
    Panel,
    /// Lamps and what they show.
    Lamps,
    /// The way into service mode.
    Gesture,
    /// Menu of service mode, its limits, and how a fault hold is left.
    Service,
    /// Codes, how long what is behind them has to last, and the sheet.
    Codes,
    /// The whole text.
    Text,
}

impl BoardPage {
    /// All of them, in their order.
    pub const ALL: [BoardPage; 6] = [
        BoardPage::Panel,
        BoardPage::Lamps,
        BoardPage::Gesture,
        BoardPage::Service,
        BoardPage::Codes,
        BoardPage::Text,
    ];

    /// Its name on the command line.
    const fn name(self) -> &'static str {
        match self {
            BoardPage::Panel => "workshop-board",
            BoardPage::Lamps => "workshop-board-lamps",
            BoardPage::Gesture => "workshop-board-gesture",
            BoardPage::Service => "workshop-board-service",
            BoardPage::Codes => "workshop-board-codes",
            BoardPage::Text => "workshop-board-text",
        }
    }

    /// By its name on the command line.
    pub fn named(name: &str) -> Option<BoardPage> {
        BoardPage::ALL.into_iter().find(|page| page.name() == name)
    }
}

/// A gesture that is being tried with the own hand.
pub struct HandTrial {
    /// The try.
    pub trial: Trial,
    /// How those before ended.
    pub tries: Vec<Marked>,
}

/// Shares of simulated hands, and the gesture and panel that they are of.
struct Shares {
    of: (Gesture, Selector),
    work: Background<Vec<GestureShare>>,
}

/// A board that is being described.
pub struct BoardWorkshop {
    draft: BoardDraft,
    /// The text as it is written now; where it cannot be read, `draft` is what could be read last.
    text: String,
    mistakes: Vec<ContentError>,
    undoer: Undoer<String>,
    /// How it is kept.
    pub kept: KeptText,
    /// The page in front.
    pub page: BoardPage,
    /// The number that the lamps of the console show.
    pub number: u8,
    /// The window's time since which they show it, s; none before the first frame.
    pub shown_since_s: Option<f64>,
    /// The lamp that is chosen, from 0, the first being the highest bit.
    pub lamp: u8,
    /// The step that is chosen.
    pub step: usize,
    /// The code that is chosen, by its monitor.
    pub monitor: Monitor,
    shares: Option<Shares>,
    /// The gesture is being tried.
    pub hand: Option<HandTrial>,
}

impl BoardWorkshop {
    fn begin(draft: BoardDraft, library: &ContentLibrary) -> BoardWorkshop {
        let number = draft.board().codes.first().map_or(0, |code| code.code);
        BoardWorkshop {
            text: draft.text().to_owned(),
            mistakes: draft.mistakes(library),
            undoer: Undoer::default(),
            kept: KeptText::default(),
            page: BoardPage::default(),
            number,
            shown_since_s: None,
            lamp: 0,
            step: 0,
            monitor: Monitor::ALL[0],
            shares: None,
            hand: None,
            draft,
        }
    }

    /// Takes a copy of a board up; none where there is no such board.
    ///
    /// # Errors
    /// What it says cannot be read.
    pub fn copy_of(
        library: &ContentLibrary,
        original: &str,
        texts: &Texts,
    ) -> Option<Result<BoardWorkshop, ContentError>> {
        let name = texts.get("workshop-board-new-name");
        let copy = BoardDraft::copy_of(library, original, "own-board", &name)?;
        Some(copy.map(|draft| BoardWorkshop::begin(draft, library)))
    }

    /// A copy of the first board with this page in front, for a picture.
    pub fn shown(
        page: BoardPage,
        texts: &Texts,
        library: &ContentLibrary,
    ) -> Option<Box<BoardWorkshop>> {
        let first = library.boards.first()?;
        let copy = BoardWorkshop::copy_of(library, &first.id, texts)?.ok()?;
        Some(Box::new(BoardWorkshop { page, ..copy }))
    }

    /// Goes on with a board that is kept under this name.
    ///
    /// # Errors
    /// What it says cannot be read.
    pub fn go_on(
        stem: &str,
        text: &str,
        library: &ContentLibrary,
    ) -> Result<BoardWorkshop, ContentError> {
        let draft = BoardDraft::of_text(&format!("{stem}.ron"), text)?;
        let kept = KeptText::under(stem, text);
        Ok(BoardWorkshop {
            kept,
            ..BoardWorkshop::begin(draft, library)
        })
    }

    /// The board, or what could be read of it last.
    pub fn board(&self) -> &Board {
        self.draft.board()
    }

    /// Its file's name.
    pub fn file(&self) -> String {
        self.draft.file()
    }

    /// The whole text as it is written now.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Whether the text can be read: else the board is what could be read last.
    pub fn is_readable(&self) -> bool {
        self.text == self.draft.text()
    }

    /// Everything that is wrong with it.
    pub fn mistakes(&self) -> &[ContentError] {
        &self.mistakes
    }

    /// Whether it is kept as it is.
    pub fn is_kept(&self) -> bool {
        self.kept.is(&self.board().id, &self.text)
    }

    /// Makes it this board. A text that cannot be read gives way to the one that could be read last.
    pub fn change(&mut self, library: &ContentLibrary, board: &Board) {
        let put = self.draft.put(board);
        debug_assert!(put.is_ok(), "{put:?}");
        self.text = self.draft.text().to_owned();
        self.mistakes = self.draft.mistakes(library);
        self.kept.last = None;
        self.hand = None;
    }

    /// Takes a text in as it is written.
    pub fn write(&mut self, library: &ContentLibrary, text: String) {
        match BoardDraft::of_text(&self.draft.file(), &text) {
            Ok(draft) => {
                self.mistakes = draft.mistakes(library);
                self.draft = draft;
            }
            Err(error) => self.mistakes = vec![error],
        }
        self.text = text;
        self.kept.last = None;
        self.hand = None;
    }

    /// Another library is open, or files of this one were changed: holds the board against what is there now. A board that is
    /// kept as it is follows its file; the undo takes that back.
    pub fn follow(&mut self, library: &ContentLibrary, own_boards: Option<&dyn OwnTexts>) {
        let Some((stem, text)) = self.kept.changed(own_boards) else {
            self.mistakes = self.draft.mistakes(library);
            return;
        };
        let follows = self.is_kept();
        self.kept = KeptText::under(&stem, &text);
        if follows {
            self.write(library, text);
        } else {
            self.mistakes = self.draft.mistakes(library);
            self.kept.last = Some(KeptJob::ChangedElsewhere);
        }
    }

    /// Looks whether there is something to take back; `now_s` counts the window's time, s.
    pub fn watch(&mut self, now_s: f64) {
        self.undoer.feed_state(now_s, &self.text);
    }

    /// Whether a change can be taken back.
    pub fn can_undo(&self) -> bool {
        self.undoer.has_undo(&self.text)
    }

    /// Whether a change that was taken back can be done again.
    pub fn can_redo(&self) -> bool {
        self.undoer.has_redo(&self.text)
    }

    /// Takes the last change back.
    pub fn undo(&mut self, library: &ContentLibrary) {
        if let Some(text) = self.undoer.undo(&self.text).cloned() {
            self.write(library, text);
        }
    }

    /// Does it again.
    pub fn redo(&mut self, library: &ContentLibrary) {
        if let Some(text) = self.undoer.redo(&self.text).cloned() {
            self.write(library, text);
        }
    }

    /// Keeps it, sound or not where the place takes both. The board that jobs can now be written for, if it can be.
    pub fn keep(&mut self, own_boards: &dyn OwnTexts) -> Option<OwnFile> {
        let is_sound = self.mistakes.is_empty();
        let id = self.board().id.clone();
        let file = (self.kept).keep(&id, &self.text, is_sound, own_boards)?;
        is_sound.then(|| self.draft.own_file(file))
    }

    /// The supply at which it is tried.
    fn first_mains(&self) -> Option<Mains> {
        self.board().mains.first().copied()
    }

    /// How many of the simulated hands get in, once that is known; none while it is not, or while something is wrong.
    pub fn shares(&mut self, library: &Arc<ContentLibrary>) -> Option<&[GestureShare]> {
        if let Some(shares) = &mut self.shares {
            shares.work.go_on();
        }
        let is_running = |shares: &Shares| matches!(shares.work, Background::Running(_));
        if self.mistakes.is_empty()
            && !self.shares.as_ref().is_some_and(is_running)
            && let Some(mains) = self.first_mains()
        {
            let board = self.board();
            let of = (board.gesture.clone(), board.panel.selector);
            if self.shares.as_ref().is_none_or(|shares| shares.of != of) {
                let (board, library) = (board.clone(), Arc::clone(library));
                let work = Background::begin(Box::pin(async move {
                    let supplied = SuppliedBoard {
                        library: library.library_of(&board, mains),
                        mains,
                    };
                    GestureShare::each(&supplied, 0.0).await
                }));
                self.shares = Some(Shares { of, work });
            }
        }
        let shares = self.shares.as_ref()?;
        let board = self.draft.board();
        let is_of_it = (&shares.of.0, shares.of.1) == (&board.gesture, board.panel.selector);
        match &shares.work {
            Background::Done(done) if is_of_it && self.mistakes.is_empty() => Some(done),
            Background::Done(_) | Background::Running(_) => None,
        }
    }

    /// Finds them anew from the next frame on.
    #[cfg(test)]
    pub fn forget_shares(&mut self) {
        self.shares = None;
    }

    /// Waits for them.
    #[cfg(test)]
    pub fn wait_for_shares(&mut self) {
        if let Some(shares) = &mut self.shares {
            shares.work.wait();
        }
    }

    /// Begins a try at the gesture, or another one.
    pub fn try_by_hand(&mut self, library: &ContentLibrary) {
        let Some(mains) = self.first_mains().filter(|_| self.mistakes.is_empty()) else {
            return;
        };
        let supplied = SuppliedBoard {
            library: library.library_of(self.draft.board(), mains),
            mains,
        };
        self.hand = Some(match self.hand.take() {
            None => HandTrial {
                trial: Trial::of_board(&supplied),
                tries: Vec::new(),
            },
            Some(HandTrial { trial, tries }) => HandTrial {
                trial: trial.of_board_again(&supplied, tries.len() as u64),
                tries,
            },
        });
    }
}

impl HandTrial {
    /// Judges the try once it is over.
    pub fn judge(&mut self) {
        if self.trial.marked.is_some() {
            return;
        }
        if let Some(marked) = self.trial.judged() {
            self.tries.push(marked.clone());
            self.trial.marked = Some(marked);
            self.trial.redraw(&self.tries);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workshop::{KeptJob, OwnTextFolder};
    use detent_content::Language;
    use detent_simulation::controller::GestureStep;
    use detent_simulation::interface::Button;

    fn copy(library: &ContentLibrary, id: &str) -> BoardWorkshop {
        let texts = Texts::load(Language::En);
        let copy = BoardWorkshop::copy_of(library, id, &texts);
        copy.expect("there").expect("sound")
    }

    fn library() -> Arc<ContentLibrary> {
        Arc::new(ContentLibrary::builtin().expect("the built-in content is sound"))
    }

    #[test]
    fn a_text_that_cannot_be_read_leaves_the_board_as_it_was() {
        let library = library();
        let mut open = copy(&library, "lone-lamp");
        let before = open.board().clone();
        assert!(open.mistakes().is_empty() && open.is_readable());
        let spoiled = open.text().replace("tap_ms: 800", "tap_ms: soon");
        open.write(&library, spoiled.clone());
        assert!(!open.is_readable());
        assert_eq!(open.board(), &before);
        assert_eq!(open.mistakes()[0].field, "tap_ms");
        assert_eq!(open.mistakes()[0].line, 9);
        open.write(&library, spoiled.replace("tap_ms: soon", "tap_ms: 700"));
        assert!(open.mistakes().is_empty() && open.is_readable());
        assert_eq!(open.board().tap_ms, 700);
    }

    #[test]
    fn what_was_changed_is_taken_back_and_done_again() {
        let library = library();
        let mut open = copy(&library, "arc-dial");
        let before = open.text().to_owned();
        open.watch(0.0);
        let mut board = open.board().clone();
        board.gesture.within_ms = 1;
        open.change(&library, &board);
        assert_eq!(open.mistakes()[0].field, "gesture.within_ms");
        open.watch(1.0);
        open.undo(&library);
        assert_eq!(open.text(), before);
        assert!(open.mistakes().is_empty());
        open.redo(&library);
        assert_eq!(open.board().gesture.within_ms, 1);
    }

    #[test]
    fn a_board_is_kept_under_its_id_and_over_no_other() {
        let folder = tempfile::tempdir().expect("a folder");
        let place = OwnTextFolder::boards_of_library(folder.path());
        let library = library();
        let mut open = copy(&library, "key-pad");
        let kept = open.keep(&place).expect("sound");
        assert!(open.is_kept());
        assert_eq!(std::fs::read(&kept.file).expect("kept"), kept.bytes);
        // A library with it can be opened, and one with a mistake in it is not begun.
        let opened = ContentLibrary::open(Some(folder.path())).expect("sound");
        assert_eq!(opened.board("own-board"), Some(open.board()));
        let mut board = open.board().clone();
        board.codes[0].code = 0;
        open.change(&library, &board);
        assert_eq!(open.keep(&place), None);
        assert_eq!(open.kept.last, Some(KeptJob::Unfinished));
        // Another one cannot take its name, nor that of a built-in board.
        let mut other = copy(&library, "arc-dial");
        assert_eq!(other.keep(&place), None);
        assert_eq!(other.kept.last, Some(KeptJob::Taken));
        let mut board = other.board().clone();
        board.id = "lone-lamp".to_owned();
        other.change(&library, &board);
        assert_eq!(other.mistakes()[0].field, "id");
    }

    /// Each step neither too soon nor too late: the steadier the hand, the more often it gets in.
    #[test]
    fn practiced_hands_get_in_more_often() {
        let press = |button, window_ms| GestureStep::Press {
            button,
            times: 1,
            max_ms: 400,
            window_ms,
        };
        let library = library();
        let mut open = copy(&library, "key-pad");
        let mut board = open.board().clone();
        board.gesture = Gesture {
            rest_ms: 800,
            within_ms: 12_000,
            from: None,
            steps: vec![
                press(Button::Start, None),
                press(Button::Stop, Some(500)),
                press(Button::Start, Some(500)),
                press(Button::Stop, Some(500)),
                press(Button::Start, Some(500)),
            ],
            or_steps: Vec::new(),
            gap_ms: 220,
        };
        open.change(&library, &board);
        assert_eq!(open.mistakes(), []);
        assert!(open.shares(&library).is_none(), "it takes a while");
        open.wait_for_shares();
        let shares = open.shares(&library).expect("done").to_vec();
        assert_eq!(shares.len(), 3);
        let falls = shares.windows(2).all(|two| two[0].share >= two[1].share);
        assert!(falls && shares[0].share > shares[2].share, "{shares:?}");
        // They are of the gesture as it is now.
        board.gesture.gap_ms = 0;
        open.change(&library, &board);
        assert!(open.shares(&library).is_none());
        open.wait_for_shares();
        let wide = open.shares(&library).expect("done");
        assert!(wide[2].share > shares[2].share, "{wide:?}");
    }

    #[test]
    fn a_hand_tries_the_gesture_as_it_is_described() {
        let library = library();
        let mut open = copy(&library, "key-pad");
        let mut board = open.board().clone();
        board.gesture.rest_ms += 10;
        open.change(&library, &board);
        open.try_by_hand(&library);
        let hand = open.hand.as_mut().expect("begun");
        assert_eq!(hand.trial.task.gesture, board.gesture);
        hand.judge();
        assert!(hand.tries.is_empty(), "nothing was done");
        hand.trial.play(true);
        hand.judge();
        assert!(hand.tries[0].right);
        hand.judge();
        assert_eq!(hand.tries.len(), 1);
        open.try_by_hand(&library);
        let hand = open.hand.as_ref().expect("again");
        assert!(hand.trial.marked.is_none() && hand.tries.len() == 1);
    }
}
