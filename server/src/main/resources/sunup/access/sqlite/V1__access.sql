-- Screens, their keys and the people who may sign on. No names of people: codes of the site's own.
-- Moments are epoch milliseconds of real time.

-- Grows with each change, so that other nodes notice it.
CREATE TABLE access_stamp (one INTEGER NOT NULL PRIMARY KEY, n INTEGER NOT NULL);
INSERT INTO access_stamp (one, n) VALUES (1, 0);

-- Keys of the board's own: for passes over HTTP, and the hash of the first administrator's link.
CREATE TABLE access_secret (
  name TEXT NOT NULL PRIMARY KEY, value BLOB NOT NULL, ends_at INTEGER NOT NULL);

CREATE TABLE access_screen (
  id TEXT NOT NULL PRIMARY KEY, name TEXT NOT NULL, page TEXT NOT NULL, suite TEXT NOT NULL, room TEXT,
  paired_at INTEGER NOT NULL, paired_by TEXT NOT NULL, revoked_at INTEGER, revoked_by TEXT);

-- used_at is null until the key was used at a connect: then older keys of the screen go.
CREATE TABLE access_key (
  fingerprint TEXT NOT NULL PRIMARY KEY, screen TEXT NOT NULL REFERENCES access_screen (id),
  made_at INTEGER NOT NULL, used_at INTEGER);

CREATE TABLE access_pairing (
  code TEXT NOT NULL PRIMARY KEY, fingerprint TEXT NOT NULL UNIQUE, address TEXT NOT NULL,
  page TEXT NOT NULL, asked_at INTEGER NOT NULL, until INTEGER NOT NULL);

CREATE TABLE access_person (
  code TEXT NOT NULL PRIMARY KEY, salt BLOB NOT NULL, hash BLOB NOT NULL,
  made_at INTEGER NOT NULL, made_by TEXT NOT NULL, ended_at INTEGER);

-- The suite * means all.
CREATE TABLE access_role (
  person TEXT NOT NULL REFERENCES access_person (code), suite TEXT NOT NULL, role TEXT NOT NULL,
  PRIMARY KEY (person, suite, role));

CREATE TABLE access_sign_on (
  id TEXT NOT NULL PRIMARY KEY, screen TEXT NOT NULL, person TEXT NOT NULL, suite TEXT NOT NULL,
  role TEXT NOT NULL, post TEXT, began_at INTEGER NOT NULL, ended_at INTEGER);
CREATE INDEX access_sign_on_began ON access_sign_on (began_at);

-- Wrong PINs in a row of a person at a screen; counted before the PIN is looked at.
CREATE TABLE access_tries (
  person TEXT NOT NULL, screen TEXT NOT NULL, failed INTEGER NOT NULL, last_at INTEGER NOT NULL,
  PRIMARY KEY (person, screen));
