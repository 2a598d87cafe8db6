//! A load on its bed, from the side and to scale: the front at the left, the way it drives.
use super::scene::{Anchor, Drawn, Layer, Margins, Scene, Side, Text};
use crate::geometry::{Point, Polygon};
use crate::ordering::asked_length;
use crate::ordering::hauling::{BEARER, Laid, Load, about};
use crate::project::{HAIR, Project};
use crate::units::{Length, sort_by_number};

/// Thickness of the bed, its height over the road, a wheel: what is common, only to be drawn.
const BED: Length = Length::inches(5.0);
const ROAD: Length = Length::inches(31.0);
const WHEEL: Length = Length::inches(25.0);
/// Width and height of a letter, as a share of each other.
const LETTER: f64 = 0.5;

/// The drawing of one load.
#[must_use]
pub fn hauled(project: &Project, load: &Load) -> Scene {
    let mut scene = Scene { margins: Margins { above: 22.0, below: 0.0, right: 0.0 }, ..Scene::default() };
    vehicle(&mut scene, project);
    for (layer, (under, top)) in load.layers.iter().enumerate() {
        let of_layer: Vec<&Laid> = load.pieces.iter().filter(|one| one.layer == layer).collect();
        if layer > 0 {
            bearers(&mut scene, &of_layer, *under);
        }
        one_layer(&mut scene, project, of_layer, (*under, *top));
    }
    flag(&mut scene, load);
    middle(&mut scene, project, load);
    measures(&mut scene, project, load);
    scene
}

fn vehicle(scene: &mut Scene, project: &Project) {
    let truck = &project.truck;
    let (bed, low) = (truck.bed, -ROAD);
    let nose = if truck.is_trailer { truck.coupling_to_bed } else { Length::inches(36.0) };
    let back = bed + truck.overhang;
    scene.line(Layer::Ground, Point::new(-nose, low), Point::new(back, low));
    scene.rectangle(Layer::Metal, (Length::ZERO, bed), (-BED, Length::ZERO));
    scene.line(Layer::Metal, Point::new(Length::ZERO, Length::ZERO), Point::new(Length::ZERO, Length::inches(14.0)));
    let draw = if truck.is_trailer { -BED } else { Length::inches(12.0) };
    scene.line(Layer::Metal, Point::new(-nose, draw), Point::new(Length::ZERO, draw));
    let axle = Point::new(truck.bed_to_axle, low + WHEEL / 2.0);
    scene.add(Layer::Pier, Drawn::Hole(axle, WHEEL)).of_field("truck.bed_to_axle");
    scene.add(Layer::Pier, Drawn::Hole(axle, WHEEL / 3.0));
}

/// Bearers a fifth in from the ends of what all sticks over them have in common (common practice).
fn bearers(scene: &mut Scene, over: &[&Laid], top: Length) {
    let front = over.iter().map(|one| one.behind).reduce(Length::max).unwrap_or_default();
    let back = over.iter().map(|one| one.end()).reduce(Length::min).unwrap_or_default();
    for share in [0.2, 0.8] {
        let x = front + (back - front) * share;
        scene.rectangle(Layer::EndGrain, (x - BEARER, x + BEARER), (top - BEARER, top));
    }
}

/// The sticks of a layer, the longest farthest off.
fn one_layer(scene: &mut Scene, project: &Project, mut of: Vec<&Laid>, (under, top): (Length, Length)) {
    sort_by_number(&mut of, |one| -one.cargo.length.to_inches());
    for one in &of {
        let part = scene.rectangle(Layer::Wood, (one.behind, one.end()), (under, top));
        if let Some(mark) = one.cargo.marks.first() {
            part.of_stick(mark);
        }
    }
    let Some(near) = of.last() else { return };
    let units = project.units;
    let says = format!("{} of {}", of.len(), near.cargo.section.label(units));
    // The words want this much of the layer's height at their own size; else they are in the list.
    let room = (top - under).min(near.cargo.length * (LETTER / says.chars().count().max(1) as f64));
    scene.words(Text {
        at: Point::new(near.behind + near.cargo.length / 2.0, (under + top) / 2.0),
        says,
        anchor: Anchor::Middle,
        turned: 0.0,
        shift: (0.0, 4.5),
        room: Some(room),
    });
}

