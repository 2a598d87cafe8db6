//! Prices, trucks and yards of the two invented examples, and of a new job, which has been told no price.
//!
//! Every number here is made up; none comes from a real mill, shop or maker.
use super::{Buying, Crew, Finish, Heart, Lot, Mill, Prices, Project, Truck};
use crate::materials::Section;
use crate::units::{Length, Money, UnitSystem, Weight};

/// What the barn's mill has and asks.
pub fn inch_mill() -> Mill {
    Mill {
        lengths: [8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0].map(Length::feet).to_vec(),
        trim_each_end: Length::inches(3.0),
        kerf: Length::inches(0.25),
        per_board_foot: Money::of(1.4),
        section_prices: Vec::new(),
        long_prices: Vec::new(),
        free_of_heart_more: 0.3,
        limits: Vec::new(),
        heaviest_pick: Weight::pounds(450.0),
    }
}

/// What the store's mill has and asks.
pub fn millimetre_mill() -> Mill {
    Mill {
        lengths: [2.5, 3.0, 4.0, 5.0, 6.0].map(Length::metres).to_vec(),
        trim_each_end: Length::millimetres(50.0),
        kerf: Length::millimetres(6.0),
        per_board_foot: Money::of(1.3),
        heaviest_pick: Weight::kilograms(230.0),
        ..inch_mill()
    }
}

fn prices() -> Prices {
    let cents = |cents| Some(Money::cents(cents));
    Prices {
        sheet_100_feet: cents(31_000),
        trim_100_feet: cents(22_000),
        roof_screw: cents(12),
        purlin_screw: cents(45),
        ledger_fixing: cents(380),
        tie: cents(95),
        peg: cents(110),
        post_base: cents(4200),
        concrete_bag: cents(640),
        concrete_yard: None,
        pier_bar: cents(450),
        finish_gallon: cents(5400),
        load: cents(6000),
    }
}

/// How the examples are bought.
pub fn buying() -> Buying {
    Buying { prices: prices(), finish: Finish { coats: 1, cover_ft2_per_gallon: 100.0 }, ..Buying::usual() }
}

/// What lies in the yard of the barn's mill.
pub fn inch_yard() -> Vec<Lot> {
    let lot = |breadth, depth, feet, count, remark: &str| Lot {
        section: Section::new(Length::inches(breadth), Length::inches(depth)),
        length: Length::feet(feet),
        count,
        heart: Heart::Either,
        remark: remark.to_owned(),
    };
    vec![
        lot(8.0, 8.0, 8.0, 2, "under the lean-to"),
        lot(8.0, 10.0, 14.0, 3, ""),
        lot(4.0, 8.0, 14.0, 9, "sawn in spring"),
        lot(4.0, 10.0, 14.0, 2, ""),
    ]
}

/// A truck and a crew as the road knows them: sizes of a common trailer, and what one of several carries (common practice).
pub fn truck(units: UnitSystem) -> Truck {
    match units {
        UnitSystem::Imperial => Truck {
            is_trailer: true,
            payload: Weight::pounds(2000.0),
            own_weight: None,
            bed: Length::feet(16.0),
            bed_width: Length::inches(76.0),
            overhang: Length::feet(4.0),
            coupling_to_bed: Length::feet(4.0),
            bed_to_axle: Length::feet(9.0),
        },
        UnitSystem::Metric => Truck {
            is_trailer: true,
            payload: Weight::kilograms(900.0),
            own_weight: None,
            bed: Length::metres(5.0),
            bed_width: Length::metres(1.9),
            overhang: Length::metres(1.2),
            coupling_to_bed: Length::metres(1.2),
            bed_to_axle: Length::metres(2.8),
        },
    }
}

/// Four friends.
pub fn crew(units: UnitSystem) -> Crew {
    let each_lifts = match units {
        UnitSystem::Imperial => Weight::pounds(75.0),
        UnitSystem::Metric => Weight::kilograms(35.0),
    };
    Crew { n_people: 4, each_lifts }
}

/// A new job knows no price, and nobody looked into the yard.
pub fn forget_what_was_asked(project: &mut Project) {
    project.buying = Buying::usual();
    project.yard = Vec::new();
}
