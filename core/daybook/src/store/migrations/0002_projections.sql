-- Read quickly, rebuilt from the truth at will.
CREATE TABLE unit (
  no    INTEGER PRIMARY KEY,
  truck BLOB NOT NULL UNIQUE,
  stale INTEGER NOT NULL DEFAULT 1,             -- its state must be folded again before it is read
  body  BLOB                                    -- the folded state
);
CREATE INDEX unit_stale ON unit (no) WHERE stale = 1;
CREATE TABLE fact (
  entry  INTEGER PRIMARY KEY REFERENCES entry (n),
  unit   INTEGER,                               -- unit.no; null: a matter of the fleet
  kind   INTEGER NOT NULL,
  at     INTEGER NOT NULL,
  day    INTEGER NOT NULL,                      -- yard day, days since 1970-01-01
  person BLOB,
  hours  INTEGER,                               -- tenths of the compressor meter
  bears  INTEGER NOT NULL,                      -- 1: more than its hours bears on the unit's state
  judged INTEGER NOT NULL                       -- 0 counts; else why it is set aside
);
CREATE INDEX fact_day ON fact (day, unit, kind);
CREATE INDEX fact_unit ON fact (unit, kind, at);
-- Partial: a walk that found nothing touches neither.
CREATE INDEX fact_bears ON fact (unit, at) WHERE bears = 1;
CREATE INDEX fact_hours ON fact (unit, at) WHERE hours IS NOT NULL;
CREATE TABLE aside (
  entry INTEGER PRIMARY KEY REFERENCES entry (n),
  unit  INTEGER,
  why   INTEGER NOT NULL
);
CREATE TABLE decided (
  target   BLOB NOT NULL,                       -- entry id it is about
  by_entry INTEGER NOT NULL REFERENCES entry (n),
  kind     INTEGER NOT NULL,
  verdict  INTEGER NOT NULL,
  PRIMARY KEY (target, by_entry)
) WITHOUT ROWID;
CREATE TABLE lock_out (
  unit   INTEGER NOT NULL,
  part   TEXT NOT NULL,
  opened INTEGER NOT NULL,                      -- entry.n that opened it
  since  INTEGER NOT NULL,
  ended  INTEGER,
  PRIMARY KEY (unit, part, opened)
) WITHOUT ROWID;
CREATE INDEX lock_open ON lock_out (unit, part) WHERE ended IS NULL;
CREATE INDEX lock_ended ON lock_out (ended) WHERE ended IS NOT NULL;
CREATE TABLE fleet (
  one     INTEGER PRIMARY KEY CHECK (one = 1),
  version INTEGER NOT NULL,                     -- counts changes of the fleet book's projection
  body    BLOB NOT NULL                         -- the folded fleet; empty: it must be folded again
);
