-- Who is in at the console, by the hash of what a cookie says.
CREATE TABLE session (hash BLOB PRIMARY KEY, name TEXT NOT NULL, mark BLOB NOT NULL, ends INTEGER NOT NULL) WITHOUT ROWID;
