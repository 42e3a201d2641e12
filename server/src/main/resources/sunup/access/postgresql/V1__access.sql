-- Screens, their keys and the people who may sign on. No names of people: codes of the site's own.
-- Moments are epoch milliseconds of real time.

-- Grows with each change, so that other nodes notice it.
CREATE TABLE access_stamp (one bigint NOT NULL PRIMARY KEY, n bigint NOT NULL);
INSERT INTO access_stamp (one, n) VALUES (1, 0);

-- Keys of the board's own: for passes over HTTP, and the hash of the first administrator's link.
CREATE TABLE access_secret (
  name text NOT NULL PRIMARY KEY, value bytea NOT NULL, ends_at bigint NOT NULL);

CREATE TABLE access_screen (
  id text NOT NULL PRIMARY KEY, name text NOT NULL, page text NOT NULL, suite text NOT NULL, room text,
  paired_at bigint NOT NULL, paired_by text NOT NULL, revoked_at bigint, revoked_by text);

-- used_at is null until the key was used at a connect: then older keys of the screen go.
CREATE TABLE access_key (
  fingerprint text NOT NULL PRIMARY KEY, screen text NOT NULL REFERENCES access_screen (id),
  made_at bigint NOT NULL, used_at bigint);

CREATE TABLE access_pairing (
  code text NOT NULL PRIMARY KEY, fingerprint text NOT NULL UNIQUE, address text NOT NULL,
  page text NOT NULL, asked_at bigint NOT NULL, until bigint NOT NULL);

CREATE TABLE access_person (
  code text NOT NULL PRIMARY KEY, salt bytea NOT NULL, hash bytea NOT NULL,
  made_at bigint NOT NULL, made_by text NOT NULL, ended_at bigint);

-- The suite * means all.
CREATE TABLE access_role (
  person text NOT NULL REFERENCES access_person (code), suite text NOT NULL, role text NOT NULL,
  PRIMARY KEY (person, suite, role));

CREATE TABLE access_sign_on (
  id text NOT NULL PRIMARY KEY, screen text NOT NULL, person text NOT NULL, suite text NOT NULL,
  role text NOT NULL, post text, began_at bigint NOT NULL, ended_at bigint);
CREATE INDEX access_sign_on_began ON access_sign_on (began_at);

-- Wrong PINs in a row of a person at a screen; counted before the PIN is looked at.
CREATE TABLE access_tries (
  person text NOT NULL, screen text NOT NULL, failed bigint NOT NULL, last_at bigint NOT NULL,
  PRIMARY KEY (person, screen));
