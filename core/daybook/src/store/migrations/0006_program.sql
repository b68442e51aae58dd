-- Which version of the program each device said it runs, and since when.
CREATE TABLE program (device BLOB PRIMARY KEY, version TEXT NOT NULL, since INTEGER NOT NULL) WITHOUT ROWID;
