//! What a drawing holds, in inches, x to the right and y up. Colours and pens are the style sheet's.
use super::chain::Chain;
use crate::geometry::{Point, Polygon};
use crate::solid::Vector;
use crate::units::Length;

/// What a part is; each becomes a class in the style sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layer {
    /// The existing wall and roof.
    Wall,
    /// The ground.
    Ground,
    /// A pier.
    Pier,
    /// The face of a stick.
    Wood,
    /// A stick cut across.
    EndGrain,
    /// An edge seen beyond.
    Seen,
    /// An edge behind.
    Hidden,
    /// What is only the ground of a drawing.
    Faint,
    /// A joint's lines.
    Joint,
    /// Metal sheets.
    Metal,
    /// Metal sheets with what is under them showing through.
    Sheet,
    /// Grain and other fine lines.
    Fine,
    /// From a place on a stick to its measure.
    Leader,
    /// Wood that goes.
    Waste,
    /// Room that must stay free.
    Room,
    /// Where something is in the way.
    Trouble,
    /// A joint that is not by the rules.
    Own,
    /// An edge that a template is laid by.
    Reference,
    /// An arris that a template is folded over.
    Fold,
    /// Where a template ends and its stick runs on.
    RunsOn,
    /// A sawn face seen in the round.
    Planed(Light),
    /// A face across the grain seen in the round.
    Across(Light),
    /// A face cut by a joint seen in the round.
    Chiselled(Light),
    /// An edge seen in the round.
    Arris,
    /// Grain on wood seen in the round.
    Grain,
    /// The way a stick or a peg goes into its joint.
    Travel,
}

/// How much light falls on a face seen in the round, from above the left of one who faces the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Light {
    /// Full on it.
    Full,
    /// Along it.
    Half,
    /// None.
    Low,
}

impl Light {
    /// On a face that looks that way.
    #[must_use]
    pub fn on(normal: Vector) -> Self {
        let sun = Vector::inches(-0.37, 0.52, 0.77);
        match normal.dot(sun) {
            bright if bright > 0.6 => Self::Full,
            fair if fair > 0.2 => Self::Half,
            _ => Self::Low,
        }
    }
}

impl Layer {
    /// The class in the style sheet.
    #[must_use]
    pub const fn class(self) -> &'static str {
        match self {
            Self::Wall => "wall",
            Self::Ground => "ground",
            Self::Pier => "pier",
            Self::Wood => "wood",
            Self::EndGrain => "endgrain",
            Self::Seen => "seen",
            Self::Hidden => "hidden",
            Self::Faint => "faint",
            Self::Joint => "joint",
            Self::Metal => "metal",
            Self::Sheet => "sheet",
            Self::Fine => "fine",
            Self::Leader => "leader",
            Self::Waste => "waste",
            Self::Room => "room",
            Self::Trouble => "trouble",
            Self::Own => "own",
            Self::Reference => "reference",
            Self::Fold => "fold",
            Self::RunsOn => "runs-on",
            Self::Planed(Light::Full) => "planed",
            Self::Planed(Light::Half) => "planed half",
            Self::Planed(Light::Low) => "planed low",
            Self::Across(Light::Full) => "across",
            Self::Across(Light::Half) => "across half",
            Self::Across(Light::Low) => "across low",
            Self::Chiselled(Light::Full) => "chiselled",
            Self::Chiselled(Light::Half) => "chiselled half",
            Self::Chiselled(Light::Low) => "chiselled low",
            Self::Arris => "arris",
            Self::Grain => "grain",
            Self::Travel => "travel",
        }
    }
}

/// Where a text stands about its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// It begins there.
    Start,
    /// It is centred there.
    Middle,
    /// It ends there.
    End,
}

/// A few words at a point; their size is that of the screen or paper, not of the frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// The point.
    pub at: Point,
    /// The words.
    pub says: String,
    /// Where they stand about it.
    pub anchor: Anchor,
    /// Turned counter-clockwise by this many degrees.
    pub turned: f64,
    /// Moved on the sheet, in pixels right and down.
    pub shift: (f64, f64),
    /// They are left out where this length of the frame is too short for them on the sheet.
    pub room: Option<Length>,
}

/// On which side of the drawing a dimension stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Above.
    Above,
    /// Below.
    Below,
    /// Left.
    Left,
    /// Right.
    Right,
}

/// A dimension: a line beside the drawing with a stroke at each end.
#[derive(Clone, Debug, PartialEq)]
pub struct Dimension {
    /// From this point.
    pub from: Point,
    /// To this one.
    pub to: Point,
    /// Beside the drawing, on this side.
    pub side: Side,
    /// Row, counted outward from 0.
    pub row: u8,
    /// The measure in words.
    pub says: String,
}

