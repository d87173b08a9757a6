//! A technician's bench in a picture: the machine from behind with its panels off, what stands around it, and each
//! thing in the state that the question gives it. Drawn flat, in the colors of the panels.

use crate::tokens as t;
use bevy_egui::egui::epaint::{CubicBezierShape, EllipseShape};
use bevy_egui::egui::{
    Align2, Color32, CornerRadius, FontId, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, Vec2,
    vec2,
};
use detent_content::Texts;
use detent_training::bench::{Display, MeterMode};
use detent_training::practice::drill::hazard::{BenchObject, HazardTask, ObjectState};

/// Width and height of the drawing in its own units; it is scaled to the room that there is.
const SIZE: Vec2 = vec2(1200.0, 500.0);
/// Where wall and floor meet.
const FLOOR: f32 = 428.0;
/// Least size of letters, points.
const SMALLEST_LETTERS: f32 = 11.0;
/// Above this a supply's outlet has round holes, V.
const ROUND_HOLES_FROM_V: f64 = 200.0;

/// Where a name stands: its point, and which of its corners or sides lies there.
pub(super) type LabelPlace = (Pos2, Align2);

/// The picture in the room that it has on the screen.
pub(super) struct HazardPicture<'a> {
    painter: &'a Painter,
    task: &'a HazardTask,
    texts: &'a Texts,
    origin: Pos2,
    scale: f32,
}

/// How high the picture is in this width, if no more than `most`.
pub(super) fn height(width: f32, most: f32) -> f32 {
    (width * SIZE.y / SIZE.x).min(most)
}

