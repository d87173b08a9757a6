//! The lamp chart. What is lit is filled and has rays, what is dark is an empty outline: no color is needed.

use super::canvas::{Anchor, Area, BLACK, Canvas, QUIET};
use super::document::Sheet;
use super::draft::{BODY, Cell, Draft, Drawing, NOTE, SMALL, STRONG, TableShape};
use detent_content::{Texts, Value, lamp_modes, mode_pictures};
use detent_simulation::controller::{LampRules, Sign, Signs};
use detent_simulation::units::Span;
use detent_training::practice::drill::lamps::EXAMPLES;

/// The number of the example for flashes, which are counted, and where every number can be shown.
const FLASHED: u8 = EXAMPLES[0];
const EXAMPLE: u8 = EXAMPLES[1];

/// Which lamps are lit.
#[derive(Clone, Copy)]
pub(super) enum Lit {
    These(u16),
    /// None yet: somebody shades them.
    Blank,
}

impl Lit {
    fn has(self, bit: u8) -> bool {
        matches!(self, Lit::These(lit) if lit & (1 << bit) != 0)
    }
}

pub(super) fn lamps(draft: &mut Draft, sheet: &Sheet<'_>) {
    let (texts, board) = (sheet.texts, sheet.library.board);
    let rules = &board.lamps;
    let signs = &rules.signs;
    draft.heading(2, &texts.get("sheet-lamps"), 160.0);
    draft.paragraph(&texts.get("paper-lamps-how"), BODY);
    draft.paragraph(&texts.get(&format!("signs-{}", signs.key())), BODY);
    example(draft, texts, rules);
    let button = Value::from(texts.button(board.service.page));
    draft.paragraph(
        &texts.with("sheet-lamps-pages", &[("button", button)]),
        BODY,
    );
    draft.paragraph(
        &texts.get(match rules.lock_lamp {
            true => "sheet-lamps-lock",
            false => "sheet-lamps-no-lock",
        }),
        BODY,
    );
    let about = texts.get("sheet-sights");
    draft.heading(3, &about, 60.0);
    let heads = ["paper-mode", "paper-meaning", "paper-lamps"].map(|key| texts.get(key));
    let shape = TableShape {
        about: &about,
        columns: &[0.2, 0.42, 0.38],
        heads: &heads,
        row: 18.0,
        row_heads: true,
    };
    let rows: Vec<Vec<Cell<'_>>> = (lamp_modes(rules).into_iter())
        .map(|(mode, shows)| {
            let name = Cell::Strong(texts.get(&format!("lamps-{mode}")));
            let words = Cell::Text(texts.lamp_mode(signs, (mode, shows)));
            let pictures = mode_pictures(signs, shows);
            if pictures.is_empty() {
                return vec![name, words, Cell::Text("—".to_owned())];
            }
            let told = pictures.iter().map(|lit| texts.code_lamps(signs, *lit));
            let told = told.collect::<Vec<_>>().join(" — ");
            let high = match signs {
                Signs::Segments => 30.0,
                Signs::Weights { .. }
                | Signs::Pictures { .. }
                | Signs::Flashes { .. }
                | Signs::InTurn { .. } => 21.0,
            };
            let all = high * pictures.len() as f32;
            let drawing: Drawing<'_> = Box::new(move |canvas, area| {
                for (n, lit) in pictures.iter().enumerate() {
                    let place = Area {
                        top: area.top + high * n as f32,
                        height: high,
                        ..area
                    };
                    picture(canvas, place, signs, Lit::These(*lit));
                }
            });
            vec![name, words, Cell::Picture(told, all, drawing)]
        })
        .collect();
    draft.table(&shape, &rows);
    draft.heading(3, &texts.get("sheet-reset"), 30.0);
    let ways: Vec<(Option<String>, String)> = (texts.hold_resets(&board.resets).into_iter())
        .map(|(_, way)| (Some("–".to_owned()), way))
        .collect();
    draft.list(&ways, 1, BODY);
}

