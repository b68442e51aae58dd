-- A pour nobody read the meter at closes no balance on an old figure, and a verdict asks for the load share: fold each
-- unit again.
UPDATE unit SET stale = 1;
