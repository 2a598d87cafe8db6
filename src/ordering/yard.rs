//! What comes out of the sticks that lie in the sawyer's yard, and what is missing then.
//!
//! Section by section, either way round: as much of the frame's length as can be placed, each stick docked as in the order and
//! parted from the next by the saw's cut; of such plans one that begins with little of the pile. A larger section is never
//! taken by itself: that a missing stick could be ripped out of one that is left is only said.
//! A stick that is to have its heart boxed, or to be free of it, comes out of wood that is so, or of wood nobody looked at:
//! then it is said that somebody must.
use super::order::StickOrder;
use super::yard_hearts::cut_section;
use crate::materials::Section;
use crate::project::{HAIR, Heart, Lot, Project};
use crate::units::{Length, UnitSystem, sort_by_number};

/// A stick of the pile and what comes out of it.
#[derive(Clone, Debug, PartialEq)]
pub struct PileBar {
    /// Its lot, as a place in the project's yard.
    pub lot: usize,
    /// Marks of the sticks that come out of it, longest first.
    pub sticks: Vec<String>,
    /// What is left of it.
    pub left: Length,
    /// The heart it must have for those sticks, where nobody knows what it has.
    pub look: Option<Heart>,
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
    /// Where its heart should be.
    pub heart: Heart,
    /// The longest stick of its section in the pile whose heart may be right; nothing where there is none of it.
    pub longest: Option<Length>,
    /// Sticks of its section lie there with another heart.
    pub has_other_heart: bool,
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

    /// Sticks of the pile whose heart must be looked at, lot by lot: the lot, how many of it, the heart they must have.
    #[must_use]
    pub fn to_look_at(&self) -> Vec<(usize, usize, Heart)> {
        let mut all: Vec<(usize, usize, Heart)> = Vec::new();
        for bar in &self.bars {
            let Some(heart) = bar.look else { continue };
            match all.iter_mut().find(|(lot, _, of)| *lot == bar.lot && *of == heart) {
                Some((_, n, _)) => *n += 1,
                None => all.push((bar.lot, 1, heart)),
            }
        }
        all
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
        let cut = cut_section(project, section, &wanted);
        answer.at_most_more += cut.at_most_more;
        for place in &cut.missing {
            let (at, stick) = wanted[*place];
            missing.push((at, lacking(&project.yard, stick)));
        }
        answer.bars.extend(cut.bars);
    }
    sort_by_number(&mut missing, |(at, _)| *at as f64);
    answer.missing = missing.into_iter().map(|(_, stick)| stick).collect();
    sort_by_number(&mut answer.bars, |bar| bar.lot as f64);
    answer.unused = unused(&project.yard, &answer.bars);
    offer_rips(&project.yard, &mut answer);
    answer
}

