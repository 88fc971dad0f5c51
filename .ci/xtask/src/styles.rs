//! Two files for all styles of the built page: what a start needs, and the rest.
//!
//! A browser asks a host for six files at a time. One more, and the program itself waits a
//! round trip for its turn.

use crate::digest::{base64, hex, sha256};
use crate::shop::Result;
use std::fs;
use std::path::Path;

/// Styles of the screens that a start does not need: the page loads them along with the second
/// module, by the name of the first file with this ending.
const LATER: [&str; 7] = [
    "sheets-",
    "advice-",
    "first-",
    "drawing-",
    "instrument-",
    "chart-",
    "print-",
];
const ENDING: &str = "-later.css";

/// Joins what the page's style links name, in their order, and leaves one link where the first
/// one stood.
pub fn join(staging: &Path) -> Result {
    let page = staging.join("index.html");
    let failed = |path: &Path, error| format!("{}: {error}", path.display());
    let text = fs::read_to_string(&page).map_err(|error| failed(&page, error))?;
    let links: Vec<&str> = style_links(&text).collect();
    let (mut styles, mut later) = (String::new(), String::new());
    for link in &links {
        let name = target(link)?;
        let file = staging.join(name);
        let joined = match LATER.iter().any(|start| name.starts_with(start)) {
            true => &mut later,
            false => &mut styles,
        };
        *joined += &fs::read_to_string(&file).map_err(|error| failed(&file, error))?;
        joined.push('\n');
        fs::remove_file(&file).map_err(|error| failed(&file, error))?;
    }
    let Some(first) = links.first() else {
        return Err("index.html links no style".to_owned());
    };
    // The name tells a change of either, as the second is found by it.
    let name = hex(&sha256(format!("{styles}{later}").as_bytes()));
    let name = format!("style-{}.css", &name[..16]);
    let integrity = base64(&sha256(styles.as_bytes()));
    let link = format!("<link rel=stylesheet href=./{name} integrity=\"sha256-{integrity}\">");
    let joined = text.replacen(first, &link, 1);
    let joined = links
        .iter()
        .fold(joined, |page, link| page.replace(link, ""));
    for (name, text) in [(name.replace(".css", ENDING), later), (name, styles)] {
        let file = staging.join(name);
        fs::write(&file, text).map_err(|error| failed(&file, error))?;
    }
    fs::write(&page, joined).map_err(|error| failed(&page, error))
}

/// Quoted or not: that is the minifier's choice.
fn style_links(page: &str) -> impl Iterator<Item = &str> {
    page.match_indices("<link ").filter_map(|(at, _)| {
        let tag = page[at..].split_inclusive('>').next()?;
        let is_style = ["rel=stylesheet", "rel=\"stylesheet\""];
        is_style.iter().any(|rel| tag.contains(rel)).then_some(tag)
    })
}

fn target(link: &str) -> Result<&str> {
    let value = link.split("href=").nth(1).unwrap_or_default();
    let value = value.trim_start_matches('"').trim_start_matches("./");
    value
        .split(['"', ' ', '>'])
        .next()
        .filter(|name| name.ends_with(".css") && !name.contains('/'))
        .ok_or_else(|| format!("{link} names no style of the build"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_styles_become_two_files_in_the_order_of_the_page() {
        let folder = std::env::temp_dir().join(format!("xtask-{}-styles", std::process::id()));
        fs::create_dir_all(&folder).unwrap();
        let page = "<title>T</title><link href=./b-1.css integrity=sha384-x rel=stylesheet>\
            <link rel=stylesheet href=./print-3.css>\
            <link rel=\"stylesheet\" href=\"./a-2.css\"><link href=icon.svg rel=icon><body>B";
        fs::write(folder.join("index.html"), page).unwrap();
        fs::write(folder.join("b-1.css"), "@layer b, a;").unwrap();
        fs::write(folder.join("a-2.css"), "@layer a{}").unwrap();
        fs::write(folder.join("print-3.css"), "@media print{}").unwrap();
        join(&folder).unwrap();
        let page = fs::read_to_string(folder.join("index.html")).unwrap();
        let links: Vec<&str> = style_links(&page).collect();
        assert_eq!(links.len(), 1, "{page}");
        let name = target(links[0]).unwrap();
        let styles = fs::read(folder.join(name)).unwrap();
        let later = fs::read(folder.join(name.replace(".css", "-later.css"))).unwrap();
        let left = ["b-1.css", "a-2.css", "print-3.css"].map(|name| folder.join(name).exists());
        fs::remove_dir_all(&folder).unwrap();
        assert_eq!(styles, b"@layer b, a;\n@layer a{}\n");
        assert_eq!(later, b"@media print{}\n");
        assert_eq!(left, [false; 3]);
        assert_eq!(
            page.replace(links[0], "|"),
            "<title>T</title>|<link href=icon.svg rel=icon><body>B"
        );
        // What the browser computes must be what the tag says.
        assert!(links[0].contains(&base64(&sha256(&styles))));
    }

    #[test]
    fn a_link_to_elsewhere_is_no_style_of_the_build() {
        assert!(target("<link rel=stylesheet href=./../a.css>").is_err());
        assert!(target("<link rel=stylesheet>").is_err());
    }
}
