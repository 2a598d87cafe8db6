//! The order list: every stick rounded up to a length the mill has.
use super::least::least;
use super::stock::Bar;
use crate::materials::{Section, species};
use crate::project::{HAIR, Mill, Project};
use crate::tickets::{Role, Stick};
use crate::units::{Length, Money, Volume, Weight, sort_by_number};

/// What one stick asks of the mill.
#[derive(Clone, Debug, PartialEq)]
pub struct StickOrder {
    /// The stick.
    pub mark: String,
    /// Section as ordered.
    pub section: Section,
    /// Finished length, end to end with tenons and laps.
    pub net: Length,
    /// Docked from both ends together.
    pub allowance: Length,
    /// The stock it comes out of, or its share of one that holds several.
    pub ordered: Length,
}

/// One line of the order.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderLine {
    /// Section as ordered.
    pub section: Section,
    /// Length to ask for.
    pub length: Length,
    /// How many.
    pub count: usize,
    /// The sticks that come out of each of them.
    pub holds: Vec<Vec<String>>,
    /// Board feet of the line.
    pub volume: Volume,
    /// Green weight of the line.
    pub weight: Weight,
    /// Price of the line.
    pub price: Money,
}

/// What is known of the least that the timber of one section can cost.
#[derive(Clone, Debug, PartialEq)]
pub struct Buying {
    /// Section as ordered.
    pub section: Section,
    /// Price of its lines.
    pub price: Money,
    /// No packing of these sticks into these lengths costs less.
    pub bound: Money,
    /// Its lines cost no more than that.
    pub is_proven: bool,
}

/// The whole order.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// Lines by section, then length.
    pub lines: Vec<OrderLine>,
    /// What each stick asks.
    pub sticks: Vec<StickOrder>,
    /// For each section, how far its price is from the least.
    pub buying: Vec<Buying>,
    /// Sticks no length of the mill is long enough for, each with its length with allowance.
    pub unplaced: Vec<(String, Length)>,
    /// Board feet of all lines.
    pub volume: Volume,
    /// Green weight of all lines.
    pub weight: Weight,
    /// Price of all lines.
    pub price: Money,
}

impl Order {
    /// What no order of these sticks from these lengths costs less than.
    #[must_use]
    pub fn least_price(&self) -> Money {
        self.buying.iter().map(|buying| buying.bound).sum()
    }

    /// Every section's lines are proven to cost least.
    #[must_use]
    pub fn is_cheapest(&self) -> bool {
        self.buying.iter().all(|buying| buying.is_proven)
    }

    /// How far the order is from the cheapest, in words.
    #[must_use]
    pub fn proof_words(&self) -> String {
        if self.is_cheapest() {
            return "proven cheapest from these lengths".to_owned();
        }
        let least = self.least_price().to_f64();
        let over = (self.price.to_f64() - least).max(0.0) / least.max(0.01);
        let percent = (over * 100.0).ceil().max(1.0);
        format!("within {percent:.0} % of the least from these lengths")
    }
}

/// Works out what to ask the mill for.
///
/// Long sticks each get the shortest length that holds them with trim at both ends; sticks short
/// enough that two come out of the longest stock are packed several to a stick, with the least wood known to do.
/// Purlins and blocks need no trim.
#[must_use]
pub fn order(project: &Project, sticks: &[Stick]) -> Order {
    let mill = &project.mill;
    let mut asked: Vec<StickOrder> = sticks.iter().map(|stick| ask(mill, stick)).collect();
    let mut sections: Vec<Section> = Vec::new();
    for stick in &asked {
        if !sections.contains(&stick.section) {
            sections.push(stick.section);
        }
    }
    let mut order = Order {
        lines: Vec::new(),
        sticks: Vec::new(),
        buying: Vec::new(),
        unplaced: Vec::new(),
        volume: Volume::ZERO,
        weight: Weight::ZERO,
        price: Money::cents(0),
    };
    for section in sections {
        let wanted: Vec<(String, Length)> = asked
            .iter()
            .filter(|stick| stick.section == section)
            .map(|stick| (stick.mark.clone(), stick.net + stick.allowance))
            .collect();
        let found = least(&wanted, &mill.lengths, mill.kerf);
        order.unplaced.extend(found.unplaced);
        share_out(&found.bars, &mut asked);
        let lines = lines(project, section, found.bars);
        order.buying.push(buying(mill, section, &lines, found.bound));
        order.lines.extend(lines);
    }
    order.volume = order.lines.iter().map(|line| line.volume).sum();
    order.weight = order.lines.iter().map(|line| line.weight).sum();
    order.price = order.lines.iter().map(|line| line.price).sum();
    order.sticks = asked;
    order
}

fn buying(mill: &Mill, section: Section, lines: &[OrderLine], bound: Length) -> Buying {
    let long: Length = lines.iter().map(|line| line.length * line.count as f64).sum();
    let price: Money = lines.iter().map(|line| line.price).sum();
    let is_proven = long <= bound + HAIR;
    let least = mill.price_of(section) * (section.area() * bound).to_board_feet();
    Buying { section, price, bound: if is_proven { price } else { least.min(price) }, is_proven }
}

fn ask(mill: &Mill, stick: &Stick) -> StickOrder {
    let allowance = match stick.role {
        Role::Purlin | Role::Block => Length::ZERO,
        _ => mill.trim_each_end * 2.0,
    };
    let net = stick.net_length();
    StickOrder { mark: stick.mark.clone(), section: stick.timber.ordered, net, allowance, ordered: net + allowance }
}

/// A stick alone in its stock is ordered at the stock's length.
fn share_out(bars: &[Bar], asked: &mut [StickOrder]) {
    for bar in bars {
        if let [only] = bar.sticks.as_slice()
            && let Some(stick) = asked.iter_mut().find(|stick| stick.mark == *only)
        {
            stick.ordered = bar.length;
        }
    }
}

fn lines(project: &Project, section: Section, bars: Vec<Bar>) -> Vec<OrderLine> {
    let mut lines: Vec<OrderLine> = Vec::new();
    for bar in bars {
        match lines.iter_mut().find(|line| line.length == bar.length) {
            Some(line) => line.holds.push(bar.sticks),
            None => lines.push(OrderLine {
                section,
                length: bar.length,
                count: 0,
                holds: vec![bar.sticks],
                volume: Volume::ZERO,
                weight: Weight::ZERO,
                price: Money::cents(0),
            }),
        }
    }
    sort_by_number(&mut lines, |line| -line.length.to_inches());
    let density = species(&project.frame.species).map(|wood| wood.green_density);
    for line in &mut lines {
        line.count = line.holds.len();
        line.volume = section.area() * line.length * line.count as f64;
        line.weight = density.map_or(Weight::ZERO, |density| density * line.volume);
        line.price = project.mill.price_of(section) * line.volume.to_board_feet();
    }
    lines
}
