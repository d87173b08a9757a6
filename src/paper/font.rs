//! The two fonts that are embedded, and how wide a text is in them. Text runs from left to right, without
//! kerning and ligatures: both languages are legible so, and no crate that shapes text is needed.

use krilla::text::{Font, GlyphId as OutGlyph, KrillaGlyph};
use skrifa::instance::{LocationRef, Size};
use skrifa::{FontRef, MetadataProvider};

/// Drawn instead of a character that neither font has.
const REPLACEMENT: char = '?';

/// Most characters of both languages come before this one: their glyphs are looked up once.
const COMMON: u32 = 0x250;

/// A glyph's number and its advance, in parts of the font size.
type Set = (u32, f32);

/// A font with what is needed to set text in it.
struct Face {
    font: Font,
    metrics: FontRef<'static>,
    units_per_em: f32,
    common: Vec<Option<Set>>,
}

impl Face {
    fn new(bytes: &'static [u8]) -> Option<Face> {
        let metrics = FontRef::new(bytes).ok()?;
        let units = metrics.metrics(Size::unscaled(), LocationRef::default());
        let mut face = Face {
            font: Font::new(bytes.into(), 0)?,
            units_per_em: f32::from(units.units_per_em),
            metrics,
            common: Vec::new(),
        };
        let common = (0..COMMON).map(|c| char::from_u32(c).and_then(|c| face.look_up(c)));
        face.common = common.collect();
        Some(face)
    }

    fn glyph(&self, c: char) -> Option<Set> {
        let common = self.common.get(c as usize).copied();
        common.unwrap_or_else(|| self.look_up(c))
    }

    fn look_up(&self, c: char) -> Option<Set> {
        let glyph = self.metrics.charmap().map(c)?;
        let widths = (self.metrics).glyph_metrics(Size::unscaled(), LocationRef::default());
        let advance = widths.advance_width(glyph)?;
        (glyph.to_u32() != 0).then_some((glyph.to_u32(), advance / self.units_per_em))
    }
}

/// A stretch of text in one font.
pub(super) struct Run {
    pub font: Font,
    pub text: String,
    pub glyphs: Vec<KrillaGlyph>,
    /// In parts of the font size.
    pub width: f32,
}

/// The fonts in the order in which they are asked for a character.
pub(super) struct Fonts {
    faces: Vec<Face>,
}

impl Fonts {
    /// The fonts that egui brings: a proportional one, and one with more signs.
    pub fn embedded() -> Fonts {
        let files = [
            epaint_default_fonts::UBUNTU_LIGHT,
            epaint_default_fonts::HACK_REGULAR,
        ];
        Fonts {
            faces: files.into_iter().filter_map(Face::new).collect(),
        }
    }

    /// Which font has the character, its glyph and advance; with what is drawn instead where none has.
    fn find(&self, c: char) -> Option<(usize, char, u32, f32)> {
        let in_faces = |c: char| {
            let mut faces = self.faces.iter().enumerate();
            faces.find_map(|(n, face)| face.glyph(c).map(|(glyph, advance)| (n, c, glyph, advance)))
        };
        in_faces(c).or_else(|| in_faces(REPLACEMENT))
    }

    /// Whether a font has the character.
    #[cfg(test)]
    fn has(&self, c: char) -> bool {
        self.faces.iter().any(|face| face.glyph(c).is_some())
    }

    /// Width of a text, pt.
    pub fn width(&self, text: &str, size: f32) -> f32 {
        let advance = |c| self.find(c).map_or(0.0, |(.., advance)| advance);
        text.chars().map(advance).sum::<f32>() * size
    }

