-- A folded state says more than before: fold each again.
UPDATE unit SET stale = 1;
-- When a device was told of an entry is answered by the index alone.
DROP INDEX exchange_device;
CREATE INDEX exchange_told ON exchange (device, at, to_n);
