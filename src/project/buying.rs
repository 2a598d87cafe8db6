//! How the timber is bought, and what the rest of the job costs.
use super::Role;
use crate::units::{Length, Money, sort_by_number};

/// What an order is best at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OrderAim {
    /// The least price.
    LeastCost,
    /// The fewest sticks to handle.
    FewestSticks,
    /// The lightest sticks to handle.
    LightestSticks,
}

impl OrderAim {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::LeastCost, Self::FewestSticks, Self::LightestSticks];

    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::LeastCost => "least price",
            Self::FewestSticks => "fewest sticks",
            Self::LightestSticks => "lightest sticks",
        }
    }
}

/// Where the heart of the tree is in a stick.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heart {
    /// As it falls from the saw.
    Either,
    /// The heart inside, away from every face.
    Boxed,
    /// No heart in it.
    Free,
}

impl Heart {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Either, Self::Boxed, Self::Free];

    /// In the trade's words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Either => "heart as it falls",
            Self::Boxed => "boxed heart",
            Self::Free => "free of heart",
        }
    }

    /// Of real wood, what is known of it.
    #[must_use]
    pub const fn known(self) -> &'static str {
        match self {
            Self::Either => "not known",
            _ => self.name(),
        }
    }

    /// What is known of real wood does for that wish; what nobody knows may.
    #[must_use]
    pub fn may_serve(self, wish: Self) -> bool {
        self == Self::Either || wish == Self::Either || self == wish
    }
}

/// Where the heart should be in the sticks of one role.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HeartWish {
    /// Of which sticks.
    pub role: Role,
    /// Where it should be.
    pub heart: Heart,
}

/// What the user asks of the wood of one role beside what is usual.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RoleWords {
    /// Of which sticks.
    pub role: Role,
    /// In his own words, parted by commas.
    pub words: String,
}

/// Spare sticks: of each section the larger of the two numbers, in the longest length ordered of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spares {
    /// For each section.
    pub each_section: usize,
    /// One for every so many sticks begun; none where zero.
    pub one_in: usize,
}

impl Spares {
    /// How many for so many sticks of one section.
    #[must_use]
    pub const fn for_count(self, count: usize) -> usize {
        let by_count = if self.one_in == 0 { 0 } else { count.div_ceil(self.one_in) };
        if by_count > self.each_section { by_count } else { self.each_section }
    }
}

/// A price of long sticks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LongPrice {
    /// Longer than this.
    pub over: Length,
    /// Asked for each board foot beside the common price.
    pub more: Money,
}

/// What everything but timber costs; nothing where it was not asked yet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Prices {
    /// A hundred feet of roof sheet: so long a run keeps a price by the metre to the cent.
    pub sheet_100_feet: Option<Money>,
    /// A hundred feet of trim.
    pub trim_100_feet: Option<Money>,
    /// A screw through the sheet.
    pub roof_screw: Option<Money>,
    /// A screw that holds a purlin.
    pub purlin_screw: Option<Money>,
    /// A screw or bolt of the ledger, with its washers.
    pub ledger_fixing: Option<Money>,
    /// A screw, strap or anchor at a rafter's seat or head.
    pub tie: Option<Money>,
    /// A peg.
    pub peg: Option<Money>,
    /// A post's base.
    pub post_base: Option<Money>,
    /// A bag of concrete.
    pub concrete_bag: Option<Money>,
    /// A cubic yard of ready-mixed concrete.
    pub concrete_yard: Option<Money>,
    /// A bar of a pier.
    pub pier_bar: Option<Money>,
    /// A gallon of finish.
    pub finish_gallon: Option<Money>,
    /// One load hauled.
    pub load: Option<Money>,
}

/// The finish put on the wood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Finish {
    /// How often it is put on; none where zero.
    pub coats: usize,
    /// Square feet that a gallon covers once, on rough wood.
    pub cover_ft2_per_gallon: f64,
}

