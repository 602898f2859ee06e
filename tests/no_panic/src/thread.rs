//! Calls into `handturn::thread`.
use crate::{any, keep};
use handturn::thread::{Form, Thread};

pub fn calls() {
    form();
    keep(Thread::new(any(), any(), any(), any(), any()));
    keep(Thread::lead(&any()));
    keep(Thread::tpi(&any()));
    keep(Thread::pitch_diameter(&any()));
    keep(Thread::minor_internal(&any()));
    keep(Thread::minor_external(&any()));
    keep(Thread::major_internal(&any()));
    keep(handturn::thread::rounded(any(), any()));
}

fn form() {
    keep(Form::own(any(), any(), any(), any()));
    keep(Form::sharp_height(&any(), any()));
    keep(Form::external_depth(&any(), any()));
    keep(Form::internal_depth(&any(), any()));
    keep(Form::clearance(&any(), any()));
    keep(Form::at(&any(), any(), any()));
}
