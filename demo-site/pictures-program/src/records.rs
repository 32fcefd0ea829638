//! The catalogue's records, as far as a picture needs them.
//!
//! The records are the truth: what a sheet shows at a point is looked up here, in one order: its
//! own observation where that is plain, else what its state shows, else what its printing shows.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use toml::{Table, Value};

/// One design with its impressions.
pub struct Design {
    /// The folder's name.
    pub key: String,
    /// The folder.
    pub folder: PathBuf,
    /// `design.toml`.
    pub record: Table,
    /// Impressions by number.
    pub impressions: BTreeMap<u32, Table>,
}

/// What one sheet shows.
#[derive(Clone, Debug)]
pub struct Look {
    /// Place of the state in the design's order, from 0.
    pub state: usize,
    /// Key of the state, empty where none is recorded.
    pub state_key: String,
    /// Key of the printing, empty where none is recorded.
    pub printing: String,
    /// Number of the impression.
    pub number: u32,
    /// The sheet's kind: edition, trial-proof, counterproof …
    pub kind: String,
    values: BTreeMap<String, String>,
    stages: BTreeMap<String, usize>,
    unprinted: Vec<String>,
}

impl Look {
    /// Whether a feature is there; `false` where the records say nothing.
    pub fn has(&self, point: &str) -> bool {
        self.values.get(point).is_some_and(|v| v == "present")
    }

    /// Whether a feature is there, or `default` where the records say nothing.
    pub fn has_or(&self, point: &str, default: bool) -> bool {
        self.values.get(point).map_or(default, |v| v == "present")
    }

    /// A count, or the default.
    pub fn count(&self, point: &str, default: usize) -> usize {
        self.values
            .get(point)
            .and_then(|v| v.parse().ok())
            .unwrap_or(default)
    }

    /// A measure, where one is told.
    pub fn measure(&self, point: &str) -> Option<f32> {
        self.values.get(point).and_then(|v| v.parse().ok())
    }

    /// A choice, or the empty word.
    pub fn choice(&self, point: &str) -> &str {
        self.values.get(point).map_or("", String::as_str)
    }

    /// How far a stage has come: 0 is the first stage.
    pub fn stage(&self, point: &str) -> usize {
        self.stages.get(point).copied().unwrap_or(0)
    }

    /// Whether the block was printed on this sheet.
    pub fn printed(&self, matrix: &str) -> bool {
        !self.unprinted.iter().any(|m| m == matrix)
    }

    /// A word that is the same for all sheets whose matrices were in one condition.
    pub fn condition_of_matrices(&self, design: &Design) -> String {
        let mut word = self.state_key.clone();
        for point in design.tables("points") {
            if text(point, "rests_on") == "matrix" {
                let key = text(point, "key");
                word.push('|');
                word.push_str(self.values.get(key).map_or("", String::as_str));
            }
        }
        word
    }
}

impl Design {
    /// Reads `design.toml` and the impressions of every design under `records/designs`.
    ///
    /// # Errors
    /// A sentence naming the file that cannot be read or is not TOML.
    pub fn read_all(site: &Path) -> Result<Vec<Self>, String> {
        let folder = site.join("records/designs");
        let mut designs = Vec::new();
        for entry in sorted(&folder)? {
            let file = entry.join("design.toml");
            if !file.is_file() {
                continue;
            }
            let mut impressions = BTreeMap::new();
            let sheets = entry.join("impressions");
            if sheets.is_dir() {
                for path in sorted(&sheets)? {
                    let stem = path
                        .file_stem()
                        .and_then(|s| s.to_str())
                        .unwrap_or_default();
                    if path.extension().is_some_and(|e| e == "toml")
                        && let Ok(number) = stem.parse()
                    {
                        impressions.insert(number, table(&path)?);
                    }
                }
            }
            let key = entry
                .file_name()
                .and_then(|n| n.to_str())
                .unwrap_or_default()
                .to_owned();
            designs.push(Self {
                key,
                record: table(&file)?,
                folder: entry,
                impressions,
            });
        }
        Ok(designs)
    }

    /// A list of tables of the design's record.
    pub fn tables(&self, key: &str) -> impl Iterator<Item = &Table> {
        tables(&self.record, key)
    }

    /// The design's image in millimetres, height before width as records have it.
    pub fn image(&self) -> Option<[f32; 2]> {
        pair(self.record.get("size")?.as_table()?, "image")
    }

    /// The matrix in millimetres.
    pub fn matrix(&self) -> Option<[f32; 2]> {
        pair(self.record.get("size")?.as_table()?, "matrix")
    }