impl<'a> HazardPicture<'a> {
    /// The picture in the middle of `room`.
    pub(super) fn new(
        painter: &'a Painter,
        room: Rect,
        task: &'a HazardTask,
        texts: &'a Texts,
    ) -> HazardPicture<'a> {
        let scale = (room.width() / SIZE.x).min(room.height() / SIZE.y);
        HazardPicture {
            painter,
            task,
            texts,
            origin: room.center() - SIZE * scale / 2.0,
            scale,
        }
    }

    /// The room that a thing takes on the screen: what is pressed to choose it.
    pub(super) fn place(&self, state: ObjectState) -> Rect {
        let [left, top, right, low] = extent(state);
        Rect::from_min_max(self.at(left, top), self.at(right, low))
    }

    /// Where a thing's name stands on the screen.
    pub(super) fn label(&self, state: ObjectState) -> LabelPlace {
        let (x, y, anchor) = label(state);
        (self.at(x, y), anchor)
    }

    /// What the card on the capacitor says, V.
    pub(super) fn card_v(&self) -> f64 {
        self.task.card_v
    }

    /// Draws everything but names and outlines.
    pub(super) fn paint(&self) {
        self.room();
        self.machine();
        self.bench();
        for state in &self.task.objects {
            self.object(*state);
        }
    }

    fn at(&self, x: f32, y: f32) -> Pos2 {
        self.origin + vec2(x, y) * self.scale
    }

    fn ink(&self, width: f32, colour: Color32) -> Stroke {
        Stroke::new(width * self.scale, colour)
    }

    /// A box with round corners and an edge.
    fn block(&self, [left, top, right, low]: [f32; 4], round: f32, fill: Color32, edge: Color32) {
        let rect = Rect::from_min_max(self.at(left, top), self.at(right, low));
        let corners = CornerRadius::same((round * self.scale) as u8);
        let ink = self.ink(2.0, edge);
        (self.painter).rect(rect, corners, fill, ink, StrokeKind::Inside);
    }

    fn line(&self, points: &[(f32, f32)], width: f32, colour: Color32) {
        let points: Vec<Pos2> = points.iter().map(|(x, y)| self.at(*x, *y)).collect();
        (self.painter).add(Shape::line(points, self.ink(width, colour)));
    }

    /// A shape without dents.
    fn plate(&self, points: &[(f32, f32)], fill: Color32, edge: Color32) {
        let points = points.iter().map(|(x, y)| self.at(*x, *y)).collect();
        let ink = self.ink(1.5, edge);
        (self.painter).add(Shape::convex_polygon(points, fill, ink));
    }

    fn disc(&self, x: f32, y: f32, radius: f32, fill: Color32, edge: Color32) {
        let ink = self.ink(2.0, edge);
        (self.painter).circle(self.at(x, y), radius * self.scale, fill, ink);
    }

    fn ellipse(&self, x: f32, y: f32, (across, up): (f32, f32), fill: Color32, edge: Color32) {
        let radius = vec2(across, up) * self.scale;
        let mut shape = EllipseShape::filled(self.at(x, y), radius, fill);
        shape.stroke = self.ink(2.0, edge);
        (self.painter).add(shape);
    }

    /// A soft bend from the first point to the last.
    fn bend(&self, points: [(f32, f32); 4], width: f32, colour: Color32) {
        let points = points.map(|(x, y)| self.at(x, y));
        let ink = self.ink(width, colour);
        let bend = CubicBezierShape::from_points_stroke(points, false, Color32::TRANSPARENT, ink);
        (self.painter).add(bend);
    }

    fn letters(&self, x: f32, y: f32, anchor: Align2, size: f32, colour: Color32, text: String) {
        let font = FontId::proportional((size * self.scale).max(SMALLEST_LETTERS));
        (self.painter).text(self.at(x, y), anchor, text, font, colour);
    }

    /// Wall and floor.
    fn room(&self) {
        self.block([0.0, 0.0, SIZE.x, SIZE.y], 8.0, t::PANEL, t::LINE);
        let floor = [0.0, FLOOR, SIZE.x, SIZE.y];
        self.block(floor, 8.0, t::CARD, t::LINE);
        for n in 1..8 {
            let x = n as f32 * 150.0;
            let lean = (x - SIZE.x / 2.0) * 0.12;
            self.line(&[(x, FLOOR), (x + lean, SIZE.y - 2.0)], 1.0, t::LINE);
        }
    }

    /// Cabinet without its panel: drive on the left, control board on the right. The hot hose belongs to it.
    fn machine(&self) {
        self.bend(
            [
                (290.0, 160.0),
                (300.0, 330.0),
                (400.0, 350.0),
                (512.0, 262.0),
            ],
            8.0,
            t::QUIET.gamma_multiply(0.6),
        );
        // The cord runs along the floor.
        self.bend(
            [(95.0, 300.0), (80.0, 470.0), (300.0, 462.0), (514.0, 408.0)],
            5.0,
            t::EDGE,
        );
        self.block([510.0, 108.0, 915.0, 420.0], 8.0, t::QUIET, t::TEXT);
        self.block([524.0, 122.0, 901.0, 410.0], 4.0, t::INK, t::EDGE);
        for x in [540.0, 860.0] {
            self.block([x, 418.0, x + 26.0, 430.0], 2.0, t::EDGE, t::EDGE);
        }
        // The hoses' inlets.
        for y in [192.0, 254.0] {
            self.block([500.0, y, 514.0, y + 18.0], 2.0, t::EDGE, t::TEXT);
        }
        // The board: tracks, a chip, and a row of terminals.
        self.block([730.0, 142.0, 894.0, 340.0], 4.0, t::DEED, t::EDGE);
        for n in 0..7 {
            let x = 750.0 + n as f32 * 21.0;
            self.line(&[(x, 290.0), (x, 306.0)], 2.0, t::QUIET);
            self.block([x - 8.0, 306.0, x + 8.0, 328.0], 2.0, t::FIELD, t::QUIET);
            self.disc(x, 317.0, 4.0, t::EDGE, t::QUIET);
        }
    }

    /// The table on the right, and the rack on the wall above it.
    fn bench(&self) {
        for x in [945.0, 1165.0] {
            self.block([x, 310.0, x + 14.0, 452.0], 2.0, t::FIELD, t::EDGE);
        }
        self.block([928.0, 298.0, 1192.0, 314.0], 3.0, t::FIELD_HOT, t::EDGE);
        self.block([1090.0, 66.0, 1190.0, 84.0], 3.0, t::FIELD, t::EDGE);
    }

    fn object(&self, state: ObjectState) {
        use ObjectState as S;
        match state {
            S::PlugIn | S::PlugOut => self.plug(state == S::PlugIn),
            S::TapsOpen | S::TapsShut => self.taps(state == S::TapsOpen),
            S::HoseConnected | S::HoseLoose => self.hose(state == S::HoseConnected),
            S::BucketOnFloor => self.bucket(457.0, 424.0, false),
            S::BucketOnTop => self.bucket(845.0, 107.0, true),
            S::CapacitorCovered
            | S::CapacitorUnmeasured
            | S::CapacitorDischarged
            | S::CapacitorCharged => self.capacitor(state),
            S::LidDown | S::LidUp => self.lid(state == S::LidUp),
            S::FloorDry => {}
            S::FloorWet => self.puddle(),
            S::BeltStill | S::BeltTurning => self.belt(state == S::BeltTurning),
            S::MeterPutAside
            | S::MeterVoltsAc
            | S::MeterVoltsDc
            | S::MeterOhms
            | S::MeterLeadInAmps
            | S::MeterLeadBare => self.meter(state),
            S::ScrewdriverHung => self.screwdriver((1135.0, 62.0), (0.0, 1.0)),
            S::ScrewdriverOnBoard => self.screwdriver((746.0, 262.0), (1.0, 0.0)),
            S::ScrewdriverInBelt => self.screwdriver((560.0, 152.0), (0.42, 0.91)),
            S::GearWhole | S::GlovesTorn | S::GlassesCracked => self.gear(state),
        }
    }

    fn plug(&self, is_in: bool) {
        self.block([64.0, 146.0, 132.0, 224.0], 6.0, t::QUIET, t::TEXT);
        self.block([72.0, 154.0, 124.0, 216.0], 5.0, t::TEXT, t::EDGE);
        let volts = self.task.place.mains.rating().volts;
        if is_in {
            self.block([78.0, 164.0, 118.0, 214.0], 8.0, t::FIELD, t::EDGE);
            self.block([88.0, 214.0, 108.0, 232.0], 4.0, t::FIELD, t::EDGE);
            self.bend(
                [(98.0, 230.0), (100.0, 270.0), (96.0, 280.0), (95.0, 300.0)],
                5.0,
                t::EDGE,
            );
            return;
        }
        if volts > ROUND_HOLES_FROM_V {
            self.disc(98.0, 185.0, 21.0, t::QUIET, t::EDGE);
            for x in [89.0, 107.0] {
                self.disc(x, 185.0, 4.0, t::INK, t::INK);
            }
        } else {
            for (x, high) in [(86.0, 20.0), (106.0, 16.0)] {
                self.block([x, 168.0, x + 5.0, 168.0 + high], 0.0, t::INK, t::INK);
            }
            self.disc(98.0, 201.0, 5.0, t::INK, t::INK);
        }
        // A hook in the wall holds the plug beside its outlet, pins up.
        self.line(&[(160.0, 186.0), (204.0, 186.0)], 4.0, t::QUIET);
        self.disc(160.0, 186.0, 4.0, t::QUIET, t::QUIET);
        for x in [174.0, 190.0] {
            self.block([x - 3.0, 192.0, x + 3.0, 216.0], 1.0, t::AMBER, t::AMBER);
        }
        self.block([162.0, 214.0, 202.0, 258.0], 8.0, t::FIELD, t::EDGE);
        self.block([173.0, 256.0, 191.0, 272.0], 4.0, t::FIELD, t::EDGE);
        self.bend(
            [
                (182.0, 272.0),
                (182.0, 310.0),
                (110.0, 262.0),
                (95.0, 300.0),
            ],
            5.0,
            t::EDGE,
        );
    }

    /// Two taps with levers: along the pipe is open, across it is shut (common practice, no source).
    fn taps(&self, open: bool) {
        for (x, colour) in [(290.0, t::BAD), (355.0, t::SKY)] {
            self.block([x - 8.0, 40.0, x + 8.0, 150.0], 2.0, t::QUIET, t::EDGE);
            self.block([x - 12.0, 150.0, x + 12.0, 166.0], 3.0, t::EDGE, t::TEXT);
            self.block([x - 14.0, 88.0, x + 14.0, 122.0], 4.0, t::EDGE, t::TEXT);
            let lever = match open {
                true => [x - 6.0, 54.0, x + 6.0, 112.0],
                false => [x - 8.0, 99.0, x + 44.0, 111.0],
            };
            self.block(lever, 5.0, colour, t::INK);
            self.disc(x, 105.0, 7.0, t::FIELD, t::INK);
        }
    }

    fn hose(&self, connected: bool) {
        let colour = t::SKY.gamma_multiply(0.85);
        let start = (355.0, 166.0);
        if connected {
            let points = [start, (360.0, 290.0), (430.0, 268.0), (492.0, 201.0)];
            self.bend(points, 10.0, colour);
            self.block([480.0, 189.0, 502.0, 213.0], 3.0, t::QUIET, t::TEXT);
        } else {
            let points = [start, (358.0, 280.0), (420.0, 190.0), (440.0, 262.0)];
            self.bend(points, 10.0, colour);
            self.block([427.0, 258.0, 453.0, 280.0], 3.0, t::QUIET, t::TEXT);
            self.ellipse(440.0, 280.0, (11.0, 4.0), t::INK, t::TEXT);
        }
    }

    /// A bucket that stands at `low`; a full one shows its water.
    fn bucket(&self, x: f32, low: f32, full: bool) {
        let top = low - 74.0;
        let (mouth, foot) = (40.0, 29.0);
        // Upright and above the rim: the handle.
        self.bend(
            [
                (x - mouth, top),
                (x - 26.0, top - 26.0),
                (x + 26.0, top - 26.0),
                (x + mouth, top),
            ],
            2.5,
            t::QUIET,
        );
        let side = [
            (x - mouth, top),
            (x + mouth, top),
            (x + foot, low),
            (x - foot, low),
        ];
        self.plate(&side, t::EDGE, t::TEXT);
        let (inside, edge) = match full {
            true => (t::SKY, t::TEXT),
            false => (t::INK, t::TEXT),
        };
        self.ellipse(x, top, (mouth, 9.0), inside, edge);
        if full {
            for (dx, dy) in [(-34.0, 10.0), (31.0, 6.0)] {
                let (x, y) = (x + dx, top + dy);
                self.line(&[(x, y), (x, y + 14.0)], 4.0, t::SKY);
                self.disc(x, y + 17.0, 3.0, t::SKY, t::SKY);
            }
        }
    }

    fn capacitor(&self, state: ObjectState) {
        for x in [759.0, 781.0] {
            self.line(&[(x, 226.0), (x, 238.0)], 3.0, t::QUIET);
        }
        self.block([746.0, 158.0, 794.0, 228.0], 6.0, t::FIELD, t::EDGE);
        self.ellipse(770.0, 161.0, (23.0, 7.0), t::QUIET, t::EDGE);
        self.block([782.0, 174.0, 789.0, 222.0], 0.0, t::QUIET, t::QUIET);
        let card_v = match state {
            ObjectState::CapacitorCovered => {
                let yellow = t::CAUTION.0;
                self.block([739.0, 149.0, 801.0, 234.0], 8.0, yellow, t::ON_AMBER);
                let flash = [
                    (776.0, 166.0),
                    (760.0, 194.0),
                    (770.0, 194.0),
                    (763.0, 218.0),
                    (781.0, 187.0),
                    (770.0, 187.0),
                    (776.0, 166.0),
                ];
                self.line(&flash, 3.0, t::ON_AMBER);
                return;
            }
            ObjectState::CapacitorUnmeasured => None,
            _ => Some(self.task.card_v),
        };
        // The card on its string.
        self.line(&[(794.0, 172.0), (810.0, 186.0)], 1.5, t::TEXT);
        self.block([806.0, 168.0, 888.0, 218.0], 3.0, t::PAPER, t::PRINT);
        self.disc(813.0, 186.0, 3.0, t::INK, t::PRINT_QUIET);
        let text = match card_v {
            Some(volts) => self
                .texts
                .display(Display::Value(volts), MeterMode::VoltsDc),
            None => "— V".to_owned(),
        };
        let middle = Align2::CENTER_CENTER;
        self.letters(851.0, 183.0, middle, 16.0, t::PRINT, text);
        self.line(&[(822.0, 204.0), (880.0, 204.0)], 1.5, t::PRINT_QUIET);
    }

    fn lid(&self, up: bool) {
        if up {
            self.block([540.0, 98.0, 762.0, 112.0], 3.0, t::INK, t::TEXT);
            self.ellipse(651.0, 106.0, (96.0, 6.0), t::FIELD, t::EDGE);
            let lid = [(534.0, 104.0), (548.0, 108.0), (612.0, 24.0), (598.0, 18.0)];
            self.plate(&lid, t::QUIET, t::TEXT);
        } else {
            self.block([534.0, 94.0, 768.0, 110.0], 6.0, t::QUIET, t::TEXT);
            self.block([630.0, 90.0, 672.0, 97.0], 3.0, t::EDGE, t::TEXT);
        }
    }

    fn puddle(&self) {
        let water = t::SKY.gamma_multiply(0.55);
        self.ellipse(705.0, 462.0, (178.0, 22.0), water, t::SKY);
        self.ellipse(862.0, 478.0, (34.0, 9.0), water, t::SKY);
        for (left, right, y) in [(620.0, 690.0, 455.0), (705.0, 800.0, 467.0)] {
            self.line(&[(left, y), (right, y)], 2.0, t::TEXT);
        }
    }

    fn belt(&self, turning: bool) {
        let (x, y, big): (f32, f32, f32) = (606.0, 305.0, 66.0);
        let (x2, y2, small): (f32, f32, f32) = (696.0, 350.0, 18.0);
        // Where the belt leaves the pulleys: the two outer tangents.
        let (dx, dy) = (x2 - x, y2 - y);
        let apart = (dx * dx + dy * dy).sqrt();
        let toward = dy.atan2(dx);
        let open = ((big - small) / apart).acos();
        for side in [-1.0, 1.0] {
            let out = Vec2::angled(toward + side * open);
            let from = (x + out.x * big, y + out.y * big);
            let to = (x2 + out.x * small, y2 + out.y * small);
            self.line(&[from, to], 7.0, t::EDGE);
        }
        for (x, y, radius) in [(x, y, big), (x2, y2, small)] {
            self.disc(x, y, radius + 3.0, t::EDGE, t::TEXT);
            self.disc(x, y, radius - 3.0, t::FIELD, t::TEXT);
        }
        if turning {
            // Blurred spokes, and arrows that go round.
            for radius in [20.0, 34.0, 48.0] {
                let ring = self.ink(5.0, t::FIELD_HOT);
                let middle = self.at(x, y);
                (self.painter).circle_stroke(middle, radius * self.scale, ring);
            }
            for third in 0..3 {
                self.round_arrow((x, y), 42.0, third as f32 * std::f32::consts::TAU / 3.0);
            }
        } else {
            for spoke in 0..5 {
                let out = Vec2::angled(spoke as f32 * std::f32::consts::TAU / 5.0);
                let to = (x + out.x * (big - 6.0), y + out.y * (big - 6.0));
                self.line(&[(x, y), to], 7.0, t::QUIET);
            }
        }
        self.disc(x, y, 12.0, t::QUIET, t::TEXT);
        self.disc(x2, y2, 6.0, t::QUIET, t::TEXT);
    }

    /// An arrow along a quarter of a circle, clockwise.
    fn round_arrow(&self, (x, y): (f32, f32), radius: f32, from: f32) {
        let on = |angle: f32, radius: f32| {
            let out = Vec2::angled(angle) * radius;
            (x + out.x, y + out.y)
        };
        let arc: Vec<(f32, f32)> = (0..=8)
            .map(|n| on(from + n as f32 * 0.16, radius))
            .collect();
        self.line(&arc, 4.0, t::AMBER);
        let head = [
            on(from + 1.28, radius - 9.0),
            on(from + 1.28, radius + 9.0),
            on(from + 1.62, radius),
        ];
        self.plate(&head, t::AMBER, t::AMBER);
    }

    fn meter(&self, state: ObjectState) {
        let sound = self.task.work.sound(BenchObject::Meter);
        let set = match state {
            // What is wrong about these is not the knob.
            ObjectState::MeterLeadInAmps | ObjectState::MeterLeadBare => sound,
            other => other,
        };
        let put_aside = state == ObjectState::MeterPutAside;
        let red_from = match state {
            ObjectState::MeterLeadInAmps => 973.0,
            _ => 1041.0,
        };
        self.leads(put_aside, red_from, state == ObjectState::MeterLeadBare);
        self.block(
            [952.0, 110.0, 1062.0, 297.0],
            10.0,
            t::CAUTION.0,
            t::ON_AMBER,
        );
        self.block([959.0, 117.0, 1055.0, 290.0], 6.0, t::FIELD, t::INK);
        self.block([966.0, 123.0, 1048.0, 153.0], 3.0, t::LCD, t::INK);
        // The knob among its settings; its pointer says which is set.
        let (x, y) = (1007.0, 211.0);
        let settings = [
            (None, (-0.80, 0.72)),
            (Some(MeterMode::VoltsAc), (-0.80, -0.72)),
            (Some(MeterMode::VoltsDc), (0.80, -0.72)),
            (Some(MeterMode::Ohms), (0.80, 0.72)),
        ];
        let pointed = match set {
            ObjectState::MeterVoltsAc => Some(MeterMode::VoltsAc),
            ObjectState::MeterVoltsDc => Some(MeterMode::VoltsDc),
            ObjectState::MeterOhms => Some(MeterMode::Ohms),
            _ => None,
        };
        self.disc(x, y, 21.0, t::INK, t::EDGE);
        for (mode, (across, down)) in settings {
            let text = mode.map_or_else(|| "0".to_owned(), |mode| self.texts.meter_mode(mode));
            let on = mode == pointed;
            let colour = if on { t::AMBER } else { t::TEXT };
            let (wide, high) = (x + across * 36.0, y + down * 44.0);
            let middle = Align2::CENTER_CENTER;
            self.letters(wide, high, middle, 14.0, colour, text);
            if on {
                let tip = (x + across * 22.0, y + down * 24.0);
                self.line(&[(x, y), tip], 6.0, t::AMBER);
            }
        }
        for (x, name) in [(973.0, "A"), (1007.0, "COM"), (1041.0, "V Ω")] {
            self.disc(x, 279.0, 7.0, t::INK, t::EDGE);
            let above = Align2::CENTER_BOTTOM;
            self.letters(x, 272.0, above, 12.0, t::TEXT, name.to_owned());
        }
        self.disc(red_from, 279.0, 5.0, t::PROBE_RED, t::TEXT);
        self.disc(1007.0, 279.0, 5.0, t::INK, t::TEXT);
    }

    /// Both leads from their sockets: to what will be measured, or rolled up.
    fn leads(&self, put_aside: bool, red_from: f32, bare: bool) {
        let black = t::QUIET.gamma_multiply(0.55);
        let red = t::PROBE_RED;
        if put_aside {
            for (from, x, colour) in [(1007.0, 960.0, black), (red_from, 994.0, red)] {
                let down = [(from, 282.0), (from, 330.0), (x, 320.0), (x, 330.0)];
                self.bend(down, 4.0, colour);
                for shift in [0.0, 5.0] {
                    let middle = self.at(x + shift, 336.0);
                    let ring = self.ink(3.5, colour);
                    (self.painter).circle_stroke(middle, 13.0 * self.scale, ring);
                }
            }
            return;
        }
        let charge =
            self.task.work.sound(BenchObject::Capacitor) == ObjectState::CapacitorUnmeasured;
        let (black_to, red_to) = match charge {
            true => ((781.0, 240.0), (759.0, 240.0)),
            false => ((855.0, 317.0), (876.0, 317.0)),
        };
        for (from, low, to, colour) in [
            (1007.0, 358.0, black_to, black),
            (red_from, 340.0, red_to, red),
        ] {
            self.bend(
                [(from, 282.0), (from, low), (from, low), (970.0, low)],
                4.5,
                colour,
            );
            let under = if charge { 268.0 } else { low };
            let bend = [(970.0, low), (920.0, low), (910.0, under), to];
            self.bend(bend, 4.5, colour);
            self.disc(to.0, to.1, 6.0, colour, t::TEXT);
        }
        if bare {
            // Copper where the insulation is worn through.
            self.line(&[(936.0, 340.0), (974.0, 340.0)], 14.0, t::INK);
            for dy in [-3.6, 0.0, 3.6] {
                let y = 340.0 + dy;
                self.line(&[(936.0, y), (974.0, y)], 2.6, t::AMBER);
            }
            for x in [936.0, 974.0] {
                let jag = [
                    (x, 334.0),
                    (x + 3.0, 338.0),
                    (x - 2.0, 342.0),
                    (x + 1.0, 346.0),
                ];
                self.line(&jag, 2.5, red);
            }
        }
    }

    /// A screwdriver from the end of its handle along `way`.
    fn screwdriver(&self, (x, y): (f32, f32), (across, down): (f32, f32)) {
        let along = |far: f32, aside: f32| {
            (
                x + across * far - down * aside,
                y + down * far + across * aside,
            )
        };
        self.line(&[along(48.0, 0.0), along(112.0, 0.0)], 6.0, t::TEXT);
        let tip = [
            along(110.0, -5.0),
            along(110.0, 5.0),
            along(122.0, 4.0),
            along(122.0, -4.0),
        ];
        self.plate(&tip, t::TEXT, t::EDGE);
        let handle = [
            along(4.0, -10.0),
            along(0.0, -6.0),
            along(0.0, 6.0),
            along(4.0, 10.0),
            along(40.0, 10.0),
            along(52.0, 5.0),
            along(52.0, -5.0),
            along(40.0, -10.0),
        ];
        self.plate(&handle, t::WARNING.0, t::ON_AMBER);
        self.line(&[along(8.0, 0.0), along(38.0, 0.0)], 2.0, t::ON_AMBER);
    }

    fn gear(&self, state: ObjectState) {
        let glove = t::WARNING.0;
        for left in [1078.0, 1136.0] {
            for (n, high) in [8.0, 0.0, 3.0, 12.0].into_iter().enumerate() {
                let x = left + 4.0 + n as f32 * 9.5;
                self.block([x, 192.0 + high, x + 9.0, 226.0], 4.0, glove, t::ON_AMBER);
            }
            let thumb = [
                (left + 40.0, 224.0),
                (left + 49.0, 212.0),
                (left + 54.0, 218.0),
                (left + 42.0, 240.0),
            ];
            self.plate(&thumb, glove, t::ON_AMBER);
            self.block(
                [left + 3.0, 218.0, left + 43.0, 262.0],
                5.0,
                glove,
                t::ON_AMBER,
            );
            self.line(
                &[(left + 4.0, 253.0), (left + 42.0, 253.0)],
                2.0,
                t::ON_AMBER,
            );
        }
        if state == ObjectState::GlovesTorn {
            let tear = [
                (1145.0, 226.0),
                (1156.0, 231.0),
                (1152.0, 236.0),
                (1166.0, 243.0),
                (1160.0, 246.0),
                (1174.0, 250.0),
            ];
            self.line(&tear, 8.0, t::TEXT);
            self.line(&tear, 5.0, t::INK);
        }
        let glass = t::SKY.gamma_multiply(0.35);
        for x in [1088.0, 1134.0] {
            self.block([x, 269.0, x + 40.0, 295.0], 9.0, glass, t::TEXT);
        }
        self.line(&[(1127.0, 277.0), (1135.0, 277.0)], 3.0, t::TEXT);
        self.line(&[(1088.0, 276.0), (1074.0, 290.0)], 3.0, t::TEXT);
        self.line(&[(1174.0, 276.0), (1188.0, 290.0)], 3.0, t::TEXT);
        if state == ObjectState::GlassesCracked {
            let middle = (1152.0, 281.0);
            for to in [
                (1137.0, 272.0),
                (1157.0, 270.0),
                (1171.0, 277.0),
                (1166.0, 292.0),
                (1147.0, 294.0),
                (1137.0, 286.0),
            ] {
                self.line(&[middle, to], 1.8, t::TEXT);
            }
            self.disc(middle.0, middle.1, 3.0, t::INK, t::TEXT);
        }
    }
}

