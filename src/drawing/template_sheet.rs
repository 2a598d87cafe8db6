//! A template on paper: sheets that are taped together, or one file in one piece.
use super::scene::{Anchor, Scene};
use super::template::{quarter_turned, template_scene};
use super::tiles::{Cross, OVERLAP, Paper, Tile, Tiling, bounds};
use super::true_size::{FINE, LETTER, MEDIUM, STRIP, TrueSize};
use crate::tickets::Template;
use crate::units::{Length, UnitSystem};

/// Height of a sheet's head, and of its foot with the bars, inches.
const HEAD: f64 = 0.64;
const FOOT: f64 = 0.74;
/// Left free below, so that rounding never starts an empty sheet, inches.
const SPARE: f64 = 0.02;
/// The drawing's frame stands this far inside the sheet's edge, so that its line is seen.
const INSET: f64 = 0.02;
/// Width and height of the small picture of the sheets, inches.
const PICTURE: (f64, f64) = (1.5, 0.58);
/// Arm of a register cross, inches.
const ARM: f64 = 0.16;
/// Letters of a line of notes beside the bars, and how many lines have room there.
const NOTE_LETTERS: usize = 64;
#[cfg(test)]
const NOTE_LINES: usize = 4;
/// The sentence beside the bars.
const MEASURE: &str = "measure this bar before you cut: print at 100 %";

/// A template on sheets of one paper.
pub struct TemplateSheets<'a> {
    template: &'a Template,
    paper: Paper,
    scene: Scene,
    tiling: Tiling,
    is_turned: bool,
}

impl<'a> TemplateSheets<'a> {
    /// The template as it lies on the fewest sheets, upright or turned.
    #[must_use]
    pub fn new(template: &'a Template, paper: Paper) -> Self {
        let upright = template_scene(template);
        let turned = template_scene(&quarter_turned(template));
        let (as_is, other) = (Tiling::new(&upright, frame(paper)), Tiling::new(&turned, frame(paper)));
        let is_turned = other.tiles.len() < as_is.tiles.len();
        let (scene, tiling) = if is_turned { (turned, other) } else { (upright, as_is) };
        Self { template, paper, scene, tiling, is_turned }
    }

    /// How many sheets it takes.
    #[must_use]
    pub fn count(&self) -> usize {
        self.tiling.tiles.len()
    }

    /// How it is cut into sheets.
    #[must_use]
    pub const fn tiling(&self) -> &Tiling {
        &self.tiling
    }

    /// Every sheet as an `<svg>` as large as the paper inside its margins.
    #[must_use]
    pub fn print(&self) -> Vec<String> {
        (0..self.count()).map(|index| self.sheet(index)).collect()
    }

    fn sheet(&self, index: usize) -> String {
        let tile = &self.tiling.tiles[index];
        let (width, height) = self.paper.room();
        let title = format!("{}, sheet {} of {}", self.template.name, index + 1, self.count());
        let mut sheet = TrueSize::new(self.paper.units(), (width, height - Length::inches(SPARE)), &title);
        self.head(&mut sheet, index);
        sheet.window(&self.scene, (tile.low, tile.high), (INSET, HEAD));
        self.register(&mut sheet, tile);
        let bottom = height.to_inches() - SPARE;
        foot(&mut sheet, (0.02, bottom), &self.template.notes);
        sheet.finish()
    }

    fn head(&self, sheet: &mut TrueSize, index: usize) {
        let tile = &self.tiling.tiles[index];
        let name = if self.count() > 1 { format!(" · {}", tile.name()) } else { String::new() };
        sheet.text((0.0, 0.2), 17.0, Anchor::Start, &self.template.name);
        let facts =
            format!("template, sheet {} of {}{name} · {}", index + 1, self.count(), self.template.serves_words());
        sheet.text((0.0, 0.38), LETTER, Anchor::Start, &facts);
        let turn = if self.is_turned { "; drawn lying: turn the paper a quarter to the right" } else { "" };
        sheet.text((0.0, 0.55), 11.0, Anchor::Start, &format!("{}{turn}", self.template.lies));
        if self.count() > 1 {
            self.picture(sheet, tile);
        }
    }

