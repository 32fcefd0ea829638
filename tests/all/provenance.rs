//! The line of provenance, its sources, and the statements of pages on 1933 to 1945.
//!
//! The punctuation is that of the AAM *Guide to Provenance Research* (2001). Parties and events here are
//! invented; each test names its rule.

use crate::markup::tags;
use crate::pages::{FERRY, page, site_of};

const PEOPLE: &str = "
-- records/people/owner.toml
name = \"Ada Quire\"
born = \"1880\"
died = \"1949\"
-- records/people/heir.toml
name = \"Ben Quire\"
-- records/literature.bib
@book{quire-1950, author = {Quire, Ben}, title = {A List}, year = {1950}}
";

/// The section of provenance of a sheet with this in its record, as markup.
fn section(toml: &str) -> String {
    let record =
        format!("-- records/designs/1/impressions/2.toml\nstatus = \"untraced\"\n{toml}\n");
    let site = site_of(&[FERRY, PEOPLE, &record]);
    let html = page(&site, "impression/1.2/");
    let (_, after) = html.split_once("id=\"provenance\">").expect("a section");
    after.split_once("</section>").unwrap().0.to_owned()
}

/// The line, as text, without the marks of its notes.
fn line(entries: &str) -> String {
    let html = section(&format!("provenance = [{entries}]"));
    let (_, after) = html.split_once("<p>").unwrap();
    let mut line = after.split_once("</p>").unwrap().0.to_owned();
    while let Some((before, rest)) = line.split_once("<sup") {
        let (_, rest) = rest.split_once("</sup>").unwrap();
        line = format!("{before}{rest}");
    }
    tags(&line).1
}

#[test]
fn a_semicolon_stands_only_where_it_passed_directly() {
    let to = |direct: &str| {
        line(&format!(
            "{{ owner = \"owner\", to = \"1949\" }}, {{ owner = \"heir\", from = \"1950\", how = \"descent\"{direct} }}"
        ))
    };
    assert_eq!(
        to(", direct = true"),
        "Ada Quire [1880–1949], until 1949; by descent to Ben Quire, 1950."
    );
    let apart = "Ada Quire [1880–1949], until 1949. By descent to Ben Quire, 1950.";
    assert_eq!(to(", direct = false"), apart);
    assert_eq!(to(""), apart, "not known is not directly");
}

#[test]
fn agents_stand_in_round_brackets_and_nobody_else() {
    assert_eq!(
        line(
            "{ agent = { name = \"Mole & Pier\" }, place = \"Northport\", from = \"1950-05-12\", how = \"sale\", lot = \"34\", sold = false }, \
             { agent = { name = \"A dealer\" }, from = \"1951\" }, \
             { owner = \"heir\", from = \"1952\", direct = true, how = \"purchase\" }"
        ),
        "(Sale, Mole & Pier, Northport, 12 May 1950, lot 34, bought in). (A dealer, 1951); purchased by Ben Quire, 1952."
    );
    assert_eq!(
        line("{ keeper = \"museum\", from = \"1966\", how = \"loan\" }, { keeper = \"museum\" }"),
        "Lent to Harbour Museum, Northport, 1966. Harbour Museum, Northport, as custodian."
    );
}

/// The shape of a whole line, from the artist through a family and a sale that failed to a museum:
/// docs/trade.md, "Writing provenance", after the same guide.
#[test]
fn a_whole_line_reads_as_the_guide_has_it() {
    assert_eq!(
        line(
            "{ owner = \"artist\", to = \"1929\" }, \
             { owner = \"owner\", from = \"1929\", to = \"1949\", how = \"gift\", direct = true }, \
             { owner = \"heir\", from = \"1949\", how = \"descent\", direct = true }, \
             { agent = { name = \"Mole & Pier\" }, place = \"Northport\", from = \"1988-05-12\", how = \"sale\", lot = \"34\", sold = false, direct = true }, \
             { agent = { name = \"A dealer\" }, place = \"Eastport\", from = \"1991\" }, \
             { owner = \"museum\", from = \"1992\", how = \"purchase\", direct = true }"
        ),
        "The Artist [1890–1950]; gift to Ada Quire [1880–1949], 1929; by descent to Ben Quire, 1949; \
         (sale, Mole & Pier, Northport, 12 May 1988, lot 34, bought in). (A dealer, Eastport, 1991); \
         purchased by Harbour Museum, Northport, 1992."
    );
}

