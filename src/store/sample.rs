//! The sample sessions, which come with the app.

use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::Response;

use super::StoreError;

/// The text of the sample session of this name. It lies beside the page; the
/// worker keeps it once the page has been at rest, and then it opens offline.
///
/// # Errors
/// [`StoreError::Other`] if it cannot be had, which offline means that the
/// page never was at rest with a network.
pub async fn fetch(name: &str) -> Result<String, StoreError> {
    let address = format!("samples/{name}.json");
    let text = async {
        let window = web_sys::window()?;
        let response = JsFuture::from(window.fetch_with_str(&address)).await.ok()?;
        let response: Response = response.dyn_into().ok()?;
        let text = response.ok().then(|| response.text().ok()).flatten()?;
        JsFuture::from(text).await.ok()?.as_string()
    };
    let missing = || {
        StoreError::Other(
            "The sample could not be loaded: it needs a network once. Go on without it, or try \
             again with one."
                .to_owned(),
        )
    };
    text.await.ok_or_else(missing)
}
