//! The journal in IndexedDB: every fact, in the order it was entered.
//!
//! A fact counts as saved once it is here, because localStorage alone lost
//! committed data whenever the whole browser was killed. Database
//! `fenderbench` (version 1), store `journal`, keys that count upwards,
//! records `{session, text}`.

use js_sys::{Array, Function, Reflect};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{
    IdbCursorWithValue, IdbDatabase, IdbObjectStore, IdbObjectStoreParameters, IdbOpenDbRequest,
    IdbTransaction, IdbTransactionMode,
};

use super::{StoreError, record, wait, window};

const DATABASE: &str = "fenderbench";
const VERSION: u32 = 1;
const STORE: &str = "journal";

/// An open journal. Copies share one connection, which closes by itself when a
/// newer version of the app wants to change the database; every call then
/// fails until the page is loaded again.
#[derive(Clone, Debug)]
pub struct Journal {
    database: IdbDatabase,
}

impl Journal {
    /// Opens the journal, and makes it the first time.
    ///
    /// # Errors
    /// [`StoreError::Refused`] where the browser denies it; [`StoreError::Other`] when a newer
    /// version has written it or another tab holds an older one open.
    pub async fn open() -> Result<Self, StoreError> {
        let factory = window()?.indexed_db()?.ok_or(StoreError::Refused)?;
        let request = factory.open_with_u32(DATABASE, VERSION)?;
        let database = opened(&request).await?;
        // The newer page must not wait for this one. The browser's own function needs no
        // closure that would have to live as long as the connection.
        if let Ok(close) = Reflect::get(&database, &"close".into())?.dyn_into::<Function>() {
            database.set_onversionchange(Some(&close.bind0(&database)));
        }
        Ok(Self { database })
    }

    /// Adds a record and resolves when it is committed. The place in the order is taken at the
    /// call, whenever the future is polled.
    ///
    /// # Errors
    /// [`StoreError::Full`] when the space is used up; [`StoreError::Other`] when the
    /// connection is closed. The record is then not in the journal.
    pub fn append(
        &self,
        session: &str,
        text: &str,
    ) -> impl Future<Output = Result<(), StoreError>> + use<> {
        let committed = self.add(session, text);
        async move { committed?.await }
    }

    /// All records as (session, text), oldest first. A record of another shape, which this app
    /// never writes, comes as two empty texts, so that it is counted as damaged and not hidden.
    ///
    /// # Errors
    /// What the browser reports, for one when the connection is closed.
    pub async fn read_all(&self) -> Result<Vec<(String, String)>, StoreError> {
        let (_, store) = self.begin(IdbTransactionMode::Readonly)?;
        let records: Array = wait::result(&store.get_all()?).await?.unchecked_into();
        Ok(records
            .iter()
            .map(|record| record::texts(&record).unwrap_or_default())
            .collect())
    }

    /// Deletes every record of a session: all of them or, on an error, none.
    ///
    /// # Errors
    /// What the browser reports, for one when the connection is closed.
    pub async fn forget(&self, session: &str) -> Result<(), StoreError> {
        let (transaction, store) = self.begin(IdbTransactionMode::Readwrite)?;
        let committed = wait::complete(&transaction);
        let request = store.open_cursor()?;
        // The cursor moves by firing its request again, until it has no result.
        while let Ok(cursor) = wait::result(&request)
            .await?
            .dyn_into::<IdbCursorWithValue>()
        {
            if record::texts(&cursor.value()?).is_some_and(|(of, _)| of == session) {
                cursor.delete()?;
            }
            cursor.continue_()?;
        }
        committed.await
    }

    fn add(
        &self,
        session: &str,
        text: &str,
    ) -> Result<impl Future<Output = Result<(), StoreError>> + use<>, StoreError> {
        let (transaction, store) = self.begin(IdbTransactionMode::Readwrite)?;
        store.add(&record::object(session, text)?)?;
        Ok(wait::complete(&transaction))
    }

    fn begin(
        &self,
        mode: IdbTransactionMode,
    ) -> Result<(IdbTransaction, IdbObjectStore), StoreError> {
        let transaction = self.database.transaction_with_str_and_mode(STORE, mode)?;
        let store = transaction.object_store(STORE)?;
        Ok((transaction, store))
    }
}

/// The database of a request to open it, with its store made if it is new.
async fn opened(request: &IdbOpenDbRequest) -> Result<IdbDatabase, StoreError> {
    let source = request.clone();
    let make = Closure::<dyn FnMut() -> Result<(), JsValue>>::new(move || make_store(&source));
    request.set_onupgradeneeded(Some(make.as_ref().unchecked_ref()));
    // `make` is dropped after this line, so the request has to be settled first.
    let database = wait::opened(request).await?;
    Ok(database.unchecked_into())
}

/// An error thrown here takes the new database back, and the request reports it.
fn make_store(request: &IdbOpenDbRequest) -> Result<(), JsValue> {
    let database: IdbDatabase = request.result()?.unchecked_into();
    let counting = IdbObjectStoreParameters::new();
    counting.set_auto_increment(true);
    database.create_object_store_with_optional_parameters(STORE, &counting)?;
    Ok(())
}
