//! Reasons why a photograph could not be aligned with the reference picture, in words.

use crate::model::registration::Refusal;

/// The word for a reason of refusal.
pub(crate) fn refusal_word(why: Refusal) -> &'static str {
    match why {
        Refusal::LittleToCompare => "refusal-little-to-compare",
        Refusal::NothingInCommon => "refusal-nothing-in-common",
        Refusal::NoPlausibleFit => "refusal-no-plausible-fit",
        Refusal::FewAgree => "refusal-few-agree",
        Refusal::OnePartOnly => "refusal-one-part-only",
        Refusal::TiesDisagree => "refusal-ties-disagree",
    }
}