    /// The text with its glyphs.
    pub fn runs(&self, text: &str) -> Vec<Run> {
        let mut runs: Vec<(usize, Run)> = Vec::new();
        for (n, c, glyph, advance) in text.chars().filter_map(|c| self.find(c)) {
            if runs.last().is_none_or(|(face, _)| *face != n) {
                let run = Run {
                    font: self.faces[n].font.clone(),
                    text: String::new(),
                    glyphs: Vec::new(),
                    width: 0.0,
                };
                runs.push((n, run));
            }
            if let Some((_, run)) = runs.last_mut() {
                let from = run.text.len();
                run.text.push(c);
                run.width += advance;
                run.glyphs.push(KrillaGlyph {
                    glyph_id: OutGlyph::new(glyph),
                    text_range: from..run.text.len(),
                    x_advance: advance,
                    x_offset: 0.0,
                    y_offset: 0.0,
                    y_advance: 0.0,
                    location: None,
                });
            }
        }
        runs.into_iter().map(|(_, run)| run).collect()
    }

    /// The text in lines that are no wider than `width`; a word that is wider by itself is broken.
    pub fn lines(&self, text: &str, size: f32, width: f32) -> Vec<String> {
        let mut lines = vec![String::new()];
        let mut used = 0.0;
        let space = self.width(" ", size);
        for word in printable(text).split(' ').filter(|word| !word.is_empty()) {
            let wide = self.width(word, size);
            match lines.last_mut() {
                Some(line) if !line.is_empty() && used + space + wide <= width => {
                    line.push(' ');
                    line.push_str(word);
                    used += space + wide;
                }
                last => {
                    if last.is_some_and(|line| !line.is_empty()) {
                        lines.push(String::new());
                    }
                    used = self.add_word(&mut lines, word, size, width);
                }
            }
        }
        lines
    }

    /// Puts a word on the last line, which is empty, and what does not fit on further ones; gives back how wide
    /// the last one is then.
    fn add_word(&self, lines: &mut Vec<String>, word: &str, size: f32, width: f32) -> f32 {
        let mut used = 0.0;
        for c in word.chars() {
            let wide = self.width(c.encode_utf8(&mut [0; 4]), size);
            match lines.last_mut() {
                Some(line) if line.is_empty() || used + wide <= width => {
                    line.push(c);
                    used += wide;
                }
                _ => {
                    lines.push(c.to_string());
                    used = wide;
                }
            }
        }
        used
    }
}

/// The text without what steers, which a font may draw as nothing at all: control characters are spaces, marks
/// that turn the direction of writing (Unicode Standard Annex 9) are left out.
fn printable(text: &str) -> String {
    let marks = |c: &char| matches!(c, '\u{61c}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}');
    let kept = text.chars().filter(|c| !marks(c));
    kept.map(|c| if c.is_control() { ' ' } else { c }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_signs_of_the_trade_and_of_spanish_are_there() {
        let fonts = Fonts::embedded();
        for c in "áéíóúüñÁÉÍÓÚÑ¿¡«»“”’Ω°Δµ¤×≤≥–—−…·→".chars()
        {
            assert!(fonts.has(c), "{c}");
        }
        assert!(!fonts.has('鼓'));
    }

    #[test]
    fn what_no_font_has_is_drawn_as_a_question_mark_and_what_steers_is_left_out() {
        let fonts = Fonts::embedded();
        let drawn = |text: &str| -> Vec<String> { fonts.lines(text, 10.0, 500.0) };
        assert_eq!(drawn("a\u{202e}b\nc\tд"), ["ab c д"]);
        let runs = fonts.runs("鼓 a");
        let text: String = runs.iter().map(|run| run.text.as_str()).collect();
        assert_eq!(text, "? a");
    }

    #[test]
    fn no_line_is_wider_than_its_room_even_with_a_word_that_is() {
        let fonts = Fonts::embedded();
        let text = format!("a word, {} and more of them", "long".repeat(60));
        for width in [4.0, 40.0, 120.0, 400.0] {
            let lines = fonts.lines(&text, 10.0, width);
            for line in &lines {
                let single = line.chars().count() == 1;
                assert!(fonts.width(line, 10.0) <= width || single, "{line}");
            }
            let letters = |text: &str| text.replace(' ', "");
            assert_eq!(letters(&lines.concat()), letters(&text));
        }
    }
}
