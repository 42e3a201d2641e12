-- A part of a test: refers to a table that comes later by its name, and begins with a row.
CREATE TABLE trial_stamp (one INTEGER NOT NULL PRIMARY KEY, n INTEGER NOT NULL);
INSERT INTO trial_stamp VALUES (1, 0);
CREATE TABLE trial_screen (id INTEGER NOT NULL PRIMARY KEY, words text);
CREATE TABLE trial_key (
  id INTEGER NOT NULL PRIMARY KEY, screen INTEGER NOT NULL REFERENCES trial_screen (id));
