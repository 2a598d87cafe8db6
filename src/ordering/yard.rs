//! What comes out of the sticks that lie in the sawyer's yard, and what is missing then.
//!
//! Section by section, either way round: as much of the frame's length as can be placed, each stick docked as in the order and
//! parted from the next by the saw's cut; of such plans one that begins with little of the pile. A larger section is never
//! taken by itself: that a missing stick could be ripped out of one that is left is only said.
use super::nest::{Aim, CutBar, Offered, Plan, Task, Wanted, nest_watched};
use super::order::StickOrder;
use crate::materials::Section;
use crate::project::{HAIR, Lot, Project};
use crate::units::{Length, Money, UnitSystem, sort_by_number};

/// Steps of work for one section: some milliseconds.
const MOST_WORK: u64 = 60_000;

/// A stick of the pile and what comes out of it.
#[derive(Clone, Debug, PartialEq)]
pub struct PileBar {
    /// Its lot, as a place in the project's yard.
    pub lot: usize,
    /// Marks of the sticks that come out of it, longest first.
    pub sticks: Vec<String>,
    /// What is left of it.
    pub left: Length,
}

/// A stick of the frame that does not come out of the pile.
#[derive(Clone, Debug, PartialEq)]
pub struct Missing {
    /// Its mark.
    pub mark: String,
    /// Its section as ordered.
    pub section: Section,
    /// Its length with both ends docked.
    pub needed: Length,
    /// The longest stick of its section in the pile; nothing where there is none of it.
    pub longest: Option<Length>,
    /// A lot of a larger section of which a whole stick is left that it could be ripped out of.
    pub rip: Option<usize>,
}

/// What the pile gives.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PileAnswer {
    /// Sticks of the pile that are begun, in the pile's order.
    pub bars: Vec<PileBar>,
    /// Sticks of the frame that are missing, in the frame's order.
    pub missing: Vec<Missing>,
    /// Lots of which whole sticks are left, and how many.
    pub unused: Vec<(usize, usize)>,
    /// How much more of the frame, end to end, might come out at most: nothing where it is proven that no more does.
    pub at_most_more: Length,
}

impl PileAnswer {
    /// All of the frame comes out of the pile.
    #[must_use]
    pub fn comes_out(&self) -> bool {
        self.missing.is_empty()
    }

    /// No way to cut the pile gives more.
    #[must_use]
    pub fn is_proven(&self) -> bool {
        self.at_most_more <= HAIR
    }

    /// Length of all missing sticks with their ends docked.
    #[must_use]
    pub fn missing_length(&self) -> Length {
        self.missing.iter().map(|stick| stick.needed).sum()
    }

    /// Missing sticks of sections that the pile has.
    pub fn short(&self) -> impl Iterator<Item = &Missing> {
        self.missing.iter().filter(|stick| stick.longest.is_some())
    }
}

/// The same size across, whichever way round it is named.
#[must_use]
pub fn same_section(a: Section, b: Section) -> bool {
    a.label(UnitSystem::Imperial) == b.label(UnitSystem::Imperial)
}

/// Cuts the sticks of an order out of the project's yard.
#[must_use]
pub fn from_yard(project: &Project, sticks: &[StickOrder]) -> PileAnswer {
    let mut answer = PileAnswer::default();
    let mut sections: Vec<Section> = Vec::new();
    for stick in sticks {
        if !sections.iter().any(|known| same_section(*known, stick.kind.section)) {
            sections.push(stick.kind.section);
        }
    }
    let mut missing: Vec<(usize, Missing)> = Vec::new();
    for section in sections {
        let wanted: Vec<(usize, &StickOrder)> =
            sticks.iter().enumerate().filter(|(_, stick)| same_section(stick.kind.section, section)).collect();
        let of_section = Share::new(project, section, &wanted);
        let cut = of_section.cut();
        answer.at_most_more += cut.at_most_more;
        for place in &cut.missing {
            let (at, stick) = wanted[*place];
            let needed = stick.net + stick.allowance;
            let lack = Missing { mark: stick.mark.clone(), section, needed, longest: of_section.longest(), rip: None };
            missing.push((at, lack));
        }
        answer.bars.extend(cut.bars.into_iter().map(|bar| of_section.named(bar)));
    }
    sort_by_number(&mut missing, |(at, _)| *at as f64);
    answer.missing = missing.into_iter().map(|(_, stick)| stick).collect();
    sort_by_number(&mut answer.bars, |bar| bar.lot as f64);
    answer.unused = unused(&project.yard, &answer.bars);
    offer_rips(&project.yard, &mut answer);
    answer
}

