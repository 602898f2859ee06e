//! Handturn's calculation core: what a drawing asks for, turned into settings
//! that hands can make on a dividing head.
#![no_std]