/// How a number looks: the key to all of them.
fn example(draft: &mut Draft, texts: &Texts, rules: &LampRules) {
    let signs = &rules.signs;
    let reads = |number: u8| texts.with("sheet-lamps-example", &[("number", Value::from(number))]);
    match signs {
        Signs::Weights { tens, units } => {
            let lit = signs.lit(EXAMPLE, Span::ZERO);
            let alt = format!("{} {}", texts.code_lamps(signs, lit), reads(EXAMPLE));
            draft.figure(&alt, 70.0, |canvas, area| {
                sums(canvas, area, texts, (tens, units), lit);
            });
            draft.paragraph(&reads(EXAMPLE), STRONG);
        }
        Signs::Segments => {
            let lit = signs.lit(EXAMPLE, Span::ZERO);
            let alt = format!("{} {}", texts.code_lamps(signs, lit), reads(EXAMPLE));
            draft.figure(&alt, 64.0, |canvas, area| {
                let place = Area {
                    width: 120.0,
                    ..area
                };
                picture(canvas, place, signs, Lit::These(lit));
                digits(canvas, area, signs);
            });
            draft.paragraph(&reads(EXAMPLE), STRONG);
        }
        Signs::Flashes { .. } => {
            let long = (0..FLASHED / 10).map(|_| true);
            let short = (0..FLASHED % 10).map(|_| false);
            let flashes: Vec<bool> = long.chain(short).collect();
            let alt = format!("{} {}", texts.lamp_flashes(&flashes), reads(FLASHED));
            draft.figure(&alt, 66.0, |canvas, area| strip(canvas, area, texts, signs));
            draft.paragraph(&reads(FLASHED), STRONG);
        }
        Signs::Pictures {
            table,
            lamps,
            blinks,
            ..
        } => {
            let rows = (table.iter()).map(|(number, lit)| {
                let blinks = blinks.iter().find(|(blinks, _)| blinks == number);
                let sign = Sign {
                    lit: *lit,
                    blinks: blinks.map_or(0, |(_, blinks)| *blinks),
                };
                (format!("{number:02}"), sign)
            });
            patterns(draft, texts, rules, *lamps, ("paper-code", rows.collect()));
        }
        Signs::InTurn { lamps, digits, .. } => {
            let rows = digits.iter().enumerate();
            let rows = rows.map(|(digit, sign)| (digit.to_string(), *sign));
            patterns(draft, texts, rules, *lamps, ("paper-digit", rows.collect()));
        }
    }
}

/// What the lamps show for each number or digit.
fn patterns(
    draft: &mut Draft,
    texts: &Texts,
    rules: &LampRules,
    lamps: u8,
    (of, rows): (&str, Vec<(String, Sign)>),
) {
    if rows.iter().any(|(_, sign)| sign.blinks != 0) {
        draft.paragraph(&texts.get("paper-lamps-blink"), BODY);
    }
    let about = texts.get("paper-patterns");
    let heads = [of, "paper-lamps"].map(|key| texts.get(key));
    let shape = TableShape {
        about: &about,
        columns: &[0.2, 0.8],
        heads: &heads,
        row: 18.0,
        row_heads: true,
    };
    let rows: Vec<Vec<Cell<'_>>> = (rows.into_iter())
        .map(|(number, sign)| {
            let told = texts.lamp_signs(&rules.signs, &rules.placement, &[sign]);
            let drawing: Drawing<'_> = Box::new(move |canvas, area| {
                row(canvas, area, lamps, Lit::These(sign.lit), sign.blinks);
            });
            vec![Cell::Strong(number), Cell::Picture(told, 20.0, drawing)]
        })
        .collect();
    draft.table(&shape, &rows);
}

/// Lamps side by side, the highest bit first. One that blinks has a dot in its middle and rays.
fn row(canvas: &mut Canvas<'_>, area: Area, lamps: u8, lit: Lit, blinks: u16) {
    let (_, y) = area.middle();
    let pitch = (area.width / f32::from(lamps).max(1.0)).min(20.0);
    let r = (pitch * 0.5 - 4.0).clamp(2.2, 6.0);
    for n in 0..lamps {
        let x = area.left + pitch * (f32::from(n) + 0.5);
        let bit = lamps - 1 - n;
        if blinks & (1 << bit) != 0 {
            canvas.circle((x, y), r, None, Some((BLACK, 0.9)));
            lamp(canvas, (x, y), r * 0.4, true);
        } else {
            lamp(canvas, (x, y), r, lit.has(bit));
        }
    }
}