/// Whole sticks that are left of each lot.
fn unused(yard: &[Lot], bars: &[PileBar]) -> Vec<(usize, usize)> {
    let left = |place: usize, lot: &Lot| lot.count - bars.iter().filter(|bar| bar.lot == place).count().min(lot.count);
    yard.iter().enumerate().map(|(place, lot)| (place, left(place, lot))).filter(|(_, left)| *left > 0).collect()
}

/// Gives each missing stick, the longest first, a whole stick of the smallest larger section that is left and holds it.
fn offer_rips(yard: &[Lot], answer: &mut PileAnswer) {
    let mut left = answer.unused.clone();
    let mut order: Vec<usize> = (0..answer.missing.len()).collect();
    sort_by_number(&mut order, |place| -answer.missing[*place].needed.to_inches());
    for place in order {
        let stick = &answer.missing[place];
        let holds = |lot: &Lot| lot.length + HAIR >= stick.needed && is_larger(lot.section, stick.section);
        let found = left.iter_mut().filter(|(lot, n)| *n > 0 && holds(&yard[*lot]));
        let area = |lot: usize| (yard[lot].section.area() * yard[lot].length).to_board_feet();
        if let Some((lot, n)) = found.min_by(|a, b| area(a.0).total_cmp(&area(b.0))) {
            *n -= 1;
            answer.missing[place].rip = Some(*lot);
        }
    }
}

/// Another section that goes all round the wanted one.
fn is_larger(section: Section, wanted: Section) -> bool {
    let sizes = |section: Section| (section.breadth.min(section.depth), section.breadth.max(section.depth));
    let ((small, large), (least, most)) = (sizes(section), sizes(wanted));
    small + HAIR >= least && large + HAIR >= most && !same_section(section, wanted)
}

/// The sticks and lots of one section.
struct Share<'a> {
    kerf: Length,
    wanted: &'a [(usize, &'a StickOrder)],
    /// Place in the yard, and the lot.
    lots: Vec<(usize, &'a Lot)>,
}

/// How they are cut; places are those in the share.
struct Cut {
    bars: Vec<CutBar>,
    missing: Vec<usize>,
    at_most_more: Length,
}

