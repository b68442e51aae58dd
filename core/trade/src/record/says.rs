//! What the shop has its phones say, in its own words and numbers.

record! {
    /// Somebody to be called.
    pub struct OnCall {
        /// Who, or which desk.
        #[n(0)] pub name: String,
        /// The number, as it is dialled.
        #[n(1)] pub number: String,
    }

    /// Words and numbers that stand on the phones. Each one set replaces the one before whole.
    #[derive(Default)]
    pub struct ShopSays {
        /// Whom to call when something is locked, first to last.
        #[cbor(default)]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(0)] pub on_call: Vec<OnCall>,
        /// The number for help when somebody is hurt; 911 when none is set.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(1)] pub emergency: Option<String>,
        /// What a driver is told beside a fault on the display.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(2)] pub of_fault: Option<String>,
        /// Beside a warning.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(3)] pub of_warning: Option<String>,
        /// Beside a reminder of service.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(4)] pub of_reminder: Option<String>,
    }
}
