//! The order in words for a message to the mill, and as rows for a spreadsheet.
use std::fmt::Write;

use super::grade::{full_words, sawn_words};
use super::order::{Order, OrderLine};
use crate::materials::species;
use crate::project::Project;
use crate::units::{Length, Money, UnitSystem, show_money, show_wood_volume};
use crate::wording::{length, weight};

/// How the cells of a row are parted, and how a decimal is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cells {
    /// Commas between cells, decimal points.
    Comma,
    /// Semicolons between cells, decimal commas.
    Semicolon,
}

/// The mark some spreadsheets need to read a file as UTF-8 (from memory).
const UTF8_MARK: char = '\u{feff}';

/// Cells of a row.
const N_CELLS: usize = 12;

/// The order as a few lines that fit a message.
#[must_use]
pub fn order_text(project: &Project, order: &Order) -> String {
    let mut out = String::new();
    // Writing to a String cannot fail.
    let _ = write_text(&mut out, project, order);
    out
}

fn write_text(out: &mut String, project: &Project, order: &Order) -> std::fmt::Result {
    let units = project.units;
    writeln!(out, "{}", project.name)?;
    if !project.note.is_empty() {
        writeln!(out, "{}", project.note)?;
    }
    let wood = species(&project.frame.species).map_or("Timber", |wood| wood.name.as_str());
    writeln!(out, "{wood}, rough sawn, green, full size; {} docked at each end is in the lengths.", docked(project))?;
    writeln!(out, "{}", full_words(units))?;
    sawn_words(project).iter().try_for_each(|says| writeln!(out, "{says}"))?;
    let deliveries = order.deliveries();
    for delivery in &deliveries {
        if deliveries.len() > 1 {
            let heavy = weight(delivery.weight, units);
            writeln!(out, "\n{}: {} sticks, about {heavy} green", delivery.name(), delivery.n_pieces)?;
        }
        write_lines(out, project, order.lines_of(delivery.number))?;
    }
    for (mark, needed) in &order.unplaced {
        writeln!(out, "{mark}: needs {}, longer than any length on the list", length(*needed, units))?;
    }
    for (mark, needed) in &order.lacking {
        writeln!(out, "{mark}: needs {}, and none is left", length(*needed, units))?;
    }
    let spares = match order.n_spare() {
        0 => String::new(),
        n => format!(" ({n} spare)"),
    };
    let price = match order.price {
        Money::ZERO => "no price said".to_owned(),
        price => show_money(price, &project.currency).to_string(),
    };
    writeln!(
        out,
        "\nIn all {} sticks{spares}, {}, about {} green, {price}",
        n_pieces(order),
        show_wood_volume(order.volume, units),
        weight(order.weight, units),
    )
}

/// Lines under the words they have in common.
fn write_lines<'a>(
    out: &mut String,
    project: &Project,
    lines: impl Iterator<Item = &'a OrderLine>,
) -> std::fmt::Result {
    let units = project.units;
    let mut above: Option<&OrderLine> = None;
    for line in lines {
        let section = line.section.label(units);
        if above.is_none_or(|above| above.section != line.section || above.words != line.words) {
            writeln!(out, "\n{section}: {}", line.words.join(", "))?;
        }
        above = Some(line);
        write!(out, "{} of {section} x {}", line.count, asked_length(line.length, units))?;
        line.spare_words().map_or(Ok(()), |says| write!(out, ", {says}"))?;
        writeln!(out)?;
    }
    Ok(())
}

fn docked(project: &Project) -> String {
    length(project.mill.trim_each_end, project.units)
}

/// A length as it is asked for: 14′ rather than 14′ 0″.
#[must_use]
pub fn asked_length(asked: Length, units: UnitSystem) -> String {
    let words = length(asked, units);
    words.strip_suffix(" 0″").map_or_else(|| words.clone(), str::to_owned)
}

/// Sticks of stock in the whole order.
#[must_use]
pub fn n_pieces(order: &Order) -> usize {
    order.lines.iter().map(|line| line.count).sum()
}