impl<'a> Share<'a> {
    fn new(project: &'a Project, section: Section, wanted: &'a [(usize, &'a StickOrder)]) -> Self {
        let lots = project.yard.iter().enumerate();
        let lots = lots.filter(|(_, lot)| lot.count > 0 && same_section(lot.section, section)).collect();
        Self { kerf: project.mill.kerf, wanted, lots }
    }

    fn longest(&self) -> Option<Length> {
        self.lots.iter().map(|(_, lot)| lot.length).reduce(Length::max)
    }

    fn needed(&self, place: usize) -> Length {
        let (_, stick) = self.wanted[place];
        stick.net + stick.allowance
    }

    fn named(&self, bar: CutBar) -> PileBar {
        let mut places = bar.sticks;
        sort_by_number(&mut places, |place| -self.needed(*place).to_inches());
        let sticks = places.iter().map(|place| self.wanted[*place].1.mark.clone()).collect();
        PileBar { lot: self.lots[bar.stock].0, sticks, left: bar.left }
    }

    fn task(&self, places: &[usize], price: impl Fn(Length) -> i64) -> Task {
        let wanted = |place: &usize| Wanted { mark: String::new(), length: self.needed(*place), count: 1 };
        let offered = |(_, lot): &(usize, &Lot)| Offered {
            length: lot.length + HAIR,
            price: Money::cents(price(lot.length)),
            count: Some(u32::try_from(lot.count).unwrap_or(u32::MAX)),
        };
        Task {
            kerf: self.kerf,
            trim: Length::ZERO,
            sticks: places.iter().map(wanted).collect(),
            stock: self.lots.iter().map(offered).collect(),
            aim: Aim::LeastCost,
        }
    }

    fn cut(&self) -> Cut {
        let all: Vec<usize> = (0..self.wanted.len()).collect();
        if self.lots.is_empty() {
            return Cut { bars: Vec::new(), missing: all, at_most_more: Length::ZERO };
        }
        let Some(plan) = self.most(&all) else { return self.by_eye(&all) };
        let n_lots = self.lots.len();
        let bought = plan.bars.iter().filter(|bar| bar.stock >= n_lots).flat_map(|bar| bar.sticks.clone());
        let missing: Vec<usize> = bought.chain(plan.unplaced.iter().map(|(place, _)| *place)).collect();
        let lack: i64 = missing.iter().map(|place| thousandths(self.needed(*place))).sum();
        let most = if plan.is_proven { 0 } else { (lack - plan.bound.to_cents()).max(0) };
        let placed: Vec<usize> = all.into_iter().filter(|place| !missing.contains(place)).collect();
        let bars = plan.bars.into_iter().filter(|bar| bar.stock < n_lots).collect();
        Cut {
            bars: self.least(&placed).unwrap_or(bars),
            missing,
            at_most_more: Length::millimetres(most as f64 / 1000.0),
        }
    }

    /// The plan that leaves the least length missing: what the pile does not hold is bought, each stick at its own length
    /// and for its own length. Two sticks never are bought in one, for that would cost the saw's cut more.
    fn most(&self, all: &[usize]) -> Option<Plan> {
        let mut task = self.task(all, |_| 0);
        let mut lengths: Vec<Length> = all.iter().map(|place| self.needed(*place)).collect();
        sort_by_number(&mut lengths, |length| length.to_inches());
        lengths.dedup_by_key(|length| thousandths(*length));
        task.stock.extend(lengths.into_iter().map(|length| Offered {
            length: length + HAIR,
            price: Money::cents(thousandths(length)),
            count: None,
        }));
        nest_watched(&task, MOST_WORK, &mut |_| true).ok()
    }

    /// The same sticks out of as little of the pile as is known to do.
    fn least(&self, placed: &[usize]) -> Option<Vec<CutBar>> {
        let task = self.task(placed, thousandths);
        let plan = nest_watched(&task, MOST_WORK, &mut |_| true).ok()?;
        let own = |bar: CutBar| CutBar { sticks: bar.sticks.iter().map(|place| placed[*place]).collect(), ..bar };
        plan.unplaced.is_empty().then(|| plan.bars.into_iter().map(own).collect())
    }

    /// The longest stick first into the stick of the pile it fills best: for more lots and lengths than the search takes.
    fn by_eye(&self, all: &[usize]) -> Cut {
        let mut left: Vec<usize> = self.lots.iter().map(|(_, lot)| lot.count).collect();
        let mut order = all.to_vec();
        sort_by_number(&mut order, |place| -self.needed(*place).to_inches());
        let (mut bars, mut missing): (Vec<CutBar>, Vec<usize>) = (Vec::new(), Vec::new());
        for place in order {
            let needed = self.needed(place);
            let begun = bars.iter_mut().filter(|bar| bar.left + HAIR >= needed + self.kerf);
            if let Some(bar) = begun.min_by(|a, b| a.left.to_inches().total_cmp(&b.left.to_inches())) {
                bar.left = (bar.left - needed - self.kerf).max(Length::ZERO);
                bar.sticks.push(place);
                continue;
            }
            let holding = (0..left.len()).filter(|lot| left[*lot] > 0 && self.lots[*lot].1.length + HAIR >= needed);
            let length = |lot: &usize| self.lots[*lot].1.length;
            match holding.min_by(|a, b| length(a).to_inches().total_cmp(&length(b).to_inches())) {
                Some(lot) => {
                    left[lot] -= 1;
                    let over = (length(&lot) - needed).max(Length::ZERO);
                    bars.push(CutBar { stock: lot, sticks: vec![place], left: over });
                }
                None => missing.push(place),
            }
        }
        let at_most_more = missing.iter().map(|place| self.needed(*place)).sum();
        Cut { bars, missing, at_most_more }
    }
}

fn thousandths(length: Length) -> i64 {
    (length.to_millimetres() * 1000.0).round() as i64
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ordering::Kind;
    use crate::project::{Heart, Role, demo};

    fn section(breadth: f64, depth: f64) -> Section {
        Section::new(Length::inches(breadth), Length::inches(depth))
    }

    fn stick(mark: &str, section: Section, needed: f64) -> StickOrder {
        let [net, allowance] = [needed - 6.0, 6.0].map(Length::inches);
        let kind = Kind { section, heart: Heart::Either, delivery: 1 };
        StickOrder { mark: mark.to_owned(), role: Role::Rafter, kind, net, allowance, ordered: net + allowance }
    }

    fn lot(section: Section, inches: f64, count: usize) -> Lot {
        Lot { section, length: Length::inches(inches), count, remark: String::new() }
    }

    fn answer(yard: Vec<Lot>, sticks: &[StickOrder]) -> PileAnswer {
        from_yard(&Project { yard, ..demo::wool_barn() }, sticks)
    }

    fn marks(found: &PileAnswer) -> Vec<&str> {
        found.missing.iter().map(|stick| stick.mark.as_str()).collect()
    }

    /// 90 + 1/4 + 77 3/4 = 168: two come out of one 14-footer to the hair, and 90 + 78 do not. A lot named the other way
    /// round is the same wood.
    #[test]
    fn sticks_share_to_the_saws_cut() {
        let found = answer(
            vec![lot(section(8.0, 4.0), 168.0, 1)],
            &[stick("a", section(4.0, 8.0), 90.0), stick("b", section(4.0, 8.0), 77.75)],
        );
        assert!(found.comes_out() && found.is_proven());
        assert_eq!(found.bars.len(), 1);
        assert_eq!(found.bars[0].sticks, ["a", "b"]);
        assert!(found.bars[0].left.is_near(Length::ZERO, HAIR * 2.0));
        let over = answer(
            vec![lot(section(4.0, 8.0), 168.0, 1)],
            &[stick("a", section(4.0, 8.0), 90.0), stick("b", section(4.0, 8.0), 78.0)],
        );
        // The shorter one stays out: 78 in are missing rather than 90.
        assert_eq!(marks(&over), ["b"]);
        assert!(over.missing_length().is_near(Length::inches(78.0), HAIR) && over.is_proven());
        assert_eq!(over.missing[0].longest, Some(Length::feet(14.0)));
    }

    /// One 192 and one 144. By eye 140 goes into the 144 and 100 + 91 into the 192: 52 + 51 1/2 stay out. Better are
    /// 140 + 51 1/2 (191 3/4 with the cut) and 91 + 52 (143 1/4): the 100 alone stays out.
    #[test]
    fn the_greatest_length_comes_out() {
        let s = section(6.0, 6.0);
        let all = [140.0, 100.0, 91.0, 52.0, 51.5].map(|long| stick(&long.to_string(), s, long));
        let found = answer(vec![lot(s, 192.0, 1), lot(s, 144.0, 1)], &all);
        assert_eq!(marks(&found), ["100"]);
        assert!(found.is_proven());
    }

    /// An 8 x 10 is larger than a 6 x 8 either way round, and long enough; 8 x 6 is the same; a 4 x 10 is thinner.
    #[test]
    fn a_larger_stick_is_only_offered() {
        let yard = vec![
            lot(section(8.0, 10.0), 120.0, 1),
            lot(section(4.0, 10.0), 240.0, 3),
            lot(section(8.0, 10.0), 96.0, 1),
        ];
        let found = answer(yard, &[stick("a", section(6.0, 8.0), 100.0), stick("b", section(6.0, 8.0), 110.0)]);
        assert_eq!(marks(&found), ["a", "b"]);
        assert!(found.bars.is_empty() && found.short().next().is_none());
        // The longer one is offered the one that holds either.
        assert_eq!([found.missing[0].rip, found.missing[1].rip], [None, Some(0)]);
        assert_eq!(found.unused, [(0, 1), (1, 3), (2, 1)]);
    }

    /// Two of 90 go into one 192 as well as into two 96: 192 in either way; one of 90 begins the 96.
    #[test]
    fn little_of_the_pile_is_begun() {
        let s = section(4.0, 6.0);
        let found = answer(vec![lot(s, 192.0, 1), lot(s, 96.0, 2)], &[stick("a", s, 90.0)]);
        assert_eq!(found.bars, [PileBar { lot: 1, sticks: vec!["a".to_owned()], left: found.bars[0].left }]);
        assert!(found.bars[0].left.is_near(Length::inches(6.0), HAIR * 2.0));
        assert_eq!(found.unused, [(0, 1), (1, 1)]);
    }

    #[test]
    fn an_empty_pile_gives_nothing() {
        let s = section(4.0, 6.0);
        for yard in [Vec::new(), vec![lot(s, 192.0, 0)]] {
            let found = answer(yard, &[stick("a", s, 90.0)]);
            assert_eq!(marks(&found), ["a"]);
            assert!(found.bars.is_empty() && found.unused.is_empty() && found.is_proven());
            assert_eq!(found.missing[0].longest, None);
        }
    }

    /// More lots than the search takes: packed by eye, and never called proven where something is missing.
    #[test]
    fn many_lots_are_packed_by_eye() {
        let s = section(4.0, 6.0);
        let yard = (0..45).map(|n| lot(s, 100.0 + f64::from(n), 1)).collect();
        let sticks: Vec<StickOrder> = (0..46).map(|n| stick(&n.to_string(), s, 99.0 - f64::from(n) / 8.0)).collect();
        let found = answer(yard, &sticks);
        assert_eq!((found.bars.len(), found.missing.len(), found.is_proven()), (45, 1, false));
    }
}
