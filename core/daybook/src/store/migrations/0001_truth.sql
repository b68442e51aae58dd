-- The truth: entries in the order they were admitted. Nothing here is ever rebuilt or deleted,
-- except that a branch which lost a fork moves to `refused` whole.
CREATE TABLE book (
  no    INTEGER PRIMARY KEY,
  truck BLOB,                       -- null: the fleet book
  year  INTEGER,
  UNIQUE (truck, year)
);
CREATE TABLE entry (
  n        INTEGER PRIMARY KEY AUTOINCREMENT,  -- admission order = cursor = as-of axis
  hash     BLOB NOT NULL UNIQUE,               -- SHA-256 of the change chunk
  book     INTEGER NOT NULL REFERENCES book (no),
  actor    BLOB NOT NULL,
  seq      INTEGER NOT NULL,
  deps     BLOB,                               -- 32 bytes each, ascending; null: only the predecessor
  op       INTEGER NOT NULL,
  id       BLOB NOT NULL,                      -- deliberately not unique: one id can have two contents
  payload  BLOB NOT NULL,
  sig      BLOB NOT NULL,
  received INTEGER NOT NULL,                   -- milliseconds, never running back
  carrier  BLOB,                               -- key id of the device that brought it; null: written here
  UNIQUE (book, actor, seq)
);
-- Each index is a page more to write for every entry: a book's rows come by (book, actor, seq), and `received`
-- never runs back, so a moment is found by halving.
CREATE INDEX entry_id ON entry (id);
CREATE TABLE head (
  book INTEGER NOT NULL REFERENCES book (no),
  hash BLOB NOT NULL,
  PRIMARY KEY (book, hash)
) WITHOUT ROWID;

-- Kept outside the books, as proof and for a person to look at.
CREATE TABLE refused (
  no       INTEGER PRIMARY KEY,
  bytes    BLOB NOT NULL,
  reason   TEXT NOT NULL,
  device   BLOB,
  id       BLOB,
  received INTEGER NOT NULL,
  UNIQUE (bytes, reason)
);
CREATE TABLE waiting (
  no       INTEGER PRIMARY KEY,
  part     BLOB NOT NULL UNIQUE,               -- the entry with its place
  missing  BLOB NOT NULL,                      -- hash prefix of a change, or key id of a signer
  device   BLOB,
  received INTEGER NOT NULL
);

-- What was exchanged with whom.
CREATE TABLE exchange (
  no     INTEGER PRIMARY KEY,
  device BLOB NOT NULL,
  at     INTEGER NOT NULL,
  from_n INTEGER NOT NULL,
  to_n   INTEGER NOT NULL,
  off_ms INTEGER
);
CREATE INDEX exchange_device ON exchange (device, at);
CREATE TABLE receipt (
  book  INTEGER PRIMARY KEY REFERENCES book (no),
  heads BLOB NOT NULL,                          -- the shop's heads, 32 bytes each
  at    INTEGER NOT NULL
);

-- Of this folder, not of the fleet.
CREATE TABLE setting (name TEXT PRIMARY KEY, value BLOB NOT NULL) WITHOUT ROWID;
CREATE TABLE draft (
  id      BLOB PRIMARY KEY,                     -- the id its entry will have
  body    TEXT NOT NULL,
  changed INTEGER NOT NULL
) WITHOUT ROWID;
CREATE TABLE invite (
  code    BLOB PRIMARY KEY,
  made    INTEGER NOT NULL,
  expires INTEGER NOT NULL,
  used_by BLOB
) WITHOUT ROWID;
CREATE TABLE sheet (
  day     TEXT NOT NULL,
  version INTEGER NOT NULL,
  at      INTEGER NOT NULL,                     -- as known at, milliseconds
  n       INTEGER NOT NULL,                     -- the shop had entries up to this number
  heads   BLOB NOT NULL,
  body    BLOB NOT NULL,
  changes TEXT NOT NULL,
  PRIMARY KEY (day, version)
) WITHOUT ROWID;