/// Common practice, no source: an auction has lots, a dealer's list has numbers.
#[test]
fn a_lot_is_of_an_auction_and_a_number_of_a_dealers_list() {
    let said = |roles: &str, language: &str| {
        let settings = format!(
            "-- catalogue.toml\ntitle = \"T\"\nsiglum = \"T\"\nartist = \"artist\"\nlanguage = \"{language}\"\naddress = \"https://prints.example.org\"\n"
        );
        let agent =
            format!("-- records/people/pier.toml\nname = \"Pier Mole\"\nroles = [{roles}]\n");
        let record = "-- records/designs/1/impressions/2.toml\nstatus = \"untraced\"\n\
             provenance = [{ agent = \"pier\", from = \"1938\", how = \"sale\", lot = \"44\" }]\n";
        let site = site_of(&[FERRY, &settings, &agent, record]);
        tags(page(&site, "impression/1.2/")).1
    };
    for (roles, language, words) in [
        ("\"dealer\"", "en", "(Sale, Pier Mole, 1938, no. 44)."),
        ("\"dealer\"", "de", "(Verkauf, Pier Mole, 1938, Nr. 44)."),
        ("\"auctioneer\"", "en", "(Sale, Pier Mole, 1938, lot 44)."),
        (
            "\"auctioneer\"",
            "de",
            "(Verkauf, Pier Mole, 1938, Los 44).",
        ),
        ("\"dealer\", \"auctioneer\"", "en", "1938, lot 44)."),
        ("", "en", "1938, lot 44)."),
    ] {
        let text = said(roles, language);
        assert!(text.contains(words), "{words}: {text}");
    }
}

/// Common practice, no source: "the" is small within a line, and a sentence begins with a capital.
#[test]
fn an_article_is_small_within_the_line_and_a_sentence_begins_with_a_capital() {
    assert_eq!(
        line(
            "{ owner = { name = \"The artist's mother\" }, to = \"1930\" }, \
             { owner = { name = \"The Print Society\" }, from = \"1931\", how = \"gift\", direct = true }, \
             { owner = { name = \"The Hague Cabinet\" }, from = \"1940\", how = \"purchase\" }, \
             { owner = { name = \"van der Mole\" }, from = \"1941\" }, \
             { owner = { name = \"Theo Pier\" }, from = \"1942\", how = \"gift\" }, \
             { agent = { name = \"the auction rooms\" }, from = \"1950\" }"
        ),
        "The artist’s mother, until 1930; gift to the Print Society, 1931. Purchased by The Hague Cabinet, 1940. \
         Van der Mole, from 1941. Gift to Theo Pier, 1942. (The auction rooms, 1950)."
    );
}

#[test]
fn the_line_says_how_a_sheet_was_destroyed() {
    let said = |language: &str, last: &str| {
        let settings = format!(
            "-- catalogue.toml\ntitle = \"T\"\nsiglum = \"T\"\nartist = \"artist\"\nlanguage = \"{language}\"\naddress = \"https://prints.example.org\"\n"
        );
        let record = format!(
            "-- records/designs/1/impressions/2.toml\nstatus = \"destroyed\"\nprovenance = [{{ owner = \"heir\", from = \"1931\", how = \"gift\" }}{last}]\n"
        );
        let site = site_of(&[FERRY, PEOPLE, &settings, &record]);
        tags(page(&site, "impression/1.2/")).1
    };
    let fire = ", { owner = \"heir\", from = \"1944-10\", how = \"fire\", direct = true }";
    for (language, last, words) in [
        (
            "en",
            fire,
            "Gift to Ben Quire, 1931; destroyed by fire, Ben Quire, October 1944.",
        ),
        (
            "de",
            fire,
            "Schenkung an Ben Quire, 1931; durch Brand zerstört, Ben Quire, Oktober 1944.",
        ),
        ("en", "", "Gift to Ben Quire, 1931. Destroyed."),
        ("de", "", "Schenkung an Ben Quire, 1931. Zerstört."),
    ] {
        let text = said(language, last);
        assert!(text.contains(words), "{words}: {text}");
    }
    assert!(!said("en", fire).contains("1944. Destroyed"));
}

#[test]
fn life_dates_stand_in_square_brackets_where_they_are_known() {
    assert_eq!(
        line("{ owner = \"owner\" }, { owner = \"heir\" }"),
        "Ada Quire [1880–1949]. Ben Quire."
    );
}

#[test]
fn what_is_not_certain_is_called_possible_or_probable() {
    assert_eq!(
        line(
            "{ owner = \"heir\", certainty = \"probable\" }, { owner = \"owner\", certainty = \"possible\" }, { owner = \"heir\", certainty = \"certain\" }"
        ),
        "Probably Ben Quire. Possibly Ada Quire [1880–1949]. Ben Quire."
    );
}

/// Common practice, no source: an old sale names the design, not the sheet.
#[test]
fn whether_it_was_this_sheet_is_another_question() {
    assert_eq!(
        line(
            "{ agent = { name = \"A dealer\" }, from = \"1951\", lot = \"9\", this_sheet = \"possible\" }, { owner = \"heir\", this_sheet = \"probable\", certainty = \"possible\" }"
        ),
        "(A dealer, 1951, lot 9, possibly this impression). Possibly Ben Quire, probably this impression."
    );
}

