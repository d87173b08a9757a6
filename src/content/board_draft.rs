//! A board that is being described: its text, changed value by value, with comments and order as they are.

use super::ContentLibrary;
use super::error::{ContentError, Problem};
use super::own_library::{OwnFile, OwnPlace, read_own_board};
use super::reader::{Page, document_of, error_at, text_position};
use detent_simulation::controller::Board;
use detent_syntax::document::Document;
use detent_syntax::error::EditError;
use ron::ser::PrettyConfig;

/// Fields that are left out where they are `None`, as people write it.
const LEFT_OUT: [&str; 2] = ["window_ms", "from"];

/// A board that is being described.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardDraft {
    document: Document,
    /// What the text says.
    board: Board,
}

impl BoardDraft {
    /// One from a text that can be read, whether it is sound or not.
    ///
    /// # Errors
    /// The first value that cannot be read.
    pub fn of_text(file: &str, text: &str) -> Result<BoardDraft, ContentError> {
        let board = Page::open(file, text.as_bytes())?.parse::<Board>()?;
        let document = document_of(file, text)?;
        Ok(BoardDraft { document, board })
    }

    /// A copy of a board under another id and another name; none where there is no such board.
    ///
    /// # Errors
    /// The copy cannot be read.
    pub fn copy_of(
        library: &ContentLibrary,
        original: &str,
        id: &str,
        name: &str,
    ) -> Option<Result<BoardDraft, ContentError>> {
        let (file, text) = library.board_text(original)?;
        Some(BoardDraft::of_text(&file, &text).map(|mut draft| {
            let mut board = draft.board.clone();
            (board.id, board.name) = (id.to_owned(), name.to_owned());
            let put = draft.put(&board);
            debug_assert!(put.is_ok(), "{put:?}");
            draft
        }))
    }

    /// The whole text.
    pub fn text(&self) -> &str {
        self.document.text()
    }

    /// What it says.
    pub fn board(&self) -> &Board {
        &self.board
    }

    /// Its file's name.
    pub fn file(&self) -> String {
        format!("{}.ron", self.board.id)
    }

    /// Every mistake in it: it is held against its own rules and against the boards that are built in.
    pub fn mistakes(&self, library: &ContentLibrary) -> Vec<ContentError> {
        let file = self.file();
        match read_own_board(&file, self.text().as_bytes()) {
            Ok(board) if library.is_built_in(&board.id) => {
                let taken = Problem::NameTaken(board.id);
                let Some(position) = self.document.position("id").map(text_position) else {
                    return vec![ContentError::of_file(&file, taken)];
                };
                vec![error_at(
                    &file,
                    self.text(),
                    position,
                    "id".to_owned(),
                    taken,
                )]
            }
            Ok(_) => Vec::new(),
            Err(mistakes) => mistakes,
        }
    }

    /// As a file of an own library, told under this path.
    pub fn own_file(&self, file: String) -> OwnFile {
        OwnFile {
            place: OwnPlace::Boards,
            file,
            bytes: self.text().as_bytes().to_vec(),
        }
    }

    /// Makes the text say this board, and leaves alone every byte of what it says already.
    ///
    /// # Errors
    /// The text has no place for it; it is as it was.
    pub fn put(&mut self, board: &Board) -> Result<(), EditError> {
        let (before, after) = (canonical(&self.board), canonical(board));
        let mut document = self.document.clone();
        Merge {
            before: &before,
            after: &after,
        }
        .value(&mut document, "")?;
        self.document = document;
        self.board = board.clone();
        Ok(())
    }
}

/// A board as it is written by itself, on one line.
///
/// # Panics
/// Never: a board has nothing in it that RON could not write.
fn canonical(board: &Board) -> Document {
    let one_line = PrettyConfig::new().depth_limit(0);
    let text = ron::ser::to_string_pretty(board, one_line).expect("a board is RON");
    Document::parse(&text).expect("what is written as RON is RON")
}

/// The way from one board to another: where they are alike nothing is touched.
struct Merge<'a> {
    before: &'a Document,
    after: &'a Document,
}

