//! The way of a force through the lean-to: the section, faint, and over it the links that take it, one after the other.
use super::chain::{APART, Chain, ChainLink, ChainRow, LinkState, OFF};
use super::load::bare;
use super::scene::{Anchor, Drawn, Layer, Margins, Scene};
use super::section::{WALL, lowest, section};
use crate::checks::{LinkPlace, LoadPath, Way};
use crate::design::Built;
use crate::geometry::Point;
use crate::project::Project;
use crate::units::Length;

/// Where on the run, from the wall, the force is taken up: there is room over the roof for what is said.
const TAKEN_UP: f64 = 0.45;
/// What carries the roof to the discs beside it, px.
const BESIDE: f64 = 30.0;
/// The wall over the roof gives at least that much room for discs, px an inch.
const LEAST_SCALE: f64 = 1.2;

/// The chain of a path over the section at the first post. `key` names the path: a tap on a link leads to `key.link`.
#[must_use]
pub fn load_way(project: &Project, built: &Built, path: &LoadPath, key: &str) -> Scene {
    let mut scene = bare(section(project, built));
    scene.parts.retain(|part| part.layer != Layer::Room);
    for part in &mut scene.parts {
        part.layer = Layer::Faint;
        part.stick = None;
        if let Drawn::Hatched(outline) = &part.drawn {
            part.drawn = Drawn::Area(outline.clone());
        }
    }
    let to_wall = path.links.iter().any(|link| link.place == LinkPlace::Wall);
    let draw = Draw::new(project, built, to_wall);
    let over = path.links.iter().filter(|link| link.place.is_over_rafters()).count();
    let mut links = links(path, key, &draw);
    let beside = links.split_off(over.min(links.len()));
    let at_screw = draw.place(LinkPlace::SheetScrew);
    let tall = OFF + APART * over as f64 - (highest(&scene) - at_screw.y).to_inches() * LEAST_SCALE;
    // The links at the ground lie close together: their discs hang down, one under the other.
    let at_ground = path.links.iter().filter(|link| link.place.is_at_ground()).count();
    let below = APART * at_ground.max(1) as f64;
    scene.margins = Margins { above: tall.max(0.0), below, right: 0.0 };
    let (at, right, anchor) = if to_wall {
        (draw.beside_ledger(), BESIDE, Anchor::Start)
    } else {
        (Point::new(draw.post.0, built.shape.line.beam_seat), -BESIDE, Anchor::End)
    };
    scene.chain = Some(Chain {
        rows: [
            ChainRow {
                at: draw.place(LinkPlace::SheetScrew),
                right: BESIDE,
                is_above: true,
                anchor: Anchor::Start,
                links,
            },
            ChainRow { at, right, is_above: false, anchor, links: beside },
        ],
        along: (draw.on_rafter(Length::ZERO), draw.on_rafter(project.frame.reach)),
        is_back: path.way == Way::Up,
    });
    scene
}

/// Top of all that is drawn.
fn highest(scene: &Scene) -> Length {
    let tops = scene.parts.iter().filter_map(|part| match &part.drawn {
        Drawn::Area(outline) => Some(outline.bounds().1.y),
        _ => None,
    });
    tops.fold(Length::ZERO, Length::max)
}

fn links(path: &LoadPath, key: &str, draw: &Draw) -> Vec<ChainLink> {
    let weakest = path.weakest().map(|link| link.name);
    let mut all = Vec::new();
    for (index, link) in path.links.iter().enumerate() {
        let figure = link.figure();
        let state = match link.ratio {
            None => LinkState::Open,
            Some(_) if weakest == Some(link.name) => LinkState::Weakest,
            Some(_) => LinkState::Judged,
        };
        all.push(ChainLink {
            number: index + 1,
            at: draw.place(link.place),
            says: format!("{} {figure}", link.name),
            figure,
            state,
            key: format!("{key}.{index}"),
        });
    }
    all
}