/// How the timber is bought.
#[derive(Clone, Debug, PartialEq)]
pub struct Buying {
    /// What the order is best at.
    pub aim: OrderAim,
    /// Sticks beyond those of the frame.
    pub spares: Spares,
    /// Where the heart should be; as it falls in roles not named.
    pub hearts: Vec<HeartWish>,
    /// What is asked of the wood beside what is usual; nothing in roles not named.
    pub words: Vec<RoleWords>,
    /// Sticks that come later, so that they are not cut dry; one delivery where none are named.
    pub second_delivery: Vec<Role>,
    /// Prices of the rest of the job.
    pub prices: Prices,
    /// The finish.
    pub finish: Finish,
}

impl Buying {
    /// Where the heart should be in sticks of a role.
    #[must_use]
    pub fn heart_of(&self, role: Role) -> Heart {
        self.hearts.iter().find(|wish| wish.role == role).map_or(Heart::Either, |wish| wish.heart)
    }

    /// Says where the heart should be in sticks of a role.
    pub fn wish_heart(&mut self, role: Role, heart: Heart) {
        self.hearts.retain(|wish| wish.role != role);
        if heart != Heart::Either {
            self.hearts.push(HeartWish { role, heart });
            sort_by_number(&mut self.hearts, |wish| f64::from(wish.role as u8));
        }
    }

    /// What the user asks of the wood of a role.
    #[must_use]
    pub fn words_of(&self, role: Role) -> &str {
        self.words.iter().find(|own| own.role == role).map_or("", |own| &own.words)
    }

    /// Asks that of the wood of a role; nothing where there are no words.
    pub fn ask_words(&mut self, role: Role, words: String) {
        self.words.retain(|own| own.role != role);
        if !words.trim().is_empty() {
            self.words.push(RoleWords { role, words });
            sort_by_number(&mut self.words, |own| f64::from(own.role as u8));
        }
    }

    /// Says whether sticks of a role come with the second delivery.
    pub fn bring_later(&mut self, role: Role, later: bool) {
        self.second_delivery.retain(|known| *known != role);
        if later {
            self.second_delivery.push(role);
            sort_by_number(&mut self.second_delivery, |role| f64::from(*role as u8));
        }
    }

    /// The delivery that sticks of a role come with: 1 or 2.
    #[must_use]
    pub fn delivery_of(&self, role: Role) -> usize {
        if self.second_delivery.contains(&role) { 2 } else { 1 }
    }

    /// What is usual: no spares asked for, big sticks with the heart boxed and braces free of it (common practice).
    #[must_use]
    pub fn usual() -> Self {
        let wish = |role, heart| HeartWish { role, heart };
        Self {
            aim: OrderAim::LeastCost,
            spares: Spares { each_section: 0, one_in: 0 },
            hearts: vec![
                wish(Role::Post, Heart::Boxed),
                wish(Role::Beam, Heart::Boxed),
                wish(Role::Brace, Heart::Free),
            ],
            words: Vec::new(),
            second_delivery: Vec::new(),
            prices: Prices::default(),
            finish: Finish { coats: 0, cover_ft2_per_gallon: 100.0 },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wish_is_taken_back_whole() {
        let usual = Buying::usual();
        let mut buying = usual.clone();
        buying.wish_heart(Role::Rafter, Heart::Free);
        buying.bring_later(Role::Rafter, true);
        buying.bring_later(Role::Brace, true);
        assert_eq!((buying.heart_of(Role::Rafter), buying.delivery_of(Role::Rafter)), (Heart::Free, 2));
        assert_eq!(buying.second_delivery, [Role::Brace, Role::Rafter]);
        buying.wish_heart(Role::Rafter, Heart::Either);
        buying.bring_later(Role::Rafter, false);
        buying.bring_later(Role::Brace, false);
        assert_eq!(buying, usual);
    }

    /// Thirteen sticks, one spare in ten begun: two; one for each section where that is more.
    #[test]
    fn spares_follow_the_larger_rule() {
        let spares = |each_section, one_in, count| Spares { each_section, one_in }.for_count(count);
        assert_eq!([spares(0, 0, 13), spares(1, 0, 13), spares(1, 10, 13), spares(3, 10, 13)], [0, 1, 2, 3]);
    }
}
