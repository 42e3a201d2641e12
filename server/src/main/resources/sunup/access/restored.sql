-- What a restore changes, on the working copy of a backup (SQLite, wherever it goes).

-- Who came and went after the backup is not known: nobody is signed on, or somebody else's touches
-- would be theirs. Touches from before that still wait at a screen keep their person.
UPDATE access_sign_on SET ended_at = :now WHERE ended_at IS NULL;

-- No code that a screen showed, no link and no pass from before counts.
DELETE FROM access_pairing;
DELETE FROM access_secret WHERE name IN ('pass', 'seal', 'first-link', 'push');

-- Phones are told no longer than their sign-on lasts, and by another key.
DELETE FROM access_push;

-- Screens that were on the board look anew.
UPDATE access_stamp SET n = n + 1;
