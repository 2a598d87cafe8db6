//! The order list: every stick rounded up to a length the mill has.
use std::borrow::Cow;

use super::grade::grade_words;
use super::least::{Least, Wish, cost_of, least, n_of};
use super::offers::{Offer, offers};
use super::spare::add_spares;
use super::stock::Bar;
use crate::materials::{Section, species};
use crate::project::{Heart, Mill, OrderAim, Project};
use crate::tickets::{Role, Stick};
use crate::units::{Length, Money, Volume, Weight, sort_by_number, sort_with};

/// What one stick asks of the mill.
#[derive(Clone, Debug, PartialEq)]
pub struct StickOrder {
    /// The stick.
    pub mark: String,
    /// What it does.
    pub role: Role,
    /// What it comes out of.
    pub kind: Kind,
    /// Finished length, end to end with tenons and laps.
    pub net: Length,
    /// Docked from both ends together.
    pub allowance: Length,
    /// The stock it comes out of, or its share of one that holds several.
    pub ordered: Length,
}

/// What sticks have in common that may come out of one stick of stock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kind {
    /// Section as ordered.
    pub section: Section,
    /// Where its heart should be.
    pub heart: Heart,
    /// The delivery it comes with: 1 or 2.
    pub delivery: usize,
}

/// One line of the order.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderLine {
    /// Section as ordered.
    pub section: Section,
    /// Where the heart should be.
    pub heart: Heart,
    /// The delivery it comes with: 1 or 2.
    pub delivery: usize,
    /// Length to ask for.
    pub length: Length,
    /// How many, spares among them.
    pub count: usize,
    /// How many of them are spares: the last of the line.
    pub n_spare: usize,
    /// Pieces of the same section and length on the lines before this one.
    pub before: usize,
    /// The sticks that come out of each that is no spare.
    pub holds: Vec<Vec<String>>,
    /// What to ask of the wood, in the trade's words.
    pub words: Vec<Cow<'static, str>>,
    /// Board feet of the line.
    pub volume: Volume,
    /// Green weight of the line.
    pub weight: Weight,
    /// Price of the line.
    pub price: Money,
}

impl OrderLine {
    /// What the piece of that number is for, counted from one.
    #[must_use]
    pub fn piece_words(&self, number: usize) -> String {
        let marks = number.checked_sub(1).and_then(|place| self.holds.get(place));
        marks.map_or_else(|| "spare".to_owned(), |marks| marks.join(" + "))
    }

    /// "2 of them spare"; nothing where none is.
    #[must_use]
    pub fn spare_words(&self) -> Option<String> {
        (self.n_spare > 0).then(|| match self.count {
            count if count == self.n_spare => "spare".to_owned(),
            _ => format!("{} of them spare", self.n_spare),
        })
    }

    pub(super) fn kind(&self) -> Kind {
        Kind { section: self.section, heart: self.heart, delivery: self.delivery }
    }

    /// Counts, weighs and prices the line.
    pub(super) fn reckon(&mut self, project: &Project) {
        self.count = self.holds.len() + self.n_spare;
        self.volume = self.section.area() * self.length * self.count as f64;
        let density = species(&project.frame.species).map(|wood| wood.green_density);
        self.weight = density.map_or(Weight::ZERO, |density| density * self.volume);
        self.price = project.mill.price_of_sticks(self.section, self.length, self.heart, self.count);
    }
}

/// What is known of the best that sticks of one kind can be had for.
#[derive(Clone, Debug, PartialEq)]
pub struct Buying {
    /// What they have in common.
    pub kind: Kind,
    /// Price of its lines, spares too.
    pub price: Money,
    /// No packing of these sticks into these lengths that meets the aim as well costs less.
    pub bound: Money,
    /// No packing of these sticks has fewer pieces, spares not counted.
    pub least_pieces: usize,
    /// No packing meets the aim better.
    pub is_proven: bool,
}