/// One thing that is drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Drawn {
    /// A filled outline.
    Area(Polygon),
    /// A filled outline with slanting lines in it.
    Hatched(Polygon),
    /// A line through points.
    Line(Vec<Point>),
    /// A round hole of that diameter.
    Hole(Point, Length),
    /// Words.
    Text(Text),
    /// A dimension beside the drawing.
    Dimension(Dimension),
    /// A level dimension within the drawing, between two points at one height.
    Span(Point, Point, String),
}

/// A drawn thing, what it is, and what a tap on it leads to.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What it is.
    pub layer: Layer,
    /// Its shape.
    pub drawn: Drawn,
    /// The stick it belongs to.
    pub stick: Option<String>,
    /// The field that sets it: drawn as the user's own.
    pub field: Option<String>,
    /// How hard the part works, where the drawing says it.
    pub effort: Option<Effort>,
}

/// A whole drawing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Scene {
    /// Parts, the farthest first.
    pub parts: Vec<Part>,
    /// Fewest pixels an inch of the frame is drawn at; the drawing gets wider than its place where it must.
    pub least_scale: f64,
    /// Most pixels an inch is drawn at; zero sets no limit.
    pub most_scale: f64,
    /// Room for words beside the frame.
    pub margins: Margins,
    /// Words that would lie on those before them step aside, a line or two.
    pub steps_aside: bool,
    /// The way of a force, over all of it.
    pub chain: Option<Chain>,
}

/// Room for words beside the frame, px.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Margins {
    /// Above.
    pub above: f64,
    /// Below.
    pub below: f64,
    /// Right.
    pub right: f64,
}

impl Scene {
    /// Adds a part.
    pub fn add(&mut self, layer: Layer, drawn: Drawn) -> &mut Part {
        self.parts.push(Part { layer, drawn, stick: None, field: None, effort: None });
        let last = self.parts.len() - 1;
        &mut self.parts[last]
    }

    /// Adds an outline.
    pub fn area(&mut self, layer: Layer, outline: Polygon) -> &mut Part {
        self.add(layer, Drawn::Area(outline))
    }

    /// Adds an upright rectangle.
    pub fn rectangle(&mut self, layer: Layer, x: (Length, Length), y: (Length, Length)) -> &mut Part {
        self.area(layer, Polygon::rectangle(Point::new(x.0, y.0), Point::new(x.1, y.1)))
    }

    /// Adds a straight line.
    pub fn line(&mut self, layer: Layer, from: Point, to: Point) -> &mut Part {
        self.add(layer, Drawn::Line(vec![from, to]))
    }

    /// Adds words centred at a point.
    pub fn text(&mut self, at: Point, says: impl Into<String>) -> &mut Part {
        self.words(Text { at, says: says.into(), anchor: Anchor::Middle, turned: 0.0, shift: (0.0, 0.0), room: None })
    }

    /// Adds words.
    pub fn words(&mut self, text: Text) -> &mut Part {
        self.add(Layer::Fine, Drawn::Text(text))
    }

    /// Adds a dimension.
    pub fn dimension(&mut self, side: Side, row: u8, from: Point, to: Point, says: impl Into<String>) -> &mut Part {
        self.add(Layer::Fine, Drawn::Dimension(Dimension { from, to, side, row, says: says.into() }))
    }
}

/// How hard a stick works, by its worst check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Effort {
    /// Up to half of what it may.
    Light,
    /// Up to four fifths.
    Fair,
    /// Up to all of it.
    Hard,
    /// More than it may.
    Over,
    /// A check could not be made.
    Unknown,
}

impl Effort {
    /// Of a ratio; nothing where it was not judged.
    #[must_use]
    pub fn of(ratio: Option<f64>) -> Self {
        match ratio {
            None => Self::Unknown,
            Some(ratio) if ratio <= 0.5 => Self::Light,
            Some(ratio) if ratio <= 0.8 => Self::Fair,
            Some(ratio) if ratio <= 1.0 + 1e-9 => Self::Hard,
            Some(_) => Self::Over,
        }
    }

    /// The class the style sheet knows it by.
    #[must_use]
    pub const fn class(self) -> &'static str {
        match self {
            Self::Light => "effort-light",
            Self::Fair => "effort-fair",
            Self::Hard => "effort-hard",
            Self::Over => "effort-over",
            Self::Unknown => "effort-unknown",
        }
    }
}

impl Part {
    /// The part shows how hard it works.
    pub fn of_effort(&mut self, effort: Effort) -> &mut Self {
        self.effort = Some(effort);
        self
    }

    /// A tap on it leads to that stick.
    pub fn of_stick(&mut self, mark: &str) -> &mut Self {
        self.stick = Some(mark.to_owned());
        self
    }

    /// It is set by that field.
    pub fn of_field(&mut self, field: impl Into<String>) -> &mut Self {
        self.field = Some(field.into());
        self
    }
}
