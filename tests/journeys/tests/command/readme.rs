//! What the README shows is what the program prints.

use crate::binary::Desk;

#[test]
fn the_day_sheet_in_the_readme_is_the_one_the_demo_prints() {
    let readme = include_str!("../../../../README.md");
    let shown =
        readme.split("```\n").find(|block| block.starts_with("Tern Hollow Water   Wednesday")).unwrap();
    let desk = Desk::new();
    let said = desk.run(&["demo", "--no-hub", "--until", "2026-10-21", "--folder", "demo"], "").well();
    let printed: Vec<&str> = said.trim_start().lines().map(str::trim_end).collect();
    for (line, printed) in shown.lines().zip(&printed) {
        assert_eq!(line, *printed);
    }
    assert!(
        printed.get(shown.lines().count()).is_some_and(|next| next.is_empty()),
        "the sheet ends where the README's does"
    );
}
