use crate::{any, keep};
use handturn::card;

pub fn calls() {
    keep(card::chain(any()));
}
