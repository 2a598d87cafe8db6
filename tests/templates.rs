//! Templates on paper: every line to cut lies on a sheet, sheets agree, the bars measure what they say, and an outline
//! keeps its inches through the file.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use outshot::drawing::{Paper, TemplateSheets, Tile, Tiling, template_file};
use outshot::evaluate;
use outshot::geometry::Point;
use outshot::project::{Project, ScarfKind, TailCut, demo};
use outshot::tickets::{Stroke, Template, templates};
use outshot::units::{Length, UnitSystem};

fn of(project: &Project) -> Vec<Template> {
    templates(project, &evaluate(project).built.unwrap().shape)
}

/// The examples, and frames that are less usual.
fn frames() -> Vec<Project> {
    let mut square = demo::wool_barn();
    square.frame.tail_cut = TailCut::Square;
    square.frame.tail = Length::inches(20.0);
    square.frame.brace_along = Length::inches(30.0);
    square.frame.scarfs.kind = ScarfKind::StopSplayedTabled;
    vec![demo::wool_barn(), demo::log_store(), square]
}

/// The numbers of the first path with that class.
fn path(svg: &str, class: &str) -> Vec<f64> {
    let rest = svg.split(&format!("class=\"{class}\"")).nth(1).unwrap();
    let data = rest.split(" d=\"").nth(1).unwrap().split('"').next().unwrap();
    data.split(['M', 'L', 'Z', ' ']).filter(|word| !word.is_empty()).map(|word| word.parse().unwrap()).collect()
}

fn holds(tile: &Tile, at: Point) -> bool {
    at.x >= tile.low.x && at.x <= tile.high.x && at.y >= tile.low.y && at.y <= tile.high.y
}

/// Upright, or a quarter turn counter-clockwise, as the sheets were laid.
fn covers(tiling: &Tiling, template: &Template) -> bool {
    let on_sheets = |turn: fn(Point) -> Point| {
        let cuts = template.lines.iter().filter(|line| line.stroke == Stroke::Cut);
        let along = cuts.flat_map(|line| {
            (0..=50).map(|step| {
                let share = f64::from(step) / 50.0;
                Point::new(
                    line.from.x + (line.to.x - line.from.x) * share,
                    line.from.y + (line.to.y - line.from.y) * share,
                )
            })
        });
        let holes = template.holes.iter().map(|hole| hole.at);
        along.chain(holes).map(turn).all(|at| tiling.tiles.iter().any(|tile| holds(tile, at)))
    };
    on_sheets(|at| at) || on_sheets(|at| Point::new(-at.y, at.x))
}

#[test]
fn the_sheets_cover_every_line_to_cut() {
    for project in frames() {
        for template in of(&project) {
            for paper in Paper::ALL {
                let sheets = TemplateSheets::new(&template, paper);
                assert!(covers(sheets.tiling(), &template), "{} on {}", template.key, paper.name());
                assert_eq!(sheets.print().len(), sheets.count());
            }
        }
    }
}

/// Every sheet hangs together with the others by its crosses: none is left to lie where it likes.
#[test]
fn the_sheets_hang_together() {
    for project in frames() {
        for template in of(&project) {
            for paper in Paper::ALL {
                let sheets = TemplateSheets::new(&template, paper);
                let tiling = sheets.tiling();
                let mut reached = vec![&tiling.tiles[0]];
                let mut at = 0;
                while at < reached.len() {
                    for other in tiling.neighbours(reached[at]) {
                        if !reached.contains(&other) {
                            reached.push(other);
                        }
                    }
                    at += 1;
                }
                assert_eq!(reached.len(), tiling.tiles.len(), "{} on {}", template.key, paper.name());
            }
        }
    }
}

/// A cross of two sheets, measured from each sheet's own corner, is the same place of the drawing.
#[test]
fn the_crosses_of_two_sheets_are_one_place() {
    let project = demo::wool_barn();
    for template in of(&project) {
        let sheets = TemplateSheets::new(&template, Paper::Letter);
        let tiling = sheets.tiling();
        let mut n_seen = 0;
        for tile in &tiling.tiles {
            for cross in tiling.crosses(tile) {
                let both = tiling.tiles.iter().filter(|other| tiling.crosses(other).contains(&cross));
                assert_eq!(both.filter(|other| holds(other, cross.at)).count(), 2, "{} {}", template.key, cross.says);
                n_seen += 1;
            }
        }
        assert_eq!(n_seen > 0, sheets.count() > 1, "{}", template.key);
    }
}

/// The bars on every sheet, read back: 4 in and 100 mm in the sheet's own units, which are its width's.
#[test]
fn the_bars_measure_what_they_say() {
    for (paper, unit, width, room) in [(Paper::Letter, "in", 7.5, 1.0), (Paper::A4, "mm", 186.0, 25.4)] {
        for template in of(&demo::wool_barn()) {
            for sheet in TemplateSheets::new(&template, paper).print() {
                assert!(sheet.contains(&format!(" width=\"{width}{unit}\"")), "{}", &sheet[..300]);
                assert!(sheet.contains(&format!("viewBox=\"0 0 {width} ")), "{}", &sheet[..300]);
                let bars: Vec<Vec<f64>> = sheet
                    .match_indices("class=\"bar line\"")
                    .map(|(at, _)| path(&sheet[at..], "bar line"))
                    .filter(|bar| bar.len() == 4)
                    .collect();
                let lengths: Vec<f64> = bars.iter().map(|bar| bar[2] - bar[0]).collect();
                assert_eq!(lengths.len(), 2);
                assert!((lengths[0] - 4.0 * room).abs() < 1e-3, "{lengths:?}");
                assert!((lengths[1] - 100.0 / 25.4 * room).abs() < 1e-3, "{lengths:?}");
                assert!(sheet.contains("measure this bar before you cut: print at 100 %"));
            }
        }
    }
}

/// The seat on the beam by hand: 4 in level at 3:12 is 4·0.970143 = 3.8806 along the stick and 4·0.242536 = 0.9701
/// across it, whatever the units of the file.
#[test]
fn a_file_keeps_the_inches() {
    let project = demo::wool_barn();
    let template = of(&project).into_iter().find(|one| one.key == "rafter-beam-end").unwrap();
    for (units, unit) in [(UnitSystem::Imperial, 1.0), (UnitSystem::Metric, 25.4)] {
        let file = template_file(&template, units);
        let cuts: Vec<Vec<f64>> =
            file.match_indices("class=\"joint line\"").map(|(at, _)| path(&file[at..], "joint line")).collect();
        let is_seat = |cut: &Vec<f64>| {
            ((cut[2] - cut[0]).abs() / unit - 3.8806).abs() < 1e-3
                && ((cut[3] - cut[1]).abs() / unit - 0.9701).abs() < 1e-3
        };
        assert_eq!(cuts.iter().filter(|cut| cut.len() == 4 && is_seat(cut)).count(), 1, "{cuts:?}");
    }
}

/// A lap of ten feet, which no beam of the examples has: many sheets, and still all of them.
#[test]
fn a_huge_scarf_is_still_whole() {
    let mut project = demo::wool_barn();
    let shape = evaluate(&project).built.unwrap().shape.clone();
    project.frame.scarfs.lap = Length::inches(120.0);
    for template in templates(&project, &shape).iter().filter(|one| one.key.starts_with("scarf")) {
        for paper in Paper::ALL {
            let sheets = TemplateSheets::new(template, paper);
            assert!(covers(sheets.tiling(), template), "{}", template.key);
            assert!((15..60).contains(&sheets.count()), "{}", sheets.count());
        }
    }
}
