-- A projection: which entries name which photo. The hub takes no photo that none names.
CREATE TABLE photo_named (
  photo BLOB NOT NULL,                          -- SHA-256
  entry INTEGER NOT NULL,                       -- entry.n
  PRIMARY KEY (photo, entry)
) WITHOUT ROWID;
CREATE INDEX photo_of_entry ON photo_named (entry);
-- Of this folder: how far a photo came on its way to the shop.
CREATE TABLE photo_sent (
  photo   BLOB PRIMARY KEY,                     -- SHA-256
  size    INTEGER NOT NULL,
  reached INTEGER NOT NULL,                     -- bytes the shop has
  there   INTEGER                               -- whole at the shop since, milliseconds
) WITHOUT ROWID;
-- Entries that came before this step are read once, at the next opening.
INSERT INTO setting (name, value) SELECT 'photos-unread', x'31' WHERE EXISTS (SELECT 1 FROM entry);