/// The whole order.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// What it is best at.
    pub aim: OrderAim,
    /// Lines by delivery, then section, then length.
    pub lines: Vec<OrderLine>,
    /// What each stick asks.
    pub sticks: Vec<StickOrder>,
    /// For each kind, how far it is from the best.
    pub buying: Vec<Buying>,
    /// Sticks no length of the mill is long enough for, each with its length with allowance.
    pub unplaced: Vec<(String, Length)>,
    /// Sticks for which all that is long enough is used up, each with its length with allowance.
    pub lacking: Vec<(String, Length)>,
    /// Spares for which nothing is left, by section.
    pub lacking_spares: Vec<(Section, usize)>,
    /// Board feet of all lines.
    pub volume: Volume,
    /// Green weight of all lines.
    pub weight: Weight,
    /// Price of all lines.
    pub price: Money,
}

/// Works out what to ask the mill for.
///
/// Sticks of one section, with the same wish for the heart and of the same delivery, come out of the same stock, as the
/// aim asks: for the least price, long sticks each get the length that costs least and holds them with trim at
/// both ends, and sticks short enough that two come out of the longest stock are packed several to a stick.
/// Purlins and blocks need no trim.
#[must_use]
pub fn order(project: &Project, sticks: &[Stick]) -> Order {
    let mut order = Order {
        aim: project.buying.aim,
        lines: Vec::new(),
        sticks: asked(project, sticks),
        buying: Vec::new(),
        unplaced: Vec::new(),
        lacking: Vec::new(),
        lacking_spares: Vec::new(),
        volume: Volume::ZERO,
        weight: Weight::ZERO,
        price: Money::ZERO,
    };
    let kinds = kinds(&order.sticks);
    let mut left: Vec<(Section, Vec<Offer>)> = Vec::new();
    for kind in &kinds {
        if left.iter().all(|(section, _)| *section != kind.section) {
            left.push((kind.section, offers(&project.mill, kind.section)));
        }
        let Some((_, offers)) = left.iter_mut().find(|(section, _)| *section == kind.section) else { continue };
        let is_alone = kinds.iter().filter(|other| other.section == kind.section).count() == 1;
        pack_kind(project, &mut order, *kind, offers, is_alone);
    }
    add_spares(project, &mut order, &mut left);
    number(&mut order.lines);
    order.volume = order.lines.iter().map(|line| line.volume).sum();
    order.weight = order.lines.iter().map(|line| line.weight).sum();
    order.price = order.lines.iter().map(|line| line.price).sum();
    order
}

/// Packs the sticks of one kind, and takes what they need off what is left.
fn pack_kind(project: &Project, order: &mut Order, kind: Kind, offers: &mut [Offer], is_alone: bool) {
    let of_kind = order.sticks.iter().enumerate().filter(|(_, stick)| stick.kind == kind);
    let (places, wanted): (Vec<usize>, Vec<(String, Length)>) =
        of_kind.map(|(place, stick)| (place, (stick.mark.clone(), stick.net + stick.allowance))).unzip();
    let mut marks: Marks<'_> = wanted.iter().zip(places).map(|((mark, _), place)| (mark.as_str(), place)).collect();
    sort_with(&mut marks, |a, b| a.0.cmp(b.0));
    let wish = Wish { wanted: &wanted, offers, kerf: project.mill.kerf, aim: project.buying.aim, is_alone };
    let found = least(&wish);
    let cost = cost_of(&found.bars, offers);
    for offer in offers {
        offer.count = offer.count.map(|count| count.saturating_sub(n_of(&found.bars, offer)));
    }
    share_out(&found.bars, &mut order.sticks, &marks);
    let Least { bars, unplaced, lacking, bound, least_bars, is_proven } = found;
    let lines = lines(project, kind, bars, (&order.sticks, &marks));
    let price: Money = lines.iter().map(|line| line.price).sum();
    // Costs are in proportion to prices: one of the least cost has the least price.
    let bound = if bound >= cost {
        price
    } else {
        Money::cents((price.to_cents() as f64 * (bound as f64 / cost as f64)) as i64)
    };
    order.buying.push(Buying { kind, price, bound, least_pieces: least_bars, is_proven });
    order.lines.extend(lines);
    order.unplaced.extend(unplaced);
    order.lacking.extend(lacking);
}

