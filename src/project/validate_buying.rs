//! Values of the mill, its yard, the truck and the pieces that came, that cannot be.
use super::validate::Check;
use super::{Mill, Piece, Prices, Problem, Project};
use crate::materials::Section;
use crate::units::{Length, Money, Weight};

/// Narrowest and widest, shortest and longest stick of a yard.
const SIZE: (f64, f64) = (0.5, 24.0);
const LONG: (f64, f64) = (12.0, 720.0);
/// Letters of what is asked of one role's wood.
const MOST_LETTERS: usize = 120;
/// Wetter than any wood is.
const WETTEST_PERCENT: f64 = 250.0;

/// Collects them.
pub(super) fn buying(check: &mut Check, project: &Project) {
    mill(check, &project.mill);
    prices(check, &project.buying.prices);
    for own in &project.buying.words {
        check.problems.add_if(own.words.chars().count() > MOST_LETTERS, || {
            let says = "More than 120 characters: a mill reads the first few words.";
            Problem::stop(format!("buying.words.{}", own.role.name()), says)
        });
    }
    let spares = project.buying.spares;
    check.problems.add_if(spares.each_section > 20, || {
        Problem::stop("buying.spares.each_section", "More than twenty spares of a section are no spares.")
    });
    let finish = project.buying.finish;
    check
        .problems
        .add_if(finish.coats > 10, || Problem::stop("buying.finish.coats", "More than ten coats are not put on."));
    check.problems.add_if(!(1.0..=2000.0).contains(&finish.cover_ft2_per_gallon), || {
        let says = "A gallon of finish covers between 1 and 2,000 square feet.";
        Problem::stop("buying.finish.cover_ft2_per_gallon", says)
    });
    yard(check, project);
    truck(check, project);
    for (id, piece) in &project.progress.pieces {
        came(check, id, piece);
    }
}

fn mill(check: &mut Check, mill: &Mill) {
    let inches = Length::inches;
    check.problems.add_if(mill.lengths.is_empty() || mill.lengths.len() > 40, || {
        Problem::stop("mill.lengths", "Say which lengths the mill has: at least one, at most forty.")
    });
    for (index, offered) in mill.lengths.iter().enumerate() {
        check.within(&format!("mill.lengths.{index}"), "A length of the mill", *offered, inches(24.0), inches(720.0));
    }
    check.within("mill.trim_each_end", "The trim", mill.trim_each_end, Length::ZERO, inches(24.0));
    check.within("mill.kerf", "The kerf", mill.kerf, Length::ZERO, inches(2.0));
    let asked = mill.section_prices.iter().map(|price| price.per_board_foot).chain([mill.per_board_foot]);
    check.problems.add_if(asked.into_iter().any(is_below_nothing), || {
        Problem::stop("mill.per_board_foot", "A price cannot be below nothing.")
    });
    for (index, price) in mill.long_prices.iter().enumerate() {
        let field = format!("mill.long_prices.{index}.over");
        check.within(&field, "The length", price.over, Length::ZERO, inches(720.0));
        check.problems.add_if(is_below_nothing(price.more), || {
            let says = "Long sticks cannot cost less than short ones here: lower the common price instead.";
            Problem::stop(format!("mill.long_prices.{index}.more"), says)
        });
    }
    check.problems.add_if(!(0.0..=3.0).contains(&mill.free_of_heart_more), || {
        let says = "Sticks free of heart cost between nothing and four times the price.";
        Problem::stop("mill.free_of_heart_more", says)
    });
    for (index, limit) in mill.limits.iter().enumerate() {
        let field = format!("mill.limits.{index}.count");
        check.within(&field, "A length of the mill", limit.length, inches(24.0), inches(720.0));
        check.problems.add_if(limit.count > 500, || {
            Problem::stop(field, "More than 500 of one length are as many as wanted: take the number away.")
        });
    }
    check.problems.add_if(mill.heaviest_pick.to_pounds() < 20.0, || {
        Problem::stop("mill.heaviest_pick", "No beam piece is lighter than 20 lb (9 kg).")
    });
}

fn is_below_nothing(price: Money) -> bool {
    price.to_f64() < 0.0
}

