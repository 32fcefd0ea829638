//! Why a photograph could not be laid on the reference picture, in words.

use crate::model::registration::Refusal;

/// The id of the words for why a picture was refused.
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