    /// How the sheets lie together, this one filled.
    fn picture(&self, sheet: &mut TrueSize, here: &Tile) {
        let (left, top) = (self.paper.room().0.to_inches() - INSET - PICTURE.0, INSET);
        let (rows, columns) = (self.tiling.n_rows as f64, self.tiling.n_columns as f64);
        let (wide, tall) = frame(self.paper);
        let (wide, tall) = (wide.to_inches() * columns, tall.to_inches() * rows);
        let scale = (PICTURE.0 / wide).min(PICTURE.1 / tall);
        let (w, h) = (wide * scale / columns, tall * scale / rows);
        let left = left + PICTURE.0 - wide * scale;
        for tile in &self.tiling.tiles {
            let (x, y) = (left + w * tile.column as f64, top + h * tile.row as f64);
            let class = if tile == here { "here" } else { "there" };
            sheet.outline(class, FINE, &[(x, y), (x + w, y), (x + w, y + h), (x, y + h)]);
        }
    }

    /// The sheet's own edge, the lines the neighbours' edges are laid to, and the crosses.
    fn register(&self, sheet: &mut TrueSize, tile: &Tile) {
        let (wide, tall) = ((tile.high.x - tile.low.x).to_inches(), (tile.high.y - tile.low.y).to_inches());
        let (left, right, top, bottom) = (INSET, INSET + wide, HEAD, HEAD + tall);
        let strip = OVERLAP.to_inches();
        sheet.outline("sheet-edge", FINE, &[(left, top), (right, top), (right, bottom), (left, bottom)]);
        for other in self.tiling.neighbours(tile) {
            let line = if other.row < tile.row {
                [(left, top + strip), (right, top + strip)]
            } else if other.row > tile.row {
                [(left, bottom - strip), (right, bottom - strip)]
            } else if other.column < tile.column {
                [(left + strip, top), (left + strip, bottom)]
            } else {
                [(right - strip, top), (right - strip, bottom)]
            };
            sheet.line("strip", STRIP, &line);
        }
        for cross in self.tiling.crosses(tile) {
            register_cross(sheet, tile, &cross);
        }
    }
}

/// What is left of the paper for the drawing.
fn frame(paper: Paper) -> (Length, Length) {
    let (width, height) = paper.room();
    (width - Length::inches(INSET * 2.0), height - Length::inches(HEAD + FOOT + SPARE))
}

fn register_cross(sheet: &mut TrueSize, tile: &Tile, cross: &Cross) {
    let x = (cross.at.x - tile.low.x).to_inches() + INSET;
    let y = (tile.high.y - cross.at.y).to_inches() + HEAD;
    sheet.strokes("cross", FINE, &[((x - ARM, y), (x + ARM, y)), ((x, y - ARM), (x, y + ARM))]);
    let h = ARM / 2.0;
    sheet.outline("cross line", FINE, &[(x - h, y), (x, y - h), (x + h, y), (x, y + h)]);
    sheet.text((x, y + ARM + 0.13), 11.0, Anchor::Middle, &cross.says);
}

/// Two bars of 4 in and 100 mm, the sentence, and what to know; the last line stands at `bottom`.
fn foot(sheet: &mut TrueSize, (left, bottom): (f64, f64), notes: &[String]) {
    let top = bottom - FOOT;
    bar(sheet, (left, top + 0.27), 4.0, (16, 4), "4 in");
    bar(sheet, (left, top + 0.63), 100.0 / 25.4, (10, 5), "100 mm");
    let beside = left + 4.65;
    let lines = wrapped(&notes.join(" "), NOTE_LETTERS);
    let step = 0.12;
    sheet.text((beside, top + 0.18), 12.0, Anchor::Start, MEASURE);
    for (index, line) in lines.iter().enumerate() {
        sheet.text((beside, top + 0.33 + step * index as f64), 9.5, Anchor::Start, line);
    }
}