/// The room that a thing takes in the drawing: left, top, right, low.
const fn extent(state: ObjectState) -> [f32; 4] {
    use ObjectState as S;
    match state {
        S::PlugIn | S::PlugOut => [52.0, 136.0, 214.0, 284.0],
        S::TapsOpen | S::TapsShut => [266.0, 38.0, 408.0, 168.0],
        S::HoseConnected | S::HoseLoose => [340.0, 174.0, 506.0, 290.0],
        S::BucketOnFloor => [408.0, 324.0, 506.0, 427.0],
        S::BucketOnTop => [797.0, 8.0, 893.0, 109.0],
        S::CapacitorCovered
        | S::CapacitorUnmeasured
        | S::CapacitorDischarged
        | S::CapacitorCharged => [735.0, 145.0, 892.0, 243.0],
        S::LidDown | S::LidUp => [526.0, 12.0, 774.0, 114.0],
        S::FloorDry | S::FloorWet => [516.0, 436.0, 910.0, 492.0],
        S::BeltStill | S::BeltTurning => [530.0, 232.0, 716.0, 406.0],
        S::MeterPutAside
        | S::MeterVoltsAc
        | S::MeterVoltsDc
        | S::MeterOhms
        | S::MeterLeadInAmps
        | S::MeterLeadBare => [924.0, 104.0, 1068.0, 382.0],
        S::ScrewdriverHung => [1078.0, 56.0, 1194.0, 188.0],
        S::ScrewdriverOnBoard => [738.0, 245.0, 880.0, 283.0],
        S::ScrewdriverInBelt => [540.0, 144.0, 660.0, 231.0],
        S::GearWhole | S::GlovesTorn | S::GlassesCracked => [1071.0, 190.0, 1196.0, 298.0],
    }
}

