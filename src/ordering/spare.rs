//! Sticks beyond those of the frame, by rule.
//!
//! Of each section, whatever it becomes, the larger of two numbers: so many of every section, and one for every so many pieces
//! of stock begun. Pieces are counted, not the sticks out of them, so that purlins and blocks ask for few. A spare is as long
//! as the longest of its section that is left, for that may take the place of any.
use super::offers::Offer;
use super::order::{Order, OrderLine};
use crate::materials::Section;
use crate::project::Project;
use crate::units::sort_by_number;

/// Adds spares to the lines, with their weight and price.
pub(super) fn add_spares(project: &Project, order: &mut Order, left: &mut [(Section, Vec<Offer>)]) {
    for (section, offers) in left {
        let mut lines: Vec<&mut OrderLine> = order.lines.iter_mut().filter(|line| line.section == *section).collect();
        let count = lines.iter().map(|line| line.count).sum();
        if count == 0 {
            continue;
        }
        sort_by_number(&mut lines, |line| -line.length.to_inches());
        let mut wanted = project.buying.spares.for_count(count);
        for line in lines {
            let offer = offers.iter_mut().find(|offer| offer.length == line.length);
            let n = offer.map_or(wanted, |offer| {
                let n = offer.count.map_or(wanted, |count| count.min(wanted));
                offer.count = offer.count.map(|count| count - n);
                n
            });
            if n == 0 {
                continue;
            }
            wanted -= n;
            let before = line.price;
            line.n_spare = n;
            line.reckon(project);
            if let Some(buying) = order.buying.iter_mut().find(|buying| buying.kind == line.kind()) {
                let more = line.price - before;
                (buying.price, buying.bound) = (buying.price + more, buying.bound + more);
            }
        }
        if wanted > 0 {
            order.lacking_spares.push((*section, wanted));
        }
    }
}
