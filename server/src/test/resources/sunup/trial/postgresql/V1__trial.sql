-- A part of a test: refers to a table that comes later by its name, and begins with a row.
CREATE TABLE trial_stamp (one bigint NOT NULL PRIMARY KEY, n bigint NOT NULL);
INSERT INTO trial_stamp VALUES (1, 0);
CREATE TABLE trial_screen (id bigint NOT NULL PRIMARY KEY, words text);
CREATE TABLE trial_key (
  id bigint NOT NULL PRIMARY KEY, screen bigint NOT NULL REFERENCES trial_screen (id));
