//! Bolts at a scarf's roots, worked out for what no maker states: through both halves, upright, in one row along the beam.
//!
//! ```text
//!    upper piece  ____________________      a row of bolts at each root, the first one `end` in from the
//!                 ____|__|____________        butting end of the half that is thin there; washers above and below
//!    lower lap        |__|____|__|____|
//! ```
use super::brace_pegs::MOST_DURATION;
use super::known::{gravity, moisture};
use super::wood::Woods;
use crate::fastening::{
    Direction, EndLoad, Factors, Fastener, GroupMember, GroupRow, Member, PegRow, Placing, RowLayout, RowSpacing,
    adjusted_lateral, geometry_factor, group_factor, row_tear_out, single_shear, steel_tension, washer_area,
    wet_lateral,
};
use crate::geometry::lap_height;
use crate::loads::Duration;
use crate::materials::species;
use crate::members::{Property, Seat, adjusted, bearing_across_strength};
use crate::project::{BoreWay, Bores, Project, ScarfKind, Tie, Used};
use crate::units::{Angle, Area, Force, Length};
use crate::unmade::Unmade;
use crate::working::Worked;

/// Washers of timber bolts are about this many diameters across (common practice).
const WASHER: f64 = 4.0;

/// Bolts of one size at each root.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScarfBolts<'a> {
    /// The bolt.
    pub bolt: &'a Fastener,
    /// How many at each root.
    pub count: usize,
    /// Lengths are rounded up to this.
    pub step: Length,
}

