//! One file for all drawings of what can be seen.
//!
//! Compressed one by one they take more than twice as much, and each needs its digest in the
//! worker's list.

use crate::shop::Result;
use std::fmt::Write;
use std::fs;
use std::path::Path;

/// How high each drawing is, and how far below the one before it stands, in its own units.
const HIGH: usize = 96;

/// Joins the drawings of a build, a view for each by its file's name:
/// `drawings/bore_crack.svg` becomes `drawings.svg#bore_crack`.
pub fn join(staging: &Path) -> Result {
    let folder = staging.join("drawings");
    let failed = |path: &Path, error| format!("{}: {error}", path.display());
    let files = fs::read_dir(&folder).map_err(|error| failed(&folder, error))?;
    let mut paths: Vec<_> = files.flatten().map(|file| file.path()).collect();
    paths.sort();
    let mut drawings = Vec::new();
    for path in &paths {
        let text = fs::read_to_string(path).map_err(|error| failed(path, error))?;
        let name = path.file_stem().unwrap_or_default().to_string_lossy();
        drawings.push((name.into_owned(), text));
    }
    let joined = joined(&drawings).ok_or("the drawings are not of one kind")?;
    fs::write(staging.join("drawings.svg"), joined).map_err(|error| failed(staging, error))?;
    fs::remove_dir_all(&folder).map_err(|error| failed(&folder, error))
}

/// Drawings by their names, below each other; `None` unless they begin alike.
fn joined(drawings: &[(String, String)]) -> Option<String> {
    let size = format!("viewBox=\"0 0 {HIGH} {HIGH}\"");
    let head = drawings.first()?.1.split_inclusive('>').next()?;
    let whole = format!("viewBox=\"0 0 {HIGH} {}\"", HIGH * drawings.len());
    let mut joined = head.replacen(&size, &whole, 1);
    for (at, (name, text)) in drawings.iter().enumerate() {
        let drawing = text.trim_end().strip_prefix(head)?.strip_suffix("</svg>")?;
        let top = HIGH * at;
        let _ = write!(
            joined,
            "<view id=\"{name}\" viewBox=\"0 {top} {HIGH} {HIGH}\"/>\
             <svg y=\"{top}\" width=\"{HIGH}\" height=\"{HIGH}\">{drawing}</svg>"
        );
    }
    Some(joined + "</svg>\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_drawing_is_a_view_of_one_file() {
        let one = |name: &str, drawing: &str| {
            let text = format!("<svg viewBox=\"0 0 96 96\" fill=\"none\">{drawing}</svg>\n");
            (name.to_owned(), text)
        };
        let two = [
            one("a", "<path d=\"M1 1\"/>"),
            one("b", "<path d=\"M2 2\"/>"),
        ];
        let expected = "<svg viewBox=\"0 0 96 192\" fill=\"none\">\
            <view id=\"a\" viewBox=\"0 0 96 96\"/>\
            <svg y=\"0\" width=\"96\" height=\"96\"><path d=\"M1 1\"/></svg>\
            <view id=\"b\" viewBox=\"0 96 96 96\"/>\
            <svg y=\"96\" width=\"96\" height=\"96\"><path d=\"M2 2\"/></svg></svg>\n";
        assert_eq!(joined(&two).unwrap(), expected);
        let other = ("c".to_owned(), "<svg>d</svg>".to_owned());
        assert_eq!(joined(&[one("a", ""), other]), None);
    }
}