fn lacking(yard: &[Lot], stick: &StickOrder) -> Missing {
    let (section, heart) = (stick.kind.section, stick.kind.heart);
    let of_section = || yard.iter().filter(|lot| lot.count > 0 && same_section(lot.section, section));
    Missing {
        mark: stick.mark.clone(),
        section,
        needed: stick.net + stick.allowance,
        heart,
        longest: of_section().filter(|lot| lot.heart.may_serve(heart)).map(|lot| lot.length).reduce(Length::max),
        has_other_heart: of_section().any(|lot| !lot.heart.may_serve(heart)),
        rip: None,
    }
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
        // Out of wood with its heart boxed one free of heart can be ripped; not the other way round.
        let has_heart = |lot: &Lot| stick.heart != Heart::Boxed || lot.heart != Heart::Free;
        let holds =
            |lot: &Lot| lot.length + HAIR >= stick.needed && is_larger(lot.section, stick.section) && has_heart(lot);
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
        Lot { section, length: Length::inches(inches), count, heart: Heart::Either, remark: String::new() }
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
        assert_eq!(
            found.bars,
            [PileBar { lot: 1, sticks: vec!["a".to_owned()], left: found.bars[0].left, look: None }]
        );
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

    fn of_heart(heart: Heart, lot: Lot) -> Lot {
        Lot { heart, ..lot }
    }

    fn wished(heart: Heart, stick: StickOrder) -> StickOrder {
        StickOrder { kind: Kind { heart, ..stick.kind }, ..stick }
    }

    /// Of a boxed one, one free of heart and one nobody looked at, a stick that is to be free of heart takes the free one; the
    /// second takes the unknown one, which must be looked at; the third is missing, though a boxed one lies there.
    #[test]
    fn a_heart_that_is_wished_for_is_kept_to() {
        let s = section(4.0, 6.0);
        let yard =
            vec![of_heart(Heart::Boxed, lot(s, 100.0, 1)), lot(s, 100.0, 1), of_heart(Heart::Free, lot(s, 100.0, 1))];
        let free = |mark| wished(Heart::Free, stick(mark, s, 90.0));
        let found = answer(yard.clone(), &[free("a")]);
        assert_eq!((found.bars[0].lot, found.bars[0].look), (2, None));
        let found = answer(yard.clone(), &[free("a"), free("b"), free("c")]);
        assert_eq!((marks(&found).len(), found.is_proven()), (1, true));
        assert_eq!(found.to_look_at(), [(1, 1, Heart::Free)]);
        let lack = &found.missing[0];
        assert!(lack.has_other_heart && lack.longest == Some(Length::inches(100.0)));
        assert_eq!(found.unused, [(0, 1)]);
        // Where only the other heart lies there, nothing of it is of use.
        let found = answer(yard[..1].to_vec(), &[free("a")]);
        assert_eq!((found.missing[0].longest, found.missing[0].has_other_heart), (None, true));
        // As it falls, all three are.
        let any = |mark| stick(mark, s, 90.0);
        assert!(answer(yard, &[any("a"), any("b"), any("c")]).comes_out());
    }

    /// Boxed "a" and free "b" want 90 of what nobody looked at, 185 long: both fit its length and not its heart. With one of any
    /// heart in the place of "b" both come out of it.
    #[test]
    fn one_stick_has_one_heart() {
        let s = section(4.0, 6.0);
        let boxed = wished(Heart::Boxed, stick("a", s, 90.0));
        let yard = || vec![lot(s, 185.0, 1)];
        let found = answer(yard(), &[boxed.clone(), wished(Heart::Free, stick("b", s, 90.0))]);
        assert_eq!((found.bars.len(), found.missing.len()), (1, 1));
        // By length alone both come out, so more is not ruled out by what was reckoned.
        assert!(found.at_most_more.is_near(Length::inches(90.0), HAIR * 2.0));
        let found = answer(yard(), &[boxed, stick("b", s, 80.0)]);
        assert!(found.comes_out());
        assert_eq!(found.bars[0].sticks, ["a", "b"]);
        assert_eq!(found.bars[0].look, Some(Heart::Boxed));
    }

    /// Boxed 90 must have the boxed 185 or 100; "b" of any heart, 95 long, the rest. The boxed stick first takes either; whichever
    /// way round, both come out, the other out of what is left.
    #[test]
    fn what_one_wish_leaves_serves_the_next() {
        let s = section(4.0, 6.0);
        let yard = vec![of_heart(Heart::Boxed, lot(s, 190.0, 1)), of_heart(Heart::Free, lot(s, 60.0, 1))];
        let sticks = [wished(Heart::Boxed, stick("a", s, 90.0)), stick("b", s, 95.0), stick("c", s, 55.0)];
        let found = answer(yard, &sticks);
        assert!(found.comes_out() && found.is_proven());
        assert_eq!(found.bars[0].sticks, ["b", "a"]);
        assert!(found.bars[0].left.is_near(Length::inches(190.0 - 90.0 - 95.0 - 0.25), HAIR * 4.0));
    }

    /// A boxed 4 x 6 is not ripped out of a larger stick that is free of heart; one free of heart may be out of a boxed one.
    #[test]
    fn no_heart_is_ripped_out_of_wood_without_one() {
        let (large, s) = (section(8.0, 8.0), section(4.0, 6.0));
        let rip = |lies: Heart, wish: Heart| {
            let found = answer(vec![of_heart(lies, lot(large, 120.0, 1))], &[wished(wish, stick("a", s, 90.0))]);
            found.missing[0].rip
        };
        assert_eq!(rip(Heart::Free, Heart::Boxed), None);
        assert_eq!(rip(Heart::Boxed, Heart::Free), Some(0));
        assert_eq!(rip(Heart::Either, Heart::Boxed), Some(0));
    }
}