/// The flag at the end that stands out farthest.
fn flag(scene: &mut Scene, load: &Load) {
    let Some(longest) = load
        .pieces
        .iter()
        .filter(|one| one.stands_out > Length::ZERO)
        .max_by(|a, b| a.stands_out.to_inches().total_cmp(&b.stands_out.to_inches()))
    else {
        return;
    };
    let top = load.layers.get(longest.layer).map_or(Length::ZERO, |(_, top)| *top);
    let (x, size) = (longest.end(), Length::inches(9.0));
    scene.area(
        Layer::Trouble,
        Polygon::new(vec![Point::new(x, top), Point::new(x, top - size), Point::new(x + size, top - size / 2.0)]),
    );
}

/// The middle of the load, and between which places a trailer wants it.
fn middle(scene: &mut Scene, project: &Project, load: &Load) {
    let (x, over) = (load.balance.middle, load.height() + Length::inches(6.0));
    scene.line(Layer::Travel, Point::new(x, over), Point::new(x, -BED));
    scene.words(Text {
        at: Point::new(x, over),
        says: format!("middle {} back", about(project, x)),
        anchor: Anchor::Middle,
        turned: 0.0,
        shift: (0.0, -5.0),
        room: None,
    });
    if let Some((near, far)) = load.balance.wanted {
        let low = -BED - Length::inches(5.0);
        scene.rectangle(Layer::Room, (near, far), (low, load.height() + Length::inches(3.0)));
    }
}

fn measures(scene: &mut Scene, project: &Project, load: &Load) {
    let (truck, units) = (&project.truck, project.units);
    let at = |x: Length| Point::new(x, -ROAD);
    let long = truck.bed + load.stands_out();
    let behind = load.balance.behind;
    if behind > HAIR {
        // Often too short for its words: they stand before the headboard.
        let top = |x: Length| Point::new(x, load.height() + Length::inches(14.0));
        scene.dimension(Side::Above, 0, top(Length::ZERO), top(behind), String::new());
        scene.words(Text {
            at: top(Length::ZERO),
            says: about(project, behind),
            anchor: Anchor::End,
            turned: 0.0,
            shift: (-6.0, -10.0),
            room: None,
        });
    }
    scene
        .dimension(Side::Below, 0, at(Length::ZERO), at(truck.bed), format!("bed {}", asked_length(truck.bed, units)))
        .of_field("truck.bed");
    if long > truck.bed {
        scene
            .dimension(
                Side::Below,
                0,
                at(truck.bed),
                at(long),
                format!("out {}", asked_length(long - truck.bed, units)),
            )
            .of_field("truck.overhang");
    }
    if truck.is_trailer {
        let to_axle = format!("axles {}", asked_length(truck.bed_to_axle, units));
        scene.dimension(Side::Below, 1, at(Length::ZERO), at(truck.bed_to_axle), to_axle).of_field("truck.bed_to_axle");
        scene
            .dimension(
                Side::Below,
                1,
                at(-truck.coupling_to_bed),
                at(Length::ZERO),
                asked_length(truck.coupling_to_bed, units),
            )
            .of_field("truck.coupling_to_bed");
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::lay_out;
    use crate::ordering::hauling::haul;
    use crate::project::demo;

    /// Every stick of a load is drawn, at its own length, and nothing is drawn below the bed or through another layer.
    #[test]
    fn every_stick_lies_on_the_bed() {
        for project in [demo::wool_barn(), demo::log_store()] {
            let built = lay_out(&project).built.unwrap();
            for load in haul(&project, &built, &built.order.lines).loads {
                let scene = hauled(&project, &load);
                let wood: Vec<(Point, Point)> = scene
                    .parts
                    .iter()
                    .filter(|part| part.layer == Layer::Wood)
                    .filter_map(|part| match &part.drawn {
                        Drawn::Area(outline) => Some(outline.bounds()),
                        _ => None,
                    })
                    .collect();
                assert_eq!(wood.len(), load.pieces.len());
                let drawn: f64 = wood.iter().map(|(low, high)| (high.x - low.x).to_inches()).sum();
                let loaded: f64 = load.pieces.iter().map(|one| one.cargo.length.to_inches()).sum();
                assert!((drawn - loaded).abs() < 1e-6 && wood.iter().all(|(low, _)| !low.y.is_negative()));
            }
        }
    }
}
