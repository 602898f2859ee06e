//! Calls into `handturn::divide`.
use crate::{any, keep};
use handturn::divide::{
    self, Answer, ArmsSet, Asked, DialledTurns, Differential, Equation, Errors, Graduation, Group,
    Place, Question, Term, Way,
};

pub fn calls() {
    keep(Question::check(&any()));
    keep(Question::positions(&any()));
    keep(Question::closes(&any()));
    keep(Question::last(&any()));
    keep(Question::parts(&any()));
    keep(Question::step(&any()));
    keep(Question::part_at(&any(), any()));
    keep(Question::index_of(&any(), any()));
    Question::travels(&any()).for_each(keep);
    keep(Question::travel(&any(), any()));
    keep(Graduation::mark_at(&any(), any(), any()));
    keep(Graduation::at(&any(), any(), any()));
    keep(Graduation::mark(&any(), any()));
    keep(Asked::question(&any()));

    keep(divide::answer::<4>(&any(), &any()));
    keep(divide::compare(any(), &any(), &any()));
    keep(Answer::<4>::ranked(&any(), any()));
    keep(Answer::<4>::best(&any(), any()));
    keep(Answer::<4>::group(&any(), any()));
    keep(Group::<4>::ways(&any(), any()));

    keep(Way::check(&any(), &any(), &any()));
    keep(Way::kind(&any()));
    keep(Way::order(&any(), &any()));
    keep(Way::part_at(&any(), &any(), any()));
    keep(Way::index_of(&any(), &any(), any()));
    keep(Way::exact(&any(), &any()));
    keep(Way::errors(&any(), &any()));
    keep(Way::place(&any(), &any(), any()));
    keep(Way::step(&any(), &any(), any()));
    keep(Way::working(&any(), &any()));
    keep(Way::tie(&any(), &any()));
    keep(Way::effort(&any()));

    keep(Differential::on_plate(&any()));
    keep(Differential::gear_ratio(&any()));
    keep(Differential::near(&any()));
    keep(Differential::plate_per_handle_turn(&any()));
    keep(Differential::on(&any(), any()));
    keep(DialledTurns::steps(&any()));
    keep(Place::error(&any()));
    keep(ArmsSet::of(any(), any(), any()));
    keep(Errors::is_none(&any()));
    keep(Equation::of(any()));
    keep(Equation::about(any(), any()));
    keep(Equation::remark(any(), any()));
    keep(Term::of(any()));
}
