//! A small static server for target/dist.

use crate::app;
use crate::shop::{Result, Shop};
use crate::tools::{self, Need};
use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread;
use std::time::{Duration, UNIX_EPOCH};

pub fn command(shop: &mut Shop, options: &[&str]) -> Result {
    let port = match options {
        [] => 8080,
        ["--port", port] => port
            .parse::<u16>()
            .map_err(|_| format!("{port:?} is not a port"))?,
        _ => return Err("serve knows one option: --port N".to_owned()),
    };
    // Before the build, which may take minutes.
    let listener = TcpListener::bind(("127.0.0.1", port))
        .map_err(|error| format!("port {port}: {error}. Choose another with --port N"))?;
    tools::ensure(shop, &[Need::Wasm, Need::Bindgen, Need::Trunk])?;
    app::build(shop)?;
    println!(
        "
Fenderbench is at http://localhost:{port}/ (Ctrl+C ends it)

A page works offline only when it came over HTTPS or from localhost. On a phone:
- Android with a USB cable and debugging allowed: adb reverse tcp:{port} tcp:{port}
  Then open http://localhost:{port}/ in the phone's browser.
- Any phone: put the folder target/dist on any static HTTPS host and open that address.
"
    );
    serve(listener, shop.dist());
    Ok(())
}

/// Serves until the process ends.
fn serve(listener: TcpListener, folder: PathBuf) {
    let folder = Arc::new(folder);
    for stream in listener.incoming().flatten() {
        let folder = Arc::clone(&folder);
        // A browser that goes away in the middle is no concern of the others.
        thread::spawn(move || answer(stream, &folder).is_ok());
    }
}

fn answer(mut stream: TcpStream, folder: &Path) -> std::io::Result<()> {
    // Browsers open connections ahead of need and may never use them.
    stream.set_read_timeout(Some(Duration::from_secs(30)))?;
    let mut head = Vec::new();
    let mut reader = BufReader::new(stream.try_clone()?).take(16 * 1024);
    while reader.read_until(b'\n', &mut head)? > 2 {}
    stream.write_all(&respond(folder, &String::from_utf8_lossy(&head)))
}

/// The whole answer to a request's head.
fn respond(folder: &Path, head: &str) -> Vec<u8> {
    let mut words = head.split_whitespace();
    let (method, target) = (words.next().unwrap_or(""), words.next().unwrap_or(""));
    if !["GET", "HEAD"].contains(&method) {
        return message("405 Method Not Allowed");
    }
    let Some(file) = file_for(folder, target) else {
        return message("404 Not Found");
    };
    let (Ok(body), Ok(tag)) = (fs::read(&file), tag(&file)) else {
        return message("404 Not Found");
    };
    // Always asked again, so that a rebuild shows; the tag keeps that cheap.
    let known = format!("ETag: {tag}\r\nCache-Control: no-cache\r\nConnection: close\r\n");
    if header(head, "if-none-match") == Some(&tag) {
        return format!("HTTP/1.1 304 Not Modified\r\n{known}\r\n").into_bytes();
    }
    let kind = mime(&file);
    let length = body.len();
    let mut answer = format!(
        "HTTP/1.1 200 OK\r\nContent-Type: {kind}\r\nContent-Length: {length}\r\n{known}X-Content-Type-Options: nosniff\r\n\r\n"
    )
    .into_bytes();
    if method == "GET" {
        answer.extend(body);
    }
    answer
}

fn message(status: &str) -> Vec<u8> {
    let length = status.len();
    format!("HTTP/1.1 {status}\r\nContent-Type: text/plain\r\nContent-Length: {length}\r\nConnection: close\r\n\r\n{status}").into_bytes()
}

fn header<'a>(head: &'a str, name: &str) -> Option<&'a str> {
    head.lines().find_map(|line| {
        let (key, value) = line.split_once(':')?;
        key.eq_ignore_ascii_case(name).then(|| value.trim())
    })
}

