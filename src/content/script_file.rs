//! Scripts: one step a line, `//` begins a remark.
//!
//! A line is a [`Step`] such as `Turn(way: Left, detents: 4, every_ms: 220)`, or a plain
//! [`Action`] such as `Unplug`.

use super::error::{ContentError, Problem};
use super::reader::Page;
use detent_training::bench::Action;
use detent_training::bench::script::Step;

/// Read a script into steps with their line numbers.
///
/// # Errors
/// The first line that is neither a step nor an action.
pub fn read_script(file: &str, bytes: &[u8]) -> Result<Vec<(usize, Step)>, ContentError> {
    let text = Page::open(file, bytes)?.text();
    let mut steps = Vec::new();
    for (n, raw) in text.lines().enumerate() {
        let line = raw.split("//").next().unwrap_or("").trim();
        if line.is_empty() {
            continue;
        }
        let step = match ron::from_str::<Step>(line) {
            Ok(step) => step,
            Err(as_step) => match ron::from_str::<Action>(line) {
                Ok(action) => Step::Do(action),
                Err(as_action) => {
                    // Show the reading that knows the line's name.
                    let name = line.split('(').next().unwrap_or(line).trim();
                    let is_step = Step::NAMES.contains(&name);
                    let worse = if is_step { as_step } else { as_action };
                    return Err(ContentError {
                        file: file.to_owned(),
                        line: n + 1,
                        column: worse.span.start.col,
                        field: name.to_owned(),
                        problem: Problem::Step(worse.code.to_string()),
                    });
                }
            },
        };
        steps.push((n + 1, step));
    }
    Ok(steps)
}

/// A step as its line in a script.
pub fn script_line(step: &Step) -> String {
    let line = match step {
        Step::Do(action) => ron::to_string(action),
        step => ron::to_string(step),
    };
    line.expect("a step is plain data")
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_simulation::interface::Direction;

    #[test]
    fn steps_actions_and_remarks_are_read() {
        let text = "// enter\nTurn(way: Left, detents: 4, every_ms: 220) // slowly\n\nUnplug\n";
        let steps = read_script("a.script", text.as_bytes()).expect("a good script");
        assert_eq!(
            steps,
            [
                (
                    2,
                    Step::Turn {
                        way: Direction::Left,
                        detents: 4,
                        every_ms: 220
                    }
                ),
                (4, Step::Do(Action::Unplug)),
            ]
        );
    }

    #[test]
    fn a_written_step_reads_back() {
        for step in [
            Step::Turn {
                way: Direction::Left,
                detents: 4,
                every_ms: 180,
            },
            Step::Do(Action::Unplug),
        ] {
            let line = script_line(&step);
            assert_eq!(
                read_script("a.script", line.as_bytes()),
                Ok(vec![(1, step)])
            );
        }
    }

    #[test]
    fn a_wrong_line_is_named() {
        let error = read_script(
            "a.script",
            b"Unplug\nTurn(way: Up, detents: 4, every_ms: 1)\n",
        )
        .unwrap_err();
        assert_eq!((error.line, error.field.as_str()), (2, "Turn"));
        let error = read_script("a.script", b"Kick\n").unwrap_err();
        assert_eq!((error.line, error.field.as_str()), (1, "Kick"));
    }
}
