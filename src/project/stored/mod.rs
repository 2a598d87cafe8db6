//! The project as it stands in a file: plain numbers with the unit in every name.
//!
//! The names below are the file format; the model may change without them. Lengths are inches,
//! slopes rise per run, weights and forces pounds, prices the currency's main unit.
use std::collections::{BTreeMap, BTreeSet};

use serde_json::{Map, Value};

mod buying;
mod frame;
mod strength;

use crate::frame::Spring;
use crate::loads::WindSpeed;
use crate::units::{AreaLoad, Force, Length, Money, Slope, Stress, Weight};

/// What stops a file from being read: the field and what is wrong with it.
#[derive(Debug)]
pub struct Fault {
    path: String,
    says: &'static str,
}

impl Fault {
    const fn new(says: &'static str) -> Self {
        Self { path: String::new(), says }
    }

    /// No value of its kind.
    const fn value() -> Self {
        Self::new("holds a value that cannot be")
    }

    fn within(mut self, name: &str) -> Self {
        self.path = if self.path.is_empty() { name.to_owned() } else { format!("{name}.{}", self.path) };
        self
    }
}

impl std::fmt::Display for Fault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let place = if self.path.is_empty() { "the project" } else { &self.path };
        write!(f, "{place} {}", self.says)
    }
}

/// What stands in the file for one value of the model.
///
/// A value is filled in where it already stands, and what is wrong with it is remembered: were each of them handed up by itself, every
/// field of every record would need a way out of its own, and they would be a twentieth of all that is to be downloaded.
pub trait Stored {
    /// To the file.
    fn store(&self) -> Value;
    /// From the file.
    ///
    /// # Errors
    /// The field that is missing, unknown or cannot be used; the value is then of no use.
    fn fill(&mut self, value: Value) -> Result<(), Fault>;
    /// It may be left out of the file, and then stays blank.
    fn may_be_absent(&self) -> bool {
        false
    }
    /// What is filled in.
    fn blank() -> Self
    where
        Self: Sized;
    /// One that stood in the file.
    ///
    /// # Errors
    /// As [`Self::fill`].
    fn read(value: Value) -> Result<Self, Fault>
    where
        Self: Sized,
    {
        let mut read = Self::blank();
        read.fill(value)?;
        Ok(read)
    }
}

macro_rules! plain {
    ($($kind:ty, $blank:expr, $value:ident => $read:expr, $this:ident => $store:expr;)+) => {$(
        impl Stored for $kind {
            fn store(&self) -> Value {
                let $this = self;
                Value::from($store)
            }
            fn fill(&mut self, $value: Value) -> Result<(), Fault> {
                *self = $read.ok_or(Fault::value())?;
                Ok(())
            }
            fn blank() -> Self {
                $blank
            }
        }
    )+};
}
plain! {
    f64, 0.0, value => value.as_f64(), number => *number;
    bool, false, value => value.as_bool(), is => *is;
    usize, 0, value => whole(&value), count => *count;
    Length, Self::ZERO, value => value.as_f64().and_then(Length::try_inches), length => length.to_inches();
    Weight, Self::ZERO, value => value.as_f64().and_then(Weight::try_pounds), weight => weight.to_pounds();
    Money, Self::ZERO, value => value.as_f64().and_then(Money::try_of), price => price.to_f64();
    Force, Self::ZERO, value => value.as_f64().and_then(Force::try_pounds), force => force.to_pounds();
    Stress, Self::ZERO, value => value.as_f64().and_then(Stress::try_psi), stress => stress.to_psi();
    AreaLoad, Self::ZERO, value => value.as_f64().and_then(AreaLoad::try_psf), load => load.to_psf();
    Spring, Self::pounds_per_inch(0.0), value => value.as_f64().and_then(Spring::try_pounds_per_inch),
        spring => spring.to_pounds_per_inch();
    Slope, Self::ratio(0.0), value => value.as_f64().and_then(Slope::try_ratio), slope => slope.tan();
    String, Self::new(), value => if let Value::String(text) = value { Some(text) } else { None }, text => text.clone();
}

fn whole(value: &Value) -> Option<usize> {
    value.as_u64().and_then(|count| usize::try_from(count).ok())
}

/// None blows at no speed: it is there or it is not.
impl Stored for Option<WindSpeed> {
    fn store(&self) -> Value {
        self.map_or(Value::Null, |speed| Value::from(speed.to_mph()))
    }
    fn fill(&mut self, value: Value) -> Result<(), Fault> {
        if !value.is_null() {
            *self = Some(value.as_f64().and_then(WindSpeed::try_mph).ok_or(Fault::value())?);
        }
        Ok(())
    }
    fn may_be_absent(&self) -> bool {
        true
    }
    fn blank() -> Self {
        None
    }
}

