//! The sticks of the sawyer's pile at one scale, with what comes out of each, what is left, and what is missing of sections
//! that lie there.
use super::scene::{Layer, Margins, Scene};
use super::stock::{EDGES, LEAST_SCALE, UNDER, WORDS, bar, fitting, pile_words, piles, words};
use crate::design::Built;
use crate::geometry::{Point, Polygon};
use crate::materials::Section;
use crate::ordering::{Missing, OrderLine, PileAnswer, asked_length};
use crate::project::{Heart, Lot, Project};
use crate::units::{Length, Money, Volume, Weight};
use crate::wording::length;

/// The drawing for a sheet `width_px` wide: words keep their height on it, so the rows' height follows from it.
#[must_use]
pub fn pile(project: &Project, built: &Built, answer: &PileAnswer, width_px: f64) -> Scene {
    let lengths = project.yard.iter().map(|lot| lot.length).chain(answer.short().map(|stick| stick.needed));
    let longest = lengths.fold(Length::feet(2.0), Length::max);
    let scale = ((width_px - EDGES) / longest.to_inches()).max(LEAST_SCALE);
    let scene = Scene {
        least_scale: scale,
        most_scale: scale,
        margins: Margins { above: 4.0, below: 4.0, right: 0.0 },
        ..Scene::default()
    };
    let mut sheet = Sheet { scene, top: Length::ZERO, scale, width_px };
    for (place, lot) in project.yard.iter().enumerate() {
        sheet.begun(project, built, &line(lot, place, answer));
        if let Some((_, left)) = answer.unused.iter().find(|(of, _)| *of == place) {
            let says = [
                format!(
                    "{left} × {} × {} not needed",
                    lot.section.label(project.units),
                    asked_length(lot.length, project.units)
                ),
                format!("{left} not needed"),
            ];
            sheet.row(fitting(says, width_px), None);
            sheet.outline(Layer::Wood, lot.length, lot.section);
        }
    }
    for alike in gathered(answer.short()) {
        let first = alike[0];
        let marks: Vec<&str> = alike.iter().map(|stick| stick.mark.as_str()).collect();
        let count = format!("{} × {} missing", alike.len(), length(first.needed, project.units));
        let section = first.section.label(project.units);
        let says = [format!("{section}: {count} · {}", marks.join(", ")), format!("{section}: {count}"), count];
        sheet.row(fitting(says, width_px), Some(&first.mark));
        sheet.outline(Layer::Hidden, first.needed, first.section);
    }
    sheet.scene
}

/// A lot's begun sticks as a line of an order.
fn line(lot: &Lot, place: usize, answer: &PileAnswer) -> OrderLine {
    let holds: Vec<Vec<String>> =
        answer.bars.iter().filter(|bar| bar.lot == place).map(|bar| bar.sticks.clone()).collect();
    OrderLine {
        section: lot.section,
        heart: Heart::Either,
        delivery: 1,
        length: lot.length,
        count: holds.len(),
        n_spare: 0,
        before: 0,
        holds,
        words: Vec::new(),
        volume: Volume::ZERO,
        weight: Weight::ZERO,
        price: Money::ZERO,
    }
}

/// Missing sticks of one section and length together.
fn gathered<'a>(missing: impl Iterator<Item = &'a Missing>) -> Vec<Vec<&'a Missing>> {
    let mut all: Vec<Vec<&Missing>> = Vec::new();
    for stick in missing {
        let is_like = |known: &Missing| {
            known.section == stick.section && known.needed.is_near(stick.needed, Length::inches(1.0 / 64.0))
        };
        match all.iter_mut().find(|group| is_like(group[0])) {
            Some(group) => group.push(stick),
            None => all.push(vec![stick]),
        }
    }
    all
}

struct Sheet {
    scene: Scene,
    top: Length,
    scale: f64,
    width_px: f64,
}

impl Sheet {
    fn px(&self, pixels: f64) -> Length {
        Length::inches(pixels / self.scale)
    }

    fn row(&mut self, says: String, mark: Option<&String>) {
        self.top -= self.px(WORDS);
        words(&mut self.scene, self.top, says, mark);
    }

    fn begun(&mut self, project: &Project, built: &Built, line: &OrderLine) {
        for cut in piles(std::slice::from_ref(line), &built.order.sticks) {
            let section = line.section.label(project.units);
            let says = pile_words(&cut, project.units, self.width_px - section.chars().count() as f64 * 8.0);
            self.row(format!("{section}: {says}"), cut.first_mark());
            let height = line.section.breadth.max(line.section.depth);
            let top = self.top - self.px(4.0);
            bar(&mut self.scene, project, &cut, &built.order.sticks, (top, height));
            self.top = top - height - self.px(UNDER);
        }
    }

    /// A stick with nothing in it.
    fn outline(&mut self, layer: Layer, long: Length, section: Section) {
        let (top, height) = (self.top - self.px(4.0), section.breadth.max(section.depth));
        let outline = Polygon::rectangle(Point::new(Length::ZERO, top), Point::new(long, top - height));
        self.scene.area(layer, outline);
        self.top = top - height - self.px(UNDER);
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::drawing::Drawn;
    use crate::lay_out;
    use crate::ordering::from_yard;
    use crate::project::demo;

    /// Every stick that comes out is drawn, and every one that is missing is named where its section lies there.
    #[test]
    fn every_stick_is_drawn_or_named() {
        let project = demo::wool_barn();
        let built = lay_out(&project).built.unwrap();
        let answer = from_yard(&project, &built.order.sticks);
        assert!(!answer.bars.is_empty() && !answer.missing.is_empty());
        let scene = pile(&project, &built, &answer, 2400.0);
        let wood: Vec<&str> = scene
            .parts
            .iter()
            .filter(|part| part.layer == Layer::Wood && matches!(part.drawn, Drawn::Area(_)))
            .filter_map(|part| part.stick.as_deref())
            .collect();
        let said = format!("{:?}", scene.parts);
        for bar in &answer.bars {
            assert!(bar.sticks.iter().all(|mark| said.contains(mark.as_str())));
        }
        assert!(!wood.is_empty() && wood.len() <= answer.bars.iter().map(|bar| bar.sticks.len()).sum());
        let named = gathered(answer.short());
        assert_eq!(named.iter().map(Vec::len).sum::<usize>(), answer.short().count());
        assert!(answer.short().all(|stick| said.contains(&stick.mark)));
        assert!(
            answer
                .missing
                .iter()
                .all(|stick| stick.longest.is_some() || !said.contains(&format!("\"{}\"", stick.mark)))
        );
    }
}