/// What each stick asks. Where nothing is left to come first, all comes at once.
fn asked(project: &Project, sticks: &[Stick]) -> Vec<StickOrder> {
    let mut asked: Vec<StickOrder> = sticks.iter().map(|stick| ask(project, stick)).collect();
    if asked.iter().all(|stick| stick.kind.delivery == 2) {
        asked.iter_mut().for_each(|stick| stick.kind.delivery = 1);
    }
    asked
}

fn ask(project: &Project, stick: &Stick) -> StickOrder {
    let allowance = docked_from(&project.mill, stick.role);
    let net = stick.net_length();
    let kind = Kind {
        section: stick.timber.ordered,
        heart: project.buying.heart_of(stick.role),
        delivery: project.buying.delivery_of(stick.role),
    };
    StickOrder { mark: stick.mark.clone(), role: stick.role, kind, net, allowance, ordered: net + allowance }
}

/// What is docked from both ends together.
fn docked_from(mill: &Mill, role: Role) -> Length {
    match role {
        Role::Purlin | Role::Block => Length::ZERO,
        _ => mill.trim_each_end * 2.0,
    }
}

/// Kinds by delivery, then as their sections stand in the frame.
fn kinds(asked: &[StickOrder]) -> Vec<Kind> {
    let (mut kinds, mut sections): (Vec<Kind>, Vec<Section>) = (Vec::new(), Vec::new());
    for stick in asked {
        if !sections.contains(&stick.kind.section) {
            sections.push(stick.kind.section);
        }
        if !kinds.contains(&stick.kind) {
            kinds.push(stick.kind);
        }
    }
    let place = |section: Section| sections.iter().position(|known| *known == section);
    sort_with(&mut kinds, |a, b| (a.delivery, place(a.section)).cmp(&(b.delivery, place(b.section))));
    kinds
}

/// Marks of sticks in their order, each with its place among all sticks: found without going through them all.
type Marks<'a> = Vec<(&'a str, usize)>;

fn place_of(marks: &Marks<'_>, mark: &str) -> Option<usize> {
    let found = marks.binary_search_by(|(known, _)| (*known).cmp(mark)).ok()?;
    marks.get(found).map(|(_, place)| *place)
}

/// A stick alone in its stock is ordered at the stock's length.
fn share_out(bars: &[Bar], asked: &mut [StickOrder], marks: &Marks<'_>) {
    for bar in bars {
        if let [only] = bar.sticks.as_slice()
            && let Some(stick) = place_of(marks, only).and_then(|place| asked.get_mut(place))
        {
            stick.ordered = bar.length;
        }
    }
}

fn lines(project: &Project, kind: Kind, bars: Vec<Bar>, (asked, marks): (&[StickOrder], &Marks<'_>)) -> Vec<OrderLine> {
    let mut lines: Vec<OrderLine> = Vec::new();
    for bar in bars {
        match lines.iter_mut().find(|line| line.length == bar.length) {
            Some(line) => line.holds.push(bar.sticks),
            None => lines.push(OrderLine {
                section: kind.section,
                heart: kind.heart,
                delivery: kind.delivery,
                length: bar.length,
                count: 0,
                n_spare: 0,
                before: 0,
                holds: vec![bar.sticks],
                words: Vec::new(),
                volume: Volume::ZERO,
                weight: Weight::ZERO,
                price: Money::ZERO,
            }),
        }
    }
    sort_by_number(&mut lines, |line| -line.length.to_inches());
    for line in &mut lines {
        let of = |mark: &'_ String| place_of(marks, mark).and_then(|place| asked.get(place));
        let sticks = line.holds.iter().flatten().filter_map(of).map(|stick| (stick.role, stick.mark.as_str()));
        line.words = grade_words(project, kind.heart, sticks);
        line.reckon(project);
    }
    lines
}

/// Pieces of one section and length are numbered through, on whatever lines they stand.
fn number(lines: &mut [OrderLine]) {
    for place in 0..lines.len() {
        let (above, rest) = lines.split_at_mut(place);
        if let Some(line) = rest.first_mut() {
            let alike = above.iter().filter(|other| other.section == line.section && other.length == line.length);
            line.before = alike.map(|other| other.count).sum();
        }
    }
}
