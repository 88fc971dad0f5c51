//! Tables of expected values. The last column of each names its source.

use std::collections::BTreeMap;

/// A row of a table by column.
pub struct Row {
    place: String,
    cells: BTreeMap<String, String>,
}

impl Row {
    pub fn get(&self, column: &str) -> &str {
        let cell = self.cells.get(column);
        cell.unwrap_or_else(|| panic!("{}: no column {column}", self.place))
    }

    pub fn whole(&self, column: &str) -> i128 {
        let text = self.get(column);
        let number = text.parse();
        number.unwrap_or_else(|_| panic!("{}: {text} is no whole number", self.place))
    }

    /// File, line and source, for messages.
    pub fn place(&self) -> String {
        format!("{} ({})", self.place, self.get("source"))
    }
}

/// The rows of a table. Only the last column, `source`, may hold commas.
pub fn rows(name: &str, text: &str) -> Vec<Row> {
    let mut lines = text.lines();
    let columns: Vec<_> = lines.next().unwrap_or_default().split(',').collect();
    assert_eq!(columns.last(), Some(&"source"), "{name}");
    let rows: Vec<_> = (2..)
        .zip(lines)
        .map(|(number, line)| {
            let place = format!("{name}, line {number}");
            let cells: Vec<_> = line.splitn(columns.len(), ',').collect();
            assert_eq!(cells.len(), columns.len(), "{place}");
            assert!(
                !cells[columns.len() - 1].trim().is_empty(),
                "{place}: no source"
            );
            let columns = columns.iter().map(ToString::to_string);
            let cells = columns.zip(cells.iter().map(ToString::to_string)).collect();
            Row { place, cells }
        })
        .collect();
    assert!(!rows.is_empty(), "{name} is empty");
    rows
}

/// The rows of a file in `tests/golden`.
macro_rules! golden {
    ($name:literal) => {
        crate::golden::rows($name, include_str!(concat!("../golden/", $name)))
    };
}
pub(crate) use golden;
