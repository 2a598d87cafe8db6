//! Which sticks of one section come out of which wood of the pile, by where the heart should be.
//!
//! Where all wood does for all sticks they are cut together. Else wish by wish, in every order, each out of what the ones before
//! left; the order that leaves least missing is taken. Less than any wish by itself lacks, and less than all would lack if
//! hearts were no matter, can never be missing: a plan that comes to that is proven.
use super::order::StickOrder;
use super::yard::{PileBar, same_section};
use super::yard_share::{Cut, Share, Wood};
use crate::materials::Section;
use crate::project::{HAIR, Heart, Project};
use crate::units::{Length, sort_by_number};

/// Sticks of one section, by their place in the whole order, and what becomes of them.
pub(super) type Wanted<'a> = [(usize, &'a StickOrder)];

/// What comes out of which bar, and which of the wanted, by their place among them, do not.
pub(super) struct SectionCut {
    pub bars: Vec<PileBar>,
    pub missing: Vec<usize>,
    pub at_most_more: Length,
}

/// Wood of the yard, whole or begun.
#[derive(Clone, Copy)]
struct Stock {
    lot: usize,
    wood: Wood,
    heart: Heart,
    /// The bar it is the rest of.
    begun: Option<usize>,
}

/// Cuts the sticks of one section.
pub(super) fn cut_section(project: &Project, section: Section, wanted: &Wanted) -> SectionCut {
    let kerf = project.mill.kerf;
    let lots = project.yard.iter().enumerate();
    let stock: Vec<Stock> = lots
        .filter(|(_, lot)| lot.count > 0 && same_section(lot.section, section))
        .map(|(lot, of)| Stock {
            lot,
            wood: Wood { length: of.length, count: of.count, must_be_looked_at: false },
            heart: of.heart,
            begun: None,
        })
        .collect();
    let mut wishes: Vec<Heart> = Vec::new();
    for (_, stick) in wanted {
        if !wishes.contains(&stick.kind.heart) {
            wishes.push(stick.kind.heart);
        }
    }
    let does_for_all = stock.iter().all(|stock| wishes.iter().all(|wish| stock.heart.may_serve(*wish)));
    let n_particular = wishes.iter().filter(|wish| **wish != Heart::Either).count();
    let mut plan = Plan { kerf, wanted, stock, bars: Vec::new(), missing: Vec::new(), more: Length::ZERO };
    if wishes.len() == 1 || does_for_all && n_particular < 2 {
        let all: Vec<usize> = (0..wanted.len()).collect();
        plan.take(&all);
        return plan.done();
    }
    let least = plan.least_missing(&wishes);
    let mut best: Option<Plan> = None;
    for order in orders(&wishes) {
        let mut own = plan.clone();
        for wish in order {
            let of_wish: Vec<usize> = (0..wanted.len()).filter(|place| wanted[*place].1.kind.heart == wish).collect();
            own.take(&of_wish);
        }
        if best.as_ref().is_none_or(|best| own.lack() < best.lack() - HAIR) {
            best = Some(own);
        }
    }
    let mut best = best.unwrap_or(plan);
    best.more = (best.lack() - least).max(Length::ZERO);
    best.done()
}

/// Every order of a few.
fn orders(all: &[Heart]) -> Vec<Vec<Heart>> {
    if all.len() < 2 {
        return vec![all.to_vec()];
    }
    let mut found = Vec::new();
    for first in all {
        let rest: Vec<Heart> = all.iter().copied().filter(|other| other != first).collect();
        found.extend(orders(&rest).into_iter().map(|rest| [vec![*first], rest].concat()));
    }
    found
}

#[derive(Clone)]
struct Plan<'a> {
    kerf: Length,
    wanted: &'a Wanted<'a>,
    stock: Vec<Stock>,
    bars: Vec<PileBar>,
    missing: Vec<usize>,
    more: Length,
}

