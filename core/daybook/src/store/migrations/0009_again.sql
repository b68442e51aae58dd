-- A folded state tells which words lock more when they come again: fold each again.
UPDATE unit SET stale = 1;