#[test]
fn an_end_goes_without_saying_only_where_the_next_began_directly_then() {
    let pair = |to: &str, from: &str, direct: bool| {
        line(&format!(
            "{{ owner = \"heir\", from = \"1930\", to = \"{to}\" }}, {{ owner = {{ name = \"C\" }}, from = \"{from}\", direct = {direct} }}"
        ))
    };
    assert_eq!(pair("1940", "1940", true), "Ben Quire, 1930; C, from 1940.");
    assert_eq!(
        pair("1940", "1941", true),
        "Ben Quire, 1930 to 1940; C, from 1941."
    );
    assert_eq!(
        pair("1940", "1940", false),
        "Ben Quire, 1930 to 1940. C, from 1940."
    );
}

#[test]
fn sources_stand_in_notes_that_lead_there_and_back() {
    let html = section(
        "provenance = [{ owner = \"heir\" }, { owner = \"owner\", cite = \"quire-1950\", at = \"p. 3\", direct = true }]",
    );
    let (tags, text) = tags(&html);
    assert!(text.contains("Quire 1950, p. 3. Back"), "{text}");
    let has = |name: &str, value: &str| tags.iter().any(|tag| tag.value(name) == Some(value));
    for (href, id) in [("#source-1", "source-of-1"), ("#source-of-1", "source-1")] {
        assert!(has("href", href) && has("id", id), "{html}");
    }
    assert!(!html.contains("source-2"));
}

#[test]
fn a_line_written_by_hand_is_kept_as_it_is_beside_the_entries() {
    let written = "provenance_line = \"A. Q.;  <b>gift</b> to B.\\n\\nThen lost.\"\n";
    let html = section(written);
    assert!(
        html.contains("<p>A. Q.;  &lt;b&gt;gift&lt;/b&gt; to B.</p>\n<p>Then lost.</p>"),
        "{html}"
    );
    assert!(!html.contains("entry by entry"));
    let both = section(&format!("{written}provenance = [{{ owner = \"heir\" }}]"));
    let (own, made) = both.split_once("As recorded, entry by entry").unwrap();
    assert!(own.contains("Then lost.") && made.contains(">Ben Quire</a>."));
    let private = "provenance_line = \"SECRET\"\nprivate = [\"provenance_line\"]\nprovenance = [{ owner = \"heir\" }]";
    assert!(!section(private).contains("SECRET"));
}

