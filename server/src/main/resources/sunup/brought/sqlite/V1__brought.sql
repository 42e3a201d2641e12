-- First cases of the time before Sunup as a suite brought them; each bringing replaces the one before.
CREATE TABLE brought_suite (
  suite TEXT NOT NULL PRIMARY KEY, number INTEGER NOT NULL, cases INTEGER NOT NULL);
CREATE TABLE brought_month (
  suite TEXT NOT NULL, month TEXT NOT NULL, body TEXT NOT NULL,
  PRIMARY KEY (suite, month));
