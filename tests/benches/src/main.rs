//! Speed, shown as ratios measured in one run.
fn main() {}