impl ScarfBolts<'_> {
    /// Across the washers.
    #[must_use]
    pub fn washer(&self) -> Length {
        (self.bolt.diameter * WASHER).round_up_to(self.step)
    }

    fn bores(&self, toward: EndLoad) -> Bores {
        let first = self.bolt.diameter * toward.full();
        Bores {
            diameter: self.bolt.hole(),
            first: first.round_up_to(self.step),
            apart: (self.bolt.diameter * 4.0).round_up_to(self.step),
            way: BoreWay::AlongBeam,
        }
    }

    /// As a tie of the scarfs of that kind: by the NDS, at a load duration of 1.0, with the washers and the steel divided by the
    /// largest C_D.
    ///
    /// # Errors
    /// Where the wood has no values, or the bolts find no room in the lap.
    pub fn tie(&self, project: &Project, kind: ScarfKind) -> Result<Worked<Tie>, Unmade> {
        let beam = Woods::new(project).member(Used::Beam, Duration::TenYears)?;
        let wood = species(&project.frame.species);
        let toward = EndLoad::toward_end(wood.is_some_and(|wood| wood.is_hardwood));
        let bores = self.bores(toward);
        let washer = self.washer();
        let area = washer_area(washer, self.bolt.diameter)?;
        let seat = Seat { area: area.value, length: washer, from_end: bores.first };
        let across = bearing_across_strength(&beam, &seat)?;
        let steel = steel_tension(self.bolt)?;
        let under = across.value * area.value;
        // The check multiplies a tie's values by C_D: wood across the grain and steel know none.
        let pull = under.min(steel.value) / MOST_DURATION;
        let aside = self.aside(project, (kind, &bores, toward), &beam)?;
        let source = format!(
            "{} with washers {:.2} in across, worked out by NDS 2015 12.3 and 2018 3.10.2, from memory: washer {:.0} lb, steel {:.0} \
             lb, over the largest C_D {MOST_DURATION}; Z' = {:.0} lb",
            self.bolt.name,
            washer.to_inches(),
            under.to_pounds(),
            steel.value.to_pounds(),
            aside.value.to_pounds()
        );
        let tie = Tie { count: self.count, pull, sideways: aside.value, source, bores: Some(bores) };
        let steps = [area.steps, across.steps, steel.steps, aside.steps].into_iter().flatten().collect();
        Ok(Worked::new(tie, steps))
    }

    /// Z' of one along the grain of both halves: where they are least alike, at the bolt nearest to the thin one's end.
    fn aside(
        &self,
        project: &Project,
        (kind, bores, toward): (ScarfKind, &Bores, EndLoad),
        beam: &crate::members::Member,
    ) -> Result<Worked<Force>, Unmade> {
        let (frame, timbers) = (&project.frame, &project.frame.timbers);
        let lap = frame.scarfs.lap;
        let rows = bores.first + bores.apart * self.count.saturating_sub(1) as f64;
        if rows + bores.apart / 2.0 > lap / 2.0 {
            return Err(format!("{} of {} at a root find no room in the lap", self.count, self.bolt.name).into());
        }
        let thick = lap_height(frame, &project.joinery, kind, bores.first);
        let thin = timbers.beam.sawn.depth - thick;
        let density = gravity(&frame.species, Some(&timbers.beam), "the beam")?;
        let half = |height: Length| Member::wood(density, height, Angle::ZERO);
        let value = single_shear(self.bolt, &half(thick.max(thin)), &half(thin.min(thick)))?;
        let geometry = geometry_factor(&Placing {
            diameter: self.bolt.diameter,
            direction: Direction::Along,
            bearing_length: thin.min(thick),
            end: Some((bores.first, toward)),
            edge: None,
            in_row: (self.count > 1).then_some(RowSpacing { spacing: bores.apart, attached_needs: None }),
            between_rows: None,
        })?;
        // Both roots are one row: the gap between them is the longest.
        let area: Area = timbers.beam.sawn.breadth * thin.min(thick);
        let modulus = adjusted(beam, Property::Stiffness).value;
        let group = group_factor(
            GroupRow {
                n_fasteners: u32::try_from(self.count * 2).unwrap_or(u32::MAX),
                spacing: lap - rows * 2.0,
                diameter: self.bolt.diameter,
                has_metal_side: false,
            },
            GroupMember { modulus, area },
            GroupMember { modulus, area },
        )?;
        let wet = wet_lateral(self.bolt, moisture(project, Used::Beam)?, RowLayout::OneRowAlongGrain);
        let factors = Factors { wet: wet.value, group: group.value, geometry: geometry.value, ..Factors::default() };
        let allowed = adjusted_lateral(value.value.reference, &factors)?;
        let torn = row_tear_out(
            adjusted(beam, Property::Shear).value,
            PegRow {
                n: u32::try_from(self.count).unwrap_or(u32::MAX),
                thickness: thin.min(thick),
                end: bores.first,
                spacing: (self.count > 1).then_some(bores.apart),
            },
        )?;
        let value_of_one = allowed.value.min(torn.value / self.count.max(1) as f64);
        let all = [value.steps, geometry.steps, group.steps, wet.steps, allowed.steps, torn.steps];
        Ok(Worked::new(value_of_one, all.into_iter().flatten().collect()))
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::fastening::fastener;
    use crate::project::demo;

    /// Six modes by hand (NDS 2015 Table 12.3.1A), both halves along the grain: F_e = 11200·G to the nearest 50 psi, R_d = 4, 3.6, 3.2 at 0°.
    fn by_hand(d: f64, g: f64, main: f64, side: f64) -> f64 {
        let (f, fyb) = ((11_200.0 * g / 50.0).round() * 50.0, 45_000.0);
        let r = main / side;
        let k1 = ((1.0 + 2.0 * (1.0 + r + r * r) + r * r).sqrt() - (1.0 + r)) / 2.0;
        let k2 = -1.0 + (4.0 + 2.0 * fyb * 3.0 * d * d / (3.0 * f * main * main)).sqrt();
        let k3 = -1.0 + (4.0 + 2.0 * fyb * 3.0 * d * d / (3.0 * f * side * side)).sqrt();
        let modes = [
            d * main * f / 4.0,
            d * side * f / 4.0,
            k1 * d * side * f / 3.6,
            k2 * d * main * f / (3.0 * 3.2),
            k3 * d * side * f / (3.0 * 3.2),
            d * d / 3.2 * (2.0 * f * fyb / 6.0).sqrt(),
        ];
        modes.into_iter().fold(f64::INFINITY, f64::min)
    }

    /// The halved scarfs of a 10 in beam leave 5 in of each half: two ½ in bolts 3½ and 5½ in from the end, green, in one row.
    #[test]
    fn a_bolt_by_hand() {
        let mut barn = demo::wool_barn();
        "eastern_hemlock".clone_into(&mut barn.frame.species);
        let beam = barn.frame.timbers.beam.sawn;
        let bolts = ScarfBolts { bolt: fastener("bolt_1_2").unwrap(), count: 2, step: Length::inches(0.25) };
        let made = bolts.tie(&barn, ScarfKind::Halved).unwrap();
        let half = beam.depth.to_inches() / 2.0;
        let reference = by_hand(0.5, 0.41, half, half);
        // Eq. 11.3-1 for four in a row, alike on both sides: E 0.9 million psi, the longest gap from root to root.
        let gap = barn.frame.scarfs.lap.to_inches() - 2.0 * 5.5;
        let u = 1.0 + 180_000.0 * 0.5_f64.powf(1.5) * gap / (0.9e6 * beam.breadth.to_inches() * half);
        let m = u - (u * u - 1.0).sqrt();
        let group = m * (1.0 - m.powi(8)) * 2.0 / (4.0 * ((1.0 + m.powi(4)) * (1.0 + m) - 1.0 + m.powi(8)) * (1.0 - m));
        assert!(group > 0.9 && group < 1.0, "{group}");
        let moist = if barn.wood.is_dry { 1.0 } else { 0.7 };
        let expected = reference * group * moist;
        let found = made.value.sideways.to_pounds();
        assert!((found / expected - 1.0).abs() < 1e-9, "{found} {expected}");
        // A washer of 2 in on green hemlock of F_c⊥ 555·0.67 psi, with C_b = (2 + ⅜)/2: over 1.6.
        let ring = std::f64::consts::PI / 4.0 * (4.0 - 0.5625 * 0.5625);
        let pull = 555.0 * 0.67 * (2.375 / 2.0) * ring / 1.6;
        assert!((made.value.pull.to_pounds() - pull).abs() < 1.0, "{} {pull}", made.value.pull.to_pounds());
        let bores = made.value.bores.unwrap();
        assert_eq!([bores.first, bores.apart, bores.diameter].map(Length::to_inches), [3.5, 2.0, 0.5625]);
    }

    #[test]
    fn a_short_lap_has_no_room() {
        let mut barn = demo::wool_barn();
        barn.frame.scarfs.lap = Length::inches(14.0);
        let bolts = |count| ScarfBolts { bolt: fastener("bolt_3_4").unwrap(), count, step: Length::inches(0.25) };
        assert!(bolts(1).tie(&barn, ScarfKind::Halved).is_ok());
        let refused = bolts(3).tie(&barn, ScarfKind::Halved).unwrap_err();
        assert_eq!(refused.says, "3 of 3/4 in bolt at a root find no room in the lap");
    }
}