/// A bar of that length with strokes at equal parts, a longer one at every `long`th.
fn bar(sheet: &mut TrueSize, (left, y): (f64, f64), inches: f64, (parts, long): (u32, u32), says: &str) {
    sheet.line("bar", MEDIUM, &[(left, y), (left + inches, y)]);
    let mut strokes = Vec::new();
    for part in 0..=parts {
        let x = left + inches * f64::from(part) / f64::from(parts);
        let high = if part % long == 0 { 0.15 } else { 0.08 };
        strokes.push(((x, y), (x, y - high)));
    }
    sheet.strokes("bar", FINE, &strokes);
    sheet.text((left + inches + 0.06, y), LETTER, Anchor::Start, says);
}

/// Words broken into lines of at most so many letters.
fn wrapped(text: &str, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split(' ') {
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// The whole template in one piece, in true inches or millimetres, with the bars under it.
#[must_use]
pub fn template_file(template: &Template, units: UnitSystem) -> String {
    let scene = template_scene(template);
    let (low, high) = bounds(&scene);
    let notes: Vec<String> = template.notes.iter().flat_map(|note| wrapped(note, 110)).collect();
    let (wide, tall) = ((high.x - low.x).to_inches(), (high.y - low.y).to_inches());
    let edge = 0.25;
    let below = FOOT + 0.15 * notes.len() as f64;
    let size = (wide.max(7.2) + edge * 2.0, tall + HEAD + below + edge * 2.0);
    let mut sheet = TrueSize::new(units, (Length::inches(size.0), Length::inches(size.1)), &template.name);
    sheet.text((edge, edge + 0.2), 17.0, Anchor::Start, &template.name);
    sheet.text((edge, edge + 0.38), LETTER, Anchor::Start, &format!("template · {}", template.serves_words()));
    sheet.text((edge, edge + 0.55), 11.0, Anchor::Start, &template.lies);
    sheet.window(&scene, (low, high), ((size.0 - wide) / 2.0, edge + HEAD));
    let bottom = size.1 - edge - 0.15 * notes.len() as f64;
    foot(&mut sheet, (edge, bottom), &[]);
    for (index, note) in notes.iter().enumerate() {
        sheet.text((edge, bottom + 0.1 + 0.15 * index as f64), 11.0, Anchor::Start, note);
    }
    sheet.finish()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::{Project, ScarfKind, demo};
    use crate::tickets::templates;

    fn of(project: &Project) -> Vec<Template> {
        templates(project, &evaluate(project).built.unwrap().shape)
    }

    /// In feet and inches and in millimetres, with the scarf that has most to say and legs that make two hands.
    #[test]
    fn notes_have_room_beside_the_bars() {
        let mut project = demo::wool_barn();
        project.frame.scarfs.kind = ScarfKind::StopSplayedTabled;
        project.frame.brace_along = Length::inches(30.0 + 3.0 / 16.0);
        let mut metric = project.clone();
        metric.units = UnitSystem::Metric;
        for template in [project, metric].iter().flat_map(of) {
            let lines = wrapped(&template.notes.join(" "), NOTE_LETTERS);
            assert!(lines.len() <= NOTE_LINES, "{}: {lines:?}", template.key);
        }
    }

    #[test]
    fn words_are_wrapped_and_none_is_lost() {
        assert_eq!(wrapped("measure down to the foot", 12), ["measure down", "to the foot"]);
        assert_eq!(wrapped("undercutting it", 5), ["undercutting", "it"]);
    }

    /// The barn's beam seat with its tail is 13.8 in long: two sheets side by side, each drawn from its own corner.
    #[test]
    fn a_sheet_says_which_it_is() {
        let all = of(&demo::wool_barn());
        let template = all.iter().find(|one| one.key == "rafter-beam-end").unwrap();
        let sheets = TemplateSheets::new(template, Paper::Letter).print();
        assert_eq!(sheets.len(), 2);
        for (sheet, says) in
            sheets.iter().zip(["sheet 1 of 2 · A1 · serves R1–R18", "sheet 2 of 2 · A2 · serves R1–R18"])
        {
            assert!(sheet.contains(says), "{says}");
            assert_eq!(sheet.matches("A1 + A2").count(), 2);
        }
    }
}
