//! Journeys: whole days lived by real phones and a real shop.