#[test]
fn a_sheet_that_existed_in_1933_is_told_of_with_the_caution_and_no_accusation() {
    let html = section("sheet = { date = \"1930\" }");
    let (_, text) = tags(&html);
    for said in [
        "No owner is recorded here from 30 January 1933 to 8 May 1945.",
        "Gaps are common and imply no wrongdoing",
        "legal advice in the country where it is",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    assert!(html.contains("../../cautions/"));
    for word in ["loot", "confiscat", "stolen", "suspect", "red flag"] {
        assert!(!text.contains(word), "{word}");
    }
    let partly = "sheet = { date = \"1930\" }\nprovenance = [{ owner = \"owner\", to = \"1937\" }]";
    let (_, text) = tags(&section(partly));
    assert!(
        text.contains("30 January 1933 to 1937: Ada Quire [1880–1949] (since when is not recorded; held until 1937, the day is not recorded)."),
        "{text}"
    );
    assert!(
        text.contains("1938 to 8 May 1945: no owner recorded."),
        "{text}"
    );
    let later = section("sheet = { date = \"1952\" }\nprovenance = [{ owner = \"heir\" }]");
    assert!(!later.contains("1933") && !later.contains("wrongdoing"));
}

/// The dates in the form in which they are recorded, and a sale with its agent, on the sheet and among all sheets.
#[test]
fn the_status_says_where_the_record_ends_and_who_sold_in_these_years() {
    let said = |language: &str, entries: &str| {
        let settings = format!(
            "-- catalogue.toml\ntitle = \"T\"\nsiglum = \"T\"\nartist = \"artist\"\nlanguage = \"{language}\"\naddress = \"https://prints.example.org\"\n"
        );
        let record = format!(
            "-- records/designs/1/impressions/2.toml\nstatus = \"untraced\"\nsheet = {{ date = \"1930\" }}\nprovenance = [{entries}]\n"
        );
        let site = site_of(&[FERRY, PEOPLE, &settings, &record]);
        let text = |address: &str| tags(page(&site, address)).1;
        [text("impression/1.2/"), text("provenance/")]
    };
    let until = "{ owner = \"heir\", from = \"1931\", to = \"1940~\" }";
    let later = "{ owner = \"heir\", from = \"1931\", to = \"1940~\" }, { owner = \"museum\", from = \"1978\" }";
    let unsure = "{ owner = \"heir\", from = \"1931\", to = \"1937\", this_sheet = \"possible\" }";
    let before = "{ owner = \"heir\", to = \"1932\" }";
    let sold = "{ owner = \"heir\", from = \"1931\", to = \"1938\" }, \
                { agent = { name = \"Mole & Pier\" }, place = \"Northport\", from = \"1938-05\", how = \"sale\", direct = true }";
    let traded = "{ owner = \"heir\", to = \"1937\", this_sheet = \"possible\" }, \
                  { agent = { name = \"Mole & Pier\" }, from = \"1938-05\", how = \"sale\" }, \
                  { agent = { name = \"Quay & Son\" }, from = \"1949-06-08\", how = \"sale\" }, \
                  { owner = \"museum\", from = \"1978\" }";
    let bought_in = "{ owner = \"heir\", to = \"1937\" }, \
                     { agent = { name = \"Quay & Son\" }, from = \"1950\", how = \"sale\", sold = false, this_sheet = \"possible\" }";
    let between = "{ owner = \"heir\", to = \"1937\" }, { owner = \"heir\", from = \"1950/1955\" }";
    for (language, entries, words) in [
        (
            "en",
            until,
            "Last recorded about 1940; then no owner recorded.",
        ),
        (
            "de",
            until,
            "Zuletzt nachgewiesen um 1940; danach kein Eigentümer verzeichnet.",
        ),
        (
            "en",
            later,
            "Last recorded about 1940; then no owner recorded until 1978 (Harbour Museum, Northport).",
        ),
        (
            "de",
            later,
            "Zuletzt nachgewiesen um 1940; danach kein Eigentümer verzeichnet bis 1978 (Harbour Museum, Northport).",
        ),
        (
            "en",
            unsure,
            "Perhaps last recorded 1937; then no owner recorded.",
        ),
        ("en", sold, "Last recorded 1938; then no owner recorded."),
        (
            "en",
            traded,
            "Last recorded in the trade, May 1938; then no owner recorded until the sale of 8 June 1949 (Quay & Son).",
        ),
        (
            "de",
            traded,
            "Zuletzt im Handel nachgewiesen, Mai 1938; danach kein Eigentümer verzeichnet bis zum Verkauf am 8. Juni 1949 (Quay & Son).",
        ),
        (
            "en",
            bought_in,
            "Last recorded 1937; then no owner recorded until it was offered and bought in, 1950 (Quay & Son, possibly this impression).",
        ),
        (
            "en",
            between,
            "Last recorded 1937; then no owner recorded; next recorded between 1950 and 1955 (Ben Quire).",
        ),
    ] {
        for text in said(language, entries) {
            assert!(text.contains(words), "{words}: {text}");
        }
    }
    let [sheet, all] = said("en", before);
    assert!(
        sheet.contains("Last recorded 1932; then no owner recorded."),
        "{sheet}"
    );
    assert!(
        all.contains("1.2: last recorded 1932; then no owner recorded"),
        "{all}"
    );
    let [sheet, all] = said("en", sold);
    let trade = "In the trade in these years: sale, Mole & Pier, Northport, May 1938.";
    assert!(sheet.contains(trade), "{sheet}");
    assert!(
        all.contains("; sale, Mole & Pier, Northport, May 1938)"),
        "{all}"
    );
    let [sheet, _] = said("de", sold);
    assert!(
        sheet.contains("In diesen Jahren im Handel: Verkauf, Mole & Pier, Northport, Mai 1938."),
        "{sheet}"
    );
}

#[test]
fn a_text_written_by_hand_is_said_not_to_count() {
    let note = "Only the entries are counted here, not the provenance text.";
    let entries =
        "sheet = { date = \"1930\" }\nprovenance = [{ owner = \"owner\", to = \"1937\" }]";
    assert!(!tags(&section(entries)).1.contains(note));
    let written = format!("{entries}\nprovenance_line = \"A. Q., until 1944.\"");
    assert!(tags(&section(&written)).1.contains(note));
}

#[test]
fn one_page_gathers_the_sheets_by_what_is_recorded_and_names_no_private_owner() {
    let owner = "-- records/holders/owner-a.toml\nname = \"Wilhelmina Skerry\"\nkind = \"private\"\nplace = \"Upper Tansill\"\ncountry = \"GB\"\n";
    let record = "-- records/designs/1/impressions/2.toml\nstatus = \"located\"\nholder = \"owner-a\"\nsheet = { date = \"1930\" }\n\
                  provenance = [{ owner = { name = \"Tobias Wrack\" }, from = \"1931\", to = \"1940-01-01\", private = [\"owner\"] }, { owner = \"owner-a\", from = \"1999\" }]\n";
    let hidden = "-- records/designs/1/impressions/3.toml\nstatus = \"located\"\npublish = false\nsheet = { date = \"1930\" }\n";
    let site = site_of(&[FERRY, owner, record, hidden]);
    let html = page(&site, "provenance/");
    let (_, text) = tags(html);
    assert!(
        text.contains("Owner recorded, certainly or possibly, for part of these years"),
        "{text}"
    );
    assert!(
        text.contains("2 January 1940 to 8 May 1945: no owner recorded"),
        "{text}"
    );
    assert!(
        text.contains("1.2 (change of ownership recorded)"),
        "{text}"
    );
    assert!(text.contains("1.1 (may have been printed later)"), "{text}");
    for secret in ["Skerry", "Tansill", "Wrack", "1.3"] {
        assert!(!text.contains(secret), "{secret}");
    }
}

/// Two records of one sheet are two lines, and days of a certain owner are not listed.
#[test]
fn the_lists_of_these_years_count_records_and_say_that_only_open_days_stand_in_them() {
    let record = |n: u32, toml: &str| {
        format!(
            "-- records/designs/1/impressions/{n}.toml\nstatus = \"untraced\"\nsheet = {{ date = \"1930\" }}\n{toml}\n"
        )
    };
    let owned =
        "provenance = [{ owner = { name = \"One\" }, from = \"1931\", to = \"1940-01-01\" }]";
    let two = record(2, owned);
    let three = record(3, "same_as = [{ impression = \"1.2\" }]");
    let said = |language: &str| {
        let settings = format!(
            "-- catalogue.toml\ntitle = \"T\"\nsiglum = \"T\"\nartist = \"artist\"\nlanguage = \"{language}\"\naddress = \"https://prints.example.org\"\n"
        );
        let site = site_of(&[FERRY, &settings, &two, &three]);
        tags(page(&site, "provenance/")).1
    };
    let english = said("en");
    for words in [
        "1 record. Only days without a certain owner are listed.",
        "No owner recorded for these years1 record",
    ] {
        assert!(english.contains(words), "{words}: {english}");
    }
    assert!(!english.contains("31 January 1933 to 1 January 1940"));
    let german = said("de");
    let words = "1 Eintrag. Aufgeführt sind nur Tage ohne sicheren Eigentümer.";
    assert!(german.contains(words), "{german}");
}

#[test]
fn a_sheet_that_may_be_another_is_told_with_what_that_one_records_of_these_years() {
    let owner =
        "-- records/holders/owner-a.toml\nname = \"Wilhelmina Skerry\"\nkind = \"private\"\n";
    let record = |n: u32, toml: &str| {
        format!(
            "-- records/designs/1/impressions/{n}.toml\nstatus = \"located\"\nsheet = {{ date = \"1930\" }}\n{toml}\n"
        )
    };
    let sold = record(
        2,
        "maybe_same_as = [{ impression = \"1.3\" }]\nprovenance = [\
         { owner = { name = \"Tobias Wrack\" }, to = \"1937\", private = [\"owner\"] }, \
         { agent = { name = \"Mole & Pier\" }, from = \"1938-05\", how = \"sale\" }]",
    );
    let sold = sold.replace("located", "untraced");
    let kept = record(
        3,
        "holder = \"owner-a\"\nprovenance = [{ owner = \"owner-a\", from = \"1996\" }]",
    );
    let site = site_of(&[FERRY, owner, &sold, &kept]);
    let text = |address: &str| tags(page(&site, address)).1;
    let told = "erhaps the same impression as 1.2: an owner whose name is withheld, until 1937; sale, Mole & Pier, May 1938";
    assert!(
        text("provenance/").contains(told),
        "{}",
        text("provenance/")
    );
    let sheet = text("impression/1.3/");
    assert!(sheet.contains(told), "{sheet}");
    assert!(
        text("impression/1.2/").contains("Perhaps the same impression as 1.3."),
        "{}",
        text("impression/1.2/")
    );
    let hidden = kept.replace("status =", "publish = false\nstatus =");
    let site = site_of(&[FERRY, owner, &sold, &hidden]);
    assert!(!tags(page(&site, "provenance/")).1.contains("same sheet"));
}

/// Two who possibly had it one after the other are not written as if it passed from the one to the other.
#[test]
fn a_change_of_hands_that_is_not_recorded_sends_the_reader_to_the_sheet() {
    let record = |how: &str| {
        format!(
            "-- records/designs/1/impressions/2.toml\nstatus = \"located\"\nholder = \"museum\"\nsheet = {{ date = \"1930\" }}\n\
             provenance = [{{ owner = \"heir\", from = \"1931\", to = \"1939~\" }}, {{ owner = \"museum\", from = \"1939-07\", how = \"{how}\" }}]\n"
        )
    };
    let note = "-- records/designs/1/impressions/2.md\nFrom the customs office, in what manner is under research.\n";
    let said = |how: &str, note: &str| {
        let site = site_of(&[FERRY, PEOPLE, &record(how), note]);
        let text = |address: &str| tags(page(&site, address)).1;
        [text("provenance/"), text("impression/1.2/")]
    };
    let [all, sheet] = said("transfer", note);
    let told = "1934 to June 1939: Ben Quire (held until about 1939); July 1939: Ben Quire (held until about 1939) or Harbour Museum, Northport (acquired July 1939, the day is not recorded). See the note on the impression.";
    assert!(all.contains(told), "{all}");
    assert!(!sheet.contains("changed hands is not recorded"), "{sheet}");
    let [all, sheet] = said("unknown", "");
    let told = "is not recorded). How ownership changed is not recorded: see the impression.";
    assert!(all.contains(told), "{all}");
    assert!(
        sheet.contains("How ownership changed is not recorded."),
        "{sheet}"
    );
    let [all, _] = said("transfer", "");
    assert!(
        !all.contains("see the") && !all.contains("See the"),
        "{all}"
    );
}

#[test]
fn the_work_to_be_done_names_sheets_without_an_owner_for_some_or_all_of_these_years() {
    let record = "-- records/designs/1/impressions/2.toml\nstatus = \"located\"\nholder = \"museum\"\nsheet = { date = \"1930\" }\n";
    let site = site_of(&[FERRY, record]);
    let (_, text) = tags(page(&site, "holder/museum/"));
    let said = "No owner recorded for some or all of 1933–1945: 1.1, 1.2";
    assert!(text.contains(said), "{text}");
}

#[test]
fn the_page_says_why_a_sheet_is_not_asked_about_and_that_silence_clears_none() {
    let burnt = "-- records/designs/1/impressions/2.toml\nstatus = \"destroyed\"\nsheet = { date = \"1926\" }\n\
                 provenance = [{ owner = { name = \"One\" }, from = \"1927\", to = \"1932\" }]\n";
    let site = site_of(&[FERRY, burnt]);
    let (_, text) = tags(page(&site, "provenance/"));
    for said in [
        "One record is left out: its impression was printed after or destroyed before these years, or it is withdrawn, a recut or a reproduction.",
        "The absence of a recorded owner does not clear an impression.",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
}

#[test]
fn a_german_catalogue_says_it_in_german() {
    let settings = "-- catalogue.toml\ntitle = \"Die Drucke\"\nsiglum = \"DD\"\nartist = \"artist\"\nlanguage = \"de\"\n\
                    address = \"https://prints.example.org\"\nlicence = \"CC-BY-4.0\"\n";
    let record = "-- records/designs/1/impressions/2.toml\nstatus = \"untraced\"\nsheet = { date = \"1930\" }\nprovenance = [\
                  { owner = \"owner\", to = \"1949\", certainty = \"probable\" }, \
                  { owner = \"heir\", from = \"1949\", how = \"descent\", direct = true }, \
                  { agent = { name = \"Mole & Pier\" }, from = \"1951\", how = \"sale\", sold = false, this_sheet = \"possible\" }]\n";
    let site = site_of(&[FERRY, PEOPLE, settings, record]);
    let (_, text) = tags(page(&site, "impression/1.2/"));
    for said in [
        "Wahrscheinlich Ada Quire [1880–1949]; im Erbgang an Ben Quire, 1949.",
        "(Verkauf, Mole & Pier, 1951, zurückgegangen, möglicherweise dieser Abzug).",
        "Für die ganze Zeit, in der das Blatt bestanden haben kann, 30. Januar 1933 bis 8. Mai 1945, ist ein Eigentümer verzeichnet, für keinen Teil davon mit Gewissheit.",
        "Lücken sind üblich und bedeuten kein Unrecht",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
}

// The former owners, agents and keepers.

const HISTORY: &str = "
-- records/holders/old.toml
name = \"Old Cabinet\"
kind = \"museum\"
place = \"Northport\"
formerly = [{ name = \"Mariners' Rooms\", until = \"1910\" }]
successor = { holder = \"museum\", date = \"1987\" }
-- records/holders/store.toml
name = \"Store\"
kind = \"museum\"
-- records/designs/1/impressions/2.toml
status = \"located\"
holder = \"museum\"
former_accessions = [{ holder = \"old\", number = \"N 10\" }, { number = \"X 1\" }]
provenance = [
  { owner = \"owner\", to = \"1930\" },
  { agent = { name = \"Mole & Pier\" }, from = \"1931\", sold = false, lot = \"4\" },
  { owner = \"old\", from = \"1931\", to = \"1987\", how = \"gift\" },
  { keeper = \"store\", from = \"1960\", to = \"1970\" },
  { owner = \"museum\", from = \"1987\" },
]
-- records/designs/1/impressions/3.toml
status = \"untraced\"
former_accessions = [{ holder = \"old\", number = \"N 9\" }]
provenance = [
  { owner = { name = \"Mariners' Rooms\" }, to = \"1910\" },
  { owner = \"owner\", this_sheet = \"possible\" },
]
";

fn text_of(address: &str) -> String {
    let site = site_of(&[FERRY, PEOPLE, HISTORY]);
    let (_, text) = tags(page(&site, address));
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn former_owners_agents_and_keepers_stand_apart_with_their_sheets() {
    let text = text_of("owners/");
    let (owners, rest) = text.split_once("Dealers and agents").unwrap();
    let (agents, keepers) = rest.split_once("Custodians").unwrap();
    for line in [
        "Ada Quire, 1880–1949: 1.2, 1.3 (possibly)",
        "Mariners’ Rooms, see Old Cabinet: 1.3",
        "Old Cabinet, Northport, now Harbour Museum: 1.2",
    ] {
        assert!(owners.contains(line), "{line}: {owners}");
    }
    assert!(agents.contains("Mole & Pier: 1.2"), "{agents}");
    let brief = "Owners before the present holder; dealers, agents and custodians are listed separately. Not an opinion on title. Scope and limitations";
    assert!(owners.contains(brief), "{owners}");
    assert!(keepers.contains("Store: 1.2"), "{keepers}");
    // The present owner of a sheet is not a former owner of it.
    assert!(!owners.contains("Harbour Museum, Northport: "), "{owners}");
}

#[test]
fn of_two_entries_of_one_owner_the_surer_tells() {
    let twice = "-- records/designs/1/impressions/4.toml\nstatus = \"untraced\"\nprovenance = [\
                 { owner = \"owner\", to = \"1930\", this_sheet = \"possible\" }, { owner = \"owner\", to = \"1940\" }, \
                 { owner = \"heir\", to = \"1950\", certainty = \"probable\" }]\n";
    let site = site_of(&[FERRY, PEOPLE, twice]);
    let (_, text) = tags(page(&site, "owners/"));
    assert!(text.contains("Ada Quire, 1880–1949: 1.4"), "{text}");
    assert!(!text.contains("possibly"), "{text}");
    assert!(text.contains("Ben Quire: 1.4 (probably)"), "{text}");
}

#[test]
fn whom_a_sheet_was_stolen_from_is_no_former_owner() {
    let found = |status: &str, then: &str| {
        let record = format!(
            "-- records/holders/old.toml\nname = \"Old Cabinet\"\nkind = \"museum\"\n\
             -- records/designs/1/impressions/4.toml\nstatus = \"{status}\"\n\
             provenance = [{{ owner = \"owner\", to = \"1930\" }}, {{ owner = \"old\", from = \"1931\" }}{then}]\n"
        );
        let site = site_of(&[FERRY, PEOPLE, &record]);
        let text = |address: &str| tags(page(&site, address)).1;
        (text("owners/"), text("holder/old/"))
    };
    for then in ["", ", { owner = { name = \"X\" }, how = \"theft\" }"] {
        let (owners, holder) = found("stolen", then);
        assert!(owners.contains("Ada Quire, 1880–1949: 1.4"), "{owners}");
        assert!(!owners.contains("Old Cabinet"), "{owners}");
        let told = holder
            .split_once("Stolen from here")
            .map(|(_, after)| after);
        assert!(
            told.is_some_and(|t| t.contains("1.4, The Ferry: from 1931; stolen")),
            "{holder}"
        );
        assert!(!holder.contains("Formerly owned"), "{holder}");
    }
    let (owners, holder) = found("untraced", "");
    assert!(owners.contains("Old Cabinet: 1.4"), "{owners}");
    assert!(holder.contains("Formerly owned"), "{holder}");
}

#[test]
fn a_sheet_is_found_by_the_numbers_it_had() {
    let text = text_of("owners/");
    let (_, numbers) = text.split_once("Former accession numbers").unwrap();
    // In the order of counting, not of letters.
    assert!(
        numbers.contains("Old Cabinet, Northport N 9 1.3 N 10 1.2"),
        "{numbers}"
    );
    assert!(numbers.contains("Holder not recorded X 1 1.2"), "{numbers}");
}

#[test]
fn a_holder_that_was_merged_keeps_a_page_that_tells_all_of_it() {
    let text = text_of("holder/old/");
    for line in [
        "FormerlyMariners’ Rooms, until 1910",
        "Continued byHarbour Museum, Northport, from 1987",
        "Formerly owned 1.2, The Ferry: N 10; 1931 to 1987, gift; now Northport, Harbour Museum",
        "Formerly here 1.3, The Ferry: N 9; untraced",
    ] {
        assert!(text.contains(line), "{line}: {text}");
    }
    assert!(text_of("holder/museum/").contains("IncorporatesOld Cabinet"));
}

#[test]
fn what_was_kept_for_others_is_never_called_owned() {
    let text = text_of("holder/store/");
    assert!(
        text.contains("Formerly on deposit here 1.2, The Ferry: 1960 to 1970"),
        "{text}"
    );
    assert!(!text.contains("Formerly owned"));
}

#[test]
fn a_mark_that_several_used_is_told_on_the_sheet_and_among_the_marks() {
    let stamped = "-- records/designs/1/impressions/2.toml\nstatus = \"untraced\"\n\
                   marks = [{ kind = \"collector\", text = \"AQ\", whose = \"owner\" }]\nprovenance = [{ owner = \"owner\", from = \"1910\", to = \"1949\" }]\n\
                   -- records/designs/1/impressions/3.toml\nstatus = \"untraced\"\n\
                   marks = [{ kind = \"collector\", text = \"AQ\", whose = \"owner\", applied_by = \"heir\", applied = \"1950\" }]\n";
    let site = site_of(&[FERRY, PEOPLE, stamped]);
    let text = |address: &str| tags(page(&site, address)).1;
    let told = "Collector’s mark “AQ”. Ada Quire, 1910 to 1949: 1.2; Ben Quire, 1950: 1.3.";
    assert!(text("marks/").contains(told), "{}", text("marks/"));
    let sheet = text("impression/1.2/");
    assert!(
        sheet.contains("A mark with several users: Ada Quire; Ben Quire."),
        "{sheet}"
    );
    assert!(page(&site, "impression/1.2/").contains("marks/#shared"));
}

#[test]
fn whose_name_a_mark_bears_is_not_who_put_it_there() {
    let mark = |by: &str| {
        let record = format!(
            "-- records/designs/1/impressions/2.toml\nstatus = \"untraced\"\n\
             marks = [{{ kind = \"signature\", text = \"A. Q.\", whose = \"owner\"{by} }}]\n"
        );
        let site = site_of(&[FERRY, PEOPLE, &record]);
        tags(page(&site, "marks/")).1
    };
    for (by, said) in [
        ("", "“A. Q.”; bearing the name of Ada Quire: 1.2"),
        (
            ", applied_by = \"heir\"",
            "“A. Q.”; bearing the name of Ada Quire; applied by Ben Quire: 1.2",
        ),
        (
            ", applied_by = \"owner\"",
            "“A. Q.”; Ada Quire; own hand: 1.2",
        ),
    ] {
        let text = mark(by);
        assert!(text.contains(said), "{said}: {text}");
    }
}

#[test]
fn within_a_sentence_one_who_is_not_named_is_somebody() {
    let ukraine = "-- records/holders/owner-a.toml\nname = \"Wilhelmina Skerry\"\nkind = \"private\"\ncountry = \"UA\"\n";
    let record = "-- records/designs/1/impressions/2.toml\nstatus = \"untraced\"\nsheet = { date = \"1930\" }\nprovenance = [\
                  { owner = { name = \"Tobias Wrack\" }, to = \"1940\", how = \"purchase\", private = [\"owner\"] }, \
                  { owner = \"owner-a\", from = \"1999\", how = \"gift\" }, { owner = \"owner-a\", from = \"2001\" }]\n";
    let site = site_of(&[FERRY, ukraine, record]);
    let (_, text) = tags(page(&site, "impression/1.2/"));
    for said in [
        "Purchased by an owner whose name is withheld, until 1940. Gift to a private collection, Ukraine, 1999. A private collection, Ukraine, from 2001.",
        "30 January 1933 to 1940: an owner whose name is withheld (since when is not recorded; held until 1940, the day is not recorded)",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    let (_, owners) = tags(page(&site, "owners/"));
    assert!(
        owners.contains("Private collection, Ukraine: 1.2"),
        "{owners}"
    );
    assert!(owners.contains("Name withheld: 1.2"), "{owners}");
}

/// Persons are filed under their last name, institutions as they are written (common practice, no source).
#[test]
fn one_who_is_only_named_stands_under_the_last_name() {
    let record = "-- records/designs/1/impressions/2.toml\nstatus = \"untraced\"\nprovenance = [\
                  { owner = { name = \"Dr Anna Weiss\" }, to = \"1930\" }, \
                  { owner = { name = \"Dockers' Institute\" }, to = \"1940\" }, \
                  { owner = { name = \"Xaver Abel\" }, to = \"1950\" }]\n";
    let site = site_of(&[FERRY, record]);
    let (_, text) = tags(page(&site, "owners/"));
    let at = |name: &str| text.find(name).unwrap_or_else(|| panic!("{name}: {text}"));
    assert!(
        at("Xaver Abel: 1.2") < at("Dockers’ Institute: 1.2"),
        "{text}"
    );
    assert!(
        at("Dockers’ Institute: 1.2") < at("Dr Anna Weiss: 1.2"),
        "{text}"
    );
}

#[test]
fn a_lost_sheet_that_somebody_unnamed_had_last_is_told_as_the_trade_says_it() {
    let said = |language: &str, role: &str| {
        let catalogue = format!(
            "-- catalogue.toml\ntitle = \"The Prints\"\nsiglum = \"TP\"\nartist = \"artist\"\n\
             language = \"{language}\"\naddress = \"https://prints.example.org\"\n"
        );
        let record = format!(
            "-- records/designs/1/impressions/2.toml\nstatus = \"untraced\"\nprovenance = [\
             {{ {role} = {{ name = \"Tobias Wrack\" }}, to = \"1940\", private = [\"{role}\"] }}]\n"
        );
        let site = site_of(&[FERRY, &catalogue, &record]);
        tags(page(&site, "design/1/")).1
    };
    for (language, role, words) in [
        ("en", "owner", "last recorded with a private owner, 1940"),
        ("en", "agent", "last recorded in the trade, 1940"),
        (
            "en",
            "keeper",
            "last recorded with an unnamed custodian, 1940",
        ),
        ("de", "owner", "zuletzt in Privatbesitz nachgewiesen, 1940"),
        ("de", "agent", "zuletzt im Handel nachgewiesen, 1940"),
    ] {
        let text = said(language, role);
        assert!(text.contains(words), "{words}: {text}");
    }
}