fn prices(check: &mut Check, prices: &Prices) {
    let all = [
        ("sheet_100_feet", prices.sheet_100_feet),
        ("trim_100_feet", prices.trim_100_feet),
        ("roof_screw", prices.roof_screw),
        ("purlin_screw", prices.purlin_screw),
        ("ledger_fixing", prices.ledger_fixing),
        ("tie", prices.tie),
        ("peg", prices.peg),
        ("post_base", prices.post_base),
        ("concrete_bag", prices.concrete_bag),
        ("concrete_yard", prices.concrete_yard),
        ("pier_bar", prices.pier_bar),
        ("finish_gallon", prices.finish_gallon),
        ("load", prices.load),
    ];
    for (name, price) in all {
        check.problems.add_if(price.is_some_and(is_below_nothing), || {
            Problem::stop(format!("buying.prices.{name}"), "A price cannot be below nothing.")
        });
    }
}

fn section(check: &mut Check, field: &str, name: &str, section: Section) {
    let (low, high) = (Length::inches(SIZE.0), Length::inches(SIZE.1));
    check.within(&format!("{field}.breadth"), name, section.breadth, low, high);
    check.within(&format!("{field}.depth"), name, section.depth, low, high);
}

fn yard(check: &mut Check, project: &Project) {
    for (index, lot) in project.yard.iter().enumerate() {
        let field = format!("yard.{index}");
        section(check, &format!("{field}.section"), "A stick of the yard", lot.section);
        let (low, high) = (Length::inches(LONG.0), Length::inches(LONG.1));
        check.within(&format!("{field}.length"), "A stick of the yard", lot.length, low, high);
        check.problems.add_if(lot.count > 500, || {
            Problem::stop(format!("{field}.count"), "More than 500 of one kind are not counted.")
        });
    }
}

fn truck(check: &mut Check, project: &Project) {
    let (truck, crew) = (&project.truck, project.crew);
    let inches = Length::inches;
    let limits = [
        ("truck.bed", "The bed", truck.bed, 24.0, 720.0),
        ("truck.bed_width", "The bed's width", truck.bed_width, 12.0, 144.0),
        ("truck.overhang", "The overhang", truck.overhang, 0.0, 240.0),
        ("truck.coupling_to_bed", "The drawbar", truck.coupling_to_bed, 0.0, 240.0),
        ("truck.bed_to_axle", "The axle", truck.bed_to_axle, 0.0, 720.0),
    ];
    for (field, name, value, low, high) in limits {
        check.within(field, name, value, inches(low), inches(high));
    }
    check.problems.add_if(truck.payload < Weight::pounds(50.0), || {
        Problem::stop("truck.payload", "A truck that carries less than 50 lb (23 kg) brings no timber.")
    });
    let own = truck.own_weight.unwrap_or(Weight::pounds(100.0));
    check.problems.add_if(!(Weight::pounds(50.0)..=Weight::pounds(30_000.0)).contains(&own), || {
        let says =
            "A trailer weighs between 50 and 30,000 lb (23 and 13,600 kg) itself; leave it empty if you do not know.";
        Problem::stop("truck.own_weight", says)
    });
    check.problems.add_if(crew.n_people == 0 || crew.n_people > 50, || {
        Problem::stop("crew.n_people", "Say how many carry: at least one, at most fifty.")
    });
    check.problems.add_if(crew.each_lifts < Weight::pounds(10.0) || crew.each_lifts > Weight::pounds(200.0), || {
        Problem::stop("crew.each_lifts", "One carries between 10 and 200 lb (5 and 90 kg) of a stick.")
    });
}

fn came(check: &mut Check, id: &str, piece: &Piece) {
    let field = format!("progress.pieces.{id}");
    for (name, measured) in [("near", piece.near), ("far", piece.far)] {
        if let Some(measured) = measured {
            section(check, &format!("{field}.{name}"), "The measured size", measured);
        }
    }
    let (low, high) = (Length::inches(LONG.0), Length::inches(LONG.1));
    if let Some(length) = piece.real_length {
        check.within(&format!("{field}.real_length"), "The measured length", length, low, high);
    }
    if let Some(crown) = piece.crown {
        check.within(&format!("{field}.crown"), "The crown", crown, Length::ZERO, Length::inches(24.0));
    }
    check.problems.add_if(piece.moisture_percent.is_some_and(|wet| !(0.0..=WETTEST_PERCENT).contains(&wet)), || {
        Problem::stop(format!("{field}.moisture_percent"), "Wood holds between 0 and 250 % of its dry weight in water.")
    });
}
