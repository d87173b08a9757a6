//! Every colour and size that panels and marks use, so that one test can judge them all.

use bevy_egui::egui::Color32;

/// Behind everything.
pub const INK: Color32 = Color32::from_rgb(0x12, 0x1a, 0x20);
/// Panel ground.
pub const PANEL: Color32 = Color32::from_rgb(0x18, 0x22, 0x29);
/// A card on a panel.
pub const CARD: Color32 = Color32::from_rgb(0x21, 0x2e, 0x37);
/// A button or a field.
pub const FIELD: Color32 = Color32::from_rgb(0x2c, 0x3d, 0x48);
/// A button that does something to the machine.
pub const DEED: Color32 = Color32::from_rgb(0x1f, 0x4a, 0x4c);
/// A button under the pointer.
pub const FIELD_HOT: Color32 = Color32::from_rgb(0x38, 0x4e, 0x5c);
/// Lines between things.
pub const LINE: Color32 = Color32::from_rgb(0x3a, 0x4d, 0x59);
/// Edges of fields, which must be seen.
pub const EDGE: Color32 = Color32::from_rgb(0x8a, 0xa0, 0xae);
/// Text.
pub const TEXT: Color32 = Color32::from_rgb(0xf3, 0xee, 0xe4);
/// Less important text.
pub const QUIET: Color32 = Color32::from_rgb(0xb9, 0xc6, 0xcd);
/// The accent: lamp amber.
pub const AMBER: Color32 = Color32::from_rgb(0xff, 0xb8, 0x4d);
/// Text on amber.
pub const ON_AMBER: Color32 = Color32::from_rgb(0x22, 0x16, 0x04);
/// Right, done.
pub const GOOD: Color32 = Color32::from_rgb(0x7f, 0xd6, 0xa3);
/// Wrong, lost.
pub const BAD: Color32 = Color32::from_rgb(0xff, 0x9a, 0x8a);
/// Second accent: links, focus, windows of time.
pub const SKY: Color32 = Color32::from_rgb(0x8c, 0xcf, 0xf0);
/// Causes that a machine did not have, in bars of belief. Letters in them tell them apart too.
pub const CAUSES: [Color32; 4] = [
    Color32::from_rgb(0xff, 0xb8, 0x4d),
    Color32::from_rgb(0x8c, 0xcf, 0xf0),
    Color32::from_rgb(0xd9, 0xa6, 0xf2),
    Color32::from_rgb(0xff, 0x9a, 0x8a),
];
/// A red probe on paper.
pub const PROBE_RED: Color32 = Color32::from_rgb(0xd0, 0x2b, 0x2b);
/// Glass of the meter's display.
pub const LCD: Color32 = Color32::from_rgb(0xc4, 0xcf, 0xb4);
/// Segments lit on it.
pub const LCD_ON: Color32 = Color32::from_rgb(0x16, 0x1e, 0x14);
/// Paper of the service sheet.
pub const PAPER: Color32 = Color32::from_rgb(0xf4, 0xee, 0xdf);
/// Shaded paper rows.
pub const PAPER_SHADE: Color32 = Color32::from_rgb(0xe6, 0xdd, 0xc8);
/// Print on paper.
pub const PRINT: Color32 = Color32::from_rgb(0x22, 0x2a, 0x2f);
/// Less important print.
pub const PRINT_QUIET: Color32 = Color32::from_rgb(0x51, 0x59, 0x5c);
/// Print in the second colour.
pub const PRINT_ACCENT: Color32 = Color32::from_rgb(0x9a, 0x41, 0x12);

/// Signal colours of the caution panel: red, orange, yellow (ANSI Z535.4 word panels, from a secondary source)
/// and their ink.
pub const DANGER: (Color32, Color32) = (Color32::from_rgb(0xb4, 0x1c, 0x1c), Color32::WHITE);
/// Orange with black letters.
pub const WARNING: (Color32, Color32) = (
    Color32::from_rgb(0xf5, 0x84, 0x1f),
    Color32::from_rgb(0x10, 0x10, 0x10),
);
/// Yellow with black letters.
pub const CAUTION: (Color32, Color32) = (
    Color32::from_rgb(0xf7, 0xcf, 0x1d),
    Color32::from_rgb(0x10, 0x10, 0x10),
);

/// Print on the console: on glass and dark paint, what comes first on a scale, and on steel.
pub const CONSOLE_PRINT: Color32 = Color32::from_rgb(0xc9, 0xcf, 0xd0);
/// See [`CONSOLE_PRINT`].
pub const CONSOLE_AMBER: Color32 = Color32::from_rgb(0xff, 0xb8, 0x4d);
/// See [`CONSOLE_PRINT`].
pub const CONSOLE_INK: Color32 = Color32::from_rgb(0x14, 0x1a, 0x20);

/// A lit lamp on the console's dark glass.
pub const LAMP_LIT: Color32 = Color32::from_rgb(0xff, 0xc8, 0x63);
/// A lit bar of a digit on the same glass.
pub const DIGIT_LIT: Color32 = Color32::from_rgb(0x7c, 0xe8, 0xa6);
/// A lit status lamp in its dark rim.
pub const STATUS_LIT: Color32 = Color32::from_rgb(0x8f, 0xcb, 0xff);
/// The lit lock lamp.
pub const LOCK_LIT: Color32 = Color32::from_rgb(0xff, 0x9a, 0x66);
/// A dark lamp's ring on the same glass.
pub const LAMP_RING: Color32 = Color32::from_rgb(0x9a, 0xa6, 0xad);
/// The glass.
pub const GLASS: Color32 = Color32::from_rgb(0x10, 0x14, 0x18);

