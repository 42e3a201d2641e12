-- Editions of a suite's sheets, never changed and never taken away. Moments are epoch milliseconds
-- of real time. files and changes are JSON; by_person is a post of the morning's plan, no name.
CREATE TABLE editions_edition (
  suite text NOT NULL, number bigint NOT NULL, draft text NOT NULL, files text NOT NULL,
  changes text NOT NULL, note text, by_role text NOT NULL, by_person text, by_screen text NOT NULL,
  at bigint NOT NULL, PRIMARY KEY (suite, number), UNIQUE (suite, draft));
