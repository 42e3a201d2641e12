-- First cases of the time before Sunup as a suite brought them; each bringing replaces the one before.
CREATE TABLE brought_suite (
  suite text COLLATE "C" NOT NULL PRIMARY KEY, number bigint NOT NULL, cases bigint NOT NULL);
CREATE TABLE brought_month (
  suite text COLLATE "C" NOT NULL, month text COLLATE "C" NOT NULL, body text NOT NULL,
  PRIMARY KEY (suite, month));