    /// What an impression shows, point by point.
    pub fn look(&self, number: u32, record: &Table) -> Look {
        let identified = record.get("identified").and_then(Value::as_table);
        let named = |key: &str| -> String {
            identified
                .and_then(|t| t.get(key))
                .map_or_else(String::new, |v| plain(v, 0).unwrap_or_default())
        };
        let printing = named("printing");
        let mut state_key = named("state");
        let states: Vec<&str> = self.tables("states").map(|t| text(t, "key")).collect();
        if state_key.is_empty() && states.len() == 1 {
            states[0].clone_into(&mut state_key);
        }
        let observed = record.get("observed").and_then(Value::as_table);
        let shows = |list: &str, key: &str| {
            self.tables(list)
                .find(|t| text(t, "key") == key)
                .and_then(|t| t.get("shows"))
                .and_then(Value::as_table)
        };
        let (by_state, by_printing) = (shows("states", &state_key), shows("printings", &printing));
        let mut values = BTreeMap::new();
        let mut stages = BTreeMap::new();
        for point in self.tables("points") {
            let key = text(point, "key");
            let seen = observed.and_then(|t| t.get(key)).and_then(single);
            let value = seen
                .filter(|v| v != "not-visible")
                .or_else(|| by_state.and_then(|t| t.get(key)).and_then(|v| plain(v, 0)))
                .or_else(|| {
                    by_printing
                        .and_then(|t| t.get(key))
                        .and_then(|v| plain(v, number as usize))
                });
            let Some(value) = value else { continue };
            if let Some(list) = point.get("stages").and_then(Value::as_array)
                && let Some(at) = list.iter().position(|s| s.as_str() == Some(&value))
            {
                stages.insert(key.to_owned(), at);
            }
            values.insert(key.to_owned(), value);
        }
        let unprinted = record
            .get("blocks")
            .and_then(Value::as_table)
            .map(|t| {
                t.iter()
                    .filter(|(_, v)| v.as_str() == Some("not-printed"))
                    .map(|(k, _)| k.clone())
                    .collect()
            })
            .unwrap_or_default();
        Look {
            state: states.iter().position(|s| *s == state_key).unwrap_or(0),
            state_key,
            printing,
            number,
            kind: record
                .get("kind")
                .and_then(|v| plain(v, 0))
                .unwrap_or_default(),
            values,
            stages,
            unprinted,
        }
    }
}

/// A plain value, or the only one of `{ is = … }`; nothing where several are possible.
fn single(value: &Value) -> Option<String> {
    match value {
        Value::Table(t) => t.get("is").and_then(single),
        Value::Array(list) if list.len() == 1 => single(&list[0]),
        Value::Array(_) => None,
        other => plain(other, 0),
    }
}

/// A value as a word: of a list the one that `turn` comes to.
fn plain(value: &Value, turn: usize) -> Option<String> {
    match value {
        Value::String(s) => Some(s.clone()),
        Value::Integer(n) => Some(n.to_string()),
        Value::Float(n) => Some(n.to_string()),
        Value::Array(list) if !list.is_empty() => plain(&list[turn % list.len()], turn),
        Value::Table(t) => t
            .get("is")
            .and_then(|v| plain(v, turn))
            .or_else(|| t.values().next().and_then(|v| plain(v, turn))),
        _ => None,
    }
}

/// A text field, empty where there is none.
pub fn text<'a>(table: &'a Table, key: &str) -> &'a str {
    table.get(key).and_then(Value::as_str).unwrap_or_default()
}

/// A list of tables; tables that are something else are passed over.
pub fn tables<'a>(table: &'a Table, key: &str) -> impl Iterator<Item = &'a Table> {
    table
        .get(key)
        .and_then(Value::as_array)
        .into_iter()
        .flatten()
        .filter_map(Value::as_table)
}

/// Two numbers.
pub fn pair(table: &Table, key: &str) -> Option<[f32; 2]> {
    let list = numbers(table, key)?;
    (list.len() == 2).then(|| [list[0], list[1]])
}

/// A list of numbers, or the first claim's list.
pub fn numbers(table: &Table, key: &str) -> Option<Vec<f32>> {
    let mut value = table.get(key)?;
    if let Some(first) = value
        .as_array()
        .and_then(|a| a.first())
        .and_then(Value::as_table)
    {
        value = first.get("is")?;
    }
    value
        .as_array()?
        .iter()
        .map(|v| {
            v.as_float()
                .or_else(|| v.as_integer().map(|n| n as f64))
                .map(|n| n as f32)
        })
        .collect()
}

fn table(path: &Path) -> Result<Table, String> {
    let text = fs::read_to_string(path).map_err(|e| format!("{}: {e}", path.display()))?;
    text.parse().map_err(|e| format!("{}: {e}", path.display()))
}

fn sorted(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let listing = fs::read_dir(folder).map_err(|e| format!("{}: {e}", folder.display()))?;
    let mut paths: Vec<PathBuf> = listing.filter_map(Result::ok).map(|e| e.path()).collect();
    paths.sort();
    Ok(paths)
}
