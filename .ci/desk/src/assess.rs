//! What the app says about an exported session.

use std::path::Path;

use fenderbench::archive;
use fenderbench::assess::assess;
use fenderbench::report;

/// The assessment of a file as JSON and a line break.
pub fn command(file: &Path) -> Result<String, String> {
    let name = plain(&file.display().to_string());
    let bytes = std::fs::read(file).map_err(|error| format!("{name} cannot be read: {error}."))?;
    let text = String::from_utf8(bytes).map_err(|_| format!("{name} is not UTF-8 text."))?;
    let incoming =
        archive::import(&text).map_err(|why| plain(&format!("{name} is refused: {why}")))?;
    if !incoming.untouched {
        // The app warns before it takes such a file in, so the desk does too.
        crate::tell(&format!("{name} was changed after it was written."));
    }
    let session = incoming.session;
    let json = report::json(&session, &assess(&session))
        .map_err(|error| format!("{name} cannot be reported: {error}."))?;
    Ok(json + "\n")
}

/// One line, whatever a file or its keys are called: no control character
/// of a stranger's file reaches the terminal.
fn plain(text: &str) -> String {
    let shown = |c: char| if c.is_control() { ' ' } else { c };
    text.chars().map(shown).collect()
}