/// One lamp. A lit one is filled and has rays.
fn lamp(canvas: &mut Canvas<'_>, (x, y): (f32, f32), r: f32, lit: bool) {
    canvas.circle((x, y), r, lit.then_some(BLACK), Some((BLACK, 0.9)));
    if lit {
        let (near, far) = (r + 1.3, r + 3.3);
        for (dx, dy) in [(1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)] {
            canvas.line(
                &[(x + dx * near, y + dy * near), (x + dx * far, y + dy * far)],
                0.9,
            );
        }
        let d = std::f32::consts::FRAC_1_SQRT_2;
        for (dx, dy) in [(d, d), (d, -d), (-d, d), (-d, -d)] {
            canvas.line(
                &[(x + dx * near, y + dy * near), (x + dx * far, y + dy * far)],
                0.9,
            );
        }
    }
}

/// Where weighted lamps stand side by side, with a gap between tens and units.
fn weighted(area: Area, tens: usize, units: usize) -> Vec<f32> {
    let count = tens + units;
    let pitch = (area.width / (count as f32 + 0.8)).min(44.0);
    (0..count)
        .map(|place| {
            let gap = if place >= tens { 0.8 } else { 0.0 };
            area.left + (place as f32 + 0.5 + gap) * pitch
        })
        .collect()
}

/// The lamps of the board.
pub(super) fn picture(canvas: &mut Canvas<'_>, area: Area, signs: &Signs, lit: Lit) {
    let (_, y) = area.middle();
    match signs {
        Signs::Segments => {
            let height = area.height * 0.86;
            for (first, place) in [(7, 0.0), (0, 1.0)] {
                let digit = Area {
                    left: area.left + 4.0 + place * height * 0.78,
                    top: y - height / 2.0,
                    width: height * 0.5,
                    height,
                };
                segments(canvas, digit, lit, first);
            }
        }
        Signs::Weights { tens, units } => {
            let count = tens.len() + units.len();
            let narrow = Area {
                width: area.width.min(20.0 * (count as f32 + 0.8)),
                ..area
            };
            let places = weighted(narrow, tens.len(), units.len());
            let pitch = narrow.width / (count as f32 + 0.8);
            let r = (pitch * 0.5 - 4.0).clamp(2.2, 6.0);
            for (place, x) in places.into_iter().enumerate() {
                lamp(canvas, (x, y), r, lit.has((count - 1 - place) as u8));
            }
        }
        Signs::Pictures { lamps, .. } | Signs::InTurn { lamps, .. } => {
            row(canvas, area, *lamps, lit, 0);
        }
        // Flashes follow each other: there is a line of time to write them on.
        Signs::Flashes { .. } => match lit {
            Lit::These(_) => lamp(canvas, (area.left + 12.0, y), 6.0, lit.has(0)),
            Lit::Blank => {
                canvas.circle((area.left + 8.0, y), 5.0, None, Some((BLACK, 0.9)));
                canvas.arrow(
                    &[
                        (area.left + 20.0, area.bottom() - 3.0),
                        (area.right(), area.bottom() - 3.0),
                    ],
                    0.7,
                );
            }
        },
    }
}

/// A digit of seven segments, the lowest of which is bit `first`. What is dark is an outline.
fn segments(canvas: &mut Canvas<'_>, area: Area, lit: Lit, first: u8) {
    let thick = area.height * 0.1;
    let (left, right) = (area.left, area.right());
    let (top, bottom, middle) = (area.top, area.bottom(), area.middle().1);
    let across = |y: f32| Area {
        left: left + thick,
        top: y - thick / 2.0,
        width: area.width - 2.0 * thick,
        height: thick,
    };
    let upright = |x: f32, from: f32, to: f32| Area {
        left: x - thick / 2.0,
        top: from + thick * 0.7,
        width: thick,
        height: to - from - thick * 1.4,
    };
    let half = thick / 2.0;
    // From the top clockwise, the middle last.
    let bars = [
        across(top + half),
        upright(right - half, top + half, middle),
        upright(right - half, middle, bottom - half),
        across(bottom - half),
        upright(left + half, middle, bottom - half),
        upright(left + half, top + half, middle),
        across(middle),
    ];
    for (n, bar) in bars.into_iter().enumerate() {
        if lit.has(first + n as u8) {
            canvas.rect(bar, Some(BLACK), Some((BLACK, 0.5)));
        } else {
            canvas.rect(bar.shrunk(0.2), None, Some((QUIET, 0.4)));
        }
    }
}