impl Plan<'_> {
    fn needed(&self, place: usize) -> Length {
        let stick = self.wanted[place].1;
        stick.net + stick.allowance
    }

    fn lack(&self) -> Length {
        self.missing.iter().map(|place| self.needed(*place)).sum()
    }

    fn wish(&self, places: &[usize]) -> Heart {
        let wishes = places.iter().map(|place| self.wanted[*place].1.kind.heart);
        wishes.into_iter().find(|wish| *wish != Heart::Either).unwrap_or(Heart::Either)
    }

    /// Cuts those out of what does for their wish and is left.
    fn take(&mut self, places: &[usize]) {
        let wish = self.wish(places);
        let serving: Vec<usize> = (0..self.stock.len())
            .filter(|at| self.stock[*at].heart.may_serve(wish) && self.stock[*at].wood.count > 0)
            .collect();
        let cut = self.share(places, &serving, wish);
        self.more += cut.at_most_more;
        self.missing.extend(cut.missing.iter().map(|place| places[*place]));
        for bar in cut.bars {
            let mut of: Vec<usize> = bar.sticks.iter().map(|place| places[*place]).collect();
            sort_by_number(&mut of, |place| -self.needed(*place).to_inches());
            self.begin(serving[bar.stock], &of, bar.left);
        }
    }

    fn share(&self, places: &[usize], serving: &[usize], wish: Heart) -> Cut {
        let needed: Vec<Length> = places.iter().map(|place| self.needed(*place)).collect();
        let wood = |at: &usize| {
            let stock = &self.stock[*at];
            Wood { must_be_looked_at: wish != Heart::Either && stock.heart == Heart::Either, ..stock.wood }
        };
        let wood: Vec<Wood> = serving.iter().map(wood).collect();
        Share { kerf: self.kerf, needed: &needed, wood: &wood }.cut()
    }

    /// Takes those out of one of that stock; what is left of it is stock again.
    fn begin(&mut self, at: usize, of: &[usize], left: Length) {
        let stock = self.stock[at];
        let wish = self.wish(of);
        let look = (stock.heart == Heart::Either && wish != Heart::Either).then_some(wish);
        let marks = of.iter().map(|place| self.wanted[*place].1.mark.clone());
        self.stock[at].wood.count -= 1;
        let bar = stock.begun.unwrap_or(self.bars.len());
        match self.bars.get_mut(bar) {
            Some(begun) => {
                begun.sticks.extend(marks);
                begun.left = left;
                begun.look = begun.look.or(look);
                let of = |mark: &String| self.wanted.iter().find(|(_, stick)| stick.mark == *mark);
                let long = |mark: &String| of(mark).map_or(0.0, |(_, stick)| (stick.net + stick.allowance).to_inches());
                sort_by_number(&mut begun.sticks, |mark| -long(mark));
            }
            None => self.bars.push(PileBar { lot: stock.lot, sticks: marks.collect(), left, look }),
        }
        if left > self.kerf {
            // Wood that one wish counts on is not counted on for another.
            let heart = look.unwrap_or(stock.heart);
            let wood = Wood { length: left - self.kerf, count: 1, must_be_looked_at: false };
            self.stock.push(Stock { lot: stock.lot, wood, heart, begun: Some(bar) });
        }
    }

    /// No plan leaves less missing: by all wood for all, and by each wish with the pile to itself.
    fn least_missing(&self, wishes: &[Heart]) -> Length {
        let least = |places: &[usize], wish: Heart| {
            let serving: Vec<usize> =
                (0..self.stock.len()).filter(|at| self.stock[*at].heart.may_serve(wish)).collect();
            let cut = self.share(places, &serving, wish);
            let lack: Length = cut.missing.iter().map(|place| self.needed(places[*place])).sum();
            lack - cut.at_most_more
        };
        let all: Vec<usize> = (0..self.wanted.len()).collect();
        let of = |wish: &Heart| -> Vec<usize> {
            all.iter().copied().filter(|place| self.wanted[*place].1.kind.heart == *wish).collect()
        };
        let by_themselves: Length = wishes.iter().map(|wish| least(&of(wish), *wish)).sum();
        least(&all, Heart::Either).max(by_themselves)
    }

    fn done(self) -> SectionCut {
        SectionCut { bars: self.bars, missing: self.missing, at_most_more: self.more }
    }
}