/// Where things are in the section.
struct Draw<'a> {
    project: &'a Project,
    built: &'a Built,
    /// The purlin that is followed, and the next one up the roof, from the wall.
    purlin: (Length, Length),
    /// Lower left and upper right of the ledger, and of the beam.
    ledger: (Point, Point),
    beam: (Point, Point),
    /// A place on the rafter between that purlin and what carries it.
    rafter: Length,
    /// The faces of the post.
    post: (Length, Length),
}

impl<'a> Draw<'a> {
    fn new(project: &'a Project, built: &'a Built, to_wall: bool) -> Self {
        let (frame, line, rafter) = (&project.frame, &built.shape.line, &built.shape.rafter);
        let timbers = &frame.timbers;
        let breadth = timbers.purlin.sawn.breadth;
        let middle = |row: &crate::geometry::PurlinRow| {
            rafter.place(line, Point::new(rafter.tail.0.x - row.from_tail - breadth / 2.0, Length::ZERO)).x
        };
        let wanted = line.ledger_heel + (line.beam_heel - line.ledger_heel) * TAKEN_UP;
        let mut rows: Vec<Length> = built.shape.purlins.iter().map(middle).collect();
        crate::units::sort_lengths(&mut rows);
        let near = rows.iter().copied().reduce(|a, b| if (b - wanted).abs() < (a - wanted).abs() { b } else { a });
        let near = near.unwrap_or(wanted);
        let next = rows.iter().rev().copied().find(|row| *row < near).unwrap_or(near);
        let end = if to_wall { line.ledger_heel } else { line.beam_heel };
        let (seat, beam) = (line.ledger_seat, timbers.beam.sawn);
        Self {
            project,
            built,
            purlin: (near, next),
            rafter: near + (end - near) * 0.6,
            ledger: (
                Point::new(frame.ledger_packing, seat - timbers.ledger.sawn.depth),
                Point::new(line.ledger_heel, seat),
            ),
            beam: (
                Point::new(frame.reach - beam.breadth, line.beam_seat - beam.depth),
                Point::new(frame.reach, line.beam_seat),
            ),
            post: (frame.reach - timbers.post.sawn.depth, frame.reach),
        }
    }

    /// Over the rafter's top edge at `y` from the wall, square to the slope; under it where that is less than nothing.
    fn over(&self, y: Length, high: Length) -> Point {
        let line = &self.built.shape.line;
        Point::new(y, line.top_edge(y) + high / line.pitch.cos())
    }

    /// In the middle of the rafter's depth.
    fn on_rafter(&self, y: Length) -> Point {
        self.over(y, -self.project.frame.timbers.rafter.sawn.depth / 2.0)
    }

    /// Below the ledger's face, where the rafter leaves room for words out to the purlin.
    fn beside_ledger(&self) -> Point {
        let depth = self.project.frame.timbers.rafter.sawn.depth;
        Point::new(self.ledger.1.x, self.over(self.purlin.0, -depth).y.min(self.ledger.1.y))
    }