/// The digits 0 to 9 beside the example.
fn digits(canvas: &mut Canvas<'_>, area: Area, signs: &Signs) {
    for n in 0..10_u8 {
        let place = Area {
            left: area.left + 150.0 + 33.0 * f32::from(n),
            top: area.top + 6.0,
            width: 17.0,
            height: 34.0,
        };
        segments(canvas, place, Lit::These(signs.lit(n, Span::ZERO)), 0);
        let under = (place.middle().0, area.bottom() - 6.0);
        canvas.text(under, Anchor::Middle, SMALL, &n.to_string());
    }
}

/// Weighted lamps with the sums under them.
fn sums(
    canvas: &mut Canvas<'_>,
    area: Area,
    texts: &Texts,
    (tens, units): (&[u8], &[u8]),
    lit: u16,
) {
    let count = tens.len() + units.len();
    let places = weighted(area, tens.len(), units.len());
    let on = |place: usize| lit & (1 << (count - 1 - place)) != 0;
    for (place, (x, weight)) in places.iter().zip(tens.iter().chain(units)).enumerate() {
        lamp(canvas, (*x, area.top + 16.0), 8.0, on(place));
        let under = (*x, area.top + 42.0);
        canvas.text(under, Anchor::Middle, STRONG, &weight.to_string());
    }
    for (key, from, of, digit) in [
        ("sheet-tens", 0, tens, EXAMPLE / 10),
        ("sheet-units", tens.len(), units, EXAMPLE % 10),
    ] {
        let (Some(first), Some(last)) = (places.get(from), places.get(from + of.len() - 1)) else {
            continue;
        };
        let x = (first + last) / 2.0;
        let sum: Vec<String> = (of.iter().enumerate())
            .filter(|(n, _)| on(from + n))
            .map(|(_, weight)| weight.to_string())
            .collect();
        let y = area.top + 50.0;
        canvas.line(&[(first - 8.0, y), (last + 8.0, y)], 0.7);
        let told = format!("{}: {} = {digit}", texts.get(key), sum.join(" + "));
        canvas.text((x, y + 13.0), Anchor::Middle, BODY, &told);
    }
}

/// Flashes as a strip: time runs to the right.
fn strip(canvas: &mut Canvas<'_>, area: Area, texts: &Texts, signs: &Signs) {
    let whole: u64 = signs.flashes(FLASHED).map(|(_, span)| span.0).sum();
    let last = signs.flashes(FLASHED).last().map_or(0, |(_, span)| span.0);
    // Of the closing pause only the beginning is drawn.
    let shown = (whole - last * 3 / 4).max(1) as f32;
    let wide = area.width - 8.0;
    let x = |ticks: u64| area.left + wide * (ticks as f32 / shown).min(1.0);
    let (top, low) = (area.top + 6.0, area.top + 32.0);
    canvas.arrow(&[(x(0), low), (area.right(), low)], 0.8);
    let (mut at, mut ends) = (0, Vec::new());
    for (on, span) in signs.flashes(FLASHED) {
        if on {
            let block = Area {
                left: x(at),
                top,
                width: x(at + span.0) - x(at),
                height: low - top,
            };
            canvas.rect(block, Some(BLACK), None);
            ends.push((block.left, block.right()));
        }
        at += span.0;
    }
    let tens = usize::from(FLASHED / 10);
    for (key, group, digit) in [
        ("sheet-tens", &ends[..tens], FLASHED / 10),
        ("sheet-units", &ends[tens..], FLASHED % 10),
    ] {
        if let (Some((from, _)), Some((_, to))) = (group.first(), group.last()) {
            let y = low + 6.0;
            canvas.line(&[(*from, y), (*to, y)], 0.7);
            let told = format!("{}: {digit}", texts.get(key));
            canvas.text(((from + to) / 2.0, y + 13.0), Anchor::Middle, BODY, &told);
        }
    }
    let pause = Value::from(f64::from(last as u32) / 100.0);
    let told = texts.with("paper-pause", &[("seconds", pause)]);
    canvas.text((area.right(), low + 19.0), Anchor::Right, NOTE, &told);
}
