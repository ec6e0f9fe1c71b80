//! A change that a rule offers mends what it found, and breaks nothing.

use crate::proof_read;
use formula::BookText;
use formula::fault::page::Page;
use formula::source::Source;
use std::collections::BTreeMap;

#[test]
fn every_change_that_is_offered_mends() {
    let mut offered = 0;
    for rule in bench::rules::ALL {
        for example in Page::read(rule.page).bad {
            let source =
                |(file, text): (&&str, &String)| ((*file).to_owned(), Source { file: (*file).into(), text: text.clone() });
            let mut files: BTreeMap<String, Source> = example.files.iter().map(source).collect();
            for fix in proof_read(BookText { files: files.clone() }).into_iter().filter_map(|found| found.fix) {
                offered += 1;
                for edit in fix.edits.iter().rev() {
                    let text = &mut files.get_mut(edit.place.file.as_ref()).expect("the file is there").text;
                    text.replace_range(edit.place.span.clone(), &edit.text);
                }
            }
            if offered > 0 && proof_read(BookText { files: files.clone() }).iter().any(|found| found.fix.is_some()) {
                panic!("{}: what was changed is still found", rule.code);
            }
            if files.values().zip(example.files.values()).any(|(after, before)| after.text != *before) {
                let left = proof_read(BookText { files });
                assert!(left.is_empty(), "{}: {left:?}", rule.code);
            }
        }
    }
    assert!(offered >= 2, "only {offered} changes are offered");
}
