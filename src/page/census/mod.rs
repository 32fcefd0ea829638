//! The census: how many sheets are known, of everything and of each design.
//!
//! | file | subject |
//! |---|---|
//! | `catalogue_census` | the page for the whole catalogue |
//! | `design_census` | the page for one design |
//! | `counts` | rows of the census as tables |
//! | `grouped_counts` | kinds in their classes, holders in their places |
//! | `one_sheet` | designs of which one sheet is known |
//! | `whole` | every sheet as a square |
//! | `census_figures` | figures as links to their records |
//! | `sheet_records` | the records behind a figure |
//! | `crossing` | states crossed with printings |
//! | `holding_table` | holders crossed with states |
//! | `firmness` | how many of the sheets of a figure are not firm |
//! | `series_census` | the series |
//! | `declared_editions` | the editions of all designs, a line each |
//! | `design_editions` | the editions of one design, with their sources and numbers |
//! | `occasions` | when sheets were met |
//! | `survival` | how many there may be |
//! | `open_pairs` | records that may be one sheet |
//! | `contradicted` | the states that fit what was seen on the contradicted sheets |
//! | `counting_notes` | how the counts were made |

pub(crate) mod catalogue_census;
mod census_figures;
mod contradicted;
mod counting_notes;
mod counts;
pub(crate) mod crossing;
mod declared_editions;
pub(crate) mod design_census;
mod design_editions;
mod firmness;
mod grouped_counts;
mod holding_table;
mod occasions;
mod one_sheet;
mod open_pairs;
mod series_census;
pub(crate) mod sheet_records;
mod survival;
mod whole;
