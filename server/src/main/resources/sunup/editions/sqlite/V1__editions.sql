-- Editions of a suite's sheets, never changed and never taken away. Moments are epoch milliseconds
-- of real time. files and changes are JSON; by_person is a post of the morning's plan, no name.
CREATE TABLE editions_edition (
  suite TEXT NOT NULL, number INTEGER NOT NULL, draft TEXT NOT NULL, files TEXT NOT NULL,
  changes TEXT NOT NULL, note TEXT, by_role TEXT NOT NULL, by_person TEXT, by_screen TEXT NOT NULL,
  at INTEGER NOT NULL, PRIMARY KEY (suite, number), UNIQUE (suite, draft));
