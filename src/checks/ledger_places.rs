//! Where the fixings of the ledger stand: ends, edges, spacing and how alike they share (NDS 2015 12.5.1, 11.3.6).
//!
//! At a post of the wall they stand in columns, side by side, of rows, one above the other. Under an upright load a row of the
//! standard is a column of ours.
use super::check::Way;
use super::fixing::{Aim, Fixing};
use crate::fastening::{
    Direction, Edge, EndLoad, GroupMember, GroupRow, Placing, Refused, RowSpacing, geometry_factor, group_factor,
};
use crate::geometry::placing_in_ledger;
use crate::materials::species;
use crate::members::stiffness;
use crate::units::Length;
use crate::working::{Citation, Step, Worked};

impl Fixing<'_> {
    /// From the outermost column to the nearest end of the ledger.
    pub(super) fn end(&self) -> Option<Length> {
        let nearest = self.ledger.frame.posts.iter().map(|post| post.from_end).reduce(Length::min)?;
        Some(nearest - self.fixings().across() / 2.0)
    }

    /// The least factor of the ledger and of the wall's post, for the upright load and, where the load leans along the wall,
    /// for that way too. The edge the fixings press toward is the top one when the ledger presses down.
    pub(super) fn geometry(&self, aim: Aim, bearing_length: Length) -> Result<Worked<f64>, Refused> {
        let diameter = self.one.diameter;
        let bare = |direction| Placing {
            diameter,
            direction,
            bearing_length,
            end: None,
            edge: None,
            in_row: None,
            between_rows: None,
        };
        let mut found = vec![("ledger", self.ledger_upright(aim.way, bearing_length))];
        found.push(("wall's post", self.wall_upright(bare(Direction::Along))));
        if aim.is_tilted() {
            found.push(("ledger, along the wall", self.ledger_along(bare(Direction::Along))));
            found.push(("wall's post, along the wall", self.wall_along(bare(Direction::Across))));
        }
        let (mut value, mut steps) = (1.0_f64, Vec::new());
        for (whose, placing) in found {
            let factor = geometry_factor(&placing)?;
            value = value.min(factor.value);
            steps.extend(
                factor.steps.into_iter().map(|step| Step { gives: format!("{whose}: {}", step.gives).into(), ..step }),
            );
        }
        steps.push(self.edges_of_the_wall());
        Ok(Worked::new(value, steps))
    }

    fn many(n: usize, spacing: Length) -> Option<Length> {
        (n > 1).then_some(spacing)
    }

    fn ledger_upright(&self, way: Way, bearing_length: Length) -> Placing {
        let (below, above) = self.edges();
        let (loaded, unloaded) = if way == Way::Down { (above, below) } else { (below, above) };
        let edge = Edge { loaded, unloaded };
        placing_in_ledger(self.fixings(), self.one.diameter, bearing_length, (self.end(), edge))
    }

    fn wall_upright(&self, bare: Placing) -> Placing {
        let fixings = self.fixings();
        let row = |spacing| RowSpacing { spacing, attached_needs: None };
        Placing {
            in_row: Self::many(fixings.rows, fixings.row_gap).map(row),
            between_rows: Self::many(fixings.columns, fixings.column_gap),
            ..bare
        }
    }

    fn ledger_along(&self, bare: Placing) -> Placing {
        let (below, above) = self.edges();
        let fixings = self.fixings();
        let is_hard = species(&self.ledger.project.frame.species).is_some_and(|wood| wood.is_hardwood);
        let toward = EndLoad::toward_end(is_hard);
        let row = |spacing| RowSpacing { spacing, attached_needs: None };
        Placing {
            end: self.end().map(|end| (end, toward)),
            edge: Some(Edge { loaded: below, unloaded: above }),
            in_row: Self::many(fixings.columns, fixings.column_gap).map(row),
            between_rows: Self::many(fixings.rows, fixings.row_gap),
            ..bare
        }
    }

    fn wall_along(&self, bare: Placing) -> Placing {
        let fixings = self.fixings();
        let row = |spacing| RowSpacing { spacing, attached_needs: Some(self.one.diameter * 4.0) };
        Placing {
            in_row: Self::many(fixings.columns, fixings.column_gap).map(row),
            between_rows: Self::many(fixings.rows, fixings.row_gap),
            ..bare
        }
    }

    /// Wood under the lowest row and over the highest.
    fn edges(&self) -> (Length, Length) {
        let fixings = self.fixings();
        let top = fixings.height(fixings.rows.saturating_sub(1));
        (fixings.height(0), self.ledger.member.section().depth - top)
    }

    /// Width that the wall's posts need: 1.5·D beside the outer fixings, where they are pushed along the wall 4·D, since the wind
    /// comes from either side.
    pub(super) fn width_of_the_wall(&self, is_along: bool) -> Length {
        let times = if is_along { 4.0 } else { 1.5 };
        self.one.diameter * (2.0 * times) + self.fixings().across()
    }

    /// What this check takes for granted: another one says what has to be measured.
    fn edges_of_the_wall(&self) -> Step {
        let says = format!(
            "taken as kept, 1.5·D = {:.3} in: nobody has measured the post. What it needs is said of the existing wall, and not judged",
            (self.one.diameter * 1.5).to_inches()
        );
        Step::new("wall's post: edge distance", says, Citation::placeholder("NDS 2015", "Table 12.5.1C, from memory"))
    }

    /// The rows stand along the wall's post. Areas of a strip four fixings wide, the ledger's stiffness for both: what is
    /// not known of the wall cannot raise the factor much. A leaning load meets the columns as a row as well.
    pub(super) fn group(&self, aim: Aim) -> Result<Worked<f64>, Refused> {
        let fixings = self.fixings();
        let upright = self.group_of(fixings.rows, fixings.row_gap)?;
        if !aim.is_tilted() || fixings.columns < 2 {
            return Ok(upright);
        }
        let along = self.group_of(fixings.columns, fixings.column_gap)?;
        let value = upright.value.min(along.value);
        Ok(Worked::new(value, upright.steps.into_iter().chain(along.steps).collect()))
    }

    fn group_of(&self, n: usize, spacing: Length) -> Result<Worked<f64>, Refused> {
        let strip = self.one.diameter * 4.0;
        let modulus = stiffness(&self.ledger.member).value;
        let n_fasteners = u32::try_from(n).unwrap_or(u32::MAX);
        let row = GroupRow { n_fasteners, spacing, diameter: self.one.diameter, has_metal_side: false };
        let main = GroupMember { modulus, area: self.fixings().wall_depth * strip };
        group_factor(row, main, GroupMember { modulus, area: self.side * strip })
    }
}
