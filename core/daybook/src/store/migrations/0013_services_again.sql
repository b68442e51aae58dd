-- A service whose figure does not count runs from what was accepted by then, and a truck without its set has no tasks of
-- the air: every unit is folded again.
UPDATE unit SET stale = 1;
