//! The slip: a certificate on paper, with the code a phone takes where there is no signal.

use maud::html;
use sumpbook_daybook::text::Arg;

use crate::console::day;
use crate::console::table::{Table, door, said};
use crate::console::visit::{Body, Telling};
use crate::console::words::Words;
use crate::slip::Slip;

pub(super) fn body(telling: &Telling, slip: &Slip) -> Body {
    let words: &Words = telling;
    let what = words.item(&slip.item, slip.place.as_deref());
    let verdict = words.t(&format!("verdict-{}", slip.verdict));
    let heads = ["head-phone", "head-code"].map(|key| words.t(key));
    let codes =
        slip.codes.iter().map(|code| vec![said(&code.phone), html! { span class="code" { (code.code) } }]);
    let main = html! {
        article class="slip" {
            div class="head" {
                h1 { (words.t("slip-title")) " " (door(&slip.unit)) }
                p class="known" { (slip.fleet) }
                ul class="ways" {
                    li { a href="/certificates" { (words.t("slip-on")) } }
                    li { button type="button" class="print" id="print" hidden { (words.t("print")) } }
                }
            }
            p class="says" { (what) ": " strong { (verdict) } }
            p class="says" { (slip.words) }
            dl class="facts" {
                dt { (words.t("slip-certified")) }
                dd { (words.who(slip.who.as_deref())) ", " (words.short_day_at(slip.at)) }
                @for found in &slip.found {
                    dt { (words.t("slip-found")) } dd { (day::answer(words, found)) }
                }
            }
            @match slip.state.as_str() {
                "awaiting-review" => {
                    p class="strip" { (words.t("slip-how")) }
                    (Table::new("codes-table", &words.t("slip-codes"), heads).rows(codes).draw())
                    p { (words.t("slip-then")) }
                }
                "open" => p class="strip" { (words.t("slip-found-again")) },
                _ => p class="strip" { (words.t("slip-over")) },
            }
            p class="fine" { (words.with("slip-entry", &[("entry", Arg::Text(&slip.entry.to_string()))])) }
        }
    };
    Body { title: format!("{} {}", words.t("slip-title"), slip.unit), main }
}
