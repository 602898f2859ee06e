//! Reading what stands in fields, as typed or as it last read well: one reader for the
//! steps of rooms and for the small sums.
use super::lines;
use super::steps::{Wrong, good};
use crate::fields::Fields;
use handturn::bounds::Bound;
use handturn::measure::read::{self, Unit};
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn::{Cause, Error, Field as Of};

/// Where the fields of a form stand.
pub(super) trait Places {
    /// A field's name among all of the page's, and what it reads as until something is
    /// typed.
    fn place(&self, name: &str) -> (String, &'static str);
}

/// What was typed and chosen in a form.
#[derive(Clone, Copy)]
pub(crate) struct Given<'a> {
    /// All of the page's fields: the Shop's lists are among them.
    pub(crate) fields: &'a Fields,
    pub(super) places: &'a dyn Places,
    /// As it last read well.
    pub(super) last: bool,
}

impl<'a> Given<'a> {
    /// What stands in a field; where that names a value of the card, that value.
    pub(crate) fn get(&self, name: &str) -> &'a str {
        self.fields.follow(self.typed(name))
    }

    /// What stands in a field, as typed.
    pub(crate) fn typed(&self, name: &str) -> &'a str {
        let (field, default) = self.places.place(name);
        self.fields.or(&if self.last { good(&field) } else { field }, default)
    }

    /// Whether a field stands empty.
    pub(crate) fn is_empty(&self, name: &str) -> bool {
        self.get(name).trim().is_empty()
    }

    /// A length, in millimetres unless it names its unit.
    pub(crate) fn length(&self, name: &'static str, of: Of) -> Result<Length, Wrong> {
        read::length(self.get(name), Unit::Mm).map_err(|e| (name, e.of(of)))
    }

    /// A length where the field is not empty.
    pub(crate) fn length_if(&self, name: &'static str, of: Of) -> Result<Option<Length>, Wrong> {
        if self.is_empty(name) { Ok(None) } else { self.length(name, of).map(Some) }
    }

    /// Lengths split by space.
    pub(crate) fn lengths(&self, name: &'static str, of: Of) -> Result<Vec<Length>, Wrong> {
        lines::lengths(self.get(name), of).map_err(|e| (name, e))
    }

    /// A number.
    pub(crate) fn number(&self, name: &'static str, of: Of) -> Result<Fraction, Wrong> {
        read::number(self.get(name), of).map_err(|e| (name, e))
    }

    /// A whole number within `bound`.
    pub(crate) fn count(&self, name: &'static str, bound: Bound) -> Result<u32, Wrong> {
        read::count(self.get(name), bound).map_err(|e| (name, e))
    }

    /// An angle.
    pub(crate) fn angle(&self, name: &'static str, of: Of) -> Result<Angle, Wrong> {
        read::angle(self.get(name)).map_err(|e| (name, e.of(of)))
    }

    /// Which of the values of `all` a choice stands at.
    pub(crate) fn choice<T: Copy>(
        &self,
        name: &'static str,
        all: &[(&str, T)],
    ) -> Result<T, Wrong> {
        let value = self.get(name);
        let found = all.iter().find(|(known, _)| *known == value).map(|(_, meant)| *meant);
        found.ok_or((name, Error::new(Of::Fraction, Cause::NotANumber)))
    }
}
