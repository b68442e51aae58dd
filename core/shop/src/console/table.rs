//! A ruled table. On a narrow screen each row becomes its unit and then "head: value" lines; it stays a table
//! for whoever reads it by ear, which is why every part says its role.

use maud::{Markup, html};

/// One table.
pub(super) struct Table {
    id: String,
    caption: String,
    heads: Vec<String>,
    named: &'static [usize],
    sorted: Vec<Option<(String, bool)>>,
    wide: &'static [usize],
    rows: Vec<Vec<Markup>>,
}

impl Table {
    /// An empty one. `id` is its stable name, `caption` is read before it.
    pub(super) fn new(id: &str, caption: &str, heads: impl IntoIterator<Item = String>) -> Table {
        let heads = heads.into_iter().collect();
        let (id, caption) = (id.to_owned(), caption.to_owned());
        Table { id, caption, heads, named: &[], sorted: Vec::new(), wide: &[], rows: Vec::new() }
    }

    /// The same; these columns hold people's names, which a board's print leaves out.
    pub(super) fn named(self, columns: &'static [usize]) -> Table {
        Table { named: columns, ..self }
    }

    /// The same; each head leads to where the table is sorted by it, and says whether it is now.
    pub(super) fn sorted(self, heads: impl IntoIterator<Item = Option<(String, bool)>>) -> Table {
        Table { sorted: heads.into_iter().collect(), ..self }
    }

    fn head(&self, place: usize, head: &str) -> Markup {
        html! {
            @if let Some(Some((to, _))) = self.sorted.get(place) { a href=(to) { (head) } } @else { (head) }
        }
    }

    fn is_sorted_by(&self, place: usize) -> bool {
        matches!(self.sorted.get(place), Some(Some((_, true))))
    }

    /// The same; these columns are left out on a narrow screen, where the first cell says what they say.
    pub(super) fn wide(self, columns: &'static [usize]) -> Table {
        Table { wide: columns, ..self }
    }

    fn class(&self, column: usize) -> Option<&'static str> {
        let named = self.named.contains(&column).then_some("named");
        named.or_else(|| self.wide.contains(&column).then_some("wide"))
    }

    /// The same with these rows; the first cell heads its row.
    pub(super) fn rows(mut self, rows: impl IntoIterator<Item = Vec<Markup>>) -> Table {
        self.rows.extend(rows);
        self
    }

    /// Drawn; nothing when there is no row.
    pub(super) fn draw(&self) -> Markup {
        if self.rows.is_empty() {
            return html! {};
        }
        html! {
            table id=(self.id) role="table" {
                caption class="aloud" { (self.caption) }
                thead role="rowgroup" {
                    tr role="row" {
                        @for (place, head) in self.heads.iter().enumerate() {
                            th scope="col" role="columnheader" class=[self.class(place)]
                                aria-sort=[self.is_sorted_by(place).then_some("other")] {
                                (self.head(place, head))
                            }
                        }
                    }
                }
                tbody role="rowgroup" {
                    @for row in &self.rows {
                        tr role="row" {
                            @for (place, cell) in row.iter().enumerate() {
                                @if place == 0 {
                                    th scope="row" role="rowheader" { (cell) }
                                } @else {
                                    td role="cell" class=[self.class(place)] {
                                        span class="h" aria-hidden="true" {
                                            (self.heads.get(place).map_or("", String::as_str))
                                        }
                                        span class="v" { (cell) }
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// A cell of words.
pub(super) fn said(text: impl AsRef<str>) -> Markup {
    html! { (text.as_ref()) }
}

/// A person's name among other words: a board's print leaves it out.
pub(super) fn name(text: &str) -> Markup {
    html! { span class="named" { (text) } }
}

/// A door number that leads to its unit.
pub(super) fn door(unit: &str) -> Markup {
    html! { a class="door" href=(format!("/units/{}", super::language::escaped(unit))) { (unit) } }
}

/// A section's head: how many, what, and what is said when there is none. An empty line is an answer.
pub(super) fn section(id: &str, count: usize, name: &str, beside: &str, below: &Markup) -> Markup {
    html! {
        section id=(id) aria-labelledby=(format!("{id}-head")) class=[(count == 0).then_some("none")] {
            h2 id=(format!("{id}-head")) {
                span class="count" { (count) } " " (name)
            }
            @if !beside.is_empty() { p class="beside" { (beside) } }
            (below)
        }
    }
}