    fn place(&self, place: LinkPlace) -> Point {
        let (near, next) = self.purlin;
        let purlin = self.project.frame.timbers.purlin.sawn.depth;
        let rib = self.project.roofing.rib;
        let ((ledger, ledger_top), (beam, beam_top)) = (self.ledger, self.beam);
        let half = |a: Length, b: Length| (a + b) / 2.0;
        let post = half(self.post.0, self.post.1);
        let (foot, head) =
            self.built.shape.posts.first().map_or((beam.y, beam.y), |first| (first.foot, first.shoulder));
        match place {
            LinkPlace::Sheet => self.over(half(near, next), purlin + rib / 2.0),
            LinkPlace::SheetScrew => self.over(near, purlin + rib),
            LinkPlace::Purlin => self.over(near, purlin / 2.0),
            LinkPlace::PurlinScrew => self.over(near, Length::ZERO),
            LinkPlace::Rafter => self.on_rafter(self.rafter),
            LinkPlace::AtBeam => Point::new(half(beam.x, beam_top.x), beam_top.y),
            LinkPlace::Beam => Point::new(half(beam.x, beam_top.x), half(beam.y, beam_top.y)),
            LinkPlace::Scarf => Point::new(beam.x, half(beam.y, beam_top.y)),
            LinkPlace::PostTop => Point::new(post, head),
            LinkPlace::Post => Point::new(post, half(foot, head)),
            LinkPlace::PostFoot => Point::new(post, foot),
            LinkPlace::PierTop => Point::new(post, foot - self.project.frame.stand_off),
            LinkPlace::PierFoot => Point::new(post, half(foot, half(foot, lowest(self.built)))),
            LinkPlace::Footing => Point::new(post, half(foot, lowest(self.built))),
            LinkPlace::AtLedger => Point::new(half(ledger.x, ledger_top.x), ledger_top.y),
            LinkPlace::Ledger => Point::new(half(ledger.x, ledger_top.x), half(ledger.y, ledger_top.y)),
            LinkPlace::LedgerFixing => Point::new(Length::ZERO, half(ledger.y, ledger_top.y)),
            LinkPlace::Wall => Point::new(-WALL / 2.0, ledger.y),
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::drawing::svg;
    use crate::evaluate;
    use crate::project::demo;

    fn number(part: &str, name: &str) -> f64 {
        let rest = part.split(&format!(" {name}=\"")).nth(1).unwrap();
        rest.split('"').next().unwrap().parse().unwrap()
    }

    /// On a phone and on paper, of a low and a high lean-to: every link is there with its number and its figure, no two discs
    /// touch (10 px each and its ring), and all lie on the sheet.
    #[test]
    fn every_link_has_a_disc_of_its_own() {
        let mut low = demo::log_store();
        low.frame.heights.ledger_seat -= Length::inches(30.0);
        low.frame.heights.beam_seat -= Length::inches(30.0);
        for project in [demo::wool_barn(), demo::log_store(), low] {
            let design = evaluate(&project);
            let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
            for path in &strength.paths {
                for width in [308.0, 640.0] {
                    let drawn = svg::print(&load_way(&project, &built, path, "0"), width, "way");
                    let height = number(&drawn, "height");
                    let discs: Vec<(f64, f64)> = drawn
                        .split("<circle class=\"way__disc\"")
                        .skip(1)
                        .map(|part| (number(part, "cx"), number(part, "cy")))
                        .collect();
                    assert_eq!(discs.len(), path.links.len());
                    for (index, (x, y)) in discs.iter().enumerate() {
                        assert!(
                            *x > 12.0 && *x < width - 12.0 && *y > 12.0 && *y < height - 12.0,
                            "{}: {x} {y}",
                            path.name
                        );
                        for (u, v) in &discs[..index] {
                            assert!((x - u).hypot(y - v) > 24.0, "{}: {discs:?}", path.name);
                        }
                    }
                    for link in &path.links {
                        assert!(drawn.contains(&format!("{}</text>", link.figure())), "{link:?}");
                        assert!(link.ratio.is_some() || drawn.contains(&format!("{} ?</text>", link.name)), "{link:?}");
                    }
                }
            }
        }
    }

    /// Shares set by hand: the most is called the weakest in words, a link that is not known is open, and the lift's arrows
    /// end where the weight's begin.
    #[test]
    fn the_weakest_is_named_and_the_lift_pulls_back() {
        let project = demo::wool_barn();
        let design = evaluate(&project);
        let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
        for path in &strength.paths {
            let mut path = path.clone();
            for link in &mut path.links {
                link.ratio = Some(0.5);
            }
            path.links[1].ratio = Some(1.25);
            path.links[2].ratio = None;
            let scene = load_way(&project, &built, &path, "3");
            let chain = scene.chain.clone().unwrap();
            assert_eq!(chain.is_back, path.way == Way::Up);
            let states: Vec<LinkState> = chain.rows.iter().flat_map(|row| &row.links).map(|link| link.state).collect();
            assert_eq!(states[..3], [LinkState::Judged, LinkState::Weakest, LinkState::Open]);
            let drawn = svg::print(&scene, 640.0, "way");
            assert!(drawn.contains(&format!("weakest: {} \u{2715} 125 %", path.links[1].name)), "{drawn}");
            assert!(drawn.contains("data-link=\"3.1\"") && drawn.matches("way__link--open").count() == 1);
        }
    }
}
