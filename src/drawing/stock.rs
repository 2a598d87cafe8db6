//! The order at one scale: each stick of stock with what comes out of it, waste hatched.
//!
//! Stock that is cut alike is drawn once, with how many of it there are.
use super::scene::{Anchor, Drawn, Layer, Margins, Part, Scene, Text};
use crate::design::Built;
use crate::geometry::{Point, Polygon};
use crate::ordering::{OrderLine, StickOrder, asked_length};
use crate::project::{Heart, Project};
use crate::units::{Length, UnitSystem, sort_by_number};
use crate::wording::length;

/// Edges of the sheet left and right together, px.
pub(super) const EDGES: f64 = 20.0;
/// Fewest pixels an inch is drawn at.
pub(super) const LEAST_SCALE: f64 = 0.4;
/// A row of words, and the room under a bar, px.
pub(super) const WORDS: f64 = 20.0;
pub(super) const UNDER: f64 = 6.0;
/// Width and height a letter takes, px.
const LETTER: (f64, f64) = (6.3, 14.0);

/// Stock of one length that is cut alike; spares are cut into nothing yet.
pub(super) struct Pile<'a> {
    line: &'a OrderLine,
    /// The marks out of each.
    holds: Vec<&'a [String]>,
}

impl<'a> Pile<'a> {
    /// Mark of the first stick that comes out of the first of it.
    pub(super) fn first_mark(&self) -> Option<&'a String> {
        self.holds.first().and_then(|marks| marks.first())
    }
}

/// What is cut into nothing.
const SPARE: &[String] = &[];

/// The drawing for a sheet `width_px` wide: words keep their height on it, so the rows' height follows from it.
#[must_use]
pub fn stock(project: &Project, built: &Built, width_px: f64) -> Scene {
    let order = &built.order;
    let lengths = order.lines.iter().map(|line| line.length).chain(order.unplaced.iter().map(|(_, needed)| *needed));
    let longest = lengths.chain(project.mill.lengths.iter().copied()).fold(Length::feet(2.0), Length::max);
    let scale = ((width_px - EDGES) / longest.to_inches()).max(LEAST_SCALE);
    let mut scene = Scene {
        least_scale: scale,
        most_scale: scale,
        margins: Margins { above: 18.0, below: 4.0, right: 0.0 },
        ..Scene::default()
    };
    let px = |pixels: f64| Length::inches(pixels / scale);
    let mut top = Length::ZERO - px(UNDER);
    let mut above = String::new();
    for pile in piles(&order.lines, &order.sticks) {
        let head = heading(pile.line, project.units);
        if above != head {
            above.clone_from(&head);
            top -= px(WORDS);
            words(&mut scene, top, head, None);
        }
        top -= px(WORDS);
        let says = pile_words(&pile, project.units, width_px);
        words(&mut scene, top, says, pile.first_mark());
        let height = pile.line.section.breadth.max(pile.line.section.depth);
        bar(&mut scene, project, &pile, &order.sticks, (top - px(4.0), height));
        top -= px(4.0) + height + px(UNDER);
    }
    let unplaced = order.unplaced.iter().map(|stick| (stick, "no length holds it"));
    for ((mark, needed), why) in unplaced.chain(order.lacking.iter().map(|stick| (stick, "none is left"))) {
        top -= px(WORDS);
        words(&mut scene, top, format!("{mark}: {} and {why}", length(*needed, project.units)), Some(mark));
        let outline = Polygon::rectangle(Point::new(Length::ZERO, top - px(4.0)), Point::new(*needed, top - px(16.0)));
        scene.area(Layer::Hidden, outline).of_stick(mark);
        top -= px(16.0 + UNDER);
    }
    // Behind everything, so that no line runs through wood or words.
    let mut lines = offered(project, top, scale);
    lines.append(&mut scene.parts);
    scene.parts = lines;
    scene
}

/// "4x6, free of heart, second delivery".
fn heading(line: &OrderLine, units: UnitSystem) -> String {
    let heart = if line.heart == Heart::Either { String::new() } else { format!(", {}", line.heart.name()) };
    let later = if line.delivery == 2 { ", second delivery" } else { "" };
    format!("{}{heart}{later}", line.section.label(units))
}

