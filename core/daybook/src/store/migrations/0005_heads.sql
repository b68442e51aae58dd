-- Which books have something new is answered by their heads alone.
ALTER TABLE head ADD COLUMN n INTEGER NOT NULL DEFAULT 0;
UPDATE head SET n = (SELECT n FROM entry WHERE hash = head.hash);