impl Merge<'_> {
    /// Takes what differs in the value at a path over into a document that says what `before` says.
    fn value(&self, document: &mut Document, path: &str) -> Result<(), EditError> {
        let (Some(before), Some(after)) = (self.before.value(path), self.after.value(path)) else {
            return Err(EditError::NoSuchPath(path.to_owned()));
        };
        if before == after {
            return Ok(());
        }
        if head(before) == head(after) {
            let of = |document: &Document| document.fields(path);
            if let (Some(before), Some(after)) = (of(self.before), of(self.after)) {
                return self.fields(document, path, &before, &after);
            }
            let of = |document: &Document| document.item_count(path);
            if let (Some(before), Some(after)) = (of(self.before), of(self.after)) {
                return self.items(document, path, before, after);
            }
            let of = |document: &Document| document.keys(path);
            if let (Some(before), Some(after)) = (of(self.before), of(self.after)) {
                return self.entries(document, path, &before, &after);
            }
        }
        document.set(path, &tidy(after))
    }

    fn fields(
        &self,
        document: &mut Document,
        path: &str,
        before: &[String],
        after: &[String],
    ) -> Result<(), EditError> {
        for name in before {
            let place = step(path, name);
            if !after.contains(name) && document.value(&place).is_some() {
                document.remove(&place)?;
            }
        }
        for (n, name) in after.iter().enumerate() {
            let place = step(path, name);
            let value = self.after.value(&place).unwrap_or_default();
            if self.before.value(&place) == Some(value) {
                continue;
            }
            match document.value(&place) {
                Some(_) if is_left_out(name, value) => document.remove(&place)?,
                Some(_) if before.contains(name) => self.value(document, &place)?,
                Some(_) => document.set(&place, &tidy(value))?,
                None => {
                    let earlier: Vec<&str> = after[..n].iter().map(String::as_str).collect();
                    document.insert_field(path, name, &tidy(value), &earlier)?;
                }
            }
        }
        Ok(())
    }

    fn items(
        &self,
        document: &mut Document,
        path: &str,
        before: usize,
        after: usize,
    ) -> Result<(), EditError> {
        let place = |n: usize| format!("{path}[{n}]");
        let alike = |old: usize, new: usize| {
            self.before.value(&place(old)) == self.after.value(&place(new))
        };
        let most = before.min(after);
        let first = (0..most).take_while(|n| alike(*n, *n)).count();
        let last = (0..most - first)
            .take_while(|n| alike(before - 1 - n, after - 1 - n))
            .count();
        let (old, new) = (before - first - last, after - first - last);
        for n in first..first + old.min(new) {
            self.value(document, &place(n))?;
        }
        for n in (first + new..first + old).rev() {
            document.remove(&place(n))?;
        }
        for n in first + old..first + new {
            let value = self.after.value(&place(n)).unwrap_or_default();
            document.insert_item(path, n, &tidy(value))?;
        }
        Ok(())
    }

    fn entries(
        &self,
        document: &mut Document,
        path: &str,
        before: &[String],
        after: &[String],
    ) -> Result<(), EditError> {
        let place = |key: &String| format!("{path}[{key}]");
        for key in before.iter().filter(|key| !after.contains(key)) {
            document.remove(&place(key))?;
        }
        for key in after {
            if before.contains(key) {
                self.value(document, &place(key))?;
            } else {
                let value = self.after.value(&place(key)).unwrap_or_default();
                document.insert_entry(path, key, &tidy(value))?;
            }
        }
        Ok(())
    }
}

/// What stands before the first bracket of a value: the name of its case.
fn head(value: &str) -> &str {
    let end = value.find(['(', '[', '{']).unwrap_or(value.len());
    value[..end].trim()
}

fn step(path: &str, name: &str) -> String {
    match path {
        "" => name.to_owned(),
        _ => format!("{path}.{name}"),
    }
}

fn is_left_out(name: &str, value: &str) -> bool {
    value == "None" && LEFT_OUT.contains(&name)
}