/// The order as rows, one a line of the order, with a heading row.
///
/// Text that a spreadsheet would run as a formula gets a single quote in front (CWE-1236); numbers stay
/// numbers. Cells are quoted as RFC 4180 says.
#[must_use]
pub fn order_csv(project: &Project, order: &Order, cells: Cells) -> String {
    let mut out = String::from(UTF8_MARK);
    let head = match project.units {
        UnitSystem::Imperial => ["Section, in", "Length, in", "Board feet", "Green weight, lb"],
        UnitSystem::Metric => ["Section, mm", "Length, mm", "m3", "Green weight, kg"],
    };
    let [section, long, wood, heavy] = head;
    let rest = ["Price", "Sticks", "Of these spare", "Delivery", "Heart", "Grade"];
    row(&mut out, cells, [section, long, "Length", "Count", wood, heavy].into_iter().chain(rest).map(text));
    for line in &order.lines {
        row(&mut out, cells, line_cells(project, line, cells));
    }
    let unplaced = order.unplaced.iter().map(|stick| (stick, "no length holds it"));
    for ((mark, needed), why) in unplaced.chain(order.lacking.iter().map(|stick| (stick, "none is left"))) {
        let long = number(in_system(*needed, project.units), 3, cells);
        let words = text(&format!("{} for {mark}: {why}", length(*needed, project.units)));
        let (before, after) = ([text(""), long, words], std::iter::repeat_n(text(""), 4));
        row(
            &mut out,
            cells,
            before.into_iter().chain(std::iter::repeat_n(text(""), 4)).chain([text(mark)]).chain(after),
        );
    }
    out
}

fn line_cells(project: &Project, line: &OrderLine, cells: Cells) -> [String; N_CELLS] {
    let units = project.units;
    let (volume, decimals, heavy) = match units {
        UnitSystem::Imperial => (line.volume.to_board_feet(), 1, line.weight.to_pounds()),
        UnitSystem::Metric => (line.volume.to_cubic_metres(), 4, line.weight.to_kilograms()),
    };
    let sticks: Vec<String> = line.holds.iter().map(|marks| marks.join("+")).collect();
    [
        text(&line.section.label(units)),
        number(in_system(line.length, units), 3, cells),
        text(&asked_length(line.length, units)),
        line.count.to_string(),
        number(volume, decimals, cells),
        number(heavy, 1, cells),
        number(line.price.to_f64(), 2, cells),
        text(&sticks.join(" ")),
        line.n_spare.to_string(),
        line.delivery.to_string(),
        text(line.heart.name()),
        text(&line.words.join(", ")),
    ]
}

fn in_system(length: Length, units: UnitSystem) -> f64 {
    match units {
        UnitSystem::Imperial => length.to_inches(),
        UnitSystem::Metric => length.to_millimetres(),
    }
}

/// A cell of words: made harmless, then quoted.
fn text(words: &str) -> String {
    let bare = words.trim_start_matches(['"', '\'']);
    let runs = bare.starts_with(['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠']);
    let guard = if runs { "'" } else { "" };
    format!("\"{guard}{}\"", words.replace('"', "\"\""))
}

/// A cell that is a number: never guarded, so that a negative one stays a number.
fn number(value: f64, decimals: usize, cells: Cells) -> String {
    let plain = format!("{value:.decimals$}");
    let plain = if plain.contains('.') { plain.trim_end_matches('0').trim_end_matches('.') } else { &plain };
    match cells {
        Cells::Comma => plain.to_owned(),
        Cells::Semicolon => plain.replace('.', ","),
    }
}

fn row(out: &mut String, cells: Cells, values: impl IntoIterator<Item = String>) {
    let between = match cells {
        Cells::Comma => ",",
        Cells::Semicolon => ";",
    };
    out.push_str(&values.into_iter().collect::<Vec<_>>().join(between));
    out.push_str("\r\n");
}

