-- More findings bear on a unit's state than before, and some are judged by the set of their own moment: every entry is
-- projected once more at the next opening, and each unit is folded again.
INSERT OR REPLACE INTO setting (name, value) SELECT 'projected-before', x'31' WHERE EXISTS (SELECT 1 FROM entry);
UPDATE unit SET stale = 1;
-- The fleet keeps which oil each set had when: it is folded again from its book.
UPDATE fleet SET body = x'';
