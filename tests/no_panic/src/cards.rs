use crate::{any, keep};
use handturn::card;

pub fn calls() {
    keep(card::chain(any()));
    keep(card::followers(any(), any()));
    keep(card::same_name(any(), any()));
}