/// Only plain names below the folder: no part may climb out of it, and the build writes no
/// name that would need decoding.
fn file_for(folder: &Path, target: &str) -> Option<PathBuf> {
    let path = target.split(['?', '#']).next()?.strip_prefix('/')?;
    let mut file = folder.to_path_buf();
    for part in path.split('/').filter(|part| !part.is_empty()) {
        if part.starts_with('.') || part.contains(['\\', ':', '%']) {
            return None;
        }
        file.push(part);
    }
    if file.is_dir() {
        file.push("index.html");
    }
    file.is_file().then_some(file)
}

fn tag(file: &Path) -> std::io::Result<String> {
    let data = fs::metadata(file)?;
    let time = data
        .modified()?
        .duration_since(UNIX_EPOCH)
        .unwrap_or_default();
    Ok(format!("\"{:x}-{:x}\"", data.len(), time.as_nanos()))
}

fn mime(file: &Path) -> &'static str {
    match file.extension().and_then(|extension| extension.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("webmanifest") => "application/manifest+json",
        Some("json") => "application/json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn folder(name: &str) -> PathBuf {
        let folder =
            std::env::temp_dir().join(format!("xtask-{}-serve-{name}", std::process::id()));
        fs::create_dir_all(folder.join("dist/icons")).unwrap();
        fs::write(folder.join("secret"), "no").unwrap();
        fs::write(folder.join("dist/index.html"), "page").unwrap();
        fs::write(folder.join("dist/a.wasm"), "wasm").unwrap();
        folder
    }

    #[test]
    fn files_come_with_their_type_and_nothing_outside_the_folder_comes() {
        let root = folder("types");
        let dist = root.join("dist");
        let ask = |line: &str| {
            String::from_utf8(respond(&dist, &format!("{line} HTTP/1.1\r\n\r\n"))).unwrap()
        };
        let page = ask("GET /?a=b");
        assert!(page.starts_with("HTTP/1.1 200") && page.ends_with("\r\n\r\npage"));
        assert!(
            page.contains("Content-Type: text/html") && page.contains("Cache-Control: no-cache")
        );
        assert!(ask("GET /a.wasm").contains("Content-Type: application/wasm"));
        assert!(ask("HEAD /a.wasm").ends_with("\r\n\r\n"));
        for target in [
            "/../secret",
            "/icons/../../secret",
            "/%2e%2e/secret",
            "/none",
            "secret",
            "/icons",
        ] {
            assert!(
                ask(&format!("GET {target}")).starts_with("HTTP/1.1 404"),
                "{target}"
            );
        }
        assert!(ask("POST /").starts_with("HTTP/1.1 405"));
        fs::remove_dir_all(root).unwrap();
    }

    #[test]
    fn an_unchanged_file_is_not_sent_again() {
        let root = folder("tags");
        let dist = root.join("dist");
        let tag = tag(&dist.join("a.wasm")).unwrap();
        let head = format!("GET /a.wasm HTTP/1.1\r\nif-none-match: {tag}\r\n\r\n");
        assert!(respond(&dist, &head).starts_with(b"HTTP/1.1 304"));
        fs::write(dist.join("a.wasm"), "other wasm").unwrap();
        assert!(respond(&dist, &head).starts_with(b"HTTP/1.1 200"));
        fs::remove_dir_all(root).unwrap();
    }

    #[test]
    fn it_answers_over_a_socket() {
        let root = folder("socket");
        let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
        let address = listener.local_addr().unwrap();
        let dist = root.join("dist");
        thread::spawn(move || serve(listener, dist));
        let mut stream = TcpStream::connect(address).unwrap();
        stream
            .write_all(b"GET / HTTP/1.1\r\nHost: localhost\r\n\r\n")
            .unwrap();
        let mut answer = String::new();
        stream.read_to_string(&mut answer).unwrap();
        assert!(answer.starts_with("HTTP/1.1 200") && answer.ends_with("page"));
        fs::remove_dir_all(root).unwrap();
    }
}
