-- A sound is named, kept and sent as a photo is; what it is stands beside its name.
ALTER TABLE photo_named ADD COLUMN sound INTEGER NOT NULL DEFAULT 0;
-- A program of before passed over sounds that entries name: they are read once, at the next opening.
INSERT OR REPLACE INTO setting (name, value) SELECT 'photos-unread', x'31' WHERE EXISTS (SELECT 1 FROM entry);
