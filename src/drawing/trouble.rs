//! Where joints are in each other's way, marked on the beam line.
use super::elevation::elevation;
use super::scene::{Anchor, Drawn, Layer, Scene, Text};
use crate::design::Built;
use crate::geometry::Point;
use crate::joinery::Clash;
use crate::project::Project;
use crate::units::Length;

/// The beam line with a cross and a number at every place in the list.
#[must_use]
pub fn trouble_elevation(project: &Project, built: &Built, clashes: &[Clash]) -> Scene {
    let mut scene = elevation(project, built);
    scene.parts.retain(|part| !matches!(part.drawn, Drawn::Dimension(_)));
    for (index, clash) in clashes.iter().enumerate() {
        cross(&mut scene, clash, index + 1);
    }
    scene
}

fn cross(scene: &mut Scene, clash: &Clash, number: usize) {
    let arm = Length::inches(4.0);
    for (stick, at) in clash.places() {
        let at = Point::inches(at.x, at.z);
        for sign in [1.0, -1.0] {
            let (from, to) = (at.moved(-arm, -(arm * sign)), at.moved(arm, arm * sign));
            scene.line(Layer::Trouble, from, to).of_stick(stick);
        }
        let says = format!("{number}");
        let text = Text { at, says, anchor: Anchor::Start, turned: 0.0, shift: (8.0, -8.0), room: None };
        scene.add(Layer::Trouble, Drawn::Text(text)).of_stick(stick);
    }
}
