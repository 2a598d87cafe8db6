//! What the rafters' spacing does to their number, their weight and the price of the order.
use crate::lay_out;
use crate::project::Project;
use crate::tickets::Role;
use crate::units::{Length, Money, UnitSystem, Weight, sort_by_number};

/// The frame at one spacing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpacingPoint {
    /// Centre to centre.
    pub spacing: Length,
    /// How many rafters.
    pub n_rafters: usize,
    /// Green weight of all rafters as they hang, cut.
    pub rafter_weight: Weight,
    /// Price of the whole order.
    pub order_price: Money,
    /// It is the project's own spacing.
    pub is_own: bool,
}

/// The project at spacings from close to wide, its own among them; spacings it cannot be built with are left out.
///
/// Every point is a whole evaluation: the beam's scarfs and the purlins move with the rafters, so the price may jump.
#[must_use]
pub fn spacing_study(project: &Project) -> Vec<SpacingPoint> {
    let own = project.frame.rafters.spacing;
    let mut spacings = steps(project.units);
    spacings.retain(|spacing| !spacing.is_near(own, Length::inches(0.01)));
    spacings.push(own);
    sort_by_number(&mut spacings, |spacing| spacing.to_inches());
    spacings.into_iter().filter_map(|spacing| point(project, spacing, spacing == own)).collect()
}

/// 12 to 36 in by 2, or 300 to 900 mm by 50.
pub(super) fn steps(units: UnitSystem) -> Vec<Length> {
    (0..=12)
        .map(|step| match units {
            UnitSystem::Imperial => Length::inches(12.0 + 2.0 * f64::from(step)),
            UnitSystem::Metric => Length::millimetres(300.0 + 50.0 * f64::from(step)),
        })
        .collect()
}

fn point(project: &Project, spacing: Length, is_own: bool) -> Option<SpacingPoint> {
    let mut tried = project.clone();
    tried.frame.rafters.spacing = spacing;
    let built = lay_out(&tried).built?;
    let rafters = built.sticks.iter().filter(|stick| stick.role == Role::Rafter);
    Some(SpacingPoint {
        spacing,
        n_rafters: rafters.clone().count(),
        rafter_weight: rafters.map(|stick| stick.green_weight).sum(),
        order_price: built.order.price,
        is_own,
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::project::demo;

    /// A row of n bays of s between the outer rafters' centres has n + 1 rafters: for the 34 ft beam of
    /// the wool barn, rafters 4 in broad flush with its ends, 404 in from the first centre to the last.
    #[test]
    fn each_spacing_has_its_rafters() {
        let project = demo::wool_barn();
        let points = spacing_study(&project);
        assert!(points.len() > 8, "{}", points.len());
        let alone = lay_out(&project).built.unwrap();
        let one = alone.stick("R1").unwrap().green_weight;
        for point in &points {
            let bays = (404.0 / point.spacing.to_inches() - 1e-9).ceil() as usize;
            assert_eq!(point.n_rafters, bays + 1, "{:?}", point.spacing);
            let sum = one * point.n_rafters as f64;
            assert!((point.rafter_weight.to_pounds() - sum.to_pounds()).abs() < 1e-6);
        }
        assert!(points.windows(2).all(|pair| pair[0].spacing < pair[1].spacing));
    }

    #[test]
    fn the_own_spacing_is_the_project_itself() {
        for mut project in [demo::wool_barn(), demo::log_store()] {
            for spacing in [project.frame.rafters.spacing, Length::inches(19.2)] {
                project.frame.rafters.spacing = spacing;
                let Some(built) = lay_out(&project).built else { continue };
                let points = spacing_study(&project);
                let own: Vec<_> = points.iter().filter(|point| point.is_own).collect();
                assert_eq!(own.len(), 1);
                assert_eq!(own[0].order_price, built.order.price);
                assert_eq!(own[0].n_rafters, built.shape.rafters.len());
            }
        }
    }
}
