//! The only integration test program, because each further one would link the whole library again.
#![allow(
    clippy::disallowed_methods,
    reason = "tests read and write files of their own"
)]

/// The next record, laid down by `keyblock add`.
mod add_command;
/// A compile where nothing changed since the last.
mod again;
/// What others record of a sheet, joint owners, several sheets under one number.
mod as_found;
/// Every rule of the audit, broken and kept.
mod audit_rules;
/// Rules of the audit on separability, on wear, and on identifications that could be narrower.
mod audit_separability;
/// Findings in bulk, and help that says what can be written.
mod bulk;
/// The cache, where it cannot be written and where it is swept.
mod cache;
/// `keyblock census --doubts`, run as a program.
mod census_doubts;
/// The links of the figures of the census.
mod census_figures;
/// The census in groups, and as a picture.
mod census_groups;
/// The census on pages.
mod census_pages;
mod census_rows;
/// The census as tables for other programs.
mod census_tables;
/// Citations, on pages and for reference managers.
mod citations;
/// Designs and sheets are cited by number.
mod cited_by_number;
/// Every code is raised by some catalogue, and explained.
mod codes;
/// The commands, run as programs.
mod commands;
/// Impressions placed on each other and compared.
mod comparisons;
/// What is private acts as if it were not there.
mod concealed;
/// The tables of the data, their description, and the sheets of each holder.
mod data_tables;
/// The findings of the audit on the example and the demonstration.
mod demonstration;
/// What is recorded of the owners from 1933 to 1945.
mod diligence;
/// No file cites what does not exist.
mod document_records;
mod documents;
/// Editions: issuing, keeping addresses, telling what changed.
mod editions;
/// The life of a catalogue from one edition to the next.
mod editions_story;
/// Columns of tables that no row fills.
mod empty_columns;
/// Files for other programs, and the links to them.
mod exports;
/// Broken records, each reported at its place.
mod findings;
/// What no compile made, in the folder of a site.
mod foreign_files;
/// Former keys: what answers at the addresses that changed.
mod former_addresses;
/// The forms that readers fill in and send.
mod forms;
/// Hostile and broken input of every kind.
mod fuzz;
/// Files that museums hand in: three of the demonstration, hostile ones, large ones, and one batch to its end.
mod handed_in;
/// The rules of the code, checked on its source.
mod house;
/// Which state and printing a sheet can be.
mod identification;
/// `keyblock identify`, run as a program.
mod identify_command;
/// Pictures as image services: the paths of their files, and which are written anew.
mod image_services;
/// What museums and dealers hand in, by the command.
mod intake;
/// Rows as records that can be compared, for both below.
mod intake_comparable;
/// Rows that others hand in: to which designs they belong.
mod intake_designs;
/// The same rows: what they name, and which sheets of the census they are.
mod intake_known;
/// Rows that others hand in, as records of a catalogue that is audited and compiled.
mod intake_published;
/// What the catalogue publishes in open standards, read back.
mod intake_records;
/// Rows for both.
mod intake_rows;
/// The schemas of the files that editors correct.
mod intake_schemas;
/// The recorded impressions that single sheets of a file are, as editors say.
mod intake_sheets;
/// Records joined as one sheet: their page, their addresses, and what contradicts them.
mod joined_sheets;
/// What the commands print for programs.
mod json_documents;
/// Single things that are kept from readers, and what the commands say of them.
mod kept_back;
/// The identification key of a design, and its examination sheet.
mod key_pages;
/// Kills, and several compiles at once.
#[cfg(unix)]
mod kills;
/// A language that consists of files of words alone.
mod languages;
/// The records of sheets in LIDO, and the OAI-PMH static repository.
mod lido;
/// What large catalogues cost, and what is refused.
mod limits;
/// Linked Art, against the rules of its schemas.
mod linked_art;
/// Manifests, collections and places of pictures, against the rules of IIIF.
mod manifests;
/// Marks with records of their own.
mod marks;
/// Reading pages as a browser does.
mod markup;
/// What readers would take for granted if a page did not say otherwise.
mod not_for_granted;
/// Content that pages must have, and content that they must never have.
mod pages;
/// Photographs of invented prints, in pairs.
#[path = "../pairs/mod.rs"]
mod pairs;
/// Pictures that say nothing of their own, and the defaults that reach them.
mod picture_defaults;
/// Photographs: their faults, their publication, and failures of the disk.
mod pictures;
/// A private name in every text that records declare, and a missing target of every reference.
mod planted;
/// What the head of a page says to other programs.
mod previews;
/// The order in which sheets were printed.
mod printing_order;
/// Attempts to publish a private name.
mod private_names;
/// The program, run to its end or not.
mod program;
/// The promises to those who publish.
mod promises;
/// The line of provenance.
mod provenance;
/// Values published elsewhere.
mod published;
/// References to nothing, and the findings on a new catalogue.
mod references;
/// Photographs aligned.
mod registration;
/// `keyblock rename`, run as a program.
mod rename_command;
/// References and what they mean: `keyblock resolve`, the list for other sites, the rows of earlier catalogues.
mod resolve;
/// Which records may be one sheet, and why.
mod same_sheet;
/// Schemas of records, and the templates that a new catalogue begins with.
mod schemas;
/// What a search finds, and what its index must never have.
mod search;
mod series_records;
/// Doubts that records say are settled.
mod settled;
/// The sheet of paper: how it was measured, its paper, its condition.
mod sheets;
/// The site map.
mod sitemap;
/// Sizes by state and printing, and slips of measuring.
mod sizes;
/// The smallest catalogues, as literals.
mod small;
/// Catalogues of which little is recorded.
mod sparse;
/// Strips, the pages of points, and tones.
mod strips;
/// What is computed from a catalogue.
mod studies;
/// The subjects under which changes are told.
mod subjects;
/// The packages that the program is built from.
mod supply_chain;
/// The terms of the vocabularies, as a command and where readers find them.
mod terms_command;
/// What pages say of the differences between states, and of what follows from them.
mod told_apart;
/// Texts without a place to break, for the width of pages.
mod unbroken;
/// Prints by eye, the sections of the head, the pages beside a page, a second theme.
mod walls;