/// Where a thing's name stands in the drawing.
fn label(state: ObjectState) -> (f32, f32, Align2) {
    use ObjectState as S;
    match state {
        S::PlugIn | S::PlugOut => (52.0, 118.0, Align2::LEFT_CENTER),
        S::TapsOpen | S::TapsShut => (262.0, 20.0, Align2::LEFT_CENTER),
        S::HoseConnected | S::HoseLoose => (504.0, 306.0, Align2::RIGHT_CENTER),
        S::BucketOnFloor => (402.0, 404.0, Align2::RIGHT_CENTER),
        S::BucketOnTop => (899.0, 92.0, Align2::LEFT_CENTER),
        S::CapacitorCovered
        | S::CapacitorUnmeasured
        | S::CapacitorDischarged
        | S::CapacitorCharged => (738.0, 130.0, Align2::LEFT_CENTER),
        S::LidDown | S::LidUp => (690.0, 60.0, Align2::CENTER_CENTER),
        S::FloorDry | S::FloorWet => (522.0, 478.0, Align2::LEFT_CENTER),
        S::BeltStill | S::BeltTurning => (534.0, 394.0, Align2::LEFT_CENTER),
        S::MeterPutAside
        | S::MeterVoltsAc
        | S::MeterVoltsDc
        | S::MeterOhms
        | S::MeterLeadInAmps
        | S::MeterLeadBare => (1068.0, 402.0, Align2::RIGHT_CENTER),
        S::ScrewdriverHung => (1194.0, 40.0, Align2::RIGHT_CENTER),
        S::ScrewdriverOnBoard => (812.0, 356.0, Align2::CENTER_CENTER),
        S::ScrewdriverInBelt => (534.0, 134.0, Align2::LEFT_CENTER),
        S::GearWhole | S::GlovesTorn | S::GlassesCracked => (1194.0, 366.0, Align2::RIGHT_CENTER),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_training::practice::drill::hazard::PlannedWork;

    /// A thing is at least this wide and high where the picture is smallest, points (WCAG 2.2, SC 2.5.8).
    const TARGET: f32 = 24.0;
    /// The narrowest picture: a tablet held upright.
    const NARROWEST: f32 = 788.0;

    #[test]
    fn no_thing_lies_on_another_and_each_can_be_hit() {
        for work in PlannedWork::ALL {
            for hazard in work.hazards() {
                let states = BenchObject::ALL.iter().map(|object| match hazard.object() {
                    wrong if wrong == *object => *hazard,
                    _ => work.sound(*object),
                });
                let states: Vec<ObjectState> = states.collect();
                for (n, state) in states.iter().enumerate() {
                    let [left, top, right, low] = extent(*state);
                    let least = (right - left).min(low - top) * NARROWEST / SIZE.x;
                    assert!(least >= TARGET, "{state}: {least}");
                    assert!(left >= 0.0 && top >= 0.0 && right <= SIZE.x && low <= SIZE.y);
                    for other in &states[n + 1..] {
                        let [l, t, r, b] = extent(*other);
                        let apart = right <= l || r <= left || low <= t || b <= top;
                        assert!(apart, "{work}: {state} lies on {other}");
                    }
                }
            }
        }
    }
}
