//! A stick's sheet as it is printed. Every number is read back from its text; nothing else is known of the stick.
use outshot::tickets::{Face, Mark, MarkKind, Role, Stick, Waste};
use outshot::units::{Length, UnitSystem, parse_length};
use outshot::wording::tape;

/// One line of the sheet, in inches.
#[derive(Clone, Debug)]
pub struct Row {
    pub what: String,
    pub face: Face,
    pub near: f64,
    pub far: Option<f64>,
    /// Nearest first, with the face it is measured from.
    pub across: Option<(f64, f64, Face)>,
    pub depth: Option<f64>,
    pub kind: MarkKind,
    pub waste: Waste,
    pub mate: Option<String>,
    pub note: String,
    pub units: UnitSystem,
}

/// What the head of the sheet and its drawing say, and its lines.
#[derive(Clone, Debug)]
pub struct Sheet {
    pub mark: String,
    pub role: Role,
    /// Into the wood from the face that the outline is drawn on.
    pub thick: f64,
    /// Across that face.
    pub wide: f64,
    pub rows: Vec<Row>,
}

fn read(text: &str, units: UnitSystem) -> f64 {
    parse_length(text, units).unwrap_or_else(|error| panic!("{text}: {error:?}")).to_inches()
}

/// Three lengths rounded to a sixteenth, with a hair.
const AGREE: f64 = 3.0 / 32.0 + 1e-6;

/// Two printed measures of the same thing.
pub fn check_near(what: &str, one: f64, two: f64) {
    assert!((one - two).abs() <= AGREE, "{what}: {one} is printed, and {two}");
}

impl Row {
    fn printed(mark: &Mark, units: UnitSystem) -> Self {
        let said = |length: Length| read(&tape(length, units, mark.fineness), units);
        let across = mark.across.zip(mark.across_from).map(|((near, far), from)| (said(near), said(far), from));
        Self {
            what: mark.what.to_string(),
            face: mark.face,
            near: said(mark.near),
            far: mark.far.map(said),
            across,
            depth: mark.depth.map(said),
            kind: mark.kind,
            waste: mark.waste,
            mate: mark.mate.clone(),
            note: mark.note.to_string(),
            units,
        }
    }

    /// The length that stands in the note right after these words.
    pub fn said(&self, after: &str) -> Option<f64> {
        let text = self.note.split_once(after)?.1;
        let unit = if self.units == UnitSystem::Imperial { "″" } else { "mm" };
        let (number, _) = text.split_once(unit)?;
        Some(read(&format!("{number}{unit}"), self.units))
    }

    /// The same, where the sheet would be of no use without it.
    pub fn must_say(&self, after: &str) -> f64 {
        self.said(after).unwrap_or_else(|| panic!("{} does not say {after:?}: {:?}", self.what, self.note))
    }

    /// What the note says once more is what the marks give, as far as three roundings go.
    pub fn agrees(&self, words: &str, found: f64) {
        check_near(&format!("{}, {words}", self.what), self.must_say(words), found);
    }

    /// The place of what has one edge only, measured across.
    pub fn place(&self) -> f64 {
        let (near, far) = self.edges();
        assert!(near == far, "{} lies in one place", self.what);
        near
    }

    /// Both edges along the stick.
    pub fn along(&self) -> (f64, f64) {
        (self.near, self.far.unwrap_or_else(|| panic!("{} has one edge", self.what)))
    }

    /// Both edges across its face.
    pub fn edges(&self) -> (f64, f64) {
        let (near, far, _) = self.across.unwrap_or_else(|| panic!("{} is not measured across", self.what));
        (near, far)
    }
}

impl Sheet {
    /// Reads the stick's sheet. The section stands on it as `8x10`, the smaller size first; which of the two is the wide one
    /// of a face is seen in the drawing.
    pub fn printed(stick: &Stick, units: UnitSystem) -> Self {
        let unit = if units == UnitSystem::Imperial { "″" } else { " mm" };
        let label = stick.timber.sawn.label(units);
        let (small, large) = label.split_once('x').unwrap();
        let (small, large) = (read(&format!("{small}{unit}"), units), read(&format!("{large}{unit}"), units));
        let drawn = stick.faces.iter().find(|(face, _)| *face == stick.profile.0).unwrap().1.to_inches();
        let (thick, wide) = if (drawn - small).abs() < (drawn - large).abs() { (large, small) } else { (small, large) };
        let rows = stick.marks.iter().map(|mark| Row::printed(mark, units)).collect();
        Self { mark: stick.mark.clone(), role: stick.role, thick, wide, rows }
    }

    /// The first line that begins so.
    pub fn row(&self, what: &str) -> &Row {
        self.find(what).unwrap_or_else(|| panic!("{} has no {what}", self.mark))
    }

    pub fn find(&self, what: &str) -> Option<&Row> {
        self.rows.iter().find(|row| row.what.starts_with(what))
    }

    pub fn of_kind(&self, kind: MarkKind) -> impl Iterator<Item = &Row> {
        self.rows.iter().filter(move |row| row.kind == kind)
    }
}