/// Body text, points.
pub const BODY: f32 = 16.0;
/// Smallest text, points.
pub const SMALL: f32 = 15.0;
/// Headings, points.
pub const HEADING: f32 = 20.0;

/// Pairs of foreground and ground that carry text.
pub const TEXT_PAIRS: &[(&str, Color32, Color32)] = &[
    ("text on panel", TEXT, PANEL),
    ("text on card", TEXT, CARD),
    ("text on field", TEXT, FIELD),
    ("text on hot field", TEXT, FIELD_HOT),
    ("text on a deed", TEXT, DEED),
    ("sky on panel", SKY, PANEL),
    ("sky on field", SKY, FIELD_HOT),
    ("amber on hot field", AMBER, FIELD_HOT),
    ("quiet text on panel", QUIET, PANEL),
    ("quiet text on card", QUIET, CARD),
    ("quiet text on field", QUIET, FIELD),
    ("amber text on panel", AMBER, PANEL),
    ("amber text on card", AMBER, CARD),
    ("text on amber", ON_AMBER, AMBER),
    ("good on card", GOOD, CARD),
    ("bad on card", BAD, CARD),
    ("good on panel", GOOD, PANEL),
    ("bad on panel", BAD, PANEL),
    ("sky on card", SKY, CARD),
    ("text on ink", TEXT, INK),
    ("display", LCD_ON, LCD),
    ("print", PRINT, PAPER),
    ("print on shade", PRINT, PAPER_SHADE),
    ("quiet print", PRINT_QUIET, PAPER),
    ("quiet print on shade", PRINT_QUIET, PAPER_SHADE),
    ("accent print", PRINT_ACCENT, PAPER),
    ("accent print on shade", PRINT_ACCENT, PAPER_SHADE),
    ("danger", DANGER.1, DANGER.0),
    ("warning", WARNING.1, WARNING.0),
    ("caution", CAUTION.1, CAUTION.0),
];

/// Pairs of mark and ground that carry meaning without text.
pub const MARK_PAIRS: &[(&str, Color32, Color32)] = &[
    ("lit lamp on glass", LAMP_LIT, GLASS),
    ("lit digit on glass", DIGIT_LIT, GLASS),
    ("lit status lamp on its dark lens", STATUS_LIT, GLASS),
    ("lit lock lamp on glass", LOCK_LIT, GLASS),
    ("lamp ring on glass", LAMP_RING, GLASS),
    ("console print on glass", CONSOLE_PRINT, GLASS),
    ("first console print on glass", CONSOLE_AMBER, GLASS),
    ("lit lamp beside lamp ring's ground", LAMP_LIT, PANEL),
    ("field edge on panel", EDGE, PANEL),
    ("field edge on card", EDGE, CARD),
    ("focus on field", SKY, FIELD),
    ("good mark", GOOD, CARD),
    ("bad mark", BAD, CARD),
];

#[cfg(test)]
pub(crate) mod tests {
    use super::*;

    /// Relative luminance as WCAG 2.2 defines it.
    fn luminance(colour: Color32) -> f64 {
        let part = |byte: u8| {
            let c = f64::from(byte) / 255.0;
            if c <= 0.04045 {
                c / 12.92
            } else {
                ((c + 0.055) / 1.055).powf(2.4)
            }
        };
        0.2126 * part(colour.r()) + 0.7152 * part(colour.g()) + 0.0722 * part(colour.b())
    }

    /// Contrast ratio as WCAG 2.2 defines it.
    pub(crate) fn contrast(a: Color32, b: Color32) -> f64 {
        let (a, b) = (luminance(a), luminance(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    /// W3C, "Understanding SC 1.4.3": #767676 on white passes 4.5:1, #777777 does not.
    #[test]
    fn contrast_agrees_with_published_values() {
        let grey = |v| Color32::from_rgb(v, v, v);
        for (value, expected) in [
            (0x76, 4.5422),
            (0x77, 4.4781),
            (0x94, 3.0335),
            (0x95, 2.9953),
        ] {
            let got = contrast(grey(value), Color32::WHITE);
            assert!((got - expected).abs() < 1e-4, "{value:x}: {got}");
        }
    }

    /// WCAG 2.2, SC 1.4.3 (text, 4.5:1).
    #[test]
    fn every_text_pair_has_enough_contrast() {
        for (name, front, back) in TEXT_PAIRS {
            let ratio = contrast(*front, *back);
            assert!(ratio >= 4.5, "{name}: {ratio:.2}");
        }
    }

    /// WCAG 2.2, SC 1.4.11 (marks and fields, 3:1).
    #[test]
    fn every_mark_pair_has_enough_contrast() {
        for (name, front, back) in MARK_PAIRS {
            let ratio = contrast(*front, *back);
            assert!(ratio >= 3.0, "{name}: {ratio:.2}");
        }
    }
}