impl<T: Stored> Stored for Option<T> {
    fn store(&self) -> Value {
        self.as_ref().map_or(Value::Null, Stored::store)
    }
    fn fill(&mut self, value: Value) -> Result<(), Fault> {
        if value.is_null() { Ok(()) } else { self.insert(T::blank()).fill(value) }
    }
    fn may_be_absent(&self) -> bool {
        true
    }
    fn blank() -> Self {
        None
    }
}

impl<T: Stored> Stored for Vec<T> {
    fn store(&self) -> Value {
        Value::Array(self.iter().map(Stored::store).collect())
    }
    fn fill(&mut self, value: Value) -> Result<(), Fault> {
        for (index, item) in items(value)?.into_iter().enumerate() {
            self.push(T::read(item).map_err(|fault| fault.within(&index.to_string()))?);
        }
        Ok(())
    }
    fn blank() -> Self {
        Self::new()
    }
}

fn items(value: Value) -> Result<Vec<Value>, Fault> {
    if let Value::Array(items) = value { Ok(items) } else { Err(Fault::value()) }
}

impl Stored for BTreeSet<String> {
    fn store(&self) -> Value {
        Value::Array(self.iter().map(Stored::store).collect())
    }
    fn fill(&mut self, value: Value) -> Result<(), Fault> {
        for item in items(value)? {
            self.insert(String::read(item)?);
        }
        Ok(())
    }
    fn blank() -> Self {
        Self::new()
    }
}

impl<T: Stored> Stored for BTreeMap<String, T> {
    fn store(&self) -> Value {
        let mut fields = Map::new();
        for (name, item) in self {
            fields.insert(name.clone(), item.store());
        }
        Value::Object(fields)
    }
    fn fill(&mut self, value: Value) -> Result<(), Fault> {
        for (name, item) in Fields::of(value)?.0 {
            let item = T::read(item).map_err(|fault| fault.within(&name))?;
            self.insert(name, item);
        }
        Ok(())
    }
    fn blank() -> Self {
        Self::new()
    }
}

/// The fields of one object of the file, taken out one after the other, and the first fault among them.
struct Fields(Map<String, Value>, Option<Fault>);

impl Fields {
    fn of(value: Value) -> Result<Self, Fault> {
        if let Value::Object(fields) = value { Ok(Self(fields, None)) } else { Err(Fault::value()) }
    }

    fn none() -> Self {
        Self(Map::new(), None)
    }

    fn put(&mut self, name: &str, value: &dyn Stored) {
        self.0.insert(name.to_owned(), value.store());
    }

    fn take(&mut self, name: &str, into: &mut dyn Stored) {
        let filled = match self.0.remove(name) {
            Some(value) => into.fill(value),
            None if into.may_be_absent() => Ok(()),
            None => Err(Fault::new("is missing")),
        };
        if let (Err(fault), None) = (filled, &self.1) {
            self.1 = Some(fault.within(name));
        }
    }

    /// Says the first fault, and refuses what nobody took: a field this version does not know.
    fn end(self) -> Result<(), Fault> {
        let unknown = || self.0.keys().next().map(|name| Fault::new("is unknown").within(name));
        self.1.or_else(unknown).map_or(Ok(()), Err)
    }
}

/// A struct of the file: for each field its name there and its model field.
macro_rules! record {
    ($model:ident { $($stored:ident = $field:ident),+ $(,)? }) => {
        impl Stored for $model {
            fn store(&self) -> Value {
                let mut fields = Fields::none();
                $(fields.put(stringify!($stored), &self.$field);)+
                Value::Object(fields.0)
            }
            fn fill(&mut self, value: Value) -> Result<(), Fault> {
                let mut fields = Fields::of(value)?;
                $(fields.take(stringify!($stored), &mut self.$field);)+
                fields.end()
            }
            fn blank() -> Self {
                Self { $($field: Stored::blank()),+ }
            }
        }
    };
}

/// A choice of the file: a word for each variant. The first is what stands there until another is read.
macro_rules! choice {
    ($model:ident { $($variant:ident = $word:literal),+ $(,)? }) => {
        impl $model {
            const WORDS: &[(&str, Self)] = &[$(($word, Self::$variant)),+];
        }
        impl Stored for $model {
            fn store(&self) -> Value {
                Self::WORDS.iter().find(|(_, one)| one == self).map_or(Value::Null, |(word, _)| Value::from(*word))
            }
            fn fill(&mut self, value: Value) -> Result<(), Fault> {
                let known = value.as_str().and_then(|word| Self::WORDS.iter().find(|(known, _)| *known == word));
                *self = known.ok_or(Fault::value())?.1;
                Ok(())
            }
            fn blank() -> Self {
                Self::WORDS[0].1
            }
        }
    };
}

use {choice, record};
