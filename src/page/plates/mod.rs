//! Plates: photographs with their captions and credits.
//!
//! In: the published pictures and the results of alignment. Out: views for templates.
//!
//! | file | subject |
//! |---|---|
//! | `viewer` | the viewer's data of a picture, and its scale in millimetres |
//! | `canvas` | canvases of pictures (IIIF), places on them, links that open such a place |
//! | `figures` | one picture with caption and credit |
//! | `gallery` | every photographed sheet of a design |
//! | `strips` | one point, cut from every aligned photograph |

pub(crate) mod canvas;
pub(crate) mod figures;
pub(crate) mod gallery;
pub(crate) mod strips;
pub(crate) mod viewer;
