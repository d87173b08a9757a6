//! Scripts: one step a line, `//` begins a remark.
//!
//! A line is a [`ScriptStep`] such as `Turn(way: Left, detents: 4, every_ms: 220)`, or a plain
//! [`Action`] such as `Unplug`.

use super::error::{ContentError, Problem};
use super::reader::{Page, error_at};
use detent_simulation::units::Span;
use detent_training::bench::Action;
use detent_training::bench::script::ScriptStep;
use detent_training::record::ron_text::{self, TextPosition};

/// Read a script into steps with their line numbers.
///
/// # Errors
/// The first line that is neither a step nor an action, or that no job has time for.
pub fn read_script(file: &str, bytes: &[u8]) -> Result<Vec<(usize, ScriptStep)>, ContentError> {
    let text = Page::open(file, bytes)?.text();
    let mut steps = Vec::new();
    let mut takes = Span::ZERO;
    for (n, raw) in text.lines().enumerate() {
        let line = raw.split("//").next().unwrap_or("").trim();
        if line.is_empty() {
            continue;
        }
        let options = ron_text::options();
        let step = match ron_text::parse::<ScriptStep>(&options, line) {
            Ok(step) => step,
            Err(as_step) => match ron_text::parse::<Action>(&options, line) {
                Ok(action) => ScriptStep::Do(action),
                Err(as_action) => {
                    // Show the reading that knows the line's name.
                    let name = line.split('(').next().unwrap_or(line).trim();
                    let is_step = ScriptStep::NAMES.contains(&name);
                    let worse = if is_step { as_step } else { as_action };
                    // The reading begins behind the blanks before the step.
                    let blanks = raw.chars().take_while(|c| c.is_whitespace()).count();
                    let position = TextPosition {
                        line: n + 1,
                        column: blanks + worse.position.column,
                    };
                    let problem = worse.range.map_or_else(
                        || Problem::Step(Box::new(worse.error)),
                        Problem::IntegerRange,
                    );
                    let field = name.to_owned();
                    return Err(error_at(file, text, position, field, problem));
                }
            },
        };
        takes = step.add_to(takes).map_err(|error| {
            let column = raw.chars().take_while(|c| c.is_whitespace()).count() + 1;
            let position = TextPosition {
                line: n + 1,
                column,
            };
            let field = line.split('(').next().unwrap_or(line).trim().to_owned();
            let problem = Problem::NoTime(Box::new(error));
            error_at(file, text, position, field, problem)
        })?;
        steps.push((n + 1, step));
    }
    Ok(steps)
}

/// A step as its line in a script.
pub fn script_line(step: &ScriptStep) -> String {
    let line = match step {
        ScriptStep::Do(action) => ron::to_string(action),
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
                    ScriptStep::Turn {
                        way: Direction::Left,
                        detents: 4,
                        every_ms: 220
                    }
                ),
                (4, ScriptStep::Do(Action::Unplug)),
            ]
        );
    }

    #[test]
    fn a_written_step_reads_back() {
        for step in [
            ScriptStep::Turn {
                way: Direction::Left,
                detents: 4,
                every_ms: 180,
            },
            ScriptStep::Do(Action::Unplug),
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