/// Lines of the order parted into what is cut alike, in the order's order.
pub(super) fn piles<'a>(lines: &'a [OrderLine], sticks: &[StickOrder]) -> Vec<Pile<'a>> {
    let net = |mark: &String| sticks.iter().find(|stick| stick.mark == *mark).map_or(Length::ZERO, |stick| stick.net);
    let alike = |a: &[String], b: &[String]| {
        a.len() == b.len() && a.iter().zip(b).all(|(a, b)| net(a).is_near(net(b), Length::inches(1.0 / 64.0)))
    };
    let mut piles: Vec<Pile<'a>> = Vec::new();
    for line in lines {
        let first = piles.len();
        for marks in &line.holds {
            match piles[first..].iter_mut().find(|pile| alike(pile.holds[0], marks)) {
                Some(pile) => pile.holds.push(marks),
                None => piles.push(Pile { line, holds: vec![marks] }),
            }
        }
        if line.n_spare > 0 {
            piles.push(Pile { line, holds: vec![SPARE; line.n_spare] });
        }
    }
    piles
}

/// "18 × 12′ · R1 … R18", cut to the sheet's width.
pub(super) fn pile_words(pile: &Pile<'_>, units: UnitSystem, width_px: f64) -> String {
    let each: Vec<String> = pile.holds.iter().map(|marks| marks.join(" + ")).collect();
    let count = format!("{} × {}", each.len(), asked_length(pile.line.length, units));
    if pile.holds[0].is_empty() {
        return format!("{count} · spare");
    }
    let all = format!("{count} · {}", each.join(", "));
    let ends = format!("{count} · {} … {}", each[0], each[each.len() - 1]);
    let first = format!("{count} · {}", each[0]);
    fitting([all, ends, first, count], width_px)
}

/// The first of the wordings that goes on a sheet so wide, or the last.
pub(super) fn fitting<const N: usize>(says: [String; N], width_px: f64) -> String {
    let room = ((width_px - EDGES) / LETTER.0) as usize;
    let last = says.last().cloned().unwrap_or_default();
    says.into_iter().find(|says| says.chars().count() <= room).unwrap_or(last)
}

pub(super) fn words(scene: &mut Scene, y: Length, says: String, mark: Option<&String>) {
    let at = Point::new(Length::ZERO, y);
    let part = scene.words(Text { at, says, anchor: Anchor::Start, turned: 0.0, shift: (0.0, 0.0), room: None });
    if let Some(mark) = mark {
        part.of_stick(mark);
    }
}

/// One bar: docked end, stick, docked end, the saw's cut, the next stick, and what is left over.
pub(super) fn bar(
    scene: &mut Scene,
    project: &Project,
    pile: &Pile<'_>,
    sticks: &[StickOrder],
    (top, height): (Length, Length),
) {
    let bottom = top - height;
    if pile.holds[0].is_empty() {
        scene.rectangle(Layer::Wood, (Length::ZERO, pile.line.length), (bottom, top));
        grain(scene, (Length::ZERO, pile.line.length), (bottom, top));
        return;
    }
    let mut x = Length::ZERO;
    for (index, mark) in pile.holds[0].iter().enumerate() {
        let Some(stick) = sticks.iter().find(|stick| stick.mark == *mark) else { continue };
        let docked = stick.allowance / 2.0;
        let from = x + docked;
        waste(scene, (x, from), (bottom, top));
        scene.rectangle(Layer::Wood, (from, from + stick.net), (bottom, top)).of_stick(mark);
        grain(scene, (from, from + stick.net), (bottom, top));
        name(scene, mark, (from, stick.net), (bottom, height));
        waste(scene, (from + stick.net, from + stick.net + docked), (bottom, top));
        x = from + stick.net + docked;
        if index + 1 < pile.holds[0].len() {
            waste(scene, (x, x + project.mill.kerf), (bottom, top));
            x += project.mill.kerf;
        }
    }
    waste(scene, (x, pile.line.length), (bottom, top));
}

/// A strip of waste, where it is wide enough to be seen.
fn waste(scene: &mut Scene, (from, to): (Length, Length), (bottom, top): (Length, Length)) {
    if to - from > Length::inches(1.0 / 64.0) {
        let outline = Polygon::rectangle(Point::new(from, top), Point::new(to, bottom));
        scene.add(Layer::Waste, Drawn::Hatched(outline));
    }
}

