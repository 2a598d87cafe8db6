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

/// Turns a model type into what stands in the file and back.
pub trait Stored: Sized {
    /// To the file.
    fn store(&self) -> Value;
    /// From the file.
    ///
    /// # Errors
    /// The field that is missing, unknown or cannot be used.
    fn read(value: Value) -> Result<Self, Fault>;
    /// What a field that is not there holds; nothing where it must be there.
    #[must_use]
    fn absent() -> Option<Self> {
        None
    }
}

macro_rules! plain {
    ($($kind:ty, $value:ident => $read:expr, $this:ident => $store:expr;)+) => {$(
        impl Stored for $kind {
            fn store(&self) -> Value {
                let $this = self;
                Value::from($store)
            }
            fn read($value: Value) -> Result<Self, Fault> {
                $read.ok_or(Fault::value())
            }
        }
    )+};
}
plain! {
    f64, value => value.as_f64(), number => *number;
    bool, value => value.as_bool(), is => *is;
    usize, value => whole(&value), count => *count;
    Length, value => value.as_f64().and_then(Length::try_inches), length => length.to_inches();
    Weight, value => value.as_f64().and_then(Weight::try_pounds), weight => weight.to_pounds();
    Money, value => value.as_f64().and_then(Money::try_of), price => price.to_f64();
    Force, value => value.as_f64().and_then(Force::try_pounds), force => force.to_pounds();
    Stress, value => value.as_f64().and_then(Stress::try_psi), stress => stress.to_psi();
    AreaLoad, value => value.as_f64().and_then(AreaLoad::try_psf), load => load.to_psf();
    WindSpeed, value => value.as_f64().and_then(WindSpeed::try_mph), speed => speed.to_mph();
    Spring, value => value.as_f64().and_then(Spring::try_pounds_per_inch), spring => spring.to_pounds_per_inch();
    Slope, value => value.as_f64().and_then(Slope::try_ratio), slope => slope.tan();
}

fn whole(value: &Value) -> Option<usize> {
    value.as_u64().and_then(|count| usize::try_from(count).ok())
}

impl Stored for String {
    fn store(&self) -> Value {
        Value::String(self.clone())
    }
    fn read(value: Value) -> Result<Self, Fault> {
        if let Value::String(text) = value { Ok(text) } else { Err(Fault::value()) }
    }
}

impl<T: Stored> Stored for Option<T> {
    fn store(&self) -> Value {
        self.as_ref().map_or(Value::Null, Stored::store)
    }
    fn read(value: Value) -> Result<Self, Fault> {
        if value.is_null() { Ok(None) } else { T::read(value).map(Some) }
    }
    fn absent() -> Option<Self> {
        Some(None)
    }
}

impl<T: Stored> Stored for Vec<T> {
    fn store(&self) -> Value {
        Value::Array(self.iter().map(Stored::store).collect())
    }
    fn read(value: Value) -> Result<Self, Fault> {
        let mut list = Self::new();
        for (index, item) in items(value)?.into_iter().enumerate() {
            list.push(T::read(item).map_err(|fault| fault.within(&index.to_string()))?);
        }
        Ok(list)
    }
}

fn items(value: Value) -> Result<Vec<Value>, Fault> {
    if let Value::Array(items) = value { Ok(items) } else { Err(Fault::value()) }
}

impl Stored for BTreeSet<String> {
    fn store(&self) -> Value {
        Value::Array(self.iter().map(Stored::store).collect())
    }
    fn read(value: Value) -> Result<Self, Fault> {
        let mut set = Self::new();
        for item in items(value)? {
            set.insert(String::read(item)?);
        }
        Ok(set)
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
    fn read(value: Value) -> Result<Self, Fault> {
        let mut map = Self::new();
        for (name, item) in Fields::of(value)?.0 {
            let item = T::read(item).map_err(|fault| fault.within(&name))?;
            map.insert(name, item);
        }
        Ok(map)
    }
}

/// The fields of one object of the file, taken out one after the other.
struct Fields(Map<String, Value>);

impl Fields {
    fn of(value: Value) -> Result<Self, Fault> {
        if let Value::Object(fields) = value { Ok(Self(fields)) } else { Err(Fault::value()) }
    }

    fn put(&mut self, name: &str, value: Value) {
        self.0.insert(name.to_owned(), value);
    }

    fn take<T: Stored>(&mut self, name: &str) -> Result<T, Fault> {
        let read = match self.0.remove(name) {
            Some(value) => T::read(value),
            None => T::absent().ok_or(Fault::new("is missing")),
        };
        read.map_err(|fault| fault.within(name))
    }

    /// Refuses what nobody took: a field this version does not know.
    fn end(self) -> Result<(), Fault> {
        self.0.keys().next().map_or(Ok(()), |name| Err(Fault::new("is unknown").within(name)))
    }
}

/// A struct of the file: for each field its name there and its model field.
macro_rules! record {
    ($model:ident { $($stored:ident = $field:ident),+ $(,)? }) => {
        impl Stored for $model {
            fn store(&self) -> Value {
                let mut fields = Fields(Map::new());
                $(fields.put(stringify!($stored), self.$field.store());)+
                Value::Object(fields.0)
            }
            fn read(value: Value) -> Result<Self, Fault> {
                let mut fields = Fields::of(value)?;
                let model = Self { $($field: fields.take(stringify!($stored))?),+ };
                fields.end()?;
                Ok(model)
            }
        }
    };
}

/// A choice of the file: a word for each variant.
macro_rules! choice {
    ($model:ident { $($variant:ident = $word:literal),+ $(,)? }) => {
        impl Stored for $model {
            fn store(&self) -> Value {
                Value::from(match self { $(Self::$variant => $word),+ })
            }
            fn read(value: Value) -> Result<Self, Fault> {
                match value.as_str() { $(Some($word) => Ok(Self::$variant),)+ _ => Err(Fault::value()) }
            }
        }
    };
}

use {choice, record};
