//! Single changes of fixings and footings that may help a check, in ladders from small to large.
use super::changes::{Ladder, Try};
use crate::checks::{ANCHORED, TIED, WEAKEST_LINK};
use crate::fastening::{Fastener, fastener_table};
use crate::project::{Fixings, Tie};
use crate::units::Length;

/// Fasteners of the same kind that are thicker, the next first.
fn thicker(key: &str) -> Vec<&'static Fastener> {
    let Some(own) = fastener_table().iter().find(|found| found.key == key) else { return Vec::new() };
    fastener_table().iter().filter(|other| other.kind == own.kind && other.diameter > own.diameter).take(6).collect()
}

impl Try<'_> {
    /// More of what ties a joint, where the tie is known at all.
    pub fn more_ties(&self, place: &str, of: fn(&mut Fixings) -> &mut Tie) -> Ladder {
        let one = |more: usize| {
            let mut changed = self.project.clone();
            let tie = of(&mut changed.fixings);
            let is_known = tie.count > 0;
            tie.count += more;
            let says = format!("{} fasteners at {place}", tie.count);
            is_known.then_some((says, changed))
        };
        [1, 2, 3, 4].into_iter().filter_map(one).collect()
    }

    pub fn for_base(&self) -> Vec<Ladder> {
        let higher = |steps: f64| {
            let bores = self.project.fixings.post_base.bores?;
            let first = bores.first + self.step(2.0, 50.0) * steps;
            let says = format!("the first hole of a post's base {} over its foot", self.said(first));
            Some(self.with(says, |changed| {
                if let Some(bores) = &mut changed.fixings.post_base.bores {
                    bores.first = first;
                }
            }))
        };
        vec![
            self.more_ties("each post base", |fixings| &mut fixings.post_base),
            [1.0, 2.0].into_iter().filter_map(higher).collect(),
            self.larger("posts", |timbers| &mut timbers.post),
            self.more_posts(),
        ]
    }

    /// Anchors and bars help what hangs on them, or the whole way, and nothing else.
    pub fn for_footing(&self, name: &str) -> Vec<Ladder> {
        let pier = self.project.fixings.pier;
        let footing = |width: Length, thickness: Length| {
            let says = format!("footings {} across and {} thick", self.said(width), self.said(thickness));
            self.with(says, |changed| {
                (changed.fixings.pier.footing_width, changed.fixings.pier.footing_thickness) = (width, thickness);
            })
        };
        let steps = [1.0, 2.0, 3.0, 4.0, 6.0];
        // A plain footing reaches past its pier by no more than its thickness.
        let wider = |steps: f64| {
            let width = pier.footing_width + self.step(4.0, 100.0) * steps;
            footing(width, pier.footing_thickness.max((width - pier.pier_width) / 2.0))
        };
        let thicker = |steps: f64| footing(pier.footing_width, pier.footing_thickness + self.step(3.0, 75.0) * steps);
        let stouter = |steps: f64| {
            let width = pier.pier_width + self.step(2.0, 50.0) * steps;
            self.with(format!("piers {} across", self.said(width)), |changed| changed.fixings.pier.pier_width = width)
        };
        let frost = self.project.ground.frost_depth.filter(|frost| *frost > pier.depth);
        let depths = [1.0, 2.0, 3.0, 4.0].map(|steps| pier.depth + self.step(6.0, 150.0) * steps);
        let mut depths: Vec<Length> = frost.into_iter().chain(depths).collect();
        crate::units::sort_lengths(&mut depths);
        let deeper = |depth: Length| {
            self.with(format!("footings down to {}", self.said(depth)), |changed| changed.fixings.pier.depth = depth)
        };
        let asks = |what: &str| name == what || name == WEAKEST_LINK;
        let anchored = |steps: f64| {
            let deep = pier.anchor_depth + self.step(2.0, 50.0) * steps;
            let says = format!("anchors cast in {} deep", self.said(deep));
            self.with(says, |changed| changed.fixings.pier.anchor_depth = deep)
        };
        let barred = |more: usize| {
            let n = pier.bars + more;
            let says = format!("{n} bars from each pier into its footing");
            self.with(says, |changed| changed.fixings.pier.bars = n)
        };
        vec![
            [1.0, 2.0, 3.0]
                .into_iter()
                .filter(|_| asks(ANCHORED) && pier.anchor_depth > Length::ZERO)
                .map(anchored)
                .collect(),
            [2, 4].into_iter().filter(|_| asks(TIED) && pier.bars > 0).map(barred).collect(),
            depths.into_iter().map(deeper).collect(),
            steps.map(thicker).into(),
            steps.map(stouter).into(),
            steps.map(wider).into(),
            self.more_posts(),
        ]
    }

    pub fn for_purlin_screws(&self) -> Vec<Ladder> {
        let screws = &self.project.fixings.purlin;
        let more = |more: usize| {
            let n = screws.count + more;
            self.with(format!("{n} screws at each purlin crossing"), |changed| changed.fixings.purlin.count = n)
        };
        let longer = |steps: f64| {
            let longer = screws.length + self.step(0.5, 15.0) * steps;
            let says = format!("purlin screws of {}", self.said(longer));
            self.with(says, |changed| changed.fixings.purlin.length = longer)
        };
        let thicker = thicker(&screws.fastener).into_iter().map(|next| {
            let says = format!("{} through the purlins", next.name);
            self.with(says, |changed| changed.fixings.purlin.fastener.clone_from(&next.key))
        });
        vec![
            thicker.collect(),
            [1.0, 2.0, 3.0].map(longer).into(),
            [1, 2].map(more).into(),
            self.purlins_closer(),
            self.rafters_closer(),
        ]
    }

    pub fn for_sheet_screws(&self) -> Vec<Ladder> {
        let screws = &self.project.fixings.sheet;
        let closer = |share: f64| {
            let closer = screws.spacing * share;
            let says = format!("sheet screws every {}", self.said(closer));
            self.with(says, |changed| changed.fixings.sheet.spacing = closer)
        };
        let longer = |steps: f64| {
            let longer = screws.screw.length + self.step(0.5, 15.0) * steps;
            let says = format!("sheet screws of {}", self.said(longer));
            self.with(says, |changed| changed.fixings.sheet.screw.length = longer)
        };
        let thicker = thicker(&screws.screw.fastener).into_iter().map(|next| {
            let says = format!("{} through the sheets", next.name);
            self.with(says, |changed| changed.fixings.sheet.screw.fastener.clone_from(&next.key))
        });
        vec![
            thicker.collect(),
            [1.0, 2.0, 3.0].map(longer).into(),
            [2.0 / 3.0, 0.5, 1.0 / 3.0].map(closer).into(),
            self.purlins_closer(),
        ]
    }

    pub fn for_ledger(&self) -> Vec<Ladder> {
        let fixings = &self.project.fixings.ledger;
        let lower = |steps: f64| {
            let lowest = fixings.lowest - self.step(0.5, 15.0) * steps;
            let says = format!("the lowest row of ledger fixings {} over its bottom", self.said(lowest));
            self.with(says, |changed| changed.fixings.ledger.lowest = lowest)
        };
        vec![
            [1.0, 2.0, 3.0].map(lower).into(),
            self.larger("ledger", |timbers| &mut timbers.ledger),
            self.rafters_closer(),
            self.graded(false),
        ]
    }

    pub fn for_ledger_fixings(&self) -> Vec<Ladder> {
        let ledger = &self.project.fixings.ledger;
        let thicker = thicker(&ledger.fastener).into_iter().map(|next| {
            let says = format!("{} through the ledger", next.name);
            self.with(says, |changed| changed.fixings.ledger.fastener.clone_from(&next.key))
        });
        let columns = |more: usize| {
            let n = ledger.columns + more;
            let gap = ledger.column_gap.min(self.step(5.0, 125.0) / (n - 1).max(1) as f64);
            let says = format!("{n} side by side at each post of the wall, {} apart", self.said(gap));
            self.with(says, |p| (p.fixings.ledger.columns, p.fixings.ledger.column_gap) = (n, gap))
        };
        let longer = |steps: f64| {
            let longer = ledger.length + self.step(2.0, 50.0) * steps;
            let says = format!("ledger fixings of {}", self.said(longer));
            self.with(says, |changed| changed.fixings.ledger.length = longer)
        };
        let washers = |steps: f64| {
            let wider = ledger.washer + self.step(0.5, 12.0) * steps;
            let says = format!("washers of {} under the ledger's fixings", self.said(wider));
            self.with(says, |changed| changed.fixings.ledger.washer = wider)
        };
        let washers = [1.0, 2.0].map(washers).into_iter().filter(|_| ledger.washer > Length::ZERO);
        vec![
            washers.collect(),
            thicker.collect(),
            [1.0, 2.0].map(longer).into(),
            self.more_rows(),
            [1, 2].map(columns).into(),
            self.nearer_outer_rows(),
            self.larger("ledger", |timbers| &mut timbers.ledger),
        ]
    }

    /// More rows, as far apart as before where the ledger's depth allows it, else spread evenly over it.
    fn more_rows(&self) -> Ladder {
        let ledger = &self.project.fixings.ledger;
        let depth = self.project.frame.timbers.ledger.sawn.depth;
        let one = |more: usize| {
            let n = ledger.rows + more;
            let end = self.step(2.0, 50.0).min(depth / 4.0);
            let room = depth - end * 2.0;
            let gap = ledger.row_gap.min(room / (n - 1).max(1) as f64);
            let lowest = ledger.lowest.min(depth - end - gap * (n - 1) as f64);
            let says =
                format!("{n} rows through the ledger, {} apart, the lowest {} up", self.said(gap), self.said(lowest));
            self.with(says, |changed| {
                let own = &mut changed.fixings.ledger;
                (own.rows, own.row_gap, own.lowest) = (n, gap, lowest);
            })
        };
        [1, 2].into_iter().filter(|_| ledger.rows > 0).map(one).collect()
    }

    /// Outer rows or columns far apart split the wood as it dries.
    fn nearer_outer_rows(&self) -> Ladder {
        let ledger = &self.project.fixings.ledger;
        let most = self.step(5.0, 125.0);
        let gaps = |n: usize| (n > 1).then(|| most / (n - 1) as f64);
        let rows = gaps(ledger.rows).filter(|gap| *gap < ledger.row_gap).map(|gap| {
            self.with(format!("rows of ledger fixings {} apart", self.said(gap)), |p| p.fixings.ledger.row_gap = gap)
        });
        let columns = gaps(ledger.columns).filter(|gap| *gap < ledger.column_gap).map(|gap| {
            let says = format!("ledger fixings side by side {} apart", self.said(gap));
            self.with(says, |p| p.fixings.ledger.column_gap = gap)
        });
        rows.into_iter().chain(columns).collect()
    }
}