/// The price of a cubic metre where a board foot costs this much.
///
/// A board foot is 144 in³ and an inch 25.4 mm, so a cubic metre is 423.776 board feet.
#[must_use]
pub fn per_cubic_metre(per_board_foot: Money) -> Money {
    per_board_foot * crate::units::Volume::cubic_metres(1.0).to_board_feet()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::{Role, Spares, demo};

    #[test]
    fn words_that_would_run_do_not() {
        for hostile in ["=1+1", "+1", "-1", "@x", "\t=1", "\r=1", "\"=1", "'=1", "＝1"] {
            let cell = text(hostile);
            assert!(cell.starts_with("\"'"), "{cell}");
            assert!(cell.ends_with('"'));
        }
        assert_eq!(text("8x10"), "\"8x10\"");
        assert_eq!(text("12′ \"long\""), "\"12′ \"\"long\"\"\"");
        assert_eq!(number(-2.50, 2, Cells::Comma), "-2.5");
        assert_eq!(number(1200.0, 0, Cells::Comma), "1200");
        assert_eq!(number(1.25, 2, Cells::Semicolon), "1,25");
    }

    #[test]
    fn a_hostile_mark_stays_in_its_cell() {
        let project = demo::wool_barn();
        let mut order = evaluate(&project).built.unwrap().order.clone();
        order.unplaced.push(("=cmd|' /C x'!A0\",\"B".to_owned(), Length::feet(40.0)));
        let csv = order_csv(&project, &order, Cells::Comma);
        let last = csv.trim_end().lines().last().unwrap();
        assert!(last.ends_with(",\"'=cmd|' /C x'!A0\"\",\"\"B\",\"\",\"\",\"\",\"\""), "{last}");
    }

    /// Every row has the twelve cells of the heading, and the counts sum up to the order's.
    #[test]
    fn the_rows_are_the_order() {
        for (project, cells, between) in
            [(demo::wool_barn(), Cells::Comma, ","), (demo::log_store(), Cells::Semicolon, ";")]
        {
            let order = evaluate(&project).built.unwrap().order.clone();
            let csv = order_csv(&project, &order, cells);
            let rows: Vec<&str> = csv.trim_start_matches(UTF8_MARK).lines().collect();
            assert_eq!(rows.len(), order.lines.len() + 1);
            let mut n_sticks = 0;
            for (line, row) in order.lines.iter().zip(&rows[1..]) {
                // No cell but the last holds the sign that parts them.
                let values: Vec<&str> = row.splitn(N_CELLS, between).collect();
                assert_eq!(values.len(), N_CELLS, "{row}");
                assert_eq!(values[11].trim_matches('"'), line.words.join(", "));
                assert_eq!(values[3], line.count.to_string());
                n_sticks += values[7].trim_matches('"').split(' ').count();
            }
            assert_eq!(n_sticks, n_pieces(&order));
        }
    }

    #[test]
    fn the_message_names_every_line_once() {
        let project = demo::wool_barn();
        let order = evaluate(&project).built.unwrap().order.clone();
        let message = order_text(&project, &order);
        for line in &order.lines {
            let says = format!(
                "\n{} of {} x {}\n",
                line.count,
                line.section.label(project.units),
                asked_length(line.length, project.units)
            );
            assert_eq!(message.matches(&says).count(), 1, "{says}");
        }
    }

    #[test]
    fn whole_feet_are_asked_for_in_feet() {
        assert_eq!(asked_length(Length::feet(14.0), UnitSystem::Imperial), "14′");
        assert_eq!(asked_length(Length::inches(162.0), UnitSystem::Imperial), "13′ 6″");
        assert_eq!(asked_length(Length::inches(170.0), UnitSystem::Imperial), "14′ 2″");
        assert_eq!(asked_length(Length::millimetres(3600.0), UnitSystem::Metric), "3600 mm");
    }

    /// 1 m³ / 144 in³, an inch being 25.4 mm exactly.
    #[test]
    fn a_cubic_metre_holds_423_776_board_feet() {
        assert_eq!(per_cubic_metre(Money::of(1.0)), Money::of(423.78));
        assert_eq!(per_cubic_metre(Money::of(1000.0)), Money::of(423_776.0));
    }

    /// Rafters later, two spares a section: the message and the rows say so, and each delivery has its weight.
    #[test]
    fn deliveries_and_spares_are_said() {
        let mut project = demo::wool_barn();
        project.buying.second_delivery = vec![Role::Rafter];
        project.buying.spares = Spares { each_section: 2, one_in: 0 };
        let order = evaluate(&project).built.unwrap().order.clone();
        let message = order_text(&project, &order);
        for says in [
            "\nFirst delivery: ",
            "\nSecond delivery: 20 sticks, about 3111 lb green\n",
            "\n4x8: straight, crown marked, no wane on the upper edge or at the seats\n20 of 4x8 x 14′, 2 of them spare\n",
            "\n8x10: boxed heart, no spiral grain, straight, crown marked, little wane",
            "\n3 of 8x10 x 18′, 2 of them spare\n",
            "Full means: ",
            " (14 spare), ",
        ] {
            assert!(message.contains(says), "{says}: {message}");
        }
        let csv = order_csv(&project, &order, Cells::Comma);
        let last = csv.lines().last().unwrap();
        assert!(last.starts_with("\"4x8\",168,\"14′\",20,"), "{last}");
        assert!(last.contains(",2,2,\"heart as it falls\",\"straight, crown marked,"), "{last}");
    }
}
