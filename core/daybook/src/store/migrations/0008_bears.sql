-- More bears on a unit's state than before: parts of a walk, and levels out of view. Every entry is projected once
-- more, at the next opening.
INSERT INTO setting (name, value) SELECT 'projected-before', x'31' WHERE EXISTS (SELECT 1 FROM entry);
