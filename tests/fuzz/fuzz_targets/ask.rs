//! Bytes down the whole road: text read, a head asked, ways walked.
#![no_main]
use libfuzzer_sys::fuzz_target;

fuzz_target!(|data: &[u8]| {
    handturn_tests::ask::ask(data);
});
