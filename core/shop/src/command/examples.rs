//! Examples of the lines that verbs read, as their help tells them.

/// What `register` reads.
pub(super) const REGISTER_LINES: &str = r#"Lines, one JSON object each:
  {"register":"person","name":"Ilse Marrow","role":"manager"}
      role: driver, crew, trainee, mechanic, manager; "gone":true when no longer here
  {"register":"unit","door":"TH-02","features":{"switched":["hydraulic-brakes","diesel","shaft-drive","hour-meter"],
   "valves":["hose"],"hoses":[{"tag":"H-21","inches":0.5}]},"in-service":"2021-11-30","in-service-hours":"0.0",
   "set-serial":"THW-A-02","profile":{"delivery":{"value":"60","unit":"cfm"},"oil-family":"mineral"}}
      "set-moved":true when that set comes from another unit
  {"register":"status","unit":"TH-02","from":"2026-10-01","status":"out","expected":"07:00"}
      status: out, parked, in-shop, stored, lent, rented-out, sold
  {"register":"says","on-call":[{"name":"Night desk","number":"555-0140"}],"emergency":"911",
   "of-reminder":"Finish the job, tell us today."}
      what phones say in your words; also of-fault, of-warning; given again, all of it is new
  {"register":"numbers","coming-up-days":21,"covers-minutes":720}
      what the rules count with; a number left out is the usual one
  {"register":"severities","own":[{"item":"mirrors","word":"hairline","severity":"road"}]}
      what findings lock where it is otherwise than on the checklist; what is left out is as the checklist has it;
      "why" where a word is to lock less than there
  {"register":"papers","unit":"TH-02","annual-inspection":"2027-03-12","by":"Wren Castellane"}
      the last day on which it holds
  {"register":"programme","programme":{"edition":2,"tasks":[{"id":"oil-and-filters","hours":"500.0","months":12,
   "counts_weighted":true,"display_counts":true,"parts_lead_days":0}]}}
A line given again for the same name or door number changes it. Each object stands on one line, though long
ones are broken here. core/shop/examples/fleet.jsonl has a whole fleet."#;

/// What `record` reads at the shop.
pub(super) const SHOP_LINES: &str = r#"Lines, one JSON object each:
  {"unit":"TH-02","person":"Dov Petrakis","at":"2026-10-12T14:00:00-06:00","source":"invoice","hours":"1190.0",
   "kind":"service-done","body":{"tasks":["oil-and-filters"]}}
"source" says where it comes from: paper, invoice, estimate, brought-in or shop. Each object stands on one line.
`sumpbook phone schema` prints every kind and field; core/shop/examples/brought-in.jsonl has a few."#;

/// What `phone PHONE record` reads.
pub(super) const RECORD_LINES: &str = r#"Lines, one JSON object each:
  {"unit":"TH-02","person":"Bettina Quaye","hours":"1204.7","kind":"start-air","body":{}}
  {"unit":"TH-02","person":"Bettina Quaye","kind":"end-of-day","body":{"none-found":true}}
`sumpbook phone schema` prints every kind and field; core/shop/examples/entries.jsonl has a day of them."#;
