//! Calls into `handturn::number`, and into what stands at the core's root.
use crate::{any, keep};
use core::cmp::Ord;
use handturn::bounds::Bound;
use handturn::number::{self, Fraction, float};
use handturn::{Error, List, Text};

pub fn calls() {
    keep(Fraction::new(any(), any()));
    keep(Fraction::whole(any()));
    keep(Fraction::from_wide(any(), any()));
    keep((Fraction::num(any()), Fraction::den(any())));
    keep(Fraction::checked_add(any(), any()));
    keep(Fraction::checked_sub(any(), any()));
    keep(Fraction::checked_mul(any(), any()));
    keep(Fraction::checked_div(any(), any()));
    keep(Fraction::times(any(), any()));
    keep(Fraction::over(any(), any()));
    keep(Fraction::inverse(any()));
    keep(Fraction::negated(any()));
    keep(Fraction::abs(any()));
    keep(Fraction::floor(any()));
    keep(Fraction::part(any()));
    keep(Fraction::nearest(any()));
    keep(Fraction::is_zero(any()));
    keep(Fraction::is_whole(any()));
    keep(Fraction::is_negative(any()));
    keep(Fraction::cmp(&any(), &any()));
    keep(number::nearest_with(any(), any()));
    keep(number::gcd(any(), any()));
    keep(number::lcm(any(), any()));
    keep(number::bezout(any(), any()));
    keep(number::mod_inverse(any(), any()));
    keep(float::of(any()));
    keep(float::of_wide(any(), any()));
    keep(float::sin_turns(any()));
    keep(float::cos_turns(any()));
    keep(float::tan_turns(any()));
    keep(float::atan_turns(any()));
    keep(float::round(any()));
    keep(float::sqrt(any()));
    keep(float::nearest(any(), any()));

    keep(Bound::check(any(), any()));
    keep(Bound::check_u32(any(), any()));
    keep(Error::new(any(), any()));
    keep(Error::at(any(), any(), any()));
    keep(Error::of(any(), any()));
    keep(Text::<16>::new(any(), any()));
    keep(List::<u32, 8>::new());
    let mut list: List<u32, 8> = any();
    keep(List::push(&mut list, any()));
    keep(List::insert(&mut list, any(), any()));
    keep(List::pop(&mut list));
    keep(List::is_full(&list));
    List::clear(&mut list);
    keep(list);
    keep(List::<u32, 8>::from_slice(any()));
}
