//! Somebody at the workbench: every other one edits, the others look on; all see what happens and look again.

use super::asking::{Line, Place, look_on};
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};
use tokio::io::AsyncBufReadExt;
use tokio::sync::mpsc;
use tokio::time::{sleep, sleep_until, timeout};

/// What was asked, with how long it took and what went wrong.
#[derive(Default)]
pub struct Tally {
    pub seen: BTreeMap<&'static str, Seen>,
}

#[derive(Default)]
pub struct Seen {
    pub times: Vec<f64>,
    pub errors: Vec<String>,
}

struct Person {
    line: Line,
    formula: String,
    token: String,
    /// The line that is typed in: its stage, its name, and what it weighs in gram.
    at: (String, String, f64),
    tally: Arc<Mutex<Tally>>,
}

/// Works until it is time to go.
pub async fn works(place: Place, formula: String, n: u8, until: Instant, tally: Arc<Mutex<Tally>>) {
    // People do not come in all at once.
    sleep(Duration::from_millis(60 * u64::from(n))).await;
    let mut person = Person { line: Line::of(place), formula, token: String::new(), at: Default::default(), tally };
    let page = person.ask("page", "GET", "", "").await;
    person.token = between(&page, "name=\"token\" content=\"");
    person.chooses(&page).await;
    let (told, mut changes) = mpsc::channel(64);
    let (at, until) = (person.formula.clone(), tokio::time::Instant::from_std(until));
    tokio::spawn(async move {
        let Ok(mut stream) = look_on(place, &format!("/live?at={at}")).await else { return };
        let mut line = String::new();
        while stream.read_line(&mut line).await.is_ok_and(|read| read > 0) {
            if line.contains(&format!("formulas/{at}.toml")) {
                let _ = told.try_send(());
            }
            line.clear();
        }
    });
    person.follow_up().await;
    let edits = n.is_multiple_of(2);
    let mut round = u64::from(n);
    while tokio::time::Instant::now() < until {
        round += 1;
        if edits {
            person.edits(round).await;
        } else {
            person.ask("smallest answer", "GET", "?why", "").await;
        }
        // Between two gestures one looks, and what others do is shown meanwhile, once the hand rests.
        let rest = tokio::time::Instant::now() + Duration::from_millis(2000 + round % 7 * 200);
        while let Ok(Some(())) =
            tokio::select! { change = changes.recv() => Ok(change), () = sleep_until(rest.min(until)) => Err(()) }
        {
            person.ask("parts", "GET", "/parts", "").await;
            while timeout(Duration::from_millis(150), changes.recv()).await.is_ok_and(|change| change.is_some()) {
                person.ask("parts", "GET", "/parts", "").await;
            }
            person.follow_up().await;
        }
    }
}

impl Person {
    /// Chooses a line that may be given another weight: the first whose own weight can be typed again.
    async fn chooses(&mut self, page: &str) {
        for control in
            page.split("<input").filter(|one| one.contains("data-gesture=\"amount\"") && one.contains("data-unit=\"g\""))
        {
            let grams = between(control, " value=\"").parse().unwrap_or_default();
            self.at = (between(control, "data-at=\""), between(control, "data-line=\""), grams);
            let path = format!("/formula/{}/try", self.formula);
            if matches!(self.line.ask("POST", &path, &self.token, &self.said(0)).await, Ok((200, _))) {
                return;
            }
        }
    }

    /// Types another weight, a few percent off, in three strokes, and leaves the field.
    async fn edits(&mut self, round: u64) {
        for stroke in 0..3 {
            self.ask("keystroke", "POST", "/try", &self.said(round + stroke)).await;
            sleep(Duration::from_millis(200)).await;
        }
        self.ask("change", "POST", "/do", &self.said(round)).await;
        self.follow_up().await;
    }

    /// What takes longer follows.
    async fn follow_up(&mut self) {
        self.ask("bands", "GET", "/bands", "").await;
        self.ask("day", "GET", "/day", "").await;
    }

    fn said(&self, round: u64) -> String {
        let (at, line, grams) = &self.at;
        let amount = grams * (1.0 + (round % 11) as f64 / 200.0);
        format!("gesture=amount&at={at}&line={line}&amount={amount:.1}%20g")
    }

    async fn ask(&mut self, what: &'static str, method: &str, end: &str, body: &str) -> String {
        let path = if end == "?why" { "/why/unknown-ingredient".to_owned() } else { format!("/formula/{}{end}", self.formula) };
        let begun = Instant::now();
        let answer = self.line.ask(method, &path, &self.token, body).await;
        let took = begun.elapsed().as_secs_f64() * 1000.0;
        let mut tally = self.tally.lock().expect("a tally");
        let seen = tally.seen.entry(what).or_default();
        match answer {
            Ok((200, text)) => {
                seen.times.push(took);
                text
            }
            Ok((status, text)) => {
                seen.errors.push(format!("{path} {status}: {}", text.chars().take(200).collect::<String>()));
                String::new()
            }
            Err(error) => {
                seen.errors.push(format!("{path}: {error}"));
                String::new()
            }
        }
    }
}

/// What stands after a piece of a page, up to the next quotation mark.
fn between(page: &str, before: &str) -> String {
    page.split_once(before).and_then(|(_, rest)| rest.split('"').next()).unwrap_or_default().to_owned()
}