fn grain(scene: &mut Scene, (from, to): (Length, Length), (bottom, top): (Length, Length)) {
    let inset = (to - from) * 0.08;
    for share in [0.28, 0.72] {
        let y = bottom + (top - bottom) * share;
        scene.line(Layer::Fine, Point::new(from + inset, y), Point::new(to - inset, y));
    }
}

/// The mark on the wood, where both the stick and its height have room for it on the sheet.
fn name(scene: &mut Scene, mark: &str, (from, net): (Length, Length), (bottom, height): (Length, Length)) {
    let wide = mark.chars().count() as f64 * LETTER.0;
    let text = Text {
        at: Point::new(from + net / 2.0, bottom + height / 2.0),
        says: mark.to_owned(),
        anchor: Anchor::Middle,
        turned: 0.0,
        shift: (0.0, 4.5),
        room: Some(net.min(height * (wide / LETTER.1))),
    };
    scene.words(text).of_stick(mark);
}

/// The lengths the mill has, as fine lines down the sheet; each leads to its field.
fn offered(project: &Project, bottom: Length, scale: f64) -> Vec<Part> {
    let mut scene = Scene::default();
    let mut lengths: Vec<(usize, Length)> = project.mill.lengths.iter().copied().enumerate().collect();
    sort_by_number(&mut lengths, |length| -length.1.to_inches());
    let mut free = f64::INFINITY;
    for (index, offered) in lengths {
        let field = format!("mill.lengths.{index}");
        let foot = Point::new(offered, bottom);
        scene.line(Layer::Fine, Point::new(offered, Length::ZERO), foot).of_field(field.clone());
        let says = match project.units {
            UnitSystem::Imperial => asked_length(offered, project.units),
            UnitSystem::Metric => format!("{:.1} m", offered.to_metres()),
        };
        let (end, wide) = (offered.to_inches() * scale, says.chars().count() as f64 * LETTER.0);
        if end > free {
            continue;
        }
        free = end - wide - 6.0;
        let text = Text {
            at: Point::new(offered, Length::ZERO),
            says,
            anchor: Anchor::End,
            turned: 0.0,
            shift: (0.0, -5.0),
            room: None,
        };
        scene.words(text).of_field(field);
    }
    scene.parts
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::ordering::n_pieces;
    use crate::project::{Spares, demo};

    fn area_of(scene: &Scene, layer: Layer) -> f64 {
        scene
            .parts
            .iter()
            .filter(|part| part.layer == layer)
            .filter_map(|part| match &part.drawn {
                Drawn::Area(outline) | Drawn::Hatched(outline) => Some(outline.area().to_square_inches()),
                _ => None,
            })
            .sum()
    }

    /// Wood and waste of each bar make up the bar: nothing is lost, nothing lies on anything else.
    #[test]
    fn wood_and_waste_fill_the_stock() {
        let mut spared = demo::wool_barn();
        spared.buying.spares = Spares { each_section: 1, one_in: 8 };
        for project in [demo::wool_barn(), demo::log_store(), spared] {
            let built = evaluate(&project).built.unwrap();
            let scene = stock(&project, &built, 900.0);
            let piles = piles(&built.order.lines, &built.order.sticks);
            let whole: f64 = piles
                .iter()
                .map(|pile| {
                    let section = pile.line.section;
                    (section.breadth.max(section.depth) * pile.line.length).to_square_inches()
                })
                .sum();
            let drawn = area_of(&scene, Layer::Wood) + area_of(&scene, Layer::Waste);
            // Slivers under a sixty-fourth are not drawn.
            assert!((drawn - whole).abs() < 0.001 * whole, "{drawn} of {whole}");
            assert_eq!(piles.iter().map(|pile| pile.holds.len()).sum::<usize>(), n_pieces(&built.order));
        }
    }

    #[test]
    fn a_stick_no_length_holds_is_drawn_and_named() {
        let project = demo::wool_barn();
        let mut built = evaluate(&project).built.unwrap();
        std::sync::Arc::make_mut(&mut built).order.unplaced.push(("B9".to_owned(), Length::feet(30.0)));
        let scene = stock(&project, &built, 340.0);
        let named = scene.parts.iter().filter(|part| part.stick.as_deref() == Some("B9"));
        assert_eq!(named.count(), 2);
        assert!(scene.most_scale * 360.0 <= 340.0);
    }
}