/// A value without the fields that people leave out.
fn tidy(value: &str) -> String {
    let Ok(mut document) = Document::parse(value) else {
        return value.to_owned();
    };
    let mut values = document.values();
    // From the last to the first: what is taken out moves nothing before it.
    values.reverse();
    for found in values {
        let name = found.path.rsplit('.').next().unwrap_or_default();
        let says = document.value(&found.path).unwrap_or_default();
        if is_left_out(name, says) {
            let removed = document.remove(&found.path);
            debug_assert!(removed.is_ok(), "{removed:?}");
        }
    }
    document.text().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::builtin;
    use detent_simulation::controller::{
        ButtonHold, GestureStep, LampPlacement, LidMove, LidMoves, MenuEntry, Monitor, Routine,
        Selector, SignReading, Signs, SupplyRules,
    };
    use detent_simulation::interface::{Button, Component, Direction, Mains};

    const DESCRIBED: [(&str, &str); 3] = [
        ("kite.ron", include_str!("../../tests/boards/kite.ron")),
        (
            "six-field.ron",
            include_str!("../../tests/boards/six-field.ron"),
        ),
        ("tower.ron", include_str!("../../tests/boards/tower.ron")),
    ];

    fn boards() -> Vec<(String, &'static str)> {
        let described = DESCRIBED.map(|(file, text)| (file.to_owned(), text));
        let built_in = builtin::in_folder("assets/boards");
        let boards: Vec<_> = built_in.chain(described).collect();
        assert_eq!(boards.len(), 6);
        boards
    }

    /// Lines of a text that another has not, in its place.
    fn changed(before: &str, after: &str) -> (usize, usize) {
        let (before, after): (Vec<&str>, Vec<&str>) =
            (before.split('\n').collect(), after.split('\n').collect());
        let most = before.len().min(after.len());
        let first = (0..most).take_while(|n| before[*n] == after[*n]).count();
        let last = (0..most - first)
            .take_while(|n| before[before.len() - 1 - n] == after[after.len() - 1 - n])
            .count();
        (before.len() - first - last, after.len() - first - last)
    }

    fn comments(text: &str) -> Vec<&str> {
        let comment = |line: &&str| line.trim_start().starts_with("//");
        text.lines().filter(comment).collect()
    }

    type Change = (&'static str, fn(&mut Board));

    /// One value each, that stands on a line which is there.
    const ONE_LINE: [Change; 16] = [
        ("id", |b| b.id = "own-board".to_owned()),
        ("name", |b| b.name = "A \"board\" with an ñ".to_owned()),
        ("selector", |b| {
            b.panel.selector = Selector::Dial { detents: 15 }
        }),
        ("buttons", |b| {
            b.panel.buttons.push(Button::Less);
        }),
        ("tap", |b| b.tap_ms += 50),
        ("lock lamp", |b| b.lamps.lock_lamp = !b.lamps.lock_lamp),
        ("reading", |b| b.lamps.hold = SignReading::Turns(3, 4)),
        ("rest", |b| b.gesture.rest_ms += 10),
        ("within", |b| b.gesture.within_ms += 10),
        ("code", |b| b.codes[2].code = 98),
        ("monitor", |b| b.monitors[1].delay_ms += 1),
        ("position", |b| b.menu[1].position = 77),
        ("suspects", |b| b.sheet[0].suspects.push(Component::Belt)),
        ("program", |b| b.programs[1].position = 78),
        ("stored codes", |b| b.service.stored_codes = 3),
        ("level", |b| {
            let first = b.supply.values_mut().next().expect("one");
            first.sag_v += 1.0;
        }),
    ];

    /// What adds, removes or moves lines.
    const MORE_LINES: [Change; 15] = [
        ("step added", |b| {
            let step = GestureStep::Turn {
                to: Direction::Left,
                detents: 3,
                window_ms: None,
            };
            b.gesture.steps.push(step);
        }),
        ("step put first", |b| {
            let step = GestureStep::Lid {
                to: LidMove::Up,
                window_ms: Some(900),
            };
            b.gesture.steps.insert(0, step);
        }),
        ("step removed", |b| {
            b.gesture.steps.remove(1);
        }),
        ("steps swapped", |b| b.gesture.steps.swap(0, 1)),
        ("steps gone", |b| b.gesture.steps.clear()),
        ("from", |b| {
            b.gesture.from = match b.gesture.from {
                Some(_) => None,
                None => Some(2),
            };
        }),
        ("gap", |b| {
            b.gesture.gap_ms = if b.gesture.gap_ms == 0 { 90 } else { 0 };
        }),
        ("menu", |b| {
            b.menu.retain(|entry| entry.routine != Routine::LampTest);
            b.menu.push(MenuEntry {
                position: 40,
                routine: Routine::Ages,
            });
        }),
        ("code gone", |b| {
            b.codes.retain(|code| code.monitor != Monitor::FillSlow);
        }),
        ("placement", |b| {
            b.lamps.placement = match b.lamps.placement {
                LampPlacement::Usual => LampPlacement::Free(vec![(0, 50), (100, 7)]),
                _ => LampPlacement::Usual,
            };
        }),
        ("signs", |b| {
            b.lamps.signs = match b.lamps.signs {
                Signs::Segments => Signs::Weights {
                    tens: vec![5, 3, 1],
                    units: vec![8, 4, 2, 1],
                },
                _ => Signs::Segments,
            };
        }),
        ("resets", |b| {
            b.resets.hold = match b.resets.hold {
                Some(_) => None,
                None => Some(ButtonHold {
                    button: Button::Stop,
                    ms: 4_000,
                }),
            };
            b.resets.lid_moves = Some(LidMoves {
                moves: 4,
                within_ms: 8_000,
            });
            b.resets.kept = !b.resets.kept;
        }),
        ("one supply", |b| {
            b.mains = vec![Mains::V230Hz50];
            b.supply.remove(&Mains::V120Hz60);
            b.supply.entry(Mains::V230Hz50).or_insert(SupplyRules {
                reset_v: 50.0,
                sag_v: 220.0,
            });
        }),
        ("program copied", |b| {
            let mut copy = b.programs[0].clone();
            copy.position = 30;
            b.programs.push(copy);
        }),
        ("program gone", |b| drop(b.programs.remove(0))),
    ];

    #[test]
    fn each_change_changes_just_its_value_on_every_board() {
        for (file, text) in boards() {
            for (name, change) in ONE_LINE.into_iter().chain(MORE_LINES) {
                let mut draft = BoardDraft::of_text(&file, text).expect("sound");
                assert_eq!(draft.text(), text);
                let mut board = draft.board().clone();
                change(&mut board);
                draft.put(&board).expect("every board has the place");
                let again = BoardDraft::of_text(&file, draft.text());
                let again = again.unwrap_or_else(|error| panic!("{file}, {name}: {error}"));
                assert_eq!(again.board(), &board, "{file}, {name}");
                assert_eq!(again.board(), draft.board());
            }
        }
    }

    #[test]
    fn one_value_is_changed_on_one_line() {
        for (file, text) in boards() {
            for (name, change) in ONE_LINE {
                let mut draft = BoardDraft::of_text(&file, text).expect("sound");
                let mut board = draft.board().clone();
                change(&mut board);
                draft.put(&board).expect("every board has the place");
                let lines = changed(text, draft.text());
                assert!(lines.0 <= 1 && lines.1 <= 1, "{file}, {name}: {lines:?}");
                assert_eq!(comments(draft.text()), comments(text), "{file}, {name}");
            }
        }
    }

    #[test]
    fn what_was_changed_back_is_the_same_to_the_byte() {
        for (file, text) in boards() {
            for (name, change) in ONE_LINE {
                let mut draft = BoardDraft::of_text(&file, text).expect("sound");
                let before = draft.board().clone();
                let mut board = before.clone();
                change(&mut board);
                draft.put(&board).expect("there");
                draft.put(&before).expect("there");
                // A picture in binary digits comes back in decimal ones, and a field that was left out is written now.
                if !["reading", "stored codes"].contains(&name) {
                    assert_eq!(draft.text(), text, "{file}, {name}");
                }
                assert_eq!(draft.board(), &before);
            }
        }
    }

    /// New steps are written as people write them.
    #[test]
    fn a_new_step_stands_on_its_own_line_without_what_it_does_not_say() {
        let (file, text) = &boards()[2];
        let mut draft = BoardDraft::of_text(file, text).expect("sound");
        let mut board = draft.board().clone();
        board.gesture.steps.push(GestureStep::Turn {
            to: Direction::Left,
            detents: 3,
            window_ms: None,
        });
        draft.put(&board).expect("there");
        assert_eq!(changed(text, draft.text()), (0, 1));
        let line = "            Turn(to: Left, detents: 3),\n        ],\n";
        assert!(draft.text().contains(line), "{}", draft.text());
        // A window that goes is not written as none.
        if let Some(GestureStep::Turn { window_ms, .. }) = board.gesture.steps.last_mut() {
            *window_ms = Some(700);
        }
        draft.put(&board).expect("there");
        assert!(
            draft
                .text()
                .contains("Turn(to: Left, detents: 3, window_ms: Some(700)),")
        );
        if let Some(GestureStep::Turn { window_ms, .. }) = board.gesture.steps.last_mut() {
            *window_ms = None;
        }
        draft.put(&board).expect("there");
        assert!(draft.text().contains(line));
    }

    #[test]
    fn a_copy_is_as_sound_as_its_original_under_its_own_name() {
        let library = ContentLibrary::builtin().expect("sound");
        for original in library.boards.clone() {
            let copy = BoardDraft::copy_of(&library, &original.id, "own", "An own board");
            let copy = copy.expect("there").expect("sound");
            assert_eq!(copy.mistakes(&library), []);
            let expected = Board {
                id: "own".to_owned(),
                name: "An own board".to_owned(),
                ..original.clone()
            };
            assert_eq!(copy.board(), &expected);
            // Under the name of a built-in one it is none of one's own.
            let again = BoardDraft::copy_of(&library, &original.id, &original.id, "An own board");
            let mistakes = again.expect("there").expect("sound").mistakes(&library);
            assert_eq!(mistakes.len(), 1);
            assert_eq!(mistakes[0].field, "id");
        }
    }
}
